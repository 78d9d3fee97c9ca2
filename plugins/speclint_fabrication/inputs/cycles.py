"""How often a weld is loaded in its life: at every stroke, or at every raising of steam."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Ratio
from speclint.facts import distance_of_life, starts_of_life, turns_of_crank, worn_wheel
from speclint.specs import CylinderBlock, Weldment
from speclint_fabrication.formulae.fatigue import strokes_of_life


def starts(weldment: Weldment, sheet: Sheet) -> Ratio:
    """How often steam is raised in the whole life."""
    return float(sheet.count("n", starts_of_life(weldment, weldment.starts, sheet)))


def strokes(weldment: Weldment, block: CylinderBlock, sheet: Sheet) -> Ratio:
    """Strokes of the whole life on tyres worn to their limit, which turn the wheels most often."""
    distance = sheet.take("S", distance_of_life(weldment, weldment.life_distance, sheet))
    wheel = sheet.take("D", worn_wheel(block, sheet))
    return sheet.work("N", strokes_of_life, i=turns_of_crank(block, sheet, sheet.take), S=distance, D=wheel)
