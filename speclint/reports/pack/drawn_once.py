"""Figures of parts alike: what is drawn just the same but for the names of parts stands in the pack once."""

from __future__ import annotations

import re
from collections.abc import Collection, Hashable, Iterable

from msgspec import Struct

from speclint.reports.pack.figures import Figure

_WORD = re.compile(r"[\w-]+")


class ShownFigure(Struct, frozen=True):
    """A figure, and the other components whose own would be the same but for the names of parts."""

    figure: Figure
    others: tuple[str, ...] = ()

    @property
    def said(self) -> str:
        """The others in words; "" where there is none."""
        return f"The same, but for the names of parts, of {', '.join(self.others)}." if self.others else ""


def drawn_once(figures: Iterable[Figure], names: Collection[str]) -> tuple[ShownFigure, ...]:
    """The figures, each with those that are the same but for the names of parts, where the first of them stood."""
    groups: dict[Hashable, list[Figure]] = {}
    for figure in figures:
        groups.setdefault(_without_names(figure, names), []).append(figure)
    return tuple(
        ShownFigure(group[0], tuple(one.component for one in group[1:])) for group in groups.values()
    )


def _without_names(figure: Figure, names: Collection[str]) -> Hashable:
    """All that a figure says, with each name of a part by its place among the names that it has."""
    if not figure.component:  # of the whole design
        return figure.name
    met: dict[str, int] = {}

    def numbered(found: re.Match[str]) -> str:
        word = found[0]
        return f"part {met.setdefault(word, len(met))}" if word in names else word

    whole = "\0".join((figure.heading, figure.says, figure.drawing, repr(figure.rows), repr(figure.columns)))
    return _WORD.sub(numbered, whole.replace(figure.name, "figure"))
