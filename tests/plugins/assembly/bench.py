"""A small engine of which every part goes in: one cylinder, a valve of two beats, and an exhaust seat by the port.

Sizes are without tolerances, so that each limit of a rule can be worked by hand from them.
"""

from __future__ import annotations

import re
from collections.abc import Collection

from speclint.testing import DesignFolder, changed_files
from tests.plugins.known_metals import METALS, WITH_METALS

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
pressure_part = true
entering_width = "900 mm"
entering_height = "700 mm"
[bores.main]
diameter = "560 mm"
recess_diameter = "620 mm"
wall = "40 mm"
[bores.main.relieved.middle]
diameter = "562 mm"
[ports.front]
of_end = "front"
height = "40 mm"
width = "300 mm"
[seat_bores.upper]
diameter = "163.6 mm"
end = "front"
serves = "inlet"
beat = "upper"
opens_into = "chamber"
opening = "230 mm"
room_beyond = "200 mm"
[seat_bores.lower]
diameter = "160 mm"
end = "front"
serves = "inlet"
beat = "lower"
opens_into = "chamber"
opening = "231 mm"
[seat_bores.exhaust]
diameter = "200 mm"
end = "front"
serves = "exhaust"
beat = "upper"
opens_into = "cylinder"
[ends.front]
of_bore = "main"
side = "front"
relief_count = 1
drain_cock = true
[ends.front.relief_fitting]
across_flats = "50 mm"
to_wall = "60 mm"
lagged = true
lagging_opening = "90 mm"
[ends.front.cock_fitting]
across_flats = "24 mm"
to_wall = "30 mm"
lagged = false
[ends.back]
of_bore = "main"
side = "back"
relief_count = 0
drain_cock = false
[pads.front]
width = "180 mm"
locates = false
"""

FACE = """
kind = "locating-face"
id = "face"
locks = "block"
pad = "front"
slot = "186 mm"
opening_width = "910 mm"
opening_height = "710 mm"
"""

BOLTS = """
kind = "frame-fastening"
id = "bolts"
holds = "block"
"""

UPPER = """
kind = "valve-seat"
id = "seat-upper"
material = "known-iron"
pressed_into = "block"
in_bore = "upper"
outside_diameter = "163.8 mm"
bore = "152 mm"
length = "30 mm"
entering = "pressed cold"
entered_from = "chamber"
"""

LOWER = """
kind = "valve-seat"
id = "seat-lower"
material = "known-iron"
pressed_into = "block"
in_bore = "lower"
outside_diameter = "160.2 mm"
bore = "142 mm"
length = "30 mm"
entering = "pressed cold"
entered_from = "chamber"
"""

EXHAUST = """
kind = "valve-seat"
id = "seat-exhaust"
material = "known-iron"
pressed_into = "block"
in_bore = "exhaust"
outside_diameter = "200.2 mm"
bore = "180 mm"
length = "30 mm"
entering = "pressed cold"
entered_from = "cylinder"
"""

VALVE = """
kind = "poppet-valve"
id = "valve"
material = "known-steel"
beats = 2
outside_diameter = "164 mm"
wall = "2.4 mm"
height = "82 mm"
beat_distance = "72 mm"
spindle_bore = "16 mm"
retained = "cage"
[upper_beat]
seat = "seat-upper"
[lower_beat]
seat = "seat-lower"
seat_diameter = "143 mm"
contact_width = "2 mm"
seat_angle = "60 °"
rim_diameter = "149 mm"
"""

SPINDLE = """
kind = "valve-spindle"
id = "spindle"
moves = "valve"
diameter = "22 mm"
guide_bore = "22.05 mm"
seal_diameter = "20 mm"
heated_length = "330 mm"
enters_from = "valve side"
collar_diameter = "21 mm"
valve_end_diameter = "15 mm"
gear_end_diameter = "18 mm"
"""

SPRING = """
kind = "compression-spring"
id = "spring"
closes = "valve"
mean_diameter = "50 mm"
wire = "8 mm"
housing = "60 mm"
free_length = "140 mm"
tool_height = "150 mm"
plate_depth = "10 mm"
"""

CAGE = """
kind = "valve-cage"
id = "cage"
surrounds = "valve"
outside_diameter = "220 mm"
opening = "12 mm"
"""

OVER = """
kind = "chamber-cover"
id = "cover-over"
closes = "block"
over = "valve"
bore = "230 mm"
outside_diameter = "320 mm"
central_hole = "40 mm"
"""

KEEPER = """
kind = "retaining-ring"
id = "keeper"
retains = "seat-upper"
fastened = "screwed in"
outside_diameter = "200 mm"
bore = "160 mm"
thread_bore = "180 mm"
"""

LINER = """
kind = "cylinder-liner"
id = "liner"
material = "known-iron"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
outside_diameter = "560.3 mm"
last_bore = "506 mm"
mouth_diameter = "508 mm"
free_end_diameter = "559 mm"
retained_by = "collar clamped by cover"
entered = "heated block"
block_heated_to = "160 °C"
[collar]
end = "front"
diameter = "619 mm"
[ports.front]
matches = "front"
height = "28 mm"
width = "300 mm"
"""

PISTON = """
kind = "piston"
id = "piston"
runs_in = "liner"
diameter = "497 mm"
[grooves.front]
takes = "ring"
[fastening]
by = "nut"
"""

RING = """
kind = "piston-ring"
id = "ring"
runs_in = "liner"
material = "ring-iron"
thickness = "16 mm"
gap = "3 mm"
free_gap = "50 mm"
wall_pressure = "0.04 MPa"
"""

ROD = """
kind = "piston-rod"
id = "rod"
carries = "piston"
diameter = "90 mm"
[sections.nut]
form = "thread"
at = "piston end"
thread = "M85x4"
[sections.flange]
form = "shoulder"
at = "crosshead end"
diameter = "88 mm"
larger_diameter = "140 mm"
"""

BOX = """
kind = "stuffing-box"
id = "box"
seals = "rod"
in_cover = "cover-back"
outside_diameter = "149 mm"
bore = "130 mm"
neck_bush = "90.6 mm"
gland_bore = "91 mm"
"""

GLAND = """
kind = "gland"
id = "gland"
of = "box"
rod = "90 mm"
box = "130 mm"
"""

CROSSHEAD = """
kind = "crosshead"
id = "crosshead"
on_rod = "rod"
slipper_width = "240 mm"
"""

FRONT = """
kind = "cylinder-cover"
id = "cover-front"
closes = "block"
of_end = "front"
outside_diameter = "800 mm"
central_hole = "0 mm"
spigot_diameter = "618.5 mm"
spigot_enters = "recess of the collar"
"""

BACK = """
kind = "cylinder-cover"
id = "cover-back"
closes = "block"
of_end = "back"
outside_diameter = "750 mm"
central_hole = "150 mm"
spigot_diameter = "499.5 mm"
spigot_enters = "bore of the liner"
"""

STUDS = """
kind = "bolted-joint"
id = "studs-{held}"
holds = "{held}"
screwed_into = "block"
pressure_part = true
fastener = "stud"
thread = "M24"
circle = "690 mm"
hole = "26 mm"
to_wall = "30 mm"
"""

CAMBOX = """
kind = "cam-box"
id = "cambox"
mounted_on = "block"
datum_length = "180 mm"
withdrawn = "sideways"
width = "300 mm"
height = "250 mm"
opening_width = "320 mm"
opening_height = "260 mm"
bearing_bore = "120 mm"
tappet_bore = "30 mm"
lid_length = "200 mm"
lid_width = "60 mm"
"""

TAPPET = """
kind = "tappet"
id = "tappet"
works = "spindle"
carried_in = "cambox"
stem_diameter = "29.9 mm"
follower = "roller"
follower_radius = "20 mm"
guide_length = "100 mm"
overhang = "24 mm"
"""

CAM = """
kind = "cam"
id = "cam"
lifts = "tappet"
turns_on = "shaft"
base_radius = "50 mm"
lift = "15 mm"
ramp_height = "1 mm"
width = "40 mm"
"""

SHAFT = """
kind = "shaft"
id = "shaft"
diameter = "60 mm"
greatest_diameter = "70 mm"
"""

PIPE = """
kind = "steam-pipe"
id = "pipe"
joined_to = "block"
outside_diameter = "168 mm"
collar_diameter = "190 mm"
faces_gap = "1994 mm"
faces_length = "1940.5 mm"
drawn_back = "60 mm"
"""

FLANGE = """
kind = "pipe-flange"
id = "flange"
of = "pipe"
outside_diameter = "300 mm"
bore = "172 mm"
held = "loose behind a collar"
"""

LENS = """
kind = "lens-joint"
id = "lens"
of = "pipe"
thickness = "50 mm"
"""

LAGGING = """
kind = "lagging"
id = "lagging"
covers = "pipe"
inside_diameter = "168 mm"
thickness = "70 mm"
room_behind = "80 mm"
"""

LAGGING_COVER = """
kind = "lagging"
id = "lagging-cover"
covers = "cover-back"
thickness = "70 mm"
height = "500 mm"
room_behind = "80 mm"
"""

#: The steps in an order that can be done.
STEPS = (
    *("seat-lower", "seat-upper", "seat-exhaust", "keeper", "valve", "cage", "cover-over"),
    *("liner", "bolts", "studs-cover-front", "studs-cover-back", "cover-back", "box", "gland"),
    *("rod", "ring", "piston", "cover-front", "crosshead"),
    *("cambox", "tappet", "cam", "shaft", "lens", "flange", "pipe", "lagging", "lagging-cover"),
)

OVERHAULS = """
[overhauls.rings]
parts = ["ring"]
takes_down = ["piston", "cover-front"]
[overhauls.valve]
parts = ["seat-lower", "seat-upper", "valve", "spring"]
takes_down = ["cage", "keeper", "cover-over"]
[overhauls.exhaust]
parts = ["seat-exhaust"]
takes_down = ["liner", "piston", "cover-front"]
[overhauls.liner]
parts = ["liner"]
takes_down = ["piston", "cover-front"]
[overhauls.gear]
parts = ["cambox"]
takes_down = ["shaft", "cam", "tappet"]
[overhauls.box]
parts = ["box"]
takes_down = ["gland", "piston", "cover-front", "crosshead"]
"""


def assembly(steps: tuple[str, ...] = STEPS, overhauls: str = OVERHAULS) -> str:
    """A spec of the order of assembly."""
    listed = ", ".join(f'"{step}"' for step in steps)
    return f'kind = "assembly"\nid = "assembly"\nof = "block"\nsteps = [{listed}]\n{overhauls}'


FILES = {
    "block.toml": BLOCK,
    "face.toml": FACE,
    "bolts.toml": BOLTS,
    "seat-upper.toml": UPPER,
    "seat-lower.toml": LOWER,
    "seat-exhaust.toml": EXHAUST,
    "valve.toml": VALVE,
    "spindle.toml": SPINDLE,
    "spring.toml": SPRING,
    "cage.toml": CAGE,
    "cover-over.toml": OVER,
    "keeper.toml": KEEPER,
    "liner.toml": LINER,
    "piston.toml": PISTON,
    "ring.toml": RING,
    "rod.toml": ROD,
    "box.toml": BOX,
    "gland.toml": GLAND,
    "crosshead.toml": CROSSHEAD,
    "cover-front.toml": FRONT,
    "cover-back.toml": BACK,
    "studs-cover-front.toml": STUDS.format(held="cover-front"),
    "studs-cover-back.toml": STUDS.format(held="cover-back"),
    "studs-gland.toml": STUDS.format(held="gland"),
    "cambox.toml": CAMBOX,
    "tappet.toml": TAPPET,
    "cam.toml": CAM,
    "shaft.toml": SHAFT,
    "pipe.toml": PIPE,
    "flange.toml": FLANGE,
    "lens.toml": LENS,
    "lagging.toml": LAGGING,
    "lagging-cover.toml": LAGGING_COVER,
    "assembly.toml": assembly(),
    "metals.toml": METALS,
}


def with_links(*parts: str) -> set[str]:
    """Some parts, and all that they are linked to: what a small part of the engine needs to be read."""
    found: set[str] = set()
    waiting = list(parts)
    while waiting:
        part = waiting.pop()
        if part not in found:
            found.add(part)
            linked = re.findall(r'= "([a-z-]+)"', FILES[f"{part}.toml"])
            waiting += [one for one in linked if f"{one}.toml" in FILES and one != part]
    return found


def write(
    workshop: DesignFolder, *changes: tuple[str, str, str], stage: str = "draft", only: Collection[str] = ()
) -> DesignFolder:
    """The small engine, or ``only`` some parts, with some passages changed (part, old, new), at a stage."""
    files = changed_files(FILES, *((f"{part}.toml", old, new) for part, old, new in changes))
    chosen = {name: text for name, text in files.items() if not only or name.removesuffix(".toml") in only}
    return workshop.write(
        {**chosen, "metals.toml": METALS}, settings=WITH_METALS.replace('"draft"', f'"{stage}"')
    )
