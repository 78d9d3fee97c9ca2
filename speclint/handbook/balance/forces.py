"""Forces of what is left out of balance: hammer blow, variation of the tractive effort, swaying couple.

What turns with the wheels gives a force of constant size that turns with them: its vertical part is the hammer blow.
What reciprocates gives a force along the track alone, of the first order m r ω² cos θ; the second, of the angle 2 θ,
is less than it by crank radius over rod length and cannot be balanced by the wheels.
"""

from __future__ import annotations

from speclint.equations import (
    FIRST_PRINCIPLES,
    KilogramMetres,
    Metres,
    NewtonMetres,
    Newtons,
    RadiansPerSecond,
    Ratio,
    formula,
    require,
)
from speclint.handbook.tables import SARKAR

_BALANCING = SARKAR.at("ch. 12, balancing")


@formula("F = R ω²", cites=[_BALANCING, FIRST_PRINCIPLES])
def rotating_force(R: KilogramMetres, ω: RadiansPerSecond) -> Newtons:
    """Force of what is out of balance, at a speed.

    F = R ω²

    Of what is left out of balance in the plane of a wheel it is that wheel's hammer blow, of all together the variation
    of the tractive effort. ``R`` mass times radius [kg·m]; ``ω`` speed of the wheels [rad/s]. Returns [N].

    By hand: 10 kg·m at 30 rad/s.

    >>> rotating_force(R=10.0, ω=30.0)
    9000.0
    """
    return R * ω**2


@formula("M = b ω² √((X_l − X_r)² + (Y_l − Y_r)²)", cites=[_BALANCING, FIRST_PRINCIPLES])
def swaying_couple(
    X_l: KilogramMetres,
    Y_l: KilogramMetres,
    X_r: KilogramMetres,
    Y_r: KilogramMetres,
    b: Metres,
    ω: RadiansPerSecond,
) -> NewtonMetres:
    """Amplitude of the couple that turns the engine about an upright axis in its middle.

    M = b ω² √((X_l − X_r)² + (Y_l − Y_r)²)

    ``X_l``, ``X_r`` moments left out of balance along the track, in the planes of the left and the right wheels, along
    the crank from which angles count [kg·m]; ``Y_l``, ``Y_r`` moments left out of balance along the track, a right
    angle ahead of that crank [kg·m]; ``b`` half the distance of the planes [m]; ``ω`` speed of the wheels [rad/s].
    Returns [N·m].

    By hand: 5 kg·m forward on the left, 3 kg·m backward on the right, planes 1.5 m apart, 10 rad/s: 8 × 0.75 × 100.

    >>> swaying_couple(X_l=5.0, Y_l=0.0, X_r=-3.0, Y_r=0.0, b=0.75, ω=10.0)
    600.0
    """
    apart: float = ((X_l - X_r) ** 2 + (Y_l - Y_r) ** 2) ** 0.5
    return b * ω**2 * apart


@formula("c = −(X_l U_l + Y_l V_l + X_r U_r + Y_r V_r)/(U_l² + V_l² + U_r² + V_r²)", cites=[FIRST_PRINCIPLES])
def share_balanced(
    X_l: KilogramMetres,
    Y_l: KilogramMetres,
    X_r: KilogramMetres,
    Y_r: KilogramMetres,
    U_l: KilogramMetres,
    V_l: KilogramMetres,
    U_r: KilogramMetres,
    V_r: KilogramMetres,
) -> Ratio:
    """Share of the reciprocating masses that the wheels balance: that which fits best what they have beyond balance.

    c = −(X_l U_l + Y_l V_l + X_r U_r + Y_r V_r)/(U_l² + V_l² + U_r² + V_r²)

    ``X_l``, ``X_r`` moments of all that turns, balance masses included, in the planes of the left and the right wheels,
    along the crank from which angles count [kg·m]; ``Y_l``, ``Y_r`` moments of the same a right angle ahead of that
    crank [kg·m]; ``U_l``, ``U_r`` moments of what reciprocates, in the planes of the left and the right wheels, along
    that crank [kg·m]; ``V_l``, ``V_r`` moments of what reciprocates a right angle ahead of it [kg·m]. Returns a ratio
    [-]: 0 where only what turns is balanced, below 0 where not even that is. Raises OutOfRange where nothing
    reciprocates.

    By hand: 10 and 4 kg·m reciprocating, of which 3 and 1.2 kg·m turn opposite.

    >>> round(share_balanced(X_l=-3.0, Y_l=0.0, X_r=0.0, Y_r=-1.2, U_l=10.0, V_l=0.0, U_r=0.0, V_r=4.0), 9)
    0.3
    """
    whole = U_l**2 + V_l**2 + U_r**2 + V_r**2
    require(whole > 0, "something must reciprocate")
    return -(X_l * U_l + Y_l * V_l + X_r * U_r + Y_r * V_r) / whole
