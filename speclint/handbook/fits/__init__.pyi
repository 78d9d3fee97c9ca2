from . import (
    chains as chains,
)
from .chains import (
    MONTE_CARLO_CITES as MONTE_CARLO_CITES,
    STATISTICAL_CITES as STATISTICAL_CITES,
    WORST_CASE_CITES as WORST_CASE_CITES,
    last_link as last_link,
)
from .compound_cylinders import (
    COMPOUND as COMPOUND,
    shell_pressure as shell_pressure,
    supported_bore_hoop_stress as supported_bore_hoop_stress,
)
from .hot_sizes import (
    DIN_7190 as DIN_7190,
    DRAWING_TEMPERATURE as DRAWING_TEMPERATURE,
    cooling_for_entry as cooling_for_entry,
    growth_of_length as growth_of_length,
    hot_interference as hot_interference,
    relative_growth as relative_growth,
    shrinkage_available as shrinkage_available,
    shrinkage_to_enter as shrinkage_to_enter,
    size_when_hot as size_when_hot,
)
from .limits_and_fits import (
    choice as choice,
    diametral_clearance as diametral_clearance,
    gap_of_interference as gap_of_interference,
    greatest_clearance as greatest_clearance,
    greatest_interference as greatest_interference,
    interference as interference,
    is_preferred_fit as is_preferred_fit,
    kind_of_fit as kind_of_fit,
    least_clearance as least_clearance,
    least_interference as least_interference,
    room_in_hole as room_in_hole,
    share_of_diameter as share_of_diameter,
    share_of_size as share_of_size,
)
from .press_fits import (
    DIN_7190_2001 as DIN_7190_2001,
    DIN_7190_SMOOTHING as DIN_7190_SMOOTHING,
    SHRINK_FIT as SHRINK_FIT,
    axial_grip as axial_grip,
    bore_closing as bore_closing,
    contact_pressure as contact_pressure,
    inner_hoop_stress as inner_hoop_stress,
    interference_after_light_smoothing as interference_after_light_smoothing,
    interference_after_smoothing as interference_after_smoothing,
    outer_hoop_stress as outer_hoop_stress,
    outer_tresca_stress as outer_tresca_stress,
    pressing_interference as pressing_interference,
    size_of_stress as size_of_stress,
    torque_grip as torque_grip,
)
