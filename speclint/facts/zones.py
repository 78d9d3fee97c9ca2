"""Zones of geometrical tolerances: how wide they are, and what they do at a distance from their face."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, Source, formula, require
from speclint.rules import Sheet
from speclint.specs import Component, GeometricalTolerance, Length

ISO_2692 = Source("ISO 2692, Maximum material requirement", "2014", "virtual condition", memory=True)


def stated_zone(name: str, one: GeometricalTolerance, sheet: Sheet) -> Length:
    """The width of a zone, or its diameter where that is stated; to be taken."""
    return one.diameter_zone if sheet.is_stated(f"diameter of {name}", one.diameter_zone) else one.zone


def holds_at_most_material(name: str, one: GeometricalTolerance, sheet: Sheet) -> bool:
    """Whether a zone is stated for the maximum material of its size, and grows as the size leaves it."""
    return sheet.said(f"modifier of {name}", one.modifier) == "M"


def size_with_zone(name: str, one: GeometricalTolerance, part: Component, sheet: Sheet) -> Length:
    """The size, of the part, of the face to which a zone belongs. Ends the rule where the part has none of that key."""
    try:
        return part.under(sheet.read(f"size of {name}", one.of))
    except LookupError:
        said = f"{name} holds at maximum material, and {part.id} has no size of that name"
        raise sheet.not_assessed(said, one.where) from None


def zone_of(symbol: str, name: str, one: GeometricalTolerance, part: Component, sheet: Sheet) -> Metres:
    """How wide a zone of a part is at most: one for maximum material grows by the tolerance of its size."""
    t = sheet.take(symbol, stated_zone(name, one, sheet))
    if not holds_at_most_material(name, one, sheet):
        return t
    T = sheet.tolerance(f"T of {name}", size_with_zone(name, one, part, sheet))
    return sheet.work(symbol, zone_beside_size, t=t, T=T)


@formula("t_M = t + T", cites=[ISO_2692])
def zone_beside_size(t: Metres, T: Metres) -> Metres:
    """Width of a zone for maximum material where its size has left that.

    t_M = t + T

    ``t`` as stated; ``T`` by how much the size differs from that of maximum material, its whole tolerance at the most
    [m]. Returns [m].

    Hand working: 0.05 mm on a bore of 22 mm +0.021/0, at 22.021 mm: 0.071 mm.

    >>> round(zone_beside_size(t=0.05e-3, T=0.021e-3) * 1e3, 6)
    0.071
    """
    return t + T


@formula("e = t L/l", cites=[FIRST_PRINCIPLES])
def zone_at_distance(t: Metres, L: Metres, l: Metres) -> Metres:  # noqa: E741 (the length of the zone)
    """How far a zone of orientation lets something stand off at a distance.

    e = t L/l

    ``t`` zone over its own length [m]; ``L`` distance at which it counts [m]; ``l`` length over which the zone is
    stated [m]. Returns [m]. Raises OutOfRange unless ``l`` is above 0.

    Hand working: squareness 0.05 over 300 gives 0.05 × 1450/300 = 0.242 mm at 1450 mm.

    >>> round(zone_at_distance(t=0.05e-3, L=1.45, l=0.3) * 1e3, 3)
    0.242
    """
    require(l > 0, "the length of the zone must be above 0")
    return t * L / l
