"""What stands on a cover, by hand on the bench: G = 621.745 mm, plate 60 mm, 53.15 MPa by the steam, f = 160 MPa."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts import stop_load
from speclint.handbook.plates.circular import supported_plate_stress, supported_plate_stress_within
from speclint.handbook.plates.rings import ring_plate_hole_load_stress
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed, on_sheet
from tests.plugins.joints import hand
from tests.plugins.joints.bench import COVER, STUDS, bench, in_every_case
from tests.plugins.valves.gear import CAM, CAM_BOX, SPINDLE, TAPPET

RULE = "cover.springs-and-stops"
_SPRING = """
kind = "compression-spring"
id = "spring"
closes = "valve"
free_length = "200 mm"
shut_length = "150 mm"
shut_load = "1000 N"
open_load = "1900 N"
rate = "50 N/mm"
plate_depth = "0 mm"
tool_height = "205 mm"
"""
_VALVE = 'kind = "poppet-valve"\nid = "valve"\nlift = "20 mm"\nmass = "5 kg"\nstop_stiffness = "200 kN/mm"\n'
_BY_TOOL = 'spring = "spring"\nacross = "100 mm"\neased_by = "tool"\n'
_BY_STUDS = _BY_TOOL.replace('"tool"', '"long studs"')
#: Stress in MPa by 1 N on 100 mm: 3/(8 π 60²) (5.2 ln 6.21745 + 4 − 0.7 (100/621.745)²).
_PER_NEWTON = 3 / (8 * math.pi * 60**2) * (5.2 * math.log(hand.G / 100) + 4 - 0.7 * (100 / hand.G) ** 2)


def _bearing(folder: DesignFolder, bears: str, *changes: tuple[str, str, str]) -> DesignFolder:
    bench(folder, *changes)
    cover = folder.root / "cover.toml"
    cover.write_text(f"{cover.read_text(encoding='utf-8')}[bears.it]\n{bears}", encoding="utf-8")
    (folder.root / "spring.toml").write_text(_SPRING, encoding="utf-8")
    (folder.root / "valve.toml").write_text(_VALVE, encoding="utf-8")
    return folder


def test_a_spring_bends_the_plate_a_little_more(workshop: DesignFolder) -> None:
    """1000 N + 50 N/mm × 20 mm = 2000 N, more than the 1900 stated; on 100 mm it adds 0.894 MPa to 53.15."""
    check = _bearing(workshop, _BY_TOOL).only(RULE, "cover")
    assert check.outcome == "conforms"
    assert on_sheet(check, "F_h of it") == pytest.approx(2000)
    assert pytest.approx(0.894, abs=1e-3) == 2000 * _PER_NEWTON
    assert on_sheet(check, "σ of it") / 1e6 == pytest.approx(2000 * _PER_NEWTON, rel=1e-5)
    assert on_sheet(check, "σ") / 1e6 == pytest.approx(54.04, abs=0.01)


@pytest.mark.parametrize(("load", "outcome"), [(238, "conforms"), (240, "finding")])
def test_bending_by_a_jack_from_both_sides(workshop: DesignFolder, load: float, outcome: str) -> None:
    """160 − 53.15 = 106.85 MPa are left, 239.0 kN on 100 mm: cover.thickness, by the steam alone, said nothing."""
    assert pytest.approx(239.0e3, abs=300) == (160 - 53.15) / _PER_NEWTON
    check = _bearing(workshop, f'jack = "{load} kN"\nacross = "100 mm"\n').only(RULE, "cover")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("load", "outcome"), [(70, "conforms"), (520, "finding")])
def test_studs_carry_what_stands_on_the_cover_too(workshop: DesignFolder, load: float, outcome: str) -> None:
    """Least preload hot against 24.29 kN of steam a stud and the load/20: 1.2 at n F/1.2 − 485.8 kN."""
    least = hand.heated(hand.settled())
    spare = 20 * (least / 1.2 - hand.lift())
    assert 70e3 < spare < 520e3
    check = _bearing(workshop, f'force = "{load} kN"\nacross = "100 mm"\n').only("joint.separation")
    assert check.outcome == outcome
    if outcome == "conforms":
        assert on_sheet(check, "n_p") == pytest.approx(least / (hand.lift() + 3500), rel=1e-4)


_LID = COVER.replace('"cylinder-cover"', '"chamber-cover"').replace('end = "front"\n', "")
_NO_STEAM = STUDS.partition("[gasket]")[0].replace(
    'seal = "gasket"\npressure = "cylinder"\n', 'purpose = "structural"\n'
)


@pytest.mark.parametrize(("times", "outcome"), [(0.99, "conforms"), (1.01, "finding")])
def test_a_cover_without_steam_is_held_against_the_spring_alone(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """n F/1.2 = 20 × the least preload hot, metal on metal, over 1.2."""
    load = times * 20 * hand.heated(hand.settled(gasket=False), gasket=False) / 1.2
    _bearing(workshop, "", ("cover", COVER, f'{_LID}[bears.it]\nforce = "{load:.1f} N"\nacross = "600 mm"\n'))
    workshop.replace("studs.toml", STUDS, _NO_STEAM + "[tightening]" + STUDS.partition("[tightening]")[2])
    text = (workshop.root / "cover.toml").read_text(encoding="utf-8")
    (workshop.root / "cover.toml").write_text(text.removesuffix("[bears.it]\n"), encoding="utf-8")
    in_every_case(workshop, "cylinder-cover =", "chamber-cover =")
    check = workshop.only(RULE, "cover")
    assert check.outcome == outcome, check.says


@pytest.mark.parametrize(("height", "outcome"), [("201 mm", "conforms"), ("199 mm", "finding")])
def test_a_tool_lets_the_spring_out_to_its_free_length(
    workshop: DesignFolder, height: str, outcome: str
) -> None:
    _bearing(workshop, _BY_TOOL)
    check = workshop.replace("spring.toml", '"205 mm"', f'"{height}"').only(RULE, "cover")
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("count", "beyond", "outcome"),
    [(2, "51 mm", "conforms"), (2, "49 mm", "finding"), (1, "51 mm", "finding")],
)
def test_long_studs_are_full_until_the_spring_is_free(
    workshop: DesignFolder, count: int, beyond: str, outcome: str
) -> None:
    """200 − 150 = 50 mm from shut to free."""
    _bearing(workshop, _BY_STUDS)
    studs = workshop.root / "studs.toml"
    with studs.open("a", encoding="utf-8") as more:
        more.write(f'[long_studs]\ncount = {count}\nbeyond_nut = "{beyond}"\n')
    check = workshop.only(RULE, "cover")
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_dished_cover_is_not_covered(workshop: DesignFolder) -> None:
    dished = ("cover", 'form = "flat"', 'form = "dished"')
    check = _bearing(workshop, _BY_TOOL, dished).only(RULE, "cover")
    assert (check.outcome, "dished" in check.says) == ("finding", True)


def test_a_load_at_a_hole_bends_the_ring_that_is_left(workshop: DesignFolder) -> None:
    """20 kN round a hole of 120 mm, ratio 120/621.745 = 0.193: K between Roark's 0.3374 at 0.1 and 0.6210 at 0.3.

    Line load w = F/(π d), σ = 6 K w a/t² = 3 K F G/(π d t²): K 0.3374 gives 9.27 MPa, 0.6210 gives 17.06. On a whole
    plate, over 100 mm, 20 kN bend 8.94 MPa.
    """
    hole = ("cover", 'central_hole = "0 mm"', 'central_hole = "120 mm"')
    check = _bearing(workshop, 'force = "20 kN"\nacross = "100 mm"\n', hole).only(RULE, "cover")
    least, most = (3 * K * 20e3 * hand.G / (math.pi * 120 * 60**2) for K in (0.3374, 0.6210))
    assert (least, most) == (pytest.approx(9.27, abs=0.01), pytest.approx(17.06, abs=0.01))
    assert least < on_sheet(check, "σ of it") / 1e6 < most


def test_a_word_alone_eases_no_spring(workshop: DesignFolder) -> None:
    expect_not_assessed(_bearing(workshop, _BY_STUDS).only(RULE, "cover"), "long_studs.count")
    _bearing(workshop, _BY_TOOL)
    check = workshop.replace("spring.toml", 'tool_height = "205 mm"\n', "").only(RULE, "cover")
    expect_not_assessed(check, "tool_height")


def test_a_cover_that_says_nothing(workshop: DesignFolder) -> None:
    expect_not_applicable(bench(workshop).only(RULE, "cover"), "nothing is said to stand on it")
    expect_not_assessed(_bearing(workshop, "").only(RULE, "cover"), "states no spring, stop, jack or force")
    lid = _LID + 'path = { section = "0.002 m²", length = "150 mm" }\n'
    check = bench(workshop, ("cover", COVER, lid)).only(RULE, "cover")
    expect_not_assessed(check, "`bears` does not say which stand on it")


def test_a_stop_asks_for_the_gear_that_drives_the_valve_against_it(workshop: DesignFolder) -> None:
    check = _bearing(workshop, 'stop = "valve"\nacross = "100 mm"\n').only(RULE, "cover")
    expect_not_assessed(check, "the gear that lifts valve against its stop is not drawn")


def test_a_valve_whose_spring_broke_strikes_its_stop_at_the_speed_of_its_cam(workshop: DesignFolder) -> None:
    """Harmonic, 20 mm in 70°: π 20/(2 × 1.22173) = 25.71 mm/rad at 37.70 rad/s: 0.9694 m/s; 6 kg on 2·10⁸ N/m:
    0.9694 √(1.2·10⁹) = 33.58 kN. It strikes where the engine runs: at the start nothing."""
    _bearing(workshop, 'stop = "valve"\nacross = "100 mm"\n')
    gear = {"spindle": SPINDLE, "tappet": TAPPET, "cam": CAM, "box": CAM_BOX}
    for name, text in gear.items():
        own = text.replace("known-iron", "test-block").replace("known-steel", "test-block")
        (workshop.root / f"{name}.toml").write_text(own, encoding="utf-8")
    workshop.replace("valve.toml", 'mass = "5 kg"', 'mass = "4.5 kg"')
    duty = workshop.root / "duty.toml"
    text = duty.read_text(encoding="utf-8").replace(
        "[cases.running]\n", '[cases.running]\nrotational_speed = "360 rev/min"\n'
    )
    duty.write_text(text, encoding="utf-8")
    check = workshop.only(RULE, "cover")
    assert check.outcome == "conforms", check.says
    assert on_sheet(check, "v") == pytest.approx(
        math.pi * 0.02 / (2 * math.radians(70)) * 12 * math.pi, rel=1e-3
    )
    assert on_sheet(check, "F_k") == pytest.approx(33.58e3, rel=1e-3)


def test_load_on_a_stop_by_the_page() -> None:
    """7 kg on 2·10⁸ N/m: 1 m/s × √(1.4·10⁹) = 37.4 kN, 0.3 m/s 11.2 kN."""
    for speed, load in ((1.0, 37.4e3), (0.3, 11.2e3)):
        assert stop_load(v=speed, k=2e8, m_v=5.0, m_s=2.0) == pytest.approx(load, rel=3e-3)


@given(st.floats(0.05, 5), st.floats(1e6, 1e9), st.floats(0.5, 20))
def test_a_stop_twice_as_fast_is_loaded_twice(v: float, k: float, m: float) -> None:
    assert stop_load(v=2 * v, k=k, m_v=m, m_s=0) == pytest.approx(2 * stop_load(v=v, k=k, m_v=m, m_s=0))
    assert stop_load(v=v, k=4 * k, m_v=m, m_s=0) == pytest.approx(2 * stop_load(v=v, k=k, m_v=m, m_s=0))


@pytest.mark.parametrize(("ratio", "K"), [(0.1, 0.3374), (0.3, 0.6210), (0.7, 0.8814)])
def test_a_load_at_the_hole_by_roark(ratio: float, K: float) -> None:
    """Table 11.2, case 1a, load at the hole, Poisson's ratio 0.3: M = K w a, w = F/(π d), σ = 6 M/t²."""
    F, D, t = 60e3, 0.4, 0.02
    d = ratio * D
    by_table = 6 * K * F / (math.pi * d) * D / 2 / t**2
    assert ring_plate_hole_load_stress(F=F, d=d, D=D, t=t, nu=0.3) == pytest.approx(by_table, rel=2e-4)


@given(st.floats(0.02, 0.98))
def test_a_load_over_the_whole_plate_is_a_pressure(share: float) -> None:
    """The nearer the rim, the less a load bends the plate; over all of it, as much as its pressure does."""
    D, t = 0.4, 0.02
    whole = supported_plate_stress(p=1e6, D=D, t=t, nu=0.3)
    within = supported_plate_stress_within(p=1e6 / share**2, G=share * D, D=D, t=t, nu=0.3)
    assert within > whole
