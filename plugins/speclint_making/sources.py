"""The works that the family cites."""

from __future__ import annotations

from speclint import Source

EN_13445_4 = Source("EN 13445-4, Unfired pressure vessels - Fabrication", "2014", memory=True)
EN_13445_5 = Source("EN 13445-5, Unfired pressure vessels - Inspection and testing", "2014", memory=True)
EN_1011_2 = Source(
    "EN 1011-2, Welding - Recommendations for welding of metallic materials - ferritic steels",
    "2001",
    memory=True,
)
