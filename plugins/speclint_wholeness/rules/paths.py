"""Steam paths and pipes: from the first pipe to each inlet valve, from each exhaust valve to the nozzle."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import (
    BlastNozzle,
    BoltedJoint,
    Component,
    Lagging,
    LensJoint,
    PipeFlange,
    SteamPassage,
    SteamPipe,
)
from speclint_wholeness.inputs import place, said

_ENDS = 2  # of a pipe
_JOINS = ("holds", "bolted_to", "screwed_into")


def _live(passage: SteamPassage, sheet: Sheet) -> Iterator[ToFill]:
    """From a passage that ends at an inlet valve back to the pipe in which its steam begins."""
    if not _is_at_valve(passage, "inlet", sheet):
        return
    part: Component = passage
    seen = {part.id}
    while isinstance(part, SteamPassage | SteamPipe) and sheet.is_stated(f"before {part.id}", part.follows):
        part = sheet.follow(part.follows)
        if part.id in seen:
            break
        seen.add(part.id)
    found = (part,) if isinstance(part, SteamPipe) else ()
    yield ToFill(f"live path of {passage.id}", "steam pipe at its start", found, where=part.where)


def _exhaust(passage: SteamPassage, sheet: Sheet) -> Iterator[ToFill]:
    """From a passage that begins at an exhaust valve on to the nozzles in which its steam ends."""
    if not _is_at_valve(passage, "exhaust", sheet):
        return
    waiting: list[Component] = [passage]
    seen, nozzles = {passage.id}, dict[str, BlastNozzle]()
    while waiting:
        part = waiting.pop()
        for kind in (SteamPassage, SteamPipe, BlastNozzle):
            for one in sheet.fillers(part, kind, by="follows"):
                if isinstance(one, BlastNozzle):
                    nozzles[one.id] = one
                elif one.id not in seen:
                    seen.add(one.id)
                    waiting.append(one)
    yield ToFill(
        f"exhaust path of {passage.id}", BlastNozzle.called, tuple(nozzles.values()), where=passage.where
    )


def _is_at_valve(passage: SteamPassage, serves: str, sheet: Sheet) -> bool:
    if not sheet.is_stated("valve", passage.valve):
        return False
    valve = sheet.follow(passage.valve)
    return said(f"what {valve.id} serves", valve.serves, sheet) == serves


def _joints(pipe: SteamPipe, sheet: Sheet) -> Iterator[ToFill]:
    """The joints of the pipe, of its flanges and of its lens rings: one at each end."""
    carrying = (pipe, *sheet.fillers(pipe, PipeFlange, by="of"), *sheet.fillers(pipe, LensJoint, by="of"))
    joints: dict[str, BoltedJoint] = {}
    wrong = ""
    for part in carrying:
        of_part = sheet.fillers(part, BoltedJoint, by=_JOINS)
        joints |= {one.id: one for one in of_part}
        if len(of_part) > 1 and part is not pipe:
            wrong = f"{of_part[0].id} and {of_part[1].id} are both at {part.id}"
    found = tuple(joints.values())
    wrong = wrong or _at_one_end(pipe, found, {part.id for part in carrying}, sheet)
    yield ToFill(f"ends of {pipe.id}", BoltedJoint.called, found, _ENDS, _ENDS, wrong, pipe.where)


def _at_one_end(pipe: SteamPipe, joints: tuple[BoltedJoint, ...], carrying: set[str], sheet: Sheet) -> str:
    """What is wrong where more joints lead to one part beyond the pipe than it has ends there; else nothing."""
    ends = [
        sheet.follow(end.part).id
        for end in (pipe.starts_at, pipe.ends_at)
        if sheet.is_stated(f"part at an end of {pipe.id}", end.part)
    ]
    beyond: dict[str, list[str]] = {}
    for joint in joints:
        for link in (joint.holds, joint.bolted_to, joint.screwed_into):
            if sheet.is_stated(f"what {joint.id} joins", link):
                part = sheet.follow(link).id
                if part not in carrying:
                    beyond.setdefault(part, []).append(joint.id)
    for part, ids in beyond.items():
        if len(ids) > max(1, ends.count(part)):
            return f"{ids[0]} and {ids[1]} both lead to {part}, at which the pipe has one end"
    return ""


def _lagging(pipe: SteamPipe, sheet: Sheet) -> Iterator[ToFill]:
    """The lagging of the pipe."""
    yield place(pipe.id, pipe, Lagging, sheet, by="covers")


reaches: Rule = filled_once(
    "path.reaches-its-valve",
    title="Each path of live steam that ends at an inlet valve begins in a steam pipe",
    on=SteamPassage,
    places=_live,
    row=470,
    gravity="part",
    why="pressure losses of a path that begins in the middle are those of half of it",
    leaves_out="the header and the boiler before the first pipe",
)

leaves: Rule = filled_once(
    "path.leaves-its-valve",
    title="Each path of exhaust steam that begins at an exhaust valve ends in one blast nozzle",
    on=SteamPassage,
    places=_exhaust,
    row=480,
    gravity="part",
    why="the back pressure of a path without its end is not known",
    leaves_out="an engine that exhausts elsewhere, for which a concession says so",
)

joined: Rule = filled_once(
    "pipe.joined-at-both-ends",
    title="One bolted joint is at each end of a steam pipe",
    on=SteamPipe,
    places=_joints,
    row=510,
    gravity="hold",
    why="a joint that nobody drew leaks or blows out at the pressure of the boiler",
    leaves_out="welded ends, for which a concession says so; which of the ends a joint is at, where no "
    "flange, lens ring or part beyond tells",
    edition=3,
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

RULES = (joined, lagged, leaves, reaches)
