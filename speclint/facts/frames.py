"""What the block says of its seat on the frame: the face of each pad, and the bores whose thrust a frame takes."""

from __future__ import annotations

from collections.abc import Callable

from speclint.equations import FIRST_PRINCIPLES, Ratio, SquareMetres, formula
from speclint.handbook.members import rectangle_area, round_area
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderBlock, FrameFastening, NotStated, Pad

_Take = Callable[[str, Measure | NotStated], float]


@formula("A = A_0 − n A_h", cites=[FIRST_PRINCIPLES])
def less_holes(A_0: SquareMetres, n: Ratio, A_h: SquareMetres) -> SquareMetres:
    """Face that is left between holes.

    A_0: face without holes, m². n: number of holes. A_h: area of one, m². Returns m², below 0 where the holes take
    more than there is.

    >>> round(less_holes(A_0=0.066, n=12, A_h=0.001), 6)
    0.054
    """
    return A_0 - n * A_h


def fastenings_of_pad(block: CylinderBlock, pad: str, sheet: Sheet) -> tuple[FrameFastening, ...]:
    """The fastenings that clamp a pad of a block to its frame."""
    return tuple(
        one
        for one in sheet.belonging_to(block, FrameFastening)
        if sheet.is_stated(f"pad of {one.id}", one.pad) and sheet.read(f"pad of {one.id}", one.pad) == pad
    )


def face_by_sides(block: CylinderBlock, name: str, sheet: Sheet, take: _Take) -> Worked | None:
    """The face of a pad by its sides, less the holes of its bolts, m²; None where a side is not stated."""
    pad = block.pads[name]
    if not (
        sheet.is_stated(f"width of {name}", pad.width) and sheet.is_stated(f"height of {name}", pad.height)
    ):
        return None
    face = sheet.work("A_0", rectangle_area, b=take("b", pad.width), h=take("h", pad.height))
    found = worked(face, pad.width, pad.height)
    for one in fastenings_of_pad(block, name, sheet):
        if sheet.is_stated(f"count of {one.id}", one.count) and sheet.is_stated(
            f"hole of {one.id}", one.hole
        ):
            n = sheet.count("n_h", one.count)
            hole = sheet.work("A_h", round_area, d=take("d_h", one.hole))
            face = sheet.work("A_0", less_holes, A_0=face, n=n, A_h=hole)
            found = Worked(face, (*found.places, *worked(face, one.count, one.hole).places))
    return found


def face_of_pad(block: CylinderBlock, name: str, pad: Pad, sheet: Sheet) -> float:
    """The face of a pad that bears, m²: the less of the stated one and of what sides and holes leave."""
    by_sides = face_by_sides(block, name, sheet, sheet.take)
    faces: list[float] = [] if by_sides is None else [by_sides.value]
    if not faces or sheet.is_stated("area of the pad", pad.area):
        faces.append(sheet.take("A", pad.area))
    return min(faces)


def bores_on_frame(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> tuple[str, ...]:
    """The bores of a block whose thrust comes on one frame: all that no pad on another frame takes.

    Pads that name each other, as pad and other pad, are on one frame. A pad on another frame takes a bore where it
    locates the block and its fastening names that bore. How two frames share a bore is not drawn: each takes all of it.
    """
    own = sheet.read("bore", fastening.bore) if sheet.is_stated("bore", fastening.bore) else None
    taken = {
        sheet.read(f"bore of {one.id}", one.bore)
        for one in on_other_frames(fastening, block, sheet)
        if sheet.is_stated(f"bore of {one.id}", one.bore)
    }
    return tuple(bore for bore in block.bores if bore == own or bore not in taken)


def on_other_frames(
    fastening: FrameFastening, block: CylinderBlock, sheet: Sheet
) -> tuple[FrameFastening, ...]:
    """The fastenings of pads that locate a block on another frame than that of one fastening."""
    here = {
        sheet.read(f"pad {name}", stated)
        for name, stated in (("here", fastening.pad), ("at the far end", fastening.other_pad))
        if sheet.is_stated(f"pad {name}", stated)
    }
    return tuple(
        one
        for name, pad in block.pads.items()
        if name not in here
        and sheet.is_stated(f"pad {name} locates", pad.locates)
        and sheet.read(f"pad {name} locates", pad.locates)
        for one in fastenings_of_pad(block, name, sheet)
    )
