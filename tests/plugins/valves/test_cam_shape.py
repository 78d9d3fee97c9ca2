"""Pressure angle and undercut of the cams of the page, worked by hand; valves in line, and edges of guides."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts import shift_at_seat
from speclint.testing import DesignFolder, expect_not_assessed, expect_query, found, limit, on_sheet
from speclint_valves.formulae.alignment import edge_pressure
from speclint_valves.formulae.cam_shape import (
    height_of_roller,
    pressure_angle_of_roller,
    roller_over_offset_path,
)
from speclint_valves.formulae.cams import roller_over_its_path
from tests.plugins.valves.gear import train_files

ANGLE, UNDERCUT, LINE, EDGE = "cam.pressure-angle", "cam.no-undercut", "gear.in-line", "gear.guide-edge-load"

#: The cam of the page: 3-4-5, 22.7 mm in 92°; s′ at most 1.875 × 22.7/1.6057 = 26.5 mm/rad. Its ramp of 1.1 mm is put
#: on the base circle, so that it has no slope of its own.
PAGE = (
    ('"harmonic"', '"3-4-5 polynomial"'),
    ('lift = "20 mm"', 'lift = "22.7 mm"'),
    ('rise_angle = "70 °"', 'rise_angle = "92 °"'),
    ('fall_angle = "70 °"', 'fall_angle = "92 °"'),
)


def on_page(base: str, follower: str, *cam: tuple[str, str]) -> dict[str, str]:
    tappet = (('follower = "flat foot"', follower),)
    sizes = ('base_radius = "60 mm"', f'base_radius = "{base}"\nwear.limit = "5 µm"')
    return train_files(cam=(*PAGE, sizes, *cam), tappet=tappet)


def roller(radius: str, more: str = "") -> str:
    return f'follower = "roller"\nfollower_radius = "{radius}"\n{more}'


def test_the_rollers_of_the_page(workshop: DesignFolder) -> None:
    """Roller 30 on 60: 14.6°, path 77.2 mm; roller 15 on 15: 32.8°, above 30, path 27.1 mm against 19.5."""
    workshop.write(on_page("61.1 mm", roller("30 mm")))
    assert math.degrees(found(workshop.only(ANGLE))) == pytest.approx(14.6, abs=0.05)
    assert found(workshop.only(UNDERCUT)) * 30 == pytest.approx(77.2, abs=0.1)
    workshop.write(on_page("16.1 mm", roller("15 mm")))
    check = workshop.only(ANGLE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert math.degrees(found(check)) == pytest.approx(32.8, abs=0.05)
    path = workshop.only(UNDERCUT)
    assert path.outcome == "conforms"
    assert found(path) * 15 == pytest.approx(27.1, abs=0.1)


@pytest.mark.parametrize(("base", "outcome"), [("24.1 mm", "conforms"), ("23.7 mm", "finding")])
def test_the_path_of_a_roller_from_both_sides(workshop: DesignFolder, base: str, outcome: str) -> None:
    """Harmonic, 20 mm in 70°: at the nose s′ = 0 and κ = −10 (π/β)² = −66.12 mm; x = y²/(r (y + 66.12)).

    It is 1.3 at a roller of 30 mm where y² − 39 y − 2578.7 = 0: y = 73.90 mm, of which 30 + 20 are roller and lift,
    so that the base circle is 23.90 mm.
    """
    made = train_files(
        cam=(('base_radius = "60 mm"', f'base_radius = "{base}"\nwear.limit = "5 µm"'),),
        tappet=(('follower = "flat foot"', roller("30 mm")),),
    )
    check = workshop.write(made).only(UNDERCUT)
    assert check.outcome == outcome
    assert found(check) == pytest.approx(1.3, rel=0.01)


def test_the_flat_feet_of_the_page(workshop: DesignFolder) -> None:
    """On 60 mm the least radius is 31.3 mm, on 30 mm 1.3 mm: less than 5, and it passed before."""
    sound = workshop.write(on_page("61.1 mm", 'follower = "flat foot"')).only(UNDERCUT)
    assert sound.outcome == "conforms"
    assert found(sound) * 1e3 == pytest.approx(31.3, abs=0.1)
    check = workshop.write(on_page("31.1 mm", 'follower = "flat foot"')).only(UNDERCUT)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert found(check) * 1e3 == pytest.approx(1.3, abs=0.1)


@pytest.mark.parametrize(("foot", "outcome"), [("57.1 mm", "conforms"), ("57.0 mm", "finding")])
def test_a_foot_is_long_enough_from_both_sides(workshop: DesignFolder, foot: str, outcome: str) -> None:
    """2 × (26.507 + 2) = 57.01 mm."""
    made = on_page("61.1 mm", f'follower = "flat foot"\nfoot_length = "{foot}"')
    assert workshop.write(made).only(ANGLE).outcome == outcome


@pytest.mark.parametrize(("base", "outcome"), [("34.86 mm", "conforms"), ("34.66 mm", "finding")])
def test_five_millimetres_under_a_foot_from_both_sides(
    workshop: DesignFolder, base: str, outcome: str
) -> None:
    """On 61.1 mm the page has 31.3 mm, rounded: a base circle smaller by 26.3 mm, 34.8 ± 0.05, leaves 5 mm."""
    assert workshop.write(on_page(base, 'follower = "flat foot"')).only(UNDERCUT).outcome == outcome


def test_regrinding_takes_from_the_base(workshop: DesignFolder) -> None:
    """34.9 mm leave 5.1 mm of radius under a flat foot; ground and worn by 0.5 mm, 4.6 mm."""
    grind = (
        'width = "25 mm"',
        'width = "25 mm"\nregrind = { depth = "0.25 mm", times = 2 }',
    )
    base = "34.9 mm"
    assert workshop.write(on_page(base, 'follower = "flat foot"')).only(UNDERCUT).outcome == "conforms"
    assert workshop.write(on_page(base, 'follower = "flat foot"', grind)).only(UNDERCUT).outcome == "finding"


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("wear.limit", "wear.limit", "conforms"),
        ("times = 2", "", "not assessed"),
        (", times = 2", ", times = 2", "conforms"),
        ('depth = "0.02 mm", ', "", "not assessed"),
        ('wear.limit = "5 µm"', "", "not assessed"),
        ('regrind = { depth = "0.02 mm", times = 2 }', "", "conforms"),
    ],
)
def test_what_is_ground_and_worn_off_must_be_said(
    workshop: DesignFolder, old: str, new: str, outcome: str
) -> None:
    """A cam that is reground says how often and by how much; one of which nothing is said is not reground."""
    grind = ('width = "25 mm"', 'width = "25 mm"\nregrind = { depth = "0.02 mm", times = 2 }')
    made = on_page("34.9 mm", 'follower = "flat foot"', grind)
    assert old in made["cam.toml"]
    made["cam.toml"] = made["cam.toml"].replace(old, new).replace(", }", " }")
    assert workshop.write(made).only(UNDERCUT).outcome == outcome


def test_an_offset_eases_the_rise_and_not_the_fall(workshop: DesignFolder) -> None:
    """With the fall alike the angle grows, whatever the side."""
    plain = found(workshop.write(on_page("61.1 mm", roller("30 mm"))).only(ANGLE))
    offset = on_page("61.1 mm", roller("30 mm", 'offset = "5 mm"\n'))
    assert found(workshop.write(offset).only(ANGLE)) > plain


@given(
    r=st.floats(0.005, 0.05),
    R=st.floats(0.02, 0.1),
    s=st.floats(0, 0.03),
    v=st.floats(-0.03, 0.03),
    a=st.floats(-0.05, 0.05),
)
def test_without_an_offset_the_path_is_the_one_of_the_contact(
    r: float, R: float, s: float, v: float, a: float
) -> None:
    y = height_of_roller(R_b=R, r=r, e=0.0, s=s)
    k = roller_over_offset_path(r=r, y=y, s_prime=v, κ=a, e=0.0)
    assert k == pytest.approx(roller_over_its_path(R_b=R, r=r, s=s, s_prime=v, κ=a))


@given(v=st.floats(0.0, 0.03), e=st.floats(0.0, 0.02))
def test_rise_and_fall_change_places_with_the_side(v: float, e: float) -> None:
    assert pressure_angle_of_roller(s_prime=v, e=e, y=0.1) == pressure_angle_of_roller(
        s_prime=-v, e=-e, y=0.1
    )


def lined(zone: str, beats: str = "0.03 mm", form: str = "coaxial") -> dict[str, str]:
    """A guide of 100 mm, 60 mm from its seats, with 0.030 mm of clearance."""
    made = train_files(spindle=(('"22.08 mm"', '"22.03 mm"\nguide_from_seat = "60 mm"'),))
    zones = f'[tolerances.guide]\nform = "{form}"\nzone = "{zone}"\nto = ["spindle"]\n'
    made["seat.toml"] += zones
    made["lower.toml"] = made["seat.toml"].replace('id = "seat"', 'id = "lower"') + (
        f'[tolerances.beats]\nform = "coaxial"\nzone = "{beats}"\nto = ["seat"]\n'
    )
    head, _, tail = made["valve.toml"].partition("[lower_beat]")
    made["valve.toml"] = head + "[lower_beat]" + tail.replace('seat = "seat"', 'seat = "lower"')
    return made


@pytest.mark.parametrize(
    ("zone", "beats", "outcome", "governs"),
    [
        ("0.05 mm", "0.03 mm", "conforms", 0.033e-3),  # 0.025 of 0.033 mm is more than 0.015 of 0.02 mm
        ("0.0659 mm", "0.03 mm", "conforms", 0.033e-3),
        ("0.0661 mm", "0.03 mm", "finding", 0.033e-3),
        ("0.10 mm", "0.03 mm", "finding", 0.033e-3),
        ("0.05 mm", "0.039 mm", "conforms", 0.02e-3),
        ("0.05 mm", "0.041 mm", "finding", 0.02e-3),
    ],
)
def test_in_line_as_on_the_page(
    workshop: DesignFolder, zone: str, beats: str, outcome: str, governs: float
) -> None:
    """0.030/2 × (1 + 120/100) = 0.033 mm: a zone of 0.066 mm; between the seats 0.02 mm, a zone of 0.04 mm."""
    check = workshop.write(lined(zone, beats)).only(LINE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert limit(check) == pytest.approx(governs)


def test_a_seat_without_a_zone_passed_before(workshop: DesignFolder) -> None:
    assert workshop.write(lined("0.05 mm", form="position")).only(LINE).outcome == "not assessed"


@pytest.mark.parametrize(
    ("tilt", "hot", "outcome"),
    [("0.005 mm", "20 °C", "conforms"), ("0.008 mm", "20 °C", "finding"), ("0.005 mm", "160 °C", "finding")],
)
def test_a_guide_in_the_box_is_off_by_place_tilt_and_heat(
    workshop: DesignFolder, tilt: str, hot: str, outcome: str
) -> None:
    """0.033 mm, less 0.025 of the seat and 0.0015 of the guide in the box: 0.0065 mm are left. 200 mm from the foot a
    zone of 0.005 over 200 takes 0.005, one of 0.008 all of 0.008; 40 mm × 12.2e-6 × 140 K = 0.068 mm by heat."""
    made = lined("0.05 mm")
    made["spindle.toml"] = 'guide_in = "cam box"\n' + made["spindle.toml"]
    made["box.toml"] += 'axis_from_dowels = "40 mm"\n'
    made["box.toml"] += (
        '[tolerances.guide]\nform = "coaxial"\nzone = "0.003 mm"\nof = "guide"\nto = ["spindle"]\n'
    )
    made["box.toml"] += f'[tolerances.foot]\nform = "square"\nof = "foot"\nzone = "{tilt}"\nover = "200 mm"\n'
    made["duty.toml"] = made["duty.toml"].replace('cylinder-block = "20 °C"', f'cylinder-block = "{hot}"')
    assert workshop.write(made).only(LINE).outcome == outcome


def test_a_box_that_says_nothing_of_its_guide(workshop: DesignFolder) -> None:
    made = lined("0.05 mm")
    made["spindle.toml"] = 'guide_in = "cam box"\n' + made["spindle.toml"]
    expect_not_assessed(workshop.write(made).only(LINE), "neither box nor spindle states a coaxial zone")
    made["box.toml"] += (
        '[tolerances.guide]\nform = "coaxial"\nzone = "0.003 mm"\nof = "guide"\nto = ["spindle"]\n'
    )
    expect_not_assessed(workshop.write(made).only(LINE), "box states no squareness of its foot")


@pytest.mark.parametrize(
    ("metal", "load", "outcome"),
    [
        ("known-iron", 575, "conforms"),
        ("known-iron", 583, "finding"),
        ("bronze-CC483K", 1440, "conforms"),
        ("bronze-CC483K", 1455, "finding"),
    ],
)
def test_the_edge_of_a_guide(workshop: DesignFolder, metal: str, load: int, outcome: str) -> None:
    """Gear 60 mm beyond the guide: 3.4545 kPa for a newton, 2 MPa at 579 N and 5 MPa at 1447 N."""
    side = f'side_load = "{load} N"\nguide_from_seat = "240 mm"\nguide_length = "100 mm"'
    of_metal = ('guide_material = "known-iron"', f'guide_material = "{metal}"')
    made = train_files(spindle=(('guide_length = "100 mm"', side), of_metal))
    check = workshop.write(made).only(EDGE)
    assert check.outcome == outcome
    assert found(check) / load == pytest.approx(3454.5, rel=1e-3)


@given(F=st.floats(1.0, 2e3))
def test_the_edge_bears_in_proportion(F: float) -> None:
    one = edge_pressure(F=F, d=0.022, L=0.1, b=0.06)
    assert edge_pressure(F=2 * F, d=0.022, L=0.1, b=0.06) == pytest.approx(2 * one)
    assert edge_pressure(F=F, d=0.022, L=0.2, b=0.06) < one


@given(c=st.floats(1e-6, 1e-3), a=st.floats(0.0, 0.3))
def test_more_clearance_allows_more(c: float, a: float) -> None:
    assert shift_at_seat(c=2 * c, a=a, L=0.1) == pytest.approx(2 * shift_at_seat(c=c, a=a, L=0.1))


@pytest.mark.parametrize(("foot", "outcome"), [("46.7 mm", "conforms"), ("46.5 mm", "finding")])
def test_a_crowned_foot_is_long_enough_from_both_sides(
    workshop: DesignFolder, foot: str, outcome: str
) -> None:
    """A crown of 300 mm on a base circle of 61.1: tan α = s′/(361.1 + s) at its greatest by the law, 4.07°.

    The cam touches it 300 sin α = 21.3 mm beside its line: 2 × (21.3 + 2) = 46.6 mm.
    """
    β = math.radians(92)

    def slant(u: float) -> float:
        s = 22.7 * (10 * u**3 - 15 * u**4 + 6 * u**5)
        return math.atan(22.7 * 30 * u**2 * (1 - u) ** 2 / β / (361.1 + s))

    α = max(slant(i / 2000) for i in range(2001))
    wanted = 2 * (300 * math.sin(α) + 2)
    assert wanted == pytest.approx(46.6, abs=0.05)
    made = on_page(
        "61.1 mm", f'follower = "crowned foot"\nfollower_radius = "300 mm"\nfoot_length = "{foot}"'
    )
    check = workshop.write(made).only(ANGLE)
    assert limit(check) * 1e3 == pytest.approx(wanted, abs=0.02)
    assert check.outcome == outcome


def test_seats_of_one_ring_are_on_one_axis(workshop: DesignFolder) -> None:
    """Both beats on one seat: a zone to the guide is enough, and none of the seats to one another is asked for."""
    made = train_files(spindle=(('"22.08 mm"', '"22.03 mm"\nguide_from_seat = "60 mm"'),))
    made["seat.toml"] += '[tolerances.guide]\nform = "coaxial"\nzone = "0.05 mm"\nto = ["spindle"]\n'
    assert workshop.write(made).only(LINE).outcome == "conforms"


def _in_box(form: str = "square", *more: str) -> dict[str, str]:
    """The guide in a cam box that states its place and how square its foot is."""
    made = lined("0.05 mm")
    made["spindle.toml"] = 'guide_in = "cam box"\n' + made["spindle.toml"]
    made["box.toml"] += 'axis_from_dowels = "40 mm"\n'
    made["box.toml"] += (
        f'[tolerances.foot]\nform = "{form}"\nof = "foot"\nzone = "0.005 mm"\nover = "200 mm"\n'
    )
    made["box.toml"] += "".join(more)
    return made


def _zone_to_guide(name: str, zone: str) -> str:
    return f'[tolerances.{name}]\nform = "coaxial"\nzone = "{zone}"\nof = "guide"\nto = ["spindle"]\n'


@pytest.mark.parametrize("of_box", ["0.003 mm", "0.013 mm"])
def test_the_tighter_of_two_zones_of_a_guide_counts(workshop: DesignFolder, of_box: str) -> None:
    """The spindle states 0.008 mm to the box; half of the less and 0.005 of the tilt: 0.0065 or 0.009 mm."""
    made = _in_box("square", _zone_to_guide("guide", of_box))
    made["spindle.toml"] += '[tolerances.box]\nform = "coaxial"\nzone = "0.008 mm"\nto = ["box"]\n'
    check = workshop.write(made).only(LINE)
    assert on_sheet(check, "e_x′") * 1e3 == pytest.approx(0.005 + min(float(of_box[:5]), 0.008) / 2, abs=1e-6)


def test_a_foot_that_is_only_flat_says_nothing_of_its_squareness(workshop: DesignFolder) -> None:
    made = _in_box("flat", _zone_to_guide("guide", "0.003 mm"))
    made["box.toml"] += (
        '[tolerances.side]\nform = "square"\nof = "joint face"\nzone = "0.005 mm"\nover = "200 mm"\n'
    )
    expect_not_assessed(workshop.write(made).only(LINE), "box states no squareness of its foot")


def test_no_edge_load_is_held_for_a_guide_of_steel(workshop: DesignFolder) -> None:
    side = 'side_load = "100 N"\nguide_from_seat = "240 mm"\nguide_length = "100 mm"'
    of_metal = ('guide_material = "known-iron"', 'guide_material = "known-steel"')
    made = train_files(spindle=(('guide_length = "100 mm"', side), of_metal))
    expect_query(workshop.write(made).only(EDGE), "no pressure is held for a guide of known-steel")


def test_a_guide_that_reaches_beyond_its_drive_is_found(workshop: DesignFolder) -> None:
    """100 mm of guide from 300 mm on end where the gear drives the spindle, 400 mm from the seat."""
    side = 'side_load = "100 N"\nguide_from_seat = "{}"\nguide_length = "100 mm"'
    for start, outcome in (("299 mm", "conforms"), ("301 mm", "finding")):
        made = train_files(spindle=(('guide_length = "100 mm"', side.format(start)),))
        check = workshop.write(made).only(EDGE)
        assert check.outcome == outcome, check.says
        assert outcome == "conforms" or "reaches beyond the point at which the gear drives it" in check.says
