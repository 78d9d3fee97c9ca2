"""A quantity written anew keeps its unit and its style; whatever is written is read back as what was meant."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, strategies as st

from speclint.quantities import Written, classes_of_grade, deviations, read


def written(text: str, dimension: str = "length") -> Written:
    found = Written.of(text, dimension)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("text", "dimension", "size", "then"),
    [
        ("480 mm", "length", "480.1", "480.1 mm"),
        ("480 mm H8", "length", "479", "479 mm H8"),
        ("25 mm ±0.1", "length", "24.98", "24.98 mm ±0.1"),
        ("25 mm +0.05/-0.02", "length", "26", "26 mm +0.05/-0.02"),
        ("20.0..20.2 mm", "length", "20.01", "20.01..20.21 mm"),
        ("1 3/4 in", "length", "113/64", "1 49/64 in"),
        ("1 3/4..1 7/8 in", "length", "113/64", "1 49/64..1 57/64 in"),
        ("7/8 in", "length", "1", "1 in"),
        ("17 bar gauge", "fluid pressure", "16.5", "16.5 bar gauge"),
        ("0.85", "ratio", "0.8", "0.8"),
        ("60 % ±5 %", "ratio", "50", "50 % ±5%"),
        ("5 mm", "length", "100000000000000", "100000000000000 mm"),
        ("2 in ±1 mm", "length", "3", "3 in ±1 mm"),
        ("-15 mm ±0.5", "length", "-15.2", "-15.2 mm ±0.5"),
    ],
)
def test_another_size_keeps_unit_limits_and_style(text: str, dimension: str, size: str, then: str) -> None:
    other = written(text, dimension).at(Fraction(size))
    assert str(other) == then
    assert other.read() is not None


def test_limits_are_moved_and_the_size_stays() -> None:
    """By hand: +0.150 + 0.062 = +0.212 and +0.122 + 0.062 = +0.184; three decimals as before."""
    moved = written("190 mm +0.150/+0.122").with_limits_moved(Fraction("0.062"))
    assert str(moved) == "190 mm +0.212/+0.184"
    assert str(written("190 mm +0.02/-0.02").with_limits_moved(Fraction("0.02"))) == "190 mm +0.04/0"
    assert str(written("190 mm 0/-0.1").with_limits_moved(Fraction("-0.05"))) == "190 mm -0.05/-0.15"
    assert str(written("190 mm +0.15/+0.122").with_limits_moved(Fraction("0.06"))) == "190 mm +0.210/+0.182"


@pytest.mark.parametrize(
    ("text", "limits"),
    [
        ("20 mm", False),
        ("20 mm H8", True),
        ("20 mm ±0.1", True),
        ("20 mm +0.1/0", True),
        ("20..21 mm", True),
    ],
)
def test_limits_are_numbers_a_range_or_a_class(text: str, limits: bool) -> None:
    assert written(text).has_limits is limits


def test_a_common_fraction_of_nothing_has_no_sign() -> None:
    assert str(written("1/2 in").at(Fraction(0))) == "0 in"
    assert str(written("1/2 in").at(Fraction(-1, 4))) == "-1/4 in"


def test_a_text_that_is_no_quantity_has_no_parts() -> None:
    assert Written.of("about 20 mm", "length") is None
    assert Written.of("", "length") is None


def test_what_is_refused_when_read_is_none() -> None:
    assert written("5 mm").at(Fraction(-5)).read("positive") is None


@given(
    st.integers(1, 10**6),
    st.integers(-500, 500),
    st.integers(0, 300),
    st.integers(-(10**4), 10**4),
)
def test_limits_read_back_as_they_were_moved(size: int, lower: int, width: int, by: int) -> None:
    """In µm: low = size + lower + by, whatever the signs."""
    text = f"{size / 1000} mm +{(500 + lower + width) / 1000}/+{(500 + lower) / 1000}"
    found = written(text).with_limits_moved(Fraction(by, 1000)).read()
    assert found is not None
    assert found.low == pytest.approx((size + 500 + lower + by) * 1e-6, abs=1e-12)
    assert found.high - found.low == pytest.approx(width * 1e-6, abs=1e-12)
    assert found.nominal == pytest.approx(size * 1e-6)


def test_the_classes_of_a_grade_at_190_mm() -> None:
    """ISO 286-1, Tables 4 and 5, shafts over 180 to 200 mm, lower deviations of r to v: 77, 122, 166, 236, 284 µm."""
    found = dict(classes_of_grade(0.190, "s6"))
    rows = {"r6": 77, "s6": 122, "t6": 166, "u6": 236, "v6": 284}
    assert {name: round(found[name] * 1e6) for name in rows} == rows
    names = list(found)
    assert [names.index(one) for one in rows] == list(range(names.index("r6"), names.index("r6") + 5))


@pytest.mark.parametrize("name", ["H7", "s6", "js5", "P7", "K6"])
def test_the_classes_of_a_grade_are_in_order_and_as_wide(name: str) -> None:
    found = classes_of_grade(0.100, name)
    lowers = [lower for _, lower in found]
    assert lowers == sorted(lowers)
    assert name in dict(found)
    width = deviations(0.100, name)[1] - deviations(0.100, name)[0]
    for other, lower in found:
        assert deviations(0.100, other)[1] - lower == pytest.approx(width)
    assert read(f"100 mm {name}", "length").tolerance_class == name
