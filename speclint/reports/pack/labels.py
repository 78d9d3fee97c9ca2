"""Words placed beside the points that they name, clear of the curves and of one another."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise, product

from speclint.reports.pack.paper import Paper, Point

_LETTER, _TALL = 7.2, 12.0  # room of a letter of usual faces at 13 units, and of a line of words
_STEP = 5.0  # a curve is kept clear at points no farther apart than this
_WORDS, _CURVE, _FAR = (
    40.0,
    4.0,
    0.2,
)  # what it costs to lie on words, on a point of a curve, and a unit farther off
_DISTANCES = (9.0, 18.0, 30.0, 44.0)
_WAYS = tuple(math.radians(45 * n) for n in range(8))
#: Left, top, right and foot of a piece of paper.
Box = tuple[float, float, float, float]


class Labels:
    """The words of one field of a chart; ``within`` is the room that they must keep to."""

    def __init__(self, paper: Paper, within: Box) -> None:
        self._paper, self._within = paper, within
        self._boxes: list[Box] = []
        self._points: list[Point] = []

    def avoid(self, line: Sequence[Point]) -> None:
        """Keep clear of a line through points of the paper."""
        self._points += line[:1]
        for start, end in pairwise(line):
            parts = max(1, math.ceil(math.dist(start, end) / _STEP))
            self._points += [
                (start[0] + (end[0] - start[0]) * n / parts, start[1] + (end[1] - start[1]) * n / parts)
                for n in range(1, parts + 1)
            ]

    def put(self, at: Point, text: str, ink: str = "figure") -> None:
        """Words beside a point of the paper, where they hide least; the first that were put keep their place.

        Words that are wider than the room of the whole field go where they hide least without it.
        """
        box, least = _box(at, text, _DISTANCES[0], _WAYS[0]), math.inf
        for far, way in product(_DISTANCES, _WAYS):
            if least <= _FAR * far:  # what is farther off costs more
                break
            tried = _box(at, text, far, way)
            if (cost := self._cost(tried) + _FAR * far) < least:
                box, least = tried, cost
        self._boxes.append(box)
        self._paper.text((round((box[0] + box[2]) / 2, 1), round(box[3] - 2, 1)), text, ink, "middle")

    def _cost(self, box: Box) -> float:
        left, top, right, foot = self._within
        if box[0] < left or box[1] < top or box[2] > right or box[3] > foot:
            return math.inf
        words = sum(_meet(box, other) for other in self._boxes)
        left, top, right, foot = box
        points = sum(1 for x, y in self._points if left <= x <= right and top <= y <= foot)
        return _WORDS * words + _CURVE * points


def _box(at: Point, text: str, far: float, way: float) -> Box:
    """Where words stand that are so far off a point in a direction: their nearest edge or corner lies there."""
    wide, (x, y) = len(text) * _LETTER, at
    across, down = math.cos(way), math.sin(way)
    middle = x + across * far + _sign(across) * wide / 2, y + down * far + _sign(down) * _TALL / 2
    return middle[0] - wide / 2, middle[1] - _TALL / 2, middle[0] + wide / 2, middle[1] + _TALL / 2


def _sign(part: float) -> float:
    return 0.0 if abs(part) < 1e-9 else math.copysign(1.0, part)


def _meet(one: Box, other: Box) -> bool:
    return one[0] <= other[2] and other[0] <= one[2] and one[1] <= other[3] and other[1] <= one[3]
