"""Every rule of the family."""

from __future__ import annotations

from speclint_steamways.rules import pipes

RULES = (*pipes.RULES,)
