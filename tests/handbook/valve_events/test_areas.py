"""Areas over an opening: sums of parts, the least of two in series, and refusals."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange, replace
from speclint.handbook.valve_events import (
    Beat,
    ValvePassage,
    ValveTrain,
    angle_area,
    coefficient_of_loss,
    effective_area,
    last_fifth,
    mean_area,
)
from tests.handbook.valve_events.test_trains import CAM

TRAIN = ValveTrain(CAM, -0.18, 0.5e-3)
VALVE = ValvePassage((Beat(0.15, 2.5e-3, math.radians(45), 12e-3),) * 2, 16e-3)
areas = st.floats(min_value=1e-6, max_value=0.1)


@given(valve=areas, port=areas)
def test_two_in_series_pass_less_than_either(valve: float, port: float) -> None:
    together = effective_area(0.75, valve, 0.9, port)
    assert together < min(0.75 * valve, 0.9 * port)
    assert together >= min(0.75 * valve, 0.9 * port) / math.sqrt(2) * (1 - 1e-12)


@given(lift=st.floats(min_value=0.0, max_value=0.05), more=st.floats(min_value=0.0, max_value=0.01))
def test_a_higher_valve_passes_no_less(lift: float, more: float) -> None:
    assert VALVE.effective_area(lift + more) >= VALVE.effective_area(lift)


def test_coefficients_that_nobody_stated_are_those_of_common_practice() -> None:
    assert (VALVE.valve_coefficient, VALVE.port_coefficient) == (0.75, 0.90)


@pytest.mark.parametrize(
    ("wanting", "words"),
    [
        ({"valve_coefficient": 0.0}, "the discharge coefficient of a valve must be above 0"),
        ({"port_coefficient": 0.0}, "the discharge coefficient of a port must be above 0"),
        ({"port": 0.0}, "the area of a port must be above 0"),
        ({"common_throat": -1e-9}, "the area of a valve must not be below 0"),
    ],
)
def test_what_a_passage_wants_is_named(wanting: dict[str, Any], words: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{words}$"):
        replace(VALVE, **wanting).effective_area(0.01)


def test_a_shut_valve_passes_nothing() -> None:
    assert VALVE.effective_area(0.0) == 0


def test_the_parts_of_an_opening_make_the_whole() -> None:
    area = VALVE.effective_area
    parts = [angle_area(TRAIN, area, (n / 5, (n + 1) / 5)) for n in range(5)]
    assert sum(parts) == pytest.approx(angle_area(TRAIN, area), rel=1e-12)
    assert parts[4] / sum(parts) == pytest.approx(last_fifth(TRAIN, area))
    assert mean_area(TRAIN, area) * TRAIN.open_angle == pytest.approx(sum(parts))


def test_the_integral_of_the_lift_is_that_of_finer_steps() -> None:
    """Simpson's rule of scipy over 4001 places."""
    from scipy.integrate import simpson

    places = [TRAIN.opening + TRAIN.open_angle * n / 4000 for n in range(4001)]
    fine = simpson([VALVE.effective_area(TRAIN.lift(place)) for place in places], x=places)
    assert angle_area(TRAIN, VALVE.effective_area) == pytest.approx(fine, rel=2e-4)


def test_what_is_refused() -> None:
    with pytest.raises(OutOfRange, match="coefficient of a valve"):
        effective_area(0.0, 1e-3, 0.9, 1e-3)
    with pytest.raises(OutOfRange, match="coefficient of a port"):
        effective_area(0.7, 1e-3, 0.0, 1e-3)
    with pytest.raises(OutOfRange, match="area of a valve"):
        effective_area(0.7, -1e-9, 0.9, 1e-3)
    with pytest.raises(OutOfRange, match="area of a port"):
        effective_area(0.7, 1e-3, 0.9, 0.0)
    with pytest.raises(OutOfRange, match="must not be below 0"):
        coefficient_of_loss(-1e-9)
    for share in ((0.5, 0.5), (-0.1, 0.5), (0.5, 1.01)):
        with pytest.raises(OutOfRange, match="part of the opening"):
            angle_area(TRAIN, VALVE.area, share)
    with pytest.raises(OutOfRange, match="never leaves its seat"):
        mean_area(TRAIN.with_clearance(0.02), VALVE.area)
