"""The shape of a maker of figures: what it is called, what it draws, and the function that draws."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from msgspec import Struct


class FigureMaker(Struct, frozen=True):
    """Figures for the review pack.

    ``make`` takes a :class:`speclint.checking.Assessment` and returns each :class:`speclint.reports.Figure`; it reads,
    and decides nothing. Whatever it draws with is imported when it is called.

    ``in_chosen_units`` says that what it draws names its units in braces, so that it is drawn in inch-pound units where
    these were chosen; what does not say so is drawn in metric ones.
    """

    name: str
    says: str
    make: Callable[[Any], Iterable[Any]]
    in_chosen_units: bool = False
