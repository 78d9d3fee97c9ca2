"""The force of the steam on a piston: which pressures of which cycles it is of, with cycles that are made here."""

from __future__ import annotations

import math
from dataclasses import dataclass
from importlib import import_module
from inspect import unwrap
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import OutOfRange
from speclint.facts.cylinder_cycles import CylinderBand
from speclint.facts.piston_forces import (
    PistonForces,
    forces_of_cycles,
    most_on_piston,
    piston_forces,
    steam_on_piston,
)
from speclint.rules import NotAssessed

#: By its name: the package has a function of the same.
module = import_module("speclint.facts.piston_forces")

#: Every quarter turn the least and the greatest.
FORCES = PistonForces(
    (0.0, math.pi / 2, math.pi, 3 * math.pi / 2, 2 * math.pi),
    ((10.0, 30.0), (-20.0, 20.0), (-40.0, -10.0), (0.0, 5.0), (10.0, 30.0)),
    -50.0,
    60.0,
    "gear, notch 35",
)


@pytest.mark.parametrize(
    ("sense", "angle", "force"),
    [
        (1.0, 0.0, 30.0),
        (-1.0, 0.0, -10.0),
        (1.0, math.pi / 4, 25.0),
        (-1.0, math.pi / 4, 5.0),
        (1.0, math.pi, -10.0),
        (-1.0, math.pi, 40.0),
    ],
)
def test_the_force_in_a_sense_is_the_greatest_of_its_band(sense: float, angle: float, force: float) -> None:
    assert FORCES.in_sense(sense, angle) == pytest.approx(force)
    found = steam_on_piston(FORCES, sense, angle)
    assert (found.nominal, found.low, found.high, found.unit) == (*[pytest.approx(force)] * 3, "N")
    way = "towards the axle" if sense > 0 else "away from the axle"
    assert found.what == f"force of the steam on the piston {way}, calculated: gear, notch 35, both ends"
    assert found.worked


def test_the_most_in_a_sense_is_that_of_the_pressures() -> None:
    assert (FORCES.greatest(1.0), FORCES.greatest(-1.0)) == (60.0, 50.0)
    found = most_on_piston(FORCES, -1.0)
    assert (found.nominal, found.low, found.high, found.unit, found.worked) == (50.0, 50.0, 50.0, "N", True)
    assert found.what.endswith("the least on the other, calculated: gear, notch 35")


def both(name: str, front: tuple[float, float], back: tuple[float, float]) -> Any:
    """A cycle with the least and the greatest pressure of each end."""

    def end(least: float, greatest: float) -> Any:
        return SimpleNamespace(least_pressure=(least, 0.0), greatest_pressure=(greatest, 0.0))

    return SimpleNamespace(name=name, front=end(*front), back=end(*back))


@dataclass(frozen=True)
class Working:
    """A cylinder of which only the course of its force is asked."""

    force: Any
    front_area: float
    back_area: float


def test_the_forces_are_those_of_all_states_at_every_degree(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two states: their courses give the bands; least in front and greatest at the back push away from the axle."""
    nominal, corner = both("a", (2.0, 9.0), (3.0, 8.0)), both("b", (1.0, 7.0), (4.0, 10.0))
    band = CylinderBand(nominal, (corner,))
    monkeypatch.setattr(module, "cycles_to_safety_valves", lambda _: band)
    forces = {"a": lambda angle: angle, "b": lambda angle: 1.0 - angle}

    def working(of: Any, air: float) -> Any:
        assert air == 0.5
        return Working(forces[of.name], front_area=0.2, back_area=0.1)

    monkeypatch.setattr(module, "working_cylinder", working)
    monkeypatch.setattr(module, "piston_force", lambda **given: given)
    given: Any = SimpleNamespace(back=SimpleNamespace(rod=0.6))
    found: Any = unwrap(forces_of_cycles)(given, 1.0, 0.5, "gear")
    assert len(found.angles) == 361
    assert (found.angles[0], found.angles[90], found.angles[-1]) == pytest.approx(
        (0.0, math.pi / 2, 2 * math.pi)
    )
    assert found.bands[0] == (0.0, 1.0)
    assert found.bands[90] == pytest.approx((1 - math.pi / 2, math.pi / 2))
    # Of the last bore and not of the cycle's: π/4 = 0.7853982, and less the rod π (1 − 0.36)/4 = 0.5026548.
    areas = {"p_a": 0.5, "A_f": pytest.approx(0.7853982), "A_b": pytest.approx(0.5026548)}
    assert found.lowest == {"p_f": 1.0, "p_b": 10.0, **areas}
    assert found.highest == {"p_f": 9.0, "p_b": 3.0, **areas}
    assert found.at == "gear"


def test_nothing_is_known_where_the_gear_or_its_cycle_is_not(monkeypatch: pytest.MonkeyPatch) -> None:
    sheet: Any = SimpleNamespace(setting={"site pressure": "101325"}.__getitem__)
    block: Any = "block"
    case: Any = "case"
    steam = SimpleNamespace(cylinder="given", at="gear")
    asked: list[object] = []

    def beside(*given: object) -> object:
        asked.append(given)
        return steam

    monkeypatch.setattr(module, "steam_in_bore", beside)
    monkeypatch.setattr(module, "forces_of_cycles", lambda *given: given)
    monkeypatch.setattr(module, "greatest_bore_as_drawn", lambda block, bore, _: len(block + bore) / 10)
    assert piston_forces(block, "main", case, sheet) == ("given", 0.9, 101325.0, "gear")
    assert asked == [("block", "main", "case", sheet)]

    def refuses(problem: Exception) -> None:
        def refused(*_: object) -> object:
            raise problem

        monkeypatch.setattr(module, "forces_of_cycles", refused)
        assert piston_forces(block, "main", case, sheet) is None

    refuses(OutOfRange("not covered"))
    refuses(NotAssessed("not stated"))
    monkeypatch.setattr(module, "steam_in_bore", lambda *_: None)
    assert piston_forces(block, "main", case, sheet) is None
