"""Which steam a pipe carries, and how far the blocks at its ends move."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    movement_by_blocks,
    movement_of_pipe,
    openings_of,
    steam_carried,
    steams_beside,
    swing_needed,
    swing_of_lens,
)
from speclint.facts.pipe_movement import movement_of_anchors
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

LIVE, EXHAUST = 'carries = "live steam"\n', 'carries = "exhaust steam"\n'
FOLLOWS = 'follows = "{}"\n'


def steam(folder: Path, pipe: str, **parts: str) -> str:
    files = {"steam-pipe pipe": pipe, "cylinder-block block": "[openings.o]\n" + EXHAUST}
    kinds = {
        "before": "steam-passage",
        "first": "steam-passage",
        "after": "steam-passage",
        "beyond": "steam-pipe",
    }
    files |= {f"{kinds[name]} {name}": text for name, text in parts.items()}
    on = bench(folder, files, "pipe")
    return str(steam_carried(on["pipe"], on.sheet).value)


@pytest.mark.parametrize(
    ("pipe", "parts", "carried"),
    [
        (EXHAUST, {}, "exhaust steam"),
        (EXHAUST + FOLLOWS.format("before"), {"before": LIVE}, "live steam"),
        (LIVE + FOLLOWS.format("before"), {"before": EXHAUST}, "live steam"),
        (FOLLOWS.format("before"), {"before": EXHAUST}, "exhaust steam"),
        # one that says nothing passes the question on to what it follows
        (FOLLOWS.format("before"), {"before": FOLLOWS.format("first"), "first": EXHAUST}, "exhaust steam"),
        (EXHAUST, {"after": FOLLOWS.format("pipe") + LIVE}, "live steam"),
        (EXHAUST, {"beyond": FOLLOWS.format("pipe") + LIVE}, "live steam"),
        (
            EXHAUST + FOLLOWS.format("before"),
            {"before": EXHAUST, "beyond": FOLLOWS.format("pipe") + LIVE},
            "live steam",
        ),
        (EXHAUST, {"beyond": FOLLOWS.format("pipe")}, "exhaust steam"),
        (LIVE.replace("live", "exhaust"), {"beyond": LIVE}, "exhaust steam"),  # it does not follow the pipe
        ('starts_at.part = "block"\nstarts_at.opening = "o"\n', {}, "exhaust steam"),
        (EXHAUST + FOLLOWS.format("block"), {}, "exhaust steam"),
    ],
)
def test_the_steam_of_a_pipe_is_that_of_its_path(
    tmp_path: Path, pipe: str, parts: dict[str, str], carried: str
) -> None:
    assert steam(tmp_path, pipe, **parts) == carried


def test_a_pipe_of_which_nothing_is_known_must_state_it(tmp_path: Path) -> None:
    with pytest.raises(NotAssessed, match="carries is not stated"):
        steam(tmp_path, FOLLOWS.format("before"), before="")


def test_a_passage_on_the_live_side_of_a_partition_carries_live_steam(tmp_path: Path) -> None:
    files = {
        "steam-pipe pipe": FOLLOWS.format("before"),
        "steam-passage before": EXHAUST,
        "partition partition": 'live_side = "before"\n',
    }
    on = bench(tmp_path, files, "pipe")
    assert [one.value for one in steams_beside(on["pipe"], on.sheet)] == ["live steam"]


DUTY = """[cases.running]
[cases.running.temperatures]
steam-pipe = "120 °C"
{more}"""
BLOCK = 'material = "known-steel"\n[openings.in]\nat = "{}"\n[openings.out]\nat = "{}"\n'
ENDS = 'starts_at.part = "block"\nstarts_at.opening = "in"\n'
#: The steel grows by 11.5e-6/K at 20 °C and by 0.005e-6/K more for each kelvin, ± 0.3e-6/K: at 120 °C by 12.3e-6/K.
GREATEST = 12.3e-6


def moved(
    folder: Path,
    ends: str = ENDS,
    at: tuple[str, str] = ("1 m", "-0.5 m"),
    of_block: str = 'cylinder-block = "120 °C"\n',
    own: str = "",
) -> Bench:
    files = {
        "duty duty": DUTY.format(more=of_block),
        "cylinder-block block": BLOCK.format(*at),
        "steam-pipe pipe": 'material = "known-steel"\nanchor_distance = "2 m"\n' + ends,
        "lens-joint lens": 'of = "pipe"\n',
    }
    if own:
        files["duty own"] = '[cases.running]\n[cases.running.temperatures]\ncylinder-block = "120 °C"\n'
        files["cylinder-block block"] = 'duty = "own"\n' + BLOCK.format(*at)
    return bench(folder, files, "pipe", metals=True)


def by_blocks(on: Bench) -> float | None:
    found = movement_by_blocks(on["pipe"], on["duty"].cases["running"], on.sheet)
    return None if found is None else found.value


BOTH = ENDS + 'ends_at.part = "block"\nends_at.opening = "out"\n'


@pytest.mark.parametrize(
    ("ends", "at", "length"),
    [
        (ENDS, ("1 m", "-0.5 m"), 1.0),
        (BOTH, ("1 m", "-0.5 m"), 1.5),  # whatever their directions
        ('ends_at.part = "block"\nends_at.opening = "out"\n', ("1 m", "-0.5 m"), 0.5),
        ('starts_at.part = "block"\n', ("1 m", "1 m"), None),
        ("", ("1 m", "1 m"), None),
    ],
)
def test_openings_move_as_their_blocks_grow(
    tmp_path: Path, ends: str, at: tuple[str, str], length: float | None
) -> None:
    """100 K above 20 °C; the corner that the sheet stands on is one of 11.7 to 12.3e-6/K."""
    found = by_blocks(moved(tmp_path, ends, at))
    if length is None:
        assert found is None
        return
    assert found is not None
    assert length * 100 * 11.7e-6 - 1e-9 <= found <= length * 100 * GREATEST + 1e-9


def test_an_opening_without_a_place_does_not_move(tmp_path: Path) -> None:
    on = moved(tmp_path, BOTH)
    both = by_blocks(on)
    (tmp_path / "a").mkdir()
    files = {
        "duty duty": DUTY.format(more='cylinder-block = "120 °C"\n'),
        "cylinder-block block": 'material = "known-steel"\n[openings.in]\n[openings.out]\nat = "1 m"\n',
        "steam-pipe pipe": BOTH,
    }
    one = by_blocks(bench(tmp_path / "a", files, "pipe", metals=True))
    assert both is not None
    assert one == pytest.approx(both / 1.5)


def test_where_the_pipes_duty_has_no_temperature_the_blocks_own_has(tmp_path: Path) -> None:
    alone = by_blocks(moved(tmp_path))
    (tmp_path / "a").mkdir()
    by_own = by_blocks(moved(tmp_path / "a", of_block="", own="yes"))
    assert alone is not None
    assert by_own == pytest.approx(alone)
    (tmp_path / "b").mkdir()
    on = moved(tmp_path / "b", of_block="")
    with pytest.raises(NotAssessed, match="is not stated"):
        by_blocks(on)


@pytest.mark.parametrize(
    ("ends", "most"),
    [
        (ENDS + 'anchor_movement = "5 mm"\n', 5e-3),
        (ENDS + 'anchor_movement = "1 mm"\n', 1.2e-3),
        (BOTH, 1.8e-3),  # 1.5 m by 100 K: the blocks are at both ends
    ],
)
def test_anchors_move_as_stated_and_no_less_than_the_blocks(tmp_path: Path, ends: str, most: float) -> None:
    on = moved(tmp_path, ends)
    found = movement_of_anchors(on["pipe"], on["duty"].cases["running"], on.sheet)
    assert found == pytest.approx(most, rel=0.03)


def test_without_openings_the_movement_must_be_stated(tmp_path: Path) -> None:
    on = moved(tmp_path, 'anchor_movement = "1 mm"\n')
    assert movement_of_anchors(on["pipe"], on["duty"].cases["running"], on.sheet) == pytest.approx(1e-3)
    (tmp_path / "a").mkdir()
    bare = moved(tmp_path / "a", "")
    with pytest.raises(NotAssessed, match="anchor_movement is not stated"):
        movement_of_anchors(bare["pipe"], bare["duty"].cases["running"], bare.sheet)


def test_what_moves_an_end_that_stands_at_no_block_must_be_stated(tmp_path: Path) -> None:
    """One end goes with the block; the other, such as that at the boiler, with what nobody has drawn."""
    on = moved(tmp_path)
    with pytest.raises(NotAssessed, match="anchor_movement is not stated"):
        movement_of_anchors(on["pipe"], on["duty"].cases["running"], on.sheet)


def test_a_pipe_takes_up_its_growth_and_that_of_its_anchors(tmp_path: Path) -> None:
    """2 m and 1 m of the same steel by 100 K."""
    on = moved(tmp_path, ENDS + 'anchor_movement = "1 mm"\n')
    case = on["duty"].cases["running"]
    assert movement_of_pipe(on["pipe"], case, on.sheet) == pytest.approx(3.6e-3, rel=0.03)


@pytest.mark.parametrize(
    ("takes", "stated", "needed"),
    [
        ('takes_up_by = "lens joints"\n', "", 1.8e-3),  # 3.6 mm on 2 m
        ('takes_up_by = "lens joints"\n', 'swing = "1 °"\n', 0.0174533),
        ('takes_up_by = "lens joints"\n', 'swing = "0.05 °"\n', 1.8e-3),
        ('takes_up_by = "bends"\n', 'swing = "0.05 °"\n', 0.000872665),
        ("", 'swing = "0.05 °"\n', 0.000872665),
    ],
)
def test_lens_joints_swing_where_they_take_up_the_movement(
    tmp_path: Path, takes: str, stated: str, needed: float
) -> None:
    files = {
        "duty duty": DUTY.format(more='cylinder-block = "120 °C"\n'),
        "cylinder-block block": BLOCK.format("1 m", "1 m"),
        "steam-pipe pipe": 'material = "known-steel"\nanchor_distance = "2 m"\nanchor_movement = "1 mm"\n'
        + ENDS
        + takes,
        "lens-joint lens": 'of = "pipe"\n' + stated,
    }
    on = bench(tmp_path, files, "lens", metals=True)
    case = on["duty"].cases["running"]
    assert swing_of_lens(on["lens"], case, on.sheet) == pytest.approx(needed, rel=0.03)
    assert (swing_needed(on["lens"], case, on.sheet) is not None) == ("lens joints" in takes)


def test_only_openings_that_are_named_are_at_the_ends_of_a_pipe(tmp_path: Path) -> None:
    files = {
        "cylinder-block block": "[openings.in]\n",
        "cylinder-cover cover": "",
        "steam-pipe pipe": ENDS + 'ends_at.part = "cover"\n',
    }
    on = bench(tmp_path, files, "pipe")
    assert [block.id for _, block, _ in openings_of(on["pipe"], on.sheet)] == ["block"]
