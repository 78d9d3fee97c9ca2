"""The grid of a revolution: whole, split at the events, fine where steam flows."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings, strategies as st

from speclint.handbook.steam_cycle.grids import grid_of
from tests.handbook.steam_cycle.engine import cylinder_end

TURN = 2 * math.pi


@settings(max_examples=10, deadline=None)
@given(dwell=st.floats(min_value=0.0, max_value=60.0), coarseness=st.floats(min_value=0.5, max_value=4.0))
def test_a_grid_is_one_revolution_split_at_every_event(dwell: float, coarseness: float) -> None:
    end = cylinder_end(dwell=dwell)
    grid = grid_of(end, coarseness)
    events = end.events
    assert grid.angles[0] == events.compression
    assert grid.angles[-1] == pytest.approx(events.compression + TURN)
    assert sum(step.angle for step in grid.steps) == pytest.approx(TURN)
    for event in (events.admission, events.cut_off, events.release):
        place = grid.angles[0] + (event - grid.angles[0]) % TURN
        assert min(abs(angle - place) for angle in grid.angles) < 1e-9
    assert grid.steps[0].before == pytest.approx(grid.steps[-1].after)
    for step, after in zip(grid.steps, grid.steps[1:], strict=False):
        assert step.after == after.before
        assert 0 < step.angle <= 4.001 * math.pi / 180 * coarseness


def test_no_valve_is_half_open_in_a_shut_step() -> None:
    """Steps with the inlet open cover its opening and no more."""
    end = cylinder_end()
    grid = grid_of(end)
    assert sum(step.angle for step in grid.steps if step.inlet) == pytest.approx(end.events.inlet_open)
    assert sum(step.angle for step in grid.steps if step.exhaust) == pytest.approx(end.events.exhaust_open)
    assert all(step.surface == 0 for step in grid.steps)
