"""One quantity over another: axes with round marks, lines that may break off, and names written on them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from speclint.reports.pack.drawn_units import unit_named
from speclint.reports.pack.labels import Labels
from speclint.reports.pack.paper import Paper, Point, axis_marks, marked, wide
from speclint.reports.pack.printed import Quantity, Words, words

_WIDTH = 760.0
_TOP, _RIGHT, _AXIS_ROOM = 22.0, 24.0, 52.0


class Plot:
    """A plot on a paper of its own; values are those of the axes, whose titles name their metric units in braces."""

    def __init__(
        self,
        name: str,
        title: str,
        about: str,
        across: tuple[float, float],
        up: tuple[float, float],
        words: tuple[str, str],
        tall: float = 300.0,
    ) -> None:
        self._across, self._up = across, up
        self._marks = [
            axis_marks(*ends, unit_named(title)) for ends, title in zip((across, up), words, strict=True)
        ]
        self._left = 44.0 + max(wide(marked(number)) for number, _ in self._marks[1])
        self._tall, self._foot = tall, _TOP + tall
        self.paper = Paper(name, title, about, _WIDTH, self._foot + _AXIS_ROOM)
        self._axes(*words)

    def place(self, across: float, up: float) -> Point:
        """Where a pair of values stands."""
        (x_0, x_1), (y_0, y_1) = self._across, self._up
        return (
            self._left + (across - x_0) / (x_1 - x_0) * (_WIDTH - _RIGHT - self._left),
            self._foot - (up - y_0) / (y_1 - y_0) * self._tall,
        )

    def line(self, points: Sequence[tuple[float, float | None]], ink: str) -> None:
        """A line through points; it breaks off where there is no value."""
        run: list[Point] = []
        for across, up in (*points, (0.0, None)):
            if up is not None:
                run.append(self.place(across, up))
            elif run:
                self.paper.path(run, ink)
                run = []

    def band(self, low: Sequence[tuple[float, float]], high: Sequence[tuple[float, float]]) -> None:
        """The room between two lines."""
        self.paper.shape([self.place(*point) for point in (*low, *reversed(high))], "band")

    def point(self, across: float, up: float, ink: str) -> None:
        """A point."""
        self.paper.circle(self.place(across, up), 4.5, ink)

    def labels(self) -> Labels:
        """Words to be placed within the axes, clear of the lines that they are told of."""
        top = self._foot - self._tall
        return Labels(self.paper, (self._left + 4, top, _WIDTH - 4, self._foot - 4))

    def on(self, points: Iterable[tuple[float, float | None]]) -> list[Point]:
        """Where pairs of values stand, those that have none left out."""
        return [self.place(across, up) for across, up in points if up is not None]

    def level(self, up: float, ink: str) -> None:
        """A line across the whole plot at one value."""
        self.paper.line(self.place(self._across[0], up), self.place(self._across[1], up), ink)

    def noted(
        self, across: Quantity, unit: str, up: Quantity | None, other: str, says: Words, ink: str
    ) -> None:
        """A point at two quantities in the units of the axes, or at one on the line at zero, with words above it."""
        at = across.in_unit(unit), up.in_unit(other) if up is not None else 0.0
        x, y = self.place(*at)
        self.point(*at, ink)
        self.paper.place(across, unit, "x", x)
        if up is not None:
            self.paper.place(up, other, "y", y)
        self.paper.text((x + 8, y - 8), says, "figure")

    def _axes(self, across: str, up: str) -> None:
        (x_0, x_1), (y_0, y_1) = self._across, self._up
        left, foot = self.place(x_0, y_0)
        right, top = self.place(x_1, y_1)
        for number, value in self._marks[1]:
            _, y = self.place(x_0, value)
            self.paper.line((left, y), (right, y), "edge" if number == 0 else "grid")
            self.paper.mark("y", number, y, (left - 8, y + 4), "end")
        for number, value in self._marks[0]:
            x, _ = self.place(value, y_0)
            self.paper.line((x, foot), (x, foot + 5), "edge")
            self.paper.mark("x", number, x, (x, foot + 20))
        self.paper.line((left, top), (left, foot), "edge")
        self.paper.line((left, foot), (right, foot), "edge")
        self.paper.text(((left + right) / 2, foot + 40), words(across), "quiet", "middle")
        self.paper.text((16, (top + foot) / 2), words(up), "quiet", "middle", turn=-90)
