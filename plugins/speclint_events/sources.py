"""The works that the family cites in addition to those of the handbook."""

from __future__ import annotations

from speclint import Source

BOURNE = Source(
    "J. Bourne, A Catechism of the Steam Engine", "new and revised ed., 1865", "art. 661, lead", memory=True
)
LOCOMOTIVE_BOILERS_AND_ENGINES = Source(
    "American School of Correspondence, Locomotive Boilers and Engines",
    "1908",
    "valve motion, lead: 0 to 1/4 in",
    memory=True,
)
BRUCE = Source(
    "A. W. Bruce, The Steam Locomotive in America",
    "1952",
    "p. 142, steam used by a large superheated engine, as quoted; the book not seen",
    memory=True,
)
