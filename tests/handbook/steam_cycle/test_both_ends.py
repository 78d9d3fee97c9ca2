"""Both ends of a cylinder together, and the figures drawn of them."""

from __future__ import annotations

import math
from functools import cache
from itertools import pairwise

import pytest

from speclint.errors import OutOfRange
from speclint.handbook.steam_cycle import (
    CylinderCycle,
    circle_of_events,
    cycle_of,
    indicated_power,
    indicator_card,
    kilograms_per_kilowatt_hour,
    mean_pressure_of_work,
    over_speed,
    tenths_of_stroke,
    theoretical_card,
    valve_chart,
    working_cylinder,
)
from speclint.handbook.valve_events import End, turning_moment
from tests.handbook.steam_cycle.engine import cylinder_end, running

WHEEL = 1.75


@cache
def both() -> CylinderCycle:
    front, back = (cycle_of(cylinder_end(end=end), running()) for end in End)
    return CylinderCycle(front, back)


def test_sums_of_both_ends() -> None:
    found = both()
    assert found.power == pytest.approx(found.front.power + found.back.power)
    assert found.work_ratio > 1
    assert found.greatest_pressure == max(found.front.greatest_pressure[0], found.back.greatest_pressure[0])
    assert found.least_pressure == min(found.front.least_pressure[0], found.back.least_pressure[0])
    ends = sorted((found.front.exhaust_enthalpy, found.back.exhaust_enthalpy))
    assert ends[0] < found.exhaust_enthalpy < ends[1]
    assert found.per_horsepower_hour == pytest.approx(1.644 * found.per_kilowatt_hour, rel=1e-4)
    temperatures = sorted((found.front.mean_temperature, found.back.mean_temperature))
    assert temperatures[0] < found.mean_temperature < temperatures[1]


def test_moment_effort_and_power_are_one_work() -> None:
    """A turn of the wheel: mean moment · 2 π = effort · π D = power over revolutions in a second."""
    work = both().power / 2.0
    assert both().tractive_effort(WHEEL) * math.pi * WHEEL == pytest.approx(work)
    cylinder = working_cylinder(both())
    assert cylinder.air == 101_325  # Pa: the standard atmosphere
    moment = turning_moment([(cylinder, 0.0)])
    assert moment.mean * 2 * math.pi == pytest.approx(work, rel=2e-3)


def test_the_area_of_the_card_is_the_mean_pressure() -> None:
    card = indicator_card(both().front)
    area = sum((p + q) / 2 * (y - x) for (x, p), (y, q) in pairwise(card))
    assert area == pytest.approx(both().front.mean_pressure, rel=2e-3)


def test_so_is_that_of_the_theoretical_card() -> None:
    assert len(theoretical_card(both().front)) == 2 * (201 + 3) + 2
    card = theoretical_card(both().front, steps=2000)
    assert card[0] == card[-1]
    area = sum((p + q) / 2 * (y - x) for (x, p), (y, q) in pairwise(card))
    assert area == pytest.approx(both().front.theoretical_pressure, rel=2e-3)


def test_the_valve_chart() -> None:
    end = cylinder_end()
    chart = valve_chart(end)
    assert len(chart) == 721
    assert chart[0].inlet_lift == pytest.approx(end.inlet.train.lift(0.0))
    assert max(point.inlet_lift for point in chart) == pytest.approx(14.6e-3)
    assert [point.exhaust_area for point in chart if point.angle < end.events.release][-1] == 0
    assert chart[180].piston_speed == pytest.approx(end.crank.radius)


def test_speeds_of_a_notch() -> None:
    front, back = (cylinder_end(end=end) for end in End)
    slow, fast, never = over_speed(front, back, running(), WHEEL, (1.0, 4.0, 1e4))
    assert slow.tractive_effort is not None
    assert fast.tractive_effort is not None
    assert fast.tractive_effort < slow.tractive_effort
    assert slow.mean_pressure is not None
    area = front.area
    assert slow.tractive_effort == pytest.approx(2 * slow.mean_pressure * area * 0.66 / (math.pi * WHEEL))
    assert (never.mean_pressure, never.tractive_effort, never.steam_flow) == (None, None, None)
    assert never.per_kilowatt_hour is None


def test_an_engine_that_is_driven_uses_no_steam_for_its_work() -> None:
    """With 2 bar in the chest compression takes more work than admission gives: steam for each kWh has no meaning."""
    front, back = (cylinder_end(end=end) for end in End)
    (driven,) = over_speed(front, back, running(chest=2.0e5), WHEEL, (2.0,))
    assert driven.mean_pressure is not None
    assert driven.mean_pressure < 0
    assert driven.steam_flow is not None
    assert driven.per_kilowatt_hour is None


def test_the_circle_of_events() -> None:
    end = cylinder_end()
    arcs = circle_of_events(end)
    assert math.degrees(arcs["inlet"][0]) == pytest.approx(354.05, abs=0.01)
    assert math.degrees(arcs["inlet"][1] - arcs["inlet"][0]) == pytest.approx(78.41, abs=0.01)
    assert math.degrees(arcs["exhaust"][0]) == pytest.approx(144.55, abs=0.01)
    tenths = tenths_of_stroke(end)
    assert (tenths[0], tenths[10]) == (0.0, pytest.approx(math.pi))
    assert end.crank.share(End.FRONT, tenths[3]) == pytest.approx(0.3)


def test_sums_that_have_no_meaning() -> None:
    with pytest.raises(OutOfRange, match="does no work"):
        kilograms_per_kilowatt_hour(1.0, 0.0)
    with pytest.raises(OutOfRange, match="area of the piston"):
        mean_pressure_of_work(1.0, 0.0, 0.66)
    with pytest.raises(OutOfRange, match="stroke"):
        mean_pressure_of_work(1.0, 0.2, 0.0)
    assert indicated_power(1e5, 0.2, 0.5, 0.0) == 0
