"""Welds of plates that differ in thickness or metal."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed, found, limit, on_sheet
from speclint_fabrication.formulae.unlike_plates import offset_factor
from tests.plugins.fabrication import bench
from tests.plugins.known_metals import WITH_METALS

UNEQUAL, METALS, FATIGUE = "weld.unequal-plates", "weld.two-metals", "block.weld-fatigue"
_SEAM = '[joints.barrel-seam]\nplate = "chest"\n'
#: A steel like that of the bench, of another name.
OTHER = bench.PLATE.replace("known-plate", "other-plate")


def _thick(thickness: str, material: str = "known-plate") -> str:
    return f"""
[plates.thick]
material = "{material}"
thickness = "{thickness}"
rolled_thickness = "{thickness}"
serves_as = "flange"
meets_steam = true
corrosion_allowance = "1 mm"
carbon_equivalent = "0.44 %"
z_quality = "none"
"""


def _joined(
    workshop: DesignFolder,
    thickness: str,
    *lines: str,
    material: str = "known-plate",
    metal: str = OTHER,
    change: tuple[str, str] = ("", ""),
) -> DesignFolder:
    """The seam of the bench between its plate of 20 mm and another."""
    joined = _SEAM + 'plates_joined = ["chest", "thick"]\n' + "".join(f"{line}\n" for line in lines)
    made = bench.write(workshop, (_SEAM, joined), beside={"metals.toml": bench.FILES["metals.toml"] + metal})
    made.write(
        {
            "weldment.toml": (workshop.root / "weldment.toml").read_text(encoding="utf-8").replace(*change)
            + _thick(thickness, material)
        },
        settings=WITH_METALS,
    )
    return made


@pytest.mark.parametrize(
    ("thickness", "lines", "outcome"),
    [
        ("23 mm", (), "conforms"),
        ("23.1 mm", (), "not assessed"),
        ("30 mm", ('taper = "0.25"',), "conforms"),
        ("30 mm", ('taper = "0.255"',), "finding"),
    ],
)
def test_a_step_is_drawn_down(
    workshop: DesignFolder, thickness: str, lines: tuple[str, ...], outcome: str
) -> None:
    """Of 20 mm the least of 3 mm and 5 mm may stand; beyond, 1 in 4 beside a cylinder."""
    check = _joined(workshop, thickness, *lines).only(UNEQUAL)
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.grade is Grade.NONCONFORMITY


def test_away_from_the_cylinder_one_in_three(workshop: DesignFolder) -> None:
    still = (
        'one_side = "exhaust steam"\nother_side = "cylinder"',
        'one_side = "exhaust steam"\nother_side = "live steam"',
    )
    assert _joined(workshop, "30 mm", 'taper = "0.33"', change=still).only(UNEQUAL).outcome == "conforms"
    assert _joined(workshop, "30 mm", 'taper = "0.34"', change=still).only(UNEQUAL).outcome == "finding"


def test_a_weld_that_names_no_wall_may_feel_every_stroke(workshop: DesignFolder) -> None:
    unnamed = ('wall = "barrel"\n', "")
    assert _joined(workshop, "30 mm", 'taper = "0.25"', change=unnamed).only(UNEQUAL).outcome == "conforms"
    assert _joined(workshop, "30 mm", 'taper = "0.255"', change=unnamed).only(UNEQUAL).outcome == "finding"


def test_a_little_step_is_told_beside_what_may_stand(workshop: DesignFolder) -> None:
    """22 on 20 mm: 2 of 3 mm."""
    check = _joined(workshop, "22 mm").only(UNEQUAL)
    assert (found(check), limit(check)) == (pytest.approx(0.002), pytest.approx(0.003))


def test_a_butt_weld_says_what_it_joins(workshop: DesignFolder) -> None:
    assert bench.write(workshop).only(UNEQUAL).outcome == "not assessed"


def test_a_weldment_without_a_butt_weld_has_no_plates_drawn_down(workshop: DesignFolder) -> None:
    made = bench.write(workshop, ('shape = "butt"', 'shape = "tee"'))
    expect_not_applicable(made.only(UNEQUAL), "no butt joint is stated")


def test_an_offset_counts_in_fatigue(workshop: DesignFolder) -> None:
    """16 on 25 mm flush: 1.571; here 20 on 23 mm flush, e 1.5: 1 + 6 × 0.075 × 89.4/(89.4 + 110.3) = 1.2015."""
    plain = bench.write(workshop).only(FATIGUE)
    check = _joined(workshop, "23 mm").only(FATIGUE)
    assert on_sheet(check, "k_m of barrel-seam") == pytest.approx(1.2015, abs=1e-4)
    assert check.utilisation is not None
    assert plain.utilisation is not None
    assert check.utilisation == pytest.approx(1.2015 * plain.utilisation, rel=1e-3)
    in_line = _joined(workshop, "23 mm", 'offset = "0 mm"').only(FATIGUE)
    assert in_line.utilisation == pytest.approx(plain.utilisation)


@given(e=st.floats(0, 0.02), more=st.floats(1e-6, 0.01), t=st.floats(0.005, 0.1), t_2=st.floats(0.005, 0.1))
def test_more_offset_bends_more(e: float, more: float, t: float, t_2: float) -> None:
    assert offset_factor(e + more, min(t, t_2), max(t, t_2)) > offset_factor(e, min(t, t_2), max(t, t_2)) >= 1


def _two(
    workshop: DesignFolder, *lines: str, metal: str = OTHER, change: tuple[str, str] = ("", "")
) -> DesignFolder:
    filler = lines or ('filler = "EN ISO 2560-A E 42 4 B"',)
    plates = 'z_quality = "none"\nrolled_thickness = "0.020 m"'
    made = _joined(workshop, "20 mm", *filler, material="other-plate", metal=metal, change=change)
    text = (workshop.root / "weldment.toml").read_text(encoding="utf-8")
    return made.write(
        {"weldment.toml": text.replace(plates, 'carbon_equivalent = "0.40 %"\n' + plates)},
        settings=WITH_METALS,
    )


def test_two_steels_that_suit_each_other(workshop: DesignFolder) -> None:
    preheat = ('preheat = "90 °C"', 'preheat = "120 °C"')
    check = _two(workshop, change=preheat).only(METALS)
    assert check.outcome == "conforms", check.says
    assert bench.write(workshop).only(METALS).outcome in ("not applicable", "not assessed")


@pytest.mark.parametrize(
    ("preheat", "treatment", "outcome"),
    [("40 °C", "570 °C", "finding"), ("120 °C", "540 °C", "finding"), ("120 °C", "599 °C", "conforms")],
)
def test_preheat_and_relief_of_both(
    workshop: DesignFolder, preheat: str, treatment: str, outcome: str
) -> None:
    made = _two(workshop, change=('preheat = "90 °C"', f'preheat = "{preheat}"'))
    text = (workshop.root / "weldment.toml").read_text(encoding="utf-8").replace('"570 °C"', f'"{treatment}"')
    made.write({"weldment.toml": text}, settings=WITH_METALS)
    assert made.only(METALS).outcome == outcome


def test_no_treatment_suits_both(workshop: DesignFolder) -> None:
    """Group 1 at 550 to 600 °C, chromium and molybdenum at 630 to 680 °C."""
    chromium = OTHER.replace(
        "composition = { C = [0, 0.2], Mn = [0.6, 1.2]",
        "composition = { C = [0, 0.2], Mn = [0.6, 1.2], Cr = [0.7, 1.15]",
    )
    assert chromium != OTHER
    check = _two(workshop, metal=chromium, change=('preheat = "90 °C"', 'preheat = "200 °C"')).only(METALS)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "no heat treatment suits both" in check.says or "suits both" in str(check.judgement)


def test_iron_is_not_welded(workshop: DesignFolder) -> None:
    """A hold, however it is filled and treated."""
    made = _joined(workshop, "20 mm", 'filler = "nickel"', material="known-iron", metal="")
    check = made.only(METALS)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize(("growth", "outcome"), [("[15.9, 17.9]", "conforms"), ("[16.1, 18.1]", "finding")])
def test_unlike_growth(workshop: DesignFolder, growth: str, outcome: str) -> None:
    """At 220 °C ½ × 190 × 1.03 GPa × 200 K × (Δα + 0.6e-6) ≤ 0.5 × 200 MPa: Δα 4.51e-6, from 12.5e-6 to 17.01e-6."""
    metal = OTHER.replace("value = [11.5, 13.5]", f"value = {growth}")
    assert metal != OTHER
    check = _two(workshop, metal=metal, change=('preheat = "90 °C"', 'preheat = "120 °C"')).only(METALS)
    assert check.outcome == outcome


@pytest.mark.parametrize(("at", "outcome"), [("299 °C", "conforms"), ("301 °C", "finding")])
def test_an_austenitic_weld_that_runs_hot_is_a_query(workshop: DesignFolder, at: str, outcome: str) -> None:
    """Up to 300 °C; both grow alike, but for 0.6e-6/K: ½ × 186 × 1.03 GPa × 280 K × 0.6e-6 = 16 of 92 MPa."""
    metal = OTHER.replace('family = "carbon-steel"', 'family = "stainless-austenitic"')
    made = _two(workshop, metal=metal)
    head, running = bench.DUTY.split("[cases.running]")
    made.write(
        {"duty.toml": f"{head}[cases.running]{running.replace('220 °C', at, 1)}"}, settings=WITH_METALS
    )
    check = made.only(METALS)
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


def test_a_ferritic_weld_that_runs_hot_is_none(workshop: DesignFolder) -> None:
    """The limit of 300 °C is that of austenitic beside ferritic steel."""
    made = _two(workshop, change=('preheat = "90 °C"', 'preheat = "120 °C"'))
    head, running = bench.DUTY.split("[cases.running]")
    made.write(
        {"duty.toml": f"{head}[cases.running]{running.replace('220 °C', '301 °C', 1)}"}, settings=WITH_METALS
    )
    assert made.only(METALS).outcome == "conforms"


@pytest.mark.parametrize(("proof", "outcome"), [("[236, 156]", "conforms"), ("[234, 154]", "finding")])
def test_unlike_growth_is_held_to_the_weaker_steel(workshop: DesignFolder, proof: str, outcome: str) -> None:
    """Δα 4.4 + 0.6: ½ × 190 × 1.03 GPa × 200 K × 5.0e-6 = 97.85 MPa, half of 195.7; 196 and 194 at 220 °C."""
    metal = OTHER.replace("value = [11.5, 13.5]", "value = [15.9, 17.9]").replace("[240, 160]", proof)
    assert metal.count(proof) == 1
    check = _two(workshop, metal=metal, change=('preheat = "90 °C"', 'preheat = "120 °C"')).only(METALS)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("wall", "outcome"), [('wall = "barrel"', "conforms"), ("# it names no wall", "finding")]
)
def test_unlike_growth_is_that_of_what_the_wall_bounds(
    workshop: DesignFolder, wall: str, outcome: str
) -> None:
    """Δα 4.4 + 0.6 as above: 97.85 of 100 MPa at the block's 220 °C, beside exhaust steam and the open air.

    A weld that names no wall may be beside the live steam, of 320 °C: ½ × 195.7 GPa × 300 K × 5.0e-6 = 146.8 of 90.
    """
    metal = OTHER.replace("value = [11.5, 13.5]", "value = [15.9, 17.9]")
    _two(workshop, metal=metal, change=('preheat = "90 °C"', 'preheat = "120 °C"'))
    workshop.replace(
        "weldment.toml", 'other_side = "cylinder"\none_depth', 'other_side = "atmosphere"\none_depth'
    )
    workshop.replace("weldment.toml", 'on_pressure = true\nwall = "barrel"', f"on_pressure = true\n{wall}")
    workshop.replace(
        "duty.toml", '"220 °C" }\n[cases.drifting]', '"220 °C", steam-passage = "320 °C" }\n[cases.drifting]'
    )
    assert workshop.only(METALS).outcome == outcome


def test_a_tee_joins_its_plate_to_that_of_its_wall(workshop: DesignFolder) -> None:
    """The flange, of another steel, on the wall of the chest; a wall that names no plate joins none."""
    _joined(workshop, "20 mm").replace(
        "weldment.toml",
        'material = "known-plate"\nthickness = "40 mm"',
        'material = "other-plate"\nthickness = "40 mm"',
    )
    expect_not_assessed(workshop.only(METALS), "joints.chest-edge.filler")
    workshop.replace("weldment.toml", 'plate = "chest"\nshort = "190 mm"', 'short = "190 mm"')
    expect_not_applicable(workshop.only(METALS), "no weld is stated to join two metals")


def two_steels(workshop: DesignFolder) -> DesignFolder:
    """A weld of two steels that suit each other."""
    return _two(workshop, change=('preheat = "90 °C"', 'preheat = "120 °C"'))
