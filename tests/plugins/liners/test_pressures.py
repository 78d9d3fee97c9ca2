"""Pressures in a cylinder and beside its walls: of a duty by which each of them is another."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint_liners.inputs.pressures import beside, greatest_pressure, pressure_inside
from tests.facts.bench import bench

DUTY = """
[cases.running]
live_pressure = "15 bar gauge"
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0.4 bar gauge"
{}
[cases.cooling]
live_pressure = "3 bar gauge"
{}
[cases.water]
live_pressure = "15 bar gauge"
safety_valve_pressure = "16.6 bar gauge"
{}
"""
BLOCK = '[bores.main]\n[ends.front]\nof_bore = "main"\nrelief_set = "20 bar gauge"\n'
STATED = 'cylinder_pressure = "{} bar gauge"\n'


def worked(
    folder: Path, case: str, running: str = "", cooling: str = "", water: str = ""
) -> tuple[float | None, float]:
    """The greatest pressure by the safety valves, where they are stated, and that of any case, bar."""
    files = {"duty duty": DUTY.format(running, cooling, water), "cylinder-block block": BLOCK}
    on = bench(folder, files, "block")
    stated, ends = on["duty"].cases[case], on["block"].ends.values()
    by_valves = None if case == "cooling" and not cooling else greatest_pressure(stated, ends, on.sheet) / 1e5
    return by_valves, pressure_inside(stated, ends, on.sheet) / 1e5


@pytest.mark.parametrize(
    ("case", "stated", "by_valves", "inside"),
    [
        ("running", "", 16.6, 16.6),
        ("running", STATED.format(19), 19.0, 19.0),  # of compression
        ("cooling", "", None, 3.0),  # no safety valves: the live pressure
        ("cooling", STATED.format(4), 4.0, 4.0),
        ("water", "", 22.0, 22.0),  # a tenth above the 20 bar of the relief valves
        ("water", STATED.format(25), 25.0, 25.0),
    ],
)
def test_the_greatest_pressure_in_a_cylinder(
    tmp_path: Path, case: str, stated: str, by_valves: float | None, inside: float
) -> None:
    found = worked(tmp_path, case, **{case: stated})
    assert found == (
        None if by_valves is None else pytest.approx(by_valves),
        pytest.approx(inside),
    )


@pytest.mark.parametrize(
    ("side", "stated", "greatest", "least"),
    [
        ("atmosphere", "", 0.0, 0.0),
        ("exhaust steam", "", 0.4, 0.4),
        ("live steam", "", 16.6, 0.0),  # the regulator shut
        ("cylinder", "", 16.6, 0.4),
        ("cylinder", STATED.format(19) + 'least_cylinder_pressure = "-0.5 bar gauge"\n', 19.0, -0.5),
    ],
)
def test_what_stands_beside_a_wall(
    tmp_path: Path, side: str, stated: str, greatest: float, least: float
) -> None:
    on = bench(tmp_path, {"duty duty": DUTY.format(stated, "", ""), "cylinder-block block": BLOCK}, "block")
    found = beside(side, on["duty"].cases["running"], on["block"].ends.values(), on.sheet)
    assert [one / 1e5 for one in found] == pytest.approx([greatest, least])
