"""Rubbing pairs by name, each with its feed, oil and way back."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import SETTINGS, DesignFolder

PAIRS = "lubrication.pair-by-name"
REVIEW = SETTINGS.replace('"draft"', '"for-review"')
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n',
    "ring.toml": 'kind = "piston-ring"\nid = "ring"\nruns_in = "liner"\n',
    "other.toml": 'kind = "piston-ring"\nid = "other"\nruns_in = "liner"\n',
    "seat.toml": 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\n',
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\nupper_beat.seat = "seat"\n',
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\nmoves = "valve"\n',
}


def pair(name: str, one: str, other: str, oil: str = "cylinder oil", more: str = "") -> str:
    return (
        f'[pairs.{name}]\nbetween = ["{one}", "{other}"]\noil = "{oil}"\nfeed = "lubricator, feed {name}"\n'
        f'returns = "with the exhaust"\n{more}'
    )


GUIDE = pair("guide", "spindle", "guide")
RINGS = pair("rings", "piston-ring", "liner", more="shared = true\n")


@pytest.mark.parametrize(
    ("listed", "outcome", "says"),
    [
        (GUIDE + RINGS, "conforms", ""),
        (pair("guide", "guide", "valve-spindle") + RINGS, "conforms", ""),
        (RINGS, "finding", "spindle in its guide: no feed"),
        (GUIDE, "finding", "no feed of oil is listed"),
        (GUIDE + pair("rings", "piston-ring", "liner", more="shared = false\n"), "finding", "serves 2 pairs"),
        (pair("guide", "spindle", "guide", "engine oil") + RINGS, "finding", "heat of steam"),
        (GUIDE + pair("one", "ring", "liner") + pair("two", "other", "liner"), "conforms", ""),
        ("", "finding", "no feed of oil is listed"),
    ],
)
def test_each_pair_is_listed(workshop: DesignFolder, listed: str, outcome: str, says: str) -> None:
    made = {**FILES, "block.toml": FILES["block.toml"] + listed}
    check = workshop.write(made, settings=REVIEW).only(PAIRS)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert says in check.says


@pytest.mark.parametrize(
    ("listed", "outcome"), [("", "not applicable"), (RINGS, "finding"), (GUIDE + RINGS, "conforms")]
)
def test_a_draft_that_lists_pairs_is_held_to_them(workshop: DesignFolder, listed: str, outcome: str) -> None:
    """Without a list it has until the review; a list that is begun is to be whole."""
    made = {**FILES, "block.toml": FILES["block.toml"] + listed}
    assert workshop.write(made).only(PAIRS).outcome == outcome


def test_a_feed_must_be_said(workshop: DesignFolder) -> None:
    made = {
        **FILES,
        "block.toml": FILES["block.toml"] + GUIDE.replace('returns = "with the exhaust"\n', "") + RINGS,
    }
    assert workshop.write(made, settings=REVIEW).only(PAIRS).outcome == "not assessed"


@pytest.mark.parametrize("part", ["liner", "ring", "other", "spindle"])
@pytest.mark.parametrize(
    ("oil", "outcome"),
    [("cylinder oil", "conforms"), ("none", "conforms"), ("engine oil", "finding"), ("grease", "finding")],
)
def test_a_part_in_steam_says_no_other_oil_by_itself(
    workshop: DesignFolder, part: str, oil: str, outcome: str
) -> None:
    made = {**FILES, "block.toml": FILES["block.toml"] + GUIDE + RINGS}
    made[f"{part}.toml"] += f'[lubrication]\nlubricant = "{oil}"\n'
    check = workshop.write(made, settings=REVIEW).only(PAIRS)
    assert check.outcome == outcome
    assert outcome == "conforms" or f"{part} says {oil}" in check.says


def test_a_box_lists_what_its_links_give(workshop: DesignFolder) -> None:
    made = {
        "box.toml": 'kind = "cam-box"\nid = "box"\n' + pair("guides", "tappet", "cam-box", "engine oil"),
        "tappet.toml": 'kind = "tappet"\nid = "tappet"\ncarried_in = "box"\n',
        "cam.toml": 'kind = "cam"\nid = "cam"\nlifts = "tappet"\n',
    }
    check = workshop.write(made, settings=REVIEW).only(PAIRS)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "cam on tappet" in check.says
    made["box.toml"] += pair("cams", "cam", "tappet", "engine oil")
    assert workshop.write(made, settings=REVIEW).only(PAIRS).outcome == "conforms"


def test_a_draft_may_list_them_later(workshop: DesignFolder) -> None:
    assert workshop.write(FILES).only(PAIRS).outcome == "not applicable"
