"""Openings for tests: an inlet in a round end of the chest, ports round the barrel, a row of holes, one in a flat wall.

The steel of the bench allows 133.33 MPa at 220 °C; live steam stands at 16.6 bar gauge at starting.
"""

from __future__ import annotations

from speclint.testing import DesignFolder, changed
from tests.plugins.fabrication import bench
from tests.plugins.known_metals import WITH_METALS

#: Rules of openings and of their welds.
FATIGUE = "block.weld-fatigue"

REPLACED, FLAT, APART, PIECE = (
    "opening.metal-replaced",
    "opening.in-flat-wall",
    "opening.apart",
    "opening.port-a-part",
)

#: A round end of the chest, of the steel of the bench, 9 mm thick of which 1 mm may waste.
DRUM = """
[plates.drum]
material = "known-plate"
thickness = "9 mm"
rolled_thickness = "9 mm"
serves_as = "shell"
inside_diameter = "500 mm"
meets_steam = true
corrosion_allowance = "1 mm"
z_quality = "none"
"""

INLET = """
[openings.inlet]
place = "chest inlet"
carries = "live steam"
plate = "drum"
set = "set in"
diameter = "300 mm"
wall = "11 mm"
projects_out = "200 mm"
to_edge = "100 mm"
material = "known-plate"
"""


def with_inlet(
    workshop: DesignFolder,
    *changes: tuple[str, str],
    drum: tuple[str, str] = ("", ""),
    opening: str = INLET,
    more: str = "",
    test: str = "18 bar",
) -> DesignFolder:
    """A block with an inlet in a round end of its chest, some passages of it changed."""
    text = opening
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    files = {
        **bench.FILES,
        "duty.toml": bench.DUTY.replace('"18 bar gauge"', f'"{test} gauge"'),
        "block.toml": bench.BLOCK + text,
        "weldment.toml": bench.WELDMENT + (DRUM.replace(*drum) if drum[0] else DRUM) + more,
    }
    return workshop.write(files, settings=WITH_METALS)


#: Two ports round the barrel.
PORTS = """
[bores.main]
diameter = "578 mm"
plate = "barrel"
length = "900 mm"
[ports.front]
of_end = "front"
from_seat = "150 mm"
height = "40 mm"
width = "400 mm"
[ports.back]
of_end = "back"
from_seat = "750 mm"
height = "40 mm"
width = "400 mm"
[ends.front]
of_bore = "main"
relief_set = "1 bar gauge"
"""

BARREL = DRUM.replace("plates.drum", "plates.barrel").replace('inside_diameter = "500 mm"\n', "")


def with_ports(workshop: DesignFolder, *changes: tuple[str, str], thickness: str = "38.5 mm") -> DesignFolder:
    """A block with two ports round its barrel."""
    text = PORTS.replace("[ends.front]", '[ends.front]\nside = "front"')
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    block = bench.BLOCK.replace("[ends.back]", '[ends.back]\nof_bore = "main"') + text
    barrel = BARREL.replace('"9 mm"', f'"{thickness}"')
    files = {**bench.FILES, "block.toml": block, "weldment.toml": bench.WELDMENT + barrel}
    return workshop.write(files, settings=WITH_METALS)


#: A row of four holes.
ROW = """
[openings.drains]
plate = "drum"
set = "drilled"
diameter = "60 mm"
count = 4
to_next = "160 mm"
to_edge = "100 mm"
carries = "live steam"
"""


def single_hole(name: str, diameter: str, to_next: str) -> str:
    """One hole of another size in the place of the row."""
    return changed(
        ROW,
        ("openings.drains", f"openings.{name}"),
        ('"60 mm"', f'"{diameter}"'),
        ("count = 4\n", ""),
        ('"160 mm"', f'"{to_next}"'),
    )


#: A hole in a flat wall.
IN_WALL = INLET.replace('plate = "drum"', 'flat_wall = "barrel"').replace('set = "set in"', 'set = "drilled"')
