"""Pressures in the cylinder beside a shut valve or a seat: the greatest and the least of a load case.

What the duty does not state is taken from the steam beside it only where steam fills the cylinder. A drifting engine
compresses and draws in what is left there, and water stands as high as the relief valves let it: neither is known by
the pressure of the chest. Which end a valve or a seat serves is not asked: the highest setting of the block counts.

Where the cylinder has a valve gear and works with steam, its cycle over a turn is looked at too, and the worse counts.
"""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Pascals
from speclint.facts import (
    SteamAtValve,
    event_pressure,
    greatest_live_pressure,
    known_steam_beside,
    steam_at_valve,
    with_water,
    works_with_steam,
)
from speclint.specs import CylinderBlock, LoadCase, PoppetValve, ValveSeat


def steam_beside(part: PoppetValve | ValveSeat, case: LoadCase, sheet: Sheet) -> SteamAtValve | None:
    """The cycle of the cylinder beside a valve or a seat; None where it is not known, or air is in it."""
    if not works_with_steam(case):
        return None
    return sheet.aside(f"cycle beside {part.id}, {case.where.key}", known_steam_beside, part, case)


def steam_needed(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> SteamAtValve | None:
    """The cycle of a valve's cylinder, in any case that names a notch; None where it has no valve gear.

    :raises RuleEnded: where the gear does not state all that its cycle rests on.
    """
    return sheet.aside(f"cycle of {valve.id}, {case.where.key}", steam_at_valve, valve, case)


def greatest_in_cylinder(
    case: LoadCase, block: CylinderBlock, part: PoppetValve | ValveSeat, sheet: Sheet
) -> Pascals:
    """The greatest gauge pressure in the cylinder beside a part [Pa]: that stated, else that of the live steam.

    While the engine drifts it must be stated. By the cycle no less than steam is compressed to before the inlet opens.
    With water in the cylinder it is never less than the pressure at which the relief valves of the block blow off all
    of it.

    :raises NotAssessed: where the case states no pressure from which it is known.
    """
    stated = sheet.is_stated("cylinder pressure", case.cylinder_pressure)
    known = stated or case.name == "drifting"
    p = sheet.take("p_c", case.cylinder_pressure if known else greatest_live_pressure(case, sheet))
    steam = steam_beside(part, case, sheet)
    if steam is not None:
        p = max(p, event_pressure(steam, _greatest(part, sheet), "p_k", case, sheet))
    return with_water(p, block.ends.values(), case, sheet)


def least_in_cylinder(case: LoadCase, part: PoppetValve | ValveSeat, sheet: Sheet) -> Pascals:
    """The least gauge pressure in the cylinder beside a part [Pa]: that stated, else that of the exhaust.

    Drifting it must be stated. By the cycle no more than beside a seat at any angle, or beside a valve while it is
    shut: steam cut off early may expand below the pressure of the exhaust.

    :raises NotAssessed: where the case does not state it.
    """
    stated = sheet.is_stated("least cylinder pressure", case.least_cylinder_pressure)
    known = stated or case.name == "drifting"
    p = sheet.take("p_0", case.least_cylinder_pressure if known else case.exhaust_pressure)
    steam = steam_beside(part, case, sheet)
    return p if steam is None else min(p, event_pressure(steam, _least(part, sheet), "p_l", case, sheet))


def _greatest(part: PoppetValve | ValveSeat, sheet: Sheet) -> str:
    """Up to where compression counts beside a part: an inlet is shut until it begins to open."""
    if isinstance(part, PoppetValve) and sheet.is_stated("serves", part.serves):
        return "compression" if sheet.read("serves", part.serves) == "inlet" else "highest"
    return "highest"


def _least(part: PoppetValve | ValveSeat, sheet: Sheet) -> str:
    """Over which part of the turn the least pressure beside a part counts."""
    if isinstance(part, PoppetValve) and sheet.is_stated("serves", part.serves):
        return f"least, {sheet.read('serves', part.serves)} shut"
    return "least"
