"""Steam pipes: a joint at each end, into the part that the pipe meets there, and lagging."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import (
    BlastNozzle,
    BoltedJoint,
    Component,
    CylinderBlock,
    Lagging,
    LensJoint,
    PipeEnd,
    PipeFlange,
    SteamPassage,
    SteamPipe,
)
from speclint_wholeness.inputs import place

_ENDS = 2  # of a pipe
_UNDER = ("bolted_to", "screwed_into")
_JOINS = ("holds", *_UNDER)


def _joints(pipe: SteamPipe, sheet: Sheet) -> Iterator[ToFill]:
    """The joints of the pipe, of its flanges and of its lens rings: one at each end, into what the pipe meets there."""
    carrying = _carried(pipe, sheet)
    joints: dict[str, BoltedJoint] = {}
    wrong = ""
    for part in carrying:
        of_part = sheet.fillers(part, BoltedJoint, by=_JOINS)
        joints |= {one.id: one for one in of_part}
        if len(of_part) > 1 and part is not pipe:
            wrong = f"{of_part[0].id} and {of_part[1].id} are both at {part.id}"
    found = tuple(joints.values())
    wrong = wrong or next(_astray(pipe, found, {part.id for part in carrying}, sheet), "")
    yield ToFill(f"ends of {pipe.id}", BoltedJoint.called, found, _ENDS, _ENDS, wrong, pipe.where)


def _carried(pipe: SteamPipe, sheet: Sheet) -> tuple[Component, ...]:
    """A pipe with its flanges and its lens rings."""
    return (pipe, *sheet.fillers(pipe, PipeFlange, by="of"), *sheet.fillers(pipe, LensJoint, by="of"))


def _astray(pipe: SteamPipe, joints: Sequence[BoltedJoint], own: set[str], sheet: Sheet) -> Iterator[str]:
    """What is wrong with the parts into which the joints of a pipe go; nothing where no end of it is known.

    A block, a nozzle or another pipe is one that the pipe meets. Where one end alone is known, one joint may go into
    whatever is at the other. Both joints go into one part only where both ends do.
    """
    ends = _Ends.of(pipe, sheet)
    there = dict[str, str]()
    for joint in joints:
        for part in _under(joint, sheet):
            if part.id in own or not ends.met or not _is_end(part):
                continue
            if part.id not in ends.met and (ends.both_known or _none_into(ends.met, joints, own, sheet)):
                yield f"{joint.id} goes into {part.id}, {ends.unmet(pipe)}"
            if part.id in there and part.id not in ends.starts & ends.stops:
                yield f"{there[part.id]} and {joint.id} both go into {part.id}"
            there[part.id] = joint.id


def _none_into(met: set[str], joints: Sequence[BoltedJoint], own: set[str], sheet: Sheet) -> bool:
    """Whether the joints of both ends are there, and each names a part, none one that is met."""
    joined = [{part.id for part in _joined(one, sheet)} - own for one in joints]
    return len(joined) >= _ENDS and all(joined) and not any(parts & met for parts in joined)


def _joined(joint: BoltedJoint, sheet: Sheet) -> Iterator[Component]:
    """The part that a joint holds, and those under its nuts."""
    if sheet.is_stated(f"what {joint.id} holds", joint.holds):
        yield sheet.follow(joint.holds)
    yield from _under(joint, sheet)


def _under(joint: BoltedJoint, sheet: Sheet) -> Iterator[Component]:
    """The parts that a joint names under its nuts."""
    for name, link in (("bolted to", joint.bolted_to), ("screwed into", joint.screwed_into)):
        if sheet.is_stated(f"what {joint.id} is {name}", link):
            yield sheet.follow(link)


def _is_end(part: Component) -> bool:
    """Whether it is of the kinds at which the drawings of pipes say that one ends."""
    return isinstance(part, CylinderBlock | BlastNozzle | SteamPipe | PipeFlange | LensJoint)


@dataclass(frozen=True, slots=True)
class _Ends:
    """The parts that a pipe meets at its start and at its end; empty where an end is not known."""

    starts: set[str]
    stops: set[str]
    both_known: bool

    @classmethod
    def of(cls, pipe: SteamPipe, sheet: Sheet) -> _Ends:
        """Those of a pipe, by its ends, its neighbours in the path, and what it says that it is joined to."""
        starts = _met(pipe, pipe.starts_at, _before(pipe, sheet), sheet)
        stops = _met(pipe, pipe.ends_at, _after(pipe, sheet), sheet)
        if not sheet.is_stated(f"what {pipe.id} is joined to", pipe.joined_to):
            return cls(starts, stops, bool(starts and stops))
        beside = sheet.follow(pipe.joined_to).id  # at which end is not said
        known = [one for one in (starts, stops, {beside} - starts - stops) if one]
        return cls(starts | {beside}, stops | {beside}, len(known) >= _ENDS)

    @property
    def met(self) -> set[str]:
        """The parts at either end."""
        return self.starts | self.stops

    def unmet(self, pipe: SteamPipe) -> str:
        """What is wrong with a part at which the pipe does not end."""
        if self.both_known:
            return f"which {pipe.id} does not meet"
        return f"and none into {' or '.join(sorted(self.met))}, which {pipe.id} meets"


def _met(pipe: SteamPipe, end: PipeEnd, neighbours: Iterable[Component], sheet: Sheet) -> set[str]:
    """The parts that a pipe meets at an end: that which the end states, and those that its neighbours in the path are.

    Of a passage it is the block, of a pipe its flanges and lens rings too.
    """
    found: set[str] = set()
    if sheet.is_stated(f"part at an end of {pipe.id}", end.part):
        stated = sheet.follow(end.part)
        found.add(stated.id)
        neighbours = (*neighbours, stated)
    for one in neighbours:
        if isinstance(one, SteamPipe):
            found |= {part.id for part in _carried(one, sheet)}
        elif isinstance(one, SteamPassage) and sheet.is_stated(f"block of {one.id}", one.in_block):
            found.add(sheet.follow(one.in_block).id)
        elif isinstance(one, BlastNozzle):
            found.add(one.id)
    return found


def _before(pipe: SteamPipe, sheet: Sheet) -> Iterator[Component]:
    """What the pipe follows."""
    if sheet.is_stated(f"what {pipe.id} follows", pipe.follows):
        yield sheet.follow(pipe.follows)


def _after(pipe: SteamPipe, sheet: Sheet) -> Iterator[Component]:
    """What follows the pipe."""
    for kind in (SteamPassage, SteamPipe, BlastNozzle):
        yield from sheet.fillers(pipe, kind, by="follows")


def _lagging(pipe: SteamPipe, sheet: Sheet) -> Iterator[ToFill]:
    """The lagging of the pipe."""
    yield place(pipe.id, pipe, Lagging, sheet, by="covers")


joined: Rule = filled_once(
    "pipe.joined-at-both-ends",
    title="One bolted joint is at each end of a steam pipe, and goes into the part that the pipe meets there",
    on=SteamPipe,
    places=_joints,
    row=510,
    gravity="hold",
    why="a joint that nobody drew, or that was drawn in another part, leaks or blows out at the pressure of the boiler",
    leaves_out="welded ends, for which a concession says so; which of the ends a joint is at, where no "
    "flange or lens ring of the pipe tells; a header or another part at which no drawing says that the pipe ends; "
    "what the second joint goes into where one end of the pipe alone is known",
    edition=4,
)

lagged: Rule = filled_once(
    "pipe.lagged",
    title="One lagging covers each steam pipe",
    on=SteamPipe,
    places=_lagging,
    row=640,
    gravity="plan",
    why="bare pipes cool the steam and burn the hand",
    leaves_out="pipes out of reach that are left bare on purpose, for which a concession says so",
)

RULES = (joined, lagged)
