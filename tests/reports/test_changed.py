"""What a change did to a design, in few lines, and findings in a line or two: by hand."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Alike, Assessment, Check, DesignChanges, ValueChange
from speclint.errors import replace
from speclint.register import Standing
from speclint.reports.changed import came_and_went, changes_on, rest, told
from speclint.reports.finding_lines import called, conceded_by, cut_to_one, gravity, row, short, used
from speclint.reports.page import Page
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import ONE
from tests.tubes import FILES

NONE = DesignChanges("HEAD", (), (), {}, (), ())


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    """A tube at 45 bar, whose ends are shut, in a rack."""
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace("30 bar", "45 bar").replace('"open"', '"closed"')
    return workshop.write({**FILES, "tube.toml": text}).assess()


def check(of: Assessment, rule: str) -> Check:
    (found,) = (one for one in of.checks if one.rule.name == rule)
    return found


def text_of(lines: list[object]) -> list[str]:
    page = Page(100)
    page.lines = lines  # type: ignore[assignment]  # lines of a page
    return [line.rstrip() for line in page.text().splitlines()]


def test_specs_that_a_change_adds_takes_away_and_alters() -> None:
    value = (ValueChange("bore", "1 mm", "2 mm"),)
    found = replace(NONE, added=("a", "b"), removed=("c",), changed={"d": value, "e": value, "f": value})
    assert told(found) == "2 specs added (a, b); 1 spec removed (c); 3 specs changed (d, e, f)"
    assert told(replace(found, added=(), changed={})) == "1 spec removed (c)"
    assert told(NONE) == "no spec differs"


def test_findings_come_and_go_the_gravest_first(tube: Assessment) -> None:
    stress, ends = check(tube, "tube.stress"), check(tube, "tube.ends")
    changes = replace(NONE, new=(ends, stress), cleared=(replace(stress, component="other"),))
    found = came_and_went(tube, changes)
    assert [word for word, _ in found] == ["new", "new", "cleared"]
    assert found[0][1].startswith("hold: tube: tube.stress: ")
    assert found[1][1].startswith("query: tube: ")
    assert found[2][1].startswith("hold: other: ")


def test_findings_alike_are_told_once(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    both = (stress, replace(stress, component="tube-b"), replace(stress, component="tube-c"))
    ((_, said),) = came_and_went(tube, replace(NONE, new=both))
    assert said.startswith("hold: tube: ")
    assert said.endswith(" (and 2 more alike)")
    unknown = replace(stress, outcome="not assessed", grade=None)
    ((_, said),) = came_and_went(tube, replace(NONE, new=(unknown,)))
    assert said.startswith("finding, not assessed: tube: ")
    assert "alike" not in said


def test_the_section_of_page_one_writes_out_five(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    findings = tuple(replace(stress, component=f"tube-{number}", alike=f"{number}") for number in range(7))
    assert changes_on(tube, 100) == []
    few = replace(tube, changes=replace(NONE, added=("tube",), new=findings[:5]))
    found = text_of(changes_on(few, 100))  # type: ignore[arg-type]  # lines of a page
    assert found[:2] == ["", "Since HEAD: 1 spec added (tube)"]
    assert [line.split(":")[0] for line in found[2:]] == ["   new  hold"] * 5
    many = replace(tube, changes=replace(NONE, new=findings[:6], cleared=findings[:2]))
    more = text_of(changes_on(many, 100))  # type: ignore[arg-type]
    assert len(more) == 8
    assert more[-1] == "        and 1 more new, 2 more cleared"
    assert all(len(line) <= 100 for line in more)
    none = text_of(changes_on(replace(tube, changes=NONE), 100))  # type: ignore[arg-type]
    assert none == ["", "Since HEAD: no spec differs", "        no finding is new, and none is cleared"]


def test_rows_that_are_left_out_are_counted() -> None:
    rows = [("new", "x")] * 4 + [("cleared", "y")] * 3
    assert rest(rows) == "and 2 more cleared"
    assert rest(rows[:5]) == ""
    assert rest([]) == "no finding is new, and none is cleared"


LONG = "word " * 60


def test_a_row_takes_two_lines_at_the_most() -> None:
    (figure, text), second = row("1.13", LONG, 60, "hold")
    assert figure == ("  1.13  ", "hold")
    assert text[0] == " ".join(["word"] * 10)
    ((last, _),) = second
    assert last.endswith("word …")
    assert len(last) <= 60
    assert row("1.13", "short", 60) == [(("  1.13  ", ""), ("short", ""))]


def test_a_row_cut_to_one_line_says_that_it_is_cut() -> None:
    short_row = row("1.13", "short", 60)
    assert cut_to_one(short_row, 60) is short_row
    ((_, (text, _)),) = cut_to_one(row("1.13", LONG, 60), 60)
    assert text == "word " * 9 + "word …"
    two = row("1.13", "words that end early in a " + "x" * 45, 60)
    ((_, (text, _)),) = cut_to_one(two, 60)
    assert text == "words that end early in a …"
    full = row("1.13", "a" * 20 + " " + "b" * 31 + " end", 60)
    ((_, (text, _)),) = cut_to_one(full, 60)
    assert text == "a" * 20 + " …"


def test_what_is_used_of_a_limit(tube: Assessment) -> None:
    stress, ends = check(tube, "tube.stress"), check(tube, "tube.ends")
    assert used(stress) == "1.13"
    assert stress.judgement is not None
    for share, said in ((10.0, "10.00"), (10.01, "> 10")):
        assert used(replace(stress, judgement=replace(stress.judgement, utilisation=share))) == said
    assert used(ends) == "–"


def test_the_gravest_and_the_most_used_stand_first(tube: Assessment) -> None:
    """Stress uses 1.13 of its limit, hoops 1.00; that the ends are shut has no number."""
    stress, hoops, ends = (check(tube, name) for name in ("tube.stress", "tube.hoops", "tube.ends"))
    grave = [replace(one, grade=Grade.HOLD) for one in (ends, hoops, stress)]
    mild = [replace(one, component="a", grade=Grade.QUERY) for one in (stress, ends)]
    none = replace(hoops, component="b", grade=None)
    found = sorted((Alike((one,)) for one in (none, *mild, *grave)), key=gravity)
    assert [(one.first.component, one.first.rule.name) for one in found] == [
        ("tube", "tube.stress"),
        ("tube", "tube.hoops"),
        ("tube", "tube.ends"),
        ("a", "tube.stress"),
        ("a", "tube.ends"),
        ("b", "tube.hoops"),
    ]


def test_what_fails_in_few_words(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    assert short(stress).startswith("tube.stress: ")
    assert short(replace(stress, could_not_run="a fault")) == "tube.stress could not be run"
    assert stress.judgement is not None
    brief = replace(stress, judgement=replace(stress.judgement, brief="the wall is thin"))
    assert short(brief) == "the wall is thin"


def test_a_component_is_called_with_its_drawing(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    drawn = 'drawing = "X-2"\n'
    files = {"a": "", "b": drawn, "c": drawn + 'revision = "B"\n'}
    workshop.write({f"{name}.toml": 'kind = "tube"\n' + text for name, text in files.items()})
    found = workshop.assess()
    assert [called(found, name) for name in "abcd"] == ["a", "b (X-2)", "c (X-2 B)", "d"]
    assert called(replace(found, design=None), "b") == "b"


def test_a_finding_says_how_its_concession_stands(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    assert conceded_by(stress, {}) == ""
    valid, lapsed = Standing(ONE, "valid", ()), Standing(ONE, "lapsed", ())
    assert conceded_by(stress, {stress.order: valid}) == "conceded by A. Bell until 2028-01-02 (C-1)"
    assert conceded_by(stress, {stress.order: lapsed}) == "C-1 is entered, lapsed"
