"""What holds a cam along its shaft: a nut or a clamp that is locked, or set screws."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Judgement, Sheet
from speclint.facts import train_of_cam
from speclint.specs import Cam, LoadCase
from speclint_valves.formulae.set_screws import held_by_screw, holding_power, pushed_along
from speclint_valves.inputs.loads import loaded, worked_valve_load

#: What works back unless it is locked.
_TIGHTENED = ("shoulder and nut", "clamped set", "set screw")


def held_along(cam: Cam, by: str, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    """That something holds a cam, that it is locked, and that a set screw holds what pushes it along."""
    yield sheet.states(by != "nothing", f"along its shaft the cam is held by: {by}", where=cam.where)
    if by in _TIGHTENED:
        lock = sheet.read("locked by", cam.locked_by)
        yield sheet.states(
            lock != "nothing", f"what holds the cam along is locked by: {lock}", where=cam.locked_by.where
        )
    if by == "set screw":
        yield from _by_screws(cam, case, sheet)


def _by_screws(cam: Cam, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    """Two screws, each of which holds the friction of the greatest load of the tappet alone."""
    n = sheet.count("n", cam.set_screws.count)
    yield sheet.states(
        n >= sheet.limit("screws", "n_s"), f"set screws of the cam: {n}", where=cam.set_screws.count.where
    )
    P = sheet.look_up("P", holding_power, designation=sheet.read("set screw", cam.set_screws.thread))
    holds = sheet.work("F_h", held_by_screw, P=P, x=sheet.limit("dynamic", "x_s"))
    _, F = worked_valve_load(loaded(train_of_cam(cam, sheet), case, sheet), sheet)
    pushed = sheet.work("F_a", pushed_along, mu=sheet.limit("friction", "μ"), F=F)
    yield sheet.at_least(holds, pushed).else_says(
        "a set screw of the cam holds {found} along its shaft, {limit} wanted"
    )
