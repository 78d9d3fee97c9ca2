"""A quantity written anew: another size, other limits or another class, its unit and its style as they were.

>>> quantity = Written.of("190 mm +0.150/+0.122", "length")
>>> str(quantity.with_limits_moved(Fraction("0.062")))
'190 mm +0.212/+0.184'
>>> str(Written.of("1 3/4 in", "length").at(Fraction(225, 128)))
'1 97/128 in'
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from msgspec import Struct

from speclint.errors import QuantityError, replace
from speclint.quantities.measure import GRAMMAR, Measure, Sign, as_fraction, read

#: Decimals beyond which a fraction of two and five is not written out; far beyond what a drawing states.
_PLACES = 15


class Written(Struct, frozen=True):
    """The parts of a quantity as it stands on the drawing, its numbers as exact fractions in its unit.

    ``first`` is the size, or the low end of a range whose high end is ``last``. ``upper`` and ``lower`` are deviations
    written with signs, ``band`` the text of equal limits from ± on, ``letters`` and ``grade`` a tolerance class.
    ``unit`` holds the datum too. ``fraction`` is true of a size written as a common fraction.
    """

    dimension: str
    first: Fraction
    unit: str
    last: Fraction | None
    upper: Fraction | None
    lower: Fraction | None
    band: str
    letters: str
    grade: str
    fraction: bool
    places: int

    @staticmethod
    def of(text: str, dimension: str) -> Written | None:
        """The parts of a text that :func:`~speclint.quantities.read` accepts; None for any other."""
        found = GRAMMAR.fullmatch(" ".join(text.split()))
        if found is None:
            return None
        parts = found.groupdict()
        first, last, letter = parts["first"], parts["last"], parts["letter"] or ""
        unit = " ".join(filter(None, (parts["unit"], parts["datum"])))
        band = f"±{parts['band']}{_spaced(parts['band_unit'])}" if parts["band"] else ""
        upper, lower = (None if parts[one] is None else as_fraction(parts[one]) for one in ("upper", "lower"))
        letters = letter.rstrip("0123456789")
        return Written(
            dimension,
            as_fraction(first),
            unit,
            None if last is None else as_fraction(last),
            upper,
            lower,
            band,
            letters,
            letter.removeprefix(letters),
            "/" in first,
            max((_decimals(one) for one in (parts["upper"], parts["lower"]) if one), default=0),
        )

    @property
    def has_limits(self) -> bool:
        """Whether limits are written, as numbers or as a class."""
        return bool(self.last is not None or self.upper is not None or self.band or self.letters)

    def at(self, size: Fraction) -> Written:
        """With another size and the same limits: of a range both ends move alike."""
        last = None if self.last is None else self.last + size - self.first
        return replace(self, first=size, last=last)

    def scaled(self, size: Fraction, step: Fraction) -> Written:
        """A range that begins at another size, its end in the same proportion, to a step."""
        assert self.last is not None  # as the caller has seen
        return replace(self, first=size, last=round(self.last * size / self.first / step) * step)

    def with_limits_moved(self, by: Fraction) -> Written:
        """With both written deviations moved, in the unit of the size; the size stays."""
        assert self.upper is not None  # as the caller has seen
        assert self.lower is not None
        return replace(self, upper=self.upper + by, lower=self.lower + by)

    def with_letters(self, letters: str) -> Written:
        """With another letter of the same grade."""
        return replace(self, letters=letters)

    def read(self, sign: Sign = "any") -> Measure | None:
        """The quantity as a spec would give it; None where such a text is refused."""
        try:
            return read(str(self), self.dimension, sign)
        except QuantityError:
            return None

    def __str__(self) -> str:
        size = _common(self.first) if self.fraction else decimal(self.first)
        if self.last is not None:
            ends = _common(self.last) if self.fraction else decimal(self.last)
            return _with_unit(f"{size}..{ends}", self.unit)
        text = _with_unit(size, self.unit)
        if self.upper is not None and self.lower is not None:
            return f"{text} {_signed(self.upper, self.places)}/{_signed(self.lower, self.places)}"
        tail = self.band or f"{self.letters}{self.grade}"
        return f"{text} {tail}" if tail else text


def decimal(number: Fraction, places: int = 0) -> str:
    """A number written out as a decimal, with some places at least.

    >>> decimal(Fraction("190.1")), decimal(Fraction("-0.5"), 3), decimal(Fraction(120))
    ('190.1', '-0.500', '120')
    """
    exact = Decimal(number.numerator) / Decimal(number.denominator)
    whole, _, behind = f"{exact:.{_PLACES}f}".partition(".")
    behind = behind.rstrip("0").ljust(places, "0")
    return f"{whole}.{behind}" if behind else whole


def _common(number: Fraction) -> str:
    """A number as a whole and a common fraction, as inches are written.

    >>> _common(Fraction(7, 4)), _common(Fraction(7, 8)), _common(Fraction(2)), _common(Fraction(-5, 4))
    ('1 3/4', '7/8', '2', '-1 1/4')
    """
    sign = "-" if number < 0 else ""
    whole, left = divmod(abs(number.numerator), number.denominator)
    part = f"{left}/{number.denominator}" if left else ""
    return sign + (" ".join(filter(None, (str(whole) if whole else "", part))) or "0")


def _signed(deviation: Fraction, places: int) -> str:
    if not deviation:
        return "0"
    text = decimal(deviation, places)
    return text if text.startswith("-") else f"+{text}"


def _decimals(text: str) -> int:
    return len(text.partition(".")[2])


def _spaced(unit: str | None) -> str:
    return "" if not unit else unit if unit == "%" else f" {unit}"


def _with_unit(number: str, unit: str) -> str:
    return f"{number} {unit}".rstrip()
