"""What a change did to each margin: what is used of every limit before and now, and why it is another."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import inf
from typing import Literal

from msgspec import Struct

from speclint.checking.check_seen import CheckSeen
from speclint.errors import replace

#: Why a check came out otherwise: ``edition`` where its rule alone is another, ``both`` where values changed as well.
Cause = Literal["", "design", "edition", "both"]
_SAME = 1e-9  # of the limit: less is rounding of the arithmetic, or of a number in a report


class MarginChange(Struct, frozen=True):
    """One rule on one component, before and now; None where there was, or is, no such check."""

    was: CheckSeen | None
    now: CheckSeen | None
    cause: Cause

    @property
    def component(self) -> str:
        """The component; under its id now where it has one."""
        return self._either.component

    @property
    def rule(self) -> str:
        """The name of the rule."""
        return self._either.rule

    @property
    def _either(self) -> CheckSeen:
        found = self.now or self.was
        assert found is not None  # as one of them is there
        return found

    @property
    def by(self) -> float | None:
        """By how much of the limit more is used than before; None where that cannot be told."""
        was, now = (one.utilisation if one else None for one in (self.was, self.now))
        if was is None or now is None:
            return None
        return 0.0 if was == now else now - was

    @property
    def is_change(self) -> bool:
        """Whether it came out otherwise, or is there on one side only."""
        if self.was is None or self.now is None:
            return True
        if (self.was.outcome, self.was.grade) != (self.now.outcome, self.now.grade):
            return True
        if self.by is None:
            return self.was.utilisation != self.now.utilisation
        if self.was.utilisation == self.now.utilisation == inf:
            return self.was.says != self.now.says  # by how much a limit is exceeded of which no share is left
        return abs(self.by) > _SAME

    @property
    def is_new(self) -> bool:
        """Whether it stands in the way now and did not before, or did less gravely."""
        return _grade(self.now) > _grade(self.was)

    @property
    def is_cleared(self) -> bool:
        """Whether it stands in the way no longer."""
        return _grade(self.was) > 0 == _grade(self.now)

    @property
    def worse_by(self) -> float:
        """Sorts the worst change first: more of the limit used, then what newly stands in the way without a number."""
        if self.by is not None:
            return self.by
        return _SAME if self.is_new else -_SAME if self.is_cleared else 0.0


def margin_changes(
    before: Iterable[CheckSeen], now: Iterable[CheckSeen], renamed: Mapping[str, str]
) -> tuple[MarginChange, ...]:
    """Every check of two states of a design, the worst change first.

    ``renamed`` gives the id now of each component that had another. Checks that do not apply on either side are left
    out.
    """
    then = {(renamed.get(one.component, one.component), one.rule): one for one in before if _judges(one)}
    since = {one.order: one for one in now if _judges(one)}
    found = [_change(then.get(order), since.get(order)) for order in then.keys() | since.keys()]
    return tuple(sorted(found, key=lambda one: (-one.worse_by, one.component, one.rule)))


def _judges(one: CheckSeen) -> bool:
    return one.outcome != "not applicable"


def _change(was: CheckSeen | None, now: CheckSeen | None) -> MarginChange:
    found = MarginChange(was, now, "")
    if was is None or now is None:
        return replace(found, cause="design")
    if was.edition == now.edition:
        return replace(found, cause="design" if found.is_change else "")
    same = was.component == now.component and was.fingerprint in (
        now.at_edition(was.edition),
        now.fingerprint,
    )
    return replace(found, cause="edition" if same else "both")


def _grade(one: CheckSeen | None) -> int:
    """The grade at which a check stands in the way; 0, below every grade, where it does not."""
    return 0 if one is None or one.grade is None else int(one.grade)
