"""How a valve is accelerated over the angle of its cam, what its train then asks of the spring, and what that gives."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from speclint import Assessment, Check
from speclint.reports import Figure, Labels, Paper
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
    pairs = list(zip(scan.angles, scan.accelerations, strict=True))
    field.curve(pairs)
    labels = field.labels()
    labels.avoid(field.on(pairs))
    ends = [find(pairs, key=lambda one: one[1]) for find in (min, max)]
    for end in ends:
        labels.put(field.place(*end), f"{shown(round(end[1]))} m/s²")


def _loaded(field: Field, scan: _Scan) -> None:
    field.frame("angle of the cam from the foot of its lift, °", "load, N")
    field.level(0.0, "fine")
    pairs = list(zip(scan.angles, scan.given, scan.asked, strict=True))
    labels = field.labels()
    for at, given, asked in pairs[::_HATCHED]:
        if asked is not None and asked < given:
            field.paper.line(field.place(at, given), field.place(at, asked), "hatch")
            labels.avoid([field.place(at, given), field.place(at, asked)])
    lines = [([(at, given) for at, given, _ in pairs], "edge")]
    lines += [(run, "edge dashed") for run in _runs([(at, asked) for at, _, asked in pairs])]
    for line, ink in lines:
        field.curve(line, ink)
        labels.avoid(field.on(line))
    _margin(field, scan, labels)
    top = max(scan.given)
    flat = [at for at, given, _ in pairs if given >= top * 0.999]
    labels.put(field.place((flat[0] + flat[-1]) / 2, top), "given by the springs, hot and relaxed")
    wanted = [(at, asked) for at, _, asked in pairs if asked is not None]
    beneath = (wanted[0][0] + wanted[-1][0]) / 2, max(up for _, up in wanted) * 0.3
    labels.put(field.place(*beneath), "asked for, with its margin")


def _margin(field: Field, scan: _Scan, labels: Labels) -> None:
    """The two loads that the sheet judges, and how far they are apart."""
    at, given, asked = (scan.on_sheet(symbol) for symbol in ("φ", "F_h", "F_a"))
    short = asked > given
    ends = [field.place(math.degrees(at), load) for load in (given, asked)]
    for end in ends:
        field.paper.circle(end, 3.5, "point hold" if short else "solid")
    field.paper.dimension(ends[0], ends[1])
    labels.avoid(ends)
    middle = ends[0][0], (ends[0][1] + ends[1][1]) / 2
    labels.put(middle, f"{abs(given - asked):.0f} N {'short' if short else 'left'}")


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
