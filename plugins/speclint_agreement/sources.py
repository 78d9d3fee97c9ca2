"""The works that the family of agreements cites; that two drawings agree is common practice."""

from __future__ import annotations

from speclint import Source

CGPM = Source(
    "General Conference on Weights and Measures, 3rd meeting", "1901", "standard acceleration of gravity"
)
