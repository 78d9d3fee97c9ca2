"""A valve on its seats, hot, and the clearances round it."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, Metres, Pascals, Ratio
from speclint.facts import (
    beats_of,
    beyond_full_lift,
    block_under,
    bore_served,
    bore_with_direction,
    cages_round,
    clearance_to_cage,
    connecting_rod_of,
    furthest_lift,
    lift_with_overtravel,
    lifts_clear_of_piston,
    load_on_stop,
    opening_of_cage,
    rod_diameter,
    rod_steel,
    room_to_piston,
    stands_across,
    strain_since,
    wear_along,
)
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import round_area, sum_of_loads
from speclint.handbook.steam import seat_bearing_stress
from speclint.specs import Beat, CylinderBlock, LoadCase, NotStated, PoppetValve, Stated, ValveCage, ValveSeat
from speclint_valves.formulae.landing import (
    beat_gap,
    clearance_hot,
    least_piece,
    lift_as_stop_gives,
    piston_nearer,
    seating_load,
    size_of_gap,
)
from speclint_valves.inputs.catching import held_where_it_stands
from speclint_valves.inputs.opening import piston
from speclint_valves.inputs.shutting import on_spindle, spindle_of, supply_at_most, unbalanced, weight
from speclint_valves.inputs.springs import springs_new
from speclint_valves.rules.seats import DEFERS


@rule(
    "valve.seat-stress",
    edition=6,
    title="With one beat alone carrying the whole load of the shut valve, its bearing stress is at most "
    "20 MPa",
    wrong="one beat alone is pressed by {found}, {limit} allowed",
    on=PoppetValve,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="two beats never land exactly together: until they have bedded in, one of them carries everything",
    leaves_out="the impact of landing (valve.landing-speed)",
    against=("wear",),
    against_on={"valve-seat": ("wear",)},
    limits=[
        Limit(
            "greatest", "20 MPa", "stress", COMMON_PRACTICE, "greatest bearing stress on an iron seat, static"
        )
    ],
)
def seat_stress(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """(springs + weight + steam that holds shut, on beats and spindle)/projected contact of each beat in turn."""
    supply, delivery = supply_at_most(case, sheet), sheet.take("p_d", case.exhaust_pressure)
    on_end = on_spindle(spindle_of(valve, sheet), sheet, supply, delivery, helps=False)
    steam = sheet.work("F_v′", sum_of_loads, F_1=unbalanced(valve, sheet, supply, delivery), F_2=on_end)
    springs = springs_new(valve, case, sheet).shut
    load = sheet.work("F", seating_load, F_f=springs, W=weight(valve, sheet, helps=False), F_v=steam)
    most = sheet.limit("greatest")

    def judge(item: tuple[str, Beat]) -> Judgement:
        index, beat = item
        d, w = sheet.take(f"d_{index}", beat.seat_diameter), sheet.take(f"w_{index}", beat.contact_width)
        β = sheet.take(f"β_{index}", beat.seat_angle)
        return sheet.at_most(sheet.work(f"σ_{index}", seat_bearing_stress, F=load, d=d, w=w, β=β), most)

    return sheet.each(beats_of(valve, sheet), judge)


@rule(
    "valve.seat-width",
    title="The contact of each beat is at least 1.5 mm and at most 5 mm wide",
    wrong="contact of a beat {found} wide, where the nearer limit is {limit}",
    on=PoppetValve,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="a narrow seat is hammered wide, a wide one holds dirt and leaks",
    leaves_out="how the width grows in service, and when the seat must be recut",
    against=("wear",),
    against_on={"valve-seat": ("wear",)},
    limits=[
        Limit("least", "1.5 mm", "length", COMMON_PRACTICE, "least width of contact, new"),
        Limit("greatest", "5 mm", "length", COMMON_PRACTICE, "greatest width of contact, new"),
    ],
)
def seat_width(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """Width of contact of each beat within the band."""
    low, high = sheet.limit("least"), sheet.limit("greatest")
    return sheet.each(
        beats_of(valve, sheet),
        lambda item: sheet.within(sheet.take(f"w_{item[0]}", item[1].contact_width), low, high),
    )


@rule(
    "valve.beat-growth",
    title="Hot, with one beat on its seat, the gap at the other is at most 0.03 mm",
    wrong="one beat stands off by {found} hot, {limit} allowed",
    on=PoppetValve,
    cases=("starting", "running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a valve that expands more than the block between its seats rests on one beat and leaks at the other",
    leaves_out="elastic deflection of valve and seats under load, which helps a little, and rings "
    "hotter than the block",
    against=("leak",),
    limits=[Limit("greatest", "0.03 mm", "length", COMMON_PRACTICE, "greatest gap at one beat, hot")],
)
def beat_growth(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """(ε_v − ε_b)(L − (r_u tan β_u − r_l tan β_l)), from the temperature of lapping."""
    if sheet.count("z", valve.beats) == 1:
        raise sheet.not_applicable("a valve of one beat meets its only seat hot or cold")
    block = block_under(valve, sheet)
    since = _lapped(valve, sheet)
    (_, upper), (_, lower) = beats_of(valve, sheet)
    gap = sheet.work(
        "g_u",
        beat_gap,
        ε_v=_strain(valve, "v", case, since, sheet),
        ε_b=_strain(block, "b", case, since, sheet),
        L=sheet.take("L", valve.beat_distance),
        d_u=sheet.take("d_u", upper.seat_diameter),
        β_u=sheet.take("β_u", upper.seat_angle),
        d_l=sheet.take("d_l", lower.seat_diameter),
        β_l=sheet.take("β_l", lower.seat_angle),
    )
    return sheet.at_most(sheet.work("g", size_of_gap, g_u=gap), sheet.limit("greatest"))


def _lapped(valve: PoppetValve, sheet: Sheet) -> Kelvins:
    hot = sheet.is_stated("temperature of lapping", valve.lapped_at)
    return sheet.take("T_0", valve.lapped_at) if hot else DRAWING_TEMPERATURE


def _strain(
    part: PoppetValve | CylinderBlock, index: str, case: LoadCase, since: Kelvins, sheet: Sheet
) -> Ratio:
    metal, T = sheet.material_of(part), sheet.take(f"T_{index}", case.temperature_of(part))
    alpha = sheet.look_up(f"α_{index}", metal.expansion, of=part, at=T)
    alpha_0 = sheet.look_up(f"α_0{index}", metal.expansion, of=part, at=since)
    return sheet.work(
        f"ε_{index}", strain_since, alpha=alpha, T=T, alpha_0=alpha_0, T_0=since, T_ref=DRAWING_TEMPERATURE
    )


@rule(
    "valve.foul-clearance",
    edition=7,
    title="At full lift with overtravel, hot, the valve clears cage, cover and piston by at least 2 mm",
    on=PoppetValve,
    cases=("starting", "running", "drifting"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a valve that touches is bent or broken, and the pieces go through the cylinder",
    leaves_out=f"a broken spindle (valve.cannot-fall-in), inertia of the piston; {DEFERS}",
    against=("foul",),
    against_on={"valve-cage": ("foul",), "piston": ("foul",)},
    limits=[Limit("least", "2 mm", "length", COMMON_PRACTICE, "least clearance, hot")],
)
def foul_clearance(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """c_0 − overtravel − H (ε_v − ε_b) ≥ 2 mm to cage or cover; to the piston also less y_r.

    The overtravel is what the gear can lift the valve beyond full lift. y_r is the wear that lets the piston come
    nearer, with the expansion and the stretch of both its rods. The clearance to the piston is that which the seat's
    place gives; a valve that lifts across the cylinder keeps out of the bore.
    """
    block = block_under(valve, sheet)
    ε_v = _strain(valve, "v", case, DRAWING_TEMPERATURE, sheet)
    ε_b = _strain(block, "b", case, DRAWING_TEMPERATURE, sheet)
    o, H = _overtravel(valve, sheet), sheet.take("H", valve.height)
    least = sheet.limit("least")
    c_0 = clearance_to_cage(valve, sheet)
    cage = sheet.work("c", clearance_hot, c_0=c_0, o=o, H=H, ε_v=ε_v, ε_b=ε_b, y=0.0)
    found = [
        sheet.at_least(cage, least).else_says("valve nears cage or cover: {found} left hot, {limit} wanted")
    ]
    c_p = _to_piston(valve, sheet)
    if c_p is not None:
        nearer = 0.0 if stands_across(valve, sheet) else _piston_nearer(valve, case, sheet)
        left = sheet.work("c_k", clearance_hot, c_0=c_p, o=o, H=H, ε_v=ε_v, ε_b=ε_b, y=nearer)
        found.append(
            sheet.at_least(left, least)
            .else_says("valve nears the piston: {found} left hot, {limit} wanted")
            .graded(Grade.HOLD)
        )
    return sheet.worst(*found)


def _to_piston(valve: PoppetValve, sheet: Sheet) -> Metres | None:
    """Cold clearance to the piston at full lift: by the seat bore, else as stated; None where none is wanted."""
    by_place = room_to_piston(valve, sheet)
    if by_place is not None:
        return by_place.value  # type: ignore[no-any-return]  # a float, or an enclosure of one
    if sheet.is_stated("clearance to the piston", valve.clearance_piston):
        return sheet.take("c_p", valve.clearance_piston)
    _cannot_meet_piston(valve, sheet)
    return None


def _cannot_meet_piston(valve: PoppetValve, sheet: Sheet) -> None:
    """End the rule unless the valve lifts away from the cylinder, or is stated not to reach the piston."""
    if lifts_clear_of_piston(valve, sheet) is not None:
        return
    directed = bore_with_direction(valve, sheet)
    if directed is not None:  # it lifts towards the cylinder: no word says that they cannot meet
        sheet.take("x_c", directed.to_cylinder)
        sheet.read("end of the seat bore", directed.end)
    if sheet.read("meets the piston", valve.meets_piston):
        raise sheet.not_assessed(
            "the valve can meet the piston: clearance_piston, or which way its seat bore lifts, is to be stated",
            valve.meets_piston.where,
        )


def _overtravel(valve: PoppetValve, sheet: Sheet) -> Metres:
    """What the gear can lift the valve beyond full lift; as stated where the gear is not drawn."""
    h_o = furthest_lift(valve, sheet)
    if h_o is None:
        return sheet.take("o", valve.overtravel)
    return sheet.work("o", beyond_full_lift, h_o=h_o, h=sheet.take("h", valve.lift))


def _piston_nearer(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Metres:
    """How much nearer the piston comes by wear and by the growth and the stretch of its two rods."""
    block = block_under(valve, sheet)
    drive = block.drive
    ε, E = _rod("r", "piston-rod", rod_steel(block, sheet), case, sheet)
    ε_c, E_c = _rod("c", "connecting-rod", drive.connecting_rod_material, case, sheet)
    return sheet.work(
        "y_r",
        piston_nearer,
        y=wear_along(block, bore_served(valve, sheet), sheet),
        L=sheet.take("L_r", drive.rod_length),
        ε=ε,
        l=sheet.take("l_c", connecting_rod_of(block, sheet, bore_served(valve, sheet))),
        ε_c=ε_c,
        p=supply_at_most(case, sheet),
        A_p=piston(valve, block, sheet),
        E=E,
        A=sheet.work("A_r", round_area, d=rod_diameter(block, sheet)),
        E_c=E_c,
        A_c=sheet.take("A_c", drive.connecting_rod_area),
    )


def _rod(
    index: str, name: str, material: Stated[str] | NotStated, case: LoadCase, sheet: Sheet
) -> tuple[Ratio, Pascals]:
    """Growth of a rod since it was made, and its modulus."""
    metal = sheet.material_named(f"the {name}", material)
    T = sheet.take(f"T_{index}", case.temperature_named(name))
    since = {"alpha_0": 0.0, "T_0": DRAWING_TEMPERATURE, "T_ref": DRAWING_TEMPERATURE}
    grown = sheet.work(
        f"ε_{index}", strain_since, alpha=sheet.look_up(f"α_{index}", metal.expansion, at=T), T=T, **since
    )
    return grown, sheet.look_up(f"E_{index}", metal.modulus, at=T)


@rule(
    "valve.lift-stop",
    edition=5,
    title="The valve has a stop that it meets no sooner than at full lift with overtravel, and before cage or cover, "
    "as far as the stop gives under a valve that is thrown against it",
    on=PoppetValve,
    cases=("starting", "running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="when the gear overruns or a spring breaks, the stop must end the valve's travel, and not "
    "another part",
    leaves_out="the strength of the stop, and how far one gives whose stiffness is not stated; the piston "
    "(valve.foul-clearance)",
    against=("foul",),
)
def lift_stop(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """Lift + overtravel ≤ lift at the stop ≤ lift + the room beyond it, hot.

    Running, a stop whose stiffness is stated gives by v √(m/k) under a valve with a broken spring, and the valve goes
    so far beyond it.
    """
    h, furthest = sheet.take("h", valve.lift), furthest_lift(valve, sheet)
    if furthest is None:
        furthest = sheet.work("h_o", lift_with_overtravel, h=h, o=sheet.take("o", valve.overtravel))
    stop = sheet.take("h_s", valve.lift_stop)
    room = sheet.work(
        "c",
        clearance_hot,
        c_0=clearance_to_cage(valve, sheet),
        o=0.0,
        H=sheet.take("H", valve.height),
        ε_v=_strain(valve, "v", case, DRAWING_TEMPERATURE, sheet),
        ε_b=_strain(block_under(valve, sheet), "b", case, DRAWING_TEMPERATURE, sheet),
        y=0.0,
    )
    strikes = sheet.work("h_c", lift_with_overtravel, h=h, o=room)

    def stands() -> Judgement:
        return sheet.worst(
            sheet.at_most(furthest, stop).else_says(
                "gear lifts the valve by {found}, its stop is at {limit}"
            ),
            sheet.at_most(stop, strikes).else_says(
                "stop at {found}, but the valve strikes cage or cover at {limit}"
            ),
        )

    items = [("stop", stands)]
    if case.name == "running" and sheet.is_stated("stiffness of the stop", valve.stop_stiffness):
        items.append(("stop as it gives", lambda: _gives(valve, (stop, strikes), case, sheet)))
    return sheet.each(items, lambda item: item[1]())


def _gives(valve: PoppetValve, lifts: tuple[Metres, Metres], case: LoadCase, sheet: Sheet) -> Judgement:
    """How far a valve goes that is thrown against its stop, which gives, before it strikes cage or cover."""
    stop, strikes = lifts
    F = load_on_stop(valve, case, sheet)
    reached = sheet.work("h_g", lift_as_stop_gives, h_s=stop, F=F, k=sheet.take("k", valve.stop_stiffness))
    return sheet.at_most(reached, strikes).else_says(
        "stop gives until the valve is lifted by {found}, and strikes cage or cover at {limit}"
    )


@rule(
    "valve.cannot-fall-in",
    edition=8,
    title="The openings of a catch that a part of its chamber holds, or of the way into the cylinder, are no wider "
    "than the smallest piece of a broken valve, spindle, nut or collet",
    wrong="a broken piece of {found} passes an opening of {limit}",
    on=PoppetValve,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="a piece between piston and cover breaks the end of the cylinder at speed, beside the crew",
    leaves_out=f"pieces smaller than a fracture is expected to leave; {DEFERS}",
    against=("fall",),
)
def cannot_fall_in(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """The smallest piece no narrower than the widest opening of the cage, or of the way into the cylinder.

    That of a cage is the greater of what it states and of what its bars leave between them, round its bore, or round
    its outside where the valve states no bore.
    Of each cage that is drawn round the valve, or of the valve's own collar; the word "cage" alone holds nothing.
    Whatever is stated of the piece: a spindle that breaks at its weakest section leaves an end no wider than that.
    """
    cages, stated = cages_round(valve, sheet), sheet.take("b_s", valve.smallest_piece)
    piece = sheet.work(
        "b", least_piece, b=stated, d=sheet.take("d_s", spindle_of(valve, sheet).least_diameter)
    )
    if cages:
        return sheet.each(
            [(cage.id, cage) for cage in cages], lambda item: _caught(piece, item[1], valve, sheet)
        )
    collar = sheet.read("retained by", valve.retained) == "collar larger than the port"
    return sheet.at_least(piece, sheet.take("b_o", valve.cage_opening if collar else valve.passage_below))


def _caught(piece: Metres, cage: ValveCage, valve: PoppetValve, sheet: Sheet) -> Judgement:
    """By a cage that a part of the chamber holds: one that is loose follows the pieces."""
    held = held_where_it_stands(cage, valve, sheet)
    return sheet.worst(held, sheet.at_least(piece, opening_of_cage(cage, sheet)))


@rule(
    "valve.material",
    title="Valve and seats are no hotter than the temperature limits of their metals",
    on=PoppetValve,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a metal above its temperature limit grows, scales and distorts, and the seat leaks",
    leaves_out="whether the metals of valve and seat may strike each other (pairing.sliding)",
    against=("burn",),
)
def material(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """Metal temperature ≤ the limit of the metal as a running part, for the valve and each of its seats."""
    return sheet.each(
        [("v", None), *beats_of(valve, sheet)],
        lambda item: _within_limit(sheet.follow(item[1].seat) if item[1] else valve, item[0], case, sheet),
    )


def _within_limit(part: PoppetValve | ValveSeat, index: str, case: LoadCase, sheet: Sheet) -> Judgement:
    T = sheet.take(f"T_{index}", case.temperature_of(part))
    table = sheet.material_of(part).temperature_limit
    return sheet.no_hotter(T, sheet.look_up(f"T_max{index}", table, of=part, use="running-part")).else_says(
        f"{part.id} at {{found}}, its metal is for {{limit}}"
    )


RULES = (seat_stress, seat_width, beat_growth, foul_clearance, lift_stop, cannot_fall_in, material)
