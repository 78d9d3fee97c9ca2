"""Bolted covers: the code's formula against the plate it stands for, and its invariants."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.plates.flat_covers import (
    bolted_cover_factor,
    bolted_cover_stress,
    bolted_cover_thickness,
    cover_thickness_with_opening,
    period_cover_thickness,
)
from tests.handbook.plate_equilibrium import round_plate

COVER = {"G": 0.5, "C": 0.3, "p": 2e6, "E": 1.0, "W": 600e3, "h_G": 0.04}


def test_the_code_is_a_supported_plate_with_the_studs_moment_on_its_rim() -> None:
    """C = 0.3 and 1.9 are 3 (3 + ν)/32 = 0.309 and 6/π = 1.91, both found here by numerical solution."""
    G, p, W, h_G, t = (COVER["G"], COVER["p"], COVER["W"], COVER["h_G"], 0.05)
    pressed = round_plate(0.01, 0.3, "supported", "guided").inner_moment * 1.3 / 2 * p * (G / 2) ** 2
    bent = round_plate(0.01, 0.3, "supported", "guided", rim_moment=1.0, load=0.0).outer_moment
    rim = W * h_G / (math.pi * G) * bent
    plate = 6 * (pressed + rim) / t**2
    assert bolted_cover_stress(t=t, **COVER) == pytest.approx(plate, rel=0.03)


@given(p=st.floats(1e5, 5e6), W=st.floats(0, 2e6), S=st.floats(50e6, 200e6), E=st.floats(0.5, 1))
def test_at_the_least_thickness_the_stress_is_the_allowable(p: float, W: float, S: float, E: float) -> None:
    t = bolted_cover_thickness(0.5, 0.3, p, S, E, W, 0.04)
    assert bolted_cover_stress(0.5, 0.3, p, t, E, W, 0.04) == pytest.approx(S)
    assert bolted_cover_stress(0.5, 0.3, p, 0.99 * t, E, W, 0.04) > S


@given(W=st.floats(1e4, 2e6), more=st.floats(1.01, 2))
def test_more_stud_load_or_lever_needs_more(W: float, more: float) -> None:
    seating = {"G": 0.5, "C": 0.3, "p": 0.0, "S": 100e6, "E": 1.0}
    plain = bolted_cover_thickness(W=W, h_G=0.04, **seating)
    assert bolted_cover_thickness(W=more * W, h_G=0.04, **seating) == pytest.approx(more**0.5 * plain)
    assert bolted_cover_thickness(W=W, h_G=more * 0.04, **seating) == pytest.approx(more**0.5 * plain)


@given(factor=st.floats(0.2, 5))
def test_covers_scale(factor: float) -> None:
    # lengths by the factor, loads by its square
    big = {"G": 0.5 * factor, "C": 0.3, "p": 2e6, "E": 1.0, "W": 600e3 * factor**2, "h_G": 0.04 * factor}
    small = bolted_cover_thickness(S=100e6, **COVER)
    assert bolted_cover_thickness(S=100e6, **big) == pytest.approx(factor * small)
    period = period_cover_thickness(0.38, 0.162, 1.8e6, 155e6)
    assert period_cover_thickness(factor * 0.38, 0.162, 1.8e6, 155e6) == pytest.approx(factor * period)


def test_without_studs_outside_the_gasket_the_code_is_the_period_rule() -> None:
    code = bolted_cover_thickness(0.38, bolted_cover_factor().nominal, 1.8e6, 155e6, 1.0, 0.0, 0.0)
    assert code == pytest.approx(period_cover_thickness(0.38, 0.3, 1.8e6, 155e6))


def test_an_opening_doubles_what_stands_under_the_root() -> None:
    doubled = COVER | {"C": 0.6, "W": 1200e3}
    plain, pierced = bolted_cover_thickness(S=100e6, **COVER), bolted_cover_thickness(S=100e6, **doubled)
    assert cover_thickness_with_opening(plain, 0.1, 0.5) == pytest.approx(pierced)
    assert cover_thickness_with_opening(plain, 0.25, 0.5) > plain
    for opening in (0.2501, 0.0):
        with pytest.raises(OutOfRange, match="half of the diameter"):
            cover_thickness_with_opening(plain, opening, 0.5)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"G": 0.0}, "gasket diameter 0"),
        ({"p": -1.0}, "pressure -1"),
        ({"E": 1.01}, "efficiency 1.01"),
        ({"E": 0.0}, "efficiency 0"),
    ],
)
def test_covers_that_make_no_sense_are_refused(change: dict[str, float], message: str) -> None:
    forms: list[tuple[Any, dict[str, float]]] = [
        (bolted_cover_thickness, {"S": 100e6}),
        (bolted_cover_stress, {"t": 0.05}),
    ]
    for form, rest in forms:
        assert form(**COVER, **rest) > 0
        with pytest.raises(OutOfRange, match=message):
            form(**(COVER | change), **rest)


def test_no_strength_and_no_thickness_are_refused() -> None:
    with pytest.raises(OutOfRange, match="allowable stress 0"):
        bolted_cover_thickness(S=0.0, **COVER)
    with pytest.raises(OutOfRange, match="thickness 0"):
        bolted_cover_stress(t=0.0, **COVER)
    with pytest.raises(OutOfRange, match="stress 0 MPa is not above 0"):
        period_cover_thickness(0.38, 0.162, 1.8e6, 0.0)
    with pytest.raises(OutOfRange, match="pressure -1 bar is negative"):
        period_cover_thickness(0.38, 0.162, -1e5, 155e6)
    assert period_cover_thickness(0.38, 0.162, 0.0, 155e6) == 0


def test_a_cover_by_hand() -> None:
    # (0.3 × 1.5 × 160 000 + 1.9 × 400e3 × 30/400)/40² = (72 000 + 57 000)/1600 = 80.625 MPa
    stress = bolted_cover_stress(G=0.4, C=0.3, p=1.5e6, t=0.040, E=1.0, W=400e3, h_G=0.030)
    assert stress == pytest.approx(80.625e6)
    thickness = bolted_cover_thickness(G=0.4, C=0.3, p=1.5e6, S=80.625e6, E=1.0, W=400e3, h_G=0.030)
    assert thickness == pytest.approx(0.040)
