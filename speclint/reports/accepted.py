"""The concessions that bear on the checks of an assessment, as the register judges them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING

from speclint.checking import Alike, Assessment, Check, grouped

if TYPE_CHECKING:
    from speclint.register import Standing

Standings = Mapping[tuple[str, str], "Standing"]


def standings_of(
    assessment: Assessment, today: dt.date | None = None, about: Collection[tuple[str, str]] | None = None
) -> Standings:
    """The state of the latest concession of each component and rule; none where the register is empty.

    Where several entries are about one finding, the one that holds counts, else the last. ``about`` are the components
    and rules that are asked about, where not all.
    """
    register = assessment.register
    if not register.concessions:
        return {}
    from speclint.register import standings, surroundings

    found: dict[tuple[str, str], Standing] = {}
    for one in standings(register, surroundings(assessment, today or dt.date.today()), about):
        subject = one.subject
        if subject not in found or not found[subject].holds:
            found[subject] = one
    return found


def standings_shown(assessment: Assessment) -> Standings:
    """The same of the checks that are in the way: no other check is made to tell how its concession stands."""
    in_the_way = {check.order for check in assessment.checks if check.stands_in_the_way is not None}
    conceded = {(part, one.rule) for one in assessment.register.concessions for part in one.parts}
    about = in_the_way & conceded
    return standings_of(assessment, about=about) if about else {}


def with_concessions(checks: Iterable[Check], conceded: Standings) -> Iterator[Alike]:
    """Checks with those of parts alike together, where one concession is of all of them, or none of any."""
    for alike in grouped(checks):
        by_state: dict[object, list[Check]] = {}
        for check in alike.checks:
            standing = conceded.get(check.order)
            state = (standing.concession.number, standing.state) if standing else ()
            by_state.setdefault(state, []).append(check)
        yield from (Alike(tuple(same)) for same in by_state.values())
