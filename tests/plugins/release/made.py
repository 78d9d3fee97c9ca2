"""Parts as made for tests: a welded cover, its studs and a casting, each with all that its spec asks for."""

from __future__ import annotations

from speclint.checking import Check
from speclint.testing import DesignFolder, changed
from tests.plugins.release.part import files, settings

MADE = """
kind = "made-part"
id = "cover-7"
of = "cover"
serial = "7"
made_to = "A"
maker = "an invented works"
[measured.thickness]
values = ["50.02 mm"]
uncertainty = "4 µm"
date = "2026-05-31"
[certificate]
type = "3.1"
heat = "H-3312"
material = "plate-P265GH"
proof_stress = "281 MPa"
tensile_strength = "447 MPa"
carbon_equivalent = "0.41 %"
[certificate.analysis]
C = "0.16 %"
Mn = "1.2 %"
Cr = "0.08 %"
Mo = "0.02 %"
V = "0.005 %"
Ni = "0.15 %"
Cu = "0.15 %"
[examinations.edges]
method = "ultrasonic"
result = "passed"
[hydraulic_tests.first]
pressure = "28 bar gauge"
held = "1800 s"
result = "passed"
"""
DRAWN = ('thickness = "50 mm"', 'thickness = "50 mm ±0.05"')
STUDS = """
kind = "bolted-joint"
id = "studs"
holds = "cover"
pressure_part = true
drawing = "X-103"
[tightening]
method = "torque wrench"
torque = "400 N·m ±20"
"""
TIGHTENED = """
kind = "made-part"
id = "studs-1"
of = "studs"
[tightenings.first]
torque = "385..405 N·m"
"""


def recorded() -> dict[str, str]:
    """A design in which every record that a rule asks for is there."""
    casting = 'kind = "casting"\nid = "casting"\n[making]\nsteps = ["cast", "stress relieve"]\n'
    cast = (
        'kind = "made-part"\nid = "casting-1"\nof = "casting"\n'
        '[heat_treatments.first]\ntreatment = "stress relieved"\nchart = "F-1"\nresult = "passed"\n'
    )
    return {
        **files(DRAWN, add="[welding]\nwelded = true\n"),
        "made.toml": f'{MADE}[welds.all]\nprocedure = "WPS-1"\nwelder = "mark 7"\nresult = "passed"\n',
        "studs.toml": f'{STUDS}angle = "30 °"\npreload = "80 kN"\n',
        "studs-1.toml": f'{TIGHTENED}angle = "30 °"\npreload = "82 kN"\n',
        "casting.toml": casting,
        "casting-1.toml": cast,
    }


def made(workshop: DesignFolder, rule: str, *changes: tuple[str, str], stage: str = "for-review") -> Check:
    text = {**files(DRAWN), "cover-7.toml": changed(MADE, *changes)}
    return workshop.write(text, settings=settings(stage)).only(rule, "cover-7")
