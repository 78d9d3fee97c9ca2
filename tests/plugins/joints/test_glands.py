"""Studs of a gland: 130 mm box on a 90 mm rod, two studs of M16 (stress area 156.67 mm², seen in a table)."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from speclint_joints.formulae.glands import greatest_share, packing_load
from tests.plugins.joints.bench import STUDS, bench, in_every_case, used

GLAND = """
kind = "gland"
id = "gland"
of = "cover"
material = "test-cover"
rod = "90 mm"
box = "130 mm"
packing = "soft"
packing_pressure = "4 MPa"
flange_thickness = "25 mm"
tilt = "1.5"
"""
_AREA = math.pi / 4 * (130**2 - 90**2)
# ISO 724, M16: pitch 2 mm, pitch diameter 16 - 0.649519 × 2; root 16 - 1.226869 × 2.
_D_2, _A_S = 14.70096, math.pi / 4 * ((14.70096 + 13.54626) / 2) ** 2


def _with_gland(workshop: DesignFolder, *changes: tuple[str, str]) -> DesignFolder:
    bench(workshop)
    studs = STUDS.replace('id = "studs"', 'id = "gland-studs"').replace('holds = "cover"', 'holds = "gland"')
    studs = studs.replace('screwed_into = "block"', 'screwed_into = "cover"').replace(
        "count = 20", "count = 2"
    )
    text = GLAND
    for old, new in changes:
        assert old in text + studs
        text, studs = text.replace(old, new), studs.replace(old, new)
    (workshop.root / "gland.toml").write_text(text, encoding="utf-8")
    (workshop.root / "gland-studs.toml").write_text(studs.replace('"M24"', '"M16"'), encoding="utf-8")
    return workshop


def _stress(load: float, area: float = _A_S) -> float:
    """Worst of two studs at 1.5 of the mean, friction 0.2 in the thread, on its area or that of a waist, MPa."""
    one = 1.5 * load / 2
    on_flank = 0.2 / math.cos(math.radians(30))
    torque = one * _D_2 / 2 * (2 + math.pi * on_flank * _D_2) / (math.pi * _D_2 - on_flank * 2)
    shear = 16 * torque / (math.pi * (4 * area / math.pi) ** 1.5)
    return math.sqrt((one / area) ** 2 + 3 * shear**2)


def test_gland_studs_by_hand(workshop: DesignFolder) -> None:
    """4 MPa on 6911.5 mm² is 27.6 kN; 20.7 kN on the worst stud; of 0.7 × 600 MPa."""
    check = _with_gland(workshop).only("gland.studs", "gland")
    assert on_sheet(check, "F_q") == pytest.approx(27646, abs=1)
    assert on_sheet(check, "sigma_eq") / 1e6 == pytest.approx(_stress(4 * _AREA), rel=1e-4)
    assert used(workshop, "gland.studs", "gland") == pytest.approx(_stress(4 * _AREA) / 420, rel=1e-4)


@pytest.mark.parametrize(("times", "outcome"), [(0.995, "conforms"), (1.005, "finding")])
def test_packing_pressure_at_its_limit(workshop: DesignFolder, times: float, outcome: str) -> None:
    limit = 4 * 420 / _stress(4 * _AREA)
    _with_gland(workshop, ('packing_pressure = "4 MPa"', f'packing_pressure = "{times * limit:.4f} MPa"'))
    assert workshop.only("gland.studs", "gland").outcome == outcome


@pytest.mark.parametrize(("times", "outcome"), [(0.995, "conforms"), (1.005, "finding")])
def test_a_waisted_stud_of_a_gland_is_stressed_on_its_waist(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """A shank of 12 mm has 113.1 mm², the thread 156.7: the packing may press some third less."""
    limit = 4 * 420 / _stress(4 * _AREA, math.pi / 4 * 12**2)
    packed = ('packing_pressure = "4 MPa"', f'packing_pressure = "{times * limit:.4f} MPa"')
    _with_gland(workshop, packed, ('shank = "24 mm"', 'shank = "12 mm"'))
    assert workshop.only("gland.studs", "gland").outcome == outcome


def test_steam_governs_where_it_presses_harder(workshop: DesignFolder) -> None:
    _with_gland(workshop)
    in_every_case(workshop, '"16 bar gauge"', '"50 bar gauge"')
    check = workshop.only("gland.studs", "gland")
    assert on_sheet(check, "F_1") == pytest.approx(1.5 * 5 * _AREA / 2, rel=1e-6)


def test_metallic_packing_is_held_by_its_own_springs(workshop: DesignFolder) -> None:
    """Only 16 bar of steam: 1.6 MPa on the ring; no packing pressure is asked for."""
    _with_gland(workshop, ('packing = "soft"\npacking_pressure = "4 MPa"', 'packing = "metallic"'))
    check = workshop.only("gland.studs", "gland")
    assert on_sheet(check, "F_1") == pytest.approx(1.5 * 1.6 * _AREA / 2, rel=1e-6)


BOX = """
kind = "stuffing-box"
id = "box"
in_cover = "cover"
"""
ROD = 'kind = "piston-rod"\nid = "rod"\ndiameter = "100 mm"\n'


def _boxed(workshop: DesignFolder, box: str = "") -> DesignFolder:
    """The gland closes a stuffing box, of which a drawing states some things."""
    _with_gland(workshop, ('of = "cover"', 'of = "box"'))
    for name, text in (("box", BOX + box), ("rod", ROD)):
        (workshop.root / f"{name}.toml").write_text(text, encoding="utf-8")
    return workshop


@pytest.mark.parametrize(
    ("box", "D", "d"),
    [
        ("", 130, 90),
        ('bore = "140 mm"\n', 140, 90),
        ('seals = "rod"\n', 130, 100),
        ('bore = "140 mm"\nseals = "rod"\n', 140, 100),
    ],
)
def test_box_and_rod_as_they_are_drawn_go_before_what_the_gland_says(
    workshop: DesignFolder, box: str, D: float, d: float
) -> None:
    """4 MPa on the ring between rod and box, by the drawing of each where it is there."""
    check = _boxed(workshop, box).only("gland.studs", "gland")
    assert on_sheet(check, "F_q") == pytest.approx(4 * math.pi / 4 * (D**2 - d**2), rel=1e-6)


@pytest.mark.parametrize(("packing", "p"), [("braided graphite", 4.0), ("bronze segments", 1.6)])
def test_the_packing_of_the_box_goes_before_that_of_the_gland(
    workshop: DesignFolder, packing: str, p: float
) -> None:
    """A braid is pressed with 4 MPa; metallic rings are not, so that the 16 bar of the steam are left."""
    check = _boxed(workshop, f'packing = "{packing}"\n').only("gland.studs", "gland")
    assert on_sheet(check, "F_1") == pytest.approx(1.5 * p * _AREA / 2, rel=1e-6)


@pytest.mark.parametrize(
    ("old", "new"), [('tilt = "1.5"\n', ""), ('packing_pressure = "4 MPa"\n', ""), ('holds = "gland"\n', "")]
)
def test_a_gland_not_described_is_not_assessed(workshop: DesignFolder, old: str, new: str) -> None:
    assert _with_gland(workshop, (old, new)).only("gland.studs", "gland").outcome == "not assessed"


def test_a_tilt_below_the_mean_is_a_query(workshop: DesignFolder) -> None:
    check = _with_gland(workshop, ('tilt = "1.5"', 'tilt = "0.9"')).only("gland.studs", "gland")
    assert check.outcome == "finding"


@pytest.mark.parametrize("rule", ["gland.studs", "gland.flange"])
@pytest.mark.parametrize(
    ("tilt", "outcome"), [("1.21", "conforms"), ("1.2", "conforms"), ("1.19", "finding"), ("1", "finding")]
)
def test_nuts_drawn_up_by_hand_are_not_even(
    workshop: DesignFolder, rule: str, tilt: str, outcome: str
) -> None:
    """At the least: 1.2 · 27.6 kN on one of two studs, though the gland says 1.19, or that all are alike."""
    check = _with_gland(workshop, _CLOSE, ('tilt = "1.5"', f'tilt = "{tilt}"')).only(rule, "gland")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    counted = max(float(tilt), 1.2)
    assert on_sheet(check, "F_1") == pytest.approx(counted * 4 * _AREA / 2, rel=1e-6)


@pytest.mark.parametrize("rule", ["preload", "stud-stress", "gasket-load", "separation", "thermal"])
def test_the_rules_of_faced_joints_leave_a_gland_alone(workshop: DesignFolder, rule: str) -> None:
    assert _with_gland(workshop).only(f"joint.{rule}", "gland-studs").outcome == "not applicable"


@pytest.mark.parametrize(("engaged", "outcome"), [("36 mm", "conforms"), ("8 mm", "finding")])
def test_the_thread_of_a_gland_s_stud_holds_until_it_breaks(
    workshop: DesignFolder, engaged: str, outcome: str
) -> None:
    """M16 breaks at 900 × 156.67 = 141 kN, with 1.2: 169 kN.

    A hole has less than 16 π mm² of thread a millimetre: 8 mm strip below 402 × 0.58 × 480 = 112 kN.
    """
    _with_gland(workshop, ('engagement = "36 mm"', f'engagement = "{engaged}"'))
    check = workshop.only("joint.engagement", "gland-studs")
    assert check.outcome == outcome
    assert outcome == "conforms" or check.grade is Grade.NONCONFORMITY


@given(st.floats(0.02, 0.2), st.floats(1.01, 2.0), st.floats(1e5, 1e7), st.integers(2, 8))
def test_the_shares_of_even_studs_add_up(rod: float, wider: float, pressure: float, n: int) -> None:
    load = packing_load(rod * wider, rod, pressure)
    assert n * greatest_share(1.0, load, n) == pytest.approx(load)
    assert packing_load(rod * wider, rod, 2 * pressure) == pytest.approx(2 * load)


_CLOSE = ('circle = "700 mm"', 'circle = "190 mm"')


def test_the_flange_by_hand(workshop: DesignFolder) -> None:
    """20.7 kN at (190 − 130)/2 = 30 mm, on 36 + 2 · 30 = 96 mm: 6 · 20 735 · 30/(96 · 25²) = 62.2 of 1.5 · 160 MPa."""
    check = _with_gland(workshop, _CLOSE).only("gland.flange", "gland")
    assert (on_sheet(check, "h"), on_sheet(check, "b")) == (pytest.approx(0.030), pytest.approx(0.096))
    assert on_sheet(check, "sigma") / 1e6 == pytest.approx(62.2, abs=0.05)
    assert used(workshop, "gland.flange", "gland") == pytest.approx(62.2 / 240, rel=1e-3)


def test_studs_far_out_bend_no_more_than_their_share_of_the_ring(workshop: DesignFolder) -> None:
    """At 285 mm the load would spread to 606 mm; two studs have π · 130/2 = 204.2 mm each: 277.8 of 240 MPa."""
    check = _with_gland(workshop).only("gland.flange", "gland")
    assert on_sheet(check, "sigma") / 1e6 == pytest.approx(277.8, abs=0.1)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(("times", "outcome"), [(1.001, "conforms"), (0.999, "finding")])
def test_a_flange_at_its_least_thickness(workshop: DesignFolder, times: float, outcome: str) -> None:
    least = math.sqrt(6 * 1.5 * 4 * _AREA / 2 * 30 / (96 * 240))
    thick = ('flange_thickness = "25 mm"', f'flange_thickness = "{times * least:.4f} mm"')
    assert _with_gland(workshop, _CLOSE, thick).only("gland.flange", "gland").outcome == outcome


@pytest.mark.parametrize(
    ("line", "outcome"),
    [('flange_thickness = "25 mm"\n', "not assessed"), ('tilt = "1.5"\n', "not assessed")],
)
def test_a_flange_of_which_a_size_is_wanting_is_not_assessed(
    workshop: DesignFolder, line: str, outcome: str
) -> None:
    assert _with_gland(workshop, _CLOSE, (line, "")).only("gland.flange", "gland").outcome == outcome


def test_studs_inside_the_box_are_a_query(workshop: DesignFolder) -> None:
    check = _with_gland(workshop, ('circle = "700 mm"', 'circle = "120 mm"')).only("gland.flange", "gland")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
