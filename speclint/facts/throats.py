"""The throat under a beat: as the valve's drawing states it, and what its seat and the block leave."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import Metres
from speclint.facts.seats import bore_of
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import NotStated

if TYPE_CHECKING:
    from speclint.specs import Beat


def around_throat(beat: Beat, name: str, sheet: Sheet) -> Iterator[tuple[str, Measure]]:
    """What the steam of a beat passes: the bore of its seat and the passage of the block beyond, each with its name."""
    if not sheet.is_stated(f"seat, {name}", beat.seat):
        return
    seat = sheet.follow(beat.seat)
    sizes: list[tuple[str, Measure | NotStated]] = [(f"bore of {seat.id}", seat.bore)]
    housed = (seat.pressed_into, seat.in_bore)
    if all(sheet.is_stated(f"place of {seat.id}", one) for one in housed):
        sizes.append((f"passage beyond {seat.id}", bore_of(seat, sheet).passage))
    for called, size in sizes:
        if sheet.is_stated(called, size) and isinstance(size, Measure):
            yield called, size


def throat_of(beat: Beat, index: str, sheet: Sheet) -> Metres:
    """Bore of the passage that a beat feeds, m: as stated, and no more than its seat and the block leave."""
    around = [sheet.take(called, size) for called, size in around_throat(beat, index, sheet)]
    stated = sheet.take(f"D_{index}", beat.throat)
    return min(stated, *around) if around else stated
