"""The stages of a steam path: which pipes and passages follow each other, and what branches off."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeAlias

from speclint.rules import Sheet
from speclint.specs import BlastNozzle, Component, Link, NotStated, SteamPassage, SteamPipe

Stage: TypeAlias = SteamPipe | SteamPassage
#: Passages that leave a path, or lead air into a cylinder that drifts.
_OFF_THE_PATH = ("branch", "breathing way")


def paths_to(end: Component, sheet: Sheet) -> tuple[tuple[Stage, ...], ...]:
    """The paths that end here, each the stages in the order of flow: several at a nozzle, else one.

    :raises NotApplicable: where the path goes on, or the passage is not in one.
    """
    if isinstance(end, BlastNozzle):
        return paths_into(end, sheet)
    if isinstance(end, SteamPassage):
        place = _place(end, sheet)
        if place in _OFF_THE_PATH:
            raise sheet.not_applicable("it branches off a path")
        if place == "port" and not sheet.is_stated(f"what {end.id} follows", end.follows):
            raise sheet.not_applicable("it lies between valve and cylinder")
    further = _followers(end, sheet)
    if further:
        raise sheet.not_applicable(f"the path goes on to {further[0].id} and is judged at its end")
    return (_stages_before(end, sheet),)


def paths_into(nozzle: BlastNozzle, sheet: Sheet) -> tuple[tuple[Stage, ...], ...]:
    """The exhaust paths that end in a nozzle, each the stages in the order of flow.

    :raises NotAssessed: where the nozzle names none.
    """
    if not nozzle.follows:
        raise sheet.not_assessed(f"follows is not stated in {nozzle.where.file}", nozzle.where)
    return tuple(_stages_before(sheet.follow(link), sheet) for link in nozzle.follows)


def _place(passage: SteamPassage, sheet: Sheet) -> str:
    return sheet.read(f"place of {passage.id}", passage.place)


def _followers(stage: Component, sheet: Sheet) -> list[Component]:
    """Components that state that they follow a stage, without branches."""
    found: list[Component] = []
    for one in _stating_to_follow(stage, sheet):
        if not (isinstance(one, SteamPassage) and _place(one, sheet) in _OFF_THE_PATH):
            found.append(one)
    return found


def _stating_to_follow(stage: Component, sheet: Sheet) -> list[Stage | BlastNozzle]:
    linked: list[Stage | BlastNozzle] = [
        *sheet.belonging_to(stage, SteamPassage),
        *sheet.belonging_to(stage, SteamPipe),
        *sheet.belonging_to(stage, BlastNozzle),
    ]
    return [one for one in linked if any(sheet.follow(link).id == stage.id for link in _followed(one, sheet))]


def _followed(one: Stage | BlastNozzle, sheet: Sheet) -> Iterator[Link[Component] | NotStated]:
    """What a part states that it follows."""
    if isinstance(one, BlastNozzle):
        yield from one.follows
    elif sheet.is_stated(f"what {one.id} follows", one.follows):
        yield one.follows


def _stages_before(last: Component, sheet: Sheet) -> tuple[Stage, ...]:
    stages: list[Stage] = []
    part = last
    while True:
        if not isinstance(part, SteamPipe | SteamPassage):
            raise sheet.not_assessed(f"{part.id} is neither pipe nor passage of a steam path", part.where)
        stages.append(part)
        if not sheet.is_stated(f"what {part.id} follows", part.follows):
            return tuple(reversed(stages))
        part = sheet.follow(part.follows)


def branches_off(stage: Stage, sheet: Sheet) -> list[SteamPassage]:
    """The branches that a stage feeds."""
    return [
        one
        for one in _stating_to_follow(stage, sheet)
        if isinstance(one, SteamPassage) and _place(one, sheet) == "branch"
    ]


def carries_live(stages: Sequence[Stage], sheet: Sheet) -> bool:
    """Whether the path carries live steam."""
    return sheet.read("carries", stages[0].carries) == "live steam"
