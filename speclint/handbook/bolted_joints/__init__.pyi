from . import (
    fatigue as fatigue,
    gasket_materials as gasket_materials,
    gaskets as gaskets,
    layout as layout,
    loads as loads,
    scatter as scatter,
    stiffness as stiffness,
    stud_stress as stud_stress,
    tightening as tightening,
)
from .gaskets import (
    EN_13445_3 as EN_13445_3,
)
from .layout import (
    spanner_pitch as spanner_pitch,
)
from .loads import (
    differential_growth as differential_growth,
    pressure_load as pressure_load,
)
from .stiffness import (
    frustum_stiffness as frustum_stiffness,
)
from .stripping import (
    FED_STD_H28 as FED_STD_H28,
    external_shear_area as external_shear_area,
    internal_shear_area as internal_shear_area,
    shear_strength as shear_strength,
    shear_strength_ratio as shear_strength_ratio,
    stripping_load as stripping_load,
)
