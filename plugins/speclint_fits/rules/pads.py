"""Pads that locate the block in its frames, and pads that slide to let it grow."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.facts import room_of_pad
from speclint.handbook.fits import DRAWING_TEMPERATURE, interference, relative_growth
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import rectangle_area, sum_of_loads
from speclint.specs import CaseName, CylinderBlock, LoadCase, LocatingFace, Pad
from speclint_fits.formulae.pads import (
    bearing_with_thrust,
    far_side,
    force_to_enter,
    grown,
    room_left,
    wedged_stress,
    wedged_stress_in_slot,
)
from speclint_fits.inputs.thrust import LEAD, thrust_of

_HOT: tuple[CaseName, ...] = ("warming", "starting", "running", "drifting", "standing-hot", "cooling")


@dataclass(frozen=True)
class Seated:
    """A block, one of its pads, and the cut-out that the pad is in."""

    block: CylinderBlock
    pad: Pad
    face: LocatingFace


def _seated(face: LocatingFace, sheet: Sheet) -> Seated:
    block = sheet.follow(face.locks)
    return Seated(block, sheet.entry(block.pads, face.pad, f"pads of {block.id}"), face)


@rule(
    "fit.locating-lugs",
    title="Exactly one pad locates the block on a frame; its interference, the force to draw it in and its "
    "hot contact pressure, by wedging and thrust together, do not exceed their limits",
    on=LocatingFace,
    cases=("cold", *_HOT, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Two fixed points with a hot block between them crack the frame; with none, the block hammers its "
    "bolts.",
    leaves_out="wear and fretting of the faces, bending of pad and frame, help of bolts through the pad, "
    "drag of pads that slide",
    limits=[
        Limit(
            "least_interference", "0 mm", "length", COMMON_PRACTICE, "least interference of a locating pad"
        ),
        Limit(
            "most_interference",
            "0.05 mm",
            "length",
            COMMON_PRACTICE,
            "greatest interference of a locating pad",
        ),
        Limit(
            "proof_share",
            "0.67",
            "ratio",
            COMMON_PRACTICE,
            "allowable contact pressure as a share of proof stress",
        ),
        Limit("locating_pads", "1", "ratio", COMMON_PRACTICE, "pads of a block that locate it on one frame"),
        LEAD,
    ],
    edition=6,
)
def locating_lugs(face: LocatingFace, case: LoadCase, sheet: Sheet) -> Judgement:
    """Interference by the limits, E δ/w with growth and T/A added, 2 μ σ A to draw it in, and one pad that locates."""
    seated = _seated(face, sheet)
    locating = [
        name for name, pad in seated.block.pads.items() if sheet.read(f"pad {name} locates", pad.locates)
    ]
    alone = sheet.states(
        len(locating) == sheet.limit("locating_pads"),
        f"pads of {seated.block.id} that locate it: {', '.join(locating) or 'none'}",
    )
    if not alone.holds or not sheet.read("locates", seated.pad.locates):
        return alone
    delta = _interference(seated, sheet)
    tight = sheet.within(
        delta, sheet.limit("least_interference"), sheet.limit("most_interference")
    ).else_says("interference of the pad {found}, where the nearer limit is {limit}")
    entering = _entering(seated, sheet)
    return sheet.worst(alone, tight, entering, _crushing(seated, delta, case, sheet))


def _interference(seated: Seated, sheet: Sheet) -> float:
    """By the drawings, negative for a clearance."""
    slot = sheet.take(f"s of {seated.face.id}", seated.face.slot)
    width = sheet.take(f"w of {seated.face.id}", seated.pad.width)
    return sheet.work("δ", interference, d=width, D=slot)


def _stress(seated: Seated, delta: float, at: float, sheet: Sheet) -> float:
    """Pressure on the faces of a pad: in a rigid cut-out, unless the cut-out's stiffness is stated."""
    width = sheet.take(f"w of {seated.face.id}", seated.pad.width)
    E = sheet.look_up("E", sheet.material_of(seated.block).modulus, of=seated.block, at=at)
    if not sheet.is_stated("stiffness of the cut-out", seated.face.slot_stiffness):
        return sheet.work("σ", wedged_stress, delta=delta, w=width, E=E)
    k = sheet.take("k", seated.face.slot_stiffness)
    return sheet.work("σ", wedged_stress_in_slot, delta=delta, w=width, E=E, A=_area(seated, sheet), k=k)


def _area(seated: Seated, sheet: Sheet) -> float:
    height = sheet.take("h", seated.face.bearing_height)
    if sheet.is_stated("height of the pad", seated.pad.height):
        height = min(height, sheet.take("h_p", seated.pad.height))
    return sheet.work("A", rectangle_area, b=sheet.take("b", seated.face.bearing_depth), h=height)


def _entering(seated: Seated, sheet: Sheet) -> Judgement:
    """Force that draws in all the pads that locate this block, against the available force."""
    force = 0.0
    for face in sheet.belonging_to(seated.block, LocatingFace):
        one = _seated(face, sheet)
        if sheet.read(f"{face.id} locates", one.pad.locates):
            sigma = _stress(one, _interference(one, sheet), DRAWING_TEMPERATURE, sheet)
            mu = sheet.take("μ", face.friction)
            added = sheet.work("F_2", force_to_enter, mu=mu, sigma=sigma, A=_area(one, sheet))
            force = sheet.work("F", sum_of_loads, F_1=force, F_2=added)
    return sheet.at_most(force, sheet.take("F_j", seated.face.entering_force)).else_says(
        "pads need {found} to go in, {limit} is available"
    )


def _crushing(seated: Seated, delta: float, case: LoadCase, sheet: Sheet) -> Judgement:
    """Pressure on the faces by growth and thrust together, against the weaker of block and frame."""
    pad_named = sheet.is_stated("pad's temperature", seated.face.pad_temperature)
    measure = (
        case.temperature_named(sheet.read("temperature of the pad", seated.face.pad_temperature))
        if pad_named
        else case.temperature_of(seated.block)
    )
    T_b, T_f = sheet.take("T_b", measure), sheet.take("T_f", case.temperature_of(seated.face))
    width = sheet.take(f"w of {seated.face.id}", seated.pad.width)
    growth = _growth(width, seated, (T_b, T_f), sheet)
    wedged = _stress(seated, sheet.work("δ_h", grown, delta=delta, g=growth), T_b, sheet)
    thrust = thrust_of(seated.block, sheet.read("pad", seated.face.pad), case, sheet)
    sigma = sheet.work("σ_t", bearing_with_thrust, sigma=wedged, T=thrust, A=_area(seated, sheet))
    proofs = [
        sheet.look_up("R_p", sheet.material_of(part).proof_stress, of=part, at=at)
        for part, at in ((seated.block, T_b), (seated.face, T_f))
    ]
    share = sheet.limit("proof_share", "k")
    allowed = min(sheet.work("S", share_of_strength, k=share, R=proof) for proof in proofs)
    return sheet.at_most(sigma, allowed).else_says("pad pressed by {found} hot, {limit} allowed")


def _growth(length: float, seated: Seated, at: tuple[float, float], sheet: Sheet) -> float:
    """How much more a length of the block grows than its frame."""
    block, frame = sheet.material_of(seated.block), sheet.material_of(seated.face)
    return sheet.work(
        "g",
        relative_growth,
        L=length,
        alpha_1=sheet.look_up("α_b", block.expansion, of=seated.block, at=at[0]),
        T_1=at[0],
        alpha_2=sheet.look_up("α_f", frame.expansion, of=seated.face, at=at[1]),
        T_2=at[1],
        T_ref=DRAWING_TEMPERATURE,
    )


@rule(
    "fit.growth-room",
    title="A sliding pad of the hot block keeps clearance to the end of its cut-out in the frame",
    wrong="pad meets the end of its cut-out hot: {left} left",
    on=LocatingFace,
    edition=2,
    cases=_HOT,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="A hot block that strikes the end of its cut-out bends the frame, and the axleboxes bind.",
    leaves_out="whether the pad slides freely: bolts tightened hard on a sliding pad hold it fast",
)
def growth_room(face: LocatingFace, case: LoadCase, sheet: Sheet) -> Judgement:
    """Clearance cold less the growth of block over frame from the fixed point to the pad's far side."""
    seated = _seated(face, sheet)
    if sheet.read("locates", seated.pad.locates):
        raise sheet.not_applicable("this pad locates the block; it does not slide")
    at = (
        sheet.take("T_b", case.temperature_of(seated.block)),
        sheet.take("T_f", case.temperature_of(face)),
    )
    length = sheet.work("L", far_side, a=sheet.take("a", seated.pad.at), w=sheet.take("w", seated.pad.width))
    room = _room(seated, sheet)
    left = sheet.work("r_h", room_left, r=room, g=_growth(length, seated, at, sheet))
    return sheet.stays(left, room, strictly=True)


def _room(seated: Seated, sheet: Sheet) -> Metres:
    """The lesser of the room that the drawings leave and the room that is stated."""
    face = seated.face
    by_drawings = room_of_pad(face, seated.pad, sheet, sheet.take)
    rooms: list[float] = [] if by_drawings is None else [by_drawings.value]
    if not rooms or sheet.is_stated("room", face.room):
        rooms.append(sheet.take("r", face.room))
    return min(rooms)


RULES: tuple[Rule, ...] = (locating_lugs, growth_room)
