"""Oil: where it is fed, and whether it stands the heat."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import Component, CylinderBlock, CylinderLiner, LoadCase, PistonRing, ValveSpindle
from speclint_pairings.formulae import flash_margin


@rule(
    "lubrication.points",
    title="Each rubbing pair in steam has a feed of oil, a check valve tight against the chest, and a drain",
    on=(CylinderBlock, CylinderLiner, ValveSpindle),
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="without a check valve the steam drives the oil back to the lubricator, and without a drain water drives "
    "it out of the joint",
    leaves_out="how much oil is fed; seals between the cam box and the steam (the rules of spindles have those)",
)
def points(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Feed, check valve and drain are stated, and the check valve is proved against the live steam."""
    if isinstance(component, CylinderBlock) and not _bare_rings(component, sheet):
        raise sheet.not_applicable("no ring bears on the block itself")
    oiled = component.lubrication
    fed = sheet.is_stated("feed", oiled.feed) and bool(sheet.read("feed", oiled.feed).strip())
    lacking = [] if fed else ["feed"]
    lacking += [
        name
        for name, value in (("check_valve", oiled.check_valve), ("drained", oiled.drained))
        if not sheet.read(name, value)
    ]
    if lacking:
        return sheet.states(False, f"without {', '.join(lacking)}", where=oiled.where)
    proved = sheet.take("p_c", oiled.check_valve_pressure)
    return sheet.at_least(proved, sheet.take("p", case.live_pressure))


@rule(
    "pairing.lubricant",
    title="The cylinder oil's flash point lies above the wall that it wets",
    on=(CylinderBlock, CylinderLiner),
    cases=("starting", "running", "drifting"),
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="an oil near its flash point boils off the wall, and what is left cokes in the ring grooves",
    leaves_out="viscosity, and air drawn in when drifting, which burns an oil that steam would spare",
    limits=[
        Limit("margin", "30 K", "temperature difference", COMMON_PRACTICE, "least flash point over the wall")
    ],
)
def lubricant(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Flash point against the metal in the hot cases."""
    if isinstance(component, CylinderBlock) and not _bare_rings(component, sheet):
        raise sheet.not_applicable("no ring bears on the block itself")
    flash = sheet.take("T_f", component.lubrication.flash_point)
    margin = sheet.work("ΔT", flash_margin, T_f=flash, T=sheet.take("T", case.temperature_of(component)))
    return sheet.at_least(margin, sheet.limit("margin", "ΔT_n"))


def _bare_rings(block: CylinderBlock, sheet: Sheet) -> bool:
    return bool(sheet.belonging_to(block, PistonRing))


RULES = (points, lubricant)
