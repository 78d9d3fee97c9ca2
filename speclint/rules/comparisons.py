"""How a rule ends on its sheet: the comparisons, and the words for what stands in their place."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from enum import Enum
from typing import TypeVar

from speclint.errors import NOWHERE, Location, replace
from speclint.quantities import amount, lengths_in
from speclint.rules.definition import Rule
from speclint.rules.judgement import (
    ROUNDING,
    Amount,
    Judgement,
    NotApplicable,
    NotAssessed,
    NotCovered,
    RuleEnded,
    StatedPlace,
    as_it_is,
    side_by_side,
)
from speclint.rules.margin import margin_above, margin_below, margin_of_stay, margins_within
from speclint.rules.naming import within_sentence
from speclint.rules.record import Record

T = TypeVar("T")

ZERO_CELSIUS = 273.15  # K, exact: definition of the Celsius temperature
#: What governs of several items of which none could be judged: what no source covers, then what is missing.
_GRAVEST_END = (NotCovered, NotAssessed, NotApplicable)


class Judging:
    """The judgements of a sheet. Only a sheet that records writes them out in words."""

    _rule: Rule
    _record: Record | None

    def at_most(self, value: float, limit: float) -> Judgement:
        """The rule holds while a worked value does not exceed a limit."""
        return self._compare(value, limit, "≤", _ratio(value, limit), (margin_below(value, limit),))

    def no_hotter(self, temperature: float, limit: float) -> Judgement:
        """The rule holds while a temperature does not exceed a limit.

        Utilisation counts from 0 °C, as a person would: a ratio of kelvins flatters the margin.
        """
        hot, most = temperature - ZERO_CELSIUS, limit - ZERO_CELSIUS
        return self._compare(temperature, limit, "≤", _ratio(hot, most), (margin_below(hot, most),))

    def at_least(self, value: float, limit: float) -> Judgement:
        """The rule holds while a worked value reaches a limit."""
        return self._compare(value, limit, "≥", _ratio(limit, value), (margin_above(value, limit),))

    def equals(self, value: float, other: float, within: float) -> Judgement:
        """The rule holds while two values differ by no more than is allowed; nothing is used up of a likeness."""
        apart = abs(value - other)
        holds = apart <= within * (1 + ROUNDING)
        used = 0.0 if holds else math.inf
        judged = self._compare(value, other, "=", used, (margin_below(apart, within),))
        return replace(judged, utilisation=None)

    def within(self, value: float, low: float, high: float) -> Judgement:
        """The rule holds while a worked value lies between two limits.

        Utilisation is the ratio to the nearer limit; where the lower limit is nothing or negative, the
        distance from the middle as a share of half the band.
        """
        used = _used_of_band(value, low, high)
        nearer_high = value >= (low * high) ** 0.5 if low > 0 else value >= (low + high) / 2
        against, sign = (high, "≤") if nearer_high else (low, "≥")
        return self._compare(value, against, sign, used, margins_within(value, low, high))

    def stays(self, left: float, cold: float, *, strictly: bool = False) -> Judgement:
        """The rule holds while something of a cold clearance or interference is left.

        Utilisation is the share of the cold value consumed; ``strictly`` asks for more than nothing.
        """
        used = (cold - left) / cold if cold > 0 else math.inf
        holds = left > 0 if strictly else left >= -ROUNDING * abs(cold)
        if holds and used > 1:
            used = 1.0
        found = self._amount(left)
        says = f"{within_sentence(found.name)} {amount(left, found.unit, found.written_in)}"
        says += " left" if left >= 0 else ": nothing left"
        if cold > 0:
            says += f" of {self._said(cold, found)} cold"
            says += f": {used:.0%} of it is used" if left >= 0 else ""
        zero = Amount(0.0, found.unit, "nothing", found.written_in)
        margins = (margin_of_stay(left, cold),)
        return Judgement(holds, says, used, found, zero, ">" if strictly else "≥", found, margins=margins)

    def states(self, holds: bool, says: str, *, where: Location = NOWHERE) -> Judgement:
        """The rule holds or not as a matter of record, not of number."""
        return Judgement(holds, says, where=where)

    def between(
        self,
        judged: Judgement,
        relations: tuple[str, str],
        here: Sequence[StatedPlace],
        there: Sequence[StatedPlace],
    ) -> Judgement:
        """The judgement on places that state one fact, each named with its value and its drawing.

        ``relations`` say in words what the first places are to the others where the judgement holds, and where not.
        """
        if self._record is None:
            return judged
        relation = relations[0] if judged.holds else relations[1]
        found, limit = _written_alike(judged.found, judged.limit)
        first, second = self._side(here, found).strip(), self._side(there, limit).strip()
        where = here[0].where if here else judged.where
        near, far = self._briefly(here, found), self._briefly(there, limit)
        return replace(
            judged,
            says=f"{first} {relation} {second}".strip(),
            where=where,
            places=(*here, *there),
            brief=f"{near} {relation} {far}".strip(),
        )

    def _side(self, places: Sequence[StatedPlace], worked: Amount | None) -> str:
        """The places of one side in words; where they give the fact and do not state it, what is worked from them."""
        assert self._record is not None  # as was asked by the caller
        value = worked.value if worked else None
        named = [self._record.stated_at(one.where, value) for one in places]
        if worked is None or self._is_stated(places, worked):
            return ", ".join(named)
        return f"{amount(worked.value, worked.unit, worked.written_in)}, worked from {', '.join(named)}"

    def _briefly(self, places: Sequence[StatedPlace], worked: Amount | None) -> str:
        """The places of one side in few words: of several, the first and how many more."""
        assert self._record is not None  # as was asked by the caller
        if not places:
            return ""
        value = worked.value if worked else None
        first, *others = places
        if worked is None or self._is_stated(places, worked):
            return self._record.named_at(first.where, value)
        more = f" and {len(others)} more" if others else ""
        return f"{amount(worked.value, worked.unit, worked.written_in)} by {self._record.label(first.where)}{more}"

    def _is_stated(self, places: Sequence[StatedPlace], worked: Amount) -> bool:
        """Whether one place alone gives a value, and states that very value; also where none does."""
        assert self._record is not None  # as was asked by the caller
        if len(places) != 1:
            return not places
        return places[0].aim is not None or self._record.takes_at(places[0].where, worked.value)

    def reported(self, value: float, says: str) -> Judgement:
        """Nothing is judged: a figure is written beside others for the reader."""
        found = self._amount(value)
        return Judgement(True, f"{says}: {self._said(value, found)}", found=found, compared="reported")

    def millimetres(self, value: float, form: str = ".3f", to: float | None = None) -> str:
        """A length, m, or a range of them, for a sentence: millimetres in a format, or the unit that the works chose.

        Only for words: what is judged and worked is written down in its unit by itself.
        """
        system = self._record.system if self._record else "as written"
        return lengths_in(system, (value,) if to is None else (value, to), form)

    def worst(self, *judgements: Judgement) -> Judgement:
        """The gravest of several judgements, with all of them kept beside it.

        What fails goes before what holds; of those that fail the gravest grade, then the greater utilisation; of
        those that hold the most used.
        """
        governs = max(judgements, key=self._severity)
        if len(judgements) == 1:
            return governs
        parts = tuple(part for one in judgements for part in one.every)
        ended = tuple(why for one in judgements for why in one.ended)
        return replace(governs, parts=parts, ended=ended)

    def each(self, items: Iterable[T], judge: Callable[[T], Judgement]) -> Judgement:
        """The worst of several items, each judged by itself: one of which something is missing hides no other.

        :raises RuleEnded: where none of the items could be judged.
        """
        judged: list[Judgement] = []
        ended: list[RuleEnded] = []
        for item in items:
            try:
                one = judge(item)
                judged.append(one.of_item(_name_of(item)) if self._record else one)
            except RuleEnded as why:
                ended.append(why)
        if not judged:
            raise _all_ended(ended)
        beside = tuple(why for why in ended if not isinstance(why, NotApplicable))
        return self._beside(self.worst(*judged), beside) if beside else self.worst(*judged)

    def _beside(self, judged: Judgement, ended: tuple[RuleEnded, ...]) -> Judgement:
        return replace(judged, ended=(*judged.ended, *ended))

    def _severity(self, one: Judgement) -> tuple[bool, int, float, float]:
        grade = 0 if one.holds else one.grade or self._rule.grade
        return not one.holds, grade, one.utilisation or 0.0, -(one.margin or 0.0)

    def not_applicable(self, why: str) -> NotApplicable:
        """To be raised where the rule does not concern this component."""
        return NotApplicable(why)

    def not_covered(self, why: str) -> NotCovered:
        """To be raised where the sources do not cover the case: a query, or a hold of a rule that can give one."""
        return NotCovered(why)

    def not_assessed(self, why: str, where: Location = NOWHERE) -> NotAssessed:
        """To be raised where something that the rule needs is missing."""
        return NotAssessed(why, where)

    def _compare(
        self, value: float, limit: float, compared: str, used: float, margins: tuple[float, ...]
    ) -> Judgement:
        if math.isnan(value) or math.isnan(limit):
            raise ValueError("a value to be judged is not a number")
        holds = used <= 1 + ROUNDING
        if self._record is None:
            return Judgement(holds, "", used, compared=compared, margins=margins)
        found, against = self._record.written.amounts(value, limit)
        says = _said(found, against, compared, holds=holds)
        return Judgement(holds, says, used, found, against, compared, margins=margins)

    def _said(self, value: float, found: Amount) -> str:
        """A value of the unit of an amount, in words; "" where nothing is written down."""
        return self._record.said(value, found.unit) if self._record else ""

    def _amount(self, value: float) -> Amount:
        return self._record.written.amount(value) if self._record else Amount(value, "")


def _written_alike(one: Amount | None, other: Amount | None) -> tuple[Amount | None, Amount | None]:
    """Two amounts, one that no spec wrote, such as a sum, in the unit in which a spec wrote the other."""
    if one is None or other is None or one.unit != other.unit:
        return one, other
    return (
        replace(one, written_in=one.written_in or other.written_in),
        replace(other, written_in=other.written_in or one.written_in),
    )


def _name_of(item: object) -> str:
    """What an item of a rule is called: its own name in a table, the key where it is stated, or its id."""
    if isinstance(item, tuple) and item and isinstance(item[0], str):
        return item[0]
    if isinstance(item, Enum):
        return str(item.value)
    where = getattr(item, "where", NOWHERE)
    return item if isinstance(item, str) else str(where.key or getattr(item, "id", ""))


def _all_ended(ended: list[RuleEnded]) -> RuleEnded:
    """The gravest of several reasons, with the others beside it."""
    for kind in _GRAVEST_END:
        same = [why for why in ended if isinstance(why, kind)]
        if same:
            same[0].beside = tuple(
                why for why in ended if why is not same[0] and not isinstance(why, NotApplicable)
            )
            return same[0]
    raise ValueError("there is no item to be judged")


def _said(found: Amount, limit: Amount, compared: str, *, holds: bool) -> str:
    left, right = side_by_side(found, limit, holds=holds)
    here, there = within_sentence(found.name), within_sentence(limit.name)
    return f"{here} {left} {as_it_is(compared, holds=holds)} {right} {there}".strip()


def _used_of_band(value: float, low: float, high: float) -> float:
    if low > 0:
        return max(_ratio(value, high), _ratio(low, value))
    half = (high - low) / 2
    away = abs(value - (low + high) / 2)
    return away / half if half > 0 else (0.0 if away == 0 else math.inf)


def _ratio(value: float, limit: float) -> float:
    """Value over limit, for a value that may be nothing or negative."""
    if limit > 0:
        return max(value, 0.0) / limit
    return 0.0 if value <= limit + ROUNDING * abs(limit) else math.inf
