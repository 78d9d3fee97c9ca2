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
    inner_thread_bending_factor as inner_thread_bending_factor,
    internal_shear_area as internal_shear_area,
    nut_widening_factor as nut_widening_factor,
    outer_thread_bending_factor as outer_thread_bending_factor,
    shear_strength as shear_strength,
    shear_strength_ratio as shear_strength_ratio,
    stripping_load as stripping_load,
    stripping_load_with_factors as stripping_load_with_factors,
    thread_strength_ratio as thread_strength_ratio,
)
