"""The works that the family of steamways cites beside those of the handbook."""

from __future__ import annotations

from speclint import Source

ASME_II_D = Source(
    "ASME Boiler and Pressure Vessel Code, Section II Part D, Mandatory Appendix 1", "2019", memory=True
)
EN_13480_5 = Source("EN 13480-5, Metallic industrial piping: inspection and testing", "2017", memory=True)
