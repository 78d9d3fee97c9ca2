"""The review pack as a reviewer meets it: on a screen, by keyboard, through a screen reader, on paper."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.browser.reader import Reader
from tests.browser.screens import SCREENS
from tests.reports.test_pack import unpacked, whole_page

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

_PRINT_WIDTH = 703
_PACKED = ".conform > div > details"


def test_it_opens_from_its_file_without_a_complaint_or_a_network(reader: Reader) -> None:
    assert reader.complaints == []
    assert all(address.startswith(("file:", "blob:")) for address in reader.asked_for)
    assert reader.page.title().startswith("Design review: ")
    assert "NOT IN ORDER" in reader.page.inner_text(".said")


def test_filters_leave_what_was_asked_for(reader: Reader) -> None:
    page = reader.page
    findings = reader.shown("article.finding")
    holds = page.locator("article.finding.hold").count()
    assert 0 < holds < findings
    page.select_option("#grade", "hold")
    assert reader.shown("article.finding") == holds
    assert reader.shown("article.finding:not(.hold)") == 0
    page.click("button[type=reset]")
    page.locator("article.finding:not([hidden])").nth(findings - 1).wait_for()
    page.select_option("#component", "liner-left")
    own = page.locator(f"[data-component='liner-left'] :is(details.sheet, {_PACKED})").count()
    assert reader.shown(f"details.sheet, {_PACKED}") == own > 0
    page.select_option("#component", "")
    page.select_option("#family", "springs")
    assert reader.shown(".conform > div:not([data-family='springs']) > details") == 0
    assert reader.shown(_PACKED) > 0


@pytest.mark.long
def test_search_looks_into_packed_sheets_too(reader: Reader, pack: Path) -> None:
    sheets = unpacked(pack.read_text(encoding="utf-8"))
    word = "relaxation"
    inside = {name for name, sheet in sheets.items() if word in re.sub(r"<[^>]+>", " ", sheet).lower()}
    assert inside
    assert len(inside) < len(sheets)
    reader.page.fill("#search", word)
    shown = set(
        reader.page.evaluate(
            "(packed) => [...document.querySelectorAll(`.long, ${packed}`)]"
            ".filter((one) => !one.closest('[hidden]')).map((one) => one.id)",
            _PACKED,
        )
    )
    assert inside <= shown
    assert len(shown) < len(sheets)
    reader.page.fill("#search", "no such word anywhere")
    assert reader.shown(".item") == 0


def test_links_lead_from_finding_to_sheet_to_source_and_back(reader: Reader) -> None:
    page = reader.page
    hold = page.locator("section.decide").first
    hold.locator("a", has_text="sheet").click()
    sheet = page.locator("details.sheet:target")
    page.locator("details.sheet[open]:target").wait_for()
    assert sheet.locator("math").count() > 0 or sheet.locator("table").count() > 0
    sheet.locator("table.working a").first.click()
    assert page.locator("ol.sources li:target").count() == 1
    page.go_back()
    sheet.get_by_text("to the finding").click()
    assert page.locator("article.finding:target").count() == 1


@pytest.mark.long
def test_a_packed_sheet_is_laid_out_when_it_is_opened_or_linked_to(reader: Reader) -> None:
    page = reader.page
    page.locator("details.conform > summary").first.click()
    packed = page.locator(_PACKED).first
    name = packed.get_attribute("id")
    assert packed.locator(".body").count() == 0
    packed.locator("summary").focus()
    page.keyboard.press("Enter")
    packed.locator(".facts").first.wait_for()
    reader.open(f"#{name}")
    again = page.locator(f"details[open][id='{name}']")
    again.wait_for()
    assert again.locator(".facts").count() == 2


@pytest.mark.long
def test_a_link_to_what_a_filter_hides_shows_it(reader: Reader) -> None:
    page = reader.page
    page.select_option("#grade", "conforms")
    assert reader.shown("article.finding") == 0
    page.locator("section.decide h3 a").first.click()
    page.locator("article.finding:target").wait_for(state="visible")


@pytest.mark.long
def test_points_of_the_overview_lead_to_their_sheets_by_keyboard(reader: Reader) -> None:
    """One stop of the keyboard for the chart, and the arrow keys from point to point."""
    page = reader.page
    points = page.locator("#utilisations svg a")
    at = page.evaluate(
        "[...document.querySelectorAll('#utilisations svg a')]"
        ".findIndex((one, n) => n && one.querySelector('.bad, .hold'))"
    )
    target = str(points.nth(at).get_attribute("href"))
    points.first.focus()
    for _ in range(at + 1):
        page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("Enter")
    page.locator(f"details[open][id='{target[1:]}']").wait_for()
    assert page.locator("#utilisations svg a[tabindex='0']").count() == 1


@pytest.mark.long
def test_the_keyboard_comes_to_the_text_before_charts_and_sheets(reader: Reader) -> None:
    """After the contents the boxes of the holds in their order; no drawing and no sheet between."""
    page = reader.page
    met: list[str] = []
    for _ in range(60):
        page.keyboard.press("Tab")
        met.append(
            page.evaluate(
                "document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent"
            )
        )
        if met[-1] == "H2: by when":
            break
    assert met[0] == "to the verdict"
    boxes = ["accepted", "to be changed", "by whom", "by when"]
    assert [one for one in met if one.startswith("H1: ")] == [f"H1: {what}" for what in boxes]
    assert met[-1] == "H2: by when"
    assert not page.evaluate(
        "[...document.querySelectorAll('main a, main summary')].some((one) => one.tabIndex > 0)"
    )


@pytest.mark.long
def test_what_is_filled_in_at_the_table_goes_into_the_print_whole(reader: Reader) -> None:
    """However long: a line is broken, and never cut."""
    page = reader.page
    box = page.get_by_role("textbox", name="H1: by whom")
    box.fill("chief draughtsman, with the pressure inspector and the foundry " * 3)
    page.get_by_role("checkbox", name="H1: to be changed").check()
    page.set_viewport_size({"width": 660, "height": 900})
    page.emulate_media(media="print")
    assert box.is_visible()
    assert box.evaluate("(one) => one.scrollWidth <= one.clientWidth && one.scrollHeight <= one.clientHeight")


def test_it_can_be_read_without_scripts(browser: Browser, pack: Path) -> None:
    context = browser.new_context(offline=True, java_script_enabled=False)
    page = context.new_page()
    page.goto(pack.as_uri())
    for what in (
        ".said",
        "section.decide >> nth=0",
        "article.finding >> nth=0",
        "figure.drawn >> nth=0",
        "noscript p",
    ):
        assert page.locator(what).is_visible(), what
    summary = page.locator("article.finding details.sheet:not(.long) > summary").first
    summary.click()
    assert page.locator("article.finding details.sheet:not(.long) .body table").first.is_visible()
    assert not page.locator("#filters").is_visible()
    context.close()


@pytest.mark.parametrize("width", [*SCREENS, pytest.param(_PRINT_WIDTH, marks=pytest.mark.long)])
def test_no_text_of_the_document_overlaps_or_is_cut(reader: Reader, width: int) -> None:
    """On three screens, and as wide as A4 between its margins; what scrolls sideways in its own frame is not cut."""
    page = reader.page
    page.set_viewport_size({"width": width, "height": 900})
    if width == _PRINT_WIDTH:
        page.emulate_media(media="print")
    assert page.evaluate(CUT) == []
    page.evaluate(
        "document.querySelector('.said').style.cssText = 'width: 3rem; overflow: hidden; white-space: nowrap'"
    )
    assert page.evaluate(CUT) != [], "what is cut would be seen"


#: Texts that are wider than their box, and texts of table cells that reach into the next.
CUT = """() => [...document.querySelectorAll("h1, h2, h3, h4, p, dt, dd, th, td, li, summary, label, button, .fill")]
  .filter((one) => one.offsetParent && one.clientWidth && one.scrollWidth > one.clientWidth + 1)
  .map((one) => `${one.tagName} ${one.textContent.trim().slice(0, 60)}`)"""


def test_headings_are_in_order(reader: Reader) -> None:
    levels = reader.page.evaluate(
        "[...document.querySelectorAll('h1, h2, h3, h4')].map((one) => Number(one.tagName[1]))"
    )
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


@pytest.mark.parametrize("width", SCREENS)
def test_no_text_of_a_drawing_overlaps_or_is_cut(reader: Reader, width: int) -> None:
    reader.page.set_viewport_size({"width": width, "height": 900})
    assert reader.overlaps() == []
    overflow = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    assert reader.page.evaluate(overflow) <= 0, "the page itself never scrolls sideways"


def test_the_look_at_drawings_sees_what_is_wrong(reader: Reader) -> None:
    """The measure of the test above: a text moved over another, and one moved out of its drawing, are told."""
    move = """(by) => {
      const [one, other] = document.querySelectorAll("#utilisations text.word");
      one.setAttribute("y", by === null ? other.getAttribute("y") : by);
    }"""
    reader.page.evaluate(move, None)
    assert any(" over " in one for one in reader.overlaps())
    reader.page.evaluate(move, "-30")
    assert any("is cut" in one for one in reader.overlaps())


@pytest.mark.long
def test_it_passes_an_automated_accessibility_check(reader: Reader) -> None:
    """With what is of one part shown, which has every sort of thing: others only add more of the same."""
    from axe_playwright_python.sync_playwright import Axe

    page = reader.page
    _show_one_part(page)
    page.evaluate(
        "for (const one of document.querySelectorAll('.part:not([hidden]) .conform')) one.open = true"
    )
    for sheet in page.locator(f"{_PACKED}:not([hidden]) > summary:visible").all()[:3]:
        sheet.click()
    for what in ("article.finding", "figure.item", f"{_PACKED} .facts", "#utilisations a"):
        assert page.locator(f"{what}:visible").count() > 0, what
    page.emulate_media(color_scheme="light")
    results = Axe().run(page)
    assert results.violations_count == 0, results.generate_report()


@pytest.mark.long
def test_colours_of_the_dark_ground_have_contrast(reader: Reader) -> None:
    """All else is the same on either ground."""
    from axe_playwright_python.sync_playwright import Axe

    page = reader.page
    _show_one_part(page)
    page.locator("details.sheet:visible > summary").first.click()
    page.emulate_media(color_scheme="dark")
    results = Axe().run(page, options={"runOnly": ["color-contrast"]})
    assert results.violations_count == 0, results.generate_report()
    page.evaluate("for (const one of document.querySelectorAll('dd')) one.style.color = '#333'")
    again = Axe().run(
        page, context="#finding\\.liner-left\\.liner\\.fit-hot", options={"runOnly": ["color-contrast"]}
    )
    assert again.violations_count == 1, "it would be seen"


def _show_one_part(page: Page) -> None:
    page.select_option("#component", "liner-left")
    page.locator("article.finding[hidden]").first.wait_for(state="attached")


@pytest.mark.long
def test_dark_and_light_can_be_changed_by_hand(reader: Reader) -> None:
    page = reader.page
    page.emulate_media(color_scheme="light")
    ground = "getComputedStyle(document.body).backgroundColor"
    light = page.evaluate(ground)
    page.click("#ground")
    assert page.evaluate(ground) != light
    page.click("#ground")
    assert page.evaluate(ground) == light


def _pages(pdf: bytes) -> int:
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf))


#: A4 is 210 mm by 297 mm: 595 by 842 points. A3 on its side is 420 mm by 297 mm: 1191 by 842 points. ISO 216.
_A4, _A3 = rb"/MediaBox\s*\[\s*0 0 59[45](\.\d+)? 84[12]", rb"/MediaBox\s*\[\s*0 0 119[01](\.\d+)? 84[12]"


@pytest.mark.long
def test_it_prints_on_a4_and_a3_and_can_print_every_sheet(reader: Reader) -> None:
    """A sheet that is open is printed; what is left out is said, and with the box ticked nothing is."""
    page = reader.page
    _show_one_part(page)  # so that every sheet is a matter of seconds
    some = page.pdf(prefer_css_page_size=True)
    assert re.search(_A4, some)
    assert not re.search(_A3, some)
    page.select_option("#paper", "a3")
    wide = page.pdf(prefer_css_page_size=True)
    assert re.search(_A3, wide)
    assert not re.search(_A4, wide)
    assert 3 < _pages(wide) < _pages(some)
    page.select_option("#paper", "a4")
    page.evaluate(f"document.querySelector(`.part:not([hidden]) {_PACKED}`).open = true")
    one_more = page.pdf(prefer_css_page_size=True)
    page.check("#every")
    every = page.pdf(prefer_css_page_size=True)
    assert _pages(every) > _pages(one_more) >= _pages(some)
    assert page.locator(".seen").count() == 0, "marks for the print are taken away after it"


@pytest.mark.long
def test_the_summary_has_at_most_twelve_pages(browser: Browser, tmp_path: Path) -> None:
    """All that a meeting on the whole example works through: without the annex, and the sources that it cites."""
    file = tmp_path / "review.html"
    file.write_text(whole_page(), encoding="utf-8", newline="\n")
    page = browser.new_page()
    page.goto(file.as_uri())
    for name in ("sheets", "sources"):
        page.evaluate("(name) => { document.getElementById(name).parentElement.hidden = true; }", name)
    assert 9 <= _pages(page.pdf(prefer_css_page_size=True)) <= 12
    page.close()


@pytest.mark.long
def test_nothing_is_wider_than_the_paper(reader: Reader) -> None:
    """Unfolded as for print, as wide as the paper between its margins: 173 mm at 96 to the inch.

    Of the sheets of each rule one, for the lines of the others are the same with other numbers.
    """
    page = reader.page
    page.set_viewport_size({"width": round(173 / 25.4 * 96), "height": 1000})
    page.emulate_media(media="print")  # before all is laid out, so that it is laid out once
    page.evaluate(_ONE_OF_EACH_RULE)
    page.evaluate("document.getElementById('every').checked = true")  # no event, by which all would be shown
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert page.locator("details[open] table.working").count() > 100
    wide = page.evaluate(_WIDE)
    assert wide == []
    words = page.locator("details[open] table.working b").first
    words.evaluate(
        "(one) => { one.style.display = 'block'; one.style.width = '20em'; one.style.marginLeft = '20em'; }"
    )
    assert page.evaluate(_WIDE) != [], "what is wider would be seen"


#: Leaves of the packed sheets of each rule, which the summary names, one that is not hidden.
_ONE_OF_EACH_RULE = """() => {
  const rules = new Set();
  for (const sheet of document.querySelectorAll(".conform > div > details")) {
    const rule = sheet.querySelector("summary").childNodes[0].textContent.trim();
    sheet.hidden = rules.has(rule);
    rules.add(rule);
  }
}"""
_WIDE = """() => [...document.querySelectorAll("main *")]
  .filter((one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
  .map((one) => `${one.tagName} ${one.closest("[id]")?.id} ${one.textContent.slice(0, 60)}`)"""


@pytest.mark.long
def test_the_words_for_print_say_what_is_left_out(reader: Reader) -> None:
    """Of one part, so that to lay out its every sheet is a matter of a second."""
    page = reader.page
    page.emulate_media(media="print")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert page.locator(".left-out").is_visible()
    page.emulate_media(media="screen")
    _show_one_part(page)
    page.check("#every")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    page.emulate_media(media="print")
    assert not page.locator(".left-out").is_visible()
    shown = "[...document.querySelectorAll('.part:not([hidden]) .conform > div > details:not([hidden])')]"
    assert page.evaluate(f"{shown}.length") > 10
    assert page.evaluate(f"{shown}.every((one) => one.open && one.querySelector('.body'))")


@pytest.mark.long
def test_a_browser_that_cannot_unpack_says_so_and_shows_the_rest(reader: Reader) -> None:
    """As in browsers of before 2023: a plain sentence in place of the sheets, filters and links as ever."""
    page = reader.page
    assert not page.locator("#not-unpacked").is_visible()
    page.add_init_script("delete globalThis.DecompressionStream")
    reader.open("#sheets")
    page.reload()
    page.wait_for_selector("html[data-ready=yes]")
    assert page.locator("#not-unpacked").is_visible()
    page.locator("details.conform > summary").first.click()
    packed = page.locator(_PACKED).first
    packed.locator("summary").click()
    assert "cannot unpack" in packed.locator(".body").inner_text()
    page.select_option("#grade", "hold")
    assert reader.shown("article.finding:not(.hold)") == 0
    assert reader.shown("article.finding") > 0
    assert reader.complaints == []


#: Markup that would run something, were it ever to get into the page, each in a way of its own.
INJECTED = (
    "<script>document.title = 'owned'</script>",
    "<img src=x onerror=\"document.title = 'owned'\">",
    "<svg onload=\"document.title = 'owned'\"></svg>",
    "<iframe srcdoc=\"<script>parent.document.title = 'owned'</script>\"></iframe>",
    "<script src=owned.js></script>",
    "<details open ontoggle=\"document.title = 'owned'\"><summary>x</summary></details>",
    "<style>body { background: url(owned.png) }</style><link rel=stylesheet href=owned.css>",
    "<base href='https://example.invalid/'>",
)


@pytest.mark.long
def test_markup_that_got_into_the_page_would_not_run(browser: Browser, pack: Path, tmp_path: Path) -> None:
    """The page's own script runs as ever, and the browser says what it refused."""
    (tmp_path / "owned.js").write_text("document.title = 'owned'", encoding="utf-8")
    path = tmp_path / "review.html"
    text = pack.read_text(encoding="utf-8")
    assert text.count("<main>") == 1
    path.write_text(text.replace("<main>", "<main>" + "".join(INJECTED)), encoding="utf-8")
    context = browser.new_context(offline=True)
    reader = Reader(context.new_page(), path)
    reader.open()
    reader.page.evaluate("() => new Promise((done) => setTimeout(done, 200))")
    assert reader.page.title().startswith("Design review: ")
    assert reader.page.evaluate("getComputedStyle(document.body).backgroundImage") == "none"
    assert reader.page.evaluate("document.baseURI") == path.as_uri()
    assert len([said for said in reader.complaints if "Content Security Policy" in said]) >= len(INJECTED) - 1
    without = path.with_name("without.html")
    without.write_text(
        path.read_text(encoding="utf-8").replace("Content-Security-Policy", "x"), encoding="utf-8"
    )
    unguarded = Reader(context.new_page(), without)
    unguarded.open()
    assert unguarded.page.title() == "owned", "without the policy it runs, so that this test would see it"
    context.close()
