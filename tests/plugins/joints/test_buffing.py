"""The shock of buffing: 3 g along the frame by EN 12663-1, of whichever fastening of the frame states the greatest."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_finding

RULE = "frame.buffing-foreseen"
BLOCK = 'kind = "cylinder-block"\nid = "block"\n[pads.front]\nlocates = true\n[pads.back]\nlocates = false\n'
PAD = 'kind = "frame-fastening"\nid = "{0}"\nholds = "block"\npad = "{0}"\nother_pad = "{1}"\n{2}'


def held(workshop: DesignFolder, front: str, back: str) -> DesignFolder:
    """A block on two pads, whose fastenings state these shocks."""
    stated = [f'shock = "{one}"\n' if one else "" for one in (front, back)]
    return workshop.write(
        {
            "block.toml": BLOCK,
            "front.toml": PAD.format("front", "back", stated[0]),
            "back.toml": PAD.format("back", "front", stated[1]),
        }
    )


@pytest.mark.parametrize(
    ("front", "back", "conforms"),
    [
        ("3", "3", True),
        ("2.99", "2.99", False),
        ("0", "0", False),
        ("0", "3", True),
        ("3", "", True),
        ("4", "", True),
    ],
)
def test_the_shock_is_at_least_three(workshop: DesignFolder, front: str, back: str, conforms: bool) -> None:
    check = held(workshop, front, back).only(RULE, "front")
    assert (check.outcome, check.grade) == (
        ("conforms", None) if conforms else ("finding", Grade.NONCONFORMITY)
    )


def test_what_is_stated_is_told(workshop: DesignFolder) -> None:
    check = held(workshop, "1.5", "2").only(RULE, "back")
    expect_finding(check, grade=Grade.NONCONFORMITY, says="shock 2 < 3 least shock along the frame")


def test_a_fastening_that_states_no_shock_is_not_assessed(workshop: DesignFolder) -> None:
    check = held(workshop, "", "3").only(RULE, "front")
    assert check.outcome == "not assessed"
