"""A lens ring of 150 mm contact on a sphere of R = 150 mm: the cone of 60° half angle touches at 2 R cos 60°.

The cone goes on to 160 mm, 2.8868 mm along the axis: half of the ring's 25.7735 mm less that, and 40 mm of flange, make
the grip of 50 mm.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.members.contact import circle_in_cone
from speclint.testing import DesignFolder, on_sheet
from speclint_joints.formulae.lenses import circle_missed
from tests.plugins.joints.bench import STUDS, bench, figure_of, in_every_case, used

LENS = """
kind = "lens-joint"
id = "lens"
of = "cover"
material = "test-cover"
sphere_radius = "150 mm"
contact_diameter = "150 mm"
seat = "cone"
seat_angle = "60 °"
seat_mouth = "160 mm"
thickness = "25.7735 mm"
face_width = "24 mm"
outside_diameter = "180 mm"
bore = "120 mm"
flange_thickness = "40 mm"
swing = "1 °"
"""
_E_STAR = 200e3 / (2 * (1 - 0.3**2))
_LINE = 4 * 130e3 / (math.pi * 150 * math.sin(math.radians(60)))  # N/mm, four studs at 130 kN


def _with_lens(workshop: DesignFolder, *changes: tuple[str, str]) -> DesignFolder:
    bench(workshop)
    studs = STUDS.replace('id = "studs"', 'id = "lens-studs"').replace('holds = "cover"', 'holds = "lens"')
    studs = studs.replace("count = 20", "count = 4").replace('seal = "gasket"', 'seal = "lens ring"')
    studs = studs.replace("[gasket]", 'pressure_circle = "150 mm"\n[gasket]')
    studs = studs.replace('name = "graphite sheet on tanged steel 1.5 mm"\n', "")
    text = LENS
    for old, new in changes:
        assert old in text + studs
        text, studs = text.replace(old, new), studs.replace(old, new)
    (workshop.root / "lens.toml").write_text(text, encoding="utf-8")
    (workshop.root / "lens-studs.toml").write_text(studs, encoding="utf-8")
    return workshop


def _mean(radius: float, line: float = _LINE) -> float:
    """Johnson, eqs. 4.43 and 4.45: π/4 √(q E*/(π R)), MPa."""
    return math.pi / 4 * math.sqrt(line * _E_STAR / (math.pi * radius))


def _half_width(radius: float) -> float:
    return math.sqrt(4 * _LINE * radius / (math.pi * _E_STAR))


def test_seat_by_hand(workshop: DesignFolder) -> None:
    """520 kN on 150 mm at 60°: 1274 N/mm; E* 109.9 GPa; R 150 mm: 428 MPa of 2.8 × 240 = 672."""
    assert pytest.approx(1274.2, abs=0.1) == _LINE
    assert _mean(150) == pytest.approx(428.1, abs=0.2)
    check = _with_lens(workshop).only("lens-joint.seat", "lens")
    assert on_sheet(check, "p_m0") / 1e6 == pytest.approx(_mean(150), rel=1e-6)
    assert used(workshop, "lens-joint.seat", "lens") == pytest.approx(_mean(150) / 672, rel=1e-6)


@pytest.mark.parametrize(("times", "outcome"), [(0.99, "conforms"), (1.01, "finding")])
def test_torque_that_crushes_the_seat(workshop: DesignFolder, times: float, outcome: str) -> None:
    """The pressure goes with the root of the load."""
    torque = times * 384 * (672 / _mean(150)) ** 2
    _with_lens(workshop, ('torque = "384 N·m"', f'torque = "{torque:.3f} N·m"'))
    assert workshop.only("lens-joint.seat", "lens").outcome == outcome


@pytest.mark.parametrize(("proof", "outcome"), [(153.5, "conforms"), (152.3, "finding")])
def test_a_seat_that_bears_cold_may_be_crushed_hot(
    workshop: DesignFolder, proof: float, outcome: str
) -> None:
    """All of one expansion, so that the load stays: 428.1 MPa are 2.8 × 152.9; cold the seat has 240 MPa."""
    _with_lens(workshop)
    figure_of(workshop, "test-block", "expansion", "degC = [-20, 500]\nvalue = 12.5")
    figure_of(
        workshop,
        "test-cover",
        "proof-stress",
        f"degC = [-20, 20, 200, 500]\nvalue = [240, 240, {proof}, {proof}]",
    )
    check = workshop.only("lens-joint.seat", "lens")
    assert check.outcome == outcome
    assert on_sheet(check, "p_mh") / 1e6 == pytest.approx(_mean(150), rel=1e-6)


def test_ring_and_seat_are_each_as_hot_as_themselves(workshop: DesignFolder) -> None:
    """The ring, of the block's steel, at 300 °C has 120 MPa of the 240 that it has cold; its seat is of other steel."""
    _with_lens(workshop, ('material = "test-cover"', 'material = "test-block"'))
    in_every_case(workshop, 'lens-joint = "200 °C"', 'lens-joint = "300 °C"')
    figure_of(
        workshop,
        "test-block",
        "proof-stress",
        "degC = [-20, 20, 200, 300, 500]\nvalue = [250, 250, 240, 120, 120]",
    )
    check = workshop.only("lens-joint.seat", "lens")
    for symbol, proof in (("R_p10", 250), ("R_p20", 240), ("R_p1h", 120), ("R_p2h", 240)):
        assert on_sheet(check, symbol) / 1e6 == pytest.approx(proof), symbol


def test_bolts_cooler_than_the_ring_press_it_harder(workshop: DesignFolder) -> None:
    """Studs at 150 °C between parts at 200 °C are stretched by what they lag behind."""
    _with_lens(workshop)
    in_every_case(workshop, 'bolted-joint = "200 °C"', 'bolted-joint = "150 °C"')
    check = workshop.only("lens-joint.seat", "lens")
    assert on_sheet(check, "W_h") > on_sheet(check, "W_0") == pytest.approx(520e3)


@pytest.mark.parametrize("part", ["lens-joint", "cylinder-cover", "bolted-joint"])
def test_heat_not_stated_is_not_assessed(workshop: DesignFolder, part: str) -> None:
    _with_lens(workshop)
    in_every_case(workshop, f'{part} = "200 °C"\n', "")
    assert workshop.only("lens-joint.seat", "lens").outcome == "not assessed"


@pytest.mark.parametrize(("times", "outcome"), [(0.999, "conforms"), (1.001, "finding")])
def test_swing_at_its_limit(workshop: DesignFolder, times: float, outcome: str) -> None:
    """Half of 24 mm less the half width of contact, over 150 mm: some 4.3°."""
    limit = math.degrees((12 - _half_width(150)) / 150)
    assert limit == pytest.approx(4.0, abs=0.5)
    _with_lens(workshop, ('swing = "1 °"', f'swing = "{times * limit:.5f} °"'))
    assert workshop.only("lens-joint.seat", "lens").outcome == outcome


@pytest.mark.parametrize(("times", "outcome"), [(0.999, "conforms"), (1.001, "finding")])
@pytest.mark.parametrize(("outside", "arc"), [("180 mm", 16.8123), ("170 mm", 11.8284)])
def test_a_face_is_no_wider_than_its_ring(
    workshop: DesignFolder, outside: str, arc: float, times: float, outcome: str
) -> None:
    """Said to be 60 mm wide: the bore ends it at arcsin 120/300 = 23.5782°, 150 mm · 6.4218° = 16.8123 mm.

    An outside of 170 mm ends it at arcsin 170/300 = 34.5182°: 150 mm · 4.5182° = 11.8284 mm.
    """
    limit = math.degrees((arc - _half_width(150)) / 150)
    wide = ('face_width = "24 mm"', 'face_width = "60 mm"'), ('"180 mm"', f'"{outside}"')
    _with_lens(workshop, *wide, ('swing = "1 °"', f'swing = "{times * limit:.5f} °"'))
    assert workshop.only("lens-joint.seat", "lens").outcome == outcome


@pytest.mark.parametrize(("circle", "outcome"), [("150.99 mm", "conforms"), ("151.01 mm", "finding")])
def test_the_radii_must_meet_where_the_drawing_says(
    workshop: DesignFolder, circle: str, outcome: str
) -> None:
    _with_lens(workshop, ('contact_diameter = "150 mm"', f'contact_diameter = "{circle}"'))
    assert workshop.only("lens-joint.seat", "lens").outcome == outcome


def test_a_hollow_seat_presses_less(workshop: DesignFolder) -> None:
    """1/150 - 1/200 mm: relative radius 600 mm, half the pressure of 150."""
    hollow = ('seat = "cone"\nseat_angle = "60 °"', 'seat = "sphere"\nseat_radius = "200 mm"')
    check = _with_lens(workshop, hollow).only("lens-joint.seat", "lens")
    assert on_sheet(check, "R_rel") == pytest.approx(0.600)
    assert on_sheet(check, "p_m0") / 1e6 == pytest.approx(_mean(150) / 2, rel=1e-6)


@pytest.mark.parametrize(("times", "outcome"), [(0.99, "finding"), (1.01, "conforms")])
def test_a_seat_goes_on_beyond_the_band(workshop: DesignFolder, times: float, outcome: str) -> None:
    """Half of the band, 1.488 mm along the cone of 60°, is 1.289 mm on the radius: a mouth of 152.58 mm."""
    assert _half_width(150) == pytest.approx(1.488, abs=0.001)
    mouth = 150 + 2 * 1.488 * math.sin(math.radians(60)) * times
    _with_lens(workshop, ('seat_mouth = "160 mm"', f'seat_mouth = "{mouth:.3f} mm"'))
    check = workshop.only("lens-joint.seat", "lens")
    assert check.outcome == outcome
    if outcome == "finding":
        assert "1.473 mm < 1.488 mm" in check.says


@pytest.mark.parametrize(("mouth", "outcome"), [("155.44 mm", "finding"), ("155.55 mm", "conforms")])
def test_a_hollow_seat_goes_on_beyond_the_band(workshop: DesignFolder, mouth: str, outcome: str) -> None:
    """Twice as wide on 600 mm: 2.976 mm on 200 mm are 0.8526° beyond arcsin 150/400 = 22.0243°: 155.50 mm."""
    assert _half_width(600) == pytest.approx(2.976, abs=0.001)
    hollow = ('seat = "cone"\nseat_angle = "60 °"', 'seat = "sphere"\nseat_radius = "200 mm"')
    _with_lens(workshop, hollow, ('seat_mouth = "160 mm"', f'seat_mouth = "{mouth}"'))
    assert workshop.only("lens-joint.seat", "lens").outcome == outcome


def test_a_hollow_closer_than_the_ring_is_a_query(workshop: DesignFolder) -> None:
    hollow = ('seat = "cone"\nseat_angle = "60 °"', 'seat = "sphere"\nseat_radius = "140 mm"')
    check = _with_lens(workshop, hollow).only("lens-joint.seat", "lens")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize(
    "line", ['seat_angle = "60 °"\n', 'swing = "1 °"\n', 'face_width = "24 mm"\n', 'of = "cover"\n']
)
def test_a_lens_not_described_is_not_assessed(workshop: DesignFolder, line: str) -> None:
    assert _with_lens(workshop, (line, "")).only("lens-joint.seat", "lens").outcome == "not assessed"


def test_no_gasket_formula_touches_a_lens(workshop: DesignFolder) -> None:
    for rule in ("joint.gasket-load", "joint.gasket-rating", "joint.face-pressure"):
        assert _with_lens(workshop).only(rule, "lens-studs").outcome == "not applicable"


def test_a_lens_joint_has_four_studs_at_least(workshop: DesignFolder) -> None:
    assert _with_lens(workshop).only("joint.stud-count", "lens-studs").outcome == "conforms"
    assert (
        _with_lens(workshop, ("count = 4", "count = 2")).only("joint.stud-count", "lens-studs").outcome
        == "finding"
    )


@given(st.floats(0.05, 0.5), st.floats(0.2, 1.4))
def test_the_circle_of_its_own_radii_is_never_missed(R: float, phi: float) -> None:
    assert circle_missed(circle_in_cone(R, phi), 2 * R * math.cos(phi)) == pytest.approx(0, abs=1e-12)


@pytest.mark.parametrize(("circle", "outcome"), [("300 mm", "conforms"), ("84 mm", "finding")])
def test_only_the_spanner_limits_the_pitch_of_a_lens_joint(
    workshop: DesignFolder, circle: str, outcome: str
) -> None:
    """212 mm apart, which no gasket would stand; 84 sin 45° = 59.4 mm is less than 60."""
    check = _with_lens(workshop, ('circle = "700 mm"', f'circle = "{circle}"')).only(
        "joint.stud-pitch", "lens-studs"
    )
    assert check.outcome == outcome


@pytest.mark.parametrize(("outside", "outcome"), [("300 mm", "conforms"), ("285 mm", "finding")])
def test_room_of_a_lens_joint_is_that_of_its_flange(
    workshop: DesignFolder, outside: str, outcome: str
) -> None:
    """Circle 250 mm: inside of the holes 224 against a ring of 180, outside of the nuts 286 mm."""
    bolt = ('screwed_into = "block"\nfastener = "stud"', 'bolted_to = "flange"\nfastener = "bolt"')
    _with_lens(workshop, ('circle = "700 mm"', 'circle = "250 mm"'), bolt)
    flange = f'kind = "pipe-flange"\nid = "flange"\nmaterial = "test-cover"\noutside_diameter = "{outside}"\n'
    (workshop.root / "flange.toml").write_text(flange, encoding="utf-8")
    assert workshop.only("joint.room", "lens-studs").outcome == outcome


@pytest.mark.parametrize(("mouth", "outcome"), [("223 mm", "conforms"), ("225 mm", "finding")])
def test_the_mouth_of_a_seat_lies_inside_the_bolts(workshop: DesignFolder, mouth: str, outcome: str) -> None:
    """Circle 250 mm, holes of 26: the cone may run out to 224 mm, though the ring ends at 180."""
    bolt = ('screwed_into = "block"\nfastener = "stud"', 'bolted_to = "flange"\nfastener = "bolt"')
    changes = ('circle = "700 mm"', 'circle = "250 mm"'), ('mouth = "160 mm"', f'mouth = "{mouth}"')
    _with_lens(workshop, *changes, bolt)
    flange = 'kind = "pipe-flange"\nid = "flange"\nmaterial = "test-cover"\noutside_diameter = "300 mm"\n'
    (workshop.root / "flange.toml").write_text(flange, encoding="utf-8")
    assert workshop.only("joint.room", "lens-studs").outcome == outcome
