"""The plate of a cover and its flange, by hand at G = 621.745 mm, lever (700 - G)/2 = 39.127 mm, f = 160 MPa."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from speclint_joints.formulae.covers import flange_bending_stress, gasket_lever
from tests.plugins.joints import hand
from tests.plugins.joints.bench import GROUND, STUDS, bench, figure_of, in_every_case, used, without

_THICK = 'thickness = "60 mm"\nflange'
_LEVER = (700 - hand.G) / 2
#: Allowable of the studs: the less of 600/3 and 900/4.
_S_STUD = 200.0


def _code(p: float, load: float, allowable: float, factor: float = 0.3) -> float:
    """UG-34(c)(2), equation 2, in mm."""
    return math.sqrt(factor * p * hand.G**2 / allowable + 1.9 * load * _LEVER / (allowable * hand.G))


def _seating_load(p: float) -> float:
    """Mean of required and actual core area, fully used, N; y is 17 MPa."""
    beds_in = math.pi * hand.B * hand.G * 17
    required = max(hand.gasket_needs(p), beds_in) / _S_STUD
    return (required + 20 * hand.A_3) / 2 * _S_STUD


#: Half of the bench's torque, so that the code's loads govern: 65 kN a stud at most.
_EASED = ("studs", 'torque = "384 N·m"', 'torque = "192 N·m"')


def _plate(workshop: DesignFolder, thickness: float, *changes: tuple[str, str, str]) -> DesignFolder:
    return bench(workshop, ("cover", _THICK, f'thickness = "{thickness:.4f} mm"\nflange'), *changes)


def _real_pull(p: float = 1.6, mean: float = 100e3) -> float:
    """Greatest pull of 20 studs hot: 1.3 times the mean, the heat and the share of the steam, N."""
    return 20 * (hand.heated(1.3 * mean) + hand.share() * hand.lift(p))


def test_thickness_of_the_bench_by_hand(workshop: DesignFolder) -> None:
    """0.3 × 1.6/160 G² = 1159.7 and 1.9 × 574.9e3 × 39.127/(160 G) = 429.6: √1589.3 = 39.87 mm; seating
    936 kN: √699.5 = 26.45 mm; the plate alone 0.309375 × 1.6 (G/60)² = 53.15 MPa supported, 32.21 clamped."""
    check = bench(workshop).only("cover.thickness", "cover")
    assert on_sheet(check, "t_operating") * 1e3 == pytest.approx(39.87, abs=0.01)
    assert on_sheet(check, "t_seating") * 1e3 == pytest.approx(26.45, abs=0.01)
    assert on_sheet(check, "sigma_s") / 1e6 == pytest.approx(53.15, abs=0.01)
    assert on_sheet(check, "sigma_c") / 1e6 == pytest.approx(32.21, abs=0.01)
    assert used(bench(workshop, _EASED), "cover.thickness", "cover") == pytest.approx(39.87 / 60, abs=1e-3)


def test_the_studs_really_pull_more_than_the_code_reckons_with(workshop: DesignFolder) -> None:
    """20 (128.1 + 0.359 × 24.3) = 2736 kN hot against 575 kN: 0.3 × 1.6 G² + 1.9 × 2736e3 × 39.127/G = 512.7e3 N
    at 1.5 × 160 = 240 MPa: 46.2 mm; tightened, 2600 kN without steam: 310.9e3 at 240 MPa: 36.0 mm."""
    check = bench(workshop).only("cover.thickness", "cover")
    assert _real_pull() == pytest.approx(2736e3, abs=1e3)
    assert on_sheet(check, "t_pulled") * 1e3 == pytest.approx(_code(1.6, _real_pull(), 240), rel=1e-5)
    assert _code(1.6, _real_pull(), 240) == pytest.approx(46.22, abs=0.02)
    assert on_sheet(check, "t_tightened") * 1e3 == pytest.approx(_code(0.0, 2600e3, 240), rel=1e-6)
    assert _code(0.0, 2600e3, 240) == pytest.approx(35.99, abs=0.02)
    assert used(workshop, "cover.thickness", "cover") == pytest.approx(46.22 / 60, abs=1e-3)


@pytest.mark.parametrize(("times", "outcome"), [(1.002, "conforms"), (0.998, "finding")])
def test_a_plate_for_the_real_pull_from_both_sides(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """40 mm stood by the code's loads alone, at 39.87; the real pull wants 46.2."""
    check = _plate(workshop, times * _code(1.6, _real_pull(), 240)).only("cover.thickness", "cover")
    assert check.outcome == outcome
    assert (check.grade is Grade.HOLD) is (outcome == "finding")


def test_a_rim_pulled_down_bends_the_middle_a_little_less_than_the_code_has_it() -> None:
    """Plate theory (Timoshenko, a plate on a circle of radius a with a ring of load at b, free rim at c): the moment
    in the middle is W/(4 π) ((1 + ν) ln(b/a) + (1 − ν) (b² − a²)/(2 c²)), 6 M/t²; on the bench, a 310.87, b 350,
    c 380 mm: W/(4 π) (1.3 × 0.11855 + 0.7 × 0.08955) = W/(4 π) × 0.2168, against 1.9 h_G W/G = 0.1196 W."""
    a, b, c = hand.G / 2, 350.0, 380.0
    moment = (1.3 * math.log(b / a) + 0.7 * (b**2 - a**2) / (2 * c**2)) / (4 * math.pi)
    assert 6 * moment == pytest.approx(0.1035, abs=2e-4)
    assert 6 * moment < 1.9 * _LEVER / hand.G


_BANDS = "degC = [-20, 500]\nover_mm = 0\nrows = [[40, 240, 240], [60, 240, 240], [100, 180, 180]]"


@pytest.mark.parametrize(("stock", "allowable"), [("60 mm", 160), ("70 mm", 120)])
@pytest.mark.parametrize("rule", ["cover.thickness", "cover.flange"])
def test_strength_is_that_of_the_plate_as_rolled(
    workshop: DesignFolder, rule: str, stock: str, allowable: int
) -> None:
    """60 mm finished from a plate of 70 mm has the 180 MPa of a plate of 70 mm: f = 180/1.5 = 120 MPa."""
    bench(workshop, ("cover", 'as_made = "65 mm"', f'as_made = "{stock}"'))
    figure_of(workshop, "test-cover", "proof-stress", _BANDS)
    assert on_sheet(workshop.only(rule, "cover"), "f") / 1e6 == pytest.approx(allowable)


def test_no_cover_is_thicker_than_the_plate_that_it_is_cut_from(workshop: DesignFolder) -> None:
    bench(workshop, ("cover", 'as_made = "65 mm"', 'as_made = "59 mm ±1.5"'))
    check = workshop.only("cover.thickness", "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert workshop.only("cover.flange", "cover").outcome == "conforms"
    (workshop.root / "cover.toml").unlink()
    bench(workshop, ("cover", 'as_made = "65 mm"', 'as_made = "59 mm"'))
    (complaint,) = workshop.assess().complaints
    assert "thickness must be no more than as_made, which is 59 mm" in str(complaint)


def test_hot_and_cold_strength_each_have_their_place(workshop: DesignFolder) -> None:
    """Cover 120 MPa hot: f 80 in work, 160 drawn up cold. Studs 300 MPa hot: S_b 100, S_a 200, so that
    A_m = 574.9e3/100 = 5749 mm² and W = (5749 + 6485)/2 × 200 = 1223 kN: √(1.9 W 39.127/(160 G)) = 30.2 mm."""
    bench(workshop)
    figure_of(
        workshop, "test-cover", "proof-stress", "degC = [-20, 20, 200, 500]\nvalue = [240, 240, 120, 120]"
    )
    figure_of(
        workshop, "test-stud", "proof-stress", "degC = [-20, 20, 200, 500]\nvalue = [600, 600, 300, 300]"
    )
    check = workshop.only("cover.thickness", "cover")
    pulled = (hand.gasket_needs() / 100 + 20 * hand.A_3) / 2 * 200
    assert pulled == pytest.approx(1223e3, abs=1e3)
    assert on_sheet(check, "W_a") == pytest.approx(pulled, rel=1e-5)
    assert on_sheet(check, "t_seating") * 1e3 == pytest.approx(_code(0.0, pulled, 160), rel=1e-5)
    assert on_sheet(check, "t_operating") * 1e3 == pytest.approx(
        _code(1.6, hand.gasket_needs(), 80), rel=1e-5
    )


@pytest.mark.parametrize(("thickness", "outcome"), [(39.9, "conforms"), (39.8, "finding")])
def test_operating_thickness_from_both_sides(workshop: DesignFolder, thickness: float, outcome: str) -> None:
    assert _code(1.6, hand.gasket_needs(), 160) == pytest.approx(39.87, abs=0.01)
    check = _plate(workshop, thickness, _EASED).only("cover.thickness", "cover")
    assert check.outcome == outcome
    assert (check.grade is Grade.HOLD) is (outcome == "finding")


@pytest.mark.parametrize(("times", "outcome"), [(1.004, "conforms"), (0.996, "finding")])
def test_seating_governs_where_pressure_is_low(workshop: DesignFolder, times: float, outcome: str) -> None:
    """At 1 bar the studs bend the cover more than the steam does."""
    limit = _code(0.0, _seating_load(0.1), 160)
    assert limit > _code(0.1, hand.gasket_needs(0.1), 160)
    assert limit > _code(0.1, _real_pull(0.1, 25e3), 240)
    _plate(workshop, times * limit, ("studs", 'torque = "384 N·m"', 'torque = "96 N·m"'))
    in_every_case(workshop, '"16 bar gauge"', '"1 bar gauge"')
    assert workshop.only("cover.thickness", "cover").outcome == outcome


@pytest.mark.parametrize(("thickness", "outcome"), [(56.45, "conforms"), (56.3, "finding")])
def test_a_central_hole_takes_root_two(workshop: DesignFolder, thickness: float, outcome: str) -> None:
    """UG-39: 39.87 √2 = 56.38 mm."""
    _plate(workshop, thickness, ("cover", 'central_hole = "0 mm"', 'central_hole = "120 mm"'), _EASED)
    assert workshop.only("cover.thickness", "cover").outcome == outcome


@pytest.mark.parametrize(
    ("old", "new"),
    [('central_hole = "0 mm"', 'central_hole = "320 mm"'), ('form = "flat"', 'form = "dished"')],
)
def test_what_the_code_does_not_cover_is_a_hold(workshop: DesignFolder, old: str, new: str) -> None:
    """A hole wider than half of 621.7 mm makes the cover a ring."""
    check = bench(workshop, ("cover", old, new)).only("cover.thickness", "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_a_ground_face_has_no_gasket_to_press(workshop: DesignFolder) -> None:
    """G is the middle of the face, 620 mm; steam may creep to its outside: π/4 640² × 1.6 = 514.7 kN."""
    bench(
        workshop,
        ("studs", 'seal = "gasket"', 'seal = "ground face"\npressure_circle = "620 mm"'),
        ("studs", "[tightening]", f"{GROUND}[tightening]"),
    )
    check = workshop.only("cover.thickness", "cover")
    assert on_sheet(check, "G") == pytest.approx(0.620)
    assert on_sheet(check, "W_m1") == pytest.approx(math.pi / 4 * 640**2 * 1.6, rel=1e-9)


@pytest.mark.parametrize(
    "line", ['form = "flat"', 'as_made = "65 mm"', 'weld_efficiency = "1"', 'central_hole = "0 mm"']
)
def test_a_cover_not_described_is_a_hold(workshop: DesignFolder, line: str) -> None:
    check = without(workshop, "cover", line).only("cover.thickness", "cover")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize("rule", ["cover.thickness", "cover.test", "cover.flange"])
def test_one_joint_holds_a_cover(workshop: DesignFolder, rule: str) -> None:
    bench(workshop)
    (workshop.root / "more.toml").write_text(STUDS.replace('id = "studs"', 'id = "more"'), encoding="utf-8")
    check = workshop.only(rule, "cover")
    assert check.outcome == "not assessed"
    assert "2 bolted joints" in check.says


@pytest.mark.parametrize(("thickness", "outcome"), [(33.4, "conforms"), (33.3, "finding")])
def test_the_hydraulic_test_from_both_sides(workshop: DesignFolder, thickness: float, outcome: str) -> None:
    """The same 16 bar at 1.43 × 160 = 228.8 MPa: 39.87/√1.43 = 33.34 mm."""
    check = _plate(workshop, thickness, ("studs", 'torque = "384 N·m"', 'torque = "48 N·m"')).only(
        "cover.test", "cover"
    )
    assert check.outcome == outcome
    assert check.case == "test"


@pytest.mark.parametrize(
    "beside",
    [
        'kind = "cylinder-liner"\nhoused_in = "block"',
        'kind = "cylinder-cover"\ncloses = "block"',
        'kind = "gland"\nof = "cover"',
        'kind = "stuffing-box"\nin_cover = "cover"',
    ],
)
@pytest.mark.parametrize(("thickness", "outcome"), [(34.4, "conforms"), (34.3, "finding")])
def test_whatever_closes_the_cylinder_is_tested_with_its_cover(
    workshop: DesignFolder, beside: str, thickness: float, outcome: str
) -> None:
    """17 bar, for which another part of the same cylinder is tested: 33.34 √(17/16) = 34.37 mm."""
    _plate(workshop, thickness, ("studs", 'torque = "384 N·m"', 'torque = "48 N·m"'))
    text = f'id = "beside"\n{beside}\ntest_pressure = "17 bar gauge"\n'
    (workshop.root / "beside.toml").write_text(text, encoding="utf-8")
    assert workshop.only("cover.test", "cover").outcome == outcome


def test_without_a_test_case_the_cover_is_held(workshop: DesignFolder) -> None:
    bench(workshop)
    in_every_case(workshop, "cases.test", "cases.cold")
    check = workshop.only("cover.test", "cover")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("times", "outcome"), [(1.002, "conforms"), (0.998, "finding")])
def test_the_flange_bears_the_studs_as_really_tightened(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """20 (128.1 + 0.359 × 24.3) kN at 39.1 mm: 6 W h/(π G t²) = 240 MPa at some 37.0 mm."""
    pull = 20 * (hand.heated(130e3) + hand.share() * hand.lift())
    limit = math.sqrt(6 * pull * _LEVER / (math.pi * hand.G * 240))
    assert limit == pytest.approx(37.0, abs=0.05)
    bench(workshop, ("cover", 'flange_thickness = "50 mm"', f'flange_thickness = "{times * limit:.4f} mm"'))
    assert workshop.only("cover.flange", "cover").outcome == outcome


def test_a_flange_without_thickness_is_not_assessed(workshop: DesignFolder) -> None:
    check = without(workshop, "cover", 'flange_thickness = "50 mm"').only("cover.flange", "cover")
    assert check.outcome == "not assessed"


@given(st.floats(1e5, 5e6), st.floats(0.3, 1.0), st.floats(0.01, 0.1))
def test_half_the_thickness_bends_four_times_as_much(W: float, G: float, t: float) -> None:
    lever = gasket_lever(D_b=G + 0.08, G=G)
    whole = flange_bending_stress(W, lever, G, t)
    assert flange_bending_stress(W, lever, G, t / 2) == pytest.approx(4 * whole)
    assert flange_bending_stress(2 * W, lever, G, t) == pytest.approx(2 * whole)


@pytest.mark.parametrize(
    ("stock", "says"),
    [
        ("65 mm", "the plate or casting is as thick as what is cut from it"),
        ("59 mm ±1.5", "the cover is thicker than the plate or casting that it is said to be cut from"),
    ],
)
def test_what_a_cover_is_cut_from_is_told(workshop: DesignFolder, stock: str, says: str) -> None:
    bench(workshop, ("cover", 'as_made = "65 mm"', f'as_made = "{stock}"'))
    check = workshop.only("cover.thickness", "cover")
    assert check.judgement is not None
    assert says in [one.says for one in check.judgement.parts]
