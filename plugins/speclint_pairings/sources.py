"""The works that the family of pairings cites beside those of the handbook."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Source
from speclint.handbook.tables import SHIGLEY

ASTM_A278 = Source(
    "ASTM A278/A278M, Gray Iron Castings for Pressure-Containing Parts for Temperatures Up to 650 °F",
    "2020",
)
EN_10028_2 = Source("EN 10028-2, Flat products made of steels for pressure purposes", "2009", memory=True)
EN_10216_2 = Source(
    "EN 10216-2, Seamless steel tubes for pressure purposes: specified elevated temperature properties",
    "2007",
    memory=True,
)
EN_10204 = Source("EN 10204, Metallic products: types of inspection documents", "2004", memory=True)
#: Seen, not in print but as public documents give them.
SPECIFIC_INSPECTION = EN_10204.at(
    "specific inspection, types 3.1 and 3.2, as reproduced in a public summary", memory=False
)
FIRST_OF_TUBE = EN_10216_2.at(
    "table A.1, first temperature, as reproduced in a public pipe-wall calculation", memory=False
)
LAST_TEMPERATURE = EN_10028_2.at("table 4, last temperature, as reproduced in public programs", memory=False)
EN_13445_2 = Source("EN 13445-2, Unfired pressure vessels: materials", "2014", memory=True)
EN_13445_3 = Source("EN 13445-3, Unfired pressure vessels: design", "2014", memory=True)
EN_1011_2 = Source(
    "EN 1011-2, Welding, Recommendations for arc welding of ferritic steels", "2001", memory=True
)
ASME_VIII = Source("ASME Boiler and Pressure Vessel Code, Section VIII Division 1", "2013", memory=True)
NEALE = Source("M. J. Neale, The Tribology Handbook", "1995", memory=True)
AHRONS = Source("E. L. Ahrons, Steam Locomotive Construction and Maintenance", "1921", memory=True)
STAINLESS_WEAR = Source(
    "American Iron and Steel Institute, Review of the Wear and Galling Characteristics of Stainless Steels",
    "1978",
    memory=True,
)

ISO_3448 = Source("ISO 3448, Industrial liquid lubricants, ISO viscosity classification", "1992", memory=True)
ASTM_D341 = Source(
    "ASTM D341, Viscosity-temperature charts for liquid petroleum products", "2009", memory=True
)

#: The works that the table of pairs names.
WORKS = {
    "common practice": COMMON_PRACTICE,
    "Neale": NEALE.at("sections on piston rings, bearing materials and wear of cylinders"),
    "Ahrons": AHRONS.at("chapter on cylinders, mixtures of iron"),
    "Shigley": SHIGLEY.at("Table 12-8, boundary-lubricated bearings and their operating limits"),
    "AISI": STAINLESS_WEAR.at("galling of self-mated and dissimilar couples"),
}
