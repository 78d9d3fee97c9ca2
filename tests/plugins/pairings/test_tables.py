"""What a material counts as, and the table of pairs."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

import speclint_pairings
from speclint.handbook.materials import material, names
from speclint_pairings.formulae.tables import (
    oil_density,
    oil_expansion,
    oil_viscosity_at_40,
    oil_viscosity_at_100,
    surface_class,
    verdict,
)
from speclint_pairings.sources import WORKS

DATA = Path(speclint_pairings.__file__).parent / "data"


def rows(file: str) -> list[dict[str, str]]:
    lines = (DATA / file).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader((line for line in lines if line and not line.startswith("#")), strict=True))


PAIRS = rows("pairs-handbooks-and-common-practice.csv")
CLASSES = {row["counts_as"] for row in rows("metal-classes-common-practice.csv")}


@pytest.mark.parametrize(
    ("name", "treatment", "counts_as"),
    [
        ("ring-iron", "", "grey iron"),
        ("phosphoric-cylinder-iron", "", "grey iron"),
        ("structural-S355", "", "unhardened steel"),
        ("plate-P265GH", "", "unhardened steel"),
        ("nitriding-34CrAlNi7", "", "unhardened steel"),
        ("nitriding-34CrAlNi7", "nitrided", "hardened steel"),
        ("case-hardening-16MnCr5", "case hardened", "hardened steel"),
        ("ring-iron", "hard chromium plated", "chromium plate"),
        ("stainless-1.4021", "", "martensitic stainless steel"),
        ("stainless-1.4301", "", "austenitic stainless steel"),
        ("stainless-1.4021", "hard faced", "hard facing"),
        ("bronze-CC483K", "", "bronze"),
        ("gunmetal-CC491K", "", "bronze"),
        ("phosphor-bronze-PB102", "", "bronze"),
        ("aluminium-bronze-CC333G", "", "aluminium bronze"),
        ("brass-CW614N", "", "brass"),
        ("polymer-PTFE-carbon", "", "polymer"),
    ],
)
def test_what_a_surface_counts_as(name: str, treatment: str, counts_as: str) -> None:
    assert surface_class(material(name), treatment) == counts_as


@pytest.mark.parametrize("name", names())
def test_every_material_of_the_handbook_has_a_class(name: str) -> None:
    assert surface_class(material(name))


@pytest.mark.parametrize("row", PAIRS, ids=lambda row: f"{row['one']} {row['contact']} {row['other']}")
def test_every_row_has_classes_that_exist_a_reason_and_a_source(row: dict[str, str]) -> None:
    assert {row["one"], row["other"]} <= CLASSES
    assert row["contact"] in ("slides", "strikes")
    assert row["may"] in ("yes", "no")
    assert row["needs_oil"] in ("yes", "no")
    assert not (row["may"] == "no" and row["needs_oil"] == "yes")
    assert len(row["reason"]) > 15
    assert row["source"] in WORKS


def test_no_pair_stands_twice() -> None:
    keys = [(row["contact"], frozenset((row["one"], row["other"]))) for row in PAIRS]
    assert len(keys) == len(set(keys))


@given(
    st.sampled_from(sorted(CLASSES)), st.sampled_from(sorted(CLASSES)), st.sampled_from(["slides", "strikes"])
)
def test_the_order_of_two_surfaces_does_not_matter(one: str, other: str, contact: str) -> None:
    assert verdict(contact, one, other) == verdict(contact, other, one)


@pytest.mark.parametrize(
    ("one", "other", "may"),
    [
        ("grey iron", "unhardened steel", False),
        ("grey iron", "grey iron", True),
        ("bronze", "hardened steel", True),
        ("martensitic stainless steel", "martensitic stainless steel", False),
        ("austenitic stainless steel", "austenitic stainless steel", False),
    ],
)
def test_the_pairs_that_every_fitter_knows(one: str, other: str, may: bool) -> None:
    found = verdict("slides", one, other)
    assert found is not None
    assert found.may is may


def test_a_pair_that_no_source_covers_is_not_in_the_table() -> None:
    assert verdict("slides", "copper", "brass") is None
    assert verdict("slides", "grey iron", "chilled iron") is not None


def test_the_figures_of_an_oil_lie_in_the_middle_of_their_limits() -> None:
    """Of ISO VG 680, by hand: 680 mm²/s ± 10 %; 35 to 39 mm²/s; 895 to 925 kg/m³; 6 to 7 in 10 000 per kelvin."""
    for reading, low, middle, high in (
        (oil_viscosity_at_40("ISO VG 680"), 612e-6, 680e-6, 748e-6),
        (oil_viscosity_at_100("ISO VG 680"), 35e-6, 37e-6, 39e-6),
        (oil_density("ISO VG 680"), 895.0, 910.0, 925.0),
        (oil_expansion(), 6.0e-4, 6.5e-4, 7.0e-4),
    ):
        assert (reading.low, reading.nominal, reading.high) == pytest.approx((low, middle, high))
