"""A seat in a block for tests, of metals in round figures; and what the checks found.

Expansion of the iron 11.5e-6 at 120 °C, 12.1e-6 at 180 °C; of the steel 12.0e-6 at 120 °C, 12.5e-6 at 220 °C;
all ± 0.3e-6/K.
ISO 286-2 at 170 mm (from memory): H7 0/+40 µm, s6 +108/+133 µm, u6 +210/+235 µm.
"""

from __future__ import annotations

from speclint.testing import DesignFolder, changed_files
from tests.plugins.known_metals import METALS, WITH_METALS

__all__ = ["METALS", "WITH_METALS", "write"]


def _case(name: str, out: str, ring: str) -> str:
    return f'[cases.{name}.temperatures]\ncylinder-block = "{out} °C"\nvalve-seat = "{ring} °C"\n'


DUTY = 'kind = "duty"\nid = "duty"\n' + "".join(
    _case(*one)
    for one in (
        ("cold", "20", "20"),
        ("warming", "20", "120"),
        ("starting", "120", "120"),
        ("running", "120", "120"),
        ("drifting", "120", "120"),
        ("standing-hot", "120", "120"),
        ("cooling", "220", "180"),
        ("water", "120", "120"),
    )
)
BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
duty = "duty"
[seat_bores.inlet]
diameter = "170 mm H7"
wall = "22 mm"
"""
SEAT = """
kind = "valve-seat"
id = "seat"
material = "known-iron"
duty = "duty"
outside_diameter = "170 mm s6"
bore = "152 mm"
length = "28 mm"
"""
FIT = """
kind = "fit"
id = "fit"
duty = "duty"
hole = { of = "block", dimension = "seat_bores.inlet.diameter" }
wall = { of = "block", dimension = "seat_bores.inlet.wall" }
shaft = { of = "seat", dimension = "outside_diameter" }
bore = { of = "seat", dimension = "bore" }
length = { of = "seat", dimension = "length" }
intent = "interference"
entered = "pressed"
press_force = "18 kN"
axial_load = "1 kN"
friction = "0.10..0.14"
hole_roughness = "3.2 µm"
shaft_roughness = "3.2 µm"
"""
FILES = {
    "speclint.toml": WITH_METALS,
    "metals.toml": METALS,
    "duty.toml": DUTY,
    "block.toml": BLOCK,
    "seat.toml": SEAT,
    "fit.toml": FIT,
}


def write(workshop: DesignFolder, *changes: tuple[str, str, str], **files: str) -> DesignFolder:
    """The bench with some passages changed (file, old, new), and more files by name without their ending."""
    texts = {**FILES, **{f"{name}.toml": text for name, text in files.items()}}
    return workshop.write(changed_files(texts, *changes, everywhere=True), settings=WITH_METALS)


def shaft(size: str) -> tuple[str, str, str]:
    """The seat with another outside."""
    return "seat.toml", "170 mm s6", size


def in_fit(old: str, new: str) -> tuple[str, str, str]:
    """A change of the fit."""
    return "fit.toml", old, new
