"""The throat under a beat: as the valve's drawing states it, and what its seat, the block and the valve leave."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.seats import bore_of
from speclint.facts.taking import Take
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import NotStated, PoppetValve

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


@formula("d_r = D − 2 t", cites=[FIRST_PRINCIPLES])
def rim_inside(D: Metres, t: Metres) -> Metres:
    """Bore of the rim of a valve.

    d_r = D − 2 t

    ``D`` over the rim, ``t`` its wall [m]. Returns [m].

    Hand working: 149 − 2 × 6 = 137 mm.

    >>> round(rim_inside(D=0.149, t=0.006), 6)
    0.137
    """
    return D - 2 * t


def within_valve(
    valve: PoppetValve, beat: Beat, index: str, sheet: Sheet, take: Take | None = None
) -> Worked | None:
    """What the wall of its rim leaves the steam that flows through a valve, m; None of the beat whose steam does not.

    ``index`` begins with u of the upper beat and with l of the lower. None, too, where rim or wall is not stated.
    """
    through = sheet.said("steam flows through the valve", valve.through_valve)
    if through is None or through[0] != index[0]:
        return None
    if not all(sheet.is_stated(f"rim or wall, {through}", one) for one in (beat.rim_diameter, valve.wall)):
        return None
    take = take or sheet.take
    D, t = take(f"D_r {index}", beat.rim_diameter), take("t", valve.wall)
    return worked(sheet.work(f"d_r {index}", rim_inside, D=D, t=t), beat.rim_diameter, valve.wall)


def throat_of(valve: PoppetValve, beat: Beat, index: str, sheet: Sheet, take: Take | None = None) -> Metres:
    """Bore of the passage that a beat feeds, m: as stated, and no more than seat, block and the valve itself leave.

    ``take`` is how the sizes are taken, with their limits where none is given.
    """
    take = take or sheet.take
    sizes = [take(f"D_{index}", beat.throat)]
    sizes += [take(called, size) for called, size in around_throat(beat, index, sheet)]
    inside = within_valve(valve, beat, index, sheet, take)
    return min(sizes) if inside is None else min(*sizes, inside.value)
