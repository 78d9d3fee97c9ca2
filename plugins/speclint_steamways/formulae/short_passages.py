"""Film in a passage that is too short for its flow to settle: the entry makes it better than in a long one."""

from __future__ import annotations

from speclint import formula, require
from speclint.equations import Metres, Ratio, WattsPerMetreKelvin, WattsPerSquareMetreKelvin
from speclint.handbook.heat import GNIELINSKI


@formula("h = (Nu λ/d)(1 + min(d/L, 1)^(2/3))", cites=[GNIELINSKI])
def short_passage_film(Nu: Ratio, λ: WattsPerMetreKelvin, d: Metres, L: Metres) -> WattsPerSquareMetreKelvin:
    """Heat transfer coefficient of a short passage, as the mean over its length.

    h = (Nu λ/d)(1 + min(d/L, 1)^(2/3))

    ``Nu`` Nusselt number of settled flow; ``λ`` conductivity of the fluid [W/(m·K)]; ``d`` hydraulic diameter, ``L``
    length [m], above 0. One that is shorter than its diameter, such as a seat ring, counts as long as that. Returns
    [W/(m²·K)]. Raises OutOfRange outside.

    Hand working: 500 × 0.05/0.1 = 250; (1/8)^(2/3) = 0.25.

    >>> round(short_passage_film(Nu=500.0, λ=0.05, d=0.1, L=0.8), 6)
    312.5
    """
    require(d > 0 and L > 0, "diameter and length of a passage must be above 0")
    entry: float = min(d / L, 1) ** (2 / 3)
    return Nu * λ / d * (1 + entry)
