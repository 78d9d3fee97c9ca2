"""Page one by hand: what stands in each of its parts, up to how many lines, and what it leaves out."""

from __future__ import annotations

from typing import Any

import pytest

from speclint import Grade
from speclint.checking import Assessment, Check
from speclint.errors import Complaint, Location, replace
from speclint.reports.page_one import page_one
from speclint.reports.phrases import CAUTION
from speclint.repository import Design, PassedOver
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import LAPSED, VALID
from tests.tubes import FILES

WIDE = 300


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    workshop.loaded = tubes.tubes()
    return workshop.write(FILES, settings='[works]\nstage = "for-review"\n').assess()


def stress(of: Assessment, used: float | None, outcome: Any = "conforms", **other: Any) -> Check:
    found = next(one for one in of.checks if one.rule.name == "tube.stress")
    assert found.judgement is not None
    judged = replace(found.judgement, utilisation=used, brief="too much")
    return replace(found, judgement=judged, outcome=outcome, **other)


def held(of: Assessment, used: float | None = 1.2, **other: Any) -> Check:
    return stress(of, used, "finding", **{"grade": Grade.HOLD, **other})


def page(of: Assessment, *checks: Check, **other: Any) -> list[str]:
    """Of checks of parts that need not be there, so that no design is looked at."""
    found = replace(of, checks=checks, design=None)
    return page_one(found, WIDE, other.pop("conceded", {}), **other).text().splitlines()


def whole(of: Assessment) -> list[str]:
    return page_one(of, WIDE, {}).text().splitlines()


def below(lines: list[str], heading: str) -> list[str]:
    """The lines below a heading up to the next empty one."""
    start = lines.index(heading) + 1
    return lines[start : lines.index("", start)]


def test_the_heading_counts_what_was_looked_at(tube: Assessment) -> None:
    lines = whole(tube)
    assert lines[0] == f"{tube.root.name}{'stage: for-review':>{WIDE - len(tube.root.name)}}"
    assert lines[1] == "3 specs · 5 checks · 1 family"
    assert lines[2] == ""
    named = replace(tube, settings=None, design=None)
    lines = whole(named)
    assert lines[0].endswith("settings could not be read")
    assert lines[1] == "0 specs · 5 checks · 1 family"


def test_the_name_of_the_works_stands_in_place_of_the_folder(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    found = workshop.write(FILES, settings='[works]\nname = "Corrow and Ness"\n').assess()
    assert whole(found)[0].startswith("Corrow and Ness   ")


def test_holds_stand_with_what_they_use_the_gravest_first(tube: Assessment) -> None:
    some = (held(tube, 1.1), held(tube, 1.3, component="rack"), held(tube, None, component="duty"))
    lines = page(tube, *some)
    assert below(lines, "3 holds, the gravest first, with the share of the limit used") == [
        "  1.30  rack: too much",
        "  1.10  tube: too much",
        "     –  duty: too much",
    ]


def test_holds_of_parts_alike_stand_in_one_line_with_who_conceded_them(tube: Assessment) -> None:
    some = [held(tube, alike="a"), held(tube, alike="a", component="rack"), held(tube, 1.1, component="duty")]
    lines = page(tube, *some, conceded={("duty", "tube.stress"): LAPSED, ("pipe", "tube.stress"): VALID})
    assert below(lines, "3 holds in 2 lines, the gravest first, with the share of the limit used") == [
        "  1.20  rack and 1 more alike: too much",
        "  1.10  duty, C-2 is entered, lapsed: too much",
    ]


def test_what_is_said_of_unlike_parts_without_a_number_stands_once(tube: Assessment) -> None:
    """One cause, such as settings without a code; what a number says of two parts stands twice."""
    some = [held(tube, None, alike="a"), held(tube, None, alike="b", component="rack")]
    lines = page(tube, *some, held(tube, alike="c", component="duty"), held(tube, alike="d", component="x"))
    assert below(lines, "4 holds in 3 lines, the gravest first, with the share of the limit used") == [
        "  1.20  duty: too much",
        "  1.20  x: too much",
        "     –  rack and 1 more: too much",
    ]


def test_the_same_words_stand_apart_where_one_is_conceded(tube: Assessment) -> None:
    some = [held(tube, None, alike="a"), held(tube, None, alike="b", component="rack")]
    lines = page(tube, *some, conceded={("rack", "tube.stress"): LAPSED})
    assert below(lines, "2 holds, the gravest first, with the share of the limit used") == [
        "     –  rack, C-2 is entered, lapsed: too much",
        "     –  tube: too much",
    ]


def test_what_most_parts_want_stands_first(tube: Assessment) -> None:
    def open_one(name: str, wants: str) -> Check:
        return stress(tube, None, "not assessed", component=name, missing=(wants,), grade=Grade.HOLD)

    lines = page(tube, open_one("t1", "a"), open_one("t2", "b"), open_one("t3", "b"))
    assert below(lines, "3 safety checks not assessed") == [
        "        t2 and 1 more, tube.stress: b",
        "        t1, tube.stress: a",
    ]


def test_of_many_holds_as_many_stand_as_there_is_room_for(tube: Assessment) -> None:
    """Forty lines: three of heading, two of verdict and sums, one empty with one heading, two of the caution."""
    some = [held(tube, 2 - index / 100, component=f"t{index:02}") for index in range(60)]
    lines = page(tube, *some)
    assert len(lines) == 40
    start = lines.index("60 holds, the gravest first, with the share of the limit used") + 1
    shown = [line for line in lines[start:] if ": too much" in line]
    assert lines[start + len(shown)] == f"        and {60 - len(shown)} more: speclint check --full"
    assert shown[0] == "  2.00  t00: too much"
    alone = page(tube, *some, alone=False)
    assert CAUTION not in alone


def test_the_page_is_full_before_any_hold_is_left_out(tube: Assessment) -> None:
    """The last number of holds of which each has its line leaves no line of the forty empty."""
    some = [held(tube, 2 - index / 100, component=f"t{index:02}") for index in range(60)]
    pages = [page(tube, *some[:number]) for number in range(20, 40)]
    whole_pages = [one for one in pages if not any("more: speclint check" in line for line in one)]
    assert len(whole_pages[-1]) == 40
    assert len(whole_pages) < len(pages)
    cut = pages[len(whole_pages)]
    assert len(cut) == 40
    assert any("and 2 more: speclint check" in line for line in cut), "one of them made room for these words"


def test_other_findings_are_counted_with_the_first_of_them(tube: Assessment) -> None:
    def found(grade: Grade, number: int) -> list[Check]:
        return [held(tube, 1.5 - index / 10, component=f"t{index}", grade=grade) for index in range(number)]

    lines = page(tube, *found(Grade.NONCONFORMITY, 3), *found(Grade.QUERY, 1))
    assert below(lines, "3 nonconformities") == [
        "  1.50  t0: too much",
        "  1.40  t1: too much",
        "  1.30  t2: too much",
    ]
    assert below(lines, "1 query") == ["  1.50  t0: too much"]
    lines = page(tube, *found(Grade.NONCONFORMITY, 4), *found(Grade.QUERY, 2), *found(Grade.OBSERVATION, 2))
    assert len(below(lines, "4 nonconformities, the first 3 here")) == 3
    assert len(below(lines, "2 queries, the first here")) == 1
    assert not any(line.startswith("2 observations") for line in lines)


def test_safety_checks_that_are_not_assessed_say_what_they_want(tube: Assessment) -> None:
    def open_one(number: int, **other: Any) -> Check:
        more = {"missing": ("a", f"b{number}"), "grade": Grade.HOLD, **other}
        return stress(tube, None, "not assessed", component=f"t{number}", **more)

    lines = page(tube, *(open_one(number) for number in range(4)), open_one(9, grade=None))
    assert below(lines, "4 safety checks not assessed") == [
        f"        t{number}, tube.stress: a; b{number}" for number in range(3)
    ]
    (said,) = below(page(tube, open_one(0, missing=(), says="nobody knows")), "1 safety check not assessed")
    assert said == "        t0, tube.stress: nobody knows"


def test_a_draft_does_not_name_those_that_wait_for_values_alone(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace('pressure = "30 bar gauge"\n', "")
    for stage, there in (("draft", False), ("for-review", True)):
        found = workshop.write(
            {**FILES, "tube.toml": text}, settings=f'[works]\nstage = "{stage}"\n'
        ).assess()
        lines = whole(found)
        assert ("1 safety check not assessed" in lines) is there


def test_what_conforms_with_the_least_to_spare_stands_nearest_first(tube: Assessment) -> None:
    """From eight tenths on; at the limit itself it is only counted, and the same on several parts stands once."""
    some = [
        stress(tube, used, component=f"t{index}") for index, used in enumerate((0.8, 0.95, 0.799, 1.0, 0.95))
    ]
    (said,) = below(page(tube, *some), "Conforming with the least to spare")
    assert said == "        0.950 t1 tube.stress; 0.800 t0 tube.stress; and 1 exactly at the limit"
    bare = [replace(one, governing=()) for one in some]
    assert "Conforming with the least to spare" not in page(tube, *bare), "no tolerance moves them"
    wrong = [replace(one, outcome="finding", grade=Grade.OBSERVATION) for one in some]
    assert "Conforming with the least to spare" not in page(tube, *wrong)
    only = [stress(tube, 1.0)]
    assert "Conforming with the least to spare" not in page(tube, *only)


def test_ten_stand_there_and_four_where_holds_are_cut(tube: Assessment) -> None:
    near = [stress(tube, 0.8 + index / 100, component=f"n{index}") for index in range(12)]
    (said,) = below(page(tube, *near), "Conforming with the least to spare")
    assert said.count("tube.stress") == 10
    assert said.startswith("        0.910 n11 tube.stress; 0.900 n10")
    many = [held(tube, 2 - index / 100, component=f"t{index:02}") for index in range(60)]
    (said,) = below(page(tube, *near, *many), "Conforming with the least to spare")
    assert said.count("tube.stress") == 4


def test_the_foot_says_what_a_draft_still_wants(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace("hoops = 4\n", "")
    found = workshop.write({**FILES, "tube.toml": text}, settings='[works]\nstage = "draft"\n').assess()
    assert whole(found)[-3:] == [
        "",
        "1 value still to be stated: speclint check --full lists them at its end.",
        CAUTION,
    ]
    done = workshop.write({}, settings='[works]\nstage = "for-review"\n').assess()
    assert whole(done)[-2:] == ["", CAUTION]


def test_the_foot_counts_what_else_must_be_known(tube: Assessment, monkeypatch: pytest.MonkeyPatch) -> None:
    assert tube.design is not None
    passed = replace(tube.design, passed_over=(PassedOver("a", "x"), PassedOver("b", "y")))
    note = Complaint(Location("tube.toml", 3), "it is old", "", "bore")
    assert whole(replace(tube, design=passed))[-2] == "2 TOML files passed over: listed below."
    monkeypatch.setattr(Assessment, "old_keys", (note,))
    monkeypatch.setattr(Assessment, "changed_limits", ("a is 2",))
    told = "2 TOML files passed over, 1 old key read: listed below. 1 limit set in speclint.toml: see --full."
    assert whole(replace(tube, design=passed))[-2] == told


def test_the_heading_says_of_how_many_specs_only_the_index_is_known(
    tube: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Design, "only_indexed", 1)
    told = "3 specs · 5 checks · 1 family · 2 of 3 specs read for this, 1 indexed before"
    assert whole(tube)[1] == told
