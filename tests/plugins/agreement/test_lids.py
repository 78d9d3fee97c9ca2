"""The hole of a cover over a valve against the spindle that goes through it, and what stands round it."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

HOLE, STANDS = "cover.hole-for-spindle", "cover.hole-under-what-bears"
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


@pytest.mark.parametrize(
    ("pushed", "ends"),
    [
        ('pushed = "shut"\n', ("not applicable", None)),  # it leaves on the other side of the valve
        ('pushed = "open"\n', ("not assessed", None)),
        ("", ("not assessed", None)),
    ],
)
def test_a_cover_that_says_nothing_of_a_hole_is_asked_for_it(
    workshop: DesignFolder, pushed: str, ends: tuple[str, Grade | None]
) -> None:
    silent = changed(FILES["lid.toml"], ('central_hole = "30 mm"\n', ""))
    files = {**FILES, "lid.toml": silent, "spindle.toml": FILES["spindle.toml"] + pushed}
    found = workshop.write(files).only(HOLE, "lid")
    assert (found.outcome, found.grade) == ends
    assert ends[0] != "not assessed" or "central_hole is not stated" in found.says


def test_a_cover_under_a_stand_is_asked_for_its_hole(workshop: DesignFolder) -> None:
    """With 0 mm it is said to have none, and everything bears on metal."""
    for hole, outcome in (("", "not assessed"), ('central_hole = "0 mm"\n', "conforms")):
        text = changed(LOADED["lid.toml"], ('central_hole = "30 mm"\n', hole))
        found = workshop.write({"lid.toml": text}).only(STANDS, "lid")
        assert found.outcome == outcome


def test_a_hole_is_held_against_a_spindle_that_leaves_on_the_other_side_too(workshop: DesignFolder) -> None:
    files = {
        **FILES,
        "lid.toml": changed(FILES["lid.toml"], ("30 mm", "19 mm")),
        "spindle.toml": FILES["spindle.toml"] + 'pushed = "shut"\n',
    }
    assert workshop.write(files).only(HOLE, "lid").outcome == "finding"


@pytest.mark.parametrize(
    ("hole", "guide", "ends"),
    [
        ("20 mm", "22.03 mm", WRONG),  # no play cold, where the guide leaves 0.03 mm
        ("20.02 mm", "22.03 mm", WRONG),
        ("20.03 mm", "22.03 mm", FINE),
        ("20.03 mm", "22.03 mm +0.021/0", FINE),  # the hole is the guide, as close as it is
        ("20.04 mm ±0.02", "22.03 mm", WRONG),
        ("20.05 mm ±0.02", "22.03 mm", FINE),
        ("20 mm", "22.01 mm ±0.05", FINE),  # a guide that may leave none is told by others
        ("19.99 mm", "22.01 mm ±0.05", WRONG),
    ],
)
def test_a_spindle_is_led_by_its_guide_and_not_by_the_cover(
    workshop: DesignFolder, hole: str, guide: str, ends: tuple[str, Grade | None]
) -> None:
    """A spindle of 22 mm in its guide, 20 mm in the hole: at least 20 mm + guide − 22 mm."""
    led = FILES["spindle.toml"] + f'diameter = "22 mm"\nguide_bore = "{guide}"\n'
    lid = changed(FILES["lid.toml"], ("30 mm", hole))
    found = workshop.write({**FILES, "lid.toml": lid, "spindle.toml": led}).only(HOLE, "lid")
    assert (found.outcome, found.grade) == ends


LOADED = {
    "lid.toml": changed(FILES["lid.toml"], ('over = "valve"\n', ""))
    + '[bears.spring]\nacross = "50 mm"\n[bears.stop]\nacross = "90 mm"\n',
}


@pytest.mark.parametrize(("hole", "ends"), [("50 mm", FINE), ("50.1 mm", WRONG), ("49.9 mm ±0.2", WRONG)])
@pytest.mark.parametrize("kind", ["chamber-cover", "cylinder-cover"])
def test_what_stands_on_a_cover_has_metal_under_it(
    workshop: DesignFolder, kind: str, hole: str, ends: tuple[str, Grade | None]
) -> None:
    text = changed(LOADED["lid.toml"], ("30 mm", hole), ("chamber-cover", kind))
    found = workshop.write({"lid.toml": text}).only(STANDS, "lid")
    assert (found.outcome, found.grade) == ends
    assert ends != WRONG or "spring" in found.says


@pytest.mark.parametrize(
    ("across", "ends"), [("60 mm", FINE), ("60.1 mm", WRONG), ("75 mm", WRONG), ("50 mm", FINE)]
)
def test_a_spring_bears_within_its_housing(
    workshop: DesignFolder, across: str, ends: tuple[str, Grade | None]
) -> None:
    alone = changed(FILES["lid.toml"], ('over = "valve"\n', ""))
    lid = f'{alone}[bears.spring]\nspring = "spring"\nacross = "{across}"\n'
    spring = 'kind = "compression-spring"\nid = "spring"\nhousing = "60 mm"\n'
    found = workshop.write({"lid.toml": lid, "spring.toml": spring}).only(STANDS, "lid")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("stands", "ends"),
    [
        ('spring = "spring"', FINE),
        ('spring = "strange"', WRONG),  # the spring of another valve, weaker or stronger
        ('stop = "valve"', FINE),
        ('stop = "other"', WRONG),
        ('jack = "5 kN"', ("not applicable", None)),
    ],
)
def test_what_stands_on_a_cover_is_of_the_valve_under_it(
    workshop: DesignFolder, stands: str, ends: tuple[str, Grade | None]
) -> None:
    files = {
        "lid.toml": f"{FILES['lid.toml']}[bears.one]\n{stands}\n",
        "valve.toml": FILES["valve.toml"],
        "other.toml": 'kind = "poppet-valve"\nid = "other"\n',
        "spring.toml": 'kind = "compression-spring"\nid = "spring"\ncloses = "valve"\n',
        "strange.toml": 'kind = "compression-spring"\nid = "strange"\ncloses = "other"\n',
    }
    found = workshop.write(files).only(STANDS, "lid")
    assert (found.outcome, found.grade) == ends
