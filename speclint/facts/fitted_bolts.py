"""What the fits of the fitted bolts of a pad say of their holes and of the bolts."""

from __future__ import annotations

from speclint.facts.taken_sizes import is_size_of
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import Fit, FrameFastening, NotStated

_SHANK = "fitted_diameter"


def fits_of_bolts(fastening: FrameFastening, sheet: Sheet) -> tuple[Fit, ...]:
    """The fits whose shaft is the reamed shank of the bolts of a fastening."""
    return tuple(
        fit
        for fit in sheet.belonging_to(fastening, Fit)
        if is_size_of(fit.shaft, fastening, _SHANK, (f"shaft of {fit.id}", f"dimension of {fit.id}"), sheet)
    )


def holes_of_bolts(fastening: FrameFastening, sheet: Sheet) -> tuple[Measure | NotStated, ...]:
    """The holes of fitted bolts as each drawing gives them: first that of the fastening, then those of their fits."""
    return (fastening.hole, *(sheet.dimension(fit.hole) for fit in fits_of_bolts(fastening, sheet)))
