"""How grave each mark is, what it says, and where it stands; what is told of a key. On one tube, by hand."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from speclint.editing.completions import _classes
from speclint.editing.hovers import hover
from speclint.editing.marks import Mark, of_complaints
from speclint.editing.workspace import OpenText, Workspace, _differing
from speclint.errors import Complaint, Location, replace
from speclint.rules import Judgement, Rule, Sheet
from speclint.testing import DesignFolder
from tests import tubes
from tests.own_limits import own_limit
from tests.register.office import SETTINGS, Office
from tests.tubes import FILES, TUBE, Tube


class Nowhere:
    """Made families lie in no file, by whose text what was read could be kept."""

    why_not = "a test keeps nothing"


@pytest.fixture(autouse=True)
def _keeps_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("speclint.editing.workspace.KeptFolder", lambda _: Nowhere())


def checked(folder: Path, text: str = TUBE, rules: Sequence[Rule] = (), settings: str = "") -> OpenText:
    """A tube as an editor has it open, with all its checks made."""
    loaded = tubes.tubes(*rules)
    DesignFolder(folder, loaded).write(FILES, settings=settings)
    return opened(Workspace(folder, loaded), text)


def opened(space: Workspace, text: str) -> OpenText:
    found = space.write("tube.toml", text)
    assert list(space.checking("tube.toml"))[-1]
    return found


def line_of(text: str, key: str) -> int:
    return next(number for number, line in enumerate(text.splitlines()) if line.startswith(key))


def test_what_is_not_assessed_is_told_once_for_the_rules_that_want_the_same(tmp_path: Path) -> None:
    """The outside is wanted by two safety rules and one that is none; the number of hoops by one that is none."""
    text = TUBE.replace('outside = "105 mm ±0.5"\n', "").replace("hoops = 4\n", "")
    found = {mark.weight: mark for mark in checked(tmp_path, text).marks()}
    assert found.keys() == {"warning", "hint"}
    assert found["warning"].says == (
        "not assessed, a safety check among them: outside is not stated in tube.toml: needed for "
        "tube.case-stress, tube.loose-hot, tube.stress"
    )
    assert found["warning"].rule == ""
    assert found["hint"].says == "not assessed: hoops is not stated in tube.toml: needed for tube.hoops"
    assert found["hint"].rule == "tube.hoops"


@pytest.mark.parametrize(
    ("change", "rule", "weight", "begins"),
    [
        (("30 bar", "45 bar"), "tube.stress", "error", "hold: mean hoop stress"),
        (("hoops = 4", "hoops = 3"), "tube.hoops", "information", "observation: hoops 3"),
        (('"open"', '"closed"'), "tube.ends", "warning", "query: "),
    ],
)
def test_a_finding_is_as_grave_as_its_grade(
    tmp_path: Path, change: tuple[str, str], rule: str, weight: str, begins: str
) -> None:
    (mark,) = checked(tmp_path, TUBE.replace(*change)).marks()
    assert (mark.rule, mark.weight) == (rule, weight)
    assert mark.says.startswith(begins)


def test_a_finding_stands_at_the_line_of_its_value_from_the_first_letter_to_the_last(tmp_path: Path) -> None:
    text = TUBE.replace("hoops = 4", "  hoops = 3   ")
    (mark,) = checked(tmp_path, text).marks()
    assert (mark.line, mark.start, mark.end) == (line_of(text, "  hoops"), 2, len("  hoops = 3"))


def test_a_finding_on_several_parts_of_a_file_names_them_once(tmp_path: Path) -> None:
    text = TUBE.replace('kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["a", "b"]')
    (mark,) = checked(tmp_path, text.replace("hoops = 4", "hoops = 3")).marks()
    assert mark.says.endswith(" (tube-a, tube-b)")


def test_a_conceded_finding_is_told_and_no_more(tmp_path: Path) -> None:
    """At 45 bar a hold, which the register accepts; at 46 bar another one, which it does not."""
    loaded = tubes.tubes()
    office = Office(DesignFolder(tmp_path, loaded))
    text = TUBE.replace("30 bar", "45 bar") + 'prepared_by = "A. Render"\n'
    office.shop.write({**FILES, "tube.toml": text}, settings=SETTINGS)
    office.concede()
    space = Workspace(tmp_path, loaded)
    (mark,) = opened(space, text).marks()
    assert (mark.rule, mark.weight) == ("tube.stress", "information")
    assert "C-001" in mark.says
    (mark,) = opened(space, text.replace("45 bar", "46 bar")).marks()
    assert (mark.rule, mark.weight) == ("tube.stress", "error")
    assert "C-001" not in mark.says


def test_the_limits_of_the_settings_count_in_an_editor(tmp_path: Path) -> None:
    """30 bar is 75.375 MPa by hand: in order at 100 MPa, and a hold where the settings allow 75 MPa."""
    assert checked(tmp_path).marks() == []
    limits = own_limit("tube.stress", "tubes", allowable="75 MPa")
    (mark,) = checked(tmp_path, settings=f'[works]\nstage = "draft"\n{limits}').marks()
    assert (mark.rule, mark.weight) == ("tube.stress", "error")


def reviewed(_: Tube, sheet: Sheet) -> Judgement:
    """Made for one test."""
    return sheet.states(sheet.outcomes().get("tube.hoops") == "conforms", "the hoops were found in order")


@pytest.mark.parametrize(("hoops", "found"), [(4, []), (3, ["tube.hoops", "tube.review"])])
def test_a_rule_that_reviews_the_others_knows_how_they_came_out(
    tmp_path: Path, hoops: int, found: list[str]
) -> None:
    review = replace(tubes.ends, name="tube.review", reviews=True, function=reviewed)
    text = TUBE.replace("hoops = 4", f"hoops = {hoops}")
    assert sorted(one.rule for one in checked(tmp_path, text, [*tubes.RULES, review]).marks()) == found


LINES = ["# a note", "", '  kind = "tube"  ', "hoops = 3"]


@pytest.mark.parametrize(
    ("where", "mark"),
    [
        (Location("tube.toml", 4, "hoops"), Mark(3, 0, 9, "error", "hoops: no; read 3; write 4")),
        (Location("tube.toml", 3, ""), Mark(2, 2, 15, "error", "no; read 3; write 4")),
        (Location("tube.toml", 0, "each"), Mark(0, 0, 8, "error", "each: no; read 3; write 4")),
        (Location("tube.toml", 9, "hoops"), Mark(3, 0, 9, "error", "hoops: no; read 3; write 4")),
        # that of another file stands at the first line that says something, with its own place in words
        (
            Location("rack.toml", 2, "hole"),
            Mark(2, 2, 15, "error", "hole: no; read 3; write 4 (at rack.toml:2 hole)"),
        ),
    ],
)
def test_a_complaint_stands_at_its_line(where: Location, mark: Mark) -> None:
    assert of_complaints([Complaint(where, "no", "3", "4")], "tube.toml", LINES) == [mark]


def test_a_complaint_says_what_was_read_only_where_it_is_known() -> None:
    where = Location("tube.toml", 4, "hoops")
    (mark,) = of_complaints([Complaint(where, "it is unknown")], "tube.toml", LINES)
    assert mark.says == "hoops: it is unknown"
    (mark,) = of_complaints([Complaint(where, "it is unknown")], "tube.toml", [])
    assert (mark.line, mark.start, mark.end) == (0, 0, 1)


@pytest.mark.parametrize(
    ("number", "last"),
    [(8, ""), (9, "- and 1 more check that rests on it"), (10, "- and 2 more checks that rest on it")],
)
def test_eight_checks_of_a_line_are_told_and_the_rest_is_counted(
    tmp_path: Path, number: int, last: str
) -> None:
    rules = [replace(tubes.stress, name=f"tube.s{one}") for one in range(number)]
    loaded = tubes.tubes(*rules)
    DesignFolder(tmp_path, loaded).write(FILES)
    space = Workspace(tmp_path, loaded)
    text = opened(space, TUBE)
    said = hover(space, text, line_of(TUBE, "bore"), 1).splitlines()
    told = [line for line in said if line.startswith("- ")]
    assert len([line for line in told if "tube.s" in line]) == 8
    assert (told[-1] if len(told) > 8 else "") == last


def test_the_checks_of_a_line_are_told_with_the_least_to_spare_first(tmp_path: Path) -> None:
    """Of the bore: 0.754 of the stress at 30 bar; 12 bar when starting are 0.302 by hand. The hoops take no bore."""
    loaded = tubes.tubes()
    DesignFolder(tmp_path, loaded).write(FILES)
    space = Workspace(tmp_path, loaded)
    text = opened(space, TUBE)
    said = hover(space, text, line_of(TUBE, "bore"), 1).splitlines()
    told = [line.partition(" on tube")[0] for line in said if line.startswith("- ")]
    assert [line.rpartition(" ")[2] for line in told] == ["tube.stress", "tube.case-stress"]
    assert told[0].startswith("- 0.75")
    assert "conforms: tube.stress" in told[0]
    missing = opened(space, TUBE.replace("hoops = 4", "hoops = 3"))
    said_of_hoops = hover(space, missing, line_of(TUBE, "hoops"), 1)
    assert "observation: tube.hoops on tube: " in said_of_hoops


@pytest.mark.parametrize(
    ("before", "now", "lines"),
    [
        ("abc", "abc", set()),
        ("abc", "axc", {2}),
        ("ab", "abc", {3}),
        ("abc", "ac", {2, 3}),
        ("abc", "xabc", {1, 2, 3, 4}),
        ("", "a", {1}),
    ],
)
def test_the_lines_that_differ(before: str, now: str, lines: set[int]) -> None:
    """Each letter is a line; from the first that differs on where one came or went."""
    assert _differing(before, now) == lines


def test_a_size_beyond_the_tables_of_classes_is_offered_none() -> None:
    """ISO 286-1 ends at 3150 mm."""
    assert [name for name, _ in _classes("100 mm") if name.startswith("H")]
    assert list(_classes("4000 mm")) == []
    assert list(_classes("a word")) == []
