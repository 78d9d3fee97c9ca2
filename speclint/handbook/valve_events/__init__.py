"""From crank, cams and clearances to when valves open and what they pass, to diagrams, moment and tractive effort.

What a family calls, from the ground up:

- ``Crank`` (radius, rod) and ``End``: travel, share of the stroke and crank angle of either end; ``front_angle``,
  ``back_angle``, ``back_travel``, ``share_of_stroke`` are its formulae.
- ``ValveTrain`` (cam, foot, clearance, ratio): lift at any crank angle, angle of opening and closing, their shift
  with the clearance, the same train ``backward``; ``ramp_opening_angle``, ``backward_foot``, ``shift_for_clearance``.
- ``events_of`` (inlet, exhaust) gives ``Events``; ``positions_of`` gives where the piston stands at each.
- ``ValvePassage`` of ``Beat``s: area and effective area at a lift; ``effective_area``, ``coefficient_of_loss``;
  ``mean_area``, ``angle_area``, ``last_fifth`` over an opening.
- ``theoretical_mean_pressure``, ``theoretical_pressure``, ``diagram_factor``: the hyperbolic diagram.
- ``WorkingCylinder``, ``turning_moment``, ``standing_pressure``: moment over a revolution; ``tractive_effort``,
  ``tractive_effort_by_the_trade``, ``mach_index``.

Angles in radians, lengths in metres, pressures in Pa absolute.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
