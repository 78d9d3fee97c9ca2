"""All that sees one duty is made for one life."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import distance_of_life, starts_of_life
from speclint.specs import SteamPipe, Weldment


def _lives(part: Weldment | SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """The distance and the starts that a weldment states, or the cycles of a pipe, against the life of the duty."""
    own = part.starts if isinstance(part, Weldment) else part.cycles
    starts = starts_of_life(part, own, sheet)
    if starts is not own:
        yield Pair(own, starts, name="starts")
    if isinstance(part, Weldment):
        distance = distance_of_life(part, part.life_distance, sheet)
        if distance is not part.life_distance:
            yield Pair(part.life_distance, distance, name="distance")


one_life: Rule = agreement(
    "duty.one-life",
    title="A weldment and a steam pipe are made for the life that their duty states",
    on=(SteamPipe, Weldment),
    pairs=_lives,
    within="1 km",
    grade=Grade.HOLD,
    why="a block that lasts twice the fires of its pipe lasts no longer than the pipe, and fatigue does not ask which",
    leaves_out="a duty that states no life",
)

RULES = (one_life,)
