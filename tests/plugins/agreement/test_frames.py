"""The block on its frame: each agreement from both sides, and the hold rules on what is worked."""

from __future__ import annotations

import math

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet
from tests.plugins.joints.test_frames import FACE, FASTENING, fastened

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


#: A second bore of 300 mm, whose axis is 500 mm from the frame.
_INSIDE = '[bores.inside]\naxis_from_frame = "500 mm"\n[pads.back]'
_INSIDE_LINER = """
kind = "cylinder-liner"
id = "inside-liner"
housed_in = "block"
in_bore = "inside"
bore = "300 mm"
"""
#: 20 bar on 500 and on 300 mm, and 3 × 9.80665 × 2000 N.
_MAIN, _SECOND, _JOLT = math.pi / 4 * 500**2 * 2, math.pi / 4 * 300**2 * 2, 3 * 9.80665 * 2000


def of_two(workshop: DesignFolder) -> DesignFolder:
    """A block of two bores on one frame."""
    fastened(workshop).replace("block.toml", "[pads.back]", _INSIDE)
    (workshop.root / "inside.toml").write_text(_INSIDE_LINER, encoding="utf-8")
    return workshop


def on_two_frames(workshop: DesignFolder, bore: str, locates: str = "true") -> DesignFolder:
    """The same with another pad, of another frame, whose fastening names a bore."""
    pad = f'[pads.beyond]\nat = "0 mm"\nlocates = {locates}\narea = "62000 mm²"\n[pads.front]'
    of_two(workshop).replace("block.toml", "[pads.front]", pad)
    other = changed(
        FASTENING, ('id = "fastening"', 'id = "other"'), ('pad = "back"', 'pad = "beyond"'), ("main", bore)
    )
    (workshop.root / "other.toml").write_text(other, encoding="utf-8")
    return workshop


def test_all_bores_thrust_on_the_frame(workshop: DesignFolder) -> None:
    """392.7 + 141.4 + 58.8 kN; 392.7 × 0.35 + (141.4 + 58.8) × 0.5 = 237.5 kN·m, over 0.6 m and 30 bolts."""
    found = of_two(workshop).only("frame.block-slip", "fastening")
    assert on_sheet(found, "F_T") == pytest.approx(_MAIN + _SECOND + _JOLT, rel=1e-9)
    lift = (_MAIN * 0.35 + (_SECOND + _JOLT) * 0.5) / 0.6 / 30
    assert on_sheet(found, "P") == pytest.approx(lift, rel=1e-9)


def test_a_fastening_that_names_one_bore_of_two(workshop: DesignFolder) -> None:
    assert judged(fastened(workshop), "frame.thrust-of-all", "fastening") == FINE
    assert judged(of_two(workshop), "frame.thrust-of-all", "fastening") == HOLD
    workshop.replace("fastening.toml", 'bore = "main"\n', "")
    assert workshop.only("frame.thrust-of-all", "fastening").outcome == "not applicable"


@pytest.mark.parametrize(
    ("bore", "locates", "wanted", "thrust"),
    [
        ("inside", "true", FINE, _MAIN + _JOLT),
        ("main", "true", HOLD, _MAIN + _SECOND + _JOLT),  # nobody takes the inside one
        ("inside", "false", HOLD, _MAIN + _SECOND + _JOLT),  # a pad that slides takes no thrust
    ],
)
def test_another_frame_takes_the_bore_that_its_pad_names(
    workshop: DesignFolder, bore: str, locates: str, wanted: tuple[str, Grade | None], thrust: float
) -> None:
    on_two_frames(workshop, bore, locates)
    workshop.replace("other.toml", 'friction = "0.7"', 'friction = "0.7"\ngreatest_friction = "0.1"')
    assert judged(workshop, "frame.thrust-of-all", "fastening") == wanted
    face = FACE.format(pad="beyond")
    (workshop.root / "face-beyond.toml").write_text(face, encoding="utf-8")
    found = workshop.only("frame.block-slip", "fastening")
    assert on_sheet(found, "F_T") == pytest.approx(thrust, rel=1e-9)


def test_a_bore_without_a_liner_thrusts_at_its_last(workshop: DesignFolder) -> None:
    """20 bar on 520 mm: 424.7 kN."""
    fastened(workshop).replace(
        "block.toml", "[pads.back]", 'lined = false\ndiameter = "500 mm"\nlast_bore = "520 mm"\n[pads.back]'
    )
    (workshop.root / "liner.toml").unlink()
    found = workshop.only("frame.block-slip", "fastening")
    assert on_sheet(found, "F_s") == pytest.approx(math.pi / 4 * 520**2 * 2, rel=1e-9)
