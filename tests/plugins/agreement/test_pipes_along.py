"""envelope.along-by-rods: the points of a pipe against the opening of its block, of cocks and cam boxes, by hand.

Covers at 4000 and 3000 mm: their middle at 3500. The faces are 600 mm ahead and 200 mm behind the fixed point, their
middle 200 mm ahead of it, and the opening 300: it stands at 3600 mm. A pipe of 2000 mm between anchors 1600 mm apart
reaches 1800 mm from either; with 150 mm for flange and lagging from 1650 to 5550 mm.
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

RULE = "envelope.along-by-rods"
FINE, HOLD = ("conforms", None), ("finding", Grade.HOLD)
COVER = 'kind = "cylinder-cover"\nid = "cover-{0}"\ncloses = "block"\nof_end = "{0}"\n'
FILES = {
    "block.toml": """
kind = "cylinder-block"
id = "block"
[bores.main]
diameter = "500 mm"
[openings.chest]
at = "300 mm"
[ends.front]
side = "front"
face_at = "600 mm"
[ends.back]
side = "back"
face_at = "-200 mm"
""",
    "front.toml": COVER.format("front"),
    "back.toml": COVER.format("back"),
    "pipe.toml": """
kind = "steam-pipe"
id = "pipe"
length = "2000 mm"
anchor_distance = "1600 mm"
[ends_at]
part = "block"
opening = "chest"
""",
    "envelope.toml": """
kind = "envelope"
id = "envelope"
around = "block"
[points.front]
of = "cover-front"
along = "4000 mm"
[points.back]
of = "cover-back"
along = "3000 mm"
[points.pipe]
of = "pipe"
along = "4610 mm"
""",
}


def judged(
    workshop: DesignFolder, *changes: tuple[str, str, str], more: Mapping[str, str] | None = None
) -> tuple[str, Grade | None]:
    files = {**FILES, **(more or {})}
    for file, old, new in changes:
        files[file] = changed(files[file], (old, new))
    check = workshop.write(files).only(RULE)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("along", "wanted"),
    [
        ("5549 mm", FINE),
        ("5551 mm", HOLD),
        ("1651 mm", FINE),
        ("1649 mm", HOLD),
        ("-4610 mm", HOLD),
    ],
)
def test_a_point_of_a_pipe_is_within_its_reach(
    workshop: DesignFolder, along: str, wanted: tuple[str, Grade | None]
) -> None:
    assert judged(workshop, ("envelope.toml", '"4610 mm"', f'"{along}"')) == wanted


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("block.toml", 'at = "300 mm"\n', ""),
        ("pipe.toml", 'length = "2000 mm"\n', ""),
        ("pipe.toml", 'anchor_distance = "1600 mm"\n', ""),
        ("pipe.toml", 'opening = "chest"\n', ""),
    ],
)
def test_where_opening_or_pipe_is_not_placed_no_reach_is_known(
    workshop: DesignFolder, file: str, old: str, new: str
) -> None:
    assert judged(workshop, ("envelope.toml", '"4610 mm"', '"-4610 mm"'), (file, old, new)) == FINE


COCK = '[points.cock]\ncock_of = "{}"\nalong = "{}"\n'
BOX = '[points.box]\nof = "box"\nalong = "{}"\n'


@pytest.mark.parametrize(
    ("end", "along", "wanted"),
    [
        ("front", "3401 mm", FINE),  # the middle of both covers is at 3500 mm, and may be off by 100 mm
        ("front", "3399 mm", HOLD),
        ("back", "3599 mm", FINE),
        ("back", "3601 mm", HOLD),
    ],
)
def test_a_drain_cock_and_a_cam_box_are_in_the_half_of_their_end(
    workshop: DesignFolder, end: str, along: str, wanted: tuple[str, Grade | None]
) -> None:
    point = ("envelope.toml", "[points.pipe]\n", COCK.format(end, along) + "[points.pipe]\n")
    assert judged(workshop, point) == wanted
    box = f'kind = "cam-box"\nid = "box"\nmounted_on = "block"\nof_end = "{end}"\n'
    point = ("envelope.toml", "[points.pipe]\n", BOX.format(along) + "[points.pipe]\n")
    assert judged(workshop, point, more={"box.toml": box}) == wanted
    nowhere = box.replace(f'of_end = "{end}"\n', "")
    assert judged(workshop, point, more={"box.toml": nowhere}) == FINE
