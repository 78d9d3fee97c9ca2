"""The jet of a blast nozzle: its speed from the flow and the opening, and the pressure behind it."""

from __future__ import annotations

from speclint.equations import (
    FIRST_PRINCIPLES,
    JoulesPerKilogram,
    KilogramsPerSecond,
    MetresPerSecond,
    Pascals,
    Ratio,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.steam import (
    IF97,
    density_at_enthalpy,
    entropy_at_enthalpy,
    steam_speed_of_sound,
    temperature_at_enthalpy,
)

#: The error of the speed falls at each step to less than half, as the jet is slower than sound.
_STEPS = 60
#: Pressure over back pressure at which any steam flows choked: its critical ratio lies above 0.4 (steam_nozzles).
_BEYOND_CHOKING = 2.5
#: Halvings of that span: 1.5 · 2^-40 of the back pressure is left.
_HALVINGS = 40


@formula(
    "v from v = m/(C A ρ(p_2, h − v²/2))",
    cites=[IF97, FIRST_PRINCIPLES],
    empirical="MPa and K, the reducing quantities of IAPWS-IF97",
)
def jet_speed(
    m: KilogramsPerSecond, C: Ratio, A: SquareMetres, h: JoulesPerKilogram, p_2: Pascals
) -> MetresPerSecond:
    """Speed at which a flow of steam leaves a nozzle, slower than sound.

    v from v = m/(C A ρ(p_2, h − v²/2))

    ``m`` flow [kg/s]; ``C`` discharge coefficient, above 0 to 1; ``A`` opening [m²], above 0; ``h`` enthalpy of the
    steam at rest [J/kg]; ``p_2`` pressure into which it blows [Pa absolute]. Returns [m/s].
    Raises OutOfRange outside, where the jet would be faster than sound, and where the steam leaves wet.

    Hand working: 1 kg/s from 10 000 mm² into 1 bar, 2776 kJ/kg: 18 kJ/kg become speed, and 2758 kJ/kg is steam of
    141 °C and 1.90 m³/kg by steam tables: 190 m/s.

    >>> round(jet_speed(m=1.0, C=1.0, A=0.01, h=2776e3, p_2=1e5), -1)
    190.0
    """
    require(0 < C <= 1, f"discharge coefficient {C:.4g} is not between 0 and 1")
    require(A > 0, "the opening of the nozzle must be above 0")
    v = 0.0
    for _ in range(_STEPS):
        left = h - v**2 / 2
        faster = m / (C * A * density_at_enthalpy(p=p_2, h=left))
        if abs(faster - v) <= 1e-12 * faster:
            break
        v = faster
        require(v**2 < h, f"no steam leaves at {v:.4g} m/s")
    sound = steam_speed_of_sound(p=p_2, T=temperature_at_enthalpy(p=p_2, h=h - v**2 / 2))
    require(v < sound, f"the flow would leave at {v:.4g} m/s, faster than sound: the nozzle chokes")
    return v


@formula(
    "p from s(p, h) = s(p_2, h − w²/2), w = v(m, C, A, h, p_2)",
    cites=[IF97, FIRST_PRINCIPLES],
    empirical="MPa and K, the reducing quantities of IAPWS-IF97",
)
def pressure_before_nozzle(
    m: KilogramsPerSecond, C: Ratio, A: SquareMetres, h: JoulesPerKilogram, p_2: Pascals
) -> Pascals:
    """Pressure that drives a flow of steam through a nozzle without friction, slower than sound.

    p from s(p, h) = s(p_2, h − w²/2), w = v(m, C, A, h, p_2)

    Arguments and errors as ``jet_speed``. Returns [Pa absolute].

    Hand working: 18 kJ/kg become speed in the example of ``jet_speed``; over 1.83 m³/kg, the mean of the 1.90 at 1 bar
    and of the 1.75 or so at 1.1 bar, that is 9.8 kPa more than 1 bar.

    >>> round(pressure_before_nozzle(m=1.0, C=1.0, A=0.01, h=2776e3, p_2=1e5) / 1e5, 2)
    1.1
    """
    v = jet_speed(m=m, C=C, A=A, h=h, p_2=p_2)
    s = entropy_at_enthalpy(p=p_2, h=h - v**2 / 2)
    low, high = p_2, _BEYOND_CHOKING * p_2
    for _ in range(_HALVINGS):
        p = (low + high) / 2
        low, high = (p, high) if entropy_at_enthalpy(p=p, h=h) > s else (low, p)
    return (low + high) / 2
