"""valve.fatigue: what comes back in the wall of a valve at every turn.

Without a ramp the valve of the gear lands at 0.2714 m/s (test_motion). E is 206 GPa at the most: √(206e9 × 7850) =
40.213e6, so that a plain bar has 10.914 MPa. A wall of 9 mm, 150 over it and 110 long, weighs 7850 π 141 × 9 × 110
mm³ = 3.4423 kg, valve and spindle 6: 1.45 + √1.743 is below 3, so that the blow has 3 × 10.914 = 32.742 MPa.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, on_sheet
from speclint_valves.formulae.blows import (
    amplitude_allowed,
    amplitude_at_each_turn,
    factor_of_mass_behind,
    mass_of_wall,
    stress_of_blow,
)
from tests.plugins.valves.gear import duty, train_files
from tests.ranges import End, expect_end

FATIGUE = "valve.fatigue"


def _walled(wall: str, *more: tuple[str, str], duty_text: str = "") -> dict[str, str]:
    walled = ('beat_distance = "110 mm"', f'wall = "{wall}"\nbeat_distance = "110 mm"')
    return train_files(valve=(walled, *more), duty_text=duty_text)


@pytest.mark.parametrize(("wall", "outcome"), [("8.4 mm", "conforms"), ("8.2 mm", "finding")])
def test_a_thin_wall_is_stressed_by_its_steam(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """0.3 × 400/(2 × 1.5) = 40 MPa. 8.4 mm: 2 × 1.52 × 150²/(150² − 133.2²)/2 = 7.188, and 32.742: 39.93 MPa.

    8.2 mm: 1.52 × 150²/(150² − 133.6²) = 7.353: 40.10 MPa.
    """
    check = workshop.write(_walled(wall)).only(FATIGUE)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.NONCONFORMITY)
    assert on_sheet(check, "σ_a") == pytest.approx((39.93e6 if outcome == "conforms" else 40.10e6), rel=2e-3)
    assert on_sheet(check, "σ_n") == pytest.approx(40e6)


@pytest.mark.parametrize(("speed", "outcome"), [("365", "conforms"), ("367", "finding")])
def test_a_fast_landing_stresses_it_too(workshop: DesignFolder, speed: str, outcome: str) -> None:
    """9 mm: 1.52 × 150²/(150² − 132²) = 6.738 MPa of steam leave 33.262 of 40 for the blow, 1.0159 times 32.742: 365.7
    rev/min for 360.
    """
    fast = duty().replace('rotational_speed = "360 rev/min"', f'rotational_speed = "{speed} rev/min"')
    check = workshop.write(_walled("9 mm", duty_text=fast)).only(FATIGUE)
    assert check.outcome == outcome
    assert on_sheet(check, "σ") == pytest.approx(13.475e6, rel=1e-4)


@pytest.mark.parametrize(("pressure", "acts"), [("18", 18.0), ("10", 15.2)])
def test_the_greater_of_supply_and_cylinder_acts_on_it(
    workshop: DesignFolder, pressure: str, acts: float
) -> None:
    """The boiler gives 15.2 bar: 2 × 1.52 MPa × 150²/(150² − 132²) = 13.475 MPa, and in proportion."""
    text = 'rotational_speed = "360 rev/min"\n'
    more = duty().replace(text, f'{text}cylinder_pressure = "{pressure} bar gauge"\n', 1)
    check = workshop.write(_walled("9 mm", duty_text=more)).only(FATIGUE)
    assert on_sheet(check, "σ") == pytest.approx(13.475e6 * acts / 15.2, rel=1e-4)


def test_a_valve_of_one_beat_has_the_blow_alone(workshop: DesignFolder) -> None:
    check = workshop.write(_walled("6 mm", ("beats = 2", "beats = 1"))).only(FATIGUE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "σ_a") == pytest.approx(10.914e6, rel=2e-3)


def test_a_notch_hurts_grey_iron_less(workshop: DesignFolder) -> None:
    """0.35 × 195/(1.3 × 1.5) = 35 MPa."""
    check = workshop.write(_walled("6 mm", ('"known-steel"', '"known-iron"'))).only(FATIGUE)
    assert on_sheet(check, "σ_n") == pytest.approx(35e6)


@pytest.mark.parametrize(
    ("limit", "value"),
    [
        ("factor", "1.6"),
        ("share", "0.28"),
        ("notch", "2.2"),
        ("notch-in-iron", "2"),
        ("share-in-iron", "0.2"),
    ],
)
def test_a_works_may_set_its_own_limits(workshop: DesignFolder, limit: str, value: str) -> None:
    """9 mm: 6.738 + 32.742 = 39.48 MPa of steel, of 40; of iron the blow is less by its E and ρ, some 22, of 35."""
    iron = (('"known-steel"', '"known-iron"'),) if "iron" in limit else ()
    files = _walled("9 mm", *iron)
    assert workshop.write(files).only(FATIGUE).outcome == "conforms"
    own = files["speclint.toml"] + f'\n[limits."{FATIGUE}"]\n"{limit}" = "{value}"\n'
    assert workshop.write({**files, "speclint.toml": own}).only(FATIGUE).outcome == "finding"


def test_a_valve_without_a_wall_is_not_assessed(workshop: DesignFolder) -> None:
    assert workshop.write(train_files()).only(FATIGUE).outcome == "not assessed"


def landed(share: float, steps: int = 500) -> float:
    """Greatest stress at the seat, in ρ c v, of a bar that lands with a mass of so many times its own behind it.

    Wave by wave, in steps of the time in which a wave runs along the bar: at the seat nothing moves, so that the wave
    up is 1 + the wave down; the mass goes on with its speed, changed by the stress on it. It ends as the seat is left.
    """
    up, down, greatest = [0.0] * (80 * steps), [0.0] * (80 * steps), 0.0
    speed, pressed = 1.0, 0.0
    for now in range(80 * steps):
        arrives, meets = (up[now - steps], down[now - steps]) if now >= steps else (0.0, 0.0)
        half = 1 / (2 * steps * share)
        thrown = (speed - 1 + arrives - half * (pressed + arrives)) / (1 + half)
        speed, pressed = 1 - arrives + thrown, arrives + thrown
        up[now], down[now] = 1 + meets, thrown
        stress = 1 + 2 * meets
        if now > steps and stress <= 0:
            break
        greatest = max(greatest, stress)
    return greatest


@pytest.mark.parametrize(
    "share",
    [0.1, 0.3, 0.7, 1.0, 2.0, 2.5, 3.0, 3.7, 4.0, 4.4, 5.0, 5.8, 6.6, 8.0, 11.0, 15.0, 30.0, 60.0, 100.0],
)
def test_the_factor_is_a_bound_of_the_waves_and_no_wild_one(share: float) -> None:
    exact = landed(share)
    bound = factor_of_mass_behind(m_v=share - 0.05, m_s=0.05, m_w=1.0)
    assert exact <= bound * 1.002
    assert bound <= exact * 1.07


def test_a_mass_at_once_and_later() -> None:
    """3 below √r = 1.55, r = 2.4025; 1.45 + √r beyond."""
    assert factor_of_mass_behind(m_v=2.40, m_s=0.0, m_w=1.0) == pytest.approx(3)
    assert factor_of_mass_behind(m_v=0.0, m_s=2.5, m_w=1.0) == pytest.approx(1.45 + 2.5**0.5)


def test_formulae_refuse_what_cannot_be() -> None:
    for E, ρ in ((0.0, 7850.0), (200e9, 0.0)):
        with pytest.raises(OutOfRange):
            stress_of_blow(c=1.0, v=1.0, E=E, ρ=ρ)
    for m_v, m_s, m_w in ((3.0, 1.0, 0.0), (-0.1, 1.0, 1.0), (1.0, -0.1, 1.0)):
        with pytest.raises(OutOfRange):
            factor_of_mass_behind(m_v=m_v, m_s=m_s, m_w=m_w)
    for t, said in ((0.05, "50"), (0.0, "0")):
        says = f"a wall of {said} mm is not that of a ring of 100 mm"
        expect_end(End(mass_of_wall, {"ρ": 7850.0, "D": 0.1, "t": 0.0499, "L": 0.1}, {"t": t}, says))
    for K, x in ((0.0, 1.5), (2.0, 0.0)):
        with pytest.raises(OutOfRange):
            amplitude_allowed(k=0.3, R_m=400e6, K=K, x=x)


@given(st.floats(0.0, 5.0), st.floats(0.0, 1e9), st.floats(1.01, 3.0))
def test_a_harder_blow_never_stresses_less(v: float, sigma: float, harder: float) -> None:
    def amplitude(speed: float) -> float:
        return amplitude_at_each_turn(sigma=sigma, sigma_v=stress_of_blow(3.0, speed, 200e9, 7850.0))

    assert amplitude(v * harder) >= amplitude(v) >= sigma / 2
