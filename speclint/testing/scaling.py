"""A design of twice the size: each quantity of the parts of a check as it is in one that is similar in every way.

Lengths are doubled, pressures, stresses, densities, speeds and temperatures stay, and all others follow from these by
their dimensions: areas and forces four times as large, masses and moments eight times, times twice as long.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from speclint.repository import Change
from speclint.testing.stated_quantities import (
    StatedQuantity,
    factor_of,
    number,
    quantities_of,
    rewritten,
    signed,
)
from speclint.testing.trial import Trial

#: Decimals of a size or a deviation, in its unit, beyond which there is only what rounding leaves.
_PLACES = 9
#: How often a quantity is doubled in a design of twice the size, by its dimension: with pressure and density as they
#: are, mass goes with the third power of length and time with the first.
_POWERS: Mapping[str, int] = {
    "length": 1,
    "area": 2,
    "volume": 3,
    "mass": 3,
    "force": 2,
    "moment": 3,
    "energy": 3,
    "power": 2,
    "mass flow": 2,
    "stiffness": 1,
    "inertia": 5,
    "time": 1,
    "frequency": -1,
    "rotational speed": -1,
    "acceleration": -1,
}


def twice_the_size(trial: Trial) -> list[Change] | None:
    """The changes that make all that a check opened twice its size; None where one cannot be.

    A tolerance class is written as deviations, since those of the same class grow in steps and by less than the size.
    """
    changes = []
    for one in quantities_of(trial, opened=True):
        power = _POWERS.get(one.measure.dimension, 0)
        if power:
            text = _doubled(one, power)
            if text is None:
                return None
            changes.append(one.written(text))
    return changes


def _doubled(one: StatedQuantity, power: int) -> str | None:
    by = Fraction(2) ** power
    if one.measure.tolerance_class:
        text: str | None = _with_deviations(one, by)
    else:
        text = rewritten(one, lambda size: size * by, lambda amount: amount * by)
    return text if text is not None and one.read(text) is not None else None


def _with_deviations(one: StatedQuantity, by: Fraction) -> str:
    """A size of a tolerance class as a multiple, with the deviations of the class as many times as wide."""
    measure = one.measure
    unit = factor_of(measure.unit, measure.dimension)
    size, upper, lower = (
        round(Fraction(value) / unit, _PLACES) * by
        for value in (measure.nominal, measure.high - measure.nominal, measure.low - measure.nominal)
    )
    return f"{number(size)} {measure.unit} {signed(upper)}/{signed(lower)}"
