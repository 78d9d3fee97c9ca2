"""The block on its frame: each agreement from both sides, and the hold rules on what is worked."""

from __future__ import annotations

import math

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.joints.test_frames import fastened

HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)
#: A pad of 250 × 280 mm with 30 holes of 25 mm: 70 000 - 14 726 = 55 274 mm².
_SIDES = 'width = "250 mm"\nheight = "280 mm"\narea = "62000 mm²"'
_FACE = 250 * 280 - 30 * math.pi / 4 * 25**2


def judged(workshop: DesignFolder, rule: str, component: str) -> tuple[str, Grade | None]:
    found = workshop.only(rule, component)
    return found.outcome, found.grade


@pytest.mark.parametrize(("area", "wanted"), [("55273 mm²", FINE), ("55275 mm²", HOLD), ("620000 mm²", HOLD)])
def test_the_face_of_a_pad_is_within_its_sides(
    workshop: DesignFolder, area: str, wanted: tuple[str, Grade | None]
) -> None:
    assert pytest.approx(55274, abs=0.5) == _FACE
    fastened(workshop).replace("block.toml", 'area = "62000 mm²"', _SIDES.replace("62000 mm²", area))
    assert judged(workshop, "pad.area-of-sides", "block") == wanted


@pytest.mark.parametrize("area", ["620000 mm²", "62000 mm²"])
def test_a_larger_face_eases_no_pressure(workshop: DesignFolder, area: str) -> None:
    """Pressed on 55 274 mm² whatever is stated: 30 × 130 + 263.4 = 4163 kN, 75.3 MPa."""
    fastened(workshop).replace("block.toml", 'area = "62000 mm²"', _SIDES.replace("62000 mm²", area))
    thrust = math.pi / 4 * 500**2 * 2 + 3 * 9.80665 * 2000
    found = workshop.only("frame.block-couple", "fastening")
    assert on_sheet(found, "q") == pytest.approx((30 * 130e3 + thrust * 350 / 600) / _FACE * 1e6, rel=1e-6)


@pytest.mark.parametrize(("height", "outcome"), [("266 mm", "conforms"), ("264 mm", "finding")])
def test_the_sides_alone_give_the_face(workshop: DesignFolder, height: str, outcome: str) -> None:
    """At 80 MPa 4163 kN want 52 043 mm²: (52 043 + 14 726)/252 = 264.96 mm."""
    sides = f'width = "252 mm"\nheight = "{height}"'
    fastened(workshop).replace("block.toml", 'area = "62000 mm²"', sides)
    assert pytest.approx(264.96, abs=0.01) == (52043 + 14726) / 252
    assert workshop.only("frame.block-couple", "fastening").outcome == outcome
