"""What a sheet writes: equations with numbers in place of their symbols."""

from __future__ import annotations

import math

import pytest

from speclint.quantities import amount, as_written, sides, substituted
from speclint.quantities.writing import number, without_rounding


@pytest.mark.parametrize(
    ("argument", "symbol"),
    [
        ("sigma_a", "σ_a"),
        ("ΔT", "ΔT"),
        ("lambda_", "λ"),
        ("s_prime", "s′"),
        ("T_ref", "T_ref"),
        ("mu", "μ"),
    ],
)
def test_an_argument_is_written_as_its_symbol(argument: str, symbol: str) -> None:
    assert as_written(argument) == symbol


@pytest.mark.parametrize(
    ("equation", "symbol", "right"),
    [
        ("A = π d²/4", "A", "π d²/4"),
        ("v ≈ ω r", "v", "ω r"),
        ("b = c, c = 2 d", "b", "c, c = 2 d"),
        ("f from 1/√f = x", "f", "f from 1/√f = x"),
        ("a = b with c from d", "a", "b with c from d"),
    ],
)
def test_the_two_sides_of_an_equation(equation: str, symbol: str, right: str) -> None:
    assert sides(equation) == (symbol, right)


@pytest.mark.parametrize(
    ("equation", "line"),
    [
        ("k = a d", "3 N/mm · 20 mm"),
        ("k = d/a", "20 mm/(3 N/mm)"),  # without brackets the mm would stand on top
        ("k = d²/(a d)", "(20 mm)²/(3 N/mm · 20 mm)"),
        ("k = ε^8 + ε⁸", "(0.5)^8 + (0.5)⁸"),
        ("k = 28.5 mm √d", "28.5 mm · √(20 mm)"),
        ("k = 0.85 (150 mm/d + 45) MPa", "0.85 · (150 mm/20 mm + 45) MPa"),
        ("k = ε |x| d", "0.5 · |(−2 mm)| · 20 mm"),
        ("k = sin² ε d", "sin² 0.5 · 20 mm"),
        ("k = d if ε < 1, else x", "20 mm if 0.5 < 1, else (−2 mm)"),
        ("k = m d, m = 2 ε", "m · 20 mm, m = 2 · 0.5"),
        ("m from m d = 2 a", "m from m · 20 mm = 2 · 3 N/mm"),
        ("k = d/α", "20 mm/(12e-6/K)"),
        ("k = d/ΔT", "20 mm/(9 °F difference)"),
    ],
)
def test_a_line_with_numbers_reads_as_the_equation_does(equation: str, line: str) -> None:
    values = {
        "a": "3 N/mm",
        "d": "20 mm",
        "ε": "0.5",
        "x": "−2 mm",
        "alpha": "12e-6/K",
        "ΔT": "9 °F difference",
    }
    assert substituted(equation, values) == line


@pytest.mark.parametrize(
    ("value", "unit", "written_in", "shown"),
    [
        (9999.0, "N", "", "9999 N"),
        (10000.0, "N", "", "10 kN"),
        (-617768.0, "N", "", "−617.8 kN"),
        (617768.0, "N", "N", "617768 N"),
        (45000.0, "J", "", "45 kJ"),
        (9000.0, "J", "", "9000 J"),
        (573.15, "K", "°F", "572 °F"),  # 300 × 1.8 + 32
        (573.15, "K", "°C", "300 °C"),
        (100.0, "ΔK", "°F difference", "180 °F difference"),
        (100.0, "ΔK", "K", "100 K"),
    ],
)
def test_a_spec_s_own_unit_stays_and_five_figures_take_the_next_multiple(
    value: float, unit: str, written_in: str, shown: str
) -> None:
    """617.8 kN is read at once."""
    assert amount(value, unit, written_in) == shown


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (0.1 + 0.2 - 0.3, "m", "0 mm"),  # 5.6e-17 m
        (-6.9e-18, "m", "0 mm"),
        (1.1e-12, "m", "1.1e−9 mm"),  # no rounding
        (-6.9e-18, "m²", "0 mm²"),
        (-6.9e-18, "m³", "0 cm³"),
        (2e-12, "m³", "2e−6 cm³"),
        (-3e-10, "kg", "0 kg"),
        (-3e-17, "1", "0 1"),
        (-3e-17, "rad/s", "0 rev/min"),
        (-9e-6, "Pa", "0 MPa"),
        (-1e-9, "N", "0 N"),
        (3e-10, "ΔK", "0 K"),
        (273.15 - 1e-9, "K", "0 °C"),
        (273.05, "K", "−0.1 °C"),
        (11.7e-6, "1/K", "11.7e-6/K"),
        (math.inf, "m", "∞ mm"),
        (-math.inf, "m", "−∞ mm"),
    ],
)
def test_an_amount_is_rounded_as_an_engineer_would(value: float, unit: str, text: str) -> None:
    assert amount(value, unit) == text


@pytest.mark.parametrize(
    ("unit", "least"),
    [
        ("1", 1e-13),
        ("m", 1e-12),
        ("m²", 1e-13),
        ("m³", 1e-13),
        ("kg", 1e-9),
        ("rad", 1e-12),
        ("rad/s", 1e-10),
        ("ΔK", 1e-9),
        ("Pa", 1e-5),
        ("N", 1e-8),
        ("N·m", 1e-8),
        ("m/s", 0.0),  # of no bound
    ],
)
def test_what_rounding_leaves_of_zero_ends_at_a_bound(unit: str, least: float) -> None:
    """The bounds stand on the 16 figures of a float and the largest amounts that a sheet works with."""
    for sign in (1, -1):
        assert without_rounding(sign * least, unit) == sign * least
        assert without_rounding(sign * 0.999 * least, unit) == 0.0


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (1.00013, "in", "1.0001"),  # a tenth of a thou
        (0.123456, "in", "0.1235"),
        (0.0123456, "in", "0.01235"),
        (-1.00013, "in", "−1.0001"),
        (123.4567, "mm", "123.457"),  # a micrometre
        (0.1234567, "mm", "0.1235"),
        (20.04, "°C", "20"),
        (20.06, "°F", "20.1"),
        (0.0, "N", "0"),
        (-0.00001, "°C", "0"),
        (1e-3, "N", "0.001"),
        (9.994e-4, "N", "9.994e−4"),
        (-9.994e-4, "N", "−9.994e−4"),
        (999999.0, "N", "999999"),
        (1e6, "N", "1e6"),
        (1234567.0, "N", "1.235e6"),
        (1.2e-9, "N", "1.2e−9"),
        (12345.6, "N", "12346"),
        (120.0, "N", "120"),
        (12.3456, "N", "12.35"),
    ],
)
def test_a_number_has_the_figures_that_its_unit_asks(value: float, unit: str, text: str) -> None:
    assert number(value, unit) == text
