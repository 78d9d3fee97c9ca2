"""The block on the frame: slip and separation."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.bolted_joints import loads, stud_stress
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import direct_stress, round_area
from speclint.specs import CaseName, CylinderBlock, CylinderLiner, FrameFastening, LoadCase, Pad
from speclint_joints.formulae import frames
from speclint_joints.formulae.preloads import preload_left
from speclint_joints.inputs.preload import tightened_preload
from speclint_joints.inputs.seals import pressure_in_cylinder
from speclint_joints.inputs.studs import Studs, studs_of
from speclint_joints.sources import SHIGLEY, VDI_2230

_CASES: tuple[CaseName, ...] = ("starting", "running", "water")
_DEFERS = "the local railway code and a competent person decide."


@dataclass(frozen=True, slots=True)
class _Drawn:
    """The bolts of a pad, with least and greatest preload of one, N."""

    bolts: Studs
    low: float
    high: float


def _drawn(fastening: FrameFastening, sheet: Sheet) -> _Drawn:
    bolts = studs_of(fastening, sheet)
    tightened = tightened_preload(fastening, sheet, bolts)
    creep = sheet.take("r", fastening.relaxation)
    return _Drawn(
        bolts, sheet.work("F_left", preload_left, F=tightened.low, F_Z=0.0, r=creep), tightened.high
    )


def _pad(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> Pad:
    return sheet.entry(block.pads, fastening.pad, f"pads of {block.id}")


def _thrust(fastening: FrameFastening, block: CylinderBlock, case: LoadCase, sheet: Sheet) -> float:
    """Steam load on a cover at the largest bore of the liner's life, and buffing."""
    load = sheet.work(
        "F_s", loads.pressure_load, D=_bore(fastening, block, sheet), p=pressure_in_cylinder(case, sheet)
    )
    gravity = sheet.look_up("g", frames.standard_gravity)
    mass, shock = sheet.take("m", fastening.carried_mass), sheet.take("k", fastening.shock)
    jolt = sheet.work("S", frames.shock_load, m=mass, k=shock, g=gravity)
    return sheet.work("F_T", frames.thrust_along_frame, F=load, S=jolt)


def _bore(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> float:
    wanted = sheet.read("bore", fastening.bore)
    liners = sheet.belonging_to(block, CylinderLiner)
    found = [liner for liner in liners if sheet.read(f"bore of {liner.id}", liner.in_bore) == wanted]
    if len(found) != 1:
        raise sheet.not_assessed(
            f"{len(found)} liners are stated in bore {wanted} of {block.id}; exactly one is needed"
        )
    worn = found[0].last_bore if sheet.is_stated("last bore", found[0].last_bore) else found[0].bore
    return sheet.take("D", worn)


@rule(
    "frame.block-slip",
    title="Friction alone holds the thrust of the block with its factor against slip, or fitted bolts or "
    "lugs take all of it within their shear and bearing limits",
    on=FrameFastening,
    cases=_CASES,
    grade=Grade.HOLD,
    cites=[VDI_2230.at("section 5.5.6"), SHIGLEY.at("section 8-12"), COMMON_PRACTICE],
    why="A block that has begun to move on its frame wears its bolts loose, and no tightening will hold it "
    "again.",
    leaves_out=f"Help from a sliding pad, and strength of the frame; {_DEFERS}",
    limits=[
        Limit(
            "friction alone",
            "1.8",
            "ratio",
            VDI_2230.at("section 5.5.6"),
            "least factor against slip, reversing load",
        ),
        Limit(
            "shear",
            "60 MPa",
            "stress",
            COMMON_PRACTICE,
            "greatest shear stress of fitted bolts or lugs, reversing load",
        ),
        Limit(
            "bearing",
            "100 MPa",
            "stress",
            COMMON_PRACTICE,
            "greatest bearing pressure of fitted bolts or lugs, reversing load",
        ),
    ],
)
def block_slip(fastening: FrameFastening, case: LoadCase, sheet: Sheet) -> Judgement:
    """Friction at least preload against the thrust; or shear and bearing, without credit for friction."""
    block = sheet.follow(fastening.holds)
    if not sheet.read("pad locates", _pad(fastening, block, sheet).locates):
        raise sheet.not_applicable("this pad slides, so that the block may grow: it takes no thrust")
    thrust = _thrust(fastening, block, case, sheet)
    taken_by = sheet.read("thrust taken by", fastening.thrust_taken_by)
    if taken_by == "friction":
        drawn, mu = _drawn(fastening, sheet), sheet.take("mu", fastening.friction)
        factor = sheet.work("N_s", frames.factor_against_slip, mu=mu, n=drawn.bolts.n, F=drawn.low, T=thrust)
        return sheet.at_least(factor, sheet.limit("friction alone"))
    sheared, pressed = (
        _fitted(fastening, sheet, thrust) if taken_by == "fitted bolts" else _lugs(fastening, sheet, thrust)
    )
    return sheet.worst(
        sheet.at_most(sheared, sheet.limit("shear")), sheet.at_most(pressed, sheet.limit("bearing"))
    )


def _fitted(fastening: FrameFastening, sheet: Sheet, thrust: float) -> tuple[float, float]:
    n, d = sheet.count("n", fastening.count), sheet.take("d_f", fastening.fitted_diameter)
    area = sheet.work("A_f", round_area, d=d)
    sheared = sheet.work("tau", frames.shear_of_fitted_bolts, T=thrust, n=n, A=area)
    length = sheet.take("L_f", fastening.bearing_length)
    return sheared, sheet.work("q", frames.bearing_of_fitted_bolts, T=thrust, n=n, d=d, L=length)


def _lugs(fastening: FrameFastening, sheet: Sheet, thrust: float) -> tuple[float, float]:
    sheared = sheet.work("tau", direct_stress, F=thrust, A=sheet.take("A_l", fastening.lug_shear_area))
    return sheared, sheet.work("q", direct_stress, F=thrust, A=sheet.take("A_q", fastening.lug_bearing_area))


@rule(
    "frame.block-couple",
    title="Under the couple of the thrust the pad keeps its factor against separation, and pad pressure and "
    "bolt stress do not exceed their limits",
    on=FrameFastening,
    cases=_CASES,
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, SHIGLEY.at("eq. 8-30"), COMMON_PRACTICE],
    why="The cylinder's axis lies beside the frame: every stroke tries to open one pad and then the other.",
    leaves_out=f"Bending of block and frame between the pads, and any vertical couple; {_DEFERS}",
    limits=[
        Limit("factor", "1.2", "ratio", COMMON_PRACTICE, "least factor against separation of the pad"),
        Limit("pad pressure", "80 MPa", "stress", COMMON_PRACTICE, "greatest mean pressure of a pad"),
        Limit(
            "share of proof", "0.8", "ratio", COMMON_PRACTICE, "greatest share of proof stress of the bolts"
        ),
    ],
)
def block_couple(fastening: FrameFastening, case: LoadCase, sheet: Sheet) -> Judgement:
    """The thrust acts in both directions, so each pad is lifted by one and pressed by the other."""
    block = sheet.follow(fastening.holds)
    pad = _pad(fastening, block, sheet)
    drawn = _drawn(fastening, sheet)
    lift = _lift(fastening, block, pad, case, sheet, drawn.bolts.n)
    factor = sheet.work("n_p", loads.separation_factor, F_i=drawn.low, Phi=0.0, P=lift)
    face = sheet.take("A", pad.area)
    pressed = sheet.work("q", frames.greatest_pad_pressure, n=drawn.bolts.n, F=drawn.high, P=lift, A=face)
    load = sheet.work("F_b", loads.stud_load, F_i=drawn.high, Phi=1.0, P=lift)
    pull = sheet.work("sigma", stud_stress.tension, F=load, A_s=drawn.bolts.A_s)
    at = sheet.take("T_b", case.temperature_of(fastening))
    proof = sheet.look_up("R_p", sheet.material_of(fastening).proof_stress, at=at, thickness=drawn.bolts.d)
    limit = sheet.work("sigma_lim", share_of_strength, k=sheet.limit("share of proof"), R=proof)
    return sheet.worst(
        sheet.at_least(factor, sheet.limit("factor")),
        sheet.at_most(pressed, sheet.limit("pad pressure")),
        sheet.at_most(pull, limit),
    )


def _lift(
    fastening: FrameFastening, block: CylinderBlock, pad: Pad, case: LoadCase, sheet: Sheet, n: int
) -> float:
    bore = sheet.entry(block.bores, fastening.bore, f"bores of {block.id}")
    other = sheet.entry(block.pads, fastening.other_pad, f"pads of {block.id}")
    thrust = _thrust(fastening, block, case, sheet)
    couple = sheet.work("M", frames.couple_of_thrust, T=thrust, a=sheet.take("a", bore.axis_from_frame))
    apart = sheet.work(
        "l", frames.between_pads, x_1=sheet.take("x_1", pad.at), x_2=sheet.take("x_2", other.at)
    )
    return sheet.work("P", frames.lift_by_couple, M=couple, l=apart, n=n)


RULES = (block_slip, block_couple)
