"""Metals with figures that hand working can rely on, whatever the handbook learns."""

from __future__ import annotations

from speclint.testing import SETTINGS

#: Settings of a repository that has the metals below.
WITH_METALS = 'materials = ["metals.toml"]\n' + SETTINGS

METALS = """
[known-wire]
title = "spring wire"
family = "spring-wire"
standard = "invented for tests"
modulus = { degC = [20, 220], value = [206, 196], unit = "GPa", tolerance_percent = 2, source = "common practice" }
density = { value = 7850, unit = "kg/m³", tolerance = 0, source = "common practice" }
temperature-limit = { spring = { value = 200, unit = "°C", bound = "maximum", source = "common practice" } }
[known-wire.shear-modulus]
degC = [20, 220]
value = [79.5, 75.5]
unit = "GPa"
tolerance_percent = 2
source = "common practice"
[known-wire.wire-strength]
over_mm = 1
range_rows = [[8.0, 1710, 1810], [10.0, 1660, 1760]]
unit = "MPa"
source = "common practice"

[known-iron]
title = "grey iron"
family = "grey-iron"
standard = "invented for tests"
poisson = { value = 0.26, unit = "1", tolerance = 0.02, source = "common practice" }
density = { value = 7200, unit = "kg/m³", tolerance = 0, source = "common practice" }
tensile-strength = { degC = [-80, 350], value = 195, unit = "MPa", tolerance = 0, source = "common practice" }
temperature-limit = { running-part = { value = 350, unit = "°C", bound = "maximum", source = "common practice" } }
hardness = { value = 205, low = 180, high = 230, unit = "HB", source = "common practice" }
[known-iron.compressive-strength]
degC = [-80, 350]
value = 840
unit = "MPa"
tolerance_percent = 10
source = "common practice"
[known-iron.modulus]
degC = [-80, 20, 220]
value = [110, 110, 100]
low = [100, 100, 90]
high = [120, 120, 110]
unit = "GPa"
source = "common practice"
[[known-iron.expansion]]
degC = [20, 220]
value = [10.5, 12.5]
unit = "1e-6/K"
tolerance = 0.3
source = "common practice"
[[known-iron.expansion]]
degC = [-100, 20]
value = 10.0
unit = "1e-6/K"
tolerance = 0.3
source = "common practice"

[known-steel]
title = "steel"
family = "carbon-steel"
standard = "invented for tests"
poisson = { value = 0.30, unit = "1", tolerance = 0.01, source = "common practice" }
density = { value = 7850, unit = "kg/m³", tolerance = 0, source = "common practice" }
modulus = { degC = [20, 420], value = [200, 180], unit = "GPa", tolerance_percent = 3, source = "common practice" }
expansion = { degC = [20, 420], value = [11.5, 13.5], unit = "1e-6/K", tolerance = 0.3, source = "common practice" }
proof-stress = { degC = [20, 420], value = [240, 160], unit = "MPa", tolerance = 0, source = "common practice" }
tensile-strength = { degC = [20, 420], value = [400, 400], unit = "MPa", tolerance = 0, source = "common practice" }
temperature-limit = { running-part = { value = 400, unit = "°C", bound = "maximum", source = "common practice" } }
hardness = { value = 130, low = 120, high = 140, unit = "HB", source = "common practice" }
"""

FILES = {"speclint.toml": WITH_METALS, "metals.toml": METALS}
