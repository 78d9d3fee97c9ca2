"""The shape of a maker of figures: what it is called, what it draws, and the function that draws."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class FigureMaker:
    """Figures for the review pack.

    ``make`` takes a :class:`speclint.checking.Assessment` and returns each :class:`speclint.reports.Figure`; it reads,
    and decides nothing. Whatever it draws with is imported when it is called.
    """

    name: str
    says: str
    make: Callable[[Any], Iterable[Any]]
