"""Sound live and exhaust paths of one cylinder for tests.

Live: pipe 168.3 × 5.6 mm, chest, pocket below the valve. Exhaust: belt, pipe 219.1 × 6.3 mm, nozzle of 165 mm for two
cylinders. 15 bar gauge and 390 °C, 0.35 bar gauge and 170 °C, 1.7 kg/s each cylinder; site 1.01325 bar.
"""

from __future__ import annotations

from speclint.testing import changed, without_key
from tests.plugins.known_metals import METALS, WITH_METALS

DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
live_pressure = "16 bar gauge"
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0.3 bar gauge"
live_temperature = "300 °C"
exhaust_temperature = "150 °C"
steam_flow = "0.3 kg/s"
[cases.starting.temperatures]
partition = "220 °C"
pipe = "300 °C"
[cases.running]
live_pressure = "15 bar gauge"
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0.35 bar gauge"
live_temperature = "390 °C"
exhaust_temperature = "170 °C"
ambient_temperature = "20 °C"
hottest_ambient = "20 °C"
rotational_speed = "360 rev/min"
steam_flow = "1.7 kg/s"
[cases.running.temperatures]
partition = "270 °C"
pipe = "380 °C"
[cases.standing-hot]
ambient_temperature = "20 °C"
hottest_ambient = "20 °C"
[cases.standing-hot.temperatures]
pipe = "180 °C"
[cases.drifting]
exhaust_pressure = "0 bar gauge"
cylinder_pressure = "2 bar gauge"
ambient_temperature = "20 °C"
rotational_speed = "360 rev/min"
"""

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
duty = "duty"
[bores.main.relieved.middle]
starts = "300 mm"
ends = "500 mm"
drained = true
[drive]
stroke = "660 mm"
connecting_rod_length = "1900 mm"
"""

LINER = """
kind = "cylinder-liner"
id = "liner"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
"""

SEAT = """
kind = "valve-seat"
id = "seat"
material = "known-iron"
pressed_into = "block"
"""

VALVE = """
kind = "poppet-valve"
id = "valve"
material = "known-steel"
beats = 2
outside_diameter = "160 mm"
box_diameter = "200 mm"
lift = "20 mm"
[upper_beat]
seat = "seat"
seat_diameter = "150 mm"
seat_angle = "0 °"
contact_width = "3 mm"
throat = "140 mm"
blocked_area = "3000 mm²"
[lower_beat]
seat = "seat"
seat_diameter = "140 mm"
seat_angle = "0 °"
contact_width = "3 mm"
throat = "130 mm"
blocked_area = "1800 mm²"
"""

PIPE = """
kind = "steam-pipe"
id = "pipe"
material = "known-steel"
joined_to = "block"
carries = "live steam"
cylinders = 1
outside_diameter = "168.3 mm"
wall = "5.6 mm"
roughness = "0.05 mm"
bends = 2
bend_radius = "300 mm"
length = "2.7 m"
"""

CHEST = """
kind = "steam-passage"
id = "chest"
material = "known-steel"
in_block = "block"
follows = "pipe"
place = "chest"
carries = "live steam"
cylinders = 1
area = "40000 mm²"
perimeter = "0.9 m"
length = "0.3 m"
roughness = "0.1 mm"
bends = 0
mitres = 0
loss_coefficient = "0"
low_point = true
drained = true
"""

POCKET = """
kind = "steam-passage"
id = "pocket"
material = "known-steel"
in_block = "block"
follows = "chest"
place = "valve pocket"
carries = "live steam"
cylinders = 1
area = "22000 mm²"
perimeter = "0.55 m"
length = "0.2 m"
roughness = "0.1 mm"
bends = 0
mitres = 1
loss_coefficient = "0.3"
low_point = true
drained = true
valve = "valve"
"""

BELT = """
kind = "steam-passage"
id = "belt"
material = "known-steel"
in_block = "block"
place = "belt"
carries = "exhaust steam"
cylinders = 1
area = "36000 mm²"
perimeter = "0.76 m"
length = "0.5 m"
roughness = "0.1 mm"
bends = 1
bend_radius = "260 mm"
mitres = 0
loss_coefficient = "0.2"
low_point = true
drained = true
valve = "valve"
"""

OUT = """
kind = "steam-pipe"
id = "out"
material = "known-steel"
joined_to = "block"
follows = "belt"
carries = "exhaust steam"
cylinders = 1
outside_diameter = "219.1 mm"
wall = "6.3 mm"
roughness = "0.1 mm"
bends = 1
bend_radius = "450 mm"
length = "1.6 m"
"""

NOZZLE = """
kind = "blast-nozzle"
id = "nozzle"
material = "known-iron"
follows = "out"
nozzles = 1
diameter = "165 mm"
cylinders = 2
cylinder_bore = "500 mm"
discharge_coefficient = "0.95"
reference_momentum = "1100 N"
"""

PORT = """
kind = "steam-passage"
id = "port"
material = "known-steel"
in_block = "block"
place = "port"
carries = "live steam"
cylinder_bore = "main"
area = "21000 mm²"
low_point = false
"""

BREATH = """
kind = "steam-passage"
id = "breath"
material = "known-steel"
in_block = "block"
place = "breathing way"
cylinder_bore = "main"
area = "40000 mm²"
discharge_coefficient = "0.6"
charge_temperature = "150 °C"
low_point = false
"""

PARTS = {
    "duty": DUTY,
    "block": BLOCK,
    "liner": LINER,
    "seat": SEAT,
    "valve": VALVE,
    "pipe": PIPE,
    "chest": CHEST,
    "pocket": POCKET,
    "belt": BELT,
    "out": OUT,
    "nozzle": NOZZLE,
    "port": PORT,
    "breath": BREATH,
}


def files(part: str = "", *changes: tuple[str, str], add: str = "", **more: str) -> dict[str, str]:
    """Every spec of the ways, one of them with some passages changed, and more beside."""
    found = {f"{name}.toml": text for name, text in {**PARTS, **more}.items()}
    if part:
        found[f"{part}.toml"] = changed(found[f"{part}.toml"], *changes, add=add, of=part)
    return {**found, "speclint.toml": WITH_METALS, "metals.toml": METALS}


def without(part: str, key: str, **more: str) -> dict[str, str]:
    """Every spec, one without one of its lines."""
    return {**files(**more), f"{part}.toml": without_key({**PARTS, **more}[part], key)}
