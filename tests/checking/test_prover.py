"""How boxes prove the worst corner, on margins of a few sides that are given by hand."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import product
from typing import Any

import pytest

from speclint.checking.corner_runs import CornerRun, CornerRuns
from speclint.checking.proof import Prover, _Box, _Worst
from speclint.checking.severity import NOTHING, Ending
from speclint.rules import (
    Corner,
    Judgement,
    Many,
    ManyPlaces,
    NotApplicable,
    NotEnclosed,
    OverBox,
    Place,
    RuleEnded,
    Undecided,
)
from speclint.rules.compared import Compared
from speclint.rules.enclosure import Enclosure, Input
from tests.tubes import stress

Margins = Callable[..., Any]


@dataclass
class Worked:
    """A rule whose margins are a function of sides from 0 to 1, over boxes and at corners."""

    margins: Margins
    names: str
    most: int = 100
    holds_only: bool = False
    asked: list[tuple[dict[Any, bool], dict[int, tuple[float, float]]]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.runs = CornerRuns(self._run, stress)
        self.prover = Prover(self._over, self.runs, self.most, whether_it_holds=self.holds_only)

    def _run(self, corner: Corner) -> Ending:
        found = self.margins(**{name: corner.pick(name, 0.0, 1.0) for name in self.names})
        if isinstance(found, RuleEnded):
            return found
        parts = tuple(
            Judgement(one >= 0, f"{place}", 1.0 - one, margins=(one,), compared="≤")
            for place, one in enumerate(found if isinstance(found, tuple) else (found,))
        )
        worst = min(parts, key=lambda part: part.margins[0])
        return Judgement(
            worst.holds,
            worst.says,
            worst.utilisation,
            margins=worst.margins,
            compared="≤",
            parts=parts if len(parts) > 1 else (),
        )

    def _over(
        self, sides: Mapping[Any, bool], ranges: Mapping[int, tuple[float, float]]
    ) -> OverBox | RuleEnded:
        self.asked.append((dict(sides), dict(ranges)))
        given = {
            name: float(sides[name]) if name in sides else Input(name, 0.0, 1.0, whole=True)
            for name in self.names
        }
        found = self.margins(**given)
        if isinstance(found, RuleEnded):
            return found
        return OverBox(tuple(Compared((one,)) for one in (found if isinstance(found, tuple) else (found,))))

    def proved(self) -> Worked:
        self.prover.prove()
        return self

    @property
    def least(self) -> float:
        """The least margin of all corners that were run."""
        assert self.runs.worst is not None
        assert isinstance(self.runs.worst.ending, Judgement)
        return min(self.runs.worst.ending.margins)

    @property
    def by_all(self) -> float:
        """The least margin of all corners there are."""
        found = [
            self.margins(**dict(zip(self.names, map(float, sides), strict=True)))
            for sides in product((0, 1), repeat=len(self.names))
        ]
        return float(min(min(one) if isinstance(one, tuple) else one for one in found))


def test_inputs_that_work_one_way_are_fixed_at_one_box() -> None:
    """0.5 + 0.1 a − 0.2 b is least with a low and b high, 0.3; c does nothing."""
    one = Worked(lambda a, b, c: 0.5 + 0.1 * a - 0.2 * b + 0.0 * c, "abc").proved()
    assert one.least == pytest.approx(0.3) == one.by_all
    assert one.runs.worst is not None
    assert one.runs.worst.corner.met == {"a": False, "b": True, "c": False}
    assert (one.prover.boxes, one.prover.splits) == (1, 0)
    assert len(one.runs) <= 3
    corner = one.runs.worst.corner
    assert [one.prover.counts(name, corner, 0) for name in "abc"] == [True, True, False]
    assert not one.prover.counts("a", corner, 1)


def test_two_inputs_that_work_crosswise_may_be_decided_by_the_bound() -> None:
    """(a − 0.4)(b − 0.6) + 0.5 is at least −0.6 × 0.6 + 0.5 = 0.14, and that is what it is with a high and b low."""
    one = Worked(lambda a, b: (a - 0.4) * (b - 0.6) + 0.5, "ab").proved()
    assert one.least == pytest.approx(0.14) == one.by_all
    assert one.runs.worst is not None
    assert one.runs.worst.corner.met == {"a": True, "b": False}
    assert (one.prover.boxes, one.prover.splits) == (1, 0)
    assert not one.prover.counts("a", one.runs.worst.corner, 0)


def test_few_inputs_that_the_bound_leaves_open_are_run_at_their_corners() -> None:
    """With (b − 0.3)(a − 0.7) taken off the bound is lower than any corner: all four are run, at one box."""
    one = Worked(lambda a, b: (a - 0.4) * (b - 0.6) - (b - 0.3) * (a - 0.7) + 0.5, "ab").proved()
    assert one.least == pytest.approx(one.by_all)
    assert (one.prover.boxes, one.prover.splits, len(one.runs)) == (1, 1, 4)


def few_open(a: Any, b: Any, c: Any) -> Any:
    """Of three inputs that work crosswise the bound tells nothing; by hand least with all low, 0.02."""
    return (
        (a - 0.4) * (b - 0.6) - (b - 0.3) * (a - 0.7) + 0.1 * (c - 0.5) * (a - b) + 0.02 * (a + b + c) - 0.01
    )


@pytest.mark.parametrize("margin_of_each", [True, False])
def test_of_corners_worked_at_once_the_least_is_run(margin_of_each: bool) -> None:
    """Margins that are not those of the corners themselves are not trusted: then all are run."""
    one = Worked(few_open, "abc")
    together: list[int] = []

    def at_once(corners: Sequence[Mapping[Any, bool]]) -> OverBox:
        together.append(len(corners))
        margins = [one.margins(**{name: float(corner[name]) for name in "abc"}) for corner in corners]
        return OverBox((Compared((Many(margins if margin_of_each else [m + 1.0 for m in margins]),)),))

    one.runs = CornerRuns(one._run, stress, at_once)
    one.prover = Prover(one._over, one.runs, one.most)
    one.proved()
    assert one.least == pytest.approx(one.by_all)
    assert together == [8]
    assert len(one.runs) == (2 if margin_of_each else 8)


def crosswise(**sides: Any) -> Any:
    """Nine inputs, each of which works one way or the other by where its neighbours stand."""
    x = [sides[name] for name in sorted(sides)]
    return 3.0 + sum((0.3 + 0.01 * i) * (x[i] - 0.5) * (x[(i + 1) % 9] - 0.4) for i in range(9))


def test_many_inputs_that_work_crosswise_are_split_until_they_are_decided() -> None:
    one = Worked(crosswise, "abcdefghi").proved()
    assert one.least == pytest.approx(one.by_all)
    assert one.prover.splits > 1
    assert one.prover.boxes > 1


def test_too_many_boxes_leave_it_open() -> None:
    one = Worked(crosswise, "abcdefghi", most=1)
    with pytest.raises(NotEnclosed, match=r"^1 boxes leave it open$"):
        one.proved()
    assert one.prover.boxes == 1


def test_a_branch_that_an_input_decides_is_gone_through_on_both_sides() -> None:
    """Above the middle of a the margin falls with b, below it rises: the worst is 0.1, with both high."""

    def margins(a: Any, b: Any) -> Any:
        return 0.5 - 0.4 * b if a > 0.5 else 0.2 + 0.1 * b

    one = Worked(margins, "ab").proved()
    assert one.least == pytest.approx(0.1) == one.by_all
    assert one.prover.splits == 1
    assert [sides for sides, _ in one.asked] == [{}, {"a": False}, {"a": True}]


def test_the_input_on_which_a_branch_hangs_the_most_is_split_first() -> None:
    def margins(a: Any, b: Any) -> Any:
        return 0.5 if 0.2 * a + b > 0.9 else 0.4

    one = Worked(margins, "ab").proved()
    assert one.asked[1][0] == {"b": False}
    assert one.least == pytest.approx(0.4)


def test_a_branch_that_hangs_on_no_input_is_not_enclosed() -> None:
    def margins(a: Any) -> Any:
        if isinstance(a, Enclosure):
            raise Undecided(Enclosure(-1.0, 1.0), "nobody can tell")
        return 0.5

    with pytest.raises(NotEnclosed, match=r"^nobody can tell$"):
        Worked(margins, "a").proved()


def test_a_rule_that_ends_over_a_box_is_run_once_there() -> None:
    one = Worked(lambda **_: NotApplicable("no"), "a").proved()
    assert (one.prover.boxes, len(one.runs)) == (1, 1)


def test_of_several_comparisons_each_has_its_worst_corner_run() -> None:
    one = Worked(lambda a, b: (0.3 - 0.2 * a, 0.25 - 0.2 * b, 5.0 - a - b), "ab").proved()
    assert one.least == pytest.approx(0.05) == one.by_all
    met = [run.corner.met for run in one.runs._seen.values()]
    assert any(sides["b"] for sides in met)


def test_a_comparison_with_the_very_same_margin_is_gone_through_once() -> None:
    def margins(a: Any) -> Any:
        margin = 0.5 - 0.1 * a
        return margin, margin

    one = Worked(margins, "a").proved()
    assert one.prover.same_as == {1: 0}
    assert Worked(lambda a: (0.5 - 0.1 * a, 0.5 - 0.1 * a), "a").proved().prover.same_as == {}


def test_what_surely_holds_is_left_where_only_that_is_asked() -> None:
    """Where only that is asked, one run at the first corner is enough."""
    one = Worked(lambda a, b: (a - 0.4) * (b - 0.6) + 0.5, "ab", holds_only=True).proved()
    assert len(one.runs) == 1
    failing = Worked(lambda a, b: (a - 0.4) * (b - 0.6) + 0.3, "ab", holds_only=True).proved()
    assert failing.least == pytest.approx(-0.06)


def test_what_a_corner_less_the_gains_leaves_may_decide_where_bounds_do_not() -> None:
    """0.8 (a − 0.25)(b − 0.25) has slopes from −0.2 to 0.6: from a corner no more than 0.2 is lost by either.

    Its corners are at 0.75 or more: less 0.4 that is beyond the 0.1 of the other comparison, whatever its bounds are.
    """

    def margins(a: Any, b: Any) -> Any:
        over = isinstance(a, Enclosure) or isinstance(b, Enclosure)
        return 0.1, 0.9 + 0.8 * (a - 0.25) * (b - 0.25) + (Enclosure(-0.9, 0.9) if over else 0.0)

    one = Worked(margins, "ab").proved()
    assert one.least == pytest.approx(0.1)
    assert (one.prover.boxes, one.prover.splits) == (1, 0)


def test_a_scan_that_may_find_its_worst_in_several_ranges_is_gone_through_range_by_range() -> None:
    def margins(a: Any) -> Any:
        return 0.5 - 0.1 * a

    one = Worked(margins, "a")
    plain = one._over

    def over(sides: Any, ranges: Any) -> Any:
        if not ranges:
            one.asked.append((dict(sides), dict(ranges)))
            raise ManyPlaces(0, ((0.0, 0.25), (0.75, 1.0)))
        return plain(sides, ranges)

    one.prover = Prover(over, one.runs, 100)
    one.proved()
    assert [ranges for _, ranges in one.asked][:3] == [{}, {0: (0.0, 0.25)}, {0: (0.75, 1.0)}]
    assert one.least == pytest.approx(0.4)


def test_a_box_is_known_by_its_sides_and_ranges() -> None:
    box = _Box({"a": True}, {})
    assert box.at({"b": False}).sides == {"a": True, "b": False}
    assert box.at({"a": False}).sides == {"a": False}
    assert box.within(1, (0.0, 0.5)).ranges == {1: (0.0, 0.5)}
    assert box.within(1, (0.0, 0.5)).within(1, (0.0, 0.25)).ranges == {1: (0.0, 0.25)}
    assert box.key == _Box({"a": True}, {}).key
    assert box.key != box.at({"b": False}).key != box.within(0, (0.0, 1.0)).key


@pytest.mark.parametrize(
    ("met", "shares", "inside"),
    [
        ({"a": True}, (0.2, 0.4), True),
        ({"a": False}, (0.2, 0.4), False),
        ({}, (0.2, 0.4), True),  # an input that is not met there stands nowhere
        ({"a": True}, (0.2, 0.25), True),
        ({"a": True}, (0.2, 0.5), True),
        ({"a": True}, (0.2, 0.51), False),
        ({"a": True}, (0.2, 0.24), False),
        ({"a": True}, (0.2,), False),
    ],
)
def test_which_corners_lie_in_a_box(met: dict[Any, bool], shares: tuple[float, ...], inside: bool) -> None:
    corner = Corner(met)
    corner.met.update(met)
    corner.shares = list(shares)
    assert _Box({"a": True}, {1: (0.25, 0.5)}).holds(corner) is inside


def along(margins: Mapping[float, float], here: float) -> tuple[float, list[float]]:
    """The least of a margin wherever a scan is held between 0.25 and 0.75 of its way, and where that was run."""
    held: list[float] = []

    def run(corner: Corner) -> Ending:
        share = corner.next_place()
        assert share is not None
        held.append(share)
        return Judgement(True, "", margins=(margins[share],))

    prover = Prover(Worked(lambda: 0.5, "")._over, CornerRuns(run, stress), 100)
    prover._runs._seen[frozenset()] = CornerRun(Corner(), Judgement(True, ""), NOTHING)
    worst = _Worst(0, 0, Compared((here,)), 0)
    slopes = {"a": (-1.0, 1.0), Place(1, 4, 0.0, 1.0): (0.0, 0.0), Place(0, 4, 0.25, 0.75): (-1.0, 1.0)}
    found = [prover._lowest_along(_Box({}, {}), {}, slopes, worst, here) for _ in range(2)]
    assert found[0] == found[1]
    return found[0], held


@pytest.mark.parametrize(
    ("at", "least"),
    [
        ((0.5, 0.4, 0.45), 0.4),  # nowhere less than where the scan found its own worst
        ((0.5, 0.2, 0.45), -0.1),  # 0.2 less the greatest step, 0.3: between the nodes it may be less
        ((0.5, 0.35, 0.3), 0.15),
        ((0.41, 0.4, 0.39999), 0.38999),
    ],
)
def test_the_least_of_a_margin_along_a_scan_that_seeks_another(
    at: tuple[float, float, float], least: float
) -> None:
    found, held = along(dict(zip((0.25, 0.5, 0.75), at, strict=True)), 0.4)
    assert found == pytest.approx(least)
    assert held == [0.25, 0.5, 0.75]


@pytest.mark.parametrize(
    ("ending", "number", "noted", "least"),
    [
        (Judgement(True, "", margins=(0.3,)), 0, 0.3, 0.3),
        (Judgement(True, "", margins=(0.6,)), 0, 0.6, 0.5),
        (Judgement(True, "", margins=(0.3,)), 1, None, 0.5),  # no second limit there
        (Judgement(True, ""), 0, None, 0.5),
        (NotApplicable("no"), 0, None, 0.5),
    ],
)
def test_the_least_margin_of_the_corners_that_were_run_is_kept(
    ending: Ending, number: int, noted: float | None, least: float
) -> None:
    prover = Prover(Worked(lambda: 0.5, "")._over, CornerRuns(lambda _: ending, stress), 100)
    worst = _Worst(0, number, Compared((0.5, 0.5)), 0, 0.5)
    assert prover._note({}, worst) == noted
    assert worst.margin == least


@pytest.mark.parametrize(("other", "splits"), [(0.1, 0), (0.546, 0), (0.554, 1)])
def test_what_a_corner_less_the_gains_leaves_is_held_against_what_governs(other: float, splits: int) -> None:
    """As above with both low: 0.95, less 0.2 for each, is 0.55: enough beside a margin that is less, and not else."""

    def margins(a: Any, b: Any) -> Any:
        over = isinstance(a, Enclosure) or isinstance(b, Enclosure)
        return other, 0.9 + 0.8 * (a - 0.25) * (b - 0.25) + (Enclosure(-0.9, 0.9) if over else 0.0)

    one = Worked(margins, "ab").proved()
    assert one.least == pytest.approx(other)
    assert (one.prover.boxes, one.prover.splits) == (1, splits)


def undecided(
    asked: Callable[[Input], Enclosure], place: Place
) -> list[tuple[dict[Any, bool], dict[int, Any]]]:
    """The boxes that are asked for where a branch over the first of them hangs on a place of a scan, and on a."""
    one = Worked(lambda a: 0.5 - 0.1 * a, "a")
    plain = one._over

    def over(sides: Any, ranges: Any) -> Any:
        if one.asked:
            return plain(sides, ranges)
        one.asked.append((dict(sides), dict(ranges)))
        raise Undecided(asked(Input(place, place.low, place.high)))

    one.prover = Prover(over, one.runs, 100)
    one.proved()
    assert one.least == pytest.approx(0.4)
    assert one.prover.splits == (1 if one.asked[1][0] else 0)
    return one.asked


@pytest.mark.parametrize("hangs", [0.2, 0.4])
def test_a_branch_is_gone_through_by_the_place_or_the_input_on_which_it_hangs_the_most(hangs: float) -> None:
    """From 0.15 to 0.45 of the way it changes by 0.3, and by 0.2 or 0.4 from one end of a to the other."""
    place = Place(0, 10, 0.15, 0.45)
    asked = undecided(lambda share: share + hangs * Input("a", 0.0, 1.0), place)
    if hangs < 0.3:
        assert [ranges for _, ranges in asked] == [{}, *({0: half} for half in place.halves)]
    else:
        assert [sides for sides, _ in asked] == [{}, {"a": False}, {"a": True}]


@pytest.mark.parametrize(("width", "halved"), [(0.00009, False), (0.00011, True)])
def test_a_range_of_places_is_halved_down_to_a_thousandth_of_an_interval(width: float, halved: bool) -> None:
    """Of a grid of ten intervals: 0.0001 of the way."""
    place = Place(0, 10, 0.25, 0.25 + width)
    if halved:
        assert len(undecided(lambda share: share + 0.0, place)) == 4
    else:
        with pytest.raises(NotEnclosed, match=r"^a branch hangs on where a scan finds its worst$"):
            undecided(lambda share: share + 0.0, place)


def test_a_branch_in_a_smaller_box_or_another_ending_there_is_not_enclosed() -> None:
    """Over the whole box c works one way and is fixed; then the rule branches, or ends."""
    said = {
        "a smaller box decides less than a greater one: nobody can tell": Undecided(
            Enclosure(-1.0, 1.0), "nobody can tell"
        ),
        "a smaller box ends otherwise than a greater one": None,
    }
    for text, problem in said.items():
        one = Worked(lambda a, b, c: (a - 0.4) * (b - 0.6) - (b - 0.3) * (a - 0.7) + 0.5 - 0.1 * c, "abc")
        plain = one._over

        def over(sides: Any, ranges: Any, problem: Any = problem, plain: Any = plain) -> Any:
            if not sides:
                return plain(sides, ranges)
            if problem is not None:
                raise problem
            return NotApplicable("no")

        one.prover = Prover(over, one.runs, 100)
        with pytest.raises(NotEnclosed, match=f"^{text}$"):
            one.proved()


def test_inputs_that_work_one_way_are_fixed_before_others_are_run_at_their_corners() -> None:
    """c is fixed high at the first box; over the second the two that work crosswise are run at their four corners."""
    one = Worked(
        lambda a, b, c: (a - 0.4) * (b - 0.6) - (b - 0.3) * (a - 0.7) + 0.5 - 0.1 * c, "abc"
    ).proved()
    assert one.least == pytest.approx(one.by_all)
    assert [sides for sides, _ in one.asked] == [{}, {"c": True}]
    assert one.prover.splits == 1
    assert sum(run.corner.met["c"] for run in one.runs._seen.values()) == 4


def test_a_smaller_box_in_which_a_scan_may_find_its_worst_in_several_ranges_is_gone_through_range_by_range() -> (
    None
):
    one = Worked(lambda a, b, c: (a - 0.4) * (b - 0.6) - (b - 0.3) * (a - 0.7) + 0.5 - 0.1 * c, "abc")
    plain, spans = one._over, ((0.0, 0.25), (0.75, 1.0))

    def over(sides: Any, ranges: Any) -> Any:
        if sides and not ranges:
            one.asked.append((dict(sides), dict(ranges)))
            raise ManyPlaces(0, spans)
        return plain(sides, ranges)

    one.prover = Prover(over, one.runs, 100)
    one.proved()
    assert one.asked[:2] == [({}, {}), ({"c": True}, {})]
    assert one.asked[2:] == [({"c": True}, {0: span}) for span in spans]
    assert one.least == pytest.approx(one.by_all)
