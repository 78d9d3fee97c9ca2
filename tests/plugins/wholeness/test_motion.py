"""Piston, rod, crosshead, bars and pins: what each place wants, in words."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

#: A part, the rule of a place that it has, what fills the place, and what that is called.
PLACES = [
    ("piston", "piston.one-rod", 'kind = "piston-rod"\ncarries = "part"', "piston rod"),
    ("piston-rod", "rod.one-crosshead", 'kind = "crosshead"\non_rod = "part"', "crosshead"),
]


@pytest.mark.parametrize(("kind", "rule", "filler", "wants"), PLACES)
@pytest.mark.parametrize("number", [0, 1, 2])
def test_a_part_of_the_motion_is_there_once(
    workshop: DesignFolder, kind: str, rule: str, filler: str, wants: str, number: int
) -> None:
    parts = {f"one-{n}": filler for n in range(number)}
    says = (
        f"part wants a {wants}: none is there",
        "",
        f"part is filled twice ({wants}): one-0 (one-0.toml), one-1 (one-1.toml)",
    )
    assert told(workshop, {"part": f'kind = "{kind}"', **parts}, rule, "part") == says[number]


PIN, CRANK = (f'kind = "pin"\nmoved_by = "head"\nplace = "{one} pin"' for one in ("crosshead", "crank"))


@pytest.mark.parametrize(
    ("pins", "says"),
    [
        ({"pin": PIN, "crank": CRANK}, ""),
        ({"crank": CRANK}, "head wants a crosshead pin: none is there"),
        ({"pin": PIN}, "head wants a crank pin: none is there"),
        ({"pin": PIN, "crank": 'kind = "pin"\nmoved_by = "head"'}, "head wants a crank pin: none is there"),
        (
            {"pin": PIN, "crank": CRANK, "second": CRANK},
            "head is filled twice (crank pin): crank (crank.toml), second (second.toml)",
        ),
    ],
)
def test_a_crosshead_moves_two_pins(workshop: DesignFolder, pins: dict[str, str], says: str) -> None:
    assert told(workshop, {"head": 'kind = "crosshead"', **pins}, "crosshead.its-pins", "head") == says


LINER = 'kind = "cylinder-liner"\nhoused_in = "block"'
RING = 'kind = "piston-ring"\nruns_in = "liner"'
PISTON = (
    'kind = "piston"\nruns_in = "liner"\n[grooves.first]\ntakes = "ring"\n[grooves.second]\ntakes = "ring"'
)
RINGED = {"block": 'kind = "cylinder-block"', "liner": LINER, "piston": PISTON, "ring": RING}


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),  # grooves alike take rings of one spec
        (
            {"piston": PISTON.replace('second]\ntakes = "ring"', "second]")},
            "groove second wants a piston ring: none is there",
        ),
        ({"loose": RING}, "grooves of piston: loose (loose.toml) runs in liner, and no groove takes it"),
        (
            {"loose": RING, "other": RING},
            "grooves of piston: loose (loose.toml) runs in liner, and no groove takes it",
        ),
        ({"loose": RING, "piston": PISTON.replace('runs_in = "liner"\n', "")}, ""),
        # of two pistons in one liner nobody knows which lacks the ring
        ({"loose": RING, "second": 'kind = "piston"\nruns_in = "liner"'}, ""),
        # a piston without grooves has a gap of its own, and no ring is loose beside it
        (
            {"piston": PISTON.partition("\n[")[0], "loose": RING},
            "piston wants a statement of its grooves: none is there",
        ),
    ],
)
def test_a_ring_is_in_each_groove(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**RINGED, **parts}, "groove.one-ring", "piston") == says


SEALED = {
    "block": 'kind = "cylinder-block"\n[bores.main]',
    "other": 'kind = "cylinder-block"',
    "liner": f'{LINER}\nin_bore = "main"',
    "piston": 'kind = "piston"\nruns_in = "liner"',
    "rod": 'kind = "piston-rod"\ncarries = "piston"',
    "back": 'kind = "cylinder-cover"\ncloses = "block"',
    "front": 'kind = "cylinder-cover"\ncloses = "block"',
    "box": 'kind = "stuffing-box"\nin_cover = "back"\nseals = "rod"',
}
BOX = SEALED["box"]
LOOSE = 'kind = "stuffing-box"\nseals = "rod"'
FRONT = {"front-box": BOX.replace('"back"', '"front"')}
TAIL = {"rod": SEALED["rod"] + "\ntail_rod = true"}
FAR = {"back": 'kind = "cylinder-cover"\ncloses = "other"'}


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"box": ""}, "rod wants a stuffing box: none is there"),
        (TAIL, "rod wants a stuffing box: 1 of 2 are there"),
        ({**TAIL, **FRONT}, ""),
        ({"rod": SEALED["rod"] + "\ntail_rod = false"}, ""),
        (FRONT, "rod is filled twice (stuffing box): box (box.toml), front-box (front-box.toml)"),
        # two boxes in one cover are told of the cover: one of both counts
        ({"second": BOX}, ""),
        ({**TAIL, "second": BOX}, "rod wants a stuffing box: 1 of 2 are there"),
        ({**TAIL, **FRONT, "second": BOX}, ""),
        (
            {**FRONT, "second": BOX},
            "rod is filled twice (stuffing box): box (box.toml), front-box (front-box.toml)",
        ),
        # a box that is in no cover is one more
        (
            {"loose": LOOSE},
            "rod is filled twice (stuffing box): box (box.toml), loose (loose.toml)",
        ),
        # and two of them are two
        (
            {"box": LOOSE, "loose": LOOSE},
            "rod is filled twice (stuffing box): box (box.toml), loose (loose.toml)",
        ),
        ({**TAIL, "box": LOOSE, "loose": LOOSE}, ""),
        (
            {**TAIL, "box": LOOSE, "loose": LOOSE, "third": LOOSE},
            "rod is filled 3 times (stuffing box): box (box.toml), loose (loose.toml), third (third.toml)",
        ),
        (FAR, "rod: box is in back of other, and the rod works in block"),
        ({"back": 'kind = "cylinder-cover"'}, ""),
        # where no link leads the rod to its block, no cover is that of another
        ({**FAR, "rod": 'kind = "piston-rod"'}, ""),
        ({**FAR, "piston": 'kind = "piston"'}, ""),
        ({**FAR, "liner": 'kind = "cylinder-liner"'}, ""),
    ],
)
def test_a_rod_is_sealed(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**SEALED, **parts}, "rod.sealed-at-its-cover", "rod") == says


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, "not applicable: a draft: 1 still to be drawn, listed under block"),
        (FAR, "rod: box is in back of other, and the rod works in block"),
    ],
)
def test_a_box_of_a_tail_rod_is_told_in_a_draft_that_lacks_the_other(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    parts = {**SEALED, **TAIL, **parts}
    assert told(workshop, parts, "rod.sealed-at-its-cover", "rod", "draft") == says


def test_two_rods_in_one_cover_have_a_box_each(workshop: DesignFolder) -> None:
    """What the box of another rod is in is nothing to this one."""
    other = {"other-rod": 'kind = "piston-rod"', "other-box": BOX.replace('"rod"', '"other-rod"')}
    assert told(workshop, {**SEALED, **other}, "rod.sealed-at-its-cover", "rod") == ""
