"""How the worst corner is reported: which inputs matter there, and by what it is known, on functions of few sides."""

from __future__ import annotations

import math
from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking.corner_runs import CornerRun, CornerRuns
from speclint.checking.severity import Ending, severity
from speclint.checking.worst_corner import Effort, _differs, _surely, find_worst
from speclint.errors import replace
from speclint.rules import Corner, Judgement, NotAssessed, NotEnclosed
from tests.tubes import stress


def judged(*used: float) -> Judgement:
    """One comparison, or several of which the most used governs."""
    parts = tuple(Judgement(one <= 1.0, "", one, margins=(1.0 - one,), compared="≤") for one in used)
    return replace(max(parts, key=lambda one: one.utilisation or 0.0), parts=parts if len(parts) > 1 else ())


def runs_of(names: str, used: Callable[..., Ending]) -> CornerRuns:
    def run(corner: Corner) -> Ending:
        return used(*(corner.pick(name, 0.0, 1.0) for name in names))

    return CornerRuns(run, stress)


def no_box(*_: Any) -> Any:
    raise NotEnclosed("it cannot be enclosed")


NONE = Effort(boxes=0)


def test_a_rule_that_takes_nothing_toleranced_is_run_once() -> None:
    runs = runs_of("", lambda: judged(0.5))
    runs.at({})
    found = find_worst(no_box, runs, Effort())
    assert (found.matter, found.run) == ((), runs.worst)
    assert (found.proof.method, found.proof.inside, found.proof.runs) == ("nothing is toleranced", True, 1)
    anew = find_worst(no_box, runs_of("", lambda: judged(0.5)), NONE)
    assert (anew.proof.method, anew.proof.inside, anew.proof.runs) == ("nothing is toleranced", True, 1)


def test_the_inputs_that_matter_are_those_whose_other_side_changes_the_result() -> None:
    """0.5 + 0.3 a − 0.2 b + 0 c: worst with a high and b low, and c, which makes no difference, low."""
    found = find_worst(no_box, runs_of("abc", lambda a, b, c: judged(0.5 + 0.3 * a - 0.2 * b + 0 * c)), NONE)
    assert found.run.corner.met == {"a": True, "b": False, "c": False}
    assert found.matter == (("a", True), ("b", False))
    assert (found.proof.method, found.proof.inside) == ("enumerated", False)
    assert found.proof.why == "no box may be enclosed"
    assert found.proof.runs == 8
    assert found.proof.boxes == 0


@pytest.mark.parametrize(("corners", "method"), [(8, "enumerated"), (7, "searched")])
def test_few_corners_are_all_run_and_many_are_searched(corners: int, method: str) -> None:
    runs = runs_of("abc", lambda a, b, c: judged(0.5 + 0.1 * a + 0.1 * b + 0.1 * c))
    found = find_worst(no_box, runs, Effort(boxes=0, corners=corners))
    assert found.proof.method == method
    assert not found.proof.inside
    assert found.run.corner.met == {"a": True, "b": True, "c": True}


def test_why_it_was_not_enclosed_is_told() -> None:
    found = find_worst(no_box, runs_of("a", lambda a: judged(0.5 + 0.1 * a)), Effort())
    assert found.proof.why == "it cannot be enclosed"
    assert found.proof.method == "enumerated"


def test_by_default_a_corner_for_each_side_of_ten_inputs() -> None:
    assert (Effort().boxes, Effort().corners) == (160, 1024)


def test_where_the_rule_ended_no_input_matters() -> None:
    found = find_worst(no_box, runs_of("a", lambda a: NotAssessed("x") if a else judged(0.5)), NONE)
    assert isinstance(found.run.ending, NotAssessed)
    assert found.matter == ()


HERE = judged(0.5)


@pytest.mark.parametrize(
    ("there", "differs"),
    [
        (judged(0.5), False),
        (judged(0.6), True),
        (replace(judged(0.5), holds=False), True),
        (NotAssessed("x"), True),
    ],
)
def test_whether_the_other_side_changes_the_result(there: Ending, differs: bool) -> None:
    run = CornerRun(Corner(), there, severity(there, stress))
    assert _differs(run, HERE) is differs


@pytest.mark.parametrize(
    ("ending", "same_as", "asked"),
    [
        (judged(0.5), {}, 0),
        (judged(0.5, 0.75), {}, 1),
        (judged(0.75, 0.5), {}, 0),
        (judged(0.75, 0.75), {}, None),  # two govern alike
        (judged(0.75, 0.75), {1: 0}, 0),  # and the second is the first again
        (judged(0.0), {}, None),  # nothing is used of it
        (replace(judged(0.5), utilisation=math.inf), {}, None),
        (replace(judged(0.5), utilisation=None), {}, None),
        (NotAssessed("x"), {}, None),
    ],
)
def test_the_slope_is_asked_of_the_one_comparison_that_governs(
    ending: Ending, same_as: dict[int, int], asked: int | None
) -> None:
    numbers: list[int] = []

    def counts(key: str, _: Corner, number: int) -> bool:
        numbers.append(number)
        return key == "a"

    prover: Any = SimpleNamespace(same_as=same_as, counts=counts)
    run = CornerRun(Corner(), ending, severity(ending, stress))
    assert _surely("a", run, prover) is (asked is not None)
    assert _surely("b", run, prover) is False
    assert numbers == ([] if asked is None else [asked, asked])
