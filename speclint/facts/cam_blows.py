"""The load along a tappet as it takes up its clearance: what holds the valve, and the blow of the mass behind."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from speclint.equations import (
    COMMON_PRACTICE,
    Kilograms,
    Metres,
    Newtons,
    NewtonsPerMetre,
    Radians,
    RadiansPerSecond,
    Ratio,
)
from speclint.facts.blows import blow, estimated_stiffness, mass_struck, share_of_stiffness, struck_load
from speclint.facts.cam_motion import WholeLift
from speclint.facts.moduli import modulus_as_listed
from speclint.facts.train_loads import valve_speed
from speclint.facts.valve_gear import ValvesTrain
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import round_area
from speclint.handbook.tables import Reading
from speclint.rules import Sheet

#: Halvings of the rise, about a radian, until the angle is known to 1e-12.
_HALVINGS = 40


class Struck(Struct, frozen=True):
    """A train as its cam strikes it: lever ratio, mass at the valve, and the slope of the lift [m/rad] at a speed."""

    cam: str
    i: Ratio
    m: Kilograms
    slope: Metres
    ω: RadiansPerSecond


def load_as_taken_up(
    struck: Struck, held: Mapping[str, Newtons], train: ValvesTrain, sheet: Sheet
) -> Newtons:
    """The load along the tappet as the clearance is taken up, N; ``held`` are the loads that hold the valve."""
    v = sheet.work("v_c", valve_speed, i=struck.i, s_prime=struck.slope, ω=struck.ω)
    m_t = sheet.take_nominal("m_t", train.tappet.mass)
    m = sheet.work("m_b", mass_struck, m=struck.m, m_t=m_t, i=struck.i)
    F_b = sheet.work("F_b", blow, v=v, k=_stiffness(train, sheet), m=m)
    return sheet.work(f"F_b of {struck.cam}", struck_load, i=struck.i, F_b=F_b, **held)


def _stiffness(train: ValvesTrain, sheet: Sheet) -> NewtonsPerMetre:
    """Stiffness of the train at the valve, as stated, or the greatest by which it is estimated from the spindle."""
    spindle, take = train.spindle, sheet.take_nominal
    if sheet.is_stated("stiffness of the train", spindle.train_stiffness):
        return take("k", spindle.train_stiffness)
    metal = sheet.material_of(spindle)
    return sheet.work(
        "k",
        estimated_stiffness,
        x=sheet.look_up("x_k", greatest_share_of_stiffness),
        E=sheet.look_up("E_s", modulus_as_listed, of=spindle, metal=metal, at=DRAWING_TEMPERATURE),
        A=sheet.work("A_s", round_area, d=take("d_sp", spindle.diameter)),
        L=take("L_h", spindle.heated_length),
    )


def greatest_share_of_stiffness() -> Reading:
    """The greatest share of its spindle's stiffness that a train keeps.

    >>> greatest_share_of_stiffness().nominal
    0.5
    """
    share = share_of_stiffness()
    return Reading.exact(f"{share.what}, greatest", share.high, share.unit, COMMON_PRACTICE)


def angle_at(cam: WholeLift, lift: Metres) -> Radians:
    """The angle on the rise at which a cam has lifted so far."""
    low, high = 0.0, cam.top
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if cam.at(middle).lift < lift else (low, middle)
    return high
