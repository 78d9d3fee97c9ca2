"""The parts that work together in one bore of a block: which liner, piston, rod, crosshead and cover belong to it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import (
    Crosshead,
    CylinderBlock,
    CylinderCover,
    CylinderEnd,
    CylinderLiner,
    NotStated,
    Piston,
    PistonRod,
)


def liners_of(block: CylinderBlock, bore: str, sheet: Sheet) -> tuple[CylinderLiner, ...]:
    """The liners that say they are in a bore of a block."""
    return tuple(
        liner
        for liner in sheet.belonging_to(block, CylinderLiner)
        if sheet.is_stated(f"bore of {liner.id}", liner.in_bore)
        and sheet.read(f"bore of {liner.id}", liner.in_bore) == bore
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
    """The ends of one bore, by their names; of a block with one bore those that name none, too."""
    only = len(block.bores) == 1
    return {
        name: end
        for name, end in block.ends.items()
        if (
            sheet.read(f"bore of end {name}", end.of_bore) == bore
            if sheet.is_stated(f"bore of end {name}", end.of_bore)
            else only
        )
    }


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
        (name, end)
        for name, end in block.ends.items()
        if sheet.is_stated(f"side of end {name}", end.side)
        and sheet.read(f"side of end {name}", end.side) == side
    ]
    if len(found) != 1:
        raise sheet.not_assessed(
            f"{len(found)} ends of {block.id} are at the {side}: of_end is to name the one that the cover closes",
            cover.of_end.where,
        )
    return found[0]


def side_closed(cover: CylinderCover, sheet: Sheet) -> str | None:
    """The side of its cylinder that a cover closes: that of the end which it names, else as it states.

    None where neither says.
    """
    if sheet.is_stated("block", cover.closes) and sheet.is_stated("end that it closes", cover.of_end):
        block = sheet.follow(cover.closes)
        end = sheet.entry(block.ends, cover.of_end, f"the ends of {block.id}")
        if sheet.is_stated("side of that end", end.side):
            return sheet.read("side of that end", end.side)
    return sheet.read("end", cover.end) if sheet.is_stated("end", cover.end) else None


def may_close(cover: CylinderCover, end: CylinderEnd, sheet: Sheet) -> bool:
    """Whether a cover of a block closes one end of it: that which it names, else any on its side.

    Where neither the cover nor the end says its side, it may.
    """
    if sheet.is_stated(f"end that {cover.id} closes", cover.of_end):
        block = sheet.follow(cover.closes)
        return sheet.entry(block.ends, cover.of_end, f"the ends of {block.id}") is end
    if not (sheet.is_stated(f"end of {cover.id}", cover.end) and sheet.is_stated("side of end", end.side)):
        return True
    return sheet.read(f"end of {cover.id}", cover.end) == sheet.read("side of end", end.side)


def bore_under(cover: CylinderCover, sheet: Sheet) -> str | None:
    """The name of the bore that a cover closes; None where its block states no ends or bores."""
    block = sheet.follow(cover.closes)
    if not block.ends or not block.bores:
        return None
    name, end = end_closed_by(cover, sheet)
    only = len(block.bores) == 1 and not sheet.is_stated(f"bore of end {name}", end.of_bore)
    return next(iter(block.bores)) if only else sheet.read(f"bore of end {name}", end.of_bore)


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
    return liner.bore if liner is not None else block.bores[name].diameter
