"""The works that the family of motion cites in addition to those of the handbook."""

from __future__ import annotations

from speclint import Source
from speclint.handbook.tables import LINEHAM, POCKET_BOOK

BOURNE = Source("J. Bourne, A Catechism of the Steam Engine", "new and revised ed., 1865")
PERIOD_PROPORTIONS = POCKET_BOOK.at("p. 501, approximate rules for locomotives")
LINEHAM_SPEED = LINEHAM.at("p. 681, mean speed of pistons")
RAILWAY_MECHANICAL_ENGINEER = Source(
    "Railway Mechanical Engineer", "volume not seen", "diagrams for driving-axle journals, p. 172"
)
SHIGLEY_GOODMAN = Source(
    "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design",
    "10th ed., 2015",
    "eq. 6-46, modified Goodman line",
    memory=True,
)
SHIGLEY_MARIN = Source(
    "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design",
    "10th ed., 2015",
    "section 6-9, factors of the endurance limit",
    memory=True,
)
SHIGLEY_SHAFTS = Source(
    "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design",
    "10th ed., 2015",
    "eq. 7-7, distortion energy and Goodman; table 7-1, keyseats",
    memory=True,
)
SHAFTING = Source(
    "ASME code for the design of transmission shafting",
    "1927",
    "as reproduced in Sadhu Singh, Machine Design I, example 6.1: lesser of 0.30 of yield and 0.18 of tensile "
    "strength, 0.75 with a keyway, factors 1.5 and 1.0",
)
REBORING = Source(
    "British Railways workshop standard MT276",
    "edition not seen",
    "as reported: a cylinder worn 0.060 in tapered or oval is rebored",
)
BRIDGE_STRESS = Source(
    "Department of Scientific and Industrial Research, Report of the Bridge Stress Committee",
    "1928",
    "hammer blow of wheel, axle and whole engine as loads of bridges; its figures are not used",
    memory=True,
)
MASTER_MECHANICS = Source(
    "American Railway Master Mechanics' Association, report on the counterbalancing of locomotives",
    "1896 or 1897",
    "unbalanced reciprocating parts of one side to be at most 1/400 of the weight of the engine",
    memory=True,
)
