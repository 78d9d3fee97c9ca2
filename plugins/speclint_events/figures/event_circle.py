"""The events of both ends round the circle of the crank, for running forward and for running backward."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from speclint import Assessment
from speclint.facts import CylinderGiven
from speclint.handbook.steam_cycle import CylinderEnd, circle_of_events, tenths_of_stroke
from speclint.handbook.valve_events import End, positions_of
from speclint.reports import Figure, Paper, Point, shown, words
from speclint_events.figures.gears import GearDrawn, angle_of, gears_drawn, share_at, travel_at

_WIDTH, _RADIUS = 840.0, 84.0
#: Radius of the ring of each valve: the front's within the back's.
RINGS = {
    ("front", "inlet"): 96.0,
    ("front", "exhaust"): 105.0,
    ("back", "inlet"): 122.0,
    ("back", "exhaust"): 131.0,
}
#: The letter of each event, and the valve that opens or shuts there.
_LETTERS = {
    "admission": ("A", "inlet"),
    "cut_off": ("C", "inlet"),
    "release": ("R", "exhaust"),
    "compression": ("K", "exhaust"),
}
_ARC_STEP = math.radians(4)


@dataclass(frozen=True)
class Circle:
    """A circle of the crank on its paper; the front dead centre lies to the left, forward turns below it."""

    paper: Paper
    centre: Point
    backward: bool

    def at(self, angle: float, radius: float, end: End = End.FRONT) -> Point:
        """A crank angle from the dead centre of an end in the direction of running, at a radius."""
        down = -1.0 if self.backward else 1.0
        from_end = radius if end is End.FRONT else -radius
        x, y = self.centre
        return (
            round(x - from_end * math.cos(angle), 1),
            round(y + down * from_end * math.sin(angle), 1),
        )

    def arc(self, first: float, last: float, radius: float, ink: str, end: End = End.FRONT) -> None:
        """Part of a circle about the centre, between two crank angles of an end."""
        parts = max(2, math.ceil((last - first) / _ARC_STEP))
        angles = [first + (last - first) * n / parts for n in range(parts + 1)]
        self.paper.path([self.at(angle, radius, end) for angle in angles], ink)


def event_circles(assessment: Assessment) -> Iterator[Figure]:
    """A figure of the notch of the load case, with a notch of the other direction beside it."""
    for drawn in gears_drawn(assessment):
        yield _figure(drawn, [drawn.notch, *_other(drawn)])


def _other(drawn: GearDrawn) -> list[str]:
    """The notch of the other direction that cuts off nearest to that of the load case."""
    own = drawn.directions[drawn.notch]

    def apart(name: str) -> float:
        return abs(_cut_off(drawn.notches[name]) - _cut_off(drawn.given))

    found = [name for name in drawn.notches if drawn.directions[name] != own]
    return [min(found, key=apart)] if found else []


def _cut_off(given: CylinderGiven) -> float:
    ends = [end.at("hot") for end in (given.front, given.back)]
    return sum(positions_of(end.events, end.crank, end.end).cut_off for end in ends) / len(ends)


def _figure(drawn: GearDrawn, notches: list[str]) -> Figure:
    name = f"circle-{drawn.name}"
    rows = tuple(row for notch in notches for row in _rows(drawn, notch))
    about = "; ".join(", ".join(row) for row in rows)
    paper = Paper(name, f"Events of {drawn.name} round the circle of the crank", about, _WIDTH, 400.0)
    for number, notch in enumerate(notches):
        backward = drawn.directions[notch] == "backward"
        circle = Circle(paper, (210.0 + 420.0 * number, 205.0), backward)
        _circle(circle, drawn, notch)
        says = f"notch {notch}, {drawn.directions[notch]}"
        paper.named(notch, says)
        paper.text((circle.centre[0], 392.0), says, "figure", "middle")
    return Figure.of(
        paper,
        drawn.name,
        f"{drawn.of}: events of both ends round the circle of the crank",
        "Front dead centre to the left; a ring is black where the valve is open, from within: inlet and exhaust of the "
        "front, inlet and exhaust of the back. Arcs of the length of the connecting rod mark tenths of the stroke. A "
        "admission and K compression with the share of the stroke that is left, C cut-off and R release with the share "
        "that is made. Clearances hot, play and setting left out.",
        rows,
        ("notch", "end", "event", "crank angle", "stroke"),
    )


def _circle(circle: Circle, drawn: GearDrawn, notch: str) -> None:
    paper, (x, y) = circle.paper, circle.centre
    front, back = (drawn.end(notch, side) for side in ("front", "back"))
    paper.circle(circle.centre, _RADIUS, "thin")
    paper.line((x - 152, y), (x + 152, y), "axis")
    _tenths(circle, front)
    for end in (front, back):
        for valve, (first, last) in circle_of_events(end).items():
            radius = RINGS[end.end.value, valve]
            circle.paper.circle(circle.centre, radius, "fine")
            circle.arc(first, last, radius, "stated", end.end)
        _letters(circle, drawn, notch, end)
    _arrow(circle)


def _tenths(circle: Circle, end: CylinderEnd) -> None:
    """Arcs of the rod's length through each tenth of the stroke, from the line of stroke to the crank circle."""
    scale = _RADIUS / end.crank.radius
    for angle in tenths_of_stroke(end)[1:-1]:
        start, stop = circle.at(-angle, _RADIUS), circle.at(angle, _RADIUS)
        bow = _bow(end.crank.rod * scale, _RADIUS * math.sin(angle))
        middle = (start[0] + bow, circle.centre[1])
        circle.paper.path([start, *_between(start, middle, stop), stop], "fine")


def _bow(radius: float, half: float) -> float:
    """How far an arc bows from its chord: away from the crosshead, which lies to the left."""
    return radius - math.sqrt(radius**2 - half**2)


def _between(start: Point, middle: Point, end: Point) -> list[Point]:
    """Points of a flat arc through three, as a parabola: at this bow no line is wide enough to show the difference."""
    half = (end[1] - start[1]) / 2
    found = []
    for part in (-0.75, -0.5, -0.25, 0.0, 0.25, 0.5, 0.75):
        across = start[0] + (middle[0] - start[0]) * (1 - part**2)
        found.append((round(across, 1), round(middle[1] + half * part, 1)))
    return found


def _letters(circle: Circle, drawn: GearDrawn, notch: str, end: CylinderEnd) -> None:
    front = end.end is End.FRONT
    for event, (letter, valve) in _LETTERS.items():
        angle, ring = getattr(end.events, event), RINGS[end.end.value, valve]
        circle.paper.line(circle.at(angle, ring - 6, end.end), circle.at(angle, ring + 6, end.end), "thin")
        x, y = circle.at(angle, 66.0 if front else 150.0, end.end)
        anchor = "middle" if front else ("end" if x < circle.centre[0] else "start")
        share = drawn.again(partial(share_at, notch, end.end.value, event))
        circle.paper.text((x, y + 4), words(f"{letter} {{}} %", shown(share, "%", 1)), "figure", anchor)


def _arrow(circle: Circle) -> None:
    """The direction in which the crank turns, by an arrow within the circle."""
    radius = 30.0
    first, last = math.radians(200), math.radians(320)
    circle.arc(first, last, radius, "thin")
    wings = [circle.at(last - 0.05, radius + off) for off in (-3.0, 3.0)]
    circle.paper.shape([circle.at(last + 0.2, radius), *wings], "arrow")


def _rows(drawn: GearDrawn, notch: str) -> Iterator[tuple[str, ...]]:
    for side in ("front", "back"):
        for event in _LETTERS:
            angle, share, travel = (
                drawn.again(partial(work, notch, side, event)) for work in (angle_of, share_at, travel_at)
            )
            piston = words("{} {mm} from its end, {} %", shown(travel, "mm", 1), shown(share, "%", 1))
            yield notch, side, event.replace("_", "-"), words("{}°", shown(angle, "°", 1)), piston
