from .cylinder_steam import (
    ZEUNER as ZEUNER,
    pressure_of_energy as pressure_of_energy,
    swelling as swelling,
    temperature_and_exponent as temperature_and_exponent,
)
from .double_beat import (
    HEYWOOD as HEYWOOD,
    beat_area as beat_area,
    double_beat_flow_area as double_beat_flow_area,
    lift_for_area as lift_for_area,
    seat_bearing_stress as seat_bearing_stress,
    single_beat_flow_area as single_beat_flow_area,
    throat_area as throat_area,
    unbalanced_load as unbalanced_load,
)
from .dry_steam import (
    saturation_temperature as saturation_temperature,
    steam_conductivity as steam_conductivity,
    steam_density as steam_density,
    steam_enthalpy as steam_enthalpy,
    steam_heat_capacity as steam_heat_capacity,
    steam_prandtl_number as steam_prandtl_number,
    steam_speed_of_sound as steam_speed_of_sound,
    steam_viscosity as steam_viscosity,
    superheat as superheat,
)
from .fittings import (
    BORDA as BORDA,
    CRANE as CRANE,
    bend_loss as bend_loss,
    contraction_loss as contraction_loss,
    enlargement_loss as enlargement_loss,
    mitre_loss as mitre_loss,
)
from .flow import (
    CENGEL_FLUIDS as CENGEL_FLUIDS,
    COLEBROOK as COLEBROOK,
    excess_pressure as excess_pressure,
    fitting_pressure_loss as fitting_pressure_loss,
    friction_factor as friction_factor,
    friction_pressure_loss as friction_pressure_loss,
    hydraulic_diameter as hydraulic_diameter,
    jet_momentum as jet_momentum,
    mach_number as mach_number,
    mean_speed as mean_speed,
    reynolds_number as reynolds_number,
    rough_friction_factor as rough_friction_factor,
    share_of_pressure as share_of_pressure,
    speed_ratio as speed_ratio,
)
from .if97 import (
    IF97 as IF97,
)
from .nozzles import (
    HUGHES as HUGHES,
    compressed_temperature as compressed_temperature,
    napier_superheated_flow as napier_superheated_flow,
    nozzle_area as nozzle_area,
    nozzle_mass_flow as nozzle_mass_flow,
)
from .pipe_flexibility import (
    FLEXIBILITY as FLEXIBILITY,
    RANGE as RANGE,
    allowable_stress_range as allowable_stress_range,
    cycle_factor as cycle_factor,
    end_thrust as end_thrust,
    flexibility_used as flexibility_used,
    movement_to_take_up as movement_to_take_up,
    pipe_growth as pipe_growth,
    restrained_stress as restrained_stress,
    rise_from_cold as rise_from_cold,
)
from .pipes import (
    B31_1 as B31_1,
    BENT as BENT,
    EN_13480_3 as EN_13480_3,
    MILL as MILL,
    STRAIGHT as STRAIGHT,
    bend_factor_inside as bend_factor_inside,
    bend_factor_outside as bend_factor_outside,
    bend_wall as bend_wall,
    bend_wall_of_european_code as bend_wall_of_european_code,
    least_wall as least_wall,
    pipe_wall as pipe_wall,
    pipe_wall_of_european_code as pipe_wall_of_european_code,
    thick_pipe_factor_y as thick_pipe_factor_y,
    wall_factor_y as wall_factor_y,
)
from .states import (
    SteamState as SteamState,
    density_at_enthalpy as density_at_enthalpy,
    entropy_at_enthalpy as entropy_at_enthalpy,
    saturated_state as saturated_state,
    state_at_enthalpy as state_at_enthalpy,
    state_at_entropy as state_at_entropy,
    state_at_temperature as state_at_temperature,
    temperature_at_enthalpy as temperature_at_enthalpy,
    wet_steam_enthalpy as wet_steam_enthalpy,
)
from .steam_nozzles import (
    choked_steam_flux as choked_steam_flux,
    expanded_speed as expanded_speed,
    steam_critical_pressure_ratio as steam_critical_pressure_ratio,
    steam_nozzle_flux as steam_nozzle_flux,
)
