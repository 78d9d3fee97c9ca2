"""A sound train from piston to crank pin for tests: cylinder 500 × 660 mm, 16.6 bar, crank 330, rod 1900 mm.

Its last bore is its new one, so that every thrust is that of 500 mm; test_last_bore has it bored out.

The metals are of ``known_metals``, and a forging of known figures: R_p 600, R_m 900, S_f 360 MPa axial and 450 in
bending, E 200 GPa, without tolerance, so that hand working can rely on them.
A = π 500²/4 = 196 349.54 mm². 1.66 MPa × A = 325.940 kN. Water: the relief valves of the back blow off at
1.1 × 1.85 = 2.035 MPa, more than the 1.9 MPa of the duty: × A = 399.571 kN; those of the front at 2.2 MPa: 431.969 kN.
"""

from __future__ import annotations

from speclint.testing import changed, without_key
from tests.plugins.known_metals import METALS, WITH_METALS

FORGING = """
[known-forging]
title = "forging"
family = "alloy-steel"
standard = "invented for tests"
poisson = { value = 0.30, unit = "1", tolerance = 0, source = "common practice" }
density = { value = 7850, unit = "kg/m³", tolerance = 0, source = "common practice" }
modulus = { degC = [20, 420], value = 200, unit = "GPa", tolerance = 0, source = "common practice" }
expansion = { degC = [20, 420], value = 12, unit = "1e-6/K", tolerance = 0, source = "common practice" }
proof-stress = { degC = [20, 420], value = 600, unit = "MPa", tolerance = 0, source = "common practice" }
tensile-strength = { degC = [20, 420], value = 900, unit = "MPa", tolerance = 0, source = "common practice" }
hardness = { value = 270, low = 260, high = 280, unit = "HB", source = "common practice" }
[known-forging.fatigue-strength]
axial = { over_mm = 0, rows = [[300, 360]], unit = "MPa", bound = "exact", source = "common practice" }
bending = { over_mm = 0, rows = [[300, 450]], unit = "MPa", bound = "exact", source = "common practice" }
torsion = { over_mm = 0, rows = [[300, 270]], unit = "MPa", bound = "exact", source = "common practice" }
"""

DUTY = """
kind = "duty"
id = "duty"
[cases.warming]
[cases.warming.temperatures]
cylinder-liner = "140 °C"
piston-ring = "140 °C"
cylinder-block = "140 °C"
[cases.starting]
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0 bar gauge"
live_temperature = "300 °C"
rotational_speed = "0 rev/min"
[cases.starting.temperatures]
piston-rod = "100 °C"
piston = "220 °C"
cylinder-liner = "220 °C"
piston-ring = "220 °C"
stuffing-box = "200 °C"
[cases.running]
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0 bar gauge"
live_temperature = "340 °C"
rotational_speed = "360 rev/min"
cut_off = "0.3"
[cases.running.temperatures]
piston-rod = "100 °C"
piston = "320 °C"
cylinder-liner = "220 °C"
piston-ring = "220 °C"
stuffing-box = "250 °C"
[cases.drifting]
live_pressure = "0 bar gauge"
rotational_speed = "360.0 rev/min"
[cases.drifting.temperatures]
piston = "320 °C"
cylinder-liner = "220 °C"
piston-ring = "220 °C"
[cases.water]
safety_valve_pressure = "16.6 bar gauge"
cylinder_pressure = "19 bar gauge"
[cases.water.temperatures]
piston = "180 °C"
piston-rod = "100 °C"
"""

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
duty = "duty"
[bores.main]
diameter = "570 mm"
[ends.front]
of_bore = "main"
side = "front"
relief_set = "20 bar gauge"
[ends.back]
of_bore = "main"
side = "back"
relief_set = "18.5 bar gauge"
[drive]
stroke = "660 mm"
connecting_rod_length = "1900 mm"
reciprocating_mass = "300 kg"
"""

LINER = """
kind = "cylinder-liner"
id = "liner"
material = "known-iron"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
last_bore = "500.0 mm"
"""

RING = """
kind = "piston-ring"
id = "ring"
material = "known-iron"
runs_in = "liner"
width = "16 mm"
thickness = "16 mm"
gap = "4 mm"
"""

PISTON = """
kind = "piston"
id = "piston"
material = "known-steel"
runs_in = "liner"
diameter = "497 mm"
stock_thickness = "44 mm"
mass = "112 kg"
[grooves.front]
takes = "ring"
depth = "18 mm"
width = "16.1 mm"
land = "20 mm"
[fastening]
by = "nut"
thread = "M85x4"
seat = "taper"
taper = "1/12"
locked_by = "split pin"
proof_load = "600 kN"
"""

ROD = """
kind = "piston-rod"
id = "rod"
material = "known-forging"
carries = "piston"
diameter = "90 mm"
free_length = "1450 mm"
ends = "one fixed and one pinned"
mass = "84 kg"
roughness = "0.3 µm"
hardness = "270 HB"
[sections.nut]
form = "thread"
at = "piston end"
thread = "M85x4"
rolled = false
pushed = false
[sections.foot]
form = "shoulder"
at = "crosshead end"
diameter = "90.0 mm"
larger_diameter = "110 mm"
fillet = "10 mm"
pushed = true
"""

CROSSHEAD = """
kind = "crosshead"
id = "crosshead"
material = "known-steel"
on_rod = "rod"
slipper_length = "400 mm"
slipper_width = "240 mm"
bearing_share = "0.95"
mass = "70 kg"
small_end_mass = "34 kg"
balance_drawing = "an invented drawing"
balanced_for = "300 kg"
"""

BAR = """
kind = "slide-bar"
id = "bar"
material = "known-forging"
guides = "crosshead"
span = "1300 mm"
ends = "both pinned"
section = "rectangle"
width = "200 mm"
depth = "120 mm"
bars_sharing = 1
crosshead_from_end = "320 mm"
"""

PIN = """
kind = "pin"
id = "pin"
material = "known-forging"
moved_by = "crosshead"
place = "crosshead pin"
diameter = "100 mm"
length = "110 mm"
span = "170 mm"
"""

CRANK_PIN = """
kind = "pin"
id = "crank-pin"
material = "known-forging"
moved_by = "crosshead"
place = "crank pin"
diameter = "165 mm"
length = "185 mm"
overhang = "120 mm"
larger_diameter = "200 mm"
fillet = "10 mm"
"""

BOX = """
kind = "stuffing-box"
id = "box"
material = "known-iron"
seals = "rod"
packing = "carbon segments"
neck_bush = "90.6 mm"
gland_bore = "91 mm"
drained = true
"""

SHAFT = """
kind = "shaft"
id = "shaft"
material = "known-forging"
diameter = "60 mm"
keyway_width = "18 mm"
keyway_depth = "7 mm"
torque = "1400 N·m"
bending_moment = "800 N·m"
"""

PARTS = {
    "duty": DUTY,
    "block": BLOCK,
    "liner": LINER,
    "ring": RING,
    "piston": PISTON,
    "rod": ROD,
    "crosshead": CROSSHEAD,
    "bar": BAR,
    "pin": PIN,
    "crank-pin": CRANK_PIN,
    "box": BOX,
    "shaft": SHAFT,
}


def files(part: str = "", *changes: tuple[str, str], add: str = "") -> dict[str, str]:
    """Every spec of the train, one of them with some passages changed; an empty replacement takes a line away."""
    found = {f"{name}.toml": text for name, text in PARTS.items()}
    if part:
        found[f"{part}.toml"] = changed(found[f"{part}.toml"], *changes, add=add, of=part)
    return {**found, "speclint.toml": WITH_METALS, "metals.toml": METALS + FORGING}


def without(part: str, key: str) -> dict[str, str]:
    """Every spec, one without one of its lines."""
    return {**files(), f"{part}.toml": without_key(PARTS[part], key)}
