"""What a finding says of the way that a part does not pass, and which ways and parts count at all."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_applicable,
    expect_not_assessed,
    on_sheet,
)
from tests.plugins.assembly.bench import OVER, with_links, write

Change = tuple[str, str, str]

#: Rule, component, the change, the other parts that are needed; the symbol of the room, what is left in mm, the words.
SAID = [
    (
        "seat.passes-the-other-bore",
        "seat-upper",
        ("block", 'opening = "230 mm"', 'opening = "164.2 mm"'),
        (),
        ("c_o", 164.2 - 163.8, "through the opening of the chamber"),
    ),
    (
        "seat.passes-the-other-bore",
        "seat-exhaust",
        ("block", 'diameter = "560 mm"', 'diameter = "200.5 mm"'),
        (),
        ("c_b", 200.5 - 200.2, "through the bore of the cylinder"),
    ),
    (
        "cambox.removable",
        "cambox",
        ("cambox", 'opening_width = "320 mm"', 'opening_width = "304 mm"'),
        (),
        ("c_b", 304 - 300, "across the opening"),
    ),
    (
        "cambox.removable",
        "cambox",
        ("cambox", 'opening_height = "260 mm"', 'opening_height = "254 mm"'),
        (),
        ("c_h", 254 - 250, "in the height of the opening"),
    ),
    (
        "spring.enters",
        "spring",
        ("spring", 'housing = "60 mm"', 'housing = "58.2 mm"'),
        (),
        ("c_h", 58.2 - 58, "in the housing"),
    ),
    (
        "cage.enters",
        "cage",
        ("cage", 'outside_diameter = "220 mm"', 'outside_diameter = "229.8 mm"'),
        (),
        ("c_o", 230 - 229.8, "through the opening of the chamber"),
    ),
    (
        "cage.enters",
        "keeper",
        ("keeper", 'thread_bore = "180 mm"', 'thread_bore = "164.1 mm"'),
        (),
        ("c_t", 164.1 - 163.8, "of the seat through the thread"),
    ),
    (
        "stud.goes-in",
        "studs-cover-back",
        ("studs-cover-back", 'to_wall = "30 mm"', 'to_wall = "24.2 mm"'),
        (),
        ("c_w", 24.2 - 24, "beside the wall"),
    ),
    (
        "piston.enters",
        "piston",
        ("piston", 'diameter = "497 mm"', 'diameter = "499.8 mm"'),
        (),
        ("c_p", 500 - 499.8, "through the liner"),
    ),
    (
        "pipe.goes-in",
        "lens",
        ("pipe", 'drawn_back = "60 mm"', 'drawn_back = "50.2 mm"'),
        (),
        ("c_r", 50.2 - 50, "beside the lens ring, the pipe drawn back"),
    ),
    (
        "lagging.goes-on",
        "lagging",
        ("lagging", 'room_behind = "80 mm"', 'room_behind = "74 mm"'),
        (),
        ("c_l", 74 - 70, "beside the lagging"),
    ),
    (
        "valve.passes-its-seat",
        "valve",
        ("block", 'room_beyond = "200 mm"', 'room_beyond = "158 mm"'),
        (),
        ("c_l", 158 - 154, "beyond the opening of the chamber"),
    ),
]


@pytest.mark.parametrize(("rule", "component", "change", "beside", "said"), SAID)
def test_a_finding_says_where_the_part_does_not_pass(
    workshop: DesignFolder,
    rule: str,
    component: str,
    change: Change,
    beside: tuple[str, ...],
    said: tuple[str, float, str],
) -> None:
    """The room that is left is the way less the part, by hand beside each row."""
    symbol, room, where = said
    check = write(workshop, change, only=with_links(component, change[0], *beside)).only(rule, component)
    expect_finding(check, says=where)
    assert on_sheet(check, symbol) * 1e3 == pytest.approx(room)


#: What a rule needs on another part, and the part, the parts that are there, and what is said.
WANTING = [
    ("block.enters-its-frames", "block", (), "no locating face says that it takes block"),
    ("gear.enters-its-box", "cambox", ("tappet",), "no cam lifts a tappet of cambox"),
    ("ring.opens-over-piston", "ring", (), "no piston has a groove that takes ring"),
    ("rod.enters", "rod", (), "no stuffing box says that it seals rod"),
    ("cover.enters", "cover-back", (), "no bolted joint says that it holds cover-back"),
    ("box.enters", "gland", (), "no bolted joint says that it holds gland"),
]


@pytest.mark.parametrize(("rule", "component", "beside", "says"), WANTING)
def test_a_part_that_is_not_drawn_is_told(
    workshop: DesignFolder, rule: str, component: str, beside: tuple[str, ...], says: str
) -> None:
    only = with_links(component, *beside)
    if component == "ring":
        only -= {"piston"}
    expect_not_assessed(write(workshop, only=only).only(rule, component), says)


def test_a_block_without_fittings_has_none_to_screw_in(workshop: DesignFolder) -> None:
    none = ("block", "relief_count = 1\ndrain_cock = true", "relief_count = 0\ndrain_cock = false")
    check = write(workshop, none, only={"block"}).only("fitting.goes-in")
    expect_not_assessed(check, "no end of block has a relief valve or a drain cock")


def test_studs_in_a_cover_that_hold_another_part_need_not_pass_it(workshop: DesignFolder) -> None:
    """Those of the gland are screwed into the cover; a hole of 24 mm in the gland stops no stud of the cover."""
    beside = ("studs-gland", 'screwed_into = "block"', 'screwed_into = "cover-back"')
    tight = ("studs-gland", 'hole = "26 mm"', 'hole = "24 mm"')
    only = with_links("studs-gland", "studs-cover-back", "liner")
    folder = write(workshop, beside, tight, only=only)
    expect_conforms(folder.only("cover.enters", "cover-back"))
    expect_finding(folder.only("box.enters", "gland"))


def test_a_cover_without_a_spigot_enters_nothing(workshop: DesignFolder) -> None:
    """0 mm is the size of a spigot that is not there."""
    none = (
        "cover-back",
        'spigot_diameter = "499.5 mm"\nspigot_enters = "bore of the liner"',
        'spigot_diameter = "0 mm"',
    )
    only = with_links("studs-cover-back")
    expect_conforms(write(workshop, none, only=only).only("cover.enters", "cover-back"))


@pytest.mark.parametrize(("bore", "outcome"), [("86.5 mm", "conforms"), ("86.45 mm", "finding")])
def test_a_cam_that_just_passes_its_housing_by_hand_needs_no_lid(
    workshop: DesignFolder, bore: str, outcome: str
) -> None:
    """2 (30 + 11 + 2) = 86 mm, and 0.5 mm: 86.5 mm is enough, though the lid of 20 mm takes no cam of 40 mm."""
    changes = (
        ("cam", 'base_radius = "50 mm"', 'base_radius = "30 mm"'),
        ("cam", 'lift = "15 mm"\nramp_height = "1 mm"', 'lift = "11 mm"\nramp_height = "2 mm"'),
        ("cambox", 'lid_width = "60 mm"', 'lid_width = "20 mm"'),
        ("cambox", 'bearing_bore = "120 mm"', f'bearing_bore = "{bore}"'),
    )
    folder = write(workshop, *changes, only=with_links("cam"))
    assert folder.only("gear.enters-its-box", "cambox").outcome == outcome


@pytest.mark.parametrize(("length", "outcome"), [("132.6 mm", "conforms"), ("132.4 mm", "finding")])
def test_a_cam_with_a_table_is_as_wide_as_its_greatest_lift(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    """2 (50 + 16) = 132 mm, and 0.5 mm along the lid."""
    changes = (
        ("cam", 'lift = "15 mm"\nramp_height = "1 mm"', 'table = ["1 mm", "16 mm", "2 mm"]'),
        ("cambox", 'lid_length = "200 mm"', f'lid_length = "{length}"'),
    )
    folder = write(workshop, *changes, only=with_links("cam"))
    assert folder.only("gear.enters-its-box", "cambox").outcome == outcome


def test_a_lens_ring_of_another_part_is_on_no_pipe(workshop: DesignFolder) -> None:
    on_block = ("lens", 'of = "pipe"', 'of = "block"')
    check = write(workshop, on_block, only={"lens", "block"}).only("pipe.goes-in", "lens")
    expect_not_applicable(check, "no pipe carries its seats")


def test_one_loose_flange_is_enough_for_a_collar(workshop: DesignFolder) -> None:
    """The flange at the other end is welded on."""
    folder = write(workshop, only=with_links("flange", "lens"))
    other = 'kind = "pipe-flange"\nid = "other"\nof = "pipe"\nheld = "welded on"\n'
    (folder.root / "other.toml").write_text(other, encoding="utf-8")
    expect_conforms(folder.only("pipe.goes-in", "pipe"))


def test_a_ring_of_steel_bears_its_proof_stress(workshop: DesignFolder) -> None:
    """Half of 240 MPa; its tensile strength of 400 MPa says nothing of a metal that yields."""
    steel = ("ring", '"ring-iron"', '"known-steel"')
    check = write(workshop, steel, only=with_links("ring", "piston")).only("ring.opens-over-piston")
    assert on_sheet(check, "σ_all") / 1e6 == pytest.approx(0.5 * 240)


@pytest.mark.parametrize(("side", "outcome"), [("valve", "conforms"), ("gear", "finding")])
def test_the_side_of_a_spindle_of_one_piece_is_said(workshop: DesignFolder, side: str, outcome: str) -> None:
    one = (
        "spindle",
        'enters_from = "valve side"',
        f'enters_from = "{side} side"\nvalve_held.by = "forged in one"',
    )
    check = write(workshop, one, only=with_links("spindle")).only("spindle.enters")
    assert check.outcome == outcome
    words = f"of one piece with its valve, it goes in from the {side} side"
    assert check.judgement is not None
    assert any(part.says == words for part in check.judgement.every)


COVERED = with_links("seat-upper", "cover-over", "valve")


@pytest.mark.parametrize(
    ("opening", "cover", "outcome"),
    [("164.29 mm", "230 mm", "finding"), ("164.31 mm", "160 mm", "conforms")],
)
def test_the_opening_of_the_block_counts_before_that_of_its_cover(
    workshop: DesignFolder, opening: str, cover: str, outcome: str
) -> None:
    """163.8 + 0.5 = 164.3 mm."""
    changes = (
        ("block", 'opening = "230 mm"', f'opening = "{opening}"'),
        ("cover-over", 'bore = "230 mm"', f'bore = "{cover}"'),
    )
    folder = write(workshop, *changes, only=COVERED)
    assert folder.only("seat.passes-the-other-bore", "seat-upper").outcome == outcome


def test_a_cover_that_states_no_bore_leaves_another_to_state_it(workshop: DesignFolder) -> None:
    none = ("block", 'opening = "230 mm"\n', "")
    folder = write(workshop, none, only=COVERED)
    silent = OVER.replace('"cover-over"', '"a-cover"').replace('bore = "230 mm"\n', "")
    (folder.root / "a-cover.toml").write_text(silent, encoding="utf-8")
    expect_conforms(folder.only("seat.passes-the-other-bore", "seat-upper"))


@pytest.mark.parametrize(
    ("bore", "counts"),
    [
        ('end = "front"\nserves = "inlet"\nbeat = "upper"', True),
        ('end = "front"\nserves = "inlet"\nbeat = "lower"', False),
        ('end = "front"\nserves = "exhaust"\nbeat = "upper"', False),
        ('end = "back"\nserves = "inlet"\nbeat = "upper"', False),
    ],
)
def test_a_seat_passes_the_other_bore_of_its_own_valve_alone(
    workshop: DesignFolder, bore: str, *, counts: bool
) -> None:
    """160.2 mm does not pass a bore of 100 mm, where that is on its way."""
    small = (
        "block",
        "[seat_bores.exhaust]",
        f'[seat_bores.small]\ndiameter = "100 mm"\n{bore}\n[seat_bores.exhaust]',
    )
    check = write(workshop, small, only={"block", "seat-lower"}).only("seat.passes-the-other-bore")
    assert check.outcome == ("finding" if counts else "conforms")


@pytest.mark.parametrize(
    ("port", "counts"),
    [
        ('of_end = "front"', True),
        ('of_end = "front"\nserves = "exhaust"', True),
        ('of_end = "front"\nserves = "inlet"', False),
        ('of_end = "back"', False),
    ],
)
def test_a_seat_passes_the_ports_that_lead_to_it_alone(
    workshop: DesignFolder, port: str, *, counts: bool
) -> None:
    """30 mm on its edge does not pass a port of 20 mm; the one of 40 mm it passes."""
    low = (
        "block",
        "[ports.front]",
        f'[ports.low]\n{port}\nheight = "20 mm"\nwidth = "300 mm"\n[ports.front]',
    )
    check = write(workshop, low, only={"block", "seat-exhaust"}).only("seat.passes-the-other-bore")
    assert check.outcome == ("finding" if counts else "conforms")
    assert ("across the port low" in check.says) is counts


#: A valve of one beat on the exhaust seat, which lifts into the cylinder.
LIFTING = """
kind = "poppet-valve"
id = "valve"
material = "known-steel"
beats = 1
outside_diameter = "190 mm"
height = "35 mm"
upper_beat.seat = "seat-exhaust"
"""


@pytest.mark.parametrize(
    ("old", "new", "outcome", "where"),
    [
        # 190 + 0.5 mm through the bore of the cylinder and along the port; 35 + 0.5 mm across it
        ('diameter = "560 mm"', 'diameter = "190.6 mm"', "conforms", ""),
        ('diameter = "560 mm"', 'diameter = "190.4 mm"', "finding", "through the bore of the cylinder"),
        ('width = "300 mm"', 'width = "190.6 mm"', "conforms", ""),
        ('width = "300 mm"', 'width = "190.4 mm"', "finding", "along the port front"),
        ('height = "40 mm"', 'height = "35.6 mm"', "conforms", ""),
        ('height = "40 mm"', 'height = "35.4 mm"', "finding", "across the port front"),
    ],
)
def test_a_valve_that_lifts_into_the_cylinder_goes_in_by_way_of_it(
    workshop: DesignFolder, old: str, new: str, outcome: str, where: str
) -> None:
    folder = write(workshop, ("block", old, new), only={"block", "seat-exhaust"})
    (folder.root / "valve.toml").write_text(LIFTING, encoding="utf-8")
    check = folder.only("valve.passes-its-seat")
    assert check.outcome == outcome
    assert where in check.says


@pytest.mark.parametrize(("room", "outcome"), [("87.1 mm", "conforms"), ("86.9 mm", "finding")])
def test_a_valve_of_one_beat_has_no_lower_rim_and_its_own_height(
    workshop: DesignFolder, room: str, outcome: str
) -> None:
    """82 + 5 = 87 mm beyond the opening, whatever a lower beat would add."""
    changes = (
        ("valve", "beats = 2", "beats = 1"),
        ("valve", 'beat_distance = "72 mm"\n', ""),
        ("valve", 'rim_diameter = "149 mm"\n', ""),
        ("block", 'room_beyond = "200 mm"', f'room_beyond = "{room}"'),
    )
    check = write(workshop, *changes, only=with_links("valve")).only("valve.passes-its-seat")
    assert check.outcome == outcome


def test_a_cover_held_by_small_holes_is_a_hold_once_released(workshop: DesignFolder) -> None:
    tight = ("studs-cover-back", 'hole = "26 mm"', 'hole = "24.4 mm"')
    folder = write(workshop, tight, stage="released", only=with_links("studs-cover-back", "liner"))
    expect_finding(folder.only("cover.enters", "cover-back"), grade=Grade.HOLD)


@pytest.mark.parametrize(
    ("bearings", "bore", "outcome"),
    [
        ("", "64.81 mm", "conforms"),  # 60 + 2 × 0.04 × 60 = 64.8 mm
        ("", "64.79 mm", "finding"),
        ('[bearings.a]\njournal = "50 mm"\n', "60.01 mm", "conforms"),  # the greatest diameter, 60 mm, passes
        ('[bearings.a]\njournal = "50 mm"\n[bearings.b]\nlength = "50 mm"\n', "64.79 mm", "finding"),
        ('[bearings.a]\njournal = "50 mm"\n[bearings.b]\njournal = "55.6 mm"\n', "60.05 mm", "conforms"),
        ('[bearings.a]\njournal = "50 mm"\n[bearings.b]\njournal = "55.7 mm"\n', "60.05 mm", "finding"),
    ],
)
def test_housings_have_room_for_bushes_round_the_shaft(
    workshop: DesignFolder, bearings: str, bore: str, outcome: str
) -> None:
    """A journal of 55.6 mm wants 55.6 × 1.08 = 60.048 mm, one of 55.7 mm 60.156 mm; the cams go through the lid."""
    changes = (
        ("shaft", 'greatest_diameter = "70 mm"\n', f'greatest_diameter = "60 mm"\n{bearings}'),
        ("cambox", 'bearing_bore = "120 mm"', f'bearing_bore = "{bore}"'),
    )
    folder = write(workshop, *changes, only=with_links("cam"))
    assert folder.only("gear.enters-its-box", "cambox").outcome == outcome
