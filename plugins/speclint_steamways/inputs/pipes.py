"""What several rules share of a steam pipe: its duty, its least wall, its allowable stress."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Kelvins, Metres, Pascals, Ratio
from speclint.facts import greatest_exhaust_pressure, steam_carried
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.steam import least_wall, thick_pipe_factor_y, wall_factor_y
from speclint.specs import LoadCase, SteamPipe
from speclint_steamways.formulae.pipes import power_piping_allowable

#: The code's term for each family of metal that pipes are made of.
_METALS = {
    "carbon-steel": "ferritic",
    "alloy-steel": "ferritic",
    "cast-steel": "ferritic",
    "stainless-austenitic": "austenitic",
    "copper-alloy": "copper alloy",
}


def design_pressure(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Pascals:
    """The greater of what the duty gives for the steam of its path and what the pipe states, gauge."""
    exhaust = steam_carried(pipe, sheet).value == "exhaust steam"
    duty = (
        greatest_exhaust_pressure(pipe, case, sheet, "p")
        if exhaust
        else sheet.take("p", case.safety_valve_pressure)
    )
    if not sheet.is_stated("design pressure", pipe.design_pressure):
        return duty
    return max(duty, sheet.take("p_d", pipe.design_pressure))


def design_temperature(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Kelvins:
    """The greater of the metal's temperature in the duty and what the pipe states."""
    duty = sheet.take("T", case.temperature_of(pipe))
    if not sheet.is_stated("design temperature", pipe.design_temperature):
        return duty
    return max(duty, sheet.take("T_d", pipe.design_temperature))


def thinnest(pipe: SteamPipe, sheet: Sheet) -> tuple[Metres, Metres]:
    """The wall ordered, and the thinnest within its mill tolerance."""
    t = sheet.take("t", pipe.wall)
    stated = sheet.is_stated("mill tolerance", pipe.mill_tolerance)
    if not stated and sheet.tolerance("Δt", pipe.wall) > 0:
        return t, t
    return t, sheet.work("t_l", least_wall, t=t, u=sheet.take("u", pipe.mill_tolerance))


def metal(pipe: SteamPipe, sheet: Sheet) -> str:
    """The code's term for the metal of the pipe; a query for metals that the codes do not list for pipes."""
    family = sheet.material_of(pipe).family
    if family not in _METALS:
        raise sheet.not_covered(f"the codes held here have no steam pipe of {family.replace('-', ' ')}")
    return _METALS[family]


def factor_y(pipe: SteamPipe, sheet: Sheet, D: Metres, t: Metres, at: Kelvins) -> Ratio:
    """The American code's factor y: that of its table, or for a wall of a sixth of the diameter or more its formula."""
    if 6 * t < D:
        return sheet.look_up("y", wall_factor_y, metal=metal(pipe, sheet), T=at)
    return sheet.work("y", thick_pipe_factor_y, d=D - 2 * t, D=D)


def american_allowable(pipe: SteamPipe, sheet: Sheet, at: Kelvins, wall: Metres) -> Pascals:
    """Allowable stress after the American code, from the strengths of the material."""
    material = sheet.material_of(pipe)
    R_m = sheet.look_up("R_m", material.tensile_strength, of=pipe, at=DRAWING_TEMPERATURE, thickness=wall)
    R_p = sheet.look_up("R_p", material.proof_stress, of=pipe, at=at, thickness=wall)
    return sheet.work("S", power_piping_allowable, R_m=R_m, R_p=R_p)


def european_allowable(
    pipe: SteamPipe, sheet: Sheet, at: Kelvins, wall: Metres, symbol: str = "f"
) -> Pascals:
    """Allowable stress after the European code; a query where creep governs."""
    return sheet.look_up(symbol, sheet.material_of(pipe).allowable_tension, of=pipe, at=at, wall=wall)
