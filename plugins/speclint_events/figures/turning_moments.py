"""The turning moment of all cylinders over a revolution at standstill, with the position that is worst for starting."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from speclint import Assessment, Sheet
from speclint.facts import SIDES, GearAtWork
from speclint.handbook.valve_events import TurningMoment
from speclint.reports import Figure, Paper, specs_of, taken_again
from speclint.specs import Component, LoadCase, ValveGear
from speclint_events.figures.fields import WIDTH, Field, degrees, top_of
from speclint_events.inputs import at_all_clearances, longest, standing

_RULE, _LIMIT = "events.starts-anywhere", "least share of the mean moment"
_EVERY = 2  # degrees from point to point of the curve
_INK = {"forward": "edge", "backward": "edge dashed"}


@dataclass(frozen=True)
class Turning:
    """A direction: its longest notch, and the moment with that clearance, cold, hot or worn, that starts it worst."""

    direction: str
    notch: str
    moment: TurningMoment


def turning_moments(assessment: Assessment) -> Iterator[Figure]:
    """A figure of the gear from which the engine starts worst: its cylinders are taken as alike."""
    found = []
    for gear in specs_of(assessment, ValveGear):
        checks = [one for one in assessment.checks if one.component == gear.id and one.rule.name == _RULE]
        for check in checks:
            turning = taken_again(assessment, check, _taken)
            numbers = {one.symbol: one.value for one in check.steps if isinstance(one.value, float)}
            limits = {one.name: one.value for one in check.steps if one.kind == "limit"}
            least = limits.get(_LIMIT)
            if turning and "M_m" in numbers and isinstance(least, float):
                found.append((check.utilisation or 0.0, gear.id, turning, numbers["M_m"], least))
    if found:
        _, name, turning, mean, least = max(found, key=lambda one: one[0])
        yield _figure(name, turning, float(mean), least)


def _taken(gear: Component, case: LoadCase, sheet: Sheet) -> list[Turning]:
    assert isinstance(gear, ValveGear)
    at_work = GearAtWork(gear, case, sheet)
    found = []
    for direction in _INK:
        notch = longest(at_work, direction, sheet)
        if notch is not None:
            engine = standing(at_work, case, direction == "backward", sheet)
            inlets = [at_all_clearances(at_work.end(notch, side).inlet) for side in SIDES]
            moments = [engine.moment(front, back) for front, back in zip(*inlets, strict=True)]
            found.append(Turning(direction, notch, min(moments, key=lambda one: one.least[1])))
    return found


def _figure(gear: str, turning: list[Turning], mean: float, least: float) -> Figure:
    name = f"moment-{gear}"
    rows = tuple(_rows(turning, mean, least))
    about = "; ".join(f"{what}: {size}" for what, size in rows)
    paper = Paper(name, "Turning moment of all cylinders at standstill", about, WIDTH, 400.0)
    highest = [one.moment.greatest[1] / 1e3 for one in turning] + [mean / 1e3]
    low = min(0.0, *(one.moment.least[1] / 1e3 for one in turning)) * 1.1
    field = Field(paper, (70.0, 20.0), (490.0, 310.0), (0.0, 360.0), (low, top_of(highest)))
    field.frame(
        "crank angle of the first crank, in the direction of running, °",
        "turning moment, kN·m",
        marks=_ANGLES,
    )
    told, labels = _told(turning), field.labels()
    for value, says in ((mean, "mean"), (least * mean, "least allowed")):
        x, y = field.level(value / 1e3, "fine")
        labels.avoid([field.place(0.0, value / 1e3), (x, y)])
        paper.text((x + 6, y + 4), f"{says}, {value / 1e3:.1f} kN·m", "quiet")
    for _, one in told:
        points = _points(one.moment)
        field.curve(points, _INK[one.direction])
        labels.avoid(field.on(points))
    for says, one in told:
        angle, moment = one.moment.least
        at = field.place(math.degrees(angle), moment / 1e3)
        paper.circle(at, 4.0, "point hold" if moment < least * mean else "solid")
        labels.put(at, f"{says}, {moment / 1e3:.1f} kN·m")
    return Figure(
        name,
        gear,
        f"{gear}: turning moment of all cylinders at standstill, in the longest notch of each direction",
        f"Live steam behind every piston whose inlet is open, exhaust behind the others, friction left out, as {_RULE} "
        "works it; the clearance is that of the least moment. Points: the worst positions for starting.",
        paper.markup(),
        rows,
        ("what", "size"),
    )


_ANGLES = [60.0 * n for n in range(7)]
_SAME = 1e-6  # of the greatest moment: curves as near as this are drawn once


def _told(turning: list[Turning]) -> list[tuple[str, Turning]]:
    """Each direction by its name; both in one where their curves are the same."""
    words = [one.direction for one in turning]
    if len(turning) > 1:
        pairs = zip(turning[0].moment.moments, turning[1].moment.moments, strict=True)
        if max(abs(a - b) for a, b in pairs) <= _SAME * turning[0].moment.greatest[1]:
            return [(" and ".join(words), turning[0])]
    return list(zip(words, turning, strict=True))


def _points(moment: TurningMoment) -> list[tuple[float, float]]:
    """Crank angle [°] and moment [kN·m] of a whole revolution, the least among them."""
    whole = [(math.degrees(at), up / 1e3) for at, up in zip(moment.angles, moment.moments, strict=True)]
    angle, least = moment.least
    points = sorted({*whole[::_EVERY], (math.degrees(angle), least / 1e3)})
    return [*points, (360.0, whole[0][1])]


def _rows(turning: list[Turning], mean: float, least: float) -> Iterator[tuple[str, str]]:
    for one in turning:
        angle, moment = one.moment.least
        yield (
            f"least moment, {one.direction}, notch {one.notch}",
            f"{moment / 1e3:.2f} kN·m at {degrees(angle, 0)}, {moment / mean:.3f} of the mean",
        )
        angle, moment = one.moment.greatest
        yield f"greatest moment, {one.direction}", f"{moment / 1e3:.2f} kN·m at {degrees(angle, 0)}"
    yield "mean moment by the trade's formula", f"{mean / 1e3:.2f} kN·m"
    yield "least that is allowed", f"{least:g} of the mean, {least * mean / 1e3:.2f} kN·m"
