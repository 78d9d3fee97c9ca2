"""A cylinder as both its ends work, and an engine of several alike."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.equations import Metres
from speclint.handbook.steam_cycle.cycles import Cycle
from speclint.handbook.steam_cycle.power import SteamForWork
from speclint.handbook.valve_events import WorkingCylinder, tractive_effort

#: Pressure of the air on the piston rod (Pa absolute), the standard atmosphere.
_AIR = 101325.0


@dataclass(frozen=True)
class CylinderCycle(SteamForWork):
    """The cycles of the front and of the back end of one cylinder, run alike."""

    front: Cycle
    back: Cycle

    @property
    def power(self) -> float:
        """Indicated power of both ends [W]."""
        return self.front.power + self.back.power

    @property
    def steam_flow(self) -> float:
        """Steam that both ends take [kg/s]."""
        return self.front.steam_flow + self.back.steam_flow

    @property
    def work_ratio(self) -> float:
        """Work of the front over that of the back."""
        return self.front.work / self.back.work

    @property
    def greatest_pressure(self) -> float:
        """Greatest pressure of both ends [Pa]."""
        return max(self.front.greatest_pressure[0], self.back.greatest_pressure[0])

    @property
    def least_pressure(self) -> float:
        """Least pressure of both ends [Pa]."""
        return min(self.front.least_pressure[0], self.back.least_pressure[0])

    @property
    def exhaust_enthalpy(self) -> float:
        """Mean enthalpy of the steam that leaves both ends [J/kg]."""
        ends = (self.front, self.back)
        return sum(end.steam * end.exhaust_enthalpy for end in ends) / sum(end.steam for end in ends)

    @property
    def mean_temperature(self) -> float:
        """Mean temperature of the steam in both ends over a revolution [K]."""
        return (self.front.mean_temperature + self.back.mean_temperature) / 2

    def tractive_effort(self, wheel: Metres) -> float:
        """Tractive effort of this cylinder at the rail [N]; ``wheel`` diameter of the drivers [m], above 0."""
        return sum(
            tractive_effort(cycle.mean_pressure, cycle.end.area, cycle.end.crank.stroke, wheel)
            for cycle in (self.front, self.back)
        )


def working_cylinder(both: CylinderCycle, air: float = _AIR) -> WorkingCylinder:
    """The cylinder as it turns its crank, for ``turning_moment``; ``air`` pressure on the rod [Pa absolute]."""
    front, back = both.front, both.back
    return WorkingCylinder(front.end.crank, front.end.area, back.end.area, front.pressure, back.pressure, air)
