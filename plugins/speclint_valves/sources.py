"""The works that the family cites beside those of the handbook."""

from __future__ import annotations

from speclint import Source
from speclint.handbook.tables import LINEHAM

STEAM_SPEED = LINEHAM.at("p. 681, speed of steam in ports, after Rankine")
ELASTIC_STABILITY = Source(
    "S. Timoshenko and J. M. Gere, Theory of Elastic Stability",
    "2nd ed. 1961",
    "article 7.5, tube under uniform external pressure",
    memory=True,
)
#: The thinnest of its bushes: walls of 1.5 mm at a bore of 20 mm, 2 mm at 40 mm, 5 mm at 100 mm.
ISO_4379 = Source("ISO 4379, Plain bearings: copper alloy bushes", "1993", "table of bores", memory=True)
ISO_773 = Source(
    "ISO 773, Rectangular or square parallel keys and their corresponding keyways",
    "1969",
    "table of keys and keyways, which DIN 6885-1 and BS 4235-1 have too",
    memory=True,
)
ISO_3912 = Source(
    "ISO 3912, Woodruff keys and keyways",
    "1977",
    "table of keys and keyways, which DIN 6888 has too",
    memory=True,
)
WAVE_IN_BAR = Source(
    "S. P. Timoshenko and J. N. Goodier, Theory of Elasticity",
    "3rd ed., 1970",
    "articles 168 and 169, longitudinal impact of bars: v √(E ρ), and waves thrown back by a mass and a fixed end",
    memory=True,
)
ISO_76 = Source(
    "ISO 76, Rolling bearings: static load ratings",
    "2006",
    "radial roller bearings, factor 44, and permissible contact pressure 4000 MPa",
    memory=True,
)
#: Tin bronze 7 N/mm² in general, and 25 where the journal runs slowly.
DIN_31652_3 = Source(
    "DIN 31652 Part 3, Plain bearings: permissible operational parameters",
    "1983",
    "table of general values of the specific load, tin bronze",
    memory=True,
)
