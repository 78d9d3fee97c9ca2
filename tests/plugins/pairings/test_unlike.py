"""pairing.hardness and pairing.galvanic."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.materials import material, names
from speclint.handbook.materials.galvanic import metals
from speclint.testing import DesignFolder
from speclint_pairings.formulae.surfaces import harder_by
from speclint_pairings.formulae.tables import anodic_metal
from tests.plugins.pairings.bench import files

HARDNESS, GALVANIC = "pairing.hardness", "pairing.galvanic"

OWN = """
[sources]
WORKS = {{ work = "Works metallurgist's report 12", edition = "2024" }}
[works-steel]
title = "spindle steel"
family = "stainless-martensitic"
standard = "works"
like = "stainless-1.4021"
hardness = {{ value = {steel}, low = {steel}, high = {steel}, unit = "HB", source = "WORKS", place = "p. 3" }}
[works-iron]
title = "guide iron"
family = "grey-iron"
standard = "works"
like = "grey-iron-250"
hardness = {{ value = 200, low = 190, high = 210, unit = "HB", source = "WORKS", place = "p. 4" }}
"""
SPINDLE = 'kind = "valve-spindle"\nid = "spindle"\nmaterial = "works-steel"\nguide_material = "works-iron"\n'


@pytest.mark.parametrize(("steel", "outcome"), [(240, "conforms"), (239.5, "finding"), (180, "finding")])
def test_the_spindle_is_the_harder_by_30(workshop: DesignFolder, steel: float, outcome: str) -> None:
    """The guide at its hardest, 210 HB, and 30."""
    found = {"spindle.toml": SPINDLE, "own.toml": OWN.format(steel=steel)}
    workshop.write(found, settings='materials = ["own.toml"]\nleave_out = ["own.toml"]\n')
    check = workshop.only(HARDNESS)
    assert check.outcome == outcome
    assert check.grade is (Grade.OBSERVATION if outcome == "finding" else None)


def test_a_treated_spindle_is_hard(workshop: DesignFolder) -> None:
    found = {"spindle.toml": SPINDLE + 'surface = "nitrided"\n', "own.toml": OWN.format(steel=180)}
    workshop.write(found, settings='materials = ["own.toml"]\nleave_out = ["own.toml"]\n')
    assert workshop.only(HARDNESS).outcome == "conforms"


STRIKES = {
    "tappet": 'kind = "tappet"\nid = "striker"\nworks = "spindle"\n',
    "rocker": 'kind = "rocker"\nid = "striker"\nworks = "spindle"\n',
}


@pytest.mark.parametrize("striker", ["tappet", "rocker"])
@pytest.mark.parametrize(
    ("own", "surface", "cap", "grade"),
    [
        ("hard chromium plated", "case hardened", "not hardened", Grade.NONCONFORMITY),
        ("nitrided", "case hardened", "not hardened", Grade.NONCONFORMITY),
        ("nitrided", "nitrided", "through hardened", None),
        ("nitrided", "induction hardened", "nitrided", None),
        ("nitrided", "", "not hardened", None),
        ("nitrided", "case hardened", "", None),
        ("hard chromium plated", "case hardened", "", Grade.QUERY),
    ],
)
def test_a_cap_is_as_hard_as_what_strikes_it(
    workshop: DesignFolder, striker: str, own: str, surface: str, cap: str, grade: Grade | None
) -> None:
    """By words: a hardened tappet or rocker asks for a hardened cap, or a hardened spindle whose cap is silent."""
    spindle = SPINDLE + f'surface = "{own}"\n' + (f'cap = {{ hardening = "{cap}" }}\n' if cap else "")
    works = STRIKES[striker] + (f'surface = "{surface}"\n' if surface else "")
    found = {"spindle.toml": spindle, "striker.toml": works, "own.toml": OWN.format(steel=250)}
    workshop.write(found, settings='materials = ["own.toml"]\nleave_out = ["own.toml"]\n')
    check = workshop.only(HARDNESS)
    assert (check.outcome, check.grade) == ("conforms" if grade is None else "finding", grade)


def test_hardness_is_not_assessed_without_a_guide(workshop: DesignFolder) -> None:
    text = 'kind = "valve-spindle"\nid = "spindle"\nmaterial = "stainless-1.4021"\n'
    assert workshop.write({"spindle.toml": text}).only(HARDNESS).outcome == "not assessed"


@given(st.floats(100, 400), st.floats(100, 400))
def test_one_is_as_much_harder_as_the_other_is_softer(one: float, other: float) -> None:
    assert harder_by(H_1=one, H_2=other) == -harder_by(H_1=other, H_2=one)


def seat(metal: str, around: str = "") -> dict[str, str]:
    """A seat of a metal pressed into the steel block."""
    text = f'kind = "valve-seat"\nid = "seat"\nmaterial = "{metal}"\npressed_into = "block"\n'
    return {**files(), "seat.toml": text + (f'surroundings = "{around}"\n' if around else "")}


def test_iron_in_steel_agrees_in_any_surroundings(workshop: DesignFolder) -> None:
    """Both −0.85 V."""
    check = workshop.write(seat("grey-iron-300")).only(GALVANIC, "seat")
    assert (check.outcome, check.utilisation) == ("conforms", 0.0)


@pytest.mark.parametrize(
    ("metal", "around", "outcome", "grade"),
    [
        ("bronze-CC480K", "weather and wet", "finding", Grade.NONCONFORMITY),  # 0.85 − 0.40 = 0.45 V > 0.15
        ("bronze-CC480K", "", "finding", Grade.OBSERVATION),
        ("bronze-CC480K", "indoors", "finding", Grade.OBSERVATION),
        ("bronze-CC480K", "dry steam", "finding", Grade.OBSERVATION),
        ("bronze-CC480K", "oiled", "finding", Grade.OBSERVATION),
        ("stainless-1.4021", "indoors", "finding", Grade.OBSERVATION),  # 0.85 − 0.60 = 0.25 V > 0.15
        ("stainless-1.4021", "weather and wet", "finding", Grade.NONCONFORMITY),
    ],
)
def test_unlike_metals_by_their_surroundings(
    workshop: DesignFolder, metal: str, around: str, outcome: str, grade: Grade | None
) -> None:
    check = workshop.write(seat(metal, around)).only(GALVANIC, "seat")
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize(
    ("metal", "around", "holds", "outcome", "grade"),
    [
        ("stainless-1.4021", "indoors", "", "conforms", None),  # 0.25 V: at the limit
        ("stainless-1.4301", "indoors", "", "finding", Grade.OBSERVATION),  # 0.35 V > 0.25
        ("stainless-1.4301", "oiled", "", "conforms", None),
        ("stainless-1.4301", "dry steam", "", "finding", Grade.OBSERVATION),
        ("stainless-1.4301", "weather and wet", "", "finding", Grade.NONCONFORMITY),
        ("stainless-1.4301", "", "", "not assessed", None),
        ("stainless-1.4301", "oiled", 'pressure = "live"\n', "finding", Grade.OBSERVATION),
        ("stainless-1.4301", "", 'pressure = "live"\n', "finding", Grade.OBSERVATION),
    ],
)
def test_a_joint_stands_wet_where_it_holds_pressure(
    workshop: DesignFolder, metal: str, around: str, holds: str, outcome: str, grade: Grade | None
) -> None:
    text = f'kind = "bolted-joint"\nid = "studs"\nmaterial = "{metal}"\nholds = "block"\n{holds}'
    text += f'surroundings = "{around}"\n' if around else ""
    check = workshop.write({**files(), "studs.toml": text}).only(GALVANIC, "studs")
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize(
    ("metal", "links", "outcome"),
    [
        (
            "structural-S355",
            'closes = "block"\nover = "valve"\n',
            "conforms",
        ),  # steel on steel; it is clear of the valve
        ("stainless-1.4021", 'closes = "block"\nover = "valve"\n', "finding"),  # on the block: 0.25 V > 0.15
        ("structural-S355", 'over = "valve"\n', "not assessed"),
    ],
)
def test_a_cover_is_no_pair_with_the_valve_that_it_stands_over(
    workshop: DesignFolder, metal: str, links: str, outcome: str
) -> None:
    """Steel −0.85 V, the stainless valve −0.60 V: 0.25 V apart would be too much, if the two touched."""
    valve = 'kind = "poppet-valve"\nid = "valve"\nmaterial = "stainless-1.4021"\n'
    cover = f'kind = "chamber-cover"\nid = "cover"\nmaterial = "{metal}"\n{links}'
    check = workshop.write({**files(), "valve.toml": valve, "cover.toml": cover}).only(GALVANIC, "cover")
    assert check.outcome == outcome


def test_a_seat_that_is_in_nothing_is_not_assessed(workshop: DesignFolder) -> None:
    text = 'kind = "valve-seat"\nid = "seat"\nmaterial = "grey-iron-300"\n'
    assert workshop.write({"seat.toml": text}).only(GALVANIC).outcome == "not assessed"


def test_a_metal_that_the_index_lacks_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(seat("white-metal-tin", "indoors")).only(GALVANIC, "seat")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize("name", names())
def test_every_metal_named_stands_in_the_index(name: str) -> None:
    assert anodic_metal(material(name)) in ("", *metals())
