"""The load case for which a rule is worked on a component, or why there is none."""

from __future__ import annotations

from collections.abc import Collection

from speclint.checking.worked_case import worked_case
from speclint.rules import Context, NotAssessed, Rule, Unread
from speclint.specs import CaseName, Component, Link, LoadCase


def case_of(rule: Rule, component: Component, name: CaseName, context: Context) -> LoadCase | NotAssessed:
    """The load case of that name, with whatever it asks to have worked; or what is wanting."""
    return worked_case(load_case_of(component, name, context), rule, component, context)


def load_case_of(component: Component, name: CaseName, context: Context) -> LoadCase | NotAssessed:
    """The load case of that name as the duty of a component states it; or what is wanting."""
    duty, passed = context.design.duty_of(component)
    context.consulted.specs |= passed
    if duty is None:
        return _no_duty(component, passed, context)
    case = duty.cases.get(name)
    if case is None:
        where = duty.where.at(f"cases.{name}")
        return NotAssessed(f"load case {name} is not stated in {duty.where.file}", where)
    return case


def _no_duty(component: Component, passed: Collection[str], context: Context) -> NotAssessed:
    """Why a component has no duty: none is stated on the way ``passed``, or that or a spec on the way is not read."""
    design = context.design
    for part in (design.specs[name] for name in sorted(passed) if name in design.index.entries):
        if isinstance(part, Component) and isinstance(part.duty, Link):  # the way ends at the first
            said = f'{part.id} states the duty "{part.duty.id}", and no duty of that id could be read'
            return Unread(said, part.duty.where, (design.file_at_fault(part.duty),))
    said = "duty is not stated, nor inherited from a component it is linked to"
    if lost := sorted(name for name in passed if name not in design.index.entries):
        said = f"{said}: {', '.join(lost)} could not be read"
        return Unread(said, component.duty.where, design.unread_among(lost))
    return NotAssessed(said, component.duty.where)
