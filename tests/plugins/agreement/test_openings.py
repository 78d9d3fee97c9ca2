"""A pipe and the openings of blocks at its ends: sizes, steam, movement, and the swing of its lens joints."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, limit, on_sheet
from speclint_agreement.formulae.openings import depth_of_bar, mean_opening
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.ranges import End, expect_end

DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
[cases.starting.temperatures]
steam-pipe = "220 °C"
cylinder-block = "120 °C"
[cases.running]
[cases.running.temperatures]
steam-pipe = "320 °C"
cylinder-block = "220 °C"
[cases.warming.temperatures]
steam-pipe = "121 °C"
cylinder-block = "151 °C"
[cases.drifting.temperatures]
steam-pipe = "122 °C"
cylinder-block = "152 °C"
[cases.standing-hot.temperatures]
steam-pipe = "123 °C"
cylinder-block = "153 °C"
[cases.cooling.temperatures]
steam-pipe = "124 °C"
cylinder-block = "154 °C"
"""
BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
duty = "duty"
[openings.chest]
carries = "live steam"
at = "-500 mm"
bore = "157 mm"
face = "300 mm"
circle = "250 mm"
studs = 8
"""
PIPE = """
kind = "steam-pipe"
id = "pipe"
material = "known-steel"
carries = "live steam"
outside_diameter = "168.3 mm"
wall = "5.6 mm"
anchor_distance = "2 m"
anchor_movement = "3 mm"
takes_up_by = "lens joints"
joint_movement = "20 mm"
[ends_at]
part = "block"
opening = "chest"
"""
FLANGE = 'kind = "pipe-flange"\nid = "flange"\nof = "pipe"\noutside_diameter = "300 mm"\n'
STUDS = """
kind = "bolted-joint"
id = "studs"
holds = "flange"
screwed_into = "block"
circle = "250 mm"
count = 8
"""
LENS = 'kind = "lens-joint"\nid = "lens"\nof = "pipe"\nswing = "0.5 °"\n'
SIZES, ANCHOR, SWING = "pipe.of-its-opening", "pipe.anchor-by-block", "lens-joint.swing-by-pipe"
WRONG, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    parts = {"duty": DUTY, "block": BLOCK, "pipe": PIPE, "flange": FLANGE, "studs": STUDS, "lens": LENS}
    folder = DesignFolder(tmp_path).write({f"{name}.toml": text for name, text in parts.items()})
    return folder.write({"metals.toml": METALS}, settings=WITH_METALS)


def outcome(design: DesignFolder, rule: str, component: str) -> tuple[str, Grade | None]:
    check = design.only(rule, component)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("block", '"157 mm"', '"155.1 mm"', FINE),  # the pipe has 157.1 mm
        ("block", '"157 mm"', '"155.0 mm"', WRONG),
        ("block", '"157 mm"', '"159.1 mm"', FINE),
        ("block", '"157 mm"', '"159.2 mm"', WRONG),
        ("pipe", "live", "exhaust", WRONG),
        ("block", "studs = 8", "studs = 12", WRONG),
        ("studs", "count = 8", "count = 12", WRONG),
        ("studs", '"250 mm"', '"250.02 mm"', WRONG),
        ("block", '"250 mm"', '"249.98 mm"', WRONG),
        ("flange", '"300 mm"', '"300.1 mm"', WRONG),
        ("flange", '"300 mm"', '"290 mm"', FINE),
        ("flange", '"300 mm"\n', '"300 mm"\nbore = "155 mm"\n', FINE),  # the opening has 157 mm
        ("flange", '"300 mm"\n', '"300 mm"\nbore = "154.9 mm"\n', WRONG),
    ],
)
def test_pipe_and_opening(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """Bores may differ by 2 mm; a flange may be smaller than its face."""
    assert outcome(design.replace(f"{file}.toml", old, new), SIZES, "pipe") == ends


@pytest.mark.parametrize(
    ("edge", "face", "ends"),
    [
        ("46.5 mm", "350 mm", FINE),  # (250 − 157)/2 to the opening
        ("46.6 mm", "350 mm", WRONG),
        ("25 mm", "300 mm", FINE),  # (300 − 250)/2 to the edge of the face
        ("25.1 mm", "300 mm", WRONG),
    ],
)
def test_studs_round_an_opening_have_the_edge_that_it_leaves(
    design: DesignFolder, edge: str, face: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("block.toml", '"300 mm"', f'"{face}"')
    design.replace("studs.toml", "count = 8", f'count = 8\nfastener = "stud"\nedge_distance = "{edge}"')
    assert outcome(design, "joint.edge-left", "studs") == ends


def test_an_opening_says_what_steam_comes(design: DesignFolder) -> None:
    """The block's word counts for the pipe, whatever its own says."""
    design.replace("pipe.toml", "live", "exhaust")
    assert outcome(design, "steamway.same-steam", "pipe") == ("finding", Grade.HOLD)


@pytest.mark.parametrize(("stated", "ends"), [("1.29 mm", FINE), ("1.27 mm", WRONG)])
def test_the_block_moves_its_end(design: DesignFolder, stated: str, ends: tuple[str, Grade | None]) -> None:
    """500 mm from the fixed point, 200 K, at most 12.8e-6: 1.28 mm, whichever way."""
    assert outcome(design.replace("pipe.toml", '"3 mm"', f'"{stated}"'), ANCHOR, "pipe") == ends


@pytest.mark.parametrize(
    ("stated", "movement"),
    [("anchor_movement = '3 mm'", 3e-3), ("anchor_movement = '1 mm'", 1.28e-3)],
)
def test_the_greater_movement_counts(design: DesignFolder, stated: str, movement: float) -> None:
    """The pipe itself grows by at most 2 m × 300 K × 13.3e-6 = 7.98 mm; it turns in a ring at either end."""
    design.replace("pipe.toml", 'anchor_movement = "3 mm"', stated)
    design.write({"far.toml": LENS.replace('id = "lens"', 'id = "far"')}, settings=WITH_METALS)
    assert on_sheet(design.only("pipe.flexibility", "pipe"), "Y") == pytest.approx(7.98e-3 + movement)


def test_a_movement_that_is_not_stated_is_asked(design: DesignFolder) -> None:
    """The block is at one end alone: how far the other moves is not known."""
    check = design.replace("pipe.toml", 'anchor_movement = "3 mm"', "").only("pipe.flexibility", "pipe")
    assert check.outcome == "not assessed"
    assert "anchor_movement is not stated" in check.says


@pytest.mark.parametrize(("swing", "ends"), [("0.32 °", FINE), ("0.31 °", WRONG)])
def test_the_swing_takes_up_the_movement(
    design: DesignFolder, swing: str, ends: tuple[str, Grade | None]
) -> None:
    """7.98 + 3 = 10.98 mm on 2 m: arctan 0.00549 = 0.3145°."""
    assert outcome(design.replace("lens.toml", "0.5 °", swing), SWING, "lens") == ends
    assert limit(design.only(SWING, "lens")) == pytest.approx(0.00549, rel=1e-4)


@pytest.mark.parametrize("digit", range(1, 5), ids=["warming", "drifting", "standing-hot", "cooling"])
def test_the_hottest_case_counts_whichever_it_is(design: DesignFolder, digit: int) -> None:
    """At 420 °C the pipe grows by 2 m × 400 K × 13.8e-6 = 11.04 mm, and with 3 mm swings by 0.402°.

    At 320 °C of the block 500 mm grow by 300 K × 13.3e-6 = 2.0 mm.
    """
    duty = DUTY.replace(f'"12{digit} °C"', '"420 °C"').replace(f'"15{digit} °C"', '"320 °C"')
    design.replace("duty.toml", DUTY, duty)
    assert outcome(design.replace("lens.toml", "0.5 °", "0.41 °"), SWING, "lens") == FINE
    assert outcome(design.replace("lens.toml", "0.41 °", "0.40 °"), SWING, "lens") == WRONG
    assert outcome(design.replace("pipe.toml", '"3 mm"', '"2.01 mm"'), ANCHOR, "pipe") == FINE
    assert outcome(design.replace("pipe.toml", '"2.01 mm"', '"1.98 mm"'), ANCHOR, "pipe") == WRONG


def test_only_lens_joints_swing(design: DesignFolder) -> None:
    design.replace("pipe.toml", "lens joints", "bends")
    assert design.only(SWING, "lens").outcome == "not applicable"


@pytest.mark.parametrize(
    "end",
    [
        End(mean_opening, {"D": 0.2, "n": 1.0, "w": 0.03}, {"n": 0.999}, "there is no bar"),
        End(depth_of_bar, {"A": 60e-6, "w": 1e-6}, {"w": 0.0}, "the bar has no width"),
    ],
    ids=str,
)
def test_openings_are_those_between_bars(end: End) -> None:
    expect_end(end)
