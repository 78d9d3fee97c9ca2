"""Long lists of trials taken in shares: for several processors, or another each day."""

from __future__ import annotations

import argparse
from typing import TypeVar

T = TypeVar("T")


def add_part(reader: argparse.ArgumentParser) -> None:
    """The option that names a share."""
    reader.add_argument(
        "--part", default="1/1", help="which share of them, as 1/2: for several processors, or by the day"
    )


def share_of(trials: list[T], part: str) -> list[T]:
    """A share of some trials, each so many places after the last, so that every share meets all sorts.

    >>> share_of([1, 2, 3, 4, 5, 6, 7], "1/3"), share_of([1, 2, 3, 4, 5, 6, 7], "3/3")
    ([1, 4, 7], [3, 6])
    """
    number, parts = (int(one) for one in part.split("/"))
    return trials[number - 1 :: parts]
