"""A figure over a range of temperatures that two tables hold, one after the other: bounds, and slopes to either end."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.equations import COMMON_PRACTICE
from speclint.handbook.materials import tables
from speclint.rules.enclosed_tables import look_up
from speclint.rules.enclosure import Enclosure, Input, Undecided
from speclint.rules.slopes import slopes
from speclint.rules.twins import twin, twin_of_value

_FIGURES = st.floats(1.0, 30.0)


def _table(places: tuple[float, ...], values: list[float]) -> tables.Table:
    rows = tuple(tables.Figure(one * 0.9, one, one * 1.1) for one in values)
    return tables.Table("1/K", COMMON_PRACTICE, (rows,), places)


def _cold_and_hot(values: list[float]) -> tuple[tables.Table, ...]:
    """As of steel: from 20 °C up, and from far below to a little above 20 °C; they need not meet."""
    return _table((20.0, 60.0, 120.0), values[:3]), _table((-100.0, 0.0, 21.0), values[3:])


@given(st.lists(_FIGURES, min_size=6, max_size=6), st.floats(-80.0, 19.0), st.floats(24.0, 115.0))
def test_every_figure_lies_within_and_every_move_to_an_end_too(
    values: list[float], low: float, high: float
) -> None:
    """At a hundred places: the figure in its bounds, and what it changes by up to an end in those of the slope."""
    both = _cold_and_hot(values)
    side = Input("T", low, high, whole=True)
    found = twin(tables.look_up)(both, "expansion", at=side).nominal
    least, most = slopes(found)["T"]
    ends = [tables.look_up(both, "expansion", at=end).nominal for end in (low, high)]
    for step in range(101):
        at = low + (high - low) * step / 100
        here = tables.look_up(both, "expansion", at=at).nominal
        assert found.low - 1e-9 <= here <= found.high + 1e-9
        for end, there in zip((low, high), ends, strict=True):
            if abs(at - end) > 1e-3:
                slope = (here - there) / (at - end)
                assert least - 1e-6 <= slope <= most + 1e-6


def test_a_jump_of_hand_working() -> None:
    """Constant 10 below 20 °C and 12 above it, from 15 to 25 °C: bounds 10 to 12; the steepest way up to an end is
    2/5 a kelvin, from 15 °C to just above 20 °C, and nothing falls.
    """
    both = _table((20.0, 400.0), [12.0, 12.0]), _table((-100.0, 20.0), [10.0, 10.0])
    found = twin(tables.look_up)(both, "expansion", at=Input("T", 15.0, 25.0, whole=True)).nominal
    assert found.bounds == pytest.approx((10.0, 12.0))
    assert slopes(found)["T"] == (pytest.approx(0.0, abs=1e-12), pytest.approx(0.4, rel=1e-5))


def test_a_part_of_a_range_is_left_open() -> None:
    """Of a part of an input's range, or of what hangs on two, a move need not go to an end: the branch decides."""
    both = _cold_and_hot([12.0, 12.5, 13.0, 9.0, 10.0, 11.0])
    one, other = Input("T", 5.0, 15.0, whole=True), Input("T'", 5.0, 15.0, whole=True)
    for at in (Input("T", 15.0, 25.0), one + other):
        with pytest.raises(Undecided):
            twin(tables.look_up)(both, "expansion", at=at)


def test_a_jump_at_an_end_is_left_open() -> None:
    """From 19.99 °C to 25 °C the jump lies at the end itself: no slope is bounded there."""
    both = _cold_and_hot([12.0, 12.5, 13.0, 9.0, 10.0, 11.0])
    with pytest.raises(Undecided):
        twin(tables.look_up)(both, "expansion", at=Input("T", 19.99, 25.0, whole=True))


def test_a_gap_between_tables_is_left_open() -> None:
    """From 0 to 50 °C where nothing holds 10 to 20 °C: a corner may lie where there is no figure."""
    both = _table((20.0, 100.0), [12.0, 13.0]), _table((-100.0, 10.0), [9.0, 10.0])
    with pytest.raises(Undecided):
        twin(tables.look_up)(both, "expansion", at=Input("T", 0.0, 50.0, whole=True))


def test_plain_numbers_are_looked_up_as_ever() -> None:
    both = _cold_and_hot([12.0, 12.5, 13.0, 9.0, 10.0, 11.0])
    assert look_up(tables.look_up, both, "expansion", at=60.0) == tables.look_up(both, "expansion", at=60.0)


@pytest.mark.parametrize(
    ("made", "so"),
    [
        (lambda one, _: one * 2.0 + 3.0, True),
        (lambda one, _: -one, True),
        (lambda one, other: one + other, False),
        (lambda one, _: (one - 10.0) ** 2, False),
        (lambda _, __: Enclosure(0.0, 1.0), False),
    ],
)
def test_what_goes_from_end_to_end(made: object, so: bool) -> None:
    """One way along one input: not of two, nor of what turns back on the way, nor of what hangs on nothing."""
    one, other = Input("T", 5.0, 15.0, whole=True), Input("T'", 5.0, 15.0, whole=True)
    assert made(one, other).end_to_end is so  # type: ignore[operator]


def test_a_value_has_one_twin_however_often_it_is_asked_for() -> None:
    """A table is long: it is copied once. What has no calculations of its own is left as it is."""
    table = _table((20.0, 60.0, 120.0), [10.0, 11.0, 12.0])
    made = twin_of_value(table)
    assert made is not table
    assert isinstance(made, tables.Table)
    assert twin_of_value(table) is made
    number = 3.0
    assert twin_of_value(number) is number


def three(*, unit: str = "1/K") -> tuple[tables.Table, ...]:
    """10 to 20 °C, 12 from there to 30 °C, 9 above, as the tables lie, each figure within a tenth of itself."""
    found = (
        _table((20.0, 30.0), [12.0, 12.0]),
        _table((30.0, 400.0), [9.0, 9.0]),
        _table((-100.0, 20.0), [10.0] * 2),
    )
    return (*found[:2], tables.Table(unit, COMMON_PRACTICE, found[2].rows, found[2].temperatures))


def test_jumps_up_and_down_of_hand_working() -> None:
    """From 15 to 35 °C: from the low end up by 2 in 5 K at the least, 0.4; to the high end down by 3 in 5 K, −0.6."""
    found = twin(tables.look_up)(three(), "expansion", at=Input("T", 15.0, 35.0, whole=True))
    assert found.nominal.bounds == pytest.approx((9.0, 12.0))
    assert (found.low.bounds, found.high.bounds) == (pytest.approx((8.1, 10.8)), pytest.approx((9.9, 13.2)))
    assert slopes(found.nominal)["T"] == pytest.approx((-0.6, 0.4), rel=1e-5)
    assert slopes(found.low)["T"] == pytest.approx((-0.54, 0.36), rel=1e-5)
    assert slopes(found.high)["T"] == pytest.approx((-0.66, 0.44), rel=1e-5)
    assert (found.what, found.unit, found.source) == ("expansion", "1/K", COMMON_PRACTICE)


def test_lines_that_meet_have_the_slopes_of_both() -> None:
    """0.1 a kelvin to 12 at 20 °C, and 0.3 a kelvin from there: from 10 to 30 °C 11 to 15; any move lies between."""
    both = _table((20.0, 120.0), [12.0, 42.0]), _table((-100.0, 20.0), [0.0, 12.0])
    found = twin(tables.look_up)(both, "expansion", at=Input("T", 10.0, 30.0, whole=True)).nominal
    assert found.bounds == pytest.approx((11.0, 15.0))
    least, most = slopes(found)["T"]
    assert least <= 0.1
    assert most >= 0.3


def test_a_table_that_goes_on_where_another_begins_is_one_part() -> None:
    """To 21 °C by the cold one, of two that hold 20.5 °C, where it stands first: one jump, of 2, at 21 °C."""
    cold, hot = _table((-100.0, 21.0), [10.0, 10.0]), _table((20.0, 400.0), [12.0, 12.0])
    found = twin(tables.look_up)((cold, hot), "expansion", at=Input("T", 16.0, 25.0, whole=True)).nominal
    assert found.bounds == pytest.approx((10.0, 12.0))
    assert slopes(found)["T"] == (
        pytest.approx(0.0, abs=1e-12),
        pytest.approx(0.5, rel=1e-4),
    )  # in 4 K from 25 °C


@pytest.mark.parametrize(
    ("low", "high", "unit"),
    [
        (15.0, 35.0, "1/°C"),  # of two units
        (19.996, 20.004, "1/K"),  # too narrow for a slope
        (29.9, 50.0, "1/K"),  # a jump at less than a hundredth of the range from its low end
        (15.0, 30.1, "1/K"),  # or from its high end
    ],
)
def test_what_has_no_slope_to_speak_of_is_left_open(low: float, high: float, unit: str) -> None:
    with pytest.raises(Undecided):
        twin(tables.look_up)(three(unit=unit), "expansion", at=Input("T", low, high, whole=True))
