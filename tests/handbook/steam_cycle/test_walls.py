"""Walls that give and take: heat flows towards the colder, and alike at one temperature."""

from __future__ import annotations

import pytest

from speclint.errors import OutOfRange, replace
from speclint.handbook.steam_cycle import Walls, balanced_cycle, cycle_of
from tests.handbook.steam_cycle.engine import cylinder_end, running

END = cylinder_end(surface=0.7)


def test_cold_walls_take_and_hot_walls_give() -> None:
    cold, hot = (
        cycle_of(END, replace(running(), walls=Walls(600.0, temperature))) for temperature in (380.0, 640.0)
    )
    assert cold.heat < 0 < hot.heat
    assert cold.per_kilowatt_hour > hot.per_kilowatt_hour
    assert cold.steam > cycle_of(END, running()).steam


def test_walls_in_balance() -> None:
    cycle = balanced_cycle(END, running(), 600.0)
    assert cycle.running.walls is not None
    assert abs(cycle.heat) < 0.005 * cycle.work
    colder = replace(running(), walls=Walls(600.0, cycle.running.walls.temperature - 10))
    assert cycle_of(END, colder).heat < cycle.heat


def test_what_is_refused() -> None:
    with pytest.raises(OutOfRange, match="above 0"):
        balanced_cycle(END, running(), 0.0)
    with pytest.raises(OutOfRange, match="not stated"):
        balanced_cycle(cylinder_end(), running(), 600.0)
