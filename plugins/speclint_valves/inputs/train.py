"""The train of a valve: spindle, rocker, tappet and cam, found by their links, and the cam's motion."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from speclint import Judgement, Sheet
from speclint.equations import Metres
from speclint.facts import ValvesTrain, tappet_clearances, tracks_of
from speclint.specs import Cam, Component, PoppetValve, Rocker, Tappet
from speclint_valves.inputs.shutting import spindle_of

C = TypeVar("C", bound=Component)


#: Intervals of a scan over the whole lift of a cam; the scan refines between them.
SCAN = 60


def _one(parent: Component, kind: type[C], does: str, sheet: Sheet) -> C:
    found = sheet.belonging_to(parent, kind)
    if len(found) != 1:
        raise sheet.not_assessed(
            f"{len(found) or 'no'} {kind.called}s state that they {does} {parent.id}; exactly one is needed"
        )
    return found[0]


def train_of(cam: Cam, sheet: Sheet) -> ValvesTrain:
    """The train by which a cam moves its valve."""
    return next(one for one in trains_of(valve_of(cam, sheet), sheet) if one.cam.id == cam.id)


def trains_of(valve: PoppetValve, sheet: Sheet) -> tuple[ValvesTrain, ...]:
    """The train that moves a valve, once for each track of its cam where it has several."""
    spindle = spindle_of(valve, sheet)
    rockers = sheet.belonging_to(spindle, Rocker)
    rocker = _one(spindle, Rocker, "work", sheet) if rockers else None
    tappet = _one(rocker or spindle, Tappet, "work", sheet)
    cams = tracks_of(tappet, sheet) or (_one(tappet, Cam, "lift", sheet),)
    return tuple(ValvesTrain(cam, tappet, rocker, spindle, valve) for cam in cams)


def on_every_track(valve: PoppetValve, sheet: Sheet, judge: Callable[[ValvesTrain], Judgement]) -> Judgement:
    """The judgement on the train of a valve; of a cam with several tracks the worst of them."""
    trains = trains_of(valve, sheet)
    if len(trains) == 1:
        return judge(trains[0])
    return sheet.each([(one.cam.id, one) for one in trains], lambda item: judge(item[1]))


def valve_of(cam: Cam, sheet: Sheet) -> PoppetValve:
    """The valve that a cam lifts through its train."""
    worked = sheet.follow(sheet.follow(cam.lifts).works)
    spindle = sheet.follow(worked.works) if isinstance(worked, Rocker) else worked
    return sheet.follow(spindle.moves)


def clearances(train: ValvesTrain, sheet: Sheet) -> tuple[Metres, Metres]:
    """Least and greatest clearance at the tappet, cold: as it is set, and as the lengths of the train leave it."""
    return tappet_clearances(train.tappet, sheet)
