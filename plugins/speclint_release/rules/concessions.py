"""Whether what was once accepted is still what stands."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Component


@rule(
    "release.stale-concession",
    title="Every concession on the component is in time and rests on values that have not changed",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="what was accepted was one size at one pressure on one day: a drawing that has moved on was never accepted",
    leaves_out="signatures, and whether whoever accepted was entitled to: the register and the gate look at those",
)
def stale_concession(_component: Component, sheet: Sheet) -> Judgement:
    """Names each concession whose time is over, and the value that changed or the day on which it ended."""
    found = sheet.concessions()
    if not found:
        raise sheet.not_applicable("nothing is conceded on it")
    stale = [f"{number}: {why}" for number, why in found if why]
    if stale:
        return sheet.states(False, "; ".join(stale))
    numbers = ", ".join(number for number, _ in found)
    return sheet.states(True, f"in time, and resting on what stands: {numbers}")


RULES = (stale_concession,)
