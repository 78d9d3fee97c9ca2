"""A field of a chart as a drawing office draws it: thin axes with ticks inward, names written on the curves."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from speclint.reports import Labels, Paper, Point, Quantity, axis_marks, title_at, unit_named, words

WIDTH = 760.0
_TICK = 5.0


@dataclass(frozen=True)
class Field:
    """A rectangle of a paper with its axes; ``across`` and ``up`` are the values at its ends."""

    paper: Paper
    corner: Point
    size: tuple[float, float]
    across: tuple[float, float]
    up: tuple[float, float]

    def place(self, across: float, up: float) -> Point:
        """Where a pair of values stands, to a tenth of a unit: finer than any line."""
        (x_0, x_1), (y_0, y_1) = self.across, self.up
        (x, y), (wide, tall) = self.corner, self.size
        return (
            round(x + (across - x_0) / (x_1 - x_0) * wide, 1),
            round(y + tall - (up - y_0) / (y_1 - y_0) * tall, 1),
        )

    def frame(
        self, across: str, up: str, *, marks: Sequence[float] = (), numbers: bool = True, unit: str = ""
    ) -> None:
        """Left axis and foot with their ticks and words; ``marks`` stand across where round numbers would not do.

        A title has the metric unit of its axis in braces; ``unit`` is that of an axis across without a title.
        """
        (x, y), (wide, tall) = self.corner, self.size
        self.paper.line((x, y), (x, y + tall), "thin")
        self.paper.line((x, y + tall), (x + wide, y + tall), "thin")
        heights = axis_marks(*self.up, unit_named(up), max(2, round(tall / 60)))
        for number, value in heights:
            at = self.place(self.across[0], value)
            self.paper.line(at, (at[0] + _TICK, at[1]), "thin")
            self.paper.mark(f"y{x:g} {y:g}", number, at[1], (at[0] - 7, at[1] + 4), "end")
        stated = [(value, value) for value in marks]
        for number, value in stated or axis_marks(*self.across, unit or unit_named(across), 8):
            at = self.place(value, self.up[0])
            self.paper.line(at, (at[0], at[1] - _TICK), "thin")
            if numbers:
                self.paper.mark(f"x{x:g} {y:g}", number, at[0], (at[0], at[1] + 17))
        left = title_at(x - 46, x - 7, (number for number, _ in heights))
        self.paper.text((left, y + tall / 2), words(up), "quiet", "middle", turn=-90)
        if across:
            self.paper.text((x + wide / 2, y + tall + 36), words(across), "quiet", "middle")

    def curve(self, points: Iterable[tuple[float, float]], ink: str = "edge") -> None:
        """A line through pairs of values."""
        self.paper.path(self.on(points), ink)

    def level(self, up: float, ink: str = "axis") -> Point:
        """A line across the whole field at one value; returns its right end."""
        start, end = self.place(self.across[0], up), self.place(self.across[1], up)
        self.paper.line(start, end, ink)
        return end

    def upright(self, across: float, ink: str = "axis") -> Point:
        """A line from foot to top at one value; returns its top."""
        foot, top = self.place(across, self.up[0]), self.place(across, self.up[1])
        self.paper.line(foot, top, ink)
        return top

    def says(
        self,
        at: tuple[float, float],
        text: str,
        off: Point = (0.0, -6.0),
        anchor: str = "middle",
        ink: str = "figure",
    ) -> None:
        """Words at a pair of values, moved by so much."""
        x, y = self.place(*at)
        self.paper.text((x + off[0], y + off[1]), text, ink, anchor)

    def holds(self, up: Quantity, unit: str, across: float) -> None:
        """Note that a quantity stands at a place of the axis across, in the metric unit of the axis up."""
        x, y = self.corner
        self.paper.place(up, unit, f"y{x:g} {y:g}", self.place(across, up.in_unit(unit))[1])

    def labels(self, right: float = 0.0) -> Labels:
        """Words to be placed within the field, and so far beyond its right end."""
        (x, y), (wide, tall) = self.corner, self.size
        return Labels(self.paper, (x, y - 12, x + wide + right, y + tall - 2))

    def on(self, points: Iterable[tuple[float, float]]) -> list[Point]:
        """Where pairs of values stand."""
        return [self.place(*point) for point in points]

    def cross(self, across: float, up: float) -> None:
        """A small cross at a pair of values."""
        x, y = self.place(across, up)
        self.paper.line((x - 4, y - 4), (x + 4, y + 4), "edge")
        self.paper.line((x - 4, y + 4), (x + 4, y - 4), "edge")


def top_of(values: Iterable[float], room: float = 1.12) -> float:
    """The upper end of an axis that holds all values, with room for a name above the greatest."""
    return max(values) * room
