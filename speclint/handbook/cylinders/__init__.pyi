from .thick import (
    BORESI as BORESI,
    TIMOSHENKO as TIMOSHENKO,
    bore_hoop_stress as bore_hoop_stress,
    bore_hoop_stress_between_pressures as bore_hoop_stress_between_pressures,
    length_without_backing as length_without_backing,
    minimum_wall as minimum_wall,
    outside_growth as outside_growth,
    outside_of_wall as outside_of_wall,
    pressure_blown_off as pressure_blown_off,
    relief_accumulation as relief_accumulation,
)
