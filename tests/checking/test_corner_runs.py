"""The corners that were run: each once, the worst of all, and the worst of each comparison that fails."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence

from speclint.checking.corner_runs import CornerRun, CornerRuns
from speclint.checking.severity import NOTHING, Ending, severity
from speclint.errors import replace
from speclint.rules import Corner, Judgement, NotAssessed, NotTogether, OverBox
from tests.tubes import stress


def judged(*used: float) -> Judgement:
    """One comparison, or several of which the most used governs."""
    parts = tuple(Judgement(one <= 1.0, f"{one}", one, margins=(1.0 - one,), compared="≤") for one in used)
    return replace(max(parts, key=lambda one: one.utilisation or 0.0), parts=parts if len(parts) > 1 else ())


def runs_of(used: Callable[[bool, bool], Ending]) -> tuple[CornerRuns, list[tuple[bool, bool]]]:
    """Runs of a rule that takes two inputs, and the sides of each run."""
    sides: list[tuple[bool, bool]] = []

    def run(corner: Corner) -> Ending:
        found = bool(corner.pick("a", 0.0, 1.0)), bool(corner.pick("b", 0.0, 1.0))
        sides.append(found)
        return used(*found)

    return CornerRuns(run, stress), sides


def test_each_corner_is_run_once() -> None:
    runs, sides = runs_of(lambda *_: judged(0.5))
    first = runs.at({})
    assert runs.at({"a": False}) is first
    assert runs.at({"a": False, "b": False}) is first
    assert runs.at({"a": True}) is not first
    assert sides == [(False, False), (True, False)]
    assert len(runs) == 2


def test_a_corner_with_a_scan_held_elsewhere_is_another_run() -> None:
    runs, sides = runs_of(lambda *_: judged(0.5))
    plain = runs.at({"a": True})
    held = runs.elsewhere({"a": True}, {0: 0.25})
    assert held is not plain
    assert held.severity == plain.severity
    assert runs.elsewhere({"a": True, "b": False}, {0: 0.25}) is held
    assert runs.elsewhere({"a": True}, {0: 0.5}) is not held
    assert held.corner.next_place() == 0.25
    assert (len(sides), len(runs)) == (3, 1)
    assert runs.worst is plain


def test_a_comparison_of_a_run_by_its_place() -> None:
    one, two = (CornerRun(Corner(), judged(*used), NOTHING) for used in ((0.5,), (0.5, 0.75)))
    ended = CornerRun(Corner(), NotAssessed("x"), severity(NotAssessed("x"), stress))
    assert [one.part(index) for index in range(2)] == [one.ending, None]
    found = [two.part(index) for index in range(3)]
    assert [part.utilisation if part else None for part in found] == [0.5, 0.75, None]
    assert ended.part(0) is None
    runs, _ = runs_of(lambda *_: judged(0.5))
    assert runs.of_part(two, 1) == severity(judged(0.75), stress)
    assert runs.of_part(two, 2) == NOTHING  # it was not made there
    assert runs.of_part(ended, 1) == ended.severity


def test_the_worst_is_kept_and_of_two_alike_the_one_with_the_first_inputs_low() -> None:
    runs, _ = runs_of(lambda a, b: judged(0.9 if a != b else 0.5))
    assert runs_of(lambda *_: judged(0.5))[0].worst is None
    for a, b in ((False, False), (True, False), (False, True), (True, True)):
        runs.at({"a": a, "b": b})
    assert runs.worst is not None
    assert runs.worst.corner.met == {"a": False, "b": True}


def test_of_the_same_corner_twice_the_first_run_is_kept() -> None:
    runs, _ = runs_of(lambda *_: judged(0.5))
    first = runs.at({"a": True})
    runs.keep(first.corner, judged(0.5))
    assert runs.worst is first
    graver = first.corner
    runs.keep(graver, judged(0.75))
    assert runs.worst is not first
    assert runs.at({"a": True}) is runs.worst


def test_the_worst_corner_of_each_comparison_that_fails_the_gravest_first() -> None:
    """The first fails with a high, by 1.2 with b low and by 1.1 with b high; the second with b high, by 1.5; the third
    holds."""

    def used(a: bool, b: bool) -> Ending:
        return judged((1.1 if b else 1.2) if a else 0.5, 1.5 if b else 0.5, 0.9)

    runs, _ = runs_of(used)
    for a, b in ((False, False), (True, True), (True, False), (False, True)):
        runs.at({"a": a, "b": b})
    assert [(place, corner.met) for place, corner in runs.failing] == [
        ((3, 1, "≤"), {"a": True, "b": True}),  # the first of the two at which it uses 1.5
        ((3, 0, "≤"), {"a": True, "b": False}),
    ]


def test_what_holds_or_ended_fails_nowhere() -> None:
    runs, _ = runs_of(lambda a, _: NotAssessed("x") if a else judged(0.5, 0.9))
    runs.at({})
    runs.at({"a": True})
    assert runs.failing == []


def test_corners_are_worked_at_once_where_there_are_enough_of_them_and_it_can_be_done() -> None:
    asked: list[int] = []

    def together(corners: Sequence[Mapping[Hashable, bool]]) -> OverBox:
        asked.append(len(corners))
        if len(corners) > 4:
            raise NotTogether("a branch goes both ways")
        return OverBox(())

    runs = CornerRuns(lambda _: judged(0.5), stress, together)
    found = [runs.at_once([{"a": True}] * number) for number in (3, 4, 5)]
    assert found == [None, OverBox(()), None]
    assert asked == [4, 5]
    assert CornerRuns(lambda _: judged(0.5), stress).at_once([{"a": True}] * 4) is None
    assert (len(runs), runs.worst) == (0, None)
