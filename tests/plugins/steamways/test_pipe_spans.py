"""pipe.span: a pipe between what carries it."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import SETTINGS, DesignFolder, on_sheet
from speclint_steamways.formulae.pipe_spans import (
    jolted_load,
    moment_beside_sliding_joint,
    moment_of_span,
    sag_of_free_end,
    sag_of_span,
    span_between,
    stress_factor_of_bend,
    sustained_stress,
    weight_full_of_water,
)
from tests.own_limits import own_limit
from tests.plugins.steamways.pipe import files
from tests.ranges import End, expect_end

SPAN = "pipe.span"
STRAIGHT = ("bends = 2", "bends = 0")
BRACKET = """
kind = "bracket"
id = "{id}"
[carries.pipe]
of = "pipe"
"""


def _long(length: str, *changes: tuple[str, str]) -> dict[str, str]:
    return files(('length = "7 m"', f'length = "{length}"'), *changes)


def test_weight_and_pressure_by_hand(workshop: DesignFolder) -> None:
    """By hand, mm and N, at 7900 kg/m³, the greatest density of the metal.

    Wall 5.6 − 1 = 4.6, bore of that 159.1: I = π/64 (168.3⁴ − 159.1⁴) = 7 930 609, Z = I/84.15 = 94 243.7.
    As ordered: bore 157.1, area 2862.41, 22.613 kg/m; water 19.384 kg/m; w = 41.997 × 9.80665 = 411.85 N/m.
    4 m: M = 0.41185 × 4000²/10 = 658 954. Bend: h = 4 × 4.6 × 300/163.7² = 0.205988, i = 0.9/h^(2/3) = 2.58037.
    S = 1.66 × 168.3/(4 × 4.6) + 0.75 × 2.58037 × 658 954/94 243.7 = 15.1836 + 13.5315 = 28.7151 MPa; jolted, with three
    times the moment, 15.1836 + 40.5945 = 55.7781. y E = 17.1 × 0.41185 × 4000⁴/(1728 × 7 930 609) = 131 559 N/mm.
    """
    check = workshop.write(_long("4 m")).only(SPAN)
    assert check.outcome == "conforms"
    assert on_sheet(check, "w") == pytest.approx(411.85, rel=1e-5)
    assert on_sheet(check, "i") == pytest.approx(2.58037, rel=1e-5)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(28.7151, rel=1e-5)
    assert on_sheet(check, "S_j") / 1e6 == pytest.approx(55.7781, rel=1e-5)
    assert on_sheet(check, "f_j") / 1e6 == pytest.approx(124.8)  # f = 104 MPa at 400 °C: see the bench
    assert on_sheet(check, "y") * on_sheet(check, "E") == pytest.approx(131_559e3, rel=1e-5)


def _own(**limits: str) -> str:
    return SETTINGS + own_limit(SPAN, "steamways", **limits)


def test_the_span_of_a_jolted_pipe_from_both_sides(workshop: DesignFolder) -> None:
    """124.8 = 15.1836 + 1.93527 × 3 M/94 243.7: M = 1 779 333 N·mm, and L = √(10 M/0.41185) = 6573 mm."""
    own = _own(sag="20 mm")
    assert workshop.write(_long("6.55 m"), settings=own).only(SPAN).outcome == "conforms"
    failing = workshop.write(_long("6.6 m"), settings=own).only(SPAN)
    assert (failing.outcome, failing.grade) == ("finding", Grade.NONCONFORMITY)
    assert failing.actual.startswith("jolts stress the pipe to 125.7 MPa between what carries it")


def test_the_span_of_a_pipe_at_rest_from_both_sides(workshop: DesignFolder) -> None:
    """104 = 15.1836 + 1.93527 M/94 243.7: M = 4 325 161 N·mm, and L = √(10 M/0.41185) = 10.248 m."""
    own = _own(sag="100 mm", occasional="5")
    assert workshop.write(_long("10.2 m"), settings=own).only(SPAN).outcome == "conforms"
    failing = workshop.write(_long("10.3 m"), settings=own).only(SPAN)
    assert failing.actual.startswith("its weight and its pressure stress the pipe to 104.9 MPa")


@pytest.mark.parametrize("bends", [STRAIGHT, ("bends = 2", "bends = 1")])
def test_the_sag_from_both_sides(workshop: DesignFolder, bends: tuple[str, str]) -> None:
    """2.5 mm it sags at l⁴ = 2.5 × 1728 E I/(17.1 w), some 5.3 m."""
    E = on_sheet(workshop.write(_long("4 m", bends)).only(SPAN), "E") / 1e6
    most = (2.5 * 1728 * E * 7_930_609 / (17.1 * 0.41185)) ** 0.25
    shorter, longer = f"{0.998 * most:.1f} mm", f"{1.005 * most:.1f} mm"
    assert workshop.write(_long(shorter, bends)).only(SPAN).outcome == "conforms"
    failing = workshop.write(_long(longer, bends)).only(SPAN)
    assert failing.outcome == "finding"
    assert failing.actual.startswith("pipe sags by 2.55 mm")


def test_a_bracket_halves_the_span(workshop: DesignFolder) -> None:
    """7 m: 15.1836 + 41.4402 = 56.6238 MPa; with one bracket a quarter of the moment, 15.1836 + 10.3600 = 25.5436."""
    assert workshop.write(files()).only(SPAN).outcome == "finding"
    carried = {**files(), "bracket.toml": BRACKET.format(id="bracket")}
    check = workshop.write(carried).only(SPAN)
    assert check.outcome == "conforms"
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(25.5436, rel=1e-4)


@pytest.mark.parametrize(("share", "stress"), [("0.25", 25.5436), ("0.24", 56.6238), ("1", 25.5436)])
def test_a_bracket_that_bears_little_is_no_support(workshop: DesignFolder, share: str, stress: float) -> None:
    """Of one bracket a half is an even share: with less than half of that it is as if there were none."""
    said = BRACKET.format(id="bracket") + f'share = "{share}"\n'
    check = workshop.write({**files(), "bracket.toml": said}).only(SPAN)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(stress, rel=1e-4)


@pytest.mark.parametrize(("mass", "stress"), [("39.6 kg", 25.5436), ("39.5 kg", 56.6238)])
def test_a_bracket_said_to_bear_a_small_mass_is_no_support(
    workshop: DesignFolder, mass: str, stress: float
) -> None:
    """7 m of 22.613 kg are 158.29 kg: half of an even share is 39.57 kg."""
    said = BRACKET.format(id="bracket") + f'mass = "{mass}"\n'
    check = workshop.write({**files(), "bracket.toml": said}).only(SPAN)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(stress, rel=1e-4)


def test_a_small_share_of_a_great_mass_is_no_support(workshop: DesignFolder) -> None:
    """A fifth of 158 kg is 31.7 kg, of a pipe of 158 kg less than a quarter."""
    said = BRACKET.format(id="bracket") + 'mass = "158 kg"\nshare = "0.2"\n'
    check = workshop.write({**files(), "bracket.toml": said}).only(SPAN)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(56.6238, rel=1e-4)


@pytest.mark.parametrize(("share", "stress"), [("0.25", 25.5436), ("0.24", 56.6238)])
@pytest.mark.parametrize("beside", ['[carries.other]\nof = "other"\n', '[carries.nameless]\nshare = "1"\n'])
def test_what_a_bracket_carries_beside_the_pipe_does_not_count(
    workshop: DesignFolder, beside: str, share: str, stress: float
) -> None:
    said = f'{BRACKET.format(id="bracket")}share = "{share}"\n{beside}'
    other = 'kind = "steam-pipe"\nid = "other"\n'
    check = workshop.write({**files(), "bracket.toml": said, "other.toml": other}).only(SPAN, "pipe")
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(stress, rel=1e-4)


@pytest.mark.parametrize(
    ("taken_up", "stress"),
    [("lens joints", 28.7151), ("sliding joint", 33.7220), ("bellows", 82.842)],
)
def test_a_joint_that_bends_freely_stresses_the_rest(
    workshop: DesignFolder, taken_up: str, stress: float
) -> None:
    """4 m: 0.137 × 0.41185 × 4000² = 902 775 N·mm: 15.1836 + 1.93528 × 9.5791; beside bellows it hangs by
    half of 0.41185 × 4000², 3 294 800: 15.1836 + 1.93528 × 34.9604.
    """
    there = ('takes_up_by = "bends"', f'takes_up_by = "{taken_up}"')
    check = workshop.write(_long("4 m", there), settings=_own(sag="1 m", occasional="3")).only(SPAN)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(stress, rel=1e-4)
    y = 0.41185 * 4000**4 / 8 if taken_up == "bellows" else 131_559 * 7_930_609
    assert on_sheet(check, "y") * on_sheet(check, "E") == pytest.approx(y / 7_930_609 * 1e3, rel=1e-4)


def test_where_growth_is_taken_up_is_asked(workshop: DesignFolder) -> None:
    check = workshop.write(_long("4 m", ('takes_up_by = "bends"\n', ""))).only(SPAN)
    assert check.outcome == "not assessed"


@pytest.mark.parametrize("a", [0.3, 0.38, 0.40, 0.42, 0.44, 0.5])
def test_no_place_of_a_free_joint_does_more_harm(a: float) -> None:
    """Of a span of 1 m and 1 N/m, by the two cantilevers that meet there."""
    b = 1 - a
    V = (b**4 - a**4) / 8 / ((a**3 + b**3) / 3)
    worst = max(a**2 / 2 + V * a, b**2 / 2 - V * b)
    assert worst <= moment_beside_sliding_joint(w=1.0, l=1.0)
    assert a != 0.42 or worst == pytest.approx(0.1362, rel=1e-3)


def test_a_straight_pipe_is_stressed_by_the_plain_moment(workshop: DesignFolder) -> None:
    """15.1836 + 658 954/94 243.7 = 22.1756 MPa at 4 m."""
    check = workshop.write(_long("4 m", STRAIGHT)).only(SPAN)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(22.1756, rel=1e-5)


@pytest.mark.parametrize(("limit", "value"), [("jolts", "8"), ("occasional", "0.5"), ("sag", "0.7 mm")])
def test_a_works_may_set_its_own_limits(workshop: DesignFolder, limit: str, value: str) -> None:
    """At 4 m: by 9 times its weight 137 MPa of 124.8; 55.8 of 52; a sag of 0.8 mm of 0.7."""
    assert workshop.write(_long("4 m"), settings=_own(**{limit: value})).only(SPAN).outcome == "finding"


@pytest.mark.parametrize("key", ["length", "outside_diameter", "wall", "material"])
def test_what_the_weight_is_worked_from_is_asked(workshop: DesignFolder, key: str) -> None:
    line = next(one for one in files()["pipe.toml"].splitlines() if one.startswith(f"{key} ="))
    check = workshop.write(files((line, ""))).only(SPAN)
    assert check.outcome == "not assessed"
    assert key in check.says


_BEND = {"t": 0.0499, "R": 0.0501, "D": 0.1}
_SAG = {"w": 400.0, "l": 4.0, "E": 1e-6, "I": 1e-6}
_STIFF = "modulus and second moment must be above 0"
_STRESS = {"p": 1e6, "D": 0.1, "t": 1e-6, "i": 1.0, "M": 1.0, "Z": 1e-6}
_WALL = "wall and section modulus must be above 0"


@pytest.mark.parametrize(
    "end",
    [
        End(span_between, {"L": 1.0, "n": 0.0}, {"n": -0.01}, "there are no fewer brackets than none"),
        End(weight_full_of_water, {"M": 1.0, "L": 1e-6, "d": 0.1}, {"L": 0.0}, "the length must be above 0"),
        End(
            stress_factor_of_bend,
            {**_BEND, "t": 1e-6},
            {"t": 0.0},
            "wall 0 mm is not between 0 and half of 100 mm",
        ),
        End(stress_factor_of_bend, _BEND, {"t": 0.05}, "wall 50 mm is not between 0 and half of 100 mm"),
        End(stress_factor_of_bend, _BEND, {"R": 0.05}, "a bend of 50 mm closes on a pipe of 100 mm"),
        *(End(sag, _SAG, {one: 0.0}, _STIFF) for sag in (sag_of_span, sag_of_free_end) for one in ("E", "I")),
        *(End(sustained_stress, _STRESS, {one: 0.0}, _WALL) for one in ("t", "Z")),
    ],
    ids=str,
)
def test_formulae_refuse_what_cannot_be(end: End) -> None:
    expect_end(end)


def test_a_wide_thick_bend_is_as_straight_pipe() -> None:
    """h = 4 × 20 × 2000/80² = 25: 0.9/25^(2/3) is 0.105, and no factor is below 1."""
    assert stress_factor_of_bend(t=0.020, R=2.0, D=0.100) == 1.0


@given(st.floats(0.5, 20.0), st.floats(0.0, 5.0), st.integers(0, 6))
def test_more_brackets_never_stress_a_pipe_more(length: float, jolts: float, brackets: int) -> None:
    def moment(n: int) -> float:
        return moment_of_span(jolted_load(w=400.0, n=jolts), span_between(L=length, n=float(n)))

    def stress(n: int) -> float:
        return sustained_stress(p=1e6, D=0.2, t=0.006, i=2.0, M=moment(n), Z=1e-4)

    assert stress(brackets + 1) <= stress(brackets)
