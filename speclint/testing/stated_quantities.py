"""The quantities that the parts of a check state, each with the text that stands there, and how another is written."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Context, Decimal
from fractions import Fraction

from speclint.errors import DesignError, QuantityError
from speclint.quantities import Measure, Written, read, units
from speclint.repository import Change, steps_of_key
from speclint.testing.trial import Trial

#: Digits that a number of the grammar may have: with so many it is read as the nearest float of what is meant.
_DIGITS = 20
_IN_FULL = Context(prec=_DIGITS)


@dataclass(frozen=True, slots=True)
class StatedQuantity:
    """A quantity of a part: its spec, the key under which its text stands, and the text."""

    spec: str
    key: str
    text: str
    measure: Measure

    def written(self, text: str) -> Change:
        """The change with which another text stands there."""
        return Change(self.spec, self.key, text)

    def read(self, text: str) -> Measure | None:
        """Another text as it would be read there; None where it is no such quantity."""
        try:
            return read(text, self.measure.dimension, "any")
        except QuantityError:
            return None


def quantities_of(trial: Trial, *, opened: bool = False) -> Iterator[StatedQuantity]:
    """The quantities that the parts which a check consulted state, each once; or only those that it opened."""
    seen = trial.done.consulted.opened
    for name in sorted(trial.done.consulted.ids):
        spec = trial.design.design.specs.get(name)
        for key, value in spec.at_keys() if spec is not None else ():
            if isinstance(value, Measure) and not (
                opened and (value.where.file, value.where.part, value.where.key) not in seen
            ):
                found = _stated(trial, name, key, value)
                if found is not None:
                    yield found


def _stated(trial: Trial, name: str, key: str, value: Measure) -> StatedQuantity | None:
    try:
        raw, _ = trial.design.raw_at(name, key)
    except DesignError:  # worked from something else, so that no text stands there
        return None
    last = steps_of_key(key)[-1]
    if isinstance(raw, list) and isinstance(last, int):
        raw = raw[last]
    if isinstance(raw, dict) and "value" in raw:
        key, raw = f"{key}.value", raw["value"]
    if not isinstance(raw, str) or Written.of(raw, value.dimension) is None:
        return None
    return StatedQuantity(name, key, raw, value)


def number(value: Fraction) -> str:
    """A number exactly, as a decimal or a common fraction, where the grammar has room for it; else to 20 digits.

    >>> number(Fraction("25.4")), number(Fraction(2400, 127)), number(Fraction(1, 3**40))
    ('25.4', '2400/127', '8.2252633399699590813E-20')
    """
    nearest = _IN_FULL.divide(Decimal(value.numerator), Decimal(value.denominator))
    if value != Fraction(nearest) and len(str(abs(value.numerator)) + str(value.denominator)) <= _DIGITS:
        return str(value)
    text = (
        str(nearest)
        if nearest.adjusted() >= 0 or len(nearest.as_tuple().digits) < _DIGITS
        else f"{nearest:E}"
    )
    return text if "E" in text or "." not in text else text.rstrip("0").rstrip(".")


def signed(value: Fraction) -> str:
    """A deviation with its sign, as written limits have it: a decimal without an exponent, of 20 digits at the most.

    >>> signed(Fraction("0.05")), signed(Fraction("-0.02")), signed(Fraction(0)), signed(Fraction(1, 3))
    ('+0.05', '-0.02', '0', '+0.3333333333333333333')
    """
    nearest = _IN_FULL.divide(Decimal(value.numerator), Decimal(value.denominator))
    places = _DIGITS - 1 - max(nearest.adjusted(), 0)
    text = f"{nearest:+.{places}f}".rstrip("0").rstrip(".")
    return text if Fraction(text) else "0"


def rewritten(
    one: StatedQuantity,
    size: Callable[[Fraction], Fraction],
    deviation: Callable[[Fraction], Fraction],
    unit: str | None = None,
) -> str | None:
    """The text with another size, its deviations another amount, and its unit as it is or another.

    A tolerance class stays, since its limits follow from the size; a band with a unit of its own stays too. None where
    a band is a share of the size.
    """
    was = Written.of(one.text, one.measure.dimension)
    if was is None or was.band.endswith("%"):
        return None
    text = number(size(was.first))
    if was.last is not None:
        text += f"..{number(size(was.last))}"
    text = f"{text} {was.unit if unit is None else unit}".rstrip()
    if was.upper is not None and was.lower is not None:
        return f"{text} {signed(deviation(was.upper))}/{signed(deviation(was.lower))}"
    if was.band:
        amount, _, own = was.band.removeprefix("±").partition(" ")
        band = was.band if own else f"±{number(deviation(Fraction(amount)))}"
        return f"{text} {band}"
    return f"{text} {was.letters}{was.grade}".rstrip()


def factor_of(unit: str, dimension: str) -> Fraction:
    """How much of the SI unit one of a unit is, exact as the table of units has it; without its datum."""
    plain = "pressure" if dimension == "fluid pressure" else dimension
    return Fraction(repr(units.factor(unit, plain)))
