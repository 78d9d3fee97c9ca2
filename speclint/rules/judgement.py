"""The result of a rule: whether it holds, by how much, or why this cannot be judged."""

from __future__ import annotations

from dataclasses import dataclass, replace

from speclint.errors import NOWHERE, Location
from speclint.rules.grade import Grade

#: Rounding of floating-point arithmetic: a value this near its limit sits at the limit.
ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Amount:
    """A value on a sheet: SI number, SI unit, the unit a spec wrote it in, and what it is."""

    value: float
    unit: str
    name: str = ""
    written_in: str = ""


@dataclass(frozen=True, slots=True)
class Judgement:
    """Whether the rule holds, and how much of the limit is used.

    ``utilisation`` is 1.00 at the limit, None where the rule compares no numbers. ``left`` is what
    remains of a clearance or an interference that must be kept. ``says`` is the result in words. ``grade``
    overrides the rule's own for this finding. ``where`` points at the value to look at.
    """

    holds: bool
    says: str
    utilisation: float | None = None
    found: Amount | None = None
    limit: Amount | None = None
    compared: str = ""
    left: Amount | None = None
    grade: Grade | None = None
    where: Location = NOWHERE

    def graded(self, grade: Grade) -> Judgement:
        """The same judgement with another grade than the rule's usual finding."""
        return replace(self, grade=grade)

    def pointing_at(self, where: Location) -> Judgement:
        """The same judgement, pointing at the value to look at."""
        return replace(self, where=where)


class RuleEnded(Exception):
    """A rule cannot continue: an input is not stated, the rule does not apply, or no source covers the case."""

    outcome = ""

    def __init__(self, says: str, where: Location = NOWHERE) -> None:
        super().__init__(says)
        self.says = says
        self.where = where


class NotAssessed(RuleEnded):
    """An input is missing; ``says`` names its key and file."""

    outcome = "not assessed"


class NotApplicable(RuleEnded):
    """The rule does not apply to this component as it is stated."""

    outcome = "not applicable"


class NotCovered(RuleEnded):
    """No source covers the case: a query."""

    outcome = "query"
