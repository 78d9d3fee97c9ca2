"""A two-cylinder engine for tests: illustration 12.3 of B. K. Sarkar, Theory of Machines, on one driven axle.

Cylinders 0.70 m apart, stroke 0.60 m, 130 kg turning and 210 kg reciprocating on each, 0.67 of it balanced at 0.64 m,
300 rev/min, which is 31.4159 rad/s. Of the 130 kg are 60 the big end: 90 kg × (1800 − 600)/1800. The planes of the
wheels are not printed; here they are 1395 mm apart. Of a mass on the left its own wheel takes (697.5 + 350)/1395 =
0.750896, the other one 0.249104; both together, at right angles, √(0.750896² + 0.249104²) = 0.791137. So
(130 + 140.7) kg × 0.3 m × 0.791137 = 64.2483 kg·m is balanced by 100.388 kg at 0.64 m, 18.354° beyond opposite:
arctan(0.249104/0.750896).
"""

from __future__ import annotations

from speclint.testing import changed

DUTY = """
kind = "duty"
id = "duty"
[cases.running]
rotational_speed = "300 rev/min"
[cases.drifting]
rotational_speed = "240 rev/min"
"""
BLOCK = """
kind = "cylinder-block"
id = "block-{side}"
duty = "duty"
hand = "{side}"
[bores.main]
[drive]
reciprocating_mass = "210 kg"
"""
ENGINE = """
kind = "engine"
id = "engine"
stroke = "600 mm"
connecting_rod_length = "1800 mm"
connecting_rod_mass = "90 kg"
connecting_rod_centre = "600 mm"
mass = "24 t"
adhesive_weight = "16 t"
balanced_share = "0.67"
[cranks.left]
block = "block-left"
axis_from_centre = "350 mm"
angle = "0 °"
[cranks.right]
block = "block-right"
axis_from_centre = "350 mm"
angle = "90 °"
[line]
code = "bridge code of the railway, 2nd issue"
axle_load = "17 t"
wheel_blow = "34 kN"
axle_blow = "60 kN"
engine_blow = "61 kN"
tractive_variation = "30 kN"
swaying_couple = "10.5 kN·m"
[carrying.bogie]
at = "3 m"
load = "8 t"
[stands.boiler]
mass = "16 t"
at = "1.5 m"
from_centre = "0 mm"
[stands.frames]
mass = "8 t"
at = "0 mm"
from_centre = "0 mm"
"""
AXLE = """
kind = "driving-axle"
id = "axle"
engine = "engine"
at = "0 mm"
plane_distance = "1395 mm"
balanced_share = "0.67"
driven_by = ["left", "right"]
[turning.pin-left]
mass = "70 kg"
crank = "left"
from_centre = "350 mm"
[turning.pin-right]
mass = "70 kg"
crank = "right"
from_centre = "-350 mm"
[left]
load = "8000 kg"
balance_mass = "100.388 kg"
balance_radius = "640 mm"
balance_angle = "198.354 °"
[right]
load = "8000.0 kg"
balance_mass = "100.3880 kg"
balance_radius = "640.0 mm"
balance_angle = "251.646 °"
"""


def files(part: str = "", *changes: tuple[str, str], add: str = "") -> dict[str, str]:
    """The engine with its axle and blocks; one part with text exchanged, and with more at its end."""
    made = {
        "duty": DUTY,
        "block-left": BLOCK.format(side="left"),
        "block-right": BLOCK.format(side="right"),
        "engine": ENGINE,
        "axle": AXLE,
    }
    if part:
        made[part] = changed(made[part], *changes) + add
    return {f"{name}.toml": text for name, text in made.items()}
