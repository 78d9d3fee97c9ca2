"""Lift of both valves of an end and the area that they open over the crank angle, with what the piston asks for."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from itertools import pairwise

from speclint import Assessment
from speclint.handbook.steam_cycle import CylinderEnd, Valve
from speclint.handbook.valve_events import End, Events
from speclint.reports import Figure, Paper, Quantity, of_step, shown, words
from speclint_events.figures.fields import WIDTH, Field, top_of
from speclint_events.figures.gears import GearDrawn, angle_of, gears_drawn

_RULE = "events.area-enough"
_TURN = math.tau
_PARTS = 60
_LEFT, _WIDE = 70.0, 660.0


def valve_charts(assessment: Assessment) -> Iterator[Figure]:
    """A chart of the end whose valves are the least ample, in the notch of the load case."""
    for drawn in gears_drawn(assessment):
        yield _figure(drawn, _end(drawn))


def _end(drawn: GearDrawn) -> CylinderEnd:
    """The end of the greatest Mach index against its limit; the front where none was worked."""
    given = drawn.given

    def used(side: End) -> float:
        mark = side.value[0]
        limits = {name: _most(drawn, name) for name in ("inlet", "exhaust")}
        indices = {name: drawn.on_sheet(_RULE, f"Z_{name[0]}{mark}") for name in limits}
        return max((indices[name] or 0.0) / (limits[name] or math.inf) for name in limits)

    end = given.front if used(End.FRONT) >= used(End.BACK) else given.back
    return end.at("hot")


def _most(drawn: GearDrawn, valve: str) -> float | None:
    return drawn.limit(_RULE, f"greatest Mach index of an {valve}")


@dataclass(frozen=True)
class _Opening:
    """One opening of a valve as it stands on the chart."""

    name: str
    valve: Valve
    first: float
    last: float

    @property
    def angles(self) -> list[float]:
        return [self.first + (self.last - self.first) * n / _PARTS for n in range(_PARTS + 1)]

    def lifts(self) -> list[tuple[float, float]]:
        """Crank angle [°] and lift [mm]."""
        return [(math.degrees(angle), self.valve.train.lift(angle) * 1e3) for angle in self.angles]

    def areas(self) -> list[tuple[float, float]]:
        """Crank angle [°] and effective area [cm²]."""
        return [(math.degrees(angle), self.valve.area(angle) * 1e4) for angle in self.angles]


def _figure(drawn: GearDrawn, end: CylinderEnd) -> Figure:
    events, name = end.events, f"valves-{drawn.name}"
    openings = (
        _Opening("inlet", end.inlet, events.admission, events.cut_off),
        _Opening("exhaust", end.exhaust, events.release, events.compression),
    )
    across = (
        10 * math.floor(math.degrees(events.compression - _TURN) / 10 - 0.5),
        10 * math.ceil(math.degrees(events.compression) / 10 + 0.5),
    )
    rows = _rows(drawn, end)
    title = f"Lift and open area of the valves, {end.end.value} end of {drawn.name}"
    paper = Paper(name, title, "; ".join(f"{a}: {b}" for a, b in rows), WIDTH, 524.0)
    _lifts(paper, drawn, end.end.value, openings, across)
    _areas(paper, drawn, end, openings, across)
    _strip(paper, drawn, end, across)
    asked = "; ".join(
        f"{valve} {_most(drawn, valve):g}" for valve in ("inlet", "exhaust") if _most(drawn, valve)
    )
    return Figure.of(
        paper,
        drawn.name,
        f"{drawn.of}: lift and open area of the valves of the {end.end.value} end",
        "Clearances hot, play and setting left out. Dashed: the area that the piston asks for at the greatest "
        f"Mach index allowed ({asked or 'not worked'}). At the left, the end of the turn before.",
        rows,
        ("what", "size"),
    )


def _lifts(
    paper: Paper, drawn: GearDrawn, side: str, openings: tuple[_Opening, ...], across: tuple[float, float]
) -> None:
    most = top_of([valve.valve.train.greatest_lift * 1e3 for valve in openings], 1.25)
    field = Field(paper, (_LEFT, 24.0), (_WIDE, 150.0), across, (0.0, most))
    field.frame("", "lift, {mm}", marks=_round_angles(across), numbers=False)
    _dead_centres(field, words=True)
    for one in openings:
        for points in _turned(one.lifts(), across):
            field.curve(points)
        top = max(one.lifts(), key=lambda point: point[1])
        middle = math.degrees((one.first + one.last) / 2)
        lift = drawn.again(partial(greatest_lift, side, one.name))
        field.says((middle, top[1]), words(f"{one.name}, {{}} {{mm}}", shown(lift, "mm", 1)))


def _areas(
    paper: Paper,
    drawn: GearDrawn,
    end: CylinderEnd,
    openings: tuple[_Opening, ...],
    across: tuple[float, float],
) -> None:
    demands = _demands(drawn, end)
    highest = [up for one in openings for _, up in one.areas()] + [
        up for points in demands.values() for _, up in points
    ]
    field = Field(paper, (_LEFT, 208.0), (_WIDE, 180.0), across, (0.0, top_of(highest, 1.2)))
    field.frame("", "effective area, {cm²}", marks=_round_angles(across))
    _dead_centres(field)
    for one in openings:
        for points in _turned(one.areas(), across):
            field.curve(points)
        top = max(one.areas(), key=lambda point: point[1])
        area = drawn.again(partial(greatest_area, end.end.value, one.name))
        middle = math.degrees((one.first + one.last) / 2)
        field.says((middle, top[1]), words(f"{one.name}, {{}} {{cm²}}", shown(area, "cm²", 1)))
    for points in demands.values():
        for part in _turned(points, across):
            field.curve(part, "ghost")
    labels = field.labels()
    for one in openings:
        labels.avoid(field.on(one.areas()))
    for points in list(demands.values())[:1]:  # the other half is drawn alike
        labels.avoid(field.on(points))
        labels.put(field.place(*points[round(0.55 * _PARTS)]), "asked for by the piston", "quiet")


def _demands(drawn: GearDrawn, end: CylinderEnd) -> dict[str, list[tuple[float, float]]]:
    """Crank angle [°] and the area [cm²] at which the speed of the steam is the greatest that is allowed."""
    found = {}
    for valve, first in (("inlet", 0.0), ("exhaust", math.pi)):
        sound, most = drawn.on_sheet(_RULE, f"a_{valve[0]}"), _most(drawn, valve)
        if sound and most:
            rate = end.area * _TURN * drawn.given.speed / (most * sound)
            places = [first + math.pi * n / _PARTS for n in range(_PARTS + 1)]
            found[valve] = [
                (math.degrees(at), abs(end.crank.slope(end.end, at)) * rate * 1e4) for at in places
            ]
    return found


def _turned(
    points: list[tuple[float, float]], across: tuple[float, float]
) -> Iterator[list[tuple[float, float]]]:
    """A curve where it falls on the chart, a revolution earlier and later too."""
    for turn in (-360.0, 0.0, 360.0):
        inside = [(at + turn, up) for at, up in points if across[0] <= at + turn <= across[1]]
        if len(inside) > 1:
            yield inside


def _round_angles(across: tuple[float, float]) -> list[float]:
    return [30.0 * n for n in range(math.ceil(across[0] / 30), math.floor(across[1] / 30) + 1)]


def _dead_centres(field: Field, *, words: bool = False) -> None:
    for angle, what in ((0.0, "dead centre"), (180.0, "far dead centre")):
        x, y = field.upright(angle)
        if words:
            field.paper.text((x, y - 8), what, "quiet", "middle")


def _strip(paper: Paper, drawn: GearDrawn, end: CylinderEnd, across: tuple[float, float]) -> None:
    """The events as a dimension line: from each to the next, with their angles."""
    field = Field(paper, (_LEFT, 208.0), (_WIDE, 180.0), across, (0.0, 1.0))
    y = 448.0
    places = _places(end.events)
    for number, ((start, what), (stop, _)) in enumerate(pairwise(places)):
        x_0, x_1 = (field.place(math.degrees(at), 0.0)[0] for at in (start, stop))
        paper.dimension((x_0, y), (x_1, y))
        if x_1 - x_0 > len(what) * 7.6:
            paper.text(((x_0 + x_1) / 2, y - 7), what, "figure", "middle")
        else:  # beneath, outwards from the narrow span
            paper.text((x_0 + 3 if number else x_1 - 1, y + 38), what, "figure", "start" if number else "end")
    for at, _ in places:
        x, foot = field.place(math.degrees(at), 0.0)
        paper.line((x, foot + 24), (x, y + 6), "thin")
        if at not in (0.0, math.pi):
            angle = drawn.again(partial(angle_on_strip, end.end.value, [one for one, _ in places].index(at)))
            paper.text((x, y + 22), words("{}°", shown(angle, "°", 1)), "figure", "middle")
    paper.text((_LEFT + _WIDE / 2, y + 62), "crank angle from the end's dead centre, °", "quiet", "middle")


def _places(events: Events) -> list[tuple[float, str]]:
    """Each event and dead centre with what begins there, in the order in which the crank passes them."""
    late = events.admission >= 0
    lead = [] if late else [(events.admission, "lead")]
    return [
        (events.compression - _TURN, "compression"),
        *lead,
        (events.admission if late else 0.0, "admission"),
        (events.cut_off, "expansion"),
        (events.release, "release"),
        (math.pi, "exhaust"),
        (events.compression, ""),
    ]


def greatest_lift(side: str, name: str, drawn: GearDrawn) -> float:
    """The greatest lift of a valve in the notch of the load case."""
    end = drawn.end(drawn.notch, side)
    return (end.inlet if name == "inlet" else end.exhaust).train.greatest_lift


def clearance_hot(side: str, name: str, drawn: GearDrawn) -> float:
    """The clearance at the tappet of a valve, hot."""
    end = drawn.end(drawn.notch, side)
    return (end.inlet if name == "inlet" else end.exhaust).train.clearance


def greatest_area(side: str, name: str, drawn: GearDrawn) -> float:
    """The greatest effective area that a valve opens, at the places that are drawn."""
    end = drawn.end(drawn.notch, side)
    events = end.events
    first, last = (
        (events.admission, events.cut_off) if name == "inlet" else (events.release, events.compression)
    )
    valve = end.inlet if name == "inlet" else end.exhaust
    return max(
        valve.area(first + (last - first) * n / _PARTS) for n in range(_PARTS)
    )  # at the last it is shut


def angle_on_strip(side: str, place: int, drawn: GearDrawn) -> float:
    """The crank angle at a place of the strip of events."""
    return _places(drawn.end(drawn.notch, side).events)[place][0]


def _rows(drawn: GearDrawn, end: CylinderEnd) -> tuple[tuple[str, str], ...]:
    rows: list[tuple[str, str]] = []
    side, notch = end.end.value, drawn.notch
    for event in ("admission", "cut_off", "release", "compression"):
        angle = drawn.again(partial(angle_of, notch, side, event))
        piston = drawn.again(partial(piston_at, side, event))
        says = words(
            "{}°, piston at {} % of the stroke from its end", shown(angle, "°", 1), shown(piston, "%", 1)
        )
        rows.append((event.replace("_", "-"), says))
    for name in ("inlet", "exhaust"):
        lift, clearance = (drawn.again(partial(work, side, name)) for work in (greatest_lift, clearance_hot))
        rows.append((f"greatest lift of the {name}", words("{} {mm}", shown(lift, "mm", 2))))
        rows.append(("clearance at its tappet, hot", words("{} {mm}", shown(clearance, "mm", 2))))
        mach, most = drawn.quantity(_RULE, f"Z_{name[0]}{side[0]}"), _limit(drawn, name)
        if mach is not None and most is not None:
            says = words("{}, {} allowed", shown(mach, "", 3), shown(most, ""))
            rows.append((f"Mach index of the {name}, {_RULE}", says))
    return tuple(rows)


def piston_at(side: str, event: str, drawn: GearDrawn) -> float:
    """The share of the stroke from its end at which the piston is at an event."""
    end = drawn.end(drawn.notch, side)
    return end.crank.share(end.end, getattr(end.events, event))


def _limit(drawn: GearDrawn, valve: str) -> Quantity | None:
    """The greatest Mach index of a valve that is allowed, on the sheet."""
    check = drawn.checks.get(_RULE)
    if check is None:
        return None
    for at, step in enumerate(check.steps):
        if step.kind == "limit" and step.name == f"greatest Mach index of an {valve}":
            return of_step(check, at)
    return None
