"""Which values a remedy may be sought in where a rule rests on a long calculation, such as the cycle of a cylinder.

A search tries hundreds of values. It leaves out those that change what a long calculation gives, of the part of the
finding or of any other part that the change of the line is to clear: each trial would repeat it.
"""

from __future__ import annotations

from collections.abc import Sequence

from speclint.checking.check_result import Check
from speclint.checking.one_corner import run_once
from speclint.checking.remedy_trial import took
from speclint.errors import Location, replace
from speclint.rules import Context, Step
from speclint.specs import Component

#: The share by which a number is moved to see whether a long calculation hangs on it.
_LITTLE = 1e-3


def past_long_work(
    found: Check, free: Sequence[Step], beside: Sequence[Check], context: Context
) -> Sequence[Step]:
    """Those of some values of which a trial repeats no long calculation; none where one was not worked aside.

    ``beside`` are the findings of the rule on other parts.
    """
    if not beside and not any(step.long for step in found.steps):
        return free
    staying = list(free)
    for one in (found, *beside):
        part = context.design.specs[one.component]
        assert isinstance(part, Component)  # as it was checked
        read = [step for step in staying if took(one, step.where)]
        stays = _staying(one, part, read, context)
        staying = [step for step in staying if step not in read or step.where.drawn in stays]
    return staying


def _staying(one: Check, part: Component, read: Sequence[Step], context: Context) -> frozenset[Location]:
    """The lines of some values that leave what a part's long calculations give; worked once for all findings."""
    lines = tuple(step.where.drawn for step in read)
    key = "past long work", one.order, one.case, lines
    found: frozenset[Location] = context.worked_once(key, lambda: _tried(one, part, read, context))
    return found


def _tried(one: Check, part: Component, read: Sequence[Step], context: Context) -> frozenset[Location]:
    context.begin()
    run_once(one.rule, part, one.case, one.corner, context)
    lines = {step.where.drawn: step for step in read}
    if not context.long_results and not any(step.long for step in one.steps):
        return frozenset(lines)  # of this part nothing is long
    taken = context.taken_aside()
    if taken is None:
        return frozenset()
    rests_on = {where.drawn for where in taken}
    return frozenset(
        line for line, step in lines.items() if line not in rests_on or _stays(one, part, step, context)
    )


def _stays(one: Check, part: Component, step: Step, context: Context) -> bool:
    """Whether what long calculations give stays as it is where a number is a little greater or less."""
    if step.kind != "taken":
        return False
    known = context.long_results
    for share in (_LITTLE, -_LITTLE):
        moved = context.design.moved(step.where, share * step.stated)
        run_once(one.rule, part, one.case, one.corner, replace(context, moved=moved))
    return context.long_results == known
