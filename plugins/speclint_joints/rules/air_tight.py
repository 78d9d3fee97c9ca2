"""Joints that a packing makes tight against air, and the locking of nuts by heat and movement."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, Metres
from speclint.facts import grip_held
from speclint.handbook.tables import ROARK
from speclint.specs import BoltedJoint, LoadCase, Saddle
from speclint_joints.formulae.air_tight import (
    gap_of_flange,
    inflow_of_air,
    mean_pitch,
    opening_between_bolts,
    openings_added,
    room_in_hole,
    share_of_gas,
    slack_of_bolt,
    unlike_growth_along,
)
from speclint_joints.formulae.carried import slip_factor
from speclint_joints.inputs.carried import JOLTS, carries_something, pulls_on
from speclint_joints.inputs.patterns import shear_of_pattern
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.purposes import is_steam_tight
from speclint_joints.inputs.stack import Stack, stack_of
from speclint_joints.sources import VDI_SLIP

_FORM = ("split pin", "tab washer", "lock plate", "wire", "peened", "wedge washers")
_NONE = ("none", "spring washer")
#: Locking that heat takes away, with the limit that it bears.
_HOT = {"nylon ring nut": "nylon", "adhesive": "adhesive"}


@rule(
    "joint.air-tight",
    edition=2,
    title="A flange opens between its bolts no further than its packing springs back, its holes let both parts grow, "
    "and a smokebox draws in at most 0.5 % of its gas where the packing is dead",
    on=BoltedJoint,
    cases=("running", "standing-hot"),
    grade=Grade.NONCONFORMITY,
    cites=[ROARK.at("Table 8.1, case 2d"), FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A smokebox that draws air burns its own ash and starves the fire; a cam box that breathes loses its oil.",
    leaves_out="flanges bent by what they carry, packing that creeps, dirt on the faces",
    against=("leak",),
    against_on={"saddle": ("leak",), "cam-box": ("leak",)},
    reached_by="holds",
    limits=[
        Limit(
            "inflow", "0.5 %", "ratio", COMMON_PRACTICE, "greatest inflow of air over the gas of a smokebox"
        ),
        Limit("air", "1.2 kg/m³", "density", COMMON_PRACTICE, "density of the air that is drawn in"),
    ],
)
def air_tight(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """w = q p⁴/(384 E I) and slack of the bolts against the recovery; α ΔT L against the holes; 0.6 A √(2 ρ Δp)."""
    if is_steam_tight(joint, sheet) or sheet.read("purpose", joint.purpose) != "air-tight":
        raise sheet.not_applicable("the joint is not air-tight")
    stack = stack_of(joint, sheet)
    w = _opening(joint, stack, case, sheet)
    judged = [
        sheet.at_most(w, sheet.take("w_0", joint.packing.recovery)).else_says(
            "flange opens {found} between bolts, packing springs back {limit}"
        ),
        _lets_grow(joint, stack, case, sheet),
    ]
    if isinstance(stack.held, Saddle) or sheet.is_stated("vacuum", joint.vacuum):
        judged.append(_draws(joint, w, sheet))
    return sheet.worst(*judged)


def _opening(joint: BoltedJoint, stack: Stack, case: LoadCase, sheet: Sheet) -> Metres:
    at = sheet.take("T_m", case.temperature_of(stack.held))
    pressed = sheet.work(
        "w_1",
        opening_between_bolts,
        q=sheet.take("q", joint.packing.pressure),
        b=sheet.take("b", joint.packing.width),
        p=_pitch(joint, stack, sheet),
        E=sheet.look_up("E", sheet.material_of(stack.held).modulus, of=stack.held, at=at),
        c=sheet.take("c", joint.strip_width),
        t=grip_held(joint, sheet),
    )
    T_0 = sheet.take("T_0", joint.tightening.temperature)
    hot = sheet.take("T_b", case.temperature_of(joint))
    slack = sheet.work(
        "w_2",
        slack_of_bolt,
        l=stack.held_length + stack.far_length,
        α_b=sheet.look_up("α_b", sheet.material_of(joint).expansion, of=joint, at=hot),
        ΔT_b=hot - T_0,
        α_m=sheet.look_up("α_m", sheet.material_of(stack.held).expansion, of=stack.held, at=at),
        ΔT_m=at - T_0,
    )
    return sheet.work("w", openings_added, w_1=pressed, w_2=slack)


def _pitch(joint: BoltedJoint, stack: Stack, sheet: Sheet) -> Metres:
    """Greatest distance of two bolts: as stated, and no less than so many bolts leave along the joint."""
    p = sheet.take("p", joint.pitch)
    return max(p, sheet.work("p_n", mean_pitch, L=sheet.take("L", joint.length), n=stack.studs.n))


def _lets_grow(joint: BoltedJoint, stack: Stack, case: LoadCase, sheet: Sheet) -> Judgement:
    """Both parts grow apart along the joint; the holes, slotted or round, let them."""
    T_0 = sheet.take("T_0", joint.tightening.temperature)
    T_1, T_2 = (
        sheet.take("T_m", case.temperature_of(stack.held)),
        sheet.take("T_f", case.temperature_of(stack.far)),
    )
    grown = sheet.work(
        "ΔL",
        unlike_growth_along,
        L=sheet.take("L", joint.length),
        α_1=sheet.look_up("α_m", sheet.material_of(stack.held).expansion, of=stack.held, at=T_1),
        ΔT_1=T_1 - T_0,
        α_2=sheet.look_up("α_f", sheet.material_of(stack.far).expansion, of=stack.far, at=T_2),
        ΔT_2=T_2 - T_0,
    )
    hole = sheet.take("d_h", joint.slot if sheet.is_stated("slot", joint.slot) else joint.hole)
    room = sheet.work("s", room_in_hole, d_h=hole, d=stack.studs.d)
    return sheet.at_most(grown, room).else_says("parts grow {found} apart along the joint, holes let {limit}")


def _draws(joint: BoltedJoint, w: Metres, sheet: Sheet) -> Judgement:
    A = sheet.work("A", gap_of_flange, w=w, L=sheet.take("L", joint.length))
    m = sheet.work("m_a", inflow_of_air, A=A, rho=sheet.limit("air", "ρ"), Δp=sheet.take("Δp", joint.vacuum))
    share = sheet.work("x", share_of_gas, m=m, m_g=sheet.take("m_g", joint.gas_flow))
    return sheet.at_most(share, sheet.limit("inflow")).else_says(
        "smokebox draws {found} of its gas, {limit} allowed"
    )


@rule(
    "joint.lock-suits",
    edition=2,
    title="The locking of every nut bears the heat of its metal in every case; a spring washer alone locks "
    "nothing; a joint loaded across its bolts, with a slip factor below 1.8, is locked by shape",
    on=BoltedJoint,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[VDI_SLIP, COMMON_PRACTICE],
    why="A nut is turned off by slip, not by shaking; and nylon is soft long before steam is hot.",
    leaves_out="nuts that are not locked at all (joint.locking), whether the locking is renewed",
    against=("loosen",),
    limits=[
        JOLTS,
        Limit(
            "nylon", "120 °C", "temperature", COMMON_PRACTICE, "hottest metal of a nut with a ring of nylon"
        ),
        Limit(
            "adhesive", "150 °C", "temperature", COMMON_PRACTICE, "hottest metal of a thread held by adhesive"
        ),
        Limit("slip", "1.8", "ratio", VDI_SLIP, "factor against slip below which nuts are locked by shape"),
    ],
)
def lock_suits(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Temperature of the metal against that of the locking; slip against the kind of locking."""
    how, where = sheet.read("locking", joint.nut.locking), joint.nut.locking.where
    if how == "none":
        raise sheet.not_applicable("the nuts are not locked: joint.locking says it")
    if how in _NONE:
        return sheet.states(False, f"the nuts are locked by a {how}, which is no locking", where=where)
    if how in _HOT:
        at = _hottest(joint, case, sheet)
        heat = sheet.no_hotter(at, sheet.limit(_HOT[how], "T_l")).else_says(
            "nuts of {found} locked for {limit}"
        )
    else:
        heat = sheet.states(True, f"locked by: {how}", where=where)
    if how in _FORM or not carries_something(joint, sheet):
        return heat
    if sheet.read("shear taken by", joint.shear_taken_by) != "friction":
        return heat
    pulls, working = pulls_on(joint, case, sheet), working_preload(joint, case, sheet)
    V = shear_of_pattern(joint, pulls, working.stack.studs, sheet)
    if V <= 0:
        return heat
    mu, n = sheet.take("μ", joint.friction), working.stack.studs.n
    factor = sheet.work("S_G", slip_factor, mu=mu, n=n, F=working.low, P=pulls.P, V=V)
    return sheet.worst(
        heat,
        sheet.at_least(factor, sheet.limit("slip")).else_says(
            "nuts locked by friction, which slip at {found} unlocks, {limit} wanted"
        ),
    )


def _hottest(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Kelvins:
    """The hottest that the duty states for the nuts in any case, also standing hot: what softens does not come back."""
    found = [sheet.take("T_b", case.temperature_of(joint))]
    duty = sheet.duty_of(joint)
    for name, other in sorted(duty.cases.items()) if duty is not None else ():
        at = other.temperature_of(joint)
        if case.name != name and sheet.is_stated(f"temperature, {name}", at):
            found.append(sheet.take(f"T_b, {name}", at))
    return max(found)


RULES: tuple[Rule, ...] = (air_tight, lock_suits)
