"""What a check took, taken once more, so that a drawing can show the whole of what its sheet shows one number of."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from speclint.checking.check_result import Check
from speclint.checking.worked_case import worked_case
from speclint.rules import Context, Corner, NotAssessed, RuleEnded, Sheet
from speclint.specs import Component, LoadCase

T = TypeVar("T")


def once_more(check: Check, context: Context, work: Callable[[Component, LoadCase, Sheet], T]) -> T | None:
    """The result of ``work`` on a sheet of the check's rule and component in its load case; None where that ends.

    Sizes are to be taken as they are drawn (``take_nominal``): of what is taken with its limits the sheet stands at the
    low side. Nothing is written down, and no finding comes of it.
    """
    rule, component = check.rule, context.design.specs[check.component]
    assert isinstance(component, Component)
    name = check.case or next(iter(rule.cases), "")
    duty, _ = context.design.duty_of(component)
    stated = dict(duty.cases).get(name) if duty is not None else None  # type: ignore[call-overload]
    if stated is None:
        return None
    context.begin()
    case = worked_case(stated, rule, component, context)
    try:
        if isinstance(case, NotAssessed):
            return None
        return work(component, case, Sheet(rule, component, context, Corner(), record=False))
    except RuleEnded:
        return None
    finally:
        context.begin()
