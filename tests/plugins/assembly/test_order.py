"""The implied order, the order that is stated, and overhauls: block.order-of-assembly and assembly."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings, strategies as st

from speclint import Grade
from speclint.checking import Check
from speclint.specs import ValveSeat
from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_assessed,
)
from speclint_assembly.inputs.implied_order import after_all, in_order, loop_in
from speclint_assembly.inputs.known import Force
from tests.plugins.assembly.bench import CAMBOX, OVERHAULS, STEPS, assembly, write

IMPLIED, STATED = "block.order-of-assembly", "assembly.order"
COMPLETE, OVERHAUL = "assembly.steps-complete", "assembly.overhauls"

#: Each two parts that must go in in this order, and the two sizes that force it.
FORCED = [
    ("seat-lower", "seat-upper", "160.2 mm, does not pass bore of seat-upper, 152 mm"),
    ("seat-lower", "valve", "164 mm, does not pass bore of seat-lower, 142 mm"),
    ("seat-upper", "valve", "164 mm, does not pass bore of seat-upper, 152 mm"),
    ("seat-upper", "keeper", "163.8 mm, does not pass bore of keeper, 160 mm"),
    (
        "seat-exhaust",
        "liner",
        "length of seat-exhaust, 30 mm, does not pass height of the port of liner, 28 mm",
    ),
    ("valve", "cage", "164 mm, does not pass opening of cage, 12 mm"),
    ("seat-lower", "cover-over", "160.2 mm, does not pass central hole of cover-over, 40 mm"),
    ("valve", "cover-over", "164 mm, does not pass central hole of cover-over, 40 mm"),
    ("cage", "cover-over", "220 mm, does not pass central hole of cover-over, 40 mm"),
    ("liner", "piston", "497 mm, stands in bore of liner, 500 mm"),
    ("liner", "cover-front", "560.3 mm, does not pass central hole of cover-front, 0 mm"),
    ("piston", "cover-front", "497 mm, does not pass central hole of cover-front, 0 mm"),
    ("ring", "piston", "thickness of ring, 16 mm, does not pass the room beside piston in its bore, 1.5 mm"),
    ("rod", "piston", "140 mm, does not pass neck bush of box, 90.6 mm"),
    ("box", "piston", "497 mm, does not pass neck bush of box, 90.6 mm"),
    ("gland", "crosshead", "240 mm, does not pass gland bore of box, 91 mm"),
    ("cover-back", "box", "149 mm, stands in central hole of cover-back, 150 mm"),
    ("box", "gland", "bore of the gland of box, 91 mm, stands in bore of box, 130 mm"),
    ("studs-cover-front", "cover-front", "800 mm, does not pass circle of studs-cover-front, 690 mm"),
    ("rod", "crosshead", "140 mm, does not pass neck bush of box, 90.6 mm"),
    ("cambox", "cam", "132 mm, does not pass bearing bore of cambox, 120 mm"),
    ("cambox", "tappet", "29.9 mm, stands in tappet bore of cambox, 30 mm"),
    ("tappet", "cam", "40 mm over the foot of tappet does not pass tappet bore of cambox, 30 mm"),
    ("tappet", "shaft", "40 mm over the foot of tappet does not pass tappet bore of cambox, 30 mm"),
    ("cover-back", "lagging-cover", "500 mm, lies over outside diameter of cover-back, 750 mm"),
    ("cambox", "shaft", "60 mm, stands in bearing bore of cambox, 120 mm"),
    ("cam", "shaft", "132 mm, does not pass bearing bore of cambox, 120 mm"),
    ("flange", "pipe", "190 mm, does not pass bore of flange, 172 mm"),
    ("pipe", "lagging", "168 mm, stands in inside diameter of lagging, 168 mm"),
]


def listed(check: Check) -> dict[str, str]:
    """The lines of the list on the sheet: part, and what it says of it."""
    lines = [step for step in check.steps if step.name[:1].isdigit()]
    return {step.name.partition(". ")[2]: str(step.value) for step in lines}


@pytest.fixture(scope="module")
def implied_order(tmp_path_factory: pytest.TempPathFactory) -> Check:
    """The order of the small engine."""
    check = write(DesignFolder(tmp_path_factory.mktemp("engine"))).only(IMPLIED)
    expect_conforms(check)
    return check


@pytest.fixture(scope="module")
def implied(implied_order: Check) -> dict[str, str]:
    """Its list: part, and what it says of it."""
    return listed(implied_order)


@pytest.mark.parametrize(("first", "then", "says"), FORCED)
def test_the_list_names_both_sizes(implied: dict[str, str], first: str, then: str, says: str) -> None:
    """Sizes as they stand in the specs of the small engine."""
    names = list(implied)
    assert names.index(first) < names.index(then)
    line = next(one for one in implied[first].split("; ") if one.startswith(f"before {then}, since"))
    assert line.endswith(says)


def test_the_sizes_of_an_order_are_numbered_from_1_each_once(implied_order: Check) -> None:
    """The gland is passed by the crosshead and stands in the box: its bore is one size."""
    numbers = [int(one.symbol[1:-4]) for one in implied_order.steps if re.fullmatch(r"D\d+_min", one.symbol)]
    assert len(numbers) > 20
    assert numbers == list(range(1, len(numbers) + 1))


def test_a_size_that_passes_forces_nothing(workshop: DesignFolder) -> None:
    """A liner port of 31 mm takes the exhaust seat of 30 mm on its edge, so that the seat may go in after the liner."""
    wide = ("liner", 'height = "28 mm"', 'height = "31 mm"')
    lines = listed(write(workshop, wide).only(IMPLIED))
    assert "before liner" not in lines.get("seat-exhaust", "")


@pytest.mark.parametrize(
    ("old", "new", "forced"),
    [
        ('follower_radius = "20 mm"', 'follower_radius = "15.1 mm"', True),
        ('follower_radius = "20 mm"', 'follower_radius = "14.9 mm"', False),
        ('follower = "roller"', 'follower = "flat foot"\nfoot_length = "50 mm"', True),
        ('follower = "roller"', 'follower = "flat foot"', False),
        ('guide_length = "100 mm"', 'guide_length = "24.1 mm"', True),
        ('guide_length = "100 mm"', 'guide_length = "23.9 mm"', False),
        ('overhang = "24 mm"\n', "", False),
    ],
)
def test_a_tappet_that_goes_in_from_below_goes_in_before_its_cam(
    workshop: DesignFolder, old: str, new: str, *, forced: bool
) -> None:
    """Its roller does not pass the guide of 30 mm, and 24 mm under the guide are no room for a stem of 100 mm."""
    lines = listed(write(workshop, ("tappet", old, new)).only(IMPLIED))
    assert ("before cam, since" in lines.get("tappet", "")) is forced


@pytest.mark.parametrize(("top", "says"), [("15 mm", "130 mm"), ("15 mm ±0.5", "131 mm"), ("9.9 mm", "")])
def test_the_circle_over_the_nose_of_a_cam_with_a_table(workshop: DesignFolder, top: str, says: str) -> None:
    """2 × (50 + 15) = 130 mm, 2 × 65.5 = 131 mm with the limits; 2 × 59.9 = 119.8 mm pass the bore of 120 mm."""
    table = f'table = ["1 mm", "{top}", "2 mm"]\n'
    lines = listed(write(workshop, ("cam", 'lift = "15 mm"\nramp_height = "1 mm"\n', table)).only(IMPLIED))
    assert ("over the nose" in lines["cambox"]) is bool(says)
    assert f"circle over the nose of cam, {says}" in lines["cambox"] or not says


def test_steps_that_no_size_forces_into_an_order_are_not_assessed(workshop: DesignFolder) -> None:
    """A block of which only the shaft and the lagging are in the list."""
    folder = steps_of(workshop, ("shaft", "lagging"), "")
    expect_not_assessed(folder.only(STATED), "no size that is stated forces an order")


@pytest.mark.parametrize(
    ("part", "left_out"),
    [
        ("cam", 'lifts = "tappet"\n'),
        ("cam", 'turns_on = "shaft"\n'),
        ("tappet", 'carried_in = "cambox"\n'),
        ("cambox", 'bearing_bore = "120 mm"\n'),
    ],
)
def test_a_cam_of_which_a_link_or_a_size_is_wanting_is_forced_nowhere_by_it(
    workshop: DesignFolder, implied: dict[str, str], part: str, left_out: str
) -> None:
    lines = listed(write(workshop, (part, left_out, "")).only(IMPLIED))
    assert lines
    assert "bearing bore" in implied["cambox"]
    assert not [line for line in lines.values() if "bearing bore" in line]


@pytest.mark.parametrize(
    ("side", "gap", "forced"),
    [("gear side", "329 mm", True), ("gear side", "331 mm", False), ("valve side", "180 mm", False)],
)
def test_a_spindle_from_the_gear_side_goes_in_before_the_box_that_carries_its_gear(
    workshop: DesignFolder, side: str, gap: str, *, forced: bool
) -> None:
    """330 mm of spindle do not pass a gap of 329 mm under its box; a box of other gear stands in no spindle's way."""
    changes = (
        ("spindle", 'enters_from = "valve side"', f'enters_from = "{side}"'),
        ("cambox", 'datum_length = "180 mm"', f'datum_length = "{gap}"'),
    )
    folder = write(workshop, *changes)
    other = CAMBOX.replace('id = "cambox"', 'id = "other-box"')
    (folder.root / "other-box.toml").write_text(other, encoding="utf-8")
    says = listed(folder.only(IMPLIED)).get("spindle", "")
    length = "heated length of spindle, 330 mm, does not pass datum length of cambox"
    assert (f"before cambox, since {length}" in says) is forced
    assert "other-box" not in says


def test_a_gland_on_the_cover_closes_the_box_in_it(workshop: DesignFolder) -> None:
    """A crosshead of 240 mm does not pass its bore of 91 mm."""
    lines = listed(write(workshop, ("gland", 'of = "box"', 'of = "cover-back"')).only(IMPLIED))
    assert "before crosshead, since" in lines["gland"]


@pytest.mark.parametrize(("opening", "forced"), [("799 mm", True), ("801 mm", False)])
def test_a_cover_wider_than_the_opening_of_the_frames_goes_on_between_them(
    workshop: DesignFolder, opening: str, *, forced: bool
) -> None:
    """The front cover is 800 mm over all; the block of 900 mm goes between the frames another way."""
    wide = ("face", 'opening_width = "910 mm"', f'opening_width = "{opening}"')
    lines = listed(write(workshop, wide).only(IMPLIED))
    says = f"800 mm, does not pass opening width of face, {opening}"
    assert (
        f"before cover-front, since outside diameter of cover-front, {says}" in lines.get("bolts", "")
    ) is forced


def test_a_seat_of_no_bore_leaves_the_others_in_their_order(workshop: DesignFolder) -> None:
    lines = listed(write(workshop, ("seat-exhaust", 'in_bore = "exhaust"\n', "")).only(IMPLIED))
    assert "before seat-upper, since" in lines["seat-lower"]


def test_two_seats_that_must_each_go_in_first_are_a_loop(workshop: DesignFolder) -> None:
    """The upper seat from the cylinder passes the lower place, the lower from the chamber the upper place."""
    check = write(workshop, ("seat-upper", '"chamber"', '"cylinder"')).only(IMPLIED)
    expect_finding(check, grade=Grade.NONCONFORMITY, says="seat-lower before seat-upper")
    assert "seat-upper before seat-lower: outside diameter of seat-upper, 163.8 mm" in check.says


@pytest.mark.parametrize("form", ["plain", "cotter slot"])
def test_the_larger_diameter_of_a_section_counts_whatever_it_is_called(
    workshop: DesignFolder, form: str
) -> None:
    """140 mm of the flange does not pass the neck bush of 90.6 mm."""
    called = ("rod", 'form = "shoulder"', f'form = "{form}"')
    lines = listed(write(workshop, called).only(IMPLIED))
    assert "140 mm, does not pass neck bush of box, 90.6 mm" in lines["rod"]


@pytest.mark.parametrize(
    ("fastened", "flange", "goes_in"),
    [("nut", "140 mm", True), ("forged in one", "90.5 mm", True), ("forged in one", "90.7 mm", False)],
)
def test_a_box_goes_on_no_rod_whose_two_ends_do_not_pass_it(
    workshop: DesignFolder, fastened: str, flange: str, goes_in: bool
) -> None:
    """The neck bush is 90.6 mm at its least: a piston of 497 mm forged on does not pass it, nor a flange of 90.7 mm."""
    check = write(
        workshop, ("piston", 'by = "nut"', f'by = "{fastened}"'), ("rod", '"140 mm"', f'"{flange}"')
    ).only(IMPLIED)
    if goes_in:
        expect_conforms(check)
    else:
        expect_finding(check, says="box before rod")


def test_an_order_needs_sizes(workshop: DesignFolder) -> None:
    files = {"block.toml": 'kind = "cylinder-block"\nid = "block"\n'}
    expect_not_assessed(workshop.write(files).only(IMPLIED), "no size that is stated")


def steps_of(workshop: DesignFolder, steps: tuple[str, ...], overhauls: str = OVERHAULS) -> DesignFolder:
    folder = write(workshop)
    (folder.root / "assembly.toml").write_text(assembly(steps, overhauls), encoding="utf-8")
    return folder


def test_the_stated_order_can_be_done(workshop: DesignFolder) -> None:
    folder = write(workshop)
    for rule in (STATED, COMPLETE, OVERHAUL):
        expect_conforms(folder.only(rule))


@pytest.fixture(scope="module")
def backwards(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """What is said of the stated order turned round."""
    check = steps_of(DesignFolder(tmp_path_factory.mktemp("engine")), STEPS[::-1]).only(STATED)
    assert check.outcome == "finding"
    return [check.says, *(one.says for one in check.failing)]


@pytest.mark.parametrize(("first", "then", "says"), FORCED)
def test_each_two_steps_the_other_way_round_are_told(
    backwards: list[str], first: str, then: str, says: str
) -> None:
    """The step that cannot be done, and the size that stops it."""
    early, late = (len(STEPS) - STEPS.index(step) for step in (first, then))
    step = f"step {early}, {first}, cannot be done after step {late}, {then}: "
    assert any(one.startswith(step) and one.endswith(says) for one in backwards), backwards


@pytest.mark.parametrize(("first", "then"), [("seat-lower", "seat-upper"), ("pipe", "lagging")])
def test_two_steps_that_change_places_are_told(workshop: DesignFolder, first: str, then: str) -> None:
    places = {first: then, then: first}
    check = steps_of(workshop, tuple(places.get(step, step) for step in STEPS)).only(STATED)
    expect_finding(check, says=f"{first}, cannot be done after step")


def test_a_part_under_pressure_in_the_wrong_step_is_held_once_released(workshop: DesignFolder) -> None:
    """The stuffing box cannot follow the piston: a hold. A ring that cannot is no pressure part."""
    for early, late, grade in (("box", "piston", Grade.HOLD), ("ring", "piston", Grade.NONCONFORMITY)):
        places = {early: late, late: early}
        pair = tuple(places.get(step, step) for step in STEPS if step in (early, late))
        folder = write(workshop, stage="released")
        (folder.root / "assembly.toml").write_text(assembly(pair), encoding="utf-8")
        expect_finding(folder.only(STATED), grade=grade)


def test_steps_name_each_part_once(workshop: DesignFolder) -> None:
    expect_finding(steps_of(workshop, STEPS[1:]).only(COMPLETE), says="seat-lower is in no step")
    expect_finding(steps_of(workshop, (*STEPS, "cage")).only(COMPLETE), says="cage is in 2 steps")
    expect_finding(steps_of(workshop, (*STEPS, "face")).only(COMPLETE), says="face is no part of block")
    expect_not_assessed(steps_of(workshop, ()).only(STATED), "steps are not stated")


def test_an_overhaul_takes_down_what_stands_in_its_way(workshop: DesignFolder) -> None:
    """The ring comes out with the piston, and that after the front cover."""
    less = OVERHAULS.replace(
        'takes_down = ["piston", "cover-front"]\n[overhauls.valve]',
        'takes_down = ["piston"]\n[overhauls.valve]',
    )
    check = steps_of(workshop, STEPS, less).only(OVERHAUL)
    expect_finding(check, grade=Grade.OBSERVATION, says="rings must take down cover-front, since")
    none = OVERHAULS.replace(', "spring"]', "]")
    expect_finding(steps_of(workshop, STEPS, none).only(OVERHAUL), says="no overhaul takes out: spring")


def test_without_an_overhaul_nothing_is_taken_out(workshop: DesignFolder) -> None:
    check = steps_of(workshop, STEPS, "").only(OVERHAUL)
    expect_finding(check, grade=Grade.OBSERVATION, says="no overhaul takes out: ")
    named = set(check.says.removeprefix("no overhaul takes out: ").split(", "))
    seats = {"seat-exhaust", "seat-lower", "seat-upper"}
    assert named == {"box", "cambox", "liner", "ring", "spring", "valve", *seats}


def test_a_step_that_names_no_part_is_told_with_the_nearest(workshop: DesignFolder) -> None:
    folder = steps_of(workshop, ("seat-lowr", "seat-upper"))
    said = " ".join(str(one) for one in folder.assess().complaints)
    assert "assembly.toml" in said
    assert "seat-lower" in said


parts = st.lists(st.sampled_from("abcdefgh"), min_size=2, max_size=8, unique=True)


@given(names=parts, data=st.data())
@settings(max_examples=50)
def test_an_order_keeps_every_force_and_a_loop_is_always_found(names: list[str], data: st.DataObject) -> None:
    """Forces that follow one order have no loop, and are all kept; one more, backwards along a way, makes a loop."""
    pairs = [(one, other) for i, one in enumerate(names) for other in names[i + 1 :]]
    chosen = data.draw(st.lists(st.sampled_from(pairs), min_size=1, unique=True))
    forces = [Force(one, other, "") for one, other in chosen]
    known = {name: ValveSeat(id=name) for name in names}
    order = in_order(known, forces)
    assert loop_in(forces) == []
    assert sorted(order) == sorted({name for pair in chosen for name in pair})
    assert all(order.index(force.first) < order.index(force.then) for force in forces)
    first = chosen[0][0]
    last = data.draw(st.sampled_from(sorted(after_all([first], forces))))
    loop = loop_in([*forces, Force(last, first, "")])
    assert loop
    assert loop[-1].then == loop[0].first
