"""Works that the rules of joints cite.

``memory`` is set where a figure or an equation was recalled from the work and not read in it.
"""

from __future__ import annotations

from speclint import Source
from speclint.handbook.bolted_joints import EN_13445_3
from speclint.handbook.tables import ASME_APPENDIX_2, JINDAL, KHURMI, ROARK, SHIGLEY, VDI_2230

ASME_BENDING = ASME_APPENDIX_2.at("UCI-23(b) for iron; Division 2, 5.2.2.4, primary bending 1.5 S")
EN_10269 = Source(
    "EN 10269, Steels and nickel alloys for fasteners with specified elevated and/or low temperature properties",
    "2013",
    memory=True,
)
ASTM_A193 = Source(
    "ASTM A193/A193M, Alloy-Steel and Stainless Steel Bolting for High Temperature or High Pressure Service",
    "2012",
    memory=True,
)
ISO_898_1 = Source(
    "ISO 898-1, Mechanical properties of fasteners made of carbon steel and alloy steel, Part 1",
    "2013",
    memory=True,
)
ISO_898_2 = Source(
    "ISO 898-2, Mechanical properties of fasteners made of carbon steel and alloy steel, Part 2",
    "2012",
    memory=True,
)

__all__ = [
    "ASME_APPENDIX_2",
    "ASME_BENDING",
    "ASTM_A193",
    "EN_10269",
    "EN_13445_3",
    "ISO_898_1",
    "ISO_898_2",
    "JINDAL",
    "KHURMI",
    "ROARK",
    "SHIGLEY",
    "VDI_2230",
]
