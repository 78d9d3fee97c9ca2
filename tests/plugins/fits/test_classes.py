"""fit.class and fit.class-exists: kind of fit by the limits, and classes that shops have gauges for."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.fits.limits_and_fits import Kind, kind_of_fit, least_clearance, least_interference
from speclint.testing import DesignFolder, found, on_sheet
from tests.plugins.fits.bench import in_fit, shaft, write

CLASS, EXISTS = "fit.class", "fit.class-exists"


def plain(hole: str, pin: str, intent: str) -> str:
    return f"""
kind = "fit"
id = "fit"
hole = {{ size = "{hole}" }}
shaft = {{ size = "{pin}" }}
intent = "{intent}"
"""


@pytest.mark.parametrize(
    ("pin", "intent", "outcome"),
    [
        # ISO 286-2 at 25 mm (from memory): H7 0/+21, g6 -20/-7, h6 -13/0, k6 +2/+15, p6 +22/+35, n6 +15/+28 µm
        ("25 mm g6", "clearance", "conforms"),
        ("25 mm h6", "clearance", "conforms"),
        ("25 mm k6", "clearance", "finding"),
        ("25 mm k6", "transition", "conforms"),
        ("25 mm g6", "transition", "finding"),
        ("25 mm p6", "interference", "conforms"),
        ("25 mm n6", "interference", "finding"),
        ("25 mm g6", "interference", "finding"),
    ],
)
def test_the_limits_must_give_what_is_meant(
    workshop: DesignFolder, pin: str, intent: str, outcome: str
) -> None:
    assert write(workshop, fit=plain("25 mm H7", pin, intent)).only(CLASS).outcome == outcome


def test_the_least_interference_of_a_seat_by_hand(workshop: DesignFolder) -> None:
    """170.108 − 170.040 = 0.068 mm, and 0.1005 mm at the middle of both: a third of it is used."""
    check = write(workshop).only(CLASS)
    assert found(check) == pytest.approx(0.068e-3)
    assert check.utilisation == pytest.approx((100.5 - 68) / 100.5)
    assert check.says.startswith("interference fit")


@pytest.mark.parametrize(("size", "outcome"), [("170.041 mm", "conforms"), ("170.039 mm", "finding")])
def test_interference_begins_at_the_largest_hole(workshop: DesignFolder, size: str, outcome: str) -> None:
    check = write(workshop, shaft(size)).only(CLASS)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("hole", "pin", "outcome"),
    [
        ("25 mm +0.021/0", "25 mm -0.007/-0.020", "not applicable"),
        ("25 mm +0.021/0", "25 mm H6", "finding"),
        ("25 mm h7", "25 mm -0.007/-0.020", "finding"),
    ],
)
def test_a_class_of_either_part_alone_is_judged(
    workshop: DesignFolder, hole: str, pin: str, outcome: str
) -> None:
    """A small letter is no class of a hole, a capital none of a shaft, whatever the other has."""
    assert write(workshop, fit=plain(hole, pin, "clearance")).only(EXISTS).outcome == outcome


def test_a_saddle_is_no_fit_of_this_sort(workshop: DesignFolder) -> None:
    bedded = write(workshop, in_fit('"interference"', '"bedded"'))
    assert bedded.only(CLASS).outcome == "not applicable"
    assert bedded.only(EXISTS).outcome == "not applicable"


@pytest.mark.parametrize("missing", ['intent = "interference"', 'dimension = "outside_diameter"'])
def test_the_class_needs_intent_and_sizes(workshop: DesignFolder, missing: str) -> None:
    key = missing.split(" = ")[0]
    change = in_fit(missing, "") if key == "intent" else in_fit(f", {missing}", "")
    assert write(workshop, change).only(CLASS).outcome == "not assessed"


@pytest.mark.parametrize(
    ("hole", "pin", "outcome", "grade"),
    [
        ("25 mm H7", "25 mm s6", "conforms", None),  # recommended by ISO 286-1
        ("25 mm H8", "25 mm m6", "conforms", None),  # no recommended pair, though of preferred zones
        ("25 mm H13", "25 mm h6", "finding", Grade.OBSERVATION),
        ("25 mm h7", "25 mm s6", "finding", Grade.NONCONFORMITY),
        ("25 mm H7", "25 mm S6", "finding", Grade.NONCONFORMITY),
        ("25 mm H7", "26 mm s6", "finding", Grade.NONCONFORMITY),
        ("25 mm H7", "24.9..24.95 mm", "conforms", None),
        ("25.0..25.1 mm", "24.9..24.95 mm", "not applicable", None),
    ],
)
def test_classes_are_those_of_shops(
    workshop: DesignFolder, hole: str, pin: str, outcome: str, grade: Grade | None
) -> None:
    check = write(workshop, fit=plain(hole, pin, "clearance")).only(EXISTS)
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize(
    ("hole", "pin", "says"),
    [
        ("25 mm H7", "25 mm s6", "H7/s6 is a recommended fit"),
        ("25 mm H8", "25 mm m6", "H8/m6 is of preferred zones, though not a recommended pair"),
        ("25 mm H7", "24.9..24.95 mm", "H7 is of preferred zones, though not a recommended pair"),
        ("25 mm H13", "25 mm h6", "H13/h6: H13 not among the preferred zones"),
        ("25 mm H13", "24.9..24.95 mm", "H13: H13 not among the preferred zones"),
    ],
)
def test_the_classes_that_are_stated_are_named(
    workshop: DesignFolder, hole: str, pin: str, says: str
) -> None:
    assert write(workshop, fit=plain(hole, pin, "clearance")).only(EXISTS).says == says


def test_a_class_that_does_not_exist_is_refused_when_it_is_read(workshop: DesignFolder) -> None:
    assessment = write(workshop, fit=plain("25 mm H7", "25 mm q6", "clearance")).assess()
    assert any("q6" in str(one) for one in assessment.complaints)


def test_classes_need_both_sizes(workshop: DesignFolder) -> None:
    text = plain("25 mm H7", "25 mm s6", "clearance").replace('shaft = { size = "25 mm s6" }\n', "")
    assert write(workshop, fit=text).only(EXISTS).outcome == "not assessed"


_SIZES = st.floats(0.02, 0.03)


@given(one=st.tuples(_SIZES, _SIZES), other=st.tuples(_SIZES, _SIZES))
def test_a_fit_is_of_one_kind_only(one: tuple[float, float], other: tuple[float, float]) -> None:
    hole, pin = sorted(one), sorted(other)
    kind = kind_of_fit((hole[0], hole[1]), (pin[0], pin[1]))
    assert (least_clearance(hole[0], pin[1]) >= -1e-12) == (kind is Kind.CLEARANCE)
    if least_interference(pin[0], hole[1]) < -1e-12:
        assert kind is not Kind.INTERFERENCE


def test_the_clearances_of_a_transition_fit_are_written_down(workshop: DesignFolder) -> None:
    """25 H7/k6: 0 − 15 and 21 − 2 µm."""
    check = write(workshop, fit=plain("25 mm H7", "25 mm k6", "transition")).only(CLASS)
    assert on_sheet(check, "c_min") * 1e6 == pytest.approx(-15)
    assert on_sheet(check, "c_max") * 1e6 == pytest.approx(19)
