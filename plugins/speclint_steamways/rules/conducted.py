"""The rules on heat that metal leads out of the block: on pads, chambers and boxes, which have no steam."""

from __future__ import annotations

from speclint import Rule
from speclint_steamways.rules import chamber_heat, pad_heat

RULES: tuple[Rule, ...] = (*chamber_heat.RULES, *pad_heat.RULES)
