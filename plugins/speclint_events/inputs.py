"""What several rules take alike: events of an end at the clearance hot, trains at every clearance, longest notches."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from speclint import OutOfRange, Sheet
from speclint.equations import Metres, Radians
from speclint.facts import (
    SIDES,
    CamAtWork,
    CylinderGiven,
    EndAtWork,
    GearAtWork,
    clearance_at_work,
    cylinder_given,
    engine_of,
    piston_area,
)
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import End, Events, ValveTrain, events_of
from speclint.specs import Engine, LoadCase, ValveGear
from speclint_events.formulae.cycles import as_drawn, of_cylinder, of_end
from speclint_events.formulae.turning import Standing

_TURN = math.tau


def hot_events(end: EndAtWork, sheet: Sheet) -> Events:
    """The events of an end by its drawing, with the clearances hot."""
    try:
        return events_of(hot_train(end.inlet), hot_train(end.exhaust))
    except OutOfRange as problem:
        raise sheet.not_covered(f"{end.id}: {problem}") from problem


def hot_train(cam: CamAtWork) -> ValveTrain:
    """A valve with its cam, the clearance hot with a new seat."""
    return cam.with_clearance(cam.clearances.hot)


def measured(symbol: str, table: Callable[..., Reading], cam: CamAtWork, sheet: Sheet, **more: Any) -> float:
    """What is measured on a valve with its cam at every clearance, hot and the least and the greatest beside it."""
    band = cam.clearances
    try:
        others = tuple(cam.with_clearance(δ) for δ in (band.low, band.high))
        hot = hot_train(cam)
    except OutOfRange as problem:
        raise sheet.not_covered(str(problem)) from problem
    return sheet.look_up(symbol, table, hot=hot, others=others, **more)


def longest(gear: GearAtWork, direction: str, sheet: Sheet) -> str | None:
    """The notch of a direction that cuts off latest, mean of both ends hot; None where there is none."""
    found = [name for name in gear.running if gear.direction(name) == direction]
    return max(found, key=lambda name: mean_cut_off(gear, name, sheet)) if found else None


def mean_cut_off(gear: GearAtWork, notch: str, sheet: Sheet) -> float:
    """Cut-off of a notch as a share of the stroke, mean of both ends, with the clearances hot."""
    ends = [gear.end(notch, side) for side in SIDES]
    shares = [gear.crank.share(one.side, hot_events(one, sheet).cut_off) for one in ends]
    return sum(shares) / len(shares)


def turns_apart(end: EndAtWork, found: Events) -> tuple[float, float]:
    """Whole turns to be added from the exhaust's shutting to admission, and from cut-off to release.

    The feet may be stated any number of turns apart: the events hot say how near each pair is.
    """
    inlet, exhaust = (cam.with_clearance(cam.clearances.hot) for cam in (end.inlet, end.exhaust))
    before = found.shut_before_admission - (inlet.opening - exhaust.closing)
    after = found.shut_before_release - (exhaust.opening - inlet.closing)
    return float(round(before / _TURN)), float(round(after / _TURN))


def clearance_corner(cam: CamAtWork, sheet: Sheet) -> Metres:
    """The clearance at a tappet as it works: the least, hot and worn, and the greatest are its corners."""
    band = cam.clearances
    what = f"{cam.at.serves} {cam.at.side.value}"
    ends = {"hot": band.hot, "low": band.low, "high": band.high}
    return sheet.look_up(f"δ_{cam.mark}", clearance_at_work, of=cam.train.tappet, what=what, **ends)


def running_notch(gear: GearAtWork, case: LoadCase, sheet: Sheet) -> str:
    """The notch in which a load case runs; it must be one in which the engine runs."""
    name: str = sheet.read("notch", case.notch)
    if name not in gear.running:
        raise sheet.not_assessed(
            f"{gear.gear.id} has no notch {name!r} in which the engine runs", case.notch.where
        )
    return name


@dataclass(frozen=True)
class Steam:
    """The cycle of a cylinder in the notch and at the speed of a load case; each result a corner within its band."""

    gear: GearAtWork
    notch: str
    cylinder: CylinderGiven
    at: str
    sheet: Sheet

    def of_end(self, symbol: str, side: End, name: str) -> float:
        """A result of one end, by the name that :mod:`speclint_events.formulae.cycles` gives it."""
        return self.sheet.look_up(symbol, of_end, cylinder=self.cylinder, side=side, at=self.at, name=name)

    def as_drawn(self, symbol: str, side: End, name: str) -> float:
        """A figure of the diagram of one end as drawn, to be worked on with."""
        return self.sheet.look_up(symbol, as_drawn, cylinder=self.cylinder, side=side, at=self.at, name=name)

    def of_both(self, symbol: str, name: str) -> float:
        """A result of both ends together."""
        return self.sheet.look_up(symbol, of_cylinder, cylinder=self.cylinder, at=self.at, name=name)


def steam_of(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Steam:
    """The steam in the cylinder of a gear in the notch that a load case names."""
    at_work = GearAtWork(gear, case, sheet)
    notch = running_notch(at_work, case, sheet)
    cylinder = cylinder_given(at_work, notch, case, sheet)
    at = f"{gear.id}, notch {notch}, {cylinder.speed * 60:.6g} rev/min"
    return Steam(at_work, notch, cylinder, at, sheet)


def at_all_clearances(cam: CamAtWork) -> tuple[ValveTrain, ValveTrain, ValveTrain]:
    """The inlet hot, and with the least and the greatest of its clearances."""
    band = cam.clearances
    return (
        cam.with_clearance(band.hot),
        cam.with_clearance(max(band.low, 0.0)),
        cam.with_clearance(band.high),
    )


def engine_of_gear(at_work: GearAtWork, sheet: Sheet) -> Engine:
    """The engine whose cranks name the block of a gear."""
    block, _ = at_work.place
    engine = engine_of(block, sheet)
    if engine is None:
        raise sheet.not_assessed(f"no crank of an engine names {block.id}", block.where)
    return engine


def _leads(engine: Engine, sheet: Sheet) -> list[Radians]:
    """The angles by which the cranks lead the one from which angles count, running forwards."""
    return [
        sheet.take_nominal(f"θ_{number}", one.angle) for number, one in enumerate(engine.cranks.values(), 1)
    ]


def standing(at_work: GearAtWork, case: LoadCase, backward: bool, sheet: Sheet) -> Standing:
    """The engine at standstill in a load case, about to start forwards or backwards; sizes as drawn."""
    leads = _leads(engine_of_gear(at_work, sheet), sheet)
    air = float(sheet.setting("site pressure"))
    live, exhaust = (
        sheet.take_absolute(symbol, value)
        for symbol, value in (("p_1", case.live_pressure), ("p_b", case.exhaust_pressure))
    )
    areas = [piston_area(*at_work.place, side, sheet) for side in SIDES]
    turned = tuple(-lead if backward else lead for lead in leads)
    return Standing(at_work.crank, areas[0], areas[1], turned, live, exhaust, air)
