"""Every rule of the family."""

from __future__ import annotations

from speclint_release.rules import (
    concessions,
    coverage,
    drawings,
    examined_alike,
    identity,
    independence,
    parts_alike,
    pressure_parts,
    provenance,
    record,
    records_of_made_parts,
    safety_parts,
    titles,
)

RULES = (
    *concessions.RULES,
    *coverage.RULES,
    *drawings.RULES,
    *examined_alike.RULES,
    *identity.RULES,
    *independence.RULES,
    *parts_alike.RULES,
    *pressure_parts.RULES,
    *provenance.RULES,
    *record.RULES,
    *records_of_made_parts.RULES,
    *safety_parts.RULES,
    *titles.RULES,
)
