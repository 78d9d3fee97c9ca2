"""Every rule of the family."""

from __future__ import annotations

from speclint_release.rules import concessions, identity, provenance, record

RULES = (*concessions.RULES, *identity.RULES, *provenance.RULES, *record.RULES)
