"""Two checks of one rule held against each other: whether they say the same, or one is worse."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from speclint.checking import Check
from speclint.repository import Change
from speclint.testing.trial import Trial

#: What two runs of the same sums may differ by, of the number itself.
SAME = 1e-9
#: What is used of a limit below which it counts as nothing: a limit at nothing is used to what rounding leaves.
_NOTHING = 1e-12


def same_numbers(one: Check, other: Check) -> bool:
    """Whether two checks come out alike: outcome, grade, and what is used of the limit."""
    if (one.outcome, one.grade) != (other.outcome, other.grade):
        return False
    used, then = one.utilisation, other.utilisation
    if used is None or then is None:
        return used is then
    return used == then or math.isclose(used, then, rel_tol=SAME, abs_tol=_NOTHING)


def words_of(done: Check) -> tuple[object, ...]:
    """All that a check says, to the letter."""
    failing = tuple(one.says for one in done.failing)
    return (
        done.outcome,
        done.grade,
        done.utilisation,
        done.says,
        done.actual,
        done.case,
        done.governing,
        done.at_worst,
        done.missing,
        failing,
    )


def said_otherwise(one: Check, other: Check) -> str:
    """The first thing that two checks say otherwise; "" where they say the same."""
    pairs = zip(words_of(one), words_of(other), strict=True)
    return next((f"{then!r}, not {was!r}" for was, then in pairs if was != then), "")


def worse(before: Check, after: Check) -> bool:
    """Whether a check came out worse: a finding where it conformed, a graver one, or more of the limit used.

    What is used of the limit is compared where outcome and grade are the same: where a graver comparison came to hold,
    another governs.
    """
    was, then = _gravity(before), _gravity(after)
    if was is None or then is None or was != then:
        return was is not None and then is not None and then > was
    used, now = before.utilisation, after.utilisation
    if used is None or now is None or math.isinf(used):
        return False
    return now > used + SAME * abs(used) + _NOTHING


def _gravity(done: Check) -> int | None:
    """How grave it is that a check came out as it did; None where it was not judged."""
    if done.outcome == "conforms":
        return 0
    return 1 + done.grade if done.outcome == "finding" and done.grade is not None else None


def shown(done: Check) -> str:
    """How a check came out, for a fault: outcome, grade, what is used, and what it says."""
    grade = f" ({done.grade.word})" if done.outcome == "finding" and done.grade else ""
    used = "" if done.utilisation is None else f", {done.utilisation:.6g} of the limit used"
    return f"{done.outcome}{grade}{used}: {' '.join(done.says.split())}"


def culprit(trial: Trial, changes: Sequence[Change], fault: Callable[[Check], bool]) -> str:
    """The first of some changes that alone makes the fault, as it stands in a spec; else how many there are."""
    for one in changes:
        after = trial.with_changes([one])
        if after is not None and fault(after):
            return f"{one.component}.{one.key} = {one.value!r}"
    return f"{len(changes)} changes together"
