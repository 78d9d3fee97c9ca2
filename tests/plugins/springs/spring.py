"""A sound spring for tests: 8 mm wire on 48 mm, 8 working coils, lengths 140, 118 and 100 mm.

The wire has G = 79.5 GPa ± 2 % at 20 °C and R_m ≥ 1710 MPa. By hand, in N and mm:
R = 79500 × 8⁴/(8 × 48³ × 8) = 46.007 N/mm; with G 2 % high 46.927, with G 2 % low 45.087.
"""

from __future__ import annotations

from speclint.testing import changed
from tests.plugins.known_metals import FILES

SPRING = """
kind = "compression-spring"
id = "spring"
material = "known-wire"
wire_grade = "VDSiCr"
wire = "8 mm"
mean_diameter = "48 mm"
working_coils = "8"
total_coils = "10"
process = "cold"
ends = "ground"
loading = "alternating"
preset = true
shot_peened = true
free_length = "140 mm"
shut_length = "118 mm"
open_length = "100 mm"
"""


def spring(*changes: tuple[str, str], add: str = "") -> dict[str, str]:
    """The file of the spring with some lines changed: pairs of an old passage and a new one."""
    return {**FILES, "spring.toml": changed(SPRING, *changes, add=add)}
