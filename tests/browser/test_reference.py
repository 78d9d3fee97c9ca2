"""The reference as a reader meets it: opened from its file, by keyboard, on three screens, without scripts."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from speclint.commands.made_files import write_made
from speclint.reports.reference import REFERENCE_FRONT, REFERENCE_MARK, reference_files
from speclint.testing import installed_families
from tests.browser.reader import Reader
from tests.browser.screens import SCREENS
from tests.browser.test_pack import CUT

if TYPE_CHECKING:
    from playwright.sync_api import Browser

#: Laid out as another, with wide equations; it takes the checker of accessibility a minute.
_LONGEST = "rules/joints.html"
#: A page of each layout.
_PAGES = (
    REFERENCE_FRONT,
    "rules/index.html",
    "rules/springs.html",
    _LONGEST,
    "guide/tutorial.html",
    "formulae/springs.html",
    "formulae/handbook-steam.html",
    "kinds/compression-spring.html",
    "materials/grey-iron.html",
    "tables/handbook.gaskets-asme-viii-1-2019-table-2-5-1.html",
    "names/gaskets.html",
    "names/words-of-keys.html",
    "words/load-cases.html",
    "words/words.html",
    "words/settings.html",
    "families/index.html",
)
#: Words of heads of rows, of up to twelve letters, that do not stand on one line.
_BROKEN = """[...document.querySelectorAll('th, dt')].filter((one) => one.checkVisibility()).flatMap((one) => {
  const walker = document.createTreeWalker(one, NodeFilter.SHOW_TEXT), found = [];
  while (walker.nextNode()) for (const word of walker.currentNode.data.matchAll(/[A-Za-z]{2,12}/g)) {
    const range = document.createRange();
    range.setStart(walker.currentNode, word.index);
    range.setEnd(walker.currentNode, word.index + word[0].length);
    if (new Set([...range.getClientRects()].map((box) => Math.round(box.top))).size > 1) found.push(word[0]);
  }
  return found;
})"""
#: Of which accessibility is checked in every run; of the others in .ci/long.
_CHECKED_EACH_TIME = (REFERENCE_FRONT, "kinds/compression-spring.html")
_OVERFLOW = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.fixture(scope="session")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The reference of every installed family, written once."""
    place = tmp_path_factory.mktemp("reference")
    write_made(place, reference_files(installed_families()), REFERENCE_MARK)
    return place


@pytest.fixture
def reader(browser: Browser, folder: Path) -> Iterator[Reader]:
    """The front page opened from its file, without a network."""
    context = browser.new_context(viewport={"width": 1200, "height": 900}, offline=True)
    reader = Reader(context.new_page(), folder / REFERENCE_FRONT)
    reader.open()
    yield reader
    context.close()


def goto(reader: Reader, folder: Path, page: str) -> None:
    reader.page.goto((folder / page).as_uri())


@pytest.mark.parametrize("width", SCREENS)
@pytest.mark.parametrize("page", _PAGES)
def test_a_page_opens_without_a_complaint_and_is_whole_on_each_screen(
    reader: Reader, folder: Path, page: str, width: int
) -> None:
    """No text is cut or reaches into another, the page never scrolls sideways, headings are in order."""
    goto(reader, folder, page)
    reader.page.set_viewport_size({"width": width, "height": 900})
    assert reader.page.evaluate(CUT) == []
    assert reader.page.evaluate(_OVERFLOW) <= 0
    assert reader.page.evaluate(_OVER) == []
    assert reader.page.evaluate(_BROKEN) == []
    levels = reader.page.evaluate(
        "[...document.querySelectorAll('h1, h2, h3, h4')].filter((one) => one.checkVisibility())"
        ".map((one) => Number(one.tagName[1]))"
    )
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert reader.complaints == []
    assert all(address.startswith("file:") for address in reader.asked_for)


#: Blocks of text that lie over one another.
_OVER = """() => {
  const blocks = [...document.querySelectorAll("main :is(h2, h3, p, dt, dd, th, td, summary), nav li")]
    .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height)
    .map((one) => [one, one.getBoundingClientRect()]);
  const wrong = [];
  blocks.forEach(([one, box], at) => {
    for (const [other, next] of blocks.slice(at + 1, at + 40)) {
      if (one.contains(other) || other.contains(one)) continue;
      const wide = Math.min(box.right, next.right) - Math.max(box.left, next.left);
      const high = Math.min(box.bottom, next.bottom) - Math.max(box.top, next.top);
      if (wide > 2 && high > 2) wrong.push(`${one.textContent.slice(0, 40)} over ${other.textContent.slice(0, 40)}`);
    }
  });
  return wrong;
}"""


def test_a_text_that_lies_over_another_would_be_seen(reader: Reader, folder: Path) -> None:
    goto(reader, folder, "rules/springs.html")
    reader.page.evaluate("document.querySelector('.statement').style.marginBottom = '-3rem'")
    assert reader.page.evaluate(_OVER) != []


@pytest.mark.parametrize(
    "page",
    [
        page if page in _CHECKED_EACH_TIME else pytest.param(page, marks=pytest.mark.long)
        for page in _PAGES
        if page != _LONGEST
    ],
)
def test_a_page_passes_an_automated_accessibility_check(reader: Reader, folder: Path, page: str) -> None:
    """With all that is folded away unfolded, on both grounds."""
    from axe_playwright_python.sync_playwright import Axe

    goto(reader, folder, page)
    reader.page.evaluate(
        "for (const one of [...document.querySelectorAll('details')].slice(0, 12)) one.open = true"
    )
    for ground in ("light", "dark"):
        reader.page.emulate_media(color_scheme=ground)
        results = Axe().run(reader.page)
        assert results.violations_count == 0, results.generate_report()


def test_the_search_finds_rules_keys_and_materials_by_keyboard(reader: Reader) -> None:
    page = reader.page
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "to the text"
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.id") == "words"
    page.locator("html[data-index=ready]").wait_for(state="attached")
    page.keyboard.type("wall-at-last-bore")
    first = page.locator("#results a").first
    first.wait_for()
    assert first.inner_text() == "liner.wall-at-last-bore"
    assert "found" in page.inner_text("#found")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    page.wait_for_url("**/rules/liners.html#liner.wall-at-last-bore")
    heading = page.locator("h2:target")
    heading.wait_for(state="visible")  # a long page is laid out after its address is known
    assert heading.inner_text() == "liner.wall-at-last-bore"
    assert heading.is_visible()


@pytest.mark.parametrize(
    ("words", "name", "place"),
    [
        ("last_bore", "cylinder-liner.last_bore", "kinds/cylinder-liner.html#last_bore"),
        ("grey-iron-250", "grey-iron-250", "materials/grey-iron.html#grey-iron-250"),
        ("M24x1.5", "M24x1.5", "names/threads.html#M24x1.5"),
        ("spring index", "spring index", "formulae/handbook-springs.html#helical.spring_index"),
    ],
)
def test_the_search_finds_from_a_page_below_the_front_page(
    reader: Reader, folder: Path, words: str, name: str, place: str
) -> None:
    goto(reader, folder, "kinds/pin.html")
    reader.page.fill("#words", words)
    link = reader.page.locator("#results a", has_text=name).first
    link.wait_for()
    assert link.get_attribute("href") == f"../{place}"
    reader.page.fill("#words", "no such word anywhere")
    assert reader.page.inner_text("#found") == "0 found"
    reader.page.keyboard.press("Escape")
    assert reader.page.locator("#results").is_hidden()


def test_every_link_and_field_is_come_to_by_keyboard_in_the_order_of_the_page(
    reader: Reader, folder: Path
) -> None:
    goto(reader, folder, "kinds/lens-joint.html")
    page = reader.page
    wanted = page.evaluate(f"{_STOPS}.length")
    assert wanted > 20
    met = []
    for _ in range(wanted):
        page.keyboard.press("Tab")
        met.append(page.evaluate(f"{_STOPS}.indexOf(document.activeElement)"))
    assert met == list(range(wanted))


_STOPS = (
    "[...document.querySelectorAll('a, input, summary, [tabindex=\"0\"]')]"
    ".filter((one) => one.checkVisibility() && !one.closest('details:not([open]) > :not(summary)'))"
)


def test_it_can_be_read_without_scripts(browser: Browser, folder: Path) -> None:
    context = browser.new_context(offline=True, java_script_enabled=False)
    page = context.new_page()
    page.goto((folder / REFERENCE_FRONT).as_uri())
    assert not page.locator("#search").is_visible()
    assert page.locator("noscript p").is_visible()
    page.click("nav a:text-is('Rules')")
    page.click("main a:text-is('liner.wall-at-last-bore')")
    assert page.url.endswith("rules/liners.html#liner.wall-at-last-bore")
    page.locator("h2:target").wait_for(state="visible")
    assert page.locator(".rule math").count() > 0
    context.close()


@pytest.mark.long
def test_markup_that_got_into_a_page_runs_nothing(browser: Browser, folder: Path, tmp_path: Path) -> None:
    """A script, a handler and a style of their own, and a script from a file beside the page."""
    page_text = (folder / REFERENCE_FRONT).read_text(encoding="utf-8")
    (tmp_path / "other.js").write_text("document.title = 'run'", encoding="utf-8")
    slipped = (
        "<script>document.title = 'run'</script><img src=x onerror=\"document.title = 'run'\">"
        "<script src=other.js></script><p id=styled style='color: rgb(1, 2, 3)'>x</p>"
    )
    changed = page_text.replace("<main id=content", f"{slipped}<main id=content", 1)
    assert changed != page_text
    (tmp_path / "index.html").write_text(changed, encoding="utf-8")
    context = browser.new_context(offline=True)
    page = context.new_page()
    page.goto((tmp_path / "index.html").as_uri())
    page.wait_for_selector("html[data-ready=yes]")
    assert page.title() == "speclint reference"
    assert page.evaluate("getComputedStyle(document.getElementById('styled')).color") != "rgb(1, 2, 3)"
    context.close()
