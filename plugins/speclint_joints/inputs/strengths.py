"""Tensile strength of steels at the temperature of a running engine, of which most data say nothing."""

from __future__ import annotations

from speclint import OutOfRange, Sheet
from speclint.equations import Kelvins, Pascals
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import Component
from speclint_joints.formulae.brackets import strength_when_warm


def tensile_strength_at(symbol: str, part: Component, at: Kelvins, sheet: Sheet) -> Pascals:
    """Tensile strength of the metal of a part [Pa]: as its data have it, else that when cold, falling as proof stress.

    Standards give it at room temperature alone, and proof stress when hot; of a steel that is warm it falls less.
    """
    metal = sheet.material_of(part)
    try:
        metal.tensile_strength(at)
    except OutOfRange:
        cold = sheet.look_up(f"{symbol}0", metal.tensile_strength, of=part, at=DRAWING_TEMPERATURE)
        R_0 = sheet.look_up("R_0", metal.proof_stress, of=part, at=DRAWING_TEMPERATURE)
        R_T = sheet.look_up("R_T", metal.proof_stress, of=part, at=at)
        return sheet.work(symbol, strength_when_warm, R_m=cold, R_T=R_T, R_0=R_0)
    return sheet.look_up(symbol, metal.tensile_strength, of=part, at=at)
