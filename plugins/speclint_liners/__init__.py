"""Cylinders and liners: stress, fit cold and hot, ports, rings, clearances, relief of water, tests."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Rule, family


@family
def speclint_rules() -> Sequence[Rule]:
    """The rules of ``liner.`` and ``cylinder.``."""
    from speclint_liners.rules import RULES

    return RULES
