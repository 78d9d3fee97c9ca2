from .fatigue import (
    FATIGUE_DIAGRAMS as FATIGUE_DIAGRAMS,
    fatigue_line_slope as fatigue_line_slope,
    stroke_factor as stroke_factor,
    stroke_strength as stroke_strength,
)
from .helical import (
    EN_13906_1 as EN_13906_1,
    bergstraesser_factor as bergstraesser_factor,
    coil_mass as coil_mass,
    corrected_shear_stress as corrected_shear_stress,
    deflection as deflection,
    en_13906_1_clause as en_13906_1_clause,
    length_at_lift as length_at_lift,
    mean_from_inside as mean_from_inside,
    mean_from_outside as mean_from_outside,
    natural_frequency as natural_frequency,
    shear_stress as shear_stress,
    spring_index as spring_index,
    spring_load as spring_load,
    spring_load_at_lift as spring_load_at_lift,
    spring_rate as spring_rate,
)
from .lengths import (
    buckling_deflection as buckling_deflection,
    clearance_multiplier as clearance_multiplier,
    clearance_sum_cold_coiled as clearance_sum_cold_coiled,
    clearance_sum_hot_coiled as clearance_sum_hot_coiled,
    coil_pitch as coil_pitch,
    dead_coils as dead_coils,
    outside_growth_at_solid as outside_growth_at_solid,
    seating_coefficient as seating_coefficient,
    solid_coils as solid_coils,
    solid_length as solid_length,
)
from .relaxation import (
    RELAXATION_DIAGRAMS as RELAXATION_DIAGRAMS,
    SMI as SMI,
    grade_of_wire as grade_of_wire,
    highest_wire_temperature as highest_wire_temperature,
    relaxation_loss as relaxation_loss,
)
from .tolerances import (
    EN_15800 as EN_15800,
    load_deviation as load_deviation,
    load_tolerance as load_tolerance,
    quality_factor as quality_factor,
)
