"""Tolerances on the load of cold coiled springs."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.springs.tolerances import load_deviation, load_tolerance, quality_factor


def test_load_tolerance_by_hand() -> None:
    """10/60 mm, 5 coils, 2000 N, grade 1, after the equations of EN 15800 (from memory).

    10^3.3 = 1995.262; 60^1.6 = e^(1.6 × 4.094345) = e^6.550951 = 699.91; 65.92 × 2.850741 × 0.90732 = 170.505;
    k_f = 0.803 + 0.32 − 1/75 = 1.109667; 0.63 (189.204 + 30) = 138.10 N.
    """
    assert load_tolerance(Q=0.63, F=2000, d=0.010, D=0.060, n=5) == pytest.approx(138.10, rel=1e-4)


@pytest.mark.parametrize(
    ("d", "D", "n", "said"),
    [
        (0.0161, 0.100, 8, "16 mm"),
        (0.012, 0.201, 8, "200 mm"),
        (0.010, 0.039, 8, "index"),
        (0.008, 0.161, 8, "index"),
        (0.008, 0.048, 1.9, "coils"),
    ],
)
def test_load_tolerance_refuses_what_the_standard_leaves_out(d: float, D: float, n: float, said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        load_tolerance(Q=1.0, F=1000, d=d, D=D, n=n)


@given(Q=st.floats(0.6, 1.6), F=st.floats(0.0, 5e3), more=st.floats(1.0, 2.0))
def test_tolerance_is_in_proportion_to_the_grade_and_rises_with_load(Q: float, F: float, more: float) -> None:
    sizes = {"d": 0.008, "D": 0.048, "n": 8}
    assert load_tolerance(Q=Q * more, F=F, **sizes) == pytest.approx(more * load_tolerance(Q=Q, F=F, **sizes))
    assert load_tolerance(Q=Q, F=F + 100, **sizes) == pytest.approx(
        load_tolerance(Q=Q, F=F, **sizes) + 1.5 * Q
    )


def test_grades_that_the_standard_does_not_have() -> None:
    assert quality_factor("1").nominal == pytest.approx(0.63)
    with pytest.raises(OutOfRange, match="quality grade"):
        quality_factor("4")


def test_a_deviation_stands_either_way() -> None:
    """Grade 1 on the spring of the hand working above: ±138.10 N about nothing."""
    reading = load_deviation("1", F=2000, d=0.010, D=0.060, n=5)
    assert (reading.low, reading.nominal, reading.high) == pytest.approx((-138.10, 0.0, 138.10), rel=1e-4)
