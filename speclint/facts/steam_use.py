"""The steam that one cylinder uses, where no duty states it: an upper estimate by its sizes and its cut-off."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from speclint.equations import (
    FIRST_PRINCIPLES,
    CubicMetres,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Metres,
    RadiansPerSecond,
    Ratio,
    formula,
)
from speclint.facts.cylinders import ends_of, liners_of
from speclint.facts.drives import cold_clearance
from speclint.facts.engine import stroke_of
from speclint.facts.port_volumes import all_ports_drawn, volume_of_passages
from speclint.facts.speeds import speed_of_crank, states_speed
from speclint.handbook.steam import steam_density
from speclint.rules import Sheet
from speclint.specs import CylinderBlock

if TYPE_CHECKING:
    from speclint.specs import LoadCase


@formula("m = (ω/π) (π (d²/4) (ε S + c) + V_p) ρ", cites=[FIRST_PRINCIPLES])
def steam_of_cylinder(
    ω: RadiansPerSecond,
    d: Metres,
    ε: Ratio,
    S: Metres,
    c: Metres,
    V_p: CubicMetres,
    ρ: KilogramsPerCubicMetre,
) -> KilogramsPerSecond:
    """Live steam that fills both ends of a double-acting cylinder, clearances and all, up to cut-off: never less used.

    m = (ω/π) (π (d²/4) (ε S + c) + V_p) ρ

    It is 2 n A S (ε + e) ρ, with n = ω/2π turns in a second, the area of the bore A = π d²/4 and the share of clearance
    e = (A c + V_p)/(A S). ``ω`` speed of the crank [rad/s]; ``d`` bore, ``S`` stroke, ``c`` clearance from piston to
    cover [m]; ``ε`` cut-off; ``V_p`` ports and passages of an end [m³]; ``ρ`` density of the live steam [kg/m³]. Left
    out, and less: what the rod takes of the bore, the steam that compression keeps, the drop of pressure in the
    valves. Left out, and more: steam that condenses on cold walls, of which hot steam has none. Returns [kg/s].

    Hand working for 500 mm by 660 mm at 6 turns in a second and a cut-off of 35 %, clearances of 8 mm and 9.5 dm³,
    6 kg/m³: A = 0.1963495 m²; a stroke 0.1963495 × (0.231 + 0.008) + 0.0095 = 0.0564275 m³; 2 × 6 × 0.0564275 × 6 =
    4.06278 kg/s.

    >>> round(steam_of_cylinder(ω=12 * math.pi, d=0.5, ε=0.35, S=0.66, c=0.008, V_p=0.0095, ρ=6.0), 5)
    4.06278
    """
    return ω / math.pi * (math.pi * d**2 / 4 * (ε * S + c) + V_p) * ρ


def steam_by_cylinder(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> float | None:
    """The most steam that one cylinder of a block can use in a load case, kg/s; None where sizes or cut-off are absent.

    Of several cylinders, and of both ends, that which takes the most.
    """
    places = (case.cut_off, case.live_pressure, case.live_temperature, stroke_of(block, sheet))
    if not all(sheet.is_stated("cut-off, steam or stroke", one) for one in places) or not states_speed(
        case, sheet
    ):
        return None
    taken = [_taken(block, name, case, sheet) for name in block.bores]
    found = [one for one in taken if one is not None]
    return max(found) if found and len(found) == len(taken) else None


def _taken(block: CylinderBlock, name: str, case: LoadCase, sheet: Sheet) -> float | None:
    ends = ends_of(block, name, sheet)
    liners = liners_of(block, name, sheet)
    bore = liners[0].last_bore if liners else block.bores[name].last_bore
    volumes = [end.passage_volume for side, end in ends.items() if not all_ports_drawn(block, side, sheet)]
    clearances = [end.clearance for end in ends.values()]
    if not ends or not all(sheet.is_stated("bore or volume", one) for one in (bore, *volumes, *clearances)):
        return None
    p, T = sheet.take_absolute("p_l", case.live_pressure), sheet.take("T_l", case.live_temperature)
    ρ = sheet.work("ρ_c", steam_density, p=p, T=T)
    sizes = {
        "ω": speed_of_crank(block, case, sheet),
        "d": sheet.take("d", bore),
        "ε": sheet.take("ε", case.cut_off),
        "S": sheet.take("S", stroke_of(block, sheet, name)),
    }
    return max(
        sheet.work(
            "m",
            steam_of_cylinder,
            c=max(cold_clearance(block, end, sheet), sheet.take("c", end.clearance)),
            V_p=volume_of_passages(block, end, "V_p", sheet),
            ρ=ρ,
            **sizes,
        )
        for end in ends.values()
    )
