"""The paper that drawings are made on: lines, hatching, dimensions and words as SVG, to a stated scale.

Everything drawn carries a class of ink, never a colour, so that a page may be dark or light. Text is escaped here.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from html import escape

import svg
from msgspec import Struct, field

from speclint.reports.pack.anchors import slug
from speclint.reports.pack.drawn_units import drawn, drawn_number, metric_number
from speclint.reports.pack.printed import AxisMark, Held, Placed, Quantity, Words
from speclint.reports.printable import visible

Point = tuple[float, float]
#: Width of a letter against its height: wide enough for every usual face, so that nothing is cut or overlaps.
_LETTER = 0.62
SIZE = 13.0  # height of letters
_ABOVE, _BELOW = 0.85, 0.3  # how far letters reach above and below their line, against their height
_ARROW = 7.0
_DECIMALS = 2
_PLAIN = ("figure", "word")  # inks of words that are as all words of a drawing are: no class need say so


def wide(text: str, size: float = SIZE) -> float:
    """How much room a line of text takes."""
    return len(visible(text)) * size * _LETTER


def shortened(text: str, room: float, size: float = SIZE) -> str:
    """The text, cut with an ellipsis where it would not fit; the whole stands in the table beside the drawing."""
    text = visible(text)
    letters = max(1, int(room / (size * _LETTER)))
    return text if len(text) <= letters else f"{text[: letters - 1]}…"


def placed(points: Iterable[Point]) -> list[svg.Point]:
    """Points as the library of drawings has them."""
    return [svg.Point(x, y) for x, y in rounded(points)]


def rounded(points: Iterable[Point]) -> list[Point]:
    """Points with as many decimals as a drawing has."""
    return [(_round(x), _round(y)) for x, y in points]


def _round(value: float) -> float:
    """A place on the paper, without decimals where it has none."""
    rounded = round(value, _DECIMALS)
    return int(rounded) if rounded == int(rounded) else rounded


class Paper(Struct):
    """A sheet of a width and a height; ``about`` is what a screen reader says in place of the drawing."""

    name: str
    title: str
    about: str
    width: float
    height: float
    marks: list[svg.Element] = field(default_factory=list)
    role: str = "img"
    scale: float | None = None
    _printed: list[Words] = field(default_factory=list)
    _axes: list[AxisMark] = field(default_factory=list)
    _placed: list[Placed] = field(default_factory=list)
    _counted: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.name = slug(self.name)

    def line(self, start: Point, end: Point, ink: str = "edge") -> None:
        """A straight line."""
        (x1, y1), (x2, y2) = (tuple(map(_round, point)) for point in (start, end))
        self.marks.append(svg.Line(x1=x1, y1=y1, x2=x2, y2=y2, class_=[ink]))

    def shape(self, points: Iterable[Point], ink: str = "edge") -> None:
        """A closed outline."""
        self.marks.append(svg.Polygon(points=placed(points), class_=[ink]))

    def path(self, points: Sequence[Point], ink: str = "edge") -> None:
        """An open line through points."""
        self.marks.append(svg.Polyline(points=placed(points), class_=[ink]))

    def box(self, corner: Point, wide: float, high: float, ink: str = "edge") -> None:
        """A rectangle."""
        x, y = map(_round, corner)
        self.marks.append(svg.Rect(x=x, y=y, width=_round(wide), height=_round(high), class_=[ink]))

    def circle(self, centre: Point, radius: float, ink: str = "edge") -> None:
        """A circle."""
        x, y = map(_round, centre)
        self.marks.append(svg.Circle(cx=x, cy=y, r=_round(radius), class_=[ink]))

    def text(self, at: Point, text: str, ink: str = "word", anchor: str = "start", turn: float = 0) -> None:
        """A line of text; of one whose numbers are known they are kept."""
        if isinstance(text, Words):
            self._printed.append(text)
        x, y = map(_round, at)
        turned = [svg.Rotate(turn, x, y)] if turn else None
        anchors = {"start": None, "middle": "middle", "end": "end"}  # the first of them is the usual one
        self.marks.append(
            svg.Text(
                x=x,
                y=y,
                text=escape(visible(text)),
                class_=None if ink in _PLAIN else [ink],
                text_anchor=anchors[anchor],  # type: ignore[arg-type]
                transform=turned,  # type: ignore[arg-type]
            )
        )

    def count(self, at: Point, number: int) -> None:
        """A number that counts a part, a row or a place, in the middle at a point."""
        self._counted.append(str(number))
        self.text(at, str(number), "figure", "middle")

    def named(self, *names: str) -> None:
        """Note words that are a name with a number in it, as that of a notch is: no quantity."""
        self._counted += names

    def mark(self, axis: str, value: float, at: float, words: Point, anchor: str = "middle") -> None:
        """The number of a mark of an axis, in the unit that is drawn, and its coordinate.

        That counts across the paper where the name of the axis begins with x, else down it.
        """
        self._axes.append(AxisMark(axis, value, at))
        self.text(words, marked(value), "figure", anchor)

    def place(self, quantity: Quantity, unit: str, axis: str, at: float, sign: int = 1) -> None:
        """Note that a quantity is drawn to an axis at a coordinate, or with the axis "" as a length to scale.

        ``unit`` is the metric one to which the axis is laid out.
        """
        self._placed.append(Placed(quantity, drawn(unit), axis, at, sign))

    def held(self) -> Held:
        """What a test can hold the drawing against."""
        return Held(
            tuple(self._printed), tuple(self._axes), tuple(self._placed), self.scale, tuple(self._counted)
        )

    def linked(self, target: str, title: str, marks: Sequence[svg.Element]) -> None:
        """Marks that lead to a place of the page, with what they are."""
        named = svg.Title(text=escape(visible(title)))  # which names the link too
        self.role = "group"  # what leads elsewhere must be within reach of a keyboard and a screen reader
        self.marks.append(svg.A(href=f"#{target}", elements=[named, *marks]))

    def across(self, start: Point, end: Point, text: str, off: float, of: Quantity | None = None) -> None:
        """A dimension between two points of one height, ``off`` below them (above where it is negative)."""
        y = start[1] + off
        for x, from_y in (start, end):
            self.line((x, from_y + math.copysign(3, off)), (x, y + math.copysign(4, off)), "thin")
        self.dimension((start[0], y), (end[0], y), of)
        fits = abs(end[0] - start[0]) > wide(text) + 2 * _ARROW
        if fits:
            self.text(((start[0] + end[0]) / 2, y - 4), text, "figure", "middle")
        else:
            self.text((max(start[0], end[0]) + _ARROW + 4, y - 4), text, "figure")

    def upright(self, top: Point, foot: Point, text: str, of: Quantity | None = None) -> None:
        """A dimension between two heights, with its figure to the left."""
        self.dimension(top, foot, of)
        self.text((top[0] - 6, (top[1] + foot[1]) / 2 + 4), text, "figure", "end")

    def dimension(self, start: Point, end: Point, of: Quantity | None = None) -> None:
        """A thin line with an arrow at each end; the arrows point inwards where there is no room between.

        The length that it is ``of`` must be drawn to the scale of the sheet.
        """
        self.line(start, end, "thin")
        if of is not None:
            self.place(of, "mm", "", math.dist(start, end))
        length = math.dist(start, end) or 1.0
        along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
        inward = 1 if length > 2.5 * _ARROW else -1
        for tip, way in ((start, inward), (end, -inward)):
            root = (tip[0] + way * _ARROW * along[0], tip[1] + way * _ARROW * along[1])
            side = (-along[1] * _ARROW / 4, along[0] * _ARROW / 4)
            self.shape(
                [tip, (root[0] + side[0], root[1] + side[1]), (root[0] - side[0], root[1] - side[1])], "arrow"
            )

    def balloon(self, at: Point, of: Point, number: int) -> None:
        """A number in a circle with a line to what it is about; the table beside the drawing explains it."""
        length = math.dist(at, of) or 1.0
        edge = (at[0] + (of[0] - at[0]) * 10 / length, at[1] + (of[1] - at[1]) * 10 / length)
        self.line(edge, of, "thin")
        self.numbered(at, number)

    def numbered(self, at: Point, number: int) -> None:
        """A number in a circle."""
        self.circle(at, 10, "balloon")
        self.count((at[0], at[1] + 4.5), number)

    def scale_bar(self, at: Point, scale: float, length: float) -> None:
        """What a round length, of so many millimetres or near it, comes to on this drawing.

        ``scale`` is units to the millimetre. Where a drawing has a second bar, for what is enlarged, dimensions are
        held against the first.
        """
        self.scale = self.scale or scale
        (x, y), parts = at, 5
        said = niced(drawn_number(length, "mm"))
        length = metric_number(said, "mm")
        self._counted.append(f"{said:g}")
        for part in range(parts):
            step = length * scale / parts
            self.box((x + part * step, y), step, 5, "solid" if part % 2 == 0 else "blank")
        self.text((x + length * scale + 8, y + 7), f"{said:g} {drawn('mm')}", "figure")

    def markup(self) -> str:
        """The drawing as SVG for a page."""
        words: list[svg.Element] = [
            svg.Title(text=escape(visible(self.title)), id=f"{self.name}-title"),
            svg.Desc(text=escape(visible(self.about)), id=f"{self.name}-about"),
        ]
        return str(
            svg.SVG(
                viewBox=svg.ViewBoxSpec(0, 0, _round(self.width), _round(self.height)),
                elements=[*words, *self.marks],
                class_=[
                    "drawing",
                    f"own-{round(self.width)}",
                ],  # how wide it is drawn: the page has a rule for it
                extra={"role": self.role, "aria-labelledby": f"{self.name}-title {self.name}-about"},
            )
        )


def niced(length: float) -> float:
    """A round length near a wanted one: 1, 2 or 5 times a power of ten.

    >>> niced(130.0), niced(0.07)
    (100.0, 0.05)
    """
    decade: float = 10.0 ** math.floor(math.log10(length))
    return max(step * decade for step in (1, 2, 5) if step * decade <= length * 1.0001)


def ticks(low: float, high: float, wanted: int = 5) -> list[float]:
    """Round numbers between two ends, for the marks of an axis."""
    step = niced((high - low) / wanted)
    first = math.ceil(low / step - 1e-9)
    return [number * step for number in range(first, math.floor(high / step + 1e-9) + 1)]


def marked(number: float) -> str:
    """The number of a mark of an axis in words."""
    return f"{round(number, 9):g}".replace("-", "−")


def title_at(usual: float, end: float, numbers: Iterable[float]) -> float:
    """How far across the title of an upright axis stands, left of its numbers, which end at ``end``: farther if wide.

    >>> title_at(24.0, 63.0, (0.0, 20.0)), round(title_at(24.0, 63.0, (0.0, 20000.0)), 1)
    (24.0, 18.8)
    """
    widest = max((wide(marked(number)) for number in numbers), default=0.0)
    return max(_ABOVE * SIZE, min(usual, end - widest - _BELOW * SIZE))


def axis_marks(low: float, high: float, unit: str, wanted: int = 5) -> list[tuple[float, float]]:
    """Round numbers of the unit that is drawn between two ends of an axis, each with its place in the axis's own unit.

    >>> axis_marks(0.0, 60.0, "mm", 3)
    [(0.0, 0.0), (20.0, 20.0), (40.0, 40.0), (60.0, 60.0)]
    """
    ends = drawn_number(low, unit), drawn_number(high, unit)
    return [(number, metric_number(number, unit)) for number in ticks(*ends, wanted)]


def hatched(paper: Paper, corner: Point, wide: float, high: float, *, pitch: float, rising: bool) -> None:
    """A rectangle of metal in section: hatched at 45 degrees, the other way for its neighbour."""
    paper.box(corner, wide, high, "metal")
    hatching(paper, corner, wide, high, pitch=pitch, rising=rising)


def hatching(paper: Paper, corner: Point, wide: float, high: float, *, pitch: float, rising: bool) -> None:
    """The hatching alone."""
    x, y = corner
    strokes: list[tuple[Point, Point]] = []
    number = 1
    while number * pitch < wide + high:
        along = number * pitch
        start = (x + min(along, wide), y + max(0.0, along - wide))
        end = (x + max(0.0, along - high), y + min(along, high))
        if rising:
            start, end = (start[0], 2 * y + high - start[1]), (end[0], 2 * y + high - end[1])
        strokes.append((start, end))
        number += 1
    if strokes:
        paper.marks.append(svg.Path(d=[_Strokes(strokes)], class_=["hatch"]))


class _Strokes(svg.PathData):
    """Straight strokes, in the fewest letters that SVG 1.1, 8.3.2, has for them: what follows a first point is a line.

    The drawings of a review are hatched with thousands.
    """

    def __init__(self, strokes: Iterable[tuple[Point, Point]]) -> None:
        self._strokes = [rounded(stroke) for stroke in strokes]

    def __str__(self) -> str:
        return "".join(f"M{x1} {y1} {x2} {y2}" for (x1, y1), (x2, y2) in self._strokes)
