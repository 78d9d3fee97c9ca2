"""Engagement, depth and edge of tapped holes."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.threads import internal_stripping_area
from speclint.testing import DesignFolder, on_sheet
from speclint_joints.formulae.holes import bursting_pressure
from tests.plugins.joints import hand
from tests.plugins.joints.bench import bench, used, without

_TAN = math.tan(math.radians(30))
# ISO 965-1 for M24 x 3 (from memory): es 6g 48 µm, T_d 375 µm, T_d2 200 µm, T_D1 500 µm, T_D2 265 µm.
_MAJOR_LEAST = 24 - 0.048 - 0.375
_PITCH_LEAST = 22.0514 - 0.048 - 0.200
_MINOR_MOST = 20.7519 + 0.500
_PITCH_MOST = 22.0514 + 0.265
#: Shear areas per millimetre of engagement at worst limits, mm (FED-STD-H28).
_STUD = math.pi * _MINOR_MOST / 3 * (1.5 + (_PITCH_LEAST - _MINOR_MOST) * _TAN)
_HOLE = math.pi * _MAJOR_LEAST / 3 * (1.5 + (_MAJOR_LEAST - _PITCH_MOST) * _TAN)


def _greatest() -> float:
    """Load of a stud in the cold test, N: 130 kN and its share of the lift."""
    return 130e3 + hand.share() * hand.lift()


def test_shear_areas_of_the_bench_by_hand(workshop: DesignFolder) -> None:
    """36 mm in the block: some 1457 mm² of stud and 1980 mm² of block."""
    check = bench(workshop).only("joint.engagement", "studs")
    assert on_sheet(check, "A_be") * 1e6 == pytest.approx(36 * _STUD, rel=1e-3)
    assert on_sheet(check, "A_e") * 1e6 == pytest.approx(36 * _HOLE, rel=1e-3)


@pytest.mark.parametrize(("times", "outcome"), [(1.01, "conforms"), (0.99, "finding")])
def test_the_stud_breaks_before_the_block_strips(workshop: DesignFolder, times: float, outcome: str) -> None:
    """Block: 0.58 × 480 MPa; stud: 900 × 352.5 = 317.3 kN, with 1.2: some 24.9 mm of engagement."""
    length = 1.2 * 900 * hand.A_S / (0.58 * 480 * _HOLE)
    assert length == pytest.approx(24.9, abs=0.1)
    bench(workshop, ("studs", 'engagement = "36 mm"', f'engagement = "{times * length:.4f} mm"'))
    check = workshop.only("joint.engagement", "studs")
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.grade is Grade.NONCONFORMITY


@pytest.mark.parametrize(("times", "grade"), [(1.01, Grade.NONCONFORMITY), (0.99, Grade.HOLD)])
def test_a_thread_that_would_strip_in_work_is_a_hold(
    workshop: DesignFolder, times: float, grade: Grade
) -> None:
    """1.2 × 138.7 kN in work asks for some 10.9 mm."""
    length = 1.2 * _greatest() / (0.58 * 480 * _HOLE)
    bench(workshop, ("studs", 'engagement = "36 mm"', f'engagement = "{times * length:.4f} mm"'))
    assert workshop.only("joint.engagement", "studs").grade is grade


@pytest.mark.parametrize(("times", "outcome"), [(1.01, "conforms"), (0.99, "finding")])
def test_the_stud_in_a_low_nut_strips_its_own_thread(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """0.58 × 900 MPa on 40.46 mm²/mm: 380.7 kN at some 18.0 mm."""
    length = 1.2 * 900 * hand.A_S / (0.58 * 900 * _STUD)
    assert length == pytest.approx(18.0, abs=0.1)
    bench(workshop, ("studs", 'engagement = "22 mm"', f'engagement = "{times * length:.4f} mm"'))
    assert workshop.only("joint.engagement", "studs").outcome == outcome


def test_grey_iron_is_taken_by_its_own_shear_strength(workshop: DesignFolder) -> None:
    """EN 1561 (from memory): shear 1.1 to 1.15 of the tension."""
    bench(workshop, ("block", 'material = "test-block"', 'material = "grey-iron-250"'))
    check = workshop.only("joint.engagement", "studs")
    assert on_sheet(check, "r_e") == pytest.approx(1.10)


@pytest.mark.parametrize("line", ['engagement = "36 mm"', 'material = "test-stud"\nengagement'])
def test_engagement_not_stated_is_a_hold(workshop: DesignFolder, line: str) -> None:
    bench(workshop, ("studs", line, "engagement" if line.endswith("engagement") else ""))
    check = workshop.only("joint.engagement", "studs")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("depth", "outcome"), [("53.8 mm", "conforms"), ("53.7 mm", "finding")])
def test_depth_for_thread_and_run_out(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """8.8 set in, 36 engaged, 9 run-out: 53.8 mm."""
    bench(workshop, ("studs", 'depth = "56 mm"', f'depth = "{depth}"'))
    assert workshop.only("joint.hole-depth", "studs").outcome == outcome


@pytest.mark.parametrize(
    ("opens", "sealed", "outcome"),
    [("steam", "none", "finding"), ("steam", "copper washer", "conforms"), ("air", "none", "conforms")],
)
def test_a_hole_into_steam_is_sealed(workshop: DesignFolder, opens: str, sealed: str, outcome: str) -> None:
    bench(
        workshop,
        ("studs", 'opens_into = "nothing"', f'opens_into = "{opens}"'),
        ("studs", 'sealed = "none"', f'sealed = "{sealed}"'),
    )
    assert workshop.only("joint.hole-depth", "studs").outcome == outcome


def test_depth_not_stated_is_not_assessed(workshop: DesignFolder) -> None:
    assert (
        without(workshop, "studs", 'depth = "56 mm"').only("joint.hole-depth", "studs").outcome
        == "not assessed"
    )


@pytest.mark.parametrize(("edge", "outcome"), [("16.9 mm", "conforms"), ("16.7 mm", "finding")])
def test_edge_in_diameters(workshop: DesignFolder, edge: str, outcome: str) -> None:
    """0.7 × 24 = 16.8 mm, where the wedge alone, 30.1 MPa on 24/33.6, makes 92.8 MPa of 240."""
    bench(workshop, ("studs", 'edge_distance = "30 mm"', f'edge_distance = "{edge}"'))
    assert workshop.only("joint.edge", "studs").outcome == outcome


@pytest.mark.parametrize(("times", "outcome"), [(1.01, "conforms"), (0.99, "finding")])
def test_a_thin_ligament_is_wedged_apart(workshop: DesignFolder, times: float, outcome: str) -> None:
    """With 6 mm engaged the wedge is 180.6 MPa: Lamé, q (D² + d²)/(D² - d²) = 240 MPa at D = 24 √(420.6/59.4)."""
    wedge = 130e3 * _TAN / (math.pi * 22.0514 * 6)
    edge = 12 * math.sqrt((240 + wedge) / (240 - wedge))
    assert edge == pytest.approx(31.9, abs=0.1)
    bench(
        workshop,
        ("studs", 'engagement = "36 mm"', 'engagement = "6 mm"'),
        ("studs", 'edge_distance = "30 mm"', f'edge_distance = "{times * edge:.4f} mm"'),
    )
    assert workshop.only("joint.edge", "studs").outcome == outcome


def test_edge_not_stated_is_not_assessed(workshop: DesignFolder) -> None:
    assert (
        without(workshop, "studs", 'edge_distance = "30 mm"').only("joint.edge", "studs").outcome
        == "not assessed"
    )


def test_bolts_have_no_tapped_holes(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", 'fastener = "stud"', 'fastener = "bolt"'))
    assert workshop.only("joint.hole-depth", "studs").outcome == "not applicable"
    assert workshop.only("joint.edge", "studs").outcome == "not applicable"


@given(st.floats(5e-3, 0.1), st.floats(1.01, 3.0))
def test_longer_engagement_shears_more_and_wedges_less(length: float, more: float) -> None:
    assert internal_stripping_area("M24", length * more).low > internal_stripping_area("M24", length).low
    like = {"F": 1e5, "alpha": math.radians(30), "d_2": 0.022}
    assert bursting_pressure(L_e=length * more, **like) < bursting_pressure(L_e=length, **like)


def test_a_worn_nut_never_helps(workshop: DesignFolder) -> None:
    whole = used(bench(workshop), "joint.engagement")
    assert (
        used(bench(workshop, ("studs", 'engagement = "22 mm"', 'engagement = "20 mm"')), "joint.engagement")
        > whole
    )
