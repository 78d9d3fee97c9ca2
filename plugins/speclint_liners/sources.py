"""The works that the family cites."""

from __future__ import annotations

from speclint import Source

BOURNE = Source("J. Bourne, A Catechism of the Steam Engine", "new and revised ed., 1865")
AHRONS = Source("E. L. Ahrons, Steam Locomotive Construction and Maintenance", "1921")
KENT = Source(
    "W. Kent, The Mechanical Engineers' Pocket-Book",
    "edition not noted",
    "cylinders of steam engines",
    memory=True,
)
KHURMI_LINER = Source(
    "R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design",
    "2005",
    "ch. 32, thickness of a dry liner",
    memory=True,
)
ASME_VIII = Source("ASME Boiler and Pressure Vessel Code, Section VIII Division 1", "2013", memory=True)
EN_13445_3 = Source(
    "EN 13445-3, Unfired pressure vessels - Design",
    "2014",
    "6.2, as reproduced in public calculations of vessels",
)
EN_13445_5 = Source(
    "EN 13445-5, Unfired pressure vessels - Inspection and testing",
    "2014",
    "10.2.3.3, as reproduced in public notes on a calculation of vessels",
)
PED = Source(
    "Directive 2014/68/EU on pressure equipment, Annex I",
    "2014",
    "7.4, as reproduced in a public guideline to the directive",
)
ITS_90 = Source("Preston-Thomas, The International Temperature Scale of 1990", "1990", memory=True)
LAME = Source(
    "A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials",
    "6th ed. 2003",
    "ch. 11, thick cylinders",
)
DIN_7190 = Source(
    "DIN 7190-1, Interference fits: calculation and design", "2017", "joining by heat and cold", memory=True
)
SHIGLEY = Source(
    "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design",
    "10th ed., 2015",
    "section 3-9, uniformly distributed stresses",
    memory=True,
)
MARINE_LINERS = Source("marine engineering notes", "2012", "materials for cylinder liners")
IAPWS_95 = Source(
    "IAPWS Formulation 1995 for the Thermodynamic Properties of Ordinary Water Substance", "1995", memory=True
)
