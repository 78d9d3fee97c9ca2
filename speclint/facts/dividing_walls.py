"""Walls between two spaces of a block: drawn once, as flat walls of the weldment that makes it.

A division of the block and a partition between passages name the flat wall that they are; of two walls with a hollow
between them they name both. Its sizes, its sides and its metal are then those of the weldment.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, NamedTuple

from speclint.facts.passage_steam import steam_in
from speclint.facts.walls import plate_of
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderBlock, NotStated, Partition, Stated, SteamPassage, Weldment

if TYPE_CHECKING:
    from speclint.specs import Cavity, Division, FlatWall, Plate

#: Places of passages that open into a cylinder and hold what is in it.
_OF_CYLINDER = ("port", "breathing way")
#: Families of metals that are cast: a wall of such a metal is no plate of a weldment.
_CAST = ("grey-iron", "ductile-iron", "chilled-iron", "austenitic-iron", "cast-steel")


class Panel(NamedTuple):
    """One wall between two spaces: its sizes, what is on its sides, and its plate, if it is cut from one."""

    thickness: Measure | NotStated
    short: Measure | NotStated
    long: Measure | NotStated
    edges: Stated[Any] | NotStated | None
    sides: tuple[str, str]
    plate: Plate | None


def weldment_of(block: CylinderBlock, sheet: Sheet) -> Weldment | None:
    """The weldment that makes a block; None where none is drawn."""
    for weldment in sheet.belonging_to(block, Weldment):
        if (
            sheet.is_stated("what the weldment makes", weldment.makes)
            and sheet.follow(weldment.makes) is block
        ):
            return weldment
    return None


def wall_named(
    name: Stated[str] | NotStated, block: CylinderBlock, sheet: Sheet
) -> tuple[Weldment, FlatWall] | None:
    """The flat wall of a block's weldment that a division or a partition names; None where it names none.

    :raises NotAssessed: where it names one and no weldment that makes the block lists it.
    """
    if not sheet.is_stated("flat wall", name):
        return None
    weldment = weldment_of(block, sheet)
    if weldment is None:
        raise sheet.not_assessed(f"no weldment is stated that makes {block.id}", name.where)
    return weldment, sheet.entry(weldment.walls, name, f"walls of {weldment.id}")


def side_by_passage(passage_on: str, wall: FlatWall, sheet: Sheet) -> Worked | None:
    """The fluid on the "one" or the "other" side of a flat wall, by the passage there; None where it names none.

    A port and a breathing way hold what is in the cylinder.
    """
    link = wall.one_passage if passage_on == "one" else wall.other_passage
    if not sheet.is_stated(f"passage on the {passage_on} side", link):
        return None
    passage: SteamPassage = sheet.follow(link)
    placed = sheet.is_stated(f"place of {passage.id}", passage.place)
    if placed and sheet.read(f"place of {passage.id}", passage.place) in _OF_CYLINDER:
        return worked("cylinder", passage.place)
    return steam_in(passage, sheet)


def fluids_beside(name: str, wall: FlatWall, sheet: Sheet) -> tuple[str, str]:
    """The fluids on both sides of a flat wall: by the passages there, else as stated."""
    one, other = side_by_passage("one", wall, sheet), side_by_passage("other", wall, sheet)
    return (
        sheet.read(f"{name}, one side", wall.one_side) if one is None else one.value,
        sheet.read(f"{name}, other", wall.other_side) if other is None else other.value,
    )


def walls_of(
    part: Division | Partition, block: CylinderBlock, sheet: Sheet
) -> tuple[tuple[Weldment, FlatWall], ...]:
    """The flat walls that a division or a partition names: none, one, or two with a hollow between them."""
    found = (wall_named(part.wall, block, sheet), wall_named(part.other_wall, block, sheet))
    return tuple(one for one in found if one is not None)


def _panel(weldment: Weldment, wall: FlatWall, sheet: Sheet) -> Panel:
    plate = sheet.entry(weldment.plates, wall.plate, f"plates of {weldment.id}")
    sides = fluids_beside("wall", wall, sheet)
    return Panel(plate.thickness, wall.short, wall.long, wall.edges, sides, plate)


def panels_of_division(division: Division, block: CylinderBlock, sheet: Sheet) -> tuple[Panel, ...]:
    """The walls of a division: those of the weldment that it names; else as the division states it.

    :raises NotAssessed: where it names none and the weldment lists a flat wall between the same fluids.
    """
    drawn = walls_of(division, block, sheet)
    if drawn:
        return tuple(_panel(weldment, wall, sheet) for weldment, wall in drawn)
    sides = sheet.read("one side", division.one_side), sheet.read("other side", division.other_side)
    _refuse_unnamed(division, sides, block, sheet)
    found = plate_of(division, block, sheet)
    plate = None if found is None else found[1]
    thickness = division.thickness if plate is None else plate.thickness
    return (Panel(thickness, division.span, division.length, None, sides, plate),)


def _refuse_unnamed(division: Division, sides: tuple[str, str], block: CylinderBlock, sheet: Sheet) -> None:
    weldment = weldment_of(block, sheet)
    if weldment is None or sheet.is_stated("ring", division.ring_diameter):
        return  # a curved wall is none of the flat ones
    for name, wall in weldment.walls.items():
        if set(fluids_beside(name, wall, sheet)) == set(sides):
            said = f"{division.wall.where.key} is to name the flat wall of {weldment.id} that the division is"
            raise sheet.not_assessed(said, division.wall.where)


def sides_of_division(division: Division, block: CylinderBlock, sheet: Sheet) -> tuple[str, str]:
    """The fluids that a division parts: of two walls those beyond the hollow between them."""
    drawn = walls_of(division, block, sheet)
    if not drawn:
        return sheet.read("one side", division.one_side), sheet.read("other side", division.other_side)
    if len(drawn) == 1:
        return fluids_beside("wall", drawn[0][1], sheet)
    one, other = (beyond_hollow(wall, sheet) for _, wall in drawn)
    return one, other


def beyond_hollow(wall: FlatWall, sheet: Sheet) -> str:
    """The fluid on that side of one of two walls which is not towards the vented hollow between them."""
    one, other = fluids_beside("wall", wall, sheet)
    return other if one == "atmosphere" else one


def block_of_partition(partition: Partition, sheet: Sheet) -> CylinderBlock:
    """The block in which a partition stands, by its passage of live steam."""
    return sheet.follow(sheet.follow(partition.live_side).in_block)


def panels_of_partition(partition: Partition, sheet: Sheet) -> tuple[Panel, ...]:
    """The walls of a partition, that on the live side first: those of the weldment that it names; else as it states.

    :raises NotAssessed: where it names none, is of a metal that plates are made of, and the weldment of its block
        lists flat walls.
    """
    block = block_of_partition(partition, sheet)
    drawn = walls_of(partition, block, sheet)
    if drawn:
        return tuple(_panel(weldment, wall, sheet) for weldment, wall in drawn)
    weldment = weldment_of(block, sheet)
    if weldment is not None and weldment.walls and sheet.material_of(partition).family not in _CAST:
        said = f"wall is to name the flat wall of {weldment.id} that the partition is"
        raise sheet.not_assessed(said, partition.wall.where)
    sides = ("live steam", "exhaust steam")
    stated = Panel(
        partition.thickness, partition.short_side, partition.long_side, partition.edges, sides, None
    )
    return (stated,)


def build_by_walls(partition: Partition, sheet: Sheet) -> Worked | None:
    """Whether a partition is one wall or two, by the walls that it names; None where it names none."""
    if not sheet.is_stated("flat wall", partition.wall):
        return None
    if sheet.is_stated("other flat wall", partition.other_wall):
        return worked("two walls", partition.wall, partition.other_wall)
    return worked("single wall", partition.wall)


def build_of(partition: Partition, sheet: Sheet) -> str:
    """Whether a partition is one wall or two: by the walls that it names, else as it is stated."""
    by_walls = build_by_walls(partition, sheet)
    return sheet.read("build", partition.build) if by_walls is None else str(by_walls.value)


def hollow_of(partition: Partition, sheet: Sheet) -> Cavity | None:
    """The cavity between the two walls of a partition; None where it names none.

    :raises NotAssessed: where it names one that no weldment of its block lists.
    """
    if not sheet.is_stated("cavity", partition.cavity):
        return None
    block = block_of_partition(partition, sheet)
    weldment = weldment_of(block, sheet)
    if weldment is None:
        raise sheet.not_assessed(f"no weldment is stated that makes {block.id}", partition.cavity.where)
    return sheet.entry(weldment.cavities, partition.cavity, f"cavities of {weldment.id}")


def gap_between(partition: Partition, sheet: Sheet) -> Measure | NotStated:
    """The gap between the two walls of a partition: the width of the hollow that it names, else as it is stated."""
    hollow = hollow_of(partition, sheet)
    if hollow is None or not sheet.is_stated("width of the hollow", hollow.width):
        return partition.gap
    width: Measure | NotStated = hollow.width
    return width


def partitions_in(block: CylinderBlock, sheet: Sheet) -> Iterator[Partition]:
    """The partitions between the passages of a block, each once."""
    found: dict[str, Partition] = {}
    for passage in sheet.belonging_to(block, SteamPassage):
        for partition in sheet.belonging_to(passage, Partition):
            found.setdefault(partition.id, partition)
    yield from found.values()
