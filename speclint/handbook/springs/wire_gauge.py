"""Diameter of wire by its number in the Imperial standard wire gauge (SWG).

>>> f"{wire_diameter('10 SWG').nominal * 1e3:.3f} mm"
'3.251 mm'
"""

from __future__ import annotations

from speclint.equations import Source
from speclint.handbook.tables import Reading, row

BS_3737 = Source("BS 3737, Imperial standard wire gauge", "1964", memory=True)


def wire_diameter(gauge: str | int) -> Reading:
    """Diameter of a gauge number, "7/0" (12.7 mm) to "50" (0.0254 mm), with or without "SWG"; m.

    The figure is the gauge's own; the tolerance of the wire is a matter of its standard. NotKnown is raised
    for a number that the gauge does not have.
    Reference: BS 3737:1964, the legal standard of 1883 (from memory; checked against another table).
    """
    number = str(gauge).removesuffix("SWG").strip()
    inches = float(row("bs-3737-1964-wire-gauge.csv", "gauge", number)["diameter"])
    return Reading.exact(f"diameter of {number} SWG", inches * 0.0254, "m", BS_3737)
