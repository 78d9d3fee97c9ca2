"""Steam paths: from the first pipe to each inlet valve, from each exhaust valve to the nozzle.

No path leads round: a loop of links is cut as it is read.
"""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import BlastNozzle, Component, SteamPassage, SteamPipe


def _live(passage: SteamPassage, sheet: Sheet) -> Iterator[ToFill]:
    """From a passage that ends at an inlet valve back to the pipe in which its steam begins."""
    if not _is_at_valve(passage, "inlet", sheet):
        return
    part: Component = passage
    while isinstance(part, SteamPassage | SteamPipe) and sheet.is_stated(f"before {part.id}", part.follows):
        part = sheet.follow(part.follows)
    found = (part,) if isinstance(part, SteamPipe) else ()
    yield ToFill(f"live path of {passage.id}", "steam pipe at its start", found, where=part.where)


def _exhaust(passage: SteamPassage, sheet: Sheet) -> Iterator[ToFill]:
    """From a passage that begins at an exhaust valve on to the nozzles in which its steam ends."""
    if not _is_at_valve(passage, "exhaust", sheet):
        return
    waiting: list[Component] = [passage]
    nozzles = dict[str, BlastNozzle]()
    while waiting:
        part = waiting.pop()
        for kind in (SteamPassage, SteamPipe, BlastNozzle):
            for one in sheet.fillers(part, kind, by="follows"):
                if isinstance(one, BlastNozzle):
                    nozzles[one.id] = one
                else:
                    waiting.append(one)
    yield ToFill(
        f"exhaust path of {passage.id}", BlastNozzle.called, tuple(nozzles.values()), where=passage.where
    )


def _is_at_valve(passage: SteamPassage, serves: str, sheet: Sheet) -> bool:
    if not sheet.is_stated("valve", passage.valve):
        return False
    valve = sheet.follow(passage.valve)
    return sheet.said(f"what {valve.id} serves", valve.serves) == serves


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

RULES = (leaves, reaches)
