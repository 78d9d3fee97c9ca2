"""A piston ring as a spring: the stress of a change of its gap, and its pressure on the bore by its free gap.

A ring of even thickness that presses alike all round, or whose ends are drawn apart along the circle, bends most
opposite its gap. There its moment is M, at an angle φ from the gap M (1 − cos φ)/2, and by the theorem of Castigliano
the gap changes by 3π M r²/(2 E I) in all, with r = (d − t)/2 and I = w t³/12.
"""

from __future__ import annotations

import math

from speclint.equations import FIRST_PRINCIPLES, Metres, Pascals, Source, formula, require
from speclint.facts.taking import Take
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.tables import KHURMI
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import NotStated, PistonRing

TRIBOLOGY_HANDBOOK = Source(
    "M. J. Neale (ed.), The Tribology Handbook",
    "2nd ed., 1995",
    "section on piston rings, stresses of the ring when fitted to the piston and when in the bore",
    memory=True,
)
_THIN_RING = KHURMI.at("section on piston rings, t = D √(3 p/σ), from memory")


@formula("σ = 4 E t δ/(3 π (d − t)²)", cites=[FIRST_PRINCIPLES, TRIBOLOGY_HANDBOOK])
def stress_of_gap_change(E: Pascals, t: Metres, delta: Metres, d: Metres) -> Pascals:
    """Greatest bending stress of a piston ring whose gap is opened or closed, opposite the gap.

    σ = 4 E t δ/(3 π (d − t)²)

    ``E`` modulus of elasticity [Pa]; ``t`` radial thickness; ``delta`` change of the gap from that of the free ring;
    ``d`` bore [m]. Returns [Pa]. Raises OutOfRange unless t is above 0 and less than a tenth of d: a straight beam.

    Hand working: 100 GPa, 16 mm, 60 mm, 496 mm: 4 × 100e9 × 16e-3 × 60e-3/(3 π × 0.48²) = 3.84e8/2.171469 Pa.

    >>> round(stress_of_gap_change(E=100e9, t=0.016, delta=0.060, d=0.496) / 1e6, 3)
    176.839
    """
    _slender(t, d)
    return 4 * E * t * delta / (3 * math.pi * (d - t) ** 2)


@formula("δ = 9 π p d (d − t)³/(4 E t³)", cites=[FIRST_PRINCIPLES, _THIN_RING])
def gap_change_for_pressure(p: Pascals, d: Metres, t: Metres, E: Pascals) -> Metres:
    """How far the gap of a free ring is closed in the bore, on which it presses alike all round.

    δ = 9 π p d (d − t)³/(4 E t³)

    ``p`` mean pressure on the bore by the ring's own spring [Pa]; ``d`` bore, ``t`` radial thickness [m]; ``E`` modulus
    of elasticity [Pa]. Returns [m]. Errors as ``stress_of_gap_change``.

    Hand working: 50 kPa, 496 and 16 mm, 100 GPa: 9 π × 0.05 × 496 × 480³/(4 × 100e3 × 16³) = 7.754750e10/1.6384e9 mm.

    >>> round(gap_change_for_pressure(p=50e3, d=0.496, t=0.016, E=100e9) * 1e3, 3)
    47.331
    """
    _slender(t, d)
    return 9 * math.pi * p * d * (d - t) ** 3 / (4 * E * t**3)


@formula("p = 4 E t³ δ/(9 π d (d − t)³)", cites=[FIRST_PRINCIPLES, _THIN_RING])
def pressure_of_gap_change(E: Pascals, t: Metres, delta: Metres, d: Metres) -> Pascals:
    """Pressure of a ring on its bore by its own spring: the inverse of ``gap_change_for_pressure``.

    p = 4 E t³ δ/(9 π d (d − t)³)

    Arguments and errors as ``stress_of_gap_change``. Returns [Pa].

    >>> round(pressure_of_gap_change(E=100e9, t=0.016, delta=0.0473310, d=0.496) / 1e3, 3)
    50.0
    """
    _slender(t, d)
    return 4 * E * t**3 * delta / (9 * math.pi * d * (d - t) ** 3)


@formula("δ = s_f − s", cites=[FIRST_PRINCIPLES])
def gap_change(s_f: Metres, s: Metres) -> Metres:
    """From one gap of a ring to another.

    δ = s_f − s

    ``s_f``, ``s`` the two gaps [m]. Returns [m].

    >>> round(gap_change(s_f=0.063, s=0.003), 6)
    0.06
    """
    return s_f - s


def ring_bore(ring: PistonRing, sheet: Sheet) -> Measure | NotStated:
    """The bore in which a ring has its gap: of the liner, else the least that the ring is made for."""
    if sheet.is_stated("runs in", ring.runs_in) or not ring.made_for:
        return sheet.follow(ring.runs_in).bore
    return min(ring.made_for, key=lambda size: sheet.take_nominal("D", size))


def change_of_gap_in_bore(ring: PistonRing, take: Take, sheet: Sheet) -> float:
    """By how much the gap of a ring closes from free to in the bore, m: by its free gap, else by its wall pressure."""
    s = take("s", ring.gap)
    if sheet.is_stated("free gap", ring.free_gap):
        return sheet.work("δ", gap_change, s_f=take("s_f", ring.free_gap), s=s)
    p = take("p_w", ring.wall_pressure)
    d, t = take("d", ring_bore(ring, sheet)), take("t", ring.thickness)
    return sheet.work("δ", gap_change_for_pressure, p=p, d=d, t=t, E=modulus_of_ring(ring, sheet))


def pressure_by_free_gap(ring: PistonRing, take: Take, sheet: Sheet) -> Worked | None:
    """Pressure of a ring on the bore by its own spring, Pa; None where its free gap is not stated."""
    if not sheet.is_stated("free gap", ring.free_gap):
        return None
    bore = ring_bore(ring, sheet)
    delta = change_of_gap_in_bore(ring, take, sheet)
    d, t = take("d", bore), take("t", ring.thickness)
    p = sheet.work("p_f", pressure_of_gap_change, E=modulus_of_ring(ring, sheet), t=t, delta=delta, d=d)
    return worked(p, ring.free_gap, ring.gap, ring.thickness, bore)


def modulus_of_ring(ring: PistonRing, sheet: Sheet) -> Pascals:
    """Modulus of elasticity of the ring's metal, cold, Pa."""
    return sheet.look_up("E", sheet.material_of(ring).modulus, of=ring, at=DRAWING_TEMPERATURE)


def _slender(t: Metres, d: Metres) -> None:
    require(t > 0 * t, "the ring must have a thickness")
    require(10 * t < d, "a ring thicker than a tenth of its bore is no slender beam")
