"""Every rule of the family."""

from __future__ import annotations

from speclint_release.rules import (
    concessions,
    coverage,
    identity,
    pressure_parts,
    provenance,
    record,
    safety_parts,
)

RULES = (
    *concessions.RULES,
    *coverage.RULES,
    *identity.RULES,
    *pressure_parts.RULES,
    *provenance.RULES,
    *record.RULES,
    *safety_parts.RULES,
)
