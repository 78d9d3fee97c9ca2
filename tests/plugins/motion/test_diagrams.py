"""Rods, pins and crosshead under the force of both diagrams, where the cylinder has a valve gear, as it runs."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.checking import Check
from speclint.testing import expect_finding, found, on_sheet
from tests.plugins.motion.diagrams import checked, files

#: Area of the piston towards the front and the back [m²]: 500 mm, less a rod of 90 mm.
FRONT, BACK = 0.1963495, 0.1899878
#: The worked case has, of the front at 30° and 45°, and of the back half a turn behind, in bar.
AT_30, AT_45 = (15.83, 1.36), (13.098, 1.371)


def force(front: float, back: float) -> float:
    """F = p_f A_f − p_b A_b − p_a (A_f − A_b), of pressures in bar, with 1.01325 bar on the rod [N]."""
    return 1e5 * (front * FRONT - back * BACK - 1.01325 * (FRONT - BACK))


def symbols(check: Check) -> set[str]:
    return {step.symbol for step in check.steps}


def test_the_force_on_a_crank_pin_is_that_of_the_diagrams(tmp_path: Path) -> None:
    """It is greatest at 39.9°, shortly before cut-off; there the pressure falls ever faster from 30° to 45°.

    So the steam's force lies above the chord between the two, 249 kN, and below that at 30°, 284 kN. A tenth more is
    no more than 289.2 kN, which 16.071 bar against 1.353 give. Inertia: 300 kg × 18.85² × 0.33 × (cos 39.9° + 0.1737
    cos 79.8°) = 28.1 kN, by the series without its last term; along the rod, sin φ = 0.1737 sin 39.9° = 0.1114.
    """
    check = checked(tmp_path, "pin.bearing-pressure", "crank-pin", files())
    assert math.degrees(on_sheet(check, "θ_1")) == pytest.approx(39.9, abs=0.5)
    share = (39.9 - 30) / 15
    chord = (1 - share) * force(*AT_30) + share * force(*AT_45)
    assert chord < on_sheet(check, "F_s1") < force(*AT_30)
    assert on_sheet(check, "k_p") == 1.1
    assert on_sheet(check, "F_k1") == pytest.approx(289.2e3, rel=0.01)
    assert on_sheet(check, "F_1") == pytest.approx(on_sheet(check, "F_k1") - 28.1e3, rel=0.003)
    assert on_sheet(check, "F_c1") == pytest.approx(
        on_sheet(check, "F_1") / math.sqrt(1 - 0.1114**2), rel=1e-3
    )
    assert found(check) == pytest.approx(on_sheet(check, "F_c1") / (0.165 * 0.185), rel=1e-9)


def test_the_sheet_says_from_where_it_is_taken(tmp_path: Path) -> None:
    check = checked(tmp_path, "pin.bearing-pressure", "crank-pin", files())
    (step,) = (step for step in check.steps if step.symbol == "F_s1")
    assert step.name.endswith("towards the axle, calculated: gear, notch 20, 180 rev/min, both ends")
    assert step.long, "what a long calculation gives is no value to be sought a remedy for"
    assert any(name.startswith("diagrams of block main") for name in check.rests_on)


def test_both_senses_are_looked_at(tmp_path: Path) -> None:
    """The worse presses a slipper of 400 × 240 mm, 0.95 of which bears; what is possible goes with the area."""
    check = checked(tmp_path, "crosshead.slide-pressure", "crosshead", files())
    worse = max(on_sheet(check, "N1"), on_sheet(check, "N2"))
    assert found(check) == pytest.approx(worse / (0.400 * 0.240 * 0.95), rel=1e-9)
    assert on_sheet(check, "F_m2") / on_sheet(check, "F_m1") == pytest.approx(BACK / FRONT, rel=0.01)


def test_the_chest_at_the_safety_valves_presses_more(tmp_path: Path) -> None:
    """17.6 bar for 16.2: the difference to the exhaust's 1.35 grows by 9.4 %, and so does the force within 2 %."""
    usual, lifting = (
        checked(tmp_path / bar, "pin.bearing-pressure", "crank-pin", files(f"{bar} bar absolute"))
        for bar in ("16.2", "17.6")
    )
    ratio = on_sheet(lifting, "F_s1") / on_sheet(usual, "F_s1")
    assert ratio == pytest.approx((17.6 - 1.35) / (16.2 - 1.35), rel=0.02)


@pytest.mark.parametrize(
    "change",
    [
        ("gear.toml", 'kind = "valve-gear"', 'kind = "valve-gear"\nextra', ""),
        ("duty.toml", 'notch = "20"', "", ""),
        ("tappet-inlet-front.toml", 'clearance = "0.5 mm"', "", ""),
    ],
    ids=["no gear", "no notch", "no clearance"],
)
def test_where_the_events_are_not_known_steam_is_full_to_the_cut_off(
    tmp_path: Path, change: tuple[str, str, str, str]
) -> None:
    given = files()
    name, old, new, _ = change
    assert old in given[name]
    if name == "gear.toml":
        del given[name]
    else:
        given[name] = given[name].replace(old, new)
    check = checked(tmp_path, "pin.bearing-pressure", "crank-pin", given)
    assert "F_s1" not in symbols(check)
    assert "θ_F_c" in symbols(check)


def test_starting_keeps_full_pressure(tmp_path: Path) -> None:
    """16.2 bar behind the piston at any angle: 1.485 MPa × 0.19635 m² = 291.6 kN, more along the rod."""
    given = files()
    given["duty.toml"] = given["duty.toml"].replace('"2 bar absolute"', '"16.2 bar absolute"', 1)
    check = checked(tmp_path, "pin.bearing-pressure", "crank-pin", given)
    assert check.case == "starting"
    assert "F_s1" not in symbols(check)
    assert on_sheet(check, "F_c") > 291.6e3


def test_a_rod_is_still_judged_at_full_boiler_pressure(tmp_path: Path) -> None:
    """16.2 − 1.013 bar on the whole piston: 298.2 kN, which the diagram and inertia do not reach."""
    check = checked(tmp_path, "rod.buckling", "rod", files())
    assert on_sheet(check, "F_θ1") < on_sheet(check, "F_p") == pytest.approx(298.19e3, rel=1e-4)
    assert found(check) == pytest.approx(on_sheet(check, "F_c") / on_sheet(check, "F_p"), rel=1e-9)


def test_at_speed_inertia_and_the_diagram_govern_a_rod(tmp_path: Path) -> None:
    """With a crosshead of 4770 kg 5000 kg move: × 18.85² × 0.33 × 1.174 = 688 kN at the front dead centre.

    Compression bears some of it there: 10.7 bar against 1.4, some 180 kN.
    """
    given = files()
    given["crosshead.toml"] = given["crosshead.toml"].replace("70 kg", "4770 kg")
    check = checked(tmp_path, "rod.tension", "rod", given)
    assert on_sheet(check, "F_θ2") > on_sheet(check, "F_t")
    expect_finding(check)


@pytest.mark.parametrize(("rule", "sense", "other"), [("rod.tension", "2", "1"), ("rod.buckling", "1", "2")])
def test_a_rod_is_pulled_in_one_sense_and_pushed_in_the_other(
    tmp_path: Path, rule: str, sense: str, other: str
) -> None:
    """Away from the axle the piston pulls its rod, towards it it pushes: the other force bends or tears nothing."""
    check = checked(tmp_path, rule, "rod", files())
    assert f"F_θ{sense}" in symbols(check)
    assert f"F_θ{other}" not in symbols(check)


def test_the_fastening_of_a_piston_takes_the_mass_of_the_piston_alone(tmp_path: Path) -> None:
    """At the back's 197°: F_k + 112 kg × 18.85² × 0.33 × cos-law = F_k − 10.7 kN: the piston slows on its way."""
    check = checked(tmp_path, "piston.fastening", "piston", files())
    θ = on_sheet(check, "θ_2")
    a = 18.8496**2 * 0.33 * (math.cos(θ) + 0.173684 * math.cos(2 * θ))
    assert on_sheet(check, "F_θ2") == pytest.approx(on_sheet(check, "F_k2") + 112 * a, rel=0.002)
