"""Mean pressure and mean speed of the pairs that rub, over a revolution of the engine."""

from __future__ import annotations

import math
from typing import Annotated

from speclint import FIRST_PRINCIPLES, Source, formula, require
from speclint.equations import Hertz, Metres, MetresPerSecond, Newtons, Pascals, Ratio
from speclint.handbook.tables import JOEL

#: Pressure times speed: the heat of friction on each unit of area, for a coefficient of friction of 1.
PascalMetresPerSecond = Annotated[float, "Pa·m/s"]

_EXPANSION: Source = JOEL.at("example 11.1, hypothetical mean effective pressure")
#: The greatest crank over connecting rod for which the series of the mean side thrust was verified.
_STEEPEST_ROD = 1 / 3


@formula("p_m = p_1 c (1 + ln(1/c)) − p_e", cites=[_EXPANSION])
def mean_effective_pressure(p_1: Pascals, p_e: Pascals, c: Ratio) -> Pascals:
    """Mean effective pressure over a stroke, by hyperbolic expansion as in the textbooks, without clearance.

    p_m = p_1 c (1 + ln(1/c)) − p_e

    ``p_1`` admission, ``p_e`` exhaust pressure [Pa absolute]; ``c`` cut-off, above 0 to 1. Returns [Pa]. The
    result is above what an indicator measures: no diagram factor is applied. Raises OutOfRange outside, and where
    the steam would do no work.

    Hand working: 10 bar cut off at 0.4: 10 × 0.4 × (1 + 0.91629) = 7.6652 bar, less 1.2: 6.4652 bar.

    >>> round(mean_effective_pressure(p_1=10e5, p_e=1.2e5, c=0.4) / 1e5, 4)
    6.4652
    """
    require(0 < c <= 1, f"cut-off {c:.4g} is not between 0 and 1")
    pushing = p_1 * c * (1 + math.log(1 / c))
    require(pushing > p_e, "the steam does no work over the stroke")
    return pushing - p_e


@formula("N_m = (π/4) λ (1 + 3 λ²/8 + 15 λ⁴/64) F_m, λ = r/l", cites=[FIRST_PRINCIPLES])
def mean_side_thrust(F_m: Newtons, r: Metres, l: Metres) -> Newtons:  # noqa: E741 - the symbol of the trade
    """Mean side thrust of a crosshead on its slide bar over a stroke, under a constant load on the piston.

    N_m = (π/4) λ (1 + 3 λ²/8 + 15 λ⁴/64) F_m, λ = r/l

    ``F_m`` load [N]; ``r`` crank radius, ``l`` length of the connecting rod [m], r at most l/3. Returns [N]. The
    mean of F tan φ along the bar is (λ/2) ∫ sin²θ/√(1 − λ² sin²θ) dθ over half a turn; the series leaves out
    less than three parts in ten thousand. Raises OutOfRange outside.

    Hand working: λ = 0.2: 0.785398 × 0.2 × (1 + 0.015 + 0.000375) = 0.159495.

    >>> round(mean_side_thrust(F_m=100e3, r=0.3, l=1.5), 1)
    15949.5
    """
    require(
        0 * r < r <= _STEEPEST_ROD * l, "the connecting rod must be at least three times as long as the crank"
    )
    ratio = r / l
    return math.pi / 4 * ratio * (1 + 3 * ratio**2 / 8 + 15 * ratio**4 / 64) * F_m


@formula("p = p_w + p_m", cites=[FIRST_PRINCIPLES])
def ring_pressure(p_w: Pascals, p_m: Pascals) -> Pascals:
    """Mean pressure of a ring on its bore, with the full pressure difference of the steam behind it.

    p = p_w + p_m

    ``p_w`` of the ring's own spring, ``p_m`` mean difference of pressure over a stroke [Pa]. Returns [Pa]. On the
    safe side: several rings share the pressure difference, and steam on the face of the ring relieves it.

    >>> round(ring_pressure(p_w=0.05e6, p_m=1.0e6) / 1e6, 6)
    1.05
    """
    return p_w + p_m


@formula("v = 2 S n", cites=[FIRST_PRINCIPLES])
def reciprocating_speed(S: Metres, n: Hertz) -> MetresPerSecond:
    """Mean speed of a part that reciprocates once in a revolution.

    v = 2 S n

    ``S`` stroke or lift [m]; ``n`` revolutions in a second [1/s]. Returns [m/s].

    >>> round(reciprocating_speed(S=0.660, n=5.0), 9)
    6.6
    """
    return 2 * S * n


@formula("v = π d n", cites=[FIRST_PRINCIPLES])
def turning_speed(d: Metres, n: Hertz) -> MetresPerSecond:
    """Mean rubbing speed of a journal that rotates in its bearing.

    v = π d n

    ``d`` journal [m]; ``n`` revolutions in a second [1/s]. Returns [m/s].

    >>> round(turning_speed(d=0.1, n=10.0), 6)
    3.141593
    """
    return math.pi * d * n


@formula("v = 2 d n arcsin(r/l)", cites=[FIRST_PRINCIPLES])
def oscillating_speed(d: Metres, n: Hertz, r: Metres, l: Metres) -> MetresPerSecond:  # noqa: E741
    """Mean rubbing speed of a crosshead pin, about which the connecting rod oscillates.

    v = 2 d n arcsin(r/l)

    ``d`` pin [m]; ``n`` revolutions in a second [1/s]; ``r`` crank radius, ``l`` connecting rod [m], 0 < r < l.
    Returns [m/s]. Raises OutOfRange outside.

    Hand working: r/l = 0.5 is 30° or 0.5236: 2 × 0.1 × 5 × 0.5236 = 0.5236 m/s.

    >>> round(oscillating_speed(d=0.1, n=5.0, r=1.0, l=2.0), 6)
    0.523599
    """
    require(0 * r < r < l, "the connecting rod must be longer than the crank")
    return 2 * d * n * math.asin(r / l)


@formula("v = h d n/b", cites=[FIRST_PRINCIPLES])
def rocking_speed(h: Metres, b: Metres, d: Metres, n: Hertz) -> MetresPerSecond:
    """Mean rubbing speed of a rocker's bush on its pin.

    v = h d n/b

    ``h`` lift at the end of the rocker's arm [m]; ``b`` length of the arm [m]; ``d`` diameter of the pin [m]; ``n``
    revolutions in a second [1/s]. Returns [m/s]. The angle is taken as h/b, which is within 1 % while h is at most 0.4
    b. Raises OutOfRange beyond.

    Hand working: 20 mm on 80 mm is 0.25 rad, there and back on a radius of 20 mm: 0.01 m, five times a second.

    >>> round(rocking_speed(h=0.020, b=0.080, d=0.040, n=5.0), 9)
    0.05
    """
    require(h <= 0.4 * b, "the lift must be at most 0.4 of the rocker's arm")
    return h * d * n / b


@formula("pv = p v", cites=[FIRST_PRINCIPLES])
def pressure_times_speed(p: Pascals, v: MetresPerSecond) -> PascalMetresPerSecond:
    """Mean pressure times mean rubbing speed.

    pv = p v

    ``p`` mean pressure [Pa]; ``v`` mean rubbing speed [m/s]. Returns [Pa·m/s].

    >>> round(pressure_times_speed(p=0.33e6, v=8.0) / 1e6, 6)
    2.64
    """
    return p * v


@formula("pv_n = x pv_t", cites=[FIRST_PRINCIPLES])
def share_of_rating(x: Ratio, pv_t: PascalMetresPerSecond) -> PascalMetresPerSecond:
    """Pressure times speed allowed.

    pv_n = x pv_t

    ``x`` share that may be used; ``pv_t`` pressure times speed by the table [Pa·m/s]. Returns [Pa·m/s].

    >>> share_of_rating(x=0.5, pv_t=5e6)
    2500000.0
    """
    return x * pv_t
