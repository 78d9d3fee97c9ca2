"""Which checks count as moved when a value is another, by how much, and in which order they are told."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Check, margins, question
from speclint.checking.one_corner import written_at
from speclint.checking.swings import AtCorner
from speclint.checking.what_if import MovedMargin, _differs, _moved, _order
from speclint.errors import SettingsError, replace
from speclint.rules import Amount, Grade, Judgement
from speclint.testing import DesignFolder
from tests import tubes
from tests.checking.test_worked_once import cool
from tests.tubes import DUTY, FILES


@pytest.fixture
def check(tmp_path: Path) -> Check:
    """0.75375 of the limit is used."""
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES).only("tube.stress")


def used(check: Check, share: float | None, **more: Any) -> Check:
    """The check with another share of its limit used."""
    assert check.judgement is not None
    judged = None if share is None else replace(check.judgement, utilisation=share)
    return replace(check, judgement=judged, **more)


def without_share(check: Check, found: float) -> Check:
    """The check of a clearance that is nothing or less where 0.2 mm are wanted."""
    judged = Judgement(False, "", math.inf, Amount(found, "m"), Amount(0.0002, "m"))
    return replace(check, judgement=judged)


@pytest.mark.parametrize(
    ("before", "after", "by"),
    [
        (0.5, 0.75, 0.25),
        (0.75, 0.5, -0.25),
        (0.5, math.inf, math.inf),
        (math.inf, 0.5, -math.inf),
        (math.inf, math.inf, 0.0),
        (None, 0.5, 0.0),
        (0.5, None, 0.0),
    ],
)
def test_by_how_much_more_is_used(check: Check, before: float | None, after: float | None, by: float) -> None:
    assert MovedMargin(used(check, before), used(check, after)).by == by


def test_of_a_check_that_is_on_one_side_only_nothing_more_is_used(check: Check) -> None:
    assert MovedMargin(None, check).by == MovedMargin(check, None).by == 0.0
    assert MovedMargin(None, check).check is check
    assert MovedMargin(check, None).check is check
    other = replace(check, says="then")
    assert MovedMargin(check, other).check is other


@pytest.mark.parametrize(
    ("before", "after", "differs"),
    [
        (0.5, 0.5, False),
        (0.5, 0.5 + 1e-10, False),  # rounding
        (0.5, 0.5 + 1e-8, True),
        (0.0, 1e-10, False),
        (0.0, 1e-8, True),
        (1e9, 1e9 + 0.5, False),  # of so much
        (None, None, False),
        (None, 0.5, True),
        (0.5, None, True),
        (math.inf, math.inf, False),
    ],
)
def test_another_share_of_the_limit_is_a_change(
    check: Check, before: float | None, after: float | None, differs: bool
) -> None:
    assert _differs(MovedMargin(used(check, before), used(check, after))) is differs


@pytest.mark.parametrize(("then", "differs"), [(-0.001, False), (-0.0010000000001, False), (-0.0011, True)])
def test_where_no_share_is_left_what_lies_beyond_the_limit_tells_a_change(
    check: Check, then: float, differs: bool
) -> None:
    """A clearance of -1 mm, and of -1.1 mm, where 0.2 mm are wanted: 1.2 and 1.3 mm beyond."""
    before, after = without_share(check, -0.001), without_share(check, then)
    assert _differs(MovedMargin(before, after)) is differs


def test_another_outcome_or_grade_is_a_change(check: Check) -> None:
    assert _differs(MovedMargin(check, replace(check, outcome="finding", grade=Grade.HOLD)))
    one = replace(check, outcome="finding", grade=Grade.QUERY)
    assert _differs(MovedMargin(one, replace(one, grade=Grade.HOLD)))
    idle = replace(check, outcome="not applicable")
    assert _differs(MovedMargin(None, check))
    assert not _differs(MovedMargin(None, idle))
    assert not _differs(MovedMargin(idle, None))


def test_the_checks_of_both_sides_are_held_against_each_other(check: Check) -> None:
    same, gone, moved, come = (replace(check, component=name) for name in ("a", "b", "c", "d"))
    found = list(_moved([same, gone, moved], [used(moved, 0.9), same, come]))
    assert [(one.check.component, one.before is None, one.after is None) for one in found] == [
        ("b", False, True),
        ("c", False, False),
        ("d", True, False),
    ]


def test_what_comes_to_stand_in_the_way_is_told_first_and_then_the_worst_change(check: Check) -> None:
    fails = {"outcome": "finding", "grade": Grade.QUERY}

    def one(name: str, before: float, after: float, **more: Any) -> MovedMargin:
        return MovedMargin(used(check, before, component=name), used(check, after, component=name, **more))

    new, little, much, less = (
        one("z", 0.9, 1.0, **fails),
        one("b", 0.5, 0.625),
        one("c", 0.5, 0.75),
        one("a", 0.5, 0.25),
    )
    already = MovedMargin(used(check, 1.0, component="d", **fails), used(check, 2.0, component="d", **fails))
    first, second = one("e", 0.5, 0.625), one("f", 0.5, 0.625)
    some = [less, second, first, little, much, already, new]
    assert sorted(some, key=_order) == [new, already, much, little, first, second, less]


@pytest.mark.parametrize(
    "said", ["tube.bore", "tube.bore=", "tube.bore= ", "tube=3 mm", "=3 mm", ".bore=3 mm"]
)
def test_a_question_that_is_not_written_so_is_refused(tmp_path: Path, said: str) -> None:
    design = DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess().design
    assert design is not None
    with pytest.raises(SettingsError, match=f"^--set {said}: "):
        question(said, design)
    asked = question(" tube.bore = 3 mm ±0.1 ", design)
    assert (asked.component, asked.key, asked.written, asked.name) == (
        "tube",
        "bore",
        "3 mm ±0.1",
        "tube.bore",
    )
    assert question("tube.ends=a=b", design).written == "a=b"


def test_margins_are_told_as_they_are_varied_and_the_rest_is_counted(tmp_path: Path) -> None:
    """Of five checks of the tube four compare numbers: stress, the worst load case, hoops and the hot gap."""
    told: list[tuple[int, int]] = []
    assessment = DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess()
    found = margins(assessment, "", 3, lambda *one: told.append(one))
    assert told == [(1, 3), (2, 3), (3, 3)]
    assert (len(found.listed), found.without_numbers, found.varied) == (4, 1, 3)
    told.clear()
    whole = margins(assessment, "tube", 9, lambda *one: told.append(one))
    assert told == [(1, 4), (2, 4), (3, 4), (4, 4)]
    assert whole.varied == 4
    assert margins(assessment, "rack", 9).listed == ()


def test_a_temperature_is_tried_ten_kelvin_hotter(tmp_path: Path) -> None:
    """By hand 12.3e-6 × 105.5 × 10 = 0.0129765 mm of a cold gap of 0.5 mm."""
    found = margins(DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess(), "tube", 9)
    (loose,) = (one for one in found.listed if one.check.rule.name == "tube.loose-hot")
    assert loose.values is not None
    hotter = {value.name: value.hotter for value in loose.values if value.hotter is not None}
    assert hotter == {"temperature": pytest.approx(0.0129765 / 0.5, rel=1e-6)}
    carried = [value.carried for value in loose.values]
    assert carried == sorted(carried, reverse=True)
    by_name = {value.name: value for value in loose.values}
    assert by_name["temperature"].owner == "tube"
    assert by_name["hole of rack"].owner == "rack"
    assert (by_name["expansion"].owner, by_name["expansion"].written) == ("", "12.3e-6/K (greatest)")


def test_a_difference_to_another_temperature_carries_its_part(tmp_path: Path) -> None:
    """20 to 30 K above 200 °C: 10 of 300 °C. Ten kelvin more of either are as much."""
    temperatures = '[cases.running.temperatures]\nrack = "200 °C"\ntube = "rack + 20..30 K"\n'
    shop = DesignFolder(tmp_path, tubes.tubes(cool)).write({**FILES, "duty.toml": DUTY + temperatures})
    (margin,) = margins(shop.assess(), "tube", 9).listed
    assert margin.values is not None
    found = {value.where.key.rpartition(".")[2]: value for value in margin.values}
    assert margin.used == pytest.approx(230 / 300)
    assert found["tube"].carried == pytest.approx(10 / 300)
    assert (found["rack"].carried, found["rack"].why_not) == (0.0, "it states no limits")
    assert [value.hotter for value in margin.values] == pytest.approx([10 / 300] * 2)


def test_nothing_more_is_used_of_what_compares_no_numbers(tmp_path: Path) -> None:
    found = DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess()
    assert found.context is not None
    part = found.context.design.specs["tube"]
    assert isinstance(part, tubes.Tube)
    for name, more in (("tube.ends", None), ("tube.stress", 0.0)):
        (check,) = (one for one in found.checks if one.rule.name == name)
        written = written_at(check.rule, part, "", check.corner, found.context)
        assert written is not None
        at = AtCorner(check, part, "", written, found.context)
        assert at.with_more(part.temperature.where, 10.0) == more
