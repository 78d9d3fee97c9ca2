"""The hole of a cover over a valve against the spindle that goes through it, from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

HOLE = "cover.hole-for-spindle"
FILES = {
    "lid.toml": 'kind = "chamber-cover"\nid = "lid"\nover = "valve"\ncentral_hole = "30 mm"\n',
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\n',
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\nmoves = "valve"\nseal_diameter = "20 mm"\n'
    'gear_end_diameter = "19 mm"\n',
}
WRONG, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("lid.toml", "30 mm", "20 mm", FINE),
        ("lid.toml", "30 mm", "19.9 mm", WRONG),
        ("lid.toml", "30 mm", "20 mm ±0.1", WRONG),
        ("spindle.toml", "20 mm", "30 mm", FINE),
        ("spindle.toml", "20 mm", "30.1 mm", WRONG),
        ("spindle.toml", "19 mm", "30 mm", FINE),
        ("spindle.toml", "19 mm", "30.1 mm", WRONG),
    ],
)
def test_the_hole_takes_the_spindle(
    workshop: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    found = workshop.write({**FILES, file: changed(FILES[file], (old, new))}).only(HOLE, "lid")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("pushed", "ends"),
    [
        ('pushed = "shut"\n', ("not applicable", None)),  # it leaves on the other side of the valve
        ('pushed = "open"\n', WRONG),  # it leaves on the side of the cover
        ("", ("not assessed", None)),
    ],
)
def test_a_cover_without_a_hole_lets_no_spindle_out(
    workshop: DesignFolder, pushed: str, ends: tuple[str, Grade | None]
) -> None:
    blank = changed(FILES["lid.toml"], ("30 mm", "0 mm"))
    files = {**FILES, "lid.toml": blank, "spindle.toml": FILES["spindle.toml"] + pushed}
    found = workshop.write(files).only(HOLE, "lid")
    assert (found.outcome, found.grade) == ends
    assert ends != WRONG or "0 mm" in found.says


def test_a_hole_is_held_against_a_spindle_that_leaves_on_the_other_side_too(workshop: DesignFolder) -> None:
    files = {
        **FILES,
        "lid.toml": changed(FILES["lid.toml"], ("30 mm", "19 mm")),
        "spindle.toml": FILES["spindle.toml"] + 'pushed = "shut"\n',
    }
    assert workshop.write(files).only(HOLE, "lid").outcome == "finding"
