"""made.takes-its-skin: the carbon of a part as made, by its analysis, and the skin that its drawing asks for."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, expect_not_applicable

RULE = "made.takes-its-skin"


def certified(
    workshop: DesignFolder, carbon: str, surface: str, metal: str = "forging-42CrMo4", kind: str = "shaft"
) -> Check:
    part = f'kind = "{kind}"\nid = "part"\nmaterial = "{metal}"\nsurface = "{surface}"\n'
    piece = f'kind = "made-part"\nid = "piece"\nof = "part"\n[certificate.analysis]\nMn = "0.7 %"\n{carbon}\n'
    return workshop.write({"part.toml": part, "piece.toml": piece}).only(RULE, "piece")


@pytest.mark.parametrize(
    ("carbon", "surface", "outcome"),
    [
        ("0.31 %", "case hardened", "conforms"),
        ("0.311 %", "case hardened", "finding"),
        ("0.31 % ±0.01", "case hardened", "finding"),
        ("0.28 %", "induction hardened", "conforms"),
        ("0.279 %", "induction hardened", "finding"),
        ("0.28 % ±0.01", "induction hardened", "finding"),
    ],
)
def test_the_carbon_of_the_cast_from_both_sides(
    workshop: DesignFolder, carbon: str, surface: str, outcome: str
) -> None:
    check = certified(workshop, f'C = "{carbon}"', surface)
    grade = Grade.NONCONFORMITY if outcome == "finding" else None
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize(
    ("carbon", "surface", "metal", "says"),
    [
        ("", "case hardened", "forging-42CrMo4", "states no carbon"),
        ('C = "0.2 %"', "hard chromium plated", "forging-42CrMo4", "not said to be hardened"),
        ('C = "0.2 %"', "nitrided", "forging-42CrMo4", "does not decide"),
        ('C = "0.2 %"', "induction hardened", "stainless-1.4021", "does not decide"),
        ('C = "3.2 %"', "induction hardened", "grey-iron-250", "does not decide"),
        ('C = "3.2 %"', "case hardened", "grey-iron-250", "does not decide"),
        ('C = "0.05 %"', "induction hardened", "stainless-1.4301", "does not decide"),
    ],
)
def test_where_carbon_decides_nothing(
    workshop: DesignFolder, carbon: str, surface: str, metal: str, says: str
) -> None:
    expect_not_applicable(certified(workshop, carbon, surface, metal), says)


def test_a_martensitic_stainless_steel_may_have_too_much_for_a_case(workshop: DesignFolder) -> None:
    """EN 10088-3 allows 1.4021 from 0.16 to 0.25 % of carbon: what the melt has decides."""
    assert certified(workshop, 'C = "0.32 %"', "case hardened", "stainless-1.4021").outcome == "finding"
    assert certified(workshop, 'C = "0.20 %"', "case hardened", "stainless-1.4021").outcome == "conforms"


def test_a_part_of_which_no_surface_is_hardened(workshop: DesignFolder) -> None:
    files = {
        "part.toml": 'kind = "cylinder-liner"\nid = "part"\nmaterial = "grey-iron-250"\n',
        "piece.toml": 'kind = "made-part"\nid = "piece"\nof = "part"\n[certificate.analysis]\nC = "3.2 %"\n',
    }
    expect_not_applicable(workshop.write(files).only(RULE, "piece"), "no surface of such a part")
