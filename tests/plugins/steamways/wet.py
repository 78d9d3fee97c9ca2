"""A block of 2200 kg that is warmed in an hour by steam of 3 bar gauge, with its chest, its two ends and their drains.

By iapws at 4.01325 bar: boils at 143.7 °C, heat of condensation 2133.0 kJ/kg; 2200 × 490 × 123.7/2.133e6 = 62.5 kg, at
first ln 20 × 62.5/60 = 3.12 kg a minute, 4.69 with the margin of 1.5.
"""

from __future__ import annotations

from speclint.testing import changed
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.steamways.exhaust import STEEL

DUTY = """
kind = "duty"
id = "duty"
warming = { time = "1 h" }
[cases.warming]
live_pressure = "3 bar gauge"
ambient_temperature = "20 °C"
[cases.standing-hot.temperatures]
saddle = "150 °C"
steam-passage = "150 °C"
"""
_DRAIN = 'at = "0 mm"\nalong = "{along}"\nacross = "0 mm"\nbore = "10 mm"\ninto = "{into}"\nrises = "0 mm"\n'


def _drain(table: str, into: str, along: str = "0 mm") -> str:
    return f"[{table}]\n" + _DRAIN.format(into=into, along=along)


BLOCK = (
    """
kind = "cylinder-block"
id = "block"
material = "steel-45"
duty = "duty"
[bores.main]
diameter = "500 mm"
[drive]
stroke = "660 mm"
[ends.front]
of_bore = "main"
side = "front"
clearance = "8 mm"
passage_volume = "9500 cm³"
[ends.back]
of_bore = "main"
side = "back"
clearance = "8 mm"
passage_volume = "9500 cm³"
"""
    + _drain("ends.front.drains.cock", "cock pipe front")
    + _drain("ends.back.drains.cock", "cock pipe back")
)
WELDMENT = 'kind = "weldment"\nid = "weldment"\nmakes = "block"\nmass = "2200 kg"\n'
CHEST = """
kind = "steam-passage"
id = "chest"
material = "steel-45"
in_block = "block"
place = "chest"
carries = "live steam"
low_point = true
[floor]
length = "400 mm"
width = "200 mm"
fall = "0.02"
towards = "front"
""" + _drain("drains.low", "open air")
TEXTS = {"duty": DUTY, "block": BLOCK, "weldment": WELDMENT, "chest": CHEST}


def files(part: str = "", *changes: tuple[str, str], **more: str) -> dict[str, str]:
    """The block and its chest, some passages of one spec changed."""
    texts = {**TEXTS, **more}
    if part:
        texts[part] = changed(texts[part], *changes)
    found = {f"{name}.toml": text for name, text in texts.items()}
    return {**found, "metals.toml": METALS + STEEL, "speclint.toml": WITH_METALS}
