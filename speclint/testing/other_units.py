"""A design in other units: each quantity of the parts of a check written in inch-pound units, or in metric ones."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from speclint.quantities import DIMENSIONS, Measure, unit_in
from speclint.repository import Change
from speclint.testing.stated_quantities import StatedQuantity, factor_of, quantities_of, rewritten
from speclint.testing.trial import Trial

_DATUMS = ("gauge", "absolute", "difference")
_FAHRENHEIT = Fraction(9, 5)  # of a degree in a kelvin, by definition
_ICE, _ICE_IN_FAHRENHEIT = Fraction("273.15"), Fraction(32)


def in_other_units(trial: Trial) -> Iterator[Change]:
    """Each quantity of the parts that a check consulted, written in another unit: the same quantity.

    One of a dimension that has one unit alone, such as a hardness, stays as it is.
    """
    for one in quantities_of(trial):
        text = in_another_unit(one)
        if text is not None:
            yield one.written(text)


def in_another_unit(one: StatedQuantity) -> str | None:
    """The text of the same quantity in another unit, read as the same numbers; None where there is none."""
    dimension = one.measure.dimension
    text = _temperature(one) if dimension.startswith("temperature") else _other(one)
    now = one.read(text) if text is not None else None
    if now is None:
        return None
    return text if _limits(now) == _limits(one.measure) else None


def _limits(measure: Measure) -> tuple[float, float, float]:
    return measure.nominal, measure.low, measure.high


def _other(one: StatedQuantity) -> str | None:
    dimension = one.measure.dimension
    known = DIMENSIONS["pressure" if dimension == "fluid pressure" else dimension]
    unit = one.measure.unit
    imperial = unit_in("imperial", known.si, unit)
    wished = (imperial, known.shown, *known.units)
    other = next((name for name in wished if name in known.units and name != unit), None)
    if other is None or known.name.endswith("hardness"):
        return None
    by = factor_of(unit, dimension) / factor_of(other, dimension)
    written = f"{other} {one.measure.datum}".strip()
    return rewritten(one, lambda size: size * by, lambda amount: amount * by, written)


def _temperature(one: StatedQuantity) -> str | None:
    unit = one.measure.unit
    if one.measure.dimension == "temperature difference":
        if unit == "K":
            return rewritten(one, _more, _more, "°F difference")
        by = 1 / _FAHRENHEIT if unit.startswith("°F") else Fraction(1)
        return rewritten(one, lambda size: size * by, lambda amount: amount * by, "K")
    if unit == "°F":
        return rewritten(one, lambda size: (size - _ICE_IN_FAHRENHEIT) / _FAHRENHEIT, _less, "°C")
    ice = _ICE if unit == "K" else Fraction(0)
    return rewritten(one, lambda size: (size - ice) * _FAHRENHEIT + _ICE_IN_FAHRENHEIT, _more, "°F")


def _more(amount: Fraction) -> Fraction:
    return amount * _FAHRENHEIT


def _less(amount: Fraction) -> Fraction:
    return amount / _FAHRENHEIT
