"""Values to try a formula with: spread over what the trade meets, repeatable, in the units of the annotations."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from random import Random

from speclint.equations import Described

#: From the least to the greatest value tried for an SI unit: common practice, parts and conditions of a locomotive.
_RANGES: Mapping[str, tuple[float, float]] = {
    "rad": (0.02, 6.3),
    "m": (0.0005, 2.0),
    "m²": (1e-5, 1.0),
    "m³": (1e-7, 0.1),
    "m⁴": (1e-10, 1e-3),
    "s": (0.1, 1e4),
    "kg": (0.05, 1e4),
    "kg·m²": (1e-4, 100.0),
    "N": (1.0, 1e6),
    "N·m": (0.1, 1e5),
    "N/m": (1e3, 1e10),
    "Pa": (1e4, 4e11),
    "K": (250.0, 1000.0),
    "ΔK": (0.1, 600.0),
    "1/K": (5e-6, 4e-5),
    "m/s": (0.05, 60.0),
    "rad/s": (0.1, 100.0),
    "1/s": (0.05, 1e3),
    "kg/m³": (0.1, 1e4),
    "J/kg": (5e4, 4e6),
    "J/(kg·K)": (50.0, 1e4),
    "Pa·s": (1e-5, 1.0),
    "m²/s": (1e-7, 1e-3),
}
#: Pure numbers are shares, factors and ratios, small parts of a whole, and numbers of cycles, of Reynolds and others.
_PURE = ((0.1, 1.0), (0.5, 50.0), (1e-4, 0.1), (50.0, 1e10))
_PURE_WEIGHTS = (5, 3, 1, 1)
_OTHERS = (0.01, 100.0)
_SIGNED = frozenset({"", "m", "N", "N·m", "Pa", "ΔK", "m/s", "m/s²", "rad", "m/rad", "m/rad²"})
_WIDE = 10.0
_MODULI = ("E", "G")  # no modulus of elasticity is below 0
_OFTEN_SIGNED = 0.15  # share of draws in which each value that may be negative is


def draws(
    about: Described, count: int, ranges: Mapping[str, tuple[float, float]]
) -> Iterator[dict[str, float]]:
    """Values for every argument that is a number; ``ranges`` narrows those of some, by name.

    Of six draws two have values below 0 among those that may be, and one has two values of a unit alike.
    """
    chance = Random(about.function.__qualname__)
    for number in range(count):
        signed, alike = number % 3 == 2, number % 6 == 4
        values = {name: _one(chance, name, unit, ranges, signed) for name, unit in about.units.items()}
        if alike:
            free = {name: unit for name, unit in about.units.items() if name not in ranges}
            _make_two_alike(chance, values, free)
        yield values


def _make_two_alike(chance: Random, values: dict[str, float], units: Mapping[str, str]) -> None:
    pairs = [(one, other) for one in units for other in units if one != other and units[one] == units[other]]
    if pairs:
        one, other = chance.choice(pairs)
        values[one] = values[other]


def _one(
    chance: Random, name: str, unit: str, ranges: Mapping[str, tuple[float, float]], signed: bool
) -> float:
    if name in ranges:
        return _between(chance, *ranges[name])
    low, high = _RANGES.get(unit, _OTHERS) if unit else chance.choices(_PURE, _PURE_WEIGHTS)[0]
    value = _between(chance, low, high)
    may_be_below = unit in _SIGNED and not (unit == "Pa" and name.startswith(_MODULI))
    if signed and may_be_below and chance.random() < _OFTEN_SIGNED:
        return -value
    return value


def _between(chance: Random, low: float, high: float) -> float:
    """A value between two ends, as likely in every decade where they span several."""
    if low > 0 and high > _WIDE * low:
        return math.exp(chance.uniform(math.log(low), math.log(high)))
    return chance.uniform(low, high)
