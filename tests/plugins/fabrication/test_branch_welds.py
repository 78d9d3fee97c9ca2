"""The weld at the root of a branch: its fatigue in a shell and in a flat wall."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.fabrication.openings import FATIGUE, INLET, with_inlet

ROOT = """
[joints.root]
plate = "drum"
shape = "tee"
weld = "full penetration"
on_pressure = true
opening = "inlet"
detail_category = "80 MPa"
"""


@pytest.mark.parametrize(("thickness", "outcome"), [("64 mm", "conforms"), ("62 mm", "finding")])
def test_the_root_of_a_branch_is_stressed_more_than_its_shell(
    workshop: DesignFolder, thickness: str, outcome: str
) -> None:
    """2.5 × (1.66 − 0.03) × (250 + 63/2)/63 = 18.21 MPa at each stroke; 80 × 0.404714 × 0.9244/1.35 × (25/64)^0.2 =
    18.37 are allowed. Of 62 mm 18.74 against 18.49: the drum itself, at 7.5 MPa, said nothing."""
    port = INLET.replace('place = "chest inlet"\ncarries = "live steam"', 'carries = "cylinder"')
    check = with_inlet(workshop, opening="", drum=("9 mm", thickness), more=port + ROOT).only(FATIGUE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None), check.says
    t = float(thickness[:2])
    root = 2.5 * 1.63 * (250 + (t - 1) / 2) / (t - 1)
    assert on_sheet(check, "Δσ_r of inlet") / 1e6 == pytest.approx(root, rel=1e-3)


@pytest.mark.parametrize(("thickness", "outcome"), [("5.2 mm", "conforms"), ("5 mm", "finding")])
def test_the_root_of_a_branch_of_the_chest_counts_starts(
    workshop: DesignFolder, thickness: str, outcome: str
) -> None:
    """20 000 times: 80 × 4.64159 × 0.9244/1.35 = 254.3 MPa; 2.5 × 1.66 × 252.1/4.2 = 249.1, of 4 mm net 261.5."""
    check = with_inlet(workshop, drum=("9 mm", thickness), more=ROOT).only(FATIGUE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None), check.says


def test_a_branch_has_a_weld(workshop: DesignFolder) -> None:
    check = with_inlet(workshop, drum=("9 mm", "54 mm")).only(FATIGUE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "no weld is stated to join the branch at inlet" in check.says


def test_a_drilled_hole_has_no_branch_and_no_weld(workshop: DesignFolder) -> None:
    drilled = ('set = "set in"', 'set = "drilled"')
    assert with_inlet(workshop, drilled, drum=("9 mm", "54 mm")).only(FATIGUE).outcome == "conforms"


def test_the_root_of_a_branch_in_a_flat_wall(workshop: DesignFolder) -> None:
    """2.5 times the 21.985 MPa of the wall of the barrel (test_fatigue): 54.96 MPa."""
    change = (('plate = "drum"', 'flat_wall = "barrel"'), ('"300 mm"', '"47 mm"'))
    check = with_inlet(workshop, *change, more=ROOT).only(FATIGUE)
    assert check.outcome == "finding"
    assert on_sheet(check, "Δσ_r of root") / 1e6 == pytest.approx(54.96, rel=1e-3)
