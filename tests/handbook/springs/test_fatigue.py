"""Endurance lines: the table's order, the factors by hand, and their invariants."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook import tables
from speclint.handbook.springs.fatigue import (
    STROKE_STRENGTH,
    ZIMMERLI_LARGEST_WIRE,
    fatigue_line_slope,
    goodman_endurance,
    goodman_factor,
    stroke_factor,
    stroke_strength,
    upper_stress_limit,
    zimmerli_amplitude,
    zimmerli_mean,
)

KINDS = sorted({(row["wire"], row["treatment"]) for row in tables.rows(STROKE_STRENGTH)})
COLD = [kind for kind in KINDS if kind[0] != "hot coiled bar"]


@pytest.mark.parametrize(("wire", "treatment"), KINDS)
def test_thicker_wire_stands_less(wire: str, treatment: str) -> None:
    rows = [
        row for row in tables.rows(STROKE_STRENGTH) if (row["wire"], row["treatment"]) == (wire, treatment)
    ]
    diameters = [float(row["d"]) for row in rows]
    strengths = [stroke_strength(wire, treatment, d / 1e3).nominal for d in diameters]
    assert diameters == sorted(diameters)
    assert len(diameters) >= 3
    assert strengths == sorted(strengths, reverse=True)
    assert len(set(strengths)) >= len(strengths) - 1  # FDC of 8 and 10 mm: alike as reproduced


@pytest.mark.parametrize(("wire", "treatment"), KINDS)
def test_figures_say_whether_they_were_seen_and_stand_fifteen_per_cent_apart(
    wire: str, treatment: str
) -> None:
    for row in tables.rows(STROKE_STRENGTH):
        low, nominal, high = (float(row[name]) for name in ("low", "nominal", "high"))
        assert low == pytest.approx(0.85 * nominal, abs=0.51)
        assert high == pytest.approx(1.15 * nominal, abs=0.51)
    reading = stroke_strength(wire, treatment, 0.010 if wire == "hot coiled bar" else 0.003)
    seen = {("VDC", "none"), ("FDC", "none"), ("hot coiled bar", "peened")}
    assert reading.source.memory == ((wire, treatment) not in seen)
    assert reading.unit == "Pa"


@pytest.mark.parametrize("wire", sorted({wire for wire, treatment in COLD if treatment == "peened"}))
@given(d=st.floats(0.001, 0.008))
def test_peening_always_helps(wire: str, d: float) -> None:
    assert stroke_strength(wire, "peened", d).nominal > stroke_strength(wire, "none", d).nominal


@pytest.mark.parametrize(("wire", "treatment"), COLD)
@given(d=st.floats(0.001, 0.008))
def test_the_low_figure_never_promises_more_than_zimmerli(wire: str, treatment: str, d: float) -> None:
    # Zimmerli's stroke is 2 S_a from a lower stress of S_m − S_a. A rule works with the low figure.
    lower = zimmerli_mean(treatment).nominal - zimmerli_amplitude(treatment).nominal
    line = upper_stress_limit(lower, stroke_strength(wire, treatment, d).low, fatigue_line_slope().low)
    assert line - lower < 2 * zimmerli_amplitude(treatment).nominal


def test_between_diameters_it_is_the_straight_line() -> None:
    # VDC unpeened: 460 at 3 mm, 420 at 5 mm
    assert stroke_strength("VDC", "none", 0.0035).nominal == pytest.approx(450e6)


@pytest.mark.parametrize(("inside", "outside"), [(0.001, 0.00099), (0.008, 0.00801)])
def test_beyond_the_diagram_it_refuses(inside: float, outside: float) -> None:
    assert stroke_strength("VDC", "none", inside).nominal > 0
    with pytest.raises(OutOfRange, match="outside the table of stroke strength"):
        stroke_strength("VDC", "none", outside)


def test_unknown_wire_and_treatment_are_not_guessed() -> None:
    with pytest.raises(NotKnown, match=r"no fatigue line for piano, none; known: 1\.4310, none"):
        stroke_strength("piano", "none", 0.003)
    with pytest.raises(NotKnown, match="nitrided"):
        zimmerli_amplitude("nitrided")


def test_zimmerli_s_limit_of_size_is_three_eighths_of_an_inch() -> None:
    assert pytest.approx(0.375 * 0.0254) == ZIMMERLI_LARGEST_WIRE


@given(lower=st.floats(0, 500e6), width=st.floats(1e6, 600e6), strength=st.floats(200e6, 700e6))
def test_a_factor_of_one_is_on_the_line(lower: float, width: float, strength: float) -> None:
    m = 0.75
    factor = stroke_factor(lower, lower + width, strength, m)
    on_line = upper_stress_limit(lower, strength, m)
    assert factor == pytest.approx((on_line - lower) / width)
    assert (factor >= 1) == (lower + width <= on_line) or factor == pytest.approx(1)


@given(lower=st.floats(0, 500e6), width=st.floats(1e6, 600e6), more=st.floats(1.01, 2))
def test_a_wider_stroke_is_less_safe(lower: float, width: float, more: float) -> None:
    assert stroke_factor(lower, lower + more * width, 500e6, 0.75) < stroke_factor(
        lower, lower + width, 500e6, 0.75
    )
    assert goodman_factor(lower, lower + more * width, 400e6, 1e9) < goodman_factor(
        lower, lower + width, 400e6, 1e9
    )


@given(lower=st.floats(0, 500e6), width=st.floats(1e6, 600e6), scale=st.floats(0.2, 3))
def test_goodman_s_factor_is_the_scale_of_the_load_line(lower: float, width: float, scale: float) -> None:
    plain = goodman_factor(lower, lower + width, 400e6, 1e9)
    assert goodman_factor(scale * lower, scale * (lower + width), 400e6, 1e9) == pytest.approx(plain / scale)


@given(amplitude=st.floats(100e6, 400e6), mean=st.floats(0, 600e6))
def test_goodman_s_line_passes_through_the_found_pair(amplitude: float, mean: float) -> None:
    S_e = goodman_endurance(amplitude, mean, 1e9)
    assert 1 / (amplitude / S_e + mean / 1e9) == pytest.approx(1.0)


def test_impossible_stresses_are_refused() -> None:
    assert upper_stress_limit(0.0, 500e6, 0.75) == 500e6
    with pytest.raises(OutOfRange, match="is negative"):
        upper_stress_limit(-1.0, 500e6, 0.75)
    for factor in (stroke_factor, goodman_factor):
        with pytest.raises(OutOfRange, match="is not between 0 and the upper"):
            factor(300e6, 300e6, 500e6, 0.75)
        with pytest.raises(OutOfRange, match="is not between 0 and the upper"):
            factor(-1.0, 300e6, 500e6, 0.75)
    assert goodman_endurance(100e6, 999e6, 1e9) == pytest.approx(1e11)
    with pytest.raises(OutOfRange, match="mean strength"):
        goodman_endurance(100e6, 1e9, 1e9)


def test_the_slope_s_band_holds_its_nominal() -> None:
    # the upper stress rises by 0.75 of the lower, from 0.70 to 0.80; read elsewhere as 0.67 to 0.77
    slope = fatigue_line_slope()
    assert [slope.low, slope.nominal, slope.high] == [0.70, 0.75, 0.80]
    assert "as reproduced in" in slope.source.place


def test_a_reading_names_the_wire_in_millimetres() -> None:
    assert stroke_strength("VDC", "peened", 0.004).what == "stroke strength of VDC, peened, 4 mm"
