"""Tables of the family: quality grades, and the strength that a standard guarantees for its wire."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, require
from speclint.equations import Metres
from speclint.handbook.materials import Material
from speclint.handbook.springs import EN_13906_1
from speclint.handbook.tables import Reading
from speclint_springs.sources import EN_15800

#: Factor of each quality grade on the tolerances of load (EN 15800, recalled).
_FACTORS = {"1": 0.63, "2": 1.0, "3": 1.6}

#: Wire diameters that the ends add to the free length without pitch (EN 13906-1, recalled).
_END_COILS = {"ground": 0.0, "closed": 1.5}
_SENSE_OF_WEIGHT = {"upwards": -1.0, "sideways": 0.0, "downwards": 1.0}


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
    source = EN_13906_1.at("clause on increase of coil diameter")
    return Reading.exact(f"wires of {ends} ends without pitch", _END_COILS[ends], "", source)


def sense_of_opening_weight(opens: str) -> Reading:
    """1 where weight opens a valve that opens downwards, −1 where it shuts one that opens upwards.

    >>> sense_of_opening_weight("downwards").nominal
    1.0
    """
    return Reading.exact(f"sense of weight, opening {opens}", _SENSE_OF_WEIGHT[opens], "", FIRST_PRINCIPLES)
