"""What a check uses of its limit with one value at its low and at its high limit: all else at the governing corner.

This is how much of the limit the tolerance of the value carries. A value whose side the corner knows is put on the one
side and on the other; one that a rule takes otherwise, such as with both limits for a statistic, is restated.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping

from msgspec import Struct

from speclint.checking.check_result import Check
from speclint.checking.one_corner import Written, run_once, written_at
from speclint.checking.severity import Ending
from speclint.checking.time_limit import Overrun
from speclint.errors import NOWHERE, FamilyError, Location, replace
from speclint.quantities import Measure
from speclint.rules import Context, Judgement, Step
from speclint.specs import Component, quantities_of


class Swing(Struct, frozen=True):
    """One value that a check takes, in the load case where its tolerance carries most of the limit.

    ``where`` is its place in the spec; of a figure that a table gives for the metal of the part it is NOWHERE, and
    ``figure`` says in words what it is, and ``taken`` how the governing corner has it.
    ``low`` and ``high`` are what is used of the limit with the value at its limits; None where nothing is compared
    there. ``compared`` is false where no two numbers were found to compare, for the reason in ``why_not``.
    """

    check: Check
    where: Location
    case: str
    low: float | None = None
    high: float | None = None
    compared: bool = False
    why_not: str = ""
    figure: str = ""
    taken: str = ""

    @property
    def carried(self) -> float:
        """How much of the limit the tolerance carries; 0 where nothing was compared, infinite where all margin goes."""
        if not self.compared or self.low == self.high:
            return 0.0
        if self.low is None or self.high is None:
            return math.inf
        return abs(self.high - self.low)


def swings(one: Check, part: Component, context: Context) -> tuple[Swing, ...]:
    """Each value of a part that a check takes in any of its load cases, with what its tolerance carries there.

    :raises FamilyError: where a rule that is run for it takes longer than the settings allow.
    """
    try:
        return _found(one, part, context)
    except Overrun as problem:
        what = f"{one.rule.name} was varied on {one.component}"
        raise FamilyError(
            f"family {one.rule.family}: a rule did not end in its time while {what}"
        ) from problem


def _found(one: Check, part: Component, context: Context) -> tuple[Swing, ...]:
    component = context.design.specs[one.component]
    assert isinstance(component, Component)
    own = {limits.where: limits for at in quantities_of(part).values() if (limits := at.limits)}
    context.begin()
    found: dict[tuple[Location, str], Swing] = {}
    for case, sides in one.corners.items():
        written = written_at(one.rule, component, case, sides, context)
        if written is None:
            continue
        at = AtCorner(one, component, case, written, context)
        for swing in (*at.of_values(own), *at.of_figures(part)):
            key = swing.where, swing.figure
            if key not in found or swing.carried > found[key].carried:
                found[key] = swing
    return tuple(found.values())


class AtCorner(Struct, frozen=True):
    """A check at the governing corner of one load case, at which one value after another is varied.

    What is used of the limit is that of the comparison that differs most; with ``whole`` that of the check as a whole.
    """

    check: Check
    component: Component
    case: str
    written: Written
    context: Context
    whole: bool = False

    def of_values(self, own: Mapping[Location, Measure]) -> Iterator[Swing]:
        """The values of a part that stand on the sheet, by their places."""
        steps = self.written.record.steps
        long = any(step.long for step in steps)
        for where in dict.fromkeys(step.where for step in steps if step.where in own):
            measure = own[where]
            key = ("taken", where.file, where.part, where.key)
            if measure.exact:
                yield Swing(self.check, where, self.case, why_not="it states no limits")
            elif key in self.written.sides:
                yield self._swing(where, self._sided(key, False), self._sided(key, True))
            elif long:
                yield Swing(self.check, where, self.case, why_not="the rule rests on a long calculation")
            else:
                low, high = (self._restated(measure, end) for end in (measure.low, measure.high))
                if isinstance(low, Judgement) or measure.low:
                    yield self._swing(where, low, high)
                else:
                    yield Swing(self.check, where, self.case, why_not="the rule takes no zone of nothing")

    def of_figures(self, part: Component | None = None) -> Iterator[Swing]:
        """The figures that tables give for the metal of a part, or of any: those with limits, and those without."""
        record, sides = self.written.record, self.written.sides
        for key, label in record.labels.items():
            if not isinstance(key, tuple) or key[0] != "looked up" or (part and key[2] != part.id):
                continue
            swing = Swing(self.check, NOWHERE, self.case, why_not="the table gives it no limits")
            if key in sides:
                swing = self._swing(NOWHERE, self._sided(key, False), self._sided(key, True))
            figure = label.removesuffix(f" of {part.id}") if part else label
            taken = record.side(key, high=sides.get(key, False))
            yield replace(
                swing, figure=figure, taken=taken if key in sides else taken.removesuffix(" (least)")
            )

    def of_sides(self, known: Collection[Location]) -> Iterator[Swing]:
        """The other values whose sides the corner knows, such as a difference between two temperatures."""
        places = {(step.where.file, step.where.part, step.where.key): step.where for step in self._steps()}
        for key in self.written.sides:
            where = places.get(key[1:]) if isinstance(key, tuple) and key[0] == "taken" else None
            if where is not None and where not in known:
                yield self._swing(where, self._sided(key, False), self._sided(key, True))

    def _steps(self) -> Iterator[Step]:
        return (step for step in self.written.record.steps if step.where.key)

    def with_more(self, where: Location, by: float) -> float | None:
        """What the check uses of its limit more with a value greater by an amount; None where no numbers compare."""
        context = replace(self.context, moved={where: by})
        sides = self.written.sides
        now, then = (
            run_once(self.check.rule, self.component, self.case, sides, one)
            for one in (self.context, context)
        )
        used = self._used(now, then)
        if used is None or used[0] is None or used[1] is None:
            return None
        return used[1] - used[0]

    def _sided(self, key: object, high: bool) -> Ending:
        sides = {**self.written.sides, key: high}
        return run_once(self.check.rule, self.component, self.case, sides, self.context)

    def _restated(self, measure: Measure, end: float) -> Ending:
        """With a value at one of its limits; the size that it aims at stays, as for a part as made."""
        moved = {measure.where: replace(measure, low=end, high=end)}
        context = replace(self.context, moved=moved)
        return run_once(self.check.rule, self.component, self.case, self.written.sides, context)

    def _used(self, low: Ending, high: Ending) -> tuple[float | None, float | None] | None:
        return (_of_both if self.whole else _most_apart)(low, high)

    def _swing(self, where: Location, low: Ending, high: Ending) -> Swing:
        used = self._used(low, high)
        if used is None:
            return Swing(self.check, where, self.case, why_not="the rule compares no numbers")
        return Swing(self.check, where, self.case, *used, compared=True)


def _of_both(low: Ending, high: Ending) -> tuple[float | None, float | None] | None:
    """What is used of the limit at both, of the check as a whole; None where there is no number."""
    used = tuple(one.utilisation if isinstance(one, Judgement) else None for one in (low, high))
    return used if any(one is not None for one in used) else None  # type: ignore[return-value]


def _most_apart(low: Ending, high: Ending) -> tuple[float | None, float | None] | None:
    """What is used of the limit at both, of the comparison that differs most; None where there is no number."""
    if not isinstance(low, Judgement) or not isinstance(high, Judgement):
        return _of_both(low, high)
    pairs = [(low.utilisation, high.utilisation)]
    if len(low.every) == len(high.every):
        pairs += [(a.utilisation, b.utilisation) for a, b in zip(low.every, high.every, strict=True)]
    known = [(a, b) for a, b in pairs if a is not None and b is not None]
    return max(known, key=lambda two: 0.0 if two[0] == two[1] else abs(two[1] - two[0]), default=None)
