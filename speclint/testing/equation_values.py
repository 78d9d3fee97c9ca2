"""Where the symbols of a printed equation find their values: arguments, definitions, other formulae, units."""

from __future__ import annotations

import inspect
import math
import sys
from collections.abc import Callable, Iterator, Mapping
from functools import cache
from types import ModuleType
from typing import TYPE_CHECKING, Any

from speclint.equations import Described, described
from speclint.quantities import DIMENSIONS, sides
from speclint.testing.equation_grammar import Equation
from speclint.testing.equation_tokens import Unreadable
from speclint.testing.equation_tree import Expression, plain

if TYPE_CHECKING:
    import pint

_CONSTANTS = {"π": math.pi}
_TO_PINT = str.maketrans({"²": "^2", "³": "^3", "⁴": "^4", "·": "*", "Δ": None})
#: Units that the table of units has only within others, such as rev/min, and those of temperature.
_MORE = {
    "K": (1.0, "kelvin"),
    "°C": (1.0, "kelvin"),
    "°F": (1 / 1.8, "kelvin"),
    "rev": (2 * math.pi, "radian"),
    "mPa": (1e-3, "pascal"),
    "Btu": (1055.05585262, "joule"),  # International Table Btu
}


@cache
def unit_table() -> Mapping[str, tuple[float, str]]:
    """Every unit that stands for itself: its SI value, and the SI unit as pint writes it."""
    found = {
        unit: (size, dimension.pint or "dimensionless")
        for dimension in DIMENSIONS.values()
        for unit, size in dimension.units.items()
        if unit and not set(unit) & set("/·² ³")
    }
    return {**found, **_MORE}


class Floats:
    """Values as SI floats."""

    def __init__(
        self, equation: Equation, values: Mapping[str, Any], call: Callable[[str, tuple[Any, ...]], Any]
    ) -> None:
        self._definitions, self._values, self._call = equation.definitions, dict(values), call
        self._open: set[str] = set()
        self.taken: set[tuple[Expression, int]] = set()

    def value(self, symbol: str) -> Any:
        if symbol in self._values:
            return self._values[symbol]
        if symbol in self._definitions:
            return self._defined(symbol)
        if symbol in _CONSTANTS:
            return _CONSTANTS[symbol]
        if symbol in unit_table():
            return self.unit(symbol)
        raise Unreadable(f"nothing says what {symbol} is")

    def _defined(self, symbol: str) -> Any:
        if symbol in self._open:
            raise Unreadable(f"{symbol} is defined by itself")
        self._open.add(symbol)
        value = self._definitions[symbol].of(self)
        self._open.discard(symbol)
        self._values[symbol] = value
        return value

    def unit(self, symbol: str) -> Any:
        return unit_table()[symbol][0]

    def kelvins(self, value: float) -> Any:
        return value

    def called(self, name: str, arguments: tuple[Any, ...]) -> Any:
        return self._call(name, arguments)

    def chose(self, place: Expression, choice: int) -> None:
        self.taken.add((place, choice))


class Quantities(Floats):
    """Values as pint quantities, which refuse what has no dimension in common."""

    def unit(self, symbol: str) -> Any:
        size, unit = unit_table()[symbol]
        return quantity(size, "") if unit in ("dimensionless", "radian") else registry().Quantity(size, unit)

    def kelvins(self, value: float) -> Any:
        return registry().Quantity(value, "kelvin")


@cache
def registry() -> pint.UnitRegistry[float]:
    """The units of pint."""
    import pint

    return pint.UnitRegistry(autoconvert_offset_to_baseunit=True)


def quantity(value: float, unit: str) -> Any:
    """A value in an SI unit as the annotations write it; a hardness number and an angle are pure numbers."""
    hardness = any(unit == one.si and not one.pint for one in DIMENSIONS.values())
    if unit in ("", "rad") or hardness:
        return value
    return registry().Quantity(value, unit.translate(_TO_PINT))


def dimension_of(value: Any) -> Any:
    """The dimension of a quantity, as pint has it; a number has none."""
    return registry().dimensionless.dimensionality if isinstance(value, int | float) else value.dimensionality


class Functions:
    """What works the functions that an equation names: those given, or the one formula in sight with that symbol.

    They are annotated as formulae are, so that they can be worked in quantities too.
    """

    def __init__(self, about: Described, also: Mapping[str, Callable[..., Any]]) -> None:
        self._about, self._also = about, also

    def floats(self, name: str, arguments: tuple[Any, ...]) -> Any:
        """The value in SI floats."""
        return self._function(name, len(arguments))(*arguments)

    def quantities(self, name: str, arguments: tuple[Any, ...]) -> Any:
        """The value as a quantity; the arguments must have the dimensions that the annotations ask for."""
        function = self._function(name, len(arguments))
        about = Described(function, "", ())
        numbers = [_number(value, unit) for value, unit in zip(arguments, about.units.values(), strict=True)]
        return quantity(function(*numbers), about.unit)

    def _function(self, name: str, count: int) -> Callable[..., Any]:
        return self._also[name] if name in self._also else _formula_of(self._about, name, count)


def _number(value: Any, unit: str) -> Any:
    """The number of a quantity in an SI unit; pint refuses one of another dimension."""
    nothing = quantity(0.0, unit)
    if isinstance(nothing, float):
        return plain(value)
    return value.m_as(nothing.units) if hasattr(value, "m_as") else (nothing + value).magnitude


def _formula_of(about: Described, symbol: str, count: int) -> Callable[..., Any]:
    """The formula whose equation begins with a symbol, among those its module has or names."""
    found = {
        other.function: other
        for other in _in_sight(about)
        if other.function is not about.function
        and sides(other.equation)[0] == symbol
        and len(inspect.signature(other.function).parameters) == count
    }
    if len(found) != 1:
        several = ", ".join(sorted(one.function.__name__ for one in found.values())) or "none"
        raise Unreadable(
            f"{symbol}(…) of {count} means one formula in sight of the module, which has {several}"
        )
    return next(iter(found))


def _in_sight(about: Described) -> Iterator[Described]:
    module = sys.modules[about.function.__module__]
    for thing in vars(module).values():
        if isinstance(thing, ModuleType) and thing.__name__.partition(".")[0].startswith("speclint"):
            yield from (found for one in vars(thing).values() if (found := _described(one)))
        elif found := _described(thing):
            yield found


def _described(thing: Any) -> Described | None:
    try:
        return described(thing)
    except TypeError:
        return None
