from .concern import (
    holds_pressure as holds_pressure,
    hurts_by_kind as hurts_by_kind,
    is_safety_part as is_safety_part,
    pressure_by_place as pressure_by_place,
)
from .cylinders import (
    crossheads_on as crossheads_on,
    end_closed_by as end_closed_by,
    ends_of as ends_of,
    liner_under as liner_under,
    liners_of as liners_of,
    pistons_in as pistons_in,
    rods_in as rods_in,
    rods_of as rods_of,
)
from .drives import (
    cold_clearance as cold_clearance,
    ends_held as ends_held,
    length_in_compression as length_in_compression,
    mass_moved as mass_moved,
    mass_of_parts as mass_of_parts,
    other_end as other_end,
    pins_of as pins_of,
    reciprocating_mass as reciprocating_mass,
    rod_beyond_piston as rod_beyond_piston,
    rod_diameter as rod_diameter,
    rod_steel as rod_steel,
    rods_drawn as rods_drawn,
    room_at_ends as room_at_ends,
    room_for_strokes as room_for_strokes,
    room_left as room_left,
)
from .fitted_bolts import (
    fits_of_bolts as fits_of_bolts,
    holes_of_bolts as holes_of_bolts,
)
from .frames import (
    bores_on_frame as bores_on_frame,
    face_by_sides as face_by_sides,
    face_of_pad as face_of_pad,
    fastenings_of_pad as fastenings_of_pad,
    less_holes as less_holes,
    less_mass as less_mass,
    mass_drawn as mass_drawn,
    mass_left as mass_left,
    mass_on_frame as mass_on_frame,
    on_other_frames as on_other_frames,
)
from .glands import (
    box_of as box_of,
    packing_in as packing_in,
    rod_in as rod_in,
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
from .vessels import (
    vessel_of as vessel_of,
)
from .walls import (
    plate_of as plate_of,
    thickness_of as thickness_of,
    wall_by_plate as wall_by_plate,
    wall_left as wall_left,
    wall_round as wall_round,
)
from .weights import (
    goes_up as goes_up,
    mass_of_part as mass_of_part,
    mass_of_ring as mass_of_ring,
    mass_together as mass_together,
    mass_weighed as mass_weighed,
    part_weighed as part_weighed,
    parts_named as parts_named,
    share_of_mass as share_of_mass,
)
