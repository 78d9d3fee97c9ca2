from . import (
    circular as circular,
    flat_covers as flat_covers,
    rings as rings,
)
from .panels import (
    PANEL_TABLES as PANEL_TABLES,
    panel_deflection as panel_deflection,
    panel_deflection_factor as panel_deflection_factor,
    panel_stress as panel_stress,
    panel_stress_factor as panel_stress_factor,
    wasted_thickness as wasted_thickness,
)
from .rolled import (
    rolled_thicknesses as rolled_thicknesses,
)
