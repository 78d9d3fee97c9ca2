"""A wall between two spaces is drawn once: division, partition and weldment state one wall, or two and their hollow."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import (
    block_of_partition,
    build_by_walls,
    hollow_of,
    panels_of_partition,
    side_by_passage,
    walls_of,
)
from speclint.specs import CylinderBlock, Division, FlatWall, Partition, Plate, SeatBore, Weldment

#: The steam beyond a seat, by what its valve serves.
_BEYOND_A_SEAT = {"inlet": "live steam", "exhaust": "exhaust steam"}


def _walls(part: CylinderBlock | Partition, sheet: Sheet) -> Iterator[Pair]:
    """Sizes, sides, edges and metal of a division or a partition against the flat wall of the weldment that it names.

    Of two walls the thickness against that of the thinner, the gap against the hollow between them.
    """
    if isinstance(part, Partition):
        yield from _partition(part, sheet)
        return
    for name, division in part.divisions.items():
        yield from _division(name, division, part, sheet)


def _division(name: str, division: Division, block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    drawn = walls_of(division, block, sheet)
    if not drawn:
        return
    plates = [_plate(weldment, wall, sheet) for weldment, wall in drawn]
    yield Pair(division.thickness, _thinner(plates, sheet).thickness, name=f"{name}, thickness")
    if sheet.is_stated("plate", division.plate):
        yield Pair(division.plate, drawn[0][1].plate, name=f"{name}, plate")
    for _, wall in drawn:
        yield Pair(division.span, wall.short, name=f"{name}, short side")
        yield Pair(division.length, wall.long, name=f"{name}, long side")
    yield from _sides(name, division, [wall for _, wall in drawn], sheet)


def _sides(name: str, division: Division, walls: list[FlatWall], sheet: Sheet) -> Iterator[Pair]:
    """The fluids on both sides, in whichever order; of two walls each on that which is not towards the hollow."""
    stated = division.one_side, division.other_side
    if len(walls) == 1:
        one, other = _fluid("one", walls[0], sheet), _fluid("other", walls[0], sheet)
        if sheet.is_stated("one side", stated[0]):
            turned = sheet.read("one side", stated[0]) == other.value
        else:
            second = sheet.is_stated("other side", stated[1])
            turned = second and sheet.read("other side", stated[1]) == one.value
        places = (other, one) if turned else (one, other)
    else:
        places = _beyond(walls[0], sheet), _beyond(walls[1], sheet)
    for side, here, there in zip(("one side", "other side"), stated, places, strict=True):
        yield Pair(here, there, name=f"{name}, {side}")


def _partition(partition: Partition, sheet: Sheet) -> Iterator[Pair]:
    for steam, link in (("live steam", partition.live_side), ("exhaust steam", partition.exhaust_side)):
        if sheet.is_stated(f"passage of the {steam}", link):
            carries = sheet.follow(link).carries
            if sheet.is_stated("steam carried", carries):
                yield Pair(carries, worked(steam, link), name=f"steam on the side of the {steam}")
    by_walls = build_by_walls(partition, sheet)
    if by_walls is None:
        panels_of_partition(partition, sheet)  # ends the rule where it is to name a wall
        return
    yield Pair(partition.build, by_walls, name="build")
    drawn = walls_of(partition, block_of_partition(partition, sheet), sheet)
    plates = [_plate(weldment, wall, sheet) for weldment, wall in drawn]
    yield Pair(partition.thickness, _thinner(plates, sheet).thickness, name="thickness")
    for plate in plates:
        yield Pair(partition.material, plate.material, name="metal")
    for _, wall in drawn:
        yield Pair(partition.short_side, wall.short, name="short side")
        yield Pair(partition.long_side, wall.long, name="long side")
        yield Pair(partition.edges, wall.edges, name="edges")
    yield from _steams(partition, [wall for _, wall in drawn], sheet)
    hollow = hollow_of(partition, sheet)
    if hollow is not None and sheet.is_stated("width of the hollow", hollow.width):
        yield Pair(partition.gap, hollow.width, name="gap")


def _steams(partition: Partition, walls: list[FlatWall], sheet: Sheet) -> Iterator[Pair]:
    """Live steam on one side and exhaust steam on the other, of the one wall or of the two."""
    wanted = ("live steam", partition.live_side), ("exhaust steam", partition.exhaust_side)
    one, other = _fluid("one", walls[0], sheet), _fluid("other", walls[0], sheet)
    if len(walls) == 2:
        places = _beyond(walls[0], sheet), _beyond(walls[1], sheet)
    else:
        places = (other, one) if one.value == "exhaust steam" else (one, other)
    for (steam, link), place in zip(wanted, places, strict=True):
        yield Pair(worked(steam, link), place, name=steam)
    for wall in walls:
        yield from _passage_beside(partition, wall, sheet)


def _passage_beside(partition: Partition, wall: FlatWall, sheet: Sheet) -> Iterator[Pair]:
    """The passage on each side of a partition against that which its wall names for the same steam."""
    sides = {"live steam": partition.live_side, "exhaust steam": partition.exhaust_side}
    for side, link in (("one", wall.one_passage), ("other", wall.other_passage)):
        fluid = side_by_passage(side, wall, sheet)
        own = None if fluid is None else sides.get(fluid.value)
        if own is not None and sheet.is_stated("passage beside the partition", own):
            here, there = worked(sheet.follow(own).id, own), worked(sheet.follow(link).id, link)
            yield Pair(here, there, name=f"passage, {side} side")


def _plate(weldment: Weldment, wall: FlatWall, sheet: Sheet) -> Plate:
    return sheet.entry(weldment.plates, wall.plate, f"plates of {weldment.id}")


def _thinner(plates: list[Plate], sheet: Sheet) -> Plate:
    return min(plates, key=lambda plate: sheet.take_nominal("t", plate.thickness))


def _fluid(side: str, wall: FlatWall, sheet: Sheet) -> Worked:
    """What is on a side of a flat wall: in the passage there, else as stated."""
    by_passage = side_by_passage(side, wall, sheet)
    if by_passage is not None:
        return by_passage
    stated = wall.one_side if side == "one" else wall.other_side
    return worked(sheet.read(f"{side} side", stated), stated)


def _beyond(wall: FlatWall, sheet: Sheet) -> Worked:
    """The fluid on that side of one of two walls which is not towards the hollow between them."""
    one = _fluid("one", wall, sheet)
    return _fluid("other", wall, sheet) if one.value == "atmosphere" else one


def _passages(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """What each side of a flat wall is said to have on it against the passage that it names there."""
    for name, wall in weldment.walls.items():
        for side, stated in (("one", wall.one_side), ("other", wall.other_side)):
            by_passage = side_by_passage(side, wall, sheet)
            if by_passage is not None:
                yield Pair(stated, by_passage, name=f"{name}, {side} side")
    if sheet.is_stated("what the weldment makes", weldment.makes):
        yield from _at_seats(weldment, sheet.follow(weldment.makes), sheet)


def _at_seats(weldment: Weldment, block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The sides of a flat wall in which seats are cut: the steam of the valve on one, the cylinder on the other.

    As they are stated, and by the passages that the wall names.
    """
    told: set[tuple[str, str]] = set()
    for name, bore in block.seat_bores.items():
        if not (
            sheet.is_stated(f"flat wall of {name}", bore.flat_wall) and sheet.is_stated(name, bore.serves)
        ):
            continue
        called = sheet.read(f"flat wall of {name}", bore.flat_wall)
        served = sheet.read(f"what {name} serves", bore.serves)
        if (called, served) not in told:
            told.add((called, served))
            yield from _at_seat(weldment, bore, called, _BEYOND_A_SEAT[served], sheet)


def _at_seat(weldment: Weldment, bore: SeatBore, called: str, steam: str, sheet: Sheet) -> Iterator[Pair]:
    wall = sheet.entry(weldment.walls, bore.flat_wall, f"walls of {weldment.id}")
    beyond, within = worked(steam, bore.serves), worked("cylinder", bore.serves)
    first = side_by_passage("one", wall, sheet)
    if first is None and sheet.is_stated(f"side of {called}", wall.one_side):
        first = worked(sheet.read(f"side of {called}", wall.one_side), wall.one_side)
    turned = first is not None and first.value == "cylinder"
    one, other = (within, beyond) if turned else (beyond, within)
    yield Pair(wall.one_side, one, name=f"{called}, one side, by its seats")
    yield Pair(wall.other_side, other, name=f"{called}, other side, by its seats")
    for side, wanted in (("one", one), ("other", other)):
        by_passage = side_by_passage(side, wall, sheet)
        if by_passage is not None:
            yield Pair(by_passage, wanted, name=f"{called}, passage on the {side} side, by its seats")


drawn_once: Rule = agreement(
    "wall.drawn-once",
    title="A division or a partition has the thickness, the sizes, the sides and the gap of the walls of the weldment "
    "that it is",
    on=(CylinderBlock, Partition),
    pairs=_walls,
    within="0.1 mm",
    edition=2,
    grade=Grade.HOLD,
    why="a wall drawn three times is judged three times and made once: as the weldment has it",
    leaves_out="a cast wall, and a curved one, which no weldment lists; a division that names no flat wall",
)

sides_by_passage: Rule = agreement(
    "wall.sides-by-passage",
    edition=4,
    title="A flat wall has on each side what the passage holds that it names there, and one with valve seats "
    "has the steam of the valve on one and the cylinder on the other",
    on=Weldment,
    pairs=_passages,
    within="",
    grade=Grade.HOLD,
    why="a wall said to have the open air beyond it, and live steam there, is judged for less than it bears",
    leaves_out="a side that names no passage, of a wall without seats",
)

RULES = (drawn_once, sides_by_passage)
