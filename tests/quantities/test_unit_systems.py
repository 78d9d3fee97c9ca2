"""Units that a reader asks for: each conversion worked by hand from the definition of the unit."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.quantities import DIMENSIONS, System, amount_in
from speclint.quantities.unit_systems import SYSTEMS, beside, lengths_in, unit_in


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        (0.5, "m", "19.685 in"),  # 500/25.4 = 19.68504
        (0.00005, "m", "0.001969 in"),  # 0.05/25.4 = 0.00196850
        (16e6, "Pa", "2321 psi"),  # 16e6/6894.757 = 2320.60
        (1000.0, "N", "224.8 lbf"),  # 1000/4.448222 = 224.809
        (100.0, "N·m", "73.76 lbf·ft"),  # 100/1.3558179 = 73.7562
        (45e3, "N/m", "257 lbf/in"),  # 45e3/175.1268 = 256.957
        (1.0, "kg", "2.205 lb"),  # 1/0.45359237 = 2.20462
        (30.0, "m/s", "98.43 ft/s"),  # 30/0.3048 = 98.4252
        (573.15, "K", "572 °F"),  # 300 × 1.8 + 32 = 572
        (100.0, "ΔK", "180 °F difference"),
        (11.7e-6, "1/K", "6.5e−6/°F"),  # 11.7/1.8 = 6.5
        (0.85, "", "0.85"),
        (25.0, "W/(m²·K)", "25 W/(m²·K)"),  # of no table: as a sheet writes it
    ],
)
def test_inch_and_pound(value: float, unit: str, said: str) -> None:
    assert amount_in("imperial", value, unit) == said


@pytest.mark.parametrize(
    ("system", "written_in", "said"),
    [
        ("as written", "in", "1 in"),
        ("as written", "mm", "25.4 mm"),
        ("metric", "in", "25.4 mm"),
        ("metric", "mm", "25.4 mm"),
        ("imperial", "mm", "1 in"),
        ("imperial", "thou", "1000 thou"),
    ],
)
def test_a_spec_s_own_unit_is_kept_where_it_is_of_the_system(
    system: System, written_in: str, said: str
) -> None:
    assert amount_in(system, 0.0254, "m", written_in) == said


def test_limits_are_written_to_a_micrometre_and_to_a_tenth_of_a_thou() -> None:
    """480.0631 mm is 18.900122 in."""
    assert amount_in("metric", 0.4800631, "m") == "480.063 mm"
    assert amount_in("imperial", 0.4800631, "m") == "18.9001 in"


@given(
    st.sampled_from(SYSTEMS),
    st.floats(1e-9, 1e9),
    st.sampled_from([*(one.si for one in DIMENSIONS.values()), "K", "ΔK"]),
)
def test_no_quantity_loses_more_than_its_fourth_figure(system: System, value: float, unit: str) -> None:
    text = amount_in(system, value, unit).replace("−", "-")
    figures = text.split()[0].split("/")[0].split("e")[0].lstrip("-0.").replace(".", "")
    assert figures or value < 1e-3 or unit in ("K", "ΔK")
    assert len(text.split()[0].split("/")[0]) <= 18


@pytest.mark.parametrize(
    ("system", "written_in", "said"),
    [
        ("imperial", "mm", "1 in"),
        ("imperial", "in", ""),
        ("imperial", "thou", ""),
        ("metric", "in", "25.4 mm"),
        ("metric", "mm", ""),
        ("as written", "in", ""),
    ],
)
def test_beside_a_text_stands_only_what_it_does_not_say(system: System, written_in: str, said: str) -> None:
    assert beside(system, 0.0254, "m", written_in) == said


def test_a_unit_of_no_table_stays_as_it_is_written() -> None:
    assert unit_in("imperial", "m⁴", "cm⁴") == "cm⁴"
    assert unit_in("imperial", "K", "°C") == "°F"


@pytest.mark.parametrize(
    ("system", "lengths", "form", "said"),
    [
        ("metric", (0.00032, 0.0004), ".2f", "0.32 to 0.40 mm"),
        ("as written", (0.0015,), "+.1f", "+1.5 mm"),
        ("imperial", (0.0254, 0.0508), ".2f", "1 in to 2 in"),
        ("imperial", (0.0254, -0.0508, 0.0), "+.3f", "+1 in to −2 in to 0 in"),
    ],
)
def test_lengths_in_a_sentence(system: System, lengths: tuple[float, ...], form: str, said: str) -> None:
    assert lengths_in(system, lengths, form) == said
