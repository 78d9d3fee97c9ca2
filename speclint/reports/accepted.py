"""The concessions that bear on the checks of an assessment, as the register judges them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from typing import TYPE_CHECKING

from speclint.checking import Alike, Assessment, Check, grouped

if TYPE_CHECKING:
    from speclint.register import Standing

Standings = Mapping[tuple[str, str], "Standing"]


def standings_of(assessment: Assessment, today: dt.date | None = None) -> Standings:
    """The state of the latest concession of each component and rule; none where the register is empty.

    Where several entries are about one finding, the one that holds counts, else the last.
    """
    register = assessment.register
    if not register.concessions:
        return {}
    from speclint.register import standings, surroundings

    found: dict[tuple[str, str], Standing] = {}
    for one in standings(register, surroundings(assessment, today or dt.date.today())):
        subject = one.subject
        if subject not in found or not found[subject].holds:
            found[subject] = one
    return found


def standings_shown(assessment: Assessment) -> Standings:
    """The same where a rule that is in the way has a concession; none where no finding can be conceded."""
    in_the_way = {check.rule.name for check in assessment.checks if check.stands_in_the_way is not None}
    conceded = any(one.rule in in_the_way for one in assessment.register.concessions)
    return standings_of(assessment) if conceded else {}


def with_concessions(checks: Iterable[Check], conceded: Standings) -> Iterator[Alike]:
    """Checks with those of parts alike together, where one concession is of all of them, or none of any."""
    for alike in grouped(checks):
        by_state: dict[object, list[Check]] = {}
        for check in alike.checks:
            standing = conceded.get(check.order)
            state = (standing.concession.number, standing.state) if standing else ()
            by_state.setdefault(state, []).append(check)
        yield from (Alike(tuple(same)) for same in by_state.values())
