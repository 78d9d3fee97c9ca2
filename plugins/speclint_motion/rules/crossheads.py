"""The body of a crosshead, how it holds the piston rod, and bolts that press one part of the motion to another."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals, Ratio, SquareMetres
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import (
    direct_stress,
    eye_on_its_pin,
    fatigue_notch_factor,
    load_with_factor,
    notch_sensitivity,
    round_area,
)
from speclint.handbook.tables import PETERSON, ROARK
from speclint.handbook.threads import stress_area
from speclint.specs import BarSupport, Crosshead, LoadCase, Pin, RodHold
from speclint_motion.formulae.bodies import area_beside_pin, held_by_bolts, shear_of_cotter
from speclint_motion.formulae.pistons import load_before_yield
from speclint_motion.formulae.sections import fatigue_factor
from speclint_motion.inputs import (
    ALONG_STROKE,
    boiler_pressure,
    cylinder_of,
    greatest,
    piston_of,
    relief_pressure,
)
from speclint_motion.rules.crowns import DEFERS, ENDURANCE, FACTOR
from speclint_motion.sources import SHIGLEY_GOODMAN


@rule(
    "crosshead.strength",
    title="Pulled or pushed by steam or water at relief pressure, neck and bosses of a crosshead are stressed to at "
    "most 0.33 of their proof stress, and in running their factor against fatigue is at least 1.5",
    on=Crosshead,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    edition=4,
    cites=[
        FIRST_PRINCIPLES,
        ROARK.at("Table 17.1", memory=True),
        PETERSON.at("eq. 1.31, notch sensitivity"),
        SHIGLEY_GOODMAN,
        COMMON_PRACTICE,
    ],
    why="A crosshead that breaks lets the piston through the cover and the connecting rod into the ballast.",
    leaves_out="the wings of the slippers, bending of the bosses by a pin that bends, and of the neck by slippers worn "
    "unlike; the heat of the engine's motion, which is taken as cold; the greater mass of pistons for later bores; "
    f"{DEFERS}",
    against=("break under load", "break in fatigue"),
    limits=[
        Limit("steel", "0.33", "ratio", COMMON_PRACTICE, "greatest mean stress over proof stress"),
        Limit("neck", "2", "ratio", COMMON_PRACTICE, "notch factor of the neck's fillets"),
        ENDURANCE,
        FACTOR,
    ],
)
def strength(crosshead: Crosshead, case: LoadCase, sheet: Sheet) -> Judgement:
    """F/A in the neck and beside the pin, steam on the liner's last bore; the force of running reverses each stroke."""
    cylinder = cylinder_of(piston_of(crosshead, sheet), sheet)
    p = relief_pressure(cylinder, case, sheet, sides=("front", "back"))
    F = sheet.work("F", pressure_load, p=p, D=cylinder.D)
    metal = sheet.material_of(crosshead)
    R_p = sheet.look_up("R_p", metal.proof_stress, of=crosshead, at=DRAWING_TEMPERATURE)
    S = sheet.work("S", share_of_strength, k=sheet.limit("steel", "x"), R=R_p)
    sections = _sections(crosshead, sheet)
    judged = [
        sheet.at_most(sheet.work(f"σ of {name}", direct_stress, F=F, A=A), S).else_says(
            f"{name} of the crosshead stressed to {{found}}, {{limit}} allowed"
        )
        for name, (A, _) in sections.items()
    ]
    solid = sheet.work("A_0", round_area, d=sheet.take("D_b", crosshead.boss_diameter))
    judged.append(
        sheet.at_most(sections["neck"][0], solid).else_says(
            "neck of {found} is larger than a solid one as thick as the bosses, {limit}"
        )
    )
    if case.name != "running":
        return sheet.worst(*judged)
    F_p = sheet.work("F_p", pressure_load, p=boiler_pressure(case, sheet), D=cylinder.D)
    F_a = max(F_p, greatest("F_θ", "force along the stroke", ALONG_STROKE, cylinder, case, sheet))
    judged += [_lasts(name, F_a, A, K_f, crosshead, sheet) for name, (A, K_f) in sections.items()]
    return sheet.worst(*judged)


def _sections(crosshead: Crosshead, sheet: Sheet) -> dict[str, tuple[SquareMetres, Ratio]]:
    """Neck and bosses, each with its area and its notch factor in fatigue; a boss is what is left beside its hole."""
    D, w = sheet.take("D_b", crosshead.boss_diameter), sheet.take("w", crosshead.boss_width)
    d = _hole(_pin(crosshead, sheet), sheet)
    A = sheet.work("A_b", area_beside_pin, w=w, D=D, d=d)
    K_t = sheet.work("K_t", eye_on_its_pin, d=d, w=D)
    q = sheet.work("q", notch_sensitivity, R_m=_tensile(crosshead, sheet), r=d / 2)
    K_f = sheet.work("K_f", fatigue_notch_factor, K_t=K_t, q=q)
    neck = sheet.take("A_n", crosshead.neck_area), sheet.limit("neck", "K_n")
    return {"neck": neck, "bosses": (A, K_f)}


def _pin(crosshead: Crosshead, sheet: Sheet) -> Pin:
    pins = [
        pin
        for pin in sheet.belonging_to(crosshead, Pin)
        if sheet.read(f"place of {pin.id}", pin.place) == "crosshead pin"
    ]
    if len(pins) != 1:
        raise sheet.not_assessed(
            f"{len(pins)} pins of {crosshead.id} are stated; one is needed", crosshead.where
        )
    return pins[0]


def _hole(pin: Pin, sheet: Sheet) -> Metres:
    """Of the bosses: that of the seat, or the pin in it, and no less than the bearing, which goes in through one."""
    d = sheet.take("d", pin.diameter)
    if sheet.is_stated("hole", pin.seat.hole):
        return max(d, sheet.take("d_h", pin.seat.hole))
    return max(d, sheet.take("d_s", pin.seat.diameter)) if sheet.is_stated("seat", pin.seat.diameter) else d


def _tensile(crosshead: Crosshead, sheet: Sheet) -> Pascals:
    metal = sheet.material_of(crosshead)
    return sheet.look_up("R_m", metal.tensile_strength, of=crosshead, at=DRAWING_TEMPERATURE)


def _lasts(
    name: str, F: Newtons, A: SquareMetres, K_f: Ratio, crosshead: Crosshead, sheet: Sheet
) -> Judgement:
    R_m = _tensile(crosshead, sheet)
    S_e = sheet.work("S_e", share_of_strength, k=sheet.limit("endurance", "x_e"), R=R_m)
    σ_a = sheet.work(f"σ_a of {name}", direct_stress, F=F, A=A)
    n = sheet.work(f"n of {name}", fatigue_factor, σ_a=σ_a, σ_m=0.0, K_f=K_f, k=1.0, S_f=S_e, R_m=R_m)
    return sheet.at_least(n, sheet.limit("factor", "n_a")).else_says(
        f"factor of the crosshead's {name} against fatigue {{found}}, {{limit}} wanted"
    )


BOLT = Limit(
    "bolt", "0.7", "ratio", COMMON_PRACTICE, "greatest stress of a bolt tightened over its proof stress"
)


class Tightened(NamedTuple):
    """The preload of a bolt, what it bears, and what all of them hold."""

    F_0: Newtons
    bears: Newtons
    holds: Newtons


def tightened(hold: BarSupport | RodHold, n: float, called: str, sheet: Sheet, *, at: str = "") -> Tightened:
    """Of ``n`` bolts, in words ``called``; ``at`` is the name of their place, after each name on the sheet."""
    F_0 = sheet.take(f"F_0{at}", hold.preload)
    metal = sheet.material_named(called, hold.bolt_material)
    R_p = sheet.look_up(f"R_p{at}", metal.proof_stress, at=DRAWING_TEMPERATURE)
    thread = sheet.read(f"thread{at and f' at{at}'}", hold.thread)
    A = sheet.look_up(f"A_s{at}", stress_area, designation=thread)
    bears = sheet.work(f"F_b{at}", load_before_yield, k=sheet.limit("bolt", "k_b"), R_p=R_p, A=A)
    return Tightened(F_0, bears, sheet.work(f"F_h{at}", held_by_bolts, n=n, F_0=F_0))


#: What locks none of the three: a screw set against a nut turns back with it under a load that reverses, a tab washer
#: lies under a nut, which a cotter has not. Common practice.
_NO_LOCK = {
    "cotter": ("nothing", "tab washer"),
    "flange bolts": ("nothing", "set screw"),
    "nut": ("nothing", "set screw"),
}


@rule(
    "crosshead.holds-its-rod",
    edition=3,
    title="A cotter, nut or ring of bolts, locked by more than a set screw, holds the rod in its crosshead with 1.5 "
    "times its pull, within 0.7 of the proof stress of bolts and 0.2 of the strength of a cotter",
    on=Crosshead,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A rod that works loose hammers its cotter or its bolts to pieces, and then the piston goes through the cover.",
    leaves_out="fit of the rod's taper, the slot in the rod (rod.tension), bending of a cotter, fatigue of bolts that "
    f"stay tight; the greater mass of pistons for later bores; {DEFERS}",
    against=("loosen",),
    limits=[
        Limit("held", "1.5", "ratio", COMMON_PRACTICE, "least force that holds the rod over its pull"),
        BOLT,
        Limit(
            "cotter", "0.2", "ratio", COMMON_PRACTICE, "greatest shear of a cotter over its tensile strength"
        ),
    ],
)
def holds_its_rod(crosshead: Crosshead, case: LoadCase, sheet: Sheet) -> Judgement:
    """n F_0 of bolts or nut against the pull at the last bore with its factor; F/(2 b h) of a cotter; and a lock."""
    held = crosshead.rod_held
    by, lock = sheet.read("rod held by", held.by), sheet.read("locked by", held.locked_by)
    locked = sheet.states(lock not in _NO_LOCK[by], f"{by} locked by: {lock}", where=held.locked_by.where)
    cylinder = cylinder_of(piston_of(crosshead, sheet), sheet)
    pull = sheet.work("F", pressure_load, p=relief_pressure(cylinder, case, sheet), D=cylinder.D)
    if case.name == "running":
        pull = max(pull, greatest("F_θ", "force along the stroke", ALONG_STROKE, cylinder, case, sheet))
    if by == "cotter":
        return sheet.worst(locked, _cottered(crosshead, pull, sheet))
    wanted = sheet.work("F_w", load_with_factor, x=sheet.limit("held", "k"), F=pull)
    n = float(sheet.count("n", held.bolts)) if by == "flange bolts" else 1.0
    bolts = tightened(held, n, "the bolts of the rod", sheet)
    return sheet.worst(
        locked,
        sheet.at_least(bolts.holds, wanted).else_says("rod held with {found}, {limit} wanted"),
        sheet.at_most(bolts.F_0, bolts.bears).else_says(
            "bolt of the rod tightened to {found}, {limit} allowed"
        ),
    )


def _cottered(crosshead: Crosshead, pull: Newtons, sheet: Sheet) -> Judgement:
    held = crosshead.rod_held
    b, h = sheet.take("b", held.cotter_thickness), sheet.take("h", held.cotter_depth)
    metal = sheet.material_named("the cotter", held.cotter_material)
    R_m = sheet.look_up("R_c", metal.tensile_strength, at=DRAWING_TEMPERATURE, thickness=b)
    τ = sheet.work("τ", shear_of_cotter, F=pull, b=b, h=h)
    S = sheet.work("S_c", share_of_strength, k=sheet.limit("cotter", "x_c"), R=R_m)
    return sheet.at_most(τ, S).else_says("cotter sheared with {found}, {limit} allowed")


RULES = (strength, holds_its_rod)
