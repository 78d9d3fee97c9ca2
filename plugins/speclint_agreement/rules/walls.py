"""The block and the weldment that makes it state one wall and one metal."""

from __future__ import annotations

from collections.abc import Iterator
from typing import cast

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import plate_of, side_by_passage, wall_by_plate
from speclint.specs import (
    BlockOpening,
    Bore,
    CylinderBlock,
    FlatWall,
    NotStated,
    Pad,
    Plate,
    SeatBore,
    ShellOpening,
    Stated,
    Weldment,
)


def _walls(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The wall round each bore against what its plate leaves at its thinnest when the corrosion allowance is gone."""
    places: dict[str, Bore | SeatBore] = {**block.bores, **block.seat_bores}
    for name, place in places.items():
        by_plate = wall_by_plate(place, block, sheet, sheet.take)
        if by_plate is not None:
            yield Pair(place.wall, by_plate, "at most", name=name)


def _divisions(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The thickness of each division against that of the plate which it is, as the drawings aim at them."""
    for name, division in block.divisions.items():
        found = plate_of(division, block, sheet)
        if found is not None:
            yield Pair(division.thickness, found[1].thickness, name=name)


def _metals(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The metal of the block against that of the plates of the weldment that its bores and pads are cut from.

    A seat bore that names no plate is cut from that of its flat wall.
    """
    if not sheet.is_stated("what the weldment makes", weldment.makes):
        return
    block = sheet.follow(weldment.makes)
    places: list[tuple[str, Bore | SeatBore | Pad]] = [
        *block.bores.items(),
        *block.seat_bores.items(),
        *block.pads.items(),
    ]
    for name, place in places:
        found = plate_of(place, block, sheet)
        if found is not None and found[0] is weldment:
            yield Pair(block.material, found[1].material, name=name)
        elif found is None and isinstance(place, SeatBore):
            plate = _plate_of_wall(name, place, weldment, sheet)
            if plate is not None:
                yield Pair(block.material, plate.material, name=name)


def _plate_of_wall(name: str, bore: SeatBore, weldment: Weldment, sheet: Sheet) -> Plate | None:
    """The plate of the flat wall in which a seat bore is cut; None where it names none of this weldment."""
    if not sheet.is_stated(f"flat wall of {name}", bore.flat_wall):
        return None
    wall = sheet.entry(weldment.walls, bore.flat_wall, f"walls of {weldment.id}")
    return sheet.entry(weldment.plates, wall.plate, f"plates of {weldment.id}")


def _welds(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """What each weld states, where the flat wall that it belongs to has steam or a cylinder on either side.

    A wall that names the passage on a side may leave out what is there.
    """
    for name, joint in weldment.joints.items():
        if not sheet.is_stated(f"wall of {name}", joint.wall):
            continue
        wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
        sides = list(_sides(name, wall, sheet))
        if any(side.value != "atmosphere" for side in sides):
            places = tuple(place for side in sides for place in side.places)
            yield Pair(joint.on_pressure, Worked(True, places), name=name)


def _steamed(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """What each plate states of steam, where a flat wall of it has steam or a cylinder on a side."""
    for name, wall in weldment.walls.items():
        if not sheet.is_stated(f"plate of {name}", wall.plate):
            continue
        plate = sheet.entry(weldment.plates, wall.plate, f"plates of {weldment.id}")
        for side in _sides(name, wall, sheet):
            if side.value != "atmosphere":
                yield Pair(plate.meets_steam, Worked(True, side.places), name=name)


def _sides(name: str, wall: FlatWall, sheet: Sheet) -> Iterator[Worked]:
    """What is on either side of a flat wall: in the passage that it names there, and as it is stated."""
    for side, stated in (("one", wall.one_side), ("other", wall.other_side)):
        by_passage = side_by_passage(side, wall, sheet)
        if by_passage is not None:
            yield by_passage
        if sheet.is_stated(f"side, {name}", stated):
            yield worked(sheet.read(f"side, {name}", stated), stated)


def _cut_in(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The plate of each opening against that of the flat wall which it names, of the weldment and of its block."""
    openings: dict[str, ShellOpening | BlockOpening] = dict(weldment.openings)
    if sheet.is_stated("what the weldment makes", weldment.makes):
        openings |= sheet.follow(weldment.makes).openings
    for name, opening in openings.items():
        if sheet.is_stated(f"flat wall of {name}", opening.flat_wall):
            wall = sheet.entry(weldment.walls, opening.flat_wall, f"walls of {weldment.id}")
            yield Pair(opening.plate, wall.plate, name=name)
            yield from _of_its_sides(name, opening, wall, sheet)
    yield from _in_one_shell(weldment, openings, sheet)


def _carried(opening: ShellOpening | BlockOpening) -> Stated[str] | NotStated:
    """The steam through an opening, whichever words its table lets it have."""
    return cast("Stated[str] | NotStated", opening.carries)


def _of_its_sides(
    name: str, opening: ShellOpening | BlockOpening, wall: FlatWall, sheet: Sheet
) -> Iterator[Pair]:
    """The steam through an opening against what is on the sides of its flat wall, where it is on neither."""
    sides = [side for side in _sides(name, wall, sheet) if side.value != "atmosphere"]
    if sides and sheet.is_stated(f"steam through {name}", opening.carries):
        carries = _carried(opening)
        steam = sheet.read(f"steam through {name}", carries)
        yield Pair(carries, next((one for one in sides if one.value == steam), sides[0]), name=name)


def _in_one_shell(
    weldment: Weldment, openings: dict[str, ShellOpening | BlockOpening], sheet: Sheet
) -> Iterator[Pair]:
    """The steam through openings of one round shell, which bounds one space: of each against the first.

    A barrel, round which a bore is, has other steam along it and is left out.
    """
    barrels = set[str]()
    if sheet.is_stated("what the weldment makes", weldment.makes):
        bores = sheet.follow(weldment.makes).bores
        barrels = {
            plate for name, one in bores.items() if (plate := sheet.said(f"plate of {name}", one.plate))
        }
    first: dict[str, Worked] = {}
    for name, opening in openings.items():
        plate = sheet.said(f"plate of {name}", opening.plate)
        carries = _carried(opening)
        steam = sheet.said(f"steam through {name}", carries)
        if plate is None or steam is None or plate in barrels or plate not in weldment.plates:
            continue
        if sheet.said(f"what {plate} is", weldment.plates[plate].serves_as) != "shell":
            continue
        if plate in first:
            yield Pair(carries, first[plate], name=name)
        else:
            first[plate] = worked(steam, carries)


wall_of_plate: Rule = agreement(
    "block.wall-of-plate",
    title="The wall round a bore is no more than its plate leaves when the corrosion allowance is gone",
    on=CylinderBlock,
    pairs=_walls,
    within="",
    grade=Grade.HOLD,
    why="a liner or a seat that leans on metal which is not there works loose, or bursts the block",
    leaves_out="a bore that names no plate, and metal taken off by a neighbouring bore",
)

division_of_plate: Rule = agreement(
    "block.division-of-plate",
    title="A division of the block is as thick as the plate that it is",
    on=CylinderBlock,
    pairs=_divisions,
    within="0.1 mm",
    grade=Grade.HOLD,
    why="a wall drawn twice is judged twice, and made once: as thin as the plate",
    leaves_out="a division that names no plate",
)

metal_of_plates: Rule = agreement(
    "block.metal-of-plates",
    title="The metal of a block is that of the plates that its bores and pads are cut from",
    on=Weldment,
    pairs=_metals,
    within="",
    grade=Grade.HOLD,
    why="fits, walls and joints are judged by the metal that the block states, and made of that of its plates",
    leaves_out="bores and pads that name neither a plate nor a flat wall",
    edition=3,
)

pressure_by_wall: Rule = agreement(
    "weld.pressure-by-wall",
    title="A weld of a wall that has steam on either side is not said to hold no pressure",
    on=Weldment,
    pairs=_welds,
    within="",
    grade=Grade.HOLD,
    why="a weld that is said to hold none is neither proved nor examined, and bursts all the same",
    leaves_out="welds that name no wall",
    edition=2,
)

opening_of_wall: Rule = agreement(
    "opening.plate-of-wall",
    title="An opening in a flat wall names no other plate than the wall does, and has steam of one of its sides; those "
    "of one round shell have the same steam",
    on=Weldment,
    pairs=_cut_in,
    within="",
    grade=Grade.HOLD,
    edition=2,
    why="an opening that is worked in the thick plate of one wall is cut in the thin one of another",
    leaves_out="an opening that names a plate alone, where no other stands in that; a barrel round a bore, which has "
    "both steams along it; two shells whose openings are exchanged, of which no spec says what is in them",
)

steam_by_wall: Rule = agreement(
    "plate.steam-by-wall",
    title="A plate of which a flat wall has steam or a cylinder on a side is said to meet steam",
    on=Weldment,
    pairs=_steamed,
    within="",
    grade=Grade.HOLD,
    why="a plate that is said to meet none is ordered without an allowance for corrosion, and a wall of it that is not "
    "listed is not missed",
    leaves_out="plates without a flat wall: barrels, seats and openings, which block.corrosion-allowance takes for "
    "plates that meet steam whatever is stated; a plate that is said to meet steam and has no wall beside it",
    against=("corrode",),
)

RULES = (division_of_plate, metal_of_plates, opening_of_wall, pressure_by_wall, steam_by_wall, wall_of_plate)
