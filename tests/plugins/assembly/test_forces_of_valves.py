"""What forces seats, valve, cage, spindle and their gear into an order: a few parts at a time."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.assembly.forced import LOWER, UPPER, forced, instead, without

BLOCK = """
kind = "cylinder-block"
[ends.front]
[ends.back]
[ports.front]
of_end = "front"
[seat_bores.upper]
end = "front"
serves = "exhaust"
beat = "upper"
opens_into = "chamber"
[seat_bores.lower]
end = "front"
serves = "exhaust"
beat = "lower"
opens_into = "chamber"
"""
SEATS = {"block": BLOCK, "upper": f'{UPPER}length = "30 mm"\n', "lower": LOWER}
#: Which seat must go in first, and what says so.
LOWER_FIRST = {("lower", "upper"): "outside diameter of lower, 160 mm, does not pass bore of upper, 152 mm"}
UPPER_FIRST = {("upper", "lower"): "outside diameter of upper, 164 mm, does not pass bore of lower, 142 mm"}


def everywhere(parts: dict[str, str], old: str, new: str) -> dict[str, str]:
    """The same parts, that all say something else; at least one must have said the old."""
    assert any(old in text for text in parts.values())
    return {name: text.replace(old, new) for name, text in parts.items()}


def of_bore(name: str, old: str, new: str) -> dict[str, str]:
    """The same seats, of which one bore of the block says something else."""
    first, head, rest = BLOCK.partition(f"[seat_bores.{name}]")
    assert old in rest
    return {**SEATS, "block": first + head + rest.replace(old, new, 1)}


CHAMBER, CYLINDER = 'entered_from = "chamber"', 'entered_from = "cylinder"'
LIFTS, AWAY = 'opens_into = "chamber"', 'opens_into = "cylinder"'


@pytest.mark.parametrize(
    ("parts", "wanted"),
    [
        (SEATS, LOWER_FIRST),
        # both from below, the valve lifting upwards: the upper seat passes the lower place
        (everywhere(SEATS, CHAMBER, CYLINDER), UPPER_FIRST),
        # a valve that lifts into the cylinder, and its seats from there
        (everywhere(everywhere(SEATS, CHAMBER, CYLINDER), LIFTS, AWAY), LOWER_FIRST),
        (everywhere(SEATS, LIFTS, AWAY), UPPER_FIRST),
        # each from its own side: neither passes the other
        (instead(SEATS, "lower", CHAMBER, CYLINDER), {}),
        # a side, an end, what is served or a beat that is not known forces nothing
        (without(SEATS, "lower", CHAMBER), {}),
        (of_bore("lower", f"{LIFTS}\n", ""), {}),
        (everywhere(everywhere(SEATS, f"{CHAMBER}\n", ""), f"{LIFTS}\n", ""), {}),
        (everywhere(SEATS, 'end = "front"\nserves', "serves"), {}),
        (everywhere(SEATS, 'serves = "exhaust"\n', ""), {}),
        (of_bore("lower", 'beat = "lower"\n', ""), {}),
        (of_bore("upper", 'beat = "upper"\n', ""), {}),
        (without(SEATS, "upper", 'in_bore = "upper"'), {}),
        (without(SEATS, "lower", 'in_bore = "lower"'), {}),
        # seats of two valves, by their end or by what they serve
        (of_bore("upper", 'end = "front"', 'end = "back"'), {}),
        (of_bore("upper", '"exhaust"', '"inlet"'), {}),
        (of_bore("upper", 'beat = "upper"', 'beat = "lower"'), {}),
        # 160 mm passes a seat of 160 mm
        (instead(SEATS, "upper", '"152 mm"', '"160 mm"'), {}),
    ],
)
def test_a_seat_goes_in_before_the_one_that_it_passes(
    workshop: DesignFolder, parts: dict[str, str], wanted: dict[tuple[str, str], str]
) -> None:
    """From the side to which the valve lifts the lower one first, from the other side the upper one."""
    assert forced(workshop, parts) == wanted


def test_the_seat_of_another_valve_does_not_stand_in_the_way(workshop: DesignFolder) -> None:
    """Two seats of one valve of two: the third has no bore that is known."""
    third = LOWER.replace('in_bore = "lower"\n', "").replace("142 mm", "100 mm")
    assert forced(workshop, {**SEATS, "third": third}) == LOWER_FIRST


LINER = """
kind = "cylinder-liner"
housed_in = "block"
[ports.front]
matches = "front"
height = "28 mm"
width = "300 mm"
"""
FROM_CYLINDER = {"block": BLOCK, "upper": SEATS["upper"].replace(CHAMBER, CYLINDER), "liner": LINER}
HIGH = "length of upper, 30 mm, does not pass height of the port of liner, "
WIDE = "outside diameter of upper, 164 mm, does not pass width of the port of liner, "


def port(**sizes: str) -> dict[str, str]:
    """The exhaust seat and the liner, with a port of another height and width."""
    parts = FROM_CYLINDER
    for key, old in (("height", "28 mm"), ("width", "300 mm")):
        parts = instead(parts, "liner", f'{key} = "{old}"', f'{key} = "{sizes.get(key, old)}"')
    return parts


def served(by_port: str, of_bore: str = "exhaust") -> dict[str, str]:
    """The same, the port and the bore of the seat for one purpose each, if any."""
    bores = BLOCK.replace('serves = "exhaust"\n', f'serves = "{of_bore}"\n' if of_bore else "")
    return {
        **FROM_CYLINDER,
        "block": bores.replace("[ports.front]\n", f'[ports.front]\nserves = "{by_port}"\n'),
    }


NO_END = everywhere(FROM_CYLINDER, 'end = "front"\nserves', "serves")


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        (port(), f"{HIGH}28 mm"),
        (port(height="29.9 mm"), f"{HIGH}29.9 mm"),
        (port(height="30 mm"), ""),
        (port(height="30 mm", width="163.9 mm"), f"{WIDE}163.9 mm"),
        (port(height="30 mm", width="164 mm"), ""),
        (instead(FROM_CYLINDER, "upper", CYLINDER, CHAMBER), ""),
        (without(FROM_CYLINDER, "upper", CYLINDER), ""),
        (without(FROM_CYLINDER, "upper", 'in_bore = "upper"'), ""),
        # a port of another end, of none, and a bore that says of none
        (instead(FROM_CYLINDER, "block", 'of_end = "front"', 'of_end = "back"'), ""),
        (without(FROM_CYLINDER, "block", 'of_end = "front"'), ""),
        (NO_END, ""),
        (without(NO_END, "block", 'of_end = "front"'), ""),
        (without(FROM_CYLINDER, "liner", 'matches = "front"'), ""),
        # a port for exhaust steam alone takes an exhaust seat; one for live steam does not lead to it
        (served("exhaust"), f"{HIGH}28 mm"),
        (served("inlet"), ""),
        (served("inlet", ""), ""),
    ],
)
def test_a_seat_from_the_cylinder_goes_in_before_a_liner_whose_port_it_does_not_pass(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert forced(workshop, parts) == ({("upper", "liner"): says} if says else {})


VALVE = """
kind = "poppet-valve"
outside_diameter = "158 mm"
beats = 2
retained = "cage"
[upper_beat]
seat = "upper"
[lower_beat]
seat = "lower"
"""
CAGE = 'kind = "valve-cage"\nsurrounds = "valve"\noutside_diameter = "180 mm"\nopening = "12 mm"\n'
COVER = 'kind = "chamber-cover"\ncloses = "block"\nover = "valve"\ncentral_hole = "40 mm"\n'
KEEPER = 'kind = "retaining-ring"\nretains = "upper"\nbore = "150 mm"\n'
#: A valve of two beats on both seats, in a cage under its cover; the upper seat with its ring.
VALVED = {**SEATS, "valve": VALVE, "cage": CAGE, "cover": COVER, "keeper": KEEPER}
SIZES = {
    "upper": "outside diameter of upper, 164 mm",
    "lower": "outside diameter of lower, 160 mm",
    "valve": "outside diameter of valve, 158 mm",
    "cage": "outside diameter of cage, 180 mm",
}
WAYS = {
    "upper": "bore of upper, 152 mm",
    "lower": "bore of lower, 142 mm",
    "keeper": "bore of keeper, 150 mm",
    "cage": "opening of cage, 12 mm",
    "cover": "central hole of cover, 40 mm",
}


def test_all_that_a_valve_in_its_cage_forces(workshop: DesignFolder) -> None:
    """The valve passes no seat; seats and valve no cage; neither these nor the cage the hole of the cover."""
    passes = {("lower", "upper"): "lower", ("upper", "keeper"): "upper"}
    passes |= {(part, "cage"): part for part in ("upper", "lower", "valve")}
    passes |= {(part, "cover"): part for part in ("upper", "lower", "valve", "cage")}
    wanted = {pair: f"{SIZES[large]}, does not pass {WAYS[pair[1]]}" for pair, large in passes.items()}
    for seat in ("upper", "lower"):
        wanted[seat, "valve"] = f"{SIZES['valve']}, does not pass {WAYS[seat]}"
    assert forced(workshop, VALVED) == wanted


@pytest.mark.parametrize(
    ("outside", "held"),
    [
        ("142 mm", set()),
        ("142.1 mm", {"lower"}),
        ("152 mm", {"lower"}),
        ("152 mm ±0.1", {"lower", "upper"}),
    ],
)
def test_a_valve_goes_in_after_the_seats_that_it_does_not_pass(
    workshop: DesignFolder, outside: str, held: set[str]
) -> None:
    """The lower seat is 142 mm, the upper 152 mm."""
    parts = instead({**SEATS, "valve": VALVE}, "valve", '"158 mm"', f'"{outside}"')
    assert {first for first, then in forced(workshop, parts) if then == "valve"} == held


PLATE = {**SEATS, "valve": VALVE.replace('"cage"', '"perforated plate"'), "cage": CAGE, "cover": COVER}
ONE_BEAT = "beats = 2\n", "beats = 1\n"


@pytest.mark.parametrize(
    ("parts", "outside", "seat"),
    [
        (PLATE, "142.1 mm", "lower"),
        (PLATE, "142 mm", ""),
        (instead(PLATE, "valve", *ONE_BEAT), "152.1 mm", "upper"),
        (instead(PLATE, "valve", *ONE_BEAT), "152 mm", ""),
        (without(PLATE, "valve", '[lower_beat]\nseat = "lower"'), "180 mm", ""),
    ],
)
def test_a_plate_below_a_valve_goes_in_before_the_lowest_seat(
    workshop: DesignFolder, parts: dict[str, str], outside: str, seat: str
) -> None:
    """Seats and valve need not pass its holes of 12 mm, nor the plate the cover above the valve."""
    found = forced(workshop, instead(parts, "cage", '"180 mm"', f'"{outside}"'))
    of_plate = {pair: says for pair, says in found.items() if pair[0] == "cage"}
    says = f"outside diameter of cage, {outside}, does not pass {WAYS.get(seat)}"
    assert of_plate == ({("cage", seat): says} if seat else {})
    assert not [first for first, then in found if then == "cage"]


SPINDLE = 'kind = "valve-spindle"\nmoves = "valve"\nenters_from = "gear side"\nheated_length = "330 mm"\n'
BOX = 'kind = "cam-box"\nmounted_on = "block"\ndatum_length = "329.9 mm"\n'
DRIVEN = {**SEATS, "valve": VALVE.replace("158", "140"), "spindle": SPINDLE, "box": BOX}
ROCKER = {"rocker": 'kind = "rocker"\nworks = "spindle"\ncarried_in = "box"\n'}
TAPPET = {"tappet": 'kind = "tappet"\nworks = "spindle"\ncarried_in = "box"\n'}
BOTH = {
    "rocker": 'kind = "rocker"\nworks = "spindle"\n',
    "tappet": 'kind = "tappet"\nworks = "rocker"\ncarried_in = "box"\n',
}
NEITHER = {"rocker": 'kind = "rocker"\nworks = "spindle"\n'}


@pytest.mark.parametrize(
    ("gear", "held"), [(ROCKER, True), (TAPPET, True), (BOTH, True), (NEITHER, False), ({}, False)]
)
@pytest.mark.parametrize(
    ("gap", "side", "short"),
    [
        ("329.9 mm", "gear side", True),
        ("330 mm", "gear side", False),
        ("329.9 mm", "valve side", False),
    ],
)
def test_a_spindle_too_long_for_the_gap_goes_in_before_the_box_of_its_gear(
    workshop: DesignFolder, gear: dict[str, str], gap: str, side: str, *, held: bool, short: bool
) -> None:
    """Of 330 mm, by whichever of rocker and tappet the box is known."""
    parts = instead({**DRIVEN, **gear}, "box", "329.9 mm", gap)
    found = forced(workshop, instead(parts, "spindle", "gear side", side))
    says = f"heated length of spindle, 330 mm, does not pass datum length of box, {gap}"
    assert found.get(("spindle", "box")) == (says if held and short else None)


GEAR = {
    **DRIVEN,
    "box": 'kind = "cam-box"\nmounted_on = "block"\ntappet_bore = "30 mm"\nbearing_bore = "120 mm"\n',
    "tappet": """
kind = "tappet"
works = "spindle"
carried_in = "box"
stem_diameter = "29.9 mm"
follower = "roller"
follower_radius = "15.1 mm"
guide_length = "100 mm"
overhang = "24 mm"
""",
    "cam": """
kind = "cam"
lifts = "tappet"
turns_on = "shaft"
base_radius = "45 mm"
lift = "10 mm"
ramp_height = "5 mm"
""",
    "shaft": 'kind = "shaft"\ndiameter = "60 mm"\n',
}
FOOT = instead(GEAR, "tappet", 'follower = "roller"\n', 'follower = "flat foot"\nfoot_length = "30.1 mm"\n')


def tappet(*changes: tuple[str, str], parts: dict[str, str] = GEAR) -> dict[str, str]:
    """The gear with a tappet of other sizes; a size that is nothing is not stated."""
    for key, value in changes:
        line = next(one for one in parts["tappet"].splitlines() if one.startswith(f"{key} ="))
        parts = instead(parts, "tappet", f"{line}\n", f'{key} = "{value}"\n' if value else "")
    return parts


@pytest.mark.parametrize(
    ("parts", "across", "guide"),
    [
        (GEAR, "30.2", "30"),
        (tappet(("follower_radius", "15.1 mm ±0.1")), "30.4", "30"),
        (tappet(("follower_radius", "15 mm")), "", ""),
        (tappet(("follower_radius", "")), "", ""),
        (FOOT, "30.1", "30"),
        (tappet(("foot_length", "30 mm"), parts=FOOT), "", ""),
        (tappet(("foot_length", "30 mm ±0.2"), parts=FOOT), "30.2", "30"),
        (tappet(("foot_length", ""), parts=FOOT), "", ""),
        (instead(GEAR, "box", '"30 mm"', '"30.3 mm ±0.2"'), "30.2", "30.1"),
        (instead(GEAR, "box", '"30 mm"', '"30.3 mm ±0.1"'), "", ""),
        (without(GEAR, "box", 'tappet_bore = "30 mm"'), "", ""),
        # as long as the room under it, or shorter at its least: it may go in over the cam
        (tappet(("guide_length", "24 mm")), "", ""),
        (tappet(("guide_length", "24.1 mm")), "30.2", "30"),
        (tappet(("guide_length", "24.1 mm ±0.2")), "", ""),
        (tappet(("guide_length", "24 mm"), ("overhang", "23.9 mm")), "30.2", "30"),
        (tappet(("guide_length", "24 mm"), ("overhang", "23.9 mm ±0.2")), "", ""),
        (tappet(("guide_length", "")), "", ""),
        (tappet(("overhang", "")), "", ""),
    ],
)
def test_a_tappet_whose_foot_does_not_pass_its_guide_goes_in_before_cam_and_shaft(
    workshop: DesignFolder, parts: dict[str, str], across: str, guide: str
) -> None:
    """A roller of 15.1 mm radius, 30.2 mm across, or a foot of 30.1 mm, in a guide of 30 mm."""
    found = forced(workshop, parts)
    says = f"{across} mm over the foot of tappet does not pass tappet bore of box, {guide} mm"
    of_tappet = {pair: line for pair, line in found.items() if pair[0] == "tappet"}
    assert of_tappet == ({("tappet", "cam"): says, ("tappet", "shaft"): says} if across else {})


def test_a_tappet_goes_into_its_box_and_one_of_no_box_nowhere(workshop: DesignFolder) -> None:
    says = "stem diameter of tappet, 29.9 mm, stands in tappet bore of box, 30 mm"
    assert forced(workshop, GEAR)["box", "tappet"] == says
    loose = forced(workshop, without(GEAR, "tappet", 'carried_in = "box"'))
    assert not [pair for pair in loose if {"tappet", "cam", "shaft"} & set(pair)]


def test_a_cam_of_no_shaft_still_waits_for_its_tappet(workshop: DesignFolder) -> None:
    found = forced(workshop, without(GEAR, "cam", 'turns_on = "shaft"'))
    assert {pair for pair in found if "cam" in pair} == {("tappet", "cam")}


def cam(old: str, new: str) -> dict[str, str]:
    """The gear with another size of its cam."""
    return instead(GEAR, "cam", old, new)


@pytest.mark.parametrize(
    ("parts", "across", "housing"),
    [
        # 2 (45 + 10 + 5) = 120 mm
        (GEAR, "", ""),
        (cam('"10 mm"', '"10 mm ±0.1"'), "120.2", "120"),
        (cam('"5 mm"', '"5.1 mm"'), "120.2", "120"),
        (cam('"45 mm"', '"45 mm ±0.2"'), "120.4", "120"),
        (instead(GEAR, "box", '"120 mm"', '"120 mm ±0.1"'), "120", "119.9"),
        (
            cam('lift = "10 mm"\nramp_height = "5 mm"\n', 'table = ["2 mm", "15.1 mm", "3 mm"]\n'),
            "120.2",
            "120",
        ),
        (cam('lift = "10 mm"\nramp_height = "5 mm"\n', 'table = ["2 mm", "15 mm", "3 mm"]\n'), "", ""),
        # of 65 mm and 10 mm, 2 (65 + 10) = 150 mm, were nothing of it left out
        (cam('base_radius = "45 mm"\n', ""), "", ""),
        (cam('base_radius = "45 mm"\nlift = "10 mm"\n', 'base_radius = "65 mm"\n'), "", ""),
        (cam('"45 mm"\nlift = "10 mm"\nramp_height = "5 mm"\n', '"65 mm"\nlift = "10 mm"\n'), "", ""),
    ],
)
def test_a_cam_that_does_not_pass_the_housing_goes_in_before_its_shaft(
    workshop: DesignFolder, parts: dict[str, str], across: str, housing: str
) -> None:
    """The bearing housings are bored to 120 mm, and the shaft stands in them whatever the cam."""
    found = {pair: says for pair, says in forced(workshop, parts).items() if pair[0] != "tappet"}
    says = f"circle over the nose of cam, {across} mm, does not pass bearing bore of box, {housing} mm"
    wanted = {("cam", "shaft"): says, ("box", "cam"): says}
    assert {pair: found[pair] for pair in wanted if pair in found} == (wanted if across else {})
    least = housing or "120"
    assert found["box", "shaft"] == f"diameter of shaft, 60 mm, stands in bearing bore of box, {least} mm"
