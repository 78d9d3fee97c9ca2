"""A design made worse in one way: pressures raised, temperatures raised, wear faster, axes further out of line."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction

from speclint.repository import Change
from speclint.testing.declared_properties import Direction
from speclint.testing.stated_quantities import StatedQuantity, quantities_of, rewritten
from speclint.testing.trial import Trial

#: By how much each is raised: enough to be seen, and little enough that the design can still be read.
_PRESSURE, _WEAR, _ECCENTRICITY = Fraction(11, 10), Fraction(3, 2), Fraction(3, 2)
_HOTTER = Fraction(20)  # K
_FAHRENHEIT = Fraction(9, 5)  # of a degree in a kelvin, by definition


def changed_in(trial: Trial, direction: Direction) -> Iterator[Change]:
    """The changes that make the design of a check worse in one way, to be made together.

    Pressures of fluids are raised by a tenth, each from its own datum; temperatures by 20 K; what wears does so half as
    fast again; eccentricities are half as large again.
    """
    for one in quantities_of(trial, opened=True):
        if _concerns(direction, one):
            text = _RAISED[direction](one)
            if text is not None and one.read(text) is not None:
                yield one.written(text)


def _concerns(direction: Direction, one: StatedQuantity) -> bool:
    key = one.key.removesuffix(".value")
    if direction == "pressure":
        return one.measure.dimension == "fluid pressure"
    if direction == "temperature":
        return one.measure.dimension == "temperature"
    if direction == "wear":
        return f".{key}".endswith(".wear.rate")
    return f".{key}".endswith("eccentricity")


def _times(by: Fraction) -> Callable[[StatedQuantity], str | None]:
    return lambda one: rewritten(one, lambda size: size * by, lambda amount: amount)


def _hotter(one: StatedQuantity) -> str | None:
    by = _HOTTER * _FAHRENHEIT if one.measure.unit.startswith("°F") else _HOTTER
    return rewritten(one, lambda size: size + by, lambda amount: amount)


_RAISED: Mapping[Direction, Callable[[StatedQuantity], str | None]] = {
    "pressure": _times(_PRESSURE),
    "temperature": _hotter,
    "wear": _times(_WEAR),
    "eccentricity": _times(_ECCENTRICITY),
}
