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
#: For pressure above 230 °C, castings of grey iron are relieved at 1050 to 1200 °F: 565 to 650 °C.
ASTM_A278 = Source(
    "ASTM A278/A278M, Gray Iron Castings for Pressure-Containing Parts for Temperatures Up to 650 °F",
    "01(2020)",
    memory=True,
)
