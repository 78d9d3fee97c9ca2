"""The welds of a bracket: their group and their fatigue by hand, and what they are said to be."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet
from speclint_joints.formulae.brackets import strength_of_weld
from speclint_joints.formulae.weld_groups import (
    modulus_across,
    second_moment_across,
    spread_of_lines,
    twist_of_group,
)
from tests.plugins.joints import brackets
from tests.plugins.joints.brackets import WELDS, built


def _welded(workshop: DesignFolder, *changes: tuple[str, str]) -> DesignFolder:
    return built(workshop, *changes, part="bracket")


def test_welds_by_hand(workshop: DesignFolder) -> None:
    """Full penetration 40 × 400: 16.2 MPa, range 32.4 as it reverses, of 0.405 × 112/1.35 = 33.6."""
    check = _welded(workshop).only(WELDS)
    assert check.outcome == "conforms"
    assert on_sheet(check, "σ") / 1e6 == pytest.approx(16.2, rel=5e-3)
    worse = _welded(workshop, ('"112 MPa"', '"107 MPa"')).only(WELDS)
    assert (worse.outcome, worse.grade) == ("finding", Grade.HOLD)


def test_two_fillets_are_strong_and_crack(workshop: DesignFolder) -> None:
    """a 8 × 300: 71.9, together 103.8 MPa of 400/(0.85 × 1.25); range 143.8 of 10.8."""
    check = _welded(workshop, *brackets.FILLETS).only(WELDS)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert on_sheet(check, "σ") / 1e6 == pytest.approx(71.9, rel=1e-3)
    assert on_sheet(check, "σ_v") / 1e6 == pytest.approx(103.8, rel=1e-3)
    assert on_sheet(check, "S_R") / 1e6 == pytest.approx(10.8, rel=1e-3)


@pytest.mark.parametrize(
    ("force", "outcome"), [("5.9 kN", "conforms"), ("6.0 kN", "finding"), ("40 kN", "finding")]
)
def test_a_push_from_the_side(workshop: DesignFolder, force: str, outcome: str) -> None:
    """At 300 mm on 400 × 40²/6 = 106 667 mm³: 5.97 kN make 16.8 MPa, a range of 33.6; 40 kN passed before."""
    workshop.write(brackets.pushed(force), settings=brackets.settings())
    check = workshop.only(WELDS)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    wanted = float(force[:-3]) * 1e3 * 0.3 / 106667e-9
    assert on_sheet(check, "σ′") == pytest.approx(wanted, rel=1e-4)


@pytest.mark.parametrize(("place", "outcome"), [("1.3 m", "conforms"), ("1.4 m", "finding")])
def test_a_push_that_twists_one_plate(workshop: DesignFolder, place: str, outcome: str) -> None:
    """40 × 400: 5.007 MPa for a kN·m, and 2420/16000 = 0.15; 15.90 MPa at 1.3 m, 17.11 at 1.4.

    Allowed are 0.457 × 100/1.35/2 = 16.93; the bending of 2.42 kN at 5 mm is 0.1 MPa.
    """
    workshop.write(brackets.pushed("2.42 kN", y=place, z="5 mm"), settings=brackets.settings())
    check = workshop.only(WELDS)
    assert check.outcome == outcome, check.says
    assert on_sheet(check, "τ_T") / 1e6 == pytest.approx(5.007 * 2.42 * float(place[:3]), rel=1e-3)


def test_two_fillets_pushed_from_the_side_by_hand(workshop: DesignFolder) -> None:
    """2 kN at 0.5 m out and 0.5 m aside: 1 kN·m on 99 657 mm³ 10.03 MPa, twist 3.934, 2000/4800 0.417: 4.351 across.

    √(2 × 10.034² + 2 × 10.034 × 4.351 + 3 × 4.351²) = 18.59 MPa; (10.034 + 4.351)/√2 = 10.17; root
    √(10.034² + 4.351²) = 10.94 MPa, twice of 10.8.
    """
    made = brackets.pushed("2 kN", *brackets.FILLETS, y="500 mm", z="500 mm")
    check = workshop.write(made, settings=brackets.settings()).only(WELDS)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    for symbol, wanted in (("σ′", 10.034), ("τ_T", 3.934), ("τ_t", 4.351), ("σ_v", 18.59), ("σ_s", 10.17)):
        assert on_sheet(check, symbol) / 1e6 == pytest.approx(wanted, rel=1e-3), symbol
    assert on_sheet(check, "σ_f") / 1e6 == pytest.approx(10.94, rel=1e-3)


@pytest.mark.parametrize(
    ("old", "new", "outcome", "says"),
    [
        ('apart = "48 mm"\n', "", "not assessed", "welds.root.apart is not stated"),
        ("count = 2", "count = 1", "finding", "weld root is one fillet, which is not to be bent"),
    ],
)
def test_fillets_that_nobody_can_work_are_a_hold(
    workshop: DesignFolder, old: str, new: str, outcome: str, says: str
) -> None:
    """Without their distance two fillets have no modulus across them; one fillet opens at its root.

    However little pushes it: 1 N at 300 mm bends 300 × 8²/6 = 3200 mm³ with 0.09 MPa.
    """
    made = brackets.pushed("1 N", *brackets.FILLETS)
    made["bracket.toml"] = changed(made["bracket.toml"], (old, new))
    check = workshop.write(made, settings=brackets.settings()).only(WELDS)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD), check.says
    assert says in check.says


@given(n=st.integers(2, 6), b=st.floats(0.02, 0.5), more=st.floats(1.01, 3), T=st.floats(1, 1e4))
def test_welds_farther_apart_bear_more(n: int, b: float, more: float, T: float) -> None:
    near, far = (second_moment_across(n, 0.008, 0.3, spread_of_lines(n, one)) for one in (b, b * more))
    assert modulus_across(far, b * more, 0.008) > modulus_across(near, b, 0.008)
    assert twist_of_group(T, far, n, 0.008, 0.3, b * more) < twist_of_group(T, near, n, 0.008, 0.3, b)


@pytest.mark.parametrize("stands", ["upright", "below"])
@pytest.mark.parametrize(("axis", "symbol"), [("x", "S"), ("y", "S"), ("z", "P")])
def test_a_bracket_bears_a_push_along_each_axis(
    workshop: DesignFolder, stands: str, axis: str, symbol: str
) -> None:
    """2 kN, whichever way it stands: what it carries is no slide bar, whose thrust is worked."""
    made = brackets.pushed("2 kN", ('stands = "upright"', f'stands = "{stands}"'))
    made["bracket.toml"] = made["bracket.toml"].replace("force.x", f"force.{axis}")
    check = workshop.write(made, settings=brackets.settings()).only(WELDS)
    assert on_sheet(check, symbol) == pytest.approx(2000)
    other = {"S": "P", "P": "S"}[symbol]
    assert on_sheet(check, other) == 0


def test_a_warm_bracket_is_as_strong_as_its_proof_stress_says(workshop: DesignFolder) -> None:
    """A tensile strength known cold alone: 400 MPa × 200/240 at 220 °C = 333.3 MPa."""
    made = brackets.files()
    made["duty.toml"] = made["duty.toml"].replace('bracket = "20 °C"', 'bracket = "220 °C"')
    cold = 'tensile-strength = { degC = [20, 50], value = 400, unit = "MPa", tolerance = 0, '
    whole = "tensile-strength = { degC = [20, 420], value = [400, 400]"
    at, _, rest = made["metals.toml"].partition(whole)
    made["metals.toml"] = at + cold + rest[rest.index("source") :]
    check = workshop.write(made, settings=brackets.settings()).only(WELDS)
    assert check.outcome == "conforms", check.says
    assert on_sheet(check, "f_u") / 1e6 == pytest.approx(400 * 200 / 240)


def test_one_fillet_in_line_with_its_load_is_judged(workshop: DesignFolder) -> None:
    """57.5 kN along it bend 8 × 300 mm, 120 000 mm³, with 143.7 MPa: nothing bends or twists it across."""
    check = _welded(workshop, *brackets.FILLETS[:-2], ('"112 MPa"', '"36 MPa"')).only(WELDS)
    assert "one fillet" not in check.says
    assert on_sheet(check, "σ") / 1e6 == pytest.approx(143.7, rel=1e-3)


@pytest.mark.parametrize(
    ("weld", "old", "most"),
    [
        (brackets.FILLETS, 'detail_category = "36 MPa"', 36),
        ((), 'detail_category = "112 MPa"', 112),
        ((), 'shear_category = "100 MPa"', 100),
    ],
)
@pytest.mark.parametrize(("more", "outcome"), [(0.0, "conforms"), (0.5, "finding")])
def test_no_weld_is_of_a_better_category_than_such_welds_are(
    workshop: DesignFolder,
    weld: tuple[tuple[str, str], ...],
    old: str,
    most: int,
    more: float,
    outcome: str,
) -> None:
    made = brackets.pushed("10 N", *weld)
    key = old.partition(" = ")[0]
    made["bracket.toml"] = changed(made["bracket.toml"], (old, f'{key} = "{most + more} MPa"'))
    check = workshop.write(made, settings=brackets.settings()).only(WELDS)
    assert check.outcome == outcome, check.says
    assert outcome == "conforms" or f"> {most} MPa" in check.says


def test_a_penetrated_weld_bears_as_the_plate_does(workshop: DesignFolder) -> None:
    """√(16.17² + 3 × 3.593²) = 17.32 MPa, where the throat of a fillet would have √2 times the bending."""
    check = _welded(workshop).only(WELDS)
    assert on_sheet(check, "σ_v") / 1e6 == pytest.approx(math.hypot(16.17, 3**0.5 * 3.593), rel=2e-3)


def test_the_strength_of_a_weld_by_its_steel() -> None:
    """EN 1993-1-8: β 0.8, 0.85, 0.9 and 1 for S235, S275, S355 and stronger, each to its tensile strength."""
    for f_u, β in ((360, 0.8), (361, 0.85), (430, 0.85), (431, 0.9), (510, 0.9), (511, 1.0)):
        assert strength_of_weld(f_u=f_u * 1e6) / 1e6 == pytest.approx(f_u / (β * 1.25))


def test_a_root_of_which_no_depth_is_stated_is_not_measured(workshop: DesignFolder) -> None:
    """With a depth of 300 mm, a weld of 400 mm does not lie on it."""
    assert _welded(workshop, ('depth = "500 mm"\n', "")).only(WELDS).outcome == "conforms"
    check = _welded(workshop, ('depth = "500 mm"', 'depth = "399 mm"')).only(WELDS)
    assert check.outcome == "finding"
