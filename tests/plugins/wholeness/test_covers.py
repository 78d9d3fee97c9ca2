"""Covers, boxes and joints of a small block: each place by the ways in which a part may name it."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, expect_conforms, expect_finding
from tests.plugins.wholeness.engine import told

FOR_REVIEW = '[works]\nstage = "for-review"\n'
PARTS = {
    "block": 'kind = "cylinder-block"\n[bores.main]\n[ends.front]\nside = "front"\n[ends.back]\nside = "back"',
    "front": 'kind = "cylinder-cover"\ncloses = "block"\nend = "front"',
    "back": 'kind = "cylinder-cover"\ncloses = "block"\nend = "back"\ncentral_hole = "100 mm"',
    "liner": 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"',
    "piston": 'kind = "piston"\nruns_in = "liner"',
    "rod": 'kind = "piston-rod"\ncarries = "piston"',
    "box": 'kind = "stuffing-box"\nin_cover = "back"\nseals = "rod"\npacking = "braided graphite"',
    "gland": 'kind = "gland"\nof = "back"',
}


def design(workshop: DesignFolder, *without: str, **parts: str) -> DesignFolder:
    """The block and its parts, some left out and some changed."""
    specs = {name: text for name, text in (PARTS | parts).items() if name not in without}
    files = {f"{name}.toml": f'id = "{name}"\n{text}\n' for name, text in specs.items()}
    return workshop.write(files, settings=FOR_REVIEW)


def test_covers_may_name_their_ends_by_their_sides(workshop: DesignFolder) -> None:
    expect_conforms(design(workshop).only("end.one-cover", "block"))


@pytest.mark.parametrize("gone", ["front", "back"])
def test_an_end_whose_side_no_cover_is_on_has_none(workshop: DesignFolder, gone: str) -> None:
    check = design(workshop, gone, "box", "gland").only("end.one-cover", "block")
    expect_finding(check, says=f"end {gone}")


def test_a_side_with_two_ends_tells_no_cover_from_another(workshop: DesignFolder) -> None:
    block = PARTS["block"].replace('side = "back"', 'side = "front"')
    expect_finding(design(workshop, block=block).only("end.one-cover", "block"))


def test_a_hole_without_a_box_is_left_to_its_rod(workshop: DesignFolder) -> None:
    """The rod of the only bore wants the box; where no rod is known to, the hole itself is told."""
    rule = "cover.box-in-its-hole"
    expect_conforms(design(workshop).only(rule, "back"))
    workshop.root.joinpath("box.toml").unlink()
    assert design(workshop, "box").only(rule, "back").outcome == "conforms"
    block = PARTS["block"].replace("[bores.main]", "[bores.main]\n[bores.other]")
    expect_finding(design(workshop, "box", block=block).only(rule, "back"))


@pytest.mark.parametrize(
    ("box", "gland", "outcome"),
    [
        ('in_cover = "back"\n', 'of = "back"', "conforms"),
        ('in_cover = "back"\n', 'of = "box"', "conforms"),
        ("", 'of = "box"', "conforms"),
        ("", 'of = "back"', "finding"),  # nothing says that the box is in that cover
        ('in_cover = "back"\n', 'of = "front"', "finding"),
    ],
)
def test_a_gland_names_its_box_or_the_cover_of_it(
    workshop: DesignFolder, box: str, gland: str, outcome: str
) -> None:
    parts = {
        "box": PARTS["box"].replace('in_cover = "back"\n', box),
        "gland": PARTS["gland"].replace('of = "back"', gland),
    }
    assert design(workshop, **parts).only("box.one-gland", "box").outcome == outcome


NO_BOX = "hole of back wants a stuffing box: none is there"
BACK = PARTS["back"]
TWO_BORES = PARTS["block"].replace("[bores.main]", "[bores.main]\n[bores.other]")


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({"box": ""}, ""),  # the rod, which lacks the box, is told of
        ({"box": "", "back": BACK.replace('end = "back"', 'of_end = "back"')}, ""),
        ({"box": "", "back": BACK.replace('closes = "block"\n', "")}, NO_BOX),
        ({"box": "", "back": BACK.replace('end = "back"\n', "")}, NO_BOX),
        # the box of the rod is in the other cover
        ({"box": PARTS["box"].replace('"back"', '"front"')}, NO_BOX),
        # which bore the end is of is not stated, nor in which the liner is
        ({"box": "", "block": TWO_BORES, "liner": 'kind = "cylinder-liner"\nhoused_in = "block"'}, NO_BOX),
        ({"box": "", "block": TWO_BORES + '\nof_bore = "main"'}, ""),
        ({"box": "", "block": TWO_BORES + '\nof_bore = "other"'}, NO_BOX),
        ({"box": "", "back": BACK.replace("100 mm", "0 mm")}, "not applicable: it has no such place"),
        (
            {"back": BACK.replace("100 mm", "0 mm")},
            "hole of back: box is in a cover that has no hole",
        ),
        ({"back": BACK.replace('\ncentral_hole = "100 mm"', "")}, ""),
        (
            {"second": PARTS["box"]},
            "hole of back is filled twice (stuffing box): box (box.toml), second (second.toml)",
        ),
        # of a rod with a tail rod one box is there and another is not
        ({"rod": PARTS["rod"] + "\ntail_rod = true"}, ""),
    ],
)
def test_a_box_stands_in_the_hole_of_a_cover(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, PARTS | parts, "cover.box-in-its-hole", "back") == says


def test_a_hole_that_the_tail_rod_wants_a_box_in_is_left_to_the_rod(workshop: DesignFolder) -> None:
    """One box of two is there, in the back cover: the front one is the rod's to tell; without a tail rod it is not."""
    front = {"front": PARTS["front"] + '\ncentral_hole = "90 mm"'}
    tail = {"rod": PARTS["rod"] + "\ntail_rod = true"}
    rule = "cover.box-in-its-hole"
    assert told(workshop, PARTS | front | tail, rule, "front") == ""
    assert told(workshop, PARTS | front, rule, "front") == NO_BOX.replace("back", "front")


SECOND = 'kind = "stuffing-box"\nin_cover = "back"'
NOT_OF_PLACE = "not applicable: it has no such place"
BUSH = PARTS["box"].replace("braided graphite", "grooved bush")


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"gland": ""}, "box wants a gland: none is there"),
        # which of two boxes in one cover it closes, it does not say
        ({"second": SECOND}, "box wants a gland: none is there"),
        ({"second": SECOND, "gland": 'kind = "gland"\nof = "box"'}, ""),
        (
            {"other": 'kind = "gland"\nof = "box"'},
            "box is filled twice (gland): other (other.toml), gland (gland.toml)",
        ),
        ({"box": BUSH, "gland": ""}, NOT_OF_PLACE),
        ({"box": BUSH}, NOT_OF_PLACE),
        (
            {"box": BUSH, "other": PARTS["gland"]},
            "box is filled twice (gland): gland (gland.toml), other (other.toml)",
        ),
    ],
)
def test_a_box_has_one_gland(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    """A grooved bush holds itself: no gland is wanted, and one is none too many."""
    assert told(workshop, PARTS | parts, "box.one-gland", "box") == says


@pytest.mark.parametrize(
    ("gland", "box", "into", "says"),
    [
        ("back", 'in_cover = "back"', "back", ""),
        ("back", 'in_cover = "back"', "block", "gland: studs is screwed into block, not screwed into back"),
        ("box", 'in_cover = "back"', "back", ""),
        ("box", 'in_cover = "back"', "box", ""),
        (
            "box",
            'in_cover = "back"',
            "block",
            "gland: studs is screwed into block, not screwed into back or box",
        ),
        ("box", "", "block", ""),  # in which cover the box is, is not said
        ("", 'in_cover = "back"', "block", ""),
    ],
)
def test_the_studs_of_a_gland_go_into_its_cover_or_its_box(
    workshop: DesignFolder, gland: str, box: str, into: str, says: str
) -> None:
    parts = {
        "box": f'kind = "stuffing-box"\n{box}',
        "gland": f'kind = "gland"\nof = "{gland}"' if gland else 'kind = "gland"',
        "studs": f'kind = "bolted-joint"\nholds = "gland"\nscrewed_into = "{into}"',
    }
    assert told(workshop, PARTS | parts, "cover.one-joint", "gland") == says
