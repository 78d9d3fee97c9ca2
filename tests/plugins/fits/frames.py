"""A block locked at two pads of one frame, as worked by hand.

Pads 620 mm apart on webs of 1.5e6 N/mm; block 9000 mm² of 195 GPa at 160 °C and 12.3e-6/K, frame 28 × 600 mm of 207 GPa
at 70 °C and 11.9e-6/K: Δ = 0.620 × (12.3 × 140 − 11.9 × 50) = 0.699 mm; k_b 2.831e6, k_f 5.609e6, k 0.5362e6 N/mm;
F = 374.7 kN. The thrust of 326 kN is half each pad's.
"""

from __future__ import annotations

import math

from speclint.testing import SETTINGS

_ROW = 'degC = [-80, 420], value = {value}, unit = "{unit}", tolerance = 0, source = "common practice"'


def _metal(name: str, E: str, α: str, R: str) -> str:
    rows = (
        ("modulus", E, "GPa"),
        ("expansion", α, "1e-6/K"),
        ("proof-stress", R, "MPa"),
        ("tensile-strength", "500", "MPa"),
    )
    listed = "\n".join(f"{key} = {{ {_ROW.format(value=value, unit=unit)} }}" for key, value, unit in rows)
    return f'[{name}]\ntitle = "plate"\nfamily = "carbon-steel"\nstandard = "invented for tests"\n{listed}\n'


METALS = _metal("block-steel", "195", "12.3", "314") + _metal("frame-steel", "207", "11.9", "314")
#: The pressure at which a bore of 500 mm takes 326 kN.
PRESSURE = 326e3 / (math.pi * 0.25**2) / 1e5
_CASES = ("warming", "starting", "running", "drifting", "standing-hot", "cooling", "water")
DUTY = 'kind = "duty"\nid = "duty"\n' + "".join(
    f'[cases.{name}]\nlive_pressure = "{PRESSURE:.6f} bar gauge"\nsafety_valve_pressure = "{PRESSURE:.6f} bar gauge"\n'
    f'[cases.{name}.temperatures]\nblock-mean = "{block} °C"\nframe-mean = "{frame} °C"\n'
    'cylinder-block = "200 °C"\nlocating-face = "40 °C"\npads = "40 °C"\n'
    for name in _CASES
    for block, frame in [(90, 25) if name == "warming" else (160, 70)]
)
_PAD = """
[pads.{name}]
at = "{at} mm"
width = "220.03 mm"
height = "300 mm"
takes = ["lengthwise", {takes}]
stiffness = "1.5e6 N/mm"
web = {{ section = "12000 mm²", arm = "80 mm", section_modulus = "600000 mm³" }}
flatness = "0 mm"
squareness = "0 mm"
square_to_axis = "0.02 mm"
roughness = "3 µm"
carry_height = "0 mm"
"""
BLOCK = (
    """
kind = "cylinder-block"
id = "block"
material = "block-steel"
duty = "duty"
scheme = "two locked"
fixed_point = "back"
section = "9000 mm²"
offset = "0 mm"
section_modulus = "1000000 mm³"
mean_temperature = "block-mean"
weight_at = "270 mm"
[bores.main]
diameter = "500 mm"
[ends.front]
of_bore = "main"
relief_set = "10 bar gauge"
[drive]
rod_length = "1120 mm"
stroke = "660 mm"
"""
    + _PAD.format(name="back", at=0, takes='"crosswise", "weight"')
    + _PAD.format(name="front", at=620, takes='"weight"')
)
FRAME = """
kind = "frame"
id = "frame"
material = "frame-steel"
thickness = "28 mm"
depth = "600 mm"
offset = "60 mm"
mean_temperature = "frame-mean"
"""
WELDMENT = 'kind = "weldment"\nid = "weldment"\nmakes = "block"\nmass = "2200 kg"\n'


def _face(name: str) -> str:
    return f"""
kind = "locating-face"
id = "face-{name}"
material = "frame-steel"
locks = "block"
pad = "{name}"
in_frame = "frame"
pad_temperature = "pads"
slot = "220 mm"
bearing_height = "300 mm"
bearing_depth = "28 mm"
friction = "0.10..0.15"
entering_force = "500 kN"
flatness = "0 mm"
squareness = "0 mm"
roughness = "3 µm"
chamfer = "1 mm"
"""


def _fastening(name: str) -> str:
    return f"""
kind = "frame-fastening"
id = "fastening-{name}"
holds = "block"
pad = "{name}"
carried_mass = "2200 kg"
shock = "0"
thrust_taken_by = "lugs"
drawn_out = {{ by = "jacks", force = "400 kN", on = "front cover studs", face = "4000 mm²" }}
"""


TEXTS = {
    "duty": DUTY,
    "block": BLOCK,
    "frame": FRAME,
    "weldment": WELDMENT,
    "face-back": _face("back"),
    "face-front": _face("front"),
    "fastening-back": _fastening("back"),
    "fastening-front": _fastening("front"),
}


def files(*changes: tuple[str, str], part: str = "block", **texts: str) -> dict[str, str]:
    """All specs, every place of some passages of one of them changed."""
    made = {**TEXTS, **texts}
    for old, new in changes:
        assert old in made[part], old
        made[part] = made[part].replace(old, new)
    found = {f"{name}.toml": text for name, text in made.items()}
    metals = METALS + _metal("hot-steel", "195", "12.5", "314")
    return {**found, "metals.toml": metals, "speclint.toml": 'materials = ["metals.toml"]\n' + SETTINGS}


def solid(webs: str = "10e6 N/mm") -> dict[str, str]:
    """Pads 900 mm apart on a hotter block, solid or on webs."""
    made = files(('at = "620 mm"', 'at = "900 mm"'), ("1.5e6 N/mm", webs), ("block-steel", "hot-steel"))
    made["duty.toml"] = made["duty.toml"].replace('block-mean = "160 °C"', 'block-mean = "200 °C"')
    return made
