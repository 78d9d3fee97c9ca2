"""The works that the family cites beside those of the handbook."""

from __future__ import annotations

from speclint.handbook.tables import LINEHAM

STEAM_SPEED = LINEHAM.at("p. 681, speed of steam in ports, after Rankine")
