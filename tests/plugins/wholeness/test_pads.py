"""Pads of a block on the frames: each with its cut-out and its bolts, or closed on purpose."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

BLOCK = 'kind = "cylinder-block"\n[pads.front]\n[pads.back]'
#: What a pad wants, with the rule that asks for it and the link by which it says where it belongs.
PLACES = [
    ("pad.one-cut-out", "locating-face", "locating face", "locks"),
    ("pad.one-fastening", "frame-fastening", "frame fastening", "holds"),
]


@pytest.mark.parametrize(("rule", "kind", "wants", "link"), PLACES)
@pytest.mark.parametrize(
    ("pads", "says"),
    [
        (["front", "back"], ""),
        (["front"], "pad back wants a {}: none is there"),
        (["back"], "pad front wants a {}: none is there"),
        (["front", "back", "back"], "pad back is filled twice ({}): one-1 (one-1.toml), one-2 (one-2.toml)"),
    ],
)
def test_each_pad_has_its_cut_out_and_its_bolts(
    workshop: DesignFolder, rule: str, kind: str, wants: str, link: str, pads: list[str], says: str
) -> None:
    parts = {f"one-{n}": f'kind = "{kind}"\n{link} = "block"\npad = "{pad}"' for n, pad in enumerate(pads)}
    assert told(workshop, {"block": BLOCK, **parts}, rule, "block") == says.format(wants)


@pytest.mark.parametrize(("rule", "kind", "link"), [(rule, kind, link) for rule, kind, _, link in PLACES])
def test_a_pad_that_is_closed_takes_nothing(workshop: DesignFolder, rule: str, kind: str, link: str) -> None:
    closed = '[pads.front]\nblanked = true\nblanked_by = "plug"\n[notes]\nfront = "of an older frame"'
    parts = {"block": f'kind = "cylinder-block"\n{closed}', "plug": 'kind = "retaining-ring"'}
    assert told(workshop, parts, rule, "block") == ""
    parts["one"] = f'kind = "{kind}"\n{link} = "block"\npad = "front"'
    assert told(workshop, parts, rule, "block") == "pad front: it is blanked, and one is in it"
