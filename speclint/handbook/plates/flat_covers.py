"""Bolted flat covers after the code for pressure vessels, and the period rule beside it.

``G`` is the diameter at the gasket's reaction, ``W`` the load of all studs, ``h_G`` the lever from studs to
gasket. The code's formula is a supported plate with the studs' moment on its rim. It is worked twice: at
duty with the operating stud load, and with no pressure and the seating load. The code in force decides.
"""

from __future__ import annotations

from speclint.equations import Metres, Newtons, Pascals, Ratio, formula, require
from speclint.handbook.tables import ASME_APPENDIX_2, JINDAL, KHURMI, Reading

BOLTED_COVER = ASME_APPENDIX_2.at(
    "UG-34(c)(2), equation 2, sketches (j) and (k), as reproduced in public calculation sheets", memory=False
)
OPENING = ASME_APPENDIX_2.at("UG-39, openings in flat heads")

_LEVER_FACTOR = 1.9
_BOLTED_FACTOR = 0.3


def bolted_cover_factor() -> Reading:
    """Factor C of a cover bolted on its rim with a gasket inside the studs.

    >>> bolted_cover_factor().nominal
    0.3
    """
    return Reading.exact("factor C of a bolted flat cover", _BOLTED_FACTOR, "", BOLTED_COVER)


@formula("t = G √(C p/(S E) + 1.9 W h_G/(S E G³))", cites=[BOLTED_COVER])
def bolted_cover_thickness(
    G: Metres, C: Ratio, p: Pascals, S: Pascals, E: Ratio, W: Newtons, h_G: Metres
) -> Metres:
    """Least thickness of a bolted flat cover.

    t = G √(C p/(S E) + 1.9 W h_G/(S E G³))

    ``G`` diameter at the gasket's reaction [m]; ``C`` factor (``bolted_cover_factor``); ``p`` pressure, 0
    for seating [Pa]; ``S`` allowable stress [Pa]; ``E`` efficiency of any weld in the plate [-]; ``W`` load
    of all studs [N]; ``h_G`` lever from stud circle to gasket [m]. Returns [m], without corrosion.
    Raises OutOfRange unless G > 0, p ≥ 0, S > 0, 0 < E ≤ 1 and neither C nor W h_G below 0.

    Hand working: G 500 mm, 2 MPa, 100 MPa, 600 kN at 40 mm: 500 √(0.006 + 1.9 × 600e3 × 40/(100 × 500³))
    = 500 √(0.006 + 0.003648) = 49.11 mm.

    >>> cover = {"C": 0.3, "p": 2e6, "S": 100e6, "E": 1.0, "W": 600e3, "h_G": 0.040}
    >>> round(bolted_cover_thickness(G=0.500, **cover) * 1e3, 2)
    49.11
    """
    _require_cover(G, p, E)
    require(S > 0, f"allowable stress {S / 1e6:.6g} MPa is not above 0")
    require(C >= 0, f"factor {C:.6g} of the cover is below 0")
    require(W * h_G >= 0 * W * h_G, f"moment {W * h_G:.6g} N·m of the studs is below 0")
    share: float = (C * p / (S * E) + _LEVER_FACTOR * W * h_G / (S * E * G**3)) ** 0.5
    return G * share


@formula("σ = (C p G² + 1.9 W h_G/G)/(E t²)", cites=[BOLTED_COVER])
def bolted_cover_stress(
    G: Metres, C: Ratio, p: Pascals, t: Metres, E: Ratio, W: Newtons, h_G: Metres
) -> Pascals:
    """Stress that the code's formula finds in a bolted flat cover of a given thickness.

    σ = (C p G² + 1.9 W h_G/G)/(E t²)

    ``G`` diameter at the gasket's reaction [m]; ``C`` factor (``bolted_cover_factor``); ``p`` pressure, 0 for seating
    [Pa]; ``t`` thickness, corrosion taken off [m]; ``E`` efficiency of any weld in the plate [-]; ``W`` load of all
    studs [N]; ``h_G`` lever from stud circle to gasket [m]. Returns [Pa]. Raises OutOfRange unless G > 0, p ≥ 0, t > 0
    and 0 < E ≤ 1.

    Hand working: (0.3 × 2 × 250 000 + 1.9 × 600e3 × 40/500)/50² = 96.48 MPa.

    >>> cover = {"C": 0.3, "p": 2e6, "E": 1.0, "W": 600e3, "h_G": 0.040}
    >>> round(bolted_cover_stress(G=0.500, t=0.050, **cover) / 1e6, 2)
    96.48
    """
    _require_cover(G, p, E)
    require(t > 0, f"thickness {t * 1e3:.6g} mm is not above 0")
    return (C * p * G**2 + _LEVER_FACTOR * W * h_G / G) / (E * t**2)


@formula("t_h = t √2", cites=[OPENING])
def cover_thickness_with_opening(t: Metres, d: Metres, G: Metres) -> Metres:
    """Thickness of a flat cover with one opening not reinforced otherwise.

    t_h = t √2

    ``t`` thickness found for the plain cover, ``d`` opening, ``G`` diameter at the gasket's reaction [m].
    Returns [m]. Raises OutOfRange unless 0 < d ≤ G/2: a larger opening makes it a flange, or a plate
    with a hole (``ring_plates``).

    >>> round(cover_thickness_with_opening(t=0.050, d=0.100, G=0.500) * 1e3, 2)
    70.71
    """
    require(
        0 < 2 * d <= G, f"opening {d * 1e3:.6g} mm is not between 0 and half of the diameter {G * 1e3:.6g} mm"
    )
    factor: float = 2**0.5
    return t * factor


@formula("t = D √(C p/σ)", cites=[KHURMI.at("cylinder head thickness"), JINDAL.at("example 5-2")])
def period_cover_thickness(D: Metres, C: Ratio, p: Pascals, sigma: Pascals) -> Metres:
    """Thickness of a flat head or cover by the rule of older handbooks, to be reported beside the code's.

    t = D √(C p/σ)

    ``D`` bore or diameter under pressure [m]; ``C`` factor of the fixing, 0.1 for a cylinder head, 0.162 for
    a bolted cover; ``p`` pressure [Pa]; ``sigma`` allowable stress, 30 to 50 MPa in iron [Pa]. Returns [m].
    Raises OutOfRange unless C ≥ 0, p ≥ 0 and σ > 0.

    Jindal, example 5-2: 16.5 mm, made 17.

    >>> round(period_cover_thickness(D=0.380, C=0.162, p=1.8e6, sigma=155e6) * 1e3, 2)
    16.48
    """
    require(
        p >= 0 and sigma > 0,
        f"pressure {p / 1e5:.6g} bar is negative or stress {sigma / 1e6:.6g} MPa is not above 0",
    )
    require(C >= 0, f"factor {C:.6g} of the fixing is below 0")
    share: float = (C * p / sigma) ** 0.5
    return D * share


def _require_cover(G: float, p: float, E: float) -> None:
    require(G > 0, f"gasket diameter {G * 1e3:.6g} mm is not above 0")
    require(p >= 0, f"pressure {p / 1e5:.6g} bar is negative")
    require(0 < E <= 1, f"weld efficiency {E:.6g} is not between 0 and 1")
