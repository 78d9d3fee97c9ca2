"""frame.nuts-outlast-bolts: the nuts of the bolts that hold a block on its frames."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, limit, on_sheet

RULE = "frame.nuts-outlast-bolts"
FASTENING = """
kind = "frame-fastening"
material = "bolting-42CrMo4"
thread = "M30"
count = 12
tightening.temperature = "20 °C"
[nut]
material = "bolting-42CrMo4"
engagement = "30 mm"
across_flats = "46 mm"
"""


def write(workshop: DesignFolder, old: str = "", new: str = "") -> DesignFolder:
    assert not old or FASTENING.count(old) == 1
    return workshop.write({"bolts.toml": FASTENING.replace(old, new) if old else FASTENING})


@pytest.mark.parametrize(
    ("old", "new", "matches"),
    [
        ("", "", True),
        ('"46 mm"', '"43.5 mm"', True),
        ('"46 mm"', '"43.4 mm"', False),
        ('"30 mm"', '"29.9 mm"', False),
        ('[nut]\nmaterial = "bolting-42CrMo4"', '[nut]\nmaterial = "bolting-25CrMo4"', False),
        ('[nut]\nmaterial = "bolting-42CrMo4"', '[nut]\nmaterial = "forging-34CrNiMo6"', False),
        ('material = "bolting-42CrMo4"\nthread', 'material = "bolting-25CrMo4"\nthread', True),
    ],
)
def test_a_nut_that_matches(workshop: DesignFolder, old: str, new: str, matches: bool) -> None:
    """1 × 30 = 30 mm high, 1.45 × 30 = 43.5 mm across, and of the bolt's steel or as strong."""
    check = write(workshop, old, new).only(RULE)
    assert (check.says == "the nut matches its bolt in height, width and strength") is matches


def test_a_nut_that_does_not_match_is_worked(workshop: DesignFolder) -> None:
    """Half a diameter high it strips at far less than 1.2 × 561 mm² × 860 MPa = 579 kN."""
    check = write(workshop, '"30 mm"', '"15 mm"').only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert limit(check) == pytest.approx(1.2 * 560.6e-6 * 860e6, rel=2e-3)
    assert on_sheet(check, "F_n") > 0


def test_a_high_nut_of_softer_steel_outlasts_its_bolt(workshop: DesignFolder) -> None:
    text = FASTENING.replace('[nut]\nmaterial = "bolting-42CrMo4"', '[nut]\nmaterial = "bolting-25CrMo4"')
    high = text.replace('"30 mm"', '"60 mm"').replace('"46 mm"', '"60 mm"')
    assert workshop.write({"bolts.toml": high}).only(RULE).outcome == "conforms"


@pytest.mark.parametrize("missing", ['engagement = "30 mm"', 'across_flats = "46 mm"', 'thread = "M30"'])
def test_what_is_needed_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    assert write(workshop, missing, "").only(RULE).outcome == "not assessed"
