"""How a rule ends on its sheet: the comparisons, and the words for what stands in their place."""

from __future__ import annotations

import math

from speclint.errors import NOWHERE, Location
from speclint.quantities import amount
from speclint.rules.definition import Rule
from speclint.rules.judgement import ROUNDING, Amount, Judgement, NotApplicable, NotAssessed, NotCovered
from speclint.rules.record import Record

_ZERO_CELSIUS = 273.15  # K, exact: definition of the Celsius temperature


class Judging:
    """The judgements of a sheet. Only a sheet that records writes them out in words."""

    _rule: Rule
    _record: Record | None

    def at_most(self, value: float, limit: float) -> Judgement:
        """The rule holds while a worked value does not exceed a limit."""
        return self._compare(value, limit, "≤", _ratio(value, limit))

    def no_hotter(self, temperature: float, limit: float) -> Judgement:
        """The rule holds while a temperature does not exceed a limit.

        Utilisation counts from 0 °C, as a person would: a ratio of kelvins flatters the margin.
        """
        return self._compare(
            temperature, limit, "≤", _ratio(temperature - _ZERO_CELSIUS, limit - _ZERO_CELSIUS)
        )

    def at_least(self, value: float, limit: float) -> Judgement:
        """The rule holds while a worked value reaches a limit."""
        return self._compare(value, limit, "≥", _ratio(limit, value))

    def within(self, value: float, low: float, high: float) -> Judgement:
        """The rule holds while a worked value lies between two limits.

        Utilisation is the ratio to the nearer limit; where the lower limit is nothing or negative, the
        distance from the middle as a share of half the band.
        """
        used = _used_of_band(value, low, high)
        nearer_high = value >= (low * high) ** 0.5 if low > 0 else value >= (low + high) / 2
        return self._compare(value, high if nearer_high else low, "≤" if nearer_high else "≥", used)

    def stays(self, left: float, cold: float, *, strictly: bool = False) -> Judgement:
        """The rule holds while something of a cold clearance or interference is left.

        Utilisation is the share of the cold value consumed; ``strictly`` asks for more than nothing.
        """
        used = (cold - left) / cold if cold > 0 else math.inf
        holds = left > 0 if strictly else left >= -ROUNDING * abs(cold)
        if holds and used > 1:
            used = 1.0
        found = self._amount(left)
        says = f"{_name(found)} {amount(left, found.unit, found.written_in)} left"
        if cold > 0:
            says += f" of {amount(cold, found.unit)} cold: {used:.0%} of it is used"
        zero = Amount(0.0, found.unit, "nothing")
        return Judgement(holds, says, used, found, zero, ">" if strictly else "≥", found)

    def states(self, holds: bool, says: str, *, where: Location = NOWHERE) -> Judgement:
        """The rule holds or not as a matter of record, not of number."""
        return Judgement(holds, says, where=where)

    def reported(self, value: float, says: str) -> Judgement:
        """Nothing is judged: a figure is written beside others for the reader."""
        found = self._amount(value)
        return Judgement(True, f"{says}: {amount(value, found.unit)}", found=found, compared="reported")

    def worst(self, *judgements: Judgement) -> Judgement:
        """The gravest of several judgements: what fails before what holds, then the greater utilisation."""
        return max(
            judgements, key=lambda one: (not one.holds, one.grade or self._rule.grade, one.utilisation or 0.0)
        )

    def not_applicable(self, why: str) -> NotApplicable:
        """To be raised where the rule does not concern this component."""
        return NotApplicable(why)

    def not_covered(self, why: str) -> NotCovered:
        """To be raised where the sources do not cover the case: a query."""
        return NotCovered(why)

    def not_assessed(self, why: str, where: Location = NOWHERE) -> NotAssessed:
        """To be raised where something that the rule needs is missing."""
        return NotAssessed(why, where)

    def _compare(self, value: float, limit: float, compared: str, used: float) -> Judgement:
        if math.isnan(value) or math.isnan(limit):
            raise ValueError("a value to be judged is not a number")
        holds = used <= 1 + ROUNDING
        if self._record is None:
            return Judgement(holds, "", used, compared=compared)
        found, against = self._record.amount(value), self._record.amount(limit)
        return Judgement(holds, _said(found, against, compared, holds=holds), used, found, against, compared)

    def _amount(self, value: float) -> Amount:
        return self._record.amount(value) if self._record else Amount(value, "")


def _said(found: Amount, limit: Amount, compared: str, *, holds: bool) -> str:
    sign = compared if holds else {"≤": ">", "≥": "<"}[compared]
    left = f"{_name(found)} {amount(found.value, found.unit, found.written_in or limit.written_in)}"
    right = f"{amount(limit.value, limit.unit, limit.written_in or found.written_in)} {_name(limit)}"
    return f"{left} {sign} {right}".strip()


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


def _name(found: Amount) -> str:
    return found.name[:1].lower() + found.name[1:] if found.name[1:2].islower() else found.name
