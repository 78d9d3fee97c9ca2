"""A sound live-steam pipe for tests: 168.3 × 5.6 mm of 16Mo3, bends of 300 mm, 16.6 bar, metal 400 °C.

The handbook gives for walls to 16 mm R_p 156 MPa at 400 °C and 280 MPa at 20 °C, R_m 450 MPa.
By hand, MPa and mm: f = min(156/1.5, 450/2.4) = 104; S = min(450/3.5, 2 × 156/3) = 104; f_20 = min(280/1.5, 187.5)
= 186.667; S_20 = min(128.571, 186.667) = 128.571.
"""

from __future__ import annotations

from speclint.testing import changed

PIPE = """
kind = "steam-pipe"
id = "pipe"
material = "tube-16Mo3"
duty = "duty"
carries = "live steam"
outside_diameter = "168.3 mm"
wall = "5.6 mm"
mill_tolerance = "12.5 %"
joint_factor = "1"
corrosion_allowance = "1 mm"
bends = 2
bend_radius = "300 mm"
bend_thinning = "15 %"
test_pressure = "38 bar gauge"
length = "7 m"
anchor_distance = "2 m"
anchor_movement = "2 mm"
takes_up_by = "bends"
joint_movement = "14 mm"
cycles = 5000
"""

DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0.3 bar gauge"
[cases.starting.temperatures]
steam-pipe = "300 °C"
[cases.running]
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0.5 bar gauge"
[cases.running.temperatures]
steam-pipe = "400 °C"
[cases.warming.temperatures]
steam-pipe = "140 °C"
[cases.drifting.temperatures]
steam-pipe = "300 °C"
[cases.standing-hot.temperatures]
steam-pipe = "180 °C"
[cases.cooling.temperatures]
steam-pipe = "110 °C"
"""


def files(*changes: tuple[str, str], add: str = "") -> dict[str, str]:
    """The pipe with some lines changed, and its duty."""
    return {"pipe.toml": changed(PIPE, *changes, add=add), "duty.toml": DUTY}
