"""Heat on springs: table entries and the behaviour of relaxation."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook import tables
from speclint.handbook.springs.relaxation import (
    RELAXATION,
    highest_wire_temperature,
    relaxation_loss,
    relaxed_load,
)

WIRES = sorted(set(tables.entries(RELAXATION, "wire")))


@pytest.mark.parametrize("wire", WIRES)
@given(t=st.floats(293.15, 385.0), hotter=st.floats(0.5, 8.0), tau=st.floats(50e6, 900e6))
def test_hotter_or_harder_pressed_loses_more(wire: str, t: float, hotter: float, tau: float) -> None:
    loss = relaxation_loss(wire, t, tau)
    assert relaxation_loss(wire, t + hotter, tau).nominal > loss.nominal
    assert relaxation_loss(wire, t, 1.1 * tau).nominal == pytest.approx(1.1 * loss.nominal)
    assert loss.low < loss.nominal < loss.high < 0.30
    assert loss.source.memory


@pytest.mark.parametrize("wire", WIRES)
def test_every_wire_with_figures_has_a_temperature_it_may_reach(wire: str) -> None:
    tabulated = [float(row["temperature"]) for row in tables.rows(RELAXATION) if row["wire"] == wire]
    assert tabulated == sorted(tabulated)
    assert highest_wire_temperature(wire).nominal > 373.15
    assert relaxation_loss(wire, tabulated[-1] + 273.15, 800e6).nominal > 0
    with pytest.raises(OutOfRange, match="outside the table of relaxation"):
        relaxation_loss(wire, tabulated[-1] + 274.15, 800e6)


def test_chrome_silicon_outlasts_drawn_wire() -> None:
    drawn, alloyed = (relaxation_loss(wire, 393.15, 600e6).nominal for wire in ("SH", "VDSiCr"))
    assert alloyed < drawn


def test_relaxation_by_hand() -> None:
    # VDSiCr, 180 °C between 6 % at 160 and 10 % at 200: 8 % at 800 MPa, 4 % at 400 MPa
    reading = relaxation_loss("VDSiCr", 453.15, 400e6)
    assert reading.nominal == pytest.approx(0.04)
    assert [reading.low, reading.high] == pytest.approx([0.02, 0.06])


def test_a_cold_spring_loses_what_it_loses_at_twenty_degrees() -> None:
    assert relaxation_loss("SH", 260.0, 800e6).nominal == pytest.approx(0.010)


@pytest.mark.parametrize(
    ("wire", "celsius", "recalled"),
    [
        ("FDC", 160, (6.4, 14.0)),
        ("VDSiCr", 250, (9.0, 14.0)),
        ("VDSiCr", 80, (1.125, 1.0)),
        ("SH", 20, (0.75, 0.5)),
    ],
)
def test_of_two_recollections_the_greater_loss_is_taken(
    wire: str, celsius: float, recalled: tuple[float, float]
) -> None:
    """Per cent at 600 MPa: the figures of both tables that were held."""
    assert relaxation_loss(wire, celsius + 273.15, 600e6).nominal == pytest.approx(
        max(recalled) / 100, abs=5e-4
    )


def test_stress_beyond_the_table_is_refused() -> None:
    assert relaxation_loss("SH", 300.0, 1000e6).nominal > 0
    with pytest.raises(OutOfRange, match="0 to 1000 MPa"):
        relaxation_loss("SH", 300.0, 1001e6)
    with pytest.raises(OutOfRange, match="0 to 1000 MPa"):
        relaxation_loss("SH", 300.0, -1.0)


def test_unknown_wire_is_not_guessed() -> None:
    with pytest.raises(NotKnown, match=r"no relaxation figures for wire 'piano'; known: 1\.4310"):
        relaxation_loss("piano", 300.0, 500e6)
    with pytest.raises(NotKnown, match="no wire 'piano'"):
        highest_wire_temperature("piano")


@given(load=st.floats(1, 1e5), share=st.floats(0, 0.5))
def test_what_is_lost_and_what_is_left_make_the_load(load: float, share: float) -> None:
    assert relaxed_load(load, share) + load * share == pytest.approx(load)


def test_a_loss_of_everything_is_refused() -> None:
    assert relaxed_load(100.0, 0.999) == pytest.approx(0.1)
    for share in (1.0, -0.001):
        with pytest.raises(OutOfRange, match="is not between 0 and 1"):
            relaxed_load(100.0, share)


def test_a_reading_names_wire_temperature_and_stress() -> None:
    assert relaxation_loss("SH", 353.15, 600e6).what == "relaxation of SH wire at 80 °C and 600 MPa"
    with pytest.raises(OutOfRange, match="stress 1001 MPa"):
        relaxation_loss("SH", 300.0, 1001e6)


def test_an_unloaded_spring_loses_nothing() -> None:
    assert relaxation_loss("SH", 353.15, 0.0).nominal == 0
