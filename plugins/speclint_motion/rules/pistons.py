"""The piston: its speed and inertia, its clearance in the liner, and its fastening on the rod."""

from __future__ import annotations

from collections.abc import Callable

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons
from speclint.facts import greatest_mass, speed_of_crank, stroke_of, two_pieces_by
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.cams import inertia_force, mean_piston_speed, piston_acceleration, revolutions
from speclint.handbook.fits import DRAWING_TEMPERATURE, diametral_clearance, share_of_diameter, size_when_hot
from speclint.handbook.members import load_ratio, load_with_factor
from speclint.handbook.steam import speed_ratio
from speclint.specs import Component, LoadCase, Piston, PistonRod
from speclint_motion.inputs.proof import STRETCHED, borne_by_rods
from speclint_motion.inputs.thrust import (
    ALONG_STROKE,
    PULL,
    boiler_pressure,
    crank_of,
    cylinder_of,
    gear_of,
    greatest,
    relief_pressure,
    turns,
)
from speclint_motion.sources import LINEHAM_SPEED

DEFERS = "the local code and a competent person decide"


@rule(
    "piston.clearance-hot",
    title="The diametral clearance of the hot piston body in the hot liner is not below its share of the "
    "bore",
    wrong="piston tight in its liner hot: {found} of clearance, {limit} wanted",
    on=Piston,
    cases=("starting", "running", "drifting"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="The piston is hotter than the liner and grows more; a piston that binds at speed scores the bore.",
    leaves_out=f"sag of piston and rod, wear of the crosshead's slippers, a bore out of line; {DEFERS}",
    against=("seize",),
    limits=[
        Limit("share", "0.0005", "ratio", COMMON_PRACTICE, "least diametral clearance hot over the bore")
    ],
)
def clearance_hot(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """Bore hot less piston hot, each at its own temperature; a hold where no clearance is left."""
    liner = sheet.follow(piston.runs_in)
    D = sheet.take("D", liner.bore)
    bore = _hot("l", liner, D, case, sheet)
    body = _hot("p", piston, sheet.take("D_p", piston.diameter), case, sheet)
    left = sheet.work("c", diametral_clearance, D=bore, d=body)
    judged = sheet.at_least(left, sheet.work("c_n", share_of_diameter, k=sheet.limit("share", "k"), D=D))
    return judged.graded(Grade.HOLD) if left <= 0 else judged


def _hot(index: str, part: Component, cold: Metres, case: LoadCase, sheet: Sheet) -> Metres:
    at = sheet.take(f"T_{index}", case.temperature_of(part))
    alpha = sheet.look_up(f"α_{index}", sheet.material_of(part).expansion, of=part, at=at)
    return sheet.work(f"D_h{index}", size_when_hot, L=cold, alpha=alpha, T=at, T_ref=DRAWING_TEMPERATURE)


@rule(
    "piston.fastening",
    title="The proof load of the fastening, and what its rod bears before it yields, are at least their factor times "
    "the greatest pull of steam, water and inertia; a nut is locked and its seat stated",
    wrong="fastening of the piston holds {found}, {limit} wanted",
    on=Piston,
    cases=("starting", "running", "drifting", "water"),
    edition=9,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE, FIRST_PRINCIPLES],
    why="A nut that works loose lets the piston hammer on the rod, until the piston breaks off and goes "
    "through the cover.",
    leaves_out="grip of the taper, stress of the nut's thread (rod.tension judges the rod's), creep of the "
    f"seat, the greater mass of pistons for later bores; {DEFERS}",
    against=("loosen",),
    against_on={"piston-rod": ("loosen",)},
    limits=[
        Limit("proof", "1.5", "ratio", COMMON_PRACTICE, "least proof load over the greatest pull"),
        STRETCHED,
    ],
)
def fastening(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """Nut, seat, taper and lock as stated; proof load, no more than the rod bears, against the greatest pull.

    At speed that is the greatest of steam or water at relief pressure, of the piston's inertia, and of its inertia
    with the steam behind it. Pressures act on the last bore of the liner.
    """
    held = piston.fastening
    wanted = sheet.work(
        "F_w", load_with_factor, x=sheet.limit("proof", "k"), F=_greatest_pull(piston, case, sheet)
    )
    proved = _proved(piston, wanted, sheet)
    if sheet.read("fastened by", held.by) == "forged in one":
        return sheet.worst(_of_one_metal(piston, sheet), proved)
    sheet.read("thread", held.thread)
    if "taper" in sheet.read("seat", held.seat):
        sheet.take("taper", held.taper)
    lock = sheet.read("locked by", held.locked_by)
    if lock == "nothing":
        return sheet.worst(sheet.states(False, "nothing locks the nut of the piston"), proved)
    return proved


def _proved(piston: Piston, wanted: Newtons, sheet: Sheet) -> Judgement:
    """The load that the fastening is proved with, and that to which its rod can be stretched: the lesser counts."""

    def stated() -> Judgement:
        return sheet.at_least(sheet.take("F_0", piston.fastening.proof_load), wanted)

    def borne() -> Judgement:
        loads = [load.value for _, load in borne_by_rods(piston, sheet)]
        if not loads:
            return stated()
        return sheet.at_least(min(loads), wanted).else_says(
            "rod of the piston bears {found} without yielding, {limit} wanted of its fastening"
        )

    judges: tuple[Callable[[], Judgement], ...] = (stated, borne)
    return sheet.each(judges, lambda judge: judge())


def _of_one_metal(piston: Piston, sheet: Sheet) -> Judgement:
    """A piston forged in one with its rod is of the rod's metal, on its drawing, and has no thread."""
    rods = sheet.belonging_to(piston, PistonRod)
    if not rods:
        raise sheet.not_assessed(
            f"no rod is stated that carries {piston.id}, with which it is forged", piston.where
        )
    wrong = [why for rod in rods for why in two_pieces_by(piston, rod, sheet)]
    if sheet.is_stated("thread", piston.fastening.thread):
        wrong.append(f"it has a thread {sheet.read('thread', piston.fastening.thread)}")
    says = f"said to be forged in one with its rod, but {' and '.join(wrong)}"
    return sheet.states(not wrong, says if wrong else "forged in one with its rod, of one metal")


def _greatest_pull(piston: Piston, case: LoadCase, sheet: Sheet) -> Newtons:
    cylinder = cylinder_of(piston, sheet)
    pull = sheet.work("F_t", pressure_load, p=relief_pressure(cylinder, case, sheet), D=cylinder.D)
    if not turns(case, sheet):
        return pull
    crank = crank_of(cylinder, case, sheet)
    m = greatest_mass("m_p", piston, sheet, sheet.take)
    a = sheet.work("a", piston_acceleration, **crank._asdict(), θ=0.0)
    pull = max(pull, sheet.work("F_i", inertia_force, m=m, a=a))
    if case.name == "drifting":  # the regulator is shut
        return pull
    return max(pull, greatest("F_θ", "tensile load", ALONG_STROKE, cylinder, case, sheet, sense=PULL, m=m))


@rule(
    "piston.speed",
    title="The mean piston speed does not exceed its limit",
    wrong="mean piston speed {found}, {limit} allowed",
    on=Piston,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE, LINEHAM_SPEED],
    why="Rings and packing wear with the distance that they rub, which the piston speed sets.",
    leaves_out="oil and surface of the liner; Lineham's speed of locomotives is only reported",
    against=(),
    against_on={"piston-ring": ("wear",)},
    limits=[
        Limit("mean", "8 m/s", "speed", COMMON_PRACTICE, "greatest mean piston speed"),
        Limit(
            "period", "1000 ft/min", "speed", LINEHAM_SPEED, "mean speed of locomotives by Lineham, reported"
        ),
    ],
    edition=2,
)
def speed(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """Twice the stroke in a revolution, compared with the period's figure."""
    cylinder = cylinder_of(piston, sheet)
    stroke = stroke_of(cylinder.block, sheet, cylinder.liner.in_bore)
    n = sheet.work("n", revolutions, ω=speed_of_crank(cylinder.block, case, sheet))
    mean = sheet.work("v_m", mean_piston_speed, S=sheet.take("S", stroke), n=n)
    sheet.work("x_period", speed_ratio, v=mean, v_0=sheet.limit("period", "v_0"))
    return sheet.at_most(mean, sheet.limit("mean"))


@rule(
    "piston.inertia",
    title="The inertia force of the reciprocating masses at running speed does not exceed its share of the "
    "steam load on the piston",
    wrong="inertia {found} times the steam load, {limit} allowed",
    on=Piston,
    cases=("running",),
    edition=3,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Where inertia comes near the steam load the rods knock, and forces that the wheels cannot balance "
    "act on the rail.",
    leaves_out="compression, which relieves the pins of some of it",
    against=(),
    limits=[
        Limit(
            "share",
            "0.8",
            "ratio",
            COMMON_PRACTICE,
            "greatest inertia force over the load of boiler pressure",
        )
    ],
)
def inertia(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """m ω² r (1 + r/l) at the front dead centre, over p A of the new bore."""
    cylinder = cylinder_of(piston, sheet)
    gear = gear_of(cylinder, case, sheet)
    a = sheet.work("a", piston_acceleration, r=gear.r, l=gear.l, ω=gear.ω, θ=0.0)
    F_i = sheet.work("F_i", inertia_force, m=gear.m, a=a)
    new = sheet.take("D_n", cylinder.liner.bore)  # on the least piston the same masses weigh the most
    F = sheet.work("F_p", pressure_load, p=boiler_pressure(case, sheet), D=new)
    return sheet.at_most(sheet.work("x", load_ratio, F_1=F_i, F_2=F), sheet.limit("share"))


RULES = (clearance_hot, fastening, speed, inertia)
