"""Pads, their fastenings and the cut-outs of the frame: each agreement from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.joints.test_frames import fastened

HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)
LESS = ("finding", Grade.NONCONFORMITY)


def judged(workshop: DesignFolder, rule: str, component: str) -> tuple[str, Grade | None]:
    found = workshop.only(rule, component)
    return found.outcome, found.grade


@pytest.mark.parametrize(
    ("at", "wanted"), [("0 mm", FINE), ("-99.9 mm", FINE), ("100.1 mm", HOLD), ("-100.1 mm", HOLD)]
)
def test_the_pad_that_locates_stands_at_the_datum(
    workshop: DesignFolder, at: str, wanted: tuple[str, Grade | None]
) -> None:
    """A pad of 200 mm covers 100 mm either way."""
    fastened(workshop).replace("block.toml", 'at = "0 mm"', f'at = "{at}"\nwidth = "200 mm"')
    assert judged(workshop, "block.fixed-at-pad", "block") == wanted


def test_a_block_without_pads_has_none_that_locates(workshop: DesignFolder) -> None:
    workshop.write({"block.toml": 'kind = "cylinder-block"\nid = "block"\nfixed_point = "front"\n'})
    assert judged(workshop, "block.fixed-at-pad", "block") == ("not applicable", None)


def test_some_pad_locates(workshop: DesignFolder) -> None:
    fastened(workshop).replace("block.toml", "locates = true", "locates = false")
    assert judged(workshop, "block.fixed-at-pad", "block") == HOLD


@pytest.mark.parametrize(("named", "wanted"), [("back", FINE), ("front", HOLD)])
def test_the_fixed_point_is_the_pad_that_locates(
    workshop: DesignFolder, named: str, wanted: tuple[str, Grade | None]
) -> None:
    block = workshop.root / "block.toml"
    fastened(workshop)
    block.write_text(f'fixed_point = "{named}"\n' + block.read_text(encoding="utf-8"), encoding="utf-8")
    assert judged(workshop, "block.fixed-at-pad", "block") == wanted


@pytest.mark.parametrize(
    ("old", "new", "here", "there"),
    [
        ("", "", FINE, FINE),
        ('other_pad = "back"', 'other_pad = "front"', HOLD, ("not applicable", None)),
        ('bore = "main"', 'bore = "inside"', HOLD, HOLD),
        ('carried_mass = "2000 kg"', 'carried_mass = "2001 kg"', HOLD, FINE),
        ('carried_mass = "2000 kg"', 'carried_mass = "1999 kg"', FINE, HOLD),
        ('shock = "3"', 'shock = "3.1"', HOLD, FINE),
        ('shock = "3"', 'shock = "2.9"', FINE, HOLD),
    ],
)
def test_two_pads_of_a_frame_agree(
    workshop: DesignFolder,
    old: str,
    new: str,
    here: tuple[str, Grade | None],
    there: tuple[str, Grade | None],
) -> None:
    """The far fastening is changed: seen from this one, and from that."""
    fastened(workshop)
    block = workshop.root / "block.toml"
    block.write_text(f"{block.read_text(encoding='utf-8')}\n[bores.inside]\n", encoding="utf-8")
    if old:
        workshop.replace("sliding.toml", old, new)
    assert judged(workshop, "frame.pads-reciprocal", "fastening") == here
    if there[0] != "not applicable":
        assert judged(workshop, "frame.pads-reciprocal", "sliding") == there


@pytest.mark.parametrize(
    ("height", "depth", "wanted"),
    [
        ("300 mm", "28 mm", FINE),
        ("300.1 mm", "28 mm", LESS),
        ("300 mm", "28.1 mm", LESS),
        ("300 mm", "20 mm", FINE),
    ],
)
def test_a_pad_bears_on_no_more_than_there_is(
    workshop: DesignFolder, height: str, depth: str, wanted: tuple[str, Grade | None]
) -> None:
    """A pad of 300 mm height on a frame of 28 mm."""
    fastened(workshop).replace("block.toml", 'at = "0 mm"', 'at = "0 mm"\nheight = "300 mm"')
    face = workshop.root / "face-back.toml"
    bears = f'bearing_height = "{height}"\nbearing_depth = "{depth}"\n'
    face.write_text(face.read_text(encoding="utf-8") + bears, encoding="utf-8")
    assert judged(workshop, "pad.bears-within", "face-back") == wanted


@pytest.mark.parametrize(("thick", "wanted"), [("28 mm", FINE), ("27.9 mm", LESS)])
def test_a_pad_bears_no_deeper_than_the_frame_is_thick(
    workshop: DesignFolder, thick: str, wanted: tuple[str, Grade | None]
) -> None:
    """Faces 28 mm deep, and a grip of the bolts of 28 mm: the frame by its own drawing has less."""
    fastened(workshop)
    face = workshop.root / "face-back.toml"
    bears = 'bearing_depth = "28 mm"\nin_frame = "frame"\n'
    face.write_text(face.read_text(encoding="utf-8") + bears, encoding="utf-8")
    (workshop.root / "frame.toml").write_text(f'kind = "frame"\nthickness = "{thick}"\n', encoding="utf-8")
    assert judged(workshop, "pad.bears-within", "face-back") == wanted
