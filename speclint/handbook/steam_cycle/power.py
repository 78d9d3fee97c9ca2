"""From an indicator diagram to power and steam used."""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import Annotated

from speclint.equations import (
    FIRST_PRINCIPLES,
    Hertz,
    Kilograms,
    KilogramsPerSecond,
    Metres,
    Pascals,
    SquareMetres,
    Watts,
    formula,
    require,
)
from speclint.handbook.tables import JOEL

Joules = Annotated[float, "J"]
#: A pound in kilograms and a horsepower of 550 foot pounds in a second in watts, exact by definition.
_POUND, _HORSEPOWER = 0.45359237, 550 * 0.3048 * 0.45359237 * 9.80665


@formula("p_m = W/(A S)", cites=[JOEL.at("ch. 11, mean effective pressure")])
def mean_pressure_of_work(W: Joules, A: SquareMetres, S: Metres) -> Pascals:
    """Mean effective pressure of an end from the work of its diagram.

    p_m = W/(A S)

    ``W`` work of a revolution [J]; ``A`` area of the piston towards that end [m²], above 0; ``S`` stroke [m], above 0.
    Returns [Pa]. Raises OutOfRange outside.

    By hand: 132 kJ over 0.2 m² and 0.66 m.

    >>> round(mean_pressure_of_work(W=132e3, A=0.2, S=0.66), 3)
    1000000.0
    """
    require(A > 0, "the area of the piston must be above 0")
    require(S > 0, "the stroke must be above 0")
    return W / (A * S)


@formula("P = p_m A S n", cites=[JOEL.at("ch. 11, indicated power")])
def indicated_power(p_m: Pascals, A: SquareMetres, S: Metres, n: Hertz) -> Watts:
    """Indicated power of one end; that of several adds.

    P = p_m A S n

    ``p_m`` mean effective pressure of the end [Pa]; ``A`` area of the piston towards it [m²]; ``S`` stroke [m]; ``n``
    revolutions in a second [1/s]. Returns [W].

    By hand: 10 bar, 0.2 m², 0.66 m, 2 in a second: 264 kW.

    >>> round(indicated_power(p_m=10e5, A=0.2, S=0.66, n=2.0), 6)
    264000.0
    """
    return p_m * A * S * n


@formula("m_s = m n", cites=[FIRST_PRINCIPLES])
def steam_flow(m: Kilograms, n: Hertz) -> KilogramsPerSecond:
    """Steam that an end takes.

    m_s = m n

    ``m`` steam of a revolution, less what is pressed back [kg]; ``n`` revolutions in a second [1/s]. Returns [kg/s].

    By hand: 0.12 kg, three times a second.

    >>> round(steam_flow(m=0.12, n=3.0), 9)
    0.36
    """
    return m * n


def kilograms_per_kilowatt_hour(steam: float, power: float) -> float:
    """Steam used for each indicated kilowatt-hour [kg/kWh], from a flow [kg/s] and a power [W] above 0.

    OutOfRange unless the engine does work. By hand: 1 kg/s for 540 kW: 3600/540.

    >>> round(kilograms_per_kilowatt_hour(1.0, 540e3), 4)
    6.6667
    """
    require(power > 0, "the engine does no work: steam for each kilowatt-hour has no meaning")
    return steam / power * 3.6e6


def pounds_per_horsepower_hour(steam: float, power: float) -> float:
    """The same in pounds for each indicated horsepower-hour [lb/ihp·h]: 1.644 times as many as kg/kWh.

    >>> round(pounds_per_horsepower_hour(1.0, 3.6e6), 3)
    1.644
    """
    return kilograms_per_kilowatt_hour(steam, power) / _POUND * _HORSEPOWER / 1e3


class SteamForWork(ABC):
    """What takes steam and does work, an end or a cylinder: its steam for each unit of work."""

    @property
    @abstractmethod
    def power(self) -> float:
        """Indicated power [W]."""

    @property
    @abstractmethod
    def steam_flow(self) -> float:
        """Steam taken [kg/s]."""

    @property
    def per_kilowatt_hour(self) -> float:
        """Steam for each indicated kilowatt-hour [kg/kWh]; OutOfRange where no work is done."""
        return kilograms_per_kilowatt_hour(self.steam_flow, self.power)

    @property
    def per_horsepower_hour(self) -> float:
        """Steam for each indicated horsepower-hour [lb/ihp·h]; OutOfRange where no work is done."""
        return pounds_per_horsepower_hour(self.steam_flow, self.power)
