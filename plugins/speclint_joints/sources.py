"""Works that the rules of joints cite.

``memory`` is set where a figure or an equation was recalled from the work and not read in it.
"""

from __future__ import annotations

from speclint import Source
from speclint.handbook.bolted_joints import EN_13445_3
from speclint.handbook.tables import ASME_APPENDIX_2, JINDAL, KHURMI, ROARK, SHIGLEY, VDI_2230

ASME_BENDING = ASME_APPENDIX_2.at("UCI-23(b) for iron; Division 2, 5.2.2.4, primary bending 1.5 S")
CODE_GASKETS = ASME_APPENDIX_2.at(
    "2-5(c)(1) and (2), Table 2-5.1 and Table 2-5.2, as reproduced in a public flange calculation",
    memory=False,
)
LOOSE_FLANGE = ASME_APPENDIX_2.at("2-6, moments and levers of loose flanges", memory=True)
SLIP_ON_FLANGE = Source(
    "ASME B31.3, Process piping",
    "2014",
    "Figure 328.5.2B, slip-on and socket welding flanges: a leg outside of 1.4 walls, inside of one",
    memory=True,
)
FILLET_WELD = ASME_APPENDIX_2.at("UW-15(c), stress of a fillet weld in shear", memory=True)
CODE_SEATING = ASME_APPENDIX_2.at("2-5(e), as reproduced in a public flange calculation", memory=False)
_BOLTS = "as reproduced in public calculations of bolted joints"
VDI_FATIGUE = VDI_2230.at(f"eqs. 187, R10/1 and R10/2, {_BOLTS}", memory=False)
VDI_PRELOAD = VDI_2230.at(f"eq. R8/1 and Table A8, {_BOLTS}", memory=False)
VDI_SLIP = VDI_2230.at(f"section 5.5.6, {_BOLTS}", memory=False)
VDI_TORSION = VDI_2230.at(f"section 5.5.2, {_BOLTS}", memory=False)
VDI_STRIPPING = VDI_2230.at("section 5.5.5, as named in a public calculation of threads", memory=False)
TORQUE = SHIGLEY.at("eq. 8-27, as reproduced in a public calculation", memory=False)
TORQUE_TABLE = SHIGLEY.at("table 8-15, torque factors K: 0.18 lubricated, 0.20 zinc, 0.30 black", memory=True)
GOODMAN = SHIGLEY.at("eq. 6-46, modified Goodman line", memory=True)
TEST_STRESS = EN_13445_3.at("table 6-1, as reproduced in public vessel calculations", memory=False)
LAPPED_FLANGE = EN_13445_3.at(
    "11.5.6, lapped flanges: bearing stress up to 1.5 times the lower design stress", memory=True
)
EN_1993_1_8 = Source("EN 1993-1-8, Design of steel structures - Design of joints", "2005", memory=True)
EN_1993_1_9 = Source("EN 1993-1-9, Design of steel structures - Fatigue", "2005", memory=True)
T_STUB = EN_1993_1_8.at("Table 6.2, equivalent T-stub, and Table 3.4")
WELD_STRENGTH = EN_1993_1_8.at("4.5.3.2, directional method, and Table 4.1")
FATIGUE_CURVE = EN_1993_1_9.at("7.1, fig. 7.1, as reproduced in public documents", memory=False)
FATIGUE_SHEAR = EN_1993_1_9.at("7.1, fig. 7.2, shear")
FATIGUE_DETAILS = EN_1993_1_9.at("Tables 8.1, 8.3 and 8.5, categories of welds")
FATIGUE_ROOT = EN_1993_1_9.at("5 (6), stresses in fillet welds")
PARTIAL_FACTOR = EN_1993_1_9.at(
    "Table 3.1, safe life, high consequence, as reproduced in public documents", memory=False
)
EN_1591_1 = Source(
    "EN 1591-1, Flanges and their joints - Design rules for gasketed circular flange connections: calculation",
    "2013",
    "7.5, resistance of a flange without shell, and 5.2.2, effective diameter of bolt holes",
    memory=True,
)
EN_12663_1 = Source(
    "EN 12663-1, Railway applications - Structural requirements of railway vehicle bodies",
    "2010",
    "6.5.2, proof loads of equipment attachments, accelerations along the vehicle, category L",
    memory=True,
)
EN_1090_2 = Source(
    "EN 1090-2, Execution of steel structures and aluminium structures - Technical requirements for steel structures",
    "2008",
    "6.6.1, holes for fit bolts",
    memory=True,
)
EN_10269 = Source(
    "EN 10269, Steels and nickel alloys for fasteners with specified elevated and/or low temperature properties",
    "2013",
    "tables of mechanical properties",
    memory=True,
)
ASTM_A193 = Source(
    "ASTM A193/A193M, Alloy-Steel and Stainless Steel Bolting for High Temperature or High Pressure Service",
    "2012",
    "tables of mechanical requirements",
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
    "nuts, proof loads",
    memory=True,
)

__all__ = [
    "ASME_APPENDIX_2",
    "ASME_BENDING",
    "ASTM_A193",
    "CODE_GASKETS",
    "CODE_SEATING",
    "EN_1090_2",
    "EN_1993_1_8",
    "EN_1993_1_9",
    "EN_10269",
    "EN_13445_3",
    "FATIGUE_CURVE",
    "FATIGUE_DETAILS",
    "FATIGUE_ROOT",
    "FATIGUE_SHEAR",
    "ISO_898_1",
    "ISO_898_2",
    "JINDAL",
    "KHURMI",
    "PARTIAL_FACTOR",
    "ROARK",
    "SHIGLEY",
    "TEST_STRESS",
    "TORQUE",
    "T_STUB",
    "VDI_2230",
    "VDI_FATIGUE",
    "VDI_PRELOAD",
    "VDI_SLIP",
    "VDI_STRIPPING",
    "VDI_TORSION",
    "WELD_STRENGTH",
]
