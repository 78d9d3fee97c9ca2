"""Makes design repositories of any size: cylinder liners in blocks, each pair with its own duty figures."""

from __future__ import annotations

from pathlib import Path

SETTINGS = """
[works]
name = "a made repository"
stage = "draft"
[local_codes]
pressure = ["the invented pressure code"]
railway = ["the invented railway code"]
"""

DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
live_pressure = "16 bar gauge"
safety_valve_pressure = "16.6 bar gauge"
[cases.starting.temperatures]
compression-spring = "60..80 °C"
[cases.running]
live_pressure = "15.2 bar gauge ±0.3"
rotational_speed = "364 rev/min"
[cases.running.temperatures]
compression-spring = "80..110 °C"
"""

SPRING = """
kind = "compression-spring"
id = "spring-{number}"
title = "Valve spring {number}"
drawing = "CN-{number}"
revision = "A"
prepared_by = "A. Render"
checked_by = "M. Coyle"
material = "wire-oil-tempered-VDSiCr"
duty = "duty"
wire = "{wire} mm ±0.05"
wire_grade = "VDSiCr"
mean_diameter = "{mean} mm ±0.4"
working_coils = "6.5"
total_coils = "8.5"
process = "cold"
ends = "ground"
loading = "alternating"
free_length = "{free} mm ±1.5"
open_length = "{open} mm ±0.5"
"""


def make(folder: Path, count: int) -> None:
    """Write a repository of so many specs, the duty among them."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "speclint.toml").write_text(SETTINGS, encoding="utf-8")
    (folder / "duty.toml").write_text(DUTY, encoding="utf-8")
    for number in range(count - 1):
        free = 140 + number % 11
        sizes = {"wire": 6 + number % 5, "mean": 48 + number % 7, "free": free, "open": free - 30}
        (folder / f"spring-{number}.toml").write_text(SPRING.format(number=number, **sizes), encoding="utf-8")
