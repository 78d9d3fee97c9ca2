"""How many reasons withhold a release, and of what they are made: the same figures in a check and at the gate."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.errors import replace
from speclint.reports.accepted import Standings
from speclint.reports.phrases import count
from speclint.rules import Grade

if TYPE_CHECKING:
    from speclint.register import Decision

_UNREADABLE, _NOT_RUN = 2, 3  # exit codes of the program


class Arithmetic(Struct, frozen=True):
    """The reasons to withhold by their sort, and the findings beside them.

    Each part counts by itself, also of parts alike.
    """

    holds: int = 0
    conceded: int = 0
    not_assessed: int = 0
    unread: int = 0
    not_run: int = 0
    others: int = 0
    nonconformities: int = 0
    queries: int = 0
    observations: int = 0
    conform: int = 0

    @property
    def reasons(self) -> int:
        """All that withholds a release."""
        return self.holds + self.not_assessed + self.unread + self.not_run + self.others

    @property
    def terms(self) -> tuple[tuple[int, str], ...]:
        """The terms of the sum that are not zero: each number, and what it is of."""
        parts = (
            (self.holds, "hold not conceded", "holds not conceded"),
            (self.not_assessed, "safety check not assessed", "safety checks not assessed"),
            (self.unread, "line not readable", "lines not readable"),
            (self.not_run, "rule not run", "rules not run"),
            (self.others, "other", "others"),
        )
        return tuple((number, one if number == 1 else many) for number, one, many in parts if number)

    @property
    def says(self) -> str:
        """The sum in a sentence.

        >>> Arithmetic(holds=17, not_assessed=6).says
        '17 holds not conceded + 6 safety checks not assessed = 23 reasons to withhold release.'
        >>> Arithmetic(nonconformities=2).says  # a page that says "not in order" is no refusal of release
        'Release is not withheld: no hold stands that is not conceded.'
        """
        told = " + ".join(f"{number} {words}" for number, words in self.terms)
        if not told:
            if self.conceded or self.nonconformities:
                return "Release is not withheld: no hold stands that is not conceded."
            return "No reason to withhold release."
        return f"{told} = {count(self.reasons, 'reason')} to withhold release."

    @property
    def beside(self) -> str:
        """What does not withhold a release, in a sentence.

        >>> Arithmetic(holds=1, conceded=1, nonconformities=2, conform=40).beside
        'Beside them 1 hold conceded, 2 nonconformities; 40 checks conform.'
        >>> Arithmetic(queries=2, conform=40).beside  # where there is no reason, there is no "them"
        'There are 2 queries; 40 checks conform.'
        """
        counted = (
            (self.conceded, "hold"),
            (self.nonconformities, "nonconformity"),
            (self.queries, "query"),
            (self.observations, "observation"),
        )
        found = [count(number, word) + " conceded" * (word == "hold") for number, word in counted if number]
        conform = f"{count(self.conform, 'check')} conform{'s' * (self.conform == 1)}."
        if not found:
            return conform
        alone = "There is" if found[0].startswith("1 ") else "There are"
        return f"{'Beside them' if self.terms else alone} {', '.join(found)}; {conform}"


def arithmetic_of(assessment: Assessment, conceded: Standings) -> Arithmetic:
    """The sums of a check."""
    stands = {subject for subject, standing in conceded.items() if standing.holds}
    withheld = [
        one for one in assessment.checks if one.grade is Grade.HOLD and one.stands_in_the_way is not None
    ]
    run = [one for one in withheld if not one.could_not_run]
    open_ones = [one for one in run if one.order not in stands]
    return _with_findings(
        Arithmetic(
            holds=_outcomes(open_ones, "finding"),
            conceded=len(run) - len(open_ones),
            not_assessed=_outcomes(open_ones, "not assessed"),
            unread=len(assessment.complaints),
            not_run=len(withheld) - len(run),
            others=int(assessment.nothing_checked),
        ),
        assessment,
    )


def arithmetic_at_gate(decision: Decision) -> Arithmetic:
    """The sums of a decision."""
    holds = [one.hold for one in decision.reasons if one.hold is not None]
    others = [one for one in decision.reasons if one.hold is None]
    unread = sum(one.code == _UNREADABLE for one in others)
    not_run = sum(one.code == _NOT_RUN for one in others)
    sums = Arithmetic(
        holds=_outcomes(holds, "finding"),
        conceded=len(decision.accepted),
        not_assessed=_outcomes(holds, "not assessed"),
        unread=unread,
        not_run=not_run,
        others=len(others) - unread - not_run,
    )
    return _with_findings(sums, decision.assessment) if decision.assessment else sums


def _with_findings(sums: Arithmetic, assessment: Assessment) -> Arithmetic:
    found = [one for one in assessment.checks if one.outcome == "finding"]
    return replace(
        sums,
        nonconformities=_graded(found, Grade.NONCONFORMITY),
        queries=_graded(found, Grade.QUERY),
        observations=_graded(found, Grade.OBSERVATION),
        conform=_outcomes(assessment.checks, "conforms"),
    )


def _outcomes(checks: Iterable[Check], outcome: str) -> int:
    return sum(one.outcome == outcome for one in checks)


def _graded(found: Iterable[Check], grade: Grade) -> int:
    return sum(one.grade is grade for one in found)
