"""What the example repository shows of the motion: a sound train, but for the thread of its piston rod."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import on_sheet
from tests.example import made_of


@pytest.mark.parametrize(
    ("rule", "component"),
    [
        ("rod.buckling", "rod-left"),
        ("rod.finish", "rod-left"),
        ("piston.clearance-hot", "piston-left"),
        ("piston.fastening", "piston-left"),
        ("piston.inertia", "piston-left"),
        ("piston.ring-lands", "piston-left"),
        ("piston.ring-gap", "ring-left-front"),
        ("crosshead.slide-pressure", "crosshead-left"),
        ("motion.balance-record", "crosshead-left"),
        ("slidebar.deflection", "slidebar-left"),
        ("pin.bearing-pressure", "pin-crosshead-left"),
        ("pin.bearing-pressure", "pin-crank-left"),
        ("pin.bending", "pin-crosshead-left"),
        ("pin.bending", "pin-crank-left"),
        ("packing.rating", "box-left"),
        ("packing.gland", "box-left"),
        ("shaft.torsion", "shaft-cam-left-front"),
    ],
)
def test_the_train_is_sound(rule: str, component: str) -> None:
    assert made_of(rule, component).outcome == "conforms"


def test_the_thread_was_proved_at_boiler_pressure_only() -> None:
    """M80x4 has its root at 80 − 4.907 = 75.093 mm: 4428.7 mm². The 16.6 bar of the boiler on the liner's last bore of
    509 mm bring 76.3 MPa; the 20.35 bar at which the relief valves blow off all the water bring 93.50 MPa, more than
    80: 2.035 · π 509²/4/4428.7.
    """
    check = made_of("rod.tension", "rod-left")
    assert (check.outcome, check.grade, check.case) == ("finding", Grade.HOLD, "water")
    assert on_sheet(check, "σ_nut") / 1e6 == pytest.approx(93.50, abs=0.01)


def test_the_speed_of_the_piston_is_the_greater_of_two() -> None:
    """250 rev/min of 1.32 m: 5.5 m/s; 78 km/h on worn tyres of 1.675 m: 21.667/(π 1.675) × 1.32 = 5.435 m/s."""
    check = made_of("piston.speed", "piston-left")
    assert check.outcome == "conforms"
    assert on_sheet(check, "v_m") == pytest.approx(5.5)
