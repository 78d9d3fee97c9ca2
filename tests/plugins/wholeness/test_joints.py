"""A bolted joint: the part that it holds, the part under it, its seal, and the ring of a lens joint, in words."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

STUDS = 'kind = "bolted-joint"\nholds = "flange"\nscrewed_into = "block"\nseal = "ground face"'
LENS = STUDS.replace("ground face", "lens ring")
PARTS = {
    "block": 'kind = "cylinder-block"',
    "flange": 'kind = "pipe-flange"\nof = "pipe"',
    "pipe": 'kind = "steam-pipe"',
    "cover": 'kind = "cylinder-cover"',
    "lid": 'kind = "chamber-cover"',
    "gland": 'kind = "gland"',
    "cambox": 'kind = "cam-box"',
}


@pytest.mark.parametrize(
    ("studs", "says"),
    [
        (STUDS, ""),
        (STUDS.replace("screwed_into", "bolted_to"), ""),
        (STUDS.replace('holds = "flange"\n', ""), "studs wants a part that it holds: none is there"),
        (STUDS.replace('screwed_into = "block"\n', ""), "studs wants a part under it: none is there"),
        (STUDS.replace('\nseal = "ground face"', ""), "studs wants a seal: none is there"),
        (
            STUDS + '\nbolted_to = "pipe"',
            "studs is filled twice (part under it): block (block.toml), pipe (pipe.toml)",
        ),
        (STUDS.replace('"block"', '"flange"'), "studs: flange is held, and is the part under it too"),
        (
            STUDS.replace('screwed_into = "block"', 'bolted_to = "flange"'),
            "studs: flange is held, and is the part under it too",
        ),
        # of a cover, a gland or a cam box that is held on itself its own rule tells
        *(
            (STUDS.replace('"flange"', f'"{held}"').replace('"block"', f'"{held}"'), "")
            for held in ("cover", "lid", "gland", "cambox")
        ),
    ],
)
def test_a_joint_names_what_it_joins(workshop: DesignFolder, studs: str, says: str) -> None:
    assert told(workshop, {**PARTS, "studs": studs}, "joint.whole", "studs") == says


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, "studs wants a lens joint: none is there"),
        ({"lens": 'kind = "lens-joint"\nof = "flange"'}, ""),
        ({"lens": 'kind = "lens-joint"\nof = "block"'}, ""),
        ({"lens": 'kind = "lens-joint"\nof = "pipe"'}, "studs wants a lens joint: none is there"),
        (
            {"lens": 'kind = "lens-joint"\nof = "block"', "second": 'kind = "lens-joint"\nof = "flange"'},
            "studs is filled twice (lens joint): second (second.toml), lens (lens.toml)",
        ),
        # the ring that is held, and belongs to the part under it, is one
        (
            {"lens": 'kind = "lens-joint"\nof = "block"', "studs": LENS.replace('"flange"', '"lens"')},
            "",
        ),
        ({"lens": 'kind = "lens-joint"', "studs": LENS.replace('"block"', '"lens"')}, ""),
        ({"lens": 'kind = "lens-joint"\nof = "pipe"', "studs": LENS.replace('"flange"', '"lens"')}, ""),
    ],
)
def test_a_lens_joint_has_one_ring(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, "studs": LENS, **parts}, "joint.whole", "studs") == says
