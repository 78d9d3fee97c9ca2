"""The full report of a check, by hand: what every part of it says, and that a part without anything is left out."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from speclint import Grade
from speclint.checking import Assessment, Check
from speclint.errors import Complaint, Location, replace
from speclint.register import StagedAssessment
from speclint.reports import staged_page, terminal_page
from speclint.reports.page_one import page_one
from speclint.reports.phrases import CAUTION, CAUTIONS, said_of_item
from speclint.repository import PassedOver, Register
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import LAPSED, VALID
from tests.tubes import FILES

LINE = "─" * 180
DRAWN = 'drawing = "T-1"\nrevision = "B"\n'
OVER = FILES["tube.toml"].replace("30 bar", "45 bar").replace('"open"', '"closed"').replace("hoops = 4\n", "")


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    """A tube at 45 bar whose ends are shut and whose hoops are not stated, with a drawing."""
    workshop.loaded = tubes.tubes()
    settings = '[works]\nstage = "for-review"\n'
    return workshop.write({**FILES, "tube.toml": OVER + DRAWN}, settings=settings).assess()


def of(found: Assessment, width: int = 180, **other: Any) -> list[str]:
    return terminal_page.write(found, width, **other).text().splitlines()


def below(page: list[str], heading: str) -> list[str]:
    """The lines below a heading up to the next part of the page."""
    start = page.index(heading) + 1
    ends = (number for number, line in enumerate(page[start:], start) if line == LINE)
    return page[start : next(ends, len(page))]


def with_check(found: Assessment, rule: str, change: Callable[[Check], Check]) -> Assessment:
    return replace(found, checks=tuple(change(one) if one.rule.name == rule else one for one in found.checks))


def test_a_finding_says_what_is_wanted_what_is_why_where_and_what_would_clear_it(tube: Assessment) -> None:
    page = of(tube)
    heading = "tube   tube, drawing T-1 rev. B"
    assert below(page, f"{heading}{'tube.toml':>{180 - len(heading)}}") == [
        "",
        "  HOLD  tube.stress, 1.13 of the limit",
        "        requirement  the tube carries its pressure",
        "        actual       mean hoop stress of a tube 113.1 MPa > 100 MPa allowable stress",
        "        at worst     bore 100.5 mm (greatest); outside 104.5 mm (least)",
        "        where        tube.toml:4 bore",
        "        remedy       bore from 100 mm ±0.5 to 99.5 mm ±0.5, all else equal",
        "        or           pressure from 45 bar gauge to 39.8 bar gauge, all else equal",
        "        source       first principles",
        "",
        "  QUERY  tube.ends",
        "        requirement  the ends are stated and open",
        "        actual       the ends are open",
        "        where        tube.toml:1",
        "        source       first principles",
        "",
    ]


def test_only_two_remedies_are_shown(tube: Assessment) -> None:
    (stress,) = (one for one in tube.checks if one.rule.name == "tube.stress")
    assert len(tube.remedies(stress)) > 2
    labels = [line.split()[0] for line in below(of(tube), LINE) if line.startswith("        ")]
    assert labels.count("remedy") == labels.count("or") == 1


def test_what_else_a_finding_can_say(tube: Assessment) -> None:
    (stress,) = (one for one in tube.checks if one.rule.name == "tube.stress")
    assert stress.judgement is not None
    beside = replace(stress.judgement, says="the wall is too thin")
    cited = replace(stress.rule, cites=stress.rule.cites * 3)
    full = replace(
        stress,
        case="starting",
        missing=("the bore", "the wall"),
        failing=(stress.judgement, beside),
        alike="same",
        rule=cited,
    )
    other = replace(full, component="rack")
    page = of(replace(tube, checks=(full, other)))
    said = [line.strip() for line in page if line.startswith("        ")]
    assert "at worst     load case starting; bore 100.5 mm (greatest); outside 104.5 mm (least)" in said
    assert "needs        the bore; the wall" in said
    assert "and          alike on 1 part: tube" in said
    assert "source       first principles; and 2 more on the sheet" in said
    assert sum(line.startswith("and   ") for line in said) == 2
    assert f"and          {said_of_item(beside)}" in said
    assert said.index("and          alike on 1 part: tube") > said.index("needs        the bore; the wall")
    assert not any(line.startswith("concession") for line in said)


def test_a_concession_stands_below_its_finding(tube: Assessment) -> None:
    conceded = replace(tube, register=Register("register.toml", (VALID.concession,)))
    (said,) = (line for line in of(conceded) if line.startswith("        concession"))
    assert said.startswith("        concession   C-1 is entered, ")


def test_a_heading_that_is_too_long_has_two_lines(tube: Assessment) -> None:
    """By hand: two spaces, "HOLD", "  tube.stress" and ", 1.13 of the limit" are 38 letters."""
    assert "  HOLD  tube.stress, 1.13 of the limit" in of(tube, 38)
    narrow = of(tube, 37)
    assert "  HOLD  tube.stress, 1.13 of the limit" not in narrow
    at = narrow.index("  HOLD")
    assert narrow[at + 1] == "    tube.stress, 1.13 of the limit"


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ("", "tube   tube"),
        ('drawing = "T-1"\n', "tube   tube, drawing T-1"),
        ('revision = "B"\n', "tube   tube"),
    ],
)
def test_a_component_is_described_by_its_kind_and_its_drawing(
    workshop: DesignFolder, lines: str, said: str
) -> None:
    workshop.loaded = tubes.tubes()
    page = of(workshop.write({**FILES, "tube.toml": OVER + lines}).assess())
    assert f"{said}{'tube.toml':>{180 - len(said)}}" in page


def test_findings_of_a_component_stand_with_the_gravest_first(tube: Assessment) -> None:
    graver = with_check(tube, "tube.ends", lambda one: replace(one, grade=Grade.HOLD))
    words = [line.split()[0] for line in of(graver) if line.startswith(("  HOLD", "  QUERY"))]
    assert words == ["HOLD", "HOLD"]
    lesser = with_check(tube, "tube.stress", lambda one: replace(one, grade=Grade.OBSERVATION))
    words = [
        line.split()[0] for line in of(lesser) if line.startswith(("  QUERY  tube.ends", "  OBSERVATION  "))
    ]
    assert words == ["QUERY", "OBSERVATION"]


def test_what_was_not_assessed_stands_by_component_and_need(tube: Assessment) -> None:
    hoops = next(one for one in tube.checks if one.rule.name == "tube.hoops")
    held = replace(hoops, component="rack", grade=Grade.HOLD, rule=replace(hoops.rule, name="tube.b"))
    more = [replace(hoops, missing=("a", "b")), replace(held, component="tube"), hoops]
    page = of(replace(tube, checks=(*tube.checks, held, *more)))
    assert page[page.index("NOT ASSESSED  (5)") - 1] == LINE
    assert below(page, "NOT ASSESSED  (5)") == [
        "What a check needs and the design does not state. A safety rule that is not assessed is a hold.",
        "",
        "  tube",
        "    needs  hoops is not stated in tube.toml",
        "    for    tube.hoops",
        "",
        "  rack",
        "    needs  hoops is not stated in tube.toml",
        "    for    tube.b (HOLD)",
        "",
        "  tube",
        "    needs  a; b",
        "    for    tube.hoops",
        "    needs  hoops is not stated in tube.toml",
        "    for    tube.b (HOLD), tube.hoops",
        "",
    ]


def test_in_a_draft_checks_that_wait_for_values_alone_are_counted_and_listed_below(
    workshop: DesignFolder,
) -> None:
    workshop.loaded = tubes.tubes()
    found = workshop.write({**FILES, "tube.toml": OVER}, settings='[works]\nstage = "draft"\n').assess()
    page = of(found)
    assert below(page, "NOT ASSESSED  (1)")[1:] == [
        "1 check of this draft waiting for values alone: they are listed below.",
        "",
    ]
    assert page.index("NOT ASSESSED  (1)") < page.index("STILL TO BE STATED  (1)")
    listed = below(page, "STILL TO BE STATED  (1)")
    assert listed[0] == "Values that the checks of this draft want."
    assert listed[1] == ""
    assert "    tube: hoops" in listed
    finished = workshop.write({}, settings='[works]\nstage = "for-review"\n').assess()
    assert below(of(finished), "NOT ASSESSED  (1)")[-2:] == ["    for    tube.hoops", ""]
    assert not any("STILL TO BE" in line for line in of(finished))


def test_what_could_not_be_read_says_where_what_and_what_to_write(tube: Assessment) -> None:
    complaints = (
        Complaint(Location("bad.toml", 2, "bore"), "a comma is not a decimal point", '"5,5 mm"', '"5.5 mm"'),
        Complaint(Location("worse.toml"), "it is empty", "", ""),
    )
    page = of(replace(tube, complaints=complaints))
    start = page.index("COULD NOT BE READ  (2)")
    assert page[start - 1] == ""
    assert page[start + 1 : start + 10] == [
        "",
        "  bad.toml:2 bore",
        "    a comma is not a decimal point",
        '    read       "5,5 mm"',
        '    write      "5.5 mm"',
        "",
        "  worse.toml",
        "    it is empty",
        "",
    ]
    assert not any("COULD NOT BE READ" in line for line in of(tube))


def test_files_that_are_passed_over_and_old_keys_have_a_part_each(
    tube: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert not any("PASSED OVER" in line or "OLD KEYS" in line for line in of(tube))
    assert tube.design is not None
    passed = tuple(PassedOver(file, why) for file, why in (("b", "y"), ("a", "x"), ("c", "y")))
    found = replace(tube, design=replace(tube.design, passed_over=passed))
    note = Complaint(Location("tube.toml", 3, "diameter"), "it is called otherwise", "", "bore")
    monkeypatch.setattr(Assessment, "old_keys", (note, replace(note, where=Location("rack.toml", 2))))
    page = of(found)
    start = page.index("PASSED OVER  (3)")
    assert page[start - 1 : start + 9] == [
        "",
        "PASSED OVER  (3)",
        "  TOML files that were not read as specs, and folders that were not looked into.",
        "  a: x",
        "  b, c: y",
        "",
        "OLD KEYS  (2)",
        "  They are read for one more edition.",
        "  tube.toml:3 diameter: write bore",
        "  rack.toml:2: write bore",
    ]


def test_the_end_says_to_whom_holds_are_referred_and_which_limits_are_set(tube: Assessment) -> None:
    assert of(tube)[-6:] == [
        "",
        LINE,
        "Holds are referred to the local codes (none is named in speclint.toml); and a competent person.",
        "1 hold, 1 query; 2 conform, 1 not assessed, 0 not applicable.",
        *CAUTIONS,
    ]
    calm = with_check(tube, "tube.stress", lambda one: replace(one, grade=Grade.QUERY))
    assert not any("Holds are referred" in line for line in of(calm))
    assert not any("Limits set" in line for line in of(calm))


def test_page_one_alone_has_the_short_caution_and_no_detail(tube: Assessment) -> None:
    short = of(tube, full=False)
    assert short[-1] == CAUTION
    assert LINE not in short
    assert not any("NOT ASSESSED" in line or "requirement" in line for line in short)
    page = page_one(tube, 180, {}, alone=False).text().splitlines()
    assert of(tube)[: len(page)] == page
    assert CAUTION not in page


def test_what_is_staged_stands_above_the_report(tube: Assessment) -> None:
    found = StagedAssessment(tube, ("tube.toml", "rack.toml"), (VALID, LAPSED), ("gone.toml", "lost.toml"))
    page = staged_page(found, 180).text().splitlines()
    assert page[:7] == [
        "As staged, not as in the work tree: 2 files staged.",
        "Looked at: duty, rack, tube.",
        "Removed, so that what they held is no longer checked: gone.toml, lost.toml.",
        "Accepted: tube tube.stress by C-1, until 2028-01-02.",
        "Accepted: tube tube.stress by C-2, until 2028-01-02.",
        "",
        of(tube)[0],
    ]
    assert page[6:] == of(tube)
    brief = staged_page(replace(found, accepted=(), removed=()), 180, full=False).text().splitlines()
    assert brief[2] == ""
    assert brief[3:] == of(tube, full=False)
    assert tube.design is not None
    nothing = replace(tube, design=replace(tube.design, selected=frozenset()))
    page = staged_page(StagedAssessment(nothing, (), ()), 180).text().splitlines()
    assert page[:2] == [
        "As staged, not as in the work tree: 0 files staged.",
        "Nothing that is staged affects a component.",
    ]
    unread = StagedAssessment(replace(tube, design=None, checks=()), (), ())
    assert "Nothing that is staged affects" in staged_page(unread, 140).text()
