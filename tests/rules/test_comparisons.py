"""The comparisons of a sheet: from both sides of each limit, at the limit, and which limit of a band is named."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from speclint.equations import FIRST_PRINCIPLES
from speclint.handbook.materials import material
from speclint.quantities import read
from speclint.repository import Design, Settings
from speclint.rules import Context, Corner, Grade, Judgement, Sheet, rule
from speclint.rules.naming import within_sentence
from speclint.specs import Component


@rule(
    "test.compared",
    title="t",
    on=Component,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES],
    why="w",
    leaves_out="l",
)
def _rule(component: Component, sheet: Sheet) -> object:  # noqa: ARG001 - the form of a rule
    raise AssertionError("never run")


def sheet(*, record: bool = False) -> Sheet:
    """A sheet on which nothing stands."""
    part = Component(id="part")
    design = Design(Path(), Settings(), {"part": part}, {"part": "part.toml"}, frozenset({"part"}))
    return Sheet(_rule, part, Context(design, material, {}), Corner(), record=record)


def on_band(value: str, low: str, high: str) -> Judgement:
    """A temperature difference within a band, with its words."""
    page = sheet(record=True)
    taken = [
        page.take_nominal(symbol, read(f"{text} K", "temperature difference", "any"), name)
        for symbol, text, name in (("T", value, "value"), ("T_1", low, "least"), ("T_2", high, "most"))
    ]
    return page.within(*taken)


@pytest.mark.parametrize(
    ("value", "against", "sign", "used"),
    [
        # √(20 × 80) = 40: below it the lower limit is nearer by ratio, above it the upper
        ("19.9", "least", "≥", 20 / 19.9),
        ("20", "least", "≥", 1.0),
        ("39", "least", "≥", 20 / 39),
        ("40", "most", "≤", 0.5),  # as near to both
        ("41", "most", "≤", 41 / 80),
        ("45", "most", "≤", 45 / 80),  # below the middle of 50, and yet nearer the upper limit
        ("80", "most", "≤", 1.0),
        ("80.1", "most", "≤", 80.1 / 80),
    ],
)
def test_a_band_above_nothing_names_the_limit_that_is_nearer_by_ratio(
    value: str, against: str, sign: str, used: float
) -> None:
    found = on_band(value, "20", "80")
    assert found.limit is not None
    assert (found.limit.name, found.compared) == (against, sign)
    assert found.utilisation == pytest.approx(used)
    assert found.holds is (used <= 1)


@pytest.mark.parametrize(
    ("value", "against", "used"),
    [
        # the middle of −10 to 30 is 10, half the band 20
        ("-10.1", "least", 20.1 / 20),
        ("-10", "least", 1.0),
        ("-5", "least", 15 / 20),
        ("10", "most", 0.0),  # in the middle
        ("25", "most", 15 / 20),
        ("30", "most", 1.0),
        ("30.1", "most", 20.1 / 20),
    ],
)
def test_a_band_that_reaches_nothing_counts_from_its_middle(value: str, against: str, used: float) -> None:
    found = on_band(value, "-10", "30")
    assert found.limit is not None
    assert found.limit.name == against
    assert found.utilisation == pytest.approx(used)
    assert found.holds is (used <= 1)


def test_a_band_of_one_value_holds_at_it_alone() -> None:
    for low, value, holds in ((5.0, 5.0, True), (5.0, 5.1, False), (5.0, 4.9, False), (0.0, 0.0, True)):
        assert sheet().within(value, low, low).holds is holds, value
    beside = sheet().within(1e-3, 0.0, 0.0)
    assert (beside.holds, beside.utilisation) == (False, math.inf)


@given(low=st.floats(0.1, 10), wide=st.floats(0.1, 10), at=st.floats(-0.5, 1.5))
def test_a_band_holds_where_both_its_limits_do(low: float, wide: float, at: float) -> None:
    """Property: with the lower limit above, at and below nothing."""
    for start in (low, 0.0, -low):
        value, page = start + at * wide, sheet()
        both = page.at_least(value, start).holds and page.at_most(value, start + wide).holds
        if min(abs(at), abs(at - 1)) > 1e-6:
            assert page.within(value, start, start + wide).holds is both


@pytest.mark.parametrize(("count", "holds"), [(0.0, False), (1.0, True), (2.0, True)])
def test_a_count_of_exactly_one_reaches_one(count: float, holds: bool) -> None:
    assert sheet().at_least(count, 1.0).holds is holds
    assert sheet().at_most(count, 1.0).holds is (count <= 1)


@pytest.mark.parametrize(
    ("value", "limit", "most", "least"),
    [
        (0.0, 0.0, True, True),
        (-1e-6, 0.0, True, False),
        (1e-6, 0.0, False, True),
        (-2.0, -1.0, True, False),
        (-0.5, -1.0, False, True),
        (-1.0, -1.0, True, True),
        (-1.0 + 0.9e-9, -1.0, True, True),  # rounding
        (-1.0 + 1.1e-9, -1.0, False, True),
    ],
)
def test_limits_of_nothing_and_below_hold_on_their_own_side(
    value: float, limit: float, most: bool, least: bool
) -> None:
    assert (sheet().at_most(value, limit).holds, sheet().at_least(value, limit).holds) == (most, least)


def test_a_temperature_is_used_up_from_0_degrees_celsius() -> None:
    """300 °C of 400 °C is three quarters, though 573.15 K of 673.15 K would be 85 %."""
    found = sheet().no_hotter(573.15, 673.15)
    assert (found.holds, found.utilisation) == (True, pytest.approx(0.75))
    assert sheet().no_hotter(673.15, 673.15).holds
    assert not sheet().no_hotter(673.25, 673.15).holds


@pytest.mark.parametrize(
    ("value", "holds"),
    [(9.8, False), (9.899, False), (9.9, True), (10.0, True), (10.1, True), (10.101, False), (10.2, False)],
)
def test_a_likeness_holds_on_both_sides_and_uses_nothing_up(value: float, holds: bool) -> None:
    found = sheet().equals(value, 10.0, within=0.1)
    assert (found.holds, found.utilisation) == (holds, None)


@pytest.mark.parametrize(("value", "says"), [("10.1", "10.1 K = 10 K"), ("10.2", "10.2 K ≠ 10 K")])
def test_a_likeness_that_fails_is_written_as_no_likeness(value: str, says: str) -> None:
    page = sheet(record=True)
    found, asked = (
        page.take_nominal(symbol, read(f"{text} K", "temperature difference", "any"), symbol)
        for symbol, text in (("T", value), ("T_a", "10"))
    )
    assert says in page.equals(found, asked, within=0.1).says


@pytest.mark.parametrize(
    ("left", "cold", "holds", "strictly", "used"),
    [
        (0.25, 1.0, True, True, 0.75),
        (0.0, 1.0, True, False, 1.0),
        (-0.1, 1.0, False, False, 1.1),
        (0.0, 0.0, True, False, 1.0),  # nothing there and nothing left: in order, and no more than used up
        (0.1, -1.0, True, True, 1.0),
    ],
)
def test_what_stays_is_told_apart_from_what_is_used_up(
    left: float, cold: float, holds: bool, strictly: bool, used: float
) -> None:
    found = sheet().stays(left, cold)
    assert (found.holds, sheet().stays(left, cold, strictly=True).holds) == (holds, strictly)
    assert found.utilisation == pytest.approx(used)


def test_a_band_that_begins_at_nothing_counts_from_its_middle() -> None:
    """From 0 to 80 the middle is 40: 10 is nearer to the lower limit, and 30 of 40 away."""
    found = on_band("10", "0", "80")
    assert found.limit is not None
    assert (found.limit.name, found.utilisation) == ("least", pytest.approx(0.75))


def test_what_is_gone_by_a_rounding_alone_is_left_and_all_used() -> None:
    for left, holds in ((-0.9e-9, True), (-1.1e-9, False)):
        found = sheet().stays(left, 1.0)
        assert found.holds is holds
        assert (found.utilisation == 1.0) is holds
    assert not sheet().stays(-0.9e-9, 1.0, strictly=True).holds
    assert sheet().stays(-1.9e-9, 2.0).holds  # of twice as much


@pytest.mark.parametrize(
    ("name", "called"),
    [
        *(("Hot gap", "hot gap"), ("PV of steam", "PV of steam"), ("T", "T"), ("", "")),
        *(("Mn, certificate", "Mn, certificate"), ("Mn", "Mn"), ("Mean stress", "mean stress")),
        *(("Nusselt number", "Nusselt number"), ("Tresca's stress", "Tresca's stress")),
    ],
)
def test_an_amount_within_a_sentence_begins_small_unless_it_is_an_abbreviation_or_a_name(
    name: str, called: str
) -> None:
    assert within_sentence(name) == called


def test_what_is_no_number_is_never_judged() -> None:
    for value, limit in ((math.nan, 1.0), (1.0, math.nan)):
        with pytest.raises(ValueError, match="not a number"):
            sheet().at_most(value, limit)


def test_of_two_values_as_great_that_which_is_judged_is_named() -> None:
    """A plate and a shank of 24 mm: the shank is taken after the plate, and the plate is judged."""
    page = sheet(record=True)
    plate, _, needed = (
        page.take_nominal(symbol, read(text, "length", "any"), name)
        for symbol, text, name in (("t", "24 mm", "plate"), ("d", "24 mm", "shank"), ("t_n", "30 mm", "need"))
    )
    judged = page.at_least(plate, needed)
    assert judged.found is not None
    assert judged.found.name == "plate"
    assert judged.says.startswith("plate 24 mm")
