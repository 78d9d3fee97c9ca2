"""What locks the bolts of a bracket: against shaking loose, where the joint may slip, and in heat."""

from __future__ import annotations

import re

import pytest

from speclint.testing import DesignFolder, expect_not_applicable
from tests.plugins.joints import brackets
from tests.plugins.joints.brackets import LOCK, built


@pytest.mark.parametrize(
    ("how", "outcome"),
    [
        ("split pin", "conforms"),
        ("wedge washers", "conforms"),
        ("spring washer", "finding"),
        ("lock nut", "conforms"),
        ("nylon ring nut", "conforms"),
    ],
)
def test_locking(workshop: DesignFolder, how: str, outcome: str) -> None:
    assert built(workshop, ('"wedge washers"', f'"{how}"')).only(LOCK).outcome == outcome


def test_locking_by_friction_where_the_joint_may_slip(workshop: DesignFolder) -> None:
    made = ('friction = "0.12"', 'friction = "0.05"')
    assert built(workshop, made).only(LOCK).outcome == "conforms"
    assert built(workshop, made, ('"wedge washers"', '"lock nut"')).only(LOCK).outcome == "finding"


@pytest.mark.parametrize(
    ("how", "at", "outcome"),
    [
        ("nylon ring nut", "119 °C", "conforms"),
        ("nylon ring nut", "121 °C", "finding"),
        ("adhesive", "149 °C", "conforms"),
        ("adhesive", "151 °C", "finding"),
    ],
)
def test_locking_by_heat(workshop: DesignFolder, how: str, at: str, outcome: str) -> None:
    made = brackets.files(('"wedge washers"', f'"{how}"'), bar=False)
    made["duty.toml"] = (
        made["duty.toml"]
        .replace('bolted-joint = "20 °C"', f'bolted-joint = "{at}"')
        .replace('bracket = "20 °C"', f'bracket = "{at}"')
        .replace('cylinder-block = "20 °C"', f'cylinder-block = "{at}"')
    )
    made["joint.toml"] = made["joint.toml"].replace('friction = "0.12"', 'friction = "0.6"')
    assert workshop.write(made, settings=brackets.settings()).only(LOCK).outcome == outcome


@pytest.mark.parametrize(
    ("case", "at", "outcome"),
    [
        ("standing-hot", "120 °C", "conforms"),
        ("standing-hot", "121 °C", "finding"),
        ("water", "130 °C", "finding"),
        ("running", "130 °C", "finding"),
    ],
)
def test_nylon_bears_the_hottest_case(workshop: DesignFolder, case: str, at: str, outcome: str) -> None:
    """The ring softens for good in whichever case is hottest: standing hot, where the engine drips no oil on it."""
    made = brackets.files(('"wedge washers"', '"nylon ring nut"'), bar=False)
    head, own, tail = made["duty.toml"].partition(f"[cases.{case}.temperatures]")
    first, other, rest = tail.partition("[cases.")
    made["duty.toml"] = (
        head + own + re.sub('bolted-joint = "[^"]*"', f'bolted-joint = "{at}"', first) + other + rest
    )
    made["joint.toml"] = made["joint.toml"].replace('friction = "0.12"', 'friction = "0.6"')
    assert workshop.write(made, settings=brackets.settings()).only(LOCK).outcome == outcome


def test_a_duty_without_standing_hot_judges_the_locking(workshop: DesignFolder) -> None:
    made = brackets.files(('"wedge washers"', '"nylon ring nut"'), bar=False)
    made["duty.toml"] = made["duty.toml"].partition("[cases.water]")[0]
    made["joint.toml"] = made["joint.toml"].replace('friction = "0.12"', 'friction = "0.6"')
    assert workshop.write(made, settings=brackets.settings()).only(LOCK).outcome == "conforms"


def test_a_nut_without_a_lock_is_for_another_rule(workshop: DesignFolder) -> None:
    expect_not_applicable(
        built(workshop, ('"wedge washers"', '"none"')).only(LOCK),
        "the nuts are not locked: joint.locking says it",
    )


def test_a_case_of_which_no_heat_is_stated_does_not_silence_the_locking(workshop: DesignFolder) -> None:
    made = brackets.files(('"wedge washers"', '"nylon ring nut"'), bar=False)
    head, own, tail = made["duty.toml"].partition("[cases.standing-hot.temperatures]")
    made["duty.toml"] = head + own + tail.replace('bolted-joint = "60 °C"\n', "", 1)
    made["joint.toml"] = made["joint.toml"].replace('friction = "0.12"', 'friction = "0.6"')
    assert workshop.write(made, settings=brackets.settings()).only(LOCK).outcome == "conforms"
