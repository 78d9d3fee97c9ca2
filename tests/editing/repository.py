"""A block with its liner, for tests of what an editor is shown."""

from __future__ import annotations

SETTINGS = '[works]\nstage = "draft"\n'
BLOCK = """\
kind = "cylinder-block"
id = "block-left"
title = "Cylinder block, left"

[bores.main]
diameter = "580 mm H7"

[bores.steam-chest]
diameter = "250 mm H8"
"""
LINER = """\
kind = "cylinder-liner"
id = "liner-left"
housed_in = "block-left"
in_bore = "main"
bore = "500 mm H8"
outside_diameter = "580 mm s6"
last_bore = "509 mm"
length = "900 mm"

[issued]
"""
LINER = LINER.replace("\n[issued]\n", "")
FILES = {"block.toml": BLOCK, "liner.toml": LINER}
