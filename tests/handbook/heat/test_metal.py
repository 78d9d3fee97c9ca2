"""Temperature of metal: between its streams, monotone, banded, and refusals."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.heat import (
    annand_nusselt_number,
    face_temperature,
    film_band,
    stem_temperature,
    surface_swing,
    warmed_temperature,
    washed_temperature,
)

films = st.floats(min_value=5.0, max_value=5000.0)
hot, cold = 650.0, 420.0


@given(h_1=films, h_2=films, R=st.floats(min_value=0.0, max_value=1.0))
def test_metal_lies_between_its_streams(h_1: float, h_2: float, R: float) -> None:
    assert cold < washed_temperature(h_1, 1.0, hot, h_2, 1.0, cold) < hot
    face = face_temperature(hot, cold, h_1, R, h_2)
    assert cold < face < hot
    assert face_temperature(hot, cold, h_1, R + 0.1, h_2) > face


@given(h_1=films, h_2=films, scatter=st.floats(min_value=0.01, max_value=0.5))
def test_the_band_holds_the_estimate_and_widens_with_the_scatter(
    h_1: float, h_2: float, scatter: float
) -> None:
    def temperature(h_1: float, h_2: float) -> float:
        return washed_temperature(h_1, 1.0, hot, h_2, 1.0, cold)

    band = film_band(temperature, h_1, h_2, scatter=scatter)
    wider = film_band(temperature, h_1, h_2, scatter=1.2 * scatter)
    assert wider.low < band.low < band.nominal < band.high < wider.high


@given(h=st.floats(min_value=0.0, max_value=300.0), x=st.floats(min_value=0.0, max_value=0.3))
def test_a_stem_cools_along_its_length(h: float, x: float) -> None:
    def at(x: float) -> float:
        return stem_temperature(hot, cold, h, 42.0, 0.022, 0.3, x)

    assert at(0.0) == pytest.approx(hot)
    assert cold <= at(x) <= hot + 1e-9
    assert at(x) >= at(min(x + 0.01, 0.3)) - 1e-9


def test_a_part_starts_at_its_temperature_and_ends_at_the_steams() -> None:
    assert warmed_temperature(300.0, 500.0, 200.0, 0.5, 0.0, 20.0, 500.0) == 300.0
    assert warmed_temperature(300.0, 500.0, 200.0, 0.5, 1e5, 20.0, 500.0) == pytest.approx(500.0)


def test_what_is_refused() -> None:
    with pytest.raises(OutOfRange, match="film coefficient"):
        washed_temperature(0.0, 1.0, hot, 1.0, 1.0, cold)
    with pytest.raises(OutOfRange, match="film coefficient"):
        washed_temperature(1.0, 1.0, hot, 0.0, 1.0, cold)
    with pytest.raises(OutOfRange, match="area washed"):
        washed_temperature(1.0, 0.0, hot, 1.0, 1.0, cold)
    with pytest.raises(OutOfRange, match="area washed"):
        washed_temperature(1.0, 1.0, hot, 1.0, 0.0, cold)
    with pytest.raises(OutOfRange, match="film coefficient"):
        face_temperature(hot, cold, 0.0, 0.0, 1.0)
    with pytest.raises(OutOfRange, match="film coefficient"):
        face_temperature(hot, cold, 1.0, 0.0, 0.0)
    with pytest.raises(OutOfRange, match="resistance"):
        face_temperature(hot, cold, 1.0, -1e-9, 1.0)
    with pytest.raises(OutOfRange, match="film coefficient"):
        film_band(lambda h: washed_temperature(h, 1.0, hot, 1.0, 1.0, cold), -1.0)
    with pytest.raises(OutOfRange, match="scatter"):
        film_band(lambda h: h, 1.0, scatter=1.0)


@pytest.mark.parametrize(
    ("given_", "words"),
    [
        ((-1.0, 42.0, 0.02, 0.3, 0.1), "film coefficient"),
        ((10.0, 0.0, 0.02, 0.3, 0.1), "conductivity"),
        ((10.0, 42.0, 0.0, 0.3, 0.1), "diameter of a stem"),
        ((10.0, 42.0, 0.02, 0.3, 0.301), "place must lie"),
        ((10.0, 42.0, 0.02, 0.3, -0.001), "place must lie"),
        ((952.0, 42.0, 0.02, 0.3, 0.1), "so long"),  # k L = 0.3 √(3808/0.84) = 20.2
    ],
)
def test_a_stem_outside_is_refused(given_: tuple[float, ...], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        stem_temperature(hot, cold, *given_)


@pytest.mark.parametrize(
    ("given_", "words"),
    [
        ((-1.0, 1.0, 1.0, 1.0, 1.0), "film coefficient"),
        ((1.0, -1.0, 1.0, 1.0, 1.0), "area washed"),
        ((1.0, 1.0, -1.0, 1.0, 1.0), "time"),
        ((1.0, 1.0, 1.0, 0.0, 1.0), "mass of a part"),
        ((1.0, 1.0, 1.0, 1.0, 0.0), "specific heat"),
    ],
)
def test_a_warming_outside_is_refused(given_: tuple[float, ...], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        warmed_temperature(300.0, 500.0, *given_)


@pytest.mark.parametrize(
    ("given_", "words"),
    [
        ((-1.0, 100.0, 50.0, 2.0, 1.4e-5), "film coefficient"),
        ((600.0, 100.0, 0.0, 2.0, 1.4e-5), "conductivity"),
        ((600.0, 100.0, 50.0, 0.0, 1.4e-5), "number of swings"),
        ((600.0, 100.0, 50.0, 2.0, 0.0), "diffusivity"),
        ((4740.0, 100.0, 50.0, 2.0, 1.4e-5), "tenth"),  # 50 · 947.4 = 47 370
    ],
)
def test_a_swing_outside_is_refused(given_: tuple[float, ...], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        surface_swing(*given_)


def test_the_greatest_swing_is_taken() -> None:
    assert surface_swing(4730.0, 100.0, 50.0, 2.0, 1.4e-5) == pytest.approx(10.0, rel=2e-3)


def test_annand_within_his_range_is_taken() -> None:
    assert annand_nusselt_number(1e4, 0.8) == pytest.approx(0.8 * 10**2.8)
    assert annand_nusselt_number(1e7, 0.35) == pytest.approx(0.35 * 10**4.9)


@pytest.mark.parametrize(("Re", "b"), [(9.9e3, 0.5), (1.01e7, 0.5), (1e5, 0.34), (1e5, 0.81)])
def test_annand_outside_his_range_is_refused(Re: float, b: float) -> None:
    with pytest.raises(OutOfRange, match="lies outside"):
        annand_nusselt_number(Re, b)
