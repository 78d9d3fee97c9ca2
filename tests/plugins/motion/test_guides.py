"""crosshead.slide-pressure, slidebar.deflection and motion.balance-record."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.members import fixed_deflection, simple_deflection, slipper_pressure
from speclint.handbook.members.beams import fixed_moment
from speclint.testing import DesignFolder, expect_not_assessed, on_sheet
from speclint_motion.formulae.bar_ends import couple_at_end, couple_borne
from speclint_motion.formulae.guides import mass_apart
from tests.plugins.motion.train import files, without

PRESSURE, DEFLECTION, BALANCE = "crosshead.slide-pressure", "slidebar.deflection", "motion.balance-record"


@pytest.mark.parametrize(("length", "outcome"), [("432.3", "conforms"), ("432.1", "finding")])
def test_slide_pressure_from_both_sides(workshop: DesignFolder, length: str, outcome: str) -> None:
    """Crank upright: sin φ = 330/1900, tan φ = 0.176365; × 325.940 kN = 57.4844 kN.
    57 484.4/(0.7 × 200 × 0.95) = 432.21 mm: of the slipper's 240 mm the bar of 200 mm bears 200.
    """
    check = workshop.write(files("crosshead", ("400 mm", f"{length} mm"))).only(PRESSURE)
    assert check.outcome == outcome
    assert on_sheet(check, "N") == pytest.approx(57_484.35, rel=1e-6)
    assert on_sheet(check, "θ_N") % math.pi == pytest.approx(math.pi / 2, abs=1e-3)


@pytest.mark.parametrize("key", ["slipper_length", "slipper_width", "bearing_share"])
def test_slide_pressure_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("crosshead", key)).only(PRESSURE).outcome == "not assessed"


@pytest.mark.parametrize(("depth", "outcome"), [("84.7", "conforms"), ("84.5", "finding")])
def test_deflection_from_both_sides(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """Worked again with the bar's formula over a fine table of angles: 0.456071 mm at 120 mm of depth, the crank a
    little before upright, where the crosshead stands nearer the middle. L/1000 = 1.3 mm at
    120 × (0.456071/1.3)^(1/3) = 84.63 mm.
    """
    check = workshop.write(files("bar", ("120 mm", f"{depth} mm"))).only(DEFLECTION)
    assert check.outcome == outcome


def test_deflection_of_either_end(workshop: DesignFolder) -> None:
    """The crosshead stands 320 + 330 + 1900 − √(1900² − 330²) = 678.88 mm along with the crank upright.

    By hand there, b = 621.12: 57 484.35 × 621.12 × (1300² − 621.12²)^1.5/(9 √3 × 200 000 × 28.8e6 × 1300) = 0.4553,
    the scan finds a little more. Held at its ends, as worked in the same table: 0.113960 mm.
    """
    resting = on_sheet(workshop.write(files()).only(DEFLECTION), "y") * 1e3
    assert resting == pytest.approx(0.456071, abs=1e-6)
    held = on_sheet(workshop.write(files("bar", ("both pinned", "both fixed"))).only(DEFLECTION), "y") * 1e3
    assert held == pytest.approx(0.113960, abs=1e-6)


def test_two_bars_share(workshop: DesignFolder) -> None:
    alone = on_sheet(workshop.write(files()).only(DEFLECTION), "y")
    shared = on_sheet(
        workshop.write(files("bar", ("bars_sharing = 1", "bars_sharing = 2"))).only(DEFLECTION), "y"
    )
    assert shared == pytest.approx(alone / 2)


def test_an_i_section_bends_as_its_second_moment(workshop: DesignFolder) -> None:
    """I = (200 × 120³ − 180 × 60³)/12 = 25.56e6 mm⁴ for 28.8e6."""
    add = 'web = "20 mm"\nflange = "30 mm"\n'
    check = workshop.write(files("bar", ('"rectangle"', '"I"'), add=add)).only(DEFLECTION)
    assert on_sheet(check, "I") * 1e12 == pytest.approx(25.56e6)
    assert on_sheet(check, "y") * 1e3 == pytest.approx(0.456071 * 28.8 / 25.56, abs=1e-6)


@pytest.mark.parametrize(
    ("flange", "web", "outcome"),
    [
        ("9.65", "20", "conforms"),
        ("9.62", "20", "finding"),
        ("9.62", "21", "conforms"),
        ("9.5", "21", "finding"),
    ],
)
def test_the_flange_of_an_i_bears_the_slipper(
    workshop: DesignFolder, flange: str, web: str, outcome: str
) -> None:
    """57 484.35/(400 × 200 × 0.95) = 0.756373 MPa; 3 × 0.756373 × 90² = 18 379.9 N, and 0.33 × 600 MPa at 9.6347 mm.

    A web of 21 mm leaves 89.5 mm beside it: 18 176.2 N, 9.5812 mm.
    """
    add = f'web = "{web} mm"\nflange = "{flange} mm"\n'
    check = workshop.write(files("bar", ('"rectangle"', '"I"'), add=add)).only(DEFLECTION)
    assert check.outcome == outcome
    assert on_sheet(check, "S_f") == pytest.approx(198e6)
    beside = (200 - float(web)) / 2
    assert on_sheet(check, "σ_f") / 1e6 == pytest.approx(
        3 * 0.756373 * beside**2 / float(flange) ** 2, rel=1e-5
    )
    assert outcome == "conforms" or "flange at its web" in check.says


def test_a_crosshead_that_leaves_its_bar_is_a_query(workshop: DesignFolder) -> None:
    """700 + 660 mm run past 1300 mm."""
    check = workshop.write(files("bar", ("320 mm", "700 mm"))).only(DEFLECTION)
    assert check.outcome == "finding"
    assert "does not lie on the bar" in check.says


def test_no_bar_that_shares_is_told_in_words(workshop: DesignFolder) -> None:
    """It was a query: the deflection would divide by 0."""
    check = workshop.write(files("bar", ("bars_sharing = 1", "bars_sharing = 0"))).only(DEFLECTION)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "no bar is said to share the thrust" in check.says


@pytest.mark.parametrize("key", ["span", "ends", "section", "depth", "bars_sharing", "crosshead_from_end"])
def test_deflection_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("bar", key)).only(DEFLECTION).outcome == "not assessed"


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("piston", "112 kg", "118 kg", "conforms"),
        ("piston", "112 kg", "118.1 kg", "finding"),
        ("rod", "84 kg", "77.9 kg", "finding"),
        ("block", "300 kg", "294.1 kg", "finding"),
        ("crosshead", 'balanced_for = "300 kg"', 'balanced_for = "306.2 kg"', "finding"),
    ],
)
def test_masses_from_both_sides(workshop: DesignFolder, part: str, old: str, new: str, outcome: str) -> None:
    """112 + 84 + 70 + 34 = 300 kg; 2 % are 6 kg. 300/294.1 = 1.0201; 6.2/306.2 = 0.0202."""
    assert workshop.write(files(part, (old, new))).only(BALANCE).outcome == outcome


@pytest.mark.parametrize("key", ["mass", "small_end_mass", "balance_drawing", "balanced_for"])
def test_the_balance_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("crosshead", key)).only(BALANCE).outcome == "not assessed"


@given(share=st.floats(0.05, 0.95))
def test_a_bar_that_is_held_gives_less(share: float) -> None:
    bar = {"F": 60e3, "a": share * 1.2, "L": 1.2, "E": 200e9, "I": 3.6e-5}
    assert fixed_deflection(**bar) < simple_deflection(**bar)


@given(N=st.floats(1e3, 1e5), x=st.floats(0.1, 1), k=st.floats(1.1, 3))
def test_a_longer_slipper_presses_less(N: float, x: float, k: float) -> None:
    assert slipper_pressure(N, k * 0.4, 0.2, x) == pytest.approx(slipper_pressure(N, 0.4, 0.2, x) / k)


@given(m=st.floats(100, 500), off=st.floats(0, 50))
def test_heavier_and_lighter_count_alike(m: float, off: float) -> None:
    assert mass_apart(m + off, m) == pytest.approx(mass_apart(m - off, m), abs=1e-12)


def _fixed(front: str = "", back: str = "", **changed: str) -> dict[str, str]:
    """The bar with ends said to be fixed: at each four bolts of 95 kN in two rows 100 mm apart."""
    stated = {
        "part": '"block"',
        "bolts": "4",
        "bolts_in_row": "2",
        "rows_apart": '"100 mm"',
        "preload": '"95..125 kN"',
    }
    lines = "".join(f"{key} = {value}\n" for key, value in (stated | changed).items() if value)
    add = f"[supports.front]\n{front or lines}[supports.back]\n{back or lines}"
    return files("bar", ("both pinned", "both fixed"), add=add)


@pytest.mark.parametrize(
    ("key", "value", "outcome"),
    [
        ("preload", '"80.9..110 kN"', "conforms"),
        ("preload", '"80.7..110 kN"', "finding"),
        ("rows_apart", '"82.5 mm"', "conforms"),
        ("rows_apart", '"82.3 mm"', "finding"),
        ("rows_apart", '"239 mm"', "conforms"),
        ("rows_apart", '"241 mm"', "finding"),
        ("bolts_in_row", "1", "finding"),
        ("bolts_in_row", "3", "finding"),
        ("bolts_in_row", "0", "finding"),
    ],
)
def test_fixed_ends_are_held_by_their_bolts(
    workshop: DesignFolder, key: str, value: str, outcome: str
) -> None:
    """Wanted 1.2 × 4 × 57 484.35 N × 1.3 m/27 = 13 285.3 N·m; a bolt is pulled by 57 484.35/4 = 14 371.1 N.

    2 × 0.1 m × (F_0 − 14 371.1 N): F_0 = 80 797 N; at 95 kN 13 285.3/(2 × 80 628.9) = 82.39 mm. The slipper of 400 mm
    leaves 2 × 320 − 400 = 240 mm at the front, and as much at the back, 1300 − 320 − 660 = 320 mm from its support.
    """
    check = workshop.write(_fixed(**{key: value})).only(DEFLECTION)
    assert check.outcome == outcome
    assert on_sheet(check, "M_w") == pytest.approx(13_285.3, rel=1e-5)


def test_a_row_of_bolts_at_the_back_is_cleared_too(workshop: DesignFolder) -> None:
    """x_0 = 330 mm: 2 × 330 − 400 = 260 mm at the front, 2 × (1300 − 330 − 660) − 400 = 220 mm at the back."""
    near = _fixed(rows_apart='"219 mm"')
    near["bar.toml"] = near["bar.toml"].replace("320 mm", "330 mm")
    assert workshop.write(near).only(DEFLECTION).outcome == "conforms"
    far = _fixed(rows_apart='"221 mm"')
    far["bar.toml"] = far["bar.toml"].replace("320 mm", "330 mm")
    check = workshop.write(far).only(DEFLECTION)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "rows apart, supports back 221 mm > 220 mm" in check.says


def test_an_end_on_a_part_without_a_spec_is_not_known_to_be_fixed(workshop: DesignFolder) -> None:
    check = workshop.write(_fixed(back='drawing = "X-1"\n')).only(DEFLECTION)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "back: carried by no part that has a spec here" in check.says


@pytest.mark.parametrize("key", ["bolts", "bolts_in_row", "rows_apart", "preload"])
def test_fixed_ends_are_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    check = workshop.write(_fixed(**{key: ""})).only(DEFLECTION)
    expect_not_assessed(check, f"supports.front.{key} is not stated")


def test_fixed_ends_want_two_supports(workshop: DesignFolder) -> None:
    one = _fixed()
    one["bar.toml"] = one["bar.toml"].partition("[supports.back]")[0]
    expect_not_assessed(workshop.write(one).only(DEFLECTION), "supports.back is not stated in bar.toml")


@given(F=st.floats(1e3, 1e5), L=st.floats(0.5, 3), a=st.floats(0.01, 0.99))
def test_no_place_of_the_load_asks_more_of_an_end(F: float, L: float, a: float) -> None:
    assert fixed_moment(F, a * L, L) <= couple_at_end(1.0, F, L) * (1 + 1e-12)


@given(s=st.floats(0.02, 0.6), F_0=st.floats(1e4, 1e5), F=st.floats(1e3, 1e5), k=st.floats(1.01, 2))
def test_bolts_pulled_more_bear_less(s: float, F_0: float, F: float, k: float) -> None:
    assert couple_borne(2.0, s, F_0, k * F, 4.0) <= couple_borne(2.0, s, F_0, F, 4.0)
    assert couple_borne(2.0, k * s, F_0, F, 4.0) == pytest.approx(k * couple_borne(2.0, s, F_0, F, 4.0))
