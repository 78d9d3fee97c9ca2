"""Where the sizes of a cylinder stand on the sheet: along its axis and above or below it, to one scale."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from speclint.reports.pack.cylinder_sizes import Cylinder
from speclint.reports.pack.paper import Paper, hatched, hatching

ABOVE, BELOW = -1, 1
_LEFT, _TOP, _LONG = 40.0, 40.0, 700.0
_MARGIN = 90.0

Spot = tuple[float, float]  # along the axis and out from it, mm


class View(Struct, frozen=True):
    """The scale, in units to the millimetre, the place of the axis, and how far the drawing reaches [mm]."""

    scale: float
    axis: float
    first: float
    last: float
    deepest: float

    @property
    def width(self) -> float:
        """Width of the sheet."""
        return self.right + _MARGIN

    @property
    def right(self) -> float:
        """Where the drawing ends."""
        return self.x(self.last)

    def x(self, along: float) -> float:
        """Where a place along the axis stands."""
        return _LEFT + (along - self.first) * self.scale

    def y(self, out: float, side: int) -> float:
        """Where a distance from the axis stands."""
        return self.axis + side * out * self.scale

    def line(self, paper: Paper, start: Spot, end: Spot, side: int, ink: str) -> None:
        """A straight line."""
        paper.line((self.x(start[0]), self.y(start[1], side)), (self.x(end[0]), self.y(end[1], side)), ink)

    def shape(self, paper: Paper, spots: Sequence[Spot], side: int, ink: str) -> None:
        """A closed outline."""
        paper.shape([(self.x(along), self.y(out, side)) for along, out in spots], ink)

    def metal(self, paper: Paper, low: Spot, high: Spot, side: int, *, pitch: float, rising: bool) -> None:
        """A rectangle in section."""
        corner, wide, tall = self._box(low, high, side)
        hatched(paper, corner, wide, tall, pitch=pitch, rising=rising)

    def hatch(self, paper: Paper, low: Spot, high: Spot, side: int, *, pitch: float, rising: bool) -> None:
        """The hatching of a rectangle alone."""
        corner, wide, tall = self._box(low, high, side)
        hatching(paper, corner, wide, tall, pitch=pitch, rising=rising)

    def box(self, paper: Paper, low: Spot, high: Spot, side: int, ink: str) -> None:
        """A rectangle."""
        corner, wide, tall = self._box(low, high, side)
        paper.box(corner, wide, tall, ink)

    def broken(self, paper: Paper, along: float, low: float, high: float, side: int) -> None:
        """The line at which a part is broken off: it goes on, and is not drawn further."""
        x, start, end = self.x(along), self.y(low, side), self.y(high, side)
        step = (end - start) / 5
        paper.line((x, start), (x, end), "erased")
        points = [(x, start), (x, start + 2 * step), (x - 5, start + 2.3 * step), (x + 5, start + 2.7 * step)]
        paper.path([*points, (x, start + 3 * step), (x, end)], "thin")

    def _box(self, low: Spot, high: Spot, side: int) -> tuple[tuple[float, float], float, float]:
        (start, inner), (end, outer) = low, high
        top = min(self.y(inner, side), self.y(outer, side))
        return (self.x(start), top), (end - start) * self.scale, (outer - inner) * self.scale


def view_of(cylinder: Cylinder) -> View:
    """The view that holds all that is stated."""
    along = [-cylinder.collar_thick, -cylinder.recess_deep, cylinder.block_length + 40.0]
    outs = [cylinder.collar / 2, cylinder.recess / 2, cylinder.block_bore / 2 + (cylinder.wall or 0.0)]
    for cover in cylinder.covers:
        along += [cover.inner + cover.out * cover.thick]
        if cover.joint is not None:
            nut = cover.studs.nut_high + 0.5 * cover.studs.size if cover.studs else 0.0
            along += [cover.joint + cover.out * (cover.flange + nut)]
            outs += [cover.outside / 2]
            outs += [cover.studs.circle / 2 + (cover.studs.edge or 0.0)] if cover.studs else []
    deepest = max([*outs, (cylinder.frame or 0.0) + 30.0 if cylinder.frame else 0.0])
    first, last = min(along), max(along)
    scale = _LONG / (last - first)
    return View(scale, _TOP + max(outs) * scale, first, last, deepest)
