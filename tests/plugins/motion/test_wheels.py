"""Room for the wheels, among themselves and beside the cylinders, by hand; each limit from both sides.

Wheels of 1750 mm are 1806 mm over flanges of 28 mm, those of the truck, of 950 mm, 1006 mm. The cylinder is driven on
the axle at 0: rods of 1900 and 1450 mm put the middle of its stroke at 3350 mm. The inner faces of its covers are at
676 and −150 mm, 413 mm from their middle, and the covers 76 mm thick: it lies from 3350 − 413 − 76 = 2861 mm to
3839 mm. Its larger end is 804 mm, its axis 880 mm from the middle: from 478 to 1282 mm, and the tyres, 140 mm wide
about 750 mm, from 680 to 820 mm.
"""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed, expect_not_applicable, expect_not_assessed, found
from tests.plugins.motion.locomotive import files

CLEAR, BESIDE = "engine.wheels-clear", "engine.cylinders-beside-wheels"
ENGINE = """
kind = "engine"
id = "engine"
driving_wheel_diameter = "1750 mm"
connecting_rod_length = "1900 mm"
[cranks.left]
block = "block"
axis_from_centre = "880 mm"
[carrying.truck]
at = "6000 mm"
wheel_diameter = "950 mm"
"""
AXLE = """
kind = "driving-axle"
id = "{id}"
engine = "engine"
at = "{at} mm"
plane_distance = "1500 mm"
driven_by = [{by}]
"""
BLOCK = """
kind = "cylinder-block"
id = "block"
hand = "left"
[bores.main]
lined = true
[ends.front]
side = "front"
face_at = "676 mm"
face_diameter = "804 mm"
[ends.back]
side = "back"
face_at = "-150 mm"
face_diameter = "754 mm"
[drive]
rod_length = "1450 mm"
"""
COVER = """
kind = "cylinder-cover"
id = "cover-{end}"
closes = "block"
of_end = "{end}"
outside_diameter = "750 mm"
thickness = "76 mm"
"""


SECOND = """[cranks.right]
block = "other"
axis_from_centre = "880 mm"
[carrying.truck]"""


def beside(part: str = "", *changes: tuple[str, str], first: str = "1850") -> dict[str, str]:
    """The engine with its axles, its block and covers; one of them with text exchanged."""
    made = {
        "engine": ENGINE,
        "axle": AXLE.format(id="axle", at="0", by='"left"'),
        "first": AXLE.format(id="first", at=first, by=""),
        "block": BLOCK,
        "front": COVER.format(end="front"),
        "back": COVER.format(end="back"),
    }
    if part:
        made[part] = changed(made[part], *changes)
    return {f"{name}.toml": text for name, text in made.items()}


@pytest.mark.parametrize(
    ("at", "outcome"),
    [
        ("1806.1 mm", "conforms"),
        ("1805.9 mm", "finding"),
        ("-1806.1 mm", "conforms"),
        ("-1740 mm", "finding"),
        ("0 mm", "finding"),
    ],
)
def test_two_axles_leave_room_for_their_wheels(workshop: DesignFolder, at: str, outcome: str) -> None:
    """1750 mm and twice a flange of 28 mm; the first axle stands at 0."""
    design = workshop.write(beside("engine", ('at = "6000 mm"', 'at = "9 m"')))
    check = design.replace("first.toml", 'at = "1850 mm"', f'at = "{at}"').only(CLEAR)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("at", "outcome"),
    [
        ("3256.1 mm", "conforms"),
        ("3255.9 mm", "finding"),
        ("-1406.1 mm", "conforms"),
        ("-1405.9 mm", "finding"),
    ],
)
def test_a_truck_clears_the_driven_wheels(workshop: DesignFolder, at: str, outcome: str) -> None:
    """(1806 + 1006)/2 = 1406 mm ahead of the axle at 1850 mm, or behind that at 0."""
    design = workshop.write(beside("engine", ('at = "6000 mm"', f'at = "{at}"')))
    assert design.only(CLEAR).outcome == outcome


@pytest.mark.parametrize(("at", "outcome"), [("4256.1", "conforms"), ("4255.9", "finding")])
def test_the_back_axle_of_a_truck_is_the_nearer(workshop: DesignFolder, at: str, outcome: str) -> None:
    """2 m of wheelbase: its back axle stands 1 m behind its middle, at 3256 mm."""
    truck = ('at = "6000 mm"', f'at = "{at} mm"\nwheelbase = "2 m"')
    assert workshop.write(beside("engine", truck)).only(CLEAR).outcome == outcome


def test_a_truck_with_axles_too_near_together(workshop: DesignFolder) -> None:
    """1000 mm of wheelbase under wheels that are 1006 mm over their flanges."""
    truck = ('at = "6000 mm"', 'at = "6000 mm"\nwheelbase = "1000 mm"')
    check = workshop.write(beside("engine", truck)).only(CLEAR)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(1.0)
    assert "truck, front and truck, back" in check.actual


def test_one_axle_stands_by_itself(workshop: DesignFolder) -> None:
    made = files()
    engine = changed(
        made["engine.toml"], ('kind = "engine"', 'kind = "engine"\ndriving_wheel_diameter = "1750 mm"')
    )
    assert workshop.write({**made, "engine.toml": engine}).only(CLEAR).outcome == "not applicable"


@pytest.mark.parametrize(
    ("first", "outcome"),
    [("1850", "conforms"), ("1932.9", "conforms"), ("1933.1", "finding"), ("3350", "finding")],
)
def test_a_wheel_behind_the_cylinder(workshop: DesignFolder, first: str, outcome: str) -> None:
    """2861 − (1933 + 903) = 25 mm."""
    assert workshop.write(beside(first=first)).only(BESIDE).outcome == outcome


def test_how_far_wheel_and_cylinder_overlap(workshop: DesignFolder) -> None:
    """At 2000 mm the wheel ends at 2903 mm, 42 mm within the cylinder."""
    check = workshop.write(beside(first="2000")).only(BESIDE)
    assert found(check) == pytest.approx(-0.042)
    assert "block main" in check.actual
    assert "first" in check.actual


@pytest.mark.parametrize(
    ("truck", "outcome"),
    [
        ('at = "4367.1 mm"', "conforms"),  # 4367 − 503 − 3839 = 25 mm
        ('at = "4366.9 mm"', "finding"),
        ('at = "5367.1 mm"\nwheelbase = "2 m"', "conforms"),
        ('at = "5366.9 mm"\nwheelbase = "2 m"', "finding"),
    ],
)
def test_a_truck_ahead_of_the_cylinder(workshop: DesignFolder, truck: str, outcome: str) -> None:
    assert workshop.write(beside("engine", ('at = "6000 mm"', truck))).only(BESIDE).outcome == outcome


@pytest.mark.parametrize(
    ("part", "old", "new", "first", "outcome"),
    [
        ("back", '"76 mm"', '"100 mm"', "1908.9", "conforms"),  # 2837 − 2811.9 = 25.1 mm
        ("back", '"76 mm"', '"100 mm"', "1909.1", "finding"),
        ("front", '"76 mm"', '"100 mm"', "1909.1", "conforms"),
        ("engine", 'length = "1900 mm"', 'length = "1817.1 mm"', "1850", "conforms"),  # 82.9 of 108 − 25 mm
        ("engine", 'length = "1900 mm"', 'length = "1816.9 mm"', "1850", "finding"),
        ("block", 'rod_length = "1450 mm"', 'rod_length = "1367.1 mm"', "1850", "conforms"),
        ("block", 'rod_length = "1450 mm"', 'rod_length = "1366.9 mm"', "1850", "finding"),
        ("block", '"-150 mm"', '"-315.9 mm"', "1850", "conforms"),  # 165.9 mm longer, half of it at the back
        ("block", '"-150 mm"', '"-316.1 mm"', "1850", "finding"),
    ],
)
def test_what_puts_the_cylinder_there(
    workshop: DesignFolder, part: str, old: str, new: str, first: str, outcome: str
) -> None:
    design = workshop.write(beside(part, (old, new), first=first))
    assert design.only(BESIDE).outcome == outcome


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("engine", '"880 mm"', '"1221.9 mm"', "finding"),  # 1221.9 − 402 = 819.9 mm
        ("engine", '"880 mm"', '"1222.1 mm"', "not applicable"),
        ("engine", '"880 mm"', '"278.1 mm"', "finding"),  # 680.1 mm on the outer side
        ("engine", '"880 mm"', '"277.9 mm"', "not applicable"),
        ("axle", '"1500 mm"', '"816.1 mm"', "finding"),  # the tyre ends at 408.05 + 70 = 478.05 mm
        ("axle", '"1500 mm"', '"815.9 mm"', "not applicable"),
        ("front", '"750 mm"', '"830 mm"', "finding"),
    ],
)
def test_a_cylinder_out_of_the_plane_of_the_wheels(
    workshop: DesignFolder, part: str, old: str, new: str, outcome: str
) -> None:
    """The first axle stands beside the cylinder: what is in its plane is in its way."""
    design = workshop.write(beside(part, (old, new), first="3350"))
    assert design.only(BESIDE).outcome == outcome


@pytest.mark.parametrize(("tyre", "outcome"), [("125.9 mm", "not applicable"), ("126.1 mm", "finding")])
def test_the_width_of_the_tyres_is_a_limit_of_the_works(
    workshop: DesignFolder, tyre: str, outcome: str
) -> None:
    """At 1215 mm the cylinder begins at 813 mm, 63 mm beyond the plane of the wheels."""
    design = workshop.write(
        beside("engine", ('"880 mm"', '"1215 mm"'), first="3350"),
        settings=f'[limits."{BESIDE}"]\ntyre = "{tyre}"\n',
    )
    assert design.only(BESIDE).outcome == outcome


def test_the_larger_of_face_and_cover_counts(workshop: DesignFolder) -> None:
    """At 1230 mm the face of 804 mm begins at 828 mm, a cover of 830 mm at 815 mm, before the tyres."""
    design = workshop.write(beside("engine", ('"880 mm"', '"1230 mm"'), first="3350"))
    assert design.only(BESIDE).outcome == "not applicable"
    design.replace("front.toml", '"750 mm"', '"830 mm"')
    assert design.only(BESIDE).outcome == "finding"


@pytest.mark.parametrize(
    ("part", "old", "new", "missing"),
    [
        ("axle", '["left"]', "[]", "driven by the crank left"),
        ("block", 'rod_length = "1450 mm"\n', "", "rod_length"),
        ("block", 'side = "back"\n', "", "side"),
        ("block", 'side = "back"\n', 'side = "front"\n', "one end at the front and one at the back"),
        ("front", 'thickness = "76 mm"\n', "", "thickness"),
        ("front", 'outside_diameter = "750 mm"\n', "", "outside_diameter"),
        ("engine", 'axis_from_centre = "880 mm"\n', "", "axis_from_centre"),
    ],
)
def test_what_is_missing_is_asked(
    workshop: DesignFolder, part: str, old: str, new: str, missing: str
) -> None:
    expect_not_assessed(workshop.write(beside(part, (old, new))).only(BESIDE), missing)


def test_an_engine_without_cranks(workshop: DesignFolder) -> None:
    made = beside("engine", ('[cranks.left]\nblock = "block"\naxis_from_centre = "880 mm"\n', ""))
    made["axle.toml"] = made["axle.toml"].replace('"left"', "")
    expect_not_applicable(workshop.write(made).only(BESIDE), "states no cranks")


def test_a_cylinder_of_which_something_is_missing_hides_no_other(workshop: DesignFolder) -> None:
    """The first has a cover without a diameter; the second has no covers and a wheel beside it."""
    made = beside("engine", ("[carrying.truck]", SECOND), first="2912.1")
    made["axle.toml"] = made["axle.toml"].replace('"left"', '"left", "right"')
    made["other.toml"] = BLOCK.replace('id = "block"', 'id = "other"')
    made["front.toml"] = changed(made["front.toml"], ('outside_diameter = "750 mm"\n', ""))
    check = workshop.write(made).only(BESIDE)
    assert check.outcome == "finding"
    assert "other main" in check.actual


def test_without_covers_the_faces_count(workshop: DesignFolder) -> None:
    """2937 − (2009 + 903) = 25 mm to the face itself."""
    for first, outcome in (("2008.9", "conforms"), ("2009.1", "finding")):
        made = {
            name: text
            for name, text in beside(first=first).items()
            if name not in ("front.toml", "back.toml")
        }
        assert workshop.write(made).only(BESIDE).outcome == outcome


def test_wheels_of_carrying_axles_that_are_not_stated(workshop: DesignFolder) -> None:
    design = workshop.write(beside("engine", ('at = "6000 mm"\nwheel_diameter = "950 mm"', 'at = "3350 mm"')))
    assert design.only(BESIDE).outcome == "conforms"
    assert design.only(CLEAR).outcome == "conforms"


LINER = """
kind = "cylinder-liner"
id = "liner"
housed_in = "block"
in_bore = "main"
[collar]
end = "{collar}"
"""
#: The collar's seat at the front, 25 mm within the face there; the bore ends 902 mm behind it, at −191 mm.
SEATED = ("lined = true", 'lined = true\nseat_at = "711 mm"\nrecess_depth = "25 mm"\nlength = "902 mm"')
#: The same turned round: a seat at −166 mm, faces at −191 and 736 mm.
TURNED = ("lined = true", 'lined = true\nseat_at = "-166 mm"\nrecess_depth = "25 mm"\nlength = "902 mm"')
OF_BORE = (
    ('side = "front"', 'side = "front"\nof_bore = "main"'),
    ('side = "back"', 'side = "back"\nof_bore = "main"'),
)
FLANGE = ('thickness = "76 mm"', 'thickness = "76 mm"\nflange_thickness = "45 mm"')


def seated(collar: str, bore: tuple[str, str], truck: str, first: str) -> dict[str, str]:
    """The engine with a liner, whose bore gives the faces of the block on which the flanges of the covers lie."""
    made = beside("block", bore, *OF_BORE, first=first)
    made["engine.toml"] = changed(made["engine.toml"], ('at = "6000 mm"', f'at = "{truck} mm"'))
    flanged = {name: changed(made[name], FLANGE) for name in ("front.toml", "back.toml")}
    return {**made, **flanged, "liner.toml": LINER.format(collar=collar)}


@pytest.mark.parametrize(("collar", "bore"), [("front", SEATED), ("back", TURNED)])
@pytest.mark.parametrize(
    ("truck", "first", "outcome"),
    [
        ("6000", "1922.9", "conforms"),  # 3350 − 191 − 45 − 263 = 2851, less 903 and 25
        ("6000", "1923.1", "finding"),
        ("4396.1", "1850", "conforms"),  # 3350 + 736 + 45 − 263 = 3868, and 25 and 503
        ("4395.9", "1850", "finding"),
    ],
)
def test_a_flange_lies_on_the_face_of_the_block(
    workshop: DesignFolder, collar: str, bore: tuple[str, str], truck: str, first: str, outcome: str
) -> None:
    design = workshop.write(seated(collar, bore, truck, first))
    assert design.only(BESIDE).outcome == outcome


@pytest.mark.parametrize(
    ("old", "first", "outcome"),
    [
        ('\nlength = "902 mm"', "1932.9", "conforms"),  # by the cover's own thickness: 2861
        ('\nlength = "902 mm"', "1933.1", "finding"),
        ('\nseat_at = "711 mm"', "1932.9", "conforms"),
    ],
)
def test_a_bore_that_does_not_say_where_it_ends(
    workshop: DesignFolder, old: str, first: str, outcome: str
) -> None:
    made = seated("front", SEATED, "6000", first)
    made["block.toml"] = changed(made["block.toml"], (old, ""))
    assert workshop.write(made).only(BESIDE).outcome == outcome


def test_a_cover_without_a_flange_thickness_counts_whole(workshop: DesignFolder) -> None:
    """3350 − 191 − 76 − 263 = 2820 mm: less 903 and 25 leaves 1892 mm."""
    for first, outcome in (("1891.9", "conforms"), ("1892.1", "finding")):
        made = seated("front", SEATED, "6000", first)
        made["back.toml"] = changed(made["back.toml"], ('flange_thickness = "45 mm"\n', ""))
        assert workshop.write(made).only(BESIDE).outcome == outcome
