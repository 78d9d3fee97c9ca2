"""What stands on a drawing, mark by mark, and words beside points that are only noted, for tests of drawings."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any
from xml.etree import ElementTree

Point = tuple[float, float]


class Noted:
    """Stands for the words of a field: what they are to keep clear of, and which are put where."""

    def __init__(self) -> None:
        self.avoided: list[list[Point]] = []
        self.put_at: list[tuple[Point, str]] = []

    def avoid(self, line: Sequence[Point]) -> None:
        self.avoided.append(list(line))

    def put(self, at: Point, text: str, _ink: str = "figure") -> None:
        self.put_at.append((at, str(text)))


def _marks(drawing: str, tag: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}")]


def _numbers(mark: ElementTree.Element, *names: str) -> tuple[float, ...]:
    return tuple(float(mark.get(name, "")) for name in names)


def curves(drawing: str) -> list[tuple[str, list[Point]]]:
    """The ink of each open line and its points."""
    return [(one.get("class", ""), _points(one)) for one in _marks(drawing, "polyline")]


def shapes(drawing: str) -> list[tuple[str, list[Point]]]:
    """The ink of each closed outline and its points."""
    return [(one.get("class", ""), _points(one)) for one in _marks(drawing, "polygon")]


def _points(mark: ElementTree.Element) -> list[Point]:
    flat = [float(one) for one in (mark.get("points") or "").replace(",", " ").split()]
    return list(zip(flat[::2], flat[1::2], strict=True))


def lines(drawing: str, ink: str) -> list[tuple[float, ...]]:
    """Both ends of each straight line of an ink."""
    return [
        _numbers(one, "x1", "y1", "x2", "y2") for one in _marks(drawing, "line") if one.get("class") == ink
    ]


def circles(drawing: str) -> list[tuple[str, tuple[float, ...]]]:
    """The ink of each circle, its middle and its radius."""
    return [(one.get("class", ""), _numbers(one, "cx", "cy", "r")) for one in _marks(drawing, "circle")]


def said_in_order(drawing: str) -> list[tuple[str, float, float, str]]:
    """Each text, where it stands across and down, and which part of it stands there."""
    return [
        (one.text or "", float(one.get("x", "")), float(one.get("y", "")), one.get("text-anchor", "start"))
        for one in _marks(drawing, "text")
    ]


def said(drawing: str) -> dict[str, Any]:
    """The last place of each text: across, down, and which part of it stands there."""
    return {text: (x, y, anchor) for text, x, y, anchor in said_in_order(drawing)}
