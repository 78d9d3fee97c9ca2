"""A seat bore is no deeper than the plate that it is cut in."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import plate_of, weldment_of
from speclint.specs import CylinderBlock, Plate, SeatBore


def _depths(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The depth of each seat bore against the thickness of the plate that it names, and of that of its flat wall."""
    for name, bore in block.seat_bores.items():
        if not sheet.is_stated(f"depth of {name}", bore.depth):
            continue
        for plate in _plates(name, bore, block, sheet):
            yield Pair(bore.depth, plate.thickness, "at most", name=name)


def _plates(name: str, bore: SeatBore, block: CylinderBlock, sheet: Sheet) -> Iterator[Plate]:
    found = plate_of(bore, block, sheet)
    if found is not None:
        yield found[1]
    weldment = weldment_of(block, sheet)
    if weldment is not None and sheet.is_stated(f"flat wall of {name}", bore.flat_wall):
        wall = sheet.entry(weldment.walls, bore.flat_wall, f"walls of {weldment.id}")
        yield sheet.entry(weldment.plates, wall.plate, f"plates of {weldment.id}")


within_plate: Rule = agreement(
    "seat-bore.within-its-plate",
    title="A seat bore is no deeper than the plate, or the plate of the flat wall, that it is cut in",
    on=CylinderBlock,
    pairs=_depths,
    within="",
    grade=Grade.HOLD,
    why="a ring holds by the length that is in metal: what stands out of the plate is counted and holds nothing",
    leaves_out="a seat bore that names neither a plate nor a flat wall; a boss round the bore that stands out of its "
    "plate, which is a plate of its own",
)

RULES = (within_plate,)
