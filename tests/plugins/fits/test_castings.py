"""fit.machining-allowance, casting.allowance-grade and casting.tolerance-grade.

ISO 8062-3:2007 (from memory): RMAG H 6 mm over 400 to 630 mm and 7 mm over 630 to 1000 mm; DCTG 12 10 mm over 400
to 630 mm.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, NotKnown, OutOfRange
from speclint.testing import DesignFolder, found, limit
from speclint_fits.formulae.tables import (
    GRADES,
    casting_tolerance,
    required_allowance,
    usual_grades,
    usual_tolerance_grades,
)
from tests.plugins.fits.bench import METALS, WITH_METALS

RULE, USUAL = "fit.machining-allowance", "casting.allowance-grade"
TOLERANCE = "casting.tolerance-grade"
CASTING = """
kind = "casting"
id = "casting"
material = "known-iron"
process = "sand, hand moulded"
largest_dimension = "500 mm"
tolerance_grade = 12
allowance_grade = "H"
[faces.joint]
dimension = "480 mm"
allowance = "11 mm"
both_sides = false
[faces.bore]
dimension = "450 mm H8"
allowance = "8.5 mm"
both_sides = true
"""


def write(workshop: DesignFolder, *changes: tuple[str, str]) -> DesignFolder:
    text = CASTING
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return workshop.write({"metals.toml": METALS, "casting.toml": text}, settings=WITH_METALS)


def test_metal_enough_by_the_standard(workshop: DesignFolder) -> None:
    """Joint 6 + 10/2 = 11 mm, bore 6 + 10/4 = 8.5 mm: both just so."""
    check = write(workshop).only(RULE)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [('"11 mm"', '"10.9 mm"', 11e-3), ('"8.5 mm"', '"8.4 mm"', 8.5e-3), ('"500 mm"', '"640 mm"', 9.5e-3)],
)
def test_too_little_metal_is_a_finding(workshop: DesignFolder, old: str, new: str, wanted: float) -> None:
    check = write(workshop, (old, new)).only(RULE)
    assert check.outcome == "finding"
    assert limit(check) == pytest.approx(wanted)
    assert found(check) < wanted


@pytest.mark.parametrize(("face", "wanted"), [("620 mm", 11e-3), ("640 mm", 12.5e-3)])
def test_the_largest_dimension_is_not_below_a_face(workshop: DesignFolder, face: str, wanted: float) -> None:
    # stated as 60 mm, which would want 1 mm; by the face 6 mm and DCTG 12 over 400 to 630 mm 10 mm: 6 + 5;
    # over 630 to 1000 mm 7 mm and 11 mm: 7 + 5.5 on the joint
    check = write(workshop, ('"500 mm"', '"60 mm"'), ('"480 mm"', f'"{face}"'), ('"11 mm"', '"5 mm"')).only(
        RULE
    )
    assert limit(check) == pytest.approx(wanted)
    assert check.outcome == "finding"


@pytest.mark.parametrize(("allowance", "wanted"), [("8 mm", 8.5e-3), ("8.1 mm", 8.75e-3)])
def test_the_tolerance_is_that_of_the_size_as_cast(
    workshop: DesignFolder, allowance: str, wanted: float
) -> None:
    """614 + 2·8 = 630 mm wants 6 + 10/4, 614 + 2·8.1 = 630.2 mm falls into the next row and wants 6 + 11/4."""
    # the largest dimension is that of the finished part, 614 mm, and stays in the row to 630 mm: 6 mm
    check = write(workshop, ('"450 mm H8"', '"614 mm H8"'), ('"8.5 mm"', f'"{allowance}"')).only(RULE)
    assert check.outcome == "finding"
    assert limit(check) == pytest.approx(wanted)


@pytest.mark.parametrize(
    ("face", "outcome", "wanted"), [("619 mm", "conforms", 11e-3), ("619.2 mm", "finding", 11.5e-3)]
)
def test_a_face_alone_has_its_allowance_once(
    workshop: DesignFolder, face: str, outcome: str, wanted: float
) -> None:
    """619 + 11 = 630 mm wants 6 + 10/2, just what is there; 630.2 mm falls into the next row and wants 6 + 11/2."""
    check = write(workshop, ('"480 mm"', f'"{face}"')).only(RULE)
    assert (check.outcome, limit(check)) == (outcome, pytest.approx(wanted))


@pytest.mark.parametrize(
    "missing",
    ['largest_dimension = "500 mm"', "tolerance_grade = 12", 'allowance_grade = "H"', "both_sides = true"],
)
def test_what_is_needed_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    assert write(workshop, (missing, "")).only(RULE).outcome == "not assessed"


def test_a_casting_without_machined_faces_is_not_assessed(workshop: DesignFolder) -> None:
    bare = CASTING.split("[faces.joint]")[0]
    workshop.write({"metals.toml": METALS, "casting.toml": bare}, settings=WITH_METALS)
    assert workshop.only(RULE).outcome == "not assessed"


@pytest.mark.parametrize(
    ("grade", "process", "outcome"),
    [
        ("F", "sand, hand moulded", "conforms"),
        ("E", "sand, hand moulded", "finding"),
        ("E", "sand, machine moulded", "conforms"),
        ("D", "investment", "finding"),
    ],
)
def test_the_grade_is_one_that_the_process_holds(
    workshop: DesignFolder, grade: str, process: str, outcome: str
) -> None:
    check = write(workshop, ('"H"', f'"{grade}"'), ("sand, hand moulded", process)).only(USUAL)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("grade", "process", "outcome"),
    [
        (11, "sand, hand moulded", "conforms"),
        (10, "sand, hand moulded", "finding"),
        (16, "sand, hand moulded", "conforms"),
        (8, "sand, machine moulded", "conforms"),
        (7, "sand, machine moulded", "finding"),
        (4, "investment", "conforms"),
        (3, "investment", "finding"),
    ],
)
def test_the_tolerance_is_one_that_the_process_holds(
    workshop: DesignFolder, grade: int, process: str, outcome: str
) -> None:
    """ISO 8062-3:2007, Annex A (from memory): iron 11 to 14 moulded by hand, 8 to 12 by machine, 4 to 6 invested."""
    changes = [("tolerance_grade = 12", f"tolerance_grade = {grade}"), ("sand, hand moulded", process)]
    check = write(workshop, *changes).only(TOLERANCE)
    assert (check.outcome, check.grade) == (outcome, Grade.OBSERVATION if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("process", "family", "grades"),
    [
        ("sand, hand moulded", "cast-steel", (11, 14)),
        ("sand, hand moulded", "grey-iron", (11, 14)),
        ("sand, hand moulded", "ductile-iron", (11, 14)),
        ("sand, hand moulded", "copper-alloy", (10, 13)),
        ("sand, machine moulded", "cast-steel", (8, 12)),
        ("sand, machine moulded", "grey-iron", (8, 12)),
        ("sand, machine moulded", "ductile-iron", (8, 12)),
        ("sand, machine moulded", "copper-alloy", (8, 10)),
        ("investment", "cast-steel", (4, 6)),
        ("investment", "grey-iron", (4, 6)),
        ("investment", "ductile-iron", (4, 6)),
        ("investment", "copper-alloy", (4, 6)),
    ],
)
def test_usual_tolerances_of_each_metal(process: str, family: str, grades: tuple[int, int]) -> None:
    """ISO 8062-3:2007, Annex A, from memory."""
    assert usual_tolerance_grades(process, family) == grades


@pytest.mark.parametrize("rule", [USUAL, TOLERANCE])
def test_a_metal_without_usual_grades_is_a_query(workshop: DesignFolder, rule: str) -> None:
    check = write(workshop, ("known-iron", "white-metal-tin")).only(rule)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize("rule", [USUAL, TOLERANCE])
def test_the_process_must_be_stated(workshop: DesignFolder, rule: str) -> None:
    assert write(workshop, ('process = "sand, hand moulded"', "")).only(rule).outcome == "not assessed"


@pytest.mark.parametrize(
    ("grade", "size", "millimetres"),
    [
        ("A", 0.04, 0.1),
        ("A", 0.0401, 0.1),
        ("F", 0.63, 3),
        ("F", 0.6301, 3.5),
        ("K", 10.0, 24),
        ("E", 0.3, 1.8),
    ],
)
def test_the_table_changes_above_its_bounds(grade: str, size: float, millimetres: float) -> None:
    assert required_allowance(grade, size).nominal == pytest.approx(millimetres / 1e3)


def test_what_the_tables_do_not_hold_is_refused() -> None:
    with pytest.raises(OutOfRange, match="10000 mm"):
        required_allowance("A", 10.1)
    assert casting_tolerance(12, 1e-6).nominal == pytest.approx(4.2e-3)  # over 0 to 10 mm
    with pytest.raises(OutOfRange, match="; 0 mm is outside"):
        casting_tolerance(12, 0.0)
    with pytest.raises(NotKnown, match="grade 1 for 500 mm"):
        casting_tolerance(1, 0.5)
    with pytest.raises(NotKnown, match="no usual grade"):
        usual_grades("investment", "white-metal")


@given(size=st.floats(1e-3, 10.0), grade=st.sampled_from(GRADES[:-1]))
def test_a_coarser_grade_and_a_larger_part_want_no_less(size: float, grade: str) -> None:
    coarser = GRADES[GRADES.index(grade) + 1]
    here = required_allowance(grade, size).nominal
    assert required_allowance(coarser, size).nominal >= here
    assert required_allowance(grade, min(size * 1.6, 10.0)).nominal >= here


@given(size=st.floats(17e-3, 10.0), grade=st.integers(10, 15))
def test_tolerances_grow_with_grade_and_size(size: float, grade: int) -> None:
    here = casting_tolerance(grade, size).nominal
    assert casting_tolerance(grade + 1, size).nominal > here
    assert casting_tolerance(grade, min(size * 1.6, 10.0)).nominal >= here


def test_what_is_read_of_a_table_names_grade_and_size() -> None:
    assert required_allowance("H", 0.5).what == "machining allowance RMAG H of a casting of 500 mm"
    assert casting_tolerance(12, 0.25).what == "casting tolerance DCTG 12 at 250 mm"
