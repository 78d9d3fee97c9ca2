"""What the block does to the guide of a spindle: it holds it, and closes its bore."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Kelvins, Metres, Pascals, Ratio
from speclint.facts import block_under, boxes_of, gear_of, strain_since
from speclint.handbook.fits import (
    DRAWING_TEMPERATURE,
    bore_closing,
    hot_interference,
    inner_hoop_stress,
    pressing_interference,
)
from speclint.handbook.materials import Material
from speclint.specs import CamBox, CylinderBlock, LoadCase, ValveSpindle
from speclint_valves.formulae.guides import closing_since_bored
from speclint_valves.formulae.seats import pressure_in_solid_block


class Guide(Struct, frozen=True):
    """The guide in a load case: its bore drawn, its own growth, and what its fit closes of it cold and hot."""

    bore: Metres
    growth: Ratio
    closed_cold: Metres
    closed_hot: Metres


def guide_of(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Guide:
    """The guide as warm as what holds it; part of the block, or a bush pressed into block or box."""
    block = holder_of(spindle, sheet)
    bore, T = sheet.take("D_g", spindle.guide_bore), sheet.take("T_g", case.temperature_of(block))
    if sheet.read("guide held", spindle.guide_held) == "part of the block":
        return Guide(bore, _growth("g", sheet.material_of(block), T, sheet), 0.0, 0.0)
    bush = _Bush(spindle, block, bore, sheet)
    growth = _growth("g", bush.metal, T, sheet)
    cold = bush.closed("c", DRAWING_TEMPERATURE)
    hot = bush.closed("h", T)
    if sheet.read("guide bored in its place", spindle.guide_bored_in_place):
        return Guide(bore, growth, 0.0, sheet.work("Δ_g", closing_since_bored, Δ_h=hot, Δ_c=cold))
    return Guide(bore, growth, cold, hot)


def guide_grip(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> tuple[Metres, Metres]:
    """Interference of a guide that is pressed in, by its drawing and as hot as what holds it."""
    holder = holder_of(spindle, sheet)
    bush = _Bush(spindle, holder, sheet.take("D_g", spindle.guide_bore), sheet)
    return bush.interference, bush.left("h", sheet.take("T_g", case.temperature_of(holder)))


def guide_pressed(spindle: ValveSpindle, sheet: Sheet) -> tuple[Pascals, Material]:
    """Hoop stress at the bore of a guide as it is pressed in, and its metal."""
    bush = _Bush(spindle, holder_of(spindle, sheet), sheet.take("D_g", spindle.guide_bore), sheet)
    return bush.stress(), bush.metal


def box_with_guide(spindle: ValveSpindle, sheet: Sheet) -> CamBox | None:
    """The cam box that holds the guide of a spindle; None where the block holds it."""
    if not sheet.is_stated("part with the guide", spindle.guide_in):
        return None
    if sheet.read("part with the guide", spindle.guide_in) == "block":
        return None
    gear = gear_of(sheet.follow(spindle.moves), sheet)
    boxes = {box.id: box for box in boxes_of(gear, sheet)} if gear else {}
    if len(boxes) != 1:
        raise sheet.not_assessed(
            f"the guide is in a cam box, and the gear of {spindle.id} names {len(boxes) or 'none'}",
            spindle.guide_in.where,
        )
    return next(iter(boxes.values()))


def holder_of(spindle: ValveSpindle, sheet: Sheet) -> CylinderBlock | CamBox:
    """The part that holds the guide of a spindle."""
    return box_with_guide(spindle, sheet) or block_under(sheet.follow(spindle.moves), sheet)


class _Bush:
    """A guide pressed into block or box."""

    def __init__(
        self, spindle: ValveSpindle, block: CylinderBlock | CamBox, bore: Metres, sheet: Sheet
    ) -> None:
        self._block, self._bore, self._sheet = block, bore, sheet
        self.metal = sheet.material_named(f"the guide of {spindle.id}", spindle.guide_material)
        self._outside = sheet.take("D_o", spindle.guide_outside)
        self.interference = sheet.take("δ", spindle.guide_interference)

    def left(self, index: str, T: Kelvins) -> Metres:
        """The interference at a temperature of guide and block, below 0 where the guide is loose."""
        sheet, block = self._sheet, self._sheet.material_of(self._block)
        return sheet.work(
            f"δ_{index}",
            hot_interference,
            delta=self.interference,
            D=self._outside,
            alpha_in=sheet.look_up("α_g", self.metal.expansion, at=T),
            T_in=T,
            alpha_out=sheet.look_up("α_b", block.expansion, of=self._block, at=T),
            T_out=T,
            T_ref=DRAWING_TEMPERATURE,
        )

    def closed(self, index: str, T: Kelvins) -> Metres:
        """How much the fit closes the bore at a temperature of guide and block; nothing where it is loose."""
        sheet = self._sheet
        p = self._pressure(index, self.left(index, T), T)
        E_g = sheet.look_up("E_g", self.metal.modulus, at=T)
        return sheet.work(f"Δ_{index}", bore_closing, p=p, d_in=self._bore, D=self._outside, E_in=E_g)

    def stress(self) -> Pascals:
        """Hoop stress at the bore of the guide as it is pressed in, at 20 °C; below 0, since it is pressed together."""
        p = self._pressure("c", self.interference, DRAWING_TEMPERATURE)
        return self._sheet.work("σ_θ", inner_hoop_stress, p=p, d_in=self._bore, D=self._outside)

    def _pressure(self, index: str, delta: Metres, T: Kelvins) -> Pascals:
        """Pressure of the fit at an interference; what holds the guide is thick all round."""
        sheet, block = self._sheet, self._sheet.material_of(self._block)
        return sheet.work(
            f"p_{index}",
            pressure_in_solid_block,
            delta=sheet.work(f"δ_p{index}", pressing_interference, delta=delta),
            d=self._bore,
            D=self._outside,
            E_s=sheet.look_up("E_g", self.metal.modulus, at=T),
            nu_s=sheet.look_up("ν_g", self.metal.poisson),
            E_b=sheet.look_up("E_b", block.modulus, of=self._block, at=T),
            nu_b=sheet.look_up("ν_b", block.poisson, of=self._block),
        )


def _growth(index: str, metal: Material, T: Kelvins, sheet: Sheet) -> Ratio:
    alpha = sheet.look_up(f"α_{index}", metal.expansion, at=T)
    since = {"alpha_0": 0.0, "T_0": DRAWING_TEMPERATURE, "T_ref": DRAWING_TEMPERATURE}
    return sheet.work(f"ε_{index}", strain_since, alpha=alpha, T=T, **since)
