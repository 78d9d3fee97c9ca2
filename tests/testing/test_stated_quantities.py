"""The quantities that a check consulted, where their texts stand, and how numbers are written for another."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.families import load_families
from speclint.quantities import read
from speclint.repository import Change
from speclint.testing import DesignFolder, Trial, made_family, trial_of
from speclint.testing.directions import changed_in
from speclint.testing.other_units import in_other_units
from speclint.testing.scaling import twice_the_size
from speclint.testing.stated_quantities import StatedQuantity, number, quantities_of, rewritten, signed
from speclint.testing.tightening import tighter
from tests.specs.made_up import Rest, Stand

STAND = """
kind = "stand"
width = { value = "2 m ±0.1", from = "measured" }
heights = ["40 mm ±1", "50 mm"]
widths = { one = "3 mm" }
carries = "rest"
"""
REST = 'kind = "rest"\ngeneral_zone = "0.1 mm"\n'


@rule(
    "stand.low",
    title="a stand is lower than it is wide",
    on=Stand,
    grade=Grade.QUERY,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def low(stand: Stand, sheet: Sheet) -> Judgement:
    """Of two heights the first, beside the width; and what it carries is looked at."""
    sheet.follow(stand.carries)
    return sheet.at_most(sheet.take("h", stand.heights[0]), sheet.take("b", stand.width))


@pytest.fixture
def trial(tmp_path: Path) -> Trial:
    loaded = load_families([made_family("stands", kinds=[Stand, Rest], rules=[low])])
    return trial_of(
        DesignFolder(tmp_path, loaded).write({"stand.toml": STAND, "rest.toml": REST}), "stand.low"
    )


def test_each_is_told_with_the_key_under_which_its_text_stands(trial: Trial) -> None:
    found = [(one.spec, one.key, one.text) for one in quantities_of(trial)]
    assert found == [
        ("rest", "general_zone", "0.1 mm"),
        ("stand", "width.value", "2 m ±0.1"),
        ("stand", "heights[0]", "40 mm ±1"),
        ("stand", "heights[1]", "50 mm"),
        ("stand", "widths.one", "3 mm"),
    ]
    opened = [one.key for one in quantities_of(trial, opened=True)]
    assert opened == ["width.value", "heights[0]"]


def test_what_is_changed_is_the_text_under_that_key(trial: Trial) -> None:
    """2 m ± 0.1 is 200 cm ± 10; 1 mm either way becomes a half; twice as large is 4 m ± 0.2."""
    assert list(tighter(trial)) == [
        Change("stand", "width.value", "2 m ±0.05"),
        Change("stand", "heights[0]", "40 mm ±0.5"),
    ]
    assert twice_the_size(trial) == [
        Change("stand", "width.value", "4 m ±0.2"),
        Change("stand", "heights[0]", "80 mm ±2"),
    ]
    assert list(changed_in(trial, "pressure")) == []
    changes = list(in_other_units(trial))
    assert [one.key for one in changes] == [
        "general_zone",
        "width.value",
        "heights[0]",
        "heights[1]",
        "widths.one",
    ]
    after = trial.with_changes(changes)
    assert after is not None
    assert after.fingerprint == trial.done.fingerprint


@pytest.mark.parametrize(
    ("value", "written"),
    [
        (Fraction(5), "5"),
        (Fraction(500), "500"),
        (Fraction(-5, 2), "-2.5"),
        (Fraction(1, 3), "1/3"),
        (Fraction(10**12, 3), "1000000000000/3"),
        (Fraction(1, 8), "0.125"),
        (Fraction(123456789012345678, 1000), "123456789012345.678"),
        (Fraction(1, 10**18 + 1), "1/1000000000000000001"),  # twenty digits
        (Fraction(1, 10**19 + 1), "9.9999999999999999990E-20"),  # 1e-19 less 1e-19 of it
    ],
)
def test_a_number_is_written_exactly_where_there_is_room(value: Fraction, written: str) -> None:
    """A fraction of twenty digits has room; of more, twenty digits of its decimal are written."""
    assert number(value) == written
    assert float(Fraction(number(value))) == pytest.approx(float(value), rel=1e-15)


@pytest.mark.parametrize(
    ("value", "written"),
    [
        (Fraction(3, 2), "+1.5"),
        (Fraction(-3, 2), "-1.5"),
        (Fraction(100), "+100"),
        (Fraction(100, 3), "+33.333333333333333333"),
        (Fraction(-1, 3), "-0.3333333333333333333"),
        (Fraction(0), "0"),
        (Fraction(1, 10**25), "0"),
    ],
)
def test_a_deviation_has_its_sign_and_no_exponent(value: Fraction, written: str) -> None:
    assert signed(value) == written


@pytest.mark.parametrize(
    ("text", "unit", "then"),
    [
        ("5 mm", None, "10 mm"),
        ("5 mm", "in", "10 in"),
        ("5..6 mm", None, "10..12 mm"),
        ("5 mm +0.1/-0.2", None, "10 mm +0.3/-0.6"),
        ("5 mm ±0.1", "cm", "10 cm ±0.3"),
        ("5 mm ±4 µm", None, "10 mm ±4 µm"),
        ("5 mm H7", None, "10 mm H7"),
        ("5 mm ±2 %", None, None),
    ],
)
def test_another_size_has_its_deviations_otherwise(text: str, unit: str | None, then: str | None) -> None:
    """Twice the size, and three times the deviations."""
    one = StatedQuantity("part", "key", text, read(text, "length"))
    assert rewritten(one, lambda size: 2 * size, lambda amount: 3 * amount, unit) == then


def test_a_text_that_is_no_quantity_is_rewritten_as_none() -> None:
    one = StatedQuantity("part", "key", "about 5 mm", read("5 mm", "length"))
    assert rewritten(one, lambda size: size, lambda amount: amount) is None
    assert one.read("5 kg") is None
    assert one.written("6 mm") == Change("part", "key", "6 mm")
