"""liner.fit-hot, fit-stress-cold, fit-warming, entering and bore-after-pressing.

Hot, both parts at 200 °C with the expansions at their bad sides: 560 mm × 180 K × (13.0 − 11.4)e-6/K = 0.16128 mm
are lost; at their good sides 560 × 180 × (12.4 − 12.0)e-6 = 0.04032 mm. Both faces have Rz 5 µm, of which smoothing
takes 0.8 (5 + 5) = 8 µm (DIN 7190:2001).
"""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.fits import relative_growth, shrinkage_available, shrinkage_to_enter
from speclint.testing import DesignFolder, found, limit
from speclint_liners.formulae.seating import dowel_bearing, dowel_shear, steam_on_liner_end
from tests.plugins.liners.bench import DUTY, bench, in_block, in_duty, in_liner

HOT, COLD, WARMING = "liner.fit-hot", "liner.fit-stress-cold", "liner.fit-warming"
COLLAR = in_liner('retained_by = "nothing"', 'retained_by = "collar clamped by cover"')
DOWEL = in_liner('retained_by = "nothing"', 'retained_by = "dowel"')
ENTERING, AFTER = "liner.entering", "liner.bore-after-pressing"


def outside(millimetres: str, *changes: tuple[str, str, str]) -> dict[str, str]:
    return bench(in_liner('"560.3 mm"', f'"{millimetres} mm"'), *changes)


def test_what_is_left_hot_is_that_of_the_bad_sides(workshop: DesignFolder) -> None:
    # 0.3 − 0.008 − 0.16128
    assert found(workshop.write(bench()).only(HOT)) == pytest.approx(0.13072e-3, rel=1e-4)


@pytest.mark.parametrize(("size", "outcome"), [("560.170", "conforms"), ("560.169", "finding")])
def test_the_fit_holds_as_long_as_something_is_left(workshop: DesignFolder, size: str, outcome: str) -> None:
    assert workshop.write(outside(size)).only(HOT).outcome == outcome


def test_a_fit_that_keeps_its_grip_needs_nothing_else_to_hold_it(workshop: DesignFolder) -> None:
    """A collar that is clamped by 10 kN, where the steam pushes with 83."""
    weak = in_liner('clamp_force = "200 kN"', 'clamp_force = "10 kN"')
    check = workshop.write(bench(COLLAR, weak)).only(HOT)
    assert check.outcome == "conforms"
    assert "held" not in check.says


def test_a_loose_liner_with_ports_and_nothing_to_hold_it_is_a_hold(workshop: DesignFolder) -> None:
    check = workshop.write(outside("560.1")).only(HOT)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "0.04 to 0.16 mm" in check.says
    assert check.utilisation == pytest.approx(0.16128 / 0.092)  # of 0.1 − 0.008


def test_a_loose_liner_that_can_close_no_port_is_a_nonconformity(workshop: DesignFolder) -> None:
    check = workshop.write(outside("560.1", in_liner('matches = "front"\n', ""))).only(HOT)
    assert check.grade is Grade.NONCONFORMITY


def test_a_loose_liner_that_can_close_one_of_its_ports_is_a_hold(workshop: DesignFolder) -> None:
    """The other is a hole for an indicator, which meets no port of the block."""
    second = in_liner("[lands.front]", '[ports.indicator]\nfrom_collar = "20 mm"\n[lands.front]')
    assert workshop.write(outside("560.1", second)).only(HOT).grade is Grade.HOLD


def test_retention_not_stated_is_no_retention(workshop: DesignFolder) -> None:
    check = workshop.write(outside("560.1", in_liner('retained_by = "nothing"', ""))).only(HOT)
    assert check.grade is Grade.HOLD


@pytest.mark.parametrize(("rz", "outcome"), [("172.9 µm", "conforms"), ("173.1 µm", "finding")])
def test_rough_faces_take_their_share_of_the_fit(workshop: DesignFolder, rz: str, outcome: str) -> None:
    # 0.3 − 0.16128 = 0.13872 mm = 0.8 × 173.4 µm: a rough bore, and a liner of 0.4 µm
    smooth = in_liner('roughness = "5 µm"', 'roughness = "0.4 µm"')
    rough = in_block('roughness = "5 µm"', f'roughness = "{rz}"')
    assert workshop.write(bench(smooth, rough)).only(HOT).outcome == outcome


@pytest.mark.parametrize("change", [in_liner, in_block])
def test_fit_hot_needs_the_roughness_of_both(
    workshop: DesignFolder, change: Callable[[str, str], tuple[str, str, str]]
) -> None:
    assert workshop.write(bench(change('roughness = "5 µm"\n', ""))).only(HOT).outcome == "not assessed"


def test_a_loose_liner_whose_collar_is_nipped_conforms_and_says_so(workshop: DesignFolder) -> None:
    check = workshop.write(outside("560.1", COLLAR)).only(HOT)
    assert check.outcome == "conforms"
    assert "collar clamped by cover" in check.says
    assert "loose hot by 0.07 mm" in check.says  # 0.1 − 0.008 − 0.16128


@pytest.mark.parametrize(("thickness", "outcome"), [("25.008", "conforms"), ("25.007", "finding")])
def test_a_collar_holds_only_while_it_is_nipped_hot(
    workshop: DesignFolder, thickness: str, outcome: str
) -> None:
    # the recess grows 25 × 180 × (13.0 − 11.4)e-6 = 0.0072 mm more than the collar
    collar = in_liner('thickness = "25.1 mm"', f'thickness = "{thickness} mm"')
    check = workshop.write(outside("560.1", COLLAR, collar)).only(HOT)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("thickness", "outcome"), [("25.001", "conforms"), ("25", "finding")])
def test_a_collar_that_only_just_fills_its_recess_is_not_nipped(
    workshop: DesignFolder, thickness: str, outcome: str
) -> None:
    """All at 20 °C, where nothing has grown: a recess of 25 mm."""
    collar = in_liner('thickness = "25.1 mm"', f'thickness = "{thickness} mm"')
    cold = in_duty('"200 °C"', '"20 °C"')
    check = workshop.write(outside("559.9", COLLAR, collar, cold)).only(HOT)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("force", "outcome"), [("84 kN", "conforms"), ("83 kN", "finding")])
def test_a_collar_holds_only_while_the_cover_presses_harder_than_the_steam(
    workshop: DesignFolder, force: str, outcome: str
) -> None:
    # 1.66 MPa × π (560.1² − 500²)/4 = 83.064 kN
    clamp = in_liner('clamp_force = "200 kN"', f'clamp_force = "{force}"')
    assert workshop.write(outside("560.1", COLLAR, clamp)).only(HOT).outcome == outcome


DOWELS = """
[dowels]
count = 2
diameter = "{d}"
depth = "{depth}"
material = "plate-P355GH"
"""


def dowelled(d: str, depth: str = "20 mm") -> tuple[str, str, str]:
    return in_liner("\n[collar]", DOWELS.format(d=d, depth=depth) + "\n[collar]")


@pytest.mark.parametrize(
    ("d", "depth", "outcome"),
    [
        # 83.064 kN on two; P355GH of 16 to 40 mm has 267 MPa at 200 °C (EN 10028-2):
        # 0.4 × 267 = 106.8 MPa: d = √(2 × 83064/(π 106.8)) = 22.251 mm
        ("22.3 mm", "20 mm", "conforms"),
        ("22.2 mm", "20 mm", "finding"),
        # 0.5 × 840 × 0.9 = 378 MPa: 83064/(2 × 30 × 378) = 3.662 mm deep
        ("30 mm", "3.7 mm", "conforms"),
        ("30 mm", "3.6 mm", "finding"),
    ],
)
def test_dowels_hold_a_loose_liner_by_their_strength(
    workshop: DesignFolder, d: str, depth: str, outcome: str
) -> None:
    check = workshop.write(outside("560.1", DOWEL, dowelled(d, depth))).only(HOT)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_the_word_dowel_alone_clears_nothing(workshop: DesignFolder) -> None:
    check = workshop.write(outside("560.1", DOWEL)).only(HOT)
    assert check.outcome == "not assessed"
    assert "dowels.count" in check.says


@given(p=st.floats(1e5, 3e6), d=st.floats(0.01, 0.05), n=st.integers(1, 6))
def test_more_dowels_are_stressed_less(p: float, d: float, n: int) -> None:
    force = steam_on_liner_end(p, 0.56, 0.5)
    assert dowel_shear(force, 2 * n, d) == pytest.approx(dowel_shear(force, n, d) / 2)
    assert dowel_bearing(force, n, 2 * d, 0.02) == pytest.approx(dowel_bearing(force, n, d, 0.02) / 2)


@pytest.mark.parametrize("case", ["starting", "running", "drifting", "standing-hot", "cooling"])
def test_fit_hot_needs_every_hot_case(workshop: DesignFolder, case: str) -> None:
    """The duty can be read without it, and the other cases hold."""
    without = re.sub(rf"\n\[cases\.{case}\].*?(?=\n\[cases\.(?!{case}\.))", "", DUTY, flags=re.DOTALL)
    assert f"cases.{case}" not in without
    check = workshop.write({**bench(), "duty.toml": without}).only(HOT)
    assert (check.outcome, check.case) == ("not assessed", case)
    assert check.says == f"load case {case} is not stated in duty.toml"


def test_the_cold_fit_by_hand(workshop: DesignFolder) -> None:
    """Clearance presses nothing; and 0.3 mm by hand, with moduli at the sides that press hardest.

    Inner (560.3, 500): (313936.09 + 250000)/63936.09 − ν = 8.820316 − 0.28 = 8.540316, over 118 GPa: 72.3756e-12.
    Outer (640, 560.3): (409600 + 313936.09)/95663.91 + 0.29 = 7.563313 + 0.29, over E_b high. P355GH takes ASME's
    carbon steel, 29.5e6 psi at 70 °F less (30.2 − 29.5) × 2/170 per °F to 68 °F: 29.5082e6 psi × 1.03 = 209.554 GPa:
    37.4764e-12. p = 0.3/560.3/109.852e-12 = 4.8741 MPa; block 2 p 409600/95663.91 = 41.738 MPa.
    """
    check = workshop.write(bench()).only(COLD)
    assert found(check) == pytest.approx(41.738e6, rel=1e-3)
    assert limit(check) == pytest.approx(0.67 * 345e6)  # EN 10028-2, P355GH over 16 to 40 mm
    assert found(workshop.write(outside("559.9")).only(COLD)) == 0


@pytest.mark.parametrize(("size", "outcome"), [("561.62", "conforms"), ("561.63", "finding")])
def test_the_cold_fit_stops_where_the_block_would_yield(
    workshop: DesignFolder, size: str, outcome: str
) -> None:
    """As above with 561.625 mm outside, where the block stands at 0.67 × 345 = 231.15 MPa.

    Inner (315422.64 + 250000)/65422.64 − 0.28 = 8.362618, over 118 GPa: 70.8696e-12. Outer
    (409600 + 315422.64)/94177.36 + 0.29 = 7.988496, over 209.554 GPa: 38.1214e-12. p = 231.15/(2 × 409600/94177.36)
    = 26.5737 MPa, interference 26.5737e6 × 561.625 × 108.991e-12 = 1.6266 mm: some 561.6265 mm outside.
    """
    assert workshop.write(outside(size)).only(COLD).outcome == outcome


def test_the_liner_governs_in_a_stout_block(workshop: DesignFolder) -> None:
    thin = (
        in_liner('\nbore = "500 mm"', '\nbore = "550 mm"'),
        in_liner('last_bore = "509 mm"', 'last_bore = "555 mm"'),
    )
    stout = in_block('wall = "40 mm"', 'wall = "39 mm"'), *thin
    check = workshop.write(bench(*stout)).only(COLD)
    assert limit(check) == pytest.approx(0.5 * 840e6 * 0.9)  # EN 1561: 840 MPa ± 10 %
    # where the block is thicker than its least wall: (313936.09 + 302500)/11436.09 − 0.28 = 53.6227 over 118 GPa and
    # 1.2902 over 209.554 GPa: p = 0.3/560.3/460.587e-12 = 1.16250 MPa; 2 p 313936.09/11436.09 = 63.824 MPa
    assert found(check) == pytest.approx(63.824e6, rel=1e-3)


def test_cold_fit_needs_the_wall_of_the_block(workshop: DesignFolder) -> None:
    assert workshop.write(bench(in_block('wall = "40 mm"', ""))).only(COLD).outcome == "not assessed"


def test_first_steam_presses_harder_than_the_cold_fit(workshop: DesignFolder) -> None:
    workshop.write(bench())
    assert found(workshop.only(WARMING)) > found(workshop.only(COLD))


def test_the_figures_of_each_metal_are_read_at_the_temperature_of_its_part(workshop: DesignFolder) -> None:
    """At first steam the liner has 120 °C and the block 50 °C."""
    check = workshop.write(bench()).only(WARMING)
    assert check.case == "warming"
    at = {one.symbol: one.name for one in check.steps}
    for symbol, celsius in (("R_c", 120), ("E_l", 120), ("α_l", 120), ("E_b", 50), ("α_b", 50), ("R_p", 50)):
        assert f"at {celsius} °C" in at[symbol], symbol


@pytest.mark.parametrize(("liner", "outcome"), [("120 °C", "conforms"), ("320 °C", "finding")])
def test_first_steam_is_limited_by_the_block(workshop: DesignFolder, liner: str, outcome: str) -> None:
    # 320 °C: 560 × (12.78 × 300 − 11.5 × 30)e-6 = 1.95 mm on top of 0.3 mm is 2.25 mm: about 300 MPa in the block
    check = workshop.write(bench(in_duty('cylinder-liner = "120 °C"', f'cylinder-liner = "{liner}"'))).only(
        WARMING
    )
    assert check.outcome == outcome


@pytest.mark.parametrize("case", ["drifting", "standing-hot", "water"])
def test_no_hot_case_is_passed_over(workshop: DesignFolder, case: str) -> None:
    """A liner at 320 °C in a block at 50 °C yields the block, whatever the case is called."""
    plain = bench()["duty.toml"]
    head, tail = plain.split(f"[cases.{case}.temperatures]")
    hot = tail.replace('"200 °C"', '"50 °C"', 1).replace('"200 °C"', '"320 °C"', 1)
    check = workshop.write(bench() | {"duty.toml": f"{head}[cases.{case}.temperatures]{hot}"}).only(WARMING)
    assert (check.outcome, check.case) == ("finding", case)


def test_warming_needs_the_pressure_of_first_steam(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_duty('live_pressure = "3 bar gauge"', ""))).only(WARMING)
    assert check.outcome == "not assessed"


def test_heat_enough_to_drop_the_liner_in(workshop: DesignFolder) -> None:
    # wanted 0.3 + 0.05 + 560/5000 = 0.462 mm; at 150 °C 560 × 130 × (12.4 − 0.3)e-6 = 0.88088 mm
    check = workshop.write(bench()).only(ENTERING)
    assert check.outcome == "conforms"
    needed = bench(in_liner('block_heated_to = "150 °C"', 'block_heated_to = "90 °C"'))
    check = workshop.write(needed).only(ENTERING)
    # at 90 °C: 560 × 70 × (12.04 − 0.3)e-6 = 0.460208 mm
    assert found(check) == pytest.approx(0.460208e-3, rel=1e-4)
    assert limit(check) == pytest.approx(0.462e-3)
    assert check.outcome == "finding"


@pytest.mark.parametrize(
    ("celsius", "gained", "grade"),
    [("66 °C", 0.29871e-3, Grade.NONCONFORMITY), ("67 °C", 0.30537e-3, Grade.OBSERVATION)],
)
def test_a_liner_larger_than_its_heated_bore_cannot_enter(
    workshop: DesignFolder, celsius: str, gained: float, grade: Grade
) -> None:
    """Of 0.3 mm, at 66 °C 560 × 46 × (11.896 − 0.3)e-6, at 67 °C 560 × 47 × (11.902 − 0.3)e-6."""
    heated = bench(in_liner('block_heated_to = "150 °C"', f'block_heated_to = "{celsius}"'))
    check = workshop.write(heated).only(ENTERING)
    assert (check.outcome, check.grade) == ("finding", grade)
    assert found(check) == pytest.approx(gained, rel=1e-4)
    assert limit(check) == pytest.approx(0.3e-3 if grade is Grade.NONCONFORMITY else 0.462e-3)


@pytest.mark.parametrize("stated", ['block_heated_to = "150 °C"', ""])
def test_the_one_heating_of_the_block_is_what_the_liner_gets(workshop: DesignFolder, stated: str) -> None:
    """At 90 °C: 0.460208 mm, as above, whatever the liner's own spec says."""
    once = in_block('id = "block"', 'id = "block"\nheated_to = "90 °C"')
    check = workshop.write(bench(in_liner('block_heated_to = "150 °C"', stated), once)).only(ENTERING)
    assert (found(check), check.outcome) == (pytest.approx(0.460208e-3, rel=1e-4), "finding")


@pytest.mark.parametrize(("celsius", "outcome"), [("199 °C", "conforms"), ("201 °C", "finding")])
def test_a_block_is_not_heated_beyond_its_limit(workshop: DesignFolder, celsius: str, outcome: str) -> None:
    hot = bench(in_liner('block_heated_to = "150 °C"', f'block_heated_to = "{celsius}"'))
    assert workshop.write(hot).only(ENTERING).outcome == outcome


@pytest.mark.parametrize(
    ("coolant", "gained"),
    [
        # 560 × (293.15 − 194.686) × (10.0 − 0.3)e-6 = 0.534858 mm
        ("solid carbon dioxide", 0.534858e-3),
        # −195.798 °C: mean 8.8 + 0.8 × (0.202/96) = 8.80168e-6, less 0.5e-6: 560 × 215.798 × 8.30168e-6 = 1.003238 mm
        ("liquid nitrogen", 1.003238e-3),
    ],
)
def test_cold_enough_to_drop_the_liner_in(workshop: DesignFolder, coolant: str, gained: float) -> None:
    chilled = in_liner('entered = "heated block"', f'entered = "chilled"\ncoolant = "{coolant}"')
    check = workshop.write(bench(chilled)).only(ENTERING)
    assert found(check) == pytest.approx(gained, rel=1e-4)


@pytest.mark.parametrize(("press", "outcome"), [("1930 kN", "conforms"), ("1910 kN", "finding")])
def test_the_press_must_give_the_force(workshop: DesignFolder, press: str, outcome: str) -> None:
    # the block without end: 1.0002 + 0.29 = 1.2902, over 209.554 GPa: 6.1569e-12, and the liner 72.3756e-12 as above:
    # p = 0.3/560.3/78.5325e-12 = 6.8179 MPa; 0.2 × 6.8179 × π × 560 × 800 mm² = 1919.1 kN
    pressed = in_liner('entered = "heated block"', f'entered = "pressed"\npress_force = "{press}"')
    assert workshop.write(bench(pressed)).only(ENTERING).outcome == outcome


@pytest.mark.parametrize(
    ("length", "press", "outcome"),
    [
        ("780 mm", "1930 kN", "conforms"),
        ("780 mm", "1910 kN", "finding"),
        ("820 mm", "1975 kN", "conforms"),
        ("820 mm", "1960 kN", "finding"),
    ],
)
def test_the_press_must_overcome_the_longer_of_the_stated_length_and_the_lands(
    workshop: DesignFolder, length: str, press: str, outcome: str
) -> None:
    """Lands of 30 + 770 mm: 1919.1 kN as above; 820 mm as stated: 1919.1 × 820/800 = 1967.1 kN."""
    pressed = in_liner('entered = "heated block"', f'entered = "pressed"\npress_force = "{press}"')
    stated = in_liner('fit_length = "800 mm"', f'fit_length = "{length}"')
    assert workshop.write(bench(pressed, stated)).only(ENTERING).outcome == outcome


def test_entering_needs_the_coolant_and_the_press(workshop: DesignFolder) -> None:
    for way in ("chilled", "pressed"):
        check = workshop.write(bench(in_liner('entered = "heated block"', f'entered = "{way}"'))).only(
            ENTERING
        )
        assert check.outcome == "not assessed"


@pytest.mark.parametrize(("tolerance", "outcome"), [("0.29", "conforms"), ("0.28", "finding")])
def test_the_bore_closes_by_less_than_its_tolerance(
    workshop: DesignFolder, tolerance: str, outcome: str
) -> None:
    """Closing 2 p D² d/(E (D² − d²)) is greatest for soft iron: 103 GPa, the low of EN-GJL-250.

    Bore 500.285 mm: inner (313936.09 + 250285.08)/63651.01 − 0.28 = 8.584302, over 103 GPa: 83.3427e-12; with a
    block without end, 6.1569e-12 as above, p = 0.3/560.3/89.4996e-12 = 5.98243 MPa;
    2 × 5.98243 × 313936.09 × 500.285/(103000 × 63651.01) = 0.28663 mm.
    """
    bored = in_liner('bore = "500 mm"', f'bore = "500 mm +{tolerance}/0"')
    check = workshop.write(bench(bored)).only(AFTER)
    assert found(check) == pytest.approx(0.28663e-3, rel=1e-3)
    assert check.outcome == outcome


def test_a_bore_without_room_to_close_is_a_finding(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_liner('bore = "500 mm"', 'bore = "500 mm H8"'))).only(AFTER)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert limit(check) == pytest.approx(97e-6)  # ISO 286-1: IT8 over 400 to 500 mm


def test_a_bore_finished_afterwards_may_close(workshop: DesignFolder) -> None:
    done = in_liner("finish_bored_after = false", "finish_bored_after = true")
    assert workshop.write(bench(done)).only(AFTER).outcome == "conforms"


def test_whether_it_is_finished_afterwards_must_be_said(workshop: DesignFolder) -> None:
    assert (
        workshop.write(bench(in_liner("finish_bored_after = false", ""))).only(AFTER).outcome
        == "not assessed"
    )


@given(delta=st.floats(0, 1e-3), joint=st.floats(0.1, 1.0), by=st.floats(1.0, 200.0))
def test_heat_and_cold_add_up_and_alike_parts_lose_nothing(delta: float, joint: float, by: float) -> None:
    room = 293.15
    both = shrinkage_available(joint, 12e-6, room + by, 10e-6, room - by, room)
    heat = shrinkage_available(joint, 12e-6, room + by, 10e-6, room, room)
    cold = shrinkage_available(joint, 12e-6, room, 10e-6, room - by, room)
    assert both == pytest.approx(heat + cold)
    assert shrinkage_to_enter(delta, 0.0, joint) > delta
    assert relative_growth(joint, 12e-6, room + by, 12e-6, room + by, room) == pytest.approx(0, abs=1e-15)
