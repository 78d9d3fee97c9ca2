"""Inputs that several rules share: the cylinder, its pressures, and the crank gear over a revolution."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

from speclint import Sheet
from speclint.equations import Kilograms, Metres, Newtons, Pascals, RadiansPerSecond, Ratio, SquareMetres
from speclint.facts import (
    beside_fillet,
    connecting_rod_of,
    ends_of,
    greatest_live_pressure,
    length_of_bearing,
    mass_moved,
    speed_of_crank,
    states_speed,
    stroke_of,
    with_water,
)
from speclint.handbook.cams import crank_radius
from speclint.handbook.members import round_area
from speclint.specs import Crosshead, CylinderBlock, CylinderLiner, Pin, Piston, PistonRod, SlideBar
from speclint_motion.formulae.guides import thrust_on_one_bar
from speclint_motion.formulae.thrust import (
    connecting_rod_force,
    crosshead_force,
    force_in_sense,
    rod_force_of,
    slipper_thrust,
    steam_within_error,
    thrust_of_force,
)

if TYPE_CHECKING:
    from speclint.facts import PistonForces
    from speclint.specs import LoadCase

FULL_TURN = 2 * math.pi
#: Senses of a force along the line of stroke: towards the axle, which pushes the rods, and away from it.
PUSH, PULL = 1.0, -1.0


class Cylinder(NamedTuple):
    """The cylinder that a piston works in; ``D`` and ``A`` are of the greatest bore of its life."""

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
    """The block, the liner, and the full area of the greatest bore of the liner's life, which it has to state."""
    liner = sheet.follow(piston.runs_in)
    D = max(sheet.take("D", liner.bore), sheet.take("D_last", liner.last_bore))
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
    at_speed = case.name in ("running", "drifting")
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


#: A force of the motion by the force along the line of stroke: its magnitude, and in the sense of that force.
Force = tuple[Callable[..., Newtons], Callable[..., Newtons]]


def _along(F: Newtons, **_: float) -> Newtons:
    return F


ALONG_STROKE: Force = (_along, _along)
ON_BAR: Force = (slipper_thrust, thrust_of_force)
IN_CONNECTING_ROD: Force = (connecting_rod_force, rod_force_of)


def greatest(
    symbol: str,
    what: str,
    force: Force,
    cylinder: Cylinder,
    case: LoadCase,
    sheet: Sheet,
    *,
    sense: float | None = None,
    m: Kilograms | None = None,
) -> Newtons:
    """The greatest of a force over a revolution, worked again where the scan found it.

    Running, by the diagrams of both ends where the cylinder has a valve gear; otherwise by full boiler pressure up to
    the cut-off. Of one ``sense``, or of both; ``m`` is the mass that moves where it is not all that reciprocates.
    """
    from speclint.facts import (
        error_of_pressures,
    )  # with the cycle of a cylinder, only where a force is worked

    magnitude, of_stroke = force
    running = case.name == "running"
    forces = _forces_of(cylinder, case, sheet) if running else None
    if forces is None:
        gear = gear_of(cylinder, case, sheet)
        return _by_cut_off(symbol, what, magnitude, gear if m is None else gear._replace(m=m), sheet, sense)
    crank = crank_of(cylinder, case, sheet)
    moved = mass_moved(cylinder.block, sheet) if m is None else m
    turned = _Turned(of_stroke, crank, moved, forces, sheet.look_up("k_p", error_of_pressures))
    senses = (PUSH, PULL) if sense is None else (sense,)
    return max(_by_diagram(symbol, what, turned, one, sheet) for one in senses)


def greatest_on_one(bar: SlideBar, cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> Newtons:
    """The greatest thrust on one of the bars that share it, N."""
    N = greatest("N", "thrust on the bar", ON_BAR, cylinder, case, sheet)
    return sheet.work("N_1", thrust_on_one_bar, N=N, z=float(sheet.count("z", bar.bars_sharing)))


def _forces_of(cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> PistonForces | None:
    from speclint.facts import piston_forces  # only where a force is taken from the diagrams of a cylinder

    block, bore = cylinder.block, sheet.read("bore of liner", cylinder.liner.in_bore)
    return sheet.aside(f"diagrams of {block.id} {bore}, {case.where.key}", piston_forces, block, bore, case)


def _by_cut_off(
    symbol: str, what: str, magnitude: Callable[..., Newtons], gear: Gear, sheet: Sheet, sense: float | None
) -> Newtons:
    arguments, pulls = gear._asdict(), sense == PULL
    crank = {"r": gear.r, "l": gear.l}
    θ = sheet.scan(
        f"θ_{symbol}",
        f"crank angle of the greatest {what}",
        lambda θ: magnitude(F=crosshead_force(θ, **arguments), θ=θ, **crank),
        0.0,
        FULL_TURN,
        unit="rad",
        find="least" if pulls else "greatest",
        steps=360,
    )
    if magnitude is _along:
        found = sheet.work(symbol, crosshead_force, θ=θ, **arguments)
        return -found if pulls else found
    F = sheet.work("F", crosshead_force, θ=θ, **arguments)
    return sheet.work(symbol, magnitude, F=F, θ=θ, **crank)


class _Turned(NamedTuple):
    """All on which a force by the diagrams depends, at any angle of the crank."""

    of_stroke: Callable[..., Newtons]
    crank: Crank
    m: Kilograms
    steam: PistonForces
    k: Ratio

    def at(self, sense: float, θ: float) -> Newtons:
        """The force in a sense at an angle of the crank."""
        F = steam_within_error(k=self.k, F=self.steam.in_sense(sense, θ), F_m=self.steam.greatest(sense))
        along = force_in_sense(F_k=F, g=sense, m=self.m, **self.crank._asdict(), θ=θ)
        return self.of_stroke(F=along, r=self.crank.r, l=self.crank.l, θ=θ)


def _by_diagram(symbol: str, what: str, turned: _Turned, sense: float, sheet: Sheet) -> Newtons:
    from speclint.facts import most_on_piston, steam_on_piston

    n, way = ("1", "towards the axle") if sense > 0 else ("2", "away from the axle")
    θ = sheet.scan(
        f"θ_{n}",
        f"crank angle of the greatest {what}, {way}",
        lambda θ: turned.at(sense, θ),
        0.0,
        FULL_TURN,
        unit="rad",
        steps=360,
    )
    F = sheet.look_up(f"F_s{n}", steam_on_piston, forces=turned.steam, sense=sense, θ=θ)
    F_m = sheet.look_up(f"F_m{n}", most_on_piston, forces=turned.steam, sense=sense)
    F_k = sheet.work(f"F_k{n}", steam_within_error, k=turned.k, F=F, F_m=F_m)
    alone = turned.of_stroke is _along
    along = sheet.work(
        f"{symbol}{n}" if alone else f"F_{n}",
        force_in_sense,
        F_k=F_k,
        g=sense,
        m=turned.m,
        **turned.crank._asdict(),
        θ=θ,
    )
    if alone:
        return along
    return sheet.work(f"{symbol}{n}", turned.of_stroke, F=along, r=turned.crank.r, l=turned.crank.l, θ=θ)


def load_on_pin(pin: Pin, case: LoadCase, sheet: Sheet) -> tuple[Newtons, Cylinder]:
    """The greatest force in the connecting rod over a revolution, and the cylinder that it comes from."""
    cylinder = cylinder_of(piston_of(sheet.follow(pin.moved_by), sheet), sheet)
    what = "force in the connecting rod"
    return greatest("F_c", what, IN_CONNECTING_ROD, cylinder, case, sheet), cylinder


def overhang_of_force(pin: Pin, sheet: Sheet) -> Metres:
    """From the face that holds a crank pin to the force on it.

    However short it is said to be, half of the bearing lies before its middle, and before that the fillet.
    """
    b = length_of_bearing(pin, sheet)
    filleted = sheet.is_stated("fillet", pin.fillet)
    least = sheet.work("a_b", beside_fillet, b=b, r_f=sheet.take("r_f", pin.fillet) if filleted else 0.0)
    return max(sheet.take("a", pin.overhang), least)
