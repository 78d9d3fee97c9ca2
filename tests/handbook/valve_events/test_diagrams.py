"""The hyperbolic diagram: its mean is the mean of its pressures, and refusals."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.valve_events import diagram_factor, theoretical_mean_pressure, theoretical_pressure
from speclint.handbook.valve_events.diagrams import mean_forward_pressure, mean_return_pressure

PARTS = 4000
GIVEN = {"p_1": 16e5, "p_b": 1.3e5, "x_c": 0.35, "c": 0.08, "x_r": 0.9, "x_k": 0.15}


def test_the_mean_pressure_is_the_mean_of_the_diagram() -> None:
    """Middle ordinates of 4000 parts of each stroke."""
    places = [(n + 0.5) / PARTS for n in range(PARTS)]
    ordinates = [
        theoretical_pressure(x, True, **GIVEN) - theoretical_pressure(x, False, **GIVEN) for x in places
    ]
    assert sum(ordinates) / PARTS == pytest.approx(theoretical_mean_pressure(**GIVEN), rel=1e-4)


@given(x_c=st.floats(min_value=0.05, max_value=0.85), more=st.floats(min_value=0.001, max_value=0.05))
def test_later_cut_off_and_higher_pressure_do_more_work(x_c: float, more: float) -> None:
    base = {**GIVEN, "x_c": x_c}
    worked = theoretical_mean_pressure(**base)
    assert theoretical_mean_pressure(**{**base, "x_c": x_c + more}) > worked
    assert theoretical_mean_pressure(**{**base, "p_1": 17e5}) > worked
    assert theoretical_mean_pressure(**{**base, "p_b": 1.5e5}) < worked


@given(k=st.floats(min_value=0.1, max_value=10.0))
def test_pressures_all_grow_alike(k: float) -> None:
    scaled = {**GIVEN, "p_1": k * GIVEN["p_1"], "p_b": k * GIVEN["p_b"]}
    assert theoretical_mean_pressure(**scaled) == pytest.approx(k * theoretical_mean_pressure(**GIVEN))


@pytest.mark.parametrize(
    ("key", "value", "words"),
    [
        ("x_c", 0.0, "cut-off"),
        ("x_c", 0.91, "cut-off"),
        ("x_r", 1.01, "release"),
        ("c", -0.01, "clearance"),
        ("c", 0.0, "no clearance"),
        ("x_k", -0.01, "compression"),
        ("x_k", 1.01, "compression"),
    ],
)
def test_a_diagram_that_cannot_be_is_refused(key: str, value: float, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        theoretical_mean_pressure(**{**GIVEN, key: value})


def test_the_limits_themselves_are_taken() -> None:
    assert mean_forward_pressure(1.0, 0.0, 1.0, 0.0, 1.0) == pytest.approx(1.0)
    assert mean_return_pressure(1.0, 0.0, 0.1) == pytest.approx(1.0)


def test_a_factor_needs_a_diagram_that_works() -> None:
    with pytest.raises(OutOfRange, match="must do work"):
        diagram_factor(1e5, 0.0)
    with pytest.raises(OutOfRange, match="share of the stroke"):
        theoretical_pressure(1.01, True, **GIVEN)
