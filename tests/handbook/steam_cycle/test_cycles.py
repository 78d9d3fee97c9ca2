"""What every cycle does: its balances close, shut steam keeps its entropy, more steam does more work."""

from __future__ import annotations

import math
import tracemalloc
from functools import cache

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st

from speclint.errors import OutOfRange, replace
from speclint.handbook.steam import entropy_at_enthalpy
from speclint.handbook.steam_cycle import Cycle, Running, Supply, Valve, Walls, cycle_of
from speclint.handbook.valve_events import End
from tests.handbook.steam_cycle.engine import cylinder_end, passage, running, train

FEW = settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.too_slow])
speeds = st.floats(min_value=0.3, max_value=6.0)
dwells = st.floats(min_value=0.0, max_value=45.0)
chests = st.floats(min_value=8e5, max_value=20e5)
belts = st.floats(min_value=1.1e5, max_value=1.8e5)


@cache
def plain() -> Cycle:
    return cycle_of(cylinder_end(), running())


@FEW
@given(speed=speeds, dwell=dwells, chest=chests, belt=belts, wall=st.none() | st.floats(350.0, 550.0))
def test_mass_and_energy_close(
    speed: float, dwell: float, chest: float, belt: float, wall: float | None
) -> None:
    given = running(speed, chest, belt)
    if wall is not None:
        given = replace(given, walls=Walls(600.0, wall))
    cycle = cycle_of(cylinder_end(dwell=dwell, surface=0.7), given)
    assert abs(cycle.mass_error) < 1e-3
    assert abs(cycle.energy_error) < 1e-3
    assert cycle.rounds in range(3, 21)
    assert all(charge.p > 0.3 * belt for charge in cycle.charges)


@FEW
@given(speed=speeds, dwell=dwells, celsius=st.floats(min_value=210.0, max_value=420.0))
def test_shut_steam_keeps_its_entropy(speed: float, dwell: float, celsius: float) -> None:
    """Expansion and compression, dry, wet and through saturation, within 1 J/(kg·K) of about 7000."""
    cycle = cycle_of(cylinder_end(dwell=dwell), running(speed, celsius=celsius))
    assert cycle.at_cut_off.entropy == pytest.approx(cycle.at_release.entropy, abs=1.0)
    assert cycle.at_compression.entropy == pytest.approx(cycle.at_admission.entropy, abs=1.0)


@FEW
@given(speed=speeds, dwell=dwells, chest=chests, belt=belts)
def test_what_raises_and_lowers_the_mean_pressure(
    speed: float, dwell: float, chest: float, belt: float
) -> None:
    def mean(dwell: float = dwell, speed: float = speed, chest: float = chest, belt: float = belt) -> float:
        return cycle_of(cylinder_end(dwell=dwell), running(speed, chest, belt)).mean_pressure

    worked = mean()
    assert mean(dwell=dwell + 5) > worked
    assert mean(chest=1.1 * chest) > worked
    assert mean(speed=1.15 * speed) < worked
    assert mean(belt=1.15 * belt) < worked


@FEW
@given(speed=speeds, dwell=dwells)
def test_both_ends_are_alike_with_an_endless_rod(speed: float, dwell: float) -> None:
    front, back = (
        cycle_of(cylinder_end(end=end, dwell=dwell, rod_length=1e4), running(speed)) for end in End
    )
    assert front.mean_pressure == pytest.approx(back.mean_pressure, rel=1e-3)
    assert front.steam == pytest.approx(back.steam, rel=1e-3)


def test_the_front_works_more_than_the_back_with_a_rod_of_common_length() -> None:
    back = cycle_of(cylinder_end(end=End.BACK), running())
    assert plain().work > 1.05 * back.work


@FEW
@given(k=st.floats(min_value=0.3, max_value=3.0), speed=st.floats(min_value=1.0, max_value=4.0))
def test_a_larger_engine_turned_as_much_slower_has_the_same_diagram(k: float, speed: float) -> None:
    one = cycle_of(cylinder_end(), running(speed))
    other = cycle_of(cylinder_end(k=k), running(speed / k))
    assert other.mean_pressure == pytest.approx(one.mean_pressure, rel=1e-4)
    assert other.steam == pytest.approx(one.steam * k**3, rel=1e-4)


def test_the_direction_twice_reversed_is_the_first() -> None:
    end = cylinder_end()
    again = replace(
        end,
        inlet=Valve(end.inlet.train.backward().backward(), end.inlet.effective_area),
        exhaust=Valve(end.exhaust.train.backward().backward(), end.exhaust.effective_area),
    )
    assert cycle_of(again, running()).mean_pressure == pytest.approx(plain().mean_pressure, rel=1e-9)


def test_run_backwards_on_the_same_cams_the_end_brakes() -> None:
    end = cylinder_end()
    back = replace(
        end,
        inlet=Valve(end.inlet.train.backward(), end.inlet.effective_area),
        exhaust=Valve(end.exhaust.train.backward(), end.exhaust.effective_area),
    )
    cycle = cycle_of(back, running())
    assert cycle.work < 0
    with pytest.raises(OutOfRange, match="does no work"):
        _ = cycle.per_kilowatt_hour


def test_too_little_clearance_presses_the_steam_above_the_chest() -> None:
    """10 % cut-off, 4.5 % clearance, 1.6 bar in the belt at 300 rev/min: well above the chest's 16.2 bar."""
    end = replace(
        cylinder_end(share=0.045),
        inlet=Valve(train(5.5, 14.0, 2.0, -10.5), passage(148, 12_500, 16_000).effective_area),
    )
    cycle = cycle_of(end, running(5.0, belt=1.6e5))
    assert cycle.compression_peak > 1.2 * 16.2e5
    assert cycle.greatest_pressure[0] >= cycle.compression_peak
    assert min(flow.came for flow in cycle.flows) < 0


def test_readings_agree_with_one_another() -> None:
    cycle = plain()
    events = cycle.end.events
    assert cycle.pressure(events.cut_off) == pytest.approx(cycle.at_cut_off.pressure)
    assert cycle.pressure(events.cut_off + 2 * math.pi) == pytest.approx(cycle.at_cut_off.pressure)
    assert cycle.temperature(events.release) == pytest.approx(cycle.at_release.temperature, abs=0.1)
    assert cycle.at_cut_off.entropy == pytest.approx(
        entropy_at_enthalpy(cycle.at_cut_off.pressure, cycle.at_cut_off.enthalpy)
    )
    assert cycle.least_pressure[0] < cycle.exhaust.pressure * 1.01
    assert math.pi < cycle.least_pressure[1] < 2 * math.pi
    assert cycle.compression_peak == pytest.approx(cycle.at_admission.pressure)
    assert 1.35e5 < cycle.return_pressure < 1.35e5 * 1.1
    assert cycle.diagram_factor == pytest.approx(cycle.mean_pressure / cycle.theoretical_pressure)
    assert cycle.power == pytest.approx(cycle.work * 2.0)
    assert cycle.steam_flow == pytest.approx(cycle.steam * 2.0)
    assert cycle.per_horsepower_hour == pytest.approx(1.644 * cycle.per_kilowatt_hour, rel=1e-4)
    assert cycle.retained == pytest.approx(cycle.charges[0].m, rel=3e-4)
    assert cycle.heat == 0
    assert cycle.rounds == int(cycle.rounds)


def test_the_mean_temperature_that_the_liner_feels() -> None:
    """By 3600 even angles, each weighted by the bore laid bare."""
    cycle, end = plain(), plain().end
    angles = [2 * math.pi * (n + 0.5) / 3600 for n in range(3600)]
    bare = [end.crank.travel(end.end, angle) for angle in angles]
    felt = sum(x * cycle.temperature(angle) for x, angle in zip(bare, angles, strict=True)) / sum(bare)
    assert cycle.mean_temperature_at_liner == pytest.approx(felt, abs=0.2)
    assert cycle.mean_temperature_at_liner < cycle.mean_temperature


def test_a_finer_grid_changes_little() -> None:
    from speclint.handbook.steam_cycle.solving import solved

    fine = solved(cylinder_end(), running(), coarseness=0.25)
    work = sum(flow.work for flow in fine.revolution.flows)
    assert plain().work == pytest.approx(work, rel=2e-3)
    assert plain().greatest_pressure[0] == pytest.approx(
        max(charge.p for charge in fine.revolution.charges), rel=2e-3
    )


def test_a_cycle_takes_few_steps() -> None:
    """The budget of 25 ms for an end and a notch is about 2500 steps of 10 µs."""
    assert len(plain().flows) < 300
    assert plain().rounds < 9


def test_a_cycle_takes_little_memory() -> None:
    """Some 300 steps of a dozen numbers of 32 bytes: 0.2 MB to keep, and no more than ten times that to work."""
    tracemalloc.start()
    try:
        kept = cycle_of(cylinder_end(dwell=20.0), running())
        now, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert kept.rounds
    assert now < 0.3e6
    assert most < 3e6


def test_the_least_pressure_between_two_angles() -> None:
    """Over the working stroke it is that of its end; from release on, that of the exhaust stroke."""
    cycle = plain()
    events = cycle.end.events
    least, at = cycle.least_between(events.cut_off, events.release)
    assert least == pytest.approx(cycle.pressure(events.release), rel=1e-9)
    assert at == pytest.approx(events.release, abs=1e-9)
    whole, _ = cycle.least_between(0.0, 2 * math.pi - 1e-9)
    assert whole == cycle.least_pressure[0]


@pytest.mark.parametrize("dryness", [0.9, 1.0])
def test_saturated_steam(dryness: float) -> None:
    cycle = cycle_of(cylinder_end(), Running(Supply.saturated(12e5, dryness, 1.3e5), 2.0))
    assert cycle.at_release.wet
    assert 0.75 < cycle.exhaust.dryness < 1
    assert cycle.exhaust.temperature == pytest.approx(107.1 + 273.15, abs=0.1)  # steam tables at 1.3 bar


def test_a_cycle_outside_the_steam_tables_has_no_number() -> None:
    """Hardly more pressure in the chest than in the belt: the end churns its steam until it is hotter than 800 °C."""
    with pytest.raises(OutOfRange, match="outside the range of IAPWS-IF97"):
        cycle_of(cylinder_end(), running(3.0, chest=1.36e5, belt=1.35e5))


def test_a_valve_that_never_opens_has_no_cycle() -> None:
    end = cylinder_end()
    shut = Valve(end.inlet.train.with_clearance(0.02), end.inlet.effective_area)
    with pytest.raises(OutOfRange, match="never leaves its seat"):
        cycle_of(replace(end, inlet=shut), running())


def test_between_two_steps_steam_is_half_of_each() -> None:
    """A step is a straight line: the first as the last, where a revolution ends, and as one in the middle."""
    cycle = plain()
    last = len(cycle.angles) - 2
    for n in (0, 1, last // 2, last - 1, last):
        one, other = cycle.charges[n], cycle.charges[n + 1]
        middle = (cycle.angles[n] + cycle.angles[n + 1]) / 2
        assert cycle.pressure(middle) == pytest.approx((one.p + other.p) / 2, rel=1e-9)
        assert cycle.temperature(middle) == pytest.approx((one.T + other.T) / 2, rel=1e-9)
        assert cycle.state(middle).enthalpy == pytest.approx((one.h + other.h) / 2, rel=1e-6)
        assert cycle.pressure(middle + 2 * math.pi) == pytest.approx(cycle.pressure(middle), rel=1e-6)
