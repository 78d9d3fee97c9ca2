"""rocker.boss-wall: the metal round the bush of a rocker."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_assessed
from speclint_valves.formulae.rocker_bosses import wall_round_bush

BOSS = "rocker.boss-wall"
ROCKER = 'kind = "rocker"\nid = "rocker"\nboss = "60 mm"\npin = "40 mm"\n[wear]\nbush_wall = "5 mm"\n'


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("60 mm", "58 mm", "conforms"),
        ("60 mm", "57.9 mm", "finding"),
        ("60 mm", "58 mm ±0.1", "finding"),
        ("60 mm", "44 mm", "finding"),  # less than pin and bush
        ("5 mm", "6 mm", "conforms"),
        ("5 mm", "6.1 mm", "finding"),
        ("40 mm", "41.6 mm", "conforms"),
        ("40 mm", "41.7 mm", "finding"),
    ],
)
def test_the_wall_round_a_bush(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    """(58 − 40)/2 − 5 = 4 mm, a tenth of 40; (60 − 40)/2 − 6 = 4; (60 − 41.6)/2 − 5 = 4.2 of 4.16, 4.15 of 4.17."""
    check = workshop.write({"rocker.toml": changed(ROCKER, (f'"{old}"', f'"{new}"'))}).only(BOSS)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_arms_that_are_keyed_on_a_shaft_have_no_bush(workshop: DesignFolder) -> None:
    made = {
        "rocker.toml": changed(ROCKER, ("[wear]", 'on_shaft = "shaft"\n[wear]')),
        "shaft.toml": 'kind = "shaft"\nid = "shaft"\n',
    }
    assert workshop.write(made).only(BOSS).outcome == "not applicable"


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ('boss = "60 mm"\n', "boss"),
        ('pin = "40 mm"\n', "pin"),
        ('[wear]\nbush_wall = "5 mm"\n', "bush_wall"),
    ],
)
def test_a_size_that_is_not_stated_is_not_assessed(workshop: DesignFolder, line: str, key: str) -> None:
    expect_not_assessed(workshop.write({"rocker.toml": changed(ROCKER, (line, ""))}).only(BOSS), key)


@given(D=st.floats(0.05, 0.2), t=st.floats(0.001, 0.01))
def test_a_thicker_bush_leaves_less(D: float, t: float) -> None:
    assert wall_round_bush(D=D, d=0.04, t=t + 0.001) == pytest.approx(
        wall_round_bush(D=D, d=0.04, t=t) - 0.001
    )
