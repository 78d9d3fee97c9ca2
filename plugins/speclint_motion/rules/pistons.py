"""The piston: how fast it runs, how it clears its liner, and how it is held on its rod."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.handbook.cams import mean_piston_speed, piston_acceleration
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import Component, LoadCase, Piston
from speclint_motion.formulae.pistons import (
    diametral_clearance,
    load_ratio,
    share_of_diameter,
    size_when_hot,
    speed_ratio,
    times_load,
)
from speclint_motion.formulae.thrust import inertia_force, piston_load, revolutions
from speclint_motion.inputs import boiler_pressure, cylinder_of, gear_of, relief_pressure
from speclint_motion.sources import LINEHAM

DEFERS = "the local code and a competent person decide"


@rule(
    "piston.clearance-hot",
    title="The body of the piston never touches the liner, hot as it gets",
    on=Piston,
    cases=("starting", "running", "drifting"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="The piston is hotter than the liner and grows more; one that binds tears the bore open at full speed.",
    leaves_out=f"sag of piston and rod, wear of the crosshead's slippers, a bore out of line; {DEFERS}",
    limits=[
        Limit("share", "0.0005", "ratio", COMMON_PRACTICE, "least diametral clearance hot over the bore")
    ],
)
def clearance_hot(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """Bore hot less piston hot, each at its own temperature; a hold where nothing is left."""
    liner = sheet.follow(piston.runs_in)
    D = sheet.take("D", liner.bore)
    bore = _hot("l", liner, D, case, sheet)
    body = _hot("p", piston, sheet.take("D_p", piston.diameter), case, sheet)
    left = sheet.work("c", diametral_clearance, D_l=bore, D_p=body)
    judged = sheet.at_least(left, sheet.work("c_n", share_of_diameter, k=sheet.limit("share", "k"), D=D))
    return judged.graded(Grade.HOLD) if left <= 0 else judged


def _hot(index: str, part: Component, cold: Metres, case: LoadCase, sheet: Sheet) -> Metres:
    at = sheet.take(f"T_{index}", case.temperature_of(part))
    alpha = sheet.look_up(f"α_{index}", sheet.material_of(part).expansion, of=part, at=at)
    return sheet.work(f"D_h{index}", size_when_hot, D=cold, alpha=alpha, T=at, T_ref=DRAWING_TEMPERATURE)


@rule(
    "piston.fastening",
    title="The piston is held on its rod by a seat, a nut that cannot turn, and a proved pull",
    on=Piston,
    cases=("starting", "water"),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE, FIRST_PRINCIPLES],
    why="A nut that works back a turn lets the piston hammer; then the rod goes through the cover.",
    leaves_out=f"grip of the taper, stress of the nut's thread (the rod's is rod.tension), creep of the seat; {DEFERS}",
    limits=[
        Limit(
            "proof", "1.5", "ratio", COMMON_PRACTICE, "least proof load over the greatest pull of the steam"
        )
    ],
)
def fastening(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """Nut, seat, taper and lock as stated; proof load against the steam's pull at relief pressure."""
    held = piston.fastening
    cylinder = cylinder_of(piston, sheet)
    pull = sheet.work("F_t", piston_load, p=relief_pressure(cylinder, case, sheet), A=cylinder.A)
    wanted = sheet.work("F_w", times_load, k=sheet.limit("proof", "k"), F=pull)
    proved = sheet.at_least(sheet.take("F_0", held.proof_load), wanted)
    if sheet.read("fastened by", held.by) == "forged in one":
        return proved
    sheet.read("thread", held.thread)
    if "taper" in sheet.read("seat", held.seat):
        sheet.take("taper", held.taper)
    lock = sheet.read("locked by", held.locked_by)
    if lock == "nothing":
        return sheet.worst(sheet.states(False, "nothing keeps the nut of the piston from turning"), proved)
    return proved


@rule(
    "piston.speed",
    title="The piston runs no faster on the mean than its rings and oil stand",
    on=Piston,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE, LINEHAM],
    why="Rings, oil and packing wear with the way that they rub, and the piston sets it.",
    leaves_out="oil and surface of the liner; Lineham's speed of locomotives is reported and is no limit",
    limits=[
        Limit("mean", "8 m/s", "speed", COMMON_PRACTICE, "greatest mean piston speed"),
        Limit("period", "1000 ft/min", "speed", LINEHAM, "mean speed of locomotives by Lineham, reported"),
    ],
)
def speed(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """Twice the stroke in a revolution, beside the period's figure."""
    block = cylinder_of(piston, sheet).block
    n = sheet.work("n", revolutions, ω=sheet.take("ω", case.rotational_speed))
    mean = sheet.work("v_m", mean_piston_speed, S=sheet.take("S", block.drive.stroke), n=n)
    sheet.work("x_period", speed_ratio, v=mean, v_0=sheet.limit("period", "v_0"))
    return sheet.at_most(mean, sheet.limit("mean"))


@rule(
    "piston.inertia",
    title="At the greatest speed the masses that go to and fro ask no more than their share of the steam's push",
    on=Piston,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Where inertia nears the push of the steam the rods knock, and the rail feels what the wheels cannot balance.",
    leaves_out="the cushioning by compression, which takes some of it off the pins",
    limits=[
        Limit("share", "0.8", "ratio", COMMON_PRACTICE, "greatest inertia over the load of boiler pressure")
    ],
)
def inertia(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """m ω² r (1 + r/l) at the dead centre far from the axle, over p A."""
    cylinder = cylinder_of(piston, sheet)
    gear = gear_of(cylinder, case, sheet)
    a = sheet.work("a", piston_acceleration, r=gear.r, l=gear.l, ω=gear.ω, θ=0.0)
    F_i = sheet.work("F_i", inertia_force, m=gear.m, a=a)
    F = sheet.work("F_p", piston_load, p=boiler_pressure(case, sheet), A=cylinder.A)
    return sheet.at_most(sheet.work("x", load_ratio, F_1=F_i, F_2=F), sheet.limit("share"))


RULES = (clearance_hot, fastening, speed, inertia)
