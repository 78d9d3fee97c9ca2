"""The openings beside a joint, and the metal left between them and its holes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.cylinders import bore_closed, end_closed_by, liner_under
from speclint.facts.pipe_movement import openings_of
from speclint.facts.taking import Take, as_stated
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    CylinderCover,
    CylinderLiner,
    Gland,
    LensJoint,
    NotStated,
    PipeFlange,
    SteamPipe,
)

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd


def openings(joint: BoltedJoint, sheet: Sheet) -> Iterator[Measure]:
    """The openings that the seal of a joint surrounds, as far as they are drawn.

    Under a cover: the bore of the liner, new and at its last boring, and the recess of the collar at that end; where
    there is no liner the bore of the block. At a flange: its bore, and the opening of the block under it. Under the
    cover of a chamber: its bore, and the opening of the block through which the valve goes in.
    """
    held = sheet.follow(joint.holds)
    if isinstance(held, CylinderCover):
        found = tuple(_under(held, sheet))
        yield from found or as_stated(sheet, "bore", bore_closed(held, sheet))
    elif isinstance(held, PipeFlange | ChamberCover):
        yield from as_stated(sheet, f"bore of {held.id}", held.bore)
        yield from _in_block(joint, held, sheet)


def _in_block(joint: BoltedJoint, held: PipeFlange | ChamberCover, sheet: Sheet) -> Iterator[Measure]:
    """The opening of the block under a flange or under the cover of a chamber."""
    opening: Measure | NotStated | None = None
    if isinstance(held, PipeFlange):
        opening, _ = _round_opening(joint, sheet)
    elif sheet.is_stated(f"block under {held.id}", held.closes) and sheet.is_stated(
        f"seat bore under {held.id}", held.seat_bore
    ):
        block = sheet.follow(held.closes)
        opening = sheet.entry(block.seat_bores, held.seat_bore, f"seat bores of {block.id}").opening
    if opening is not None:
        yield from as_stated(sheet, f"opening of the block under {held.id}", opening)


def _under(cover: CylinderCover, sheet: Sheet) -> Iterator[Measure]:
    liner = liner_under(cover, sheet)
    if liner is None:
        return
    yield from as_stated(sheet, f"bore of {liner.id}", liner.bore)
    yield from as_stated(sheet, f"last bore of {liner.id}", liner.last_bore)
    _, end = end_closed_by(cover, sheet)
    if _is_at_collar(liner, end, sheet):
        bore = sheet.entry(sheet.follow(cover.closes).bores, liner.in_bore, "the bores of the block")
        yield from as_stated(sheet, "recess of the collar", bore.recess_diameter)


def edges_left(joint: BoltedJoint, sheet: Sheet, take: Take) -> dict[str, Worked]:
    """From the centre of a tapped hole to the edges of the block's face, m, as far as they are drawn.

    "inside" to the opening that the studs stand round: of a cylinder the bore, or the recess of the collar at its end;
    the bore under the cover of a chamber, or the opening of the block there, whichever is wider; the opening to which a
    pipe is joined; the hole of a cover round which the
    studs of a gland stand. "outside" to the edge of the face.
    """
    if not sheet.is_stated("circle", joint.circle):
        return {}
    opening, face = _round_opening(joint, sheet)
    found, D, held = {}, take("D_t", joint.circle), sheet.follow(joint.holds)
    around = () if opening is None else tuple(as_stated(sheet, "opening of the block", opening))
    if isinstance(held, ChamberCover):
        around += tuple(_in_block(joint, held, sheet))
    if around:
        edges = [sheet.work("e_i", edge_beside_opening, D_t=D, D=take("D_i", one)) for one in around]
        found["inside"] = worked(min(edges), joint.circle, *around)
    if isinstance(face, Measure) and sheet.is_stated("face of the block", face):
        e = sheet.work("e_o", edge_within_face, D=take("D_f", face), D_t=D)
        found["outside"] = worked(e, joint.circle, face)
    return found


def _round_opening(
    joint: BoltedJoint, sheet: Sheet
) -> tuple[Measure | NotStated | None, Measure | NotStated | None]:
    """The opening that the studs of a joint stand round, and the face of the block round it."""
    held = sheet.follow(joint.holds)
    if isinstance(held, CylinderCover):
        if not sheet.follow(held.closes).ends:
            return None, None
        _, end = end_closed_by(held, sheet)
        return _opening_of_block(held, end, sheet), end.face_diameter
    if isinstance(held, ChamberCover):
        return held.bore, None
    if isinstance(held, Gland) and sheet.is_stated("screwed into", joint.screwed_into):
        under = sheet.follow(joint.screwed_into)
        return (under.central_hole, None) if isinstance(under, CylinderCover) else (None, None)
    if isinstance(held, PipeFlange | LensJoint) and sheet.is_stated("screwed into", joint.screwed_into):
        pipe, under = sheet.follow(held.of), sheet.follow(joint.screwed_into)
        ends = openings_of(pipe, sheet) if isinstance(pipe, SteamPipe) else ()
        there = [opening for _, block, opening in ends if block.id == under.id]
        if len(there) == 1:
            return there[0].bore, there[0].face
    return None, None


def _opening_of_block(cover: CylinderCover, end: CylinderEnd, sheet: Sheet) -> Measure | None:
    """The opening of the block's face at an end: the recess of the collar there, else the bore, of its last size.

    None where the specs do not tell which of them it is.
    """
    block, liner = sheet.follow(cover.closes), liner_under(cover, sheet)
    if not sheet.is_stated("bore of the end", end.of_bore):
        return None
    bore = sheet.entry(block.bores, end.of_bore, f"the bores of {block.id}")
    sizes: tuple[Measure | NotStated, ...] = (bore.last_bore, bore.diameter)
    if liner is not None:
        at_collar = _is_at_collar(liner, end, sheet)
        if at_collar is None:
            return None
        sizes = (bore.recess_diameter if at_collar else bore.diameter,)
    stated = (one for one in sizes if sheet.is_stated("opening of the block", one))
    return next((one for one in stated if isinstance(one, Measure)), None)


def _is_at_collar(liner: CylinderLiner, end: CylinderEnd, sheet: Sheet) -> bool | None:
    """Whether the collar of a liner is at an end of its bore; None where one of them does not say."""
    if not (sheet.is_stated("end of the collar", liner.collar.end) and sheet.is_stated("side", end.side)):
        return None
    return sheet.read("end of the collar", liner.collar.end) == sheet.read("side", end.side)


def edge_of_hole(joint: BoltedJoint, sheet: Sheet) -> float:
    """From the centre of a tapped hole to the nearest edge, m: the least of what is stated and what is drawn.

    Unless both edges of the face are drawn the distance must be stated.
    """
    left = edges_left(joint, sheet, sheet.take)
    edges: list[float] = [one.value for one in left.values()]
    if len(left) < 2 or sheet.is_stated("edge distance", joint.edge_distance):
        edges.append(sheet.take("e", joint.edge_distance))
    return min(edges)


@formula("e_i = (D_t − D)/2", cites=[FIRST_PRINCIPLES])
def edge_beside_opening(D_t: Metres, D: Metres) -> Metres:
    """From the centre of a hole on a circle to the edge of the opening inside that circle.

    ``D_t`` circle of the holes, ``D`` the opening [m]. Returns [m], below 0 where the hole breaks into it.

    >>> round(edge_beside_opening(D_t=0.740, D=0.634), 6)
    0.053
    """
    return (D_t - D) / 2


@formula("e_o = (D − D_t)/2", cites=[FIRST_PRINCIPLES])
def edge_within_face(D: Metres, D_t: Metres) -> Metres:
    """From the centre of a hole on a circle to the outer edge of the face.

    ``D`` outside of the face, ``D_t`` circle of the holes [m]. Returns [m], below 0 where the hole lies beyond it.

    >>> round(edge_within_face(D=0.804, D_t=0.740), 6)
    0.032
    """
    return (D - D_t) / 2
