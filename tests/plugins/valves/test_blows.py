"""valve.fatigue: what comes back in the wall of a valve at every turn.

Without a ramp the valve of the gear lands at 0.2714 m/s (test_motion). E is 206 GPa at the most: √(206e9 × 7850) =
40.213e6, so that the blow makes 10.914 MPa.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, on_sheet
from speclint_valves.formulae.blows import amplitude_allowed, amplitude_at_each_turn, stress_of_blow
from tests.plugins.valves.gear import duty, train_files

FATIGUE = "valve.fatigue"


def _walled(wall: str, *more: tuple[str, str], duty_text: str = "") -> dict[str, str]:
    walled = ('beat_distance = "110 mm"', f'wall = "{wall}"\nbeat_distance = "110 mm"')
    return train_files(valve=(walled, *more), duty_text=duty_text)


@pytest.mark.parametrize(("wall", "outcome"), [("2 mm", "conforms"), ("1.97 mm", "finding")])
def test_a_thin_wall_is_stressed_by_its_steam(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """0.3 × 400/(2 × 1.5) = 40 MPa leave 58.17 for 15.2 bar: 2 × 1.52 × 150²/(150² − d²), d 146.03: 1.986 mm."""
    check = workshop.write(_walled(wall)).only(FATIGUE)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.NONCONFORMITY)
    assert on_sheet(check, "σ_v") == pytest.approx(10.914e6, rel=2e-3)
    assert on_sheet(check, "σ_n") == pytest.approx(40e6)


@pytest.mark.parametrize(("speed", "outcome"), [("985", "conforms"), ("1000", "finding")])
def test_a_fast_landing_stresses_it_too(workshop: DesignFolder, speed: str, outcome: str) -> None:
    """6 mm: 19.792/2 MPa of steam leave 30.104 of 40 for the blow: 0.7486 m/s, 2.758 times 360 rev/min, 993."""
    fast = duty().replace('rotational_speed = "360 rev/min"', f'rotational_speed = "{speed} rev/min"')
    check = workshop.write(_walled("6 mm", duty_text=fast)).only(FATIGUE)
    assert check.outcome == outcome
    assert on_sheet(check, "σ") == pytest.approx(19.792e6, rel=1e-4)


def test_a_valve_of_one_beat_has_the_blow_alone(workshop: DesignFolder) -> None:
    check = workshop.write(_walled("6 mm", ("beats = 2", "beats = 1"))).only(FATIGUE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "σ_a") == pytest.approx(10.914e6, rel=2e-3)


def test_a_notch_hurts_grey_iron_less(workshop: DesignFolder) -> None:
    """0.3 × 195/(1.3 × 1.5) = 30 MPa."""
    check = workshop.write(_walled("6 mm", ('"known-steel"', '"known-iron"'))).only(FATIGUE)
    assert on_sheet(check, "σ_n") == pytest.approx(30e6)


@pytest.mark.parametrize(
    ("limit", "value"), [("factor", "3"), ("share", "0.15"), ("notch", "4"), ("notch-in-iron", "2.6")]
)
def test_a_works_may_set_its_own_limits(workshop: DesignFolder, limit: str, value: str) -> None:
    """6 mm: 9.896 + 10.914 = 20.81 MPa of steel; of iron the blow is less, by its E and ρ, but half of 30 allowed."""
    iron = (('"known-steel"', '"known-iron"'),) if "iron" in limit else ()
    files = _walled("6 mm", *iron)
    assert workshop.write(files).only(FATIGUE).outcome == "conforms"
    own = files["speclint.toml"] + f'\n[limits."{FATIGUE}"]\n"{limit}" = "{value}"\n'
    assert workshop.write({**files, "speclint.toml": own}).only(FATIGUE).outcome == "finding"


def test_a_valve_without_a_wall_is_not_assessed(workshop: DesignFolder) -> None:
    assert workshop.write(train_files()).only(FATIGUE).outcome == "not assessed"


def test_formulae_refuse_what_cannot_be() -> None:
    for E, ρ in ((0.0, 7850.0), (200e9, 0.0)):
        with pytest.raises(OutOfRange):
            stress_of_blow(v=1.0, E=E, ρ=ρ)
    for K, x in ((0.0, 1.5), (2.0, 0.0)):
        with pytest.raises(OutOfRange):
            amplitude_allowed(k=0.3, R_m=400e6, K=K, x=x)


@given(st.floats(0.0, 5.0), st.floats(0.0, 1e9), st.floats(1.01, 3.0))
def test_a_harder_blow_never_stresses_less(v: float, sigma: float, harder: float) -> None:
    def amplitude(speed: float) -> float:
        return amplitude_at_each_turn(sigma=sigma, sigma_v=stress_of_blow(v=speed, E=200e9, ρ=7850.0))

    assert amplitude(v * harder) >= amplitude(v) >= sigma / 2
