"""An agreement: a fact that two places state must be the same in both, or the one must fit the other.

A family declares which places they are, as pairs; the rule made of the declaration takes both, compares them, and
names both with their values and drawings. Where one place need not state the fact and does not, there is nothing to
compare: it is worked from the other.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any, Literal, TypeAlias

from msgspec import Struct

from speclint.equations import COMMON_PRACTICE, Source
from speclint.errors import Location, replace
from speclint.quantities import Measure
from speclint.rules.definition import Limit, Rule, rule
from speclint.rules.grade import Grade
from speclint.rules.judgement import Judgement, StatedPlace
from speclint.rules.record import in_words
from speclint.rules.sheet import Sheet
from speclint.specs import CaseName, Component, Hazards, Link, LoadCase, NotStated, Stated, Tie

Must = Literal["equal", "at least", "at most"]

#: Of places that state nothing so many are named.
_NAMED = 3
_HOLDS = {"equal": "agrees with", "at least": "is no less than", "at most": "is no more than"}
_FAILS = {"equal": "does not agree with", "at least": "is less than", "at most": "is more than"}


class Worked(Struct, frozen=True):
    """A fact that other places give: its value in SI units or its word, and the places that it was worked from.

    ``says`` names what gives it where that is no place in a spec, such as the kind of a part.
    """

    value: Any
    places: tuple[Location, ...] = ()
    says: str = ""


def worked(value: Any, *places: Measure | Tie | Stated[Any] | Link[Any] | NotStated) -> Worked:
    """A fact that was worked on the sheet from what some places state, each of them named once."""
    stated = (one.where for one in places if not isinstance(one, NotStated))
    return Worked(value, tuple(dict.fromkeys(stated)))


Fact: TypeAlias = "Measure | Stated[Any] | NotStated | Worked"


class Pair(Struct, frozen=True):
    """Two places of one fact: first that of the part which is made to suit the other.

    ``must`` is what the first has to be to the second. Sizes that must be equal are taken as the drawings aim at them,
    others with their limits, at the worst corner. ``name`` says which of several it is. ``within`` is the name of the
    limit by which these two may differ, where the rule declares another beside its own for another dimension.
    """

    here: Fact
    there: Fact
    must: Must = "equal"
    name: str = ""
    within: str = "difference"


def agreement(
    name: str,
    *,
    on: type[Component] | Sequence[type[Component]],
    pairs: Callable[..., Iterable[Pair]],
    title: str,
    why: str,
    leaves_out: str,
    grade: Grade,
    within: str = "0.01 mm",
    dimension: str = "length",
    optional: bool = True,
    cases: Sequence[CaseName] = (),
    limits: Sequence[Limit] = (),
    cites: Sequence[Source] = (COMMON_PRACTICE,),
    edition: int = 1,
    row: int = 0,
    against: Hazards = (),
    against_on: Mapping[str, Hazards] | None = None,
) -> Rule:
    """The rule that holds the places of one fact against each other.

    ``pairs`` gives the places, from the component, its load case if the agreement names ``cases``, and its sheet; its
    docstring says how. ``within`` is what two equal sizes may differ by, of ``dimension``; "" where only words and
    counts are compared. ``limits`` are others that ``pairs`` takes. With ``optional`` a first place that is silent is
    no gap: the fact is worked from the second. To ``leaves_out`` is added who decides between them. ``row`` is for a
    fact that wants a part drawn: see :class:`Rule`. Two drawings that agree guard against no hazard: ``against`` is for
    places whose sizes must suit each other in service.

    :raises QuantityError: when ``within`` is no quantity of that dimension.
    """
    allowed = Limit(
        "difference", within, dimension, COMMON_PRACTICE, "what two drawings may differ by", "not negative"
    )
    if within:
        allowed.read(within)

    held = _function(pairs, optional=optional, in_case=bool(cases))
    made = rule(
        name,
        title=title,
        on=on,
        grade=grade,
        cites=cites,
        why=why,
        leaves_out=f"{leaves_out}; which of two places is right, a competent person decides",
        cases=cases,
        limits=(*((allowed,) if within else ()), *limits),
        edition=edition,
        row=row,
        against=against,
        against_on=against_on,
    )(held)
    return replace(made, agreement=True)


def _function(
    pairs: Callable[..., Iterable[Pair]], *, optional: bool, in_case: bool
) -> Callable[..., Judgement]:
    """The function of a rule: every pair judged by itself."""

    def judged(found: tuple[Pair, ...], sheet: Sheet) -> Judgement:
        if not found:
            raise sheet.unworked or sheet.not_applicable(_nothing_beside(sheet))
        return sheet.each(
            [(one.name, one) for one in found], lambda item: _held(item[1], sheet, optional=optional)
        )

    def held(component: Component, sheet: Sheet) -> Judgement:
        return judged(tuple(pairs(component, sheet)), sheet)

    def held_in_case(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
        return judged(tuple(pairs(component, case, sheet)), sheet)

    made = held_in_case if in_case else held
    made.__doc__ = pairs.__doc__
    return made


def _nothing_beside(sheet: Sheet) -> str:
    """Why there is nothing to compare: by the first places that the rule looked at and that state nothing."""
    silent = sheet.silent
    if not silent:
        return "nothing to compare: no other spec states this, or the sizes from which it could be worked"
    more = f" and {len(silent) - _NAMED} more" if len(silent) > _NAMED else ""
    return f"nothing to compare; not stated: {', '.join(silent[:_NAMED])}{more}"


def _held(pair: Pair, sheet: Sheet, *, optional: bool) -> Judgement:
    if optional and isinstance(pair.here, NotStated):
        raise sheet.not_applicable(f"{pair.here.where.key} is not stated: it is worked from the other place")
    if _is_word(pair.here) or _is_word(pair.there):
        return _same(pair, sheet)
    here, there = _number("a", pair.here, pair.must, sheet), _number("b", pair.there, pair.must, sheet)
    if pair.must == "equal":
        judged = sheet.equals(here, there, sheet.limit(pair.within, "Δ"))
    elif pair.must == "at least":
        judged = sheet.at_least(here, there)
    else:
        judged = sheet.at_most(here, there)
    return _between(judged, pair, (there, here), sheet)


def _is_truth(value: Any) -> bool:
    """Whether a value is a yes or no; asked so that it can be asked of one that is enclosed, too."""
    return value is True or value is False


def _is_word(fact: Fact) -> bool:
    """Whether a fact is a word, a yes or no, or a stated count, and no quantity."""
    return isinstance(fact, Stated) or (
        isinstance(fact, Worked) and (isinstance(fact.value, str) or _is_truth(fact.value))
    )


def _same(pair: Pair, sheet: Sheet) -> Judgement:
    here, there = _word(pair.here, sheet), _word(pair.there, sheet)
    holds = {"equal": here == there, "at least": here >= there, "at most": here <= there}[pair.must]
    return _between(sheet.states(holds, ""), pair, (there, here), sheet)


def _between(judged: Judgement, pair: Pair, aims: tuple[Any, Any], sheet: Sheet) -> Judgement:
    says = f" {pair.there.says}" if isinstance(pair.there, Worked) and pair.there.says else ""
    here, there = (_places(fact, aim) for fact, aim in zip((pair.here, pair.there), aims, strict=True))
    return sheet.between(judged, (_HOLDS[pair.must] + says, _FAILS[pair.must] + says), here, there)


def _places(fact: Fact, aim: Any) -> tuple[StatedPlace, ...]:
    """The places of one side; one alone is told what it would have to state."""
    if isinstance(fact, Worked):
        return tuple(StatedPlace(where) for where in fact.places)
    return (StatedPlace(fact.where, aim),)


def _number(symbol: str, fact: Fact, must: Must, sheet: Sheet) -> float:
    if isinstance(fact, Worked):
        return fact.value  # type: ignore[no-any-return]  # a float, or an enclosure of one
    if isinstance(fact, Stated):
        raise TypeError(f"{fact.where.key} is a word or a count, held against a quantity")
    return sheet.take_nominal(symbol, fact) if must == "equal" else sheet.take(symbol, fact)


def _word(fact: Fact, sheet: Sheet) -> Any:
    """A word, a yes or no, or a count; of a count the sheet keeps the number."""
    if isinstance(fact, Worked):
        return fact.value
    if isinstance(fact, Measure):
        raise TypeError(f"{fact.where.key} is a quantity, held against a word or a count")
    if isinstance(fact, Stated) and not isinstance(fact.value, str) and not _is_truth(fact.value):
        return sheet.count("n", fact, in_words(fact.where.key))
    key = fact.where.key
    return sheet.read(in_words(key), fact)
