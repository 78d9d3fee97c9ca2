from .laws import (
    NORTON as NORTON,
    cam_law as cam_law,
)
from .lift_tables import (
    LiftTable as LiftTable,
)
from .profiles import (
    CamMotion as CamMotion,
    CamProfile as CamProfile,
    Flank as Flank,
    Follower as Follower,
    Ramp as Ramp,
    follower_at as follower_at,
)
from .slider_crank import (
    crank_radius as crank_radius,
    inertia_force as inertia_force,
    mean_piston_speed as mean_piston_speed,
    piston_acceleration as piston_acceleration,
    piston_speed as piston_speed,
    piston_travel as piston_travel,
    revolutions as revolutions,
    rod_angle as rod_angle,
    side_thrust as side_thrust,
)
