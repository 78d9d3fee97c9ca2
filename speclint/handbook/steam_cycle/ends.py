"""An end of a cylinder with its two valves, the steam it is given, and the walls that steam touches."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property

from speclint.equations import (
    CubicMetres,
    Hertz,
    Kelvins,
    Metres,
    Pascals,
    SquareMetres,
    WattsPerSquareMetreKelvin,
    require,
)
from speclint.handbook.steam import saturated_state, state_at_enthalpy, state_at_temperature
from speclint.handbook.valve_events import Crank, End, Events, ValveTrain, events_of

#: Least clearance volume over swept volume that is worked: less has no meaning in a real cylinder.
_LEAST_CLEARANCE = 1e-3


@dataclass(frozen=True)
class Valve:
    """A valve of an end: its train, and its effective area [m²] of the lift [m], 0 on the seat."""

    train: ValveTrain
    effective_area: Callable[[float], float]

    def area(self, angle: float) -> float:
        """Effective area [m²] at the end's crank angle [rad]."""
        return self.effective_area(self.train.lift(angle))


@dataclass(frozen=True)
class CylinderEnd:
    """One end of a cylinder.

    ``bore`` [m]; ``rod`` diameter of the piston rod through this end, 0 without [m]; ``clearance`` volume left at dead
    centre, with the passages to the valves [m³]; ``clearance_surface`` metal that this steam touches [m²], needed only
    for heat to the walls. OutOfRange unless 0 ≤ rod < bore and the clearance is above 0.1 % of the swept volume.
    """

    end: End
    crank: Crank
    bore: Metres
    rod: Metres
    clearance: CubicMetres
    inlet: Valve
    exhaust: Valve
    clearance_surface: SquareMetres | None = None

    def __post_init__(self) -> None:
        require(0 <= self.rod < self.bore, "the piston rod must be thinner than the bore")
        require(
            self.clearance > _LEAST_CLEARANCE * self.swept,
            f"a clearance volume of {self.clearance * 1e6:.4g} cm³ is below 0.1 % of the swept volume",
        )

    @property
    def area(self) -> float:
        """Area of the piston towards this end, less the rod's [m²]."""
        return math.pi / 4 * (self.bore**2 - self.rod**2)

    @property
    def swept(self) -> float:
        """Swept volume [m³]."""
        return self.area * self.crank.stroke

    @property
    def clearance_share(self) -> float:
        """Clearance over swept volume."""
        return self.clearance / self.swept

    def volume(self, angle: float) -> float:
        """Volume of the steam [m³] at the end's crank angle [rad]."""
        return self.clearance + self.area * self.crank.travel(self.end, angle)

    def surface(self, angle: float) -> float:
        """Metal that the steam touches [m²] at the end's crank angle [rad]; OutOfRange where it is not stated."""
        require(
            self.clearance_surface is not None, "the metal that the clearance steam touches is not stated"
        )
        assert self.clearance_surface is not None  # as was required
        return self.clearance_surface + math.pi * self.bore * self.crank.travel(self.end, angle)

    @cached_property
    def events(self) -> Events:
        """When its valves open and shut; OutOfRange where one never does."""
        return events_of(self.inlet.train, self.exhaust.train)


@dataclass(frozen=True)
class Supply:
    """Steam before the inlet and after the exhaust, both at rest and at constant pressure.

    ``chest`` pressure [Pa absolute] and ``enthalpy`` [J/kg] of live steam, ``belt`` pressure of the exhaust [Pa
    absolute]. Made with ``superheated`` or ``saturated``. OutOfRange unless 0 < belt < chest.
    """

    chest: Pascals
    enthalpy: float
    belt: Pascals

    def __post_init__(self) -> None:
        require(
            0 < self.belt < self.chest,
            f"the exhaust's {self.belt / 1e5:.4g} bar must lie below the chest's {self.chest / 1e5:.4g} bar absolute",
        )

    @classmethod
    def superheated(cls, chest: Pascals, temperature: Kelvins, belt: Pascals) -> Supply:
        """Live steam of a temperature [K], dry; OutOfRange outside IAPWS-IF97 and for water."""
        state = state_at_temperature(chest, temperature)
        require(
            state.dryness == 1,
            f"at {temperature - 273.15:.4g} °C and {chest / 1e5:.4g} bar there is no steam",
        )
        return cls(chest, state.enthalpy, belt)

    @classmethod
    def saturated(cls, chest: Pascals, dryness: float, belt: Pascals) -> Supply:
        """Live steam on the saturation line or wet, dryness 0.8 to 1; OutOfRange outside."""
        require(0.8 <= dryness <= 1, f"dryness {dryness:.4g} of live steam lies outside 0.8 to 1")
        return cls(chest, saturated_state(chest, dryness).enthalpy, belt)

    @property
    def entropy(self) -> float:
        """Entropy of the live steam [J/(kg·K)]."""
        return state_at_enthalpy(self.chest, self.enthalpy).entropy


@dataclass(frozen=True)
class Walls:
    """Metal at one temperature that gives and takes heat.

    ``coefficient`` between steam and metal [W/(m²·K)], not below 0; ``temperature`` of the metal's surface [K]. Its
    swing within a revolution is neglected: about 1 K with dry steam at two revolutions in a second. OutOfRange outside.
    """

    coefficient: WattsPerSquareMetreKelvin
    temperature: Kelvins

    def __post_init__(self) -> None:
        require(self.coefficient >= 0, "the coefficient of heat to the walls must not be below 0")
        require(self.temperature > 0, "the temperature of the walls must be above 0 K")


@dataclass(frozen=True)
class Running:
    """What an end is run with: steam, revolutions in a second, walls or none (adiabatic)."""

    supply: Supply
    speed: Hertz
    walls: Walls | None = field(default=None)

    def __post_init__(self) -> None:
        require(self.speed > 0, "the engine must turn")
