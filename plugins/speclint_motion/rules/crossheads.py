"""The body of a crosshead."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals, Ratio, SquareMetres
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import (
    direct_stress,
    eye_on_its_pin,
    fatigue_notch_factor,
    notch_sensitivity,
    round_area,
)
from speclint.handbook.tables import PETERSON, ROARK
from speclint.specs import Crosshead, LoadCase, Pin
from speclint_motion.formulae.bodies import area_beside_pin
from speclint_motion.formulae.sections import fatigue_factor
from speclint_motion.inputs.thrust import (
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


RULES = (strength,)
