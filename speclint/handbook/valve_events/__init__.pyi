from .areas import (
    PORT_COEFFICIENT as PORT_COEFFICIENT,
    VALVE_COEFFICIENT as VALVE_COEFFICIENT,
    Beat as Beat,
    ValvePassage as ValvePassage,
    angle_area as angle_area,
    coefficient_of_loss as coefficient_of_loss,
    effective_area as effective_area,
    last_fifth as last_fifth,
    mean_area as mean_area,
)
from .diagrams import (
    UNWIN as UNWIN,
    diagram_factor as diagram_factor,
    theoretical_mean_pressure as theoretical_mean_pressure,
    theoretical_pressure as theoretical_pressure,
)
from .events import (
    Events as Events,
    Positions as Positions,
    events_of as events_of,
    positions_of as positions_of,
)
from .trains import (
    ValveTrain as ValveTrain,
    backward_foot as backward_foot,
    ramp_opening_angle as ramp_opening_angle,
    reversed_cam as reversed_cam,
    shift_for_clearance as shift_for_clearance,
)
from .travel import (
    Crank as Crank,
    End as End,
    back_angle as back_angle,
    back_travel as back_travel,
    front_angle as front_angle,
    share_of_stroke as share_of_stroke,
)
from .turning import (
    BALDWIN as BALDWIN,
    JSME as JSME,
    TAYLOR as TAYLOR,
    TurningMoment as TurningMoment,
    WorkingCylinder as WorkingCylinder,
    crank_moment as crank_moment,
    mach_index as mach_index,
    piston_force as piston_force,
    standing_pressure as standing_pressure,
    tractive_effort as tractive_effort,
    tractive_effort_by_the_trade as tractive_effort_by_the_trade,
    turning_moment as turning_moment,
)
