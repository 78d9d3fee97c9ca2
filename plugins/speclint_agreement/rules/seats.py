"""A seat, its bore in the block and the valve on it state one length, one contact, one chamber and one end."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import (
    apart,
    bore_of,
    bores_under,
    chamber_by_valve,
    face_of_beat,
    face_of_seat,
    in_common,
    lifts_clear_of_piston,
    room_to_piston,
    seat_with_face,
    supply_by_place,
)
from speclint.specs import Beat, CylinderBlock, PoppetValve, ValveSeat
from speclint_agreement.formulae.seats import as_long_as_bore


def _lengths(seat: ValveSeat, sheet: Sheet) -> Iterator[Pair]:
    """The length of the ring's joint against the depth of its bore and what it may stand proud."""
    housing = bore_of(seat, sheet)
    if sheet.is_stated("depth of the bore", housing.depth) and sheet.is_stated("length", seat.length):
        proud = sheet.limit("proud", "a")
        most = sheet.work("L", as_long_as_bore, L_b=sheet.take("L_b", housing.depth), a=proud)
        yield Pair(seat.length, worked(most, housing.depth), "at most")


def _beats(valve: PoppetValve, sheet: Sheet) -> Iterator[tuple[str, Beat, ValveSeat]]:
    """The beats that state their faces, each with its seat where this states its own."""
    for name, beat in (("upper", valve.upper_beat), ("lower", valve.lower_beat)):
        face = beat.seat_diameter, beat.contact_width, beat.seat_angle
        seat = seat_with_face(beat, sheet)
        if seat is not None and all(sheet.is_stated(f"face, {name}", one) for one in face):
            yield name, beat, seat


def _rims(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The rim of each beat, and the widest of the valve, against the outer edge of the face on it."""
    for name, beat in (("upper", valve.upper_beat), ("lower", valve.lower_beat)):
        face = beat.seat_diameter, beat.contact_width, beat.seat_angle
        if not all(sheet.is_stated(f"face, {name}", one) for one in face):
            continue
        _, D = face_of_beat(beat, name[0], sheet, sheet.take_nominal)
        for what, rim in (("rim", beat.rim_diameter), ("widest rim", valve.outside_diameter)):
            if sheet.is_stated(f"{what}, {name}", rim):
                over = sheet.take_nominal(f"D_{what[0]}{name[0]}", rim)
                yield Pair(worked(over, rim), worked(D, *face), "at least", name=f"{name}, {what}")


def _faces(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """Of each beat, as drawn, both edges within those of its seat and its rim; with limits, that the faces meet."""
    yield from _rims(valve, sheet)
    for name, beat, seat in _beats(valve, sheet):
        index = name[0]
        d, D = face_of_beat(beat, index, sheet, sheet.take_nominal)
        d_s, D_s = face_of_seat(seat, index, sheet, sheet.take_nominal)
        sizes = beat.seat_diameter, beat.contact_width, beat.seat_angle
        others = seat.seat_diameter, seat.seat_width, seat.seat_angle
        yield Pair(worked(d, sizes[0]), worked(d_s, others[0]), "at least", name=f"{name}, inner edge")
        yield Pair(worked(D, *sizes), worked(D_s, *others), "at most", name=f"{name}, outer edge")
        inner, outer = in_common(beat, seat, index, sheet)
        yield Pair(worked(outer, *sizes), worked(inner, *others), "at least", name=f"{name}, contact")


def _angles(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The angle of each beat against that of its seat."""
    for name, beat, seat in _beats(valve, sheet):
        yield Pair(beat.seat_angle, seat.seat_angle, name=name)


def _rings(seat: ValveSeat, sheet: Sheet) -> Iterator[Pair]:
    """The bore of a ring within the small edge of its face, and the great edge within the outside of the ring."""
    face = seat.seat_diameter, seat.seat_width, seat.seat_angle
    if all(sheet.is_stated("face", one) for one in face):
        _, D = face_of_seat(seat, "", sheet, sheet.take)
        yield Pair(seat.seat_diameter, seat.bore, "at least", name="bore")
        yield Pair(worked(D, *face), seat.outside_diameter, "at most", name="outside")


def _chambers(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The steam beyond each seat bore against what the valve on that seat serves."""
    for seat in sheet.belonging_to(block, ValveSeat):
        if not sheet.is_stated(f"bore of {seat.id}", seat.in_bore):
            continue
        housing, by_valve = bore_of(seat, sheet), chamber_by_valve(seat, sheet)
        if by_valve is not None:
            yield Pair(housing.chamber, by_valve, name=sheet.read(f"bore of {seat.id}", seat.in_bore))


def _apart(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The distance of the beats against that of the planes of their seats along the valve's axis.

    Places on that axis grow in the direction of lift, so that the upper seat is no lower than the lower one.
    """
    places = [bore.at for _, _, bore in bores_under(valve, sheet)]
    if len(places) == 2 and all(sheet.is_stated("place of the seat's plane", one) for one in places):
        upper, lower = places
        yield Pair(upper, lower, "at least", name="upper seat")
        x = [sheet.take_nominal(f"x_{number}", one) for number, one in enumerate(places, start=1)]
        yield Pair(valve.beat_distance, worked(sheet.work("L", apart, x_1=x[0], x_2=x[1]), *places))


def _senses(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """Where the supply is said to act against what the valve serves and the space into which it lifts."""
    by_place = supply_by_place(valve, sheet)
    if by_place is not None:
        yield Pair(valve.supply_acts, by_place)


def _reaches(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """Whether the valve is said to reach the piston, where it lifts away from it; else the room that its seat gives."""
    clear = lifts_clear_of_piston(valve, sheet)
    if clear is not None:
        yield Pair(valve.meets_piston, clear)
    room = room_to_piston(valve, sheet, nominal=True)
    if room is not None:
        yield Pair(valve.clearance_piston, room)


as_long_as_the_bore: Rule = agreement(
    "seat.as-long-as-bore",
    title="The joint of a valve seat is no longer than its bore is deep and 0.5 mm",
    on=ValveSeat,
    pairs=_lengths,
    within="",
    limits=[
        Limit("proud", "0.5 mm", "length", COMMON_PRACTICE, "what a seat ring may stand proud of its bore")
    ],
    grade=Grade.HOLD,
    why="a ring grips only as far as there is a bore round it",
    leaves_out="chamfers of ring and bore, which are no part of either length",
)

meets_seat: Rule = agreement(
    "valve.meets-seat",
    title="The face of each beat, as drawn, lies within that of its seat and within its rim, and whatever their limits "
    "give, the two meet",
    on=PoppetValve,
    pairs=_faces,
    within="",
    edition=2,
    grade=Grade.HOLD,
    why="a valve that seals on another edge than its drawing says is lifted by the steam that should hold it shut",
    leaves_out="wear, and recutting of the seats",
    against=("leak",),
    against_on={"valve-seat": ("leak",)},
)

angle_of_seat: Rule = agreement(
    "valve.angle-of-seat",
    title="Each beat of a valve has the angle of its seat within 0.25°",
    on=PoppetValve,
    pairs=_angles,
    within="0.25 °",
    dimension="angle",
    grade=Grade.HOLD,
    why="cones of unlike angles meet on one edge, which the steam then works on, and leak as it wears",
    leaves_out="a difference that is meant to make them bed in at one edge, where it is greater",
    against=("leak",),
    against_on={"valve-seat": ("leak",)},
)

face_in_ring: Rule = agreement(
    "seat.face-in-ring",
    title="The cone of a valve seat lies between the bore and the outside of its ring",
    on=ValveSeat,
    pairs=_rings,
    within="",
    optional=False,
    grade=Grade.HOLD,
    why="a cone wider than its ring has no metal to be cut from",
    leaves_out="metal that recutting will need",
)

chamber_of_valve: Rule = agreement(
    "seat.chamber-by-valve",
    title="Beyond the seats of an inlet valve the block has live steam, beyond those of an exhaust valve exhaust steam",
    on=CylinderBlock,
    pairs=_chambers,
    within="",
    grade=Grade.HOLD,
    why="the load that pushes a seat out of its bore turns about with this word",
    leaves_out="a seat on which no valve is drawn, and whose bore does not say what it serves",
)

seats_apart: Rule = agreement(
    "valve.seats-apart",
    title="The beats of a valve are as far apart as the planes of its seats, of which the upper one is on the side to "
    "which the valve lifts",
    on=PoppetValve,
    pairs=_apart,
    within="0.05 mm",
    grade=Grade.NONCONFORMITY,
    edition=2,
    why="one of two beats hangs in the air, and its seat leaks",
    leaves_out="what lapping takes off (valve.beat-growth judges heat); a seat whose bore states no place",
    against=("leak",),
    against_on={"valve-seat": ("leak",)},
)

supply_acts_by_place: Rule = agreement(
    "valve.supply-by-place",
    title="The supply of a valve acts beyond its beats where the valve lifts into that steam, else between them",
    on=PoppetValve,
    pairs=_senses,
    within="",
    grade=Grade.HOLD,
    why="this one word turns the load that holds a valve shut into one that lifts it",
    leaves_out="a valve whose seat bores do not say into which space it lifts",
)

piston_room: Rule = agreement(
    "valve.room-to-piston",
    title="A valve that lifts away from the piston is not said to meet it; one that lifts towards it has the room that "
    "its seat's place, its height and its lift leave",
    on=PoppetValve,
    pairs=_reaches,
    within="0.1 mm",
    grade=Grade.HOLD,
    why="a valve drawn to lift the other way than its block opens strikes the piston or the chest",
    leaves_out="heat, wear and overtravel (valve.foul-clearance); a seat bore that says neither which way its valve "
    "lifts nor into which space",
    edition=2,
)

RULES = (
    angle_of_seat,
    as_long_as_the_bore,
    chamber_of_valve,
    face_in_ring,
    meets_seat,
    piston_room,
    seats_apart,
    supply_acts_by_place,
)
