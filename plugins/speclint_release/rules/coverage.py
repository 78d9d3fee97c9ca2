"""Share of the checks on a part that could be assessed."""

from __future__ import annotations

from collections.abc import Mapping

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import Component
from speclint_release.formulae.records import share_assessed

#: How a check came out that waits for a file which could not be read.
_WAITING = "waiting"


@rule(
    "release.share-assessed",
    title="At least 90 % of the checks that apply to the part are assessed",
    wrong="share of checks assessed {found}, {limit} wanted",
    on=Component,
    grade=Grade.OBSERVATION,
    gravest=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="a report without findings means little for a part whose spec states little",
    leaves_out="what no rule covers, and what waits for a file that could not be read, of which that is told",
    against=(),
    limits=[
        Limit(
            "wanted",
            "0.9",
            "ratio",
            COMMON_PRACTICE,
            "share of the applicable checks that should be assessed",
        ),
        Limit("least", "0.8", "ratio", COMMON_PRACTICE, "least share of the applicable checks assessed"),
    ],
    reviews=True,
    edition=3,
)
def share(component: Component, sheet: Sheet) -> Judgement:
    """Counts the checks of all families, but for those that are not applicable or wait for a file not readable."""
    outcomes = sheet.outcomes()
    assessed, applicable = _counts(outcomes)
    if not applicable and _WAITING in outcomes.values():
        raise sheet.not_assessed("all its checks wait for files that could not be read", component.where)
    if not applicable:
        return sheet.states(False, f"no rule applies to a {component.kind} as it is stated").graded(
            Grade.OBSERVATION
        )
    worked = sheet.work("s", share_assessed, n_a=float(assessed), n=float(applicable))
    wanted = sheet.at_least(worked, sheet.limit("wanted"))
    least = sheet.at_least(worked, sheet.limit("least")).graded(Grade.QUERY)
    return sheet.worst(wanted, least)


def _counts(outcomes: Mapping[str, str]) -> tuple[int, int]:
    applicable = [outcome for outcome in outcomes.values() if outcome not in ("not applicable", _WAITING)]
    return sum(outcome != "not assessed" for outcome in applicable), len(applicable)


RULES = (share,)
