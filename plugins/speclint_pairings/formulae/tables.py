"""The tables of the family: the class of a surface, and which surfaces may run together."""

from __future__ import annotations

from functools import cache

from msgspec import Struct

from speclint import COMMON_PRACTICE, NotKnown, Source
from speclint.handbook.materials import Material
from speclint.handbook.tables import Reading, Row, rows
from speclint_pairings.sources import ISO_3448, WORKS

_FAMILY = "speclint_pairings"
_CLASSES = "metal-classes-common-practice.csv"
_ANODIC = "anodic-metals-common-practice.csv"
_PAIRS = "pairs-handbooks-and-common-practice.csv"
_RUBBED = "pressure-velocity-handbooks-and-common-practice.csv"
_OILS = "cylinder-oils-iso-3448-1992.csv"


class Verdict(Struct, frozen=True):
    """Entry of the table for two surfaces: whether they may run together, and only with oil; why; its source."""

    may: bool
    needs_oil: bool
    reason: str
    source: Source


def surface_class(material: Material, treatment: str = "") -> str:
    """The class of a surface, by its treatment or else its material; "" where the table has none."""
    for row in rows(_CLASSES, _FAMILY):
        if row["treatment"]:
            if row["treatment"] == treatment:
                return row["counts_as"]
        elif row["family"] == material.family and material.name.startswith(row["name_begins"]):
            return row["counts_as"]
    return ""


def anodic_metal(material: Material) -> str:
    """Which metal of the anodic index a material is; "" where the index has none like it."""
    for row in rows(_ANODIC, _FAMILY):
        if row["family"] == material.family and material.name.startswith(row["name_begins"]):
            return row["metal"]
    return ""


def verdict(contact: str, one: str, other: str) -> Verdict | None:
    """Entry of the table for two classes of surface in a contact ("slides", "strikes"); None where it has none."""
    return _verdicts().get((contact, frozenset((one, other))))


class Rated(Struct, frozen=True):
    """Entry of the table of rubbing pairs: pressure times speed in Pa·m/s, the kind of pair, and its source."""

    pv: float
    reason: str
    source: Source


def rated(contact: str, one: str, other: str, oil: str) -> Rated | None:
    """Entry for two classes of surface in a contact ("slides", "turns", "swings") with an oil, or None."""
    return _ratings().get((contact, frozenset((one, other)), oil))


def pressure_velocity(contact: str, one: str, other: str, oil: str) -> Reading:
    """Greatest mean pressure times mean speed of a pair, Pa·m/s; NotKnown for a pair that is not in the table.

    >>> pressure_velocity("swings", "bronze", "hardened steel", "grease").nominal / 1e6
    1.75
    """
    found = rated(contact, one, other, oil)
    if found is None:
        raise NotKnown(f"no pressure times speed is held for {one} on {other} with {oil}")
    what = f"pressure times speed of {one} on {other}, {oil}: {found.reason}"
    return Reading.exact(what, found.pv, "Pa·m/s", found.source)


def oil_viscosity_at_40(oil_class: str) -> Reading:
    """Kinematic viscosity at 40 °C of a class of cylinder oil, m²/s, within its limits of 10 % either way.

    >>> round(oil_viscosity_at_40("ISO VG 680").low * 1e6)
    612
    """
    middle = float(_oil(oil_class)["nu_40_mm2_s"]) * 1e-6
    what = f"kinematic viscosity of {oil_class} at 40 °C"
    return Reading(what, middle, 0.9 * middle, 1.1 * middle, "m²/s", ISO_3448.at("table 1"))


def oil_viscosity_at_100(oil_class: str) -> Reading:
    """Kinematic viscosity at 100 °C of a mineral cylinder oil of a class, m²/s."""
    row = _oil(oil_class)
    low, high = (float(row[f"nu_100_{side}_mm2_s"]) * 1e-6 for side in ("low", "high"))
    what = f"kinematic viscosity of {oil_class} at 100 °C, mineral oil"
    return Reading(what, (low + high) / 2, low, high, "m²/s", COMMON_PRACTICE)


def oil_density(oil_class: str) -> Reading:
    """Density at 15 °C of a mineral cylinder oil of a class, kg/m³."""
    row = _oil(oil_class)
    low, high = (float(row[f"density_{side}_kg_m3"]) for side in ("low", "high"))
    return Reading(f"density of {oil_class} at 15 °C", (low + high) / 2, low, high, "kg/m³", COMMON_PRACTICE)


def oil_expansion() -> Reading:
    """Loss of density of a mineral oil per kelvin, 1/K."""
    return Reading("loss of density of mineral oil", 650e-6, 600e-6, 700e-6, "1/K", COMMON_PRACTICE)


def _oil(oil_class: str) -> Row:
    for row in rows(_OILS, _FAMILY):
        if row["class"] == oil_class:
            return row
    raise NotKnown(f"no cylinder oil of class {oil_class} is held here")


@cache
def _ratings() -> dict[tuple[str, frozenset[str], str], Rated]:
    return {
        (row["contact"], frozenset((row["one"], row["other"])), row["oil"]): Rated(
            float(row["pv_MPa_m_s"]) * 1e6, row["reason"], WORKS[row["source"]]
        )
        for row in rows(_RUBBED, _FAMILY)
    }


@cache
def _verdicts() -> dict[tuple[str, frozenset[str]], Verdict]:
    return {
        (row["contact"], frozenset((row["one"], row["other"]))): Verdict(
            row["may"] == "yes", row["needs_oil"] == "yes", row["reason"], WORKS[row["source"]]
        )
        for row in rows(_PAIRS, _FAMILY)
    }
