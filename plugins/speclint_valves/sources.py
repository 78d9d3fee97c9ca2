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
