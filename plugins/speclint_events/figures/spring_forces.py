"""How a valve is accelerated over the angle of its cam, what its train then asks of the spring, and what that gives."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from speclint import Assessment, Check
from speclint.reports import Figure, Paper
from speclint_events.figures.fields import WIDTH, Field, degrees, percent, shown

_RULE = "valve.spring-follows-cam"
_HATCHED = 2  # every second place of the scan has a line of the hatching


def spring_forces(assessment: Assessment) -> Iterator[Figure]:
    """A figure of the valve with the least to spare, of those whose springs were judged over their cams."""
    found = [one for check in assessment.checks if (one := _Scan.of(check)) is not None]
    if found:
        yield _figure(max(found, key=lambda one: one.check.utilisation or 0.0))


@dataclass(frozen=True)
class _Scan:
    """What a sheet recorded over the cam: degrees, loads [N] given and asked for, acceleration [m/s²]."""

    check: Check
    angles: list[float]
    given: list[float]
    asked: list[float | None]
    accelerations: list[float]

    @classmethod
    def of(cls, check: Check) -> _Scan | None:
        """The last scan of a check of the rule; None where the check is of another, or was not made."""
        step = next((one for one in reversed(check.steps) if one.series), None)
        if check.rule.name != _RULE or step is None:
            return None
        series = {one.symbol: one.values for one in step.series}
        return cls(
            check,
            [math.degrees(value or 0.0) for value in step.series[0].values],
            [value or 0.0 for value in series["F_h"]],
            list(series["F_a"]),
            [value or 0.0 for value in series["a"]],
        )

    def on_sheet(self, symbol: str) -> float:
        """The last number under a symbol, which is the one that the sheet judges."""
        return next(
            step.value
            for step in reversed(self.check.steps)
            if step.symbol == symbol and isinstance(step.value, float)
        )


def _figure(scan: _Scan) -> Figure:
    check = scan.check
    name, rows = f"following-{check.component}", _rows(scan)
    title = f"Acceleration of {check.component} and load of its springs over the cam"
    paper = Paper(name, title, "; ".join(f"{what}: {size}" for what, size in rows), WIDTH, 520.0)
    across = (0.0, scan.angles[-1])
    _accelerated(Field(paper, (70.0, 20.0), (660.0, 150.0), across, _ends(scan.accelerations, 0.2)), scan)
    loads = [*scan.given, *(one for one in scan.asked if one is not None)]
    _loaded(Field(paper, (70.0, 200.0), (660.0, 260.0), across, _ends(loads)), scan)
    return Figure(
        name,
        check.component,
        f"{check.component}: acceleration of the valve, and what its train asks of the springs over the cam",
        f"From the sheet of {_RULE}, {check.case}, at overspeed and at its governing corner. Hatched: what the springs "
        "give beyond what is asked of them. Where the cam pushes the train nothing is asked, and the line breaks off.",
        paper.markup(),
        rows,
        ("what", "size"),
    )


def _ends(values: list[float], share: float = 0.12) -> tuple[float, float]:
    """The ends of an axis, with some room for words beyond the least and the greatest."""
    low, high = min(0.0, *values), max(0.0, *values)
    room = (high - low) * share
    return (low - room if low < 0 else 0.0), high + room


def _accelerated(field: Field, scan: _Scan) -> None:
    field.frame("", "acceleration, m/s²", numbers=False)
    field.level(0.0, "fine")
    field.curve(zip(scan.angles, scan.accelerations, strict=True))
    least = min(zip(scan.accelerations, scan.angles, strict=True))
    field.says((least[1], least[0]), f"{shown(round(least[0]))} m/s²", (0.0, 15.0))
    most = max(zip(scan.accelerations, scan.angles, strict=True))
    field.says((most[1], most[0]), f"{shown(round(most[0]))} m/s²", (8.0, 4.0), "start")


def _loaded(field: Field, scan: _Scan) -> None:
    field.frame("angle of the cam from the foot of its lift, °", "load, N")
    field.level(0.0, "fine")
    pairs = list(zip(scan.angles, scan.given, scan.asked, strict=True))
    for at, given, asked in pairs[::_HATCHED]:
        if asked is not None and asked < given:
            field.paper.line(field.place(at, given), field.place(at, asked), "hatch")
    field.curve([(at, given) for at, given, _ in pairs])
    for run in _runs([(at, asked) for at, _, asked in pairs]):
        field.curve(run, "edge dashed")
    top = max(pairs, key=lambda one: one[1])
    field.says(top[:2], "given by the springs, hot and relaxed")
    at, given, asked = (scan.on_sheet(symbol) for symbol in ("φ", "F_h", "F_a"))
    place = math.degrees(at)
    short = asked > given
    for load in (given, asked):
        field.paper.circle(field.place(place, load), 3.5, "point hold" if short else "solid")
    field.paper.dimension(field.place(place, given), field.place(place, asked))
    words = f"{abs(given - asked):.0f} N {'short' if short else 'left'}"
    field.says((place, (given + asked) / 2), words, (8.0, 4.0), "start")
    wanted = [(at, up) for at, up in zip(scan.angles, scan.asked, strict=True) if up is not None]
    beneath = (wanted[0][0] + wanted[-1][0]) / 2, max(up for _, up in wanted) * 0.3
    field.says(beneath, "asked for, with its margin", (0.0, 4.0))


def _runs(points: list[tuple[float, float | None]]) -> Iterator[list[tuple[float, float]]]:
    """The parts of a line that breaks off where there is no value."""
    run: list[tuple[float, float]] = []
    for at, up in [*points, (0.0, None)]:
        if up is not None:
            run.append((at, up))
        elif run:
            yield run
            run = []


def _rows(scan: _Scan) -> tuple[tuple[str, str], ...]:
    used = scan.check.utilisation
    return (
        ("cam angle of the least margin", degrees(scan.on_sheet("φ"))),
        ("lift of the valve there", f"{scan.on_sheet('h') * 1e3:.2f} mm"),
        ("acceleration there", f"{shown(round(scan.on_sheet('a'), 1))} m/s²"),
        ("load that the springs give there", f"{scan.on_sheet('F_h'):.0f} N"),
        ("load that is asked of them there", f"{scan.on_sheet('F_a'):.0f} N"),
        ("used of the limit", percent(used) if used is not None else "not worked"),
        ("judged", scan.check.says),
    )
