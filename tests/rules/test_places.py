"""Where a scan may find its worst over a box: it holds what the scan finds at every point of the box."""

from __future__ import annotations

import math
from collections.abc import Hashable

import pytest
from hypothesis import example, given, strategies as st

from speclint.facts import WholeLift
from speclint.handbook.cams import CamMotion, CamProfile, Flank, LiftTable, Ramp, cam_law
from speclint.rules.enclosed_cams import follower_at
from speclint.rules.enclosed_functions import MATHEMATICS
from speclint.rules.enclosure import Enclosure, Input, Undecided, between
from speclint.rules.places import Grid, KnownRanges, Place
from speclint.rules.scan import greatest_place
from speclint.rules.slopes import slopes

STEPS = 40
SIDES = st.floats(0.0, 1.0)


def waves(share: object, a: object, b: object, c: object) -> object:
    """A function of several hills, whose heights and places hang on three values."""
    sine = MATHEMATICS.sin
    return a * sine(3.0 * share + b) + c * sine(11.0 * share) - (share - 0.4) ** 2  # type: ignore[operator]


def opened(low: float, width: float, name: str) -> Enclosure:
    return between(low, low + width, Input(name))


@given(
    lows=st.tuples(st.floats(0.5, 2.0), st.floats(-2.0, 2.0), st.floats(-1.0, 1.0)),
    widths=st.tuples(st.floats(0.0, 0.1), st.floats(0.0, 0.1), st.floats(0.0, 0.1)),
    at=st.tuples(SIDES, SIDES, SIDES),
)
def test_the_ranges_hold_the_place_at_every_point_of_a_box(
    lows: tuple[float, ...], widths: tuple[float, ...], at: tuple[float, ...]
) -> None:
    box = [opened(low, width, name) for low, width, name in zip(lows, widths, "abc", strict=True)]
    ranges = Grid(lambda share: waves(share, *box), 0, STEPS).ranges((0.0, 1.0))
    point = [low + width * side for low, width, side in zip(lows, widths, at, strict=True)]
    place = greatest_place(lambda share: waves(share, *point), 0.0, 1.0, STEPS)  # type: ignore[arg-type,return-value]
    assert any(low - 1e-9 <= place <= high + 1e-9 for low, high in ranges)


def test_a_single_hill_is_one_range_of_a_few_intervals() -> None:
    """By hand: −(x − b)² is greatest at b, 0.500 to 0.505."""
    b = opened(0.5, 0.005, "b")
    (found,) = Grid(lambda share: -((share - b) ** 2), 0, 100).ranges((0.0, 1.0))
    assert found[0] <= 0.5
    assert found[1] >= 0.505
    assert found[1] - found[0] < 0.06


def test_what_rises_all_the_way_is_greatest_at_its_end() -> None:
    slope = opened(1.0, 0.5, "k")
    assert Grid(lambda share: slope * share, 0, 50).ranges((0.0, 1.0)) == ((1.0, 1.0),)


@given(low=st.floats(0.2, 0.7), width=st.floats(1e-3, 0.05), side=SIDES)
def test_the_place_where_something_passes_through_nothing_hangs_on_the_inputs(
    low: float, width: float, side: float
) -> None:
    """x² = c at √c, which rises by 1/(2 √c) for c, and by the width of c times that for its side."""
    c = opened(low, width, "c")
    grid = Grid(lambda share: -1.0 * abs(share**2 - c), 0, 60)
    (found,) = grid.ranges((0.0, 1.0))
    place = grid.at(found)
    assert isinstance(place, Enclosure)
    assert place.low <= math.sqrt(low + width * side) <= place.high
    (rises,) = slopes(place).values()
    assert rises[0] <= width / (2 * math.sqrt(low + width * side)) <= rises[1]
    assert place.high - place.low < width / math.sqrt(low) + 1e-3


def test_a_hill_beside_an_end_is_sought_beside_it_and_a_slope_at_the_end_itself() -> None:
    """By hand: −(x − b)² is greatest at b where that lies on the way, else at the end that is nearer to it."""

    def hill(low: float, high: float) -> tuple[tuple[float, float], ...]:
        b = opened(low, high - low, "b")
        return Grid(lambda share: -((share - b) ** 2), 0, 100).ranges((0.0, 1.0))

    assert hill(-0.2, -0.1) == ((0.0, 0.0),)
    assert hill(1.1, 1.2) == ((1.0, 1.0),)
    assert hill(0.003, 0.0031) == ((0.0, pytest.approx(0.01)),)
    assert hill(0.9969, 0.997) == ((pytest.approx(0.99), 1.0),)


def of_nodes(*best: int) -> Grid:
    """A scan of twenty intervals of which nothing is known between its nodes, some of which are the best."""

    def function(share: object) -> float:
        if isinstance(share, Input):
            raise Undecided(share)
        return 1.0 if round(float(share) * 20) in best else 0.0  # type: ignore[arg-type]

    return Grid(function, 0, 20)


@pytest.mark.parametrize(
    ("best", "ranges"),
    [
        ((10,), ((0.45, 0.55),)),
        ((10, 12), ((0.45, 0.65),)),  # their neighbourhoods meet
        ((10, 13), ((0.45, 0.55), (0.6, 0.7))),
        ((4, 5, 9, 16), ((0.15, 0.3), (0.4, 0.5), (0.75, 0.85))),
        ((0,), ((0.0, 0.05),)),  # it may lie beside the end
        ((20,), ((0.95, 1.0),)),
    ],
)
def test_the_best_lies_between_the_neighbours_of_the_best_nodes(
    best: tuple[int, ...], ranges: tuple[tuple[float, float], ...]
) -> None:
    assert of_nodes(*best).ranges((0.0, 1.0)) == tuple(pytest.approx(one) for one in ranges)


def test_ranges_lie_within_what_is_looked_through() -> None:
    assert of_nodes(10).ranges((0.5, 0.6)) == ((0.5, pytest.approx(0.55)),)
    assert of_nodes(10).ranges((0.42, 0.53)) == ((pytest.approx(0.45), 0.53),)
    assert of_nodes(10).ranges((0.6, 0.6)) == ((0.6, 0.6),)
    place = of_nodes(10).at((0.6, 0.6))
    assert isinstance(place, Input)
    assert (place.key, place.bounds) == (Place(0, 20, 0.6, 0.6), (0.6, 0.6))


@pytest.mark.parametrize("end", [0.0, 1.0])
def test_a_place_that_an_end_stops_may_stay_there(end: float) -> None:
    """|x − c| is least at c, and at the end where c lies beyond it: there it does not move with c."""
    c = opened(end - 0.01, 0.02, "c")
    grid = Grid(lambda share: -1.0 * abs(share - c), 0, 60)
    (found,) = grid.ranges((0.0, 1.0))
    place = grid.at(found)
    assert isinstance(place, Enclosure)
    (rises,) = slopes(place).values()
    assert rises == (0.0, pytest.approx(0.02))


def test_a_place_has_the_nodes_of_its_range_and_halves_that_meet_at_one() -> None:
    place = Place(0, 10, 0.15, 0.45)
    assert place.nodes == pytest.approx([0.15, 0.2, 0.3, 0.4, 0.45])
    assert place.halves == ((0.15, 0.3), (0.3, 0.3), (0.3, 0.45))


def test_a_smaller_box_is_told_what_was_found_in_a_greater_one() -> None:
    known = KnownRanges()
    known.add(0, (0.0, 1.0), {"a": True}, ((0.2, 0.3),), {"b"})
    assert known.narrowed(0, (0.0, 1.0), {"a": True, "c": False}) == (((0.2, 0.3),), True)
    assert known.narrowed(0, (0.0, 1.0), {"a": True, "b": False}) == (((0.2, 0.3),), False)
    assert known.narrowed(0, (0.0, 1.0), {"a": False}) == (((0.0, 1.0),), False)
    assert known.narrowed(1, (0.0, 1.0), {"a": True}) == (((0.0, 1.0),), False)


def test_what_was_found_of_a_scan_holds_while_those_before_it_look_no_further() -> None:
    known = KnownRanges()
    found = (((0.2, 0.3),), True)
    known.add(1, (0.0, 1.0), {"a": True}, *found[:1], {"a"}, {0: (0.5, 0.6), 2: (0.1, 0.2)})
    unknown = (((0.0, 1.0),), False)
    for looks, told in (
        ({0: (0.5, 0.6)}, found),
        ({0: (0.52, 0.55), 2: (0.7, 0.8)}, found),  # one that comes after has no part in it
        ({0: (0.49, 0.6)}, unknown),
        ({0: (0.5, 0.61)}, unknown),
        ({}, unknown),
    ):
        assert known.narrowed(1, (0.0, 1.0), {"a": True}, looks) == told


def test_of_two_that_are_known_the_smaller_box_tells() -> None:
    known = KnownRanges()
    found: list[tuple[dict[Hashable, bool], tuple[tuple[float, float], ...]]] = [
        ({"a": True}, ((0.2, 0.4),)),
        ({"a": True, "b": False}, ((0.2, 0.3),)),
        ({}, ((0.1, 0.5),)),
    ]
    for sides, ranges in found:
        known.add(0, (0.0, 1.0), sides, ranges, {"a", "b"})
    assert known.narrowed(0, (0.0, 1.0), {"a": True, "b": False}) == (((0.2, 0.3),), True)
    assert known.narrowed(0, (0.0, 1.0), {"a": True, "b": True}) == (((0.2, 0.4),), False)
    assert known.narrowed(0, (0.0, 1.0), {}) == (((0.1, 0.5),), True)


def profile(law: str) -> CamProfile:
    rise, fall = (Flank(cam_law(law), 0.02, angle, Ramp(0.001, 0.3)) for angle in (1.2, 1.4))
    return CamProfile(rise, 0.2, fall)


TABLE = LiftTable(
    [0.1 * n for n in range(11)], [0.0, 0.001, 0.004, 0.008, 0.01, 0.011, 0.01, 0.007, 0.003, 0.001, 0.0]
)
LAWS = ("parabolic", "harmonic", "cycloidal", "3-4-5 polynomial")
CAMS: dict[str, CamMotion] = {"table": TABLE}
CAMS.update((law, profile(law)) for law in LAWS)


@pytest.mark.parametrize("name", CAMS)
@example(start=0.5, width=0.125, part=0.0)  # the dwell ends there: 0.3 + 1.2 + 0.2 of 3.4 rad
@example(start=0.375, width=0.125, part=1.0)
@given(start=SIDES, width=st.floats(0.0, 0.5), part=SIDES)
def test_a_follower_over_a_range_holds_it_at_every_angle(
    name: str, start: float, width: float, part: float
) -> None:
    cam = CAMS[name]
    low = start * cam.duration
    high = min(low + width * cam.duration, cam.duration)
    over = follower_at(Input("angle", low, high), cam)
    angle = low + (high - low) * part
    there = WholeLift(cam).at(angle)
    for value, bounds in zip(
        (there.lift, there.slope, there.curvature), (over.lift, over.slope, over.curvature), strict=True
    ):
        assert _low(bounds) - 1e-12 <= value <= _high(bounds) + 1e-12
    if low < high:
        rises, bends = (_slope(one) for one in (over.lift, over.slope))
        assert rises[0] - 1e-12 <= there.slope <= rises[1] + 1e-12
        assert bends[0] - 1e-9 <= there.curvature <= bends[1] + 1e-9


def _slope(value: object) -> tuple[float, float]:
    return slopes(value).get("angle", (0.0, 0.0)) if isinstance(value, Enclosure) else (0.0, 0.0)


def _low(value: object) -> float:
    return value.low if isinstance(value, Enclosure) else float(value)  # type: ignore[arg-type]


def _high(value: object) -> float:
    return value.high if isinstance(value, Enclosure) else float(value)  # type: ignore[arg-type]


def test_the_bounds_of_a_follower_close_in_with_the_range() -> None:
    """Half as wide a range leaves the lift at most about half as wide."""
    cam = profile("3-4-5 polynomial")

    def width(of: float) -> float:
        lift = follower_at(Input("angle", 0.7, 0.7 + of), cam).lift
        return _high(lift) - _low(lift)

    assert width(0.01) < 0.6 * width(0.02) < 0.4 * width(0.04)


def test_what_is_known_of_a_scan_holds_where_earlier_scans_look_no_further() -> None:
    """A scan that begins at the place of an earlier one has other ranges where that one looks elsewhere."""
    known, all_of_it = KnownRanges(), (0.0, 1.0)
    known.add(1, all_of_it, {}, ((0.2, 0.3),), set(), {0: (0.4, 0.5), 2: (0.0, 0.1)})
    assert known.narrowed(1, all_of_it, {}, {0: (0.4, 0.5)}) == (((0.2, 0.3),), True)
    assert known.narrowed(1, all_of_it, {}, {0: (0.4, 0.45), 2: (0.5, 0.6)}) == (((0.2, 0.3),), True)
    assert known.narrowed(1, all_of_it, {}, {0: (0.4, 0.51)}) == ((all_of_it,), False)
    assert known.narrowed(1, all_of_it, {}, {0: (0.8, 0.9)}) == ((all_of_it,), False)
    assert known.narrowed(1, all_of_it, {}) == ((all_of_it,), False)


def test_a_place_is_sought_no_finer_than_asked() -> None:
    """Of a parabola about 0.3, for fewer of its values."""

    def sought(within: float) -> tuple[float, int]:
        asked: list[float] = []

        def parabola(at: float) -> float:
            asked.append(at)
            return -((at - 0.3) ** 2)

        return greatest_place(parabola, 0.0, 1.0, 4, within=within), len(asked)

    (coarse, few), (fine, many) = sought(1e-2), sought(0.0)
    assert coarse == pytest.approx(0.3, abs=1e-2)
    assert fine == pytest.approx(0.3, abs=1e-5)
    assert few < many - 10
