"""valve.fatigue: what comes back in the wall of a valve at every turn.

Without a ramp the valve of the gear lands at 0.2714 m/s (test_motion). E is 206 GPa at the most: √(206e9 × 7850) =
40.213e6, so that a plain bar has 10.914 MPa. A wall of 6 mm, 150 over it and 110 long, weighs 2.3435 kg, valve and
spindle 6: 10.914 (1 + √2.5603) = 28.377 MPa.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, on_sheet
from speclint_valves.formulae.blows import (
    amplitude_allowed,
    amplitude_at_each_turn,
    mass_of_wall,
    stress_of_blow,
)
from tests.plugins.valves.gear import duty, train_files

FATIGUE = "valve.fatigue"


def _walled(wall: str, *more: tuple[str, str], duty_text: str = "") -> dict[str, str]:
    walled = ('beat_distance = "110 mm"', f'wall = "{wall}"\nbeat_distance = "110 mm"')
    return train_files(valve=(walled, *more), duty_text=duty_text)


@pytest.mark.parametrize(("wall", "outcome"), [("5.5 mm", "conforms"), ("5.42 mm", "finding")])
def test_a_thin_wall_is_stressed_by_its_steam(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """0.3 × 400/(2 × 1.5) = 40 MPa. 5.5 mm: 2 × 1.52 × 150²/(150² − 139²)/2 = 10.757, 2.1558 kg, 29.122: 39.88 MPa.

    5.42 mm: 10.911, 2.1257 kg, 29.251: 40.16 MPa.
    """
    check = workshop.write(_walled(wall)).only(FATIGUE)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.NONCONFORMITY)
    assert on_sheet(check, "σ_a") == pytest.approx((39.88e6 if outcome == "conforms" else 40.16e6), rel=2e-3)
    assert on_sheet(check, "σ_n") == pytest.approx(40e6)


@pytest.mark.parametrize(("speed", "outcome"), [("379", "conforms"), ("385", "finding")])
def test_a_fast_landing_stresses_it_too(workshop: DesignFolder, speed: str, outcome: str) -> None:
    """6 mm: 19.792/2 MPa of steam leave 30.104 of 40 for the blow, 1.0609 times 28.377: 381.9 rev/min for 360."""
    fast = duty().replace('rotational_speed = "360 rev/min"', f'rotational_speed = "{speed} rev/min"')
    check = workshop.write(_walled("6 mm", duty_text=fast)).only(FATIGUE)
    assert check.outcome == outcome
    assert on_sheet(check, "σ") == pytest.approx(19.792e6, rel=1e-4)


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
    """6 mm: 9.896 + 28.377 = 38.27 MPa of steel, of 40; of iron the blow is less by its E and ρ, some 19, of 35."""
    iron = (('"known-steel"', '"known-iron"'),) if "iron" in limit else ()
    files = _walled("6 mm", *iron)
    assert workshop.write(files).only(FATIGUE).outcome == "conforms"
    own = files["speclint.toml"] + f'\n[limits."{FATIGUE}"]\n"{limit}" = "{value}"\n'
    assert workshop.write({**files, "speclint.toml": own}).only(FATIGUE).outcome == "finding"


def test_a_valve_without_a_wall_is_not_assessed(workshop: DesignFolder) -> None:
    assert workshop.write(train_files()).only(FATIGUE).outcome == "not assessed"


def test_formulae_refuse_what_cannot_be() -> None:
    for E, ρ, m_w in ((0.0, 7850.0, 1.0), (200e9, 0.0, 1.0), (200e9, 7850.0, 0.0)):
        with pytest.raises(OutOfRange):
            stress_of_blow(v=1.0, E=E, ρ=ρ, m_v=3.0, m_s=1.0, m_w=m_w)
    for D, t in ((0.1, 0.05), (0.1, 0.0)):
        with pytest.raises(OutOfRange):
            mass_of_wall(ρ=7850.0, D=D, t=t, L=0.1)
    for K, x in ((0.0, 1.5), (2.0, 0.0)):
        with pytest.raises(OutOfRange):
            amplitude_allowed(k=0.3, R_m=400e6, K=K, x=x)


@given(st.floats(0.0, 5.0), st.floats(0.0, 1e9), st.floats(1.01, 3.0))
def test_a_harder_blow_never_stresses_less(v: float, sigma: float, harder: float) -> None:
    def amplitude(speed: float) -> float:
        return amplitude_at_each_turn(
            sigma=sigma, sigma_v=stress_of_blow(speed, 200e9, 7850.0, 4.0, 1.0, 2.0)
        )

    assert amplitude(v * harder) >= amplitude(v) >= sigma / 2
