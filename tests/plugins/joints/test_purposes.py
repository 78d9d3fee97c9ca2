"""What a joint is for: by the part that it holds, else as it says."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.joints import brackets
from tests.plugins.joints.bench import bench


@pytest.mark.parametrize("tight", [True, False])
def test_a_joint_that_says_it_holds_steam_is_asked_for_its_seal(workshop: DesignFolder, tight: bool) -> None:
    purpose = "steam-tight" if tight else "structural"
    made = brackets.files(('purpose = "structural"', f'purpose = "{purpose}"'))
    check = workshop.write(made, settings=brackets.settings()).only("joint.gasket-load")
    assert check.outcome == ("not assessed" if tight else "not applicable")
    assert check.says.startswith("seal is not stated") if tight else "no steam is beside it" in check.says


def test_a_cover_has_steam_beside_it_whatever_its_studs_say(workshop: DesignFolder) -> None:
    """By the part held alone, without a seal or a pressure of the joint."""
    bench(workshop, ("studs", 'seal = "gasket"\npressure = "cylinder"\n', 'purpose = "structural"\n'))
    check = workshop.only("joint.purpose-by-place", "studs")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "structural, but steam is beside it" in check.says
