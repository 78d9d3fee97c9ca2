"""The review pack without a browser: one file that needs nothing else, the same each time, and safe."""

from __future__ import annotations

import base64
import gzip
import hashlib
import html
import json
import re
from collections.abc import Iterable
from functools import cache
from html.parser import HTMLParser
from itertools import count
from pathlib import Path

import pytest

from speclint.checking import Assessment, Sought, grouped
from speclint.commands import main
from speclint.errors import replace
from speclint.reports.pack import REVIEW_FILE, review_page, sheet_document
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.page import with_shorter_drawings
from speclint.reports.pack.paper import Paper, niced, shortened, ticks
from speclint.reports.pack.same_working import firsts_of
from speclint.testing import DesignFolder
from tests import tubes
from tests.example import assessed, of_one_cylinder, shared_text
from tests.register import office as offices
from tests.register.office import Office
from tests.reports.hostile import TEXTS, quoted
from tests.reports.letters import from_letters
from tests.tubes import FILES


@cache
def drawn_page() -> str:
    """The pack of one cylinder, which the first process that needs it makes for all."""
    return shared_text("pack.html", lambda: review_page(unremedied(of_one_cylinder())))


def whole_page() -> str:
    """The pack of the whole example, made by the first process that needs it."""
    return shared_text("whole-pack.html", lambda: review_page(unremedied(assessed())))


def unremedied(assessment: Assessment) -> Assessment:
    """With no remedies, which are a line or two of a finding and take longer to seek than all else of the page."""
    return replace(assessment, _remedies={check.order: Sought() for check in assessment.checks})


class Places(HTMLParser):
    """The ids of a page, the places that its links lead to, and the tags and addresses that it uses."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.targets: set[str] = set()
        self.tags: set[str] = set()
        self.handlers: set[str] = set()
        self.styles: set[str] = set()
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.add(tag)
        for name, value in attrs:
            if name == "id" and value:
                self.ids.append(value)
            elif name in ("href", "src", "xlink:href") and value:
                self.targets.add(value)
            elif name.startswith("on"):
                self.handlers.add(name)
            elif name == "style":
                self.styles.add(value or "")


def unpacked(page: str) -> dict[str, str]:
    """The sheets that the page keeps packed, as its script lays them out: cells to lines, lines to sheets."""
    found = re.search(r'<script type="text/plain" id=packed>([^<]*)</script>', page)
    assert found
    return unpacked_sheets(found[1])


def unpacked_sheets(text: str) -> dict[str, str]:
    data = json.loads(gzip.decompress(from_letters(text)))
    lines = ["".join(line) for line in _named(data["cells"], data["lines"])]
    sheets = _named(lines, data["sheets"].values())
    return {anchor: _numbered("\n".join(its)) for anchor, its in zip(data["sheets"], sheets, strict=True)}


def _named(texts: list[str], lists: Iterable[list[int]]) -> list[list[str]]:
    """The texts that lists name by their numbers from 1; 0 is the next that none has named so far."""
    new = count()
    return [[texts[number - 1 if number else next(new)] for number in one] for one in lists]


def _numbered(sheet: str) -> str:
    numbers = count(1)
    return re.sub("\ue000", lambda _: str(next(numbers)), sheet)


def test_every_link_leads_somewhere_and_no_id_stands_twice() -> None:
    page = drawn_page()
    places = Places(page)
    lines = {line for sheet in unpacked(page).values() for line in sheet.split("\n") if "href" in line}
    assert len(set(places.ids)) == len(places.ids)
    for target in places.targets | Places("\n".join(lines)).targets:
        assert target.startswith("#"), target
        assert target[1:] in places.ids, target


@pytest.mark.long
def test_the_page_needs_nothing_from_outside_and_is_the_same_each_time() -> None:
    page = drawn_page()
    assert page == review_page(unremedied(of_one_cylinder()))
    assert not re.search(r"(src|href)=[\"']?(https?:|//|file:)", page)
    assert "@import" not in page
    assert "url(" not in page
    assert len(page.encode("utf-8")) < 3_000_000


@pytest.mark.long
def test_the_pack_of_the_example_can_be_sent_by_post() -> None:
    """Under 3 MB with the sheets and drawings of the whole example: mail commonly takes 10 MB.

    Remedies, a line or two for each finding, are left out, since they are not sought here.
    """
    page = whole_page()
    assert 1_000_000 < len(page.encode("utf-8")) < 3_000_000


@pytest.mark.parametrize("alone", [False, True], ids=["the pack", "sheets alone"])
def test_the_policy_names_the_page_s_own_style_and_script_and_nothing_else(alone: bool) -> None:
    """Each by its digest, so that a browser refuses any other; and no element needs a style of its own."""
    checks = of_one_cylinder().checks[:3]
    page = sheet_document(of_one_cylinder(), checks) if alone else drawn_page()
    found = re.search(
        r'<meta charset=utf-8>\n<meta http-equiv=Content-Security-Policy content="([^"]*)">', page
    )
    assert found
    own = [
        ("style-src", re.search(r"<style>(.*?)</style>", page, re.DOTALL)),
        ("script-src", re.search(r"<script>(.*?)</script>", page, re.DOTALL)),
    ]
    digests = [
        f"{what} 'sha256-{base64.b64encode(hashlib.sha256(text[1].encode('utf-8')).digest()).decode()}'"
        for what, text in own
        if text
    ]
    assert len(digests) == 2 - alone
    policy = ["default-src 'none'", *digests, "base-uri 'none'", "form-action 'none'"]
    assert html.unescape(found[1]).split("; ") == policy
    for part in (page, *(() if alone else unpacked(page).values())):
        assert not Places(part).styles
    widths = re.findall(r'"drawing own-(\d+)"', page)
    assert alone or widths
    assert all(f".own-{width} {{ --own: {width}px; }}" in page for width in widths)


def test_every_assessed_check_has_its_sheet_or_that_of_a_check_with_the_same_figures() -> None:
    page = drawn_page()
    packed = unpacked(page)
    one = of_one_cylinder()
    assert one.design is not None
    firsts = firsts_of(one.checks, one.design.files)
    shown = [check for check in one.checks if check.outcome != "not applicable"]
    own = [check for check in shown if check.outcome == "conforms" and check.order not in firsts]
    assert 0 < len(own) < len(shown) - len(firsts)
    ids = set(Places(page).ids)
    assert {sheet_anchor(check) for check in own} <= packed.keys() <= ids
    for group in grouped(check for check in shown if check.order not in firsts):
        places = [sheet_anchor(check) in ids for check in group.checks]
        assert places[0]
        assert not any(places[1:]) or group.first.outcome == "not assessed"
    assert sum(sheet.count("<math>") for sheet in packed.values()) > 100


def test_the_verdict_stands_first_and_holds_before_findings() -> None:
    page = drawn_page()
    holds = [
        check
        for check in of_one_cylinder().checks
        if check.outcome == "finding" and check.grade and check.grade.word == "hold"
    ]
    assert holds
    top = page[page.index("id=holds") : page.index("id=coverage")]
    for check in holds:
        assert html.escape(check.rule.title, quote=False).replace("'", "&#39;") in top
    order = ("verdict", "holds", "coverage", "findings", "sheets", "overview", "sources")
    places = [page.index(f"<h2 id={name}>") for name in order]
    assert places == sorted(places)


@pytest.mark.parametrize("name", TEXTS)
def test_hostile_text_is_text_in_the_page(workshop: DesignFolder, name: str) -> None:
    workshop.loaded = tubes.tubes()
    text = quoted(TEXTS[name])
    workshop.write(FILES, settings=f"[works]\nname = {text}\n[local_codes]\npressure = [{text}]\n")
    workshop.replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", "hoops = 4", f"title = {text}")
    workshop.write({"odd.toml": tubes.TUBE.replace('kind = "tube"', f'kind = "tube"\nid = {text}')})
    workshop.write({"bad.toml": f'kind = "tube"\nends = {text}\n'})
    assessment = workshop.assess()
    page = review_page(assessment)
    sheets = unpacked(page)
    for part in (page, *sheets.values(), sheet_document(assessment, assessment.checks)):
        places = Places(part)
        assert not places.handlers
        assert all(target.startswith("#") for target in places.targets)
        assert all(letter == "\n" or letter.isprintable() for letter in part)
    assert page.count("<script") == 2
    assert "</style></title>" not in page


def test_a_concession_is_told_beside_its_finding(tmp_path: Path) -> None:
    office = Office(DesignFolder(tmp_path, tubes.tubes()).write(offices.FILES, settings=offices.SETTINGS))
    assert "<dt>concession<dd>none" in review_page(office.shop.assess())
    office.concede()
    page = review_page(office.shop.assess())
    assert "<dt>concession<dd>none" not in page
    assert "C-001, valid, by M. Coyle until" in page


@pytest.mark.parametrize(("wanted", "nice"), [(130.0, 100.0), (200.0, 200.0), (499.0, 200.0), (0.07, 0.05)])
def test_a_scale_bar_has_a_round_length(wanted: float, nice: float) -> None:
    assert niced(wanted) == pytest.approx(nice)


def test_marks_of_an_axis_are_round_and_cover_it() -> None:
    assert ticks(-90.0, 410.0) == [0.0, 100.0, 200.0, 300.0, 400.0]


def test_text_on_a_drawing_is_escaped_and_cut_to_its_room() -> None:
    paper = Paper('a" onload="x', "<b>", "]]>", 100, 100)
    assert '"' not in paper.name
    paper.text((0, 0), "<script>")
    assert "<script>" not in paper.markup()
    assert shortened("W" * 50, 62.0, 10.0) == "W" * 9 + "…"


def test_the_command_writes_the_pack(
    workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from speclint.families import loading as plugins

    monkeypatch.setattr(plugins, "installed", lambda: [tubes.entry_point("tubes")])
    workshop.write(FILES)
    target = workshop.root / "out" / "deep"
    assert main(["review", str(workshop.root), "--to", str(target)]) == 0
    out = capsys.readouterr()
    assert out.out.strip() == str(target / REVIEW_FILE)
    assert out.err == ""
    assert "IN ORDER as far as these rules go." in (target / REVIEW_FILE).read_text(encoding="utf-8")
    (workshop.root / "file").write_text("", encoding="utf-8")
    assert main(["review", str(workshop.root), "--to", str(workshop.root / "file")]) == 2
    assert "cannot be made" in capsys.readouterr().err


def test_a_sheet_can_be_had_as_html(
    workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from speclint.families import loading as plugins

    monkeypatch.setattr(plugins, "installed", lambda: [tubes.entry_point("tubes")])
    workshop.write(FILES)
    assert main(["sheet", "tube", "--in", str(workshop.root), "--as", "html"]) == 0
    page = capsys.readouterr().out
    places = Places(page)
    assert "math" in places.tags
    assert all(target[1:] in places.ids for target in places.targets)


def test_without_the_extra_it_says_what_to_install(
    workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    import sys

    monkeypatch.setitem(sys.modules, "svg", None)
    workshop.write(FILES)
    assert main(["review", str(workshop.root), "--to", str(workshop.root)]) == 2
    assert 'pip install "speclint[pack]"' in capsys.readouterr().err


class _Attributes(HTMLParser):
    """Every tag of a page, with its attributes as a browser reads them."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, list[tuple[str, str | None]]]] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, [one for one in attrs if one[0] != "xmlns"]))


def test_drawings_are_written_shorter_and_read_the_same() -> None:
    drawing = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" class="drawing own-9" role="img">'
        '<rect class="metal" x="-1.5" y="2" width="3"/><a href="#one" class="x"><text x="1" y="2">x="1" y</text></a>'
        '<path class="hatch" d="M1 2 3 4"/></svg>'
    )
    page = f'<p title="one" class="two" id="three">x="1" y</p>{drawing}<p title="one" class="two" id="three">'
    shorter = with_shorter_drawings(page)
    assert '<rect class=metal x=-1.5 y=2 width="3"/>' in shorter
    assert 'role="img">' in shorter
    assert "xmlns" not in shorter
    assert shorter.count('<p title="one" class="two" id="three">') == 2
    assert _Attributes(shorter).tags == _Attributes(page).tags
