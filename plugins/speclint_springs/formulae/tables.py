"""Tables of the family: ends, weight, and the strength that a standard guarantees for its wire."""

from __future__ import annotations

from speclint import require
from speclint.equations import Metres
from speclint.handbook.materials import Material
from speclint.handbook.springs import en_13906_1_clause
from speclint.handbook.tables import Reading

#: Grades of wire that do not rust: the stainless ones of EN 10270-3 and one of a nickel alloy.
RUSTLESS = ("1.4310", "1.4401", "1.4568", "2.4669")

#: Wire diameters that the ends add to the free length without pitch (EN 13906-1, recalled).
_END_COILS = {"ground": 0.0, "closed": 1.5}


def least_wire_strength(material: Material, diameter: Metres) -> Reading:
    """Least tensile strength [Pa] that the standard guarantees for a wire of a diameter [m].

    NotKnown where the data hold no strength of wire; OutOfRange beyond the standard's diameters.

    >>> from speclint.handbook.materials import material
    >>> round(least_wire_strength(material("wire-oil-tempered-VDSiCr"), diameter=0.008).high / 1e6)
    1710
    """
    found = material.wire_strength(diameter)
    return Reading.exact(f"least {found.what}", found.low, found.unit, found.source)


def end_coils_in_pitch(ends: str) -> Reading:
    """Wire diameters that closed ends add to the free length without pitch; OutOfRange for other ends.

    >>> end_coils_in_pitch("closed").nominal
    1.5
    """
    require(ends in _END_COILS, f"ends {ends!r} are none of {', '.join(_END_COILS)}")
    source = en_13906_1_clause("9.11, increase of coil diameter")
    return Reading.exact(f"wires of {ends} ends without pitch", _END_COILS[ends], "", source)
