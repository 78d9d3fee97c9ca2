"""How the readers of a table refuse it, and how they read numbers and text."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from typing import Any, TypeVar

Numbers = tuple[float, ...]
#: Says what is wrong, and what to write instead.
Complain = Callable[[str, str], None]
T = TypeVar("T")


class RefusedError(Exception):
    """Something that cannot be used, and what to write instead; it never leaves this package."""

    def __init__(self, message: str, write: str = "") -> None:
        super().__init__(message)
        self.write = write


def attempt(read: Callable[[], T], complain: Complain) -> T | None:
    """What ``read`` gives; or a complaint, and nothing, when it refuses."""
    try:
        return read()
    except RefusedError as refusal:
        complain(str(refusal), refusal.write)
        return None


def numbers(value: Any, key: str) -> Numbers:
    """A number or a list of numbers, each finite."""
    listed = value if isinstance(value, list) else [value]
    for number in listed:
        if isinstance(number, bool) or not isinstance(number, int | float) or not math.isfinite(number):
            raise RefusedError(f"{key} holds {number!r}", "a number or a list of numbers")
    return tuple(float(number) for number in listed)


def one_number(value: Any, key: str) -> float:
    """A single number."""
    found = numbers(value, key)
    if len(found) != 1:
        raise RefusedError(f"{key} is one number", f"{key} = 0.3")
    return found[0]


def rising(listed: Numbers, key: str) -> Numbers:
    """The same numbers, when they rise."""
    if any(b <= a for a, b in itertools.pairwise(listed)):
        raise RefusedError(f"{key} must rise", "each number greater than the one before")
    return listed


def text(value: Any, key: str) -> str:
    """Text, or nothing where the key is absent."""
    if value is None:
        return ""
    if not isinstance(value, str):
        raise RefusedError(f"{key} is text", f'{key} = "..."')
    return value
