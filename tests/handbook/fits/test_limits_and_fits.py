"""Kinds of fit at their boundaries, published fits, and the selection of preferred classes."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st
from pressfit import fit as other_fit

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.fits.limits_and_fits import (
    Kind,
    choice,
    diametral_clearance,
    fit,
    gap_of_interference,
    greatest_interference,
    interference,
    is_preferred_fit,
    kind_of_fit,
    least_interference,
    name_of_fit,
    share_of_diameter,
)
from speclint.handbook.tables.csv_files import entries, rows
from speclint.quantities import deviations
from speclint.quantities.tolerance_classes import PATTERN

MICROMETRE = 1e-6
limits = st.tuples(st.integers(-500, 500), st.integers(0, 500)).map(lambda pair: (pair[0], pair[0] + pair[1]))

#: Nominal mm, fit, least and greatest clearance in µm (negative: interference), source.
PUBLISHED = [
    (
        50,
        "H8/g7",
        9,
        73,
        "U. C. Jindal, Machine Design, worked example as printed by a companion notebook: seen",
    ),
    (34, "H11/c11", 120, 440, "Shigley, 10th ed., example of ISO fits, 34H11/c11: memory"),
    (25, "H7/g6", 7, 41, "pressfit 0.1.0, its published example: library"),
    (25, "H7/h6", 0, 34, "ISO 286-2 limits 0/+21 and -13/0: memory"),
    (25, "H7/k6", -15, 19, "ISO 286-2 limits 0/+21 and +2/+15: memory"),
    (25, "H7/n6", -28, 6, "ISO 286-2 limits 0/+21 and +15/+28: memory"),
    (25, "H7/p6", -35, -1, "ISO 286-2 limits 0/+21 and +22/+35: memory"),
    (25, "H7/s6", -48, -14, "ISO 286-2 limits 0/+21 and +35/+48: memory"),
    (25, "S7/h6", -48, -14, "ISO 286-2 limits -48/-27 and -13/0: memory"),
    (550, "H7/s6", -324, -210, "ISO 286-2 limits 0/+70 and +280/+324: memory"),
]


@pytest.mark.parametrize(("size", "written", "least", "greatest", "source"), PUBLISHED)
def test_published_fits(size: float, written: str, least: float, greatest: float, source: str) -> None:
    hole, shaft = written.split("/")
    found = fit(size / 1000, hole, shaft)
    assert found.least_clearance == pytest.approx(least * MICROMETRE, abs=1e-10), source
    assert found.greatest_clearance == pytest.approx(greatest * MICROMETRE, abs=1e-10), source
    assert found.greatest_interference == -found.least_clearance
    assert found.least_interference == -found.greatest_clearance


@pytest.mark.parametrize("written", entries("asme-b4.2-1978-preferred-fits.csv", "hole basis"))
@pytest.mark.parametrize("size", [1, 8, 25, 60, 120, 240, 480])
def test_preferred_fits_agree_with_another_library(written: str, size: int) -> None:
    hole, shaft = written.split("/")
    found, other = fit(size / 1000, hole, shaft), other_fit(f"{size} {written}")
    assert found.least_clearance == pytest.approx(other.clearance_um[0] * MICROMETRE, abs=1e-10)
    assert found.greatest_clearance == pytest.approx(other.clearance_um[1] * MICROMETRE, abs=1e-10)
    assert found.kind.value == other.kind


@pytest.mark.parametrize(
    ("hole", "shaft", "kind"),
    [
        ((0, 10), (-10, 0), Kind.CLEARANCE),
        ((0, 10), (-10, 1), Kind.TRANSITION),
        ((0, 10), (10, 20), Kind.INTERFERENCE),
        ((0, 10), (9, 20), Kind.TRANSITION),
    ],
)
def test_kind_of_fit_on_both_sides_of_its_limits(
    hole: tuple[float, float], shaft: tuple[float, float], kind: Kind
) -> None:
    assert kind_of_fit(hole, shaft) is kind


def test_one_size_reached_by_two_routes_is_one_size() -> None:
    """0.05 + 0.00002 is 0.050020000000000002 and 0.1 - 0.04998 is 0.05002000000000001: no interference."""
    hole, shaft = (0.05 + 0.00002, 0.0501), (0.0500, 0.1 - 0.04998)
    assert shaft[1] > hole[0]
    assert kind_of_fit(hole, shaft) is Kind.CLEARANCE
    assert kind_of_fit((hole[0] - 1e-9, hole[1]), shaft) is Kind.TRANSITION


@given(limits, limits)
def test_a_fit_is_what_its_extremes_say(hole: tuple[int, int], shaft: tuple[int, int]) -> None:
    """A clearance fit never interferes, an interference fit never clears, and a transition can do both."""
    kind = kind_of_fit(hole, shaft)
    most, least = greatest_interference(shaft[1], hole[0]), least_interference(shaft[0], hole[1])
    assert (kind is Kind.TRANSITION) == (most > 0 > least)
    assert kind is not Kind.CLEARANCE or most <= 0
    assert kind is not Kind.INTERFERENCE or least >= 0


@given(limits, limits, st.integers(-300, 300))
def test_the_kind_of_fit_does_not_depend_on_the_nominal_size(
    hole: tuple[int, int], shaft: tuple[int, int], moved: int
) -> None:
    there = kind_of_fit((hole[0] + moved, hole[1] + moved), (shaft[0] + moved, shaft[1] + moved))
    assert there is kind_of_fit(hole, shaft)


def test_limits_the_wrong_way_round_are_refused() -> None:
    with pytest.raises(OutOfRange, match="hole's lower limit"):
        kind_of_fit((1.0, 0.0), (0.0, 0.0))
    with pytest.raises(OutOfRange, match="shaft's lower limit"):
        kind_of_fit((0.0, 0.0), (1.0, 0.0))


@pytest.mark.parametrize(
    ("hole", "shaft"), [("h7", "H6"), ("H7", "H6"), ("h7", "h6"), ("", "h6"), ("H7", "")]
)
def test_hole_and_shaft_are_told_apart_by_their_letters(hole: str, shaft: str) -> None:
    with pytest.raises(NotKnown, match="capitals"):
        fit(0.1, hole, shaft)


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("H7", "first"),
        ("h6", "first"),
        ("M7", "second"),
        ("x6", "second"),
        ("H12", ""),
        ("zc9", ""),
        ("nonsense", ""),
    ],
)
def test_choice_of_class(name: str, expected: str) -> None:
    assert choice(name) == expected


def test_every_class_in_the_selections_can_be_read() -> None:
    classes = {*entries("iso-1829-1975-preferred-classes.csv", "class")}
    fits = rows("iso-286-1-2010-preferred-fits.csv")
    classes |= {row["hole"] for row in fits} | {row["shaft"] for row in fits}
    assert len(classes) > 80
    for name in classes:
        assert PATTERN.fullmatch(name)
        lower, upper = deviations(0.06, name)
        assert lower < upper


def test_every_recommended_fit_has_its_basis() -> None:
    for row in rows("iso-286-1-2010-preferred-fits.csv"):
        zero = row["hole"] if row["basis"] == "hole" else row["shaft"]
        assert zero[0] in "Hh"
        assert zero[1].isdigit()


def test_recommended_fits() -> None:
    assert is_preferred_fit("H7", "s6")
    assert is_preferred_fit("S7", "h6")
    assert not is_preferred_fit("H7", "s7")
    assert not is_preferred_fit("F7", "s6")


def test_names_of_fits_say_the_kind_of_fit_they_make() -> None:
    """Running, sliding and clearance fits clear; drive and force fits interfere, at every size tried."""
    clearing = {"loose running", "free running", "close running", "sliding", "locational clearance"}
    for row in rows("asme-b4.2-1978-preferred-fits.csv"):
        for written in (row["hole basis"], row["shaft basis"]):
            hole, shaft = written.split("/")
            assert name_of_fit(hole, shaft) == row["name"] or written == "H7/h6"
            for size in (0.01, 0.1, 0.5):
                kind = fit(size, hole, shaft).kind
                assert (kind is Kind.CLEARANCE) == (row["name"] in clearing), (written, size)
                assert kind is Kind.INTERFERENCE or row["name"] not in ("medium drive", "force")
    assert name_of_fit("H7", "x6") == ""


@given(D=st.floats(0.01, 1.0), c=st.floats(-1e-3, 1e-3))
def test_clearance_is_interference_with_its_sign_changed(D: float, c: float) -> None:
    found = diametral_clearance(D + c, D)
    assert found == pytest.approx(c, abs=1e-12)
    assert gap_of_interference(interference(D, D + c)) == found
    assert share_of_diameter(c / D, D) == pytest.approx(c, abs=1e-12)
