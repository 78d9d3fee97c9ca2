"""A quantity of the other hand: the rules are those of a mirror across the middle of the engine, worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.quantities import negated, read, round_the_axis


@pytest.mark.parametrize(
    ("text", "mirrored"),
    [
        ("320 mm", "-320 mm"),
        ("-320 mm", "320 mm"),
        ("0 mm", "0 mm"),
        ("12 in +0.02/-0.01", "-12 in +0.01/-0.02"),  # 11.99 to 12.02 becomes −12.02 to −11.99
        ("300..310 mm", "-310..-300 mm"),
        ("300 mm ±0.5", "-300 mm ±0.5"),
        ("1 3/4 in", "-1 3/4 in"),
    ],
)
def test_a_position_across_changes_its_sign(text: str, mirrored: str) -> None:
    assert negated(text) == mirrored


@pytest.mark.parametrize(
    ("text", "mirrored"),
    [
        ("30 °", "330 °"),
        ("330 ° ±1", "30 ° ±1"),
        ("0 °", "0 °"),
        ("180 deg", "180 deg"),
        ("22.5 ° +1/-0.5", "337.5 ° +0.5/-1"),
        ("40..50 °", "310..320 °"),
        ("359.999999 °", "1e-06 °"),
        ("-1 1/4 °", "1 1/4 °"),
        ("60 arcmin", "21540 arcmin"),  # 360 × 60 - 60
    ],
)
def test_an_angle_is_counted_from_the_other_side(text: str, mirrored: str) -> None:
    assert round_the_axis(text) == mirrored


def test_an_angle_in_radians_is_taken_from_a_full_turn() -> None:
    assert read(round_the_axis("0.5 rad"), "angle").nominal == pytest.approx(5.783185307)  # 2 π − 0.5


@pytest.mark.parametrize("text", ["", "about 30", "30", "thirty °"])
def test_what_is_no_quantity_is_left_to_the_reader(text: str) -> None:
    assert negated(text) == round_the_axis(text) == text


@given(st.decimals(-900, 900, places=3), st.decimals(0, 5, places=2), st.decimals(0, 5, places=2))
def test_a_mirror_of_a_mirror_is_the_original(nominal: object, upper: object, lower: object) -> None:
    text = f"{nominal} mm +{upper}/-{lower}"
    once, twice = negated(text), negated(negated(text))
    original, mirror = read(text, "length", "any"), read(once, "length", "any")
    assert (mirror.low, mirror.high) == pytest.approx((-original.high, -original.low))
    assert read(twice, "length", "any").low == pytest.approx(original.low)
