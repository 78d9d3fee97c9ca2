"""Whether a rule holds at every corner, and if not, where it fails: sooner known than which corner is the worst.

A corner that is likely to fail is run first. Then the margins are enclosed over the box of tolerances, which ends
as soon as they are all known to be above nothing, or a corner fails. Where they cannot be enclosed, the corners are
searched from the one that is known.
"""

from __future__ import annotations

from collections.abc import Callable

from speclint.checking.corner_runs import CornerRun, CornerRuns, Sides, Together
from speclint.checking.corner_search import climb_each
from speclint.checking.proof import Boxed, Prover
from speclint.checking.severity import HOLDS, Ending
from speclint.rules import Corner, NotEnclosed, Rule

#: So many boxes may be enclosed; where more are needed the search is as good as the proof is long.
_BOXES = 40


class _Fails(Exception):
    """A corner at which the rule does not hold."""


class _Holding(CornerRuns):
    """Runs at corners, up to the first at which the rule does not hold."""

    def _kept(self, corner: Corner, ending: Ending) -> CornerRun:
        run = super()._kept(corner, ending)
        if run.severity[0] > HOLDS:
            raise _Fails
        return run


def failing_corner(
    run: Callable[[Corner], Ending], rule: Rule, boxed: Boxed, known: Sides, together: Together | None = None
) -> CornerRun:
    """A corner at which a rule does not hold, the one known tried first; else the worst of those that were run."""
    runs = _Holding(run, rule, together)
    try:
        tried = runs.at(known)
        if tried.corner.met:
            _seek(runs, boxed, tried.corner.met)
    except _Fails:
        pass
    assert runs.worst is not None  # as one corner at least was run
    return runs.worst


def _seek(runs: CornerRuns, boxed: Boxed, known: Sides) -> None:
    try:
        Prover(boxed, runs, _BOXES, whether_it_holds=True).prove()
    except NotEnclosed:
        climb_each(runs, known)
