"""What a value is called, as it stands within a sentence."""

from __future__ import annotations

import re

#: Symbols of chemical elements of two letters, and names of people, which keep their large letter.
_KEPT = frozenset(
    (
        *("Al", "Cr", "Cu", "Fe", "Mg", "Mn", "Mo", "Nb", "Ni", "Pb", "Si", "Sn", "Ti", "Zn"),
        *("Biot", "Darcy", "Nusselt", "Prandtl", "Rankine", "Rayleigh", "Reynolds", "Roark", "Tresca"),
    )
)


def within_sentence(name: str) -> str:
    """A name with a small first letter, save a symbol and the name of somebody.

    >>> within_sentence("Bore diameter"), within_sentence("Mn, certificate")
    ('bore diameter', 'Mn, certificate')
    >>> within_sentence("Tresca's stress"), within_sentence("C, certificate"), within_sentence("")
    ("Tresca's stress", 'C, certificate', '')
    """
    kept = re.split(r"\W", name, maxsplit=1)[0] in _KEPT
    return name[:1].lower() + name[1:] if name[1:2].islower() and not kept else name
