"""The volumes of a cylinder's end: swept by the piston, and left when the piston stands at its dead centre."""

from __future__ import annotations

import math

from speclint.equations import FIRST_PRINCIPLES, CubicMetres, Metres, Ratio, SquareMetres, formula
from speclint.facts.cylinders import bore_named, liners_of, rods_in
from speclint.facts.drives import cold_clearance
from speclint.facts.engine import stroke_of
from speclint.facts.port_volumes import volume_of_passages
from speclint.facts.valve_gear import end_on
from speclint.handbook.members import round_area, tube_area
from speclint.handbook.valve_events import End
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, CylinderLiner, NotStated


@formula("V_s = π (d² − d_r²) s/4", cites=[FIRST_PRINCIPLES])
def swept_volume(d: Metres, d_r: Metres, s: Metres) -> CubicMetres:
    """Volume that the piston sweeps.

    V_s = π (d² − d_r²) s/4

    ``d`` bore, ``d_r`` rod on that side (0 where there is none), ``s`` stroke [m]. Returns [m³].

    Hand working: π × 0.5² × 0.66/4 = 0.129591 m³.

    >>> round(swept_volume(d=0.500, d_r=0.0, s=0.660), 6)
    0.129591
    """
    return math.pi * (d**2 - d_r**2) * s / 4


@formula("k = (V_p + π (d² − d_r²) c/4)/V_s", cites=[FIRST_PRINCIPLES])
def clearance_ratio(V_p: CubicMetres, d: Metres, d_r: Metres, c: Metres, V_s: CubicMetres) -> Ratio:
    """Clearance volume of an end as a share of the swept volume.

    k = (V_p + π (d² − d_r²) c/4)/V_s

    ``V_p`` ports and passages [m³]; ``d`` bore, ``d_r`` rod on that side, ``c`` clearance to the cover [m];
    ``V_s`` swept volume [m³]. Returns a ratio.

    Hand working: (9000 + 1570.8)/129591 = 0.081571.

    >>> round(clearance_ratio(V_p=9e-3, d=0.500, d_r=0.0, c=8e-3, V_s=0.129591), 5)
    0.08157
    """
    return (V_p + math.pi * (d**2 - d_r**2) * c / 4) / V_s


@formula("V_c = V_p + π (d² − d_r²) c/4", cites=[FIRST_PRINCIPLES])
def clearance_volume(V_p: CubicMetres, d: Metres, d_r: Metres, c: Metres) -> CubicMetres:
    """Volume of an end when the piston stands at its dead centre.

    V_c = V_p + π (d² − d_r²) c/4

    ``V_p`` ports and passages up to the shut valves [m³]; ``d`` bore, ``d_r`` rod on that side, ``c`` clearance to the
    cover [m]. Returns [m³].

    Hand working: 9500 + π × 50² × 0.8/4 = 11 070.8 cm³.

    >>> round(clearance_volume(V_p=9.5e-3, d=0.5, d_r=0.0, c=8e-3) * 1e6, 1)
    11070.8
    """
    return V_p + math.pi * (d**2 - d_r**2) * c / 4


def bore_as_drawn(block: CylinderBlock, bore: str, sheet: Sheet) -> Measure | NotStated:
    """The diameter in which a piston works, to be taken: of its liner, else of the bore of the block."""
    liner = next(iter(liners_of(block, bore, sheet)), None)
    return liner.bore if liner is not None else bore_named(block, bore, sheet).diameter


def greatest_bore(
    liner: CylinderLiner, sheet: Sheet, *, symbols: tuple[str, str] = ("D", "D_last")
) -> Metres:
    """The largest bore of a liner's life, m: its last one where that is stated, or the new one at its upper limit."""
    new, last = symbols
    D: Metres = sheet.take(new, liner.bore)
    if not sheet.is_stated("last bore", liner.last_bore):
        return D
    return max(D, sheet.take(last, liner.last_bore))  # which may be the new one, and that within its limits


def greatest_bore_as_drawn(block: CylinderBlock, bore: str, sheet: Sheet) -> Metres:
    """The largest bore of a cylinder's life, m, as drawn: the last one of its liner or of the block, else the new."""
    liner = next(iter(liners_of(block, bore, sheet)), None)
    of = liner if liner is not None else bore_named(block, bore, sheet)
    stated = sheet.is_stated("last bore", of.last_bore)
    d: Metres = sheet.take_nominal("d", of.last_bore if stated else bore_as_drawn(block, bore, sheet))
    return d


def rod_as_drawn(block: CylinderBlock, bore: str, sheet: Sheet) -> Measure | NotStated:
    """The diameter of the rod of a bore, to be taken: of the one that is drawn, else as the block states it."""
    rod = next(iter(rods_in(block, bore, sheet)), None)
    return rod.diameter if rod is not None else block.drive.rod_diameter


def piston_area(block: CylinderBlock, bore: str, side: End, sheet: Sheet) -> SquareMetres:
    """Area of the piston towards one end, m², as drawn: at the back less that of its rod."""
    d = sheet.take_nominal("d", bore_as_drawn(block, bore, sheet))
    if side is End.FRONT:
        return sheet.work("A_f", round_area, d=d)
    return sheet.work("A_b", tube_area, D=d, d=sheet.take_nominal("d_r", rod_as_drawn(block, bore, sheet)))


def clearance_share(block: CylinderBlock, bore: str, side: End, sheet: Sheet) -> Ratio:
    """Clearance volume over swept volume of one end, as drawn."""
    mark = side.value[0]
    _, end = end_on(block, bore, side, sheet)
    d = sheet.take_nominal("d", bore_as_drawn(block, bore, sheet))
    d_r = 0.0 if side is End.FRONT else sheet.take_nominal("d_r", rod_as_drawn(block, bore, sheet))
    stroke = sheet.take_nominal("S", stroke_of(block, sheet, bore))
    V_s = sheet.work(f"V_s{mark}", swept_volume, d=d, d_r=d_r, s=stroke)
    V_p = volume_of_passages(block, end, f"V_p{mark}", sheet, sheet.take_nominal)
    c = cold_clearance(block, end, sheet, sheet.take_nominal, bore)
    return sheet.work(f"k_{mark}", clearance_ratio, V_p=V_p, d=d, d_r=d_r, c=c, V_s=V_s)
