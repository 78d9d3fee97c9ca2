"""Seats, valves and spindles: what each passes on its way to its place."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import block_when_entering, bore_of, face_of_beat
from speclint.handbook.cylinders import outside_of_wall
from speclint.specs import Beat, CylinderBlock, NotStated, PoppetValve, SeatBore, ValveSeat, ValveSpindle
from speclint_assembly.formulae.sizes import height_over_beats
from speclint_assembly.inputs.room import BY_HAND, WITH_TACKLE, heated, passes
from speclint_assembly.inputs.ways import (
    as_drawn,
    opening_of,
    other_bores,
    through_the_cylinder,
    through_the_opening,
)
from speclint_assembly.sources import GEOMETRY


@rule(
    "seat.passes-the-other-bore",
    title="On the way to its own bore a seat passes, as hot or cold as it is put in, the other seat's bore, and the "
    "chamber's opening, or from the cylinder its bore and its ports, with 0.5 mm to spare",
    on=ValveSeat,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a seat that does not pass the bore above its own is found out when the block is already hot",
    leaves_out="corners and bends of a passage beyond its narrowest opening; whether the fit itself lets the "
    "seat in, which seat.entering judges",
    against=(),
    limits=[BY_HAND],
)
def passes_the_other_bore(seat: ValveSeat, sheet: Sheet) -> Judgement:
    """From the side to which the valve lifts the lower seat passes the upper bore, from the other side the upper seat
    the lower bore; each passes the opening, or bore and ports, of the side that it is entered from.
    """
    block = sheet.follow(seat.pressed_into)
    own = bore_of(seat, sheet)
    method, side = sheet.read("entering", seat.entering), sheet.read("entered from", seat.entered_from)
    diameter = sheet.take("D", seat.outside_diameter)
    if "chilled" in method:
        diameter = heated(diameter, seat, sheet.take("T_s", seat.chilled_to), "s", sheet)

    def hot(index: str, size: float) -> float:
        if "heated" not in method:
            return size
        return heated(size, block, sheet.take("T_b", block_when_entering(seat, block, sheet)), index, sheet)

    lifts = sheet.read("space into which the valve lifts", own.opens_into)
    first = "lower" if side == lifts else "upper"
    passed = other_bores(block, own, sheet) if sheet.read("beat", own.beat) == first else {}
    judged = [
        passes(
            hot(f"b {name}", sheet.take(f"D {name}", bore.diameter)),
            diameter,
            name,
            f"through the bore {name}",
            sheet,
        )
        for name, bore in passed.items()
    ]
    opening = opening_of(own, sheet.belonging_to(seat, PoppetValve), sheet)
    if side == "chamber" or (side == lifts and not isinstance(opening, NotStated)):
        judged.append(through_the_opening(opening, diameter, hot, sheet))
    else:
        length = sheet.take("l", seat.length)
        judged.append(through_the_cylinder(block, own, diameter, length, hot, sheet))
    return sheet.worst(*judged)


@rule(
    "valve.passes-its-seat",
    title="The rim of a valve's lower beat passes the upper seat, and the whole valve the chamber's opening, or "
    "bore and ports, with 0.5 mm to spare, and its height the room beyond",
    on=PoppetValve,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a valve that cannot be drawn through its own upper seat is never ground in again",
    leaves_out="ribs and guides that stand out beyond the rims, turning the valve in a passage",
    against=(),
    limits=[
        BY_HAND,
        Limit("beyond", "5 mm", "length", WITH_TACKLE.source, "room wanted beyond the height of the valve"),
    ],
)
def passes_its_seat(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """The rim as stated, else the wall beyond the contact; the height from the end of the valve to its lower beat."""
    seat = sheet.follow(valve.upper_beat.seat)
    block, bore = sheet.follow(seat.pressed_into), bore_of(seat, sheet)
    height = sheet.take("H", valve.height)
    judged = []
    if sheet.count("z", valve.beats) != 1:
        rim = _rim(valve, valve.lower_beat, sheet)
        judged.append(passes(sheet.take("d_u", seat.bore), rim, "u", "through the upper seat", sheet))
        height = sheet.work("H_v", height_over_beats, H=height, a=sheet.take("a", valve.beat_distance))
    judged += _through(valve, block, bore, height, sheet)
    return sheet.worst(*judged)


def _through(
    valve: PoppetValve, block: CylinderBlock, bore: SeatBore, height: float, sheet: Sheet
) -> list[Judgement]:
    diameter = sheet.take("D_v", valve.outside_diameter)
    chamber = sheet.read("space into which the valve lifts", bore.opens_into) == "chamber"
    opening = opening_of(bore, (valve,), sheet)
    if not chamber and isinstance(opening, NotStated):
        return [through_the_cylinder(block, bore, diameter, height, as_drawn, sheet)]
    room = passes(
        sheet.take("l_o", bore.room_beyond), height, "l", "beyond the opening of the chamber", sheet, "beyond"
    )
    return [through_the_opening(opening, diameter, as_drawn, sheet), room]


def _rim(valve: PoppetValve, beat: Beat, sheet: Sheet) -> float:
    if sheet.is_stated("rim of the lower beat", beat.rim_diameter):
        return sheet.take("D_r", beat.rim_diameter)
    _, edge = face_of_beat(beat, "l", sheet, sheet.take)
    return sheet.work("D_r", outside_of_wall, d=edge, t=sheet.take("t", valve.wall))


@rule(
    "spindle.enters",
    title="The end of a spindle that goes in first passes its guide, the seal passes over the end at the gear, "
    "and its collar stays on one side of the valve, whose bore its end passes",
    edition=2,
    on=ValveSpindle,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a spindle with a collar at both ends goes into no guide",
    leaves_out="threads that must be protected as they pass the guide; the length that the spindle needs beside the "
    "block",
    against=(),
)
def spindle_enters(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """From the valve's side the gear end passes the guide; from the gear's side collar and valve end do.

    One that is of one piece with its valve has neither, and goes in from the valve's side alone.
    """
    from_valve = sheet.read("enters from", spindle.enters_from) == "valve side"
    gear = sheet.take("D_t", spindle.gear_end_diameter)
    over = sheet.at_most(gear, sheet.take("d_s", spindle.seal_diameter)).else_says(
        "end at the gear {found}, the seal passes over {limit}"
    )
    if _of_one_piece(spindle, sheet):
        says = f"of one piece with its valve, it goes in from the {'valve' if from_valve else 'gear'} side"
        way = sheet.states(from_valve, says, where=spindle.enters_from.where)
        return sheet.worst(way, *_past_guide(spindle, (gear,), sheet), over)
    collar = sheet.take("D_c", spindle.collar_diameter)
    end = sheet.take("D_e", spindle.valve_end_diameter)
    bore = sheet.take("d_v", sheet.follow(spindle.moves).spindle_bore)
    return sheet.worst(
        *_past_guide(spindle, (gear,) if from_valve else (collar, end), sheet),
        over,
        sheet.at_most(end, bore).else_says("end of the spindle {found}, bore of the valve {limit}"),
        sheet.at_least(collar, bore).else_says("collar {found} passes the bore of the valve, {limit}"),
    )


def _of_one_piece(spindle: ValveSpindle, sheet: Sheet) -> bool:
    """Whether the spindle says that its valve is forged in one with it."""
    by = spindle.valve_held.by
    return sheet.said("valve held by", by) == "forged in one"


def _past_guide(spindle: ValveSpindle, leading: Sequence[Metres], sheet: Sheet) -> tuple[Judgement, ...]:
    """The spindle and what of it goes first, each against the bore of its guide."""
    guide, d = sheet.take("d_g", spindle.guide_bore), sheet.take("d", spindle.diameter)
    return tuple(
        sheet.at_most(one, guide).else_says("spindle {found} where it passes its guide of {limit}")
        for one in (d, *leading)
    )


RULES = (passes_the_other_bore, passes_its_seat, spindle_enters)
