"""pin.bearing-pressure, pin.bending, packing.rating, packing.gland and shaft.torsion."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.members import projected_pressure
from speclint.testing import DesignFolder, on_sheet
from speclint_motion.formulae.diameters import left_off_centre
from speclint_motion.formulae.pins import moment_of_held_pin
from speclint_motion.formulae.shafts import (
    effective_diameter,
    moments_together,
    shafting_allowable,
    shafting_shear,
    size_factor,
)
from tests.plugins.motion.train import files, without

PRESSURE, BENDING, RATING = "pin.bearing-pressure", "pin.bending", "packing.rating"
GLAND, SHAFT, OVERHANG = "packing.gland", "shaft.torsion", "pin.overhang-of-bearing"


@pytest.mark.parametrize(
    ("length", "outcome", "grade"),
    [
        ("104.4", "conforms", None),
        ("104.3", "finding", Grade.OBSERVATION),
        ("100.01", "finding", Grade.OBSERVATION),
        ("99.99", "finding", Grade.NONCONFORMITY),
    ],
)
def test_crosshead_pin_from_both_sides(
    workshop: DesignFolder, length: str, outcome: str, grade: Grade | None
) -> None:
    """325.940 kN/cos φ, cos φ = √(1 − (330/1900)²) = 0.984802: 330.971 kN on 100 mm.
    4600 psi = 31.7159 MPa: 104.355 mm; 4800 psi = 33.0948 MPa: 100.007 mm.
    """
    check = workshop.write(files("pin", ("110 mm", f"{length} mm"))).only(PRESSURE, "pin")
    assert (check.outcome, check.grade) == (outcome, grade)
    assert on_sheet(check, "F_c") == pytest.approx(330_970.5, rel=1e-6)


@pytest.mark.parametrize(
    ("length", "outcome", "grade"),
    [
        ("181.9", "conforms", None),
        ("181.8", "finding", Grade.OBSERVATION),
        ("171.2", "finding", Grade.OBSERVATION),
        ("171.1", "finding", Grade.NONCONFORMITY),
    ],
)
def test_crank_pin_from_both_sides(
    workshop: DesignFolder, length: str, outcome: str, grade: Grade | None
) -> None:
    """On 165 mm: 1600 psi = 11.0316 MPa: 181.830 mm; 1700 psi = 11.7211 MPa: 171.134 mm."""
    check = workshop.write(files("crank-pin", ("185 mm", f"{length} mm"))).only(PRESSURE, "crank-pin")
    assert (check.outcome, check.grade) == (outcome, grade)


def test_the_periods_proportions_stand_beside(workshop: DesignFolder) -> None:
    """0.26 and 0.28 of 500 mm."""
    check = workshop.write(files()).only(PRESSURE, "crank-pin")
    assert on_sheet(check, "d_0") * 1e3 == pytest.approx(130)
    assert on_sheet(check, "b_0") * 1e3 == pytest.approx(140)


def test_bending_of_a_crosshead_pin_by_hand(workshop: DesignFolder) -> None:
    """330 970.5 × (2 × 170 − 110)/8 = 9515.40 N·m over π 100³/32 = 98 174.8 mm³: 96.9231 MPa.
    165 485/7853.98 = 21.0702 MPa. √(96.9231² + 3 × 21.0702²) = 103.566. It does not turn under its load: 37 mm,
    (37/7.62)^−0.107 = 0.844445; 0.85 × 0.844445 × 450/103.566 = 3.11879.
    """
    check = workshop.write(files()).only(BENDING, "pin")
    assert on_sheet(check, "σ") / 1e6 == pytest.approx(96.9231, rel=1e-5)
    assert on_sheet(check, "τ") / 1e6 == pytest.approx(21.0702, rel=1e-5)
    assert on_sheet(check, "n") == pytest.approx(3.11879, rel=1e-5)


@pytest.mark.parametrize(("diameter", "outcome"), [("77.0", "conforms"), ("76.9", "finding")])
def test_bending_from_both_sides(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """77 mm: 9515.40 N·m over 44 820.5 mm³ and 165 485 N over 4656.6 mm²: 212.30 and 35.54 make 221.05 MPa;
    28.49 mm: 0.868385 × 0.85 × 450/221.05 = 1.5027. 76.9 mm: 221.90 MPa and 0.868506: 1.4971.
    """
    check = workshop.write(files("pin", ("100 mm", f"{diameter} mm"))).only(BENDING, "pin")
    assert check.outcome == outcome


def test_bending_of_a_crank_pin_by_hand(workshop: DesignFolder) -> None:
    """330 970.5 × 0.120 over π 165³/32 = 441 013 mm³: 90.0573 MPa; 330 970.5/21 382.5 = 15.4786 MPa: 93.9632 MPa.
    It turns: k_b = 1.51 × 165^−0.157 = 0.677379. q = 1/(1 + 0.0254 × 2.3^1.8/10) = 0.988748 with Peterson's K_t
    for D/d 1.212, r/d 0.0606.
    """
    check = workshop.write(files()).only(BENDING, "crank-pin")
    assert on_sheet(check, "σ_eq") / 1e6 == pytest.approx(93.9632, rel=1e-5)
    K_t = on_sheet(check, "K_t")
    assert 1.6 < K_t < 2.0
    assert on_sheet(check, "n") == pytest.approx(
        0.677379 * 0.85 * 450 / (93.9632 * (1 + 0.988748 * (K_t - 1))), rel=1e-5
    )


def test_a_crank_pin_that_reaches_too_far_is_found(workshop: DesignFolder) -> None:
    check = workshop.write(files("crank-pin", ("120 mm", "320 mm"))).only(BENDING, "crank-pin")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(("overhang", "counts"), [("90 mm", 102.5), ("102.4 mm", 102.5), ("103 mm", 103.0)])
def test_the_middle_of_a_bearing_is_half_of_it_out(
    workshop: DesignFolder, overhang: str, counts: float
) -> None:
    # the bearing is 185 mm long and its fillet 10 mm: its middle is 92.5 + 10 mm or more from the face of the crank
    check = workshop.write(files("crank-pin", ("120 mm", overhang))).only(BENDING, "crank-pin")
    assert on_sheet(check, "M") == pytest.approx(on_sheet(check, "F_c") * counts / 1e3)


@pytest.mark.parametrize(
    ("part", "key", "rule"),
    [
        ("pin", "place", PRESSURE),
        ("pin", "length", PRESSURE),
        ("pin", "span", BENDING),
        ("crank-pin", "overhang", BENDING),
        ("crank-pin", "fillet", BENDING),
        ("crank-pin", "larger_diameter", BENDING),
    ],
)
def test_a_pin_is_not_assessed_without(workshop: DesignFolder, part: str, key: str, rule: str) -> None:
    assert workshop.write(without(part, key)).only(rule, part).outcome == "not assessed"


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('stuffing-box = "250 °C"', 'stuffing-box = "350 °C"', "conforms"),
        ('stuffing-box = "250 °C"', 'stuffing-box = "350.1 °C"', "finding"),
        ('"340 °C"', '"350 °C"', "conforms"),
        ('"340 °C"', '"350.1 °C"', "finding"),  # admitted steam, though the box is at 250 °C
        ("360 rev/min", "454 rev/min", "conforms"),
        ("360 rev/min", "455 rev/min", "finding"),
    ],
)
def test_rating_from_both_sides(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    """Carbon segments: 350 °C, and 10 m/s, which is 454.5 rev/min of 1.32 m."""
    assert workshop.write(files("duty", (old, new))).only(RATING).outcome == outcome


@pytest.mark.parametrize(("steam", "outcome"), [("280", "conforms"), ("390", "finding")])
def test_packing_melts_in_the_steam_though_its_box_is_cooler(
    workshop: DesignFolder, steam: str, outcome: str
) -> None:
    """PTFE with graphite bears 280 °C; the box stands at 200 and 260 °C, the rod at 100 °C."""
    found = files("box", ("carbon segments", "braided PTFE with graphite"))
    found["duty.toml"] = found["duty.toml"].replace('stuffing-box = "250', 'stuffing-box = "260')
    found["duty.toml"] = (
        found["duty.toml"].replace('"300 °C"', '"270 °C"').replace('"340 °C"', f'"{steam} °C"')
    )
    assert workshop.write(found).only(RATING).outcome == outcome


def test_a_rod_hotter_than_its_packing_is_found(workshop: DesignFolder) -> None:
    found = files("duty", ('stuffing-box = "250 °C"', 'stuffing-box = "250 °C"\nrod = "351 °C"'))
    assert workshop.write(found).only(RATING).outcome == "finding"


@pytest.mark.parametrize("line", ['live_temperature = "340 °C"\n', 'live_temperature = "300 °C"\n'])
def test_rating_needs_the_temperature_of_the_steam(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(files("duty", (line, ""))).only(RATING).outcome == "not assessed"


@pytest.mark.parametrize(("pressure", "outcome"), [("25", "conforms"), ("25.1", "finding")])
def test_rating_of_pressure_from_both_sides(workshop: DesignFolder, pressure: str, outcome: str) -> None:
    found = files()
    found["duty.toml"] = found["duty.toml"].replace("16.6 bar", f"{pressure} bar")
    assert workshop.write(found).only(RATING).outcome == outcome


@pytest.mark.parametrize("key", ["packing", "seals"])
def test_rating_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    found = without("box", key)
    found["box.toml"] += 'duty = "duty"\n'
    assert workshop.write(found).only(RATING).outcome == "not assessed"


@pytest.mark.parametrize(
    ("bore", "outcome"),
    [("90.37", "conforms"), ("90.35", "finding"), ("91.79", "conforms"), ("91.81", "finding")],
)
def test_neck_bush_from_both_sides(workshop: DesignFolder, bore: str, outcome: str) -> None:
    """0.004 and 0.02 of 90 mm: 0.36 to 1.8 mm."""
    assert workshop.write(files("box", ("90.6 mm", f"{bore} mm"))).only(GLAND).outcome == outcome
    assert (
        workshop.write(files("box", ("90.6 mm", "90.5 mm"), ("91 mm", f"{bore} mm"))).only(GLAND).outcome
        == outcome
    )


@pytest.mark.parametrize(("old", "new"), [("90.6 mm", "{} mm"), ("91 mm", "{} mm")])
@pytest.mark.parametrize(
    ("bore", "grade"),
    [("90.01", Grade.OBSERVATION), ("90", Grade.NONCONFORMITY), ("89.9", Grade.NONCONFORMITY)],
)
def test_a_rod_that_does_not_go_into_its_bush_is_more_than_an_observation(
    workshop: DesignFolder, old: str, new: str, bore: str, grade: Grade
) -> None:
    """A rod of 90 mm: nothing is left of the clearance in a bore of 90 mm, be it that of the bush or of the gland."""
    check = workshop.write(files("box", (old, new.format(bore)))).only(GLAND)
    assert (check.outcome, check.grade) == ("finding", grade)


COVER = """
kind = "cylinder-cover"
id = "cover"
closes = "block"
of_end = "back"
end = "back"
central_hole = "150 mm"
spigot_diameter = "499.8 mm"
spigot_enters = "bore of the liner"
"""


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        # 90.6 - 90 - (500 - 499.8) = 0.4 mm of play for the box in 150 mm
        ("149.9 mm", "149.601 mm", "conforms"),
        ("149.9 mm", "149.599 mm", "finding"),
        # 90.6 - 90 - (150 - 149.9) = 0.5 mm for the spigot in 500 mm
        ("499.8 mm", "499.501 mm", "conforms"),
        ("499.8 mm", "499.499 mm", "finding"),
        # no spigot: 90.6 - 90 - 0.1 mm; nothing is known of the hole: 90.6 - 90 - 0.2 mm
        ('"499.8 mm"', '"0 mm"', "conforms"),
        ('central_hole = "150 mm"\n', "", "conforms"),
    ],
)
def test_box_and_spigot_lie_to_one_side_from_both_sides(
    workshop: DesignFolder, old: str, new: str, outcome: str
) -> None:
    made = files("box", ('seals = "rod"', 'seals = "rod"\nin_cover = "cover"\noutside_diameter = "149.9 mm"'))
    made["cover.toml"] = COVER
    made = {name: text.replace(old, new) for name, text in made.items()}
    check = workshop.write(made).only(GLAND)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@given(c=st.floats(0, 5e-3), p=st.floats(0, 5e-3), more=st.floats(0, 1e-3))
def test_play_never_gives_clearance(c: float, p: float, more: float) -> None:
    assert left_off_centre(c, p + more) <= left_off_centre(c, p) <= c


def test_a_box_without_a_drain_is_found(workshop: DesignFolder) -> None:
    check = workshop.write(files("box", ("drained = true", "drained = false"))).only(GLAND)
    assert (check.outcome, check.grade) == ("finding", Grade.OBSERVATION)


@pytest.mark.parametrize("key", ["neck_bush", "gland_bore", "drained"])
def test_the_gland_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("box", key)).only(GLAND).outcome == "not assessed"


@pytest.mark.parametrize(("torque", "outcome"), [("1421", "conforms"), ("1422", "finding")])
def test_twist_from_both_sides(workshop: DesignFolder, torque: str, outcome: str) -> None:
    """G = 200/2.6 = 76.9231 GPa, J = π 60⁴/32 = 1.272345e6 mm⁴; keyway 1 + 0.4 × 0.3 + 0.7 × 0.116667 = 1.201667.
    1500 N·m wind one metre 1.05520°; 1421.5 N·m one degree.
    """
    assert workshop.write(files("shaft", ("1400 N·m", f"{torque} N·m"))).only(SHAFT).outcome == outcome


def keyed_less(fatigue: str, *changes: tuple[str, str]) -> dict[str, str]:
    own = f'materials = ["metals.toml"]\n[limits."shaft.torsion"]\nfatigue = "{fatigue}"\n'
    return {**files("shaft", *changes), "speclint.toml": own}


@pytest.mark.parametrize(("moment", "outcome"), [("3306", "conforms"), ("3307", "finding")])
def test_the_code_of_shafting_from_both_sides(workshop: DesignFolder, moment: str, outcome: str) -> None:
    """0.75 min(0.30 × 600, 0.18 × 900) = 121.5 MPa; Moore's keyway leaves 0.811667, more than the code's 0.75.
    121.5 × π × 60³/16 = 5152.997 N·m; √(5152.997² − 1400²)/1.5 = 3306.1 N·m. Fatigue is set aside.
    """
    check = workshop.write(keyed_less("0.5", ("800 N·m", f"{moment} N·m"))).only(SHAFT)
    assert check.outcome == outcome


@pytest.mark.parametrize(("moment", "outcome"), [("4484", "conforms"), ("4485", "finding")])
def test_a_shaft_without_a_keyway_keeps_its_strength(
    workshop: DesignFolder, moment: str, outcome: str
) -> None:
    """162 MPa: 6870.66 N·m; √(6870.66² − 1400²)/1.5 = 4484.3 N·m."""
    plain = ('"18 mm"', '"0 mm"'), ('"7 mm"', '"0 mm"'), ("800 N·m", f"{moment} N·m")
    assert workshop.write(keyed_less("0.5", *plain)).only(SHAFT).outcome == outcome


@pytest.mark.parametrize(
    ("width", "depth", "outcome"),
    [("18 mm", "7 mm", "conforms"), ("0 mm", "7 mm", "finding"), ("18 mm", "0 mm", "finding")],
)
def test_a_keyway_that_is_drawn_has_a_size(
    workshop: DesignFolder, width: str, depth: str, outcome: str
) -> None:
    drawn = 'length = "500 mm"\nkeyways.cams = { begins = "80 mm", ends = "200 mm" }\nkeyway_width = '
    sizes = ("keyway_width = ", drawn), ('"18 mm"', f'"{width}"'), ('"7 mm"', f'"{depth}"')
    check = workshop.write(files("shaft", *sizes)).only(SHAFT)
    assert check.outcome == outcome
    assert outcome == "conforms" or "keyways are drawn along shaft (cams)" in check.says


@pytest.mark.parametrize(("width", "depth", "left"), [("18 mm", "7 mm", 0.75), ("29 mm", "11 mm", 0.701667)])
def test_a_large_keyway_takes_what_moore_found(
    workshop: DesignFolder, width: str, depth: str, left: float
) -> None:
    """1 − 0.2 × 29/60 − 1.1 × 11/60 = 0.701667, less than 0.75."""
    check = workshop.write(keyed_less("0.01", ('"18 mm"', f'"{width}"'), ('"7 mm"', f'"{depth}"'))).only(
        SHAFT
    )
    assert on_sheet(check, "S") / 1e6 == pytest.approx(left * 162, rel=1e-5)


@pytest.mark.parametrize(("moment", "outcome"), [("1494", "conforms"), ("1495", "finding")])
def test_a_turning_shaft_tires_by_its_bending(workshop: DesignFolder, moment: str, outcome: str) -> None:
    """k_b = 1.51 × 60^−0.157 = 0.793976; 0.85 × 0.793976 × 450 = 303.696 MPa. Torque 0 to 1400 N·m: √3 × 3 × 700 =
    3637.31 N·m, mean and amplitude. 42 411.5 mm³ × (1/1.5) = 28 274.3; of it 3637.31/900 MPa = 4041.46 mm³:
    24 232.9 × 303.696 = 7359.42 N·m; √(7359.42² − 3637.31²)/(2 × 2.14) = 1494.8 N·m.
    """
    assert workshop.write(files("shaft", ("800 N·m", f"{moment} N·m"))).only(SHAFT).outcome == outcome


@pytest.mark.parametrize("key", ["diameter", "torque", "bending_moment", "keyway_width", "keyway_depth"])
def test_a_shaft_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("shaft", key)).only(SHAFT).outcome == "not assessed"


@given(F=st.floats(1e3, 1e6), L=st.floats(0.05, 0.5), share=st.floats(0, 1.9))
def test_a_spread_load_bends_a_pin_less(F: float, L: float, share: float) -> None:
    """A point load in the middle makes F L/4, and nothing makes more."""
    assert moment_of_held_pin(F, L, share * L) <= F * L / 4 * (1 + 1e-12)
    assert moment_of_held_pin(F, L, 0.0) == pytest.approx(F * L / 4)


@given(F=st.floats(1e3, 1e6), d=st.floats(0.02, 0.3), b=st.floats(0.02, 0.3))
def test_length_and_diameter_count_alike(F: float, d: float, b: float) -> None:
    assert projected_pressure(F, d, b) == pytest.approx(projected_pressure(F, b, d))


@given(S_y=st.floats(1e8, 1e9), S_ut=st.floats(1e8, 2e9), e=st.floats(0.1, 1))
def test_a_keyway_never_helps_and_neither_strength_is_passed(S_y: float, S_ut: float, e: float) -> None:
    allowed = shafting_allowable(S_y, S_ut, e)
    assert allowed <= shafting_allowable(S_y, S_ut, 1.0)
    assert allowed <= 0.3 * S_y
    assert allowed <= 0.18 * S_ut


@given(d=st.floats(0.00279, 0.2), more=st.floats(1.0, 1.27))
def test_a_thicker_pin_is_weaker_for_its_size(d: float, more: float) -> None:
    """The two branches meet within 0.3 % at 51 mm."""
    assert size_factor(d * more) <= size_factor(d) * 1.003
    assert size_factor(effective_diameter(max(d, 0.01))) > size_factor(max(d, 0.01))


@given(M=st.floats(0.0, 1e4), T=st.floats(1.0, 1e4))
def test_bending_and_torque_are_each_less_than_both(M: float, T: float) -> None:
    assert moments_together(M, T, 1.0, 1.0) >= max(2 * M, 3**0.5 * T) * (1 - 1e-12)
    assert shafting_shear(M, T, 1.5, 1.0, 0.1) >= shafting_shear(M, 0.0, 1.5, 1.0, 0.1)


@pytest.mark.parametrize(("overhang", "outcome"), [("92.5 mm", "conforms"), ("92.4 mm", "finding")])
def test_the_bearing_of_a_crank_pin_does_not_reach_into_the_crank(
    workshop: DesignFolder, overhang: str, outcome: str
) -> None:
    """Half of 185 mm."""
    made = files("crank-pin", ('overhang = "120 mm"', f'overhang = "{overhang}"'))
    assert workshop.write(made).only(OVERHANG, "crank-pin").outcome == outcome


def test_a_crosshead_pin_has_no_overhang(workshop: DesignFolder) -> None:
    assert (
        workshop.write(files("pin", add='overhang = "10 mm"\n')).only(OVERHANG, "pin").outcome
        == "not applicable"
    )


@pytest.mark.parametrize("key", ["length", "overhang", "place"])
def test_a_crank_pin_that_leaves_a_size_out_has_nothing_to_compare(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("crank-pin", key)).only(OVERHANG, "crank-pin").outcome == "not applicable"
