"""What passes through what: every limit from both sides, with the working by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from speclint import Grade
from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_applicable,
    expect_not_assessed,
    on_sheet,
)
from speclint_assembly.formulae.sizes import room_left
from tests.plugins.assembly.bench import with_links, write

SEAT, VALVE, SPINDLE = "seat.passes-the-other-bore", "valve.passes-its-seat", "spindle.enters"
RING = "ring.opens-over-piston"

#: Rule, component, part whose key is varied, the key as it stands, a value that holds and one that fails; by hand:
LIMITS = [
    # through the upper bore, 163.6 − 0.5 mm
    (SEAT, "seat-lower", "seat-lower", 'outside_diameter = "160.2 mm"', "163.09 mm", "163.11 mm"),
    # 163.8 + 0.5 = 164.3 mm through the opening of its chamber
    (SEAT, "seat-upper", "block", 'opening = "230 mm"', "164.31 mm", "164.29 mm"),
    # on its edge: 200.2 + 0.5 = 200.7 mm through the width of the port, 30 + 0.5 mm through its height
    (SEAT, "seat-exhaust", "block", 'width = "300 mm"', "200.71 mm", "200.69 mm"),
    (SEAT, "seat-exhaust", "block", 'height = "40 mm"', "30.51 mm", "30.49 mm"),
    # rim 149 + 0.5 mm through the upper seat
    (VALVE, "valve", "valve", 'rim_diameter = "149 mm"', "151.49 mm", "151.51 mm"),
    # 164 + 0.5 mm through the opening
    (VALVE, "valve", "block", 'opening = "230 mm"', "164.51 mm", "164.49 mm"),
    # 82 + 72 + 5 = 159 mm beyond the opening
    (VALVE, "valve", "block", 'room_beyond = "200 mm"', "159.1 mm", "158.9 mm"),
    (SPINDLE, "spindle", "spindle", 'gear_end_diameter = "18 mm"', "20 mm", "20.1 mm"),  # the seal
    (SPINDLE, "spindle", "spindle", 'diameter = "22 mm"', "22.04 mm", "22.05 mm ±0.01"),
    (SPINDLE, "spindle", "spindle", 'valve_end_diameter = "15 mm"', "16 mm", "16.1 mm"),
    (SPINDLE, "spindle", "spindle", 'collar_diameter = "21 mm"', "16 mm", "15.9 mm"),
    # 50 + 8 = 58 mm, and 0.5 mm
    ("spring.enters", "spring", "spring", 'housing = "60 mm"', "58.51 mm", "58.49 mm"),
    # 140 − 10 = 130 mm
    ("spring.enters", "spring", "spring", 'tool_height = "150 mm"', "130.1 mm", "129.9 mm"),
    ("cage.enters", "cage", "cage", 'outside_diameter = "220 mm"', "229.49 mm", "229.51 mm"),
    ("cage.enters", "keeper", "keeper", 'outside_diameter = "200 mm"', "229.49 mm", "229.51 mm"),
    # the seat of 163.8 mm and 0.5 mm through the thread
    ("cage.enters", "keeper", "keeper", 'thread_bore = "180 mm"', "164.31 mm", "164.29 mm"),
    ("liner.passes-its-bore", "liner", "liner", 'free_end_diameter = "559 mm"', "560 mm", "560.1 mm"),
    ("liner.passes-its-bore", "liner", "liner", 'diameter = "619 mm"', "620 mm", "620.1 mm"),
    ("liner.passes-its-bore", "liner", "liner", 'diameter = "619 mm"', "560 mm", "559.9 mm"),
    # the liner is 560.3 mm outside
    ("liner.passes-its-bore", "liner", "block", 'diameter = "562 mm"', "560.31 mm", "560.29 mm"),
    ("piston.enters", "piston", "piston", 'diameter = "497 mm"', "499.49 mm", "499.51 mm"),
    ("piston.enters", "piston", "liner", 'mouth_diameter = "508 mm"', "506 mm", "505.9 mm"),
    # of 115 GPa at most 4 × 115e3 × 16/(3 π 484²) = 3.3336 MPa/mm: shut half of 345 MPa at 3 + 51.75 = 54.75 mm;
    # opened to 8 × 16 = 128 mm, 345 MPa at 128 − 103.49 = 24.51 mm
    (RING, "ring", "ring", 'free_gap = "50 mm"', "54.7 mm", "54.8 mm"),
    (RING, "ring", "ring", 'free_gap = "50 mm"', "24.6 mm", "24.4 mm"),
    # M85 at the piston's end, 85 mm
    ("rod.enters", "rod", "box", 'neck_bush = "90.6 mm"', "85 mm", "84.9 mm"),
    ("rod.enters", "rod", "box", 'gland_bore = "91 mm"', "85 mm", "84.9 mm"),
    ("rod.enters", "rod", "cover-back", 'central_hole = "150 mm"', "85 mm", "84.9 mm"),
    ("box.enters", "box", "box", 'outside_diameter = "149 mm"', "150 mm", "150.1 mm"),
    ("box.enters", "gland", "studs-gland", 'hole = "26 mm"', "24.51 mm", "24.49 mm"),
    ("cover.enters", "cover-front", "cover-front", 'spigot_diameter = "618.5 mm"', "620 mm", "620.1 mm"),
    ("cover.enters", "cover-back", "cover-back", 'spigot_diameter = "499.5 mm"', "500 mm", "500.1 mm"),
    # the studs M24 in holes of 26 mm have 2 mm of play: 620 - 2 and 500 - 2 mm
    ("cover.enters", "cover-front", "cover-front", 'spigot_diameter = "618.5 mm"', "618.01 mm", "617.99 mm"),
    ("cover.enters", "cover-back", "cover-back", 'spigot_diameter = "499.5 mm"', "498.01 mm", "497.99 mm"),
    ("cover.enters", "cover-back", "studs-cover-back", 'hole = "26 mm"', "24.51 mm", "24.49 mm"),
    # the tool 1 × 24 mm round the axis, and 0.5 mm
    ("stud.goes-in", "studs-cover-back", "studs-cover-back", 'to_wall = "30 mm"', "24.51 mm", "24.49 mm"),
    # 900 + 5 and 700 + 5 mm
    ("block.enters-its-frames", "block", "face", 'opening_width = "910 mm"', "905.1 mm", "904.9 mm"),
    ("block.enters-its-frames", "block", "face", 'opening_height = "710 mm"', "705.1 mm", "704.9 mm"),
    ("block.enters-its-frames", "block", "face", 'slot = "186 mm"', "180 mm", "179.9 mm"),
    # the tool 2 × 0.8 × 50 = 80 mm, and 0.5 mm; beside a wall 40 + 0.5 mm; of the cock 19.2 + 0.5 mm
    ("fitting.goes-in", "block", "block", 'lagging_opening = "90 mm"', "80.51 mm", "80.49 mm"),
    ("fitting.goes-in", "block", "block", 'to_wall = "60 mm"', "40.51 mm", "40.49 mm"),
    ("fitting.goes-in", "block", "block", 'to_wall = "30 mm"', "19.71 mm", "19.69 mm"),
    ("cambox.removable", "cambox", "cambox", 'opening_width = "320 mm"', "305.1 mm", "304.9 mm"),
    ("cambox.removable", "cambox", "cambox", 'opening_height = "260 mm"', "255.1 mm", "254.9 mm"),
    # 2 (50 + 15 + 1) = 132 mm does not pass the housing of 120 mm: through the lid
    ("gear.enters-its-box", "cambox", "cambox", 'lid_length = "200 mm"', "132.6 mm", "132.4 mm"),
    ("gear.enters-its-box", "cambox", "cambox", 'lid_width = "60 mm"', "40.6 mm", "40.4 mm"),
    ("gear.enters-its-box", "cambox", "shaft", 'greatest_diameter = "70 mm"', "120 mm", "120.1 mm"),
    ("gear.enters-its-box", "cambox", "tappet", 'stem_diameter = "29.9 mm"', "30 mm", "30.1 mm"),
    # 1940.5 with a ring of 50 and 3 for the end that is not drawn, less the millimetre that it is sprung
    ("pipe.goes-in", "pipe", "pipe", 'faces_gap = "1994 mm"', "1992.6 mm", "1992.4 mm"),
    ("pipe.goes-in", "pipe", "flange", 'bore = "172 mm"', "168.6 mm", "168.4 mm"),
    ("pipe.goes-in", "pipe", "flange", 'bore = "172 mm"', "189.4 mm", "189.6 mm"),
    ("pipe.goes-in", "lens", "pipe", 'drawn_back = "60 mm"', "50.6 mm", "50.4 mm"),
    ("lagging.goes-on", "lagging", "lagging", 'room_behind = "80 mm"', "75.1 mm", "74.9 mm"),
]


#: What a rule looks for on a part that is linked to the component.
FOUND_BY = {
    "rod.enters": ("box", "gland"),
    RING: ("piston",),
    "cover.enters": ("studs-cover-front", "studs-cover-back", "liner"),
    "box.enters": ("studs-gland",),
    "block.enters-its-frames": ("face",),
    "gear.enters-its-box": ("cam",),
    "pipe.goes-in": ("flange", "lens"),
}


def of_rule(rule: str, *parts: str) -> set[str]:
    """The parts of the engine that a check needs."""
    return with_links(*parts, *FOUND_BY.get(rule, ()))


@pytest.mark.parametrize(("rule", "component", "part", "stated", "holds", "fails"), LIMITS)
def test_each_limit_from_both_sides(
    workshop: DesignFolder, rule: str, component: str, part: str, stated: str, holds: str, fails: str
) -> None:
    """As worked beside each line of the table."""
    key = stated.partition(" = ")[0]
    for value, outcome in ((holds, "conforms"), (fails, "finding")):
        needed = of_rule(rule, component, part)
        found = write(workshop, (part, stated, f'{key} = "{value}"'), only=needed).only(rule, component)
        assert found.outcome == outcome, f"{value}: {found.says}"


@pytest.mark.parametrize(("rule", "component", "part", "stated"), [one[:4] for one in LIMITS])
def test_a_size_that_is_not_stated_is_told(
    workshop: DesignFolder, rule: str, component: str, part: str, stated: str
) -> None:
    """Not assessed, or, of several items, said beside those that are; or judged another way that needs no such size."""
    key = stated.partition(" = ")[0]
    needed = of_rule(rule, component, part)
    found = write(workshop, (part, f"{stated}\n", ""), only=needed).only(rule, component)
    other_way = {"rim_diameter", "lid_length", "free_gap"} | (
        {"opening"} & {key} if rule == "none" else set()
    )
    if key in other_way:
        assert found.outcome != "not assessed"
    elif found.outcome == "not assessed":
        expect_not_assessed(found, key)
    else:
        assert any(key in one for one in found.missing)


@pytest.mark.parametrize(("opening", "outcome"), [("80.51 mm", "conforms"), ("80.49 mm", "finding")])
def test_an_opening_of_the_lagging_counts_whatever_the_word_says(
    workshop: DesignFolder, opening: str, outcome: str
) -> None:
    """The tool 2 × 0.8 × 50 = 80 mm, and 0.5 mm."""
    new = f'lagged = false\nlagging_opening = "{opening}"'
    change = ("block", 'lagged = true\nlagging_opening = "90 mm"', new)
    assert write(workshop, change, only={"block"}).only("fitting.goes-in", "block").outcome == outcome


def test_the_small_engine_goes_together(workshop: DesignFolder) -> None:
    """No rule of the family finds anything in it, or lacks anything."""
    folder = write(workshop)
    rules = {one[0] for one in LIMITS}
    checks = [check for rule in sorted(rules) for check in folder.check(rule)]
    assert {check.rule.name for check in checks} == rules
    assert [f"{one.rule.name} {one.component}" for one in checks if one.outcome != "conforms"] == []


def test_the_rim_is_the_wall_beyond_the_contact_where_it_is_not_stated(workshop: DesignFolder) -> None:
    """143 + 2 × 2 × cos 60° = 145 mm; + 2 × 2.4 = 149.8 mm; 152 − 149.8 = 2.2 mm."""
    check = write(workshop, ("valve", 'rim_diameter = "149 mm"\n', "")).only(VALVE)
    assert on_sheet(check, "c_u") * 1e3 == pytest.approx(2.2)


@pytest.mark.parametrize("radius", ["43.7 mm", "43.8 mm", "44.1 mm"])
def test_a_cam_that_does_not_pass_its_housing_by_hand_goes_in_under_the_lid(
    workshop: DesignFolder, radius: str
) -> None:
    """2 (43.7 + 15 + 1) = 119.4 mm pass the housing of 120 by 0.6 mm; 119.6 and 120.2 do not, and pass the lid."""
    expect_conforms(
        write(workshop, ("cam", 'base_radius = "50 mm"', f'base_radius = "{radius}"')).only(
            "gear.enters-its-box", "cambox"
        )
    )


@pytest.mark.parametrize(
    ("relieved", "outcome"), [("579.9 mm", "conforms"), ("580.1 mm", "finding"), ("640 mm", "finding")]
)
def test_a_relief_leaves_three_quarters_of_the_wall(
    workshop: DesignFolder, relieved: str, outcome: str
) -> None:
    """Of 40 mm at the fit of 560 mm: 40 − (580 − 560)/2 = 30 mm, which is 0.75 × 40."""
    wall = (
        "block",
        'diameter = "562 mm"',
        f'diameter = "{relieved}"',
    )
    check = write(workshop, wall).only("liner.passes-its-bore")
    assert (check.outcome, check.grade) == (
        outcome,
        Grade.NONCONFORMITY if outcome == "finding" else None,
    )


#: A plate of 41.5 mm, of which 1.5 mm is for corrosion: 40 mm of wall, as the block states it otherwise.
BARREL = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.barrel]
thickness = "41.5 mm"
corrosion_allowance = "1.5 mm"
"""


@pytest.mark.parametrize(("relieved", "outcome"), [("579.9 mm", "conforms"), ("580.1 mm", "finding")])
def test_a_wall_that_is_left_out_is_that_of_its_plate(
    workshop: DesignFolder, relieved: str, outcome: str
) -> None:
    """40 − (580 − 560)/2 = 30 mm, which is 0.75 × 40."""
    folder = write(
        workshop,
        ("block", 'wall = "40 mm"', 'plate = "barrel"'),
        ("block", 'diameter = "562 mm"', f'diameter = "{relieved}"'),
    )
    (folder.root / "weldment.toml").write_text(BARREL, encoding="utf-8")
    assert folder.only("liner.passes-its-bore").outcome == outcome


@pytest.mark.parametrize(("free", "grade"), [("559 mm", None), ("561 mm", Grade.NONCONFORMITY)])
def test_a_wall_that_nothing_gives_is_told(workshop: DesignFolder, free: str, grade: Grade | None) -> None:
    """Beside a free end that passes the bore of 560 mm, and beside one that does not."""
    bare = ("block", 'wall = "40 mm"\n', "")
    end = ("liner", 'free_end_diameter = "559 mm"', f'free_end_diameter = "{free}"')
    check = write(workshop, bare, end).only("liner.passes-its-bore")
    if grade is None:
        expect_not_assessed(check, "bores.main.wall")
    else:
        expect_finding(check, grade=grade, says="561 mm")
        assert any("bores.main.wall" in one for one in check.missing)


@pytest.mark.parametrize("way", ['"heated block"\nblock_heated_to = "160 °C"', '"pressed"'])
def test_a_relief_is_clear_of_the_liner_whichever_way_that_went_in(workshop: DesignFolder, way: str) -> None:
    """560.29 mm at 160 °C is more than 560.29 (1 + 11.9e-6 × 140) = 561.22 mm, and grips 560.3 mm when it is cold."""
    entered = ("liner", 'entered = "heated block"\nblock_heated_to = "160 °C"', f"entered = {way}")
    expect_conforms(write(workshop, entered).only("liner.passes-its-bore"))
    narrow = ("block", 'diameter = "562 mm"', 'diameter = "560.29 mm"')
    check = write(workshop, entered, narrow).only("liner.passes-its-bore")
    expect_finding(check, grade=Grade.NONCONFORMITY, says="bores main relieved middle of block")


def test_a_chilled_ring_is_smaller_and_a_hot_bore_larger(workshop: DesignFolder) -> None:
    """Iron to −80 °C: 160.2 (1 − 9.7e-6 × 100) = 160.0446 mm at the most. Steel at 120 °C is 12 − 0.3 = 11.7e-6 at
    least: 163.6 (1 + 11.7e-6 × 100) = 163.7914 mm. Left: 3.747 mm.
    """
    hot = 'entering = "block heated and ring chilled"\nblock_heated_to = "120 °C"\nchilled_to = "-80 °C"'
    check = write(workshop, ("seat-lower", 'entering = "pressed cold"', hot)).only(SEAT, "seat-lower")
    assert on_sheet(check, "c_upper") * 1e3 == pytest.approx(163.7914 - 160.0446, abs=2e-4)


def test_a_seat_put_in_against_the_lift_goes_through_the_cylinder(workshop: DesignFolder) -> None:
    """The opening of the chamber is of no use to it: 30 mm through a port of 30.5 mm, but not of 30.4 mm."""
    side = ("seat-lower", '"chamber"', '"cylinder"')
    for height, outcome in (("30.6 mm", "conforms"), ("30.4 mm", "finding")):
        port = ("block", 'height = "40 mm"', f'height = "{height}"')
        check = write(workshop, side, port).only(SEAT, "seat-lower")
        assert check.outcome == outcome
        assert outcome == "conforms" or "across the port front" in check.says


def test_a_seat_through_a_cylinder_without_ports_is_not_assessed(workshop: DesignFolder) -> None:
    port = '[ports.front]\nof_end = "front"\nheight = "40 mm"\nwidth = "300 mm"\n'
    check = write(workshop, ("block", port, ""), ("liner", 'matches = "front"\n', "")).only(
        SEAT, "seat-exhaust"
    )
    expect_not_assessed(check, "block states no port that leads to this seat")


def test_the_opening_is_what_the_cover_over_the_valve_closes_where_the_block_states_none(
    workshop: DesignFolder,
) -> None:
    """163.8 + 0.5 = 164.3 mm."""
    none = ("block", 'opening = "230 mm"\n', "")
    for bore, outcome in (("164.31 mm", "conforms"), ("164.29 mm", "finding")):
        cover = ("cover-over", 'bore = "230 mm"', f'bore = "{bore}"')
        assert write(workshop, none, cover).only(SEAT, "seat-upper").outcome == outcome


def test_from_the_other_side_the_upper_seat_passes_the_lower_bore(workshop: DesignFolder) -> None:
    """163.8 mm through 160 mm from the cylinder: it does not go, whatever its opening."""
    check = write(workshop, ("seat-upper", '"chamber"', '"cylinder"')).only(SEAT, "seat-upper")
    expect_finding(check)
    assert on_sheet(check, "c_lower") * 1e3 == pytest.approx(160 - 163.8)


def test_a_spindle_from_the_gear_side_brings_its_collar_through_the_guide(workshop: DesignFolder) -> None:
    """The collar of 21 mm passes the guide of 22.05 mm, one of 22.1 mm does not; from the valve's side it need not."""
    side, collar = 'enters_from = "valve side"', 'collar_diameter = "21 mm"'
    wide = ("spindle", collar, 'collar_diameter = "22.1 mm"')
    from_gear = ("spindle", side, 'enters_from = "gear side"')
    expect_conforms(write(workshop, from_gear).only(SPINDLE))
    expect_conforms(write(workshop, wide).only(SPINDLE))
    expect_finding(write(workshop, from_gear, wide).only(SPINDLE))


def test_a_spindle_of_one_piece_with_its_valve_goes_in_from_the_valves_side(workshop: DesignFolder) -> None:
    """It has no collar and passes no bore of the valve; the guide of 22.05 mm and the seal of 20 mm remain."""
    one_piece = (
        "spindle",
        'enters_from = "valve side"',
        'enters_from = "valve side"\nvalve_held.by = "forged in one"',
    )
    collar = ("spindle", 'collar_diameter = "21 mm"\n', "")
    end = ("spindle", 'valve_end_diameter = "15 mm"\n', "")
    expect_conforms(write(workshop, one_piece, collar, end).only(SPINDLE))
    from_gear = ("spindle", one_piece[1], one_piece[2].replace("valve side", "gear side"))
    expect_finding(write(workshop, from_gear, collar, end).only(SPINDLE))
    thick = ("spindle", 'gear_end_diameter = "18 mm"', 'gear_end_diameter = "20.1 mm"')
    expect_finding(write(workshop, one_piece, collar, end, thick).only(SPINDLE))
    by_nut = ("spindle", one_piece[1], one_piece[2].replace("forged in one", "nut"))
    assert write(workshop, by_nut, collar).only(SPINDLE).outcome == "not assessed"


def test_a_rod_with_its_piston_forged_on_goes_in_only_by_its_other_end(workshop: DesignFolder) -> None:
    """Its flange of 140 mm does not pass the bush of 90.6 mm: only with box and gland in halves, and a hole of 150."""
    forged = ("piston", 'by = "nut"', 'by = "forged in one"')
    halves = [(part, f'id = "{part}"', f'id = "{part}"\nsplit = true') for part in ("box", "gland")]
    expect_finding(write(workshop, forged).only("rod.enters"))
    expect_finding(write(workshop, forged, halves[0]).only("rod.enters"))
    expect_conforms(write(workshop, forged, *halves).only("rod.enters"))


def test_a_liner_held_by_dowels_has_its_collar_judged_where_it_has_one(workshop: DesignFolder) -> None:
    """A collar of 621 mm in a recess of 620 mm; without a collar there is nothing to judge of it."""
    dowel = ("liner", '"collar clamped by cover"', '"dowel"')
    large = ("liner", 'diameter = "619 mm"', 'diameter = "621 mm"')
    expect_finding(write(workshop, dowel, large).only("liner.passes-its-bore"))
    expect_conforms(
        write(workshop, dowel, ("liner", 'diameter = "619 mm"\n', "")).only("liner.passes-its-bore")
    )


def test_a_sliding_pad_without_a_cut_out_is_told(workshop: DesignFolder) -> None:
    other = ("block", "[pads.front]", "[pads.back]\nlocates = false\n[pads.front]")
    check = write(workshop, other).only("block.enters-its-frames")
    assert any("takes pad back" in one for one in check.missing)


@pytest.mark.parametrize(("locates", "outcome"), [("false", "finding"), ("true", "conforms")])
def test_a_pad_that_locks_the_block_need_not_slide_into_its_cut_out(
    workshop: DesignFolder, locates: str, outcome: str
) -> None:
    """A pad of 186.2 mm over a slot of 186 mm is pressed in where it locks, with 0.2 mm of interference."""
    pad = ("block", 'width = "180 mm"\nlocates = false', f'width = "186.2 mm"\nlocates = {locates}')
    check = write(workshop, pad, only=of_rule("block.enters-its-frames", "block")).only(
        "block.enters-its-frames"
    )
    assert check.outcome == outcome


def test_what_does_not_concern_a_part(workshop: DesignFolder) -> None:
    bolt = ("studs-gland", 'fastener = "stud"', 'fastener = "bolt"')
    expect_not_applicable(write(workshop, bolt).only("stud.goes-in", "studs-gland"), "bolts go through")
    liner = ("keeper", '"seat-upper"', '"liner"')
    expect_not_applicable(write(workshop, liner).only("cage.enters", "keeper"), "retains a liner")
    held = ("flange", "loose behind a collar", "welded on")
    narrow = ("flange", 'bore = "172 mm"', 'bore = "160 mm"')
    without = ("pipe", 'collar_diameter = "190 mm"\n', "")
    expect_conforms(write(workshop, held, narrow, without).only("pipe.goes-in", "pipe"))


def test_a_collar_with_no_loose_flange_is_told(workshop: DesignFolder) -> None:
    held = ("flange", "loose behind a collar", "welded on")
    check = write(workshop, held).only("pipe.goes-in", "pipe")
    expect_finding(check, says="each of its flanges is said to be welded on")


def test_a_cam_that_passes_the_housings_needs_no_lid(workshop: DesignFolder) -> None:
    """132 + 0.5 mm."""
    small = ("cambox", 'lid_width = "60 mm"', 'lid_width = "20 mm"')
    wide = ("cambox", 'bearing_bore = "120 mm"', 'bearing_bore = "132.6 mm"')
    expect_finding(write(workshop, small).only("gear.enters-its-box"))
    expect_conforms(write(workshop, small, wide).only("gear.enters-its-box"))


@pytest.mark.parametrize(
    ("stage", "grade"),
    [("draft", Grade.NONCONFORMITY), ("for-review", Grade.NONCONFORMITY), ("released", Grade.HOLD)],
)
def test_a_cover_that_does_not_enter_is_held_once_released(
    workshop: DesignFolder, stage: str, grade: Grade
) -> None:
    large = ("cover-back", 'spigot_diameter = "499.5 mm"', 'spigot_diameter = "501 mm"')
    expect_finding(write(workshop, large, stage=stage).only("cover.enters", "cover-back"), grade=grade)
    cage = ("cage", 'outside_diameter = "220 mm"', 'outside_diameter = "240 mm"')
    expect_finding(write(workshop, cage, stage=stage).only("cage.enters", "cage"), grade=Grade.NONCONFORMITY)


@given(
    part=st.floats(1e-3, 1.0), way=st.floats(1e-3, 1.0), more=st.floats(0.0, 0.5), room=st.floats(0.0, 5e-3)
)
@settings(max_examples=50)
def test_a_larger_opening_never_stops_what_passed(part: float, way: float, more: float, room: float) -> None:
    if room_left(W=way, w=part) >= room:
        assert room_left(W=way + more, w=part) >= room


@pytest.mark.parametrize(("outside", "outcome"), [("59.49 mm", "conforms"), ("59.51 mm", "finding")])
def test_a_spring_is_as_wide_as_its_outside_diameter_says(
    workshop: DesignFolder, outside: str, outcome: str
) -> None:
    """60 − 0.5 = 59.5 mm, whatever mean diameter and wire would give: 58 mm."""
    stated = ("spring", 'wire = "8 mm"', f'wire = "8 mm"\noutside_diameter = "{outside}"')
    assert write(workshop, stated).only("spring.enters", "spring").outcome == outcome


@pytest.mark.parametrize(
    ("tool", "housing", "outcome"),
    [
        ("150 mm", "", "conforms"),
        ("129 mm", "", "finding"),
        ("150 mm", "58.4 mm", "finding"),
    ],
)
def test_a_spring_inside_another_has_no_housing_of_its_own(
    workshop: DesignFolder, tool: str, housing: str, outcome: str
) -> None:
    """The coils round it give the room, of which coil-spring.one-broken tells; a housing that is stated counts."""
    size = f'housing = "{housing}"\n' if housing else ""
    inside = ("spring", 'housing = "60 mm"\n', f'{size}nested_in = "outer"\n')
    folder = write(workshop, inside, ("spring", '"150 mm"', f'"{tool}"'))
    (folder.root / "outer.toml").write_text('kind = "compression-spring"\nid = "outer"\n', encoding="utf-8")
    assert folder.only("spring.enters", "spring").outcome == outcome


@pytest.mark.parametrize(("spigot", "outcome"), [("560 mm", "conforms"), ("560.1 mm", "finding")])
def test_a_spigot_may_enter_the_bore_of_the_block(workshop: DesignFolder, spigot: str, outcome: str) -> None:
    """The bore has 560 mm, its recess 620 mm."""
    enters = ("cover-front", '"recess of the collar"', '"bore of the block"')
    size = ("cover-front", 'spigot_diameter = "618.5 mm"', f'spigot_diameter = "{spigot}"')
    assert write(workshop, enters, size).only("cover.enters", "cover-front").outcome == outcome


@pytest.mark.parametrize("stage", ["for-review", "released"])
def test_a_spigot_that_centres_nothing_is_a_query_at_each_stage(workshop: DesignFolder, stage: str) -> None:
    """500 - 497 = 3 mm of play, and the studs M24 in holes of 26 mm have 2: it goes in."""
    loose = ("cover-back", 'spigot_diameter = "499.5 mm"', 'spigot_diameter = "497 mm"')
    check = write(workshop, loose, stage=stage).only("cover.enters", "cover-back")
    expect_finding(check, grade=Grade.QUERY, says="3 mm > 2 mm")


def test_the_side_on_which_a_cam_box_is_withdrawn_is_asked(workshop: DesignFolder) -> None:
    """The opening is that of the side that is named: without it nobody knows which opening was measured."""
    unsaid = write(workshop, ("cambox", 'withdrawn = "sideways"\n', ""), only={"cambox", "block"})
    expect_not_assessed(unsaid.only("cambox.removable", "cambox"), "withdrawn")


@pytest.mark.parametrize(
    ("key", "held", "told"), [("lid_length", "390 mm", "390.1 mm"), ("lid_width", "290 mm", "290.1 mm")]
)
def test_a_lid_is_smaller_than_its_box(workshop: DesignFolder, key: str, held: str, told: str) -> None:
    """A box of 250 × 300 × 400 mm: on its largest side an opening of 400 − 10 by 300 − 10 mm."""
    stated = {"lid_length": 'lid_length = "200 mm"', "lid_width": 'lid_width = "60 mm"'}[key]
    long = ("cambox", 'width = "300 mm"\n', 'width = "300 mm"\nlength = "400 mm"\n')
    for value, outcome in ((held, "conforms"), (told, "finding")):
        changes = long, ("cambox", stated, f'{key} = "{value}"')
        check = write(workshop, *changes, only=with_links("cam")).only("gear.enters-its-box", "cambox")
        assert (check.outcome, check.grade) == (
            outcome,
            None if outcome == "conforms" else Grade.NONCONFORMITY,
        )
