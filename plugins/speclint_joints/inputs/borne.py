"""What stands on a cover beside the steam: springs, the stop of a valve, a jack screw."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.equations import Newtons
from speclint.facts import furthest_lift, load_on_stop, rate_by_sizes, rates, shut_loads
from speclint.handbook.members import sum_of_loads
from speclint.handbook.springs import spring_load_at_lift
from speclint.specs import (
    BoltedJoint,
    Borne,
    ChamberCover,
    Component,
    CompressionSpring,
    CylinderCover,
    LoadCase,
)


def bearing_on(part: Component) -> dict[str, Borne]:
    """What is said to stand on a part, by name; nothing on what is no cover."""
    return part.bears if isinstance(part, CylinderCover | ChamberCover) else {}


def load_borne(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Newtons:
    """Load on all studs of a joint from what stands on the cover that it holds."""
    return all_borne(bearing_on(sheet.follow(joint.holds)), case, sheet)


def all_borne(bears: dict[str, Borne], case: LoadCase, sheet: Sheet) -> Newtons:
    """The greatest load of all that stands on a cover in a load case, taken to push it off."""
    F = 0.0
    for name, one in bears.items():
        F = sheet.work("F_B", sum_of_loads, F_1=F, F_2=_load_of(name, one, case, sheet))
    return F


def _load_of(name: str, one: Borne, case: LoadCase, sheet: Sheet) -> Newtons:
    """The greatest load of one thing on a cover: a valve strikes its stop only where the engine runs."""
    F, said = 0.0, False
    for load in _loads(name, one, case, sheet):
        F, said = sheet.work(f"F_B of {name}", sum_of_loads, F_1=F, F_2=load), True
    if not said:
        raise sheet.not_assessed(f"{name} states no spring, stop, jack or force", one.where)
    return F


def _loads(name: str, one: Borne, case: LoadCase, sheet: Sheet) -> Iterator[Newtons]:
    if sheet.is_stated(f"spring {name}", one.spring):
        yield _open_load(name, sheet.follow(one.spring), sheet)
    if sheet.is_stated(f"stop {name}", one.stop):
        runs = case.name == "running"
        yield load_on_stop(sheet.follow(one.stop), case, sheet) if runs else 0.0
    if sheet.is_stated(f"jack {name}", one.jack):
        yield sheet.take(f"F_J of {name}", one.jack)
    if sheet.is_stated(f"force {name}", one.force):
        yield sheet.take(f"F_E of {name}", one.force)


def _open_load(name: str, spring: CompressionSpring, sheet: Sheet) -> Newtons:
    """The greatest load of a spring: as stated with the valve open, or as rate and lift give it."""
    index = f" of {name}"
    stated = sheet.take(f"F_O{index}", spring.open_load)
    by_sizes = rate_by_sizes(spring, sheet, index)
    shut = shut_loads(spring, sheet, sheet.take(f"F_U{index}", spring.shut_load), by_sizes, index)[1]
    valve = sheet.follow(spring.closes)
    h = furthest_lift(valve, sheet)
    lift = sheet.take(f"h{index}", valve.lift) if h is None else h
    rate = rates(spring, sheet, by_sizes, index)[1]
    return max(stated, sheet.work(f"F_h{index}", spring_load_at_lift, F_U=shut, R=rate, h=lift))
