"""How a pin is held in the boss of its wheel, or in the crosshead."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals, Ratio
from speclint.facts import boss_of_pin, is_locked, length_of_seat, metal_of_boss
from speclint.handbook.fits import (
    DIN_7190,
    DIN_7190_2001,
    DRAWING_TEMPERATURE,
    contact_pressure,
    diametral_clearance,
    interference,
    interference_after_light_smoothing,
    interference_after_smoothing,
    outer_tresca_stress,
    share_of_diameter,
    torque_grip,
)
from speclint.handbook.materials import share_of_strength
from speclint.specs import LoadCase, Pin
from speclint_motion.formulae.pin_seats import pressure_lost_all_along, pressure_lost_at_edge, torque_to_hold
from speclint_motion.inputs.thrust import load_on_pin, overhang_of_force


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
    title="A pressed pin, or a crank pin under a plate, is gripped by 1.2 times what opens its seat and twice a dry "
    "bearing's torque, its boss elastic; nut or bolts are locked; a crosshead pin under a plate fits",
    on=Pin,
    edition=7,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, DIN_7190, DIN_7190_2001, COMMON_PRACTICE],
    why="a pin that works loose in its wheel or crosshead comes out at speed, and the connecting rod with it",
    leaves_out="coupling rods on the same pin; water in the cylinder; what a key adds to the grip, without which a pin "
    "is judged; bending of a crosshead pin within its bosses, and bosses stressed by one pressed in under a plate; the "
    "fit of a taper and its draw, of which a crank pin is not covered; the mass of the rod's end, which swings with "
    "the pin; the greater mass of pistons for later bores; loss of grip by fretting, by a hot bearing and by stresses "
    "of the wheel: the local code and a competent person decide",
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
            "dry",
            "0.2",
            "ratio",
            DIN_7190.at("friction of steel on steel, shrunk on dry and free of grease"),
            "greatest friction of a seat that is counted",
        ),
        Limit(
            "slack",
            "0.002",
            "ratio",
            COMMON_PRACTICE,
            "greatest clearance of a crosshead pin under an end plate over its hole; H8/f7 leaves less from 55 mm on",
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

    A plate over the end of a pin keeps it from coming out, and nothing but its fit from rocking in its hole: a crank
    pin, held at one end, has to be gripped, and a crosshead pin slides in. The force is that at the liner's last bore.
    Of the boss, and of its length, the less of what the pin and its crosshead or driving axle state, or what the one of
    them states that does; its metal as the pin states it, else as they do.
    """
    by, found = sheet.read("held by", pin.seat.by), []
    if by != "press fit":
        lock = sheet.read("locked by", pin.seat.locked_by)
        found = [
            sheet.states(is_locked("nut", lock), f"{by} locked by: {lock}", where=pin.seat.locked_by.where)
        ]
    if by == "end plate" and not _is_on_crank(pin, sheet):
        found.append(_slides(pin, sheet))
    elif by == "taper and nut":
        if _is_on_crank(pin, sheet) and found[0].holds:
            raise sheet.not_covered(
                f"{pin.id} is held in its wheel by a taper and a nut: what the taper grips under a bent pin is "
                "not worked here"
            )
    else:
        seat = _seat(pin, sheet)
        δ = sheet.work("δ", interference, d=sheet.take("d_s", pin.seat.diameter), D=seat.D)
        found += [*_gripped(pin, case, seat, δ, sheet), _boss(pin, seat, δ, sheet)]
    return sheet.worst(*found)


def _is_on_crank(pin: Pin, sheet: Sheet) -> bool:
    """By its place, or by an overhang: a pin that is held on both sides has none."""
    return sheet.read("place", pin.place) == "crank pin" or sheet.is_stated("overhang", pin.overhang)


def _asks_for_limits(pin: Pin, sheet: Sheet) -> None:
    for name, size in (("pin", pin.seat.diameter), ("hole", pin.seat.hole)):
        if not sheet.tolerance(f"Δ {name}", size) > 0.0:
            raise sheet.not_assessed(f"the {name} of the seat states no limits", size.where)


def _slides(pin: Pin, sheet: Sheet) -> Judgement:
    """The greatest clearance of a pin that is put into its bosses by hand."""
    _asks_for_limits(pin, sheet)
    D = sheet.take("D", pin.seat.hole)
    c = sheet.work("c", diametral_clearance, D=D, d=sheet.take("d_s", pin.seat.diameter))
    allowed = sheet.work("c_n", share_of_diameter, k=sheet.limit("slack", "k_c"), D=D)
    return sheet.at_most(c, allowed).else_says("pin slack in its hole by {found}, {limit} allowed")


def _seat(pin: Pin, sheet: Sheet) -> _Seat:
    _asks_for_limits(pin, sheet)
    of_pin, boss = sheet.material_of(pin), metal_of_boss(pin, sheet)
    return _Seat(
        sheet.take("D", pin.seat.hole),
        length_of_seat(pin, sheet),
        boss_of_pin(pin, sheet),
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
    stated, most = sheet.take("μ", pin.seat.friction), sheet.limit("dry", "μ_n")
    holds = sheet.work("T_h", torque_grip, mu=min(stated, most), p=p, D=seat.D, L=seat.L)
    yield stays
    yield sheet.at_least(holds, torque).else_says("pin turns in its seat: {found} held, {limit} wanted")
    yield (
        sheet.at_most(stated, most)
        .else_says("friction of {found} is stated: {limit} is counted")
        .graded(Grade.QUERY)
    )
    yield sheet.at_least(p, _opens(pin, F, seat, sheet)).else_says(
        "seat opens under the pin: gripped by {found}, {limit} wanted"
    )


def _opens(pin: Pin, F: Newtons, seat: _Seat, sheet: Sheet) -> Pascals:
    """Of a crank pin at the edge of its seat; of a crosshead pin, which lies between two bosses, all along them."""
    x = sheet.limit("opening", "x_e")
    if not _is_on_crank(pin, sheet):
        return sheet.work("p_a", pressure_lost_all_along, x=x, F=F, D=seat.D, L=seat.L)
    a = overhang_of_force(pin, sheet)
    return sheet.work("p_e", pressure_lost_at_edge, x=x, F=F, a=a, D=seat.D, L=seat.L)


def _boss(pin: Pin, seat: _Seat, δ: Metres, sheet: Sheet) -> Judgement:
    """Tresca's stress at the bore of the boss, at what may be left of the interference.

    The proof stress is that of the wall of the boss: a thicker one is hardened through less, and no source gives the
    figure of a thinner one for it.
    """
    most = sheet.work(
        "δ_m", interference_after_light_smoothing, delta=δ, Rz_in=seat.roughness, Rz_out=seat.roughness
    )
    p = _pressure("p_m", max(most, 0.0), seat, sheet)
    proof = sheet.look_up(
        "R_p",
        metal_of_boss(pin, sheet).proof_stress,
        at=DRAWING_TEMPERATURE,
        thickness=(seat.boss - seat.D) / 2,
    )
    allowed = sheet.work("σ_n", share_of_strength, k=sheet.limit("share", "k"), R=proof)
    stress = sheet.work("σ_T", outer_tresca_stress, p=p, D=seat.D, D_out=seat.boss)
    return sheet.at_most(stress, allowed).else_says("boss stressed to {found} at its bore, {limit} allowed")


RULES = (held,)
