"""frame.bolts-let-it-grow, worked by hand on the bench of test_pads.

The middle of the sliding pad is 620 mm from the fixed point. Block at 220 °C, frame at 70 °C: 620 mm × (12.8e-6 × 200 −
11.45e-6 × 50) = 1.23225 mm, so that a bolt of 30 mm wants a hole above 32.4645 mm.
"""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, found
from tests.plugins.fits.bench import WITH_METALS
from tests.plugins.fits.test_pads import write

RULE = "frame.bolts-let-it-grow"
BOLTS = """
kind = "frame-fastening"
id = "bolts-{name}"
holds = "block"
pad = "{pad}"
hole = "{hole}"
shank = "{shank}"
"""


def bolted(
    workshop: DesignFolder, hole: str = "35 mm", shank: str = "30 mm", pad: str = "front", name: str = "one"
) -> DesignFolder:
    text = BOLTS.format(name=name, pad=pad, hole=hole, shank=shank)
    return workshop.write({f"bolts-{name}.toml": text}, settings=WITH_METALS)


@pytest.mark.parametrize(
    ("hole", "shank", "outcome"),
    [
        ("32.466 mm", "30 mm", "conforms"),
        ("32.464 mm", "30 mm", "finding"),
        ("33 mm +0.2/-0.534", "30 mm", "conforms"),  # 32.466 mm at the least
        ("33 mm +0.2/-0.536", "30 mm", "finding"),
        ("33 mm", "30.3 mm +0.234/0", "conforms"),  # 30.534 mm at the most
        ("33 mm", "30.3 mm +0.236/0", "finding"),
        ("31 mm", "30 mm", "finding"),
    ],
)
def test_the_block_grows_past_its_bolts(workshop: DesignFolder, hole: str, shank: str, outcome: str) -> None:
    write(workshop, frame="70 °C")
    check = bolted(workshop, hole, shank).only(RULE, "face-front")
    assert check.outcome == outcome
    assert check.grade is None or check.grade.word == "nonconformity"


def test_what_is_left_of_the_room_by_hand(workshop: DesignFolder) -> None:
    """(35 − 30)/2 − 1.23225 = 1.26775 mm."""
    write(workshop, frame="70 °C")
    assert found(bolted(workshop).only(RULE, "face-front")) == pytest.approx(1.26775e-3, rel=1e-6)


def test_each_fastening_of_the_pad_is_judged_and_no_other(workshop: DesignFolder) -> None:
    write(workshop, frame="70 °C")
    bolted(workshop, pad="back", hole="30 mm", name="back")
    assert bolted(workshop).only(RULE, "face-front").outcome == "conforms"
    assert bolted(workshop, hole="32 mm", name="two").only(RULE, "face-front").outcome == "finding"


def test_the_bolts_of_a_pad_that_locates_need_no_room(workshop: DesignFolder) -> None:
    write(workshop)
    assert bolted(workshop).only(RULE, "face-back").outcome == "not applicable"


def test_a_pad_whose_bolts_are_not_drawn_is_not_assessed(workshop: DesignFolder) -> None:
    check = write(workshop).only(RULE, "face-front")
    assert check.outcome == "not assessed"
    assert check.says == "no fastening of pad front of block is stated"


@pytest.mark.parametrize("line", ['hole = "35 mm"\n', 'shank = "30 mm"\n'])
def test_hole_and_shank_must_be_stated(workshop: DesignFolder, line: str) -> None:
    write(workshop)
    bolted(workshop)
    file = workshop.root / "bolts-one.toml"
    file.write_text(file.read_text(encoding="utf-8").replace(line, ""), encoding="utf-8")
    check = workshop.only(RULE, "face-front")
    assert check.outcome == "not assessed"
    assert f"{line.split()[0]} is not stated" in check.says
