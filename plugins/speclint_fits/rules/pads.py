"""Pads that locate the block in its frames, and pads that slide to let it grow."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.facts import locks_block, room_of_pad
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import sum_of_loads
from speclint.specs import HOT_CASES, LoadCase, LocatingFace
from speclint_fits.formulae.pads import (
    bearing_with_thrust,
    far_side,
    force_to_enter,
    grown,
    room_left,
)
from speclint_fits.inputs.seating import (
    Seated,
    area_of_faces,
    growth_of,
    interference_of,
    seated,
    stress_of,
    with_form,
)
from speclint_fits.inputs.thrust import LEAD, thrust_of


@rule(
    "fit.locating-lugs",
    title="The interference of a pad that locks the block on a frame, the force to draw it in and its hot contact "
    "pressure, by wedging and thrust together, do not exceed their limits",
    on=LocatingFace,
    cases=("cold", *HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Two fixed points with a hot block between them crack the frame; with none, the block hammers its "
    "bolts.",
    leaves_out="how many pads lock the block (frame.scheme-of-pads), wear and fretting of the faces, bending of pad "
    "and frame, help of bolts through the pad, drag of pads that slide",
    against=("break under load",),
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
        Limit(
            "friction",
            "0.05",
            "ratio",
            COMMON_PRACTICE,
            "least friction of steel faces that are drawn together, with any paste between them",
        ),
        LEAD,
    ],
    edition=8,
)
def locating_lugs(face: LocatingFace, case: LoadCase, sheet: Sheet) -> Judgement:
    """Interference by the limits, E δ/w with growth and T/A added, and 2 μ σ A to draw it in; form at its zones.

    T is of the greatest pressure on the last bores of the cylinders that push together, and of the block in buffing.
    With water in a cylinder it is no less than that at which the relief valves of an end blow with their full lift.
    """
    pad_in = seated(face, sheet)
    if not locks_block(sheet.read("pad", face.pad), pad_in.pad, sheet):
        raise sheet.not_applicable("this pad slides, so that the block may grow")
    delta = interference_of(pad_in, sheet)
    tight = sheet.within(
        delta, sheet.limit("least_interference"), sheet.limit("most_interference")
    ).else_says("interference of the pad {found}, where the nearer limit is {limit}")
    entering = _entering(pad_in, sheet)
    return sheet.worst(tight, entering, _crushing(pad_in, with_form(delta, pad_in, sheet), case, sheet))


def _entering(pad_in: Seated, sheet: Sheet) -> Judgement:
    """Force that draws in all the pads that locate this block, against the available force.

    A friction less than that of any paste is told, and counted at the least.
    """
    force, least = 0.0, sheet.limit("friction", "μ_0")
    told: list[Judgement] = []
    for face in sheet.belonging_to(pad_in.block, LocatingFace):
        one = seated(face, sheet)
        if locks_block(sheet.read(f"pad of {face.id}", face.pad), one.pad, sheet):
            sigma = stress_of(
                one, with_form(interference_of(one, sheet), one, sheet), DRAWING_TEMPERATURE, sheet
            )
            mu = sheet.take("μ", face.friction)
            known = sheet.at_least(mu, least).else_says(
                "friction of the pads is said to be {found}, {limit} is the least with any paste"
            )
            told += [] if known.holds else [known]
            added = sheet.work(
                "F_2", force_to_enter, mu=max(mu, least), sigma=sigma, A=area_of_faces(one, sheet)
            )
            force = sheet.work("F", sum_of_loads, F_1=force, F_2=added)
    drawn = sheet.at_most(force, sheet.take("F_j", pad_in.face.entering_force)).else_says(
        "pads need {found} to go in, {limit} is available"
    )
    return sheet.worst(*told, drawn)


def _crushing(pad_in: Seated, delta: float, case: LoadCase, sheet: Sheet) -> Judgement:
    """Pressure on the faces by growth and thrust together, against the weaker of block and frame."""
    pad_named = sheet.is_stated("pad's temperature", pad_in.face.pad_temperature)
    measure = (
        case.temperature_named(sheet.read("temperature of the pad", pad_in.face.pad_temperature))
        if pad_named
        else case.temperature_of(pad_in.block)
    )
    T_b, T_f = sheet.take("T_b", measure), sheet.take("T_f", case.temperature_of(pad_in.face))
    width = sheet.take(f"w of {pad_in.face.id}", pad_in.pad.width)
    growth = growth_of(width, pad_in, (T_b, T_f), sheet)
    wedged = stress_of(pad_in, sheet.work("δ_h", grown, delta=delta, g=growth), T_b, sheet)
    thrust = thrust_of(pad_in.block, sheet.read("pad", pad_in.face.pad), case, sheet)
    sigma = sheet.work("σ_t", bearing_with_thrust, sigma=wedged, T=thrust, A=area_of_faces(pad_in, sheet))
    proofs = [
        sheet.look_up("R_p", sheet.material_of(part).proof_stress, of=part, at=at)
        for part, at in ((pad_in.block, T_b), (pad_in.face, T_f))
    ]
    share = sheet.limit("proof_share", "k")
    allowed = min(sheet.work("S", share_of_strength, k=share, R=proof) for proof in proofs)
    return sheet.at_most(sigma, allowed).else_says("pad pressed by {found} hot, {limit} allowed")


@rule(
    "fit.growth-room",
    title="A sliding pad of the hot block keeps clearance to the end of its cut-out in the frame",
    wrong="pad meets the end of its cut-out hot: {left} left",
    on=LocatingFace,
    edition=3,
    cases=(*HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="A hot block that strikes the end of its cut-out bends the frame, and the axleboxes bind.",
    leaves_out="whether the pad slides freely: bolts tightened hard on a sliding pad hold it fast",
    against=("foul",),
    against_on={"cylinder-block": ("foul",)},
)
def growth_room(face: LocatingFace, case: LoadCase, sheet: Sheet) -> Judgement:
    """Clearance cold less the growth of block over frame from the fixed point to the pad's far side."""
    pad_in = seated(face, sheet)
    if locks_block(sheet.read("pad", face.pad), pad_in.pad, sheet):
        raise sheet.not_applicable("this pad locates the block; it does not slide")
    at = (
        sheet.take("T_b", case.temperature_of(pad_in.block)),
        sheet.take("T_f", case.temperature_of(face)),
    )
    length = sheet.work("L", far_side, a=sheet.take("a", pad_in.pad.at), w=sheet.take("w", pad_in.pad.width))
    room = _room(pad_in, sheet)
    left = sheet.work("r_h", room_left, r=room, g=growth_of(length, pad_in, at, sheet))
    return sheet.stays(left, room, strictly=True)


def _room(pad_in: Seated, sheet: Sheet) -> Metres:
    """The lesser of the room that the drawings leave and the room that is stated."""
    face = pad_in.face
    by_drawings = room_of_pad(face, pad_in.pad, sheet, sheet.take)
    rooms: list[float] = [] if by_drawings is None else [by_drawings.value]
    if not rooms or sheet.is_stated("room", face.room):
        rooms.append(sheet.take("r", face.room))
    return min(rooms)


RULES: tuple[Rule, ...] = (locating_lugs, growth_room)
