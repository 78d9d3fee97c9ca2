"""The block on the frame: slip and separation."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.bolted_joints import loads, stud_stress
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import direct_stress, round_area
from speclint.specs import CaseName, CylinderBlock, CylinderEnd, CylinderLiner, FrameFastening, LoadCase, Pad
from speclint_joints.formulae import frames
from speclint_joints.inputs.frame_bolts import frame_bolts
from speclint_joints.inputs.pressures import pressure_in_cylinder
from speclint_joints.sources import SHIGLEY, VDI_2230, VDI_SLIP

_CASES: tuple[CaseName, ...] = ("starting", "running", "water")
_DEFERS = "the local railway code and a competent person decide."


def _pad(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> Pad:
    return sheet.entry(block.pads, fastening.pad, f"pads of {block.id}")


def _thrust(fastening: FrameFastening, block: CylinderBlock, case: LoadCase, sheet: Sheet) -> float:
    """Steam load on a cover at the largest bore of the liner's life, and buffing."""
    ends = tuple(end for end in block.ends.values() if _of_bore(fastening, end, sheet))
    pressure = pressure_in_cylinder(case, sheet, ends)
    load = sheet.work("F_s", loads.pressure_load, D=_bore(fastening, block, sheet), p=pressure)
    gravity = sheet.look_up("g", frames.standard_gravity)
    mass, shock = sheet.take("m", fastening.carried_mass), sheet.take("k", fastening.shock)
    jolt = sheet.work("S", frames.shock_load, m=mass, k=shock, g=gravity)
    return sheet.work("F_T", frames.thrust_along_frame, F=load, S=jolt)


def _of_bore(fastening: FrameFastening, end: CylinderEnd, sheet: Sheet) -> bool:
    """Whether an end is of the bore whose thrust the pad carries; where it does not say it may be."""
    if not sheet.is_stated("bore of the end", end.of_bore):
        return True
    return sheet.read("bore of the end", end.of_bore) == sheet.read("bore", fastening.bore)


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


def _drag(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> float:
    """What all sliding pads of a block together drag on the frame as it grows, N, at the greatest preload, hot."""
    fastenings = sheet.belonging_to(block, FrameFastening)
    drag = 0.0
    for name, pad in block.pads.items():
        if sheet.read(f"pad {name} locates", pad.locates):
            continue
        found = [one for one in fastenings if sheet.read(f"pad of {one.id}", one.pad) == name]
        if not found:
            raise sheet.not_assessed(
                f"no fastening of the sliding pad {name} of {block.id} is stated", pad.where
            )
        for one in found:
            drawn = frame_bolts(one, block, case, sheet)
            mu = sheet.take("mu_D", one.greatest_friction)
            drag += sheet.work("D", frames.drag_of_pad, mu=mu, n=drawn.bolts.n, F=drawn.high)
    return drag


@rule(
    "frame.block-slip",
    title="Friction at the preload left hot holds thrust of the block and drag of its sliding pads with its factor "
    "against slip, or fitted bolts or lugs take all of both within their shear and bearing limits",
    on=FrameFastening,
    cases=_CASES,
    grade=Grade.HOLD,
    cites=[VDI_SLIP, VDI_2230.at("section 5.4.2"), SHIGLEY.at("section 8-12"), COMMON_PRACTICE],
    why="A block that has begun to move on its frame wears its bolts loose, and no tightening will hold it "
    "again.",
    leaves_out=f"Strength of the frame; {_DEFERS}",
    limits=[
        Limit(
            "friction alone",
            "1.8",
            "ratio",
            VDI_SLIP,
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
    edition=3,
)
def block_slip(fastening: FrameFastening, case: LoadCase, sheet: Sheet) -> Judgement:
    """Friction at least preload, less the lift of the couple, against thrust and drag; or shear and bearing."""
    block = sheet.follow(fastening.holds)
    pad = _pad(fastening, block, sheet)
    if not sheet.read("pad locates", pad.locates):
        raise sheet.not_applicable("this pad slides, so that the block may grow: it takes no thrust")
    steam = _thrust(fastening, block, case, sheet)
    thrust = sheet.work("T_D", frames.thrust_with_drag, T=steam, D=_drag(block, case, sheet))
    taken_by = sheet.read("thrust taken by", fastening.thrust_taken_by)
    if taken_by == "friction":
        drawn, mu = frame_bolts(fastening, block, case, sheet), sheet.take("mu", fastening.friction)
        lift = _lift(fastening, block, pad, sheet, steam, drawn.bolts.n)
        pressed = {"n": drawn.bolts.n, "F": drawn.low, "P": lift}
        factor = sheet.work("N_s", frames.factor_against_slip, mu=mu, T=thrust, **pressed)
        return sheet.at_least(factor, sheet.limit("friction alone"))
    sheared, pressure = (
        _fitted(fastening, sheet, thrust) if taken_by == "fitted bolts" else _lugs(fastening, sheet, thrust)
    )
    return sheet.worst(
        sheet.at_most(sheared, sheet.limit("shear")), sheet.at_most(pressure, sheet.limit("bearing"))
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
    title="Under the couple of the thrust the pad keeps its factor against separation at the preload left hot, and pad "
    "pressure and bolt stress at the greatest do not exceed their limits",
    on=FrameFastening,
    cases=_CASES,
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, VDI_2230.at("section 5.4.2"), SHIGLEY.at("eq. 8-30"), COMMON_PRACTICE],
    why="The cylinder's axis lies beside the frame: every stroke tries to open one pad and then the other.",
    leaves_out=f"Bending of block and frame between the pads, and any vertical couple; {_DEFERS}",
    limits=[
        Limit("factor", "1.2", "ratio", COMMON_PRACTICE, "least factor against separation of the pad"),
        Limit("pad pressure", "80 MPa", "stress", COMMON_PRACTICE, "greatest mean pressure of a pad"),
        Limit(
            "share of proof", "0.8", "ratio", COMMON_PRACTICE, "greatest share of proof stress of the bolts"
        ),
    ],
    edition=3,
)
def block_couple(fastening: FrameFastening, case: LoadCase, sheet: Sheet) -> Judgement:
    """The thrust acts in both directions, so each pad is lifted by one and pressed by the other."""
    block = sheet.follow(fastening.holds)
    pad = _pad(fastening, block, sheet)
    drawn = frame_bolts(fastening, block, case, sheet)
    thrust = _thrust(fastening, block, case, sheet)
    lift = _lift(fastening, block, pad, sheet, thrust, drawn.bolts.n)
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
    fastening: FrameFastening, block: CylinderBlock, pad: Pad, sheet: Sheet, thrust: float, n: int
) -> float:
    bore = sheet.entry(block.bores, fastening.bore, f"bores of {block.id}")
    other = sheet.entry(block.pads, fastening.other_pad, f"pads of {block.id}")
    couple = sheet.work("M", frames.couple_of_thrust, T=thrust, a=sheet.take("a", bore.axis_from_frame))
    apart = sheet.work(
        "l", frames.between_pads, x_1=sheet.take("x_1", pad.at), x_2=sheet.take("x_2", other.at)
    )
    return sheet.work("P", frames.lift_by_couple, M=couple, l=apart, n=n)


RULES = (block_slip, block_couple)
