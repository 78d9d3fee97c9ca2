"""Seat rings: their fit, cold and hot."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, Metres, Newtons, Pascals
from speclint.facts import (
    block_when_entering,
    chamber_beyond,
    drag_on_seat,
    frictions_of_seat,
    greatest_live_pressure,
    retained_by_part,
)
from speclint.handbook.fits import (
    DIN_7190,
    DIN_7190_2001,
    DIN_7190_SMOOTHING,
    DRAWING_TEMPERATURE,
    SHRINK_FIT,
    axial_grip,
    shrinkage_available,
    shrinkage_to_enter,
)
from speclint.handbook.members import load_with_factor
from speclint.specs import HOT_CASES, LoadCase, ValveSeat
from speclint_valves.formulae.seats import withdrawing_load
from speclint_valves.inputs.cylinder import greatest_in_cylinder, least_in_cylinder
from speclint_valves.inputs.seating import (
    Fit,
    cold_fit,
    gripping,
    interference_at,
    joint_length,
    pressing,
    pressure_of,
    stresses,
)

SHARES = (
    Limit("ring-share", "0.5", "ratio", COMMON_PRACTICE, "share of an iron ring's compressive strength"),
    Limit("block-share", "0.67", "ratio", COMMON_PRACTICE, "share of proof stress"),
)
DEFERS = "the local code and a competent person decide"


@rule(
    "seat.retained-hot",
    edition=4,
    title="The seat has an interference above zero in every hot case, its faces smoothed",
    wrong="seat loose hot: {left} of interference left",
    on=ValveSeat,
    cases=(*HOT_CASES, "water"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, DIN_7190_2001],
    why="steel expands more than iron: a ring tight in the shop may be loose in steam, and fall into "
    "the cylinder",
    leaves_out="creep and relaxation of the fit over years, and a wall that is not at one temperature; "
    f"{DEFERS}",
    against=("loosen", "fall"),
)
def retained_hot(seat: ValveSeat, case: LoadCase, sheet: Sheet) -> Judgement:
    """δ − 0.8 (Rz_s + Rz_b) + D (α_s (T_s − 20) − α_b (T_b − 20)) > 0.

    Of a lower grade where a retaining ring, or the cage of its valve, is drawn that holds the ring.
    """
    held_otherwise = retained_by_part(seat, sheet) is not None
    fit = gripping(seat, cold_fit(seat, sheet), sheet)
    T_s = sheet.take("T_s", case.temperature_of(seat))
    T_b = sheet.take("T_b", case.temperature_of(fit.block))
    left = sheet.stays(interference_at(seat, fit, sheet, T_s, T_b), fit.delta, strictly=True)
    return left.graded(Grade.NONCONFORMITY) if held_otherwise else left


@rule(
    "seat.push-out",
    edition=8,
    title="The grip of the hot fit is at least twice the load that pulls the seat out, of water at relief among them",
    wrong="seat loose hot: grips {found} of {limit} wanted",
    on=ValveSeat,
    cases=("running", "drifting", "cooling", "water"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, DIN_7190_2001, COMMON_PRACTICE],
    why="pressure behind the ring, or a valve that sticks to it, pulls out a seat whose fit is too weak",
    leaves_out=f"the impact of a landing valve, which presses the ring in; {DEFERS}",
    against=("loosen", "fall"),
    limits=[
        Limit("factor", "2", "ratio", COMMON_PRACTICE, "least grip over the load that pulls the seat out")
    ],
)
def push_out(seat: ValveSeat, case: LoadCase, sheet: Sheet) -> Judgement:
    """μ π D L p_c hot ≥ factor × (reversed pressure on the ring + a sticking valve's drag).

    The interference is that left when the roughness of both faces is smoothed; L is the shorter of ring and bore. Of a
    lower grade where a retaining ring, or the cage of its valve, is drawn that holds the ring.
    """
    held_otherwise = retained_by_part(seat, sheet) is not None
    fit = gripping(seat, cold_fit(seat, sheet), sheet)
    T_s = sheet.take("T_s", case.temperature_of(seat))
    T_b = sheet.take("T_b", case.temperature_of(fit.block))
    p = pressure_of(seat, fit, sheet, interference_at(seat, fit, sheet, T_s, T_b), T_s, T_b)
    length, friction = joint_length(seat, fit, sheet), min(frictions_of_seat(seat, sheet))
    needed = sheet.work(
        "F_n", load_with_factor, x=sheet.limit("factor", "x"), F=_withdrawal(seat, fit, case, sheet)
    )
    grip = sheet.work("F_h", axial_grip, mu=friction, p=p, D=fit.joint, L=length)
    held = sheet.at_least(grip, needed)
    return held.graded(Grade.NONCONFORMITY) if held_otherwise else held


def _withdrawal(seat: ValveSeat, fit: Fit, case: LoadCase, sheet: Sheet) -> Newtons:
    behind, front = _sides(seat, fit, case, sheet)
    bore, drag = sheet.take("d", seat.bore), drag_on_seat(seat, sheet)
    return sheet.work("F_w", withdrawing_load, D=fit.joint, d=bore, p_b=behind, p_f=front, F_d=drag)


def _sides(seat: ValveSeat, fit: Fit, case: LoadCase, sheet: Sheet) -> tuple[Pascals, Pascals]:
    """Pressure behind the ring, and on the side to which it would move."""
    live = chamber_beyond(seat, sheet) == "live steam"
    if sheet.read("side entered from", seat.entered_from) == "cylinder":
        # the cylinder stands at exhaust pressure on every return stroke
        behind = greatest_live_pressure(case, sheet) if live else case.exhaust_pressure
        return sheet.take("p_b", behind), least_in_cylinder(case, seat, sheet)
    front = case.live_pressure if live else case.exhaust_pressure
    return greatest_in_cylinder(case, fit.block, seat, sheet), sheet.take("p_f", front)


@rule(
    "seat.fit-stress",
    edition=3,
    title="The tightest fit of the drawing, at 20 °C, stresses an iron ring to at most 0.5 of its "
    "compressive strength, and a steel ring or the block to at most 0.67 of proof stress",
    on=ValveSeat,
    grade=Grade.NONCONFORMITY,
    cites=[*SHRINK_FIT, DIN_7190_SMOOTHING, COMMON_PRACTICE],
    why="a ring fitted too tight cracks, or the wall behind it yields and the fit is lost when hot",
    leaves_out="the peak at the ends of the ring; closing in of the seat's bore, which is ground after "
    "fitting",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    limits=SHARES,
)
def fit_stress(seat: ValveSeat, sheet: Sheet) -> Judgement:
    """Ring −2 p D²/(D² − d²) in a block thick all round, block 2 p D_o²/(D_o² − D²), D_o = D + 2 × least wall."""
    fit = pressing(seat, cold_fit(seat, sheet), sheet)
    return stresses(seat, fit, sheet, fit.delta, DRAWING_TEMPERATURE, DRAWING_TEMPERATURE)


@rule(
    "seat.fit-warming",
    edition=3,
    title="With seat and block each as hot as in any case, the fit stresses an iron ring to at most 0.5 of its "
    "compressive strength, and a steel ring or the block to at most 0.67 of proof stress",
    on=ValveSeat,
    cases=("warming", "starting", "running", "drifting", "standing-hot", "water"),
    grade=Grade.NONCONFORMITY,
    cites=[*SHRINK_FIT, DIN_7190_SMOOTHING, COMMON_PRACTICE],
    why="a ring that is hot in a cold block yields or makes the block yield, and is loose when both are warm",
    leaves_out="temperature gradients through the wall of ring and block",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    limits=SHARES,
)
def fit_warming(seat: ValveSeat, case: LoadCase, sheet: Sheet) -> Judgement:
    """As seat.fit-stress, each part at its temperature."""
    fit = pressing(seat, cold_fit(seat, sheet), sheet)
    T_s = sheet.take("T_s", case.temperature_of(seat))
    T_b = sheet.take("T_b", case.temperature_of(fit.block))
    return stresses(seat, fit, sheet, interference_at(seat, fit, sheet, T_s, T_b), T_s, T_b)


@rule(
    "seat.entering",
    edition=5,
    title="The shrinkage available, or the press force, is at least what the tightest fit needs for assembly, and the "
    "block is heated to no more than 200 °C",
    on=ValveSeat,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, DIN_7190, COMMON_PRACTICE],
    why="a ring that sticks half-way must be broken out, and the bore is scored",
    leaves_out="how fast ring and block come to one temperature: the ring must drop in within seconds",
    against=(),
    limits=[
        Limit(
            "allowance",
            "0.05 mm",
            "length",
            COMMON_PRACTICE,
            "clearance for handling and dirt, beside 1/5000 of the diameter",
        ),
        Limit(
            "hottest-block",
            "200 °C",
            "temperature",
            COMMON_PRACTICE,
            "hottest that the block may be heated to",
        ),
    ],
)
def entering(seat: ValveSeat, sheet: Sheet) -> Judgement:
    """Shrinkage available ≥ δ + allowance + D/5000, or press force ≥ μ π D L p_c of the tightest fit."""
    fit = cold_fit(seat, sheet)
    method = sheet.read("entering", seat.entering)
    if method == "pressed cold":
        return _pressed(seat, fit, sheet)
    wanted = sheet.work(
        "s_n", shrinkage_to_enter, delta=fit.delta, a=sheet.limit("allowance", "a"), D=fit.joint
    )
    T_b = DRAWING_TEMPERATURE
    judged = []
    if "block heated" in method:
        T_b = sheet.take("T_b", block_when_entering(seat, fit.block, sheet))
        judged = [
            sheet.no_hotter(T_b, sheet.limit("hottest-block", "T_b,max")).else_says(
                "block heated to {found}, {limit} allowed"
            )
        ]
    enters = sheet.at_least(_available(seat, fit, method, T_b, sheet), wanted).else_says(
        "too little shrinkage for the seat to go in: {found}, {limit} wanted"
    )
    return sheet.worst(enters, *judged)


def _pressed(seat: ValveSeat, cold: Fit, sheet: Sheet) -> Judgement:
    fit = pressing(seat, cold, sheet)
    p = pressure_of(seat, fit, sheet, fit.delta, DRAWING_TEMPERATURE, DRAWING_TEMPERATURE)
    friction, length = max(frictions_of_seat(seat, sheet)), joint_length(seat, fit, sheet)
    needed = sheet.work("F_n", axial_grip, mu=friction, p=p, D=fit.joint, L=length)
    return sheet.at_least(sheet.take("F_p", seat.press_force), needed).else_says(
        "press gives {found}, the seat needs {limit} to go in"
    )


def _available(seat: ValveSeat, fit: Fit, method: str, T_b: Kelvins, sheet: Sheet) -> Metres:
    """What the heat of the block and the cold of the ring give."""
    T_s = sheet.take("T_s", seat.chilled_to) if "ring chilled" in method else DRAWING_TEMPERATURE
    ring, block = sheet.material_of(seat), sheet.material_of(fit.block)
    return sheet.work(
        "s",
        shrinkage_available,
        D=fit.joint,
        alpha_out=sheet.look_up("α_b", block.expansion, of=fit.block, at=T_b),
        T_out=T_b,
        alpha_in=sheet.look_up("α_s", ring.expansion, of=seat, at=T_s),
        T_in=T_s,
        T_ref=DRAWING_TEMPERATURE,
    )


RULES = (retained_hot, push_out, fit_stress, fit_warming, entering)
