"""Which parts of a block stand out towards the loading gauge and how far, and what moves beside it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, formula
from speclint.facts.chains import gap_of_chain
from speclint.facts.cylinders import crossheads_on, end_closed_by, rods_in
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CamBox, Component, Crosshead, CylinderBlock, CylinderCover, Envelope, SteamPipe

if TYPE_CHECKING:
    from speclint.specs import Bore, CylinderEnd, MotionGap


@formula("y = f + k a + D/2", cites=[FIRST_PRINCIPLES])
def reach_of_round_part(f: Metres, k: Ratio, a: Metres, D: Metres) -> Metres:
    """Distance of the outermost side of a round part from the middle of the engine.

    y = f + k a + D/2

    ``f`` of the frame face [m]; ``k`` 1 for a cylinder outside that frame, −1 for one between the frames [-]; ``a`` of
    the cylinder's axis from the frame face, ``D`` diameter of the part [m]. Returns [m].

    >>> round(reach_of_round_part(f=0.53, k=1.0, a=0.35, D=0.8), 9)
    1.28
    """
    return f + k * a + D / 2


@formula("y = f + k a + e", cites=[FIRST_PRINCIPLES])
def reach_of_part_beside(f: Metres, k: Ratio, a: Metres, e: Metres) -> Metres:
    """Distance of the outermost side of a part that stands out from a cylinder's axis from the middle of the engine.

    y = f + k a + e

    ``f`` distance of the frame face from the middle of the engine [m]; ``k`` 1 for a cylinder outside that frame, −1
    for one between the frames [-]; ``a`` distance of the cylinder's axis from the frame face, ``e`` how far the part
    stands out from that axis [m]. Returns [m].

    >>> round(reach_of_part_beside(f=0.53, k=1.0, a=0.35, e=0.42), 9)
    1.3
    """
    return f + k * a + e


def parts_standing_out(block: CylinderBlock, sheet: Sheet) -> tuple[Component, ...]:
    """The covers, cam boxes and pipes of a block: what may be the first to touch the loading gauge."""
    kinds: tuple[type[Component], ...] = (CylinderCover, CamBox, SteamPipe)
    return tuple(part for kind in kinds for part in sheet.belonging_to(block, kind))


def reach_of(
    part: Component, envelope: Envelope, block: CylinderBlock, sheet: Sheet, take: Take
) -> Worked | None:
    """How far a cover or a cam box stands out from the middle of the engine, m; None of other parts."""
    if not isinstance(part, CylinderCover | CamBox):
        return None
    end = end_closed_by(part, sheet)[1] if isinstance(part, CylinderCover) else _end_of(part, block, sheet)
    axis, f = _bore_of(end, block, sheet).axis_from_frame, envelope.frame_from_centre
    k = 1.0 if sheet.read("cylinders", envelope.cylinders) == "outside" else -1.0
    at = {"f": take("f", f), "k": k, "a": take("a", axis)}
    if isinstance(part, CylinderCover):
        D = part.outside_diameter
        return worked(sheet.work("y_p", reach_of_round_part, **at, D=take("D", D)), f, axis, D)
    e = part.stands_out
    return worked(sheet.work("y_p", reach_of_part_beside, **at, e=take("e", e)), f, axis, e)


def _end_of(box: CamBox, block: CylinderBlock, sheet: Sheet) -> CylinderEnd:
    return sheet.entry(block.ends, box.of_end, f"the ends of {block.id}")


def _bore_of(end: CylinderEnd, block: CylinderBlock, sheet: Sheet) -> Bore:
    if len(block.bores) == 1 and not sheet.is_stated("bore of the end", end.of_bore):
        return next(iter(block.bores.values()))
    return sheet.entry(block.bores, end.of_bore, f"the bores of {block.id}")


def crossheads_of(block: CylinderBlock, sheet: Sheet) -> Iterator[Crosshead]:
    """The crossheads that are driven from the bores of a block."""
    for bore in block.bores:
        for rod in rods_in(block, bore, sheet):
            yield from crossheads_on(rod, sheet)


def least_gap(name: str, gap: MotionGap, sheet: Sheet) -> Metres:
    """Gap to a moving part cold and new, m: the lesser of the stated one and of that by its chain of dimensions."""
    gaps: list[float] = []
    if sheet.is_stated(f"chain of {name}", gap.chain):
        gaps.append(gap_of_chain(sheet.follow(gap.chain), sheet, sheet.take).value)
    if not gaps or sheet.is_stated(f"size of {name}", gap.size) or sheet.is_stated(f"{name} is of", gap.of):
        gaps.append(sheet.take(f"a {name}", sheet.dimension(gap)))
    return min(gaps)
