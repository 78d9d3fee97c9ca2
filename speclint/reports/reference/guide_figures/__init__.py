"""The drawings of the guide: one module a drawing, each worked by the formulae of the handbook."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.reports.pack.paper import Paper

#: The drawings by the names that the texts of the guide give them, each with its module.
GUIDE_FIGURES: Mapping[str, str] = {
    "load-cases": "load_cases",
    "tolerance-corners": "tolerance_corners",
    "grades": "grades",
}


def guide_figure(name: str) -> str:
    """A drawing of the guide as SVG. Its inks are classes for which the style sheet of the review pack has rules.

    :raises KeyError: for a name that is none of ``GUIDE_FIGURES``.
    """
    module = import_module(f"{__name__}.{GUIDE_FIGURES[name]}")
    drawn: Callable[[], Paper] = module.drawn
    return drawn().markup()
