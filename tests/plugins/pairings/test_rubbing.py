"""pairing.pressure-velocity, worked by hand on the train of the motion: 500 × 660 mm, rod 1900 mm, 6 turns a second.

16.6 bar gauge is 17.61325 bar absolute; cut off at 0.3, exhaust 1.01325: 17.61325 × 0.3 × (1 + 1.203973) − 1.01325 =
10.63249 bar. F_m = 1.063249 × 196 349.54 = 208 768 N.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from speclint_pairings.formulae import rubbing as work
from speclint_pairings.formulae.tables import pressure_velocity, rated
from speclint_pairings.sources import WORKS
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.motion.train import PARTS, files
from tests.plugins.pairings.test_tables import CLASSES, rows

RULE = "pairing.pressure-velocity"
OILED = '[lubrication]\nlubricant = "engine oil"\n'


def train(part: str, *changes: tuple[str, str], add: str = "") -> dict[str, str]:
    """The train with the metals of its bearings stated and a liner never rebored, one part changed and added to."""
    found = files()
    del found["speclint.toml"]  # each test brings its own settings
    metals = {
        "crosshead": 'slipper_material = "white-metal-tin"\n' + OILED,
        "pin": 'bearing_material = "bronze-CC480K"\n' + OILED,
        "crank-pin": 'bearing_material = "bronze-CC480K"\n' + OILED,
        "ring": 'wall_pressure = "0.05 MPa"\n',
        "liner": OILED.replace("engine", "cylinder"),
    }
    for name, text in metals.items():
        found[f"{name}.toml"] = PARTS[name] + text
    text = found[f"{part}.toml"]
    for old, new in changes:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {part}"
        text = text.replace(old, new)
    found[f"{part}.toml"] = text + add
    return found


def write(workshop: DesignFolder, part: str, *changes: tuple[str, str]) -> DesignFolder:
    return workshop.write(train(part, *changes), settings=WITH_METALS)


@pytest.mark.parametrize(("last", "outcome"), [("542.0 mm", "conforms"), ("542.2 mm", "finding")])
def test_a_crank_pin_bears_the_piston_of_the_last_bore(
    workshop: DesignFolder, last: str, outcome: str
) -> None:
    """21.2713 of 25 MPa·m/s at 500 mm: √(25/21.2713) × 500 = 542.05 mm."""
    made = train("crank-pin")
    made["liner.toml"] = made["liner.toml"].replace('last_bore = "500.0 mm"', f'last_bore = "{last}"')
    check = workshop.write(made, settings=WITH_METALS).only(RULE, "crank-pin")
    assert check.outcome == outcome


def test_a_crank_pin_bears_the_piston_of_the_new_bore_where_no_last_is_stated(workshop: DesignFolder) -> None:
    """208 768 N on 500 mm."""
    made = train("crank-pin")
    made["liner.toml"] = made["liner.toml"].replace('last_bore = "500.0 mm"\n', "")
    check = workshop.write(made, settings=WITH_METALS).only(RULE, "crank-pin")
    assert on_sheet(check, "F_m") == pytest.approx(208768, rel=1e-5)


@pytest.mark.parametrize(("length", "outcome"), [("157.5 mm", "conforms"), ("157.3 mm", "finding")])
def test_a_crank_pin_by_hand(workshop: DesignFolder, length: str, outcome: str) -> None:
    """185 mm: 208 768/(165 × 185) = 6.8393 MPa, π × 0.165 × 6 = 3.11018 m/s: 21.271 of 25 MPa·m/s; 157.41 mm for 25."""
    check = write(workshop, "crank-pin").only(RULE, "crank-pin")
    assert on_sheet(check, "F_m") == pytest.approx(208_768, rel=1e-5)
    assert on_sheet(check, "pv") == pytest.approx(21.2713e6, rel=1e-5)
    assert check.utilisation == pytest.approx(21.2713 / 25, rel=1e-5)
    check = write(workshop, "crank-pin", ('"185 mm"', f'"{length}"')).only(RULE, "crank-pin")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("length", "outcome"), [("67.4 mm", "conforms"), ("67.2 mm", "finding")])
def test_a_crosshead_pin_by_hand(workshop: DesignFolder, length: str, outcome: str) -> None:
    """110 mm: 18.9789 MPa; arcsin(330/1900) = 0.174570: 2 × 0.1 × 6 × 0.174570 = 0.209483 m/s: 3.97576 of 6.5."""
    check = write(workshop, "pin").only(RULE, "pin")
    assert on_sheet(check, "pv") == pytest.approx(3.97576e6, rel=1e-5)
    check = write(workshop, "pin", ('"110 mm"', f'"{length}"')).only(RULE, "pin")
    assert check.outcome == outcome


@pytest.mark.parametrize(("share", "outcome"), [("0.601", "conforms"), ("0.600", "finding")])
def test_a_slipper_by_hand(workshop: DesignFolder, share: str, outcome: str) -> None:
    """λ = 0.173684: π/4 λ × 1.0115256 = 0.137983; 28 806.6 N over 0.076 m²: 0.379034 MPa at 7.92 m/s: 3.00195 of 5.

    The bar is 200 mm wide: no more of the slipper's 240 mm bears on it.
    """
    less = WITH_METALS + f'[limits."{RULE}"]\nshare = "{share}"\n'
    check = workshop.write(train("crosshead"), settings=less).only(RULE, "crosshead")
    assert on_sheet(check, "p") == pytest.approx(379_034, rel=1e-5)
    assert on_sheet(check, "pv") == pytest.approx(3.00195e6, rel=1e-5)
    assert check.outcome == outcome


@pytest.mark.parametrize(("own", "outcome"), [("0.451 MPa", "conforms"), ("0.453 MPa", "finding")])
def test_a_ring_by_hand(workshop: DesignFolder, own: str, outcome: str) -> None:
    """0.05 + 1.063249 MPa at 7.92 m/s: 8.81693 of 12 MPa·m/s; 12/7.92 − 1.063249 = 0.451903 MPa of its own for 12."""
    check = write(workshop, "ring").only(RULE, "ring")
    assert on_sheet(check, "pv") == pytest.approx(8.81693e6, rel=1e-5)
    assert write(workshop, "ring", ('"0.05 MPa"', f'"{own}"')).only(RULE, "ring").outcome == outcome


@pytest.mark.parametrize("stated", ["", 'wall_pressure = "0.01 MPa"\n'])
def test_a_ring_presses_as_its_free_gap_lets_it_whatever_it_states(
    workshop: DesignFolder, stated: str
) -> None:
    """120 GPa at most: 4 × 120e3 × 16³ × (40 − 4)/(9 π × 500 × 484³) = 0.0441573 MPa; (… + 1.063249) × 7.92."""
    free = ('wall_pressure = "0.05 MPa"\n', f'free_gap = "40 mm"\n{stated}')
    check = write(workshop, "ring", free).only(RULE, "ring")
    assert on_sheet(check, "p_f") == pytest.approx(44157.3, rel=1e-5)
    assert on_sheet(check, "pv") == pytest.approx((0.0441573 + 1.063249) * 7.92e6, rel=1e-4)


SPINDLE = """
kind = "valve-spindle"
id = "spindle"
material = "stainless-1.4057"
surface = "nitrided"
duty = "duty"
moves = "valve"
diameter = "22 mm"
guide_length = "100 mm"
guide_material = "grey-iron-250"
side_load = "200 N"
[lubrication]
lubricant = "cylinder oil"
"""
ROCKER = """
kind = "rocker"
id = "rocker"
material = "forging-42CrMo4"
duty = "duty"
works = "spindle"
valve_arm = "80 mm"
pin = "40 mm"
bush_pressure = "15 MPa"
bush_material = "bronze-CC483K"
pin_material = "case-hardening-16MnCr5"
pin_surface = "case hardened"
[lubrication]
lubricant = "grease"
"""
GEAR = {
    "duty.toml": PARTS["duty"],
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\nlift = "20 mm"\n',
    "spindle.toml": SPINDLE,
    "rocker.toml": ROCKER,
}


@pytest.mark.parametrize(("load", "outcome"), [("9160 N", "conforms"), ("9170 N", "finding")])
def test_a_spindle_by_hand(workshop: DesignFolder, load: str, outcome: str) -> None:
    """200 N: 200/(22 × 100) = 0.090909 MPa at 2 × 0.020 × 6 = 0.24 m/s: 0.0218182 of 1 MPa·m/s; 9166.7 N for 1."""
    check = workshop.write(GEAR).only(RULE, "spindle")
    assert on_sheet(check, "pv") == pytest.approx(21_818.2, rel=1e-5)
    assert workshop.replace("spindle.toml", "200 N", load).only(RULE, "spindle").outcome == outcome


@pytest.mark.parametrize(("pressure", "outcome"), [("29.1 MPa", "conforms"), ("29.2 MPa", "finding")])
def test_a_greased_rocker_by_hand(workshop: DesignFolder, pressure: str, outcome: str) -> None:
    """20 × 40/80 mm six times a second: 0.06 m/s; 15 MPa: 0.9 of 1.75 MPa·m/s; 29.17 MPa for 1.75."""
    check = workshop.write(GEAR).only(RULE, "rocker")
    assert on_sheet(check, "pv") == pytest.approx(0.9e6)
    assert workshop.replace("rocker.toml", "15 MPa", pressure).only(RULE, "rocker").outcome == outcome


def test_oil_carries_more_than_grease(workshop: DesignFolder) -> None:
    workshop.write(GEAR).replace("rocker.toml", "15 MPa", "29.2 MPa").replace(
        "rocker.toml", '"grease"', '"engine oil"'
    )
    assert workshop.only(RULE, "rocker").outcome == "conforms"


@pytest.mark.parametrize(
    ("part", "old", "new"),
    [
        ("crosshead", "white-metal-tin", "brass-CW614N"),
        ("pin", "bronze-CC480K", "grey-iron-250"),
        ("crank-pin", '"engine oil"', '"none"'),
        ("ring", "known-iron", "copper-CW024A"),
    ],
)
def test_a_pair_that_is_not_in_the_table_is_a_query_and_no_pass(
    workshop: DesignFolder, part: str, old: str, new: str
) -> None:
    check = write(workshop, part, (old, new)).only(RULE, part)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "no source held here gives" in check.says


def test_a_ring_straight_on_a_steel_bore_is_a_query(workshop: DesignFolder) -> None:
    bare = write(workshop, "ring", ('runs_in = "liner"', 'bears_on = "block"\nmade_for = ["500 mm"]'))
    bare.replace("block.toml", 'duty = "duty"', 'duty = "duty"\nlubrication = { lubricant = "cylinder oil" }')
    assert bare.only(RULE, "ring").grade is Grade.QUERY


def test_a_ring_on_a_plated_bore_of_the_block(workshop: DesignFolder) -> None:
    """As in the liner, 8.81693, of 15 MPa·m/s."""
    bare = write(workshop, "ring", ('runs_in = "liner"', 'bears_on = "block"\nmade_for = ["500 mm"]'))
    plated = 'duty = "duty"\nsurface = "hard chromium plated"\nlubrication = { lubricant = "cylinder oil" }'
    check = bare.replace("block.toml", 'duty = "duty"', plated).only(RULE, "ring")
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(8.81693 / 15, rel=1e-5))


@pytest.mark.parametrize(
    ("part", "line"),
    [
        ("crosshead", 'slipper_material = "white-metal-tin"'),
        ("crosshead", 'slipper_width = "240 mm"'),
        ("crosshead", 'lubricant = "engine oil"'),
        ("pin", 'bearing_material = "bronze-CC480K"'),
        ("pin", 'length = "110 mm"'),
        ("pin", 'place = "crosshead pin"'),
        ("ring", 'wall_pressure = "0.05 MPa"'),
        ("ring", 'runs_in = "liner"'),
    ],
)
def test_not_assessed_without(workshop: DesignFolder, part: str, line: str) -> None:
    assert write(workshop, part, (line, "")).only(RULE, part).outcome == "not assessed"


def test_the_part_that_rubs_is_asked_for_its_oil(workshop: DesignFolder) -> None:
    """Where neither part states any: the slipper's, not that of the bar on which it slides."""
    check = write(workshop, "crosshead", ('lubricant = "engine oil"', "")).only(RULE, "crosshead")
    assert "lubricant" in check.says
    assert "crosshead.toml" in check.says


def test_a_part_that_states_no_oil_runs_in_that_of_the_other(workshop: DesignFolder) -> None:
    """The bar alone states the engine oil: 3.00195 of 5 MPa·m/s, as of the slipper by hand."""
    found = train("crosshead", ('lubricant = "engine oil"', ""))
    found["bar.toml"] += OILED
    check = workshop.write(found, settings=WITH_METALS).only(RULE, "crosshead")
    assert on_sheet(check, "pv") == pytest.approx(3.00195e6, rel=1e-5)
    assert (check.outcome, check.unstated) == ("conforms", ())


def test_a_crosshead_that_no_bar_guides_is_not_assessed(workshop: DesignFolder) -> None:
    found = train("crosshead")
    del found["bar.toml"]
    assert workshop.write(found, settings=WITH_METALS).only(RULE, "crosshead").outcome == "not assessed"


@pytest.mark.parametrize(
    "line", ['side_load = "200 N"', 'guide_material = "grey-iron-250"', 'moves = "valve"']
)
def test_a_spindle_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert (
        workshop.write(GEAR).replace("spindle.toml", line, "").only(RULE, "spindle").outcome == "not assessed"
    )


@pytest.mark.parametrize(
    "line", ['bush_material = "bronze-CC483K"', 'pin_material = "case-hardening-16MnCr5"']
)
def test_a_rocker_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert (
        workshop.write(GEAR).replace("rocker.toml", line, "").only(RULE, "rocker").outcome == "not assessed"
    )


def test_without_a_cut_off_full_pressure_is_taken_to_the_end(workshop: DesignFolder) -> None:
    """17.61325 − 1.01325 = 16.6 bar."""
    found = train("crank-pin")
    found["duty.toml"] = found["duty.toml"].replace('cut_off = "0.3"\n', "")
    check = workshop.write(found, settings=WITH_METALS).only(RULE, "crank-pin")
    assert on_sheet(check, "p_m") == pytest.approx(1.66e6)


#: Shigley, Table 12-8 (from memory): cast bronze 50 000 psi·ft/min, reinforced PTFE 10 000.
PUBLISHED = {"bronze": 50_000 * 6894.757 * 0.3048 / 60, "polymer": 10_000 * 6894.757 * 0.3048 / 60}
COMMON = {
    ("slides", "grey iron", "grey iron", "cylinder oil"): 12,
    ("slides", "grey iron", "ductile iron", "cylinder oil"): 12,
    ("slides", "grey iron", "chilled iron", "cylinder oil"): 12,
    ("slides", "grey iron", "chromium plate", "cylinder oil"): 15,
    ("slides", "grey iron", "bronze", "cylinder oil"): 6,
    ("slides", "grey iron", "hardened steel", "cylinder oil"): 1,
    ("slides", "grey iron", "martensitic stainless steel", "cylinder oil"): 0.7,
    ("slides", "bronze", "hardened steel", "cylinder oil"): 1.5,
    ("slides", "bronze", "unhardened steel", "cylinder oil"): 1,
    ("slides", "bronze", "martensitic stainless steel", "cylinder oil"): 1,
    ("slides", "white metal", "unhardened steel", "engine oil"): 5,
    ("slides", "white metal", "hardened steel", "engine oil"): 5,
    ("slides", "bronze", "unhardened steel", "engine oil"): 4,
    ("slides", "bronze", "hardened steel", "engine oil"): 4,
    ("turns", "bronze", "unhardened steel", "engine oil"): 25,
    ("turns", "bronze", "hardened steel", "engine oil"): 25,
    ("turns", "white metal", "unhardened steel", "engine oil"): 30,
    ("turns", "white metal", "hardened steel", "engine oil"): 30,
    ("swings", "bronze", "unhardened steel", "engine oil"): 6.5,
    ("swings", "bronze", "hardened steel", "engine oil"): 6.5,
}
TABLE = rows("pressure-velocity-handbooks-and-common-practice.csv")


@pytest.mark.parametrize(
    "row", TABLE, ids=lambda row: " ".join((row["contact"], row["one"], row["other"], row["oil"]))
)
def test_every_row_is_of_classes_that_exist_and_reads_as_its_source_has_it(row: dict[str, str]) -> None:
    key = row["contact"], row["one"], row["other"], row["oil"]
    assert row["contact"] in ("slides", "turns", "swings")
    assert {row["one"], row["other"]} <= CLASSES
    assert row["oil"] in ("none", "cylinder oil", "engine oil", "grease")
    assert len(row["reason"]) > 10
    found = pressure_velocity(*key)
    assert found.source == WORKS[row["source"]]
    if row["source"] == "Shigley":
        assert found.nominal == pytest.approx(PUBLISHED[row["one"]], rel=2e-3)
    else:
        assert found.nominal == COMMON[key] * 1e6


def test_no_pair_stands_twice_and_none_of_common_practice_is_missing() -> None:
    keys = [(row["contact"], frozenset((row["one"], row["other"])), row["oil"]) for row in TABLE]
    assert len(keys) == len(set(keys))
    assert set(COMMON) == {
        (row["contact"], row["one"], row["other"], row["oil"])
        for row in TABLE
        if row["source"] == "common practice"
    }


@given(st.sampled_from(sorted(CLASSES)), st.sampled_from(sorted(CLASSES)))
def test_the_order_of_two_surfaces_does_not_matter(one: str, other: str) -> None:
    for contact, oil in (("slides", "cylinder oil"), ("turns", "engine oil"), ("swings", "grease")):
        assert rated(contact, one, other, oil) == rated(contact, other, one, oil)


@given(F=st.floats(1e3, 1e6), l=st.floats(1.0, 3.0), share=st.floats(0.05, 1 / 3))
def test_the_mean_side_thrust_is_the_integral_along_the_bar(F: float, l: float, share: float) -> None:  # noqa: E741
    """(λ/2) ∫ sin²θ/√(1 − λ² sin²θ) dθ from 0 to π, by the midpoint rule."""
    steps = 400
    total = 0.0
    for index in range(steps):
        sine = math.sin(math.pi * (index + 0.5) / steps)
        total += share / 2 * sine**2 / math.sqrt(1 - share**2 * sine**2) * math.pi / steps
    assert work.mean_side_thrust(F, share * l, l) == pytest.approx(F * total, rel=3e-4)


@given(c=st.floats(0.05, 1.0), p=st.floats(5e5, 2e6), more=st.floats(1.001, 1.5))
def test_more_steam_does_more_work(c: float, p: float, more: float) -> None:
    least = work.mean_effective_pressure(p, 0.0, c)
    assert work.mean_effective_pressure(more * p, 0.0, c) == pytest.approx(more * least)
    assert work.mean_effective_pressure(p, 0.0, min(1.0, more * c)) >= least * (1 - 1e-12)
    assert least <= p * (1 + 1e-12)


@given(p=st.floats(1e4, 1e8), v=st.floats(0.01, 20.0), k=st.floats(0.1, 10.0))
def test_pressure_and_speed_weigh_alike(p: float, v: float, k: float) -> None:
    assert work.pressure_times_speed(k * p, v) == pytest.approx(work.pressure_times_speed(p, k * v))
