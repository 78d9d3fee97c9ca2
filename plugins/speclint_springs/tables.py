"""Tables of the family: quality grades, and the strength that a standard warrants of its wire."""

from __future__ import annotations

from speclint import require
from speclint.formula import Metres
from speclint.handbook.materials import Material
from speclint.handbook.reading import Reading
from speclint_springs.sources import EN_15800

#: Factor of each quality grade on the tolerances of load (EN 15800, recalled).
_FACTORS = {"1": 0.63, "2": 1.0, "3": 1.6}


def quality_factor(grade: str) -> Reading:
    """Factor of a quality grade on the permissible deviations; OutOfRange for others than 1, 2 and 3.

    >>> quality_factor("3").nominal
    1.6
    """
    require(grade in _FACTORS, f"quality grade {grade!r} is none of {', '.join(_FACTORS)}")
    return Reading.exact(
        f"factor of quality grade {grade}", _FACTORS[grade], "", EN_15800.at("quality grades")
    )


def least_wire_strength(material: Material, diameter: Metres) -> Reading:
    """Least tensile strength [Pa] that the standard warrants of a wire of a diameter [m].

    NotKnown where the data hold no strength of wire; OutOfRange beyond the standard's diameters.

    >>> from speclint.handbook.materials import material
    >>> round(least_wire_strength(material("wire-oil-tempered-VDSiCr"), diameter=0.008).high / 1e6)
    1710
    """
    found = material.wire_strength(diameter)
    return Reading.exact(f"least {found.what}", found.low, found.unit, found.source)
