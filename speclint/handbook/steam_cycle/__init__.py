"""The steam in the ends of a cylinder over a revolution: indicator diagrams, power, steam used, temperatures.

What a family calls:

- ``CylinderEnd`` (end, crank, bore, rod, clearance, inlet, exhaust, clearance_surface) with a ``Valve`` (train,
  effective_area) on either side; ``Supply.superheated`` or ``Supply.saturated``; ``Walls``; ``Running``.
- ``cycle_of`` (end, running) gives a ``Cycle``: mean pressure, power, steam, pressures and states at the events, peak
  of compression, exhaust state, mean temperatures, closures, diagram factor, pressure at any crank angle.
- ``balanced_cycle`` gives the one with walls at the temperature where they give and take alike.
- ``CylinderCycle`` joins both ends; ``working_cylinder`` makes of it what ``turning_moment`` takes.
- ``indicated_power``, ``mean_pressure_of_work``, ``steam_flow``, ``kilograms_per_kilowatt_hour``,
  ``pounds_per_horsepower_hour``: the sums on a sheet.
- ``valve_chart``, ``indicator_card``, ``theoretical_card``, ``over_speed``: figures for drawings.

One solution takes 10 to 20 ms. SI units, pressures absolute, angles in radians from the end's own dead centre.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
