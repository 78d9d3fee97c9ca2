"""Materials of steam engines, with every figure as a curve with tolerance, range and source.

>>> from speclint.handbook.materials import material
>>> iron = material("grey-iron-250")
>>> iron.tensile_strength(at=293.15, thickness=0.030).low / 1e6
195.0
"""

from __future__ import annotations

from speclint.handbook.materials.library import material, names, read_materials
from speclint.handbook.materials.material import Material
from speclint.handbook.materials.problems import MaterialsError

__all__ = ["Material", "MaterialsError", "material", "names", "read_materials"]
