"""block.ends-clear-of-frame by hand: an axis 410 mm from the frame and a rim of 804 mm leave 8 mm, 5 mm are wanted."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed, expect_not_assessed, found

RULE = "block.ends-clear-of-frame"
BLOCK = """
kind = "cylinder-block"
id = "block"
[bores.main]
axis_from_frame = "410 mm"
[ends.front]
side = "front"
face_diameter = "804 mm"
[ends.back]
side = "back"
face_diameter = "754 mm"
"""
COVER = """
kind = "cylinder-cover"
id = "cover"
closes = "block"
of_end = "front"
outside_diameter = "800 mm"
"""
ENGINE = """
kind = "engine"
id = "engine"
[cranks.left]
block = "block"
axis_from_centre = "880 mm"
frame_from_centre = "470 mm"
"""


def drawn(part: str = "", *changes: tuple[str, str]) -> dict[str, str]:
    made = {"block": BLOCK, "cover": COVER, "engine": ENGINE}
    if part:
        made[part] = changed(made[part], *changes)
    return {f"{name}.toml": text for name, text in made.items()}


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("block", '"804 mm"', '"809.92 mm"', "conforms"),  # 410 − 404.96 = 5.04 mm
        ("block", '"804 mm"', '"810.08 mm"', "finding"),  # 4.96 mm
        ("block", '"754 mm"', '"809.92 mm"', "conforms"),
        ("block", '"754 mm"', '"810.08 mm"', "finding"),
        ("cover", '"800 mm"', '"809.92 mm"', "conforms"),
        ("cover", '"800 mm"', '"810.08 mm"', "finding"),
        ("block", '"410 mm"', '"407.04 mm"', "conforms"),
        ("block", '"410 mm"', '"406.96 mm"', "finding"),
        ("engine", '"880 mm"', '"877.04 mm"', "conforms"),  # 407.04 mm by the rods, whatever the block states
        ("engine", '"880 mm"', '"876.96 mm"', "finding"),
        (
            "engine",
            '"880 mm"',
            '"0 mm"',
            "conforms",
        ),  # between the frames: 470 mm, so what the block states is less
    ],
)
def test_the_room_beside_the_frame(
    workshop: DesignFolder, part: str, old: str, new: str, outcome: str
) -> None:
    assert workshop.write(drawn(part, (old, new))).only(RULE).outcome == outcome


def test_how_much_is_left_and_at_which_end(workshop: DesignFolder) -> None:
    """410 − 850/2 = −15 mm."""
    check = workshop.write(drawn("cover", ('"800 mm"', '"850 mm"'))).only(RULE)
    assert found(check) == pytest.approx(-0.015)
    assert "end front" in check.actual


def test_an_end_without_a_cover_goes_by_its_face(workshop: DesignFolder) -> None:
    made = drawn("block", ('"804 mm"', '"810.08 mm"'))
    del made["cover.toml"]
    assert workshop.write(made).only(RULE).outcome == "finding"


def test_each_bore_has_its_own_distance(workshop: DesignFolder) -> None:
    """A second bore 380 mm from the frame, under a face of 754 mm: 3 mm."""
    second = (
        'axis_from_frame = "410 mm"',
        'axis_from_frame = "410 mm"\n[bores.inner]\naxis_from_frame = "380 mm"',
    )
    ends = (
        ('side = "front"', 'side = "front"\nof_bore = "main"'),
        ('side = "back"', 'side = "back"\nof_bore = "inner"'),
    )
    made = drawn("block", second, *ends)
    del made["engine.toml"]
    check = workshop.write(made).only(RULE)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(0.003)


@pytest.mark.parametrize(
    ("part", "old", "missing"),
    [
        ("block", 'axis_from_frame = "410 mm"\n', "axis_from_frame"),
        ("cover", 'outside_diameter = "800 mm"\n', "outside_diameter"),
        ("block", 'face_diameter = "754 mm"\n', "face_diameter"),
        ("block", BLOCK[BLOCK.index("[ends.front]") :], "ends"),
    ],
)
def test_what_is_missing_is_asked(workshop: DesignFolder, part: str, old: str, missing: str) -> None:
    made = drawn(part, (old, ""))
    if missing == "ends":
        del made["cover.toml"]
    expect_not_assessed(workshop.write(made).only(RULE), missing)
