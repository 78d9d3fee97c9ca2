"""The works that the family of release rules cites."""

from __future__ import annotations

from speclint import Source

ISO_7200 = Source(
    "ISO 7200, Technical product documentation: data fields in title blocks and document headers",
    "2004",
    memory=True,
)
B31_1 = Source("ASME B31.1, Power Piping", "2018", memory=True)
EN_10204 = Source("EN 10204, Metallic products: types of inspection documents", "2004", memory=True)
#: Seen, not in print but as a public summary gives it.
DOCUMENTS = EN_10204.at("types of inspection documents, as reproduced in a public summary", memory=False)
EN_13445_4 = Source("EN 13445-4, Unfired pressure vessels: fabrication", "2014", memory=True)
#: The required pressure of the test is never exceeded by more than 6 %.
ASME_I = Source("ASME Boiler and Pressure Vessel Code, Section I, Power Boilers", "2019", memory=True)
EN_13445_5 = Source("EN 13445-5, Unfired pressure vessels: inspection and testing", "2014", memory=True)
#: Seen in public notes of a calculation that quote 10.2.3.3.1: the greater of 1.25 p f_a/f_t and 1.43 p.
TEST_FACTOR = Source(
    "EN 13445-5, Unfired pressure vessels: inspection and testing, as reproduced in public audit notes",
    "2014",
    "10.2.3.3",
)
ISO_15614_1 = Source("ISO 15614-1, Qualification of welding procedures", "2017", memory=True)
EN_1011_2 = Source(
    "EN 1011-2, Welding, Recommendations for arc welding of ferritic steels", "2001", memory=True
)
L122 = Source(
    "Safety of pressure systems: Pressure Systems Safety Regulations 2000, Approved Code of Practice, L122",
    "2014",
    memory=True,
)
_DEVIATION = "permissible deviations of the product analysis from the cast analysis"
PRODUCT_PLATE = Source(
    "EN 10028-2, Flat products made of steels for pressure purposes",
    "2009",
    f"Table 2, {_DEVIATION}",
    memory=True,
)
PRODUCT_TUBE = Source(
    "EN 10216-2, Seamless steel tubes for pressure purposes: specified elevated temperature properties",
    "2002 with amendment 2 of 2007",
    f"Table 3, {_DEVIATION}",
    memory=True,
)
PRODUCT_CARBON = Source(
    "EN 10083-2, Steels for quenching and tempering: non alloy steels",
    "2006",
    f"Table 4, {_DEVIATION}",
    memory=True,
)
PRODUCT_ALLOYED = Source(
    "EN 10083-3, Steels for quenching and tempering: alloy steels",
    "2006",
    f"Table 4, {_DEVIATION}",
    memory=True,
)
#: For pressure above 230 °C, castings of grey iron are relieved at 1050 to 1200 °F: 565 to 650 °C.
ASTM_A278 = Source(
    "ASTM A278/A278M, Gray Iron Castings for Pressure-Containing Parts for Temperatures Up to 650 °F",
    "01(2020)",
    memory=True,
)
