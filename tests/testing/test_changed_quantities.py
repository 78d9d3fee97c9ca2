"""A quantity written in another unit, with a tighter tolerance, hotter, and at twice the size: worked by hand."""

from __future__ import annotations

from typing import Any

import pint
import pytest

from speclint.quantities import DIMENSIONS, read
from speclint.testing.declared_properties import Direction
from speclint.testing.directions import _RAISED, _concerns, _hotter
from speclint.testing.other_units import in_another_unit
from speclint.testing.scaling import _POWERS, _doubled
from speclint.testing.stated_quantities import StatedQuantity
from speclint.testing.tightening import with_half_tolerance


def stated(text: str, dimension: str) -> StatedQuantity:
    return StatedQuantity("part", "key", text, read(text, dimension, "any"))


@pytest.mark.parametrize(
    ("text", "dimension", "written"),
    [
        ("480 mm H8", "length", "2400/127 in H8"),  # 480/25.4 = 2400/127
        ("25.4 mm +0.254/-0.127", "length", "1 in +0.01/-0.005"),
        ("25.4 mm ±0.254", "length", "1 in ±0.01"),
        ("25.4..50.8 mm", "length", "1..2 in"),
        ("25.4 mm ±4 thou", "length", "1 in ±4 thou"),  # a band with a unit of its own stays
        ("1 3/4 in", "length", "44.45 mm"),
        ("300 °C ±10", "temperature", "572 °F ±18"),  # 300 × 1.8 + 32
        ("212 °F", "temperature", "100 °C"),
        ("90 °F difference", "temperature difference", "50 K"),
        ("50 K", "temperature difference", "90 °F difference"),
        ("90 °F difference ±9", "temperature difference", "50 K ±5"),
        ("50 K ±5", "temperature difference", "90 °F difference ±9"),
        ("50 °C difference", "temperature difference", "50 K"),
        ("293.15 K ±5", "temperature", "68 °F ±9"),  # 20 °C
        ("212 °F ±18", "temperature", "100 °C ±10"),
        ("12 %", "ratio", "0.12"),
        ("200 HB", "Brinell hardness", None),  # one hardness is not another
        ("50 mm ±2 %", "length", None),  # a share of the size has no unit
    ],
)
def test_in_another_unit(text: str, dimension: str, written: str | None) -> None:
    assert in_another_unit(stated(text, dimension)) == written


@pytest.mark.parametrize(
    ("direction", "key", "dimension", "concerns"),
    [
        ("pressure", "x", "fluid pressure", True),
        ("pressure", "wear.rate", "stress", False),
        ("temperature", "x", "temperature", True),
        ("temperature", "x", "temperature difference", False),
        ("wear", "wear.rate", "length", True),
        ("wear", "foot.wear.rate.value", "length", True),
        ("wear", "swear.rate", "length", False),
        ("wear", "eccentricity", "length", False),
        ("eccentricity", "eccentricity", "length", True),
        ("eccentricity", "rim.eccentricity.value", "length", True),
        ("eccentricity", "wear.rate", "length", False),
    ],
)
def test_what_a_direction_is_of(direction: Direction, key: str, dimension: str, concerns: bool) -> None:
    texts = {"fluid pressure": "1 bar gauge", "stress": "1 MPa", "temperature": "300 K", "length": "1 mm"}
    text = texts.get(dimension, "1 K")
    one = StatedQuantity("part", key, text, read(text, dimension, "any"))
    assert _concerns(direction, one) is concerns


@pytest.mark.parametrize(
    ("text", "dimension"),
    [("17 bar gauge", "fluid pressure"), ("48 kg", "mass"), ("0.06 W/(m·K)", "thermal conductivity")],
)
def test_a_number_without_an_end_is_read_as_the_same(text: str, dimension: str) -> None:
    """17 bar is 246.56… psi: with 20 digits the nearest float is that of 17 bar, and gauge stays gauge."""
    written = in_another_unit(stated(text, dimension))
    assert written is not None
    now, was = read(written, dimension), read(text, dimension)
    assert (now.nominal, now.low, now.high, now.datum) == (was.nominal, was.low, was.high, was.datum)


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("25 mm +0.05/-0.02", "25 mm +0.0325/-0.0025"),  # middle +0.015, half of the half width 0.0175
        ("25 mm ±0.1", "25 mm ±0.05"),
        ("20.0..20.2 mm", "20.05..20.15 mm"),
        ("50 mm ±2 %", "50 mm ±1%"),
        ("480 mm H8", "480 mm H7"),  # both from 0, 97 and 63 µm
        ("25 mm", None),
        # ISO 286-2, 30 to 50 mm: P8 -26/-65 µm; P7 -17/-42, P6 -21/-37 and P5 -22/-33 are closer, and begin above it
        ("40 mm P8", None),
        ("40 mm P7", "40 mm P6"),  # -21/-37 lies within -17/-42
        # ISO 286-2, 3 to 6 mm: K5 0/-5 µm; K4 +0.5/-3.5 begins above it, K3 0/-2.5 does not
        ("5 mm K5", "5 mm K3"),
        ("40 mm H3", "40 mm H2"),  # 4 and 2.5 µm
        ("40 mm H2", None),  # no finer grade is drawn
    ],
)
def test_a_tighter_tolerance(text: str, written: str | None) -> None:
    one = stated(text, "length")
    assert with_half_tolerance(one) == written
    if written:
        now = read(written, "length")
        assert one.measure.low <= now.low < now.high <= one.measure.high


@pytest.mark.parametrize(
    ("text", "power", "written"),
    [
        ("25 mm +0.05/-0.02", 1, "50 mm +0.1/-0.04"),
        ("20.0..20.2 mm", 1, "40..40.4 mm"),
        ("480 mm H8", 1, "960 mm +0.194/0"),  # ISO 286-1, 400 to 500 mm: IT8 = 97 µm
    ],
)
def test_twice_the_size(text: str, power: int, written: str) -> None:
    assert _doubled(stated(text, "length"), power) == written


@pytest.mark.parametrize(
    ("text", "written"),
    [("300..330 °C", "320..350 °C"), ("572 °F ±18", "608 °F ±18"), ("293.15 K", "313.15 K")],
)
def test_twenty_kelvin_hotter(text: str, written: str) -> None:
    """20 K are 36 °F; the tolerance stays."""
    assert _hotter(stated(text, "temperature")) == written


@pytest.mark.parametrize(
    ("direction", "text", "dimension", "written"),
    [
        ("pressure", "10 bar gauge", "fluid pressure", "11 bar gauge"),
        ("wear", "0.4 mm", "length", "0.6 mm"),
        ("eccentricity", "0.5 mm ±0.1", "length", "0.75 mm ±0.1"),
        ("temperature", "300 °C", "temperature", "320 °C"),
    ],
)
def test_a_design_is_made_worse_by_what_is_said(
    direction: Direction, text: str, dimension: str, written: str
) -> None:
    """Pressures by a tenth, wear and eccentricities by a half, temperatures by 20 K; the tolerance stays."""
    assert _RAISED[direction](stated(text, dimension)) == written


def test_what_grows_with_the_size_grows_by_its_dimensions() -> None:
    """With pressure and density as they are, a length counts once, a time once and a mass three times: a force,
    kg·m/s², by 3 + 1 − 2 = 2; a pressure, kg/(m·s²), by 3 − 1 − 2 = 0."""
    registry: Any = pint.UnitRegistry()
    counts = {"[length]": 1, "[time]": 1, "[mass]": 3}
    for name in (*_POWERS, "pressure", "stress", "density", "velocity"):
        known = DIMENSIONS.get(name)
        if known is not None:
            dimensions = registry(known.pint or known.si).dimensionality
            by = sum(counts[one] * power for one, power in dimensions.items() if one in counts)
            assert _POWERS.get(name, 0) == by, name


def test_a_mass_at_twice_the_size_is_eight_times_as_great() -> None:
    assert _doubled(stated("1.5 kg", "mass"), 3) == "12 kg"


@pytest.mark.parametrize(("text", "written"), [("4e29 m", "8E+29 m"), ("6e29 m", None), ("5 mm ±2 %", None)])
def test_what_cannot_be_read_at_twice_the_size_has_none(text: str, written: str | None) -> None:
    """No quantity is above 1e30 of its unit, and a band that is a share has no other size."""
    found = _doubled(stated(text, "length"), 1)
    assert (found is None) is (written is None)
    if found is not None:
        assert read(found, "length").nominal == pytest.approx(8e29)
