"""From the text of a drawing to a number with limits: ``"480 mm H8"``, ``"17 bar gauge"``, ``"1 3/4 in"``.

A strict grammar reads number, unit and limits; pint's own string parser is never used (it reads
``"5,5 mm"`` as 55 mm and ``"5 mm; 3"`` as 15 mm). The grammar of a quantity::

    quantity = range unit datum? | number unit datum? limits?
    range    = number ".." number
    limits   = "±" number unit? | "±" number "%" | signed "/" signed | an ISO 286 class such as H8 or s6
    number   = decimal with a point | "7/8" | "1 3/4"
    datum    = "gauge" | "absolute" for fluid pressures; "difference" for differences written in °C or °F

>>> read("25 mm +0.05/-0.02", "length").high
0.02505
>>> read("1 3/4 in", "length").nominal
0.04445
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Literal, NamedTuple
from unicodedata import decimal

from speclint.errors import LARGEST_POWER, NOWHERE, Location, NotKnown, QuantityError, replace
from speclint.quantities import units
from speclint.quantities.mistakes import refuse_usual_mistakes
from speclint.quantities.unit_table import DIMENSIONS

#: Where a quantity comes from. What was measured on a part as made has no word in a spec: its record states it.
Provenance = Literal["drawing", "measured", "calculated", "assumed", "as made"]
PROVENANCES: tuple[Provenance, ...] = ("drawing", "measured", "calculated", "assumed")
Sign = Literal["positive", "not negative", "any"]
Datum = Literal["", "gauge", "absolute"]


@dataclass(frozen=True, slots=True)
class Measure:
    """A quantity as stated: SI nominal, low and high, and the text in which it was written.

    ``nominal`` is the basic size where limits or a tolerance class were written, and may then lie outside
    low to high (a shaft to s6 is wholly above it); for a range it is the middle. ``datum`` says of a fluid
    pressure whether it is above the atmosphere (gauge) or above vacuum (absolute). ``worked`` is the digest of what a
    quantity was worked from, where it was not stated: a concession rests on that and not on its last digits.
    """

    nominal: float
    low: float
    high: float
    dimension: str
    text: str = ""
    unit: str = ""
    datum: Datum = ""
    tolerance_class: str = ""
    provenance: Provenance = "drawing"
    note: str = ""
    where: Location = NOWHERE
    worked: str = ""

    @property
    def exact(self) -> bool:
        """True when the quantity has no tolerance."""
        return self.low == self.high

    def moved(self, by: float) -> Measure:
        """The same quantity with its nominal and both limits moved by a number of SI units."""
        return replace(self, nominal=self.nominal + by, low=self.low + by, high=self.high + by)


class _Scale(NamedTuple):
    """SI value = number × factor + offset; a difference has no offset."""

    factor: float | Fraction
    offset: float | Fraction
    unit: str

    def si(self, number: Fraction) -> float:
        """Exact until the last step, so that a value written at a limit sits at the limit.

        That step is a division of whole numbers, which Python rounds to the nearest float, whatever they have in
        common.
        """
        factor, offset = _decimal(self.factor), _decimal(self.offset)
        above, below = number.numerator * factor.numerator, number.denominator * factor.denominator
        return (above * offset.denominator + offset.numerator * below) / (below * offset.denominator)


@cache
def _decimal(value: float | Fraction) -> Fraction:
    return value if isinstance(value, Fraction) else Fraction(repr(value))


#: By unit, datum and dimension those that were met.
_scales: dict[tuple[str, str, str], _Scale] = {}
#: Characters of a quantity, digits of a number in it, and powers of ten between which its SI value lies: common
#: practice, far beyond what a drawing needs.
_LONGEST, _MOST_DIGITS, _LARGEST_POWER = 100, 20, LARGEST_POWER

#: Pa: more than the air has anywhere on the ground, 1085 hPa (WMO records of weather extremes, from memory).
_GREATEST_AIR = 1.1e5

_NUMBER = r"[+-]?(?:[0-9]+\s[0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?)"
_SIGNED = r"[+-]?[0-9]+(?:\.[0-9]+)?"
_UNIT = r"1e-6/K|10⁻⁶/K|1/[A-Za-z°]+|deg [CF]|[A-Za-zµμ°%\"][^±+\s]*(?:\s(?:lbf|m|ft|in)(?![A-Za-z0-9]))?"
#: A whole quantity, its parts by name.
GRAMMAR = re.compile(
    rf"(?P<first>{_NUMBER})(?:\s*\.\.\s*(?P<last>{_NUMBER}))?"
    rf"(?:\s*(?P<unit>(?!(?:gauge|absolute|difference)\b)(?:{_UNIT})))?"
    r"(?:\s+(?P<datum>gauge|absolute|difference))?"
    rf"(?:\s*±\s*(?P<band>{_NUMBER})\s*(?P<band_unit>(?:{_UNIT}))?"
    rf"|\s+(?P<upper>{_SIGNED})\s*/\s*(?P<lower>{_SIGNED})"
    r"|\s+(?P<letter>[A-Za-z]{1,2}[0-9]{1,2}))?"
)
_DIGITS = re.compile(r"[0-9][0-9.]*")
_EXPONENT = re.compile(r"[0-9][eE][+-]?([0-9]+)")

_ZERO_CELSIUS = Fraction("273.15")  # definition of the Celsius temperature, SI brochure, 9th edition
_FAHRENHEIT = Fraction(5, 9)  # one degree Fahrenheit in kelvin, by definition
_TEMPERATURES = {
    "K": _Scale(1.0, 0.0, "K"),
    "°C": _Scale(1.0, _ZERO_CELSIUS, "°C"),
    "°F": _Scale(_FAHRENHEIT, _ZERO_CELSIUS - 32 * _FAHRENHEIT, "°F"),  # 32 °F is 0 °C, by definition
}
_TEMPERATURE_SPELLINGS = {"degC": "°C", "deg C": "°C", "degF": "°F", "deg F": "°F"}

_EXAMPLES = {
    "length": '"480 mm", "480 mm H8", "25 mm +0.05/-0.02", "20.0..20.2 mm" or "1 3/4 in"',
    "fluid pressure": '"17 bar gauge", "18 bar absolute" or "250 psi gauge"',
    "temperature": '"310 °C" or "300..330 °C"',
    "temperature difference": '"50 K"',
    "angle": '"45 °" or "30 deg"',
    "mass": '"12.5 kg" or "28 lb"',
    "force": '"250 kN" or "25 tonf"',
    "moment": '"400 N·m" or "300 lbf·ft"',
    "stress": '"250 MPa" or "15 tonf/in²"',
    "stiffness": '"45 N/mm" or "250 lbf/in"',
    "speed": '"120 km/h" or "75 mph"',
    "rotational speed": '"360 rev/min"',
    "Brinell hardness": '"200 HB" or "190..220 HB"',
}


def read(text: str, dimension: str, sign: Sign = "positive", where: Location = NOWHERE) -> Measure:
    """Read a quantity of a dimension; every refusal says what to write instead.

    ``dimension`` is a name of :data:`speclint.quantities.unit_table.DIMENSIONS`, or ``"fluid pressure"``,
    ``"temperature"``, ``"temperature difference"``.

    :raises QuantityError: for anything outside the grammar, of another dimension, not finite, of a
        forbidden sign, with low above high, or with a tolerance class outside the tables.
    """
    _refuse_beyond_bounds(text)
    words = " ".join(text.split())
    found = GRAMMAR.fullmatch(words)
    if not found:
        refuse_usual_mistakes(words, dimension)
        raise QuantityError("this is not a number with its unit and limits", example(dimension))
    parts = found.groupdict()
    scale = _scale(parts["unit"] or "", parts["datum"] or "", dimension, words)
    nominal, low, high = _values(parts, scale, dimension)
    measure = Measure(
        nominal,
        low,
        high,
        dimension,
        words,
        scale.unit,
        _datum(parts["datum"] or "", dimension),
        parts["letter"] or "",
        where=where,
    )
    _check_size(measure)
    _check_sign(measure, sign)
    return measure


def _refuse_beyond_bounds(text: str) -> None:
    if len(text) > _LONGEST:
        said = f"a quantity has at most {_LONGEST} characters; this has {len(text)}"
        raise QuantityError(said, "a number with its unit and limits")
    if not text.isascii() and any(one.isdecimal() and not one.isascii() for one in text):
        plain = "".join(str(decimal(one)) if one.isdecimal() else one for one in text)
        raise QuantityError("digits are written 0 to 9", f'"{plain}"')
    if len(text) > _MOST_DIGITS and any(
        sum(map(str.isdigit, found)) > _MOST_DIGITS for found in _DIGITS.findall(text)
    ):
        raise QuantityError(f"a number has at most {_MOST_DIGITS} digits", "as many figures as are meant")
    if any(int(power) > _LARGEST_POWER for power in _EXPONENT.findall(text)):
        said = f"an exponent lies between -{_LARGEST_POWER} and {_LARGEST_POWER}"
        raise QuantityError(said, "the number in another unit")


def _check_size(measure: Measure) -> None:
    for value in (measure.nominal, measure.low, measure.high):
        if value and not 10.0**-_LARGEST_POWER <= abs(value) <= 10.0**_LARGEST_POWER:
            said = f"in SI units this lies outside 1e-{_LARGEST_POWER} to 1e{_LARGEST_POWER}"
            raise QuantityError(said, example(measure.dimension))


def _scale(unit: str, datum: str, dimension: str, words: str) -> _Scale:
    known = _scales.get((unit, datum, dimension))
    if known is None:
        known = _scales[unit, datum, dimension] = _new_scale(unit, datum, dimension, words)
    return known


def _new_scale(unit: str, datum: str, dimension: str, words: str) -> _Scale:
    try:
        return _scale_of(unit, datum, dimension, words)
    except QuantityError:
        refuse_usual_mistakes(words, dimension)  # as psig, and 50 ±0.1 mm, which the grammar can read
        raise


def _scale_of(unit: str, datum: str, dimension: str, words: str) -> _Scale:
    if dimension.startswith("temperature"):
        return _temperature_scale(unit, datum, dimension, words)
    plain = "pressure" if dimension == "fluid pressure" else dimension
    factor = units.factor(unit, plain)
    if dimension == "fluid pressure" and datum not in ("gauge", "absolute"):
        raise QuantityError(
            "a fluid pressure must say whether it is gauge or absolute",
            f'"{words} gauge" or "{words} absolute"',
        )
    if dimension != "fluid pressure" and datum:
        raise QuantityError(
            f'"{datum}" does not belong to {units.with_article(dimension)}',
            f'"{words.replace(datum, "").strip()}"',
        )
    return _Scale(factor, 0.0, units.canonical(unit))


def _temperature_scale(unit: str, datum: str, dimension: str, words: str) -> _Scale:
    spelling = _TEMPERATURE_SPELLINGS.get(unit, unit)
    if spelling not in _TEMPERATURES or datum not in ("", "difference"):
        raise QuantityError(f'"{unit}" is no unit of {dimension}', example(dimension))
    scale = _TEMPERATURES[spelling]
    if dimension == "temperature":
        if datum:
            raise QuantityError(
                "a temperature is wanted here, not a difference", f'"{words.split(datum)[0].strip()}"'
            )
        return scale
    if spelling != "K" and datum != "difference":
        raise QuantityError(
            "a temperature difference is wanted here", f'a number with K, or "{words} difference"'
        )
    return _Scale(scale.factor, 0.0, spelling if spelling == "K" else f"{spelling} difference")


def _datum(word: str, dimension: str) -> Datum:
    if dimension != "fluid pressure":
        return ""
    return "gauge" if word == "gauge" else "absolute"


def _values(parts: dict[str, str | None], scale: _Scale, dimension: str) -> tuple[float, float, float]:
    first = as_fraction(parts["first"] or "")
    if parts["last"] is not None:
        last = as_fraction(parts["last"])
        if last < first:
            raise QuantityError(
                "the low end is above the high end", f'"{parts["last"]}..{parts["first"]} {scale.unit}"'
            )
        if parts["band"] or parts["upper"] or parts["letter"]:
            raise QuantityError(
                "a range has its limits already", f'"{parts["first"]}..{parts["last"]} {scale.unit}"'
            )
        return scale.si((first + last) / 2), scale.si(first), scale.si(last)
    nominal = scale.si(first)
    return nominal, *_limits(parts, first, nominal, scale, dimension)


def _limits(
    parts: dict[str, str | None], first: Fraction, nominal: float, scale: _Scale, dimension: str
) -> tuple[float, float]:
    if parts["band"] is not None:
        return _equal_limits(as_fraction(parts["band"]), parts["band_unit"] or "", first, scale, dimension)
    if parts["upper"] is not None and parts["lower"] is not None:
        upper, lower = as_fraction(parts["upper"]), as_fraction(parts["lower"])
        if lower > upper:
            raise QuantityError(
                "the upper deviation is written first", f'"{parts["lower"]}/{parts["upper"]}"'
            )
        return scale.si(first + lower), scale.si(first + upper)
    if parts["letter"] is not None:
        return _class_limits(nominal, parts["letter"], dimension)
    return nominal, nominal


def _equal_limits(
    band: Fraction, unit: str, first: Fraction, scale: _Scale, dimension: str
) -> tuple[float, float]:
    if band < 0:
        raise QuantityError("the number after ± has no sign", f"±{float(abs(band)):g}")
    if unit == "%" and dimension != "ratio":
        if dimension == "temperature":
            raise QuantityError("a temperature has no percentage", '"310 °C ±20"')
        half = abs(first) * band / 100
        return scale.si(first - half), scale.si(first + half)
    if not unit or units.canonical(unit) == scale.unit or _TEMPERATURE_SPELLINGS.get(unit) == scale.unit:
        return scale.si(first - band), scale.si(first + band)
    if dimension.startswith("temperature"):
        raise QuantityError(
            f'the limits are in "{unit}"', f"the unit of the temperature itself, {scale.unit}"
        )
    other = units.factor(unit, "pressure" if dimension == "fluid pressure" else dimension)
    reach = float(band * _decimal(other))
    return scale.si(first) - reach, scale.si(first) + reach


def _class_limits(nominal: float, letter: str, dimension: str) -> tuple[float, float]:
    from speclint.quantities.tolerance_classes import (
        deviations,  # the tables are read only where a class is written
    )

    if dimension != "length":
        raise QuantityError(
            f'"{letter}" is a class of limits for lengths',
            f"limits such as ±1 for {units.with_article(dimension)}",
        )
    try:
        lower, upper = deviations(nominal, letter)
    except NotKnown as problem:
        raise QuantityError(
            str(problem), 'a class of the tables, or limits such as "+0.05/-0.02"'
        ) from problem
    return nominal + lower, nominal + upper


def as_fraction(text: str) -> Fraction:
    """A number of the grammar, exact.

    :raises QuantityError: for a fraction with the denominator 0.
    """
    whole, _, part = text.partition(".")
    if whole.isdecimal() and (part.isdecimal() or not part):  # most are, and are read so at once
        return Fraction(int(whole + part), 10 ** len(part))
    sign = -1 if text.startswith("-") else 1
    try:
        return sign * sum((Fraction(part) for part in text.lstrip("+-").split()), Fraction(0))
    except ZeroDivisionError as problem:
        raise QuantityError("a fraction with the denominator 0", "a fraction such as 7/8") from problem


def _check_sign(measure: Measure, sign: Sign) -> None:
    absolute_scale = measure.dimension == "temperature" or measure.datum == "absolute"
    if absolute_scale and measure.low < 0:
        raise QuantityError("this is below absolute zero", example(measure.dimension))
    if measure.datum == "gauge" and measure.low < -_GREATEST_AIR:
        said = f"this is below a full vacuum: the air has nowhere more than {_GREATEST_AIR / 1e5:g} bar"
        raise QuantityError(said, example(measure.dimension))
    if measure.dimension == "temperature" or sign == "any":
        return
    if measure.low < 0:
        raise QuantityError(
            f"{units.with_article(measure.dimension)} is not negative here", example(measure.dimension)
        )
    if sign == "positive" and measure.low == 0:
        raise QuantityError(
            f"{units.with_article(measure.dimension)} of 0 is not possible here", "a value above zero"
        )


def example(dimension: str) -> str:
    """How a quantity of a dimension may be written."""
    if dimension in _EXAMPLES:
        return _EXAMPLES[dimension]
    known = DIMENSIONS[dimension]
    return f'"12 {known.shown}"' if known.shown else '"0.12" or "12 %"'
