"""Whether the findings that were accepted are still the same."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Component


@rule(
    "release.stale-concession",
    title="No concession on the component has expired, runs longer than is allowed or rests on a value that has "
    "changed",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a concession accepts one set of values until one date: a drawing that was changed since was "
    "never accepted",
    edition=2,
    leaves_out="signatures, and whether the person who accepted was entitled to: the register and the "
    "gate check those",
    against=(),
)
def stale_concession(_component: Component, sheet: Sheet) -> Judgement:
    """Lists each concession that no longer holds, with the value that changed or what is wrong with its days."""
    found = sheet.concessions()
    if not found:
        raise sheet.not_applicable("it has no concession")
    stale = [f"{number}: {why}" for number, why in found if why]
    if stale:
        return sheet.states(False, "; ".join(stale))
    numbers = ", ".join(number for number, _ in found)
    return sheet.states(True, f"in force, and based on values that have not changed: {numbers}")


RULES = (stale_concession,)
