"""Loads of a member against the load combinations of worked examples."""

from __future__ import annotations

import pytest

from speclint.handbook.members.loads import load_ratio, load_with_factor, sum_of_loads
from tests.published.row import Row

AISC = "AISC Design Examples, v14, example"
KIP = 4448.2216


def combined(x_dead: float, dead: float, x_live: float, live: float) -> float:
    return sum_of_loads(load_with_factor(x_dead, dead), load_with_factor(x_live, live))


def _strength(dead: float, live: float) -> dict[str, float]:
    return {"x_dead": 1.2, "dead": dead * KIP, "x_live": 1.6, "live": live * KIP}


ROWS = [
    Row(combined, _strength(30, 90), 180 * KIP, 1e-6, f"{AISC} D.1", "memory", "members.loads"),
    Row(combined, _strength(20, 60), 120 * KIP, 1e-6, f"{AISC} D.2", "memory", "members.loads"),
    Row(combined, _strength(40, 120), 240 * KIP, 1e-6, f"{AISC} D.3", "memory", "members.loads"),
    Row(combined, _strength(140, 420), 840 * KIP, 1e-6, f"{AISC} E.1A", "memory", "members.loads"),
    # 160 kN of 320 kN, and 320 kN of 160 kN
    Row(load_ratio, {"F_1": 160e3, "F_2": 320e3}, 0.5, 1e-9, "hand working", "derived"),
    Row(load_ratio, {"F_1": 320e3, "F_2": 160e3}, 2.0, 1e-9, "hand working", "derived"),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_the_published_value_is_met(row: Row) -> None:
    assert row.ask(**row.given) == pytest.approx(row.expected, rel=row.tolerance)
