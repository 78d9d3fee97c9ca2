"""Strength of screws, bolts and studs by the class stamped on them, at room temperature.

Carbon and alloy steel after ISO 898-1 ("8.8"), stainless steel after ISO 3506-1 ("A4-70").

>>> property_class("8.8", 16e-3).proof_stress / 1e6, property_class("8.8", 20e-3).proof_stress / 1e6
(580.0, 600.0)
"""

from __future__ import annotations

from msgspec import Struct

from speclint.equations import Source
from speclint.errors import NotKnown
from speclint.handbook.tables import Row, rows

ISO_898_1 = Source(
    "ISO 898-1, Mechanical properties of fasteners made of carbon steel and alloy steel, Part 1",
    "2013",
    memory=True,
)
ISO_3506_1 = Source(
    "ISO 3506-1, Mechanical properties of corrosion-resistant stainless steel fasteners, Part 1",
    "2009",
    memory=True,
)
#: Above this, in K, ISO 898-1 does not cover its classes (150 °C; from memory).
HOTTEST = 423.15

_TABLES = (
    ("iso-898-1-2013-property-classes.csv", ISO_898_1),
    ("iso-3506-1-2009-property-classes.csv", ISO_3506_1),
)


class PropertyClass(Struct, frozen=True):
    """Least values of one property class at one diameter, stresses in Pa.

    ``yield_stress`` is the lower yield point, the stress at 0.2 % or that at 0.0048 d, as the standard gives
    it for the class. ``proof_stress`` is S_p; ISO 3506-1 has none, and there the stress at 0.2 % stands for
    it. ``hardness`` (Vickers) and ``elongation`` (ratio) are None where the standard gives none.
    """

    name: str
    tensile_strength: float
    yield_stress: float
    proof_stress: float
    hardness: float | None
    elongation: float | None
    source: Source


def property_class(name: str, diameter: float) -> PropertyClass:
    """Mechanical properties of a class, such as "8.8" or "A4-70", at a thread diameter in m.

    NotKnown is raised for a class that the standards do not give, and for a diameter outside 1.6 to 39 mm
    (9.8: to 16 mm; stainless classes 70 and 80 of A1 to A5 and F1: to 24 mm).
    Reference: ISO 898-1:2013, Table 3 and Table 5; ISO 3506-1:2009, Tables 2 and 3 (from memory).
    """
    size = round(diameter * 1e3, 6)
    for table, source in _TABLES:
        bands = [row for row in rows(table) if row["class"] == name]
        for row in bands:
            if max(float(row["over"]), 1.599999) < size <= float(row["to"]):
                return _of_row(row, source)
        if bands:
            raise NotKnown(
                f"{source.work.split(',')[0]} gives class {name} from 1.6 to {bands[-1]['to']} mm; "
                f"a thread of {size:g} mm is outside"
            )
    raise NotKnown(f"{name!r} is no property class; known: {', '.join(property_classes())}")


def property_classes() -> tuple[str, ...]:
    """Every class that the handbook knows."""
    return tuple(dict.fromkeys(row["class"] for table, _ in _TABLES for row in rows(table)))


def _of_row(row: Row, source: Source) -> PropertyClass:
    yield_stress = float(row["yield stress"]) * 1e6
    proof, hardness, elongation = (
        row.get(column, "") for column in ("proof stress", "hardness", "elongation")
    )
    return PropertyClass(
        name=row["class"],
        tensile_strength=float(row["tensile strength"]) * 1e6,
        yield_stress=yield_stress,
        proof_stress=float(proof) * 1e6 if proof else yield_stress,
        hardness=float(hardness) if hardness else None,
        elongation=float(elongation) / 100 if elongation else None,
        source=source,
    )
