"""The steam on one side of a wall, and its film."""

from __future__ import annotations

from typing import NamedTuple

from speclint import Sheet
from speclint.equations import (
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerSecond,
    Pascals,
    WattsPerSquareMetreKelvin,
)
from speclint.facts import section_of
from speclint.handbook.heat import gnielinski_nusselt_number, petukhov_friction_factor
from speclint.handbook.steam import (
    mean_speed,
    reynolds_number,
    saturation_temperature,
    steam_conductivity,
    steam_density,
    steam_heat_capacity,
    steam_prandtl_number,
    steam_viscosity,
)
from speclint.specs import LoadCase, SteamPassage
from speclint_steamways.formulae.short_passages import short_passage_film

#: Nearer to saturation than this the film is wet, and several times better than that of dry steam: common practice.
_DRY_BY = 5.0


class Steam(NamedTuple):
    """The state of the steam of one side: absolute pressure, temperature, specific heat."""

    p: Pascals
    T: Kelvins
    c_p: JoulesPerKilogramKelvin


def steam_of(side: str, case: LoadCase, sheet: Sheet, *, dry: bool = True) -> Steam:
    """The "live" or "exhaust" steam of a load case, and whether it must be dry for what it is asked.

    :raises NotCovered: within 5 K of saturation.
    """
    i = side[0]
    live = side == "live"
    p = sheet.take_absolute(f"p_{i}", case.live_pressure if live else case.exhaust_pressure)
    T = sheet.take(f"T_{i}", case.live_temperature if live else case.exhaust_temperature)
    if dry and sheet.work(f"T_s{i}", saturation_temperature, p=p) + _DRY_BY > T:
        raise sheet.not_covered(
            f"the {side} steam is within 5 K of saturation: its film is wet, and only a measurement tells its heat"
        )
    return Steam(p, T, sheet.work(f"c_{i}", steam_heat_capacity, p=p, T=T))


def film_in(
    passage: SteamPassage, steam: Steam, m: KilogramsPerSecond, i: str, sheet: Sheet
) -> WattsPerSquareMetreKelvin:
    """The film of steam that flows through a passage, after Gnielinski, with what its short length adds."""
    section = section_of(passage, i, sheet)
    ρ = sheet.work(f"ρ_{i}", steam_density, p=steam.p, T=steam.T)
    v = sheet.work(f"v_{i}", mean_speed, m=m, ρ=ρ, A=section.A)
    μ = sheet.work(f"μ_{i}", steam_viscosity, p=steam.p, T=steam.T)
    Re = sheet.work(f"Re_{i}", reynolds_number, ρ=ρ, v=v, d=section.d, μ=μ)
    f = sheet.work(f"f_{i}", petukhov_friction_factor, Re=Re)
    Pr = sheet.work(f"Pr_{i}", steam_prandtl_number, p=steam.p, T=steam.T)
    Nu = sheet.work(f"Nu_{i}", gnielinski_nusselt_number, Re=Re, Pr=Pr, f=f)
    λ = sheet.work(f"λ_{i}", steam_conductivity, p=steam.p, T=steam.T)
    L = sheet.take(f"L_{i}", passage.length)
    return sheet.work(f"h_{i}", short_passage_film, Nu=Nu, λ=λ, d=section.d, L=L)
