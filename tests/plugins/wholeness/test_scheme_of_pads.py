"""What the pads of a block take on each frame: each load from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import SETTINGS, DesignFolder

RULE = "frame.scheme-of-pads"
FOR_REVIEW = SETTINGS.replace("draft", "for-review")
BOTH, WEIGHT, ACROSS, NONE = ('["crosswise thrust", "weight"]', '["weight"]', '["crosswise thrust"]', "[]")


def block(scheme: str = "", **pads: str) -> str:
    tables = "".join(f"[pads.{name}]\n{lines}\n" for name, lines in pads.items())
    return f'kind = "cylinder-block"\n{scheme}\n{tables}'


def bolts(pad: str, other: str) -> str:
    return f'kind = "frame-fastening"\nholds = "block"\npad = "{pad}"\nother_pad = "{other}"\n'


@pytest.mark.parametrize(
    ("front", "back", "lacks"),
    [
        (BOTH, NONE, ""),
        (WEIGHT, ACROSS, ""),
        (WEIGHT, WEIGHT, "crosswise thrust at front and back wants a pad that takes it"),
        (ACROSS, NONE, "weight at front and back wants a pad that takes it"),
    ],
)
def test_each_load_has_its_taker(workshop: DesignFolder, front: str, back: str, lacks: str) -> None:
    files = {"block.toml": block(front=f"takes = {front}", back=f"takes = {back}")}
    check = workshop.write(files, settings=FOR_REVIEW).only(RULE)
    assert (check.outcome, check.grade) == (("finding", Grade.HOLD) if lacks else ("conforms", None))
    assert lacks in check.says


@pytest.mark.parametrize(("left", "outcome"), [(BOTH, "conforms"), (NONE, "finding")])
def test_each_frame_by_itself(workshop: DesignFolder, left: str, outcome: str) -> None:
    """Pads a and b name each other, and so do c and d: what takes the weight of one frame takes none of the other."""
    files = {
        "block.toml": block(a=f"takes = {BOTH}", b="", c=f"takes = {left}", d=""),
        "one.toml": bolts("a", "b"),
        "two.toml": bolts("c", "d"),
    }
    check = workshop.write(files, settings=FOR_REVIEW).only(RULE)
    assert check.outcome == outcome
    assert outcome == "conforms" or "at c and d" in check.says


@pytest.mark.parametrize(
    ("located", "outcome"), [("middle", "conforms"), ("front", "finding"), ("back", "finding")]
)
def test_a_block_located_at_the_middle_slides_on_both_sides(
    workshop: DesignFolder, located: str, outcome: str
) -> None:
    at = {"front": "500 mm", "middle": "0 mm", "back": "-500 mm"}
    pads = {
        name: f'at = "{x}"\nlocates = {str(name == located).lower()}\ntakes = {BOTH}'
        for name, x in at.items()
    }
    middle = block('scheme = "located at the middle"', **pads)
    assert workshop.write({"block.toml": middle}, settings=FOR_REVIEW).only(RULE).outcome == outcome
    assert workshop.write({"block.toml": block(**pads)}, settings=FOR_REVIEW).only(RULE).outcome == "conforms"


def test_a_draft_lists_it(workshop: DesignFolder) -> None:
    check = workshop.write({"block.toml": block(front="takes = []")}).only(RULE)
    assert "2 still to be drawn" in check.says
