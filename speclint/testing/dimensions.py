"""Dimensions of formulae: run with quantities of pint, the result has the dimension that the formula states."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from itertools import product
from typing import Any

from speclint.equations import described
from speclint.errors import OutOfRange
from speclint.testing.equation_values import dimension_of, quantity

#: Values tried for each argument, until a formula finds them within its range: the span of SI values in machines.
_MAGNITUDES = (0.37, 1.9, 330.0, 2.1e5, 7e10, 0.011, 0.0013, 0.83, 21_000.0, 0.4, 1.3)


def expect_dimensions(formula: Callable[..., Any], **others: Any) -> None:
    """A formula run with quantities gives the dimension that its annotation states.

    ``others`` are the arguments that are no numbers, such as words, where they have no default. An empirical formula
    holds only in the units that it names, so it is not run.

    :raises AssertionError: where it gives another, or no values tried lie in its range.
    :raises pint.DimensionalityError: where it adds or compares what has not one dimension.
    """
    about = described(formula)
    if about.empirical:
        return
    found, stated = dimension_of(_first_in_range(formula, others)), dimension_of(quantity(0.0, about.unit))
    if found != stated:
        raise AssertionError(f"{formula.__qualname__} gives {found}, and is stated to give {stated}")


def _first_in_range(formula: Callable[..., Any], others: Mapping[str, Any]) -> Any:
    units = described(formula).units
    tried = product(_MAGNITUDES, repeat=len(units)) if len(units) <= 4 else _some(len(units))
    for values in tried:
        given = {
            name: quantity(value, unit) for (name, unit), value in zip(units.items(), values, strict=True)
        }
        try:
            return formula(**given, **others)
        except (OutOfRange, ZeroDivisionError, OverflowError):
            continue
    raise AssertionError(f"no values tried lie in the range of {formula.__qualname__}")


def _some(number: int) -> Iterator[tuple[float, ...]]:
    """Many combinations, the same at each run, spread over the magnitudes."""
    state = 1
    for _ in range(20_000):
        values = []
        for _ in range(number):
            state = (state * 48_271) % 2_147_483_647  # the minimal standard generator (Park and Miller 1988)
            values.append(_MAGNITUDES[state % len(_MAGNITUDES)] * (1 + (state >> 8) % 97 / 97))
        yield tuple(values)
