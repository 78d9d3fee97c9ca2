"""What a crosshead weighs at the least by the sizes that it states: its two bosses, and the bearing of its pin."""

from __future__ import annotations

from speclint.equations import Kilograms, KilogramsPerCubicMetre
from speclint.facts.pins import length_in_bosses
from speclint.facts.taking import Take
from speclint.facts.weights import density_of, mass_of_ring
from speclint.handbook.members import round_area
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Crosshead, Pin


def bosses_with_pin(
    crosshead: Crosshead, rho: KilogramsPerCubicMetre, sheet: Sheet, take: Take
) -> Worked | None:
    """The two bosses of a crosshead with the pin that fills their holes, and its bearing between them, kg.

    None where the bosses are not stated. A pin that is not drawn adds no bearing.
    """
    D_b, b = crosshead.boss_diameter, crosshead.boss_width
    if not (sheet.is_stated("boss", D_b) and sheet.is_stated("width of a boss", b)):
        return None
    both = sheet.work("L_b", length_in_bosses, b=take("b_b", b))
    A = sheet.work("A_b", round_area, d=take("D_b", D_b))
    m: Kilograms = sheet.work("m_bosses", mass_of_ring, m_0=0.0, rho=rho, A=A, l=both)
    known = worked(m, D_b, b)
    for pin in sheet.belonging_to(crosshead, Pin):
        known = _with_bearing(pin, known, sheet, take)
    return known


def _with_bearing(pin: Pin, known: Worked, sheet: Sheet, take: Take) -> Worked:
    """What is known so far, with the bearing of a pin that goes through the bosses."""
    stated = all(sheet.is_stated(f"size of {pin.id}", one) for one in (pin.diameter, pin.length))
    if not (stated and sheet.said(f"place of {pin.id}", pin.place) == "crosshead pin"):
        return known
    rho = density_of(pin, sheet)
    if rho is None:
        return known
    A = sheet.work("A_p", round_area, d=take("d_p", pin.diameter))
    l_p = take("l_p", pin.length)
    m = sheet.work("m_with_pin", mass_of_ring, m_0=known.value, rho=rho, A=A, l=l_p)
    return Worked(m, (*known.places, *worked(m, pin.diameter, pin.length).places))
