"""A block, a liner and a ring for tests, and the same ring straight on the bore of another block."""

from __future__ import annotations

from speclint.testing import changed

DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
live_pressure = "15.6 bar gauge"
safety_valve_pressure = "16 bar gauge"
live_temperature = "300 °C"
[cases.starting.temperatures]
cylinder-block = "200 °C"
cylinder-liner = "220 °C"
piston-ring = "220 °C"
bolted-joint = "180 °C"
compression-spring = "80 °C"
[cases.running]
live_pressure = "15 bar gauge"
safety_valve_pressure = "16 bar gauge"
live_temperature = "380 °C"
[cases.running.temperatures]
cylinder-block = "250..260 °C"
cylinder-liner = "270..290 °C"
piston-ring = "290..300 °C"
bolted-joint = "220 °C"
compression-spring = "100 °C"
[cases.drifting]
live_pressure = "0.1 bar gauge"
live_temperature = "300 °C"
[cases.drifting.temperatures]
cylinder-block = "240 °C"
cylinder-liner = "280 °C"
piston-ring = "305 °C"
bolted-joint = "210 °C"
compression-spring = "100 °C"
"""

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "structural-S355"
duty = "duty"
construction = "fabricated"
pressure_part = true
[bores.main]
diameter = "560 mm"
[lubrication]
lubricant = "cylinder oil"
"""

LINER = """
kind = "cylinder-liner"
id = "liner"
material = "phosphoric-cylinder-iron"
housed_in = "block"
in_bore = "main"
working_from = "88 mm"
working_to = "807 mm"
fit_length = "800 mm"
[lubrication]
lubricant = "cylinder oil"
"""

RING = """
kind = "piston-ring"
id = "ring"
material = "ring-iron"
runs_in = "liner"
"""


def files(**changes: tuple[tuple[str, str], ...]) -> dict[str, str]:
    """The four files; ``block=(("old", "new"),)`` changes lines of one."""
    found = {"duty": DUTY, "block": BLOCK, "liner": LINER, "ring": RING}
    return {f"{name}.toml": changed(text, *changes.get(name, ()), of=name) for name, text in found.items()}
