"""Materials of steam engines, with every figure as a curve with tolerance, range and source.

>>> from speclint.handbook.materials import material
>>> iron = material("grey-iron-250")
>>> iron.tensile_strength(at=293.15, thickness=0.030).low / 1e6
195.0

A works' own materials are read from TOML in the format of the shipped files (handbook/data/materials)::

    [sources]
    CERT = { work = "founder's certificate 1207", edition = "2026" }

    [liner-iron]
    title = "liner iron, second melt"
    family = "grey-iron"
    standard = "works specification 12"
    allowable = "grey-iron"                     # the rule for pressure parts, where there is one
    like = "grey-iron-250"                      # takes from it what is not stated here
    hardness = { value = 215, low = 205, high = 225, unit = "HB", source = "CERT" }

    [liner-iron.modulus]                        # linear between the temperatures, nothing beyond them
    degC = [20, 200, 400]
    value = [105, 99, 88]
    tolerance = 5                               # or tolerance_percent, or low and high, or bound = "minimum"
    unit = "GPa"
    source = "CERT"                             # or a table { work, edition, place, memory }, or "common practice"
    place = "page 2"

    [liner-iron.tensile-strength]               # by wall: over 5 up to 20 mm, over 20 up to 40 mm
    degC = [20, 350]
    over_mm = 5
    rows = [[20, 225], [40, 195]]
    bound = "minimum"
    unit = "MPa"
    source = "CERT"
"""

from __future__ import annotations

from speclint.handbook.materials.library import material, names, read_materials
from speclint.handbook.materials.material import Material
from speclint.handbook.materials.problems import MaterialsError

__all__ = ["Material", "MaterialsError", "material", "names", "read_materials"]
