"""A known fault of the old design: what went wrong, what was changed, and what proves that it is mended."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import FOR_REVIEW, NOT_STATED, LinkTo, OneOrMore, Word
from speclint.specs.naming import NAMES
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class ByCheck(SpecTable):
    """A check that proves the fault mended; it has a name of its own.

    Fields:
        rule: the name of the rule
        of: the part that it is checked on; left out, every part that the fault concerns
    """

    rule: Word[str] = NOT_STATED
    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED


class ByCalculation(SpecTable):
    """A calculation made elsewhere.

    Fields:
        document: its number and issue
        by: who made it
        date: the day, as 2027-05-31
    """

    document: Annotated[Word[str], NAMES] = NOT_STATED
    by: Annotated[Word[str], NAMES] = NOT_STATED
    date: Word[str] = NOT_STATED


class ByTest(SpecTable):
    """A test that shows whether the fault is mended.

    Fields:
        what: what is tested, and what must be found
        result: how it came out, or that it is still to be done
        record: number of its record
        date: the day on which it was made, as 2027-05-31
    """

    what: Word[str] = NOT_STATED
    result: Word[Literal["passed", "failed", "to be done"]] = NOT_STATED
    record: Annotated[Word[str], NAMES] = NOT_STATED
    date: Word[str] = NOT_STATED


class Accepted(SpecTable):
    """That the fault is left as it is, and why.

    Fields:
        by: who accepts it
        date: the day, as 2027-05-31
        grounds: why it may stay
    """

    by: Annotated[Word[str], NAMES, FOR_REVIEW] = NOT_STATED
    date: Word[str] = NOT_STATED
    grounds: Annotated[Word[str], NAMES] = NOT_STATED


class KnownFault(Component):
    """A known fault of the old design.

    Fields:
        on: the parts of the new design that it concerns
        went_wrong: what went wrong, and on which part of the old design
        evidence: how it is known
        evidence_at: where the evidence stands: the record, the work and its page
        consequence: what followed, or may follow
        grade: how grave it is, as a finding
        change: what is changed in the new design
        by_checks: checks that prove it mended, by name
        by_calculations: calculations that prove it mended, by name
        by_tests: tests that prove it mended, by name
        accepted: that it is left as it is
    """

    kind: ClassVar[str] = "known-fault"
    called: ClassVar[str] = "known fault"
    of_metal: ClassVar[bool] = False

    on: Annotated[tuple[LinkTo[Component], ...], OneOrMore(), OWN_PLACE] = ()
    went_wrong: Word[str] = NOT_STATED
    evidence: Word[Literal["record", "measurement", "published account"]] = NOT_STATED
    evidence_at: Word[str] = NOT_STATED
    consequence: Word[str] = NOT_STATED
    grade: Annotated[Word[Literal["hold", "nonconformity", "observation"]], FOR_REVIEW] = NOT_STATED
    change: Word[str] = NOT_STATED
    by_checks: dict[str, ByCheck] = {}
    by_calculations: dict[str, ByCalculation] = {}
    by_tests: dict[str, ByTest] = {}
    accepted: Accepted = Accepted.unstated()
