"""Pressure of water in a cylinder."""

from __future__ import annotations

from speclint import Source
from speclint.handbook.tables import Reading

_PED = Source("Directive 2014/68/EU on pressure equipment", "2014", memory=True).at("annex I, 7.3")


def accumulation() -> Reading:
    """Rise of pressure above the setting of a relief valve that blows off all that comes, over the setting."""
    return Reading.exact("rise of pressure above the setting of a relief valve", 0.10, "", _PED)
