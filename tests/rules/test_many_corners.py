"""A rule at several corners at once: the margins that it has at each of them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Rule, formula, rule
from speclint.equations import Metres
from speclint.errors import OutOfRange
from speclint.handbook.tables import Reading
from speclint.repository import Design
from speclint.rules import Context, Corner, Sheet, at_corners
from speclint.rules.many import Many, NotTogether
from speclint.rules.many_corners import Corners
from speclint.specs import CaseName, Component, Duty, LoadCase
from speclint.testing import DesignFolder
from tests import tubes
from tests.checking.test_proof import link
from tests.tubes import FILES, Tube

MM = 1e-3
X, Y = ("taken", "links.toml", "", "x"), ("taken", "links.toml", "", "y")
COARSE = ("looked up", "coarse", "c")
FOUR: list[dict[Any, bool]] = [{X: x, Y: y, COARSE: y} for x in (False, True) for y in (False, True)]


@formula("A = x y", cites=[FIRST_PRINCIPLES])
def product(x: Metres, y: Metres) -> Metres:
    """A product."""
    return x * y


@formula("b = 1/x", cites=[FIRST_PRINCIPLES])
def beyond(x: Metres) -> Metres:
    """A formula that has a range."""
    if x > 1.5 * MM:
        raise OutOfRange("too long")
    return 1 / x


@formula("c = x, twice that below 1.5 mm", cites=[FIRST_PRINCIPLES])
def bent(x: Metres) -> Metres:
    """A formula that goes another way at short lengths."""
    return x if x > 1.5 * MM else 2 * x


def stepped(symbol: str, at: float) -> Reading:
    """A table that goes another way at short lengths."""
    return Reading.exact(symbol, at if at > 1.5 * MM else 3 * at, "m", COMMON_PRACTICE)


def figure(symbol: str, at: float) -> Reading:
    """A table whose figure has limits that hang on where it is read."""
    return Reading(symbol, 2 * at, at, 3 * at, "m", COMMON_PRACTICE)


def coarse(symbol: str, at: float) -> Reading:  # noqa: ARG001 - the form of a table
    """A table whose figure is the same wherever it is read."""
    return Reading(symbol, 2 * MM, 1 * MM, 4 * MM, "m", COMMON_PRACTICE)


Made = Callable[[Callable[[Sheet, float, float], Any]], list[list[float]]]


def asked(judge: Callable[..., Any], cases: Sequence[CaseName] = ()) -> Rule:
    """A rule on tubes that a function judges."""
    of = rule(
        "tube.many",
        title="t",
        on=Tube,
        grade=Grade.HOLD,
        cites=[FIRST_PRINCIPLES],
        why="w",
        leaves_out="l",
        cases=cases,
    )
    return of(judge)


@pytest.fixture
def checked(tmp_path: Path) -> tuple[Design, Component, Context]:
    """A design with a tube, and what its checks know."""
    assessment = DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess()
    assert assessment.design is not None
    assert assessment.context is not None
    tube = assessment.design.specs["tube"]
    assert isinstance(tube, Component)
    return assessment.design, tube, assessment.context


@pytest.fixture
def margins(checked: tuple[Design, Component, Context]) -> Made:
    """The margins of a function of a sheet and two lengths, at four corners at once, each beside those run alone."""
    _, tube, context = checked

    def made(function: Callable[[Sheet, float, float], Any]) -> list[list[float]]:
        def judge(_: Component, sheet: Sheet) -> Any:
            x, y = (sheet.take(name, link(name, 1 * MM, 2 * MM)) for name in "xy")
            return function(sheet, x, y)

        of_tubes = asked(judge)
        over = at_corners(of_tubes, tube, None, context, FOUR)
        found = [
            list(one.values) if isinstance(one, Many) else [one] * len(FOUR)
            for part in over.parts
            for one in part.margins
        ]
        for index, corner in enumerate(FOUR):
            sheet = Sheet(of_tubes, tube, context, Corner(corner), record=False)
            alone = judge(tube, sheet)
            assert [one for part in alone.every for one in part.margins] == [row[index] for row in found]
        return found

    return made


def test_sides_by_corner() -> None:
    corners = Corners([{X: True}, {X: False}, {X: True, Y: True}])
    assert list(corners.pick(X, 1.0, 2.0).values) == [2.0, 1.0, 2.0]
    assert list(corners.pick(Y, 1.0, 2.0).values) == [1.0, 1.0, 2.0]
    assert corners.pick("other", 1.0, 2.0) == 1.0
    assert list(corners.pick(X, Many([1.0, 2.0, 3.0]), 9.0).values) == [9.0, 2.0, 9.0]
    assert Corners([{X: True}, {X: True}]).pick(X, 1.0, 2.0) == 2.0


def test_a_sum_against_a_limit(margins: Made) -> None:
    """By hand: 1 - (x + y)/4 with x and y of 1 or 2 mm."""
    (found,) = margins(lambda sheet, x, y: sheet.at_most(x + y, 4 * MM))
    assert found == pytest.approx([0.5, 0.25, 0.25, 0.0], abs=1e-12)


def test_a_formula_and_a_table(margins: Made) -> None:
    """By hand: 3 mm² at most of x y = 1, 2, 2 and 4; the figure low, which is x, against 0.5 mm: x/0.5 - 1."""

    def judge(sheet: Sheet, x: float, y: float) -> Any:
        area = sheet.work("A", product, x=x, y=y)
        read = sheet.look_up("f", figure, symbol="f", at=x)
        return sheet.worst(sheet.at_most(area, 3 * MM**2), sheet.at_least(read, 0.5 * MM))

    areas, figures = margins(judge)
    assert areas == pytest.approx([2 / 3, 1 / 3, 1 / 3, -1 / 3])
    assert figures == pytest.approx([1.0, 1.0, 3.0, 3.0])


def test_a_figure_that_is_the_same_at_all_corners_has_its_limits_all_the_same(margins: Made) -> None:
    """By hand: 1 or 4 mm, by the side of the figure, against 4 mm at most."""

    def judge(sheet: Sheet, x: float, _: float) -> Any:
        return sheet.at_most(sheet.look_up("c", coarse, symbol="c", at=x), 4 * MM)

    (found,) = margins(judge)
    assert found == pytest.approx([0.75, 0.0, 0.75, 0.0], abs=1e-12)


def test_what_is_worked_and_read_from_plain_numbers(margins: Made) -> None:
    """By hand: 2 mm by 3 mm are 6 mm², and with a figure of 1 or 4 mm times 1 mm, by its side, 7 or 10 of 10 mm²."""

    def judge(sheet: Sheet, _: float, __: float) -> Any:
        area = sheet.work("A", product, x=2 * MM, y=3 * MM)
        assert area == pytest.approx(6 * MM**2)
        read = sheet.look_up("c", coarse, symbol="c", at=1 * MM)
        return sheet.at_most(area + read * MM, 10 * MM**2)

    (found,) = margins(judge)
    assert found == pytest.approx([0.3, 0.0, 0.3, 0.0], abs=1e-12)


def test_a_formula_and_a_table_may_go_another_way_at_each_corner(margins: Made) -> None:
    """By hand: x of 1 mm counts twice in the formula and three times in the table; 2 + 3 and 2 + 2 of 5 mm."""

    def judge(sheet: Sheet, x: float, _: float) -> Any:
        read = sheet.look_up("s", stepped, symbol="s", at=x)
        return sheet.at_most(sheet.work("c", bent, x=x) + read, 5 * MM)

    (found,) = margins(judge)
    assert found == pytest.approx([0.0, 0.0, 0.2, 0.2], abs=1e-12)


def test_a_rule_in_a_load_case_is_given_it(checked: tuple[Design, Component, Context]) -> None:
    """By hand: 1 - x/4 with x of 1 or 2 mm."""
    design, tube, context = checked
    duty = design.specs["duty"]
    assert isinstance(duty, Duty)
    running, given = duty.cases["running"], []

    def judge(_: Component, case: LoadCase, sheet: Sheet) -> Any:
        given.append(case)
        return sheet.at_most(sheet.take("x", link("x", 1 * MM, 2 * MM)), 4 * MM)

    over = at_corners(asked(judge, ["running"]), tube, running, context, FOUR)
    ((margin,),) = (part.margins for part in over.parts)
    assert list(margin.values) == pytest.approx([0.75, 0.75, 0.5, 0.5])
    assert given == [running]


def test_a_long_calculation_about_a_plain_number(margins: Made) -> None:
    """By hand: x of 1 or 2 mm and 1 mm more, of 4 mm."""

    def judge(sheet: Sheet, x: float, _: float) -> Any:
        return sheet.at_most(x + sheet.aside("a", lambda one, __: one, 1 * MM), 4 * MM)

    (found,) = margins(judge)
    assert found == pytest.approx([0.5, 0.5, 0.25, 0.25], abs=1e-12)


def test_a_long_calculation_is_about_one_number(margins: Made) -> None:
    with pytest.raises(NotTogether, match=r"^a long calculation is about one number$"):
        margins(lambda sheet, x, _: sheet.at_most(sheet.aside("a", lambda __, ___: 1 * MM, x), 4 * MM))


def test_a_band_has_two_margins(margins: Made) -> None:
    """By hand: below 4 and above 1 of x + y = 2, 3, 3 and 4."""
    above, below = margins(lambda sheet, x, y: sheet.within(x + y, 1 * MM, 4 * MM))
    assert above == pytest.approx([0.5, 0.25, 0.25, 0.0], abs=1e-12)
    assert below == pytest.approx([1.0, 2.0, 2.0, 3.0])


def test_a_branch_that_all_take(margins: Made) -> None:
    (found,) = margins(lambda sheet, x, y: sheet.at_most(max(x, y) if x > 0 else 0.0, 2 * MM))
    assert found == pytest.approx([0.5, 0.0, 0.0, 0.0], abs=1e-12)


def test_a_place_that_a_scan_finds_for_all(margins: Made) -> None:
    """By hand: x s (1 - s) is greatest at s = 1/2 whatever x: a quarter of x against 1 mm."""

    def judge(sheet: Sheet, x: float, _: float) -> Any:
        at = sheet.scan("s", "place", lambda s: x * s * (1 - s), 0.0, 1.0, unit="", steps=10)
        return sheet.at_most(x * at * (1 - at), 1 * MM)

    (found,) = margins(judge)
    assert found == pytest.approx([0.75, 0.75, 0.5, 0.5], abs=1e-9)


@pytest.mark.parametrize(
    "judge",
    [
        lambda sheet, x, y: sheet.at_most(x if x > y else y, 2 * MM),
        lambda sheet, x, _: sheet.at_most(sheet.work("b", beyond, x=x), 1e6),
        lambda sheet, x, _: sheet.aside("a", lambda one, __: one, x),
        lambda sheet, x, _: sheet.at_most(float(f"{x!r}"), 1.0),
        lambda sheet, x, y: y if sheet.at_most(x, 1.5 * MM).holds else sheet.at_most(y, 1.5 * MM),
        lambda _, x, __: x,
    ],
)
def test_what_cannot_be_worked_together(margins: Made, judge: Callable[[Sheet, float, float], Any]) -> None:
    """A branch both ways, a range left at some corners, one number asked for, no judgement."""
    with pytest.raises(NotTogether):
        margins(judge)
