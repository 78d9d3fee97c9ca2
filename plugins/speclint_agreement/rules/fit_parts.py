"""Where a fit takes its sizes: from the parts that it joins, and from the one place in each of them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.specs import (
    Casting,
    Component,
    CylinderLiner,
    Dimension,
    Fit,
    ValveSeat,
    Weldment,
)


class _Place(NamedTuple):
    """The part of which a size is taken, the table of its key there, and the key in that table."""

    part: Worked
    table: Worked
    key: str


def _parts(fit: Fit, sheet: Sheet) -> Iterator[Pair]:
    """Part and place of wall, bore and length against those of hole and shaft; the hole against the bore of a seat.

    The place is the table of a key: "seat_bores.inlet-front-upper" of the diameter and of the wall of one bore.
    """
    hole, shaft = _place("hole", fit.hole, sheet), _place("shaft", fit.shaft, sheet)
    wall, bore = _place("wall", fit.wall, sheet), _place("bore", fit.bore, sheet)
    length = _place("length", fit.length, sheet)
    if hole and wall and not _is_blank_of(fit.wall, hole, sheet):
        yield from _same("wall", wall, hole)
    if shaft and bore:
        yield from _same("bore", bore, shaft)
    if hole and shaft and length:
        yield from _same("length", length, hole if length.part.value == hole.part.value else shaft)
    if hole and shaft:
        taken = _bore_of_shaft(sheet.follow(fit.shaft.of), sheet)
        if taken is not None:
            yield from _same("hole", hole, taken)


def _place(name: str, size: Dimension, sheet: Sheet) -> _Place | None:
    """Where a size is taken from; None of one that the fit states itself."""
    part, key = f"part of the {name}", f"key of the {name}"
    if not (sheet.is_stated(part, size.of) and sheet.is_stated(key, size.dimension)):
        return None
    table, _, last = sheet.read(key, size.dimension).rpartition(".")
    return _Place(worked(sheet.follow(size.of).id, size.of), worked(table, size.dimension), last)


def _same(name: str, own: _Place, other: _Place) -> Iterator[Pair]:
    """Part against part; and table against table, where each has a diameter and a wall of its own."""
    yield Pair(own.part, other.part, name=f"part of the {name}")
    if other.key == "diameter" and own.key in ("diameter", "wall", "depth"):
        yield Pair(own.table, other.table, name=f"place of the {name}")


def _is_blank_of(wall: Dimension, hole: _Place, sheet: Sheet) -> bool:
    """Whether a wall is that of the weldment or the casting from which the part with the hole is made."""
    part = sheet.follow(wall.of)
    if isinstance(part, Weldment):
        return sheet.is_stated("block that it makes", part.makes) and _leads_to(
            sheet.follow(part.makes), hole
        )
    if isinstance(part, Casting):
        return sheet.is_stated("part that it becomes", part.becomes) and _leads_to(
            sheet.follow(part.becomes), hole
        )
    return False


def _leads_to(part: Component, hole: _Place) -> bool:
    return bool(part.id == hole.part.value)


def _bore_of_shaft(part: Component, sheet: Sheet) -> _Place | None:
    """The block and the bore into which a seat or a liner goes; None of other parts."""
    if isinstance(part, ValveSeat):
        table, block, name = "seat_bores", part.pressed_into, part.in_bore
    elif isinstance(part, CylinderLiner):
        table, block, name = "bores", part.housed_in, part.in_bore
    else:
        return None
    if not (sheet.is_stated(f"block of {part.id}", block) and sheet.is_stated(f"bore of {part.id}", name)):
        return None
    bore = f"{table}.{sheet.read(f'bore of {part.id}', name)}"
    return _Place(worked(sheet.follow(block).id, block), worked(bore, name), "diameter")


of_its_parts: Rule = agreement(
    "fit.sizes-of-its-parts",
    title="A fit takes wall, bore and length from the parts that it joins, and the hole of a seat or a liner is the "
    "bore into which that goes",
    on=Fit,
    pairs=_parts,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a fit that is judged with the wall of another bore says nothing of its own",
    leaves_out="a size that the fit states itself, and a wall of the weldment or the casting that becomes the part",
)

RULES = (of_its_parts,)
