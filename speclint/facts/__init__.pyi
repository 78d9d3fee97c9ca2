from .cylinders import (
    crossheads_on as crossheads_on,
    end_closed_by as end_closed_by,
    ends_of as ends_of,
    liners_of as liners_of,
    pistons_in as pistons_in,
    rods_in as rods_in,
    rods_of as rods_of,
)
from .joints import (
    flange_bolted_to as flange_bolted_to,
    flange_held as flange_held,
    grip_at_ring as grip_at_ring,
    grip_bolted_to as grip_bolted_to,
    grip_drawn as grip_drawn,
    grip_held as grip_held,
    openings as openings,
    pressure_by_part_held as pressure_by_part_held,
    pressure_held as pressure_held,
    pressure_reach as pressure_reach,
)
from .pipes import (
    steam_by_path as steam_by_path,
    steam_carried as steam_carried,
)
