"""How long a part is that is drawn out of a block in its frames, and over what length something still holds it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import COMMON_PRACTICE, Metres, Ratio, formula
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    Component,
    CompressionSpring,
    Piston,
    PistonRod,
    PoppetValve,
    ValveSeat,
    ValveSpindle,
)

if TYPE_CHECKING:
    from speclint.facts.taking import Take
    from speclint.specs import Length


@formula("h = d (n_t − n)/2", cites=[COMMON_PRACTICE])
def height_of_end_coils(d: Metres, n_t: Ratio, n: Ratio) -> Metres:
    """Height of the coils at one end of a spring that rest on one another, and that its pin or its housing holds.

    h = d (n_t − n)/2

    ``d`` wire [m]; ``n_t`` number of all coils; ``n`` number of working coils. Returns [m].

    Hand working: 8 × (13 − 11)/2 = 8 mm.

    >>> round(height_of_end_coils(d=0.008, n_t=13.0, n=11.0), 9)
    0.008
    """
    return d * (n_t - n) / 2


def own_length(part: Component) -> Length | None:
    """The size of a part along the axis on which it is drawn out; None of a kind that has no such size."""
    if isinstance(part, PoppetValve):
        return part.height
    if isinstance(part, CompressionSpring | PistonRod):
        return part.free_length
    if isinstance(part, ValveSeat | Piston):
        return part.length
    if isinstance(part, ValveSpindle):
        return part.heated_length
    return None


def engaged_length(part: Component, sheet: Sheet, take: Take) -> Worked | None:
    """Least length, m, that a part moves before nothing holds it; None of a kind that has no such sizes.

    That is of a spindle its guide, of a seat its joint, of a piston its length over the rings, of a rod its diameter in
    the crosshead, and of a spring on a pin or in a housing its coils at one end. None too where one is not stated.
    """
    if isinstance(part, CompressionSpring):
        return _end_coils(part, sheet, take)
    held = None
    if isinstance(part, ValveSpindle):
        held = part.guide_length
    elif isinstance(part, ValveSeat | Piston):
        held = part.length
    elif isinstance(part, PistonRod):
        held = part.diameter
    if held is None or not sheet.is_stated(f"held length of {part.id}", held):
        return None
    return worked(take(f"e_0 of {part.id}", held), held)


def _end_coils(spring: CompressionSpring, sheet: Sheet, take: Take) -> Worked | None:
    i = spring.id
    guided = (spring.guide_pin, spring.housing)
    if not any(sheet.is_stated(f"guide of {i}", one) for one in guided):
        return None
    sizes = {"d": spring.wire, "n_t": spring.total_coils, "n": spring.working_coils}
    if not all(sheet.is_stated(f"{name} of {i}", size) for name, size in sizes.items()):
        return None
    given = {name: take(f"{name} of {i}", size) for name, size in sizes.items()}
    return worked(sheet.work(f"e_0 of {i}", height_of_end_coils, **given), *sizes.values())
