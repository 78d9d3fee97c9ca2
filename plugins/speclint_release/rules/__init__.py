"""Every rule of the family."""

from __future__ import annotations

from speclint_release.rules import identity, provenance, record

RULES = (*identity.RULES, *provenance.RULES, *record.RULES)
