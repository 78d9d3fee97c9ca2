"""Specs of a valve gear for tests: a block of steel plate with one seat bore, an iron seat, and the duty.

The metals are those of ``known_metals``. At 20 °C the steel has R_p 240 MPa, E 194 to 206 GPa, ν 0.29 to 0.31;
the iron compressive strength 756 MPa at least, E 100 to 120 GPa, ν 0.24 to 0.28. Mean expansion from 20 to 160 °C:
steel 11.9 to 12.5e-6/K, iron 11.6 to 12.2e-6/K.
"""

from __future__ import annotations

from speclint.testing import changed
from tests.plugins.known_metals import FILES

#: Faces of the fit so smooth that hand working may leave them out.
BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
duty = "duty"
[seat_bores.upper]
diameter = "200 mm"
depth = "30 mm"
wall = "40 mm"
roughness = "0.2 µm"
chamber = "live steam"
[drive]
stroke = "660 mm"
connecting_rod_length = "1900 mm"
wear = "1 mm"
rod_diameter = "80 mm"
rod_length = "1000 mm"
rod_material = "known-steel"
connecting_rod_area = "5000 mm²"
connecting_rod_material = "known-steel"
"""

#: The same with relief valves at one end of its cylinder, which blow off all of the water at a tenth above this.
RELIEVED = BLOCK + '[ends.back]\nof_bore = "main"\nside = "back"\nrelief_set = "{} bar gauge"\n'

LINER = """
kind = "cylinder-liner"
id = "liner"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
"""

#: Two flat beats of 150 and 140 mm, 3 mm wide, cylinder steam between them: compression lifts it, live steam holds it.
VALVE = """
kind = "poppet-valve"
id = "valve"
material = "known-steel"
serves = "inlet"
cylinder_bore = "main"
beats = 2
opens = "upwards"
lift = "20 mm"
mass = "4.5 kg"
port_area = "20000 mm²"
through_valve = "neither"
supply_acts = "beyond the beats"
steam_load = "holds shut"
loss_coefficient = "2"
relieves_water = false
lifts_drifting = false
reversal_hurts = false
compression_share = "0.2"
clearance_share = "0.1"
shutting_ratio = "1"
beat_distance = "110 mm"
height = "120 mm"
overtravel = "0.5 mm"
lift_stop = "21 mm"
clearance_open = "5 mm"
meets_piston = false
retained = "none"
smallest_piece = "30 mm"
passage_below = "25 mm"
[upper_beat]
seat = "seat"
seat_diameter = "150 mm"
seat_angle = "0 °"
contact_width = "3 mm"
throat = "140 mm"
blocked_area = "2000 mm²"
[lower_beat]
seat = "seat"
seat_diameter = "140 mm"
seat_angle = "0 °"
contact_width = "3 mm"
throat = "130 mm"
blocked_area = "2000 mm²"
"""

#: A train so springy that hand working may leave out the blow with which its clearance is taken up.
SPINDLE = """
kind = "valve-spindle"
id = "spindle"
material = "known-steel"
moves = "valve"
mass = "1.5 kg"
seal_diameter = "20 mm"
leaves = "supply"
pushed = "shut"
friction = "10 N"
train_stiffness = "0.001 N/mm"
diameter = "22 mm"
least_diameter = "16 mm"
least_section = "plain"
guide_bore = "22.08 mm"
guide_length = "100 mm"
guide_material = "known-iron"
guide_held = "pressed in"
guide_outside = "36 mm"
guide_interference = "0 mm"
guide_bored_in_place = true
free_length = "300 mm"
ends = "both pinned"
heated_length = "400 mm"
valve_length = "60 mm"
seal = "metallic rings"
seal_temperature = "300 °C"
seal_pressure = "20 bar gauge"
seal_speed = "2 m/s"
leak_off = "to the drain of the cam box"
"""

#: Limits of the load so narrow that hand working may leave them out.
SPRING = """
kind = "compression-spring"
id = "spring"
material = "known-wire"
closes = "valve"
shut_load = "1100 N ±0.0001"
rate = "40 N/mm"
relaxation = "2 %"
mass = "0.9 kg"
"""

SEAT = """
kind = "valve-seat"
id = "seat"
material = "known-iron"
pressed_into = "block"
in_bore = "upper"
outside_diameter = "200.2 mm"
bore = "170 mm"
length = "30 mm"
roughness = "0.2 µm"
entering = "block heated and ring chilled"
block_heated_to = "120 °C"
chilled_to = "-78 °C"
friction = "0.1"
entered_from = "chamber"
sticking_drag = "500 N"
retention = "none"
"""

PRESSURES = {
    "cold": "",
    "warming": 'live_pressure = "3 bar gauge"\nexhaust_pressure = "0.2 bar gauge"',
    "starting": 'live_pressure = "16 bar gauge"\nexhaust_pressure = "0.3 bar gauge"\nrotational_speed = "10 rev/min"',
    "running": 'live_pressure = "15.2 bar gauge"\nexhaust_pressure = "0.35 bar gauge"\nlive_temperature = "390 °C"\n'
    'exhaust_temperature = "170 °C"\nrotational_speed = "360 rev/min"',
    "drifting": 'live_pressure = "0.1 bar gauge"\nexhaust_pressure = "0.05 bar gauge"\n'
    'cylinder_pressure = "2.5 bar gauge"\nrotational_speed = "360 rev/min"',
    "standing-hot": 'live_pressure = "0 bar gauge"\nexhaust_pressure = "0 bar gauge"',
    "cooling": 'live_pressure = "0 bar gauge"\nexhaust_pressure = "0 bar gauge"',
    "water": 'live_pressure = "16 bar gauge"\nexhaust_pressure = "0.3 bar gauge"\ncylinder_pressure = "18 bar gauge"',
}


#: The clearance is set with a screw, so that no length of the train has to give it.
TAPPET = """
kind = "tappet"
id = "tappet"
material = "known-steel"
works = "spindle"
carried_in = "box"
mass = "0.8 kg"
follower = "flat foot"
face_width = "30 mm"
surface = "case hardened"
hardened_depth = "2 mm"
clearance = "0.4 mm"
clearance_setting = "0 mm"
seat_wear = "0.1 mm"
"""

CAM_BOX = """
kind = "cam-box"
id = "box"
material = "known-steel"
mounted_on = "block"
tappets = 1
datum_length = "180 mm"
block_length = "200 mm"
length = "400 mm"
withdrawn = "sideways"
withdrawal_room = "430 mm"
fastenings_reachable = true
"""

#: A ramp too low to count, so that hand working may leave it out.
CAM = """
kind = "cam"
id = "cam"
material = "known-steel"
lifts = "tappet"
law = "harmonic"
lift = "20 mm"
rise_angle = "70 °"
dwell_angle = "20 °"
fall_angle = "70 °"
ramp_height = "0.001 mm"
ramp_angle = "20 °"
base_radius = "60 mm"
width = "25 mm"
surface = "case hardened"
hardened_depth = "2 mm"
"""


def train_files(
    cam: tuple[tuple[str, str], ...] = (),
    tappet: tuple[tuple[str, str], ...] = (),
    valve: tuple[tuple[str, str], ...] = (),
    spindle: tuple[tuple[str, str], ...] = (),
    spring: tuple[tuple[str, str], ...] = (),
    duty_text: str = "",
) -> dict[str, str]:
    """The files of a valve with the whole train that works it, some passages changed."""
    return {
        **gear_files(valve, spindle, spring, duty_text),
        "tappet.toml": changed(TAPPET, *tappet),
        "cam.toml": changed(CAM, *cam),
        "box.toml": CAM_BOX,
    }


def duty(default: str = "20 °C", **of_case: str) -> str:
    """A duty with the metal of every part at one temperature, or at others in the cases named (_ for -)."""
    text = 'kind = "duty"\nid = "duty"\n'
    for name, pressures in PRESSURES.items():
        metal = of_case.get(name.replace("-", "_"), default)
        block, _, rest = metal.partition("; ")
        kinds = (
            "poppet-valve",
            "valve-seat",
            "valve-spindle",
            "compression-spring",
            "tappet",
            "cam",
            "piston-rod",
            "cam-box",
            "rocker",
        )
        lines = "".join(f'{kind} = "{rest or block}"\n' for kind in kinds)
        text += (
            f'[cases.{name}]\n{pressures}\n[cases.{name}.temperatures]\ncylinder-block = "{block}"\n{lines}'
            'connecting-rod = "20 °C"\n'
        )
    return text


def seat_files(*changes: tuple[str, str], block: str = BLOCK, duty_text: str = "") -> dict[str, str]:
    """The files of a seat in its block."""
    return {
        **FILES,
        "block.toml": block,
        "seat.toml": changed(SEAT, *changes),
        "duty.toml": duty_text or duty(),
    }


def gear_files(
    valve: tuple[tuple[str, str], ...] = (),
    spindle: tuple[tuple[str, str], ...] = (),
    spring: tuple[tuple[str, str], ...] = (),
    duty_text: str = "",
) -> dict[str, str]:
    """The files of a valve with its seat, block, liner, spindle, spring and duty, some passages changed."""
    return {
        **seat_files(duty_text=duty_text),
        "liner.toml": LINER,
        "valve.toml": changed(VALVE, *valve),
        "spindle.toml": changed(SPINDLE, *spindle),
        "spring.toml": changed(SPRING, *spring),
    }


#: A cage round the valve, 150 mm from the plane of the seat to its end: 150 − 120 − 20 = 10 mm beyond the open valve.
CAGE = """
kind = "valve-cage"
id = "cage"
material = "known-steel"
surrounds = "valve"
held_by = "block"
end_at = "150 mm"
opening = "12 mm"
"""

RING = """
kind = "retaining-ring"
id = "ring"
material = "known-steel"
retains = "seat"
fastened = "screwed in"
locked = true
"""
