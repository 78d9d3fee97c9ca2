"""Wheels on their seats: grip, and metal round the bore."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import DRAWING_TEMPERATURE, axial_grip, contact_pressure
from speclint_wheelsets.formulae import hub_ratio, interference, share_of_load
from speclint_wheelsets.kinds import Seats, Wheel


@rule(
    "wheel.grip",
    title="The press fit holds the wheel against a side thrust as great as the load of its axle, with a margin",
    on=Wheel,
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a wheel that moves on its axle widens the gauge and leaves the rails",
    leaves_out="fretting of the seat, and how the wheel was pressed on: the local code and a competent person decide",
    against=("loosen",),
    limits=[
        Limit("friction", "0.1", "ratio", COMMON_PRACTICE, "least friction of a dry seat"),
        Limit("margin", "2", "ratio", COMMON_PRACTICE, "least grip over the load of the axle"),
    ],
)
def grip(wheel: Wheel, sheet: Sheet) -> Judgement:
    """Contact pressure of a solid axle in the hub; its friction over the seat against twice the load."""
    axle = sheet.follow(wheel.carried_by)
    seats = axle.table_of(Seats)
    D, d = sheet.take("D", seats.seat), sheet.take("d", wheel.bore)
    hub, iron = sheet.material_of(wheel), sheet.material_of(axle)
    cold = DRAWING_TEMPERATURE
    p = sheet.work(
        "p",
        contact_pressure,
        delta=sheet.work("δ", interference, D=D, d=d),
        d_in=0.0,
        D=D,
        D_out=sheet.take("D_h", wheel.hub),
        E_in=sheet.look_up("E_a", iron.modulus, of=axle, at=cold),
        nu_in=sheet.look_up("ν_a", iron.poisson, of=axle),
        E_out=sheet.look_up("E_w", hub.modulus, of=wheel, at=cold),
        nu_out=sheet.look_up("ν_w", hub.poisson, of=wheel),
    )
    held = sheet.work(
        "F_h", axial_grip, mu=sheet.limit("friction", "μ"), p=p, D=D, L=sheet.take("L", seats.seat_length)
    )
    asked = sheet.work("W", share_of_load, x=sheet.limit("margin", "x"), F=sheet.take("F", seats.load))
    return sheet.at_least(held, asked)


@rule(
    "wheel.hub",
    title="The hub is at least one and six tenths of its bore across",
    on=Wheel,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a thin hub yields when the axle is pressed in, and then holds nothing",
    leaves_out="spokes, keys and the stress of the hub itself",
    against=("loosen",),
    limits=[Limit("ratio", "1.6", "ratio", COMMON_PRACTICE, "least outside of the hub over its bore")],
)
def hub(wheel: Wheel, sheet: Sheet) -> Judgement:
    """Two diameters."""
    k = sheet.work("k", hub_ratio, D_h=sheet.take("D_h", wheel.hub), d=sheet.take("d", wheel.bore))
    return sheet.at_least(k, sheet.limit("ratio"))


RULES = (grip, hub)
