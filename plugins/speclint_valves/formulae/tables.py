"""Quantities known only within limits, and signs of loads, as readings."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import Material
from speclint.handbook.members import contact_modulus
from speclint.handbook.tables import Reading
from speclint.handbook.threads import thread

_SENSE_OF_STEAM = {"lifts": 1.0, "holds shut": -1.0}


def place_of_seal() -> Reading:
    """Place across the contact at which a beat seals: anywhere from its smaller (0) to its larger edge (1).

    >>> place_of_seal().high
    1.0
    """
    return Reading("place of the sealing circle on the contact", 0.5, 0.0, 1.0, "", FIRST_PRINCIPLES)


def sense_of_steam(steam_load: str) -> Reading:
    """1 where the drawing says that steam lifts the shut valve, −1 where it holds it.

    >>> sense_of_steam("holds shut").nominal
    -1.0
    """
    return Reading.exact(
        f"sense in which steam {steam_load}", _SENSE_OF_STEAM[steam_load], "", FIRST_PRINCIPLES
    )


def modulus_of_pair(one: Material, other: Material) -> Reading:
    """Contact modulus [Pa] of two metals at 20 °C, over the spread of their elastic constants.

    >>> from speclint.handbook.materials import material
    >>> steel = material("case-hardening-16MnCr5")
    >>> pair = modulus_of_pair(steel, steel)
    >>> pair.low < pair.nominal < pair.high
    True
    """
    E_1, E_2 = one.modulus(DRAWING_TEMPERATURE), other.modulus(DRAWING_TEMPERATURE)
    nu_1, nu_2 = one.poisson(), other.poisson()
    low = contact_modulus(E_1.low, nu_1.low, E_2.low, nu_2.low)
    nominal = contact_modulus(E_1.nominal, nu_1.nominal, E_2.nominal, nu_2.nominal)
    high = contact_modulus(E_1.high, nu_1.high, E_2.high, nu_2.high)
    what = f"contact modulus of {one.name} on {other.name}"
    return Reading(what, nominal, low, high, E_1.unit, E_1.source)


def root_diameter_of_thread(designation: str) -> Reading:
    """Root diameter of a spindle's thread, m; NotKnown for a thread that no standard lists.

    Hand working, M18x1: 18 − 17/12 × 0.866025 × 1 = 16.77313 mm.

    >>> round(root_diameter_of_thread("M18x1").nominal * 1e3, 4)
    16.7731
    """
    found = thread(designation)
    return Reading.exact(f"root diameter of {found.name}", found.root_diameter, "m", found.source)
