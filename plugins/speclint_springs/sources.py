"""The works that the family of springs cites beside those of the handbook."""

from __future__ import annotations

from speclint import Source

_WIRE = "tables of mechanical properties"
_SEEN = "as reproduced in a public program with its tables"
EN_10270 = (
    Source("EN 10270-1, Steel wire for mechanical springs", "2011", f"{_WIRE}, {_SEEN}"),
    Source("EN 10270-2, Steel wire for mechanical springs", "2011", f"{_WIRE}, {_SEEN}; FDC from memory"),
    Source("EN 10270-3, Steel wire for mechanical springs", "2011", _WIRE, memory=True),
)
