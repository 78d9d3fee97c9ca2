"""The length over which a liner touches the block."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked
from speclint.specs import CylinderLiner

if TYPE_CHECKING:
    from speclint.specs import RelievedLength, SealingLand


@formula("L = L_0 + x_2 − x_1", cites=[FIRST_PRINCIPLES])
def all_lands(L_0: Metres, x_1: Metres, x_2: Metres) -> Metres:
    """Length of some lands and one more.

    L = L_0 + x_2 − x_1

    ``L_0`` of the others; ``x_1``, ``x_2`` where the one more begins and ends [m]. Returns [m].

    Hand working: 29 + (325 − 85) = 269 mm.

    >>> round(all_lands(L_0=0.029, x_1=0.085, x_2=0.325) * 1e3, 6)
    269.0
    """
    return L_0 + x_2 - x_1


def is_drawn(one: SealingLand | RelievedLength, sheet: Sheet) -> bool:
    """Whether a length along a liner states both of its ends."""
    return sheet.is_stated("start", one.starts) and sheet.is_stated("end", one.ends)


def length_of_lands(liner: CylinderLiner, sheet: Sheet, take: Take) -> Worked | None:
    """The lands of a liner together, m; None where it states none, or not the ends of each."""
    lands = liner.lands.values()
    if not lands or not all(is_drawn(land, sheet) for land in lands):
        return None
    L = 0.0
    for number, land in enumerate(lands, start=1):
        L = sheet.work(
            f"L_{number}", all_lands, L_0=L, x_1=take("x_1", land.starts), x_2=take("x_2", land.ends)
        )
    return Worked(L, tuple(one.where for land in lands for one in (land.starts, land.ends)))


def lengths_of_fit(liner: CylinderLiner, sheet: Sheet) -> tuple[float, ...]:
    """Length over which a liner touches its bore, m: as stated, and of its lands together, whichever are known."""
    by_lands = length_of_lands(liner, sheet, sheet.take)
    known: tuple[float, ...] = () if by_lands is None else (by_lands.value,)
    if not known or sheet.is_stated("length of fit", liner.fit_length):
        return (sheet.take("L", liner.fit_length), *known)
    return known
