"""A belt of exhaust steam beside a live chest, as worked by hand: which walls stand between them, and how large.

Chest 0.045 m², 0.95 m, 0.4 m at 15.2 bar gauge and 390 °C; belt 0.038 m², 0.8 m, 0.6 m at 0.35 bar gauge and 170 °C;
1.7 kg/s; steel of 45 W/(m·K). By iapws: h_l = 150.87 × 1.6077 = 242.5, h_e = 144.50 × 1.4646 = 211.6 W/(m²·K); specific
heats 2172.9 and 1997.9 J/(kg·K).
"""

from __future__ import annotations

from speclint.testing import changed
from tests.plugins.steamways.way import files as ways

STEEL = """
[steel-45]
title = "plate"
family = "carbon-steel"
standard = "invented for tests"
poisson = { value = 0.3, unit = "1", tolerance = 0, source = "common practice" }
conductivity = { degC = [20, 420], value = 45, unit = "W/(m·K)", tolerance = 0, source = "common practice" }
modulus = { degC = [20, 420], value = 200, unit = "GPa", tolerance = 0, source = "common practice" }
specific-heat = { degC = [20, 420], value = 490, unit = "J/(kg·K)", tolerance = 0, source = "common practice" }
[iron-45]
title = "iron"
family = "grey-iron"
standard = "invented for tests"
poisson = { value = 0.25, unit = "1", tolerance = 0, source = "common practice" }
conductivity = { degC = [20, 420], value = 45, unit = "W/(m·K)", tolerance = 0, source = "common practice" }
modulus = { degC = [20, 420], value = 100, unit = "GPa", tolerance = 0, source = "common practice" }
"""

#: Two walls of 16 mm with 12 mm of air between; its gap is 37.5 times as high as wide, so that its air stands still.
WALL = """
kind = "partition"
id = "wall"
material = "steel-45"
live_side = "chest"
exhaust_side = "belt"
build = "two walls"
thickness = "16 mm"
gap = "12 mm"
gap_holds = "air"
bridges = "0"
area = "1.5 m²"
short_side = "450 mm"
long_side = "900 mm"
edges = "clamped"
"""

#: The face of the belt to the chest, and that of the chest which answers it.
FACES = """
end_area = "1 m²"
[faces.chest]
to = "chest"
area = "1.5 m²"
wall = "wall"
"""
ANSWER = """
end_area = "0 m²"
[faces.belt]
to = "belt"
area = "1.5 m²"
wall = "wall"
"""


def files(*changes: tuple[str, str], area: str = "1.5 m²", faces: str = FACES) -> dict[str, str]:
    """Chest and belt with the wall between them, some of its passages changed; its area is that of both faces too."""
    found = ways(wall=changed(WALL, *changes).replace("1.5 m²", area))
    for name, old, new in (
        ("chest", '"40000 mm²"', '"45000 mm²"'),
        ("chest", '"0.9 m"', '"0.95 m"'),
        ("chest", 'length = "0.3 m"', 'length = "0.4 m"'),
        ("belt", '"36000 mm²"', '"38000 mm²"'),
        ("belt", '"0.76 m"', '"0.8 m"'),
        ("belt", 'length = "0.5 m"', 'length = "0.6 m"'),
        ("duty", '"15 bar gauge"', '"15.2 bar gauge"'),
    ):
        assert old in found[f"{name}.toml"]
        found[f"{name}.toml"] = found[f"{name}.toml"].replace(old, new)
    found["belt.toml"] += faces.replace("1.5 m²", area)
    found["chest.toml"] += ANSWER.replace("1.5 m²", area)
    found["metals.toml"] += STEEL
    return found
