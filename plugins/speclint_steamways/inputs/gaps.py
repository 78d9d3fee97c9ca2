"""What stands in the gap between the two walls of a partition, and how it conducts."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Limit, Sheet
from speclint.equations import (
    Kelvins,
    Metres,
    Ratio,
    SquareMetreKelvinsPerWatt,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
)
from speclint.facts import gap_between, panels_of_partition
from speclint.handbook.steam import steam_conductivity
from speclint.specs import Partition
from speclint_steamways.formulae.gaps import (
    air_conductivity,
    gap_rayleigh_number,
    gap_resistance,
    radiation_across_gap,
    slot_nusselt_number,
)
from speclint_steamways.formulae.heat import apart, midway

#: Pressure in a gap that is open to the atmosphere, Pa absolute; the conductivity of its gas hardly hangs on it.
_ATMOSPHERE = 101325.0
#: Of the faces of a gap, where the partition states none.
EMISSIVITY = Limit(
    "emissivity",
    "0.8",
    "ratio",
    COMMON_PRACTICE,
    "emissivity of oxidised steel, for gaps whose partition states none",
)


def emissivity_of(partition: Partition, sheet: Sheet) -> Ratio:
    """Emissivity of the faces of a gap: as the partition states it, else that of the settings."""
    if sheet.is_stated("emissivity", partition.emissivity):
        return sheet.take("ε", partition.emissivity)
    return sheet.limit("emissivity", "ε")


def gap_across(
    partition: Partition, T_1: Kelvins, T_2: Kelvins, λ_w: WattsPerMetreKelvin, sheet: Sheet
) -> SquareMetreKelvinsPerWatt:
    """Resistance of the gap of a partition between both streams: radiation, its gas or lagging, its bridges."""
    holds = sheet.read("gap holds", partition.gap_holds)
    s = sheet.take("s", gap_between(partition, sheet))
    b = sheet.take("b", partition.bridges)
    h_r: WattsPerSquareMetreKelvin = 0.0
    Nu: Ratio = 1.0
    if holds == "lagging":
        λ_g = sheet.take("λ_g", partition.gap_conductivity)
    else:
        h_r = sheet.work("h_r", radiation_across_gap, ε=emissivity_of(partition, sheet), T_1=T_1, T_2=T_2)
        λ_g = _gas(holds, T_1, T_2, sheet)
        Nu = convection_in(partition, s, T_1, T_2, sheet)
    return sheet.work("R_g", gap_resistance, h_r=h_r, Nu=Nu, λ_g=λ_g, s=s, b=b, λ_w=λ_w)


def _gas(holds: str, T_1: Kelvins, T_2: Kelvins, sheet: Sheet) -> WattsPerMetreKelvin:
    T = sheet.work("T_m", midway, T_1=T_1, T_2=T_2)
    if holds == "steam":
        return sheet.work("λ_g", steam_conductivity, p=_ATMOSPHERE, T=T)
    return sheet.work("λ_g", air_conductivity, T=T)


def convection_in(partition: Partition, s: Metres, T_1: Kelvins, T_2: Kelvins, sheet: Sheet) -> Ratio:
    """Nusselt number of the gas in a gap, as of air with all of the difference of temperature across it.

    The gap counts as no higher than the shorter side of its wall: the lower, the more its gas carries.
    """
    H = min(sheet.take("H", panel.short) for panel in panels_of_partition(partition, sheet))
    Ra = sheet.work(
        "Ra",
        gap_rayleigh_number,
        ΔT=sheet.work("ΔT_g", apart, T_1=T_1, T_2=T_2),
        s=s,
        T=sheet.work("T_m", midway, T_1=T_1, T_2=T_2),
    )
    return sheet.work("Nu_g", slot_nusselt_number, Ra=Ra, H=H, s=s)
