"""One document is issued on one day, by one type; one heat is one metal: what two records say of one is compared."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed

RULE = "made.certificates-agree"
LINER = 'kind = "cylinder-liner"\nid = "liner"\n'
FIRST = """
kind = "made-part"
id = "first"
of = "liner"
[certificate]
type = "3.1"
number = "C-12"
by = "Harl Foundry Ltd"
date = "2026-05-04"
heat = "H-7"
material = "grey-iron-250"
analysed = "cast"
[certificate.analysis]
C = "0.20 %"
Mn = "1.00 %"
"""
BAD, ASKED, FINE = ("finding", Grade.NONCONFORMITY), ("finding", Grade.QUERY), ("conforms", None)
SILENT = ("not applicable", None)


def check(workshop: DesignFolder, *changes: tuple[str, str]) -> Check:
    second = changed(FIRST, ('id = "first"', 'id = "second"'), *changes)
    return workshop.write({"liner.toml": LINER, "first.toml": FIRST, "second.toml": second}).only(
        RULE, "first"
    )


@pytest.mark.parametrize(
    ("old", "new", "ends", "says"),
    [
        ("C-12", "C-12", FINE, ""),
        ('"C-12"', '"c - 12"', FINE, ""),
        ("2026-05-04", "2026-05-05", BAD, "date 2026-05-04 here and 2026-05-05 in second, of one number"),
        ("3.1", "3.2", BAD, "type 3.1 here and 3.2 in second, of one number"),
        ("H-7", "H-8", ASKED, "heat H-7 here and H-8 in second, of one number"),
        ('"H-7"', '"h 7"', ASKED, "heat H-7 here and h 7 in second"),
        ('"H-7"', '"h-7"', FINE, ""),
        ("grey-iron-250", "grey-iron-300", ASKED, "material grey-iron-250 here and grey-iron-300 in second"),
        ("Harl Foundry Ltd", "Harl Foundry", FINE, ""),
        ('heat = "H-7"\n', "", FINE, ""),
        ('date = "2026-05-04"\n', "", FINE, ""),
    ],
)
def test_what_two_records_say_of_one_document(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None], says: str
) -> None:
    found = check(workshop, (old, new))
    assert (found.outcome, found.grade) == ends
    assert says in found.says


@pytest.mark.parametrize(
    ("by", "ends"),
    [
        ('by = "Harl Foundry Ltd"', BAD),
        ("", BAD),
        ('by = "Ness Foundry Ltd"', SILENT),
    ],
)
def test_two_issuers_number_each_for_himself(
    workshop: DesignFolder, by: str, ends: tuple[str, Grade | None]
) -> None:
    found = check(workshop, ("3.1", "3.2"), ('by = "Harl Foundry Ltd"', by))
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        ([], FINE),
        ([("3.1", "3.2"), ("2026-05-04", "2026-06-04")], FINE),
        ([("grey-iron-250", "grey-iron-300")], ASKED),
        ([('C = "0.20 %"', 'C = "0.22 %"')], FINE),
        ([('C = "0.20 %"', 'C = "0.2201 %"')], BAD),
        ([('C = "0.20 %"', 'C = "0.1799 %"')], BAD),
        ([('Mn = "1.00 %"', 'Mn = "1.05 %"')], FINE),
        ([('Mn = "1.00 %"', 'Mn = "1.0501 %"')], BAD),
        ([('Mn = "1.00 %"', 'Cr = "2 %"')], FINE),
        ([('C = "0.20 %"', 'C = "0.3 %"'), ('"cast"', '"product"')], FINE),
        ([('C = "0.20 %"', 'C = "0.3 %"'), ('analysed = "cast"\n', "")], FINE),
    ],
)
def test_what_two_documents_say_of_one_heat(
    workshop: DesignFolder, changes: list[tuple[str, str]], ends: tuple[str, Grade | None]
) -> None:
    """Two documents of one heat have days and types of their own. 0.02 % of an element is rounding, and 5 % of it."""
    found = check(workshop, ("C-12", "C-13"), *changes)
    assert (found.outcome, found.grade) == ends


def test_a_certificate_that_nobody_shares_is_beside_nothing(workshop: DesignFolder) -> None:
    assert check(workshop, ("C-12", "C-13"), ("H-7", "H-8")).outcome == "not applicable"
    lone = changed(FIRST, ('number = "C-12"\n', ""), ('heat = "H-7"\n', ""))
    found = workshop.write(
        {"liner.toml": LINER, "first.toml": lone, "second.toml": lone.replace("first", "second")}
    )
    assert found.only(RULE, "first").outcome == "not applicable"
