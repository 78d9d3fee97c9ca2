"""The works that the family cites."""

from __future__ import annotations

from speclint import Source

PED = Source(
    "Directive 2014/68/EU on pressure equipment", "2014", "Annex I, 2.4, means of examination", memory=True
)
AD_2000_A5 = Source(
    "AD 2000-Merkblatt A 5, Openings, closures and special closure elements", "2000", memory=True
)
MACHINERY = Source(
    "Directive 2006/42/EC on machinery", "2006", "Annex I, 4.1.2.5, lifting accessories", memory=True
)
EN_13155 = Source("EN 13155, Cranes - Safety - Non-fixed load lifting attachments", "2003", memory=True)
EN_818_4 = Source("EN 818-4, Short link chain for lifting purposes - Chain slings", "1996", memory=True)
EN_1993_1_8 = Source(
    "EN 1993-1-8, Eurocode 3: Design of steel structures - Design of joints", "2005", memory=True
)
ISO_3266 = Source("ISO 3266, Forged steel eyebolts grade 4 for general lifting purposes", "2010", memory=True)
DIN_580 = Source("DIN 580, Lifting eye bolts", "2018", "loads and shanks by thread", memory=True)
UIC_505 = Source(
    "UIC 505-1, Railway transport stock - Rolling stock construction gauge",
    "2006",
    "plays of points between and beyond the axles",
    memory=True,
)
ISO_261 = Source("ISO 261, ISO general purpose metric screw threads", "1998", "general plan")
