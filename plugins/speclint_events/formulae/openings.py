"""What a valve opens to the steam over its opening, from the coldest clearance to the most worn one, as readings."""

from __future__ import annotations

import math
from collections.abc import Callable

from speclint import FIRST_PRINCIPLES
from speclint.handbook.cams import CamMotion
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import ValvePassage, ValveTrain, last_fifth, mean_area

#: Crank angle after dead centre at which the early opening is measured.
EARLY = math.radians(10)


def greatest_lift(cam: CamMotion) -> Reading:
    """The greatest lift that a cam gives its tappet [m]."""
    places = {0.0, *cam.joins, cam.duration}
    top = max(cam.at(min(max(place, 0.0), cam.duration)).lift for place in places)
    return Reading.exact("greatest lift of the cam", top, "m", FIRST_PRINCIPLES)


def lift_at_dead_centre(hot: ValveTrain, others: tuple[ValveTrain, ...]) -> Reading:
    """Lift of a valve as its piston stands at the end's dead centre [m]."""
    return _band("lift of the valve at dead centre", "m", hot, others, lambda train: train.lift(0.0))


def early_opening(hot: ValveTrain, others: tuple[ValveTrain, ...], passage: ValvePassage) -> Reading:
    """Effective area 10° after dead centre over the greatest of the opening."""

    def share(train: ValveTrain) -> float:
        return passage.effective_area(train.lift(EARLY)) / passage.effective_area(train.greatest_lift)

    says = "effective area of valve and port 10° after dead centre over their greatest"
    return _band(says, "", hot, others, share)


def share_of_last_fifth(hot: ValveTrain, others: tuple[ValveTrain, ...], passage: ValvePassage) -> Reading:
    """Share of the area over the angle that the last fifth of the opening passes."""
    says = "share of the area over the angle that the last fifth of the opening passes"
    return _band(says, "", hot, others, lambda train: last_fifth(train, passage.effective_area))


def mean_effective_area(hot: ValveTrain, others: tuple[ValveTrain, ...], passage: ValvePassage) -> Reading:
    """Mean of the effective area over the opening [m²]."""
    says = "mean effective area of valve and port over the opening"
    return _band(says, "m²", hot, others, lambda train: mean_area(train, passage.effective_area))


def _band(
    says: str,
    unit: str,
    hot: ValveTrain,
    others: tuple[ValveTrain, ...],
    measured: Callable[[ValveTrain], float],
) -> Reading:
    nominal = measured(hot)
    values = [nominal, *(measured(train) for train in others)]
    return Reading(f"{says}: cold, hot, worn", nominal, min(values), max(values), unit, FIRST_PRINCIPLES)
