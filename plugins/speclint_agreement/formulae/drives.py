"""What a connecting rod and the lengths of the motion say of the drive of a block."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Kilograms, KilogramsPerCubicMetre, Metres, SquareMetres


@formula("A_m = m/(ρ l)", cites=[FIRST_PRINCIPLES])
def section_of_mass(m: Kilograms, rho: KilogramsPerCubicMetre, l: Metres) -> SquareMetres:  # noqa: E741
    """Section of a bar of one length and one mass.

    A_m = m/(ρ l)

    ``m`` mass [kg]; ``rho`` density [kg/m³]; ``l`` length [m]. Returns [m²].

    >>> round(section_of_mass(m=94.2, rho=7850.0, l=2.0) * 1e6, 6)
    6000.0
    """
    return m / (rho * l)


@formula("X_a = l + L − (x_f + x_b)/2", cites=[FIRST_PRINCIPLES])
def axle_from_datum(l: Metres, L: Metres, x_f: Metres, x_b: Metres) -> Metres:  # noqa: E741
    """Distance of a driven axle from the datum of its cylinder: the middle of the stroke is that of the cylinder.

    X_a = l + L − (x_f + x_b)/2

    ``l`` length of the connecting rod, ``L`` from the crosshead's centre to the piston's middle, ``x_f``, ``x_b``
    places of the faces of the front and the back cover, forward of the datum [m]. Returns [m].

    >>> round(axle_from_datum(l=1.9, L=1.45, x_f=0.676, x_b=-0.150), 6)
    3.087
    """
    return l + L - (x_f + x_b) / 2
