"""material.takes-its-skin: a metal takes the treatment by which its surface is said to be hardened."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import SETTINGS, DesignFolder, expect_not_applicable

RULE = "material.takes-its-skin"
OWN = """
[own-steel]
title = "steel of the works"
family = "{family}"
standard = "invented for tests"
composition = {{ unit = "%", C = [{carbon}], source = "common practice" }}
"""


def treated(
    workshop: DesignFolder, surface: str, carbon: str = "0.10, 0.20", family: str = "case-hardening-steel"
) -> Check:
    spec = f'kind = "cam"\nid = "part"\nmaterial = "own-steel"\nsurface = "{surface}"\n'
    own = OWN.format(family=family, carbon=carbon)
    settings = 'materials = ["own.toml"]\n' + SETTINGS
    return workshop.write({"part.toml": spec, "own.toml": own}, settings=settings).only(RULE)


@pytest.mark.parametrize(
    ("surface", "carbon", "outcome"),
    [
        ("case hardened", "0.24, 0.31", "conforms"),  # 28Cr4 of EN 10084
        ("case hardened", "0.24, 0.311", "finding"),
        ("case hardened", "0.38, 0.45", "finding"),
        ("induction hardened", "0.28, 0.40", "conforms"),
        ("induction hardened", "0.279, 0.40", "finding"),
        ("induction hardened", "0.10, 0.20", "finding"),
        ("nitrided", "0.10, 0.20", "conforms"),
        ("nitrided", "0.38, 0.45", "conforms"),
    ],
)
def test_the_carbon_of_a_hardened_steel_from_both_sides(
    workshop: DesignFolder, surface: str, carbon: str, outcome: str
) -> None:
    check = treated(workshop, surface, carbon)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("metal", "surface", "outcome"),
    [
        ("grey-iron-250", "case hardened", "finding"),
        ("grey-iron-250", "induction hardened", "conforms"),
        ("grey-iron-250", "nitrided", "conforms"),
        ("bronze-CC483K", "nitrided", "finding"),
        ("bronze-CC483K", "induction hardened", "finding"),
        ("forging-42CrMo4", "case hardened", "finding"),  # EN 10083-3: 0.38 to 0.45 % of carbon
        ("forging-42CrMo4", "induction hardened", "conforms"),
        ("case-hardening-16MnCr5", "case hardened", "conforms"),
        ("structural-S235", "case hardened", "finding"),  # 0.17 % of carbon, and a soft core
        ("structural-S235", "nitrided", "conforms"),
        ("plate-P235GH", "case hardened", "finding"),
        ("case-hardening-20MnCr5", "case hardened", "conforms"),
        ("stainless-1.4021", "induction hardened", "conforms"),
        ("stainless-1.4028", "induction hardened", "conforms"),
        ("stainless-1.4028", "case hardened", "finding"),  # EN 10088-3: 0.26 to 0.35 % of carbon
        ("stainless-1.4057", "case hardened", "conforms"),  # EN 10088-3: 0.12 to 0.22 % of carbon
        ("stainless-1.4301", "case hardened", "finding"),  # austenite: no martensite forms when it is cooled
        ("stainless-1.4301", "induction hardened", "finding"),
        ("stainless-1.4301", "nitrided", "conforms"),
        ("austenitic-iron-XNiCr20-2", "induction hardened", "finding"),
        ("austenitic-iron-XNiCr20-2", "nitrided", "conforms"),
    ],
)
def test_metals_of_the_handbook(workshop: DesignFolder, metal: str, surface: str, outcome: str) -> None:
    spec = f'kind = "tappet"\nid = "part"\nmaterial = "{metal}"\nsurface = "{surface}"\n'
    assert workshop.write({"part.toml": spec}).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("kind", "outcome"), [("cam", "finding"), ("tappet", "finding"), ("pin", "conforms")]
)
def test_what_touches_on_a_line_wants_a_strong_core(workshop: DesignFolder, kind: str, outcome: str) -> None:
    """S235 has at most 0.17 % of carbon and takes a case; a pin in its bush asks no more of it."""
    spec = f'kind = "{kind}"\nid = "part"\nmaterial = "structural-S235"\nsurface = "case hardened"\n'
    check = workshop.write({"part.toml": spec}).only(RULE)
    assert check.outcome == outcome
    if outcome == "finding":
        assert "is no steel for case hardening" in check.says


def test_the_pin_of_a_rocker_is_judged_too(workshop: DesignFolder) -> None:
    spec = 'kind = "rocker"\nid = "part"\nmaterial = "forging-42CrMo4"\npin_material = "{}"\n'
    spec += 'pin_surface = "case hardened"\n'
    sound = workshop.write({"part.toml": spec.format("case-hardening-16MnCr5")}).only(RULE)
    assert sound.outcome == "conforms"
    assert workshop.write({"part.toml": spec.format("forging-42CrMo4")}).only(RULE).outcome == "finding"


_SOFT = 'kind = "{}"\nid = "part"\nmaterial = "{}"\n'


@pytest.mark.parametrize(
    ("kind", "metal", "more", "outcome"),
    [
        ("pin", "case-hardening-16MnCr5", "", "finding"),
        ("pin", "case-hardening-16MnCr5", 'surface = "case hardened"\n', "conforms"),
        ("pin", "case-hardening-16MnCr5", 'surface = "hard chromium plated"\n', "not applicable"),
        ("pin", "forging-42CrMo4", "", "not applicable"),
        ("shaft", "case-hardening-16MnCr5", "", "not applicable"),
        ("cam", "case-hardening-20MnCr5", "", "finding"),
        ("tappet", "forging-42CrMo4", 'hardened_depth = "1.2 mm"\n', "finding"),
        (
            "tappet",
            "forging-42CrMo4",
            'hardened_depth = "1.2 mm"\nsurface = "induction hardened"\n',
            "conforms",
        ),
        ("tappet", "grey-iron-250", "", "not applicable"),
        ("rocker", "forging-42CrMo4", 'pin_material = "case-hardening-16MnCr5"\n', "finding"),
    ],
)
def test_what_is_made_to_be_hardened_is(
    workshop: DesignFolder, kind: str, metal: str, more: str, outcome: str
) -> None:
    """Steel for case hardening is soft until it is hardened, and a skin of some depth is made in some way."""
    assert workshop.write({"part.toml": _SOFT.format(kind, metal) + more}).only(RULE).outcome == outcome


@pytest.mark.parametrize("surface", ["", 'surface = "hard chromium plated"\n', 'surface = "hard faced"\n'])
def test_a_plated_surface_is_another_metal(workshop: DesignFolder, surface: str) -> None:
    spec = f'kind = "slide-bar"\nid = "part"\nmaterial = "bronze-CC483K"\n{surface}'
    expect_not_applicable(workshop.write({"part.toml": spec}).only(RULE), "no surface of it")


_DEPTHS = [
    # common practice: 0.8 mm in some hundred hours of nitriding, 4 mm of a case, 0.5 to 10 mm by induction
    ("nitrided", "0.8 mm", "conforms"),
    ("nitrided", "0.81 mm", "finding"),
    ("nitrided", "1.2 mm ±0.2", "finding"),
    ("case hardened", "4 mm", "conforms"),
    ("case hardened", "4.05 mm", "finding"),
    ("induction hardened", "10 mm", "conforms"),
    ("induction hardened", "10.1 mm", "finding"),
    ("induction hardened", "0.5 mm", "conforms"),
    ("induction hardened", "0.495 mm", "finding"),
    ("hard chromium plated", "9 mm", "not applicable"),
]


@pytest.mark.parametrize("kind", ["cam", "tappet"])
@pytest.mark.parametrize(("surface", "depth", "outcome"), _DEPTHS)
def test_a_skin_is_as_deep_as_its_process_makes_it(
    workshop: DesignFolder, kind: str, surface: str, depth: str, outcome: str
) -> None:
    metal = "forging-42CrMo4" if surface == "induction hardened" else "case-hardening-16MnCr5"
    spec = f'kind = "{kind}"\nid = "part"\nmaterial = "{metal}"\nsurface = "{surface}"\nhardened_depth = "{depth}"\n'
    check = workshop.write({"part.toml": spec}).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("cap", "outcome"),
    [
        ('hardening = "nitrided", hardened_depth = "0.8 mm"', "conforms"),
        ('hardening = "nitrided", hardened_depth = "0.81 mm"', "finding"),
        ('hardening = "nitrided"', "not applicable"),
        ('hardening = "through hardened", hardened_depth = "9 mm"', "not applicable"),
        ("", "not applicable"),
    ],
)
def test_the_skin_of_a_cap_is_judged_too(workshop: DesignFolder, cap: str, outcome: str) -> None:
    spec = f'kind = "valve-spindle"\nid = "part"\ncap = {{ {cap} }}\n'
    assert workshop.write({"part.toml": spec}).only(RULE).outcome == outcome
