"""The volumes of a cylinder's end: swept by the piston, and left when the piston stands at its dead centre."""

from __future__ import annotations

import math

from speclint.equations import FIRST_PRINCIPLES, CubicMetres, Metres, Ratio, formula


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
