"""How the grid of a scan is looked through: which blocks are enclosed, which nodes are left, and where a place lies."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable
from typing import Any

import pytest

from speclint.rules.enclosure import Enclosure, Input, Undecided, between, greater, lesser
from speclint.rules.places import Grid, KnownRanges, ManyPlaces, Place
from speclint.rules.scan import MISSED

ALL = (0.0, 1.0)


class Heights:
    """A function of which the bounds over a block are known and no slope: it is 1 at some nodes and 0 elsewhere."""

    def __init__(self, steps: int, *ones: int) -> None:
        self._steps, self._ones = steps, ones
        self.blocks: Counter[int] = Counter()

    def __call__(self, share: Any) -> Any:
        if not isinstance(share, Input):
            return float(round(share * self._steps) in self._ones)
        low, high = (round(one * self._steps) for one in share.bounds)
        self.blocks[high - low] += 1
        return Enclosure(0.0, float(any(low <= one <= high for one in self._ones)))

    def ranges(self, within: tuple[float, float] = ALL) -> tuple[tuple[float, float], ...]:
        """The ranges, as numbers of nodes."""
        found = Grid(self, 0, self._steps).ranges(within)
        return tuple((low * self._steps, high * self._steps) for low, high in found)


def undecided(blocks: Counter[int], steps: int) -> Callable[[Any], Any]:
    """A function that is 0 at every node and of which no block can be enclosed."""

    def function(share: Any) -> Any:
        if isinstance(share, Input):
            low, high = (round(one * steps) for one in share.bounds)
            blocks[high - low] += 1
            raise Undecided(share)
        return 0.0

    return function


@pytest.mark.parametrize(
    ("steps", "within", "least", "sizes"),
    [
        (
            64,
            ALL,
            1,
            {4: 16, 2: 32},
        ),  # sixteen blocks, halved to no less than a 32nd of what is looked through
        (64, (0.5, 1.0), 1, {2: 16, 1: 32}),
        (64, ALL, 4, {4: 16}),  # no less than what the ends of the way leave open
        (64, ALL, 3, {4: 16, 2: 32}),
        (37, ALL, 1, {2: 18, 1: 37}),  # the last block has what is left
        (8, ALL, 1, {1: 8}),
    ],
)
def test_a_grid_is_looked_through_by_blocks_that_are_halved(
    steps: int, within: tuple[float, float], least: int, sizes: dict[int, int]
) -> None:
    blocks: Counter[int] = Counter()
    Grid(undecided(blocks, steps), 0, steps, least).ranges(within)
    blocks -= Counter(
        {1: 2}
    )  # beside the two ends it is asked once more whether the best lies at the end itself
    assert blocks == Counter(sizes) - Counter({1: 2})


def test_a_block_below_what_is_reached_is_looked_at_no_closer() -> None:
    """Of 64 intervals in blocks of 4 the two at node 32 are halved, each into two of 2."""
    heights = Heights(64, 32)
    assert heights.ranges() == ((31.0, 33.0),)
    assert heights.blocks == {4: 16, 2: 4}


def test_what_is_reached_in_the_middle_of_a_block_bars_others() -> None:
    """From the end on eight blocks are halved, and that of node 30: 1 is reached there, and seven are left whole."""
    heights = Heights(64, 30)
    assert heights.ranges() == ((29.0, 31.0),)
    assert heights.blocks == {4: 16, 2: 18}


@pytest.mark.parametrize("node", [33, 61, 3])
def test_what_is_reached_at_a_node_within_the_last_blocks_counts_for_those_before(node: int) -> None:
    assert Heights(64, node).ranges() == ((node - 1.0, node + 1.0),)


def test_where_all_is_as_great_any_place_may_be_the_best() -> None:
    assert Grid(lambda _: 1.0, 0, 20).ranges(ALL) == (ALL,)
    assert Heights(20).ranges() == ((0.0, 20.0),)


@pytest.mark.parametrize(("node", "ends"), [(0, (0.0, 1.0)), (64, (63.0, 64.0))])
def test_beside_an_end_at_which_nothing_is_known_of_the_slope_the_best_may_lie(
    node: int, ends: tuple[float, float]
) -> None:
    assert Heights(64, node).ranges() == (ends,)


def test_nodes_beyond_what_is_looked_through_have_no_part() -> None:
    """From node 9 to node 12, exactly: a greater value at the node before or after tells nothing."""
    for beyond in (8, 13):
        assert Heights(20, beyond).ranges((0.45, 0.6)) == (pytest.approx((9.0, 12.0)),)


@pytest.mark.parametrize(
    ("nodes", "runs"),
    [
        ([], []),
        ([3], [(3, 3)]),
        ([3, 4, 6, 9, 11, 12, 20], [(3, 6), (9, 12), (20, 20)]),
        ([0, 3], [(0, 0), (3, 3)]),
        ([0, 2], [(0, 2)]),
    ],
)
def test_nodes_that_are_two_apart_or_less_are_one_run(nodes: list[int], runs: list[tuple[int, int]]) -> None:
    assert list(Grid._runs(nodes)) == runs


def opened(low: float, width: float = 0.0, name: str = "c") -> Enclosure:
    return between(low, low + width, Input(name))


def test_a_best_end_that_lies_outside_what_is_looked_through_is_none_of_its_places() -> None:
    assert Grid(lambda share: -2.0 * share, 0, 20).ranges((0.02, 0.3)) == ()
    assert Grid(lambda share: 2.0 * share, 0, 20).ranges((0.7, 0.98)) == ()


@pytest.mark.parametrize("decided", [0.0, 0.5, 1.0])
def test_the_inputs_are_seen_at_the_first_node_that_is_decided(decided: float) -> None:
    c = opened(1.0, 0.5)

    def function(share: Any) -> Any:
        if isinstance(share, Input) or share != decided:
            raise Undecided(Input("share"))
        return c + share

    grid = Grid(function, 0, 20)
    grid.ranges(ALL)
    assert grid.hangs_on == {"c"}


def test_a_node_that_hangs_on_nothing_tells_no_inputs() -> None:
    c = opened(1.0, 0.5)
    grid = Grid(lambda share: c * share if share != 0.0 else 0.0, 0, 20)
    grid.ranges((0.0, 0.4))
    assert grid.hangs_on == {"c"}
    free = Grid(lambda _: 0.0, 0, 20)
    free.ranges(ALL)
    assert free.hangs_on == set()


def test_the_ends_of_a_range_are_no_places_of_it_but_for_those_of_the_grid() -> None:
    """The best lies between the neighbours of the best node: by a thousand-millionth of an interval inside."""
    grid = Grid(undecided(Counter(), 20), 3, 20)
    inside = 1e-9 / 20
    place = grid.at((0.45, 0.55))
    assert isinstance(place, Input)
    assert place.low - 0.45 == pytest.approx(inside, rel=1e-3)
    assert 0.55 - place.high == pytest.approx(inside, rel=1e-3)
    assert place.key == Place(3, 20, place.low, place.high)
    first, last = grid.at((0.0, 0.05)), grid.at((0.95, 1.0))
    assert isinstance(first, Input)
    assert isinstance(last, Input)
    assert (first.low, last.high) == (0.0, 1.0)
    node = grid.at((0.45, 0.45))
    assert isinstance(node, Input)
    assert node.key == Place(3, 20, 0.45, 0.45)


#: Where something passes through nothing, by what is scanned for its least magnitude.
PASSING: dict[str, tuple[Callable[[Any, Any], Any], Callable[[float], float]]] = {
    "x² − c": (lambda x, c: x**2 - c, math.sqrt),
    "c − x²": (lambda x, c: c - x**2, math.sqrt),
    "(1 − x)² − c": (lambda x, c: (1.0 - x) ** 2 - c, lambda c: 1.0 - math.sqrt(c)),
    "c − (1 − x)²": (lambda x, c: c - (1.0 - x) ** 2, lambda c: 1.0 - math.sqrt(c)),
}


@pytest.mark.parametrize("name", PASSING)
@pytest.mark.parametrize("root", [0.303, 0.307, 0.312, 0.317])
def test_a_place_where_something_passes_through_nothing_is_closed_in_on(name: str, root: float) -> None:
    """By hand: on 60 intervals the middle of the range, 0.3 or 0.317, is at most 0.0083 away from the root; two of
    Newton's steps leave less than a thousand-thousandth of that, and on each side what a scan may miss it by.
    """
    function, root_of = PASSING[name]
    c = opened(root**2 if name[0] == "x" or name.endswith("x²") else (1 - root) ** 2, 1e-9)
    grid = Grid(lambda share: -1.0 * abs(function(share, c)), 0, 60)
    (found,) = grid.ranges(ALL)
    place = grid.at(found)
    assert isinstance(place, Enclosure)
    assert not isinstance(place, Input)
    assert place.low <= root_of(c.low) <= place.high
    assert place.low == pytest.approx(root - MISSED / 60, abs=2e-7)
    assert place.high == pytest.approx(root + MISSED / 60, abs=2e-7)


def test_a_place_hangs_on_what_moves_it_either_way_and_stays_at_an_end() -> None:
    """|x + c − 1| is least at 1 − c, with c from 0.99 to 1.01: it falls by 0.02, or does not beyond the end."""
    c = opened(0.99, 0.02)
    grid = Grid(lambda share: -1.0 * abs(share + c - 1.0), 0, 60)
    (found,) = grid.ranges(ALL)
    place = grid.at(found)
    assert isinstance(place, Enclosure)
    assert place.low == 0.0
    assert place.high == pytest.approx(0.01, abs=1e-5)
    ((key, *slope),) = [(one.key, low, high) for one, low, high in place.more if isinstance(one, Input)]
    assert key == "c"
    assert slope == pytest.approx([-0.02, 0.0])
    beyond = Grid(lambda share: -1.0 * abs(share + c - 2.0), 0, 60)
    (found,) = beyond.ranges(ALL)
    place = beyond.at(found)
    assert isinstance(place, Enclosure)
    assert place.high == 1.0


def test_where_newton_s_step_leaves_the_range_the_place_is_all_of_it() -> None:
    """x − (x + c)/2 is nothing at c, 0.4; over 0.45 to 0.55 its bounds hold nothing all the same."""
    c = opened(0.4, 0.001)
    grid = Grid(lambda share: -1.0 * abs(share - 0.5 * (share + c)), 0, 20)
    place = grid.at((0.45, 0.55))
    assert isinstance(place, Enclosure)
    assert place.bounds == pytest.approx((0.45, 0.55), abs=1e-5)


def near(share: Any) -> Any:
    """From −0.05 to 0.05 over the range that is looked at below."""
    return share - 0.5


@pytest.mark.parametrize(
    "function",
    [
        lambda x: -2.0 * abs(near(x)),
        lambda x: 1.0 * abs(near(x)),
        lambda x: abs(near(x)) * Enclosure(-1.0, -1.0),
        lambda x: -1.0 * near(x),
        lambda x: -1.0 * greater(one := near(x), -one, 0.0),
        lambda x: -1.0 * lesser(one := near(x), -one),
        lambda x: -1.0 * greater(near(x), near(x) * 0.5),
        lambda x: -1.0 * greater(one := near(x), one * -2.0),
        lambda x: -1.0 * greater(near(x), -near(x)),
        lambda _: 0.5,
    ],
)
def test_what_is_no_magnitude_leaves_all_of_the_range(function: Callable[[Any], Any]) -> None:
    assert isinstance(Grid(function, 0, 20).at((0.45, 0.55)), Input)


@pytest.mark.parametrize(
    ("function", "within"),
    [
        (lambda x, c: x**2 - c, (0.0, 0.05)),  # level at its beginning
        (lambda x, c: (1.0 - x) ** 2 - c, (0.95, 1.0)),  # level at its end
        (lambda x, c: x**0.5 - c, (0.0, 0.05)),  # upright at its beginning
    ],
)
def test_what_may_be_level_or_upright_leaves_all_of_the_range(
    function: Callable[[Any, Any], Any], within: tuple[float, float]
) -> None:
    c = opened(0.0, 1e-4)
    assert isinstance(Grid(lambda share: -1.0 * abs(function(share, c)), 0, 20).at(within), Input)


@pytest.mark.parametrize(
    ("low", "high", "middle"),
    [(0.15, 0.45, 0.3), (0.22, 0.31, 0.3), (0.21, 0.29, 0.25), (0.2, 0.5, 0.4), (0.15, 0.35, 0.3)],
)
def test_a_range_is_halved_at_its_middle_node(low: float, high: float, middle: float) -> None:
    assert Place(0, 10, low, high).halves == (
        (low, pytest.approx(middle)),
        pytest.approx((middle, middle)),
        (pytest.approx(middle), high),
    )


def test_places_in_several_ranges_are_told() -> None:
    found = ManyPlaces(2, ((0.0, 0.1), (0.5, 0.6)))
    assert str(found) == "a scan may find its worst in 2 ranges"
    assert (found.number, found.ranges) == (2, ((0.0, 0.1), (0.5, 0.6)))


def test_a_scan_that_looked_all_of_its_way_is_known_wherever_it_looks() -> None:
    known = KnownRanges()
    found = (((0.2, 0.3),), True)
    known.add(1, ALL, {}, *found[:1], set(), {0: ALL, 1: (0.5, 0.6)})
    for looks in ({}, {0: (0.1, 0.2)}, {0: ALL}, {1: ALL}):
        assert known.narrowed(1, ALL, {}, looks) == found
