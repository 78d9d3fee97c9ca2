"""Mean wall temperature against a wall simulated over many cycles, and its limits."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.heat.lubrication import flash_point_margin, mean_wall_temperature

coefficients = st.floats(min_value=1.0, max_value=2000.0)
temperatures = st.floats(min_value=280.0, max_value=720.0)
shares = st.floats(min_value=0.0, max_value=1.0)


@pytest.mark.parametrize("x", [0.1, 0.25, 0.5])
@pytest.mark.parametrize(("h_1", "h_2"), [(900.0, 250.0), (300.0, 600.0)])
def test_a_wall_stepped_through_many_cycles_settles_at_the_mean(x: float, h_1: float, h_2: float) -> None:
    """First principles: 20 mm of steel, c ρ t = 78 kJ/(m²·K), 0.25 s a cycle, exact in each phase."""
    T_1, T_2, U_o, T_o = 620.0, 390.0, 15.0, 300.0
    heat, cycle = 500.0 * 7800.0 * 0.020, 0.25
    T = 300.0

    def washed(T: float, h: float, steam: float, seconds: float) -> float:
        rest = (h * steam + U_o * T_o) / (h + U_o)
        return rest + (T - rest) * math.exp(-(h + U_o) * seconds / heat)

    for _ in range(20_000):
        T = washed(washed(T, h_1, T_1, x * cycle), h_2, T_2, (1 - x) * cycle)
    assert mean_wall_temperature(x, h_1, T_1, h_2, T_2, U_o, T_o) == pytest.approx(T, abs=0.2)


@given(x=shares, h_1=coefficients, T_1=temperatures, h_2=coefficients, T_2=temperatures, T_o=temperatures)
def test_the_wall_lies_between_what_washes_it(
    x: float, h_1: float, T_1: float, h_2: float, T_2: float, T_o: float
) -> None:
    wall = mean_wall_temperature(x, h_1, T_1, h_2, T_2, 10.0, T_o)
    assert min(T_1, T_2, T_o) - 1e-9 <= wall <= max(T_1, T_2, T_o) + 1e-9


@given(x=st.floats(0.0, 0.9), h_1=coefficients, h_2=coefficients)
def test_later_cut_off_warms_the_wall(x: float, h_1: float, h_2: float) -> None:
    earlier, later = (
        mean_wall_temperature(each, h_1, 620.0, h_2, 390.0, 0.0, 300.0) for each in (x, x + 0.1)
    )
    assert later > earlier


@given(x=shares, h_1=coefficients, h_2=coefficients)
def test_all_alike_is_that_temperature(x: float, h_1: float, h_2: float) -> None:
    assert mean_wall_temperature(x, h_1, 500.0, h_2, 500.0, 5.0, 500.0) == pytest.approx(500.0)


def test_margin_from_both_sides() -> None:
    assert flash_point_margin(560.0, 530.0) == pytest.approx(30.0)
    assert flash_point_margin(520.0, 530.0) == pytest.approx(-10.0)


@pytest.mark.parametrize(
    ("x", "h_1", "h_2", "U_o", "words"),
    [
        (-0.01, 1.0, 1.0, 1.0, "share of the cycle -0.01"),
        (1.01, 1.0, 1.0, 1.0, "share of the cycle 1.01"),
        (math.nan, 1.0, 1.0, 1.0, "share of the cycle nan"),
        (0.5, -1.0, 1.0, 1.0, "film coefficient"),
        (0.5, 1.0, -1.0, 1.0, "film coefficient"),
        (0.5, 1.0, 1.0, -1.0, "outwards"),
        (0.5, 0.0, 0.0, 0.0, "exchange heat"),
    ],
)
def test_outside_is_refused(x: float, h_1: float, h_2: float, U_o: float, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        mean_wall_temperature(x, h_1, 600.0, h_2, 400.0, U_o, 300.0)
