"""What the part that a joint holds says of the joint: the pressure behind it, and how thick its flange is."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.chamber_covers import pressure_under_cover
from speclint.facts.cylinders import bore_closed, end_closed_by, liner_under
from speclint.facts.dividing_walls import weldment_of
from speclint.facts.pipe_movement import openings_of
from speclint.facts.pipes import steam_carried
from speclint.facts.taking import Take
from speclint.handbook.materials import Material
from speclint.handbook.members import contact
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Component, NotStated, by_word

if TYPE_CHECKING:
    from speclint.specs import (
        BoltedJoint,
        ChamberCover,
        CylinderCover,
        CylinderEnd,
        CylinderLiner,
        LensJoint,
        PipeFlange,
        Plate,
    )

#: Which pressure a joint holds whose pipe carries that steam.
_OF_STEAM = {"live steam": "live", "exhaust steam": "exhaust"}


def pressure_by_part_held(joint: BoltedJoint, sheet: Sheet) -> Worked | None:
    """Which pressure stands behind the part that a joint holds: "cylinder", "live" or "exhaust".

    None where the part does not say: one that neither closes a cylinder nor belongs to a pipe.
    """
    if not sheet.is_stated("part held", joint.holds):
        return None
    held = sheet.follow(joint.holds)
    if isinstance(held, by_word.CylinderCover | by_word.StuffingBox | by_word.Gland):
        return worked("cylinder", joint.holds)
    if isinstance(held, by_word.ChamberCover):
        return pressure_under_cover(held, sheet)
    if isinstance(held, by_word.LensJoint | by_word.PipeFlange):
        held = sheet.follow(held.of)
    if isinstance(held, by_word.SteamPipe):
        carried = steam_carried(held, sheet)
        return Worked(_OF_STEAM[carried.value], carried.places)
    return None


def pressure_held(joint: BoltedJoint, sheet: Sheet) -> str:
    """Which pressure a joint holds: by the part that it holds, else as it is stated."""
    by_part = pressure_by_part_held(joint, sheet)
    return sheet.read("pressure", joint.pressure) if by_part is None else str(by_part.value)


def pressure_reach(joint: BoltedJoint, sheet: Sheet) -> Measure | NotStated:
    """The circle to which steam reaches in a joint without a gasket.

    Of a lens ring that on which ring and seat touch; of a ground face its outside, since steam may creep that far.
    """
    if sheet.read("seal", joint.seal) == "lens ring":
        held = sheet.follow(joint.holds)
        return held.contact_diameter if isinstance(held, by_word.LensJoint) else joint.pressure_circle
    return joint.ground_face.outside


def openings(joint: BoltedJoint, sheet: Sheet) -> Iterator[Measure]:
    """The openings that the seal of a joint surrounds, as far as they are drawn.

    Under a cover: the bore of the liner, new and at its last boring, and the recess of the collar at that end; where
    there is no liner the bore of the block. At a flange: its bore, and the opening of the block under it. Under the
    cover of a chamber: its bore, and the opening of the block through which the valve goes in.
    """
    held = sheet.follow(joint.holds)
    if isinstance(held, by_word.CylinderCover):
        found = tuple(_under(held, sheet))
        yield from found or _stated(sheet, "bore", bore_closed(held, sheet))
    elif isinstance(held, by_word.PipeFlange | by_word.ChamberCover):
        yield from _stated(sheet, f"bore of {held.id}", held.bore)
        yield from _in_block(joint, held, sheet)


def _in_block(joint: BoltedJoint, held: PipeFlange | ChamberCover, sheet: Sheet) -> Iterator[Measure]:
    """The opening of the block under a flange or under the cover of a chamber."""
    opening: Measure | NotStated | None = None
    if isinstance(held, by_word.PipeFlange):
        opening, _ = _round_opening(joint, sheet)
    elif sheet.is_stated(f"block under {held.id}", held.closes) and sheet.is_stated(
        f"seat bore under {held.id}", held.seat_bore
    ):
        block = sheet.follow(held.closes)
        opening = sheet.entry(block.seat_bores, held.seat_bore, f"seat bores of {block.id}").opening
    if opening is not None:
        yield from _stated(sheet, f"opening of the block under {held.id}", opening)


def _under(cover: CylinderCover, sheet: Sheet) -> Iterator[Measure]:
    liner = liner_under(cover, sheet)
    if liner is None:
        return
    yield from _stated(sheet, f"bore of {liner.id}", liner.bore)
    yield from _stated(sheet, f"last bore of {liner.id}", liner.last_bore)
    _, end = end_closed_by(cover, sheet)
    if _is_at_collar(liner, end, sheet):
        bore = sheet.entry(sheet.follow(cover.closes).bores, liner.in_bore, "the bores of the block")
        yield from _stated(sheet, "recess of the collar", bore.recess_diameter)


def _stated(sheet: Sheet, name: str, value: Measure | NotStated) -> Iterator[Measure]:
    if sheet.is_stated(name, value) and isinstance(value, Measure):
        yield value


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
    around = () if opening is None else tuple(_stated(sheet, "opening of the block", opening))
    if isinstance(held, by_word.ChamberCover):
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
    if isinstance(held, by_word.CylinderCover):
        if not sheet.follow(held.closes).ends:
            return None, None
        _, end = end_closed_by(held, sheet)
        return _opening_of_block(held, end, sheet), end.face_diameter
    if isinstance(held, by_word.ChamberCover):
        return held.bore, None
    if isinstance(held, by_word.Gland) and sheet.is_stated("screwed into", joint.screwed_into):
        under = sheet.follow(joint.screwed_into)
        return (under.central_hole, None) if isinstance(under, by_word.CylinderCover) else (None, None)
    if isinstance(held, by_word.PipeFlange | by_word.LensJoint) and sheet.is_stated(
        "screwed into", joint.screwed_into
    ):
        pipe, under = sheet.follow(held.of), sheet.follow(joint.screwed_into)
        ends = openings_of(pipe, sheet) if isinstance(pipe, by_word.SteamPipe) else ()
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


def flange_held(joint: BoltedJoint, sheet: Sheet) -> Measure | NotStated | None:
    """The thickness of flange that the nuts of a joint clamp; None where the part held states none of its own."""
    return _flange(sheet.follow(joint.holds))


def flange_bolted_to(joint: BoltedJoint, sheet: Sheet) -> Measure | NotStated | None:
    """The thickness of flange under the far nuts, or the heads, of bolts; None where that part states none."""
    return _flange(sheet.follow(joint.bolted_to))


def _flange(part: Component) -> Measure | NotStated | None:
    if isinstance(part, by_word.CylinderCover | by_word.ChamberCover | by_word.Gland | by_word.LensJoint):
        return part.flange_thickness
    return part.thickness if isinstance(part, by_word.PipeFlange) else None


def circle_of_studs(joint: BoltedJoint, sheet: Sheet) -> float:
    """Diameter of the circle of the studs, m: the greater of those that the joint and the cover it holds state."""
    held, stated = sheet.follow(joint.holds), sheet.take("D_b", joint.circle)
    if isinstance(held, by_word.CylinderCover | by_word.ChamberCover) and sheet.is_stated(
        f"circle of {held.id}", held.circle
    ):
        return max(stated, sheet.take(f"D_b of {held.id}", held.circle))
    return stated


def metal_tapped(joint: BoltedJoint, sheet: Sheet) -> Material:
    """The metal in which the tapped holes of a joint stand: of the plate that they name, else of the part."""
    part = sheet.follow(joint.screwed_into)
    plate = _plate_tapped(joint, part, sheet)
    if plate is not None and sheet.is_stated("material of the plate", plate.material):
        return sheet.material_named("the plate", plate.material)
    return sheet.material_of(part)


def _plate_tapped(joint: BoltedJoint, part: Component, sheet: Sheet) -> Plate | None:
    """The plate of the block's weldment in which the tapped holes of a joint stand; None where they name none."""
    if not (isinstance(part, by_word.CylinderBlock) and sheet.is_stated("plate", joint.tapped.plate)):
        return None
    weldment = weldment_of(part, sheet)
    if weldment is None:
        raise sheet.not_assessed(f"no weldment is stated that makes {part.id}", joint.tapped.plate.where)
    return sheet.entry(weldment.plates, joint.tapped.plate, f"plates of {weldment.id}")


def metal_under_hole(joint: BoltedJoint, sheet: Sheet) -> Measure | None:
    """The thickness of metal in which the tapped holes of a joint stand.

    Of the plate of the block's weldment that they name, of a cover inside its gasket, or of a flange; None where the
    part does not tell.
    """
    if not sheet.is_stated("part with the tapped holes", joint.screwed_into):
        return None
    part = sheet.follow(joint.screwed_into)
    plate = _plate_tapped(joint, part, sheet)
    if plate is not None:
        return next(_stated(sheet, "thickness of the plate", plate.thickness), None)
    if isinstance(part, by_word.CylinderCover | by_word.ChamberCover | by_word.PipeFlange):
        return next(_stated(sheet, f"thickness of {part.id}", part.thickness), None)
    return None


def grip_held(joint: BoltedJoint, sheet: Sheet) -> float:
    """Clamped thickness of the part held, m: its flange, and half of the gap at a lens ring; else as stated."""
    return _grip("l_1", flange_held(joint, sheet), joint.grip, joint, sheet)


def grip_bolted_to(joint: BoltedJoint, sheet: Sheet) -> float:
    """Clamped thickness of the part under the far nuts or heads, m: as :func:`grip_held`."""
    return _grip("l_2", flange_bolted_to(joint, sheet), joint.far_grip, joint, sheet)


def _grip(
    symbol: str,
    flange: Measure | NotStated | None,
    stated: Measure | NotStated,
    joint: BoltedJoint,
    sheet: Sheet,
) -> float:
    if flange is None or not sheet.is_stated(f"flange at {symbol}", flange):
        return sheet.take(symbol, stated)
    held = sheet.follow(joint.holds)
    if not isinstance(held, by_word.LensJoint):
        return sheet.take(symbol, flange)
    h = sheet.take(f"h_{symbol[-1]}", flange)
    return sheet.work(symbol, grip_at_ring, h=h, g=_half_gap(held, sheet, sheet.take))


def _half_gap(lens: LensJoint, sheet: Sheet, take: Take) -> float:
    circle = {
        "t": take("t", lens.thickness),
        "D_m": take("D_m", lens.seat_mouth),
        "D": take("D", lens.contact_diameter),
    }
    if sheet.read("seat", lens.seat) == "cone":
        return sheet.work("g", contact.half_gap_at_ring, **circle, phi=take("phi", lens.seat_angle))
    return sheet.work("g", contact.half_gap_at_hollow, **circle, R=take("R_s", lens.seat_radius))


def grip_drawn(joint: BoltedJoint, flange: Measure | NotStated, sheet: Sheet) -> Measure | NotStated | Worked:
    """The clamped thickness that a flange gives, as the drawings aim at it: for an agreement."""
    held = sheet.follow(joint.holds)
    if not isinstance(held, by_word.LensJoint):
        return flange
    h = sheet.take_nominal("h", flange)
    grip = sheet.work("l", grip_at_ring, h=h, g=_half_gap(held, sheet, sheet.take_nominal))
    return worked(grip, flange, held.thickness, held.seat_mouth, held.contact_diameter)


@formula("l = h + g", cites=[FIRST_PRINCIPLES])
def grip_at_ring(h: Metres, g: Metres) -> Metres:
    """Grip of the studs of a lens joint on one side of the ring.

    h: thickness of the flange, m. g: half of the gap that the ring leaves, m. Returns m.

    >>> grip_at_ring(h=0.045, g=0.020)
    0.065
    """
    return h + g


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
