"""What seats, their bores and the valve on them say of each other: their contact, and the steam on either side."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, Radians, Ratio, formula, require
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderBlock, PoppetValve, ValveSeat, ValveSpindle

if TYPE_CHECKING:
    from speclint.specs import Beat, SeatBore

#: The steam in the chamber of a valve that serves so.
_STEAM = {"inlet": "live steam", "exhaust": "exhaust steam"}


@formula("D = d + 2 w cos β", cites=[FIRST_PRINCIPLES])
def great_edge(d: Metres, w: Metres, β: Radians) -> Metres:
    """Larger diameter of a conical face.

    D = d + 2 w cos β

    ``d`` smaller diameter, ``w`` width along the cone [m]; ``β`` angle of the cone to its plane [rad]. Returns [m].

    Hand working: 150 + 2 × 3 × cos 60° = 153 mm.

    >>> round(great_edge(d=0.150, w=0.003, β=math.pi / 3) * 1e3, 6)
    153.0
    """
    return d + 2 * w * math.cos(β)


@formula("d_s = d + x (D − d)", cites=[FIRST_PRINCIPLES])
def circle_on_contact(d: Metres, D: Metres, x: Ratio) -> Metres:
    """Diameter of the circle on which a beat seals.

    d_s = d + x (D − d)

    ``d`` smaller and ``D`` larger diameter of the contact [m]; ``x`` place across it, 0 at its smaller and 1 at its
    larger edge. Returns [m]. Raises OutOfRange unless 0 ≤ x ≤ 1.

    Hand working: 150 + 0.5 × (156 − 150) = 153 mm.

    >>> round(circle_on_contact(d=0.150, D=0.156, x=0.5) * 1e3, 6)
    153.0
    """
    require(0 <= x <= 1, f"place {x:.6g} is not on the contact, 0 to 1")
    return d + x * (D - d)


@formula("d = max(d_b, d_s)", cites=[FIRST_PRINCIPLES])
def inner_edge(d_b: Metres, d_s: Metres) -> Metres:
    """Smaller diameter of what two faces have in common.

    d = max(d_b, d_s)

    ``d_b``, ``d_s`` smaller diameter of either face [m]. Returns [m].

    >>> round(inner_edge(d_b=0.153, d_s=0.152), 6)
    0.153
    """
    return max(d_b, d_s)


@formula("D = min(D_b, D_s)", cites=[FIRST_PRINCIPLES])
def outer_edge(D_b: Metres, D_s: Metres) -> Metres:
    """Larger diameter of what two faces have in common.

    D = min(D_b, D_s)

    ``D_b``, ``D_s`` larger diameter of either face [m]. Returns [m].

    >>> round(outer_edge(D_b=0.157, D_s=0.156), 6)
    0.156
    """
    return min(D_b, D_s)


def face_of_beat(beat: Beat, index: str, sheet: Sheet, take: Take) -> tuple[float, float]:
    """Smaller and larger diameter of the face of a beat, m."""
    d, w = take(f"d_{index}", beat.seat_diameter), take(f"w_{index}", beat.contact_width)
    return d, sheet.work(f"D_{index}", great_edge, d=d, w=w, β=take(f"β_{index}", beat.seat_angle))


def seats_named(valve: PoppetValve, sheet: Sheet) -> Iterator[ValveSeat]:
    """The seats that the beats of a valve name, as far as they name one."""
    for beat in (valve.upper_beat, valve.lower_beat):
        if sheet.is_stated("seat", beat.seat):
            yield sheet.follow(beat.seat)


def seat_with_face(beat: Beat, sheet: Sheet) -> ValveSeat | None:
    """The seat of a beat where it states its face; None where it is not drawn so far."""
    if not sheet.is_stated("seat of the beat", beat.seat):
        return None
    seat = sheet.follow(beat.seat)
    face = seat.seat_diameter, seat.seat_width, seat.seat_angle
    return seat if all(sheet.is_stated(f"face of {seat.id}", one) for one in face) else None


def face_of_seat(seat: ValveSeat, index: str, sheet: Sheet, take: Take) -> tuple[float, float]:
    """Smaller and larger diameter of the face of a seat, m."""
    d, w = take(f"d_s{index}", seat.seat_diameter), take(f"w_s{index}", seat.seat_width)
    return d, sheet.work(f"D_s{index}", great_edge, d=d, w=w, β=take(f"β_s{index}", seat.seat_angle))


def in_common(beat: Beat, seat: ValveSeat, index: str, sheet: Sheet) -> tuple[float, float]:
    """Smaller and larger diameter of what the faces of a beat and its seat have in common, m.

    The larger is below the smaller where they do not meet.
    """
    d, D = face_of_beat(beat, index, sheet, sheet.take)
    d_s, D_s = face_of_seat(seat, index, sheet, sheet.take)
    inner = sheet.work(f"d_i{index}", inner_edge, d_b=d, d_s=d_s)
    return inner, sheet.work(f"D_o{index}", outer_edge, D_b=D, D_s=D_s)


def contact_of(beat: Beat, index: str, sheet: Sheet) -> tuple[float, float]:
    """Smaller and larger diameter of the contact, m: of the beat alone where its seat states no face.

    :raises NotAssessed: where the two faces do not meet.
    """
    seat = seat_with_face(beat, sheet)
    if seat is None:
        return face_of_beat(beat, index, sheet, sheet.take)
    inner, outer = in_common(beat, seat, index, sheet)
    if inner > outer:
        raise sheet.not_assessed(f"the faces of beat and {seat.id} do not meet", beat.seat_diameter.where)
    return inner, outer


def bore_of(seat: ValveSeat, sheet: Sheet) -> SeatBore:
    """The bore of the block that takes a seat."""
    block = sheet.follow(seat.pressed_into)
    return sheet.entry(block.seat_bores, seat.in_bore, f"seat bores of {block.id}")


def bores_under(valve: PoppetValve, sheet: Sheet) -> Iterator[tuple[str, Beat, SeatBore]]:
    """The beats of a valve that name their seats, each with the bore of the block that takes the seat."""
    for name, beat in (("upper", valve.upper_beat), ("lower", valve.lower_beat)):
        if not sheet.is_stated(f"seat of the {name} beat", beat.seat):
            continue
        seat = sheet.follow(beat.seat)
        if sheet.is_stated(f"block of {seat.id}", seat.pressed_into) and sheet.is_stated(
            f"bore of {seat.id}", seat.in_bore
        ):
            yield name, beat, bore_of(seat, sheet)


def chamber_by_valve(seat: ValveSeat, sheet: Sheet) -> Worked | None:
    """The steam in the chamber beyond a seat: by what the valve on it serves, or its bore; None where neither says."""
    for valve in sheet.belonging_to(seat, PoppetValve):
        if sheet.is_stated(f"what {valve.id} serves", valve.serves):
            return worked(_STEAM[sheet.read(f"what {valve.id} serves", valve.serves)], valve.serves)
    housing = bore_of(seat, sheet)
    if sheet.is_stated("what the seat bore serves", housing.serves):
        return worked(_STEAM[sheet.read("what the seat bore serves", housing.serves)], housing.serves)
    return None


def chamber_of_bore(name: str, bore: SeatBore, sheet: Sheet) -> str | None:
    """The steam in the chamber beyond a seat bore: by what it serves, else as stated; None where neither says."""
    if sheet.is_stated(f"what seat bore {name} serves", bore.serves):
        return _STEAM[sheet.read(f"what seat bore {name} serves", bore.serves)]
    stated = sheet.is_stated(f"chamber of {name}", bore.chamber)
    return sheet.read(f"chamber of {name}", bore.chamber) if stated else None


def chamber_beyond(seat: ValveSeat, sheet: Sheet) -> str:
    """The steam in the chamber beyond a seat: by its valve, else as the block states it."""
    by_valve = chamber_by_valve(seat, sheet)
    return (
        sheet.read("chamber beyond the seat", bore_of(seat, sheet).chamber)
        if by_valve is None
        else by_valve.value
    )


def supply_by_place(valve: PoppetValve, sheet: Sheet) -> Worked | None:
    """Where the supply of a valve acts: by what it serves and the space into which it lifts; None where not stated.

    That space lies beyond the beats. It has the supply where an inlet valve lifts into its chamber, or an exhaust
    valve into the cylinder.
    """
    if not sheet.is_stated("serves", valve.serves):
        return None
    supply = "chamber" if sheet.read("serves", valve.serves) == "inlet" else "cylinder"
    for name, _, bore in bores_under(valve, sheet):
        if sheet.is_stated(f"space into which the {name} beat lifts", bore.opens_into):
            beyond = sheet.read(f"space into which the {name} beat lifts", bore.opens_into) == supply
            acts = "beyond the beats" if beyond else "between the beats"
            return worked(acts, valve.serves, bore.opens_into)
    return None


def supply_acts(valve: PoppetValve, sheet: Sheet) -> str:
    """Where the supply of a valve acts: by what it serves and where it lifts to, else as its drawing states it."""
    by_place = supply_by_place(valve, sheet)
    return sheet.read("supply acts", valve.supply_acts) if by_place is None else str(by_place.value)


def ends_of_valve(valve: PoppetValve, sheet: Sheet) -> tuple[Worked, ...]:
    """The names of the ends of the cylinder at which a valve's seats are, as far as their bores say."""
    return tuple(
        worked(sheet.read(f"end of the {name} seat", bore.end), bore.end)
        for name, _, bore in bores_under(valve, sheet)
        if sheet.is_stated(f"end of the {name} seat", bore.end)
    )


def valves_of_end(block: CylinderBlock, end: str, sheet: Sheet) -> tuple[PoppetValve, ...]:
    """The valves whose upper seats are at one end of a block."""
    valves = (
        valve
        for seat in sheet.belonging_to(block, ValveSeat)
        for valve in sheet.belonging_to(seat, PoppetValve)
    )
    found: dict[str, PoppetValve] = {}
    for valve in valves:
        if any(one.value == end for one in ends_of_valve(valve, sheet)[:1]):
            found.setdefault(valve.id, valve)
    return tuple(found.values())


def steam_at_spindle(spindle: ValveSpindle, sheet: Sheet) -> Worked | None:
    """The steam inside the seal of a spindle: supply or delivery of its valve; None where that is not stated.

    A valve of two beats has one steam beyond both. Of one beat the spindle leaves on the side to which the valve lifts
    where steam pushes it open, and under the head where steam pushes it shut.
    """
    if not sheet.is_stated("valve", spindle.moves):
        return None
    valve = sheet.follow(spindle.moves)
    by_place = supply_by_place(valve, sheet)
    if not all(sheet.is_stated("beats or push", one) for one in (valve.beats, spindle.pushed)) or not (
        by_place or sheet.is_stated("supply", valve.supply_acts)
    ):
        return None
    acts = (
        worked(sheet.read("supply acts", valve.supply_acts), valve.supply_acts)
        if by_place is None
        else by_place
    )
    beyond = sheet.count("z", valve.beats) == 2 or sheet.read("pushed", spindle.pushed) == "open"
    supplied = beyond == (acts.value == "beyond the beats")
    found = worked("supply" if supplied else "delivery", valve.beats, spindle.pushed)
    return Worked(found.value, (*found.places, *acts.places))


def steam_inside_seal(spindle: ValveSpindle, sheet: Sheet) -> str:
    """The steam on the end of a spindle, supply or delivery: by its valve, else as its drawing states it."""
    by_valve = steam_at_spindle(spindle, sheet)
    return sheet.read("steam inside the seal", spindle.leaves) if by_valve is None else str(by_valve.value)
