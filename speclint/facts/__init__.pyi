from .access import (
    chambers_of as chambers_of,
    joints_of as joints_of,
    length_drawn_out as length_drawn_out,
    length_over_collar as length_over_collar,
    nuts_of as nuts_of,
    parts_drawn_out as parts_drawn_out,
)
from .axes import (
    axis_by_crank as axis_by_crank,
    axis_of_bore as axis_of_bore,
    nearest_axis as nearest_axis,
)
from .axis_heights import (
    axis_height as axis_height,
    height_of_axis as height_of_axis,
    rods_in_line as rods_in_line,
)
from .balance import (
    Planes as Planes,
    axle_driven_for as axle_driven_for,
    axles_of as axles_of,
    driven_by as driven_by,
    half_of_planes as half_of_planes,
    to_and_fro_of as to_and_fro_of,
    together as together,
    turning_in_planes as turning_in_planes,
    turning_of as turning_of,
    unbalanced_in_planes as unbalanced_in_planes,
)
from .blocks import (
    Way as Way,
    block_of as block_of,
    ways_to_blocks as ways_to_blocks,
)
from .blows import (
    blow as blow,
    estimated_stiffness as estimated_stiffness,
    greater_load as greater_load,
    mass_struck as mass_struck,
    share_of_stiffness as share_of_stiffness,
    struck_load as struck_load,
)
from .box_masses import (
    box_with_gear as box_with_gear,
    plain_outside as plain_outside,
)
from .cage_openings import (
    opening_by_bars as opening_by_bars,
    opening_of_cage as opening_of_cage,
    straight_opening as straight_opening,
)
from .cam_motion import (
    WholeLift as WholeLift,
    motion as motion,
)
from .cam_torques import (
    CRACKED as CRACKED,
    cams_on as cams_on,
    torque_of_cam_alone as torque_of_cam_alone,
    torque_of_shaft as torque_of_shaft,
    torques_needed as torques_needed,
    turning as turning,
)
from .cams_on_shafts import (
    PlacedCam as PlacedCam,
    placed_in_notches as placed_in_notches,
)
from .chains import (
    Acting as Acting,
    gap_of_chain as gap_of_chain,
    links_of as links_of,
    room_of_pad as room_of_pad,
    size_of_link as size_of_link,
    with_link as with_link,
)
from .chamber_covers import (
    bore_under_cover as bore_under_cover,
)
from .clamps import (
    clamp_on_collar as clamp_on_collar,
    left_by_joint as left_by_joint,
    load_of_all as load_of_all,
)
from .concern import (
    holds_pressure as holds_pressure,
    hurts_by_kind as hurts_by_kind,
    is_safety_part as is_safety_part,
    pressure_by_place as pressure_by_place,
)
from .connecting_rods import (
    rod_length as rod_length,
    rod_mass as rod_mass,
    small_end_of as small_end_of,
)
from .cover_holes import (
    hole_through as hole_through,
)
from .cranks import (
    bores_pushing_together as bores_pushing_together,
)
from .cylinder_cycles import (
    CylinderBand as CylinderBand,
    CylinderGiven as CylinderGiven,
    EndGiven as EndGiven,
    ValveGiven as ValveGiven,
    cycles_as_drawn as cycles_as_drawn,
    cycles_to_safety_valves as cycles_to_safety_valves,
    cylinder_given as cylinder_given,
    worked_cycles as worked_cycles,
)
from .cylinder_volume import (
    bore_as_drawn as bore_as_drawn,
    clearance_ratio as clearance_ratio,
    clearance_share as clearance_share,
    greatest_bore as greatest_bore,
    greatest_bore_as_drawn as greatest_bore_as_drawn,
    piston_area as piston_area,
    swept_volume as swept_volume,
)
from .cylinders import (
    bore_closed as bore_closed,
    bore_named as bore_named,
    bore_under as bore_under,
    crossheads_on as crossheads_on,
    end_closed_by as end_closed_by,
    ends_of as ends_of,
    liner_under as liner_under,
    liners_of as liners_of,
    openings_at_end as openings_at_end,
    pistons_in as pistons_in,
    rods_in as rods_in,
    side_closed as side_closed,
)
from .design_stages import (
    graded_as_assembly as graded_as_assembly,
    graded_by_stage as graded_by_stage,
)
from .dividing_walls import (
    Panel as Panel,
    block_of_partition as block_of_partition,
    build_by_walls as build_by_walls,
    build_of as build_of,
    fluids_beside as fluids_beside,
    gap_between as gap_between,
    hollow_of as hollow_of,
    panels_of_division as panels_of_division,
    panels_of_partition as panels_of_partition,
    partitions_in as partitions_in,
    side_by_passage as side_by_passage,
    sides_of_division as sides_of_division,
    walls_of as walls_of,
    weldment_of as weldment_of,
)
from .drains import (
    has_drain_cock as has_drain_cock,
    is_drained as is_drained,
)
from .drawn_out import (
    engaged_length as engaged_length,
    own_length as own_length,
)
from .drives import (
    STIFFEST_ENDS as STIFFEST_ENDS,
    cold_clearance as cold_clearance,
    ends_by_side as ends_by_side,
    ends_held as ends_held,
    greatest_cold_clearance as greatest_cold_clearance,
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
    room_for_strokes as room_for_strokes,
    room_left as room_left,
)
from .end_outsides import (
    covers_on as covers_on,
    diameter_at as diameter_at,
    outermost as outermost,
)
from .engine import (
    bore_of_crank as bore_of_crank,
    connecting_rod_of as connecting_rod_of,
    crank_gear as crank_gear,
    cranks_of as cranks_of,
    engine_of as engine_of,
    new_wheel as new_wheel,
    stroke_of as stroke_of,
    turns_of_crank as turns_of_crank,
    worn_wheel as worn_wheel,
)
from .estimates import (
    estimated_temperature as estimated_temperature,
)
from .exhaust_pressures import (
    greatest_exhaust_pressure as greatest_exhaust_pressure,
)
from .faces import (
    bore_up_to_stop as bore_up_to_stop,
    cover_beyond as cover_beyond,
    face_aimed_at as face_aimed_at,
    face_by_seat as face_by_seat,
    face_forward as face_forward,
    faces_apart as faces_apart,
    middle_of_liner as middle_of_liner,
    places_apart as places_apart,
)
from .firms import (
    is_firm_in as is_firm_in,
)
from .fitted_bolts import (
    fits_of_bolts as fits_of_bolts,
    holes_of_bolts as holes_of_bolts,
)
from .flange_welds import (
    is_welded_to_flange as is_welded_to_flange,
)
from .forks import (
    fork_of as fork_of,
)
from .frames import (
    bores_on_frame as bores_on_frame,
    face_by_sides as face_by_sides,
    face_of_cut_out as face_of_cut_out,
    face_of_pad as face_of_pad,
    fastenings_of_pad as fastenings_of_pad,
    frames_of_pads as frames_of_pads,
    mass_drawn as mass_drawn,
    mass_left as mass_left,
    mass_on_frame as mass_on_frame,
    pads_by_frame as pads_by_frame,
    shock_on_frame as shock_on_frame,
    weldments_unweighed as weldments_unweighed,
)
from .gasket_rings import (
    gasket_ring as gasket_ring,
    mean_diameter as mean_diameter,
)
from .gear import (
    Gear as Gear,
    boxes_of as boxes_of,
    clearance_by_lengths as clearance_by_lengths,
    furthest_lift as furthest_lift,
    gear_of as gear_of,
    greatest_lift as greatest_lift,
    least_lift as least_lift,
    spindles_into as spindles_into,
    tappet_clearances as tappet_clearances,
    tracks_of as tracks_of,
)
from .gear_at_work import (
    EndAtWork as EndAtWork,
    GearAtWork as GearAtWork,
)
from .glands import (
    box_of as box_of,
    fitted_to as fitted_to,
    packing_in as packing_in,
    rod_in as rod_in,
)
from .guided_valves import (
    shift_at_seat as shift_at_seat,
    sink_of_valve as sink_of_valve,
)
from .heating import (
    block_of_ring as block_of_ring,
    block_when_entering as block_when_entering,
    heat_asked_of_block as heat_asked_of_block,
)
from .hot_clearances import (
    WorkingClearances as WorkingClearances,
    clearance_at_work as clearance_at_work,
    growth_since_drawn as growth_since_drawn,
    nominal_ratio as nominal_ratio,
    nominal_temperature as nominal_temperature,
    spindle_length as spindle_length,
    strain_since as strain_since,
    tappet_clearance_hot as tappet_clearance_hot,
    working_clearances as working_clearances,
)
from .jets import (
    jet_speed as jet_speed,
)
from .joint_edges import (
    edge_of_hole as edge_of_hole,
    edges_left as edges_left,
    openings as openings,
)
from .joint_grips import (
    flange_bolted_to as flange_bolted_to,
    flange_held as flange_held,
    grip_bolted_to as grip_bolted_to,
    grip_drawn as grip_drawn,
    grip_held as grip_held,
)
from .joints import (
    circle_of_studs as circle_of_studs,
    metal_tapped as metal_tapped,
    metal_under_hole as metal_under_hole,
    pressure_by_part_held as pressure_by_part_held,
    pressure_held as pressure_held,
    pressure_reach as pressure_reach,
)
from .keyways import keyways_of_no_size as keyways_of_no_size
from .laggings import (
    inside_of_lagging as inside_of_lagging,
)
from .life import (
    distance_of_life as distance_of_life,
    starts_of_life as starts_of_life,
)
from .lifted_masses import (
    mass_lifted as mass_lifted,
    mass_weighed as mass_weighed,
)
from .liner_fits import (
    is_drawn as is_drawn,
    length_of_lands as length_of_lands,
    lengths_of_fit as lengths_of_fit,
)
from .locks import (
    Locked as Locked,
    is_locked as is_locked,
)
from .making import (
    FINISHING as FINISHING,
    Made as Made,
    MakingStep as MakingStep,
    finished_after_relief as finished_after_relief,
    own_steps as own_steps,
    places_of as places_of,
    steps_of as steps_of,
)
from .masses import (
    BySizes as BySizes,
    Weighed as Weighed,
    length_together as length_together,
    mass_by_sizes as mass_by_sizes,
)
from .moving_masses import (
    greatest_mass as greatest_mass,
    weight_of_valve as weight_of_valve,
    weight_shutting as weight_shutting,
)
from .nozzles import (
    back_pressures as back_pressures,
    bores_on as bores_on,
    cylinders_by_engine as cylinders_by_engine,
    cylinders_by_paths as cylinders_by_paths,
    flow_to as flow_to,
    flow_together as flow_together,
    opening_of as opening_of,
)
from .one_piece import two_pieces_by as two_pieces_by
from .pads import (
    locks_block as locks_block,
    taken_by as taken_by,
)
from .passage_steam import (
    steam_in as steam_in,
)
from .people import (
    is_named_in as is_named_in,
    may_be_one_person as may_be_one_person,
    names_another as names_another,
    names_another_person as names_another_person,
    names_no_person as names_no_person,
    names_only_a_role as names_only_a_role,
    people_named as people_named,
)
from .pins import (
    beside_fillet as beside_fillet,
    boss_of_pin as boss_of_pin,
    gap_for_bearing as gap_for_bearing,
    length_in_bosses as length_in_bosses,
    length_of_bearing as length_of_bearing,
    length_of_seat as length_of_seat,
    metal_of_boss as metal_of_boss,
    turning_with as turning_with,
)
from .pipe_movement import (
    blocks_at_ends as blocks_at_ends,
    growth_of_pipe as growth_of_pipe,
    movement_by_blocks as movement_by_blocks,
    movement_in_service as movement_in_service,
    movement_of_pipe as movement_of_pipe,
    openings_of as openings_of,
    swing_needed as swing_needed,
    swing_of_lens as swing_of_lens,
    temperature_of_block as temperature_of_block,
)
from .pipes import (
    steam_carried as steam_carried,
    steams_beside as steams_beside,
)
from .piston_forces import (
    PistonForces as PistonForces,
    forces_of_cycles as forces_of_cycles,
    most_on_piston as most_on_piston,
    piston_forces as piston_forces,
    steam_on_piston as steam_on_piston,
)
from .piston_room import (
    bore_with_direction as bore_with_direction,
    lifts_clear_of_piston as lifts_clear_of_piston,
    room_to_piston as room_to_piston,
    stands_across as stands_across,
)
from .plays import (
    plays_along as plays_along,
    wear_along as wear_along,
    wears_along as wears_along,
)
from .port_sweep import (
    crossed_by_rings as crossed_by_rings,
    edge_of_port as edge_of_port,
    ends_in_order as ends_in_order,
    place_in_bore as place_in_bore,
)
from .port_volumes import (
    all_ports_drawn as all_ports_drawn,
    volume_drawn as volume_drawn,
    volume_of_passages as volume_of_passages,
)
from .ports import (
    areas_of_port as areas_of_port,
    openings_of_port as openings_of_port,
    passages_of_port as passages_of_port,
)
from .pressures import (
    greatest_live_pressure as greatest_live_pressure,
    with_water as with_water,
)
from .ramps import (
    ramp_by_table as ramp_by_table,
    ramp_of as ramp_of,
)
from .retention import (
    cages_round as cages_round,
    clearance_to_cage as clearance_to_cage,
    cover_on_collar as cover_on_collar,
    covers_on_collar as covers_on_collar,
    ends_beyond as ends_beyond,
    joints_of_cover as joints_of_cover,
    retained_by_part as retained_by_part,
    room_at_lift as room_at_lift,
)
from .ring_springs import (
    TRIBOLOGY_HANDBOOK as TRIBOLOGY_HANDBOOK,
    change_of_gap_in_bore as change_of_gap_in_bore,
    modulus_of_ring as modulus_of_ring,
    pressure_by_free_gap as pressure_by_free_gap,
    ring_bore as ring_bore,
    stress_of_gap_change as stress_of_gap_change,
)
from .rings import (
    edge_by_groove as edge_by_groove,
    edge_of_ring as edge_of_ring,
    groove_of as groove_of,
    grooves_in_order as grooves_in_order,
    grooves_with_places as grooves_with_places,
    place_in_piston as place_in_piston,
)
from .rocker_delays import (
    STIFF as STIFF,
    ShaftGivesWay as ShaftGivesWay,
    clearance_with_shaft as clearance_with_shaft,
)
from .rocker_shafts import (
    ArmsOnShaft as ArmsOnShaft,
    StiffShaft as StiffShaft,
    arms_on_shaft as arms_on_shaft,
    delay_on_ramp as delay_on_ramp,
    lift_lost_by_shaft as lift_lost_by_shaft,
    modulus_of_rigidity as modulus_of_rigidity,
    sag_at as sag_at,
    torque_of_arm as torque_of_arm,
)
from .room import (
    crossheads_of as crossheads_of,
    least_gap as least_gap,
    parts_standing_out as parts_standing_out,
    reach_of as reach_of,
)
from .seat_fits import (
    drag_on_seat as drag_on_seat,
    frictions_of_seat as frictions_of_seat,
)
from .seats import (
    bore_of as bore_of,
    bores_under as bores_under,
    chamber_beyond as chamber_beyond,
    chamber_by_valve as chamber_by_valve,
    chamber_of_bore as chamber_of_bore,
    circle_on_contact as circle_on_contact,
    contact_of as contact_of,
    ends_of_valve as ends_of_valve,
    face_of_beat as face_of_beat,
    face_of_seat as face_of_seat,
    great_edge as great_edge,
    in_common as in_common,
    seat_with_face as seat_with_face,
    seats_named as seats_named,
    steam_at_spindle as steam_at_spindle,
    steam_inside_seal as steam_inside_seal,
    supply_acts as supply_acts,
    supply_by_place as supply_by_place,
    valves_of_end as valves_of_end,
)
from .shaft_loads import (
    loads_of_bearings as loads_of_bearings,
    moment_of_shaft as moment_of_shaft,
    moments_needed as moments_needed,
)
from .side_loads import (
    load_aslant as load_aslant,
    share_across_spindle as share_across_spindle,
    side_load as side_load,
    side_load_by_springs as side_load_by_springs,
    side_load_worked as side_load_worked,
)
from .slide_bars import (
    half_of_slipper as half_of_slipper,
    reach_on_bar as reach_on_bar,
    width_on_bars as width_on_bars,
)
from .speeds import (
    crank_speed as crank_speed,
    speed_of_crank as speed_of_crank,
    speed_of_gear as speed_of_gear,
    states_speed as states_speed,
    wheel_speed as wheel_speed,
)
from .springs import (
    height_to_grip as height_to_grip,
    rate_by_sizes as rate_by_sizes,
    rates as rates,
    shut_loads as shut_loads,
    stroke as stroke,
)
from .stages import (
    bore_of_pipe as bore_of_pipe,
    flow_of_cylinders as flow_of_cylinders,
    least_perimeter as least_perimeter,
)
from .steam_at_valves import (
    SteamAtValve as SteamAtValve,
    event_pressure as event_pressure,
    known_steam_beside as known_steam_beside,
    steam_at_valve as steam_at_valve,
)
from .steam_in_cylinders import (
    SteamInCylinder as SteamInCylinder,
    error_of_pressures as error_of_pressures,
    gauge_within_error as gauge_within_error,
    steam_in_bore as steam_in_bore,
    works_with_steam as works_with_steam,
)
from .steam_paths import (
    Stage as Stage,
    branches_off as branches_off,
    carries_live as carries_live,
    paths_into as paths_into,
    paths_to as paths_to,
)
from .steam_states import (
    SteamPath as SteamPath,
    flow_in as flow_in,
    section_of as section_of,
    steam_along as steam_along,
)
from .steam_use import (
    steam_by_cylinder as steam_by_cylinder,
)
from .stops import (
    load_on_stop as load_on_stop,
    stop_load as stop_load,
)
from .taken_sizes import (
    is_size_of as is_size_of,
)
from .throats import (
    around_throat as around_throat,
    rim_inside as rim_inside,
    throat_of as throat_of,
    within_valve as within_valve,
)
from .train import (
    beyond_full_lift as beyond_full_lift,
    lever_ratio as lever_ratio,
    lift_with_overtravel as lift_with_overtravel,
    valve_lift as valve_lift,
)
from .train_loads import (
    holding_load as holding_load,
    mass_at_valve as mass_at_valve,
    normal_load as normal_load,
    sense_of_push as sense_of_push,
    sense_of_weight as sense_of_weight,
    share_across as share_across,
    spindle_load as spindle_load,
    tappet_load as tappet_load,
    torque_of_cam as torque_of_cam,
    torque_together as torque_together,
    valve_acceleration as valve_acceleration,
    valve_speed as valve_speed,
)
from .values_from_events import (
    exhaust_dryness as exhaust_dryness,
    exhaust_temperature as exhaust_temperature,
    gears_beside as gears_beside,
    is_typed as is_typed,
    value_from_events as value_from_events,
)
from .valve_gear import (
    SERVES as SERVES,
    SIDES as SIDES,
    SetCam as SetCam,
    ValvesTrain as ValvesTrain,
    bore_of_gear as bore_of_gear,
    direction_of as direction_of,
    end_on as end_on,
    gears_of as gears_of,
    mid_notches as mid_notches,
    notch_of as notch_of,
    running_notches as running_notches,
    set_cam as set_cam,
    set_cams as set_cams,
    train_of_cam as train_of_cam,
)
from .valve_passages import (
    passage_of as passage_of,
    usual_coefficient as usual_coefficient,
)
from .valve_timing import (
    CamAtWork as CamAtWork,
    DriveOfGear as DriveOfGear,
    angle_at_clearance as angle_at_clearance,
    cam_at_work as cam_at_work,
    crank_of as crank_of,
    drive_of as drive_of,
    event_angle as event_angle,
    share_at as share_at,
)
from .valve_trains import (
    beats_of as beats_of,
    mass_of_train as mass_of_train,
    ratio_of_train as ratio_of_train,
    springs_of as springs_of,
)
from .valves import (
    block_under as block_under,
    bore_served as bore_served,
)
from .vessels import (
    vessel_of as vessel_of,
)
from .walls import (
    plate_of as plate_of,
    thickest_wall as thickest_wall,
    wall_beyond_relief as wall_beyond_relief,
    wall_by_plate as wall_by_plate,
    wall_left as wall_left,
    wall_round as wall_round,
)
from .wear_measured import (
    WEARING as WEARING,
    LastWear as LastWear,
    Wearing as Wearing,
    Worn as Worn,
    last_wear_of as last_wear_of,
    wear_of as wear_of,
)
from .weights import (
    centre_together as centre_together,
    goes_up as goes_up,
    mass_of_part as mass_of_part,
    mass_together as mass_together,
    part_weighed as part_weighed,
    share_of_mass as share_of_mass,
)
from .welded import is_welded as is_welded
from .wheelbases import (
    apart as apart,
    axle_pairs_at as axle_pairs_at,
    wheelbase_by_axles as wheelbase_by_axles,
)
from .zones import (
    holds_at_most_material as holds_at_most_material,
    size_with_zone as size_with_zone,
    stated_zone as stated_zone,
    zone_at_distance as zone_at_distance,
    zone_beside_size as zone_beside_size,
    zone_of as zone_of,
)
