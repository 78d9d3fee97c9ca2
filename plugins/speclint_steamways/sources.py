"""The works that the family of steamways cites beside those of the handbook."""

from __future__ import annotations

from speclint import Source
from speclint.handbook.steam import B31_1
from speclint.handbook.tables import LINEHAM

ASME_II_D = Source(
    "ASME Boiler and Pressure Vessel Code, Section II Part D, Mandatory Appendix 1", "2019", memory=True
)
EN_13480_5 = Source("EN 13480-5, Metallic industrial piping: inspection and testing", "2017", memory=True)
EN_10216_2 = Source(
    "EN 10216-2, Seamless steel tubes for pressure purposes: non-alloy and alloy steels for elevated temperature",
    "2013",
    "tolerances on wall thickness: 10 % at the least, 12.5 % for most tubes",
    memory=True,
)
ISO_1127 = Source(
    "ISO 1127, Stainless steel tubes: dimensions, tolerances and conventional masses per unit length",
    "1992",
    "class T4 of the wall thickness",
    memory=True,
)
TEMA_BENDS = Source(
    "Standards of the Tubular Exchanger Manufacturers Association",
    "9th ed., 2007",
    "RCB-2.31, wall of a tube before bending: t_1 (1 + D/(4 R))",
    memory=True,
)
PIPE_TEST = B31_1.at("137.4.5, as reproduced in a public test plan for piping", memory=False)
SUSTAINED = B31_1.at("104.8.1, stress of sustained loads", memory=True)
OCCASIONAL = B31_1.at("104.8.2, stress of occasional loads, k = 1.2", memory=True)
SUSTAINED_BEND = B31_1.at("appendix D, table D-1, stress intensification of a bend", memory=True)
KELLOGG = Source(
    "M. W. Kellogg Company, Design of Piping Systems",
    "2nd ed. 1956",
    "spans of pipe: S = 1.2 w L²/Z and y = 17.1 w L⁴/(E I), of lb, ft and in",
    memory=True,
)
SPANS = B31_1.at("table 121.5, suggested spacing of supports: sag of 0.1 in", memory=True)
EN_1991_1_4 = Source(
    "EN 1991-1-4, Actions on structures: wind actions",
    "2005",
    "4.5, basic velocity pressure with an air density of 1.25 kg/m³",
    memory=True,
)
PULLED_THROUGH = Source(
    "EN 1993-1-3, Design of steel structures: cold-formed members and sheeting",
    "2006",
    "table 8.2, pull-through of screws under repeated load of wind, and their distance from an edge",
    memory=True,
)
BOURNE = Source("J. Bourne, A Catechism of the Steam Engine", "new and revised ed., 1865")
STEAM_SPEED = LINEHAM.at("p. 681, speed of steam in ports, after Rankine")
EN_13445_3 = Source("EN 13445-3, Unfired pressure vessels - Design", "2014", memory=True)
TIMOSHENKO_GOODIER = Source(
    "S. P. Timoshenko and J. N. Goodier, Theory of Elasticity", "3rd ed., 1970", memory=True
)
ISO_13857 = Source(
    "ISO 13857, Safety of machinery: safety distances to prevent hazard zones being reached by upper and lower limbs",
    "2008",
    "4.2.1, reaching upwards: 2.5 m above the level on which one stands, low risk",
    memory=True,
)
ASTM_C1055 = Source(
    "ASTM C1055, Standard guide for heated system surface conditions that produce contact burn injuries",
    "2003",
    "contact of five seconds in industry, as reproduced in catalogue texts",
)
ISO_13732_1 = Source(
    "ISO 13732-1, Ergonomics of the thermal environment: responses to contact with hot surfaces",
    "2006",
    "scope, burn thresholds by time of contact, as reproduced in catalogue texts",
)
ISO_5167_3 = Source(
    "ISO 5167-3, Measurement of fluid flow by means of pressure differential devices: nozzles and Venturi nozzles",
    "2003",
    "5.1.6, coefficients of discharge of the ISA 1932 nozzle",
    memory=True,
)
