"""Temperature of metal from the steam that washes it, the walls it touches and its surroundings.

Steady state but for ``warmed_temperature`` and ``surface_swing``. Film coefficients are known within some 25 %
(``convection``): ``film_band`` carries that to the temperature. Estimates; where a wrong one could hurt someone, the
temperature is measured.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import product

from msgspec import Struct

from speclint.equations import (
    Hertz,
    JoulesPerKilogramKelvin,
    KelvinDifference,
    Kelvins,
    Kilograms,
    Metres,
    Ratio,
    Seconds,
    Source,
    SquareMetreKelvinsPerWatt,
    SquareMetres,
    SquareMetresPerSecond,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
    formula,
    require,
)
from speclint.handbook.heat.air import INCROPERA
from speclint.handbook.tables import JOEL

CARSLAW = Source("H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids", "2nd ed., 1959", memory=True)
ANNAND = Source(
    "W. J. D. Annand, Heat transfer in the cylinders of reciprocating internal combustion engines, "
    "Proc. Instn Mech. Engrs 177",
    "1963",
    memory=True,
)
#: Scatter of a correlation for a film coefficient (Incropera, from memory: 10 to 25 %).
FILM_SCATTER = 0.25
#: Annand's factor for engines of several kinds, least and greatest.
LEAST_FACTOR, GREATEST_FACTOR = 0.35, 0.8
#: The small-film form holds within 8 % up to this swing over that of the steam.
_GREATEST_SWING = 0.1


@formula(
    "T = (h_1 A_1 T_1 + h_2 A_2 T_2)/(h_1 A_1 + h_2 A_2)", cites=[INCROPERA.at("ch. 3, thermal resistances")]
)
def washed_temperature(
    h_1: WattsPerSquareMetreKelvin,
    A_1: SquareMetres,
    T_1: Kelvins,
    h_2: WattsPerSquareMetreKelvin,
    A_2: SquareMetres,
    T_2: Kelvins,
) -> Kelvins:
    """Temperature of a thin part that one stream heats and another cools, such as a valve between live and exhaust.

    T = (h_1 A_1 T_1 + h_2 A_2 T_2)/(h_1 A_1 + h_2 A_2)

    ``h_1``, ``h_2`` film coefficients [W/(m²·K)] and ``A_1``, ``A_2`` areas [m²] of the two sides, above 0; ``T_1``,
    ``T_2`` temperature of the streams [K]. Returns [K]. The part is taken at one temperature: its thickness times the
    greater coefficient over its conductivity is small. A seat pressed by the valve is a side with h A of the contact.
    Raises OutOfRange outside.

    By hand: 300 of 600 K and 100 of 400 K on equal areas: (180 000 + 40 000)/400.

    >>> washed_temperature(h_1=300.0, A_1=0.5, T_1=600.0, h_2=100.0, A_2=0.5, T_2=400.0)
    550.0
    """
    require(h_1 > 0, "a film coefficient must be above 0")
    require(h_2 > 0, "a film coefficient must be above 0")
    require(A_1 > 0, "an area washed by steam must be above 0")
    require(A_2 > 0, "an area washed by steam must be above 0")
    return (h_1 * A_1 * T_1 + h_2 * A_2 * T_2) / (h_1 * A_1 + h_2 * A_2)


@formula(
    "T = T_1 − (T_1 − T_2)/(h_1 (1/h_1 + R + 1/h_2))", cites=[JOEL.at("example 9.6"), INCROPERA.at("ch. 3")]
)
def face_temperature(
    T_1: Kelvins,
    T_2: Kelvins,
    h_1: WattsPerSquareMetreKelvin,
    R: SquareMetreKelvinsPerWatt,
    h_2: WattsPerSquareMetreKelvin,
) -> Kelvins:
    """Temperature of the first face of a wall between two streams, or between steam and air through lagging.

    T = T_1 − (T_1 − T_2)/(h_1 (1/h_1 + R + 1/h_2))

    ``T_1``, ``T_2`` temperature of the streams [K]; ``h_1``, ``h_2`` film coefficients [W/(m²·K)], above 0; ``R``
    resistance of the layers between [m²·K/W], not below 0. Returns [K]. Raises OutOfRange outside.

    By hand: 500 against 300 K, films of 100 and 100, layers of 0.08: 500 − 200 · 0.01/0.1.

    >>> face_temperature(T_1=500.0, T_2=300.0, h_1=100.0, R=0.08, h_2=100.0)
    480.0
    """
    require(h_1 > 0, "a film coefficient must be above 0")
    require(h_2 > 0, "a film coefficient must be above 0")
    require(R >= 0, "the resistance of the layers must not be below 0")
    return T_1 - (T_1 - T_2) / (h_1 * (1 / h_1 + R + 1 / h_2))


@formula(
    "T = T_f + (T_b − T_f) (exp(y − z) + exp(z − y))/(exp y + exp(−y)), y = k L, z = k x, k = √(4 h/(λ d))",
    cites=[INCROPERA.at("table 3.4, fin with an adiabatic tip")],
)
def stem_temperature(
    T_b: Kelvins,
    T_f: Kelvins,
    h: WattsPerSquareMetreKelvin,
    λ: WattsPerMetreKelvin,
    d: Metres,
    L: Metres,
    x: Metres,
) -> Kelvins:
    """Temperature along a round stem that is hot at one end and cooled or heated round its length.

    T = T_f + (T_b − T_f) cosh(k (L − x))/cosh(k L), k = √(4 h/(λ d))

    ``T_b`` temperature of the hot end and ``T_f`` of what is round the stem [K]; ``h`` coefficient round it, of a film
    or of a guide [W/(m²·K)], not below 0; ``λ`` conductivity [W/(m·K)] and ``d`` diameter [m], above 0; ``L`` length
    [m], above 0; ``x`` distance from the hot end [m], 0 to L. No heat leaves the far end. Returns [K].
    Raises OutOfRange outside, and where k L is above 20: the far end then has the temperature round it.

    By hand, a spindle of 25 mm, λ 40, h 160: k = √640 = 25.298; at 100 mm of 200: 6.315/78.77 = 0.0802.

    >>> round(stem_temperature(T_b=600.0, T_f=400.0, h=160.0, λ=40.0, d=0.025, L=0.2, x=0.1), 1)
    416.0
    """
    require(h >= 0, "a film coefficient must not be below 0")
    require(λ > 0, "the conductivity must be above 0")
    require(d > 0, "the diameter of a stem must be above 0")
    require(0 <= x <= L, "the place must lie on the stem")
    k = (4 * h / (λ * d)) ** 0.5
    require(k * L <= _LONGEST, "the stem is so long that its far end has the temperature of what is round it")
    fall: float = math.cosh(k * (L - x)) / math.cosh(k * L)
    return T_f + (T_b - T_f) * fall


@formula("T = T_f + (T_0 − T_f) exp(−h A t/(m c))", cites=[INCROPERA.at("equation 5.6, lumped capacitance")])
def warmed_temperature(
    T_0: Kelvins,
    T_f: Kelvins,
    h: WattsPerSquareMetreKelvin,
    A: SquareMetres,
    t: Seconds,
    m: Kilograms,
    c: JoulesPerKilogramKelvin,
) -> Kelvins:
    """Temperature of a part some time after steam of another temperature came to it.

    T = T_f + (T_0 − T_f) exp(−h A t/(m c))

    ``T_0`` temperature before, ``T_f`` of the steam [K]; ``h`` film coefficient [W/(m²·K)], not below 0; ``A`` area
    washed [m²]; ``t`` time [s], not below 0; ``m`` mass of the part [kg] and ``c`` its specific heat [J/(kg·K)], above
    0. Returns [K]. Good while h times the half thickness over the conductivity is below 0.1 (Incropera).
    Raises OutOfRange outside.

    By hand: 20 kg of 500 J/(kg·K), 200 W/(m²·K) on 0.5 m², 100 s: e^−1 of 200 K is 73.6 K short of 500 K.

    >>> round(warmed_temperature(T_0=300.0, T_f=500.0, h=200.0, A=0.5, t=100.0, m=20.0, c=500.0), 1)
    426.4
    """
    require(h >= 0, "a film coefficient must not be below 0")
    require(A >= 0, "an area washed by steam must not be below 0")
    require(t >= 0, "the time must not be below 0")
    require(m > 0, "the mass of a part must be above 0")
    require(c > 0, "the specific heat must be above 0")
    return T_f + (T_0 - T_f) * math.exp(-h * A * t / (m * c))


@formula("ΔT_s = h ΔT/(λ √(2 π n/a))", cites=[CARSLAW.at("art. 2.6")])
def surface_swing(
    h: WattsPerSquareMetreKelvin,
    ΔT: KelvinDifference,
    λ: WattsPerMetreKelvin,
    n: Hertz,
    a: SquareMetresPerSecond,
) -> KelvinDifference:
    """Swing of the surface of a thick wall about its mean, washed by steam whose temperature swings.

    ΔT_s = h ΔT/(λ √(2 π n/a))

    ``h`` film coefficient [W/(m²·K)], not below 0; ``ΔT`` swing of the steam about its mean [K]; ``λ`` conductivity
    [W/(m·K)] and ``a`` diffusivity [m²/s] of the metal, ``n`` swings in a second [1/s], above 0. Returns [K]. For a
    small swing: up to a tenth of the steam's. Raises OutOfRange outside.

    By hand: 600 W/(m²·K), 100 K, iron of 50 W/(m·K) and 1.4e-5 m²/s, 2 in a second: 60 000/(50 · 947.4) = 1.27 K.

    >>> round(surface_swing(h=600.0, ΔT=100.0, λ=50.0, n=2.0, a=1.4e-5), 2)
    1.27
    """
    require(h >= 0, "a film coefficient must not be below 0")
    require(λ > 0, "the conductivity must be above 0")
    require(n > 0, "the number of swings must be above 0")
    require(a > 0, "the diffusivity must be above 0")
    depth: float = λ * (2 * math.pi * n / a) ** 0.5
    require(h <= _GREATEST_SWING * depth, "the surface swings by more than a tenth of the steam")
    return h * ΔT / depth


@formula("Nu = b Re^0.7", cites=[ANNAND.at("heat flux by convection")])
def annand_nusselt_number(Re: Ratio, b: Ratio) -> Ratio:
    """Nusselt number of the working fluid in a cylinder, mean over a revolution, on the bore.

    Nu = b Re^0.7

    ``Re`` Reynolds number of the bore and the mean piston speed, 1e4 to 1e7; ``b`` factor, 0.35 to 0.8, that differs
    with the kind of engine. Raises OutOfRange outside. Measured in engines that burn their fuel in the cylinder: for
    dry steam it says the order of magnitude; steam that condenses gives many times as much.

    By hand, Re = 1e5 and b = 0.5: 0.5 · 3162.3.

    >>> round(annand_nusselt_number(Re=1e5, b=0.5), 1)
    1581.1
    """
    require(1e4 <= Re <= 1e7, f"Reynolds number {Re:.4g} lies outside 1e4 to 1e7")
    require(LEAST_FACTOR <= b <= GREATEST_FACTOR, f"factor {b:.4g} lies outside 0.35 to 0.8")
    number: float = b * Re**0.7
    return number


class TemperatureBand(Struct, frozen=True):
    """An estimate [K]: nominal, and least and greatest with every film coefficient off by its scatter."""

    low: float
    nominal: float
    high: float


def film_band(
    temperature: Callable[..., float], *films: float, scatter: float = FILM_SCATTER
) -> TemperatureBand:
    """The band of a temperature that rests on film coefficients.

    ``temperature`` gives it [K] from coefficients [W/(m²·K)] in the order of ``films``; each is tried at 1 − scatter
    and 1 + scatter, in all combinations. OutOfRange unless scatter lies within 0 to 1, and as the function.

    >>> band = film_band(lambda h_1, h_2: washed_temperature(h_1, 1.0, 600.0, h_2, 1.0, 400.0), 300.0, 100.0)
    >>> round(band.low, 1), band.nominal, round(band.high, 1)  # 225 : 125, and 375 : 75
    (528.6, 550.0, 566.7)
    """
    require(0 <= scatter < 1, f"scatter {scatter:.4g} lies outside 0 to 1")
    found = [
        temperature(*(film * off for film, off in zip(films, offs, strict=True)))
        for offs in product((1 - scatter, 1 + scatter), repeat=len(films))
    ]
    return TemperatureBand(min(found), temperature(*films), max(found))


#: Lengths of fall along a stem beyond which nothing is left.
_LONGEST = 20.0
