"""pipe.span: a pipe between what carries it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import SETTINGS, DesignFolder, on_sheet
from speclint_steamways.formulae.pipe_spans import (
    jolted_load,
    span_between,
    stress_factor_of_bend,
    sustained_stress,
    weight_full_of_water,
)
from tests.own_limits import own_limit
from tests.plugins.steamways.pipe import files

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

    Wall 5.6 × 0.875 − 1 = 3.9, bore of that 160.5: I = π/64 (168.3⁴ − 160.5⁴) = 6 808 858, Z = I/84.15 = 80 913.3.
    As ordered: bore 157.1, area 2862.41, 22.613 kg/m; water 19.384 kg/m; w = 41.997 × 9.80665 = 411.85 N/m.
    4 m: M = 3 × 0.41185 × 4000²/8 = 2 471 079. Bend: h = 4 × 3.9 × 300/164.4² = 0.173158, i = 0.9/h^(2/3) = 2.89699.
    S = 1.66 × 168.3/(4 × 3.9) + 0.75 × 2.89699 × 2 471 079/80 913.3 = 17.9088 + 66.3557 = 84.2645 MPa.
    y E = 5 × 0.41185 × 4000⁴/(384 × 6 808 858) = 201 623 N/mm.
    """
    check = workshop.write(_long("4 m")).only(SPAN)
    assert check.outcome == "conforms"
    assert on_sheet(check, "w") == pytest.approx(411.85, rel=1e-5)
    assert on_sheet(check, "i") == pytest.approx(2.89699, rel=1e-5)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(84.2645, rel=1e-5)
    assert on_sheet(check, "y") * on_sheet(check, "E") == pytest.approx(201623e3, rel=1e-5)
    assert check.utilisation == pytest.approx(84.2645 / 104, rel=1e-5)  # f = 104 MPa at 400 °C: see the bench


def test_the_span_of_a_bent_pipe_from_both_sides(workshop: DesignFolder) -> None:
    """104 = 17.9088 + 2.17275 M/80 913.3: M = 3 206 050 N·mm, and L = √(8 M/(3 × 0.41185)) = 4556 mm."""
    assert workshop.write(_long("4.54 m")).only(SPAN).outcome == "conforms"
    failing = workshop.write(_long("4.57 m")).only(SPAN)
    assert (failing.outcome, failing.grade) == ("finding", Grade.NONCONFORMITY)
    assert "stress the pipe to 104.5 MPa between what carries it" in failing.actual


def test_the_sag_of_a_straight_pipe_from_both_sides(workshop: DesignFolder) -> None:
    """A straight pipe of 6.7 m is stressed to 104 MPa; 2.5 mm it sags at l⁴ = 2.5 × 384 E I/(5 w)."""
    E = on_sheet(workshop.write(_long("4 m", STRAIGHT)).only(SPAN), "E") / 1e6
    most = (2.5 * 384 * E * 6_808_858 / (5 * 0.41185)) ** 0.25
    shorter, longer = f"{0.995 * most:.1f} mm", f"{1.005 * most:.1f} mm"
    assert workshop.write(_long(shorter, STRAIGHT)).only(SPAN).outcome == "conforms"
    failing = workshop.write(_long(longer, STRAIGHT)).only(SPAN)
    assert failing.outcome == "finding"
    assert failing.actual.startswith("pipe sags by 2.55 mm")


def test_a_bracket_halves_the_span(workshop: DesignFolder) -> None:
    """Of 7 m: 221.1 MPa with none; with one on half the length a quarter of the moment, 17.909 + 203.213/4 = 68.712."""
    assert workshop.write(files()).only(SPAN).outcome == "finding"
    carried = {**files(), "bracket.toml": BRACKET.format(id="bracket")}
    check = workshop.write(carried).only(SPAN)
    assert check.outcome == "conforms"
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(68.712, rel=1e-4)


@pytest.mark.parametrize(("share", "stress"), [("0.25", 68.712), ("0.24", 221.122), ("1", 68.712)])
def test_a_bracket_that_bears_little_is_no_support(workshop: DesignFolder, share: str, stress: float) -> None:
    """Of one bracket a half is an even share: with less than half of that it is as if there were none, 221.122 MPa."""
    said = BRACKET.format(id="bracket") + f'share = "{share}"\n'
    check = workshop.write({**files(), "bracket.toml": said}).only(SPAN)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(stress, rel=1e-4)


def test_a_straight_pipe_is_stressed_by_the_plain_moment(workshop: DesignFolder) -> None:
    """17.9088 + 2 471 079/80 913.3 = 48.4486 MPa at 4 m."""
    check = workshop.write(_long("4 m", STRAIGHT)).only(SPAN)
    assert on_sheet(check, "S_L") / 1e6 == pytest.approx(48.4486, rel=1e-5)


@pytest.mark.parametrize(("limit", "value"), [("jolts", "3"), ("sag", "1 mm")])
def test_a_works_may_set_its_own_limits(workshop: DesignFolder, limit: str, value: str) -> None:
    """At 4 m: jolted by 3 g 17.909 + 66.356 × 4/3 = 106.4 MPa for 104; a sag of 1.2 mm for 1."""
    own = SETTINGS + own_limit(SPAN, "steamways", **{limit: value})
    assert workshop.write(_long("4 m"), settings=own).only(SPAN).outcome == "finding"


@pytest.mark.parametrize("key", ["length", "outside_diameter", "wall", "material"])
def test_what_the_weight_is_worked_from_is_asked(workshop: DesignFolder, key: str) -> None:
    line = next(one for one in files()["pipe.toml"].splitlines() if one.startswith(f"{key} ="))
    assert workshop.write(files((line, ""))).only(SPAN).outcome == "not assessed"


@pytest.mark.parametrize(
    ("formula", "values"),
    [
        (span_between, {"L": 1.0, "n": -1.0}),
        (weight_full_of_water, {"M": 1.0, "L": 0.0, "d": 0.1}),
        (stress_factor_of_bend, {"t": 0.0, "R": 0.3, "D": 0.1}),
        (stress_factor_of_bend, {"t": 0.05, "R": 0.3, "D": 0.1}),
        (stress_factor_of_bend, {"t": 0.005, "R": 0.05, "D": 0.1}),
        (sustained_stress, {"p": 1e6, "D": 0.1, "t": 0.0, "i": 1.0, "M": 1.0, "Z": 1e-6}),
        (sustained_stress, {"p": 1e6, "D": 0.1, "t": 0.005, "i": 1.0, "M": 1.0, "Z": 0.0}),
    ],
)
def test_formulae_refuse_what_cannot_be(formula: Callable[..., float], values: Mapping[str, float]) -> None:
    with pytest.raises(OutOfRange):
        formula(**values)


def test_a_wide_thick_bend_is_as_straight_pipe() -> None:
    """h = 4 × 20 × 2000/80² = 25: 0.9/25^(2/3) is 0.105, and no factor is below 1."""
    assert stress_factor_of_bend(t=0.020, R=2.0, D=0.100) == 1.0


@given(st.floats(0.5, 20.0), st.floats(0.0, 5.0), st.integers(0, 6))
def test_more_brackets_never_stress_a_pipe_more(length: float, jolts: float, brackets: int) -> None:
    def moment(n: int) -> float:
        return jolted_load(w=400.0, n=jolts) * span_between(L=length, n=float(n)) ** 2 / 8

    def stress(n: int) -> float:
        return sustained_stress(p=1e6, D=0.2, t=0.006, i=2.0, M=moment(n), Z=1e-4)

    assert stress(brackets + 1) <= stress(brackets)
