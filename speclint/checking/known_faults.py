"""The known faults of the old design that a run looked at, and which of them are still open."""

from __future__ import annotations

from msgspec import Struct

from speclint.checking.assessment import Assessment
from speclint.rules import Grade

_WORD = "known-fault"


class KnownFaults(Struct, frozen=True):
    """The known faults by their ids: those that are settled, those of which a check is open, those that wait.

    ``waiting`` are those of which no more than a query is open, such as a test that is still to be done.
    """

    settled: tuple[str, ...] = ()
    open: tuple[str, ...] = ()
    waiting: tuple[str, ...] = ()

    @property
    def count(self) -> int:
        """How many there are."""
        return len(self.settled) + len(self.open) + len(self.waiting)


def known_faults(assessment: Assessment) -> KnownFaults:
    """The known faults among what was checked, by what rules on known faults alone found."""
    worst: dict[str, int] = {}
    for one in assessment.checks:
        if one.kind == _WORD and _of_faults_alone(one.rule.on):
            unsaid = Grade.QUERY if one.outcome == "not assessed" else 0
            worst[one.component] = max(worst.get(one.component, 0), one.stands_in_the_way or unsaid)
    return KnownFaults(
        tuple(name for name, grave in worst.items() if not grave),
        tuple(name for name, grave in worst.items() if grave > Grade.QUERY),
        tuple(name for name, grave in worst.items() if 0 < grave <= Grade.QUERY),
    )


def _of_faults_alone(kinds: tuple[type, ...]) -> bool:
    return all(getattr(kind, "kind", "") == _WORD for kind in kinds)
