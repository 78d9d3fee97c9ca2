from . import (
    circular as circular,
    flat_covers as flat_covers,
    rings as rings,
)
from .panels import (
    PANEL_TABLES as PANEL_TABLES,
    panel_stress as panel_stress,
    panel_stress_factor as panel_stress_factor,
)
