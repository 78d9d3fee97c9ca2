"""Section properties against an integral over the section, strip by strip."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given, strategies as st
from scipy.integrate import quad

from speclint.errors import OutOfRange
from speclint.handbook.members import sections as s

sizes = st.floats(0.01, 0.5)
shares = st.floats(0.05, 0.95)


def strips(width: Callable[[float], float], half: float, corner: float | None = None) -> tuple[float, float]:
    """Area and second moment of a section of given width at each distance from its axis."""
    points = [corner] if corner else None
    area, _ = quad(width, 0, half, points=points, epsabs=0, limit=200)
    moment, _ = quad(lambda y: width(y) * y**2, 0, half, points=points, epsabs=0, limit=200)
    return 2 * float(area), 2 * float(moment)


def chord(d: float, y: float) -> float:
    return 2 * math.sqrt(max(d**2 / 4 - y**2, 0.0))


@given(sizes)
def test_round(d: float) -> None:
    area, moment = strips(lambda y: chord(d, y), d / 2)
    assert s.round_area(d) == pytest.approx(area, rel=1e-6)
    assert s.round_second_moment(d) == pytest.approx(moment, rel=1e-6)


@given(sizes, shares)
def test_tube(D: float, share: float) -> None:
    d = share * D
    area, moment = strips(lambda y: chord(D, y) - chord(d, y), D / 2, d / 2)
    assert s.tube_area(D, d) == pytest.approx(area, rel=1e-5)
    assert s.tube_second_moment(D, d) == pytest.approx(moment, rel=1e-5)


@given(sizes, shares)
def test_polar_moment_as_rings(D: float, share: float) -> None:
    J, _ = quad(lambda r: 2 * math.pi * r**3, share * D / 2, D / 2, epsabs=0)
    assert s.tube_polar_moment(D, share * D) == pytest.approx(J)


@given(sizes, sizes)
def test_rectangle(b: float, h: float) -> None:
    area, moment = strips(lambda _y: b, h / 2)
    assert s.rectangle_area(b, h) == pytest.approx(area)
    assert s.rectangle_second_moment(b, h) == pytest.approx(moment)


@given(sizes, sizes, shares, shares)
def test_i_section_both_ways(b: float, h: float, web: float, flange: float) -> None:
    t_w, t_f = web * b, flange * h / 2
    inner = h / 2 - t_f
    area, moment = strips(lambda y: t_w if y < inner else b, h / 2, inner)
    assert s.i_section_area(b, h, t_w, t_f) == pytest.approx(area, rel=1e-6)
    assert s.i_section_second_moment(b, h, t_w, t_f) == pytest.approx(moment, rel=1e-6)
    _, sideways = strips(lambda x: h if x < t_w / 2 else 2 * t_f, b / 2, t_w / 2)
    assert s.i_section_second_moment_sideways(b, h, t_w, t_f) == pytest.approx(sideways, rel=1e-6)


@given(sizes)
def test_a_tube_without_bore_is_a_bar(d: float) -> None:
    assert s.tube_area(d, 0.0) == pytest.approx(s.round_area(d))
    assert s.tube_second_moment(d, 0.0) == pytest.approx(s.round_second_moment(d))


@given(sizes)
def test_radius_of_gyration_of_a_round_bar_is_a_quarter_of_it(d: float) -> None:
    assert s.radius_of_gyration(s.round_second_moment(d), s.round_area(d)) == pytest.approx(d / 4)


def test_section_modulus_by_hand() -> None:
    """A bar 40 wide and 60 deep: 40 × 60²/6 = 24 000 mm³."""
    assert s.section_modulus(s.rectangle_second_moment(0.04, 0.06), 0.03) == pytest.approx(24e-6)


def test_a_bore_lies_within_the_outside() -> None:
    assert s.tube_area(0.1, 0.0999) > 0
    for bore in (0.1, -0.001):
        with pytest.raises(OutOfRange, match="does not lie within the outside"):
            s.tube_second_moment(0.1, bore)


def test_flanges_lie_within_the_depth_and_the_web_within_the_flange() -> None:
    assert s.i_section_area(0.1, 0.2, 0.1, 0.1) == pytest.approx(0.02)
    with pytest.raises(OutOfRange, match="do not lie within the depth"):
        s.i_section_area(0.1, 0.2, 0.01, 0.101)
    with pytest.raises(OutOfRange, match="does not lie within the flange width"):
        s.i_section_second_moment(0.1, 0.2, 0.101, 0.01)


@given(sizes, sizes)
def test_a_size_is_its_share_of_another(d: float, D: float) -> None:
    assert s.share_of_bore(D, s.size_ratio(d, D)) == pytest.approx(d)


def test_nothing_is_a_share_of_no_size() -> None:
    assert s.size_ratio(1.0, 1e-9) == pytest.approx(1e9)
    with pytest.raises(OutOfRange, match="the size to compare with must be above 0"):
        s.size_ratio(1.0, 0.0)
