"""By how much a rocker's shaft that twists and bends shifts the opening and the shutting of its valve.

A shaft that twists and bends gives way before its valve leaves the seat. What the valve loses of its lift acts as so
much more clearance at the tappet: the valve opens later and shuts earlier.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.equations import FIRST_PRINCIPLES, Metres, Newtons, Ratio, formula, require
from speclint.facts.cam_torques import load_of_steam, loads_of_springs, weight_that_shuts
from speclint.facts.moduli import modulus_as_listed, poisson_as_listed
from speclint.facts.rocker_shafts import StiffShaft, arms_on_shaft, modulus_of_rigidity
from speclint.facts.valve_gear import ValvesTrain
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.tables import Reading
from speclint.rules import Sheet
from speclint.specs import Rocker, Shaft

if TYPE_CHECKING:
    from speclint.specs import LoadCase


@formula("F = max(F_f + F_st + W + F_r, 0)", cites=[FIRST_PRINCIPLES])
def load_at_seat(F_f: Newtons, F_st: Newtons, W: Newtons, F_r: Newtons) -> Newtons:
    """Load that a valve puts on its gear as it leaves its seat, or regains it.

    F = max(F_f + F_st + W + F_r, 0)

    ``F_f`` springs, ``F_st`` steam that holds the valve shut, ``W`` weight that shuts it; ``F_r`` friction of its
    spindle, below 0 as the valve shuts [N]. Returns [N].

    >>> load_at_seat(F_f=1100.0, F_st=6000.0, W=40.0, F_r=30.0), load_at_seat(F_f=10.0, F_st=0.0, W=0.0, F_r=-30.0)
    (7170.0, 0.0)
    """
    return max(F_f + F_st + W + F_r, 0 * F_f)


@formula("δ_s = f/i", cites=[FIRST_PRINCIPLES])
def clearance_of_lift(f: Metres, i: Ratio) -> Metres:
    """Clearance at the tappet that costs a valve as much of its lift as the shaft of its rocker does.

    δ_s = f/i

    ``f`` lift lost at the valve [m]; ``i`` travel of the valve over that of the tappet, above 0. Returns [m]. Raises
    OutOfRange otherwise.

    >>> clearance_of_lift(f=0.3e-3, i=1.5) == 0.3e-3 / 1.5
    True
    """
    require(i > 0, "the lever ratio must be above 0")
    return f / i


@formula("δ_t = δ + δ_s", cites=[FIRST_PRINCIPLES])
def clearance_with_shaft(δ: Metres, δ_s: Metres) -> Metres:
    """Clearance after which a valve leaves its seat, with what the shaft of its rocker gives way.

    δ_t = δ + δ_s

    ``δ`` clearance at the tappet, ``δ_s`` the clearance that the shaft's giving way comes to [m]. Returns [m].

    >>> round(clearance_with_shaft(δ=0.5e-3, δ_s=0.2e-3), 9)
    0.0007
    """
    return δ + δ_s


class ShaftGivesWay(Struct, frozen=True):
    """What the shaft of a rocker gives way, as clearance at the tappet [m].

    ``held`` as steam holds the valve shut, ``free`` as the springs alone press and it opens, ``shuts`` as it shuts.
    """

    held: Metres
    free: Metres
    shuts: Metres


#: A rocker in one piece, or a train without one.
STIFF = ShaftGivesWay(0.0, 0.0, 0.0)


def gives_way_as_it_opens(what: str, held: float, free: float) -> Reading:
    """What a rocker's shaft gives way as its valve opens, from that under the springs to that with steam [m].

    >>> gives_way_as_it_opens("the inlet", 0.3e-3, 0.1e-3).low
    0.0001
    """
    says = f"clearance to which the rocker's shaft of {what} comes as it opens: without steam, with steam"
    return Reading(says, held, free, held, "m", FIRST_PRINCIPLES)


def shaft_gives_way(
    train: ValvesTrain, i: Ratio, case: LoadCase, sheet: Sheet, *, cold: bool
) -> ShaftGivesWay:
    """What the shaft of a train's rocker gives way at its valve's seat, every size as the drawings aim at it.

    The steam is that of the load case, live on one side of the valve and exhaust on the other; none on a ``cold``
    engine.
    """
    rocker = train.rocker
    if rocker is None or not sheet.is_stated(f"shaft of the arms of {rocker.id}", rocker.on_shaft):
        return STIFF
    take = sheet.take_nominal
    shaft = _as_drawn(rocker, sheet.follow(rocker.on_shaft), i, sheet)
    F_f, _ = loads_of_springs(train, sheet)
    F_st = 0.0 if cold else load_of_steam(train, case, sheet)
    F_r, W = take("F_r", train.spindle.friction), weight_that_shuts(train, sheet)

    def clearance(symbol: str, steam: Newtons, friction: Newtons) -> Metres:
        F = sheet.work("F", load_at_seat, F_f=F_f, F_st=steam, W=W, F_r=friction)
        return sheet.work(symbol, clearance_of_lift, f=shaft.lift_lost(F, i * F, sheet), i=i)

    return ShaftGivesWay(
        held=clearance("δ_sh", F_st, F_r),
        free=clearance("δ_sf", 0.0, F_r),
        shuts=clearance("δ_ss", 0.0, -F_r),
    )


def _as_drawn(rocker: Rocker, shaft: Shaft, i: Ratio, sheet: Sheet) -> StiffShaft:
    take, metal = sheet.take_nominal, sheet.material_of(shaft)
    E = sheet.look_up("E", modulus_as_listed, of=shaft, metal=metal, at=DRAWING_TEMPERATURE)
    ν = sheet.look_up("ν", poisson_as_listed, of=shaft, metal=metal)
    return StiffShaft(
        arms=arms_on_shaft(rocker, shaft, sheet, take),
        d=take("d", shaft.diameter),
        E=E,
        G=sheet.work("G", modulus_of_rigidity, E=E, ν=ν),
        b_v=take("b_v", rocker.valve_arm),
        i=i,
    )
