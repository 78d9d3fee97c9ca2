"""What the block says of its seat on the frame: the face of each pad, and the thrust and mass that a frame takes."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Kilograms, Ratio, SquareMetres, formula
from speclint.facts.pads import locks_block, says_what_it_takes
from speclint.facts.taking import Take
from speclint.facts.weights import mass_of_part, mass_together, part_weighed, parts_named
from speclint.handbook.members import rectangle_area, round_area
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    ChamberCover,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    FrameFastening,
    LiftingPlan,
    LocatingFace,
    Weldment,
)

if TYPE_CHECKING:
    from speclint.specs import Pad


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
        if sheet.said(f"pad of {one.id}", one.pad) == pad
    )


def face_by_sides(block: CylinderBlock, name: str, sheet: Sheet, take: Take) -> Worked | None:
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
    own = sheet.said("bore", fastening.bore)
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
        if name not in here and says_what_it_takes(name, pad, sheet) and locks_block(name, pad, sheet)
        for one in fastenings_of_pad(block, name, sheet)
    )


def frames_of_pads(block: CylinderBlock, sheet: Sheet) -> list[tuple[str, ...]]:
    """The pads of a block by the frames they are on, each group in the order of the spec.

    Pads that a fastening names together, as pad and other pad, are on one frame; so are all pads where no fastening
    says otherwise, since a block is on one frame unless it is drawn on two.
    """
    groups: list[set[str]] = []
    for one in sheet.belonging_to(block, FrameFastening):
        named = {
            sheet.read(f"{name} of {one.id}", stated)
            for name, stated in (("pad", one.pad), ("other pad", one.other_pad))
            if sheet.is_stated(f"{name} of {one.id}", stated)
        }
        if len(named) == 2:
            apart = [group for group in groups if not group & named]
            groups = [*apart, named.union(*(group for group in groups if group & named))]
    joined = set().union(*groups)
    loose = {name for name in block.pads if name not in joined}
    if loose:
        groups = [loose | joined] if len(groups) < 2 else [*groups, *({name} for name in loose)]
    ordered = [tuple(name for name in block.pads if name in group) for group in groups]
    return sorted((one for one in ordered if one), key=lambda one: list(block.pads).index(one[0]))


def pads_by_frame(block: CylinderBlock, sheet: Sheet) -> list[list[str]]:
    """The names of the pads of a block, frame by frame.

    By the frames that their cut-outs lead to; where one leads to none, by the fastenings that name two pads together.
    """
    seated: dict[str, str] = {}
    for face in sheet.belonging_to(block, LocatingFace):
        if sheet.is_stated(f"frame of {face.id}", face.in_frame):
            seated[sheet.read(f"pad of {face.id}", face.pad)] = sheet.follow(face.in_frame).id
    if any(name not in seated for name in block.pads):
        return [list(names) for names in frames_of_pads(block, sheet)]
    frames: dict[str, list[str]] = {}
    for name in block.pads:
        frames.setdefault(seated[name], []).append(name)
    return list(frames.values())


def face_of_cut_out(block: CylinderBlock, name: str, sheet: Sheet) -> LocatingFace:
    """The cut-out in which a pad of a block sits.

    :raises NotAssessed: where none names it.
    """
    for face in sheet.belonging_to(block, LocatingFace):
        if sheet.read(f"pad of {face.id}", face.pad) == name:
            return face
    raise sheet.not_assessed(f"no locating face says that it takes pad {name}", block.pads[name].where)


def mass_drawn(block: CylinderBlock, sheet: Sheet, take: Take) -> Worked | None:
    """The mass of a block with all that its frames carry, as far as it is drawn, kg; None where nothing of it is.

    The weights of its lifting plans, and its weldment, liners and covers. A weight that names no part may be some of
    those that no weight names: of the two sums the greater counts.
    """
    plans = sheet.belonging_to(block, LiftingPlan)
    named = set[str]().union(*(parts_named(plan, sheet) for plan in plans))
    weights = [one for plan in plans for one in plan.weights.values()]
    by_part = [part_weighed(weight, sheet, take) for weight in weights]
    unnamed = [
        worked(take("m_1", weight.mass), weight.mass)
        for weight, part in zip(weights, by_part, strict=True)
        if part is None and sheet.is_stated("mass", weight.mass)
    ]
    beside = [
        mass_of_part(part, sheet, take)
        for kind in (Weldment, CylinderLiner, CylinderCover, ChamberCover)
        for part in sheet.belonging_to(block, kind)
        if part.id not in named
    ]
    known, loose, drawn = (
        _together([one for one in found if one is not None], sheet) for found in (by_part, unnamed, beside)
    )
    greater = Worked(max(loose.value, drawn.value), (*loose.places, *drawn.places))
    total = _together([known, greater], sheet)
    return total if total.places else None


def weldments_unweighed(block: CylinderBlock, sheet: Sheet) -> tuple[Weldment, ...]:
    """The weldments of a block that state no mass, and that no weight of a lifting plan names."""
    named = set[str]().union(*(parts_named(plan, sheet) for plan in sheet.belonging_to(block, LiftingPlan)))
    return tuple(
        one
        for one in sheet.belonging_to(block, Weldment)
        if one.id not in named and not sheet.is_stated(f"mass of {one.id}", one.mass)
    )


def _together(masses: Iterable[Worked], sheet: Sheet) -> Worked:
    total = Worked(0.0)
    for mass in masses:
        together = sheet.work("m", mass_together, m_0=total.value, m_1=mass.value)
        total = Worked(together, (*total.places, *mass.places))
    return total


def mass_left(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet, take: Take) -> Worked | None:
    """The mass that one frame carries of a block, kg: what is drawn, less what its other frames are said to carry."""
    drawn = mass_drawn(block, sheet, take)
    if drawn is None:
        return None
    for one in on_other_frames(fastening, block, sheet):
        if sheet.is_stated(f"mass on {one.id}", one.carried_mass):
            left = sheet.work("m", less_mass, m_0=drawn.value, m_1=take("m_f", one.carried_mass))
            drawn = Worked(left, (*drawn.places, *worked(left, one.carried_mass).places))
    return drawn


@formula("m = m_0 − m_1", cites=[FIRST_PRINCIPLES])
def less_mass(m_0: Kilograms, m_1: Kilograms) -> Kilograms:
    """What is left of a mass.

    m_0: the whole, kg. m_1: what something else carries, kg. Returns kg.

    >>> less_mass(m_0=2600.0, m_1=1200.0)
    1400.0
    """
    return m_0 - m_1


def mass_on_frame(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> Kilograms:
    """Mass that one frame carries, kg: as stated at either of its pads, and no less than what is drawn on the block.

    What is drawn is seldom all: valves, gear and lagging have no weights, so that the stated mass is always asked.
    """
    stated = sheet.take("m", fastening.carried_mass)
    far = [
        sheet.take(f"m of {one.id}", one.carried_mass)
        for one in fastenings_at_far_end(fastening, block, sheet)
        if sheet.is_stated(f"mass on {one.id}", one.carried_mass)
    ]
    left = mass_left(fastening, block, sheet, sheet.take)
    return max(stated, *far, *(() if left is None else (left.value,)), 0.0)


def shock_on_frame(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> Ratio:
    """Shock of buffing over gravity: the greatest that a fastening, and those at the far end of its frame, state."""
    far = [
        sheet.take(f"k of {one.id}", one.shock)
        for one in fastenings_at_far_end(fastening, block, sheet)
        if sheet.is_stated(f"shock of {one.id}", one.shock)
    ]
    return max(sheet.take("k", fastening.shock), *far, 0.0)


def fastenings_at_far_end(
    fastening: FrameFastening, block: CylinderBlock, sheet: Sheet
) -> tuple[FrameFastening, ...]:
    """The fastenings of the pad at the far end of the frame that a fastening names."""
    if not sheet.is_stated("pad at the far end", fastening.other_pad):
        return ()
    return fastenings_of_pad(block, sheet.read("pad at the far end", fastening.other_pad), sheet)
