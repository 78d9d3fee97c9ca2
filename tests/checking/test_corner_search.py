"""Corners that are visited one by one, and the worst of many found on the way: on functions of a few sides."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest

from speclint.checking.corner_runs import CornerRuns, highs
from speclint.checking.corner_search import _Search, climb_each, every_corner, search_each, visit_all
from speclint.checking.severity import NOTHING, Ending, severity
from speclint.errors import replace
from speclint.rules import Corner, Judgement, NotAssessed, NotCovered
from tests.tubes import stress

Used = Callable[[dict[str, bool]], float | tuple[float, ...]]


class Counted:
    """Runs of a rule whose comparisons use what a function of the sides says; ``times`` counts them."""

    def __init__(self, used: Used, names: str) -> None:
        self._used, self._names = used, names
        self.times = 0
        self.runs = CornerRuns(self._run, stress)

    def _run(self, corner: Corner) -> Ending:
        self.times += 1
        sides = {name: bool(corner.pick(name, 0.0, 1.0)) for name in self._names}
        used = self._used(sides)
        parts = tuple(
            Judgement(one <= 1.0, f"{number}", one, margins=(1.0 - one,), compared="≤")
            for number, one in enumerate(used if isinstance(used, tuple) else (used,))
        )
        worst = max(parts, key=lambda part: part.utilisation or 0.0)
        return replace(worst, parts=parts if len(parts) > 1 else ())

    @property
    def worst(self) -> float | None:
        ending = self.runs.worst.ending if self.runs.worst else None
        return ending.utilisation if isinstance(ending, Judgement) else None


def total(sides: dict[str, bool]) -> float:
    """0.01 for a, 0.02 for b high, 0.04 for c low, 0.08 for d low."""
    weights = {"a": (0.0, 0.01), "b": (0.0, 0.02), "c": (0.04, 0.0), "d": (0.08, 0.0)}
    return sum(weights[name][high] for name, high in sides.items())


def test_every_corner_is_run_once() -> None:
    seen = []

    def run(corner: Corner) -> None:
        a = corner.pick("a", 0, 1)
        other = corner.pick("b" if a else "c", 0, 1)  # which input is met hangs on the first
        seen.append((a, other, tuple(corner.met)))

    corners = [corner for corner, _ in every_corner(run)]
    assert seen == [
        (0, 0, ("a", "c")),
        (0, 1, ("a", "c")),
        (1, 0, ("a", "b")),
        (1, 1, ("a", "b")),
    ]
    assert len(corners) == 4
    assert len(list(every_corner(lambda _: None))) == 1


@pytest.mark.parametrize(("most", "whole"), [(8, True), (7, False), (100, True)])
def test_all_are_visited_where_they_are_no_more_than_so_many(most: int, whole: bool) -> None:
    counted = Counted(total, "abc")
    assert visit_all(counted.runs, most) is whole
    assert counted.times == (8 if whole else most + 1)


@pytest.mark.parametrize("first", list(product((False, True), repeat=4)))
def test_inputs_that_work_one_way_are_climbed_from_anywhere(first: tuple[bool, ...]) -> None:
    counted = Counted(total, "abcd")
    found = _Search(counted.runs, lambda run: run.severity).climb(dict(zip(list("abcd"), first, strict=True)))
    assert found.corner.met == {"a": True, "b": True, "c": False, "d": False}
    assert counted.worst == pytest.approx(0.15)
    assert counted.times <= 1 + 4 + 4


def crosswise(sides: dict[str, bool]) -> float:
    """Three pairs, each worst where the one is high and the other is not; the first of each by a little more."""
    pairs = (("a", "b"), ("c", "d"), ("e", "f"))
    return sum(0.1 * (sides[one] != sides[other]) + 0.01 * sides[one] for one, other in pairs) + 0.02


def test_inputs_that_work_in_pairs_are_found_by_search() -> None:
    counted = Counted(crosswise, "abcdef")
    search_each(counted.runs, {})
    assert counted.worst == pytest.approx(0.35)  # 3 × 0.11 + 0.02
    assert counted.runs.worst is not None
    assert counted.runs.worst.corner.met == {
        "a": True,
        "b": False,
        "c": True,
        "d": False,
        "e": True,
        "f": False,
    }
    assert counted.times < 64 + 1


def two(sides: dict[str, bool]) -> tuple[float, ...]:
    """One comparison is worst with both high, the other with both low."""
    high = sides["a"] + sides["b"]
    return 0.5 + 0.2 * high, 1.4 - 0.3 * high


def test_each_comparison_is_sought_by_itself() -> None:
    for seek in (search_each, climb_each):
        counted = Counted(two, "ab")
        seek(counted.runs, {"a": True, "b": False})
        assert counted.worst == pytest.approx(1.4)
        (failing,) = (corner for _, corner in counted.runs.failing)
        assert failing.met == {"a": False, "b": False}
        assert counted.runs.at({"a": True, "b": True}).part(0) is not None
        most = max(run.part(0).utilisation or 0.0 for run in counted.runs._seen.values())  # type: ignore[union-attr]
        assert most == pytest.approx(0.9)


def test_a_corner_is_run_once_and_an_input_without_a_side_is_low() -> None:
    counted = Counted(total, "ab")
    one = counted.runs.at({"a": True})
    assert counted.runs.at({"b": False, "a": True}) is one
    assert (counted.times, len(counted.runs)) == (1, 1)
    assert one.corner.met == {"a": True, "b": False}
    assert highs({"a": True, "b": False}) == {"a"}
    assert highs({}) == frozenset()


def test_a_run_with_a_scan_held_is_none_of_the_corners() -> None:
    counted = Counted(total, "ab")
    one = counted.runs.elsewhere({"a": True}, {0: 0.5})
    assert counted.runs.elsewhere({"a": True}, {0: 0.5}) is one
    assert counted.runs.elsewhere({"a": True}, {0: 0.6}) is not one
    assert (len(counted.runs), counted.runs.worst) == (0, None)
    assert counted.times == 2


def test_what_was_run_elsewhere_is_kept_as_a_corner() -> None:
    counted = Counted(total, "ab")
    corner = Corner({"a": True})
    counted.runs.keep(corner, counted._run(corner))
    assert counted.times == 1
    assert counted.runs.at({"a": True}).corner is corner
    assert counted.times == 1
    assert counted.worst == pytest.approx(0.01)


def test_of_two_corners_alike_that_with_the_first_inputs_low_is_the_worst() -> None:
    for order in ((False, True), (True, False)):
        counted = Counted(lambda _: 0.5, "ab")
        for side in order:
            counted.runs.at({"a": side, "b": not side})
        assert counted.runs.worst is not None
        assert counted.runs.worst.corner.met == {"a": False, "b": True}


def test_of_each_comparison_that_fails_the_worst_corner_is_kept_the_gravest_first() -> None:
    def used(sides: dict[str, bool]) -> tuple[float, ...]:
        return 1.1 + 0.3 * sides["a"], 1.3 - 0.1 * sides["a"], 0.5

    counted = Counted(used, "a")
    for side in (False, True, False):
        counted.runs.at({"a": side})
    found = [(place, dict(corner.met)) for place, corner in counted.runs.failing]
    assert found == [((3, 0, "≤"), {"a": True}), ((3, 1, "≤"), {"a": False})]


def test_how_grave_one_comparison_is_at_a_corner() -> None:
    counted = Counted(two, "ab")
    one = counted.runs.at({})
    second = one.part(1)
    assert second is not None
    assert counted.runs.of_part(one, 1) == severity(second, stress)
    assert counted.runs.of_part(one, 2) == NOTHING
    assert one.part(2) is None
    wanting = NotAssessed("nothing is there")
    ended = CornerRuns(lambda _: wanting, stress).at({})
    assert ended.part(0) is None
    assert counted.runs.of_part(ended, 0) == severity(wanting, stress) != NOTHING


@pytest.mark.parametrize("search", [climb_each, search_each])
def test_a_search_may_begin_where_the_rule_ends(
    search: Callable[[CornerRuns, dict[str, bool]], None],
) -> None:
    """No source covers it with a low; with a high it fails, which is graver, and with b high the most."""

    def run(corner: Corner) -> Ending:
        a, b = (bool(corner.pick(name, 0.0, 1.0)) for name in ("a", "b"))
        if not a:
            return NotCovered("no source covers it")
        used = 1.5 if b else 1.2
        return Judgement(False, "", used, margins=(1.0 - used,), compared="≤")

    runs = CornerRuns(run, stress)
    search(runs, {})
    assert runs.worst is not None
    assert runs.worst.corner.met == {"a": True, "b": True}


def seeking(used: Used, names: str) -> tuple[_Search, CornerRuns]:
    counted = Counted(used, names)
    return _Search(counted.runs, lambda run: run.severity), counted.runs


def test_what_an_input_does_may_hang_on_where_others_stand() -> None:
    """a b for one pair; c makes it worse by itself, d better, and e does nothing."""

    def used(sides: dict[str, bool]) -> float:
        return 0.3 + 0.1 * (sides["a"] == sides["b"]) + 0.05 * sides["c"] - 0.05 * sides["d"]

    search, runs = seeking(used, "abcde")
    low, high = runs.at({}), runs.at(dict.fromkeys("abcde", True))
    assert [search._way(low, name) for name in "abcde"] == [-1, -1, 1, -1, 0]
    assert [search._way(high, name) for name in "abcde"] == [1, 1, 1, -1, 0]
    assert search._way(low, "f") == 0  # an input that is not met there
    assert search._wavering(low) == ["a", "b"]


def test_the_inputs_with_the_greatest_effect_are_enumerated() -> None:
    """The effect of one is what its turning over leaves less; without end where it decides whether the rule holds."""

    def used(sides: dict[str, bool]) -> float:
        return 0.5 + 0.1 * sides["a"] + 0.2 * sides["b"] + 0.6 * sides["c"] - 0.3 * sides["d"]

    search, runs = seeking(used, "abcde")
    here = runs.at({})
    assert [search._effect(here, name) for name in "abde"] == pytest.approx([0.1, 0.2, 0.3, 0.0])
    assert search._effect(here, "c") == float("inf")
    search._most = 2
    before = len(runs)
    assert search._enumerate(here, list("abcd")).corner.met == {**dict.fromkeys("abde", False), "c": True}
    assert {frozenset(run.corner.met.items()) for run in list(runs._seen.values())[before:]} == {
        frozenset({**dict.fromkeys("abe", False), "c": True, "d": True}.items())
    }
