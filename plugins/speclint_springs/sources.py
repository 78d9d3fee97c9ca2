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
ISO_9588 = Source(
    "ISO 9588, Metallic and other inorganic coatings: post-coating treatments of iron or steel to reduce the risk of "
    "hydrogen embrittlement",
    "2007",
    "table of baking times and temperatures",
    memory=True,
)
