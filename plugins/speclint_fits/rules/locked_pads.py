"""Two locked pads on one frame: the force of the growth between them, the grip that stays, and true interference."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals
from speclint.facts import fastenings_of_pad, locks_block
from speclint.handbook.fits import DIN_7190_2001, DRAWING_TEMPERATURE, interference_after_smoothing
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import sum_of_loads
from speclint.specs import HOT_CASES, CaseName, CylinderBlock, LoadCase, LocatingFace
from speclint_fits.formulae.locked_pads import (
    grip,
    grip_left,
    grip_when_hot,
    modulus_of_plate,
    pressure_on_face,
    set_left,
    share_of_thrust,
    stress_beside_axis,
    stress_of_web,
    true_interference,
)
from speclint_fits.inputs.locked import (
    Held,
    Pair,
    held_back,
    modulus_of_block,
    pairs_of,
    section_of_frame,
)
from speclint_fits.inputs.seating import Seated, area_of_faces, form_of, interference_of, seated
from speclint_fits.inputs.thrust import LEAD, thrust_of

_DEFERS = "the local railway code and a competent person decide"


class _Place(NamedTuple):
    """A place that a force stresses: its stress, its proof stress, and the share of that which it may bear."""

    name: str
    σ: Pascals
    R: Pascals
    share: str


@rule(
    "frame.locked-force",
    edition=2,
    title="The growth that two locked pads hold back, either way, with their shares of the thrust, stresses block, "
    "frame and webs to at most 0.67 of the proof stress and their faces to the proof stress",
    wrong="growth between two locked pads stresses {item} to {found}, {limit} allowed",
    on=CylinderBlock,
    cases=(*HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A block that grows between two fixed points cracks the frame or its pads, unless they are made to give.",
    leaves_out=f"torsion of the frames, creep, and fatigue of the welds of webs; {_DEFERS}",
    against=("break under load",),
    against_on={"frame": ("break under load",)},
    limits=[
        Limit("proof_share", "0.67", "ratio", COMMON_PRACTICE, "greatest stress over the proof stress"),
        Limit(
            "bearing_share",
            "1",
            "ratio",
            COMMON_PRACTICE,
            "greatest pressure of a face over the proof stress",
        ),
        LEAD,
    ],
)
def locked_force(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """F = k Δ through block, frame, webs and faces; a place above its proof stress is a hold, and sets."""
    pairs = [(pair.frame.id, pair) for pair in pairs_of(block, sheet)]
    return sheet.each(pairs, lambda item: _borne(item[1], case, sheet))


def _borne(pair: Pair, case: LoadCase, sheet: Sheet) -> Judgement:
    held = held_back(pair, case, sheet)
    shares = _shares(pair, case, sheet)
    places = _places(pair, held, (*shares,), sheet)
    return sheet.each([(place.name, place) for place in places], lambda item: _judged(item[1], sheet))


def _judged(place: _Place, sheet: Sheet) -> Judgement:
    allowed = sheet.work("S", share_of_strength, k=sheet.limit(place.share), R=place.R)
    borne = sheet.at_most(place.σ, allowed)
    return borne if sheet.at_most(place.σ, place.R).holds else borne.graded(Grade.HOLD)


def _shares(pair: Pair, case: LoadCase, sheet: Sheet) -> tuple[Newtons, Newtons]:
    """The share of each pad in the thrust of a load case, by the stiffness of its web."""
    k_1, k_2 = (
        sheet.take(f"k_{name}", one.pad.stiffness) for name, one in zip(pair.names, pair.pads, strict=True)
    )
    P_1, P_2 = (thrust_of(pair.block, name, case, sheet) for name in pair.names)
    return (
        sheet.work(f"P_{pair.names[0]}", share_of_thrust, P=P_1, k_1=k_1, k_2=k_2),
        sheet.work(f"P_{pair.names[1]}", share_of_thrust, P=P_2, k_1=k_2, k_2=k_1),
    )


def _places(pair: Pair, held: Held, shares: tuple[Newtons, ...], sheet: Sheet) -> Iterator[_Place]:
    """Block, frame, and of each pad its web and its face."""
    block, frame, F = pair.block, pair.frame, held.F
    R_b = sheet.look_up("R_b", sheet.material_of(block).proof_stress, of=block, at=held.T_b)
    R_f = sheet.look_up("R_f", sheet.material_of(frame).proof_stress, of=frame, at=held.T_f)
    sized = {
        "A": sheet.take("A_b", block.section),
        "e": sheet.take("e_b", block.offset),
        "W": sheet.take("W_b", block.section_modulus),
    }
    yield _Place("block", sheet.work("σ_b", stress_beside_axis, F=F, **sized), R_b, "proof_share")
    sized = {
        "A": section_of_frame(frame, sheet),
        "e": sheet.take("e_f", frame.offset),
        "W": _modulus_of_frame(pair, sheet),
    }
    yield _Place("frame", sheet.work("σ_f", stress_beside_axis, F=F, **sized), R_f, "proof_share")
    for name, one, share in zip(pair.names, pair.pads, shares, strict=True):
        both = sheet.work(f"F_{name}", sum_of_loads, F_1=F, F_2=share)
        yield _Place(f"web of {name}", _web(name, one, F, both, sheet), R_b, "proof_share")
        σ = sheet.work(f"p_{name}", pressure_on_face, F=both, A=area_of_faces(one, sheet))
        yield _Place(f"face of {name}", σ, min(R_b, R_f), "bearing_share")


def _modulus_of_frame(pair: Pair, sheet: Sheet) -> float:
    frame = pair.frame
    if sheet.is_stated("section modulus of the frame", frame.section_modulus):
        return sheet.take("W_f", frame.section_modulus)
    t, h = sheet.take("t_f", frame.thickness), sheet.take("h_f", frame.depth)
    return sheet.work("W_f", modulus_of_plate, t=t, h=h)


def _web(name: str, one: Seated, F: Newtons, both: Newtons, sheet: Sheet) -> Pascals:
    """Stress at the root of a web by growth, written for the reader, and by growth and thrust together."""
    web = one.pad.web
    sizes = {
        "A": sheet.take(f"A_{name}", web.section),
        "a": sheet.take(f"a_{name}", web.arm),
        "W": sheet.take(f"W_{name}", web.section_modulus),
    }
    sheet.work(f"σ_g{name}", stress_of_web, F=F, **sizes)
    return sheet.work(f"σ_w{name}", stress_of_web, F=both, **sizes)


@rule(
    "frame.grip-kept",
    edition=3,
    limits=[LEAD],
    title="Each of two locked pads stays gripped by its cut-out under its share of the greatest thrust: cold with the "
    "least interference that the hottest case leaves, hot with that or with growth",
    on=CylinderBlock,
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES],
    why="A pad that comes loose between two hot ends hammers at every stroke, and wears until the block moves.",
    leaves_out="thrust that friction or fitted bolts take, which frame.block-slip judges; wear and fretting; "
    f"{_DEFERS}",
    against=("loosen",),
)
def grip_kept(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Interference after the greatest force once, through pad and cut-out, against half of the thrust on the pad."""
    pairs = pairs_of(block, sheet)
    duty = sheet.duty_of(block)
    if duty is None:
        raise sheet.not_assessed(f"{block.id} sees no duty", block.where)
    cases = {name: duty.cases[name] for name in duty.cases}

    def judge(item: tuple[str, Pair, int]) -> Judgement:
        _, pair, number = item
        hot = {name: held_back(pair, cases[name], sheet) for name in HOT_CASES if name in cases}
        if not hot:
            raise sheet.not_assessed("no hot load case is stated", duty.where)
        shares = [
            _shares(pair, cases[name], sheet)[number]
            for name in ("starting", "running", "water")
            if name in cases
        ]
        P = _not_taken(max(shares, default=0.0), pair.names[number], block, sheet)
        return _gripped(pair, number, hot, P, sheet)

    items = [
        (f"{pair.names[number]} on {pair.frame.id}", pair, number) for pair in pairs for number in (0, 1)
    ]
    return sheet.each(items, judge)


def _not_taken(P: Newtons, pad: str, block: CylinderBlock, sheet: Sheet) -> Newtons:
    """The share of a thrust that comes on the faces: none where friction or fitted bolts take it."""
    for fastening in fastenings_of_pad(block, pad, sheet):
        if sheet.read(f"thrust at {fastening.id} taken by", fastening.thrust_taken_by) != "lugs":
            return 0.0
    return P


def _gripped(pair: Pair, number: int, hot: dict[CaseName, Held], P: Newtons, sheet: Sheet) -> Judgement:
    one, name = pair.pads[number], pair.names[number]
    s = max(_set(pair, held, sheet) for held in hot.values())
    N = sheet.work(
        f"N_{name}",
        grip,
        δ=interference_of(one, sheet),
        s=s,
        w=sheet.take(f"w of {one.face.id}", one.pad.width),
        E=modulus_of_block(pair.block, DRAWING_TEMPERATURE, sheet),
        A=area_of_faces(one, sheet),
        k=sheet.take("k_s", one.face.slot_stiffness),
    )
    if N <= 0:
        said = (
            f"interference of pad {name} is nil, or used up by what the hottest case sets: nothing grips it"
        )
        return sheet.states(False, said, where=one.face.where)
    left = sheet.work(f"N_l{name}", grip_left, N=N, P=P)
    cold = sheet.stays(left, N).else_says("{item} loses its grip cold: {left} left")
    heated = [
        sheet.stays(sheet.work(f"N_h{name}", grip_when_hot, F=held.F, P=P, N_l=left), held.F).else_says(
            "{item} loses its grip hot: {left} left"
        )
        for held in hot.values()
    ]
    return sheet.worst(cold, *heated)


def _set(pair: Pair, held: Held, sheet: Sheet) -> Metres:
    """What block, frame, webs or faces set in a load case where growth alone stresses them above their proof stress."""
    places = _places(pair, held, (0.0, 0.0), sheet)
    return max(sheet.work("s", set_left, Δ=held.Δ, R=place.R, σ=place.σ) for place in places)


@rule(
    "frame.true-interference",
    edition=2,
    title="The least interference of a pad that locks the block, one or two on a frame, is not used up by smoothing of "
    "the roughness of both faces, nor by that with their flatness and squareness",
    wrong="flatness, squareness and smoothing use up the interference: {left} left",
    on=LocatingFace,
    grade=Grade.QUERY,
    gravest=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE, DIN_7190_2001],
    why="Faces that are rough or out of flat bear at their peaks and edges, and what was reckoned as grip is play.",
    leaves_out="waviness, and how the faces are measured; that the sizes alone give interference (fit.locating-lugs), "
    "whose greatest pressure smoothing does not ease; what growth of a hot pad presses anew",
    against=("loosen",),
    against_on={"cylinder-block": ("loosen",)},
)
def true_interference_left(face: LocatingFace, sheet: Sheet) -> Judgement:
    """δ less 0.8 of both depths of roughness, a nonconformity where that takes all, and less half of all zones."""
    pad_in = seated(face, sheet)
    if not locks_block(sheet.read("pad", face.pad), pad_in.pad, sheet):
        raise sheet.not_applicable("this pad slides, so that the block may grow")
    δ = interference_of(pad_in, sheet)
    R_p, R_s = sheet.take("R_p", pad_in.pad.roughness), sheet.take("R_s", face.roughness)
    smoothed = sheet.work("δ_w", interference_after_smoothing, delta=δ, Rz_in=R_p, Rz_out=R_s)
    alone = (
        sheet.stays(smoothed, δ)
        .else_says("smoothing of the roughness alone uses up the interference: {left} left")
        .graded(Grade.NONCONFORMITY)
    )
    left = sheet.work("δ_t", true_interference, δ=δ, z=form_of(pad_in, sheet), R_p=R_p, R_s=R_s)
    return sheet.worst(alone, sheet.stays(left, δ))


RULES: tuple[Rule, ...] = (grip_kept, locked_force, true_interference_left)
