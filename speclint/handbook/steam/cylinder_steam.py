"""Steam in a cylinder, asked for thousands of times: its pressure from internal energy and volume, its elasticity.

These are the inner calls of ``steam_cycle``: arguments are not examined, answers are. A state outside IAPWS-IF97 raises
OutOfRange. Within it the backward equations are used as they are, good to 25 mK, which moves a pressure by less than
0.01 %. SI units throughout, pressures absolute.
"""

from __future__ import annotations

from speclint.equations import Source, require
from speclint.errors import OutOfRange
from speclint.handbook.steam import if97
from speclint.handbook.steam.if97 import Property

ZEUNER = Source(
    "G. Zeuner, Technical Thermodynamics", "1907", "isentropic exponent of wet steam", memory=True
)
#: No dry saturated steam has more enthalpy (J/kg): IAPWS-IF97 has 2803.3 kJ/kg at 30 bar.
_SURELY_DRY = 2.805e6
#: The backward equations end at 800 °C.
_HOTTEST = 800.0
#: Steam has an exponent up to 1.34; dense fluid near the critical point and water have more and do not belong here.
_STIFFEST = 2.0
#: Share by which a pressure may miss, and calls that find it: two or three are enough from a good start.
_NEAR, _CALLS = 2e-7, 12
#: d ln v/d ln p along u and h = u + p v is near −0.88 in dry and in wet steam: only the first guess rests on it.
_SLOPE = 0.88
#: So much above the boiling point (K) the library answers for steam; its exponent changes there by 0.001 in 1 K.
_ABOVE_BOILING = 0.05
#: Step of enthalpy for a derivative (J/kg).
_STEP = 5e3
_VOLUME, _TEMPERATURE = Property.SPECIFIC_VOLUME.value[0], Property.TEMPERATURE.value[0]
_DRYNESS, _EXPONENT = 15, Property.ISENTROPIC_EXPONENT.value[0]


def pressure_of_energy(u: float, v: float, near: float) -> float:
    """Pressure [Pa] of steam of internal energy ``u`` [J/kg] in a specific volume ``v`` [m³/kg]; ``near`` a guess.

    The root of v_IF97(p, u + p v) = v, by secants; good to 1e-6. OutOfRange outside IAPWS-IF97.

    >>> from speclint.handbook.steam.states import saturated_state
    >>> wet = saturated_state(10e5, 0.9)
    >>> u = wet.enthalpy - 10e5 * wet.specific_volume
    >>> round(pressure_of_energy(u, wet.specific_volume, near=8e5), -2)
    1000000.0
    """
    ph = if97.by_enthalpy()
    before, miss_before = near, ph(near * 1e-6, (u + near * v) * 1e-3, _VOLUME) / v - 1
    if -_NEAR < miss_before < _NEAR:
        return before
    p = before * (1 + miss_before / _SLOPE)
    for _ in range(_CALLS):
        miss = ph(p * 1e-6, (u + p * v) * 1e-3, _VOLUME) / v - 1
        if miss <= -1:
            break
        if -_NEAR < miss < _NEAR or miss == miss_before:
            return p
        before, miss_before, p = p, miss, p - miss * (p - before) / (miss - miss_before)
    require(
        miss > -1 and abs(miss) < _NEAR * 1e2,
        f"steam of {u / 1e3:.6g} kJ/kg in {v:.4g} m³/kg lies outside the range of IAPWS-IF97",
    )
    return p


def temperature_and_exponent(p: float, h: float) -> tuple[float, float]:
    """Temperature [K] and isentropic exponent of steam at ``p`` [Pa] and ``h`` [J/kg]; OutOfRange outside IF97.

    Dry steam has the exponent of IAPWS-IF97, wet steam Zeuner's 1.035 + 0.1 x.

    >>> T, κ = temperature_and_exponent(10e5, 2600e3)  # x = 0.9121 by iapws 1.5.5
    >>> round(T - 273.15, 2), round(κ, 4)
    (179.89, 1.1262)
    """
    ph, pt = if97.by_enthalpy(), if97.by_temperature()
    pressure, enthalpy = p * 1e-6, h * 1e-3
    celsius = ph(pressure, enthalpy, _TEMPERATURE)
    if celsius > _HOTTEST:
        raise _outside(p, h)
    if h < _SURELY_DRY:
        x = ph(pressure, enthalpy, _DRYNESS)
        if x < 1:
            if x < 0:
                raise _outside(p, h)
            return celsius + if97.LEAST_TEMPERATURE, 1.035 + 0.1 * x
    exponent = pt(pressure, celsius, _EXPONENT)
    if not 1 < exponent < _STIFFEST:  # at the boiling point the library answers for water
        exponent = pt(pressure, celsius + _ABOVE_BOILING, _EXPONENT)
    if not 1 < exponent < _STIFFEST:
        raise _outside(p, h)
    return celsius + if97.LEAST_TEMPERATURE, exponent


def swelling(p: float, h: float, v: float) -> float:
    """Relative growth in volume with enthalpy at constant pressure, (∂v/∂h)/v [kg/J], within 3 %; about 1/h.

    Only the first guess at what flows in a step rests on it.

    >>> from speclint.handbook.steam.states import state_at_enthalpy
    >>> round(swelling(10e5, 3000e3, state_at_enthalpy(10e5, 3000e3).specific_volume) * 1e6, 2)  # iapws: 0.94
    0.94
    """
    return (if97.by_enthalpy()(p * 1e-6, (h + _STEP) * 1e-3, _VOLUME) / v - 1) / _STEP


def _outside(p: float, h: float) -> OutOfRange:
    return OutOfRange(f"steam of {h / 1e3:.6g} kJ/kg at {if97.bar(p)} lies outside the range of IAPWS-IF97")
