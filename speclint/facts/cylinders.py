"""The parts that work together in one bore of a block: which liner, piston, rod, crosshead and cover belong to it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import Metres
from speclint.handbook.fits import share_of_size
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import (
    Crosshead,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    NotStated,
    Piston,
    PistonRod,
)

if TYPE_CHECKING:
    from speclint.specs import Bore, CylinderEnd


def liners_of(block: CylinderBlock, bore: str, sheet: Sheet) -> tuple[CylinderLiner, ...]:
    """The liners in a bore of a block; each liner of the block must say in which it is."""
    return tuple(
        liner
        for liner in sheet.belonging_to(block, CylinderLiner)
        if sheet.read(f"bore of {liner.id}", liner.in_bore) == bore
    )


def pistons_in(liner: CylinderLiner, sheet: Sheet) -> tuple[Piston, ...]:
    """The pistons that run in a liner."""
    return sheet.belonging_to(liner, Piston)


def rods_of(piston: Piston, sheet: Sheet) -> tuple[PistonRod, ...]:
    """The rods that carry a piston."""
    return sheet.belonging_to(piston, PistonRod)


def crossheads_on(rod: PistonRod, sheet: Sheet) -> tuple[Crosshead, ...]:
    """The crossheads on a rod."""
    return sheet.belonging_to(rod, Crosshead)


def rods_in(block: CylinderBlock, bore: str, sheet: Sheet) -> Iterator[PistonRod]:
    """The piston rods that work in a bore of a block, by way of liner and piston."""
    for liner in liners_of(block, bore, sheet):
        for piston in pistons_in(liner, sheet):
            yield from rods_of(piston, sheet)


def ends_of(block: CylinderBlock, bore: str, sheet: Sheet) -> dict[str, CylinderEnd]:
    """The ends of one bore, by their names; in a block with several bores each end must name its own."""
    return {
        name: end for name, end in block.ends.items() if _bore_of_end(name, end, block, sheet) in ("", bore)
    }


def bore_named(block: CylinderBlock, name: str, sheet: Sheet) -> Bore:
    """The bore of a block that another place of the design names.

    :raises NotAssessed: where the block states no bore of this name.
    """
    if name not in block.bores:
        raise sheet.not_assessed(f"bore {name} is not stated in {block.where.file}", block.where)
    return block.bores[name]


def _bore_of_end(name: str, end: CylinderEnd, block: CylinderBlock, sheet: Sheet) -> str:
    """The bore that an end names; "" where it names none and the block has no other."""
    if len(block.bores) == 1 and not sheet.is_stated(f"bore of end {name}", end.of_bore):
        return ""
    return sheet.read(f"bore of end {name}", end.of_bore)


def end_closed_by(cover: CylinderCover, sheet: Sheet) -> tuple[str, CylinderEnd]:
    """The end of the cylinder that a cover closes: that which it names, else the only one on its side of the block.

    :raises NotAssessed: where neither tells which it is.
    """
    block = sheet.follow(cover.closes)
    if sheet.is_stated("end of the block that the cover closes", cover.of_end):
        name = sheet.read("end of the block that the cover closes", cover.of_end)
        return name, sheet.entry(block.ends, cover.of_end, f"the ends of {block.id}")
    side = sheet.read("end", cover.end)
    found = [
        (name, end) for name, end in block.ends.items() if sheet.said(f"side of end {name}", end.side) == side
    ]
    if len(found) != 1:
        raise sheet.not_assessed(
            f"{len(found) or 'no'} ends of {block.id} are at the {side}: of_end is to name the one that the cover "
            "closes",
            cover.of_end.where,
        )
    return found[0]


#: Least outside of a cover over the face that it closes: common practice, as in cover.of-its-face.
_LEAST_OF_FACE = 0.9


def least_outside(cover: CylinderCover, sheet: Sheet) -> Metres:
    """The least outside of a cover by the face of the block that it closes, m; 0 where that is not known."""
    if not sheet.is_stated("block", cover.closes):
        return 0.0
    block = sheet.follow(cover.closes)
    if sheet.is_stated("end that it closes", cover.of_end):
        names = [sheet.read("end that it closes", cover.of_end)]
    else:
        side = sheet.said("side of the cover", cover.end)
        names = [
            name
            for name, end in block.ends.items()
            if side is not None and sheet.said(f"side of end {name}", end.side) == side
        ]
    if len(names) != 1 or names[0] not in block.ends:
        return 0.0
    face = block.ends[names[0]].face_diameter
    if not sheet.is_stated("face of the block", face):
        return 0.0
    return sheet.work("D_l", share_of_size, k=_LEAST_OF_FACE, t=sheet.take_nominal("D_f", face))


def side_closed(cover: CylinderCover, sheet: Sheet) -> str | None:
    """The side of its cylinder that a cover closes: that of the end which it names, else as it states.

    None where neither says.
    """
    if sheet.is_stated("block", cover.closes) and sheet.is_stated("end that it closes", cover.of_end):
        block = sheet.follow(cover.closes)
        end = sheet.entry(block.ends, cover.of_end, f"the ends of {block.id}")
        if sheet.is_stated("side of that end", end.side):
            return sheet.read("side of that end", end.side)
    return sheet.said("end", cover.end)


def bore_under(cover: CylinderCover, sheet: Sheet) -> str | None:
    """The name of the bore that a cover closes; None where its block states no ends or bores."""
    block = sheet.follow(cover.closes)
    if not block.ends or not block.bores:
        return None
    name, end = end_closed_by(cover, sheet)
    return _bore_of_end(name, end, block, sheet) or next(iter(block.bores))


def liner_under(cover: CylinderCover, sheet: Sheet) -> CylinderLiner | None:
    """The liner of the bore that a cover closes; None where none is drawn."""
    bore = bore_under(cover, sheet)
    return None if bore is None else next(iter(liners_of(sheet.follow(cover.closes), bore, sheet)), None)


def bore_closed(cover: CylinderCover, sheet: Sheet) -> Measure | NotStated:
    """The diameter of the bore that a cover closes, to be taken: of the liner, else of the block's bore.

    Where no end tells which bore that is, as the cover states it.
    """
    names_end = sheet.is_stated("block", cover.closes) and sheet.is_stated("end that it closes", cover.of_end)
    if not names_end and (sheet.is_stated("bore", cover.bore) or not sheet.is_stated("block", cover.closes)):
        return cover.bore
    name = bore_under(cover, sheet)
    if name is None:
        return cover.bore
    block = sheet.follow(cover.closes)
    liner = next(iter(liners_of(block, name, sheet)), None)
    return liner.bore if liner is not None else bore_named(block, name, sheet).diameter


def openings_at_end(cover: CylinderCover, sheet: Sheet) -> dict[str, Measure]:
    """The openings that the spigot of a cover could enter, as far as they are drawn, by the words of its key.

    The recess only at the end where the collar of the liner sits, or where no liner says at which it does.
    """
    block = sheet.follow(cover.closes)
    name, liner = bore_under(cover, sheet), liner_under(cover, sheet)
    bore = block.bores.get(name) if name is not None else None
    sizes: dict[str, Measure | NotStated] = {}
    if liner is not None:
        sizes["bore of the liner"] = liner.bore
    if bore is not None:
        sizes["bore of the block"] = bore.diameter
        if liner is None or _takes_collar(liner, cover, sheet):
            sizes["recess of the collar"] = bore.recess_diameter
    return {
        called: size
        for called, size in sizes.items()
        if sheet.is_stated(called, size) and isinstance(size, Measure)
    }


def _takes_collar(liner: CylinderLiner, cover: CylinderCover, sheet: Sheet) -> bool:
    if not sheet.is_stated("end of the collar", liner.collar.end):
        return True
    return side_closed(cover, sheet) in (None, sheet.read("end of the collar", liner.collar.end))
