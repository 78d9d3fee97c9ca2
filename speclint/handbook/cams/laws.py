"""Laws of cam motion over a normalised rise: displacement, velocity and acceleration.

``x`` is the share of the rise turned, 0 to 1; displacement runs from 0 to 1, velocity and acceleration are
its derivatives with respect to x. ``lift_velocity`` and ``lift_acceleration`` bring them to metres and
seconds. A fall is the same law run backwards. ``cam_profiles`` joins rise, dwell, fall and ramps.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    MetresPerSecond,
    MetresPerSecondSquared,
    Radians,
    RadiansPerSecond,
    Ratio,
    Source,
    formula,
    require,
)
from speclint.errors import NotKnown
from speclint.handbook.tables import SARKAR

NORTON = Source(
    "R. L. Norton, Cam Design and Manufacturing Handbook", "2nd ed., 2009", "ch. 2 and 3", memory=True
)
_SARKAR = SARKAR.at("ch. 9")


@formula("s = 2 x² if x ≤ 0.5, else 1 − 2 (1 − x)²", cites=[NORTON])
def parabolic_displacement(x: Ratio) -> Ratio:
    """Displacement at constant acceleration and then the same deceleration.

    ``x`` share of the rise turned, 0 to 1. Returns the displacement as a share of the lift. Raises OutOfRange outside.

    >>> parabolic_displacement(0.25), parabolic_displacement(0.75)
    (0.125, 0.875)
    """
    _require_share(x)
    return 2 * x**2 if x <= _HALF else 1 - 2 * (1 - x) ** 2


@formula("v = 4 x if x ≤ 0.5, else 4 (1 − x)", cites=[NORTON])
def parabolic_velocity(x: Ratio) -> Ratio:
    """Velocity of the parabolic law, at most 2.

    ``x`` share of the rise turned, 0 to 1. Returns the derivative of the displacement with respect to x. Raises
    OutOfRange outside.

    >>> parabolic_velocity(0.5)
    2.0
    """
    _require_share(x)
    return 4 * x if x <= _HALF else 4 * (1 - x)


@formula("a = 4 if x < 0.5, else −4", cites=[NORTON])
def parabolic_acceleration(x: Ratio) -> Ratio:
    """Acceleration of the parabolic law.

    ``x`` share of the rise turned, 0 to 1. Returns the second derivative of the displacement with respect to x. Raises
    OutOfRange outside.

    It jumps at both ends and in the middle, where the jerk is infinite. At the jump in the middle
    the deceleration is given, which the spring has to supply.

    >>> parabolic_acceleration(0.2), parabolic_acceleration(0.8)
    (4.0, -4.0)
    """
    _require_share(x)
    return 4.0 if x < _HALF else -4.0


@formula("s = (1 − cos(π x))/2", cites=[NORTON, _SARKAR])
def harmonic_displacement(x: Ratio) -> Ratio:
    """Displacement in simple harmonic motion.

    ``x`` share of the rise turned, 0 to 1. Returns the displacement as a share of the lift. Raises OutOfRange outside.

    >>> round(harmonic_displacement(1 / 3), 9)  # (1 − cos 60°)/2
    0.25
    """
    _require_share(x)
    return (1 - math.cos(math.pi * x)) / 2


@formula("v = (π/2) sin(π x)", cites=[NORTON, _SARKAR])
def harmonic_velocity(x: Ratio) -> Ratio:
    """Velocity in simple harmonic motion, at most π/2.

    ``x`` share of the rise turned, 0 to 1. Returns the derivative of the displacement with respect to x. Raises
    OutOfRange outside.

    >>> round(harmonic_velocity(0.5), 4)
    1.5708
    """
    _require_share(x)
    return math.pi / 2 * math.sin(math.pi * x)


@formula("a = (π²/2) cos(π x)", cites=[NORTON, _SARKAR])
def harmonic_acceleration(x: Ratio) -> Ratio:
    """Acceleration in simple harmonic motion, at most π²/2.

    ``x`` share of the rise turned, 0 to 1. Returns the second derivative of the displacement with respect to x. Raises
    OutOfRange outside.

    It jumps where the rise meets a dwell, where the jerk is infinite.

    >>> round(harmonic_acceleration(0.0), 3)
    4.935
    """
    _require_share(x)
    return math.pi**2 / 2 * math.cos(math.pi * x)


@formula("s = x − sin(2 π x)/(2 π)", cites=[NORTON])
def cycloidal_displacement(x: Ratio) -> Ratio:
    """Displacement of the cycloidal law.

    ``x`` share of the rise turned, 0 to 1. Returns the displacement as a share of the lift. Raises OutOfRange outside.

    >>> round(cycloidal_displacement(0.25), 4)  # 0.25 − 1/(2π)
    0.0908
    """
    _require_share(x)
    return x - math.sin(2 * math.pi * x) / (2 * math.pi)


@formula("v = 1 − cos(2 π x)", cites=[NORTON])
def cycloidal_velocity(x: Ratio) -> Ratio:
    """Velocity of the cycloidal law, at most 2.

    ``x`` share of the rise turned, 0 to 1. Returns the derivative of the displacement with respect to x. Raises
    OutOfRange outside.

    >>> cycloidal_velocity(0.5)
    2.0
    """
    _require_share(x)
    return 1 - math.cos(2 * math.pi * x)


@formula("a = 2 π sin(2 π x)", cites=[NORTON])
def cycloidal_acceleration(x: Ratio) -> Ratio:
    """Acceleration of the cycloidal law, at most 2π, zero at both ends.

    ``x`` share of the rise turned, 0 to 1. Returns the second derivative of the displacement with respect to x. Raises
    OutOfRange outside.

    >>> round(cycloidal_acceleration(0.25), 3)
    6.283
    """
    _require_share(x)
    return 2 * math.pi * math.sin(2 * math.pi * x)


@formula("s = 10 x³ − 15 x⁴ + 6 x⁵", cites=[NORTON])
def polynomial_345_displacement(x: Ratio) -> Ratio:
    """Displacement of the 3-4-5 polynomial.

    ``x`` share of the rise turned, 0 to 1. Returns the displacement as a share of the lift. Raises OutOfRange outside.

    >>> polynomial_345_displacement(0.5)
    0.5
    """
    _require_share(x)
    return 10 * x**3 - 15 * x**4 + 6 * x**5


@formula("v = 30 x² − 60 x³ + 30 x⁴", cites=[NORTON])
def polynomial_345_velocity(x: Ratio) -> Ratio:
    """Velocity of the 3-4-5 polynomial, at most 15/8.

    ``x`` share of the rise turned, 0 to 1. Returns the derivative of the displacement with respect to x. Raises
    OutOfRange outside.

    >>> polynomial_345_velocity(0.5)
    1.875
    """
    _require_share(x)
    return 30 * x**2 - 60 * x**3 + 30 * x**4


@formula("a = 60 x − 180 x² + 120 x³", cites=[NORTON])
def polynomial_345_acceleration(x: Ratio) -> Ratio:
    """Acceleration of the 3-4-5 polynomial, at most 10/√3, zero at both ends.

    ``x`` share of the rise turned, 0 to 1. Returns the second derivative of the displacement with respect to x. Raises
    OutOfRange outside.

    >>> round(polynomial_345_acceleration((1 - 3**-0.5) / 2), 3)
    5.774
    """
    _require_share(x)
    return 60 * x - 180 * x**2 + 120 * x**3


@formula("V = v L ω/β", cites=[FIRST_PRINCIPLES])
def lift_velocity(v: Ratio, L: Metres, ω: RadiansPerSecond, β: Radians) -> MetresPerSecond:
    """Velocity of the follower from the normalised one.

    V = v L ω/β

    ``v`` normalised velocity; ``L`` lift [m]; ``ω`` speed of the cam [rad/s]; ``β`` angle of the rise [rad],
    above 0. Returns [m/s]. Raises OutOfRange for β.

    By hand: cycloidal, 20 mm in 60° at 300 rev/min, 2 · 0.020 · 31.416/1.0472 = 1.2 m/s.

    >>> round(lift_velocity(2.0, 0.020, 10 * math.pi, math.pi / 3), 9)
    1.2
    """
    require(β > 0, "the angle of the rise must be above 0")
    return v * L * ω / β


@formula("A = a L ω²/β²", cites=[FIRST_PRINCIPLES])
def lift_acceleration(a: Ratio, L: Metres, ω: RadiansPerSecond, β: Radians) -> MetresPerSecondSquared:
    """Acceleration of the follower from the normalised one.

    A = a L ω²/β²

    ``a`` normalised acceleration; ``L`` lift [m]; ``ω`` speed of the cam [rad/s]; ``β`` angle of the rise [rad],
    above 0. Returns [m/s²]. Raises OutOfRange for β.

    Sarkar, ch. 9, illustration 3: harmonic, 50 mm in 120° at 100 rev/min, 6.2 m/s².

    >>> round(lift_acceleration(harmonic_acceleration(0.0), 0.050, 100 * math.pi / 30, 2 * math.pi / 3), 1)
    6.2
    """
    require(β > 0, "the angle of the rise must be above 0")
    return a * L * ω**2 / β**2


Curve = Callable[[float], float]


@dataclass(frozen=True, slots=True)
class CamLaw:
    """One law with its three curves, its greatest values, and whether its jerk is infinite at joins."""

    name: str
    displacement: Curve
    velocity: Curve
    acceleration: Curve
    greatest_velocity: float
    greatest_acceleration: float
    infinite_jerk: bool


_LAWS = {
    law.name: law
    for law in (
        CamLaw(
            "parabolic", parabolic_displacement, parabolic_velocity, parabolic_acceleration, 2.0, 4.0, True
        ),
        CamLaw(
            "harmonic",
            harmonic_displacement,
            harmonic_velocity,
            harmonic_acceleration,
            math.pi / 2,
            math.pi**2 / 2,
            True,
        ),
        CamLaw(
            "cycloidal",
            cycloidal_displacement,
            cycloidal_velocity,
            cycloidal_acceleration,
            2.0,
            2 * math.pi,
            False,
        ),
        CamLaw(
            "3-4-5 polynomial",
            polynomial_345_displacement,
            polynomial_345_velocity,
            polynomial_345_acceleration,
            1.875,
            10 / math.sqrt(3),
            False,
        ),
    )
}


def cam_law(name: str) -> CamLaw:
    """The law of that name: parabolic, harmonic, cycloidal or 3-4-5 polynomial; NotKnown otherwise."""
    try:
        return _LAWS[name]
    except KeyError:
        raise NotKnown(f"no cam law {name!r}; known: {', '.join(_LAWS)}") from None


_HALF = 0.5


def _require_share(x: float) -> None:
    holds = 0 <= x <= 1
    if not holds:  # the words only where they are needed: a scan asks this at every place
        require(holds, f"share of the rise {x:.4g} lies outside 0 to 1")
