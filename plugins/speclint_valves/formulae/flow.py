"""Steam through a valve: its speed, area and loss of pressure."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, MetresPerSecond, Pascals, Ratio, SquareMetres


@formula("v = A_p c/A", cites=[FIRST_PRINCIPLES])
def steam_speed(A_p: SquareMetres, c: MetresPerSecond, A: SquareMetres) -> MetresPerSecond:
    """Speed of steam that follows the piston.

    v = A_p c/A

    ``A_p`` area and ``c`` speed of the piston; ``A`` area of the passage [m²]. Returns [m/s].
    Raises OutOfRange unless A > 0.

    Hand working: 0.19635 m² at 8 m/s through 0.016 m²: 98.2 m/s.

    >>> round(steam_speed(A_p=0.19635, c=8.0, A=0.016), 1)
    98.2
    """
    require(A > 0, f"area of passage {A * 1e6:.6g} mm² is not above 0")
    return A_p * c / A


@formula("A = min(A_v, A_port)", cites=[FIRST_PRINCIPLES])
def governing_area(A_v: SquareMetres, A_port: SquareMetres) -> SquareMetres:
    """The smaller of the valve's flow area and the port's.

    A = min(A_v, A_port)

    ``A_v`` flow area of the valve [m²]; ``A_port`` area of the port [m²]. Returns [m²].

    >>> governing_area(A_v=0.018, A_port=0.016)
    0.016
    """
    return min(A_v, A_port)


@formula("A_c = min(A, T_c)", cites=[FIRST_PRINCIPLES])
def area_after_meeting(A: SquareMetres, T_c: SquareMetres) -> SquareMetres:
    """Flow area of a valve whose two streams meet in one throat.

    A_c = min(A, T_c)

    ``A`` area of both beats, ``T_c`` of the throat after they have met [m²]. Returns [m²].

    >>> area_after_meeting(A=0.018243, T_c=0.013965)
    0.013965
    """
    return min(A, T_c)


@formula("h_x = h/x", cites=[FIRST_PRINCIPLES])
def lift_over_factor(h: Metres, x: Ratio) -> Metres:
    """Lift that would be worth having, were the whole lift at its limit.

    h_x = h/x

    ``h`` lift [m]; ``x`` factor. Returns [m]. Raises OutOfRange unless x > 0.

    >>> round(lift_over_factor(h=0.044, x=1.1), 6)
    0.04
    """
    require(x > 0, f"factor {x:.6g} is not above 0")
    return h / x


@formula("x = Δp/p", cites=[FIRST_PRINCIPLES])
def pressure_ratio(Δp: Pascals, p: Pascals) -> Ratio:
    """Share of the pressure that is lost.

    x = Δp/p

    ``Δp`` loss, ``p`` absolute pressure [Pa]. Returns [-]. Raises OutOfRange unless p > 0.

    >>> round(pressure_ratio(Δp=0.08e6, p=1.6e6), 6)
    0.05
    """
    require(p > 0, f"absolute pressure {p / 1e5:.6g} bar is not above 0")
    return Δp / p


@formula("A_n = x A", cites=[FIRST_PRINCIPLES])
def share_of_area(x: Ratio, A: SquareMetres) -> SquareMetres:
    """Area needed.

    A_n = x A

    ``x`` share; ``A`` area [m²]. Returns [m²].

    >>> round(share_of_area(x=0.9, A=0.016), 6)
    0.0144
    """
    return x * A


@formula("h_n = x h", cites=[FIRST_PRINCIPLES])
def share_of_lift(x: Ratio, h: Metres) -> Metres:
    """Greatest useful lift.

    h_n = x h

    ``x`` factor; ``h`` lift [m]. Returns [m].

    >>> round(share_of_lift(x=1.1, h=0.04), 6)
    0.044
    """
    return x * h
