"""The works that the family cites."""

from __future__ import annotations

from speclint import Source

EN_13445_2 = Source("EN 13445-2, Unfired pressure vessels - Materials", "2014", memory=True)
PED = Source("Directive 2014/68/EU on pressure equipment, Annex I", "2014")
EN_13445_3 = Source("EN 13445-3, Unfired pressure vessels - Design", "2014", memory=True)
#: The feet of the charts are from memory: no chart gives less, so that a load within them is within the chart.
LOCAL_LOADS = EN_13445_3.at("16.5, local loads on nozzles in cylindrical shells: the least of C1, C2 and C3")
EN_13445_4 = Source("EN 13445-4, Unfired pressure vessels - Fabrication", "2014", memory=True)
EN_1993_1_9 = Source("EN 1993-1-9, Design of steel structures - Fatigue", "2005", memory=True)
EN_1993_1_10 = Source(
    "EN 1993-1-10, Design of steel structures - Toughness and through-thickness properties",
    "2005",
    memory=True,
)
EN_10164 = Source(
    "EN 10164, Steel products with improved properties through the thickness", "2004", memory=True
)
IIW_FATIGUE = Source(
    "A. Hobbacher, Recommendations for Fatigue Design of Welded Joints and Components",
    "2nd ed. 2016",
    memory=True,
)
ISO_5817 = Source("ISO 5817, Welding - Quality levels for imperfections", "2014", memory=True)
ISO_15614_1 = Source("ISO 15614-1, Qualification of welding procedures", "2017", memory=True)
ISO_9606_1 = Source("ISO 9606-1, Qualification testing of welders", "2012", memory=True)
ISO_TR_15608 = Source(
    "ISO/TR 15608, Welding - Guidelines for a metallic materials grouping system", "2017", memory=True
)
ISO_13920 = Source(
    "ISO 13920, Welding - General tolerances for welded constructions",
    "1996",
    "Table 1, to 4000 mm as reproduced in public documents; above from memory",
)
TIMOSHENKO_GOODIER = Source(
    "S. Timoshenko and J. N. Goodier, Theory of Elasticity",
    "3rd ed. 1970",
    "ch. 13, thermal stress",
    memory=True,
)
#: The formulae of both were derived and summed again; the places are from memory.
CARSLAW = Source(
    "H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids",
    "2nd ed. 1959",
    "3.4, slab heated steadily on one face; the formula derived again",
    memory=True,
)
MANSON = Source(
    "S. S. Manson, Thermal Stress and Low-Cycle Fatigue",
    "1966",
    "ch. 6, plates; the formula held to the series of the slab",
    memory=True,
)
CAMPBELL = Source("J. Campbell, Complete Casting Handbook", "1st ed. 2011", memory=True)


def _seen(source: Source, place: str) -> Source:
    """A place of a work that was seen, not in print but as public documents give it."""
    return source.at(f"{place}, as reproduced in public documents", memory=False)


RECTANGULAR_VESSELS = _seen(EN_13445_3, "15.5, membrane and bending stress together")
JOINT_FACTOR = _seen(EN_13445_3, "5.6 and Table 5.6-1, joint factor")
HOT_FATIGUE = _seen(EN_13445_3, "18.10.6.2, temperature correction for ferritic steel")
FATIGUE_CURVE = _seen(EN_1993_1_9, "7.1, fig. 7.1")
PARTIAL_FACTOR = _seen(EN_1993_1_9, "Table 3.1, safe life, high consequence")
DUCTILE_STEEL = PED.at("7.5, as reproduced in a national regulation of 1999 after the directive before it")
Z_CLASSES = _seen(EN_10164, "classes Z15, Z25, Z35")
PRESSURE_AREA = EN_13445_3.at("9.5.2, single openings in cylindrical shells")
SMALL_OPENING = EN_13445_3.at("9.4, small openings")
OPENINGS_APART = EN_13445_3.at("9.6, multiple openings")
OPENING_TO_EDGE = EN_13445_3.at("9.7, openings close to a discontinuity")
ASME_VIII = Source("ASME Boiler and Pressure Vessel Code, Section VIII Division 1", "2013", memory=True)
UG_37 = ASME_VIII.at("UG-37 and UG-40, reinforcement of openings in shells")
UG_39 = ASME_VIII.at("UG-39, reinforcement of openings in flat heads")
UG_53 = ASME_VIII.at("UG-53, ligaments")
UW_9 = ASME_VIII.at("UW-9, tapered transitions 1 to 3")
BUTT_DETAILS = EN_1993_1_9.at("Table 8.3, transverse butt welds, slope to 1 in 4")
HOBBACHER_OFFSET = IIW_FATIGUE.at("6.3, misalignment of plates of unlike thickness")
EN_10213 = Source("EN 10213, Steel castings for pressure purposes", "2007", "table 1, carbon", memory=True)
EN_1011_2 = Source(
    "EN 1011-2, Welding, Recommendations for arc welding of ferritic steels",
    "2001",
    "annex C, preheat",
    memory=True,
)
TEST_STRESS = _seen(EN_13445_3, "table 6-1, allowable stress on test")
