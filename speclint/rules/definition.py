"""What a rule of the trade is: its statement, its grade, its limits, its sources, and the function that applies it."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, field
from importlib import import_module
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from speclint.equations import Source
from speclint.errors import replace
from speclint.quantities import Measure, Sign, read
from speclint.rules.grade import Grade
from speclint.rules.judgement import Judgement
from speclint.specs import CaseName, Component, Hazards

if TYPE_CHECKING:
    from speclint.repository import MeasuredSetting


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit that a rule compares a value with: its default, its meaning and its source.

    A repository may change it in ``speclint.toml`` under ``[limits."rule.name"]``; reports say so when it does. One
    that names a ``setting`` is what the repository states there, unless it changes this limit of the rule.
    """

    name: str
    default: str
    dimension: str
    source: Source
    says: str = ""
    sign: Sign = "any"
    setting: MeasuredSetting | None = None

    def read(self, text: str) -> Measure:
        """A value for this limit, perhaps with a tolerance, which no limit has; raises QuantityError where it cannot be
        read."""
        return read(text, self.dimension, self.sign)


@dataclass(frozen=True)
class Rule:
    """One statement of the trade, with all that is needed to apply it and to justify it.

    ``grade`` is that of a usual finding; ``gravest`` the highest the rule may give, which is also what a check not
    assessed counts as. ``why`` is a reason in words that a fitter understands. ``leaves_out`` says in one line what the
    rule does not cover. ``edition`` is raised when its result can change. ``agreement`` says that the rule holds two
    places of one fact against each other (:mod:`speclint.rules.agreement`). ``row`` is that of a rule which asks what
    fills a place, in the list of what is still to be drawn (:mod:`speclint.rules.filling`); 0 for any other. ``wrong``
    says what is wrong where a comparison of the rule fails, with ``{found}``, ``{limit}``, ``{left}`` and ``{item}``
    for what was found, its limit, what is left and the item that was judged.

    ``against`` are the hazards of the part that is checked which the rule guards against; ``against_on`` those of parts
    of one kind alone, by its word: where ``on`` names several kinds, or of other parts that the same check looks at.
    With ``reached_by``, the key of a link of the part that is checked, only of the part to which that leads. A rule
    guards against a hazard where a check of it that conforms is a reason to expect that this does not happen. No
    record and no drawing that is there does so by itself, nor what judges one small section of a part. None says that
    the rule does not tell.
    """

    name: str
    title: str
    on: tuple[type[Component], ...]
    function: Callable[..., Judgement]
    grade: Grade
    gravest: Grade
    cites: tuple[Source, ...]
    why: str
    leaves_out: str
    edition: int
    cases: tuple[CaseName, ...] = ()
    limits: tuple[Limit, ...] = ()
    reviews: bool = False
    agreement: bool = False
    row: int = 0
    wrong: str = ""
    against: Hazards | None = None
    against_on: Mapping[str, Hazards] = field(default_factory=dict, compare=False)
    reached_by: str = ""
    family: str = field(default="", compare=False)

    def of_family(self, family: str) -> Rule:
        """The same rule, known to belong to a family."""
        return replace(self, family=family)

    def guards(self, kind: type[Component]) -> Hazards:
        """The hazards of a part that its check guards against, by the kind of the part that is checked."""
        said = {*(self.against or ()), *self.guards_beside(kind)}
        return tuple(hazard for hazard in kind.hazards or () if hazard in said)

    def guards_beside(self, kind: type[Component]) -> Hazards:
        """The hazards that it guards against on a part of a kind which the check of another part looks at."""
        said = {
            hazard for word, named in self.against_on.items() if kind.is_one_of((word,)) for hazard in named
        }
        return tuple(hazard for hazard in kind.hazards or () if hazard in said)

    def limit(self, name: str) -> Limit:
        """A declared limit; KeyError when the rule declares none of that name."""
        found = next((limit for limit in self.limits if limit.name == name), None)
        if found is None:
            raise KeyError(f"rule {self.name} declares no limit {name!r}")
        return found


class RulesIn(Struct, frozen=True):
    """Rules kept in the ``RULES`` of a module, which is imported when a component of one of the kinds is checked.

    No kinds means that some of the rules apply to every component.
    """

    module: str
    kinds: tuple[str, ...]

    def concern(self, kinds: Collection[str]) -> bool:
        """Whether any of the rules may apply to one of some kinds, given with the kinds that they are built on."""
        return not self.kinds or not set(self.kinds).isdisjoint(kinds)

    def load(self) -> tuple[Rule, ...]:
        """Import the module and take its rules."""
        return tuple(import_module(self.module).RULES)


def _below(gravest: Grade, grade: Grade) -> bool:
    """Whether a grade is lighter than another; what is no grade is told when the family is loaded."""
    return isinstance(gravest, Grade) and isinstance(grade, Grade) and gravest < grade


def rules_in(module: str, *kinds: str) -> RulesIn:
    """Declare the rules of a module without importing it: a design without its kinds does not load them."""
    return RulesIn(module, kinds)


def rule(
    name: str,
    *,
    title: str,
    on: type[Component] | Sequence[type[Component]],
    grade: Grade,
    cites: Sequence[Source],
    why: str,
    leaves_out: str,
    cases: Sequence[CaseName] = (),
    limits: Sequence[Limit] = (),
    gravest: Grade | None = None,
    edition: int = 1,
    reviews: bool = False,
    row: int = 0,
    wrong: str = "",
    against: Hazards | None = None,
    against_on: Mapping[str, Hazards] | None = None,
    reached_by: str = "",
) -> Callable[[Callable[..., Any]], Rule]:
    """Make a rule of a function.

    The function takes the component, the load case if the rule names ``cases``, and the sheet; it returns
    the sheet's judgement. ``title`` is true when the rule holds, ``wrong`` when it fails.
    """
    kinds = (on,) if isinstance(on, type) else tuple(on)

    def made(function: Callable[..., Judgement]) -> Rule:
        return Rule(
            name=name,
            title=title,
            on=kinds,
            function=function,
            grade=grade,
            gravest=gravest if gravest is not None and not _below(gravest, grade) else grade,
            cites=tuple(cites),
            why=why,
            leaves_out=leaves_out,
            edition=edition,
            cases=tuple(cases),
            limits=tuple(limits),
            reviews=reviews,
            row=row,
            wrong=wrong,
            against=against,
            against_on=dict(against_on or {}),
            reached_by=reached_by,
        )

    return made
