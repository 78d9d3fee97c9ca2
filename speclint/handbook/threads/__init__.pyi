from .designations import (
    beside as beside,
    designations as designations,
)
from .engagement import (
    external_stripping_area as external_stripping_area,
    internal_stripping_area as internal_stripping_area,
)
from .geometry import (
    ASME_B1_1 as ASME_B1_1,
    BS_84 as BS_84,
    ISO_273 as ISO_273,
    ISO_724 as ISO_724,
    Thread as Thread,
    clearance_hole as clearance_hole,
    nominal_diameter as nominal_diameter,
    root_area as root_area,
    stress_area as stress_area,
    tensile_stress_area as tensile_stress_area,
    thread as thread,
)
from .limits import (
    ThreadLimits as ThreadLimits,
    least_major_diameter as least_major_diameter,
    limits as limits,
)
