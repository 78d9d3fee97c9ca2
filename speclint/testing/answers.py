"""A formula answers with a number or refuses in words, whatever numbers it is given."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from itertools import combinations, islice
from typing import Any

from speclint.equations import described
from speclint.errors import OutOfRange
from speclint.testing.sampling import draws

_DRAWS = 6000  # at the most, until enough lie in range
_AT_LARGE = 300  # so many are tried wherever they lie
_FROM = 12  # so many draws in the formula's range are led out of it
_FAR = 1e3  # what was drawn, so many times and so many parts of it


def expect_answer(
    formula: Callable[..., Any],
    *,
    ranges: Mapping[str, tuple[float, float]] | None = None,
    **others: Any,
) -> None:
    """A formula gives a finite real number or raises OutOfRange, also at the ends and outside of its range.

    Tried with arguments drawn within its range, each of them then at 0, below 0, a thousand times and a thousandth of
    it, and each two of them alike. A division by zero is no fault: a sheet says so in words. ``ranges`` narrows what is
    drawn for an argument, by name, where few values are in range; ``others`` are the arguments that are no numbers.

    :raises AssertionError: where it ends otherwise, with the arguments.
    """
    for given in _tried(formula, ranges or {}, others):
        try:
            found = formula(**given, **others)
        except (OutOfRange, ZeroDivisionError):
            continue
        except Exception as problem:
            raise AssertionError(f"{_said(formula, given)} ends in {problem!r}") from problem
        if not _is_answer(found):
            raise AssertionError(f"{_said(formula, given)} gives {found!r}")


def _tried(
    formula: Callable[..., Any], ranges: Mapping[str, tuple[float, float]], others: Mapping[str, Any]
) -> Iterator[dict[str, float]]:
    within = (one for one in draws(described(formula), _DRAWS, ranges) if _answers(formula, one, others))
    first = list(islice(within, _FROM))
    if not first:
        raise AssertionError(f"no values tried lie in the range of {formula.__qualname__}")
    for given in first:
        yield given
        for name, value in given.items():
            yield from ({**given, name: other} for other in (0.0, -value, value * _FAR, value / _FAR))
        yield from ({**given, one: given[other]} for one, other in combinations(given, 2))
    yield from draws(described(formula), _AT_LARGE, {})


def _answers(formula: Callable[..., Any], given: Mapping[str, float], others: Mapping[str, Any]) -> bool:
    try:
        return _is_answer(formula(**given, **others))
    except Exception:  # what is tried at large ends in it again, and tells of it
        return False


def _is_answer(found: object) -> bool:
    return isinstance(found, int | float) and math.isfinite(found)


def _said(formula: Callable[..., Any], given: Mapping[str, float]) -> str:
    arguments = ", ".join(f"{name}={value:.6g}" for name, value in given.items())
    return f"{formula.__module__}.{formula.__qualname__}({arguments})"
