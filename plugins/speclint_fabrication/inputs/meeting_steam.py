"""Whether steam touches a plate of a weldment."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.specs import BlockOpening, CylinderBlock, Plate, SeatBore, ShellOpening, Weldment
from speclint_fabrication.inputs.openings import bores_of_plate
from speclint_fabrication.inputs.pressures import sides_of


def meets_steam(name: str, plate: Plate, weldment: Weldment, sheet: Sheet) -> bool:
    """As the plate states, and always where its place says so.

    That is where a flat wall of it has steam or a cylinder beside it, the barrel of a bore or the bore of a seat is cut
    from it, or steam passes an opening in it.
    """
    if sheet.read(f"{name} meets steam", plate.meets_steam):
        return True
    if any(
        side != "atmosphere"
        for called, wall in weldment.walls.items()
        if sheet.read(f"plate of {called}", wall.plate) == name
        for side in sides_of(called, wall, sheet)
    ):
        return True
    block = sheet.follow(weldment.makes)
    if bores_of_plate(name, block, sheet):
        return True
    return any(
        sheet.said(f"plate of {called}", cut.plate) == name
        for called, cut in _steamed(weldment, block, sheet)
    )


def _steamed(
    weldment: Weldment, block: CylinderBlock, sheet: Sheet
) -> Iterator[tuple[str, SeatBore | BlockOpening | ShellOpening]]:
    """The bores of valve seats, and the openings that are said to carry steam."""
    yield from block.seat_bores.items()
    openings: tuple[tuple[str, BlockOpening | ShellOpening], ...] = (
        *block.openings.items(),
        *weldment.openings.items(),
    )
    for name, opening in openings:
        if sheet.is_stated(f"{name} carries", opening.carries):
            yield name, opening
