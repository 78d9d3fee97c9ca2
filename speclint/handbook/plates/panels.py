"""Flat rectangular panels under uniform pressure: passage walls, chest sides, partitions between ribs.

``a`` is the shorter side, ``b`` the longer, ``t`` the thickness; edges all clamped or all supported. A welded
or cast edge lies between the two: calculate both. Thin plates as in ``plates``.
"""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, Pascals, Ratio, formula, require
from speclint.errors import NotKnown
from speclint.handbook import tables
from speclint.handbook.plates.circular import TIMOSHENKO_PLATES, plate_rigidity
from speclint.handbook.tables import Reading, between

RECTANGLES = "rectangular-plates-timoshenko-1959.csv"
#: Seen, not in print but as public documents give them; the supported plates were summed by Navier's series too.
PANEL_TABLES = TIMOSHENKO_PLATES.at("Tables 8 and 35, as reproduced in public documents", memory=False)
_PLACE = {"supported": "Table 8", "clamped": "Table 35"}


def panel_stress_factor(edges: str, a: Metres, b: Metres) -> Reading:
    """Factor k of the greatest stress σ = k p a²/t² of a panel: six times the table's moment.

    ``edges`` supported (greatest at the centre) or clamped (at the middle of the long edges); ``a``, ``b``
    short and long side [m]. For ν = 0.3; between rows by straight lines over a/b, within 1.5 %.
    NotKnown for other edges; OutOfRange unless 0 < a ≤ b.

    >>> round(panel_stress_factor("clamped", a=0.2, b=0.2).nominal, 4)
    0.3078
    """
    return _reading("stress factor", edges, 6 * _figure(edges, a, b, "moment"))


def panel_deflection_factor(edges: str, a: Metres, b: Metres) -> Reading:
    """Factor α of the greatest deflection y = α p a⁴/K of a panel, K its rigidity.

    Arguments and errors as for ``panel_stress_factor``; between rows within 2.5 %.

    >>> panel_deflection_factor("supported", a=0.2, b=0.4).nominal
    0.01013
    """
    return _reading("deflection factor", edges, _figure(edges, a, b, "deflection"))


@formula("σ = k p a²/min(t, a/4)²", cites=[PANEL_TABLES])
def panel_stress(k: Ratio, p: Pascals, a: Metres, t: Metres) -> Pascals:
    """Greatest stress of a rectangular panel.

    σ = k p a²/min(t, a/4)²

    ``k`` factor (``panel_stress_factor``); ``p`` pressure, or difference of pressures [Pa]; ``a`` short
    side, ``t`` thickness [m]. Returns [Pa]. Raises OutOfRange unless 0 < t, 0 < a.

    The tables hold for thin plates: one thicker than a quarter of its short side, which bends less, counts as one of
    a quarter.

    Hand working: 0.5 × 1.7 × (200/20)² = 85 MPa.

    >>> round(panel_stress(k=0.5, p=1.7e6, a=0.200, t=0.020) / 1e6, 6)
    85.0
    """
    require(t > 0 and a > 0, f"thickness {t * 1e3:.6g} mm and short side {a * 1e3:.6g} mm must be above 0")
    return k * p * a**2 / min(t, a / 4) ** 2


@formula("y = α p a⁴/K, K = E t³/(12 (1 − ν²))", cites=[PANEL_TABLES])
def panel_deflection(alpha: Ratio, p: Pascals, a: Metres, t: Metres, E: Pascals, nu: Ratio) -> Metres:
    """Deflection at the centre of a rectangular panel.

    y = α p a⁴/K, K = E t³/(12 (1 − ν²))

    ``alpha`` factor (``panel_deflection_factor``); ``p`` pressure, or difference of pressures [Pa]; ``a`` short side,
    ``t`` thickness [m]; ``E`` modulus of elasticity [Pa]; ``nu`` Poisson's ratio. Returns [m]. Raises OutOfRange unless
    0 < t ≤ a/4.

    Hand working: 0.0026 × 1.7e6 × 0.2⁴/(200e9 × 8e-6/10.92) = 0.0483 mm.

    >>> round(panel_deflection(alpha=0.0026, p=1.7e6, a=0.200, t=0.020, E=200e9, nu=0.3) * 1e3, 4)
    0.0483
    """
    _require_thin(a, t)
    return alpha * p * a**4 / plate_rigidity(E, t, nu)


@formula("t = a √(k p/S)", cites=[PANEL_TABLES])
def panel_thickness(k: Ratio, p: Pascals, a: Metres, S: Pascals) -> Metres:
    """Thickness at which the greatest stress of a rectangular panel is the allowable.

    t = a √(k p/S)

    ``k`` factor (``panel_stress_factor``); ``p`` pressure, or difference of pressures [Pa]; ``a`` short side
    [m]; ``S`` allowable stress [Pa]. Returns [m]. Raises OutOfRange unless k ≥ 0, p ≥ 0 and S > 0.

    Hand working: 200 √(0.5 × 1.7/85) = 20 mm.

    >>> round(panel_thickness(k=0.5, p=1.7e6, a=0.200, S=85e6) * 1e3, 6)
    20.0
    """
    require(
        p >= 0 and S > 0, f"pressure {p / 1e5:.6g} bar is negative or stress {S / 1e6:.6g} MPa is not above 0"
    )
    require(k >= 0, f"factor {k:.6g} of the panel is below 0")
    share: float = (k * p / S) ** 0.5
    return a * share


@formula("t_c = t − c", cites=[FIRST_PRINCIPLES])
def wasted_thickness(t: Metres, c: Metres) -> Metres:
    """Wall less its corrosion allowance.

    t_c = t − c

    ``t`` thickness, ``c`` allowance [m]. Returns [m]. Raises OutOfRange when nothing is left.

    >>> round(wasted_thickness(t=0.025, c=0.001) * 1e3, 6)
    24.0
    """
    require(c < t, f"the allowance {c * 1e3:.6g} mm leaves nothing of the wall {t * 1e3:.6g} mm")
    return t - c


def _figure(edges: str, a: float, b: float, column: str) -> float:
    points = [
        (float(row["short_over_long"]), float(row[column]))
        for row in tables.rows(RECTANGLES)
        if row["edges"] == edges
    ]
    if not points:
        raise NotKnown(f"no edges {edges!r} of a panel; known: {', '.join(_PLACE)}")
    require(0 < a <= b, f"short side {a * 1e3:.6g} mm is not between 0 and the long side {b * 1e3:.6g} mm")
    return between(points, a / b, f"{edges} panels over a/b")


def _reading(factor: str, edges: str, value: float) -> Reading:
    source = PANEL_TABLES.at(f"{_PLACE[edges]}, as reproduced in public documents")
    return Reading.exact(f"{factor} of a {edges} panel", value, "", source)


def _require_thin(a: float, t: float) -> None:
    require(
        0 < 4 * t <= a,
        f"thickness {t * 1e3:.6g} mm is not between 0 and a quarter of the short side {a * 1e3:.6g} mm",
    )
