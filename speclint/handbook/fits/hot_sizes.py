"""What heat does to sizes and to fits: growth, the interference hot, and the heat or cold that lets a part in.

Each part is at one temperature throughout. Coefficients of expansion are means from the drawing's temperature to
that of the part.
"""

from __future__ import annotations

from speclint.equations import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    KelvinDifference,
    Kelvins,
    Metres,
    PerKelvin,
    Source,
    formula,
    require,
)
from speclint.handbook.tables import BHAVIKATTI

DIN_7190 = Source(
    "DIN 7190-1, Interference fits: calculation and design", "2017", "joining by heat and cold", memory=True
)
BHAVIKATTI_SHRINKING = BHAVIKATTI.at("example 8.8.17")

#: Temperature at which drawings give sizes (ISO 1), 20 °C.
DRAWING_TEMPERATURE: Kelvins = 293.15
#: Joint over the clearance that a part needs, beyond interference and allowance, to enter without sticking.
_ENTERING_SHARE = 5000


@formula("L_h = L (1 + α (T − T_ref))", cites=[FIRST_PRINCIPLES])
def size_when_hot(L: Metres, alpha: PerKelvin, T: Kelvins, T_ref: Kelvins) -> Metres:
    """Size or position when the part is hot.

    L_h = L (1 + α (T − T_ref))

    ``L`` diameter, length or position along the axis at ``T_ref`` [m]; ``alpha`` mean coefficient from ``T_ref`` [1/K];
    ``T`` temperature of the part, ``T_ref`` temperature of the drawing [K]. Returns [m].

    Hand working: 1800 mm, 12e-6, 180 K: 1800 × 1.00216 = 1803.888 mm.

    >>> round(size_when_hot(L=1.8, alpha=12e-6, T=473.15, T_ref=293.15) * 1e3, 6)
    1803.888
    """
    return L * (1 + alpha * (T - T_ref))


@formula("y = L α (T − T_ref)", cites=[FIRST_PRINCIPLES])
def growth_of_length(L: Metres, alpha: PerKelvin, T: Kelvins, T_ref: Kelvins) -> Metres:
    """Thermal growth of a length over its size on the drawing.

    y = L α (T − T_ref)

    ``L`` length at ``T_ref`` [m]; ``alpha`` mean coefficient from ``T_ref`` [1/K]; ``T`` temperature of the part,
    ``T_ref`` temperature of the drawing [K]. Returns [m], negative where it is colder.

    Hand working: 330 mm, 11e-6, 250 K: 0.9075 mm.

    >>> round(growth_of_length(L=0.330, alpha=11e-6, T=543.15, T_ref=293.15) * 1e3, 6)
    0.9075
    """
    return L * alpha * (T - T_ref)


@formula("g = |L| (α_1 (T_1 − T_ref) − α_2 (T_2 − T_ref))", cites=[FIRST_PRINCIPLES])
def relative_growth(
    L: Metres, alpha_1: PerKelvin, T_1: Kelvins, alpha_2: PerKelvin, T_2: Kelvins, T_ref: Kelvins
) -> Metres:
    """Thermal growth of a length in one part beyond that of the same length in another.

    g = |L| (α_1 (T_1 − T_ref) − α_2 (T_2 − T_ref))

    ``L`` length, on either side of a fixed point, or diameter of a joint [m]; ``alpha_1``, ``alpha_2`` mean
    coefficients of the parts from ``T_ref`` [1/K]; ``T_1``, ``T_2`` their temperatures, ``T_ref`` that of the
    drawing [K]. Returns [m]. Of a hole and the part in it: the interference that the fit loses.

    Hand working: a block of 12.5e-6 round a liner of 11.5e-6, 550 mm, both 280 K above the drawing:
    550 × 280 × 1e-6 = 0.154 mm.

    >>> hot = {"alpha_1": 12.5e-6, "T_1": 573.15, "alpha_2": 11.5e-6, "T_2": 573.15}
    >>> round(relative_growth(L=-0.550, T_ref=293.15, **hot) * 1e3, 3)
    0.154
    """
    return abs(L) * (alpha_1 * (T_1 - T_ref) - alpha_2 * (T_2 - T_ref))


@formula("δ_h = δ + D (α_in (T_in − T_ref) − α_out (T_out − T_ref))", cites=[FIRST_PRINCIPLES])
def hot_interference(
    delta: Metres,
    D: Metres,
    alpha_in: PerKelvin,
    T_in: Kelvins,
    alpha_out: PerKelvin,
    T_out: Kelvins,
    T_ref: Kelvins,
) -> Metres:
    """Interference of a fit with each part at its own temperature.

    δ_h = δ + D (α_in (T_in − T_ref) − α_out (T_out − T_ref))

    ``delta`` interference at ``T_ref`` [m], negative for a clearance; ``D`` joint [m]; ``alpha_in``, ``alpha_out`` mean
    coefficients of expansion from ``T_ref`` to each part's temperature [1/K]; ``T_in``, ``T_out`` temperatures of the
    parts and ``T_ref`` temperature of the drawing [K]. Returns [m], negative when a gap opens. Each part is at one
    temperature through its wall.

    Hand working: 0.30 mm on a 550 mm iron liner (11.5e-6) in a steel block (12.5e-6), both at 300 °C:
    0.30 + 550 × 280 × (11.5 − 12.5)e-6 = 0.146 mm.

    >>> hot = {"alpha_in": 11.5e-6, "T_in": 573.15, "alpha_out": 12.5e-6, "T_out": 573.15}
    >>> round(hot_interference(delta=0.30e-3, D=0.550, T_ref=293.15, **hot) * 1e3, 3)
    0.146
    """
    return delta + D * (alpha_in * (T_in - T_ref) - alpha_out * (T_out - T_ref))


@formula(
    "T_out = T_ref + (δ + c)/(D α_out) + α_in/α_out (T_in − T_ref)", cites=[DIN_7190, BHAVIKATTI_SHRINKING]
)
def shrinking_temperature(
    delta: Metres,
    c: Metres,
    D: Metres,
    alpha_out: PerKelvin,
    alpha_in: PerKelvin,
    T_in: Kelvins,
    T_ref: Kelvins,
) -> Kelvins:
    """Temperature of the outer part at which the inner one drops in with a stated clearance.

    T_out = T_ref + (δ + c)/(D α_out) + α_in/α_out (T_in − T_ref)

    ``delta`` greatest interference and ``c`` entering clearance wanted, both diametral [m]; ``D`` joint [m];
    ``alpha_out``, ``alpha_in`` mean coefficients over each part's own change of temperature [1/K]; ``T_in`` temperature
    of the inner part, chilled or not, ``T_ref`` temperature of the drawing [K]. Returns [K]. Whether the metal may be
    heated so far must be checked separately. Raises OutOfRange unless D and α_out are above 0.

    Bhavikatti, example 8.8.17: 0.2 mm on 250 mm at 12e-6 is 66.67 K above the drawing's 20 °C.

    >>> cold = {"alpha_in": 12e-6, "T_in": 293.15, "T_ref": 293.15}
    >>> round(shrinking_temperature(delta=0.2e-3, c=0.0, D=0.250, alpha_out=12e-6, **cold) - 293.15, 2)
    66.67
    """
    require(D > 0 and alpha_out > 0, f"joint {D * 1e3:.6g} mm and expansion {alpha_out:.6g} must be above 0")
    return T_ref + (delta + c) / (D * alpha_out) + alpha_in / alpha_out * (T_in - T_ref)


@formula("ΔT = (δ + c)/(D α)", cites=[FIRST_PRINCIPLES])
def cooling_for_entry(delta: Metres, c: Metres, D: Metres, alpha: PerKelvin) -> KelvinDifference:
    """How far the inner part must be cooled to drop into an outer part at the drawing's temperature.

    ΔT = (δ + c)/(D α)

    ``delta`` greatest interference and ``c`` entering clearance, both diametral [m]; ``D`` joint [m];
    ``alpha`` mean coefficient of the inner part over the cooling [1/K], well below that of hot metal.
    Returns [K], to be taken off. Raises OutOfRange unless D and α are above 0.

    Hand working: 0.06 + 0.06 mm on 100 mm at 10e-6: 120 K.

    >>> round(cooling_for_entry(delta=0.06e-3, c=0.06e-3, D=0.100, alpha=10e-6), 3)
    120.0
    """
    require(D > 0 and alpha > 0, f"joint {D * 1e3:.6g} mm and expansion {alpha:.6g} must be above 0")
    return (delta + c) / (D * alpha)


@formula(
    "s = δ + a + D/5000", cites=[DIN_7190.at("entering clearance, thousandths of the joint"), COMMON_PRACTICE]
)
def shrinkage_to_enter(delta: Metres, a: Metres, D: Metres) -> Metres:
    """Difference of diameter needed to enter a part freely.

    s = δ + a + D/5000

    ``delta`` greatest interference, ``a`` allowance for handling and dirt, ``D`` joint [m]. Returns [m].
    The clearance of D/5000 is common practice for large rings; DIN 7190 takes up to D/1000.

    Hand working: 0.32 + 0.05 + 550/5000 = 0.48 mm.

    >>> round(shrinkage_to_enter(delta=0.32e-3, a=0.05e-3, D=0.550) * 1e3, 6)
    0.48
    """
    return delta + a + D / _ENTERING_SHARE


@formula("s = D (α_out (T_out − T_ref) + α_in (T_ref − T_in))", cites=[FIRST_PRINCIPLES])
def shrinkage_available(
    D: Metres, alpha_out: PerKelvin, T_out: Kelvins, alpha_in: PerKelvin, T_in: Kelvins, T_ref: Kelvins
) -> Metres:
    """Difference of diameter from heating the outer part and chilling the inner one together.

    s = D (α_out (T_out − T_ref) + α_in (T_ref − T_in))

    ``D`` joint [m]; ``alpha_out``, ``alpha_in`` mean coefficients over each part's own change of temperature [1/K];
    ``T_out``, ``T_in`` temperatures at which they meet, ``T_ref`` temperature of the drawing [K]. Returns [m]. A part
    left at ``T_ref`` gives nothing.

    Hand working: 550 mm, outer 12e-6 to 120 °C, inner 10e-6 to −78 °C: 550 (1200 + 980)e-6 = 1.199 mm.

    >>> met = {"alpha_out": 12e-6, "T_out": 393.15, "alpha_in": 10e-6, "T_in": 195.15}
    >>> round(shrinkage_available(D=0.550, T_ref=293.15, **met) * 1e3, 3)
    1.199
    """
    return D * (alpha_out * (T_out - T_ref) + alpha_in * (T_ref - T_in))
