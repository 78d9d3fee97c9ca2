"""How a cam moves a valve over its angle, what that asks of the springs, and what there is to hold the valve on it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from speclint import Assessment, Check
from speclint.reports import (
    Courses,
    Figure,
    Labels,
    Paper,
    Quantity,
    along,
    courses_of,
    on_sheet,
    shown,
    words,
    worked,
)
from speclint_events.figures.fields import WIDTH, Field

_RULE = "valve.spring-follows-cam"
_HATCHED = 3  # every third place of the scan has a line of the hatching
_THINNED = 3  # as many places of the scan as go to a point of a curve of the motion
_HELD = 12  # places of the scan from one that is held to the next
_LEFT, _WIDE = 70.0, 660.0


def spring_forces(assessment: Assessment) -> Iterator[Figure]:
    """A figure of the valve with the least to spare, of those whose springs were judged over their cams."""
    checks = [one for one in assessment.checks if one.rule.name == _RULE]
    found = [_Scan(one, one.check) for one in courses_of(checks) if one.judged is not None]
    if found:
        yield _figure(max(found, key=lambda one: one.check.utilisation or 0.0))


def velocity(before: float, after: float, apart: float, turns: float) -> float:
    """Velocity of a valve between two places of a scan, from its lifts there and the speed of the cam."""
    return (after - before) / apart * turns


@dataclass(frozen=True)
class _Scan:
    """What a sheet recorded over the cam, as quantities of it."""

    courses: Courses
    check: Check

    @property
    def angles(self) -> list[float]:
        """Angles of the cam from the foot of its lift, in degrees."""
        series = next(step.series[0] for step in reversed(self.check.steps) if step.series)
        return [math.degrees(value or 0.0) for value in series.values]

    def each(self, symbol: str) -> list[Quantity | None]:
        """A series at every place."""
        return [along(self.check, symbol, place) for place in range(len(self.angles))]

    def velocities(self) -> list[Quantity | None]:
        """Velocities by the lifts on either side of each place."""
        lifts, turns, angles = self.each("h"), on_sheet(self.check, "ω_o"), self.each("φ")
        found: list[Quantity | None] = [None]
        for place in range(1, len(lifts) - 1):
            ends, places = (lifts[place - 1], lifts[place + 1]), (angles[place - 1], angles[place + 1])
            if turns is None or None in (*ends, *places):
                found.append(None)
            else:
                apart = worked(_apart, start=places[0], end=places[1])  # type: ignore[arg-type]
                of = {"before": ends[0], "after": ends[1], "apart": apart, "turns": turns}
                found.append(worked(velocity, **of))  # type: ignore[arg-type]
        return [*found, None]


def _apart(start: float, end: float) -> float:
    return end - start


def _figure(scan: _Scan) -> Figure:
    check = scan.check
    name, rows = f"following-{check.component}", tuple(_rows(scan))
    title = f"Motion of {check.component} and load of its springs over the cam"
    paper = Paper(name, title, "; ".join(f"{what}: {size}" for what, size in rows), WIDTH, 700.0)
    across, top = (0.0, scan.angles[-1]), 20.0
    moved = (
        ("lift, {mm}", "mm", 90.0, scan.each("h")),
        ("velocity, {m/s}", "m/s", 100.0, scan.velocities()),
        ("acceleration, {m/s²}", "m/s²", 130.0, scan.each("a")),
    )
    for says, unit, tall, values in moved:
        ends = _ends([one.in_unit(unit) for one in values if one is not None], 0.25)
        _motion(Field(paper, (_LEFT, top), (_WIDE, tall), across, ends), scan, says, unit, values)
        top += tall + 22
    loads = [up for curve in scan.courses.curves for _, up in curve if up is not None]
    _loaded(Field(paper, (_LEFT, top), (_WIDE, 240.0), across, _ends(loads, 0.12)), scan)
    return Figure.of(
        paper,
        check.component,
        f"{check.component}: lift, velocity and acceleration of the valve, and the load that holds it on the cam",
        f"From the sheet of {_RULE}, {check.case}, at overspeed and at its governing corner; the velocity by the lifts "
        "on either side of each place. Hatched: what there is beyond what must be held. Where the cam pushes the train "
        "nothing must be held, and the line breaks off.",
        rows,
        ("what", "size"),
    )


def _ends(values: list[float], share: float) -> tuple[float, float]:
    """The ends of an axis, with some room for words beyond the least and the greatest."""
    low, high = min(0.0, *values), max(0.0, *values)
    room = (high - low) * share
    return (low - room if low < 0 else 0.0), high + room


def _motion(field: Field, scan: _Scan, says: str, unit: str, values: Sequence[Quantity | None]) -> None:
    """One quantity of the motion over the angle, with its least and greatest."""
    field.frame("", says, numbers=False)
    field.level(0.0, "fine")
    known = [(at, one) for at, one in zip(scan.angles, values, strict=True) if one is not None]
    ends = [find(known, key=lambda one: one[1].value) for find in (min, max)]
    drawn = [one for number, one in enumerate(known) if number % _THINNED == 0 or one in ends]
    line = [(at, one.in_unit(unit)) for at, one in drawn]
    field.curve(line)
    labels = field.labels()
    labels.avoid(field.on(line))
    for at, one in known[::_HELD]:
        field.holds(one, unit, at)
    for at, one in ends if ends[0][1].value < 0 else ends[1:]:
        field.holds(one, unit, at)
        labels.put(field.place(at, one.in_unit(unit)), words(f"{{}} {{{unit}}}", shown(one, unit)))


def _loaded(field: Field, scan: _Scan) -> None:
    field.frame("angle of the cam from the foot of its lift, °", "load, {N}")
    field.level(0.0, "fine")
    there, needed = ([up for _, up in curve] for curve in scan.courses.curves)
    places = list(zip(scan.angles, there, needed, strict=True))
    labels = field.labels()
    for at, given, asked in places[::_HATCHED]:
        if given is not None and asked is not None and asked < given:
            field.paper.line(field.place(at, given), field.place(at, asked), "hatch")
            labels.avoid([field.place(at, given), field.place(at, asked)])
    lines = [([(at, up) for at, up, _ in places if up is not None], "edge")]
    lines += [(run, "edge dashed") for run in _runs([(at, asked) for at, _, asked in places])]
    for line, ink in lines:
        field.curve(line, ink)
        labels.avoid(field.on(line))
    for place in range(0, len(places), _HELD):
        for load in scan.courses.held(place):
            field.holds(load, "N", places[place][0])
    _margin(field, scan, labels)
    top = max(up for up in there if up is not None)
    flat = [at for at, up, _ in places if up is not None and up >= top * 0.999]
    labels.put(field.place((flat[0] + flat[-1]) / 2, top), scan.courses.names[0])
    wanted = [(at, up) for at, _, up in places if up is not None]
    if wanted:
        beneath = (wanted[0][0] + wanted[-1][0]) / 2, max(up for _, up in wanted) * 0.3
        labels.put(field.place(*beneath), scan.courses.names[1])


def short_of(there: float, needed: float) -> float:
    """How far what is there is from what is needed, either way."""
    return abs(there - needed)


def _margin(field: Field, scan: _Scan, labels: Labels) -> None:
    """The two loads that the sheet judges, and how far they are apart."""
    at, loads = on_sheet(scan.check, "φ"), scan.courses.judged
    if at is None or loads is None:
        return
    there, needed = loads
    short, angle = needed.value > there.value, math.degrees(at.value)
    ends = [field.place(angle, load.value) for load in loads]
    for load, end in zip(loads, ends, strict=True):
        field.paper.circle(end, 3.5, "point hold" if short else "solid")
        field.holds(load, "N", angle)
    field.paper.dimension(ends[0], ends[1])
    labels.avoid(ends)
    middle = field.place(angle, (there.value + needed.value) / 2)
    apart = worked(short_of, there=there, needed=needed)
    labels.put(middle, words(f"{{}} {{N}} {'short' if short else 'left'}", shown(apart, "N", 0)))


def _runs(points: list[tuple[float, float | None]]) -> Iterator[list[tuple[float, float]]]:
    """The parts of a line that breaks off where there is no value."""
    run: list[tuple[float, float]] = []
    for at, up in [*points, (0.0, None)]:
        if up is not None:
            run.append((at, up))
        elif run:
            yield run
            run = []


def _rows(scan: _Scan) -> Iterator[tuple[str, str]]:
    sheet = (
        ("cam angle of the least margin", "φ", "{} °", "°", 1),
        ("lift of the valve there", "h", "{} {mm}", "mm", 2),
        ("acceleration there", "a", "{} {m/s²}", "m/s²", 1),
    )
    for what, symbol, says, unit, places in sheet:
        found = on_sheet(scan.check, symbol)
        if found is not None:
            yield what, words(says, shown(found, unit, places))
    loads = scan.courses.judged
    assert loads is not None  # as was asked
    for name, load in zip(scan.courses.names, loads, strict=True):
        yield f"{name}, there", words("{} {N}", shown(load, "N", 0))
    yield "judged", scan.check.outcome
