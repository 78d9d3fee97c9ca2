"""Inputs that several rules share: the cylinder, its pressures, and the crank gear over a revolution."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import NamedTuple

from speclint import Sheet
from speclint.equations import Kilograms, Metres, Newtons, Pascals, RadiansPerSecond, Ratio, SquareMetres
from speclint.facts import (
    connecting_rod_of,
    ends_of,
    greatest_live_pressure,
    mass_moved,
    speed_of_crank,
    states_speed,
    stroke_of,
    with_water,
)
from speclint.handbook.cams import crank_radius
from speclint.handbook.members import round_area
from speclint.specs import Crosshead, CylinderBlock, CylinderLiner, LoadCase, Piston, PistonRod

FULL_TURN = 2 * math.pi


class Cylinder(NamedTuple):
    """The cylinder that a piston works in."""

    block: CylinderBlock
    liner: CylinderLiner
    D: Metres
    A: SquareMetres


class Gear(NamedTuple):
    """The arguments of the formulae of thrust, by their names there."""

    r: Metres
    l: Metres  # noqa: E741 - the symbol of the trade
    ω: RadiansPerSecond
    m: Kilograms
    A: SquareMetres
    p_1: Pascals
    p_e: Pascals
    c: Ratio


class Crank(NamedTuple):
    """Crank and connecting rod, and how fast they turn."""

    r: Metres
    l: Metres  # noqa: E741 - the symbol of the trade
    ω: RadiansPerSecond


def cylinder_of(piston: Piston, sheet: Sheet) -> Cylinder:
    """The block, the liner, and the full area of the bore."""
    liner = sheet.follow(piston.runs_in)
    D = sheet.take("D", liner.bore)
    return Cylinder(sheet.follow(liner.housed_in), liner, D, sheet.work("A", round_area, d=D))


def piston_of(part: PistonRod | Crosshead, sheet: Sheet) -> Piston:
    """The piston at the other end of a rod, or of a crosshead's rod."""
    rod = sheet.follow(part.on_rod) if isinstance(part, Crosshead) else part
    return sheet.follow(rod.carries)


def boiler_pressure(case: LoadCase, sheet: Sheet) -> Pascals:
    """Greatest boiler pressure, gauge: that of the safety valves."""
    return sheet.take("p_b", case.safety_valve_pressure)


def relief_pressure(
    cylinder: Cylinder, case: LoadCase, sheet: Sheet, *, sides: tuple[str, ...] = ("back",)
) -> Pascals:
    """Greatest pressure in the cylinder, gauge: on the back of the piston, where it pulls the rod, or on other sides.

    The greatest of the boiler's, the cylinder's in this load case, and the setting of the relief valves of the ends
    on those ``sides``, where it is stated; with water in the cylinder the pressure at which they blow off all of it.
    """
    pressures = [sheet.take("p_b", greatest_live_pressure(case, sheet))]
    if sheet.is_stated("cylinder pressure", case.cylinder_pressure):
        pressures.append(sheet.take("p_c", case.cylinder_pressure))
    bore = sheet.read("bore of liner", cylinder.liner.in_bore)
    ends = [
        end
        for end in ends_of(cylinder.block, bore, sheet).values()
        if sheet.read("side of end", end.side) in sides
    ]
    settings = [end.relief_set for end in ends if sheet.is_stated("relief valve", end.relief_set)]
    pressures += [sheet.take("p_r", setting) for setting in settings]
    return with_water(max(pressures), ends, case, sheet)


def crank_of(cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> Crank:
    """Crank, connecting rod and speed."""
    block, bore = cylinder.block, cylinder.liner.in_bore
    return Crank(
        r=sheet.work("r", crank_radius, S=sheet.take("S", stroke_of(block, sheet, bore))),
        l=sheet.take("l", connecting_rod_of(block, sheet, bore)),
        ω=speed_of_crank(block, case, sheet),
    )


def turns(case: LoadCase, sheet: Sheet) -> bool:
    """Whether a load case has a speed: running and drifting it must be stated, in others it may be."""
    at_speed = case.where.key.endswith(("cases.running", "cases.drifting"))
    return at_speed or states_speed(case, sheet)


def gear_of(cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> Gear:
    """Crank gear, speed, masses and steam, at full boiler pressure up to the cut-off.

    Where the duty states no cut-off, full pressure is taken to the end of the stroke.
    """
    cut_off = sheet.take("c", case.cut_off) if sheet.is_stated("cut-off", case.cut_off) else 1.0
    return Gear(
        *crank_of(cylinder, case, sheet),
        m=mass_moved(cylinder.block, sheet),
        A=cylinder.A,
        p_1=sheet.take_absolute("p_1", case.safety_valve_pressure),
        p_e=sheet.take_absolute("p_e", case.exhaust_pressure),
        c=cut_off,
    )


def greatest(
    symbol: str, what: str, formula: Callable[..., Newtons], gear: Gear, sheet: Sheet, *, pull: bool = False
) -> Newtons:
    """The greatest of a force over a revolution, worked again where the scan found it; with ``pull``, the least."""
    arguments = gear._asdict()
    angle = sheet.scan(
        f"θ_{symbol}",
        f"crank angle of the greatest {what}",
        lambda θ: formula(θ, **arguments),
        0.0,
        FULL_TURN,
        unit="rad",
        find="least" if pull else "greatest",
        steps=360,
    )
    return sheet.work(symbol, formula, θ=angle, **arguments)
