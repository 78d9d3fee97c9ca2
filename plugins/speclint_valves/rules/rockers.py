"""Rockers: strength and stiffness."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Newtons, Pascals, Ratio
from speclint.facts import CRACKED
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import projected_pressure, rectangle_second_moment, round_second_moment
from speclint.specs import LoadCase, Rocker
from speclint_valves.formulae.flow import share_of_lift
from speclint_valves.formulae.spindle import arm_stress, lift_lost, pin_bending_stress, pin_load
from speclint_valves.inputs.loads import greatest_valve_load

#: The limit that each family of metal has as a bush.
_BUSHES = {
    "copper-alloy": "bronze",
    "white-metal": "white-metal",
    "grey-iron": "iron",
    "ductile-iron": "iron",
}


@rule(
    "rocker.stress",
    edition=8,
    title="Bending in the arms and pin of the rocker is at most 0.2 of the tensile strength of each, and its bush is "
    "within its rated pressure and that of its metal",
    on=Rocker,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a rocker that breaks leaves its valve shut at best, and its pieces in the cam box",
    leaves_out="sections other than those at the boss, and the stress concentration of the fillets there",
    against=("seize", "break under load", "break in fatigue", "wear"),
    limits=[
        Limit(
            "share-of-strength", "0.2", "ratio", COMMON_PRACTICE, "share of tensile strength, for endurance"
        ),
        Limit(
            "bronze",
            "20 MPa",
            "stress",
            COMMON_PRACTICE,
            "greatest mean pressure of a bronze bush that swings",
        ),
        Limit(
            "white-metal",
            "7 MPa",
            "stress",
            COMMON_PRACTICE,
            "greatest mean pressure of a bush of white metal",
        ),
        Limit("iron", "8 MPa", "stress", COMMON_PRACTICE, "greatest mean pressure of a bush of cast iron"),
        CRACKED,
    ],
)
def stress(rocker: Rocker, case: LoadCase, sheet: Sheet) -> Judgement:
    """Bending of both arms at the boss, bending of the pin, pressure in the bush, at the greatest load.

    The pin is judged by its own metal; the bush by its rating and by the limit of its metal.
    """
    F_v, F_t = greatest_valve_load(sheet.follow(sheet.follow(rocker.works).moves), case, sheet)
    R_m = sheet.look_up("R_m", sheet.material_of(rocker).tensile_strength, of=rocker, at=DRAWING_TEMPERATURE)
    k = sheet.limit("share-of-strength", "k")
    allowed = sheet.work("σ_zul", share_of_strength, k=k, R=R_m)
    metal = sheet.material_named(f"the pin of {rocker.id}", rocker.pin_material)
    R_mp = sheet.look_up("R_mp", metal.tensile_strength, at=DRAWING_TEMPERATURE)
    F_p = sheet.work("F_p", pin_load, F_v=F_v, F_t=F_t)
    pin, span = sheet.take("d", rocker.pin), sheet.take("L", rocker.pin_span)
    pressure = sheet.work("p", projected_pressure, F=F_p, d=pin, b=sheet.take("L_b", rocker.bush_length))
    return sheet.worst(
        *_arms(rocker, F_v, F_t, allowed, sheet),
        sheet.at_most(
            sheet.work("σ_p", pin_bending_stress, F=F_p, L=span, d=pin),
            sheet.work("σ_zul,p", share_of_strength, k=k, R=R_mp),
        ).else_says("pin of the rocker bent to {found}, {limit} allowed"),
        sheet.at_most(pressure, sheet.take("p_zul", rocker.bush_pressure)).else_says(
            "bush pressed by {found}, rated for {limit}"
        ),
        sheet.at_most(pressure, _bush_limit(rocker, sheet)).else_says(
            "bush pressed by {found}, its metal bears {limit}"
        ),
    )


def _bush_limit(rocker: Rocker, sheet: Sheet) -> Pascals:
    """What the metal of the bush bears."""
    metal = sheet.material_named(f"the bush of {rocker.id}", rocker.bush_material)
    if metal.family not in _BUSHES:
        raise sheet.not_covered(f"no bearing pressure is held for a bush of {metal.name}")
    return sheet.limit(_BUSHES[metal.family])


def _arms(rocker: Rocker, F_v: Newtons, F_t: Newtons, allowed: Pascals, sheet: Sheet) -> list[Judgement]:
    sizes = {
        "B": sheet.take("B", rocker.boss),
        "w": sheet.take("w", rocker.arm_width),
        "h": sheet.take("h_a", rocker.arm_depth),
    }
    b_v, b_t = sheet.take("b_v", rocker.valve_arm), sheet.take("b_t", rocker.tappet_arm)
    at_valve = sheet.work("σ_v", arm_stress, F=F_v, b=b_v, **sizes)
    at_tappet = sheet.work("σ_t", arm_stress, F=F_t, b=b_t, **sizes)
    return [
        sheet.at_most(at_valve, allowed).else_says("arm to the valve bent to {found}, {limit} allowed"),
        sheet.at_most(at_tappet, allowed).else_says("arm to the tappet bent to {found}, {limit} allowed"),
    ]


@rule(
    "rocker.stiffness",
    edition=8,
    title="Deflection of the rocker and its pin loses at most 2 % of the valve's lift",
    wrong="rocker loses {found} of the lift by bending, {limit} allowed",
    on=Rocker,
    cases=("starting", "running"),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a flexible rocker opens late, shuts late and lets the valve bounce",
    leaves_out="deflection of spindle, tappet, camshaft and box",
    against=(),
    limits=[
        Limit("share-of-lift", "2 %", "ratio", COMMON_PRACTICE, "share of the lift that may be lost"),
        CRACKED,
    ],
)
def stiffness(rocker: Rocker, case: LoadCase, sheet: Sheet) -> Judgement:
    """Arms as cantilevers from the boss, the pin as a beam, at the greatest load ≤ 2 % of the lift."""
    valve = sheet.follow(sheet.follow(rocker.works).moves)
    F_v, F_t = greatest_valve_load(valve, case, sheet)
    b_v, b_t = sheet.take("b_v", rocker.valve_arm), sheet.take("b_t", rocker.tappet_arm)
    arms = sheet.work(
        "I",
        rectangle_second_moment,
        b=sheet.take("w", rocker.arm_width),
        h=sheet.take("h_a", rocker.arm_depth),
    )
    i: Ratio = b_v / b_t
    lost = sheet.work(
        "f",
        lift_lost,
        F_v=F_v,
        F_t=F_t,
        F_p=sheet.work("F_p", pin_load, F_v=F_v, F_t=F_t),
        b_v=b_v,
        b_t=b_t,
        B=sheet.take("B", rocker.boss),
        I=arms,
        L=sheet.take("L", rocker.pin_span),
        I_p=sheet.work("I_p", round_second_moment, d=sheet.take("d", rocker.pin)),
        E=sheet.look_up("E", sheet.material_of(rocker).modulus, of=rocker, at=DRAWING_TEMPERATURE),
        i=i,
    )
    lift = sheet.take("h", valve.lift)
    return sheet.at_most(
        lost, sheet.work("f_zul", share_of_lift, x=sheet.limit("share-of-lift", "x"), h=lift)
    )


RULES = (stress, stiffness)
