from . import (
    contact as contact,
    shafts as shafts,
)
from .beams import (
    bending_stress as bending_stress,
    cantilever_moment as cantilever_moment,
    fixed_deflection as fixed_deflection,
    fixed_moment_uniform as fixed_moment_uniform,
    simple_deflection as simple_deflection,
    simple_moment_uniform as simple_moment_uniform,
)
from .columns import (
    buckling_factor as buckling_factor,
    critical_load as critical_load,
    crushing_strength as crushing_strength,
    end_fixity as end_fixity,
    rankine_constant as rankine_constant,
    rankine_gordon_load as rankine_gordon_load,
    slenderness as slenderness,
)
from .combined_stress import (
    direct_stress as direct_stress,
    equivalent_stress as equivalent_stress,
    greatest_shear as greatest_shear,
    range_of_stress as range_of_stress,
)
from .contact import (
    contact_modulus as contact_modulus,
    line_depth_of_shear as line_depth_of_shear,
    line_pressure as line_pressure,
    line_shakedown_pressure as line_shakedown_pressure,
    projected_pressure as projected_pressure,
    relative_radius as relative_radius,
    slipper_pressure as slipper_pressure,
)
from .continuous_beams import (
    TIMOSHENKO as TIMOSHENKO,
    moment_for_load as moment_for_load,
    moment_with_load as moment_with_load,
    reaction_with_load as reaction_with_load,
    share_of_bearing as share_of_bearing,
)
from .loads import (
    load_ratio as load_ratio,
    load_with_factor as load_with_factor,
    sum_of_loads as sum_of_loads,
)
from .sections import (
    i_section_second_moment as i_section_second_moment,
    outside_of_box as outside_of_box,
    radius_of_gyration as radius_of_gyration,
    rectangle_area as rectangle_area,
    rectangle_second_moment as rectangle_second_moment,
    round_area as round_area,
    round_second_moment as round_second_moment,
    section_modulus as section_modulus,
    share_of_bore as share_of_bore,
    size_ratio as size_ratio,
    tube_area as tube_area,
    tube_polar_moment as tube_polar_moment,
    tube_second_moment as tube_second_moment,
    tube_wall as tube_wall,
)
from .shafts import (
    MOORE as MOORE,
    keyway_strength_factor as keyway_strength_factor,
    keyway_twist_factor as keyway_twist_factor,
    torsion_shear as torsion_shear,
    twist as twist,
)
from .shear_beneath import line_shear_below as line_shear_below
from .stress_concentration import (
    eye_on_its_pin as eye_on_its_pin,
    fatigue_notch_factor as fatigue_notch_factor,
    hole_in_strip as hole_in_strip,
    notch_sensitivity as notch_sensitivity,
    shoulder_in_bending as shoulder_in_bending,
    shoulder_in_tension as shoulder_in_tension,
    thread_notch_factor as thread_notch_factor,
)
