"""The turning moment of all cylinders over a revolution at standstill, with the position that is worst for starting."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import partial

from msgspec import Struct

from speclint import Assessment, Check, Sheet
from speclint.facts import SIDES, GearAtWork
from speclint.handbook.valve_events import TurningMoment
from speclint.reports import (
    DrawnAgain,
    Figure,
    Paper,
    Quantity,
    of_step,
    on_sheet,
    shown,
    taken_again,
    words,
    worked,
)
from speclint.specs import Component, LoadCase, ValveGear
from speclint_events.figures.fields import WIDTH, Field, top_of
from speclint_events.inputs import at_all_clearances, longest, standing

_RULE, _LIMIT = "events.starts-anywhere", "least share of the mean moment"
_EVERY = 2  # degrees from point to point of the curve
_INK = {"forward": "edge", "backward": "edge dashed"}


class Turning(Struct, frozen=True):
    """A direction: its longest notch, and the moment with that clearance, cold, hot or worn, that starts it worst."""

    direction: str
    notch: str
    moment: TurningMoment


def turning_moments(assessment: Assessment) -> Iterator[Figure]:
    """A figure of the gear from which the engine starts worst: its cylinders are taken as alike."""
    found = []
    for check in assessment.checks:
        if check.rule.name == _RULE:
            turning = taken_again(assessment, check, _taken)
            mean, share = on_sheet(check, "M_m"), _least_share(check)
            if turning and mean is not None and share is not None:
                found.append((check, turning, mean, share))
    if found:
        check, turning, mean, share = max(found, key=lambda one: one[0].utilisation or 0.0)
        yield _figure(check.component, turning, mean, share)


def _least_share(check: Check) -> Quantity | None:
    """The least share of the mean moment that is allowed, on the sheet."""
    for at, step in enumerate(check.steps):
        if step.kind == "limit" and step.name == _LIMIT:
            return of_step(check, at)
    return None


def turning_of(assessment: Assessment, name: str) -> list[Turning]:
    """The directions of a gear with their moments, taken anew."""
    checks = [one for one in assessment.checks if one.component == name and one.rule.name == _RULE]
    return next(filter(None, (taken_again(assessment, check, _taken) for check in checks)))


def moment_of(direction: str, which: str, turning: list[Turning]) -> float:
    """The least or the greatest moment of a direction."""
    return float(next(getattr(one.moment, which)[1] for one in turning if one.direction == direction))


def angle_of(direction: str, which: str, turning: list[Turning]) -> float:
    """The crank angle of the least or the greatest moment of a direction."""
    return float(next(getattr(one.moment, which)[0] for one in turning if one.direction == direction))


def share_of(share: float, mean: float) -> float:
    """A share of a moment."""
    return share * mean


def as_share(moment: float, mean: float) -> float:
    """A moment as a share of another."""
    return moment / mean


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


def _again(gear: str, one: Turning, which: str) -> tuple[Quantity, Quantity]:
    """The least or the greatest moment of a direction, and its angle."""
    angle, moment = getattr(one.moment, which)
    origins = (
        DrawnAgain(gear, _RULE, turning_of, partial(work, one.direction, which))
        for work in (moment_of, angle_of)
    )
    return Quantity(moment, next(origins)), Quantity(angle, next(origins))


def _figure(gear: str, turning: list[Turning], average: Quantity, share: Quantity) -> Figure:
    name, allowed = f"moment-{gear}", worked(share_of, share=share, mean=average)
    mean = average.value
    rows = tuple(_rows(gear, turning, average, share))
    about = "; ".join(f"{what}: {size}" for what, size in rows)
    paper = Paper(name, "Turning moment of all cylinders at standstill", about, WIDTH, 400.0)
    paper.named(*map(_named, turning))
    highest = [one.moment.greatest[1] / 1e3 for one in turning] + [mean / 1e3]
    low = min(0.0, *(one.moment.least[1] / 1e3 for one in turning)) * 1.1
    field = Field(paper, (70.0, 20.0), (490.0, 310.0), (0.0, 360.0), (low, top_of(highest)))
    field.frame(
        "crank angle of the first crank, in the direction of running, °",
        "turning moment, {kN·m}",
        marks=_ANGLES,
    )
    told, labels = _told(turning), field.labels()
    for value, says in ((average, "mean"), (allowed, "least allowed")):
        x, y = field.level(value.in_unit("kN·m"), "fine")
        labels.avoid([field.place(0.0, value.in_unit("kN·m")), (x, y)])
        field.holds(value, "kN·m", 0.0)
        paper.text((x + 6, y + 4), words(f"{says}, {{}} {{kN·m}}", shown(value, "kN·m", 1)), "quiet")
    for _, one in told:
        points = _points(one.moment)
        field.curve(points, _INK[one.direction])
        labels.avoid(field.on(points))
    for says, one in told:
        angle, moment = one.moment.least
        at = field.place(math.degrees(angle), moment / 1e3)
        paper.circle(at, 4.0, "point hold" if moment < allowed.value else "solid")
        lowest = _again(gear, one, "least")[0]
        field.holds(lowest, "kN·m", math.degrees(angle))
        labels.put(at, words(f"{says}, {{}} {{kN·m}}", shown(lowest, "kN·m", 1)))
    return Figure.of(
        paper,
        gear,
        f"{gear}: turning moment of all cylinders at standstill, in the longest notch of each direction",
        f"Live steam behind every piston whose inlet is open, exhaust behind the others, friction left out, as {_RULE} "
        "works it; the clearance is that of the least moment. Points: the worst positions for starting.",
        rows,
        ("what", "size"),
    )


_ANGLES = [60.0 * n for n in range(7)]
_SAME = 1e-6  # of the greatest moment: curves as near as this are drawn once


def _told(turning: list[Turning]) -> list[tuple[str, Turning]]:
    """Each direction by its name; both in one where their curves are the same."""
    words = [one.direction for one in turning]
    if len(turning) > 1:
        pairs = zip(*(one.moment.moments for one in turning), strict=True)
        if max(abs(a - b) for a, b in pairs) <= _SAME * turning[0].moment.greatest[1]:
            return [(" and ".join(words), turning[0])]
    return list(zip(words, turning, strict=True))


def _points(moment: TurningMoment) -> list[tuple[float, float]]:
    """Crank angle [°] and moment [kN·m] of a whole revolution, the least among them."""
    whole = [(math.degrees(at), up / 1e3) for at, up in zip(moment.angles, moment.moments, strict=True)]
    angle, least = moment.least
    points = sorted({*whole[::_EVERY], (math.degrees(angle), least / 1e3)})
    return [*points, (360.0, whole[0][1])]


def _named(one: Turning) -> str:
    """What the least moment of a direction is called, with its notch."""
    return f"least moment, {one.direction}, notch {one.notch}"


def _rows(gear: str, turning: list[Turning], mean: Quantity, share: Quantity) -> Iterator[tuple[str, str]]:
    for one in turning:
        moment, angle = _again(gear, one, "least")
        part = worked(as_share, moment=moment, mean=mean)
        says = shown(moment, "kN·m", 2), shown(angle, "°", 0), shown(part, "", 3)
        yield _named(one), words("{} {kN·m} at {}°, {} of the mean", *says)
        moment, angle = _again(gear, one, "greatest")
        says_most = shown(moment, "kN·m", 2), shown(angle, "°", 0)
        yield f"greatest moment, {one.direction}", words("{} {kN·m} at {}°", *says_most)
    yield "mean moment by the trade's formula", words("{} {kN·m}", shown(mean, "kN·m", 2))
    allowed = shown(share, ""), shown(worked(share_of, share=share, mean=mean), "kN·m", 2)
    yield "least that is allowed", words("{} of the mean, {} {kN·m}", *allowed)
