"""Rooms and cut-outs of blocks alike, of which one states what another does not."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

RULE = "room.alike-on-both-sides"
ROOM = """
kind = "envelope"
id = "room-{0}"
around = "{0}"
cylinders = "outside"
[gaps.rod]
moving = "coupling rod"
[gaps.leading-wheel]
moving = "wheel"
[gaps.driving-wheel]
moving = "wheel"
[gaps.crosshead]
to = "crosshead-{0}"
"""
FACE = 'kind = "locating-face"\nid = "face-{0}"\nlocks = "{0}"\npad = "front"\nroom = "3 mm"\n'
CHAIN = 'kind = "dimension-chain"\nid = "chain-{0}"\ncloses = {{ of = "face-{0}", dimension = "room" }}\n'
#: A chain of which nothing says which size closes it, between a cut-out and its block.
BETWEEN = 'kind = "dimension-chain"\nid = "chain-{0}"\nchain.slot.of = "face-{0}"\nchain.pad.of = "{0}"\n'
SIDES = ("left", "right")
FILES = {
    "left.toml": 'kind = "cylinder-block"\nid = "left"\nhand = "left"\n[pads.front]\n[pads.back]\n',
    "right.toml": 'kind = "cylinder-block"\nid = "right"\nmirror_of = "left"\n',
    **{f"room-{side}.toml": ROOM.format(side) for side in SIDES},
    **{f"crosshead-{side}.toml": f'kind = "crosshead"\nid = "crosshead-{side}"\n' for side in SIDES},
    **{f"face-{side}.toml": FACE.format(side) for side in SIDES},
    **{f"chain-{side}.toml": CHAIN.format(side) for side in SIDES},
}
ALONE = {**FILES, "right.toml": 'kind = "cylinder-block"\nid = "right"\n[pads.front]\n[pads.back]\n'}
FINE, ASKED, NEITHER = ("conforms", None), ("finding", Grade.QUERY), ("not applicable", None)


def outcome(workshop: DesignFolder, files: dict[str, str], part: str) -> tuple[str, Grade | None]:
    found = workshop.write(files).only(RULE, part)
    return found.outcome, found.grade


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize(
    ("old", "new", "here", "there"),
    [
        ("", "", FINE, FINE),
        ('[gaps.rod]\nmoving = "coupling rod"\n', "", ASKED, FINE),
        ('[gaps.driving-wheel]\nmoving = "wheel"\n', "", ASKED, FINE),
        ("[gaps.driving-wheel]", "[gaps.trailing-wheel]", FINE, FINE),  # two wheels on either side
        ('to = "crosshead-{0}"', 'moving = "crosshead"', FINE, FINE),
        ('[gaps.crosshead]\nto = "crosshead-{0}"\n', "", ASKED, FINE),
        ("[gaps.rod]\n", '[gaps.brake]\nmoving = "brake gear"\n[gaps.rod]\n', FINE, ASKED),
        ("[gaps.rod]\n", '[gaps.unsaid]\nsize = "30 mm"\n[gaps.rod]\n', FINE, FINE),
        ('cylinders = "outside"', 'cylinders = "inside"', NEITHER, NEITHER),
        ('cylinders = "outside"\n', "", NEITHER, NEITHER),
    ],
)
def test_each_gap_of_a_room_is_in_that_of_the_other_side(
    workshop: DesignFolder,
    side: str,
    old: str,
    new: str,
    here: tuple[str, Grade | None],
    there: tuple[str, Grade | None],
) -> None:
    text = changed(ROOM, (old, new)) if old else ROOM
    files = {**FILES, f"room-{side}.toml": text.format(side)}
    assert outcome(workshop, files, f"room-{side}") == here
    (other,) = {*SIDES} - {side}
    assert outcome(workshop, files, f"room-{other}") == there


#: A wheel and a coupling rod whose side play is stated.
PLAYING = (
    ('moving = "coupling rod"\n', 'moving = "coupling rod"\nside_play = "{play}"\n'),
    ("[gaps.leading-wheel]\n", '[gaps.leading-wheel]\nside_play = "{play}"\n'),
)


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("of", PLAYING)
@pytest.mark.parametrize(
    ("play", "wanted"),
    [("12.99 mm", FINE), ("13.01 mm", ASKED), ("11.01 mm", FINE), ("10.99 mm", ASKED), ("12.5 mm ±1", FINE)],
)
def test_what_goes_with_one_axle_has_one_side_play(
    workshop: DesignFolder, side: str, of: tuple[str, str], play: str, wanted: tuple[str, Grade | None]
) -> None:
    """12 mm on the other side, and 1 mm by which they may differ."""
    (other,) = {*SIDES} - {side}
    text = {
        one: changed(ROOM, (of[0], of[1].replace("{play}", size))).format(one)
        for one, size in ((side, play), (other, "12 mm"))
    }
    files = {**FILES, **{f"room-{one}.toml": said for one, said in text.items()}}
    assert outcome(workshop, files, f"room-{side}") == wanted
    assert outcome(workshop, files, f"room-{other}") == wanted


@pytest.mark.parametrize(
    ("moving", "name", "wanted"),
    [("coupling rod", "side-rod", ASKED), ("brake gear", "rod", FINE), ("connecting rod", "rod", FINE)],
)
def test_whose_side_play_is_that_of_an_axle(
    workshop: DesignFolder, moving: str, name: str, wanted: tuple[str, Grade | None]
) -> None:
    """The only coupling rod of either side, whatever its gap is called; what hangs on no axle has its own."""
    text = changed(ROOM, ('moving = "coupling rod"\n', f'moving = "{moving}"\nside_play = "{{play}}"\n'))
    left = text.replace("{play}", "12 mm").format("left")
    right = text.replace("{play}", "2 mm").replace("[gaps.rod]", f"[gaps.{name}]").format("right")
    files = {**FILES, "room-left.toml": left, "room-right.toml": right}
    assert outcome(workshop, files, "room-left") == wanted


def test_a_finding_names_both_rooms_and_the_gap(workshop: DesignFolder) -> None:
    bare = changed(ROOM, ('[gaps.rod]\nmoving = "coupling rod"\n', "")).format("right")
    found = workshop.write({**FILES, "room-right.toml": bare}).only(RULE, "room-right")
    assert "gaps to a coupling rod: rod in room-left, none in room-right" in found.says


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize(
    ("chain", "here", "there"),
    [
        (CHAIN, FINE, FINE),
        (None, ASKED, NEITHER),
        (
            CHAIN.replace('of = "face-{0}"', 'of = "crosshead-{0}"') + '[chain.slot]\nof = "face-{0}"\n',
            ASKED,
            NEITHER,
        ),
        (CHAIN.replace('of = "face-{0}", ', "") + '[chain.slot]\nof = "face-{0}"\n', ASKED, NEITHER),
        (BETWEEN, FINE, FINE),
        (BETWEEN + 'closes.of = "crosshead-{0}"\n', ASKED, NEITHER),
    ],
)
def test_each_chain_at_a_cut_out_is_at_that_of_the_other_side(
    workshop: DesignFolder,
    side: str,
    chain: str | None,
    here: tuple[str, Grade | None],
    there: tuple[str, Grade | None],
) -> None:
    """A chain that closes elsewhere, or names the cut-out only as a link, closes no room there."""
    files = {name: text for name, text in FILES.items() if name != f"chain-{side}.toml"}
    if chain is not None:
        files[f"chain-{side}.toml"] = chain.format(side)
    assert outcome(workshop, files, f"face-{side}") == here
    (other,) = {*SIDES} - {side}
    assert outcome(workshop, files, f"face-{other}") == there


def test_a_cut_out_of_another_pad_asks_for_nothing(workshop: DesignFolder) -> None:
    back = FACE.replace('"front"', '"back"').format("right")
    files = {name: text for name, text in FILES.items() if name != "chain-right.toml"}
    assert outcome(workshop, {**files, "face-right.toml": back}, "face-right") == NEITHER


@pytest.mark.parametrize("part", ["room-right", "face-right"])
def test_a_block_that_is_like_no_other_is_left_out(workshop: DesignFolder, part: str) -> None:
    bare = changed(ROOM, ('[gaps.rod]\nmoving = "coupling rod"\n', "")).format("right")
    files = {name: text for name, text in ALONE.items() if name != "chain-right.toml"}
    assert outcome(workshop, {**files, "room-right.toml": bare}, part) == NEITHER


def test_a_room_round_another_part_is_left_out(workshop: DesignFolder) -> None:
    text = changed(ROOM.format("left"), ('around = "left"', 'around = "crosshead-left"'))
    assert outcome(workshop, {**FILES, "room-left.toml": text}, "room-left") == NEITHER
