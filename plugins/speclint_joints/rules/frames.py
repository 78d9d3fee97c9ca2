"""The block on the frame: slip and separation."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import NewtonMetres, Newtons
from speclint.facts import (
    axis_of_bore,
    bore_named,
    bores_on_frame,
    bores_pushing_together,
    ends_of,
    face_of_pad,
    holes_of_bolts,
    liners_of,
    locks_block,
    mass_on_frame,
    shock_on_frame,
)
from speclint.handbook.bolted_joints import loads, stud_stress
from speclint.handbook.fits import diametral_clearance
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import direct_stress, round_area, sum_of_loads
from speclint.specs import CaseName, CylinderBlock, FrameFastening, LoadCase, Pad
from speclint_joints.formulae import frames
from speclint_joints.inputs.frame_bolts import FrameBolts, frame_bolts
from speclint_joints.inputs.pressures import pressure_in_cylinder
from speclint_joints.sources import SHIGLEY, VDI_2230, VDI_SLIP

_CASES: tuple[CaseName, ...] = ("starting", "running", "water")
_DEFERS = "the local railway code and a competent person decide."
LEAD = Limit(
    "lead",
    "30 °",
    "angle",
    COMMON_PRACTICE,
    "crank angle before its dead centre from which steam or water may push a piston the new way",
)
_LEAVES_OUT = "how two frames share the thrust of a bore between them, cylinders at an angle to each other"


def _pad(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> Pad:
    return sheet.entry(block.pads, fastening.pad, f"pads of {block.id}")


class _Thrust(NamedTuple):
    """Thrust along the frame, and its couple about the frame's face."""

    T: Newtons
    M: NewtonMetres


def _thrust(fastening: FrameFastening, block: CylinderBlock, case: LoadCase, sheet: Sheet) -> _Thrust:
    """Steam load on the covers of the bores on this frame that push the same way at once, and buffing.

    Each bore is at the largest of its life, and under its greatest pressure; a bore that pushes the other way relieves
    nothing. Buffing acts at the farthest axis.
    """
    bores = bores_on_frame(fastening, block, sheet)
    if not bores:
        raise sheet.not_assessed(
            f"no bore of {block.id} is stated whose thrust comes on this frame", block.where
        )
    together = bores_pushing_together(bores, block, case, sheet.limit("lead"), sheet)
    pushed = [_pushed(some, block, case, sheet) for some in together]
    steam, couple = max(one.T for one in pushed), max(one.M for one in pushed)
    farthest = max(axis_of_bore(block, name, sheet) for name in bores)
    gravity = sheet.look_up("g", frames.standard_gravity)
    mass, shock = mass_on_frame(fastening, block, sheet), shock_on_frame(fastening, block, sheet)
    jolt = sheet.work("S", frames.shock_load, m=mass, k=shock, g=gravity)
    return _Thrust(
        sheet.work("F_T", frames.thrust_along_frame, F=steam, S=jolt),
        sheet.work("M", frames.couple_of_thrust, M_0=couple, T=jolt, a=farthest),
    )


def _pushed(bores: Sequence[str], block: CylinderBlock, case: LoadCase, sheet: Sheet) -> _Thrust:
    """Steam load on a cover of each of some bores, and its couple."""
    steam = couple = 0.0
    for name in bores:
        pressure = pressure_in_cylinder(case, sheet, ends_of(block, name, sheet).values())
        load = sheet.work("F_s", loads.pressure_load, D=_bore(name, block, sheet), p=pressure)
        a = axis_of_bore(block, name, sheet)
        steam = sheet.work("F", sum_of_loads, F_1=steam, F_2=load)
        couple = sheet.work("M", frames.couple_of_thrust, M_0=couple, T=load, a=a)
    return _Thrust(steam, couple)


def _bore(name: str, block: CylinderBlock, sheet: Sheet) -> float:
    """The largest bore of the cylinder's life: of its liner, or of the block where a bore has none."""
    liners = liners_of(block, name, sheet)
    bore = bore_named(block, name, sheet)
    if not liners and sheet.is_stated(f"{name} is lined", bore.lined) and not sheet.read("lined", bore.lined):
        new, last = bore.diameter, bore.last_bore
    elif len(liners) == 1:
        new, last = liners[0].bore, liners[0].last_bore
    else:
        raise sheet.not_assessed(
            f"{len(liners)} liners are stated in bore {name} of {block.id}; exactly one is needed"
        )
    return max(sheet.take("D", new), sheet.take("D_last", last))  # a last bore below the new one is no bore


def _drag(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> float:
    """What all sliding pads of a block together drag on the frame as it grows, N, at the greatest preload, hot."""
    fastenings = sheet.belonging_to(block, FrameFastening)
    drag = 0.0
    for name, pad in block.pads.items():
        if locks_block(name, pad, sheet):
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
    title="Friction at the preload left hot holds the thrust of all bores that push together and the drag of sliding "
    "pads with its factor, or fitted bolts without play, or lugs, take both within their limits",
    on=FrameFastening,
    cases=_CASES,
    grade=Grade.HOLD,
    cites=[VDI_SLIP, VDI_2230.at("section 5.4.2"), SHIGLEY.at("section 8-12"), COMMON_PRACTICE],
    why="A block that has begun to move on its frame wears its bolts loose, and no tightening will hold it "
    "again.",
    leaves_out=f"Strength of the frame, {_LEAVES_OUT}; {_DEFERS}",
    against=("loosen",),
    against_on={"cylinder-block": ("loosen",)},
    limits=[
        LEAD,
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
        Limit(
            "play", "0.05 mm", "length", COMMON_PRACTICE, "greatest clearance of a fitted bolt in its hole"
        ),
        Limit(
            "driven",
            "-0.1 mm",
            "length",
            COMMON_PRACTICE,
            "greatest interference of a fitted bolt, below 0",
        ),
    ],
    edition=8,
)
def block_slip(fastening: FrameFastening, case: LoadCase, sheet: Sheet) -> Judgement:
    """Friction at least preload, less the lift of the couple, against thrust and drag; or shear and bearing."""
    block = sheet.follow(fastening.holds)
    pad = _pad(fastening, block, sheet)
    if not locks_block(sheet.read("pad", fastening.pad), pad, sheet):
        raise sheet.not_applicable("this pad slides, so that the block may grow: it takes no thrust")
    steam = _thrust(fastening, block, case, sheet)
    thrust = sheet.work("T_D", frames.thrust_with_drag, T=steam.T, D=_drag(block, case, sheet))
    taken_by = sheet.read("thrust taken by", fastening.thrust_taken_by)
    if taken_by == "friction":
        drawn, mu = frame_bolts(fastening, block, case, sheet), sheet.take("mu", fastening.friction)
        lift = _lift(fastening, block, pad, sheet, steam, drawn.bolts.n)
        pressed = {"n": drawn.bolts.n, "F": drawn.low, "P": lift}
        factor = sheet.work("N_s", frames.factor_against_slip, mu=mu, T=thrust, **pressed)
        return sheet.at_least(factor, sheet.limit("friction alone")).else_says(
            "friction holds the block at {found} times the thrust, {limit} wanted"
        )
    fitted = taken_by == "fitted bolts"
    sheared, pressure = _fitted(fastening, sheet, thrust) if fitted else _lugs(fastening, sheet, thrust)
    return sheet.worst(
        sheet.at_most(sheared, sheet.limit("shear")).else_says(
            "thrust shears bolts or lugs by {found}, {limit} allowed"
        ),
        sheet.at_most(pressure, sheet.limit("bearing")).else_says(
            "bolts or lugs bear with {found}, {limit} allowed"
        ),
        *(_without_play(fastening, sheet) if fitted else ()),
    )


def _without_play(fastening: FrameFastening, sheet: Sheet) -> Iterator[Judgement]:
    """A bolt that is loose in its hole takes no thrust until the block has slipped; one too thick is not driven in."""
    d = sheet.take("d_f", fastening.fitted_diameter)
    for hole in holes_of_bolts(fastening, sheet):
        play = sheet.work("c", diametral_clearance, D=sheet.take("D_h", hole), d=d)
        yield sheet.at_most(play, sheet.limit("play")).else_says(
            "fitted bolt has {found} of play in its hole, {limit} allowed"
        )
        yield sheet.at_least(play, sheet.limit("driven")).else_says(
            "fitted bolt has {found} of room in its hole, where {limit} is the least that can be driven"
        )


def _fitted(fastening: FrameFastening, sheet: Sheet, thrust: float) -> tuple[float, float]:
    n, d = sheet.count("n", fastening.count), sheet.take("d_f", fastening.fitted_diameter)
    area = sheet.work("A_f", round_area, d=d)
    sheared = sheet.work("tau", frames.shear_of_fitted_bolts, T=thrust, n=n, A=area)
    length = min(
        sheet.take("L_f", fastening.bearing_length),
        sheet.take("l_1", fastening.grip),
        sheet.take("l_2", fastening.frame_grip),
    )
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
    leaves_out=f"Bending of block and frame between the pads, any vertical couple, {_LEAVES_OUT}; {_DEFERS}",
    against=("loosen", "break under load"),
    against_on={"cylinder-block": ("loosen",)},
    limits=[
        LEAD,
        Limit("factor", "1.2", "ratio", COMMON_PRACTICE, "least factor against separation of the pad"),
        Limit("pad pressure", "80 MPa", "stress", COMMON_PRACTICE, "greatest mean pressure of a pad"),
        Limit(
            "share of proof", "0.8", "ratio", COMMON_PRACTICE, "greatest share of proof stress of the bolts"
        ),
    ],
    edition=8,
)
def block_couple(fastening: FrameFastening, case: LoadCase, sheet: Sheet) -> Judgement:
    """The thrust acts in both directions, so each pad is lifted by one and pressed by the other."""
    block = sheet.follow(fastening.holds)
    pad = _pad(fastening, block, sheet)
    drawn = frame_bolts(fastening, block, case, sheet)
    thrust = _thrust(fastening, block, case, sheet)
    lift = _lift(fastening, block, pad, sheet, thrust, drawn.bolts.n)
    factor = sheet.work("n_p", loads.separation_factor, F_i=drawn.low, Phi=0.0, P=lift)
    face = face_of_pad(block, sheet.read("pad", fastening.pad), pad, sheet)
    pressed = sheet.work("q", frames.greatest_pad_pressure, n=drawn.bolts.n, F=drawn.high, P=lift, A=face)
    load = sheet.work("F_b", loads.stud_load, F_i=drawn.high, Phi=1.0, P=lift)
    pull = sheet.work("sigma", stud_stress.tension, F=load, A_s=drawn.area)
    at = sheet.take("T_b", case.temperature_of(fastening))
    proof = sheet.look_up("R_p", sheet.material_of(fastening).proof_stress, at=at, thickness=drawn.bolts.d)
    limit = sheet.work("sigma_lim", share_of_strength, k=sheet.limit("share of proof"), R=proof)
    return sheet.worst(
        sheet.at_least(factor, sheet.limit("factor")).else_says(
            "pad lifts at {found} times the couple, {limit} wanted"
        ),
        sheet.at_most(pressed, sheet.limit("pad pressure")).else_says(
            "pad pressed by {found}, {limit} allowed"
        ),
        sheet.at_most(pull, limit).else_says("bolts stressed to {found}, {limit} allowed"),
    )


def lift_on_bolts(fastening: FrameFastening, case: LoadCase, sheet: Sheet) -> tuple[FrameBolts, Newtons]:
    """The bolts of a pad with their preload, and what the couple of the thrust pulls at each, either way."""
    block = sheet.follow(fastening.holds)
    pad = _pad(fastening, block, sheet)
    drawn = frame_bolts(fastening, block, case, sheet)
    return drawn, _lift(fastening, block, pad, sheet, _thrust(fastening, block, case, sheet), drawn.bolts.n)


def _lift(
    fastening: FrameFastening, block: CylinderBlock, pad: Pad, sheet: Sheet, thrust: _Thrust, n: int
) -> float:
    other = sheet.entry(block.pads, fastening.other_pad, f"pads of {block.id}")
    apart = sheet.work(
        "l", frames.between_pads, x_1=sheet.take("x_1", pad.at), x_2=sheet.take("x_2", other.at)
    )
    return sheet.work("P", frames.lift_by_couple, M=thrust.M, l=apart, n=n)


RULES = (block_slip, block_couple)
