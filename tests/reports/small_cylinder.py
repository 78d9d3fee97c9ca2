"""One cylinder with its covers, the studs of one of them and its piston, in round figures, for drawings by hand.

The block is that of the bench of liners: bored 560 mm, 902 mm long from the collar's seat, with a wall of 40 mm and a
recess of 600 mm, 25 mm deep. In it a liner 500/560.3 mm, 900 mm long, with a collar of 599 by 25.1 mm at the front and
a port from 40 to 80 mm behind the collar's seat. The front cover reaches 35 mm into the bore, the back one to 860 mm.
"""

from __future__ import annotations

from speclint.checking import Assessment, Processes, assess
from speclint.testing import DesignFolder, changed_files
from tests.plugins.liners.bench import bench

COVER = """
kind = "cylinder-cover"
id = "cover-{end}"
closes = "block"
of_end = "{end}"
thickness = "{thick} mm"
flange_thickness = "{flange} mm"
outside_diameter = "700 mm"
"""

STUDS = """
kind = "bolted-joint"
id = "studs"
holds = "cover-front"
thread = "M24"
circle = "650 mm"
hole = "26 mm"
edge_distance = "32 mm"
[gasket]
outside = "636 mm"
inside = "610 mm"
thickness = "1.2 mm"
[tapped]
depth = "55 mm"
[nut]
engagement = "20 mm"
face = "33.2 mm"
"""

PISTON = """
kind = "piston"
id = "piston"
runs_in = "liner"
diameter = "497 mm"
length = "150 mm"
[grooves.front]
at = "40 mm"
depth = "15.5 mm"
width = "16 mm"
"""


PADS = """
[pads.front]
at = "600 mm"
width = "180 mm"
height = "30 mm"
[pads.back]
at = "0 mm"
width = "220 mm"
takes = ["lengthwise"]
"""


def cylinder(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Assessment:
    """The design with some passages changed, read and not checked."""
    files = bench(("liner.toml", 'free_end_stop = "shoulder"', 'free_end_stop = "cover"')) | {
        "cover-front.toml": COVER.format(end="front", thick=54, flange=45),
        "cover-back.toml": COVER.format(end="back", thick=30, flange=36),
        "studs.toml": STUDS,
        "piston.toml": PISTON,
    }
    workshop.write(changed_files(files, *changes))
    found = assess([workshop.root], workshop.loaded, (), processes=Processes(0))
    assert not found.complaints
    return found
