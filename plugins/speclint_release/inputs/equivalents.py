"""The elements of the carbon equivalent, as a certificate states them."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Ratio
from speclint.specs import Certificate

#: Elements of the carbon equivalent.
OF_EQUIVALENT = ("C", "Mn", "Cr", "Mo", "V", "Ni", "Cu")


def not_analysed(document: Certificate) -> list[str]:
    """The elements of the carbon equivalent that the analysis leaves out."""
    return [one for one in OF_EQUIVALENT if one not in document.analysis]


def equivalent_parts(document: Certificate, sheet: Sheet, of: str = "") -> dict[str, Ratio]:
    """The elements of the carbon equivalent, of those that the analysis leaves out nothing.

    ``of`` is the id of another part whose certificate it is.
    """
    return {
        one: sheet.take(f"{one} {of}".strip(), document.analysis[one]) if one in document.analysis else 0.0
        for one in OF_EQUIVALENT
    }
