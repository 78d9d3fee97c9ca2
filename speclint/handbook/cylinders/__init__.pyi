from .thick import (
    BORESI as BORESI,
    TIMOSHENKO as TIMOSHENKO,
    bore_hoop_stress as bore_hoop_stress,
    bore_hoop_stress_between_pressures as bore_hoop_stress_between_pressures,
    minimum_wall as minimum_wall,
    outside_growth as outside_growth,
    outside_of_wall as outside_of_wall,
)
