"""Preload, stress of the stud and its material."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.bolted_joints.tightening import preload_from_angle
from speclint.testing import DesignFolder, on_sheet
from speclint_joints.formulae.preloads import friction_of_coefficient, preload_left
from tests.plugins.joints import hand
from tests.plugins.joints.bench import bench, figure_of, in_every_case, used, without

_TORQUE = 'torque = "384 N·m"'
_METHOD = 'method = "torque wrench"'


def test_preload_of_the_bench_is_a_band(workshop: DesignFolder) -> None:
    """384/(0.16 × 0.024) = 100 kN, 70 to 130 kN at ±30 %."""
    check = bench(workshop).only("joint.preload", "studs")
    assert on_sheet(check, "F") == pytest.approx(100e3)
    assert on_sheet(check, "F_low") == pytest.approx(70e3, rel=1e-6)
    assert on_sheet(check, "F_high") == pytest.approx(130e3, rel=1e-6)
    assert used(workshop, "joint.preload") == pytest.approx(0.30 / 0.35, rel=1e-6)


def _permissible(area: float = hand.A_S) -> float:
    """VDI 2230 eq. R8/1 by hand, with the friction at which the torque pulls most: K = 0.16/1.3."""
    mu = hand.friction(0.16 / 1.3)
    across = math.sqrt(4 * area / math.pi)
    climb = hand.P / (math.pi * hand.D_2) + mu / math.cos(math.radians(30))
    return 0.9 * 600 * area / math.sqrt(1 + 3 * (1.5 * hand.D_2 / across * climb) ** 2)


@pytest.mark.parametrize(("times", "outcome"), [(0.995, "conforms"), (1.005, "finding")])
def test_greatest_preload_reaches_proof(workshop: DesignFolder, times: float, outcome: str) -> None:
    """The greatest preload, 1.3 T/(K d), against the permissible one, some 177 kN: a torque of some 524 N·m."""
    limit = _permissible() / 1.3 * 0.16 * 0.024
    assert limit == pytest.approx(524, abs=1)
    bench(workshop, ("studs", _TORQUE, f'torque = "{times * limit:.3f} N·m"'))
    check = workshop.only("joint.preload", "studs")
    assert check.outcome == outcome
    assert on_sheet(check, "F_max") == pytest.approx(_permissible(), rel=1e-5)


@pytest.mark.parametrize(("times", "outcome"), [(0.995, "conforms"), (1.005, "finding")])
def test_a_waisted_stud_bears_the_preload_of_its_waist(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """A shank of 17 mm has 227 mm², for 352.5 mm² of the thread: some 110 kN and not 177."""
    limit = _permissible(math.pi / 4 * 17**2)
    assert limit == pytest.approx(110e3, abs=1e3)
    torque = times * limit / 1.3 * 0.16 * 0.024
    shank = ("studs", 'shank = "24 mm"', 'shank = "17 mm"')
    bench(workshop, ("studs", _TORQUE, f'torque = "{torque:.3f} N·m"'), shank)
    check = workshop.only("joint.preload", "studs")
    assert check.outcome == outcome
    assert on_sheet(check, "F_max") == pytest.approx(limit, rel=1e-5)


@pytest.mark.parametrize(
    ("method", "outcome"),
    [
        ("torque wrench with estimated friction", "conforms"),  # (2 - 1)/(2 + 1) = 0.333
        ("torque wrench with estimated low friction", "finding"),  # 1.5/3.5 = 0.429
        ("impact wrench", "finding"),
        ("spanner by feel", "finding"),
    ],
)
def test_the_scatter_of_the_method(workshop: DesignFolder, method: str, outcome: str) -> None:
    bench(workshop, ("studs", _METHOD, f'method = "{method}"'))
    assert workshop.only("joint.preload", "studs").outcome == outcome


def test_a_tensioner_twists_nothing(workshop: DesignFolder) -> None:
    """0.9 × 600 × 352.50 = 190.35 kN; ±0.6/2.6 of 100 kN is 123.08 kN at most."""
    bench(workshop, ("studs", _METHOD, 'method = "hydraulic tensioner"\npreload = "100 kN"'))
    check = workshop.only("joint.preload", "studs")
    assert on_sheet(check, "F_max") == pytest.approx(190.35e3, rel=1e-4)
    assert on_sheet(check, "F_high") == pytest.approx(123.08e3, rel=1e-4)


_TURNED = 'method = "angle controlled"\nangle = "30 °"'
#: 38.4 N·m leave 10 kN; 30° of 3 mm are 0.25 mm on the springs of stud and parts.
_BY_ANGLE = 10e3 + 3 / 12 / hand.give()


def _angle(workshop: DesignFolder, *changes: tuple[str, str, str]) -> DesignFolder:
    return bench(workshop, ("studs", _METHOD, _TURNED), ("studs", _TORQUE, 'torque = "38.4 N·m"'), *changes)


def test_an_angle_is_worked_on_the_springs(workshop: DesignFolder) -> None:
    """The stated 20 kN do not count beside an angle, from which the preload follows."""
    stated = ("studs", 'lubrication = "graphite', 'preload = "20 kN"\nlubrication = "graphite')
    for changes in ((), (stated,)):
        check = _angle(workshop, *changes).only("joint.preload", "studs")
        assert on_sheet(check, "F_0") == pytest.approx(10e3, rel=1e-6)
        assert on_sheet(check, "F") == pytest.approx(_BY_ANGLE, rel=1e-5)
    assert on_sheet(workshop.only("joint.separation", "studs"), "F") == pytest.approx(_BY_ANGLE, rel=1e-5)


@pytest.mark.parametrize(("times", "outcome"), [(0.99, "conforms"), (1.01, "finding")])
def test_an_angle_that_draws_the_stud_into_yield(workshop: DesignFolder, times: float, outcome: str) -> None:
    """Greatest preload, 1 + 1/6 times the mean at a factor of 1.4, at what tension and torsion bear."""
    check = _angle(workshop).only("joint.preload", "studs")
    bears = on_sheet(check, "F_max")
    degrees = 30 * (bears / (1 + 0.4 / 2.4) - 10e3) / (_BY_ANGLE - 10e3)
    _angle(workshop, ("studs", 'angle = "30 °"', f'angle = "{times * degrees:.4f} °"'))
    assert workshop.only("joint.preload", "studs").outcome == outcome


def test_an_angle_not_stated_is_not_assessed(workshop: DesignFolder) -> None:
    _angle(workshop, ("studs", 'angle = "30 °"\n', ""))
    assert workshop.only("joint.preload", "studs").outcome == "not assessed"


@pytest.mark.parametrize(
    ("stated", "settles"), [("carries_shear = false", 8.5), ("carries_shear = true", 10), ("", 10)]
)
def test_a_joint_that_carries_shear_settles_more(workshop: DesignFolder, stated: str, settles: float) -> None:
    """3 + 2.5 + 2 × 1.5 = 8.5 µm along the studs, 3 + 3 + 2 × 2 = 10 µm across them; across where nothing is said."""
    check = bench(workshop, ("studs", "carries_shear = false", stated)).only("joint.separation", "studs")
    assert on_sheet(check, "f_Z") * 1e6 == pytest.approx(settles)


@given(st.floats(0.0, 3.0), st.floats(1.0, 2.0), st.floats(1e8, 1e10), st.floats(1e8, 1e10))
def test_turning_further_never_slackens(theta: float, more: float, k_b: float, k_m: float) -> None:
    like = {"F_0": 1e4, "P": 0.003, "k_b": k_b, "k_m": k_m}
    assert preload_from_angle(theta=theta * more, **like) >= preload_from_angle(theta=theta, **like) >= 1e4


@pytest.mark.parametrize(
    "line",
    [_TORQUE, _METHOD, 'lubrication = "graphite paste"', 'torque_coefficient = "0.16"', 'hole = "26 mm"'],
)
def test_tightening_not_laid_down_is_not_assessed(workshop: DesignFolder, line: str) -> None:
    assert without(workshop, "studs", line).only("joint.preload", "studs").outcome == "not assessed"


def test_an_unknown_method_is_not_assessed(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", _METHOD, 'method = "torque wrench by eye"'))
    found = workshop.only("joint.preload", "studs")
    assert found.outcome == "not assessed"
    assert found.says.startswith("no method 'torque wrench by eye' in the handbook; nearest: torque wrench")


def _stress(load: float) -> float:
    """Tension with half of the torsion left by tightening to 130 kN."""
    return math.sqrt((load / hand.A_S) ** 2 + 3 * (hand.twist(130e3, hand.friction(0.16 / 1.3)) / 2) ** 2)


def test_stud_stress_of_the_bench_by_hand(workshop: DesignFolder) -> None:
    """Cold test governs: 130 kN and 0.359 of 24.3 kN on 352.5 mm² is 393.5 MPa; 55.7 MPa of twist; 405.2 MPa."""
    by_hand = _stress(130e3 + hand.share() * hand.lift())
    assert by_hand == pytest.approx(405.2, abs=0.1)
    assert used(bench(workshop), "joint.stud-stress") == pytest.approx(by_hand / 480, rel=1e-5)


@pytest.mark.parametrize(("proof", "outcome"), [(507, "conforms"), (506, "finding")])
def test_stud_stress_at_its_limit(workshop: DesignFolder, proof: int, outcome: str) -> None:
    """405.2/0.8 = 506.5 MPa of proof stress."""
    bench(workshop, ("metals", "value = 600", f"value = {proof}"))
    check = workshop.only("joint.stud-stress", "studs")
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.grade is Grade.HOLD


@pytest.mark.parametrize(("proof", "outcome"), [(568, "conforms"), (566, "finding")])
def test_a_hot_stud_may_use_less(workshop: DesignFolder, proof: int, outcome: str) -> None:
    """All at 300 °C: 2.5e-6 × 280 × 8.8 mm takes 2.99 kN away, 396.9 MPa are left, 0.7 of 567 MPa."""
    by_hand = _stress(hand.heated(130e3, rise=280) + hand.share() * hand.lift())
    assert by_hand / 0.7 == pytest.approx(567.0, abs=0.5)
    bench(workshop, ("metals", "value = 600", f"value = {proof}"))
    in_every_case(workshop, '"200 °C"', '"300 °C"')
    assert workshop.only("joint.stud-stress", "studs").outcome == outcome


def test_a_waisted_shank_counts(workshop: DesignFolder) -> None:
    """18 mm: 254.5 mm² instead of 352.5."""
    thick = used(bench(workshop), "joint.stud-stress")
    bench(workshop, ("studs", 'shank = "24 mm"', 'shank = "18 mm"'))
    assert used(workshop, "joint.stud-stress") > thick * 352.5 / 254.5


def test_heat_in_the_cover_tightens_the_stud(workshop: DesignFolder) -> None:
    """50 mm of cover 40 K hotter grow 25 µm more; on the springs of the joint that is 25e-3/give N."""
    bench(workshop)
    in_every_case(workshop, 'cylinder-cover = "200 °C"', 'cylinder-cover = "240 °C"')
    check = workshop.only("joint.stud-stress", "studs")
    by_hand = hand.heated(130e3) + 25e-3 / hand.give()
    assert on_sheet(check, "F_high,h") == pytest.approx(by_hand, rel=1e-5)


def test_a_missing_temperature_holds_the_joint(workshop: DesignFolder) -> None:
    bench(workshop)
    in_every_case(workshop, 'bolted-joint = "200 °C"\n', "")
    check = workshop.only("joint.stud-stress", "studs")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("at", "outcome"), [("300 °C", "conforms"), ("301 °C", "finding")])
def test_bolting_steel_has_a_highest_temperature(workshop: DesignFolder, at: str, outcome: str) -> None:
    bench(workshop)
    in_every_case(workshop, 'bolted-joint = "200 °C"', f'bolted-joint = "{at}"')
    assert workshop.only("joint.bolting-material", "studs").outcome == outcome


@pytest.mark.parametrize(("at", "outcome"), [("299 °C", "conforms"), ("301 °C", "finding")])
def test_heat_that_soaks_in_when_the_engine_stands_counts(
    workshop: DesignFolder, at: str, outcome: str
) -> None:
    bench(workshop)
    standing = "[cases.standing-hot.temperatures]\nbolted-joint = "
    workshop.replace("duty.toml", f'{standing}"200 °C"', f'{standing}"{at}"')
    assert workshop.only("joint.bolting-material", "studs").outcome == outcome


@pytest.mark.parametrize(
    ("steel", "outcome"),
    [("bolting-8.8", "finding"), ("bolting-25CrMo4", "conforms"), ("bolting-B7", "conforms")],
)
def test_property_class_8_8_ends_at_150_degrees(workshop: DesignFolder, steel: str, outcome: str) -> None:
    """ISO 898-1 warrants its classes to 150 °C; the studs are at 200 °C."""
    bench(workshop, ("studs", 'material = "test-stud"\nholds', f'material = "{steel}"\nholds'))
    check = workshop.only("joint.bolting-material", "studs")
    assert check.outcome == outcome
    assert (check.grade is Grade.HOLD) is (outcome == "finding")


@pytest.mark.parametrize(
    ("steel", "hottest", "outcome"),
    [
        ("bolting-42CrMo4", "420 °C", "conforms"),
        ("bolting-42CrMo4", "421 °C", "finding"),
        ("bolting-B7", "371 °C", "conforms"),
        ("bolting-B7", "372 °C", "finding"),
        ("bolting-C35E", "350 °C", "conforms"),
        ("bolting-C35E", "351 °C", "finding"),
    ],
)
def test_a_bolting_steel_ends_where_it_creeps(
    workshop: DesignFolder, steel: str, hottest: str, outcome: str
) -> None:
    """Their standards go to 500, 450 and 350 °C; creep governs from 420 °C and, of B7, from 700 °F = 371.1 °C."""
    bench(workshop, ("studs", 'material = "test-stud"\nholds', f'material = "{steel}"\nholds'))
    in_every_case(workshop, 'bolted-joint = "200 °C"', f'bolted-joint = "{hottest}"')
    check = workshop.only("joint.bolting-material", "studs")
    assert check.outcome == outcome
    assert (check.grade is Grade.HOLD) is (outcome == "finding")


@pytest.mark.parametrize(
    ("hottest", "outcome", "grade"), [(350, "conforms", None), (351, "not assessed", Grade.HOLD)]
)
def test_a_steel_of_the_works_that_may_be_hot_says_where_it_creeps(
    workshop: DesignFolder, hottest: int, outcome: str, grade: Grade | None
) -> None:
    """Up to 350 °C a steel needs no limit of creep beside that of its temperature."""
    bench(workshop)
    workshop.replace("metals.toml", "bolting = { value = 300", f"bolting = {{ value = {hottest}")
    check = workshop.only("joint.bolting-material", "studs")
    assert (check.outcome, check.grade) == (outcome, grade)


def test_structural_steel_is_no_bolting(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", 'material = "test-stud"\nholds', 'material = "test-block"\nholds'))
    check = workshop.only("joint.bolting-material", "studs")
    assert check.outcome == "finding"
    assert "not a bolting steel" in check.says


def test_a_stud_without_material_is_not_assessed(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", 'material = "test-stud"\nholds', "holds"))
    assert workshop.only("joint.bolting-material", "studs").outcome == "not assessed"


@given(st.floats(0.1, 0.4), st.floats(1.01, 2.0))
def test_more_friction_needs_a_greater_coefficient(K: float, more: float) -> None:
    like = {"d": 0.024, "P": 0.003, "d_2": 0.02205, "alpha": math.radians(30), "D_h": 0.031}
    assert friction_of_coefficient(K * more, **like) > friction_of_coefficient(K, **like)


@given(st.floats(1e3, 1e6), st.floats(0, 2e5), st.floats(0, 1))
def test_settling_and_creep_only_take(F: float, F_Z: float, r: float) -> None:
    assert 0 <= preload_left(F, F_Z, r) <= F


def test_a_tensioner_leaves_no_twist_in_a_stud(workshop: DesignFolder) -> None:
    """Of what a wrench twists half stays, as the limit has it; drawn straight a stud is only pulled."""
    twisted = bench(workshop).only("joint.stud-stress", "studs")
    assert on_sheet(twisted, "sigma_eq") > 1.01 * on_sheet(twisted, "sigma")
    bench(
        workshop,
        (
            "studs",
            'method = "torque wrench"\ntorque = "384 N·m"\ntorque_coefficient = "0.16"',
            'method = "hydraulic tensioner"\npreload = "100 kN"',
        ),
    )
    drawn = workshop.only("joint.stud-stress", "studs")
    assert on_sheet(drawn, "sigma_eq") == pytest.approx(on_sheet(drawn, "sigma"))


@pytest.mark.parametrize(("times", "outcome"), [(0.995, "conforms"), (1.005, "finding")])
def test_a_measured_preload_may_use_more_of_the_stud(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """Drawn without twist, cooler than 300 °C: 0.9 × 600 MPa; the proof stress is set to what the pull then is."""
    drawn = ("studs", _METHOD + "\n" + _TORQUE, 'method = "hydraulic tensioner"\npreload = "100 kN"')
    stress = on_sheet(bench(workshop, drawn).only("joint.stud-stress", "studs"), "sigma_eq") / 1e6
    assert stress == pytest.approx(123.08e3 / hand.A_S, rel=0.1)
    proof = stress / 0.9 / times
    figure_of(workshop, "test-stud", "proof-stress", f"degC = [-20, 500]\nvalue = {proof:.4f}")
    assert workshop.only("joint.stud-stress", "studs").outcome == outcome
