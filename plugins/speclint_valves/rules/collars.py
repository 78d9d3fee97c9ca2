"""How a valve sits on its spindle: drawn up against the collar, and centred by its bore."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, Pascals
from speclint.handbook.fits import diametral_clearance
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import direct_stress, tube_area
from speclint.specs import LoadCase, PoppetValve, ValveSpindle
from speclint_valves.formulae.guides import share_of_diameter
from speclint_valves.inputs.shutting import spindle_of


@rule(
    "valve.collar-bears",
    title="The collar of the spindle is wider than the bore of its valve, and presses on the ring between them, as the "
    "nut draws it up, with at most 0.7 of the proof stress of the softer of the two, hot",
    on=PoppetValve,
    cases=("starting", "running", "drifting"),
    grade=Grade.HOLD,
    edition=2,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a collar that sinks into its valve takes the preload off the nut, and one that draws into the bore splits the "
    "valve or lets it go",
    leaves_out="the face under the nut; chamfer of the bore and fillet of the collar, and a hub that ends within the "
    "collar, which narrow the ring; what the preload gains where the valve grows more than its spindle; what the load "
    "of the gear adds, at most half of the preload that valve.stays-on-its-spindle asks for; the local code and a "
    "competent person decide",
    against=("loosen",),
    limits=[
        Limit(
            "share", "0.7", "ratio", COMMON_PRACTICE, "greatest pressure under a collar over the proof stress"
        )
    ],
)
def collar_bears(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """F_0 over π (D_c² − d_b²)/4 at the greatest preload, against 0.7 R_p of valve and spindle as hot as the valve."""
    spindle = spindle_of(valve, sheet)
    if sheet.read("valve held by", spindle.valve_held.by) == "forged in one":
        raise sheet.not_applicable("the valve is of one piece with its spindle")
    D_c, d_b = sheet.take("D_c", spindle.collar_diameter), sheet.take("d_b", valve.spindle_bore)
    if D_c <= d_b:
        says = "the collar of the spindle is no wider than the bore of its valve"
        return sheet.states(False, says, where=spindle.collar_diameter.where)
    F_0 = sheet.take("F_0", spindle.valve_held.preload)
    p = sheet.work("p_c", direct_stress, F=F_0, A=sheet.work("A_c", tube_area, D=D_c, d=d_b))
    return sheet.at_most(p, _allowed(valve, spindle, case, sheet)).else_says(
        "collar presses on the valve with {found}, {limit} allowed"
    )


def _allowed(valve: PoppetValve, spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Pascals:
    """What the softer of valve and spindle bears at the temperature of the valve."""
    T: Kelvins = sheet.take("T_v", case.temperature_of(valve))
    k = sheet.limit("share", "k")

    def borne(mark: str, part: PoppetValve | ValveSpindle) -> Pascals:
        proof = sheet.look_up(f"R_p{mark}", sheet.material_of(part).proof_stress, of=part, at=T)
        return sheet.work(f"p_{mark}", share_of_strength, k=k, R=proof)

    return min(borne("v", valve), borne("s", spindle))


@rule(
    "valve.centred-on-its-spindle",
    title="The end of a spindle has at most 0.02 of its diameter of clearance, and at most 0.5 mm, in the bore of the "
    "valve that a nut holds on it",
    wrong="the valve has {found} of clearance on its spindle, {limit} allowed",
    on=PoppetValve,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a nut draws a loose valve up wherever it happens to lie: its face and its seat are no longer round one axis, "
    "and the valve leaks on one side",
    leaves_out="a shoulder, a taper or a sleeve that centres the valve in another place; whether the bore of the valve "
    "is round the axis of its faces",
    against=("leak",),
    limits=[
        Limit("share", "0.02", "ratio", COMMON_PRACTICE, "greatest clearance over the diameter of the end"),
        Limit(
            "clearance", "0.5 mm", "length", COMMON_PRACTICE, "greatest clearance on a spindle of any size"
        ),
    ],
    edition=2,
)
def centred(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """Bore less end at the widest, cold, against the lesser of both limits: both are one metal, or nearly."""
    spindle = spindle_of(valve, sheet)
    if sheet.read("valve held by", spindle.valve_held.by) == "forged in one":
        raise sheet.not_applicable("the valve is of one piece with its spindle")
    d_b, d = sheet.take("d_b", valve.spindle_bore), sheet.take("d", spindle.valve_end_diameter)
    c = sheet.work("c", diametral_clearance, D=d_b, d=d)
    share = sheet.work("c_n", share_of_diameter, x=sheet.limit("share", "x"), d=d)
    return sheet.at_most(c, min(share, sheet.limit("clearance", "c_g")))


RULES = (centred, collar_bears)
