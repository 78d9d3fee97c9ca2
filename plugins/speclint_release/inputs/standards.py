"""The least and the most that the standard of a metal allows, each alone."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from speclint import replace
from speclint.handbook.tables import Reading


def least_of(question: Callable[..., Reading]) -> Callable[..., Reading]:
    """A question to a material, answered by the least that its standard allows alone."""
    return _at_one_end(question, "least", lambda found: found.low)


def most_of(question: Callable[..., Reading]) -> Callable[..., Reading]:
    """A question to a material, answered by the most that its standard allows alone."""
    return _at_one_end(question, "most", lambda found: found.high)


def _at_one_end(
    question: Callable[..., Reading], called: str, end_of: Callable[[Reading], float]
) -> Callable[..., Reading]:
    def asked(**at: Any) -> Reading:
        found = question(**at)
        end = end_of(found)
        return replace(found, nominal=end, low=end, high=end)

    asked.__name__ = f"{called} {question.__name__}"
    return asked
