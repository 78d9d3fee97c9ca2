"""Height over nuts, by hand: M24 of 36 mm flats takes 31.2 + 21.6 mm under a ring, 31.2 + 120 under a multiplier."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed
from tests.plugins.clearances.test_withdrawing import drawn, turned

RULE = "room.over-each-nut"


def over(height: str, by: str = "hand", flats: str = 'nut.across_flats = "36 mm"') -> dict[str, str]:
    made = turned("580 N·m", f'[spanners.studs]\nby = "{by}"\nacross_flats = "30 mm"\nover = "{height}"\n')
    made["studs.toml"] = made["studs.toml"].replace("[tightening]", f'thread = "M24"\n{flats}\n[tightening]')
    return made


@pytest.mark.parametrize(
    ("height", "by", "outcome"),
    [
        ("52.9 mm", "hand", "conforms"),
        ("52.7 mm", "hand", "finding"),
        ("151.3 mm", "multiplier", "conforms"),
        ("151.1 mm", "hydraulic", "finding"),
    ],
)
def test_height_from_both_sides(workshop: DesignFolder, height: str, by: str, outcome: str) -> None:
    check = workshop.write(over(height, by)).only(RULE)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_flats_of_the_plan_where_the_joint_states_none(workshop: DesignFolder) -> None:
    """31.2 + 0.6 × 30 = 49.2 mm."""
    assert workshop.write(over("49.3 mm", flats="")).only(RULE).outcome == "conforms"
    assert workshop.write(over("49.1 mm", flats="")).only(RULE).outcome == "finding"


def test_a_plan_that_leaves_the_height_or_the_joint_out(workshop: DesignFolder) -> None:
    made = over("60 mm")
    made["plan.toml"] = made["plan.toml"].replace('over = "60 mm"\n', "")
    expect_not_assessed(workshop.write(made).only(RULE), "over")
    made["plan.toml"] = made["plan.toml"].partition("[spanners")[0]
    expect_not_assessed(workshop.write(made).only(RULE), "no room for a spanner")


def test_a_block_without_joints_has_no_nuts(workshop: DesignFolder) -> None:
    expect_not_applicable(workshop.write(drawn("")).only(RULE), "no joint of the block")
