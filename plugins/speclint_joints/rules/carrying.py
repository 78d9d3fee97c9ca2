"""Joints that hold no steam and carry something: their purpose, slip, parting, prying, fatigue and locking."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals, Ratio
from speclint.facts import grip_held, pressure_by_part_held
from speclint.handbook.fits import diametral_clearance
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import direct_stress, round_area
from speclint.specs import BoltedJoint, Bracket, CaseName, LoadCase
from speclint_joints.formulae.carried import slip_factor
from speclint_joints.formulae.frames import shear_of_fitted_bolts
from speclint_joints.formulae.preloads import endurance_with_factor
from speclint_joints.formulae.prying import (
    amplitude_of_bolt,
    bending_of_flange,
    factor_against_parting,
    grip_without_contact,
    lever_of_contact,
    load_of_pair,
    load_with_prying,
    prying_ratio,
    strength_of_bolt,
    strength_of_stub,
)
from speclint_joints.inputs.carried import JOLTS, Pulls, carries_something, pulls_on
from speclint_joints.inputs.patterns import pull_on_worst, shear_of_pattern
from speclint_joints.inputs.preload import Working, working_preload
from speclint_joints.inputs.purposes import steam_beside
from speclint_joints.inputs.strengths import tensile_strength_at
from speclint_joints.inputs.studs import studs_of
from speclint_joints.rules.fatigue import endurance_of
from speclint_joints.sources import EN_1090_2, T_STUB, VDI_2230, VDI_FATIGUE, VDI_SLIP

_CASES: tuple[CaseName, ...] = ("starting", "running", "water")
_DEFERS = "the local railway code and a competent person decide."


class _Pried(NamedTuple):
    """A bolt with its flange: pull F, prying over it q, contact n, load B with prying; sizes of the flange."""

    F: Newtons
    q: Ratio
    n: Metres
    B: Newtons
    m: Metres
    l: Metres  # noqa: E741 - the letter of the equation
    t: Metres


@rule(
    "joint.purpose-by-place",
    title="What a joint is said to be for agrees with what lies on both of its sides: with steam beside it, it is "
    "steam-tight, without it is not, and a structural joint has no packing",
    on=BoltedJoint,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="A steam joint that is called structural is asked for no gasket and no test, and blows out.",
    leaves_out=f"steam that leaks to a joint from elsewhere; {_DEFERS}",
    against=(),
)
def purpose_by_place(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """The word, against the part held, a stated pressure and a seal."""
    steam = steam_beside(joint, sheet)
    if not sheet.is_stated("purpose", joint.purpose):
        if steam:
            return sheet.states(True, "steam-tight, by what it holds")
        raise sheet.not_assessed(
            "no steam is found beside the joint, and its purpose is not stated", joint.purpose.where
        )
    word = sheet.read("purpose", joint.purpose)
    where = joint.purpose.where
    if (word == "steam-tight") != steam:
        found = "steam is beside it" if steam else "no steam is beside it"
        return sheet.states(False, f"the joint is said to be {word}, but {found}", where=where)
    packed = sheet.is_stated("packing", joint.packing.width) or sheet.is_stated("gasket", joint.gasket.name)
    if word == "structural" and packed:
        return sheet.states(False, "the joint is said to be structural, but has a packing", where=where)
    return sheet.states(True, f"{word}, as what is beside it says", where=where)


def _carrying(joint: BoltedJoint, sheet: Sheet) -> None:
    """End a rule on a joint that carries nothing across or off it; a bracket that says nothing is not assessed."""
    if carries_something(joint, sheet):
        return
    held = sheet.follow(joint.holds)
    if pressure_by_part_held(joint, sheet) is None and isinstance(held, Bracket):
        raise sheet.not_assessed(f"what {held.id} carries is not stated", held.where)
    raise sheet.not_applicable("nothing is said to be carried by the joint")


def _graded(judged: Judgement, pulls: Pulls) -> Judgement:
    return judged.graded(Grade.HOLD) if pulls.grave and not judged.holds else judged


@rule(
    "joint.does-not-slip",
    edition=3,
    title="Friction at the least preload holds the shear of what a joint carries, with jolts and twist, 1.2 times, or "
    "1.8 times where it reverses; else keys or fitted bolts take it within their limit",
    on=BoltedJoint,
    cases=_CASES,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[VDI_SLIP, EN_1090_2, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A bracket that has begun to move saws through its bolts.",
    leaves_out=f"shims and gaps, unequal preload in long patterns; {_DEFERS}",
    against=("loosen",),
    against_on={"bracket": ("loosen",), "cam-box": ("loosen",)},
    reached_by="holds",
    limits=[
        JOLTS,
        Limit("steady", "1.2", "ratio", VDI_SLIP, "least factor against slip, load of one sense"),
        Limit("reversing", "1.8", "ratio", VDI_SLIP, "least factor against slip, reversing load"),
        Limit(
            "shear",
            "60 MPa",
            "stress",
            COMMON_PRACTICE,
            "greatest shear stress of fitted bolts or keys, reversing",
        ),
        Limit("loose", "0.3 mm", "length", EN_1090_2, "greatest clearance of a fitted bolt in its hole"),
        Limit(
            "driven", "-0.1 mm", "length", COMMON_PRACTICE, "greatest interference of a fitted bolt, below 0"
        ),
    ],
)
def does_not_slip(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """μ (n F − P)/V of the worst bolt, or V over the area of fitted bolts or keys."""
    _carrying(joint, sheet)
    pulls = pulls_on(joint, case, sheet)
    by = sheet.read("shear taken by", joint.shear_taken_by)
    if by == "friction":
        working = working_preload(joint, case, sheet)
        studs = working.stack.studs
        V = shear_of_pattern(joint, pulls, studs, sheet)
        if V <= 0:
            raise sheet.not_applicable("nothing pulls across the joint")
        mu = sheet.take("μ", joint.friction)
        factor = sheet.work("S_G", slip_factor, mu=mu, n=studs.n, F=working.low, P=pulls.P, V=V)
        wanted = sheet.limit("reversing" if pulls.reverses else "steady")
        held = sheet.at_least(factor, wanted).else_says(
            "friction holds {found} times what pulls across, {limit} wanted"
        )
        return _graded(held, pulls)
    studs, fits = studs_of(joint, sheet), []
    V = shear_of_pattern(joint, pulls, studs, sheet)
    if by == "keys":
        τ = sheet.work("τ", direct_stress, F=V, A=sheet.take("A_k", joint.key_area))
    else:
        d_f = sheet.take("d_f", joint.fitted_diameter)
        τ = sheet.work("τ", shear_of_fitted_bolts, T=V, n=studs.n, A=sheet.work("A_f", round_area, d=d_f))
        fits.append(_fits_its_hole(d_f, joint, sheet))
    sheared = sheet.at_most(τ, sheet.limit("shear")).else_says(
        "fitted bolts or keys sheared by {found}, {limit} allowed"
    )
    return _graded(sheet.worst(sheared, *fits), pulls)


def _fits_its_hole(d_f: Metres, joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """A fitted bolt bears at once: its hole is wider by no more than that of a fit bolt, or a little narrower."""
    c = sheet.work("c_f", diametral_clearance, D=sheet.take("d_h", joint.hole), d=d_f)
    return sheet.within(c, sheet.limit("driven", "c_1"), sheet.limit("loose", "c_2")).else_says(
        "hole is {found} wider than the fitted bolt, the nearer limit is {limit}"
    )


def _pried(joint: BoltedJoint, working: Working, pulls: Pulls, sheet: Sheet) -> _Pried:
    """The worst bolt with what its flange pries; nothing where the flange lifts wholly off."""
    F = pull_on_worst(joint, pulls, working.stack.studs, sheet)
    if F <= 0:
        raise sheet.not_applicable("nothing pulls at the bolts")
    m, l = sheet.take("m", joint.web_distance), sheet.take("l_e", joint.flange_width)  # noqa: E741
    t = flange_of(joint, sheet)
    n = sheet.work("n_c", lever_of_contact, e=sheet.take("e", joint.edge), m=m)
    stiff = sheet.work("g_c", grip_without_contact, m=m, A_s=working.stack.studs.A_s, l=l, t=t)
    grip = working.stack.held_length + working.stack.far_length
    q = 0.0 if grip > stiff else sheet.work("q", prying_ratio, m=m, n=n)
    return _Pried(F, q, n, sheet.work("B", load_with_prying, F=F, q=q), m, l, t)


def flange_of(joint: BoltedJoint, sheet: Sheet) -> Metres:
    """Thickness of the flange under the nuts: of the bracket, else what the bolts clamp."""
    held = sheet.follow(joint.holds)
    if isinstance(held, Bracket):
        return sheet.take("t", held.thickness)
    return grip_held(joint, sheet)


@rule(
    "joint.does-not-part",
    edition=3,
    title="The least preload is at least 1.2 times what tilt, pull and prying bring on the worst bolt",
    wrong="flanges part at {found} times what pulls at the worst bolt, {limit} wanted",
    on=BoltedJoint,
    cases=_CASES,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, VDI_2230.at("section 5.4.2"), COMMON_PRACTICE],
    why="Where flanges part, the bolt takes the whole of every jolt, and breaks.",
    leaves_out=f"shims and gaps, unequal preload in long patterns; {_DEFERS}",
    against=("loosen",),
    against_on={"bracket": ("loosen",), "cam-box": ("loosen",)},
    reached_by="holds",
    limits=[JOLTS, Limit("factor", "1.2", "ratio", COMMON_PRACTICE, "least factor against parting")],
)
def does_not_part(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """F/(M y/Σy² + P/n)(1 + q)."""
    _carrying(joint, sheet)
    pulls, working = pulls_on(joint, case, sheet), working_preload(joint, case, sheet)
    pried = _pried(joint, working, pulls, sheet)
    factor = sheet.work("S_p", factor_against_parting, F=working.low, B=pried.B)
    return _graded(sheet.at_least(factor, sheet.limit("factor")), pulls)


@rule(
    "joint.prying",
    edition=2,
    title="A flange that its bolts pry is bent to at most 0.67 of its proof stress, and bears 1.5 times the load of a "
    "pair of bolts before it yields or they break",
    on=BoltedJoint,
    cases=_CASES,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, T_STUB, COMMON_PRACTICE],
    why="A thin flange works as a crowbar on its own bolts.",
    leaves_out="stiffeners, flanges of unlike thickness on both sides",
    against=("break under load",),
    limits=[
        JOLTS,
        Limit("proof share", "0.67", "ratio", COMMON_PRACTICE, "greatest bending stress over proof stress"),
        Limit("load factor", "1.5", "ratio", COMMON_PRACTICE, "partial factor of the load, ultimate"),
    ],
)
def prying(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """6 F (m − q n)/(l t²); 4 M/m, (2 M + 2 n B)/(m + n) and 2 B of a pair."""
    _carrying(joint, sheet)
    pulls, working = pulls_on(joint, case, sheet), working_preload(joint, case, sheet)
    one, held = _pried(joint, working, pulls, sheet), sheet.follow(joint.holds)
    σ = sheet.work("σ", bending_of_flange, F=one.F, m=one.m, q=one.q, n=one.n, l=one.l, t=one.t)
    at = sheet.take("T_m", case.temperature_of(held))
    R = sheet.look_up("R_p", sheet.material_of(held).proof_stress, of=held, at=at, thickness=one.t)
    S = sheet.work("S", share_of_strength, k=sheet.limit("proof share", "k"), R=R)
    hot = sheet.take("T_b", case.temperature_of(joint))
    R_m = tensile_strength_at("R_m", joint, hot, sheet)
    B = sheet.work("B_d", strength_of_bolt, R_m=R_m, A_s=working.stack.studs.A_s)
    bears = sheet.work("F_d", strength_of_stub, R=R, l=one.l, t=one.t, m=one.m, n=one.n, B=B)
    pair = sheet.work("F_p", load_of_pair, k=sheet.limit("load factor", "k_F"), F=one.F)
    return sheet.worst(
        sheet.at_most(σ, S).else_says("flange bent to {found}, {limit} allowed"),
        sheet.at_most(pair, bears).else_says(
            "pair of bolts pulled by {found}, flange and bolts bear {limit}"
        ),
    )


@rule(
    "joint.bolt-fatigue",
    edition=4,
    title="The stress amplitude of the bolts from what a joint carries at each stroke or jolt does not exceed the "
    "endurance limit of their thread over the factor",
    wrong="stress of the bolts alternates by {found}, {limit} allowed",
    on=BoltedJoint,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[VDI_FATIGUE, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A bolt that breaks in a bracket breaks by fatigue, years after it was drawn.",
    leaves_out=f"bending of bolts by a flange that tilts, corrosion; {_DEFERS}",
    against=("break in fatigue",),
    limits=[
        JOLTS,
        Limit("factor", "1.2", "ratio", VDI_2230.at("section 5.5.3"), "least factor against fatigue"),
        Limit(
            "parting",
            "1.2",
            "ratio",
            COMMON_PRACTICE,
            "factor against parting below which the bolt takes it all",
        ),
    ],
)
def bolt_fatigue(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Φ B/(2 A_s), twice that where a load reverses; half of all of B where the flanges may part."""
    _carrying(joint, sheet)
    pulls, working = pulls_on(joint, case, sheet), working_preload(joint, case, sheet)
    pried, A_s = _pried(joint, working, pulls, sheet), working.stack.studs.A_s
    parted = sheet.work("S_p", factor_against_parting, F=working.low, B=pried.B)
    shut = parted >= sheet.limit("parting", "S_0")
    shares = {"Φ": working.Phi if shut else 1.0, "k": 2.0 if shut and pulls.reverses else 1.0}
    σ: Pascals = sheet.work("σ_a", amplitude_of_bolt, B=pried.B, A_s=A_s, **shares)
    endures = endurance_of(joint, case, sheet, working.stack.studs, working.high)
    allowed = sheet.work("σ_A", endurance_with_factor, sigma=endures, S=sheet.limit("factor"))
    return _graded(sheet.at_most(σ, allowed), pulls)


RULES: tuple[Rule, ...] = (purpose_by_place, does_not_slip, does_not_part, prying, bolt_fatigue)
