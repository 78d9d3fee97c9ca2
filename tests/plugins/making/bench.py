"""A small block with a liner and two seats, made in the right order, and words of its list to move about."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed_files, expect_finding
from tests.plugins.known_metals import METALS, WITH_METALS

#: The steps of the weldment, and those of the block after them.
WELDMENT_STEPS = (
    *("open vents", "weld", "weld lugs and bosses", "test welds", "weld ribs and covers"),
    *("stress relieve", "test welds by ultrasound", "rough machine"),
)
BLOCK_STEPS = (
    *("heat block", "press liners", "press seats", "press guides", "match ports", "finish bore"),
    *("chamfer ports", "hone", "ream guides", "finish seats in line", "face pads", "measure pads"),
    *("grind last link", "tap holes", "set studs", "fit covers", "hydraulic test", "fit gear"),
    *("lap valves", "set tappets", "grind caps", "measure cold clearance", "paint", "lift in"),
    *("bolt pads", "measure growth room", "fit pipes", "steam test", "retighten hot", "lag"),
)

#: What the block's making states beside its steps.
LAST_WELD = 'last_weld = "before stress relief"\n'

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
construction = "fabricated"
test_pressure = "30 bar gauge"
design_temperature = "400 °C"
heated_to = "{heated}"
[bores.main]
diameter = "560 mm"
[seat_bores.upper]
diameter = "170 mm"
[inspection_points]
welding = "hold"
pressing = "witness"
pressure_test = "hold"
lift_in = "witness"
[welding]
heat_treatment = "stress relieved"
"""

WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.chest]
[joints.seam]
[cavities.saddle]
[treatment]
temperature = "570 °C"
before_finishing = true
"""

LINER = """
kind = "cylinder-liner"
id = "liner"
material = "known-iron"
housed_in = "block"
in_bore = "main"
outside_diameter = "560.4 mm"
entered = "heated block"
block_heated_to = "150 °C"
finish_bored_after = true
hardness = "200 HB"
[inspection_points]
pressing = "witness"
[making]
steps = ["cast", "stress relieve", "rough machine", "measure hardness", "finish outside"]
as_blank = ["outside as cast"]
[making.details."rough machine"]
datum = "outside as cast"
cuts = ["bore", "ends"]
needs = ["stress relieve"]
[making.details."finish outside"]
datum = "bore"
cuts = ["outside"]
"""

SEAT = """
kind = "valve-seat"
id = "seat"
material = "known-iron"
pressed_into = "block"
in_bore = "upper"
outside_diameter = "170.1 mm"
entering = "block heated"
block_heated_to = "130 °C"
"""

COVER = """
kind = "cylinder-cover"
id = "cover"
closes = "block"
"""

STUDS = """
kind = "bolted-joint"
id = "studs"
holds = "cover"
screwed_into = "block"
fastener = "stud"
"""

CASTING = """
kind = "casting"
id = "casting"
becomes = "piston"
[making]
steps = ["cast", "weld repair", "stress relieve"]
"""

ACCESS = """
kind = "access-plan"
id = "access"
serves = "block"
[seats.seat]
lapped_in_place = true
"""

REST = {
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\n[upper_beat]\nseat = "seat"\n',
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\nmoves = "valve"\nguide_held = "pressed in"\n',
    "box.toml": 'kind = "cam-box"\nid = "box"\nmounted_on = "block"\n',
    "pipe.toml": 'kind = "steam-pipe"\nid = "pipe"\njoined_to = "block"\n',
    "lagging.toml": 'kind = "lagging"\nid = "lagging"\ncovers = "cover"\n',
    "bolts.toml": 'kind = "frame-fastening"\nid = "bolts"\nholds = "block"\n',
    "piston.toml": 'kind = "piston"\nid = "piston"\n',
    "plan.toml": 'kind = "lifting-plan"\nid = "plan"\nlifts = "block"\n[points.one]\nform = "lug"\n'
    '[points.two]\nform = "eye bolt"\n',
    "access.toml": ACCESS,
    "casting.toml": CASTING,
}


def cast_as(becomes: str, *steps: str) -> tuple[str, str, str]:
    """What the casting becomes, and its steps."""
    now = CASTING.partition("becomes")[2]
    words = ", ".join(f'"{step}"' for step in steps)
    return ("casting", now, f' = "{becomes}"\n[making]\nsteps = [{words}]\n')


def listed(steps: Sequence[str], more: str = "") -> str:
    """The table of a making."""
    words = ", ".join(f'"{step}"' for step in steps)
    return f"\n[making]\nsteps = [{words}]\n{more}"


def moved(steps: Sequence[str], step: str, behind: str = "") -> tuple[str, ...]:
    """The steps with one of them behind another; taken out where that is not named."""
    left = [one for one in steps if one != step]
    if behind:
        left.insert(left.index(behind) + 1, step)
    return tuple(left)


def write(
    workshop: DesignFolder,
    *changes: tuple[str, str, str],
    welded: Sequence[str] = WELDMENT_STEPS,
    block: Sequence[str] = BLOCK_STEPS,
    more: str = LAST_WELD,
    heated: str = "150 °C",
    stage: str = "draft",
) -> DesignFolder:
    """The small block with other steps, or with some passages changed (part, old, new)."""
    files = {
        "block.toml": BLOCK.format(heated=heated) + (listed(block, more) if block else ""),
        "weldment.toml": WELDMENT + (listed(welded) if welded else ""),
        "liner.toml": LINER,
        "seat.toml": SEAT,
        "cover.toml": COVER,
        "studs.toml": STUDS,
        "metals.toml": METALS,
        **REST,
    }
    files = changed_files(files, *((f"{part}.toml", old, new) for part, old, new in changes))
    return workshop.write(files, settings=WITH_METALS.replace('"draft"', f'"{stage}"'))


def told(check: Check, says: str = "") -> None:
    """A finding as a draft has it: an observation."""
    expect_finding(check, grade=Grade.OBSERVATION, says=says)
