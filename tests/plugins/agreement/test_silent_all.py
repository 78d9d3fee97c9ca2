"""Each agreement of this family has a row of what it says where a place is silent, in the tests of some subject."""

from __future__ import annotations

from speclint.testing import load_family
from tests.plugins.agreement import (
    test_silent_cylinders as cylinders,
    test_silent_engine as engine,
    test_silent_gear as gear,
    test_silent_joints as joints,
    test_silent_motion as motion,
    test_silent_plans as plans,
    test_silent_steamways as steamways,
    test_silent_valves as valves,
    test_silent_walls as walls,
)

SUBJECTS = (cylinders, engine, gear, joints, motion, plans, steamways, valves, walls)


def test_each_agreement_has_a_row() -> None:
    agreements = {rule.name for rule in load_family("speclint_agreement").rules if rule.agreement}
    assert agreements
    assert agreements - {row.rule for subject in SUBJECTS for row in subject.ROWS} == set()
