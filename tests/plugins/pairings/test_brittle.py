"""material.brittle-in-bending."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from speclint import Grade
from speclint.handbook.materials import material
from speclint.testing import SETTINGS, DesignFolder

RULE = "material.brittle-in-bending"
KINDS = (
    "bolted-joint",
    "crosshead",
    "frame-fastening",
    "pin",
    "piston-rod",
    "rocker",
    "shaft",
    "slide-bar",
    "valve-spindle",
)
OWN = """
[own-steel]
title = "steel of the works"
family = "alloy-steel"
standard = "invented for tests"
elongation = {{ value = {stretch}, unit = "%", bound = "minimum", source = "common practice" }}
"""
WITH_OWN = 'materials = ["own.toml"]\n' + SETTINGS


#: What a kind has beside itself in the path of the load.
BESIDE = {
    "bolted-joint": '[nut]\nmaterial = "bolting-8.8"\n',
    "frame-fastening": '[nut]\nmaterial = "bolting-8.8"\n',
    "rocker": 'pin_material = "forging-42CrMo4"\n',
}


def part(kind: str, metal: str, more: str = "") -> dict[str, str]:
    more += BESIDE.get(kind, "")
    return {"part.toml": f'kind = "{kind}"\nid = "part"\nmaterial = "{metal}"\n{more}'}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("metal", ["grey-iron-300", "chilled-iron"])
def test_no_part_that_is_pulled_or_bent_is_of_brittle_iron(
    workshop: DesignFolder, kind: str, metal: str
) -> None:
    check = workshop.write(part(kind, metal)).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "which breaks without stretching" in check.says


@pytest.mark.parametrize("kind", KINDS)
def test_a_forging_stretches(workshop: DesignFolder, kind: str) -> None:
    """42CrMo4 quenched and tempered, EN 10083-3: 10 % at least, of 7 %."""
    check = workshop.write(part(kind, "forging-42CrMo4")).only(RULE)
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(0.7))


@pytest.mark.parametrize(
    ("metal", "outcome"),
    [
        ("ductile-iron-400-15", "conforms"),  # EN 1563, thick wall: 11 %
        ("ductile-iron-500-7", "finding"),  # 5 %
        ("ductile-iron-600-3", "finding"),  # 1 %
        ("bolting-10.9", "conforms"),  # ISO 898-1: 9 %
        ("case-hardening-16MnCr5", "conforms"),  # DIN 17210: 9 %
        ("case-hardening-20MnCr5", "conforms"),  # 7 %: at the limit
    ],
)
def test_metals_of_the_handbook(workshop: DesignFolder, metal: str, outcome: str) -> None:
    assert workshop.write(part("rocker", metal)).only(RULE).outcome == outcome


@pytest.mark.parametrize("kind", sorted(BESIDE))
@pytest.mark.parametrize(
    ("metal", "outcome"),
    [("grey-iron-300", "finding"), ("ductile-iron-600-3", "finding"), ("", "not assessed")],
)
def test_neither_pin_nor_nut_is_of_brittle_iron(
    workshop: DesignFolder, kind: str, metal: str, outcome: str
) -> None:
    found = part(kind, "forging-42CrMo4")["part.toml"]
    sound = BESIDE[kind].split('"')[1]
    other = found.replace(f'material = "{sound}"\n', f'material = "{metal}"\n' if metal else "")
    if kind == "rocker":  # of one metal with its pin
        other = found.replace(BESIDE[kind], f'pin_material = "{metal}"\n' if metal else "")
    check = workshop.write({"part.toml": other}).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if metal else None)


@pytest.mark.parametrize(("stretch", "outcome"), [("7.0", "conforms"), ("6.9", "finding")])
def test_the_limit_from_both_sides(workshop: DesignFolder, stretch: str, outcome: str) -> None:
    found = {**part("rocker", "own-steel"), "own.toml": OWN.format(stretch=stretch)}
    assert workshop.write(found, settings=WITH_OWN).only(RULE).outcome == outcome


def test_the_limit_is_a_setting(workshop: DesignFolder) -> None:
    softer = SETTINGS + f'[limits."{RULE}"]\nelongation = "5 %"\n'
    assert (
        workshop.write(part("rocker", "ductile-iron-500-7"), settings=softer).only(RULE).outcome == "conforms"
    )


@settings(max_examples=10, deadline=None)
@given(stretch=st.floats(1.0, 30.0), more=st.floats(0.1, 10.0))
def test_what_stretches_more_never_fares_worse(
    tmp_path_factory: pytest.TempPathFactory, stretch: float, more: float
) -> None:
    shop = DesignFolder(tmp_path_factory.mktemp("brittle"))
    used = []
    for value in (stretch, stretch + more):
        found = {**part("shaft", "own-steel"), "own.toml": OWN.format(stretch=f"{value:.4f}")}
        used.append(shop.write(found, settings=WITH_OWN).only(RULE).utilisation)
    assert used[0] is not None
    assert used[1] is not None
    assert used[1] < used[0]


@pytest.mark.parametrize(
    ("follower", "outcome"),
    [("roller", "finding"), ("flat foot", "not applicable"), ("crowned foot", "not applicable")],
)
def test_a_tappet_with_a_foot_is_only_pressed(workshop: DesignFolder, follower: str, outcome: str) -> None:
    found = part("tappet", "chilled-iron", f'follower = "{follower}"\n')
    assert workshop.write(found).only(RULE).outcome == outcome


PLAN = """
kind = "lifting-plan"
id = "plan"
material = "{held}"
[points.front]
form = "eye bolt"
[points.back]
form = "lug"
[points.back.lug]
material = "{lug}"
"""


@pytest.mark.parametrize(
    ("held", "lug", "outcome"),
    [
        ("plate-P265GH", "plate-P265GH", "conforms"),
        ("grey-iron-250", "plate-P265GH", "finding"),  # an eye screwed into iron
        ("plate-P265GH", "grey-iron-250", "finding"),
    ],
)
def test_every_lifting_point_is_looked_at(workshop: DesignFolder, held: str, lug: str, outcome: str) -> None:
    assert workshop.write({"plan.toml": PLAN.format(held=held, lug=lug)}).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    "found",
    [
        {"part.toml": 'kind = "rocker"\nid = "part"\n'},
        part("shaft", "unobtainium"),
        part("shaft", "wire-patented-SM"),  # its standard promises no elongation
        part("tappet", "chilled-iron"),
        {"plan.toml": 'kind = "lifting-plan"\nid = "plan"\nmaterial = "plate-P265GH"\n'},
        {"plan.toml": PLAN.format(held="plate-P265GH", lug="x").replace('material = "x"', "")},
    ],
)
def test_not_assessed(workshop: DesignFolder, found: dict[str, str]) -> None:
    assert workshop.write(found).only(RULE).outcome == "not assessed"


def test_pistons_rings_and_seats_may_be_of_iron(workshop: DesignFolder) -> None:
    for kind in ("piston", "piston-ring", "valve-seat", "cylinder-liner"):
        assert workshop.write(part(kind, "grey-iron-250")).check(RULE) == []


@pytest.mark.parametrize(
    ("name", "stretch"), [("case-hardening-16MnCr5", 0.09), ("case-hardening-20MnCr5", 0.07)]
)
def test_the_core_of_case_hardened_steel(name: str, stretch: float) -> None:
    """DIN 17210, table 6, 11 mm (from memory)."""
    assert material(name).elongation().low == pytest.approx(stretch)
