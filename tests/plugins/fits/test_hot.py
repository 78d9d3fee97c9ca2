"""fit.hot: what is left hot; and the same seat to u6 beside s6.

Cooling has the block at 220 °C and the ring at 180 °C: at the bad sides of both expansions and the largest hole
170.04 × (12.8e-6 × 200 − 11.8e-6 × 160) = 170.04 × 0.672e-3 = 0.114267 mm are lost.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.checking import Check
from speclint.handbook.fits.hot_sizes import hot_interference
from speclint.testing import DesignFolder
from tests.plugins.fits.bench import in_fit, shaft, write

HOT = "fit.hot"


def _step(check: Check, symbol: str) -> float:
    values = [step.value for step in check.steps if step.symbol == symbol]
    assert len(values) == 1, symbol
    assert isinstance(values[0], float)
    return values[0]


def test_an_s6_seat_loses_its_fit_and_a_u6_seat_keeps_it_and_the_sheets_show_why(
    workshop: DesignFolder,
) -> None:
    loose = write(workshop).only(HOT)
    tight = write(workshop, shaft("170 mm u6")).only(HOT)
    assert (loose.outcome, tight.outcome) == ("finding", "conforms")
    assert (loose.case, tight.case) == ("cooling", "cooling")
    # 68 and 170 µm cold at the worst, 114.267 µm lost by either
    assert (_step(loose, "δ"), _step(tight, "δ")) == pytest.approx((0.068e-3, 0.170e-3))
    assert (_step(loose, "δ_h"), _step(tight, "δ_h")) == pytest.approx((-0.046267e-3, 0.055733e-3), rel=1e-4)
    notes = [next(step.note for step in check.steps if step.symbol == "d") for check in (loose, tight)]
    assert notes == ["170 mm s6", "170 mm u6"]
    assert loose.utilisation == pytest.approx(114.267 / 68, rel=1e-4)
    assert tight.utilisation == pytest.approx(114.267 / 170, rel=1e-4)


@pytest.mark.parametrize(("size", "outcome"), [("170.1544 mm", "conforms"), ("170.1542 mm", "finding")])
def test_the_fit_holds_as_long_as_something_is_left(workshop: DesignFolder, size: str, outcome: str) -> None:
    assert write(workshop, shaft(size)).only(HOT).outcome == outcome


@pytest.mark.parametrize(("size", "outcome"), [("170.1544 mm", "conforms"), ("170.1542 mm", "finding")])
def test_the_fit_holds_with_water_in_the_cylinder_too(
    workshop: DesignFolder, size: str, outcome: str
) -> None:
    """Water at the temperatures that cooling has above, and cooling at those of water."""
    changes = [
        shaft(size),
        ("duty.toml", "cases.water", "cases.swap"),
        ("duty.toml", "cases.cooling", "cases.water"),
    ]
    check = write(workshop, *changes, ("duty.toml", "cases.swap", "cases.cooling")).only(HOT)
    assert (check.outcome, check.case) == (outcome, "water")


@pytest.mark.parametrize(("size", "outcome"), [("169.799 mm", "conforms"), ("169.800 mm", "finding")])
def test_a_running_fit_must_not_seize(workshop: DesignFolder, size: str, outcome: str) -> None:
    """Warming has the ring at 120 °C in a block at 20 °C: 170 × 11.8e-6 × 100 = 0.2006 mm; 169.7994 mm just seizes."""
    check = write(workshop, shaft(size), in_fit('"interference"', '"clearance"')).only(HOT)
    assert check.outcome == outcome
    assert check.case == "warming"


def test_a_transition_fit_is_reported(workshop: DesignFolder) -> None:
    check = write(workshop, shaft("170 mm k6"), in_fit('"interference"', '"transition"')).only(HOT)
    assert check.outcome == "conforms"
    assert "promises neither clearance nor interference" in check.says


@pytest.mark.parametrize(
    "change",
    [
        ("duty.toml", 'valve-seat = "180 °C"', ""),
        ("seat.toml", 'material = "known-iron"', ""),
        in_fit('shaft = { of = "seat", dimension = "outside_diameter" }', 'shaft = { size = "170 mm u6" }'),
    ],
)
def test_hot_needs_temperatures_metals_and_the_parts(
    workshop: DesignFolder, change: tuple[str, str, str]
) -> None:
    changes = [change] if change[0] == "fit.toml" else [change, shaft("170 mm u6")]
    assert write(workshop, *changes).only(HOT).outcome == "not assessed"


@given(delta=st.floats(-1e-3, 1e-3), joint=st.floats(0.01, 1.0), by=st.floats(0.0, 300.0))
def test_like_parts_at_one_temperature_keep_their_fit(delta: float, joint: float, by: float) -> None:
    hot = 293.15 + by
    left = hot_interference(delta, joint, 12e-6, hot, 12e-6, hot, 293.15)
    assert left == pytest.approx(delta, abs=1e-12)


@pytest.mark.parametrize(("hole", "outcome"), [("170 mm", "finding"), ("170.001 mm", "conforms")])
def test_a_fit_without_any_clearance_binds(workshop: DesignFolder, hole: str, outcome: str) -> None:
    """At 20 °C nothing grows: where nothing is left it is no clearance."""
    fit = """
kind = "fit"
id = "fit"
duty = "duty"
hole = { of = "block", dimension = "seat_bores.inlet.diameter" }
shaft = { of = "seat", dimension = "outside_diameter" }
intent = "clearance"
"""
    cold = [("duty.toml", f'"{at} °C"', '"20 °C"') for at in (120, 220, 180)]
    sizes = (("block.toml", "170 mm H7", hole), ("seat.toml", "170 mm s6", "170 mm"))
    check = write(workshop, *cold, *sizes, fit=fit).only(HOT)
    assert check.outcome == outcome, check.says
