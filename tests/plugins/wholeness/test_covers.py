"""Covers, boxes and joints of a small block: each place by the ways in which a part may name it."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, expect_conforms, expect_finding

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


@pytest.mark.parametrize(
    ("holds", "of", "outcome"),
    [
        ("lens", "pipe", "conforms"),  # the ring itself is held
        ("flange", "flange", "conforms"),  # the ring belongs to the part that is held
        ("flange", "block", "conforms"),  # or to the part under it
        ("flange", "pipe", "finding"),
    ],
)
def test_a_lens_joint_has_its_ring(workshop: DesignFolder, holds: str, of: str, outcome: str) -> None:
    parts = {
        "pipe": 'kind = "steam-pipe"',
        "flange": 'kind = "pipe-flange"\nof = "pipe"',
        "lens": f'kind = "lens-joint"\nof = "{of}"',
        "studs": f'kind = "bolted-joint"\nholds = "{holds}"\nscrewed_into = "block"\nseal = "lens ring"',
    }
    check = design(workshop, **parts).only("joint.whole", "studs")
    assert check.outcome == outcome, check.says
