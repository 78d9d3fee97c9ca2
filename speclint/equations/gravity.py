"""The standard acceleration of free fall, by which masses become weights."""

from __future__ import annotations

from speclint.equations.dimensions import MetresPerSecondSquared
from speclint.equations.source import Source

#: Where the standard acceleration of free fall is defined.
CGPM = Source(
    "General Conference on Weights and Measures, 3rd meeting", "1901", "standard acceleration of gravity"
)
#: Standard acceleration of free fall [m/s²], exact by definition (:data:`CGPM`).
STANDARD_GRAVITY: MetresPerSecondSquared = 9.80665
