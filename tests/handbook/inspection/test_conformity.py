"""The decision of ISO 14253-1 from both sides of every zone; ovality and taper worked by hand."""

from __future__ import annotations

from typing import get_args

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.inspection import DECISIONS, Conformity, conformity, guard_band, ovality, taper
from speclint.repository import Settings

#: Limits 10.000 and 10.100, U = 0.003: by hand the zones meet at 9.997, 10.003, 10.097 and 10.103.
ZONES = {
    9.9969: "out",
    9.997: "undecided",
    10.0029: "undecided",
    10.003: "in",
    10.05: "in",
    10.097: "in",
    10.0971: "undecided",
    10.103: "undecided",
    10.1031: "out",
}


@pytest.mark.parametrize(("value", "found"), ZONES.items())
def test_zones_from_both_sides(value: float, found: Conformity) -> None:
    assert conformity(value, value, 10.0, 10.1, guard=guard_band(0.003, "guard band of U")) == found


def test_one_value_outside_decides_for_all() -> None:
    assert conformity(10.05, 10.104, 10.0, 10.1, guard=0.003) == "out"
    assert conformity(9.996, 10.05, 10.0, 10.1, guard=0.003) == "out"
    assert conformity(10.05, 10.102, 10.0, 10.1, guard=0.003) == "undecided"


def test_guard_bands() -> None:
    """U = 0.004 is 2 u; 1.65 u = 1.65 × 0.002 = 0.0033."""
    assert guard_band(0.004, "guard band of U") == 0.004
    assert guard_band(0.004, "guard band for 95 %") == pytest.approx(0.0033)
    assert guard_band(0.004, "simple acceptance") == 0.0


def test_simple_acceptance_leaves_nothing_undecided() -> None:
    assert [conformity(x, x, 10.0, 10.1, guard=0.0) for x in (9.9999, 10.0, 10.1, 10.1001)] == [
        "out",
        "in",
        "in",
        "out",
    ]


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRange, match="negative"):
        guard_band(-0.001, "guard band of U")
    with pytest.raises(OutOfRange, match="above the greatest"):
        conformity(2.0, 1.0, 0.0, 3.0, guard=0.0)


def test_one_size_alone_may_be_drawn_and_measured() -> None:
    assert conformity(1.0, 1.0, 1.0, 1.0, guard=0.0) == "in"
    with pytest.raises(OutOfRange, match="above the greatest"):
        conformity(1.0, 1.0, 1.0, 0.999, guard=0.0)


def test_the_settings_know_every_decision() -> None:
    literal = next(one for one in _literals(Settings.model_fields["made"].annotation) if one)
    assert literal == DECISIONS


def _literals(table: object) -> list[tuple[str, ...]]:
    field = table.model_fields["decision"]  # type: ignore[attr-defined]
    stated = [get_args(one) for member in get_args(field.annotation) for one in get_args(member)]
    return [one for one in stated if one]


@given(st.floats(-1, 1), st.floats(0, 0.5), st.floats(0, 0.5))
def test_more_uncertainty_proves_no_more(value: float, guard: float, more: float) -> None:
    found = conformity(value, value, -0.5, 0.5, guard=guard)
    again = conformity(value, value, -0.5, 0.5, guard=guard + more)
    assert again in (found, "undecided")


def test_ovality_is_the_greatest_spread_round_one_place() -> None:
    """At 0.1 m 500.05 − 500.02 = 0.03; at 0.8 m 500.08 − 500.07 = 0.01."""
    bore = [(0.1, 500.02), (0.1, 500.05), (0.8, 500.08), (0.8, 500.07)]
    assert ovality(bore) == pytest.approx(0.03)
    assert ovality([(0.1, 500.02), (0.8, 500.05)]) is None


def test_taper_is_between_the_means() -> None:
    """Means 500.035 and 500.075: 0.040 on the diameter."""
    bore = [(0.1, 500.02), (0.1, 500.05), (0.8, 500.08), (0.8, 500.07)]
    assert taper(bore) == pytest.approx(0.04)
    assert taper([(0.1, 500.02), (None, 500.05)]) is None
