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


def test_a_block_in_which_nothing_that_rubs_is_drawn_needs_no_pairs(workshop: DesignFolder) -> None:
    check = workshop.write({"block.toml": FILES["block.toml"]}, settings=REVIEW).only(PAIRS)
    assert (check.outcome, check.says) == ("not applicable", "no part is drawn that rubs in it")


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


@pytest.mark.parametrize("between", ['"spindle"', '"spindle", "guide", "valve"'])
def test_a_row_that_names_one_part_or_three_names_no_pair(workshop: DesignFolder, between: str) -> None:
    row = GUIDE.replace('"spindle", "guide"', between)
    made = {**FILES, "block.toml": FILES["block.toml"] + row + RINGS}
    check = workshop.write(made, settings=REVIEW).only(PAIRS)
    assert check.outcome == "finding"
    assert "spindle in its guide: no feed" in check.says


@pytest.mark.parametrize("between", ['"spindle", "spindle"', '"guide", "guide"', '"liner", "guide"'])
def test_a_row_names_both_parts_of_its_pair(workshop: DesignFolder, between: str) -> None:
    row = GUIDE.replace('"spindle", "guide"', between)
    made = {**FILES, "block.toml": FILES["block.toml"] + row + RINGS}
    assert workshop.write(made, settings=REVIEW).only(PAIRS).outcome == "finding"


def test_a_draft_may_list_them_later(workshop: DesignFolder) -> None:
    assert workshop.write(FILES).only(PAIRS).outcome == "not applicable"


IN_BOX = {
    "box.toml": 'kind = "cam-box"\nid = "box"\n',
    "tappet.toml": 'kind = "tappet"\nid = "tappet"\ncarried_in = "box"\nworks = "spindle"\n',
    "cam.toml": 'kind = "cam"\nid = "cam"\nlifts = "tappet"\nturns_on = "shaft"\n',
    "shaft.toml": 'kind = "shaft"\nid = "shaft"\n',
    "rocker.toml": 'kind = "rocker"\nid = "rocker"\ncarried_in = "box"\nworks = "other-spindle"\n',
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\n',
    "other-spindle.toml": 'kind = "valve-spindle"\nid = "other-spindle"\n',
}
IN_BLOCK = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n',
    "liner.toml": FILES["liner.toml"],
    "ring.toml": FILES["ring.toml"],
    "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\n',
    "rod.toml": 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\n',
    "stuffing.toml": 'kind = "stuffing-box"\nid = "stuffing"\nseals = "rod"\n',
    "head.toml": 'kind = "crosshead"\nid = "head"\non_rod = "rod"\n',
    "pin.toml": 'kind = "pin"\nid = "pin"\nmoved_by = "head"\n',
    "bar.toml": 'kind = "slide-bar"\nid = "bar"\nguides = "head"\n',
}
RUB_IN_BOX = (
    ("tappet", "box"),
    ("tappet", "spindle"),
    ("cam", "tappet"),
    ("rocker", "box"),
    ("rocker", "other-spindle"),
    ("shaft", "box"),
)
RUB_IN_BLOCK = (("ring", "liner"), ("rod", "stuffing"), ("pin", "head"), ("bar", "head"))


@pytest.mark.parametrize(
    ("owner", "files", "rub", "one", "other"),
    [("box", IN_BOX, RUB_IN_BOX, *pair_) for pair_ in RUB_IN_BOX]
    + [("block", IN_BLOCK, RUB_IN_BLOCK, *pair_) for pair_ in RUB_IN_BLOCK],
)
def test_a_pair_that_is_left_out_is_named_the_one_that_moves_first(
    workshop: DesignFolder,
    owner: str,
    files: dict[str, str],
    rub: tuple[tuple[str, str], ...],
    one: str,
    other: str,
) -> None:
    def listed(*pairs: tuple[str, str]) -> dict[str, str]:
        rows = "".join(pair(f"{first}-{second}", first, second) for first, second in pairs)
        return {**files, f"{owner}.toml": files[f"{owner}.toml"] + rows}

    assert workshop.write(listed(*rub), settings=REVIEW).only(PAIRS, owner).outcome == "conforms"
    left = [each for each in rub if each != (one, other)]
    check = workshop.write(listed(*left), settings=REVIEW).only(PAIRS, owner)
    assert check.outcome == "finding"
    assert f"{one} on {other}: no feed" in check.says
