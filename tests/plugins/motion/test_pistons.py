"""piston.clearance-hot, piston.fastening, piston.speed, piston.inertia, piston.ring-gap and piston.ring-lands."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.fits import diametral_clearance, size_when_hot
from speclint.testing import DesignFolder, expect_not_assessed, found, limit, on_sheet
from speclint_motion.formulae.pistons import land_bending, land_shear, ring_gap_when_hot, ring_gap_when_worn
from tests.plugins.motion.train import files, without

CLEARANCE, FASTENING, SPEED = "piston.clearance-hot", "piston.fastening", "piston.speed"
INERTIA, GAP, LANDS = "piston.inertia", "piston.ring-gap", "piston.ring-lands"


@pytest.mark.parametrize(
    ("diameter", "outcome", "grade"),
    [
        ("498.97", "conforms", None),
        ("498.98", "finding", Grade.NONCONFORMITY),
        ("499.22", "finding", Grade.NONCONFORMITY),
        ("499.23", "finding", Grade.HOLD),
    ],
)
def test_clearance_from_both_sides(
    workshop: DesignFolder, diameter: str, outcome: str, grade: Grade | None
) -> None:
    """Iron at 220 °C grows 12.2e-6 at least: 500 × (1 + 12.2e-6 × 200) = 501.22 mm. Steel at 320 °C 13.3e-6 at most:
    (501.22 − 0.25)/1.00399 = 498.979 mm; nothing is left from 501.22/1.00399 = 499.228 mm.
    """
    check = workshop.write(files("piston", ("497 mm", f"{diameter} mm"))).only(CLEARANCE)
    assert (check.outcome, check.grade) == (outcome, grade)


def test_clearance_by_hand(workshop: DesignFolder) -> None:
    """501.22 − 497 × 1.00399 = 2.23697 mm against 0.0005 × 500 = 0.25 mm."""
    check = workshop.write(files()).only(CLEARANCE)
    assert on_sheet(check, "c") * 1e3 == pytest.approx(2.23697)
    assert check.utilisation == pytest.approx(0.25 / 2.23697)


@pytest.mark.parametrize("key", ["diameter", "runs_in", "material"])
def test_clearance_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    found = without("piston", key)
    found["piston.toml"] = found["piston.toml"].replace('id = "piston"', 'id = "piston"\nduty = "duty"')
    check = workshop.write(found).only(CLEARANCE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("load", "outcome"), [("599.4", "conforms"), ("599.3", "finding")])
def test_proof_load_from_both_sides(workshop: DesignFolder, load: str, outcome: str) -> None:
    """1.5 × 399.5713 kN = 599.357 kN."""
    check = workshop.write(files("piston", ("600 kN", f"{load} kN"))).only(FASTENING)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def at_speed(case: str, proof: str) -> dict[str, str]:
    """The train at 1080 rev/min in one case, and the proof load of its fastening."""
    found = files("piston", ("600 kN", f"{proof} kN"))
    stated = {"running": '"360 rev/min"', "drifting": '"360.0 rev/min"'}[case]
    found["duty.toml"] = found["duty.toml"].replace(stated, '"1080 rev/min"')
    return found


@pytest.mark.parametrize(
    ("case", "proof", "outcome"),
    [
        ("running", "958.1", "conforms"),
        ("running", "958.0", "finding"),
        ("drifting", "832.4", "conforms"),
        ("drifting", "832.2", "finding"),
    ],
)
def test_the_inertia_of_the_piston_pulls_its_nut(
    workshop: DesignFolder, case: str, proof: str, outcome: str
) -> None:
    """At 360 rev/min a = 550.462 m/s²: at three times that 112 kg × 9 × 550.462 = 554.866 kN; × 1.5 = 832.299.

    Running, with the steam expanded to 4.270725 bar behind it (83.8555 kN): 638.721 kN; × 1.5 = 958.082.
    """
    check = workshop.write(at_speed(case, proof)).only(FASTENING)
    assert (check.outcome, check.case) == (outcome, case)


@pytest.mark.parametrize(("proof", "outcome"), [("963.5", "conforms"), ("963.2", "finding")])
def test_the_piston_is_no_lighter_than_its_rim(workshop: DesignFolder, proof: str, outcome: str) -> None:
    """A rim of 44 mm, 300 mm long, is 147.4659 kg of steel, less 3.4234 kg for the groove; 112 kg are stated.

    At least 0.9 × 144.0426 = 129.6383 kg × 9 × 550.462 m/s² = 642.2486 kN; × 1.5 = 963.373 kN.
    """
    found = at_speed("drifting", proof)
    found["piston.toml"] = found["piston.toml"].replace(
        "[grooves.front]", 'length = "300 mm"\n[grooves.front]'
    )
    assert workshop.write(found).only(FASTENING).outcome == outcome


def test_the_fastening_needs_the_mass_of_the_piston(workshop: DesignFolder) -> None:
    check = workshop.write(without("piston", "mass")).only(FASTENING)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_no_more_is_proved_than_the_rod_bears(workshop: DesignFolder) -> None:
    """M36 yields at 0.9 × 600 MPa × 759.28 mm² = 410.0 kN, whatever proof load is stated: 599.4 kN are wanted."""
    check = workshop.write(files("piston", ("M85x4", "M36"), ("600 kN", "900 kN"))).only(FASTENING)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert (found(check), limit(check)) == (
        pytest.approx(410.01e3, rel=1e-4),
        pytest.approx(599.357e3, rel=1e-4),
    )


@pytest.mark.parametrize(("rod", "outcome"), [("37.7 mm", "conforms"), ("37.5 mm", "finding")])
def test_a_rod_forged_in_one_bears_the_proof_load(workshop: DesignFolder, rod: str, outcome: str) -> None:
    """599.357 kN/(0.9 × 600 MPa) = 1109.92 mm², 37.593 mm."""
    made = files("piston", *FORGED, ("known-steel", "known-forging"), ("600 kN", "900 kN"))
    made["rod.toml"] = made["rod.toml"].replace('diameter = "90 mm"', f'diameter = "{rod}"')
    assert workshop.write(made).only(FASTENING).outcome == outcome


def test_a_nut_that_may_turn_is_held(workshop: DesignFolder) -> None:
    check = workshop.write(files("piston", ("split pin", "nothing"))).only(FASTENING)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "locks" in check.says


FORGED = (
    ('by = "nut"', 'by = "forged in one"'),
    ('thread = "M85x4"\n', ""),
    ('locked_by = "split pin"\n', ""),
)


def test_a_piston_forged_in_one_with_its_rod_has_no_nut(workshop: DesignFolder) -> None:
    found = files("piston", *FORGED, ("known-steel", "known-forging"))
    assert workshop.write(found).only(FASTENING).outcome == "conforms"


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        (FORGED, "it is of known-steel, rod of known-forging"),
        ((FORGED[0], FORGED[2], ("known-steel", "known-forging")), "it has a thread M85x4"),
    ],
)
def test_a_word_does_not_forge_a_piston_to_its_rod(
    workshop: DesignFolder, changes: tuple[tuple[str, str], ...], says: str
) -> None:
    check = workshop.write(files("piston", *changes)).only(FASTENING)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert says in check.says


@pytest.mark.parametrize(("drawing", "outcome"), [("M 101", "conforms"), ("M-102", "finding")])
def test_a_piston_forged_in_one_is_on_the_drawing_of_its_rod(
    workshop: DesignFolder, drawing: str, outcome: str
) -> None:
    made = files("piston", *FORGED, ("known-steel", "known-forging"))
    for name, number in (("piston", drawing), ("rod", "M-101")):
        made[f"{name}.toml"] = f'drawing = "{number}"\n{made[f"{name}.toml"]}'
    assert workshop.write(made).only(FASTENING).outcome == outcome


def test_a_piston_forged_to_no_rod_is_not_assessed(workshop: DesignFolder) -> None:
    found = files("piston", *FORGED)
    left = {name: found[name] for name in found if name not in ("rod.toml", "crosshead.toml", "box.toml")}
    for name in ("bar.toml", "pin.toml", "crank-pin.toml"):
        left.pop(name)
    assert workshop.write(left).only(FASTENING).outcome == "not assessed"


@pytest.mark.parametrize("key", ["by", "thread", "seat", "taper", "locked_by", "proof_load"])
def test_fastening_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    check = workshop.write(without("piston", key)).only(FASTENING)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert f"fastening.{key}" in check.says


@pytest.mark.parametrize(("speed", "outcome"), [("363.6", "conforms"), ("363.7", "finding")])
def test_speed_from_both_sides(workshop: DesignFolder, speed: str, outcome: str) -> None:
    """8 m/s ÷ 1.32 m a turn = 6.0606 turns a second: 363.636 rev/min."""
    check = workshop.write(files("duty", ("360 rev/min", f"{speed} rev/min"))).only(SPEED)
    assert (check.outcome, check.grade) == (outcome, Grade.OBSERVATION if outcome == "finding" else None)


def test_speed_beside_the_periods(workshop: DesignFolder) -> None:
    """360 rev/min: 7.92 m/s; 1000 ft/min is 5.08 m/s; 1.559."""
    assert on_sheet(workshop.write(files()).only(SPEED), "x_period") == pytest.approx(7.92 / 5.08)


def test_speed_is_not_assessed_without(workshop: DesignFolder) -> None:
    found = files("duty", ('rotational_speed = "360 rev/min"\ncut_off', "cut_off"))
    assert workshop.write(found).only(SPEED).outcome == "not assessed"
    assert workshop.only(FASTENING).outcome == "not assessed"
    assert workshop.only(INERTIA).outcome == "not assessed"


@pytest.mark.parametrize(("speed", "outcome"), [("452.3", "conforms"), ("452.4", "finding")])
def test_inertia_from_both_sides(workshop: DesignFolder, speed: str, outcome: str) -> None:
    """At 360 rev/min 550.462 m/s² × 300 kg = 165.139 kN over 325.940 kN = 0.50665; 360 √(0.8/0.50665) = 452.37."""
    check = workshop.write(files("duty", ("360 rev/min", f"{speed} rev/min"))).only(INERTIA)
    assert check.outcome == outcome


@pytest.mark.parametrize(("gap", "outcome"), [("0.389", "conforms"), ("0.388", "finding")])
def test_gap_from_both_sides(workshop: DesignFolder, gap: str, outcome: str) -> None:
    """Both at 220 °C, liner 12.2e-6 and ring 12.8e-6: π 500 × 0.6e-6 × 200 = 0.18850 mm are lost; 0.2 must be left."""
    assert workshop.write(files("ring", ("4 mm", f"{gap} mm"))).only(GAP).outcome == outcome


@pytest.mark.parametrize(("ring", "outcome"), [("215.5", "conforms"), ("215.7", "finding")])
def test_a_ring_that_warms_before_its_bore(workshop: DesignFolder, ring: str, outcome: str) -> None:
    """The bore at 140 °C, 11.7e-6 − 0.3e-6 = 11.4e-6, gains π 500 × 11.4e-6 × 120 = 2.14885 mm.

    The ring at 215.5 °C, 12.455e-6 + 0.3e-6, takes π 500 × 12.755e-6 × 195.5 = 3.91694: 1.97 mm leave 0.2019 mm; at
    215.7 °C 3.92155 leave 0.1973.
    """
    found = files("ring", ("4 mm", "1.97 mm"))
    found["duty.toml"] = found["duty.toml"].replace('piston-ring = "140 °C"', f'piston-ring = "{ring} °C"')
    check = workshop.write(found).only(GAP)
    assert (check.outcome, check.case) == (outcome, "warming")


@pytest.mark.parametrize(
    ("gap", "last", "outcome"),
    [
        ("5.57", "503 mm", "conforms"),
        ("5.58", "503 mm", "finding"),
        ("14.99", "500.001 mm", "conforms"),
        ("30", "500.001 mm", "finding"),
    ],
)
def test_a_worn_bore_opens_the_gap(workshop: DesignFolder, gap: str, last: str, outcome: str) -> None:
    """0.03 × 500 = 15 mm; 3 mm of wear opens 9.42478 mm: 5.57522 mm are left."""
    found = files("ring", ("4 mm", f"{gap} mm"))
    found["liner.toml"] = found["liner.toml"].replace('"500.0 mm"', f'"{last}"')
    assert workshop.write(found).only(GAP).outcome == outcome


def test_rings_of_the_next_size_are_fitted_in_time(workshop: DesignFolder) -> None:
    """To 509 mm 9 mm of wear open 28.3 mm; with a ring for every 3 mm it is 9.42478 mm as before."""
    found = files("ring", ("4 mm", "5.57 mm"))
    found["liner.toml"] = found["liner.toml"].replace('"500.0 mm"', '"509 mm"')
    assert workshop.write(found).only(GAP).outcome == "finding"
    found["ring.toml"] += 'made_for = ["500 mm", "503 mm", "506 mm"]\n'
    assert workshop.write(found).only(GAP).outcome == "conforms"


def test_the_gap_needs_the_last_bore(workshop: DesignFolder) -> None:
    assert workshop.write(without("liner", "last_bore")).only(GAP).outcome == "not assessed"


def test_a_ring_in_the_blocks_own_bore(workshop: DesignFolder) -> None:
    """Steel block at 220 °C: 12.5e-6 − 0.3e-6 low; the ring 12.8e-6 high: the same 0.18850 mm."""
    own = 'bears_on = "block"\nmade_for = ["500 mm", "500.1 mm"]'
    found = files("ring", ('runs_in = "liner"', own), ("4 mm", "0.5 mm"))
    found["duty.toml"] = found["duty.toml"].replace(
        'piston-rod = "100 °C"', 'piston-rod = "100 °C"\ncylinder-block = "220 °C"'
    )
    found["duty.toml"] = found["duty.toml"].replace(
        "[cases.drifting.temperatures]\n", '[cases.drifting.temperatures]\ncylinder-block = "220 °C"\n'
    )
    found["piston.toml"] = found["piston.toml"].replace('takes = "ring"\n', "")
    check = workshop.write(found).only(GAP)
    assert on_sheet(check, "g_h") * 1e3 == pytest.approx(0.5 - 0.188496, abs=1e-6)


@pytest.mark.parametrize("key", ["gap", "material"])
def test_gap_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("ring", key)).only(GAP).outcome == "not assessed"


@pytest.mark.parametrize(
    ("metal", "land", "outcome"),
    [
        ("known-steel", "5.73", "conforms"),
        ("known-steel", "5.72", "finding"),
        ("known-iron", "9.37", "conforms"),
        ("known-iron", "9.36", "finding"),
    ],
)
def test_lands_from_both_sides(workshop: DesignFolder, metal: str, land: str, outcome: str) -> None:
    """The front relief valve opens at 20 bar, the back one at 18.5; water is blown off at 22 bar.

    Steel, running at 320 °C: R_p 180, 0.33 of it 59.4 MPa: √(3 × 2.0 × 18²/59.4) = 5.721 mm; with water at 180 °C,
    68.64 MPa, √(3 × 2.2 × 18²/68.64) = 5.582 mm. Iron 195/8 = 24.375 MPa: √(3 × 2.2 × 18²/24.375) = 9.366 mm. Shear
    asks less.
    """
    found = files("piston", ("20 mm", f"{land} mm"), ("known-steel", metal))
    assert workshop.write(found).only(LANDS).outcome == outcome


@pytest.mark.parametrize(("pressure", "outcome"), [("25.07", "conforms"), ("25.08", "finding")])
def test_lands_bear_the_water_of_the_duty(workshop: DesignFolder, pressure: str, outcome: str) -> None:
    """Iron, 10 mm: 24.375 × 100/(3 × 18²) = 2.50772 MPa, where the duty's water stands above the relief valves."""
    found = files("piston", ('"20 mm"', '"10 mm"'), ("known-steel", "known-iron"))
    found["duty.toml"] = found["duty.toml"].replace("19 bar", f"{pressure} bar")
    check = workshop.write(found).only(LANDS)
    assert (check.outcome, check.case) == (outcome, "water")


@pytest.mark.parametrize(("made", "outcome"), [("10 mm", "conforms"), ("44 mm", "finding")])
def test_the_strength_of_a_land_is_that_of_its_casting(
    workshop: DesignFolder, made: str, outcome: str
) -> None:
    """EN-GJL-250, land 10 mm: 21.4 MPa. Cast 10 mm thick it has 250 MPa: 31.25; above 40 mm 170: 21.25."""
    found = files(
        "piston", ('"20 mm"', '"10 mm"'), ("known-steel", "grey-iron-250"), ('"44 mm"', f'"{made}"')
    )
    assert workshop.write(found).only(LANDS).outcome == outcome


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("ring", 'thickness = "16 mm"', 'thickness = "17.49 mm"', "conforms"),
        ("ring", 'thickness = "16 mm"', 'thickness = "17.51 mm"', "finding"),
        ("piston", "16.1 mm", "16.19 mm", "conforms"),
        ("piston", "16.1 mm", "16.21 mm", "finding"),
        ("piston", "16.1 mm", "16.04 mm", "conforms"),
        ("piston", "16.1 mm", "16.02 mm", "finding"),
    ],
)
def test_grooves_from_both_sides(workshop: DesignFolder, part: str, old: str, new: str, outcome: str) -> None:
    """Groove 18 mm deep, ring 16 mm wide: 0.5 mm behind it, and 0.03 to 0.2 mm beside it."""
    assert workshop.write(files(part, (old, new))).only(LANDS).outcome == outcome


@pytest.mark.parametrize("key", ["stock_thickness", "depth", "width", "land", "takes"])
def test_lands_are_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("piston", key)).only(LANDS).outcome == "not assessed"


def test_lands_are_not_assessed_without_any_groove(workshop: DesignFolder) -> None:
    """A piston whose rings are not drawn in yet: what is missing is the whole table, and where."""
    found = files("piston")
    found["piston.toml"] = re.sub(r"\[grooves\.front\]\n(?:[^\[\n].*\n)*", "", found["piston.toml"])
    expect_not_assessed(workshop.write(found).only(LANDS), "grooves is not stated in piston.toml")


@given(g=st.floats(0, 0.01), D=st.floats(0.1, 1), w=st.floats(0, 0.01))
def test_wear_opens_the_gap_by_its_own_circumference(g: float, D: float, w: float) -> None:
    assert ring_gap_when_worn(g, D, D + w) - g == pytest.approx(math.pi * w, abs=1e-12)


@given(D=st.floats(0.1, 1), a=st.floats(5e-6, 25e-6), rise=st.floats(0, 400))
def test_like_metals_equally_hot_keep_their_share(D: float, a: float, rise: float) -> None:
    """Bore and body that grow alike keep the clearance as a share of their size."""
    cold = diametral_clearance(D=D, d=0.998 * D)
    hot = diametral_clearance(
        D=size_when_hot(D, a, 293.15 + rise, 293.15), d=size_when_hot(0.998 * D, a, 293.15 + rise, 293.15)
    )
    assert hot == pytest.approx(cold * (1 + a * rise))


@given(g=st.floats(0.001, 0.01), rise=st.floats(1, 300), more=st.floats(1, 100))
def test_a_hotter_ring_has_less_gap(g: float, rise: float, more: float) -> None:
    at = 293.15 + rise
    gaps = [ring_gap_when_hot(g, 0.5, 12e-6, at, 12e-6, one, 293.15) for one in (at, at + more)]
    assert gaps[0] == pytest.approx(g)
    assert gaps[1] < gaps[0]


@given(p=st.floats(1e5, 5e6), h=st.floats(0.005, 0.04), b=st.floats(0.005, 0.04))
def test_a_land_of_half_the_thickness_bends_four_times_as_hard(p: float, h: float, b: float) -> None:
    assert land_bending(p, h, b / 2) == pytest.approx(4 * land_bending(p, h, b))
    assert land_shear(p, h, b / 2) == pytest.approx(2 * land_shear(p, h, b))
