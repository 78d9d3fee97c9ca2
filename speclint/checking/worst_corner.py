"""The worst corner of a rule in one load case, and how it is known to be the worst."""

from __future__ import annotations

import math
from collections.abc import Hashable, Iterator

from msgspec import Struct

from speclint.checking.corner_runs import CornerRun, CornerRuns
from speclint.checking.corner_search import search_each, visit_all
from speclint.checking.proof import Boxed, Prover
from speclint.checking.proved import Method, Proof
from speclint.rules import Judgement, NotEnclosed

_INSIDE = ("nothing is toleranced", "enclosed")


class Effort(Struct, frozen=True):
    """What may be spent on one load case: boxes enclosed, and corners where those leave it open.

    Beyond so many corners they are searched. By default two to the tenth; boxes for the time that so many corners take.
    """

    boxes: int = 160
    corners: int = 2**10


class Found(Struct, frozen=True):
    """The worst corner, the sides that matter there with the input of each, and the proof."""

    run: CornerRun
    matter: tuple[tuple[Hashable, bool], ...]
    proof: Proof


def find_worst(over_box: Boxed, runs: CornerRuns, effort: Effort) -> Found:
    """The worst corner; corners that were run before are not run again."""
    first = runs.worst
    if first is not None and not first.corner.met:
        return Found(first, (), Proof("nothing is toleranced", True, len(runs)))
    prover = Prover(over_box, runs, effort.boxes)
    method, why = _proved(prover, runs, effort)
    run = _at_low_where_it_is_the_same(runs, prover)
    matter = tuple(_matter(run, runs, prover))
    method = method if run.corner.met else "nothing is toleranced"
    proof = Proof(method, method in _INSIDE, len(runs), prover.boxes, why)
    return Found(run, matter, proof)


def _proved(prover: Prover, runs: CornerRuns, effort: Effort) -> tuple[Method, str]:
    """By boxes; else corner by corner where they are few; else by search. Why, where not by boxes."""
    try:
        if not effort.boxes:
            raise NotEnclosed("no box may be enclosed")
        prover.prove()
    except NotEnclosed as problem:
        why = str(problem)
    else:
        return ("split" if prover.splits else "enclosed"), ""
    first = runs.worst or runs.at({})
    if 2 ** len(first.corner.met) <= effort.corners and visit_all(runs, effort.corners):
        return "enumerated", why
    search_each(runs, (runs.worst or first).corner.met)
    return "searched", why


def _at_low_where_it_is_the_same(runs: CornerRuns, prover: Prover) -> CornerRun:
    """The worst corner with every input at its low side whose side makes no difference there."""
    run = runs.worst
    assert run is not None
    for key, high in list(run.corner.met.items()):
        if high and not _surely(key, run, prover):
            other = runs.at({**run.corner.met, key: False})
            if other.severity == run.severity:
                run = other
    return run


def _matter(run: CornerRun, runs: CornerRuns, prover: Prover) -> Iterator[tuple[Hashable, bool]]:
    """The sides whose turning over changes the result."""
    if not isinstance(run.ending, Judgement):
        return
    for key, high in run.corner.met.items():
        if _surely(key, run, prover) or _differs(runs.at({**run.corner.met, key: not high}), run.ending):
            yield key, high


def _surely(key: Hashable, run: CornerRun, prover: Prover) -> bool:
    """Whether the slope of what governs is known not to be nothing, so that the other side need not be run."""
    ending = run.ending
    if not isinstance(ending, Judgement) or not ending.utilisation or math.isinf(ending.utilisation):
        return False
    parts = ending.every
    governing = {
        prover.same_as.get(index, index) for index, one in enumerate(parts) if one.margin == ending.margin
    }
    return len(governing) == 1 and prover.counts(key, run.corner, min(governing))


def _differs(other: CornerRun, here: Judgement) -> bool:
    there = other.ending
    if not isinstance(there, Judgement):
        return True
    return there.utilisation != here.utilisation or there.holds != here.holds
