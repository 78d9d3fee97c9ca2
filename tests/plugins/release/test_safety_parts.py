"""release.safety-part: how a part that can hurt someone is examined, and what document its metal has."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable

RULE = "release.safety-part"
ROD = """
kind = "piston-rod"
id = "part"
examination = "magnetic particle when ground"
inspection_document = "3.1"
"""


@pytest.mark.parametrize("document", ["3.1", "3.2"])
def test_a_rod_with_its_record_conforms(workshop: DesignFolder, document: str) -> None:
    """EN 10204: 3.1 and 3.2 give results of tests of what is delivered; 2.1 and 2.2 give none of it."""
    assert workshop.write({"part.toml": ROD.replace("3.1", document)}).only(RULE).outcome == "conforms"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('examination = "magnetic particle when ground"\n', "", "examination"),
        ('"magnetic particle when ground"', '"None"', "does not say how it is examined"),
        ('"magnetic particle when ground"', '"to be decided"', "does not say how it is examined"),
        ('"magnetic particle when ground"', '"-"', "does not say how it is examined"),
        ('"magnetic particle when ground"', '"looked over"', "does not say how it is examined"),
        ('"magnetic particle when ground"', '"visual, journals gauged"', "finds no crack before it is open"),
        ('inspection_document = "3.1"\n', "", "inspection_document"),
        ('"3.1"', '"2.1"', "2.1 rests on no test of the metal delivered"),
        ('"3.1"', '"2.2"', "2.2 rests on no test of the metal delivered"),
    ],
)
def test_what_is_missing_is_named(workshop: DesignFolder, old: str, new: str, says: str) -> None:
    check = workshop.write({"part.toml": ROD}).replace("part.toml", old, new).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert says in check.says


@pytest.mark.parametrize(
    ("kind", "how", "outcome"),
    [
        ("driving-axle", "looked over", "finding"),
        ("driving-axle", "VT", "finding"),
        ("driving-axle", "UT from both ends, VT of the journals", "conforms"),
        ("crosshead", "visual", "finding"),
        ("pin", "visual", "finding"),
        ("pin", "MPI when ground", "conforms"),
        ("slide-bar", "visual", "conforms"),
        ("slide-bar", "by eye", "finding"),
    ],
)
def test_what_breaks_by_fatigue_is_examined_for_cracks(
    workshop: DesignFolder, kind: str, how: str, outcome: str
) -> None:
    """EN ISO 9712 counts VT as a method; a crack that is not open yet is not seen by it."""
    part = f'kind = "{kind}"\nid = "part"\nsafety_part = true\nexamination = "{how}"\ninspection_document = "3.1"\n'
    assert workshop.write({"part.toml": part}).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("kind", "word", "outcome"),
    [
        ("piston-ring", "", "not applicable"),
        ("piston-ring", "safety_part = false\n", "not applicable"),
        ("piston-ring", "safety_part = true\n", "finding"),
        ("piston-rod", "safety_part = false\n", "finding"),
    ],
)
def test_whom_it_asks(workshop: DesignFolder, kind: str, word: str, outcome: str) -> None:
    """By kind, whatever the word says; of other kinds by the word."""
    made = workshop.write({"part.toml": f'kind = "{kind}"\nid = "part"\n{word}'})
    assert made.only(RULE).outcome == outcome


def test_a_pressure_part_has_a_record_of_its_own(workshop: DesignFolder) -> None:
    made = workshop.write({"part.toml": 'kind = "cylinder-cover"\nid = "part"\n'})
    expect_not_applicable(made.only(RULE), "pressure")
