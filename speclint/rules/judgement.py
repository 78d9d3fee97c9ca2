"""The result of a rule: whether it holds, by how much, or why this cannot be judged."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from speclint.errors import NOWHERE, Location, replace
from speclint.quantities import amount, amounts_apart
from speclint.rules.grade import Grade

#: Rounding of floating-point arithmetic: a value this near its limit sits at the limit.
ROUNDING = 1e-9


class Amount(Struct, frozen=True):
    """A value on a sheet: SI number, SI unit, the unit a spec wrote it in, and what it is."""

    value: float
    unit: str
    name: str = ""
    written_in: str = ""


class StatedPlace(Struct, frozen=True):
    """One of the places that state a fact, and what it would have to state for all of them to agree.

    ``aim`` is in SI units, or a word; None where several values together give the fact.
    """

    where: Location
    aim: float | str | bool | None = None


class Judgement(Struct, frozen=True):
    """Whether the rule holds, and how much of the limit is used.

    ``utilisation`` is 1.00 at the limit, None where the rule compares no numbers. ``margins`` are what is left
    before the limit as a share of it, or before each limit of a band; below nothing where the rule fails. Unlike the
    utilisation they go on through a value of nothing. ``left`` is what remains of a clearance or an interference that
    must be kept. ``says`` is the result in words. ``grade`` overrides the rule's own for this finding. ``where`` points
    at the value to look at.

    The worst of several judgements keeps them all in ``parts``, and in ``ended`` what could not be said of an item.
    ``of`` names the item that is judged, where a rule goes over several. ``places`` are those that state a fact and do
    not agree. ``wrong`` says what is wrong where this comparison fails, in place of the rule's own sentence
    (:func:`speclint.rules.actual`). ``brief`` is a result that names places with their drawings, in fewer words.
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
    margins: tuple[float, ...] = ()
    parts: tuple[Judgement, ...] = ()
    ended: tuple[RuleEnded, ...] = ()
    of: str = ""
    places: tuple[StatedPlace, ...] = ()
    wrong: str = ""
    brief: str = ""

    @property
    def margin(self) -> float | None:
        """What is left before the nearer limit, as a share of it."""
        return min(self.margins, default=None)

    @property
    def beyond(self) -> float:
        """By how much what was found lies beyond its limit, in SI units; nothing where it does not, or no numbers are.

        Unlike the utilisation and the margin, which are shares of the limit, it tells of two clearances below nothing
        which is the worse.
        """
        if self.holds or self.found is None or self.limit is None:
            return 0.0
        return abs(self.found.value - self.limit.value)

    @property
    def numbers(self) -> str:
        """What was found and its limit without their names, ``0 N < 1000 N``; "" where no numbers are compared."""
        found, limit = self.found, self.limit
        if found is None or limit is None or self.compared == "reported":
            return ""
        left, right = side_by_side(found, limit, holds=self.holds)
        return f"{left} {as_it_is(self.compared, holds=self.holds)} {right}"

    @property
    def every(self) -> tuple[Judgement, ...]:
        """The comparisons that this is the worst of, or itself."""
        return self.parts or (self,)

    def graded(self, grade: Grade) -> Judgement:
        """The same judgement with another grade than the rule's usual finding."""
        return replace(self, grade=grade, parts=tuple(one.graded(grade) for one in self.parts))

    def pointing_at(self, where: Location) -> Judgement:
        """The same judgement, pointing at the value to look at."""
        return replace(self, where=where, parts=tuple(one.pointing_at(where) for one in self.parts))

    def of_item(self, name: str) -> Judgement:
        """The same judgement, as that of one item of several."""
        parts = tuple(replace(one, of=one.of or name) for one in self.parts)
        return replace(self, of=self.of or name, parts=parts)

    def saying(self, says: str) -> Judgement:
        """The same judgement in other words."""
        return replace(self, says=says, brief="")

    def else_says(self, wrong: str) -> Judgement:
        """The same judgement, with what is wrong where it fails: a sentence like that of a rule.

        What no sheet writes down says nothing, and stays as it is: a search for the worst corner makes many of them.
        """
        if not self.says:
            return self
        parts = tuple(replace(one, wrong=one.wrong or wrong) for one in self.parts)
        return replace(self, wrong=self.wrong or wrong, parts=parts)

    def accepted(self, says: str) -> Judgement:
        """A judgement that holds in spite of its comparison, for a reason that is said."""
        return replace(self, holds=True, says=says, parts=())


def side_by_side(found: Amount, limit: Amount, *, holds: bool) -> tuple[str, str]:
    """What was found and its limit, each in its unit or that of the other; where it fails, so that they read apart."""
    units = found.written_in or limit.written_in, limit.written_in or found.written_in
    if holds or units[0] != units[1] or found.unit != limit.unit:
        return amount(found.value, found.unit, units[0]), amount(limit.value, limit.unit, units[1])
    return amounts_apart(found.value, limit.value, found.unit, units[0])


def as_it_is(compared: str, *, holds: bool) -> str:
    """The sign between two values: that of the comparison where it holds, else the opposite.

    >>> as_it_is("≤", holds=True), as_it_is("≤", holds=False)
    ('≤', '>')
    """
    return compared if holds else {"≤": ">", "≥": "<", "=": "≠", ">": "≤"}[compared]


class RuleEnded(Exception):
    """A rule cannot continue: an input is not stated, the rule does not apply, or no source covers the case.

    ``beside`` are the like reasons of other items of the same rule.
    """

    outcome = ""

    def __init__(self, says: str, where: Location = NOWHERE) -> None:
        super().__init__(says)
        self.says = says
        self.where = where
        self.beside: tuple[RuleEnded, ...] = ()


class NotAssessed(RuleEnded):
    """An input is missing; ``says`` names its key and file."""

    outcome = "not assessed"


class Unstated(NotAssessed):
    """A value is not stated; ``where`` is its place, and ``says`` names its key and file."""


class Unread(NotAssessed):
    """What the rule looks for, or may find, stands in ``files`` that could not be read, or are not as they must be."""

    def __init__(self, says: str, where: Location = NOWHERE, files: Iterable[str] = ()) -> None:
        super().__init__(says, where)
        self.files = tuple(files)


class Unlisted(NotAssessed):
    """A name that a spec states is looked up in a list which does not hold it; ``says`` holds the name."""


class NotApplicable(RuleEnded):
    """The rule does not apply to this component as it is stated."""

    outcome = "not applicable"


class NotCovered(RuleEnded):
    """No source covers the case: a query; a hold where the rule can give one."""

    outcome = "query"
