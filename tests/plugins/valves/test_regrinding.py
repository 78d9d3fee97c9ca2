"""Valves, seats and cams after their last regrind, worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts import sink_of_valve
from speclint.testing import DesignFolder, changed, expect_not_applicable, on_sheet
from speclint_valves.formulae.regrinding import face_widened, load_when_sunk, ring_outside_face
from tests.plugins.valves.gear import CAM, train_files

GROUND = "wear.seats-reground"


def files(
    times: int = 3,
    depth: str = "0.1 mm",
    angle: str = "45 °",
    free: str = "170 mm",
    shortens: str = "3 mm",
    add: str = "",
) -> dict[str, str]:
    """The train of the tests with cones of 45°, ground three times by 0.1 mm on both faces."""
    regrind = f'[regrind]\ndepth = "{depth}"\ntimes = {times}\n'
    made = train_files(
        valve=(
            (
                'seat_diameter = "150 mm"\nseat_angle = "0 °"',
                f'seat_diameter = "150 mm"\nseat_angle = "{angle}"',
            ),
            (
                'seat_diameter = "140 mm"\nseat_angle = "0 °"',
                f'seat_diameter = "140 mm"\nseat_angle = "{angle}"',
            ),
        )
    )
    made["valve.toml"] += regrind
    seat = (
        made["seat.toml"].replace('"170 mm"', '"139 mm"') + f'seat_angle = "{angle}"\nseat_width = "3 mm"\n'
    )
    made["seat.toml"] = seat + 'seat_diameter = "150 mm"\n' + regrind
    made["lower.toml"] = seat.replace('"seat"', '"lower"') + 'seat_diameter = "140 mm"\n' + regrind
    made["valve.toml"] = made["valve.toml"].replace(
        'seat = "seat"\nseat_diameter = "140 mm"', 'seat = "lower"\nseat_diameter = "140 mm"'
    )
    made["spindle.toml"] = made["spindle.toml"] + f'shortens = "{shortens}"\n'
    made["spring.toml"] += f'free_length = "{free}"\nshut_length = "142.5 mm"\n{add}wear.limit = "169.9 mm"\n'
    return made


def test_the_sink_of_the_page(workshop: DesignFolder) -> None:
    """2 × 3 × 0.1/cos 45° = 0.8485 mm."""
    check = workshop.write(files()).only(GROUND, "valve")
    assert check.outcome == "conforms"
    assert on_sheet(check, "h_u") * 1e3 == pytest.approx(0.8485, abs=1e-4)
    for beat in ("u", "l"):
        assert on_sheet(check, f"t_s{beat}") * 1e3 == pytest.approx(0.3)
        assert on_sheet(check, f"w_sn{beat}") * 1e3 == pytest.approx(3 + 0.3 / 0.5)


def test_springs_that_the_sink_leaves_too_weak_are_a_hold(workshop: DesignFolder) -> None:
    """Drifting, 944 N are wanted: 964 N new pass, and 0.8485 mm × 40 N/mm = 33.9 N less do not."""
    weak = files()
    weak["spring.toml"] = changed(weak["spring.toml"], ('"1100 N ±0.0001"', '"940 N ±0.0001"'))
    workshop.write(weak)
    assert workshop.only("valve.spring-holds-shut").outcome == "conforms"
    check = workshop.only(GROUND, "valve")
    assert (check.outcome, check.grade, check.case) == ("finding", Grade.HOLD, "drifting")


def test_springs_that_wear_leaves_too_short_are_a_hold(workshop: DesignFolder) -> None:
    """10 mm shorter they press with 1100 − 40 × 10 = 700 N, less than any set leaves, where 944 are wanted."""
    worn = files()
    worn["spring.toml"] = changed(worn["spring.toml"], ('wear.limit = "169.9 mm"', 'wear.limit = "160 mm"'))
    check = workshop.write(worn).only(GROUND, "valve")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert on_sheet(check, "F_w1") == pytest.approx(700, abs=0.01)


def test_a_washer_makes_up_for_the_sink(workshop: DesignFolder) -> None:
    """No more than the sink: a thicker one gives the new load, not more."""
    assert load_when_sunk(F_U=1000.0, R=40e3, h=0.001, z=0.0005) == pytest.approx(980.0)
    assert load_when_sunk(F_U=1000.0, R=40e3, h=0.001, z=0.005) == 1000.0
    without = on_sheet(workshop.write(files()).only(GROUND, "valve"), "F_su")
    washed = workshop.write(files(add='packed_by = "0.8 mm"\n')).only(GROUND, "valve")
    assert on_sheet(washed, "z_1") * 1e3 == pytest.approx(0.8)
    packed = on_sheet(washed, "F_su")
    assert packed - without == pytest.approx(0.8e-3 * 40e3, rel=0.05)


@pytest.mark.parametrize(("washers", "outcome"), [("0.848 mm", "conforms"), ("0.849 mm", "finding")])
def test_washers_are_no_thicker_than_the_sink(workshop: DesignFolder, washers: str, outcome: str) -> None:
    """The valve sinks 0.8485 mm: what is more presses the coils nearer to each other than the drawing says."""
    check = workshop.write(files(add=f'packed_by = "{washers}"\n')).only(GROUND, "valve")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("shortens", "outcome"), [("0.849 mm", "conforms"), ("0.848 mm", "finding")])
def test_the_gear_must_take_the_sink_up(workshop: DesignFolder, shortens: str, outcome: str) -> None:
    check = workshop.write(files(shortens=shortens)).only(GROUND, "valve")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("depth", "outcome"), [("0.333 mm", "conforms"), ("0.334 mm", "finding")])
def test_the_contact_grows_no_wider_than_5_mm(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """3 + 3 × 0.3333/0.5 = 5 mm."""
    assert workshop.write(files(depth=depth)).only(GROUND, "valve").outcome == outcome


@pytest.mark.parametrize(("outside", "outcome"), [("160.9 mm", "conforms"), ("160.7 mm", "finding")])
def test_metal_of_the_ring_is_left(workshop: DesignFolder, outside: str, outcome: str) -> None:
    """Twice 0.1 mm: 150/2 + (3 + 0.2/0.5) cos 45° + 3 = 80.404 mm from the axis, 160.81 mm across."""
    made = files(times=2)
    made["seat.toml"] = changed(made["seat.toml"], ('"200.2 mm"', f'"{outside}"'))
    assert ring_outside_face(D=0.16081, d=0.150, w=0.0034, β=math.radians(45)) * 1e3 == pytest.approx(
        3.001, abs=1e-3
    )
    assert workshop.write(made).only(GROUND, "valve").outcome == outcome


def test_a_valve_that_says_nothing_of_regrinding_is_not_assessed(workshop: DesignFolder) -> None:
    check = workshop.write(train_files()).only(GROUND, "valve")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def capped(cap: str, ground: str = 'cap_ground_off = "0.3 mm"\n') -> dict[str, str]:
    """The train of the tests, whose valve sinks 0.8485 mm, with a cap on its spindle."""
    made = files()
    made["spindle.toml"] += ground + (f"cap = {{ {cap} }}\n" if cap else "")
    return made


@pytest.mark.parametrize("hardening", ["case hardened", "induction hardened", "nitrided"])
@pytest.mark.parametrize(
    ("ground", "depth", "outcome"),
    [
        ('cap_ground_off = "0.3 mm"\n', "2.298 mm", "conforms"),
        ('cap_ground_off = "0.3 mm"\n', "2.296 mm", "finding"),
        ("", "1.698 mm", "conforms"),
        ("", "1.696 mm", "finding"),
    ],
)
def test_a_cap_keeps_half_of_its_skin(
    workshop: DesignFolder, hardening: str, ground: str, depth: str, outcome: str
) -> None:
    """0.3 mm as it is set and 0.8485 mm of sink are 1.1485 mm, half of 2.297 mm; of sink alone, of 1.697 mm."""
    made = capped(f'hardening = "{hardening}", hardened_depth = "{depth}"', ground)
    check = workshop.write(made).only(GROUND, "valve")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert outcome == "conforms" or "cap" in check.says


@pytest.mark.parametrize("hardening", ["through hardened", "not hardened"])
def test_a_cap_without_a_skin_has_none_to_keep(workshop: DesignFolder, hardening: str) -> None:
    assert workshop.write(capped(f'hardening = "{hardening}"')).only(GROUND, "valve").outcome == "conforms"


def test_a_cap_that_is_ground_says_how_it_is_hardened(workshop: DesignFolder) -> None:
    check = workshop.write(capped("")).only(GROUND, "valve")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "spindle" in check.says


def test_a_skin_without_its_depth_is_not_assessed(workshop: DesignFolder) -> None:
    assert workshop.write(capped('hardening = "nitrided"')).only(GROUND, "valve").outcome == "not assessed"


@pytest.mark.parametrize(("times", "outcome"), [(9, "conforms"), (10, "finding")])
def test_half_of_a_hardened_skin_is_left(workshop: DesignFolder, times: int, outcome: str) -> None:
    """9 × 0.1 + 0.1 = 1.0 mm of 2 mm."""
    made = train_files()
    made["cam.toml"] = CAM + f'wear.limit = "0.09 mm"\n[regrind]\ndepth = "0.1 mm"\ntimes = {times}\n'
    assert workshop.write(made).only(GROUND, "cam").outcome == outcome


@pytest.mark.parametrize("surface", ["", 'surface = "hard chromium plated"\n'])
def test_a_cam_without_a_hardened_skin_has_none_to_keep(workshop: DesignFolder, surface: str) -> None:
    """Neither a plain one nor one that is plated is held to a depth."""
    made = train_files()
    made["cam.toml"] = CAM.replace('surface = "case hardened"\n', surface)
    expect_not_applicable(workshop.write(made).only(GROUND, "cam"), "no hardened skin")


@given(β=st.floats(0.1, 1.4), t=st.floats(1e-5, 1e-3))
def test_a_face_widens_by_what_its_edge_moves(β: float, t: float) -> None:
    """The outer edge moves outwards by t/sin β, and the valve sinks by t/cos β."""
    grown = face_widened(w=0.003, t=t, β=β) - 0.003
    assert grown * math.cos(β) == pytest.approx(t / math.sin(β))
    assert sink_of_valve(t_s=t, t_v=0.0, β=β) == pytest.approx(t / math.cos(β))


def test_a_valve_that_is_meant_to_drift_off_its_seat_does_so_the_more_easily_sunk(
    workshop: DesignFolder,
) -> None:
    """With 940 N it was a hold; meant to lift, it may be as weak as it likes while drifting."""
    weak = files()
    weak["spring.toml"] = changed(weak["spring.toml"], ('"1100 N ±0.0001"', '"940 N ±0.0001"'))
    weak["valve.toml"] = changed(weak["valve.toml"], ("lifts_drifting = false", "lifts_drifting = true"))
    assert workshop.write(weak).only(GROUND, "valve").outcome == "conforms"


@pytest.mark.parametrize(("load", "outcome"), [("1219 N", "conforms"), ("1216 N", "finding")])
def test_springs_over_a_sunk_valve_still_shut_it_against_friction(
    workshop: DesignFolder, load: str, outcome: str
) -> None:
    """Starting: 1.2 (502.65 + 500) = 1203.2 N, less 58.84 of weight: 0.98 F − 16.4 = 1144.3 N, 1184.4 N when new.

    The sink of 0.8485 mm takes 33.9 N of what is left, so that (1144.3 + 16.4 + 33.9)/0.98 = 1219.0 N are wanted.
    """
    made = files()
    pushed = (('pushed = "shut"', 'pushed = "open"'), ('friction = "10 N"', 'friction = "500 N"'))
    made["spindle.toml"] = changed(made["spindle.toml"], *pushed)
    made["spring.toml"] = changed(made["spring.toml"], ("1100 N", load))
    made["valve.toml"] = changed(made["valve.toml"], ("relieves_water = false", "relieves_water = true"))
    workshop.write(made)
    assert workshop.only("valve.closes").outcome == "conforms"
    check = workshop.only(GROUND, "valve")
    assert (check.outcome, check.case) == (outcome, "starting")
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)
