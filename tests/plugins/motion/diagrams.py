"""The engine of the worked cases of the cycle with a train from piston to crank pin, run at 20 % and 180 rev/min.

It starts, drifts and holds water with next to no steam, and its relief valves are set as low, so that running governs.
"""

from __future__ import annotations

from pathlib import Path

from speclint.checking import Check
from speclint.testing import DesignFolder, changed
from tests.plugins.events.worked_engine import worked_engine
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.motion.train import CRANK_PIN, CROSSHEAD, FORGING, PISTON, RING, ROD

_OF_CASE = 'live_temperature = "390 °C"\n'
#: Cases that no rule governs by: next to no steam in them, as none stands in the engine that starts.
_OTHERS = """
[cases.drifting]
live_pressure = "0 bar gauge"
rotational_speed = "10 rev/min"
[cases.water]
safety_valve_pressure = "2 bar absolute"
cylinder_pressure = "1 bar gauge"
[cases.water.temperatures]
piston-rod = "100 °C"
"""


def files(safety: str = "16.2 bar absolute", *gone: str) -> dict[str, str]:
    """Its files, the safety valves of the running engine set so; some left out."""
    found = worked_engine()
    cold, running = found["duty.toml"].split("[cases.running]")
    found["duty.toml"] = (
        cold.replace(_OF_CASE, _OF_CASE + 'safety_valve_pressure = "2 bar absolute"\n')
        + "[cases.running]"
        + running.replace(_OF_CASE, f'{_OF_CASE}safety_valve_pressure = "{safety}"\n')
    ).replace('cam-box = "20 °C"', 'cam-box = "20 °C"\npiston-rod = "100 °C"')
    found["duty.toml"] += _OTHERS
    found["block.toml"] = found["block.toml"].replace('"20 bar gauge"', '"1 bar gauge"')
    found["liner.toml"] = changed(found["liner.toml"], add='last_bore = "500 mm"\n')
    found["metals.toml"] = METALS + FORGING
    parts = {"piston": PISTON, "ring": RING, "rod": ROD, "crosshead": CROSSHEAD, "crank-pin": CRANK_PIN}
    found |= {f"{name}.toml": text for name, text in parts.items()}
    return {name: text for name, text in found.items() if name not in gone}


def checked(folder: Path, rule: str, component: str, given: dict[str, str]) -> Check:
    """The check of a rule on a part of the train."""
    return DesignFolder(folder).write(given, settings=WITH_METALS).only(rule, component)
