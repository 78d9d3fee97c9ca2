"""What the fits of a valve seat say of it beside its own spec: friction, and the load that draws it out."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.rules import Sheet
from speclint.specs import Fit, ValveSeat


def fits_of_seat(seat: ValveSeat, sheet: Sheet) -> Iterator[Fit]:
    """The fits of which a seat is the inner part."""
    for fit in sheet.belonging_to(seat, Fit):
        if sheet.is_stated(f"shaft of {fit.id}", fit.shaft.of) and sheet.follow(fit.shaft.of) is seat:
            yield fit


def frictions_of_seat(seat: ValveSeat, sheet: Sheet) -> tuple[float, ...]:
    """Friction of a seat in its bore: as its spec states it, and as each of its fits that states one does."""
    fits = [
        fit for fit in fits_of_seat(seat, sheet) if sheet.is_stated(f"friction of {fit.id}", fit.friction)
    ]
    return (sheet.take("μ", seat.friction), *(sheet.take(f"μ of {fit.id}", fit.friction) for fit in fits))


def drag_on_seat(seat: ValveSeat, sheet: Sheet) -> float:
    """With what a valve that sticks draws at its seat, N: the greatest that its spec and its fits state."""
    fits = [fit for fit in fits_of_seat(seat, sheet) if sheet.is_stated(f"load on {fit.id}", fit.axial_load)]
    loads = [sheet.take(f"F_d of {fit.id}", fit.axial_load) for fit in fits]
    return (
        max(sheet.take("F_d", seat.sticking_drag), *loads) if loads else sheet.take("F_d", seat.sticking_drag)
    )
