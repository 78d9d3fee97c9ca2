"""Inputs that several rules share: the cylinder, its pressures, and the crank gear over a revolution."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import NamedTuple

from speclint import Sheet
from speclint.equations import Kilograms, Metres, Newtons, Pascals, RadiansPerSecond, Ratio, SquareMetres
from speclint.facts import connecting_rod_of, mass_moved, speed_of_crank, stroke_of
from speclint.handbook.cams import crank_radius
from speclint.handbook.cylinders import pressure_blown_off, relief_accumulation
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
    on those ``sides``; with water in the cylinder the pressure at which they blow off all of it.
    """
    water = case.where.key.endswith("cases.water")
    pressures = [
        sheet.take(symbol, value)
        for symbol, value in (("p_b", case.safety_valve_pressure), ("p_c", case.cylinder_pressure))
        if sheet.is_stated(f"pressure {symbol}", value)
    ]
    bore = sheet.read("bore of liner", cylinder.liner.in_bore)
    for name, end in cylinder.block.ends.items():
        here = sheet.read("bore of end", end.of_bore) == bore and sheet.read("side of end", end.side) in sides
        if here and (water or sheet.is_stated(f"setting of the relief valve, {name}", end.relief_set)):
            setting = sheet.take(f"p_r {name}", end.relief_set)
            rise = sheet.look_up("a_r", relief_accumulation) if water else 0.0
            pressures.append(sheet.work(f"p_w {name}", pressure_blown_off, p_r=setting, a=rise))
    if not pressures:
        raise sheet.not_assessed("the load case states no pressure in the cylinder", case.where)
    return max(pressures)


def crank_of(cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> Crank:
    """Crank, connecting rod and speed."""
    block, bore = cylinder.block, cylinder.liner.in_bore
    return Crank(
        r=sheet.work("r", crank_radius, S=sheet.take("S", stroke_of(block, sheet, bore))),
        l=sheet.take("l", connecting_rod_of(block, sheet, bore)),
        ω=speed_of_crank(block, case, sheet),
    )


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
