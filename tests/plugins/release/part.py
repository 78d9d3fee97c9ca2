"""A cover and a ring for tests: the one holds pressure, the other says nothing of it."""

from __future__ import annotations

from speclint.testing import changed

COVER = """
kind = "cylinder-cover"
id = "cover"
title = "Front cover"
drawing = "X-101"
revision = "A"
material = "plate-P265GH"
prepared_by = "A. Render"
checked_by = "M. Coyle"
pressure_part = true
safety_part = true
duty = "duty"
design_pressure = "17 bar gauge"
design_temperature = "370 °C"
test_pressure = "28 bar gauge"
inspection_document = "3.1"
examination = "ultrasonic, plate edges"
competent_body = "the inspecting engineer"
thickness = "50 mm"
"""

DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
live_pressure = "16 bar gauge"
safety_valve_pressure = "16.5 bar gauge"
exhaust_pressure = "0.3 bar gauge"
live_temperature = "260 °C"
exhaust_temperature = "140 °C"
[cases.starting.temperatures]
cylinder-cover = "180..200 °C"
bolted-joint = "150..180 °C"
[cases.running]
live_pressure = "15 bar gauge"
safety_valve_pressure = "16.5 bar gauge"
exhaust_pressure = "0.4 bar gauge"
live_temperature = "350 °C ±10"
exhaust_temperature = "160 °C"
[cases.running.temperatures]
cylinder-cover = "230..260 °C"
bolted-joint = "200..220 °C"
"""

RING = """
kind = "piston-ring"
id = "ring"
title = "Ring"
drawing = "X-102"
revision = "B"
material = "ring-iron"
prepared_by = "A. Render"
safety_part = false
duty = "duty"
"""

SETTINGS = """
[works]
stage = "{stage}"
[local_codes]
pressure = {pressure}
railway = {railway}
"""


def settings(stage: str = "for-review", pressure: str = '["P"]', railway: str = '["R"]') -> str:
    """speclint.toml at a stage, with local codes."""
    return SETTINGS.format(stage=stage, pressure=pressure, railway=railway)


def files(*changes: tuple[str, str], add: str = "") -> dict[str, str]:
    """The cover with some lines changed, its duty, and the ring."""
    return {"cover.toml": changed(COVER, *changes, add=add), "duty.toml": DUTY, "ring.toml": RING}
