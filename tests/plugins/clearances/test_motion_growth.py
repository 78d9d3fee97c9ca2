"""envelope.motion-clearance counts no less growth towards the rods than over the back cover, of 60 mm, by hand."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.clearances.test_motion_beside import FILES, FINE, PART, check, judged

HOT = {"duty.toml": FILES["duty.toml"].replace("20 °C", "220 °C")}


def grows(moving: str, length: str) -> tuple[str, str, str]:
    """The gap to what moves, with a length that grows into it."""
    gap = FILES["envelope.toml"].split(f'moving = "{moving}"')[1]
    old = f'moving = "{moving}"' + gap.split("[gaps.")[0]
    return "envelope.toml", old, old.replace('growth_length = "600 mm"', f'growth_length = "{length}"')


@pytest.mark.parametrize("moving", ["connecting rod", "crosshead"])
@pytest.mark.parametrize(("length", "wanted"), [("60.5 mm", FINE), ("59.5 mm", PART), ("0 mm", PART)])
def test_the_back_cover_grows_towards_its_rods(
    workshop: DesignFolder, moving: str, length: str, wanted: tuple[str, Grade | None]
) -> None:
    assert judged(workshop, grows(moving, length)) == wanted


def test_beside_a_wheel_may_be_where_the_block_is_held(workshop: DesignFolder) -> None:
    assert judged(workshop, grows("wheel", "0 mm")) == FINE


def test_what_is_left_is_worked_with_the_thickness_of_the_cover(workshop: DesignFolder) -> None:
    """Hot, a gap that counts nothing grows as one that counts 60 mm, a tenth of what it does over 600 mm."""
    none, all_of_it = (check(workshop, grows("connecting rod", one), files=HOT) for one in ("0 mm", "600 mm"))
    assert on_sheet(none, "g rod") == pytest.approx(on_sheet(all_of_it, "g rod") / 10, rel=0.06)


def test_without_a_back_cover_the_length_is_as_stated(workshop: DesignFolder) -> None:
    no_thickness = ("back.toml", 'thickness = "60 mm"\n', "")
    assert judged(workshop, no_thickness, grows("connecting rod", "0 mm")) == FINE
