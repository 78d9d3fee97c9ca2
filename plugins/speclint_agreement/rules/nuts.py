"""What holds a rod in piston and crosshead, or a valve on its spindle, is what is at that end: a thread, a slot."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from speclint import Grade, NotKnown, Pair, Rule, Sheet, agreement, worked
from speclint.facts import crossheads_on
from speclint.handbook.threads import least_major_diameter, thread
from speclint.specs import Crosshead, NotStated, PistonRod, RodSection, Stated, ValveSpindle

_Text: TypeAlias = Stated[str] | NotStated
#: The section of a rod by which a crosshead holds it, by the words of both.
_HOLDS = {"cotter slot": "cotter", "thread": "nut", "shoulder": "flange bolts"}


def _nuts(rod: PistonRod, sheet: Sheet) -> Iterator[Pair]:
    """The thread of each nut against that of the rod at the end where it is, in whatever way either is written."""
    piston = sheet.follow(rod.carries)
    if sheet.said(f"{piston.id} held by", piston.fastening.by) == "nut":
        yield from _against(piston.id, piston.fastening.thread, _threads_at(rod, "piston end", sheet), sheet)
    for head in crossheads_on(rod, sheet):
        if sheet.said(f"{head.id} held by", head.rod_held.by) == "nut":
            yield from _against(
                head.id, head.rod_held.thread, _threads_at(rod, "crosshead end", sheet), sheet
            )


def _against(part: str, stated: _Text, cut: Mapping[str, _Text], sheet: Sheet) -> Iterator[Pair]:
    """The thread of the nut of a part against those that are cut at an end: against its own, where one of them is."""
    nut = sheet.said(f"thread of the nut of {part}", stated)
    if nut and cut:
        on, place = next((one for one in cut.items() if _is_one(nut, one[0])), next(iter(cut.items())))
        yield Pair(stated, worked(nut if _is_one(nut, on) else on, place), name=part)


def _threads_at(rod: PistonRod, end: str, sheet: Sheet) -> dict[str, _Text]:
    """The threads that are listed at an end of a rod, each with the place that states it."""
    return {
        sheet.read(f"thread of {name}", section.thread): section.thread
        for name, section in rod.sections.items()
        if sheet.said(f"place of {name}", section.at) == end
        and sheet.said(f"form of {name}", section.form) == "thread"
        and sheet.is_stated(f"thread of {name}", section.thread)
    }


def _valve_nuts(spindle: ValveSpindle, sheet: Sheet) -> Iterator[Pair]:
    """The thread of the nut of the valve, at its least over the crests, against the end of the spindle under it."""
    held, end = spindle.valve_held, spindle.valve_end_diameter
    designation = sheet.said("thread of the nut of the valve", held.thread)
    if (
        designation
        and sheet.said("valve held by", held.by) == "nut"
        and sheet.is_stated("end in the valve", end)
    ):
        d = sheet.look_up("d_min", least_major_diameter, designation=designation)
        yield Pair(worked(d, held.thread), end, "at most")


def _held(rod: PistonRod, sheet: Sheet) -> Iterator[Pair]:
    """How each crosshead holds the rod against the sections at that end, and its cotter against the slot."""
    ends = {
        name: one
        for name, one in rod.sections.items()
        if sheet.said(f"place of {name}", one.at) == "crosshead end"
    }
    by = {}
    for name, one in ends.items():
        form = sheet.said(f"form of {name}", one.form)
        by[name] = _HOLDS.get(form or "", "")
    for head in crossheads_on(rod, sheet):
        held = sheet.said(f"{head.id} holds it by", head.rod_held.by)
        fit = {name: one for name, one in ends.items() if by[name] == held}
        shown = fit or {name: one for name, one in ends.items() if by[name]}
        if held and shown:
            name, section = next(iter(shown.items()))
            yield Pair(head.rod_held.by, worked(by[name], section.form), name=head.id)
        if held == "cotter":
            yield from _in_slots(head, fit, sheet)


def _in_slots(head: Crosshead, slots: Mapping[str, RodSection], sheet: Sheet) -> Iterator[Pair]:
    for name, section in slots.items():
        if sheet.is_stated(f"width of {name}", section.slot_width):
            yield Pair(
                head.rod_held.cotter_thickness, section.slot_width, "at most", name=f"{head.id}, {name}"
            )


def _is_one(nut: str, rod: str) -> bool:
    """Whether two designations are of one thread, however each is written."""
    try:
        return thread(nut).name == thread(rod).name
    except NotKnown:
        return nut == rod


nuts_of_rod: Rule = agreement(
    "rod.thread-of-its-nuts",
    title="A nut that holds a piston rod, in its piston or in its crosshead, has the thread of the rod at that end",
    on=PistonRod,
    pairs=_nuts,
    within="",
    grade=Grade.HOLD,
    why="a nut larger than its thread slides off the rod, and is reckoned with a thread that is not there",
    leaves_out="length and class of the thread; a rod whose section at that end is not listed (rod.tension)",
)

held_as_drawn: Rule = agreement(
    "rod.end-of-its-crosshead",
    title="A piston rod has at its crosshead's end what its crosshead holds it by: a slot no narrower than the cotter, "
    "a thread, or the shoulder of a flange",
    on=PistonRod,
    pairs=_held,
    within="",
    grade=Grade.HOLD,
    why="a rod that is judged at its flange breaks at the slot that its crosshead's drawing has cut into it",
    leaves_out="a taper beside the slot; a rod whose section at that end is not listed (rod.tension)",
)

nut_of_valve: Rule = agreement(
    "spindle.thread-of-its-nut",
    title="The nut of a valve has a thread that can be cut on the end of its spindle",
    on=ValveSpindle,
    pairs=_valve_nuts,
    within="",
    grade=Grade.HOLD,
    why="a nut larger than the end of its spindle slides off, and the valve falls into the cylinder",
    leaves_out="a nut smaller than the end, which has a shoulder then; length of the thread; threads of a class wider "
    "than that of common practice; a spindle whose end is not stated (spindle.enters)",
)

RULES = (held_as_drawn, nut_of_valve, nuts_of_rod)
