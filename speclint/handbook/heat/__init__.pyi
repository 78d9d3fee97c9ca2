from .air import (
    INCROPERA as INCROPERA,
    INCROPERA_EXAMPLE as INCROPERA_EXAMPLE,
    air_at as air_at,
    standard_air_pressure as standard_air_pressure,
)
from .conduction import (
    STEFAN_BOLTZMANN as STEFAN_BOLTZMANN,
    areas_together as areas_together,
    heat_flux as heat_flux,
    hotter as hotter,
    overall_coefficient as overall_coefficient,
    plane_wall_resistance as plane_wall_resistance,
    temperature_rise as temperature_rise,
    tied_temperature as tied_temperature,
)
from .convection import (
    CHURCHILL_CHU as CHURCHILL_CHU,
    GNIELINSKI as GNIELINSKI,
    film_coefficient as film_coefficient,
    gnielinski_nusselt_number as gnielinski_nusselt_number,
    petukhov_friction_factor as petukhov_friction_factor,
    rayleigh_number as rayleigh_number,
)
from .lagging import (
    lagged_pipe_loss as lagged_pipe_loss,
    lagged_pipe_surface_temperature as lagged_pipe_surface_temperature,
    lagged_wall_loss as lagged_wall_loss,
    lagged_wall_surface_temperature as lagged_wall_surface_temperature,
)
from .lubrication import (
    flash_point_margin as flash_point_margin,
)
from .metal import (
    ANNAND as ANNAND,
    CARSLAW as CARSLAW,
    FILM_SCATTER as FILM_SCATTER,
    TemperatureBand as TemperatureBand,
    annand_nusselt_number as annand_nusselt_number,
    face_temperature as face_temperature,
    film_band as film_band,
    stem_temperature as stem_temperature,
    surface_swing as surface_swing,
    warmed_temperature as warmed_temperature,
    washed_temperature as washed_temperature,
)
