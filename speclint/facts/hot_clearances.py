"""The clearance of a tappet as it works: cold, hot and with a worn seat."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Kelvins, Metres, PerKelvin, Ratio, formula, require


@formula("ε = α (T − T_ref) − α_0 (T_0 − T_ref)", cites=[FIRST_PRINCIPLES])
def strain_since(alpha: PerKelvin, T: Kelvins, alpha_0: PerKelvin, T_0: Kelvins, T_ref: Kelvins) -> Ratio:
    """Thermal strain of a part since the temperature at which it was finished.

    ε = α (T − T_ref) − α_0 (T_0 − T_ref)

    ``alpha``, ``alpha_0`` mean coefficients from ``T_ref`` to ``T`` and to ``T_0`` [1/K]; ``T`` temperature
    now, ``T_0`` when finished, ``T_ref`` the drawing's [K]. Returns [-].

    Hand working: 12e-6 × 300 − 11.5e-6 × 0 = 3.6e-3.

    >>> round(strain_since(alpha=12e-6, T=593.15, alpha_0=11.5e-6, T_0=293.15, T_ref=293.15), 9)
    0.0036
    """
    return alpha * (T - T_ref) - alpha_0 * (T_0 - T_ref)


@formula("L_s = L − L_v", cites=[FIRST_PRINCIPLES])
def spindle_length(L: Metres, L_v: Metres) -> Metres:
    """Length of the spindle in the length that grows towards the gear.

    L_s = L − L_v

    ``L`` from the valve's seat to the gear, ``L_v`` the valve's own part of it [m]. Returns [m]. Raises OutOfRange
    unless 0 ≤ L_v ≤ L.

    >>> round(spindle_length(L=0.4, L_v=0.06), 6)
    0.34
    """
    require(
        0 <= L_v <= L,
        f"the valve's part {L_v * 1e3:.6g} mm is not between 0 and the whole length {L * 1e3:.6g} mm",
    )
    return L - L_v


@formula("c_h = c − (L_s ε_s + L_v ε_v − L_b ε_b − L_d ε_d + y)/i", cites=[FIRST_PRINCIPLES])
def tappet_clearance_hot(
    c: Metres,
    L_s: Metres,
    ε_s: Ratio,
    L_v: Metres,
    ε_v: Ratio,
    L_b: Metres,
    ε_b: Ratio,
    L_d: Metres,
    ε_d: Ratio,
    y: Metres,
    i: Ratio,
) -> Metres:
    """Clearance at the tappet, hot and worn.

    c_h = c − (L_s ε_s + L_v ε_v − L_b ε_b − L_d ε_d + y)/i

    ``c`` clearance cold at the tappet [m]; ``L_s`` length of the spindle that expands by the strain ``ε_s`` towards
    the gear, ``L_v`` that of the valve below it, of strain ``ε_v``; ``L_b``, ``L_d`` lengths of block and cam box
    between seat and gear, of strain ``ε_b``, ``ε_d``; ``y`` how far the valve may sink into its seat [m]; ``i`` travel
    of the valve over travel of the tappet. Returns [m], negative where the valve is held off its seat. Raises
    OutOfRange unless i > 0.

    Hand working: 0.6 − (340 × 0.0030 + 60 × 0.0040 − 200 × 0.0028 − 180 × 0.0010 + 0.1)/1.25 = 0.6 − 0.496 = 0.104 mm.

    >>> hot = {"L_s": 0.34, "ε_s": 3e-3, "L_v": 0.06, "ε_v": 4e-3}
    >>> hot |= {"L_b": 0.2, "ε_b": 2.8e-3, "L_d": 0.18, "ε_d": 1e-3, "y": 1e-4, "i": 1.25}
    >>> round(tappet_clearance_hot(c=0.6e-3, **hot) * 1e3, 6)
    0.104
    """
    require(i > 0, "the lever ratio must be above 0")
    return c - (L_s * ε_s + L_v * ε_v - L_b * ε_b - L_d * ε_d + y) / i
