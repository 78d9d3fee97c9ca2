"""The rules of seat rings."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.handbook.cylinders import outside_of_wall
from speclint.handbook.fits import pressing_interference, shrinkage_available, shrinkage_to_enter
from speclint.handbook.fits.hot_sizes import hot_interference
from speclint.handbook.fits.press_fits import contact_pressure
from speclint.testing import DesignFolder, changed, found, on_sheet
from speclint_valves.formulae.seats import pressure_in_solid_block, withdrawing_load
from tests.plugins.valves.gear import BLOCK, RELIEVED, RING, duty, seat_files

RETAINED, PUSH, STRESS = "seat.retained-hot", "seat.push-out", "seat.fit-stress"
WARMING, ENTERING = "seat.fit-warming", "seat.entering"
HOT = duty(cooling="160 °C")


def test_interference_left_hot_by_hand(workshop: DesignFolder) -> None:
    """Ring and block at 160 °C: 0.2 + 200 × 140 × (11.6 − 12.5)e-6 = 0.1748 mm, less 0.32 µm of roughness."""
    check = workshop.write(seat_files(duty_text=HOT)).only(RETAINED)
    assert check.outcome == "conforms"
    assert check.case == "cooling"
    assert found(check) == pytest.approx(0.17448e-3, abs=1e-9)


@pytest.mark.parametrize(("ring", "outcome"), [("200.0256 mm", "conforms"), ("200.0254 mm", "finding")])
def test_retained_hot_limit_from_both_sides(workshop: DesignFolder, ring: str, outcome: str) -> None:
    """200 × 140 × (12.5 − 11.6)e-6 = 0.0252 mm are lost, and 0.8 × (0.2 + 0.2) µm to the roughness."""
    check = workshop.write(seat_files(("200.2 mm", ring), duty_text=HOT)).only(RETAINED)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("ring", "outcome"), [("200.1021 mm", "conforms"), ("200.1013 mm", "finding")])
def test_ring_and_block_grow_by_their_own_heat(workshop: DesignFolder, ring: str, outcome: str) -> None:
    """Block at 160, ring at 130 °C: 200 × (12.5 × 140 − 11.3 × 110)e-6 = 0.1014 mm, and 0.32 µm of roughness."""
    files = seat_files(("200.2 mm", ring), duty_text=duty(cooling="160 °C; 130 °C"))
    assert workshop.write(files).only(RETAINED).outcome == outcome


def test_a_common_fit_is_loose_where_a_tighter_one_holds(workshop: DesignFolder) -> None:
    """ISO 286-2: 200 H7 is 0 to 46 µm, s6 122 to 151, u6 236 to 265. Block at 160, ring at 130 °C:

    least s6 interference 76 µm; 200 (11.3 × 110 − 12.5 × 140)e-6 mm = −101 µm: s6 is loose, u6 (190 µm) is not.
    """
    cooling = duty(cooling="160 °C; 130 °C")
    block = changed(BLOCK, ('"200 mm"', '"200 mm H7"'))
    loose = workshop.write(seat_files(("200.2 mm", "200 mm s6"), block=block, duty_text=cooling)).only(
        RETAINED
    )
    assert (loose.outcome, loose.grade) == ("finding", Grade.HOLD)
    tight = workshop.write(seat_files(("200.2 mm", "200 mm u6"), block=block, duty_text=cooling)).only(
        RETAINED
    )
    assert tight.outcome == "conforms"


def test_a_ring_held_by_another_part_is_no_hold(workshop: DesignFolder) -> None:
    """The word for that part alone holds nothing."""
    files = seat_files(("200.2 mm", "200.01 mm"), ('"none"', '"screwed ring"'), duty_text=HOT)
    check = workshop.write(files).only(RETAINED)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    check = workshop.write({**files, "ring.toml": RING}).only(RETAINED)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("old", "new", "grade"),
    [
        ("locked = true", "locked = false", Grade.HOLD),
        ("locked = true\n", "", Grade.HOLD),
        ('"screwed in"\nlocked = true', '"welded in"', Grade.NONCONFORMITY),
    ],
)
def test_a_ring_that_can_come_loose_holds_nothing(
    workshop: DesignFolder, old: str, new: str, grade: Grade
) -> None:
    files = seat_files(("200.2 mm", "200.01 mm"), ('"none"', '"screwed ring"'), duty_text=HOT)
    check = workshop.write({**files, "ring.toml": changed(RING, (old, new))}).only(RETAINED)
    assert (check.outcome, check.grade) == ("finding", grade)


@pytest.mark.parametrize("line", ['outside_diameter = "200.2 mm"', 'in_bore = "upper"'])
def test_retention_not_assessed_is_itself_a_hold(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(seat_files((line, ""))).only(RETAINED)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert line.split()[0] in check.says


def test_a_case_without_temperatures_is_not_assessed(workshop: DesignFolder) -> None:
    text = HOT.replace(
        '[cases.cooling.temperatures]\ncylinder-block = "160 °C"', "[cases.cooling.temperatures]"
    )
    assert workshop.write(seat_files(duty_text=text)).only(RETAINED).outcome == "not assessed"


@pytest.mark.parametrize(("drag", "outcome"), [("10100 N", "conforms"), ("10104 N", "finding")])
def test_push_out_limit_from_both_sides(workshop: DesignFolder, drag: str, outcome: str) -> None:
    """All at 20 °C; drifting presses with 0.24 MPa from the cylinder on π/4 (200² − 170²) = 8717.92 mm²: 2092.3 N.

    Softest metals: (68900/11100 − 0.24)/100000 + (118400/38400 + 0.31)/194000 = 7.71635e-5 per MPa;
    p_c = 0.2/(200 × 7.71635e-5) = 12.9595 MPa; grip 0.1 × 12.9595 × π × 200 × 30 = 24428.1 N. With 0.32 of 200 µm
    lost to the roughness 24389.0 N, half of it 12194.5, less 2092.3: 10102.2 N.
    """
    check = workshop.write(seat_files(("500 N", drag))).only(PUSH)
    assert check.outcome == outcome
    assert check.case == "drifting"


def test_ring_and_block_are_as_stiff_as_they_are_hot(workshop: DesignFolder) -> None:
    """Block at 160, ring at 130 °C: the iron 100 − 10 × 110/200 = 94.5 GPa at the least."""
    check = workshop.write(seat_files(duty_text=duty(drifting="160 °C; 130 °C"))).only(PUSH)
    assert check.case == "drifting"
    assert on_sheet(check, "E_s") == pytest.approx(94.5e9)
    assert on_sheet(check, "α_s") == pytest.approx(11.3e-6)
    assert on_sheet(check, "α_b") == pytest.approx(12.5e-6)


@pytest.mark.parametrize(("drag", "outcome"), [("6963 N", "conforms"), ("6965 N", "finding")])
def test_water_stands_as_high_as_the_relief_valves_let_it(
    workshop: DesignFolder, drag: str, outcome: str
) -> None:
    """Set at 20 bar they blow off all of it at 22, above the 18 stated: (2.2 − 1.6) × 8717.92 mm² = 5230.8 N.

    12194.5 − 5230.8 = 6963.7 N are left for the drag. With the pressure stated alone 10102.2 N were.
    """
    files = seat_files(("500 N", drag), block=RELIEVED.format(20))
    check = workshop.write(files).only(PUSH)
    assert (check.outcome, check.case) == (outcome, "water")
    silent = files["duty.toml"].replace('\ncylinder_pressure = "18 bar gauge"', "")
    check = workshop.write({**files, "duty.toml": silent}).only(PUSH)
    assert (check.outcome, check.case) == (outcome, "water")


def test_a_cylinder_that_drifts_states_its_pressure(workshop: DesignFolder) -> None:
    """It is not known by the steam in the chest, which would leave nothing to push the ring."""
    text = duty().replace('\ncylinder_pressure = "2.5 bar gauge"', "")
    check = workshop.write(seat_files(duty_text=text)).only(PUSH)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "cylinder_pressure is not stated" in check.says


def test_water_is_not_believed_without_its_relief_valves(workshop: DesignFolder) -> None:
    """18 bar as the duty states them would leave the seat in its bore."""
    block = BLOCK + '[ends.back]\nof_bore = "main"\nrelief_set = "{}"\n'
    assert workshop.write(seat_files(block=block.format("16 bar gauge"))).only(PUSH).outcome == "conforms"
    silent = block.replace("relief_set = ", "# relief_set = ")
    check = workshop.write(seat_files(block=silent)).only(PUSH)
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")
    assert "ends.back.relief_set is not stated" in check.says


@pytest.mark.parametrize(("setting", "outcome"), [("26.7", "conforms"), ("26.8", "finding")])
def test_water_presses_on_a_seat_as_the_relief_valves_let_it(
    workshop: DesignFolder, setting: str, outcome: str
) -> None:
    """(1.1 p − 1.6) MPa × 8717.92 mm² + 500 N = 12 214.0 N at p = 2.67606 MPa; the duty states 18 bar."""
    block = BLOCK + f'[ends.front]\nrelief_set = "{setting} bar gauge"\n'
    check = workshop.write(seat_files(block=block)).only(PUSH)
    assert (check.outcome, check.case) == (outcome, "water")


def test_a_seat_entered_from_the_cylinder_bears_the_live_steam(workshop: DesignFolder) -> None:
    """In the water case (1.6 − 0.03) MPa × 8717.92 mm² = 13687 N, twice which is beyond the grip of 24428.1 N."""
    check = workshop.write(seat_files(('"chamber"', '"cylinder"'), ("500 N", "0 N"))).only(PUSH)
    assert (check.outcome, check.grade, check.case) == ("finding", Grade.HOLD, "water")


@pytest.mark.parametrize("line", ['friction = "0.1"', 'entered_from = "chamber"', 'sticking_drag = "500 N"'])
def test_push_out_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(seat_files((line, ""))).only(PUSH)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_fit_stress_by_hand(workshop: DesignFolder) -> None:
    """Stiffest metals: (68900/11100 − 0.28)/120000 + (118400/38400 + 0.29)/206000 = 6.57688e-5;

    p_c = 0.2/(200 × 6.57688e-5) = 15.2048 MPa; block 2 × 15.2048 × 78400/38400 = 62.086 of 0.67 × 240 = 160.8 MPa,
    less 0.4 × (0.2 + 0.2) = 0.16 of 200 µm for the roughness: 62.036 MPa.
    """
    check = workshop.write(seat_files()).only(STRESS)
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(62.036e6, rel=1e-4)
    assert check.utilisation == pytest.approx(0.38580, rel=1e-4)


@pytest.mark.parametrize(("ring", "outcome"), [("200.517 mm", "conforms"), ("200.519 mm", "finding")])
def test_block_stress_limit_from_both_sides(workshop: DesignFolder, ring: str, outcome: str) -> None:
    """160.8 × 38400/(2 × 78400) = 39.3796 MPa at 200 × 6.57688e-5 × 39.3796 = 0.51799 mm."""
    assert workshop.write(seat_files(("200.2 mm", ring))).only(STRESS).outcome == outcome


@pytest.mark.parametrize(("ring", "outcome"), [("200.613 mm", "conforms"), ("200.615 mm", "finding")])
def test_ring_stress_limit_from_both_sides(workshop: DesignFolder, ring: str, outcome: str) -> None:
    """A thin ring, 190 mm in 200, in a solid block: (76100/3900 − 0.28)/120000 + 1.29/206000 = 1.665356e-4;

    2 p 40000/3900 = 0.5 × 756 MPa at p = 18.4275, that is at 0.61377 mm. The walls stated elsewhere ease it no more.
    """
    block = changed(BLOCK, ('wall = "40 mm"', 'wall = "200 mm"'))
    files = seat_files(("200.2 mm", ring), ('bore = "170 mm"', 'bore = "190 mm"'), block=block)
    assert workshop.write(files).only(STRESS).outcome == outcome


def test_the_ring_is_crushed_by_the_thickest_wall_behind_it(workshop: DesignFolder) -> None:
    """(68900/11100 − 0.28)/120000 + 1.29/206000 = 5.565554e-5: 17.968 MPa; 2 × 17.968 × 40000/11100 = 129.50 MPa.

    0.16 of 200 µm less for the roughness: 129.39 MPa. With the least wall of 40 mm all round it was 109.6 MPa.
    """
    check = workshop.write(seat_files()).only(STRESS)
    ring = next(step.value for step in check.steps if step.symbol == "σ")
    assert ring == pytest.approx(129.39e6, rel=1e-4)


ROUGH = ('roughness = "0.2 µm"', 'roughness = "25 µm"')
ROUGH_BLOCK = changed(BLOCK, ROUGH)


def test_roughness_is_taken_off_what_holds(workshop: DesignFolder) -> None:
    """Rz 25 and 25 µm: 0.8 × 50 = 40 µm of the 0.1748 mm left hot."""
    check = workshop.write(seat_files(ROUGH, block=ROUGH_BLOCK, duty_text=HOT)).only(RETAINED)
    assert found(check) == pytest.approx(0.1348e-3, abs=2e-9)


@pytest.mark.parametrize(("drag", "outcome"), [("7670 N", "conforms"), ("7690 N", "finding")])
def test_rough_faces_hold_less(workshop: DesignFolder, drag: str, outcome: str) -> None:
    """0.16 of 0.2 mm: 10.3676 MPa, 19542.5 N, half of it 9771.2, less 2092.3 of steam: 7678.9 N; 10 122 N if smooth."""
    check = workshop.write(seat_files(("500 N", drag), ROUGH, block=ROUGH_BLOCK)).only(PUSH)
    assert check.outcome == outcome


@pytest.mark.parametrize(("drag", "outcome"), [("1155 N", "conforms"), ("1165 N", "finding")])
def test_a_shallow_bore_holds_less(workshop: DesignFolder, drag: str, outcome: str) -> None:
    """8 of the seat's 30 mm: 24389.0 × 8/30 = 6503.7 N, half of it less 2092.3: 1159.6 N."""
    block = changed(BLOCK, ('depth = "30 mm"', 'depth = "8 mm"'))
    check = workshop.write(seat_files(("500 N", drag), block=block)).only(PUSH)
    assert check.outcome == outcome


@pytest.mark.parametrize("rule", [RETAINED, PUSH])
def test_a_grip_of_unknown_roughness_is_not_assessed(workshop: DesignFolder, rule: str) -> None:
    of_ring = workshop.write(seat_files((ROUGH[0], ""))).only(rule)
    assert (of_ring.outcome, of_ring.grade) == ("not assessed", Grade.HOLD)
    of_bore = workshop.write(seat_files(block=changed(BLOCK, (ROUGH[0], "")))).only(rule)
    assert (of_bore.outcome, of_bore.grade) == ("not assessed", Grade.HOLD)


def test_stress_takes_off_the_lesser_smoothing_and_none_where_unknown(workshop: DesignFolder) -> None:
    """0.4 × 50 µm of 0.2 mm: nine tenths of 62.086 MPa; all of it where the bore's roughness is not stated."""
    rough = workshop.write(seat_files(ROUGH, block=ROUGH_BLOCK)).only(STRESS)
    assert found(rough) == pytest.approx(0.9 * 62.086e6, rel=1e-4)
    unknown = workshop.write(seat_files(ROUGH, block=changed(BLOCK, (ROUGH[0], "")))).only(STRESS)
    assert found(unknown) == pytest.approx(62.086e6, rel=1e-4)


@given(delta=st.floats(1e-5, 1e-3), wall=st.floats(0.001, 2.0))
def test_no_wall_presses_the_ring_more_than_a_solid_block(delta: float, wall: float) -> None:
    steel = {"E_in": 200e9, "nu_in": 0.3, "E_out": 200e9, "nu_out": 0.3}
    walled = contact_pressure(delta=delta, d_in=0.17, D=0.2, D_out=0.2 + 2 * wall, **steel)
    solid = pressure_in_solid_block(delta, 0.17, 0.2, 200e9, 0.3, 200e9, 0.3)
    assert 0 < walled < solid
    far = contact_pressure(delta=delta, d_in=0.17, D=0.2, D_out=2000.0, **steel)
    assert solid == pytest.approx(far, rel=1e-6)


def test_drifting_and_water_strain_the_block_too(workshop: DesignFolder) -> None:
    """As in warming: a ring at 160 °C in a block at 20 °C; before, neither case was asked."""
    for name in ("drifting", "water", "standing_hot"):
        hot = duty(**{name: "20 °C; 160 °C"})
        check = workshop.write(seat_files(("200.2 mm", "200.25 mm"), duty_text=hot)).only(WARMING)
        assert (check.outcome, check.case) == ("finding", name.replace("_", "-"))


def test_fit_stress_is_not_assessed_without_the_wall(workshop: DesignFolder) -> None:
    block = changed(BLOCK, ('wall = "40 mm"\n', ""))
    check = workshop.write(seat_files(block=block)).only(STRESS)
    assert check.outcome == "not assessed"
    assert "wall" in check.says


def test_warming_tightens_the_fit(workshop: DesignFolder) -> None:
    """Ring at 160, block at 20 °C: 200 × 12.2e-6 × 140 = 0.3416 mm more, 0.5916 in all: past 0.518 of a cold fit."""
    ring = ("200.2 mm", "200.25 mm")
    check = workshop.write(seat_files(ring, duty_text=duty(warming="20 °C; 160 °C"))).only(WARMING)
    assert (check.outcome, check.case) == ("finding", "warming")
    assert workshop.write(seat_files(ring)).only(WARMING).outcome == "conforms"


@pytest.mark.parametrize(("ring", "outcome"), [("200.1995 mm", "conforms"), ("200.2015 mm", "finding")])
def test_warming_limit_from_both_sides(workshop: DesignFolder, ring: str, outcome: str) -> None:
    """Ring 160, block 20 °C; E of the iron at 160 °C 113 GPa at most.

    (68900/11100 − 0.28)/113000 + 3.373333/206000 = 6.88286e-5 per MPa; the block's 39.3796 MPa come at 0.54209 mm.
    200 × 12.2e-6 × 140 = 0.3416 mm of it are heat: 0.20049 mm are left for the cold fit.
    """
    files = seat_files(("200.2 mm", ring), duty_text=duty(warming="20 °C; 160 °C"))
    assert workshop.write(files).only(WARMING).outcome == outcome


def test_warming_is_not_assessed_without_temperature(workshop: DesignFolder) -> None:
    text = duty().replace('valve-seat = "20 °C"\n', "")
    assert workshop.write(seat_files(duty_text=text)).only(WARMING).outcome == "not assessed"


@pytest.mark.parametrize(("heated", "outcome"), [("63.6 °C", "finding"), ("63.9 °C", "conforms")])
def test_entering_takes_heat_and_cold_together(workshop: DesignFolder, heated: str, outcome: str) -> None:
    """Wanted 0.2 + 0.05 + 0.04 = 0.29 mm; the ring at −78 °C gives 200 × 98 × 9.7e-6 = 0.1901 mm at least.

    Of the block are wanted 0.0999 mm: at 63.6 °C 200 × 43.6 × 11.418e-6 = 0.0996, at 63.9 °C 0.1003.
    """
    assert workshop.write(seat_files(("120 °C", heated))).only(ENTERING).outcome == outcome


@pytest.mark.parametrize(("heated", "outcome"), [("200 °C", "conforms"), ("201 °C", "finding")])
def test_a_block_is_heated_to_no_more_than_it_may(workshop: DesignFolder, heated: str, outcome: str) -> None:
    """200 °C is the limit, whatever shrinkage more heat would give."""
    check = workshop.write(seat_files(("120 °C", heated))).only(ENTERING)
    assert check.outcome == outcome


def test_a_ring_pressed_cold_needs_its_press(workshop: DesignFolder) -> None:
    """Stiffest metals press with 15.2048 MPa: 0.1 × 15.2048 × π × 200 × 30 = 28660.3 N."""
    cold = ('"block heated and ring chilled"', '"pressed cold"\npress_force = "28.7 kN"')
    assert workshop.write(seat_files(cold)).only(ENTERING).outcome == "conforms"
    weak = ('"block heated and ring chilled"', '"pressed cold"\npress_force = "28.6 kN"')
    assert workshop.write(seat_files(weak)).only(ENTERING).outcome == "finding"


def test_entering_is_not_assessed_without_its_way(workshop: DesignFolder) -> None:
    check = workshop.write(seat_files(('entering = "block heated and ring chilled"', ""))).only(ENTERING)
    assert check.outcome == "not assessed"


@given(delta=st.floats(-1e-3, 1e-3), hotter=st.floats(0.0, 300.0))
def test_equal_metals_at_one_temperature_keep_their_interference(delta: float, hotter: float) -> None:
    T = 293.15 + hotter
    left = hot_interference(
        delta=delta, D=0.2, alpha_in=12e-6, T_in=T, alpha_out=12e-6, T_out=T, T_ref=293.15
    )
    assert left == pytest.approx(delta, abs=1e-15)
    assert pressing_interference(delta=delta) == max(delta, 0.0)


@given(p=st.floats(0.0, 3e6), more=st.floats(0.0, 3e6), drag=st.floats(0.0, 1e4))
def test_pressure_that_presses_home_draws_nothing(p: float, more: float, drag: float) -> None:
    sizes = {"D": 0.2, "d": 0.17}
    assert withdrawing_load(p_b=p, p_f=p + more, F_d=drag, **sizes) == drag
    assert withdrawing_load(p_b=p + more, p_f=p, F_d=drag, **sizes) >= drag


@given(T=st.floats(200.0, 470.0))
def test_shrinkage_is_nothing_where_nothing_is_heated_or_chilled(T: float) -> None:
    still = shrinkage_available(
        D=0.2, alpha_out=12e-6, T_out=293.15, alpha_in=1e-5, T_in=293.15, T_ref=293.15
    )
    assert still == 0.0
    moved = shrinkage_available(D=0.2, alpha_out=12e-6, T_out=293.15, alpha_in=1e-5, T_in=T, T_ref=293.15)
    assert moved == pytest.approx(0.2 * 1e-5 * (293.15 - T))
    assert shrinkage_to_enter(delta=0.0, a=0.0, D=0.5) == pytest.approx(1e-4)


def test_no_wall_and_no_ring_are_refused() -> None:
    with pytest.raises(OutOfRange, match="wall"):
        outside_of_wall(d=0.2, t=0.0)
    with pytest.raises(OutOfRange, match="bore"):
        withdrawing_load(D=0.2, d=0.2, p_b=1e6, p_f=0.0, F_d=0.0)


@pytest.mark.parametrize(("delta", "outcome"), [(0.153, "conforms"), (0.159, "finding")])
def test_a_ring_of_steel_bears_the_share_of_its_own_proof_stress(
    workshop: DesignFolder, delta: float, outcome: str
) -> None:
    """0.67 × 240 = 160.8 MPa, where iron has half of its compressive strength.

    Stiffest, 206 GPa: (40 062 + 28 900)/(40 062 − 28 900) = 6.178; p = 206 000 δ/(200.16 (6.178 − 0.31 + 1.29)), and
    2 p 40 062/11 162 = 160.8 MPa at δ = 0.156 mm.
    """
    steel = ('material = "known-iron"', 'material = "known-steel"')
    files = seat_files(steel, ("200.2 mm", f"{200 + delta:.3f} mm"))
    check = workshop.write(files).only(STRESS)
    assert on_sheet(check, "σ_s") / 1e6 == pytest.approx(160.8)
    assert check.outcome == outcome, check.says
