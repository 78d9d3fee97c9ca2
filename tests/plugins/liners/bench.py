"""A block, a liner and a ring for tests, in round figures so that they can be worked by hand.

Every hot case has block and liner at 200 °C, where the handbook gives a mean expansion of 11.7e-6 ± 0.3e-6/K for
grey iron (EN 1561) and 12.7e-6 ± 0.3e-6/K for the steel (ASME II-D, group 1).
"""

from __future__ import annotations

from collections.abc import Mapping

from speclint.testing import changed_files

HOT = ("starting", "running", "drifting", "standing-hot", "cooling", "water")


def _case(
    name: str, extra: str = "", liner: str = "200 °C", block: str = "200 °C", rod: str = "70 °C"
) -> str:
    return f"""
[cases.{name}]
{extra}
[cases.{name}.temperatures]
cylinder-block = "{block}"
cylinder-liner = "{liner}"
piston-rod = "{rod}"
connecting-rod = "20 °C"
frame = "20 °C"
"""


_STEAM = 'live_pressure = "16 bar gauge"\nexhaust_pressure = "0 bar gauge"\nsafety_valve_pressure = "16.6 bar gauge"'
_SPEED = 'rotational_speed = "300 rev/min"'
_SHUT = '\nlive_pressure = "0 bar gauge"'

DUTY = "".join(
    (
        'kind = "duty"\nid = "duty"\n',
        _case("cold", liner="20 °C", block="20 °C", rod="20 °C"),
        _case("warming", 'live_pressure = "3 bar gauge"', liner="120 °C", block="50 °C"),
        _case("starting", _STEAM + '\nrotational_speed = "10 rev/min"'),
        _case("running", f"{_STEAM}\n{_SPEED}"),
        _case("drifting", _SPEED + _SHUT),
        _case("standing-hot", _SHUT),
        _case("cooling", _SHUT),
        _case("water", f'cylinder_pressure = "16.6 bar gauge"\n{_STEAM}\nrotational_speed = "9 rev/min"'),
        _case("test", liner="20 °C", block="20 °C"),
    )
)

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "plate-P355GH"
duty = "duty"
test_pressure = "28 bar gauge"
construction = "fabricated"

[bores.main]
diameter = "560 mm"
length = "902 mm"
wall = "40 mm"
as_made = "40 mm"
roughness = "5 µm"
recess_diameter = "600 mm"
recess_depth = "25 mm"
recess_chamfer = "4 mm"
axis_from_frame = "350 mm"
cold_set = "0.8 mm"

[ports.front]
from_seat = "60 mm"
height = "40 mm"
angle = "0 °"
width = "300 mm"

[ends.front]
of_bore = "main"
side = "front"
face_at = "700 mm"
face_from_seat = "35 mm"
clearance = "8 mm"
passage_volume = "9000 cm³"
long_passages = false
relief_set = "18.5 bar gauge"
relief_seat_diameter = "60 mm"
relief_seat_angle = "0 °"
relief_lift = "15 mm"
relief_lift_at = "19.5 bar gauge"
relief_count = 2
drain_cock = true

[ends.back]
of_bore = "main"
side = "back"
face_at = "-100 mm"
face_from_seat = "860 mm"
clearance = "8 mm"
passage_volume = "9000 cm³"
long_passages = false
relief_set = "18.5 bar gauge"
relief_seat_diameter = "60 mm"
relief_seat_angle = "0 °"
relief_lift = "15 mm"
relief_lift_at = "19.5 bar gauge"
relief_count = 2
drain_cock = true

[divisions.chest]
thickness = "20 mm"
as_made = "20 mm"
wasting = "0 mm"
bore = "main"
span = "200 mm"
length = "600 mm"
one_side = "live steam"
other_side = "exhaust steam"

[drive]
stroke = "660 mm"
rod_diameter = "90 mm"
rod_length = "1500 mm"
rod_material = "plate-P355GH"
reciprocating_mass = "300 kg"
connecting_rod_length = "1980 mm"
connecting_rod_area = "5000 mm²"
connecting_rod_material = "plate-P355GH"
axle_from_fixed_point = "3500 mm"
frame_material = "plate-P355GH"
driving_wheel_diameter = "1750 mm"
least_wheel_diameter = "1680 mm"
wear = "1 mm"
"""

LINER = """
kind = "cylinder-liner"
id = "liner"
material = "grey-iron-250"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
outside_diameter = "560.3 mm"
roughness = "5 µm"
last_bore = "509 mm"
reboring_step = "3 mm"
pistons_for = ["503 mm", "506 mm", "509 mm"]
eccentricity = "0.5 mm"
length = "900 mm"
working_from = "88 mm"
working_to = "807 mm"
fit_length = "800 mm"
free_end_stop = "shoulder"
retained_by = "nothing"
entered = "heated block"
block_heated_to = "150 °C"
finish_bored_after = false
tell_tale = true
drain_behind = true
phosphorus = "0.5 %"
hardness = "200 HB"
ring_hardness = "210 HB"
structure = "pearlitic grey"

[collar]
end = "front"
diameter = "599 mm"
thickness = "25.1 mm"
fillet = "3 mm"
clamp_force = "200 kN"
clamp_diameter = "590 mm"

[ports.front]
matches = "front"
from_collar = "60 mm"
height = "40 mm"
angle = "0 °"
width = "300 mm"
crossed_by_rings = false

[lands.front]
starts = "5 mm"
ends = "35 mm"

[lands.back]
starts = "120 mm"
ends = "890 mm"
"""

CASTING = """
kind = "casting"
id = "casting"
material = "grey-iron-250"
becomes = "liner"
[faces.bore]
dimension = "500 mm"
allowance = "4 mm"
[faces.outside]
dimension = "560 mm"
allowance = "4 mm"
"""

RING = """
kind = "piston-ring"
id = "ring"
material = "phosphoric-cylinder-iron"
runs_in = "liner"
place = "front"
edge_from_piston_face = "40 mm"
width = "14 mm"
made_for = ["500 mm", "503 mm", "506 mm", "509 mm"]
hardness = "210 HB"
phosphorus = "0.5 %"
structure = "pearlitic grey"
"""

FILES: Mapping[str, str] = {
    "duty.toml": DUTY,
    "block.toml": BLOCK,
    "liner.toml": LINER,
    "casting.toml": CASTING,
    "ring.toml": RING,
}


def bench(*changes: tuple[str, str, str]) -> dict[str, str]:
    """The files with some passages changed: triples of file, old passage and new one."""
    return changed_files(FILES, *changes, everywhere=True)


def low_relief(*changes: tuple[str, str, str]) -> dict[str, str]:
    """The files with relief valves that blow at 16.5 bar, a tenth over their 15: below the safety valves' 16.6."""
    return bench(in_block('relief_set = "18.5 bar gauge"', 'relief_set = "15 bar gauge"'), *changes)


def in_liner(old: str, new: str) -> tuple[str, str, str]:
    """A change of the liner."""
    return "liner.toml", old, new


def in_block(old: str, new: str) -> tuple[str, str, str]:
    """A change of the block."""
    return "block.toml", old, new


def in_casting(old: str, new: str) -> tuple[str, str, str]:
    """A change of the liner's casting."""
    return "casting.toml", old, new


def in_duty(old: str, new: str) -> tuple[str, str, str]:
    """A change of the duty."""
    return "duty.toml", old, new


def in_ring(old: str, new: str) -> tuple[str, str, str]:
    """A change of the ring."""
    return "ring.toml", old, new
