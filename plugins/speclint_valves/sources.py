"""The works that the family cites beside those of the handbook."""

from __future__ import annotations

from speclint import Source

LINEHAM = Source("W. J. Lineham, A Text-Book of Mechanical Engineering", "", "speed of steam, after Rankine")
