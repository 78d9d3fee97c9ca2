"""The flat walls that a weldment must have, and does not list: by its plates and its block."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.facts import sides_of_division, walls_of
from speclint.specs import CylinderBlock, SteamPassage, Weldment
from speclint_fabrication.inputs.pressures import sides_of
from speclint_fabrication.inputs.temperatures import carries


def walls_not_listed(weldment: Weldment, block: CylinderBlock, sheet: Sheet) -> list[str]:
    """What wants a flat wall and has none listed, in words."""
    sides = [set(sides_of(name, wall, sheet)) for name, wall in weldment.walls.items()]
    return [
        *_of_plates(weldment, sheet),
        *_of_divisions(sides, block, sheet),
        *_of_passages(sides, block, sheet),
    ]


def _of_plates(weldment: Weldment, sheet: Sheet) -> Iterator[str]:
    named = {sheet.read(f"plate of {name}", wall.plate) for name, wall in weldment.walls.items()}
    for name, plate in weldment.plates.items():
        if name in named or not sheet.read(f"{name} meets steam", plate.meets_steam):
            continue
        if sheet.read(f"{name} serves as", plate.serves_as) == "flat wall":
            yield f"plate {name}"


def _of_divisions(sides: list[set[str]], block: CylinderBlock, sheet: Sheet) -> Iterator[str]:
    for name, division in block.divisions.items():
        if sheet.is_stated(f"ring of {name}", division.ring_diameter):
            continue  # a curved wall, judged with the cylinder
        if walls_of(division, block, sheet):
            continue  # it names walls that are listed
        if set(sides_of_division(division, block, sheet)) not in sides:
            yield f"division {name} of {block.id}"


def _of_passages(sides: list[set[str]], block: CylinderBlock, sheet: Sheet) -> Iterator[str]:
    for passage in sheet.belonging_to(block, SteamPassage):
        for side in ("live steam", "exhaust steam", "cylinder"):
            if carries(side, passage, sheet) and not any(side in both for both in sides):
                yield f"{side} in {passage.id}"
