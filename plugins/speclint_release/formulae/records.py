"""Formulae of release: the margin of the design temperature, the least test pressure, the share of checks assessed,
the most that a nut is tightened, the time that wear leaves."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    KelvinDifference,
    Kelvins,
    Metres,
    MetresPerSecond,
    NewtonMetres,
    Newtons,
    Pascals,
    Radians,
    Ratio,
    Seconds,
)
from speclint_release.sources import ASME_I, TEST_FACTOR


@formula("ΔT = T_d − T", cites=[FIRST_PRINCIPLES])
def temperature_margin(T_d: Kelvins, T: Kelvins) -> KelvinDifference:
    """Margin of the design temperature above that in service.

    ΔT = T_d − T

    ``T_d`` design temperature, ``T`` greatest temperature in service [K]. Returns [K], negative where the
    design temperature is exceeded.

    >>> temperature_margin(T_d=673.0, T=650.0)
    23.0
    """
    return T_d - T


@formula("p_w = k p_d", cites=[TEST_FACTOR])
def least_test_pressure(k: Ratio, p_d: Pascals) -> Pascals:
    """Least test pressure of a pressure part.

    p_w = k p_d

    ``k`` factor [-], ``p_d`` design pressure [Pa]. Returns [Pa].

    Hand working: 1.43 × 16.6 = 23.738 bar.

    >>> round(least_test_pressure(k=1.43, p_d=1.66e6))
    2373800
    """
    return k * p_d


@formula("p_m = (1 + k) p_t", cites=[ASME_I.at("PG-99, hydrostatic test")])
def most_test_pressure(k: Ratio, p_t: Pascals) -> Pascals:
    """Greatest pressure at which a part may be tested.

    p_m = (1 + k) p_t

    ``k`` share by which the test pressure may be passed [-], ``p_t`` test pressure [Pa]. Returns [Pa].

    Hand working: 1.06 × 33 = 34.98 bar.

    >>> round(most_test_pressure(k=0.06, p_t=3.3e6))
    3498000
    """
    return (1 + k) * p_t


@formula("s = n_a/n", cites=[FIRST_PRINCIPLES])
def share_assessed(n_a: Ratio, n: Ratio) -> Ratio:
    """Share of the applicable checks that could be assessed.

    s = n_a/n

    ``n_a`` checks that conform or have a finding, ``n`` checks that apply.

    >>> share_assessed(n_a=3.0, n=4.0)
    0.75
    """
    return n_a / n


@formula("M_m = (1 + k) M_s", cites=[FIRST_PRINCIPLES])
def most_torque(k: Ratio, M_s: NewtonMetres) -> NewtonMetres:
    """Greatest torque on a nut, where the drawing states one without a tolerance.

    M_m = (1 + k) M_s

    ``k`` share by which it may be more [-], ``M_s`` torque as stated [N·m]. Returns [N·m].

    Hand working: 1.05 × 400 = 420 N·m.

    >>> round(most_torque(k=0.05, M_s=400.0), 6)
    420.0
    """
    return (1 + k) * M_s


@formula("θ_m = (1 + k) θ_s", cites=[FIRST_PRINCIPLES])
def most_turn(k: Ratio, θ_s: Radians) -> Radians:
    """Greatest angle by which a nut is turned, where the drawing states one without a tolerance.

    θ_m = (1 + k) θ_s

    ``k`` share by which it may be more [-], ``θ_s`` angle as stated [rad]. Returns [rad].

    Hand working: 1.05 × 2 = 2.1.

    >>> round(most_turn(k=0.05, θ_s=2.0), 6)
    2.1
    """
    return (1 + k) * θ_s


@formula("F_m = (1 + k) F_s", cites=[FIRST_PRINCIPLES])
def most_preload(k: Ratio, F_s: Newtons) -> Newtons:
    """Greatest preload in a stud, where the drawing states one without a tolerance.

    F_m = (1 + k) F_s

    ``k`` share by which it may be more [-], ``F_s`` preload as stated [N]. Returns [N].

    Hand working: 1.05 × 60 000 = 63 000 N.

    >>> round(most_preload(k=0.05, F_s=60000.0), 6)
    63000.0
    """
    return (1 + k) * F_s


@formula("t = |L − m|/w", cites=[FIRST_PRINCIPLES])
def time_left(L: Metres, m: Metres, w: MetresPerSecond) -> Seconds:
    """Time until a size that wears meets its limit, at the rate that was measured.

    t = |L − m|/w

    ``L`` limit of wear, ``m`` size as measured last [m], ``w`` rate [m/s], above 0. Returns [s].

    Hand working: from 500.5 to 509 mm at 1 mm in 1e8 s: 8.5e8 s.

    >>> round(time_left(L=0.509, m=0.5005, w=1e-11) / 1e8, 6)
    8.5
    """
    require(w > 0, "there is no rate of wear")
    return abs(L - m) / w


@formula("d = k w", cites=[COMMON_PRACTICE])
def share_of_content(k: Ratio, w: Ratio) -> Ratio:
    """Deviation of the analysis of a product from a limit of its cast, where no table gives one.

    d = k w

    ``k`` share, ``w`` limit [-]. Returns [-].

    >>> round(share_of_content(k=0.1, w=0.0022), 6)
    0.00022
    """
    return k * w


@formula("w_d = w + s d", cites=[FIRST_PRINCIPLES])
def content_with_deviation(w: Ratio, d: Ratio, s: Ratio) -> Ratio:
    """Content of an element with what the analysis of a product may lie beyond it.

    w_d = w + s d

    ``w`` content, ``d`` deviation; ``s`` 1 above the most, −1 below the least [-]. Returns [-].

    >>> round(content_with_deviation(w=0.0022, d=0.0002, s=1.0), 6)
    0.0024
    """
    return w + s * d


@formula("τ = τ_0 max(1, t/s)", cites=[COMMON_PRACTICE])
def time_of_relief(tau_0: Seconds, t: Metres, s: Metres) -> Seconds:
    """Least time for which cast iron is held at the temperature of its stress relief.

    τ = τ_0 max(1, t/s)

    ``tau_0`` for a wall of ``s`` and every thinner one [s]; ``t`` thickest wall, ``s`` wall of that time [m].
    Returns [s]. Raises OutOfRange unless s > 0.

    Hand working: an hour for each 25 mm: 9 mm an hour, 55 mm 55/25 = 2.2 hours.

    >>> [round(time_of_relief(tau_0=3600.0, t=t, s=0.025)) for t in (0.009, 0.055)]
    [3600, 7920]
    """
    require(s > 0, "the wall that asks for the time has no thickness")
    return tau_0 * max(1.0, t / s)
