"""The marks of a drawing told in the millimetres of what it shows."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from xml.etree import ElementTree

import pytest

from speclint.reports.pack.figures import Figure

#: Four numbers: from where to where along the axis and from what to what radius of a box; both ends of a line.
Place = tuple[float, float, float, float]


class Placed:
    """A figure to a scale, of which a point of the paper, ``corner``, stands for a place in mm, ``origin``.

    The first number of a place counts to the right, the second upwards.
    """

    def __init__(
        self, figure: Figure, scale: float, corner: tuple[float, float], origin: tuple[float, float]
    ) -> None:
        self.root = ElementTree.fromstring(figure.drawing)
        self.scale, self.corner, self.origin = scale, corner, origin
        assert figure.held.scale == pytest.approx(scale)

    def of(self, tag: str, ink: str) -> list[ElementTree.Element]:
        """The marks with a tag and an ink."""
        return [one for one in self.root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]

    def at(self, x: float, y: float) -> tuple[float, float]:
        """A point of the paper in mm."""
        (left, top), (first, highest) = self.corner, self.origin
        return (x - left) / self.scale + first, highest - (y - top) / self.scale

    def boxes(self, ink: str) -> list[Place]:
        """The rectangles with an ink."""
        found = []
        for one in self.of("rect", ink):
            x, y, wide, high = numbers(one, "x", "y", "width", "height")
            (start, top), (end, low) = self.at(x, y), self.at(x + wide, y + high)
            found.append((start, end, low, top))
        return found

    def lines(self, ink: str) -> list[Place]:
        """The straight lines with an ink."""
        found = []
        for one in self.of("line", ink):
            x1, y1, x2, y2 = numbers(one, "x1", "y1", "x2", "y2")
            found.append((*self.at(x1, y1), *self.at(x2, y2)))
        return found

    def shapes(self, ink: str, tag: str = "polygon") -> list[list[tuple[float, float]]]:
        """The outlines with an ink, or with another tag the open ones."""
        found = []
        for one in self.of(tag, ink):
            flat = [float(number) for number in one.get("points", "").replace(",", " ").split()]
            found.append([self.at(x, y) for x, y in zip(flat[::2], flat[1::2], strict=True)])
        return found

    def balloons(self) -> dict[str, Place]:
        """By its number how far a ring stands off on the paper, and where in mm the end of its line is."""
        rings = [numbers(one, "cx", "cy") for one in self.of("circle", "balloon")]
        thin = [numbers(one, "x1", "y1", "x2", "y2") for one in self.of("line", "thin")]
        found: dict[str, Place] = {}
        for x, y in rings:
            ((_, _, x2, y2),) = (one for one in thin if abs(math.dist(one[:2], (x, y)) - 10) < 0.02)
            (number,) = (
                one.text or ""
                for one in self.texts()
                if math.dist(numbers(one, "x", "y"), (x, y + 4.5)) < 0.02
            )
            found[number] = (x - x2, y - y2, *self.at(x2, y2))
        return found

    def texts(self) -> list[ElementTree.Element]:
        """The lines of text."""
        return [one for one in self.root.iter() if one.tag.endswith("}text")]

    def says(self) -> dict[str, tuple[float, float]]:
        """Where on the paper each line of text stands."""
        return {one.text or "": (numbers(one, "x")[0], numbers(one, "y")[0]) for one in self.texts()}

    def size(self) -> tuple[float, float]:
        """Width and height of the paper."""
        _, _, wide, high = map(float, (self.root.get("viewBox") or "").split())
        return wide, high


def numbers(mark: ElementTree.Element, *names: str) -> list[float]:
    """Some attributes of a mark."""
    return [float(mark.get(name, "nan")) for name in names]


def near(places: Iterable[Sequence[float]]) -> list[object]:
    """Places as near as two decimals of the paper have them."""
    return [pytest.approx(one, abs=0.02) for one in places]
