"""A weldment for tests, of a steel in round figures so that it can be worked by hand.

Proof stress 240 MPa falling 0.2 MPa a kelvin from 20 °C; at 220 °C 200 MPa, so that the allowable tension is
200/1.5 = 133.33 MPa. Modulus 200 GPa ± 3 %, expansion 11.5e-6 ± 0.3e-6/K, Poisson's ratio 0.30 ± 0.01 at 20 °C.
"""

from __future__ import annotations

from collections.abc import Mapping

from speclint.testing import DesignFolder, changed
from tests.plugins.known_metals import METALS, WITH_METALS

_STEEL = METALS.partition("[known-steel]")[2]
PLATE = (
    "[known-plate]"
    + _STEEL
    + """
allowable = "wrought-steel"
conductivity = { degC = [-20, 420], value = [50, 50], unit = "W/(m·K)", tolerance = 0, source = "common practice" }
specific-heat = { degC = [-20, 420], value = [500, 500], unit = "J/(kg·K)", tolerance = 0, source = "common practice" }
composition = { C = [0, 0.2], Mn = [0.6, 1.2], unit = "%", source = "common practice" }
impact-energy = { degC = [-20, 0, 20], value = [20, 27, 40], unit = "J", bound = "minimum", source = "common practice" }
"""
)
DUTY = """
kind = "duty"
id = "duty"
[cases.warming]
live_pressure = "1.98665 bar absolute"
temperatures = { cylinder-block = "20 °C" }
[cases.starting]
live_pressure = "16 bar gauge"
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0.3 bar gauge"
temperatures = { cylinder-block = "220 °C" }
[cases.running]
live_pressure = "15 bar gauge"
safety_valve_pressure = "15 bar gauge"
exhaust_pressure = "0.3 bar gauge"
temperatures = { cylinder-block = "220 °C" }
[cases.drifting]
cylinder_pressure = "2 bar gauge"
live_pressure = "0 bar gauge"
exhaust_pressure = "0 bar gauge"
least_cylinder_pressure = "-0.2 bar gauge"
temperatures = { cylinder-block = "220 °C" }
[cases.water]
cylinder_pressure = "16.6 bar gauge"
live_pressure = "16 bar gauge"
safety_valve_pressure = "16 bar gauge"
exhaust_pressure = "0.3 bar gauge"
temperatures = { cylinder-block = "120 °C" }
[cases.test]
cylinder_pressure = "18 bar gauge"
live_pressure = "18 bar gauge"
exhaust_pressure = "0 bar gauge"
temperatures = { cylinder-block = "20 °C" }
"""
BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-plate"
duty = "duty"
[drive]
driving_wheel_diameter = "1750 mm"
least_wheel_diameter = "1680 mm"
[ends.back]
relief_set = "1 bar gauge"
"""
WELDMENT = """
kind = "weldment"
id = "weldment"
material = "known-plate"
makes = "block"
cavities_sought = true
tolerance_class = "B"
life_distance = "2000000 km"
starts = 20000
least_temperature = "0 °C"
test_water = "7 °C"
warming_rise = "100 K"
warming_time = "60 min"
[plates.chest]
material = "known-plate"
thickness = "20 mm"
meets_steam = true
corrosion_allowance = "1 mm"
z_quality = "none"
rolled_thickness = "0.020 m"
serves_as = "flat wall"
[plates.flange]
material = "known-plate"
thickness = "40 mm"
meets_steam = true
corrosion_allowance = "1 mm"
z_quality = "Z15"
rolled_thickness = "0.040 m"
serves_as = "flange"
[walls.chest]
plate = "chest"
short = "190 mm"
long = "380 mm"
edges = "clamped"
one_side = "live steam"
other_side = "atmosphere"
one_depth = "100 mm"
ribbed = true
[walls.chest.ribs]
spacing = "190 mm"
span = "380 mm"
depth = "100 mm"
thickness = "12 mm"
ends = "supported"
[walls.barrel]
plate = "chest"
short = "95 mm"
long = "190 mm"
edges = "clamped"
one_side = "exhaust steam"
other_side = "cylinder"
one_depth = "60 mm"
other_depth = "40 mm"
ribbed = false
[joints.barrel-seam]
plate = "chest"
shape = "butt"
weld = "full penetration"
on_pressure = true
wall = "barrel"
detail_category = "90 MPa"
from_both_sides = true
procedure = "WPQR 17"
welder = "W 4"
quality = "B"
examined = "100 %"
joint_factor = "1"
[joints.chest-edge]
plate = "flange"
shape = "tee"
weld = "full penetration"
throat = "20 mm"
on_pressure = true
sequence = true
restraint = "medium"
wall = "chest"
detail_category = "71 MPa"
procedure = "WPQR 18"
welder = "W 4"
quality = "B"
examined = "10 %"
joint_factor = "0.85"
[cavities.under-chest]
vented_for_treatment = true
vented_in_service = true
[treatment]
temperature = "570 °C"
time = "35 min"
before_finishing = true
[faces.joint]
dimension = "900 mm"
allowance = "5 mm"
[welding]
preheat = "90 °C"
"""
FILES = {
    "metals.toml": METALS + PLATE,
    "duty.toml": DUTY,
    "block.toml": BLOCK,
    "weldment.toml": WELDMENT,
}


def write(
    workshop: DesignFolder,
    *changes: tuple[str, str],
    duty: tuple[str, str] = ("", ""),
    beside: Mapping[str, str] | None = None,
) -> DesignFolder:
    """The bench with some passages of the weldment and one of the duty changed, and with further files."""
    assert not duty[0] or duty[0] in DUTY
    texts = {
        **FILES,
        **(beside or {}),
        "duty.toml": DUTY.replace(*duty) if duty[0] else DUTY,
        "weldment.toml": changed(WELDMENT, *changes, of="the weldment"),
    }
    return workshop.write(texts, settings=WITH_METALS)


def without(table: str) -> str:
    """The weldment without its tables of one name."""
    parts = WELDMENT.split("\n[")
    return "\n[".join(part for part in parts if not part.startswith(table))


def bare(workshop: DesignFolder, table: str) -> DesignFolder:
    """The bench without the weldment's tables of one name."""
    return workshop.write({**FILES, "weldment.toml": without(table)}, settings=WITH_METALS)
