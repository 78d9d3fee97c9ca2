"""One change for the findings of a rule on several parts that read the same line of a drawing, sought once for all."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from typing import TypeVar

from speclint.checking.check_result import Check
from speclint.checking.remedy import Remedy
from speclint.checking.remedy_trial import Trial, took
from speclint.checking.stated_value import StatedValue
from speclint.errors import replace

T = TypeVar("T")


class TrialForAll:
    """Tries a rule with a line restated on which several findings rest; what is found serves each of them.

    A trial takes the parts in one order, so that each finding is told the same, whichever comes first.
    """

    def __init__(self, value: StatedValue, beside: Sequence[Check]) -> None:
        found, self.step = value.found, value.step
        self._component, self._context = value.component, value.context
        reading = {found.component, *(one.component for one in beside if took(one, self.step.where))}
        self._of = found.rule.name, self.step.where.drawn, self.step.kind, tuple(sorted(reading))
        self._trial = self._once("a trial", lambda: Trial(value, beside=beside))
        self._proofs = 0

    def hoped(self) -> Remedy | None:
        """The least change that holds at every corner met so far; None where none does, or too many proofs failed."""
        found = self._once(("hoped", self._proofs), self._trial.hoped)
        return self._own(found) if found else None

    def proved(self, remedy: Remedy) -> Remedy | None:
        """The remedy hoped for last with the whole checks behind it; None where one of them fails."""
        found, used = self._once(
            ("proved", self._proofs), lambda: (self._trial.proved(remedy), self._trial.used)
        )
        self._proofs += 1
        return replace(self._own(found), utilisation=used[self._component.id]) if found else None

    def _once(self, what: Hashable, work: Callable[[], T]) -> T:
        done: T = self._context.worked_once(("for all parts", what, self._of), work)
        return done

    def _own(self, remedy: Remedy) -> Remedy:
        """A remedy of the line as one of the part of the finding."""
        return replace(remedy, where=self.step.where, name=self.step.name)
