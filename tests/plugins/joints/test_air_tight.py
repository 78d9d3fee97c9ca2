"""Joints of a smokebox: the gap between bolts that draws air, and slots for parts that grow apart."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.testing import DesignFolder, expect_not_applicable
from speclint_joints.formulae.air_tight import opening_between_bolts
from tests.plugins.joints import brackets
from tests.plugins.joints.brackets import AIR, LID, SADDLE


def _lid(workshop: DesignFolder, *changes: tuple[str, str]) -> DesignFolder:
    made = brackets.files(*LID, *changes)
    return workshop.write({**made, "saddle.toml": SADDLE}, settings=brackets.settings())


@pytest.mark.parametrize(
    ("pitch", "outcome"), [("205 mm", "conforms"), ("214 mm", "finding"), ("250 mm", "finding")]
)
def test_a_smokebox_flange_from_both_sides(workshop: DesignFolder, pitch: str, outcome: str) -> None:
    """20 N/mm on 8 × 40 mm: 0.075 mm at 150, 0.58 at 250; 0.3 at 150 (0.3/0.077)^¼ = 210 mm with 200 GPa, 3 % less."""
    assert _lid(workshop, ('pitch = "150 mm"', f'pitch = "{pitch}"')).only(AIR).outcome == outcome


def test_a_joint_that_carries_or_holds_steam_is_no_air_tight_one(workshop: DesignFolder) -> None:
    """By what it is for; and whatever it says, by steam beside it."""
    expect_not_applicable(
        workshop.write(brackets.files(), settings=brackets.settings()).only(AIR), "not air-tight"
    )
    steam = ('purpose = "air-tight"', 'purpose = "air-tight"\npressure = "live"')
    expect_not_applicable(_lid(workshop, steam).only(AIR), "not air-tight")


def test_parts_that_grow_apart_want_slots(workshop: DesignFolder) -> None:
    made = brackets.files(*LID)
    hot = made["duty.toml"].replace('saddle = "60 °C"', 'saddle = "320 °C"')
    folder = workshop.write({**made, "saddle.toml": SADDLE, "duty.toml": hot}, settings=brackets.settings())
    check = folder.only(AIR)
    assert check.outcome == "finding"
    slotted = {**made, "saddle.toml": SADDLE, "duty.toml": hot}
    slotted["joint.toml"] = slotted["joint.toml"].replace("pitch =", 'slot = "32 mm"\npitch =')
    assert workshop.write(slotted, settings=brackets.settings()).only(AIR).outcome == "conforms"


def test_a_smokebox_that_draws_air(workshop: DesignFolder) -> None:
    """0.0816 mm × 1.5 m × 0.6 × √(2 × 1.2 × 1500 Pa) = 0.004406 kg/s: 0.5 % of 0.8812 kg/s.

    With 0.97 × 198 GPa at 60 °C the flange opens 0.0804 mm; its bolts, grown by 0.6e-6/K less, 48 mm × 40 K of that.
    """
    assert _lid(workshop, ('"5 kg/s"', '"0.89 kg/s"')).only(AIR).outcome == "conforms"
    assert _lid(workshop, ('"5 kg/s"', '"0.873 kg/s"')).only(AIR).outcome == "finding"


@given(p=st.floats(0.05, 0.5), k=st.floats(1.1, 3))
def test_an_opening_grows_with_the_fourth_power_of_the_pitch(p: float, k: float) -> None:
    one = opening_between_bolts(2e6, 0.01, p, 2e11, 0.04, 0.008)
    assert math.isclose(opening_between_bolts(2e6, 0.01, p * k, 2e11, 0.04, 0.008), one * k**4, rel_tol=1e-9)
