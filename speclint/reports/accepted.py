"""The concessions that bear on the checks of an assessment, as the register judges them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import TYPE_CHECKING

from speclint.checking import Assessment

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
        subject = (one.concession.component, one.concession.rule)
        if subject not in found or not found[subject].holds:
            found[subject] = one
    return found
