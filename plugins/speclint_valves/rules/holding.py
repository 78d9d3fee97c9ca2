"""What keeps the gear together: the key of a cam, the nut of a valve, the stem of a tappet in its guide."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import CRACKED, is_locked, torque_of_cam_alone, two_pieces_by
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import load_with_factor
from speclint.handbook.threads import nominal_diameter, stress_area
from speclint.specs import Cam, LoadCase, PoppetValve, Tappet, ValveSpindle
from speclint_valves.formulae.holding import (
    edge_of_guide,
    moment_at_guide,
    preload_borne,
    pressure_of_key,
    shear_of_key,
    stress_of_stem,
)
from speclint_valves.formulae.set_screws import HOLDING_POWER
from speclint_valves.inputs.aside import pushed_aside, tracks_pushing_most
from speclint_valves.inputs.held_along import held_along, of_one_piece
from speclint_valves.inputs.hubs import hub_of
from speclint_valves.inputs.keys import depth_that_bears
from speclint_valves.inputs.loads import greatest_valve_load, loaded
from speclint_valves.inputs.rollers import rocks

DEFERS = "the local code and a competent person decide"
#: Ways of locking by which the end of a spindle is upset cold, or welded: hard steel cracks by either.
_OF_SOFT_STEEL = ("riveted end", "welded tab")


@rule(
    "cam.stays-on-its-shaft",
    title="A locked nut, clamp or two set screws, each with 8 times its load, or a drawn fork with at most 1 mm of "
    "play holds a cam along its shaft; its key has at most 60 MPa of shear and 100 MPa of pressure",
    on=Cam,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    edition=9,
    cites=[FIRST_PRINCIPLES, HOLDING_POWER, COMMON_PRACTICE],
    why="A cam that works on its key opens its valve late, then at any time, and then the engine runs as it likes.",
    leaves_out="limits of sizes, springs and pressures in the torque, which are taken as the drawings aim at them; fit "
    "of key and bore, and stress in the shaft beside it (shaft.torsion); strength of nut, clamp and "
    "fork, and of what holds the fork; points of set screws other than a cup, and whether they are tightened as "
    "their maker says",
    against=("loosen",),
    limits=[
        Limit("shear", "60 MPa", "stress", COMMON_PRACTICE, "greatest shear of a key, reversing"),
        Limit("pressure", "100 MPa", "stress", COMMON_PRACTICE, "greatest pressure beside a key, reversing"),
        Limit("screws", "2", "ratio", COMMON_PRACTICE, "least number of set screws: one may work back"),
        Limit(
            "dynamic",
            "8",
            "ratio",
            HOLDING_POWER,
            "least holding power of a set screw over its load, the greatest factor of those for dynamic loads",
        ),
        Limit("friction", "0.1", "ratio", COMMON_PRACTICE, "friction of cam and foot, oiled"),
        Limit("fork", "1 mm", "length", COMMON_PRACTICE, "greatest play of a fork in the groove of its cam"),
        CRACKED,
    ],
)
def cam_stays(cam: Cam, case: LoadCase, sheet: Sheet) -> Judgement:
    """2 T/(d b L) and 2 T/(d h L) at the greatest torque of the cam in a turn; a cam of one piece has no key.

    The blow as the cam takes up its clearance is in the torque. The key bears in the shallower of the keyways of cam
    and shaft, no higher than it stands out of the shaft and no longer than the cam. A tappet pushes a cam along its
    shaft with no more than the friction of its greatest load, the blow in it.
    """
    along = sheet.read("held along by", cam.held_along)
    if along == "forged on":
        return of_one_piece(cam, sheet)
    T = torque_of_cam_alone(cam, case, sheet)
    d, b, L = sheet.take("d", cam.bore), sheet.take("b", cam.keyway_width), _length(cam, sheet)
    τ = sheet.work("τ", shear_of_key, T=T, d=d, b=b, L=L)
    p = sheet.work("p", pressure_of_key, T=T, d=d, h=depth_that_bears(cam, sheet), L=L)
    return sheet.worst(
        *held_along(cam, along, case, sheet),
        sheet.at_most(τ, sheet.limit("shear")).else_says("key sheared with {found}, {limit} allowed"),
        sheet.at_most(p, sheet.limit("pressure")).else_says("key bears with {found}, {limit} allowed"),
    )


def _length(cam: Cam, sheet: Sheet) -> Metres:
    """The length of the key within the cam, which is no more than that of the cam where it states one."""
    L, hub = sheet.take("L", cam.key_length), hub_of(cam, sheet)
    return min(L, sheet.take("L_c", hub)) if sheet.is_stated("hub or track", hub) else L


@rule(
    "valve.stays-on-its-spindle",
    title="A valve is of one piece and metal with its spindle, or held on it by a locked nut tightened to twice the "
    "load of its gear, within 0.7 of its proof stress; riveted or welded in soft steel alone",
    on=PoppetValve,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    edition=5,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A valve that works loose hammers its nut off, stays open, and goes through the cylinder in pieces.",
    leaves_out="the hole of a split pin and the slots of its nut, preload lost as valve and spindle grow unlike with "
    "heat, creep of the thread, and the blow of landing "
    f"(valve.landing-speed); {DEFERS}",
    against=("loosen",),
    limits=[
        Limit("held", "2", "ratio", COMMON_PRACTICE, "least preload over the greatest load of the gear"),
        Limit(
            "proof", "0.7", "ratio", COMMON_PRACTICE, "greatest stress of the thread over its proof stress"
        ),
        Limit(
            "soft",
            "600 MPa",
            "stress",
            COMMON_PRACTICE,
            "greatest tensile strength of an end that is riveted or welded",
        ),
        CRACKED,
    ],
)
def valve_stays(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """F_0 ≥ 2 F_v at the least preload, F_0 ≤ 0.7 R_p A_s at the greatest; the thread passes the valve.

    The gear moves no less than the sizes of valve, spindle and springs let them weigh. Of the clearance stated at the
    tappet and that which its lengths leave, where they differ, the greater gives the blow and the less the lift, and
    steam holds the valve shut with all that the boiler gives.
    """
    spindle = _spindle(valve, sheet)
    held = spindle.valve_held
    if sheet.read("valve held by", held.by) == "forged in one":
        return _of_one_piece(valve, spindle, sheet)
    locked = _locked(spindle, sheet)
    F, _ = greatest_valve_load(valve, case, sheet)
    F_0 = sheet.take("F_0", held.preload)
    R_p = sheet.look_up("R_p", sheet.material_of(spindle).proof_stress, of=spindle, at=DRAWING_TEMPERATURE)
    thread = sheet.read("thread", held.thread)
    A = sheet.look_up("A_s", stress_area, designation=thread)
    d, d_b = sheet.look_up("d", nominal_diameter, designation=thread), sheet.take("d_b", valve.spindle_bore)
    word = "passes" if d <= d_b else "does not pass"
    passes = sheet.states(d <= d_b, f"{thread} {word} the bore of the valve", where=held.where)
    bears = sheet.work("F_b", preload_borne, k=sheet.limit("proof", "k_p"), R_p=R_p, A=A)
    wanted = sheet.work("F_w", load_with_factor, x=sheet.limit("held", "k"), F=F)
    return sheet.worst(
        locked,
        passes,
        sheet.at_least(F_0, wanted).else_says("nut of the valve tightened to {found}, {limit} wanted"),
        sheet.at_most(F_0, bears).else_says("nut of the valve tightened to {found}, {limit} allowed"),
    )


def _locked(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """A lock; one for which the end of the spindle is upset or welded wants a steel that is soft enough for it."""
    held = spindle.valve_held
    lock = sheet.read("locked by", held.locked_by)
    locked = sheet.states(
        is_locked("nut", lock), f"the nut of the valve is locked by: {lock}", where=held.where
    )
    if lock not in _OF_SOFT_STEEL:
        return locked
    metal = sheet.material_of(spindle)
    R_m = sheet.look_up("R_m", metal.tensile_strength, of=spindle, at=DRAWING_TEMPERATURE)
    soft = sheet.at_most(R_m, sheet.limit("soft")).else_says(
        f"locked by a {lock} on a spindle of {{found}}, {{limit}} allowed"
    )
    return sheet.worst(locked, soft)


def _of_one_piece(valve: PoppetValve, spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """A valve bored for its spindle, or of another metal, is another piece, whatever the spindle says."""
    said = "the valve is said to be of one piece with its spindle"
    if sheet.is_stated("bore for the spindle", valve.spindle_bore):
        return sheet.states(False, f"{said}, and is bored for it", where=valve.where)
    wrong = " and ".join(two_pieces_by(valve, spindle, sheet))
    return sheet.states(not wrong, f"{said}: {wrong}" if wrong else said, where=valve.where)


def _spindle(valve: PoppetValve, sheet: Sheet) -> ValveSpindle:
    spindles = sheet.belonging_to(valve, ValveSpindle)
    if len(spindles) != 1:
        raise sheet.not_assessed(
            f"{len(spindles)} spindles of {valve.id} are stated; one is needed", valve.where
        )
    return spindles[0]


def _no_guide(tappet: Tappet, sheet: Sheet) -> Iterator[Judgement]:
    """A tappet that rocks on an arm and states a stem in a guide as well: which of them it has is not known."""
    sizes = (("stem", tappet.stem_diameter), ("guide", tappet.guide_length), ("overhang", tappet.overhang))
    for what, size in sizes:
        if sheet.is_stated(f"{what} of {tappet.id}", size):
            says = f"{tappet.id} rocks on an arm, and has a stem in a guide: it states its {what}"
            yield sheet.states(False, says, where=size.where)


@rule(
    "tappet.bears-its-load",
    title="Pushed aslant by its cam, the stem of a tappet is stressed to at most 0.2 of tensile strength and presses "
    "its guide's edge with at most 10 MPa, or it rocks; its screw and its roller's pin are locked",
    on=Tappet,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    edition=4,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A tappet that jams in its guide or breaks leaves its valve open; one whose screw works loose never opens it.",
    leaves_out="the arm of a tappet that rocks, without a guide; the roller's pin itself; oil at the edge of the guide",
    against=("loosen", "break under load"),
    limits=[
        Limit("share", "0.2", "ratio", COMMON_PRACTICE, "share of tensile strength for endurance"),
        Limit("edge", "10 MPa", "stress", COMMON_PRACTICE, "greatest pressure at the edge of an oiled guide"),
        Limit("friction", "0.1", "ratio", COMMON_PRACTICE, "friction of cam and foot, oiled"),
        CRACKED,
    ],
)
def tappet_bears(tappet: Tappet, case: LoadCase, sheet: Sheet) -> Judgement:
    """F/A + Q a/W at the guide, and the pressure there, by load and slant or reach at one angle of the cam."""
    lock = sheet.read("locked by", tappet.locked_by)
    locked = sheet.states(
        lock != "nothing", f"screw and pin of the tappet are locked by: {lock}", where=tappet.where
    )
    if rocks(tappet, sheet):
        return sheet.worst(locked, *_no_guide(tappet, sheet))
    a, L = sheet.take("a", tappet.overhang), sheet.take("L", tappet.guide_length)
    d = sheet.take("d", tappet.stem_diameter)
    R_m = sheet.look_up("R_m", sheet.material_of(tappet).tensile_strength, of=tappet, at=DRAWING_TEMPERATURE)
    S = sheet.work("S", share_of_strength, k=sheet.limit("share", "x"), R=R_m)

    valve = sheet.follow(_moving(tappet, sheet).moves)
    judged = [locked]
    for train in tracks_pushing_most(valve, case, sheet):
        for mark, F, Q, b in pushed_aside(loaded(train, case, sheet), a, sheet.limit("friction", "μ"), sheet):
            M = sheet.work(f"M_t{mark}", moment_at_guide, Q=Q, a=a, F=F, b=b)
            σ = sheet.work(f"σ_t{mark}", stress_of_stem, F=F, M=M, d=d)
            p = sheet.work(f"p_t{mark}", edge_of_guide, Q=Q, M=M, d=d, L=L)
            judged += [
                sheet.at_most(σ, S).else_says("stem of the tappet stressed to {found}, {limit} allowed"),
                sheet.at_most(p, sheet.limit("edge")).else_says(
                    "edge of the tappet's guide pressed by {found}, {limit} allowed"
                ),
            ]
    return sheet.worst(*judged)


def _moving(tappet: Tappet, sheet: Sheet) -> ValveSpindle:
    """The spindle that a tappet works, directly or through its rocker."""
    worked = sheet.follow(tappet.works)
    return worked if isinstance(worked, ValveSpindle) else sheet.follow(worked.works)


RULES = (cam_stays, valve_stays, tappet_bears)
