"""How the readers of one table refuse it."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from difflib import get_close_matches
from typing import Any

Numbers = tuple[float, ...]


class RefusedError(Exception):
    """A table that cannot be used, said in words; it never leaves this package."""


def nearest(written: str, known: Sequence[str]) -> str:
    """The nearest known word, as the end of a complaint."""
    close = get_close_matches(written, known, n=1)
    return f"; did you mean '{close[0]}'?" if close else f"; known are {', '.join(known)}"


def numbers(value: Any, key: str) -> Numbers:
    """A number or a list of numbers, each finite."""
    listed = value if isinstance(value, list) else [value]
    for number in listed:
        if isinstance(number, bool) or not isinstance(number, int | float) or not math.isfinite(number):
            raise RefusedError(f"{key} holds {number!r}: write a number or a list of numbers")
    return tuple(float(number) for number in listed)


def one_number(value: Any, key: str) -> float:
    """A single number."""
    found = numbers(value, key)
    if len(found) != 1:
        raise RefusedError(f"{key} is one number: write {key} = 0.3")
    return found[0]


def rising(listed: Numbers, key: str) -> Numbers:
    """The same numbers, when they rise."""
    if any(b <= a for a, b in itertools.pairwise(listed)):
        raise RefusedError(f"{key} must rise")
    return listed


def text(value: Any, key: str) -> str:
    """Text, or nothing where the key is absent."""
    if value is None:
        return ""
    if not isinstance(value, str):
        raise RefusedError(f'{key} is text: write {key} = "..."')
    return value
