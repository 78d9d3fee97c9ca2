"""The tables of the family: what a material counts as where it rubs, and which surfaces may meet."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache

from speclint import Source
from speclint.handbook.materials import Material
from speclint_pairings.sources import WORKS

_CLASSES = "metal-classes-common-practice.csv"
_ANODIC = "anodic-metals-common-practice.csv"
_PAIRS = "pairs-handbooks-and-common-practice.csv"


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the table says of two surfaces: whether they may meet, whether only under oil, why, and who says so."""

    may: bool
    needs_oil: bool
    reason: str
    source: Source


def surface_class(material: Material, treatment: str = "") -> str:
    """What a surface counts as, by its treatment or else its material; "" where the table does not say."""
    for row in _rows(_CLASSES):
        if row["treatment"]:
            if row["treatment"] == treatment:
                return row["counts_as"]
        elif row["family"] == material.family and material.name.startswith(row["name_begins"]):
            return row["counts_as"]
    return ""


def anodic_metal(material: Material) -> str:
    """Which metal of the anodic index a material is; "" where the index holds none like it."""
    for row in _rows(_ANODIC):
        if row["family"] == material.family and material.name.startswith(row["name_begins"]):
            return row["metal"]
    return ""


def verdict(contact: str, one: str, other: str) -> Verdict | None:
    """What the table says of two classes of surface in a contact ("slides", "strikes"); None where nothing."""
    return _verdicts().get((contact, frozenset((one, other))))


@cache
def _verdicts() -> dict[tuple[str, frozenset[str]], Verdict]:
    return {
        (row["contact"], frozenset((row["one"], row["other"]))): Verdict(
            row["may"] == "yes", row["needs_oil"] == "yes", row["reason"], WORKS[row["source"]]
        )
        for row in _rows(_PAIRS)
    }


@cache
def _rows(file: str) -> tuple[dict[str, str], ...]:
    from importlib.resources import files

    text = files("speclint_pairings").joinpath("data", file).read_text(encoding="utf-8")
    lines = (line for line in text.splitlines() if line and not line.startswith("#"))
    return tuple(csv.DictReader(lines, strict=True))
