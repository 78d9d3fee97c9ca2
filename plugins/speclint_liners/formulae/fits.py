"""The fit of a liner in its bore: interference, shrinkage for assembly, and allowable stress."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Pascals


@formula("σ_c = max(−σ, 0)", cites=[FIRST_PRINCIPLES])
def compression(sigma: Pascals) -> Pascals:
    """Compressive hoop stress of the liner at its bore.

    σ_c = max(−σ, 0)

    ``sigma`` hoop stress, tension positive [Pa]. Returns [Pa]; nothing for a tension.

    >>> compression(sigma=-60e6)
    60000000.0
    """
    return max(-sigma, 0 * sigma)
