"""The data that the sheets of a run consult: made once, and again in each helper process."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from functools import cache, partial
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.families import Loaded
from speclint.quantities import Measure
from speclint.repository import Design, Register, drawing_state
from speclint.rules import Context, OtherCheck

if TYPE_CHECKING:
    from speclint.checking.check_result import Check
    from speclint.handbook.materials import Material


class Inputs(Struct, frozen=True):
    """All that the sheets of a run consult, besides the families."""

    design: Design
    limits: Mapping[tuple[str, str], Measure]
    own_materials: Mapping[str, Material]
    register: Register
    today: date


def context_of(inputs: Inputs, loaded: Loaded) -> Context:
    """What the sheets of a run may consult."""
    materials = {**loaded.materials, **inputs.own_materials}
    context = Context(inputs.design, cache(partial(_find_material, materials)), inputs.limits)
    context.other_check = partial(_other_check, context, loaded)
    context.drawing = partial(
        drawing_state, design=inputs.design, readings=inputs.register.readings, today=inputs.today
    )
    if inputs.register.concessions:
        from speclint.checking.concession_watch import watch

        watch(context, loaded, inputs.register, inputs.today)
    return context


def _other_check(context: Context, loaded: Loaded, component: str, rule: str) -> OtherCheck | str:
    from speclint.checking.concession_watch import find_check  # only where a rule asks for another check

    key = "other check", component, rule
    found: Check | str = context.worked_once(key, lambda: find_check(context, loaded, component, rule))
    if isinstance(found, str):
        return found
    return OtherCheck(rule, component, found.outcome, found.says, found.utilisation)


def _find_material(own: Mapping[str, Material], name: str) -> Material:
    """A material of the repository or a family, or else of the handbook.

    :raises NotKnown: when neither has it.
    """
    if name in own:
        return own[name]
    from speclint.handbook.materials import material

    return material(name)
