"""What a printed equation says, as a tree: its value for given symbols, as floats in SI or as pint quantities."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Protocol

ZERO_CELSIUS = 273.15  # K, exact: definition of the Celsius temperature
ZERO_FAHRENHEIT = 459.67  # °F, exact: definition of the Fahrenheit scale


class Names(Protocol):
    """Where the symbols of a tree find their values."""

    def value(self, symbol: str) -> Any:
        """The value of a symbol."""

    def called(self, name: str, arguments: tuple[Any, ...]) -> Any:
        """The value of a function that is none of the usual ones."""

    def kelvins(self, value: float) -> Any:
        """An absolute temperature."""

    def chose(self, place: Expression, choice: int) -> None:
        """Take note of which way a tree with several ways went."""


class Expression:
    """One node of the tree."""

    def of(self, names: Names) -> Any:
        """Its value."""
        raise NotImplementedError

    def inside(self) -> Iterator[Expression]:
        """The nodes directly below it."""
        return iter(())

    def ways(self) -> int:
        """In how many ways it can go: more than 1 for min, max, |x| and cases."""
        return 1


def everything_in(tree: Expression) -> Iterator[Expression]:
    """A tree and all that is below it."""
    yield tree
    for node in tree.inside():
        yield from everything_in(node)


@dataclass(frozen=True, eq=False)
class Number(Expression):
    """A number."""

    number: float

    def of(self, names: Names) -> Any:  # noqa: ARG002 - as every node
        return self.number

    def __str__(self) -> str:
        return f"{self.number:g}"


@dataclass(frozen=True, eq=False)
class Symbol(Expression):
    """A symbol: an argument, a constant, a unit or what the line defines itself."""

    name: str

    def of(self, names: Names) -> Any:
        return names.value(self.name)

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, eq=False)
class Operation(Expression):
    """Two nodes and the sign between them: one of + − · / ^."""

    sign: str
    left: Expression
    right: Expression

    def of(self, names: Names) -> Any:
        left, right = self.left.of(names), self.right.of(names)
        if self.sign == "+":
            return left + right
        if self.sign == "−":
            return -right if left == 0 and isinstance(self.left, Number) else left - right
        if self.sign == "·":
            return left * right
        if self.sign == "/":
            return left / right
        return _power(left, plain(right))

    def inside(self) -> Iterator[Expression]:
        yield from (self.left, self.right)

    def __str__(self) -> str:
        return f"({self.left} {self.sign} {self.right})"


#: The zero of a scale above absolute zero in its own degrees, and its degree in kelvins.
_DEGREES = {"°C": (ZERO_CELSIUS, 1.0), "°F": (ZERO_FAHRENHEIT, 1 / 1.8)}


@dataclass(frozen=True, eq=False)
class Temperature(Expression):
    """A reading of a thermometer: an absolute temperature."""

    reading: Expression
    degree: str

    def of(self, names: Names) -> Any:
        zero, step = _DEGREES[self.degree]
        return names.kelvins((plain(self.reading.of(names)) + zero) * step)

    def inside(self) -> Iterator[Expression]:
        yield self.reading

    def __str__(self) -> str:
        return f"({self.reading} {self.degree})"


@dataclass(frozen=True, eq=False)
class Call(Expression):
    """A function of what stands in its brackets; √, |x| and ⌊x⌋ are written as functions too."""

    name: str
    arguments: tuple[Expression, ...]

    def of(self, names: Names) -> Any:
        values = tuple(one.of(names) for one in self.arguments)
        if self.name in ("min", "max"):
            chosen = _extreme(self.name, values)
            names.chose(self, chosen)
            return values[chosen] + 0 * next((one for one in values if hasattr(one, "magnitude")), 0)
        if self.name == "|":
            names.chose(self, int(plain_sign(values[0]) < 0))
            return abs(values[0])
        if self.name == "√":
            return _power(values[0], 0.5)
        if self.name in _OF_NUMBERS:
            return _OF_NUMBERS[self.name](*(plain(value) for value in values))
        return names.called(self.name, values)

    def inside(self) -> Iterator[Expression]:
        yield from self.arguments

    def ways(self) -> int:
        return {"min": len(self.arguments), "max": len(self.arguments), "|": 2}.get(self.name, 1)

    def __str__(self) -> str:
        return f"{self.name}({', '.join(str(one) for one in self.arguments)})"


_OF_NUMBERS: Mapping[str, Callable[..., float]] = {
    "sin": math.sin,
    "cos": math.cos,
    "tan": math.tan,
    "arcsin": math.asin,
    "arccos": math.acos,
    "arctan": math.atan,
    "sinh": math.sinh,
    "cosh": math.cosh,
    "tanh": math.tanh,
    "ln": math.log,
    "lg": math.log10,
    "exp": math.exp,
    "⌊": math.floor,
}


@dataclass(frozen=True, eq=False)
class Comparison(Expression):
    """A condition such as ``0 < x ≤ c``."""

    terms: tuple[Expression, ...]
    signs: tuple[str, ...]

    def of(self, names: Names) -> bool:
        values = [term.of(names) for term in self.terms]
        return all(
            _HOLDS[sign](left, right)
            for sign, left, right in zip(self.signs, values, values[1:], strict=False)
        )

    def inside(self) -> Iterator[Expression]:
        yield from self.terms

    def __str__(self) -> str:
        return " ".join(
            part for pair in zip(map(str, self.terms), (*self.signs, ""), strict=False) for part in pair
        ).strip()


_HOLDS: Mapping[str, Callable[[Any, Any], bool]] = {
    "<": lambda left, right: bool(left < right),
    "≤": lambda left, right: bool(left <= right),
    ">": lambda left, right: bool(left > right),
    "≥": lambda left, right: bool(left >= right),
}


@dataclass(frozen=True, eq=False)
class Cases(Expression):
    """Values, each with the condition under which it holds; the last has none."""

    pieces: tuple[tuple[Comparison | None, Expression], ...]

    def of(self, names: Names) -> Any:
        for number, (condition, value) in enumerate(self.pieces):
            if condition is None or condition.of(names):
                names.chose(self, number)
                return value.of(names)
        raise AssertionError("the last case holds without condition")

    def inside(self) -> Iterator[Expression]:
        for condition, value in self.pieces:
            if condition is not None:
                yield condition
            yield value

    def ways(self) -> int:
        return len(self.pieces)

    def __str__(self) -> str:
        said = [f"{value} if {condition}" for condition, value in self.pieces[:-1]]
        return ", ".join([*said, f"else {self.pieces[-1][1]}"])


def _power(base: Any, exponent: float) -> Any:
    """A power; of a negative number the real root where the root is odd, such as a cube root."""
    if not hasattr(base, "magnitude") and base < 0 and not float(exponent).is_integer():
        root = round(1 / exponent)
        if math.isclose(1 / exponent, root) and root % 2:
            return -((-base) ** exponent)
        raise ValueError(f"a power {exponent} of the negative number {base!r}")
    return base**exponent


def plain(value: Any) -> Any:
    """A pure number; a pint quantity must have no dimension."""
    return value.m_as("") if hasattr(value, "m_as") else value


def plain_sign(value: Any) -> Any:
    """Something with the sign of a value."""
    return value.magnitude if hasattr(value, "magnitude") else value


def _extreme(name: str, values: tuple[Any, ...]) -> int:
    best = 0
    for number, value in enumerate(values[1:], start=1):
        if (value < values[best]) if name == "min" else (value > values[best]):
            best = number
    return best
