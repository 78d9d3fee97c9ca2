"""The works that the family of springs cites beside those of the handbook."""

from __future__ import annotations

from speclint import Source

EN_10270 = Source("EN 10270-1, -2 and -3, Steel wire for mechanical springs", "2011", memory=True)
CGPM = Source("CGPM 3 (1901)", "", "standard acceleration of gravity")
