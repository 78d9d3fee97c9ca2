"""Comparisons over a box: what they may use of a limit, whether they hold, and the sheet that hands over bounds."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula
from speclint.equations import Metres
from speclint.errors import Location, NotKnown, OutOfRange, replace
from speclint.handbook.materials import material
from speclint.handbook.tables import Reading
from speclint.quantities import Measure, read
from speclint.repository import Design, Settings
from speclint.rules import Context, Grade, OverBox, Undecided, over_box
from speclint.rules.box import Box, BoxSheet, _blurred, _on, _plain
from speclint.rules.compared import Compared, above, below
from speclint.rules.enclosure import Enclosure, Input, NotEnclosed
from speclint.rules.judgement import NotApplicable, NotAssessed, NotCovered
from speclint.specs import Component
from tests.rules.test_comparisons import _rule


def bounds(value: Any) -> tuple[float, float]:
    """The bounds of an enclosure, or a number twice."""
    return value.bounds if isinstance(value, Enclosure) else (value, value)


@pytest.mark.parametrize(
    ("margin", "changes", "used"),
    [
        (0.25, {}, 0.75),
        (1.5, {}, 0.0),
        (0.25, {"to_reach": (True,)}, 0.8),  # 1/1.25
        (0.25, {"to_reach": (False,)}, 0.75),
        (0.25, {"all_used": True}, 1.0),
        (0.0, {}, math.inf),
        (2e-9, {}, math.inf),
        (2.1e-9, {}, 1.0 - 2.1e-9),
        (-0.5, {}, math.inf),
        (-0.5, {"accepted": True}, 1.5),
        (-0.5, {"accepted": True, "to_reach": (True,)}, 2.0),  # 1/0.5
        (-1.0, {"accepted": True, "to_reach": (True,)}, math.inf),
        (-0.5, {"accepted": True, "all_used": True}, 1.5),
    ],
)
def test_what_is_used_at_most_of_a_limit(margin: float, changes: dict[str, Any], used: float) -> None:
    assert Compared((margin,), **changes).most_used(0, margin) == pytest.approx(used, rel=1e-12)


def test_of_a_band_each_limit_is_used_in_its_own_way() -> None:
    band = Compared((0.25, 0.25), to_reach=(False, True))
    assert (band.most_used(0, 0.25), band.most_used(1, 0.25)) == (0.75, pytest.approx(0.8))


@pytest.mark.parametrize(
    ("margin", "strictly", "holds"),
    [
        (0.1, False, True),
        (0.0, False, True),
        (-0.9e-9, False, True),  # rounding
        (-1.1e-9, False, False),
        (0.0, True, False),
        (0.1, True, True),
        (Input("x", 0.1, 0.2), False, True),
        (Input("x", 0.0, 0.2), False, True),
        (Input("x", 0.1, 0.2), True, True),
        (Input("x", -0.2, -0.1), False, False),
        (Input("x", -0.2, -2.1e-9), True, False),
        (Input("x", -0.1, 0.2), False, None),
        (Input("x", 0.0, 0.2), True, None),
        (Input("x", -0.2, -1.9e-9), False, None),
    ],
)
def test_whether_a_comparison_holds_all_over_a_box(margin: Any, strictly: bool, holds: bool | None) -> None:
    one = Compared((margin,), strictly=strictly)
    if holds is None:
        with pytest.raises(Undecided):
            _ = one.holds
    else:
        assert one.holds is holds
        assert OverBox((Compared((0.5,)), one)).holds is holds
        assert OverBox((one, Compared((-0.5,)))).holds is False


def test_a_matter_of_record_and_what_is_accepted() -> None:
    assert Compared().holds
    assert Compared((0.0,)).holds  # at its limit, unless it must have more than nothing left
    assert not Compared((-0.1,)).holds
    assert not Compared(said=False).holds
    assert Compared((-1.0,), accepted=True).holds
    failing = OverBox((Compared((-1.0,)), Compared(said=False)))
    assert not failing.holds
    assert failing.accepted("for a reason").holds
    for same in (
        failing.graded(Grade.HOLD),
        failing.pointing_at(Location("a", 1, "")),
        failing.saying("x"),
        failing.else_says("x"),
        failing.of_item("x"),
    ):
        assert same is failing
    with pytest.raises(NotEnclosed, match="goes by how much of a limit is used"):
        _ = failing.utilisation


def test_a_box_hands_over_a_side_or_all_between() -> None:
    box = Box({"chosen": True, "low": False})
    assert (box.pick("chosen", 1.0, 2.0), box.pick("low", 1.0, 2.0)) == (2.0, 1.0)
    assert box.met == {"chosen": True, "low": False}
    open_ = box.pick("open", 1.0, 2.0)
    assert bounds(open_) == (1.0, 2.0)
    assert box.pick("open", 1.0, 2.0) is open_
    assert bounds(box.pick("open", 1.0, 3.0)) == (1.0, 3.0)
    assert box.pick("exact", 1.5, 1.5) == 1.5
    assert bounds(box.pick("of bounds", Input("x", 1.0, 1.2), 2.0)) == (1.0, 2.0)
    assert bounds(box.pick("of bounds", 1.0, Input("x", 1.8, 2.2))) == (1.0, 2.2)


def test_the_scans_of_a_box_are_numbered_and_have_the_ranges_that_are_given() -> None:
    box = Box(ranges={1: (0.25, 0.5)})
    assert [box.next_range() for _ in range(3)] == [(0, (0.0, 1.0)), (1, (0.25, 0.5)), (2, (0.0, 1.0))]


def sheet(**sides: bool) -> BoxSheet:
    part = Component(id="part")
    design = Design(Path(), Settings(), {"part": part}, {"part": "part.toml"}, frozenset({"part"}))
    return BoxSheet(_rule, part, Context(design, material, {}), Box(dict(sides.items())))


def size(text: str) -> Measure:
    return read(text, "length")


@formula("t = 2 d", cites=[FIRST_PRINCIPLES])
def twice(d: Metres) -> Metres:
    """Twice a length, to 100 mm."""
    if d > 0.1:
        raise OutOfRange("it is beyond 100 mm")
    return 2 * d


def test_a_formula_is_worked_over_all_of_its_arguments() -> None:
    page = sheet()
    found = page.work("t", twice, d=page.take("d", size("25 mm ±1")))
    assert bounds(found) == pytest.approx((0.048, 0.052))
    assert page.work("t", twice, d=0.025) == 0.05


def test_a_formula_out_of_its_range_all_over_the_box_is_not_covered() -> None:
    page = sheet()
    with pytest.raises(NotCovered, match=r"^it is beyond 100 mm$"):
        page.work("t", twice, d=page.take("d", size("125 mm ±1")))


def figure(d: float) -> Reading:
    """A figure that falls with a length, within 2 % of itself, of lengths from 20 to 30 mm."""
    if d > 0.03:
        raise OutOfRange("the table ends at 30 mm")
    if d < 0.02:
        raise NotKnown("the table begins at 20 mm")
    return Reading("a figure", 1 / d, 0.98 / d, 1.02 / d, "1/m", COMMON_PRACTICE)


def test_a_figure_is_looked_up_over_all_of_an_argument() -> None:
    page = sheet()
    found = page.look_up("y", figure, d=page.take("d", size("25 mm ±1")))
    assert bounds(found) == pytest.approx((0.98 / 0.026, 1.02 / 0.024))
    assert bounds(page.look_up("y", figure, d=0.025)) == pytest.approx((0.98 / 0.025, 1.02 / 0.025))


def of_greater(d: float, k: float) -> Reading:
    """A figure of the greater of a length and 25.5 mm, so many times."""
    return Reading.exact("a figure", k * max(d, 0.0255), "m", COMMON_PRACTICE)


def test_a_figure_is_looked_up_over_the_one_argument_that_has_bounds() -> None:
    page = sheet()
    found = page.look_up("y", of_greater, d=page.take("d", size("25 mm ±1")), k=2.0)
    assert bounds(found) == pytest.approx((0.051, 0.052))


@pytest.mark.parametrize(
    ("text", "error", "says"),
    [
        ("35 mm ±1", NotCovered, "the table ends at 30 mm"),
        ("15 mm ±1", NotAssessed, "the table begins at 20 mm"),
    ],
)
def test_a_figure_that_no_table_has_ends_the_rule(text: str, error: type[Exception], says: str) -> None:
    page = sheet()
    with pytest.raises(error, match=f"^{says}$"):
        page.look_up("y", figure, d=page.take("d", size(text)))


def test_every_comparison_has_its_margins_over_the_box() -> None:
    """25 ± 1 mm below 26 mm and above 24 mm, as shares of the limit; within 4 mm of 24 mm; in a band of 20 to 30 mm."""
    page = sheet()
    d = page.take("d", size("25 mm ±1"))
    (below,) = page.at_most(d, 0.026).parts
    assert bounds(below.margins[0]) == pytest.approx((0.0, 2 / 26), abs=1e-12)
    assert below.to_reach == ()
    (above,) = page.at_least(d, 0.024).parts
    assert bounds(above.margins[0]) == pytest.approx((0.0, 2 / 24), abs=1e-12)
    assert above.to_reach == (True,)
    (apart,) = page.equals(d, 0.024, 0.004).parts
    assert bounds(apart.margins[0]) == pytest.approx((0.5, 1.0), abs=1e-9)
    (band,) = page.within(d, 0.02, 0.03).parts
    assert band.to_reach == (False, True)
    assert [bounds(one) for one in band.margins] == [
        pytest.approx((4 / 30, 6 / 30)),
        pytest.approx((4 / 20, 6 / 20)),
    ]
    (cool,) = page.no_hotter(373.15 + 0 * d, 473.15).parts
    assert bounds(cool.margins[0]) == pytest.approx((0.5, 0.5), abs=1e-9)
    (stays,) = page.stays(0.5 * d, d, strictly=True).parts
    assert (stays.strictly, stays.all_used) == (True, False)
    (gone,) = page.stays(0.0, -1e-3).parts
    assert (gone.strictly, gone.all_used) == (False, True)
    (said,) = page.states(False, "no").parts
    assert (said.said, said.margins) == (False, ())
    (told,) = page.reported(1.0, "x").parts
    assert told.holds


def test_a_limit_to_be_reached_may_be_nothing_in_a_part_of_the_box() -> None:
    """0.4 of a limit from 0 to 0.5: −0.2 of it at the worst. Of 2 the margin in SI units, 2, is less than 2/0.5 − 1."""
    assert bounds(above(0.5, Enclosure(0.0, 0.0))) == (0.5, 0.5)
    low, high = bounds(above(0.4, Enclosure(0.0, 0.5)))
    assert low == pytest.approx(-0.2)
    assert high > 1e8
    for value in (2.0, 0.0, -0.1):
        with pytest.raises(Undecided):
            above(value, Enclosure(0.0, 0.5))


def test_the_same_comparison_has_the_very_same_margin() -> None:
    page = sheet()
    d = page.take("d", size("25 mm ±1"))
    one, other = (page.at_most(d, 0.026).parts[0].margins[0] for _ in range(2))
    assert one is other
    assert page.at_least(d, 0.026).parts[0].margins[0] is not one
    assert page.at_most(d, 0.027).parts[0].margins[0] is not one


def test_the_worst_of_several_keeps_every_comparison_and_what_ended() -> None:
    page = sheet()
    ended = NotApplicable("no")
    first = OverBox((Compared((0.1,)),), (ended,))
    whole = page.worst(first, OverBox((Compared((0.2,)), Compared((0.3,)))))
    assert [one.margins for one in whole.parts] == [(0.1,), (0.2,), (0.3,)]
    assert whole.ended == (ended,)
    assert page._beside(whole, (ended,)).ended == (ended, ended)


@pytest.mark.parametrize(
    ("start", "stop", "share", "place"),
    [
        (1.0, 3.0, 0.25, (1.5, 1.5)),
        (1.0, 3.0, Input("x", 0.25, 0.5), (1.5, 2.0)),
        (3.0, 1.0, Input("x", 0.25, 0.5), (2.0, 2.5)),
        (1.0, 3.0, Input("x", 0.0, 1.0), (1.0, 3.0)),
        (Input("s", 1.0, 1.2), 3.0, 0.5, (1.9, 2.2)),  # 1.0 + 0.9 and 1.2 + 1.0
    ],
)
def test_the_place_at_a_share_of_a_way(start: Any, stop: Any, share: Any, place: tuple[float, float]) -> None:
    low, high = bounds(_on(start, stop, share))
    assert (low, high) == pytest.approx(place, rel=1e-9)
    if isinstance(share, Enclosure):
        assert min(start, stop) <= low <= high <= max(start, stop)


@pytest.mark.parametrize(
    ("start", "stop", "intervals"),
    [
        (0.0, 1.0, 1),
        (Input("s", 0.0, 0.1), 1.0, 12),  # 0.1 of the least way, 0.9, in 100 steps: 11.1
        (0.0, Input("s", 0.8, 1.0), 25),  # 0.2 of 0.8
        (Input("s", 0.0, 2.0), 1.0, 100),  # never more than there are
    ],
)
def test_over_how_many_intervals_a_node_may_lie(start: Any, stop: Any, intervals: int) -> None:
    assert _blurred(start, stop, 100) == intervals


def test_whether_a_function_gives_plain_numbers_all_along() -> None:
    x = Input("x", 1.0, 2.0)
    assert _plain(lambda at: at * 2, 0.0, 1.0, 10)
    assert not _plain(lambda at: at * x, 0.0, 1.0, 10)
    assert not _plain(lambda at: x if at == 1.0 else at, 0.0, 1.0, 10)  # at the last place alone
    assert not _plain(lambda at: at, x, 3.0, 10)
    assert not _plain(lambda at: at, 0.0, x, 10)
    assert not _plain(lambda at: at if x > 1.5 else 0.0, 0.0, 1.0, 10)


def test_a_limit_that_is_nothing_but_for_rounding_is_compared_in_its_unit() -> None:
    """A limit of ±1e-12 against 1 to 2: what is left is −2 to −1, in the unit of the value."""
    nothing = Enclosure(-1e-12, 1e-12)
    assert bounds(below(Input("x", 1.0, 2.0), nothing)) == pytest.approx((-2.0, -1.0), rel=1e-9)
    assert bounds(below(1.0, nothing)) == pytest.approx((-1.0, -1.0), rel=1e-9)
    with pytest.raises(Undecided):
        below(1e-4, nothing)


def part_and_context() -> tuple[Component, Context]:
    part = Component(id="part")
    design = Design(Path(), Settings(), {"part": part}, {"part": "part.toml"}, frozenset({"part"}))
    return part, Context(design, material, {})


def test_a_rule_that_bounds_cannot_follow_is_not_enclosed() -> None:
    part, context = part_and_context()

    def ended(_component: Component, page: Any) -> Any:
        raise page.not_applicable("no")

    def broken(_component: Component, _page: Any) -> Any:
        raise KeyError("x")

    def nothing(_component: Component, _page: Any) -> Any:
        return 3

    found = over_box(replace(_rule, function=ended), part, None, context, {})
    assert isinstance(found, NotApplicable)
    with pytest.raises(NotEnclosed, match=r"^KeyError: 'x'$"):
        over_box(replace(_rule, function=broken), part, None, context, {})
    with pytest.raises(NotEnclosed, match=r"^the rule returned int$"):
        over_box(replace(_rule, function=nothing), part, None, context, {})
