"""Which block, and which bore of it, a valve belongs to."""

from __future__ import annotations

from speclint.facts.seats import ends_of_valve
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, PoppetValve


def bore_served(valve: PoppetValve, sheet: Sheet) -> str:
    """The name of the bore that a valve serves: of the end at which its seats are, else as it states.

    Of a block with one bore it is that.
    """
    for end in ends_of_valve(valve, sheet):
        table = block_under(valve, sheet).ends.get(end.value)
        if table is not None and sheet.is_stated(f"bore of end {end.value}", table.of_bore):
            return sheet.read(f"bore of end {end.value}", table.of_bore)
    if not sheet.is_stated("bore of the cylinder", valve.cylinder_bore):
        bores = block_under(valve, sheet).bores
        if len(bores) == 1:
            return next(iter(bores))
    return sheet.read("bore of the cylinder", valve.cylinder_bore)


def block_under(valve: PoppetValve, sheet: Sheet) -> CylinderBlock:
    """The block that holds the seat of the upper beat."""
    return sheet.follow(sheet.follow(valve.upper_beat.seat).pressed_into)
