"""The room for the seat of a crank pin: its boss, and the frame behind the wheel."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import cranks_of, engine_of, turning_with
from speclint.specs import Crank, Pin
from speclint_motion.formulae.pin_seats import end_of_seat, longest_seat, room_inside, room_outside
from speclint_motion.inputs.thrust import overhang_of_force, piston_of

#: A part of what is judged: its name, and how it is judged.
_Item = tuple[str, Callable[[], Judgement]]


@rule(
    "pin.seat-has-room",
    title="The seat of a crank pin, in a boss that its axle states, is at most 1.75 times as long as thick, and "
    "ends before the frame behind the wheel, or within the frames where the cylinder lies between them",
    on=Pin,
    grade=Grade.NONCONFORMITY,
    edition=3,
    limits=[
        Limit(
            "proportion",
            "1.75",
            "ratio",
            COMMON_PRACTICE,
            "greatest length of a pressed seat over its diameter; wheels and webs have 0.7 to 1.5",
        )
    ],
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a seat that is longer on paper than the boss of its wheel holds the pin on paper only",
    leaves_out="whether pin and axle state the same boss (axle.pins-of-its-cranks); a frame set in or out behind the "
    "wheel where the axle does not state it: then that at the cylinder counts, and what ends beyond it is asked about; "
    "axleboxes and the other crank; a crosshead pin, of which pin.in-its-crosshead judges this; a taper, whose length "
    "pin.held does not count",
    against=(),
)
def seat_has_room(pin: Pin, sheet: Sheet) -> Judgement:
    """L ≤ k d_s, else a query; and a + L no more than from the rods to the frame: y_a − y_f, or y_a + y_f inside.

    The frame is where the axle says, else where it stands at the cylinder.
    """
    if sheet.read("place", pin.place) != "crank pin":
        raise sheet.not_applicable("pin.in-its-crosshead judges the seat of a crosshead pin")
    if sheet.read("held by", pin.seat.by) == "taper and nut":
        raise sheet.not_applicable("the length of a taper is not counted")
    items: list[_Item] = [
        ("proportion", partial(_in_proportion, pin, sheet)),
        ("boss", partial(_in_boss, pin, sheet)),
        *_at_cranks(pin, sheet),
    ]
    return sheet.each(items, lambda item: item[1]())


def _in_proportion(pin: Pin, sheet: Sheet) -> Judgement:
    most = sheet.work(
        "L_m", longest_seat, k=sheet.limit("proportion", "k"), d_s=sheet.take("d_s", pin.seat.diameter)
    )
    return (
        sheet.at_most(sheet.take("L", pin.seat.length), most)
        .else_says("seat of {found}, up to {limit} is usual for its diameter")
        .graded(Grade.QUERY)
    )


def _in_boss(pin: Pin, sheet: Sheet) -> Judgement:
    """That an axle which names the pin states the boss that holds it; else the pin alone says what grips it."""
    drawn = list(turning_with(pin, sheet))
    silent = [] if drawn else ["names this pin among what turns with it"]
    for _, name, piece in drawn:
        own = {"boss": piece.boss, "boss_width": piece.boss_width, "boss_material": piece.boss_material}
        silent += [f"states {key} of {name}" for key, one in own.items() if not sheet.is_stated(key, one)]
    says = f"no driving axle {silent[0]}: the boss of its seat is the pin's own statement" if silent else ""
    where = pin.seat.where
    return sheet.states(not silent, says or "its axle states the boss of its seat", where=where).graded(
        Grade.QUERY
    )


def _at_cranks(pin: Pin, sheet: Sheet) -> Iterator[_Item]:
    """Each crank of the cylinder that says where its rods are, where it or the axle says where the frame is."""
    liner = sheet.follow(piston_of(sheet.follow(pin.moved_by), sheet).runs_in)
    block, bore = sheet.follow(liner.housed_in), sheet.read("bore of liner", liner.in_bore)
    engine = engine_of(block, sheet)
    for name, crank in cranks_of(engine, block, sheet) if engine is not None else ():
        frames = crank.frame_from_centre, *(axle.frame_from_centre for axle, _, _ in turning_with(pin, sheet))
        placed = sheet.is_stated("rods", crank.axis_from_centre)
        if name == bore and placed and any(sheet.is_stated("frame", one) for one in frames):
            yield "frame", partial(_before_frame, pin, crank, sheet)


def _before_frame(pin: Pin, crank: Crank, sheet: Sheet) -> Judgement:
    """The end of the seat against the frame behind the wheel; a query where it is stated at the cylinder alone."""
    a, L = overhang_of_force(pin, sheet), sheet.take("L", pin.seat.length)
    reach = sheet.work("y_e", end_of_seat, a=a, L=L)
    y_a = sheet.take("y_a", crank.axis_from_centre)
    for axle, _, _ in turning_with(pin, sheet):
        if sheet.is_stated(f"frame at {axle.id}", axle.frame_from_centre):
            room = _room(y_a, sheet.take("y_f", axle.frame_from_centre), sheet)
            return sheet.at_most(reach, room).else_says(
                "seat ends {found} behind the rods, the frame begins at {limit}"
            )
    return (
        sheet.at_most(reach, _room(y_a, sheet.take("y_f", crank.frame_from_centre), sheet))
        .else_says(
            "seat ends {found} behind the rods, the frame begins at {limit} unless it is set in or out there"
        )
        .graded(Grade.QUERY)
    )


def _room(y_a: Metres, y_f: Metres, sheet: Sheet) -> Metres:
    room: Metres = sheet.work("y_r", room_outside if y_a > y_f else room_inside, y_a=y_a, y_f=y_f)
    return room


RULES = (seat_has_room,)
