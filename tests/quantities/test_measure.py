"""The grammar of quantities: what it reads, and what it refuses with what to write instead."""

from __future__ import annotations

import math
import string

import pytest
from hypothesis import given, strategies as st

from speclint.errors import QuantityError
from speclint.quantities import measure, read

INCH = 0.0254


@pytest.mark.parametrize(
    ("text", "nominal", "low", "high"),
    [
        ("480 mm", 0.480, 0.480, 0.480),
        ("25 mm +0.05/-0.02", 0.025, 0.02498, 0.02505),
        ("25 mm +0.05/+0.02", 0.025, 0.02502, 0.02505),
        ("25 mm 0/-0.1", 0.025, 0.0249, 0.025),
        ("25 mm ±0.1", 0.025, 0.0249, 0.0251),
        ("25 mm ± 0.1 mm", 0.025, 0.0249, 0.0251),
        ("20.0..20.2 mm", 0.0201, 0.020, 0.0202),
        ("20..20 mm", 0.020, 0.020, 0.020),
        ("20 mm ±0", 0.020, 0.020, 0.020),
        ("20 mm 0/0", 0.020, 0.020, 0.020),
        ("1 3/4 in", 1.75 * INCH, 1.75 * INCH, 1.75 * INCH),
        ("7/8 in", 0.875 * INCH, 0.875 * INCH, 0.875 * INCH),
        ("0.0015 in", 0.0015 * INCH, 0.0015 * INCH, 0.0015 * INCH),
        ("3 thou", 0.003 * INCH, 0.003 * INCH, 0.003 * INCH),
        ("1/2 in ±1/64 in", 0.5 * INCH, 0.484375 * INCH, 0.515625 * INCH),
        ("560 mm ±0.01 in", 0.560, 0.560 - 0.01 * INCH, 0.560 + 0.01 * INCH),
        ("2 in ±1 mm", 2 * INCH, 2 * INCH - 0.001, 2 * INCH + 0.001),
        ("50 mm ±2 %", 0.050, 0.049, 0.051),
    ],
)
def test_lengths(text: str, nominal: float, low: float, high: float) -> None:
    measure = read(text, "length")
    assert (measure.nominal, measure.low, measure.high) == pytest.approx((nominal, low, high), rel=1e-12)


def test_a_value_written_at_a_limit_sits_at_the_limit() -> None:
    """Decimal arithmetic until the last step: 25 + 0.05 mm is the float nearest to 0.02505 m."""
    assert read("25 mm +0.05/-0.02", "length").high == 0.02505
    assert read("1 3/4 in", "length").nominal == 0.04445


@pytest.mark.parametrize(
    ("fahrenheit", "other", "dimension"),
    [
        ("-108.4 °F", "-78 °C", "temperature"),  # (-108.4 - 32)/1.8 = -78
        ("374..446 °F", "190..230 °C", "temperature"),  # (374 - 32)/1.8 = 190, (446 - 32)/1.8 = 230
        ("392 °F ±36", "200 °C ±20", "temperature"),  # 36/1.8 = 20
        ("216 °F difference", "120 K", "temperature difference"),  # 216/1.8 = 120
    ],
)
def test_a_temperature_in_fahrenheit_is_the_same_number(fahrenheit: str, other: str, dimension: str) -> None:
    """To the last digit: what a concession rests on does not change where a value is written in another unit."""
    one, same = read(fahrenheit, dimension), read(other, dimension)
    assert (one.nominal, one.low, one.high) == (same.nominal, same.low, same.high)


def test_tolerance_classes_come_from_iso_286() -> None:
    """ISO 286-1:2010, 400 to 500 mm: IT8 = 97 µm, H from 0; s6 from +252 µm (450 to 500) with IT6 = 40 µm."""
    hole, shaft = read("480 mm H8", "length"), read("480 mm s6", "length")
    assert (hole.low, hole.high) == pytest.approx((0.480, 0.480097), abs=1e-9)
    assert (shaft.low, shaft.high) == pytest.approx((0.480252, 0.480292), abs=1e-9)
    assert shaft.nominal == 0.480 < shaft.low
    assert (hole.tolerance_class, shaft.tolerance_class) == ("H8", "s6")
    assert read("480 mm", "length").tolerance_class == ""


@pytest.mark.parametrize(
    ("text", "dimension", "value", "datum"),
    [
        ("17 bar gauge", "fluid pressure", 17e5, "gauge"),
        ("18 bar absolute", "fluid pressure", 18e5, "absolute"),
        ("250 psi gauge", "fluid pressure", 250 * 6894.757293, "gauge"),
        ("15 tonf/in²", "stress", 15 * 15.4442563e6, ""),
        ("12 %", "ratio", 0.12, ""),
        ("0.12", "ratio", 0.12, ""),
        ("364 rev/min", "rotational speed", 364 * 2 * math.pi / 60, ""),
        ("11.7e-6 1/K", "expansion", 11.7e-6, ""),
        ("20 lbf ft", "moment", 27.1163588, ""),
    ],
)
def test_other_dimensions(text: str, dimension: str, value: float, datum: str) -> None:
    measure = read(text, dimension)
    assert measure.nominal == pytest.approx(value, rel=1e-7)
    assert measure.datum == datum


@pytest.mark.parametrize(
    ("text", "kelvin"),
    [("20 °C", 293.15), ("20 degC", 293.15), ("68 °F", 293.15), ("293.15 K", 293.15), ("-78 °C", 195.15)],
)
def test_temperatures(text: str, kelvin: float) -> None:
    assert read(text, "temperature").nominal == pytest.approx(kelvin, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "kelvin"), [("50 K", 50.0), ("50 °C difference", 50.0), ("90 °F difference", 50.0)]
)
def test_a_difference_is_not_a_temperature(text: str, kelvin: float) -> None:
    assert read(text, "temperature difference").nominal == pytest.approx(kelvin)


@pytest.mark.parametrize(
    ("text", "dimension", "instead"),
    [
        ("5,5 mm", "length", '"5.5 mm"'),
        ("17 bar", "fluid pressure", '"17 bar gauge" or "17 bar absolute"'),
        ("17 bar gauge", "stress", '"17 bar"'),
        ("25 mm -0.02/+0.05", "length", '"+0.05/-0.02"'),
        ("20.2..20.0 mm", "length", '"20.0..20.2 mm"'),
        ("25 mm +/-0.1", "length", '"25 mm ±0.1"'),
        ("5 Mm", "length", "mm"),
        ("50 °C", "temperature difference", 'a number with K, or "50 °C difference"'),
        ("50 °C difference", "temperature", '"50 °C"'),
        ("٣ mm", "length", '"3 mm"'),
        ("１２.５ mm", "length", '"12.5 mm"'),
        ("25 mm ±٠.1", "length", '"25 mm ±0.1"'),
    ],
)
def test_a_slip_is_answered_with_what_to_write(text: str, dimension: str, instead: str) -> None:
    with pytest.raises(QuantityError) as refused:
        read(text, dimension)
    assert refused.value.instead == instead


@pytest.mark.parametrize(
    ("text", "dimension"),
    [
        ("", "length"),
        ("mm", "length"),
        ("480", "length"),
        ("nan mm", "length"),
        ("inf mm", "length"),
        ("-5 mm", "length"),
        ("0 mm", "length"),
        ("5 kg", "length"),
        ("5 Nm", "length"),
        ("5 mm; 3", "length"),
        ("1/0 in", "length"),
        ("5 mm H8 ±1", "length"),
        ("20..21 mm ±1", "length"),
        ("20 mm Q8", "length"),
        ("20 mm H25", "length"),
        ("5000 mm H8", "length"),
        ("5 bar H8", "stress"),
        ("200 °C ±5 %", "temperature"),
        ("-300 °C", "temperature"),
        ("-1 bar absolute", "fluid pressure"),
        ("20 mm ±-1", "length"),
        ("1e400 mm", "length"),
        ("1e-31 mm", "length"),
        ("1e31 m", "length"),
        ("1e10000000 mm", "length"),
        ("1e29 km", "length"),
        ("1e-29 mm", "length"),
        ("123456789012345678901 mm", "length"),
        ("3.2 m**9**9**9", "length"),
        ("3.2 m^9^9", "length"),
        ("3.2 m²²²²", "length"),
        ("3.2 " + "m/m/" * 9 + "m", "length"),
        ("3.2 mm" + " " * 95, "length"),
        ("5 %%", "ratio"),
        ("5 % %", "ratio"),
    ],
)
def test_what_cannot_be_meant_is_refused(text: str, dimension: str) -> None:
    with pytest.raises(QuantityError) as refused:
        read(text, dimension, "any" if dimension == "fluid pressure" else "positive")
    assert refused.value.instead


def test_the_last_number_within_the_bounds_is_read() -> None:
    """20 digits, an exponent of 30, 1e30 m: each is taken, and one more is refused above."""
    assert read("12345678901234567890 µm", "length").nominal == pytest.approx(1.2345678901234567e13)
    assert read("1e30 m", "length").nominal == pytest.approx(1e30)
    assert read("1e-30 m", "length").nominal == pytest.approx(1e-30)
    assert read("1e0003 m", "length").nominal == 1000.0


def test_signs_where_they_are_meant() -> None:
    assert read("-5 mm", "length", "any").nominal == -0.005
    assert read("0 mm", "length", "not negative").nominal == 0.0
    assert read("0 K", "temperature").low == 0.0
    assert read("0 bar absolute", "fluid pressure", "any").low == 0.0


@pytest.mark.parametrize("text", ["0..5 mm", "5 mm 0/-5", "-1..5 mm"])
def test_a_range_that_reaches_nothing_is_refused_where_a_size_is_meant(text: str) -> None:
    with pytest.raises(QuantityError):
        read(text, "length")


@pytest.mark.parametrize(
    ("text", "taken"), [("0..5 mm", True), ("5 mm 0/-5", True), ("-1..5 mm", False), ("-1 µm", False)]
)
def test_nothing_is_taken_where_a_value_is_not_negative(text: str, taken: bool) -> None:
    try:
        assert read(text, "length", "not negative").low == 0.0
        assert taken
    except QuantityError:
        assert not taken


@given(st.integers(1, 10**6), st.integers(0, 10**4), st.integers(0, 10**4))
def test_limits_enclose_what_is_written(micrometres: int, up: int, down: int) -> None:
    """Property: low is nominal less the lower, high is nominal plus the upper deviation, to the micrometre."""
    nominal = 10**5 + micrometres
    text = f"{nominal / 1000:.3f} mm +{up / 1000:.3f}/-{down / 1000:.3f}"
    measure = read(text, "length")
    assert measure.low <= measure.nominal <= measure.high
    assert measure.high - measure.low == pytest.approx((up + down) * 1e-6, abs=1e-12)


@given(st.floats(0.001, 1e5, allow_nan=False), st.sampled_from(["mm", "in", "thou", "m", "ft"]))
def test_the_same_length_in_any_unit(value: float, unit: str) -> None:
    """Property: the unit changes how a length is written, not what it is."""
    from speclint.quantities.units import factor

    text = f"{value:.6f}"
    expected = float(text) * factor(unit, "length")
    if float(text) > 0:
        assert read(f"{text} {unit}", "length").nominal == pytest.approx(expected, rel=1e-12)


@given(
    st.text(alphabet=string.printable + "°²±µ½", max_size=24),
    st.sampled_from(["length", "fluid pressure", "temperature"]),
)
def test_any_text_is_read_or_refused_in_one_way(text: str, dimension: str) -> None:
    """Property: no text raises anything but a QuantityError, and what is read is finite."""
    try:
        measure = read(text, dimension)
    except QuantityError:
        return
    assert math.isfinite(measure.low)
    assert math.isfinite(measure.high)
    assert measure.low <= measure.high


@pytest.mark.parametrize("text", ["-1.1 bar gauge", "-1.1..17 bar gauge", "-15.9 psi gauge"])
def test_a_vacuum_is_a_gauge_pressure_below_nothing(text: str) -> None:
    """15.95 psi are 1.1 bar (6894.757 Pa each), more than the air has anywhere."""
    assert read(text, "fluid pressure", "any").low < 0


@pytest.mark.parametrize(
    "text", ["-1.101 bar gauge", "-1.5..17 bar gauge", "-16 psi gauge", "-0.2 MPa gauge"]
)
def test_no_vacuum_is_deeper_than_the_air_is_heavy(text: str) -> None:
    with pytest.raises(QuantityError, match=r"below a full vacuum: the air has nowhere more than 1\.1 bar"):
        read(text, "fluid pressure", "any")


def test_an_absolute_pressure_is_not_below_zero() -> None:
    assert read("0 bar absolute", "fluid pressure", "any").low == 0
    with pytest.raises(QuantityError, match="below absolute zero"):
        read("-0.01 bar absolute", "fluid pressure", "any")


@pytest.mark.parametrize(
    ("text", "exact"),
    [("480 mm", True), ("480 mm ±0", True), ("480 mm ±0.001", False), ("480..481 mm", False)],
)
def test_a_quantity_is_exact_where_its_limits_are_one(text: str, exact: bool) -> None:
    assert read(text, "length").exact is exact


def test_a_quantity_is_moved_with_its_limits() -> None:
    """25 mm, 24.98 to 25.05 mm, and 1 mm more: 26 mm, 25.98 to 26.05 mm."""
    moved = read("25 mm +0.05/-0.02", "length").moved(0.001)
    assert (moved.nominal, moved.low, moved.high) == pytest.approx((0.026, 0.02598, 0.02605), rel=1e-12)
    assert moved.text == "25 mm +0.05/-0.02"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("5 mm" + " " * 97, "a quantity has at most 100 characters; this has 101"),
        ("123456789012345678901 mm", "a number has at most 20 digits"),
        ("5 mm ±123456789012345678901", "a number has at most 20 digits"),
    ],
)
def test_a_text_beyond_the_bounds_is_told_the_bound(text: str, said: str) -> None:
    with pytest.raises(QuantityError, match=said):
        read(text, "length")


def test_a_text_of_the_greatest_length_is_read() -> None:
    assert read("5 mm" + " " * 96, "length").nominal == 0.005


@pytest.mark.parametrize(
    ("text", "dimension", "said", "instead"),
    [
        ("-5 mm", "length", "a length is not negative here", '"480 mm", "480 mm H8"'),
        ("-5 °", "angle", "an angle is not negative here", '"45 °" or "30 deg"'),
        ("0 mm", "length", "a length of 0 is not possible here", "a value above zero"),
        ("0 mm²", "area", "an area of 0 is not possible here", "a value above zero"),
        ("5 bar H8", "stress", '"H8" is a class of limits for lengths', "limits such as ±1 for a stress"),
        ("5 ° H8", "angle", '"H8" is a class of limits for lengths', "limits such as ±1 for an angle"),
        ("5 mm gauge", "length", '"gauge" does not belong to a length', '"5 mm"'),
        ("5 mm² absolute", "area", '"absolute" does not belong to an area', '"5 mm²"'),
        ("20 mm Q8", "length", "no letter 'Q'", 'a class of the tables, or limits such as "+0.05/-0.02"'),
        ("20 mm ±-1", "length", "the number after ± has no sign", "±1"),
        ("20..21 mm ±1", "length", "a range has its limits already", '"20..21 mm"'),
        ("20..21 mm +1/0", "length", "a range has its limits already", '"20..21 mm"'),
        ("20..21 mm H8", "length", "a range has its limits already", '"20..21 mm"'),
        ("310 °C ±5 %", "temperature", "a temperature has no percentage", '"310 °C ±20"'),
        ("1/0 in", "length", "a fraction with the denominator 0", "a fraction such as 7/8"),
        ("-300 °C", "temperature", "this is below absolute zero", '"310 °C" or "300..330 °C"'),
        ("1e29 km", "length", "in SI units this lies outside 1e-30 to 1e30", '"480 mm", "480 mm H8"'),
        ("1.1e30 m", "length", "in SI units this lies outside 1e-30 to 1e30", '"480 mm", "480 mm H8"'),
        ("0.9e-30 m", "length", "in SI units this lies outside 1e-30 to 1e30", '"480 mm", "480 mm H8"'),
        ("1e31 mm", "length", "an exponent lies between -30 and 30", "the number in another unit"),
        ("5 mm", "temperature", '"mm" is no unit of temperature', '"310 °C" or "300..330 °C"'),
        ("5 K gauge", "temperature difference", '"K" is no unit of temperature difference', '"50 K"'),
        ("turned", "mass", "this is not a number with its unit and limits", '"12.5 kg" or "28 lb"'),
        ("turned", "density", "this is not a number with its unit and limits", '"12 kg/m³"'),
        ("turned", "ratio", "this is not a number with its unit and limits", '"0.12" or "12 %"'),
    ],
)
def test_a_refusal_says_what_is_wrong_and_what_to_write(
    text: str, dimension: str, said: str, instead: str
) -> None:
    with pytest.raises(QuantityError) as refused:
        read(text, dimension)
    assert said in str(refused.value)
    assert refused.value.instead.startswith(instead)


@pytest.mark.parametrize(
    ("text", "dimension", "unit", "datum"),
    [
        ("5 in", "length", "in", ""),
        ("5 inches", "length", "in", ""),
        ("17 bar gauge", "fluid pressure", "bar", "gauge"),
        ("17 bar absolute", "fluid pressure", "bar", "absolute"),
        ("310 degC", "temperature", "°C", ""),
        ("310 deg C", "temperature", "°C", ""),
        ("310 degF", "temperature", "°F", ""),
        ("310 deg F", "temperature", "°F", ""),
        ("310 K", "temperature", "K", ""),
        ("50 K", "temperature difference", "K", ""),
        ("50 K difference", "temperature difference", "K", ""),
        ("50 °C difference", "temperature difference", "°C difference", ""),
        ("90 deg F difference", "temperature difference", "°F difference", ""),
    ],
)
def test_a_quantity_keeps_its_unit_and_datum(text: str, dimension: str, unit: str, datum: str) -> None:
    found = read(text, dimension)
    assert (found.unit, found.datum, found.dimension, found.text) == (unit, datum, dimension, text)


@pytest.mark.parametrize(
    ("text", "dimension", "low", "high"),
    [
        ("50 degC difference ±5", "temperature difference", 45, 55),
        ("310 °C ±20 degC", "temperature", 563.15, 603.15),  # 310 - 20 + 273.15, 310 + 20 + 273.15
        ("-20 mm ±10 %", "length", -0.022, -0.018),
        ("50 % ±5 %", "ratio", 0.45, 0.55),  # of a share the limits are points of it
        ("0.5 ±5 %", "ratio", 0.45, 0.55),
        ("15 bar gauge ±20 kPa", "fluid pressure", 14.8e5, 15.2e5),
    ],
)
def test_equal_limits_in_any_unit(text: str, dimension: str, low: float, high: float) -> None:
    found = read(text, dimension, "any")
    assert (found.low, found.high) == pytest.approx((low, high), rel=1e-12)


@pytest.mark.parametrize(
    ("text", "dimension", "low", "high"),
    [
        ("0.5 ±5 %", "ratio", 0.45, 0.55),  # no number before its unit's limits: ± 5 points of a share
        ("1.1e3 mm", "length", 1.1, 1.1),  # e3 is no tolerance class
        ("17 bar gauge ±1 bar", "fluid pressure", 16e5, 18e5),
    ],
)
def test_the_first_quantity_of_a_unit_is_read_as_the_next_is(
    text: str, dimension: str, low: float, high: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(measure, "_scales", {})
    for found in (read(text, dimension), read(text, dimension)):
        assert (found.low, found.high) == pytest.approx((low, high), rel=1e-12)


def test_a_share_behind_a_length_is_no_unit_that_stands_last() -> None:
    with pytest.raises(QuantityError) as refused:
        read("12 ±1 %", "length")
    assert str(refused.value) == "a length needs a unit"
