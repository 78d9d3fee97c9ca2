"""The guide of a spindle: its clearance cold and hot, and what its own fit in the block takes from it."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio


@formula("c = D_g (1 + ε_g) − Δ_g − d (1 + ε_s)", cites=[FIRST_PRINCIPLES])
def guide_clearance_hot(D_g: Metres, ε_g: Ratio, Δ_g: Metres, d: Metres, ε_s: Ratio) -> Metres:
    """Diametral clearance of a spindle or a tappet in its guide, hot.

    c = D_g (1 + ε_g) − Δ_g − d (1 + ε_s)

    ``D_g`` bore of the guide, ``d`` spindle or stem [m]; ``ε_g``, ``ε_s`` growth of guide and spindle; ``Δ_g`` how much
    the block closes the bore in the heat beyond what the drawing's bore has in it already [m], negative where it lets
    go. Returns [m], negative where it seizes.

    Hand working: 22.08 (1 + 0.0025) − 0.01 − 22 (1 + 0.0035) = 22.1352 − 0.01 − 22.077 = 0.0482 mm.

    >>> round(guide_clearance_hot(D_g=22.08e-3, ε_g=0.0025, Δ_g=1e-5, d=22e-3, ε_s=0.0035) * 1e3, 4)
    0.0482
    """
    return D_g * (1 + ε_g) - Δ_g - d * (1 + ε_s)


@formula("c = D_g − Δ_g − d", cites=[FIRST_PRINCIPLES])
def guide_clearance(D_g: Metres, Δ_g: Metres, d: Metres) -> Metres:
    """Diametral clearance of a spindle in its guide, cold.

    c = D_g − Δ_g − d

    ``D_g`` bore of the guide, ``Δ_g`` how much pressing the guide in closes it, nothing where it is bored in its
    place, ``d`` spindle [m]. Returns [m].

    >>> round(guide_clearance(D_g=22.08e-3, Δ_g=1e-5, d=22e-3) * 1e6, 3)
    70.0
    """
    return D_g - Δ_g - d


@formula("Δ = Δ_h − Δ_c", cites=[FIRST_PRINCIPLES])
def closing_since_bored(Δ_h: Metres, Δ_c: Metres) -> Metres:
    """How much the block closes a guide's bore hot beyond what it closed it cold, when it was bored in its place.

    Δ = Δ_h − Δ_c

    ``Δ_h``, ``Δ_c`` closing by the fit hot and cold [m]. Returns [m], negative where the fit eases.

    >>> round(closing_since_bored(Δ_h=12e-6, Δ_c=20e-6) * 1e6, 3)
    -8.0
    """
    return Δ_h - Δ_c


@formula("c_n = x d", cites=[COMMON_PRACTICE])
def share_of_diameter(x: Ratio, d: Metres) -> Metres:
    """Share of a diameter, as a limit.

    c_n = x d

    ``x`` share; ``d`` diameter [m]. Returns [m].

    >>> round(share_of_diameter(x=0.004, d=0.022) * 1e6, 3)
    88.0
    """
    return x * d


@formula("c_n = x c_0", cites=[COMMON_PRACTICE])
def share_of_clearance(x: Ratio, c_0: Metres) -> Metres:
    """Share of the cold clearance, as a limit.

    c_n = x c_0

    ``x`` share; ``c_0`` clearance cold [m]. Returns [m].

    >>> round(share_of_clearance(x=0.1, c_0=80e-6) * 1e6, 6)
    8.0
    """
    return x * c_0


@formula("x = L/d", cites=[FIRST_PRINCIPLES])
def length_ratio(L: Metres, d: Metres) -> Ratio:
    """Length of a guide for each diameter.

    x = L/d

    ``L`` length, ``d`` diameter [m]. Returns [-]. Raises OutOfRange unless d > 0.

    >>> length_ratio(L=0.110, d=0.022)
    5.0
    """
    require(d > 0, f"diameter {d * 1e3:.6g} mm is not above 0")
    return L / d
