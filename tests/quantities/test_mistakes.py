"""What is meant by a quantity that is written as many write it, and speclint does not read."""

from __future__ import annotations

import pytest

from speclint.errors import QuantityError
from speclint.quantities import read


@pytest.mark.parametrize(
    ("written", "dimension", "said", "write"),
    [
        ("5,5 mm", "length", "a comma is not a decimal point", '"5.5 mm"'),
        ("50±0.1 mm", "length", "the unit stands behind the size, before its limits", '"50 mm ±0.1"'),
        ("50 +0.1/-0 mm", "length", "the unit stands behind the size, before its limits", '"50 mm +0.1/-0"'),
        (
            "50 -0.1/-0.2 in",
            "length",
            "the unit stands behind the size, before its limits",
            '"50 in -0.1/-0.2"',
        ),
        ("50 H7 mm", "length", "the unit stands behind the size, before its limits", '"50 mm H7"'),
        ("20±5 °C", "temperature", "the unit stands behind the size, before its limits", '"20 °C ±5"'),
        ("1.234,5 mm", "length", "a comma is not a decimal point", '"1234.5 mm"'),
        ("1,234.5 mm", "length", "a comma is not a decimal point", '"1234.5 mm"'),
        ("1,234,567 mm", "length", "a comma is not a decimal point", '"1234567 mm"'),
        ("20,5..22,5 mm", "length", "a comma is not a decimal point", '"20.5..22.5 mm"'),
        ("1.234.567,5 mm", "length", "a comma is not a decimal point", '"1234567.5 mm"'),
        (
            "14.5,5 mm",
            "length",
            "a comma is not a decimal point",
            "a number with one point, before its decimals",
        ),
        (
            "14,5,5 mm",
            "length",
            "a comma is not a decimal point",
            "a number with one point, before its decimals",
        ),
        (
            "1.2345,5 mm",
            "length",
            "a comma is not a decimal point",
            "a number with one point, before its decimals",
        ),
        (
            "1234.567,5 mm",
            "length",
            "a comma is not a decimal point",
            "a number with one point, before its decimals",
        ),
        (
            "5,5 mm ±0,1,2",
            "length",
            "a comma is not a decimal point",
            "a number with one point, before its decimals",
        ),
        (
            "3,200 µm",
            "length",
            "a comma is not a decimal point",
            '"3.200 µm", or "3200 µm" where the comma parts thousands',
        ),
        ("25 mm +0,05/-0,02", "length", "a comma is not a decimal point", '"25 mm +0.05/-0.02"'),
        ("3 200 µm", "length", "a number is written without spaces", '"3200 µm"'),
        ("1\u202f234\u00a0567 µm", "length", "a number is written without spaces", '"1234567 µm"'),
        ("25 mm +0.1/−0.1", "length", "a minus is written - here", '"25 mm +0.1/-0.1"'),
        ("−20 °C", "temperature", "a minus is written - here", '"-20 °C"'),
        ("20–22 mm", "length", "a range is written with two points", '"20..22 mm"'),
        ("20 - 22.5 mm", "length", "a range is written with two points", '"20..22.5 mm"'),
        ("1-3/4 in", "length", "a fraction stands behind a space", '"1 3/4 in"'),
        ("25 mm +-0.1", "length", "equal limits are written with ±", '"25 mm ±0.1"'),
        ("20 mm, turned", "length", "this is not a number with its unit and limits", '"480 mm"'),
        ("25 mm +/- 0.1", "length", "equal limits are written with ±", '"25 mm ± 0.1"'),
        ("250 psig", "fluid pressure", "says gauge or absolute in full", '"250 psi gauge"'),
        ("265 psia", "fluid pressure", "says gauge or absolute in full", '"265 psi absolute"'),
        ("17 bar(g)", "fluid pressure", "says gauge or absolute in full", '"17 bar gauge"'),
        ("17 bar (ü)", "fluid pressure", "says gauge or absolute in full", '"17 bar gauge"'),
        ("17 barg ±0.5", "fluid pressure", "says gauge or absolute in full", '"17 bar gauge ±0.5"'),
        ("18 bar abs.", "fluid pressure", "says gauge or absolute in full", '"18 bar absolute"'),
        ("1.8 MPa a", "fluid pressure", "says gauge or absolute in full", '"1.8 MPa absolute"'),
        ("250 lbf/in² g", "fluid pressure", "says gauge or absolute in full", '"250 lbf/in² gauge"'),
        ("300 °C ±5 °F", "temperature", 'the limits are in "°F"', "the unit of the temperature itself, °C"),
        ("572 °F ±5 K", "temperature", 'the limits are in "K"', "the unit of the temperature itself, °F"),
        ("nan mm", "length", "this is not a finite number", "a number with its unit"),
        (" ", "length", "the quantity is empty", "leave the key out"),
    ],
)
def test_what_is_meant_is_told(written: str, dimension: str, said: str, write: str) -> None:
    with pytest.raises(QuantityError) as refused:
        read(written, dimension, "any")
    assert said in str(refused.value)
    assert write in refused.value.instead


@pytest.mark.parametrize(
    ("written", "dimension", "low", "high"),
    [
        ("17 bar gauge", "fluid pressure", 17e5, 17e5),
        ("250 kPa absolute", "fluid pressure", 250e3, 250e3),
        ("16..17 bar gauge", "fluid pressure", 16e5, 17e5),
        ("1 3/4 in", "length", 0.04445, 0.04445),
        ("480 1/2 mm", "length", 0.4805, 0.4805),
        ("25 mm +0.05/-0.02", "length", 0.02498, 0.02505),
        ("25 mm -0.02/-0.05", "length", 0.02495, 0.02498),
        ("1e-3 m", "length", 1e-3, 1e-3),
        ("-3..-2 mm", "length", -3e-3, -2e-3),
    ],
)
def test_what_is_written_rightly_is_none_of_them(
    written: str, dimension: str, low: float, high: float
) -> None:
    found = read(written, dimension, "any")
    assert (found.low, found.high) == (pytest.approx(low, rel=1e-15), pytest.approx(high, rel=1e-15))


@pytest.mark.parametrize(
    ("written", "write"),
    [
        ("3,200 mm ±0,5", '"3.200 mm ±0.5"'),  # the 0,5 shows that the comma stands before decimals
        ("1,234.5 mm", '"1234.5 mm"'),  # the point shows that the comma parts thousands
        ("1,234,567 mm", '"1234567 mm"'),
        ("3,200 mm", '"3.200 mm", or "3200 mm" where the comma parts thousands'),
        (
            "3,200..4,300 mm",
            '"3.200..4.300 mm", or "3200..4300 mm" where the comma parts thousands',
        ),
    ],
)
def test_thousands_are_proposed_where_every_comma_may_part_them(written: str, write: str) -> None:
    """Were 0,5 a number of thousands, a limit of 0.5 mm would be proposed as 5 mm."""
    with pytest.raises(QuantityError) as refused:
        read(written, "length", "any")
    assert refused.value.instead == write
