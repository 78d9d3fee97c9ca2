"""A pipe and its neighbours in the path of the steam state one steam."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import steam_by_path
from speclint.specs import SteamPipe


def _steam(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """What the pipe states, and what the passage or pipe before it, or after it, carries."""
    by_path = steam_by_path(pipe, sheet)
    if by_path is not None:
        yield Pair(pipe.carries, by_path)


same_steam: Rule = agreement(
    "steamway.same-steam",
    title="A pipe carries the steam that its neighbours in the path carry",
    on=SteamPipe,
    pairs=_steam,
    within="",
    grade=Grade.HOLD,
    why="a wall worked for exhaust steam bursts when the boiler's steam comes to it",
    leaves_out="a pipe that no other part of a path states a link to or from",
)

RULES = (same_steam,)
