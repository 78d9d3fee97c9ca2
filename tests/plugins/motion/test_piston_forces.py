"""The force on a piston over a revolution against the pressures of the worked cases, end by end."""

from __future__ import annotations

import math
from functools import cache
from itertools import pairwise
from typing import Any

import pytest

from speclint.facts import (
    CylinderGiven,
    EndGiven,
    PistonForces,
    ValveGiven,
    forces_of_cycles,
    most_on_piston,
    steam_on_piston,
)
from tests.published.worked_cycles import case, crank_of, end_of, passage_of, running_of, train_of

FULL = ("Full simulation, 65 % notch", "Full simulation, 20 % notch")
AIR = 101325.0


def _valve(given: dict[str, Any], name: str) -> ValveGiven:
    train, passage = train_of(given[f"{name}_train"]), passage_of(given[f"{name}_valve"])
    clearance = train.clearance
    return ValveGiven(train.cam, train.foot, train.ratio, clearance, clearance, clearance, passage)


def _end(given: dict[str, Any]) -> EndGiven:
    volume = given["clearance_volume_cm3"] / 1e6
    return EndGiven(
        end_of(given["end"]),
        crank_of(given),
        given["bore_mm"] / 1e3,
        given["piston_rod_mm"] / 1e3,
        (volume, volume),
        _valve(given, "inlet"),
        _valve(given, "exhaust"),
        None,
    )


@cache
def forces(title: str, lifting: float = 0.0) -> PistonForces:
    given = case(title)["inputs"]
    running = running_of(given["front"])
    supply = running.supply
    cylinder = CylinderGiven(
        front=_end(given["front"]),
        back=_end(given["back"]),
        chest=(supply.chest,) * 3,
        temperature=given["front"]["chest_temperature_C"] + 273.15,
        belt=supply.belt,
        speed=running.speed,
        coefficient=0.0,
        lifting=lifting,
    )
    return forces_of_cycles(cylinder, given["back"]["bore_mm"] / 1e3, AIR, "a worked case")


def areas(title: str) -> tuple[float, float]:
    """Of the piston towards the front and the back [m²]."""
    given = case(title)["inputs"]["back"]
    bore, rod = given["bore_mm"] / 1e3, given["piston_rod_mm"] / 1e3
    return math.pi * bore**2 / 4, math.pi * (bore**2 - rod**2) / 4


@pytest.mark.parametrize("title", FULL)
def test_forces_by_the_pressures_of_the_worked_cases(title: str) -> None:
    """F = p_f A_f − p_b A_b − p_a (A_f − A_b), the back's angle half a turn behind; 3 % or 0.1 bar on either side.

    Within 5° of an event of either end the other model's pressure is not judged.
    """
    (A_f, A_b), outputs = areas(title), case(title)["outputs"]
    pressures = outputs["pressure_bar_at_phi_deg"]
    judged = 0
    for degrees in range(0, 360, 15):
        bar = {
            "front": pressures["front"][str(degrees)],
            "back": pressures["back"][str((degrees + 180) % 360)],
        }
        if any(
            _near_event(outputs["events"][end], degrees + turn) for end, turn in (("front", 0), ("back", 180))
        ):
            continue
        judged += 1
        F = 1e5 * (bar["front"] * A_f - bar["back"] * A_b) - AIR * (A_f - A_b)
        within = 1e5 * sum(max(0.03 * p, 0.1) * A_f for p in bar.values())
        found = forces(title).in_sense(1.0, math.radians(degrees))
        assert found == pytest.approx(F, abs=within)
        assert forces(title).in_sense(-1.0, math.radians(degrees)) == pytest.approx(-F, abs=within)
    assert judged >= 12


def _near_event(events: dict[str, float], degrees: float) -> bool:
    at = [events[f"{name}_deg"] for name in ("admission", "cut_off", "release", "compression")]
    return any(abs((one - degrees + 180) % 360 - 180) <= 5 for one in at)


@pytest.mark.parametrize("title", FULL)
def test_over_a_revolution_the_force_does_the_work_of_both_diagrams(title: str) -> None:
    """∮ F dx, the piston's travel from the front, is the work of both ends of the worked case: 1.5 %."""
    given, found = case(title), forces(title)
    crank = crank_of(given["inputs"]["front"])
    front = end_of("front")
    work = sum(
        (found.in_sense(1.0, a) + found.in_sense(1.0, b))
        / 2
        * (crank.travel(front, b) - crank.travel(front, a))
        for a, b in pairwise(found.angles)
    )
    expected = sum(given["outputs"][end]["work_J"] for end in ("front", "back"))
    assert work == pytest.approx(expected, rel=0.015)


def test_the_most_is_that_of_the_greatest_and_the_least_pressure() -> None:
    """At 20 % 16.071 bar in front against no more than 1.353 behind: 315.6 − 25.7 − 0.6 = 289.2 kN; 1 % each."""
    (A_f, A_b), outputs = areas(FULL[1]), case(FULL[1])["outputs"]
    least = min(outputs["pressure_bar_at_phi_deg"]["back"].values())
    F = 1e5 * (outputs["front"]["p_max_bar"] * A_f - least * A_b) - AIR * (A_f - A_b)
    assert pytest.approx(289.2e3, rel=1e-3) == F
    assert most_on_piston(forces(FULL[1]), 1.0).nominal == pytest.approx(F, rel=0.01)
    assert steam_on_piston(forces(FULL[1]), 1.0, 0.25).nominal <= most_on_piston(forces(FULL[1]), 1.0).nominal


def test_as_the_safety_valves_lift_it_is_greater_and_never_less() -> None:
    """A chest at 17.6 for 16.2 bar: one state more, which only widens what acts."""
    usual, lifting = forces(FULL[1]), forces(FULL[1], 17.6e5)
    assert lifting.highest > 1.05 * usual.highest
    assert lifting.lowest < 1.05 * usual.lowest
    for wider, band in zip(lifting.bands, usual.bands, strict=True):
        assert wider[0] <= band[0] <= band[1] <= wider[1]
