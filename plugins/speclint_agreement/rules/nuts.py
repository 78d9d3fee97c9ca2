"""The nuts on a piston rod, of its piston and of its crosshead, have the threads of the rod."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from speclint import Grade, NotKnown, Pair, Rule, Sheet, agreement, worked
from speclint.facts import crossheads_on
from speclint.handbook.threads import thread
from speclint.specs import NotStated, PistonRod, Stated

_Text: TypeAlias = Stated[str] | NotStated


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

RULES = (nuts_of_rod,)
