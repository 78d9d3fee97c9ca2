"""Areas that shear when a thread strips: the bolt's along the nut's crests, the nut's along the bolt's.

A Reading's nominal and high are the area of the basic profile, its low that at worst limits of both parts.

>>> area = external_stripping_area("M20", 20e-3)
>>> 0.6 < area.low / area.nominal < 0.9
True
"""

from __future__ import annotations

from speclint.equations import require
from speclint.handbook.bolted_joints import FED_STD_H28, external_shear_area, internal_shear_area
from speclint.handbook.tables import Reading
from speclint.handbook.threads.geometry import thread
from speclint.handbook.threads.limits import limits


def external_stripping_area(designation: str, length: float) -> Reading:
    """Area over which the bolt's thread shears, m².

    ``length``: engagement of full thread, m (take off chamfers and countersinks). Low is at the widest nut
    (minor diameter) and the thinnest bolt (pitch diameter). NotKnown is raised as by ``limits``, OutOfRange
    for a length that is not above 0.
    Reference: FED-STD-H28/2B, formulae of shear areas, as reproduced in public calculations; limits as ``limits``.
    """
    require(length > 0, f"length of engagement must be above 0; it is {length * 1e3:g} mm")
    t, at = thread(designation), limits(designation)
    whole = external_shear_area(t.minor_diameter, t.pitch_diameter, t.pitch, length, t.flank_angle)
    worst = external_shear_area(at.nut_minor[1], at.bolt_pitch[0], t.pitch, length, t.flank_angle)
    what = f"stripping area of {t.name} bolt over {length * 1e3:g} mm, {at.fit}"
    return Reading(what, whole, worst, whole, "m²", FED_STD_H28)


def internal_stripping_area(designation: str, length: float) -> Reading:
    """Area over which the thread of nut or block shears, m².

    ``length`` as above. Low is at the thinnest bolt (major diameter) and the widest nut (pitch diameter).
    Errors and reference as ``external_stripping_area``.
    """
    require(length > 0, f"length of engagement must be above 0; it is {length * 1e3:g} mm")
    t, at = thread(designation), limits(designation)
    whole = internal_shear_area(t.nominal, t.pitch_diameter, t.pitch, length, t.flank_angle)
    worst = internal_shear_area(at.bolt_major[0], at.nut_pitch[1], t.pitch, length, t.flank_angle)
    what = f"stripping area of {t.name} nut over {length * 1e3:g} mm, {at.fit}"
    return Reading(what, whole, worst, whole, "m²", FED_STD_H28)
