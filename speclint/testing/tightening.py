"""A design with a tolerance made tighter: the same size, and limits that lie within those that were drawn."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from speclint.quantities import Measure, Written
from speclint.repository import Change
from speclint.testing.stated_quantities import StatedQuantity, number, quantities_of, signed
from speclint.testing.trial import Trial

#: Grades of tolerance from the coarse to the fine that are tried in the place of a class, ISO 286-1.
_FINER = 4


def tighter(trial: Trial) -> Iterator[Change]:
    """Each toleranced quantity that a check opened with half its tolerance about the same middle.

    A tolerance class becomes the next finer grade of the same letters whose limits lie within those of the coarser;
    the size as it is written stays.
    """
    for one in quantities_of(trial, opened=True):
        text = with_half_tolerance(one)
        if text is not None:
            yield one.written(text)


def with_half_tolerance(one: StatedQuantity) -> str | None:
    """The text of a quantity with a tighter tolerance; None where it has none, or none within the limits."""
    measure, was = one.measure, Written.of(one.text, one.measure.dimension)
    if was is None or measure.exact:
        return None
    texts = _finer_classes(was) if was.letters else iter([_halved(was)])
    return next((text for text in texts if _within(one.read(text), measure)), None)


def _within(now: Measure | None, measure: Measure) -> bool:
    """Whether the limits of another quantity lie within those of the first."""
    return now is not None and measure.low <= now.low and now.high <= measure.high


def _finer_classes(was: Written) -> Iterator[str]:
    grade = int(was.grade)
    for finer in range(grade - 1, max(grade - _FINER, 1), -1):
        yield f"{number(was.first)} {was.unit} {was.letters}{finer}"


def _halved(was: Written) -> str:
    if was.last is not None:
        quarter = (was.last - was.first) / 4
        return f"{number(was.first + quarter)}..{number(was.last - quarter)} {was.unit}".rstrip()
    size = f"{number(was.first)} {was.unit}".rstrip()
    if was.upper is not None and was.lower is not None:
        quarter = (was.upper - was.lower) / 4
        return f"{size} {signed(was.upper - quarter)}/{signed(was.lower + quarter)}"
    amount, _, unit = was.band.removeprefix("±").removesuffix("%").partition(" ")
    tail = "%" if was.band.endswith("%") else f" {unit}".rstrip()
    return f"{size} ±{number(Fraction(amount) / 2)}{tail}"
