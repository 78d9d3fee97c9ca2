"""Where a ring stands in its piston, by the groove that takes it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Piston, PistonRing

if TYPE_CHECKING:
    from speclint.specs import Groove


@formula("e = L − a − w", cites=[FIRST_PRINCIPLES])
def from_back_face(L: Metres, a: Metres, w: Metres) -> Metres:
    """From the back face of a piston to the nearer side of a groove.

    e = L − a − w

    ``L`` length of the piston, ``a`` from its front face to the nearer side of the groove, ``w`` width of the groove
    [m]. Returns [m].

    >>> round(from_back_face(L=0.150, a=0.098, w=0.016), 6)
    0.036
    """
    return L - a - w


def groove_of(ring: PistonRing, sheet: Sheet) -> tuple[Piston, str, Groove] | None:
    """The piston and the groove that take a ring, with the groove's name; None where none does, or several do."""
    found = [
        (piston, name, groove)
        for piston in sheet.belonging_to(ring, Piston)
        for name, groove in piston.grooves.items()
        if sheet.is_stated(f"ring of groove {name}", groove.takes)
        and sheet.follow(groove.takes).id == ring.id
    ]
    return found[0] if len(found) == 1 else None


def grooves_in_order(piston: Piston, sheet: Sheet) -> list[tuple[str, Groove]]:
    """The grooves of a piston from its front face on; none where one of them does not say where it is."""
    placed = grooves_with_places(piston, sheet)
    return placed if len(placed) == len(piston.grooves) else []


def grooves_with_places(piston: Piston, sheet: Sheet) -> list[tuple[str, Groove]]:
    """The grooves of a piston that say where they are, from its front face on."""
    places = {
        name: sheet.take_nominal(f"a of {name}", groove.at)
        for name, groove in piston.grooves.items()
        if sheet.is_stated(f"place of groove {name}", groove.at)
    }
    return [(name, piston.grooves[name]) for name in sorted(places, key=lambda name: places[name])]


def place_in_piston(ring: PistonRing, sheet: Sheet) -> Worked | None:
    """Whether a ring is the front, the back or a middle one of its piston, by the order of the grooves.

    None where the grooves do not tell: of a piston with one groove the ring is at both ends.
    """
    found = groove_of(ring, sheet)
    if found is None:
        return None
    piston, name, _ = found
    order = [one for one, _ in grooves_in_order(piston, sheet)]
    if len(order) < 2:
        return None
    word = {0: "front", len(order) - 1: "back"}.get(order.index(name), "middle")
    return worked(word, *(groove.at for groove in piston.grooves.values()))


def edge_by_groove(ring: PistonRing, place: str, sheet: Sheet, take: Take) -> Worked | None:
    """From the face of the piston at one end to the nearer side of the ring's groove; None where it is not drawn."""
    found = groove_of(ring, sheet)
    if found is None or place == "middle":
        return None
    piston, _, groove = found
    if not sheet.is_stated("place of the groove", groove.at):
        return None
    a = take("a", groove.at)
    if place == "front":
        return worked(a, groove.at)
    if not all(sheet.is_stated("size of piston or groove", one) for one in (piston.length, groove.width)):
        return None
    e = sheet.work("e_g", from_back_face, L=take("L_p", piston.length), a=a, w=take("w_g", groove.width))
    return worked(e, piston.length, groove.at, groove.width)


def edge_of_ring(ring: PistonRing, place: str, sheet: Sheet) -> float:
    """From the face of the piston at one end to the ring's nearer edge, m: by its groove, else as stated."""
    by_groove = edge_by_groove(ring, place, sheet, sheet.take)
    if by_groove is None:
        return sheet.take("e", ring.edge_from_piston_face)
    return by_groove.value  # type: ignore[no-any-return]  # a float, or an enclosure of one
