"""How far a cylinder reaches at its ends: across, and along the engine, by its block and its covers."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, formula
from speclint.facts.cylinders import end_closed_by
from speclint.facts.faces import block_face, face_forward
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, CylinderCover


@formula("x = x_0 + k t", cites=[FIRST_PRINCIPLES])
def place_beyond(x_0: Metres, k: Ratio, t: Metres) -> Metres:
    """Place of the outside of a cover, forward of the fixed point of its block.

    x = x_0 + k t

    ``x_0`` place of the face from which its thickness counts [m]; ``k`` 1 at the front end, −1 at the back [-]; ``t``
    its thickness [m]. Returns [m], negative behind the fixed point.

    >>> round(place_beyond(x_0=-0.191, k=-1.0, t=0.045), 9)
    -0.236
    """
    return x_0 + k * t


def covers_on(block: CylinderBlock, end: str, sheet: Sheet) -> tuple[CylinderCover, ...]:
    """The covers that close one end of a cylinder of a block, by the name of that end."""
    covers = sheet.belonging_to(block, CylinderCover)
    return tuple(cover for cover in covers if end_closed_by(cover, sheet)[0] == end)


def diameter_at(block: CylinderBlock, end: str, sheet: Sheet) -> Metres:
    """The greatest diameter at one end of a cylinder, m: of the block's face, and of each cover on it.

    :raises NotAssessed: where a cover does not state its outside diameter, or nothing states how large the end is.
    """
    face, covers = block.ends[end].face_diameter, covers_on(block, end, sheet)
    sizes = [sheet.take(f"D {cover.id}", cover.outside_diameter) for cover in covers]
    if not sizes or sheet.is_stated(f"face of {end}", face):
        sizes.append(sheet.take(f"D_b {end}", face))
    return max(sizes)


def outermost(block: CylinderBlock, end: str, sheet: Sheet) -> Metres:
    """Place of what stands out farthest at one end of a cylinder, forward of the block's fixed point, m.

    That is a cover, its whole thickness from its inner face or its flange from the face of the block, or either face.

    :raises NotAssessed: where the end states no side or no face, or a cover no thickness.
    """
    here = block.ends[end]
    k = 1.0 if sheet.read(f"side of {end}", here.side) == "front" else -1.0
    inner, outer = face_forward(block, here, sheet), block_face(block, here, sheet)
    places = [inner] if outer is None else [inner, outer]
    for cover in covers_on(block, end, sheet):
        t = sheet.take(f"t {cover.id}", cover.thickness)
        places.append(sheet.work(f"x {cover.id}", place_beyond, x_0=inner, k=k, t=t))
        if outer is not None:
            flanged = sheet.is_stated(f"flange of {cover.id}", cover.flange_thickness)
            t_f = sheet.take(f"t_f {cover.id}", cover.flange_thickness if flanged else cover.thickness)
            places.append(sheet.work(f"x_f {cover.id}", place_beyond, x_0=outer, k=k, t=t_f))
    return max(places) if k > 0 else min(places)
