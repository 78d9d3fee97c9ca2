from .both_ends import (
    CylinderCycle as CylinderCycle,
    working_cylinder as working_cylinder,
)
from .cycles import (
    Cycle as Cycle,
    cycle_of as cycle_of,
)
from .ends import (
    CylinderEnd as CylinderEnd,
    Running as Running,
    Supply as Supply,
    Valve as Valve,
    Walls as Walls,
)
from .figures import (
    ChartPoint as ChartPoint,
    SpeedPoint as SpeedPoint,
    circle_of_events as circle_of_events,
    indicator_card as indicator_card,
    over_speed as over_speed,
    tenths_of_stroke as tenths_of_stroke,
    theoretical_card as theoretical_card,
    valve_chart as valve_chart,
)
from .power import (
    indicated_power as indicated_power,
    kilograms_per_kilowatt_hour as kilograms_per_kilowatt_hour,
    mean_pressure_of_work as mean_pressure_of_work,
    pounds_per_horsepower_hour as pounds_per_horsepower_hour,
    steam_flow as steam_flow,
)
from .walls import (
    balanced_cycle as balanced_cycle,
)
