"""By how much a rigid wheelbase may differ from the distance of two axles."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Limit

WHEELBASE = Limit(
    "wheelbase",
    "2 mm",
    "length",
    COMMON_PRACTICE,
    "what the rigid wheelbase may differ by from the distance of two axles",
    "not negative",
)
