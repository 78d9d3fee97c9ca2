"""How a pin is held in the boss of its wheel, or in the crosshead."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Pascals, Ratio
from speclint.handbook.fits import (
    DIN_7190,
    DIN_7190_2001,
    DRAWING_TEMPERATURE,
    contact_pressure,
    interference,
    interference_after_light_smoothing,
    interference_after_smoothing,
    outer_tresca_stress,
    torque_grip,
)
from speclint.handbook.materials import share_of_strength
from speclint.specs import LoadCase, Pin
from speclint_motion.formulae.pin_seats import pressure_lost_at_edge, torque_to_hold
from speclint_motion.inputs import load_on_pin, overhang_of_force


class _Seat(NamedTuple):
    """The seat of a pressed pin, and how both parts yield."""

    D: Metres
    L: Metres
    boss: Metres
    roughness: Metres
    E: tuple[Pascals, Pascals]
    nu: tuple[Ratio, Ratio]


@rule(
    "pin.held",
    title="A pressed pin is gripped by 1.2 times what opens its seat, holds twice the torque of a dry bearing, and its "
    "boss stays elastic; a pin held by a nut or an end plate has nut or bolts locked",
    on=Pin,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, DIN_7190, DIN_7190_2001, COMMON_PRACTICE],
    why="a pin that works loose in its wheel or crosshead comes out at speed, and the connecting rod with it",
    leaves_out="coupling rods on the same pin; water in the cylinder; the key of a pin; the fit of a taper and its "
    "draw, of a crank pin too; loss of grip by fretting, by a hot bearing and by stresses of the wheel: the local code "
    "and a competent person decide",
    against=("loosen",),
    limits=[
        Limit(
            "factor",
            "2",
            "ratio",
            COMMON_PRACTICE,
            "least torque that the seat holds over that of the bearing",
        ),
        Limit("friction", "0.15", "ratio", COMMON_PRACTICE, "friction of a bearing that runs dry"),
        Limit(
            "opening", "1.2", "ratio", COMMON_PRACTICE, "least grip of a seat over what opens it at its edge"
        ),
        Limit(
            "share",
            "1.15",
            "ratio",
            DIN_7190,
            "greatest difference of stresses at the bore of the boss over its proof stress: 2/√3, where it yields",
        ),
    ],
)
def held(pin: Pin, case: LoadCase, sheet: Sheet) -> Judgement:
    """A press fit by Lamé's pressure at its least and its greatest interference; else the lock of nut or bolts.

    A plate over the end of a crank pin keeps it from coming out, and nothing but its fit from rocking in its hole.
    """
    by, found = sheet.read("held by", pin.seat.by), []
    if by != "press fit":
        lock = sheet.read("locked by", pin.seat.locked_by)
        found = [sheet.states(lock != "nothing", f"{by} locked by: {lock}", where=pin.seat.locked_by.where)]
    if by == "press fit" or (by == "end plate" and _is_on_crank(pin, sheet)):
        seat = _seat(pin, sheet)
        δ = sheet.work("δ", interference, d=sheet.take("d_s", pin.seat.diameter), D=seat.D)
        found += [*_gripped(pin, case, seat, δ, sheet), _boss(pin, seat, δ, sheet)]
    return sheet.worst(*found)


def _is_on_crank(pin: Pin, sheet: Sheet) -> bool:
    """By its place, or by an overhang: a pin that is held on both sides has none."""
    return sheet.read("place", pin.place) == "crank pin" or sheet.is_stated("overhang", pin.overhang)


def _seat(pin: Pin, sheet: Sheet) -> _Seat:
    for name, size in (("pin", pin.seat.diameter), ("hole", pin.seat.hole)):
        if not sheet.tolerance(f"Δ {name}", size) > 0.0:
            raise sheet.not_assessed(f"the {name} of a press fit states no limits", size.where)
    of_pin, boss = sheet.material_of(pin), sheet.material_named("the boss", pin.seat.boss_material)
    return _Seat(
        sheet.take("D", pin.seat.hole),
        sheet.take("L", pin.seat.length),
        sheet.take("D_b", pin.seat.boss),
        sheet.take("Rz", pin.seat.roughness),
        (
            sheet.look_up("E_i", of_pin.modulus, of=pin, at=DRAWING_TEMPERATURE),
            sheet.look_up("E_b", boss.modulus, at=DRAWING_TEMPERATURE),
        ),
        (sheet.look_up("ν_i", of_pin.poisson, of=pin), sheet.look_up("ν_b", boss.poisson)),
    )


def _pressure(symbol: str, δ: Metres, seat: _Seat, sheet: Sheet) -> Pascals:
    return sheet.work(
        symbol,
        contact_pressure,
        delta=δ,
        d_in=0.0,
        D=seat.D,
        D_out=seat.boss,
        E_in=seat.E[0],
        nu_in=seat.nu[0],
        E_out=seat.E[1],
        nu_out=seat.nu[1],
    )


def _gripped(pin: Pin, case: LoadCase, seat: _Seat, δ: Metres, sheet: Sheet) -> Iterator[Judgement]:
    """That the seat neither opens nor turns, at what is surely left of its interference."""
    left = sheet.work(
        "δ_w", interference_after_smoothing, delta=δ, Rz_in=seat.roughness, Rz_out=seat.roughness
    )
    stays = sheet.stays(left, δ, strictly=True).else_says(
        "pin loose in its seat: {left} of interference left"
    )
    p = _pressure("p", max(left, 0.0), seat, sheet)
    F, _ = load_on_pin(pin, case, sheet)
    torque = sheet.work(
        "T_n",
        torque_to_hold,
        x=sheet.limit("factor", "x"),
        mu=sheet.limit("friction", "μ_b"),
        F=F,
        d=sheet.take("d", pin.diameter),
    )
    holds = sheet.work("T_h", torque_grip, mu=sheet.take("μ", pin.seat.friction), p=p, D=seat.D, L=seat.L)
    yield stays
    yield sheet.at_least(holds, torque).else_says("pin turns in its seat: {found} held, {limit} wanted")
    if _is_on_crank(pin, sheet):
        a, x = overhang_of_force(pin, sheet), sheet.limit("opening", "x_e")
        opens = sheet.work("p_e", pressure_lost_at_edge, x=x, F=F, a=a, D=seat.D, L=seat.L)
        yield sheet.at_least(p, opens).else_says(
            "seat opens under the pin: gripped by {found}, {limit} wanted"
        )


def _boss(pin: Pin, seat: _Seat, δ: Metres, sheet: Sheet) -> Judgement:
    """Tresca's stress at the bore of the boss, at what may be left of the interference."""
    most = sheet.work(
        "δ_m", interference_after_light_smoothing, delta=δ, Rz_in=seat.roughness, Rz_out=seat.roughness
    )
    p = _pressure("p_m", max(most, 0.0), seat, sheet)
    boss = sheet.material_named("the boss", pin.seat.boss_material)
    proof = sheet.look_up(
        "R_p", boss.proof_stress, at=DRAWING_TEMPERATURE, thickness=(seat.boss - seat.D) / 2
    )
    allowed = sheet.work("σ_n", share_of_strength, k=sheet.limit("share", "k"), R=proof)
    stress = sheet.work("σ_T", outer_tresca_stress, p=p, D=seat.D, D_out=seat.boss)
    return sheet.at_most(stress, allowed).else_says("boss stressed to {found} at its bore, {limit} allowed")


RULES = (held,)
