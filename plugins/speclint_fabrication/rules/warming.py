"""Thermal stress of the walls while the block is warmed, and when steam first enters the cold block."""

from __future__ import annotations

from msgspec import Struct

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import KelvinDifference, Kelvins, Metres
from speclint.handbook.materials import Material, share_of_strength
from speclint.handbook.steam import saturation_temperature
from speclint.specs import LoadCase, Plate, Weldment
from speclint_fabrication.formulae.warming import (
    biot_number,
    diffusivity,
    face_above_mean,
    face_stress,
    shock_difference,
)
from speclint_fabrication.inputs.meeting_steam import meets_steam
from speclint_fabrication.inputs.plates import metal_of, rolled_thickness
from speclint_fabrication.sources import CARSLAW, MANSON, TIMOSHENKO_GOODIER


class Wall(Struct, frozen=True):
    """A plate by name, its metal, its thickness on the drawing and as rolled, and its mean temperature."""

    name: str
    metal: Material
    t: Metres
    rolled: Metres
    at: Kelvins


@rule(
    "block.warming-rate",
    title="The thermal stress of the walls, at the stated warming rate and when steam first enters the block at "
    "its lowest temperature, does not exceed its share of the proof stress of the plate as rolled",
    wrong="heat stresses plate {item} to {found}, {limit} allowed",
    on=Weldment,
    cases=("warming",),
    grade=Grade.OBSERVATION,
    cites=[
        CARSLAW,
        MANSON,
        TIMOSHENKO_GOODIER,
        COMMON_PRACTICE,
    ],
    why="The steam side expands and the rest holds it back: a block warmed too fast cracks at its corners.",
    leaves_out="corners and changes of thickness, where the stress is higher; condensate lying in the "
    "passages, where it is highest",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    reached_by="makes",
    edition=4,
    limits=[
        Limit("rate_share", "0.3", "ratio", COMMON_PRACTICE, "share of proof stress during warming"),
        Limit(
            "shock_share", "0.67", "ratio", COMMON_PRACTICE, "share of proof stress when steam first enters"
        ),
        Limit(
            "film",
            "5000 W/(m²·K)",
            "heat transfer",
            COMMON_PRACTICE,
            "heat transfer coefficient of condensing steam",
        ),
    ],
)
def warming_rate(weldment: Weldment, case: LoadCase, sheet: Sheet) -> Judgement:
    """E α/(1 − ν) × θ t²/(3 a τ) at the stated rate; × Manson's share of the step to the boiling point."""
    met = {
        name: plate for name, plate in weldment.plates.items() if meets_steam(name, plate, weldment, sheet)
    }
    if not met:
        raise sheet.not_assessed("no plate is stated that meets steam", weldment.where)
    at = sheet.take("T", case.temperature_of(sheet.follow(weldment.makes)))
    pressure = sheet.take_absolute("p", case.live_pressure)
    steam = sheet.work("T_s", saturation_temperature, p=pressure)
    coldest = sheet.take("T_0", weldment.least_temperature)

    def judge(item: tuple[str, Plate]) -> Judgement:
        name, plate = item
        wall = Wall(
            name,
            metal_of(name, plate, sheet),
            sheet.take(f"t of {name}", plate.thickness),
            rolled_thickness(name, plate, sheet),
            at,
        )
        return sheet.worst(_rate(wall, weldment, sheet), _shock(wall, coldest, steam, sheet))

    return sheet.each(met.items(), judge)


def _rate(wall: Wall, weldment: Weldment, sheet: Sheet) -> Judgement:
    conductivity = sheet.look_up("λ", wall.metal.conductivity, at=wall.at)
    density = sheet.look_up("ρ", wall.metal.density)
    heat = sheet.look_up("c_p", wall.metal.specific_heat, at=wall.at)
    a = sheet.work("a", diffusivity, λ=conductivity, rho=density, c_p=heat)
    rise, time = sheet.take("θ", weldment.warming_rise), sheet.take("τ", weldment.warming_time)
    ahead = sheet.work(f"ΔT of {wall.name}", face_above_mean, theta=rise, tau=time, t=wall.t, a=a)
    return _held("rate_share", f"σ_w of {wall.name}", wall, ahead, sheet)


def _shock(wall: Wall, coldest: Kelvins, steam: Kelvins, sheet: Sheet) -> Judgement:
    conductivity = sheet.look_up("λ", wall.metal.conductivity, at=wall.at)
    biot = sheet.work("Bi", biot_number, h=sheet.limit("film", "h"), t=wall.t, λ=conductivity)
    ahead = sheet.work(f"ΔT_0 of {wall.name}", shock_difference, T_s=steam, T_0=coldest, Bi=biot)
    return _held("shock_share", f"σ_0 of {wall.name}", wall, ahead, sheet)


def _held(limit: str, symbol: str, wall: Wall, ahead: KelvinDifference, sheet: Sheet) -> Judgement:
    stress = sheet.work(
        symbol,
        face_stress,
        E=sheet.look_up("E", wall.metal.modulus, at=wall.at),
        alpha=sheet.look_up("α", wall.metal.expansion, at=wall.at),
        ΔT=ahead,
        nu=sheet.look_up("ν", wall.metal.poisson),
    )
    proof = sheet.look_up("R_p", wall.metal.proof_stress, at=wall.at, thickness=wall.rolled)
    allowed = sheet.work(f"S of {wall.name}", share_of_strength, k=sheet.limit(limit, "k"), R=proof)
    return sheet.at_most(stress, allowed)


RULES: tuple[Rule, ...] = (warming_rate,)
