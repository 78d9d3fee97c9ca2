from . import (
    circular as circular,
    flat_covers as flat_covers,
    rings as rings,
)
from .circular import (
    TIMOSHENKO_PLATES as TIMOSHENKO_PLATES,
)
from .panels import (
    panel_stress as panel_stress,
    panel_stress_factor as panel_stress_factor,
    pressure_across as pressure_across,
)
