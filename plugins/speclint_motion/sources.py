"""The works that the family of motion cites in addition to those of the handbook."""

from __future__ import annotations

from speclint import Source
from speclint.handbook.tables import POCKET_BOOK

BOURNE = Source("J. Bourne, A Catechism of the Steam Engine", "new and revised ed., 1865")
PERIOD_PROPORTIONS = POCKET_BOOK.at("p. 501, approximate rules for locomotives")
LINEHAM = Source("W. J. Lineham, A Text-Book of Mechanical Engineering", "", "p. 681")
RAILWAY_MECHANICAL_ENGINEER = Source(
    "Railway Mechanical Engineer", "volume not seen", "diagrams for driving-axle journals, p. 172"
)
SHIGLEY_GOODMAN = Source(
    "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design",
    "10th ed., 2015",
    "eq. 6-46, modified Goodman line",
    memory=True,
)
SHAFTING = Source(
    "ASME code for the design of transmission shafting",
    "1927",
    "0.3 of the yield strength in shear",
    memory=True,
)
