"""The value of a spec at which a rule just holds, in the steps of the drawing office, proved by running the rule.

Where the rule fails, it is the least change that holds, as for a remedy. Where it holds, it is how far the value may go
either way while the rule still holds.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from msgspec import Struct

from speclint.checking.assessment import Assessment
from speclint.checking.check_result import Check
from speclint.checking.office_steps import Restated, rounding, threads
from speclint.checking.remedy_trial import Trial
from speclint.checking.rule_run import check
from speclint.checking.stated_value import StatedValue
from speclint.checking.what_if import Question
from speclint.checking.where_it_fails import where_it_fails
from speclint.errors import Location, SettingsError, one_of, replace
from speclint.quantities import Measure
from speclint.repository import misfits_of
from speclint.rules import Context, Step
from speclint.specs import Component, Spec, could_state

_HALVINGS = 60
_MOST_STEPS = (
    40  # doublings of the first step until the reach is passed, and pieces or threads that are tried
)
#: Another piece or thread more than this is another design: common practice.
_PIECES = 12


class Bound(Struct, frozen=True):
    """A value at which a rule just holds: ``written`` as the spec would state it, ``used`` of the limit there.

    ``higher`` tells to which side of the present value it lies; ``beyond`` is the next value, which fails, and ``why``
    what is then said of the rule; "" where none was sought. ``exact`` is true where the step of the drawing office was
    too coarse for the least change.
    """

    written: str
    used: float | None
    higher: bool
    beyond: str = ""
    why: str = ""
    exact: bool = False


class Solved(Struct, frozen=True):
    """What was found: ``holds`` tells whether the rule holds as the design stands.

    Where it holds, ``bounds`` are how far the value may go, the nearest first; a side on which it holds as far as was
    looked has none. Where it fails they are the least change that holds, or none was found. ``within`` says how far was
    looked; "" where no other value can be tried, as it is written.
    """

    question: Question
    check: Check
    holds: bool
    now: str
    bounds: tuple[Bound, ...]
    within: str

    @property
    def answer(self) -> Bound | None:
        """The value that just holds, nearest to the present one."""
        return self.bounds[0] if self.bounds else None


def solved(assessment: Assessment, asked: Question, rule: str) -> Solved:
    """The value at which a rule just holds.

    :raises SettingsError: where no check of the rule rests on the value, or it is no quantity, count or thread.
    """
    context, design = assessment.context, assessment.design
    assert context is not None
    assert design is not None  # as the design was asked about
    spec = design.specs[asked.component]
    value = dict(spec.at_keys())[asked.key]
    found, step = _resting(assessment, asked, rule, value.where)
    if not _may_be_solved(step):
        raise SettingsError(f"--solve {rule}: {asked.name} is no quantity, no count and no thread")
    part = design.specs[found.component]
    assert isinstance(part, Component)  # as it was checked
    on = _On(found, part, spec, step, context)
    now = getattr(value, "text", getattr(value, "value", ""))
    if found.outcome == "conforms":
        bounds = tuple(sorted(on.how_far(), key=lambda one: one[0]))
        return Solved(asked, found, True, str(now), tuple(bound for _, bound in bounds), on.within)
    return Solved(asked, found, False, str(now), on.least_change(assessment.checks), on.within)


def _resting(assessment: Assessment, asked: Question, rule: str, where: Location) -> tuple[Check, Step]:
    """The check of a rule that takes the value: a finding before what holds, that of the component before others."""
    of_rule = [one for one in assessment.checks if one.rule.name == rule]
    if not of_rule:
        known = {one.rule.name for one in assessment.checks}
        raise SettingsError(
            f"--solve {rule}: no check of this rule is made here; write {one_of(rule, known)}"
        )
    taking = [
        (one, step)
        for one in of_rule
        for step in one.steps
        if step.where.drawn == where.drawn and one.outcome in ("conforms", "finding")
    ]
    if not taking:
        raise SettingsError(f"--solve {rule}: {_why_none(assessment, asked, of_rule, where)}")
    return min(
        taking,
        key=lambda pair: (
            pair[0].outcome != "finding",
            pair[0].component != asked.component,
            pair[0].order,
        ),
    )


def _why_none(assessment: Assessment, asked: Question, of_rule: Sequence[Check], where: Location) -> str:
    """Why no check of a rule gives an answer: it was not assessed, or does not take the value; and which do."""
    unmade = [one for one in of_rule if one.component == asked.component and one.outcome == "not assessed"]
    if unmade:
        return f"not assessed on {asked.component}: {'; '.join(unmade[0].missing) or unmade[0].says}"
    resting = {
        one.rule.name
        for one in assessment.checks
        if any(step.where.drawn == where.drawn for step in one.steps)
    }
    does = "does" if len(resting) == 1 else "do"
    instead = f"{', '.join(sorted(resting))} {does}" if resting else "no check does"
    return f"no check of it rests on {asked.name}; {instead}"


def _may_be_solved(step: Step) -> bool:
    if step.kind == "read":
        return isinstance(step.value, str) and any(threads(step.value))
    return step.kind in ("taken", "counted")


class _On:
    """A check, tried with one value of a holder restated."""

    def __init__(self, found: Check, part: Component, holder: Spec, step: Step, context: Context) -> None:
        self._found, self._part, self._holder, self._step = found, part, holder, step
        self._context = context

    @property
    def within(self) -> str:
        """How far from the present value others are tried; "" where none can be, as it is written."""
        if self._step.kind == "counted":
            return f"{_PIECES} more or fewer"
        if isinstance(self._step.value, str):
            return "the next few threads of its series"
        measure = self._stated()
        steps = rounding(measure) if measure is not None else None
        return "" if steps is None else f"{100 * steps.share:.0f} % of the value"

    def least_change(self, checks: Sequence[Check]) -> tuple[Bound, ...]:
        """The least change that holds, as a remedy is found; none where there is none within reach."""
        value = StatedValue(self._step, self._found, self._part, checks, self._context)
        trial = Trial(value, holder=self._holder)
        while (hoped := trial.hoped()) is not None:
            if proved := trial.proved(hoped):
                return (Bound(proved.instead, proved.utilisation, trial.rises, exact=proved.exact),)
        return ()

    def how_far(self) -> Iterator[tuple[float, Bound]]:
        """The last value that holds on either side, with its distance from the present one."""
        measure = self._stated()
        for sign in (1, -1):
            found = self._of_number(measure, sign) if measure is not None else self._of_list(sign)
            if found is not None:
                last, beyond = found
                proof, failing = (
                    check(self._found.rule, self._part, self._changed(one)) for one in (last, beyond)
                )
                if proof.outcome == "conforms" != failing.outcome:
                    bound = Bound(last.text, proof.utilisation, sign > 0, beyond.text, failing.actual)
                    yield abs(last.by), bound

    def _stated(self) -> Measure | None:
        try:
            found = self._holder.under(self._step.where.key)
        except LookupError:
            return None
        return found if isinstance(found, Measure) else None

    def _of_number(self, measure: Measure, sign: int) -> tuple[Restated, Restated] | None:
        """The last step that holds on one side, the present value where none beyond it does, and the next, which fails.

        None where all hold within reach.
        """
        steps = rounding(measure)
        if steps is None:
            return None
        end = steps.reach
        good, bad = 0.0, 0.0
        width = steps.steps[0]
        for doubling in range(_MOST_STEPS):
            by = sign * min(width * 2**doubling, end)
            if not self._holds(steps.moved(by)):
                bad = by
                break
            good = by
            if abs(by) >= end:
                return None
        for _ in range(_HALVINGS):
            if abs(bad - good) <= width / 10:
                break
            middle = (good + bad) / 2
            good, bad = (middle, bad) if self._holds(steps.moved(middle)) else (good, middle)
        aim = (steps.rounded(bad, 0, further) for further in (-2, -1, 0, 1))
        for one, beyond in pairwise(one for one in aim if one is not None):
            if self._may_stand(one) and self._restated_holds(one) and not self._restated_holds(beyond):
                return one, beyond
        following = steps.rounded(bad, 0, 0)
        present = Restated(measure.text, measure, 0.0, measure.nominal)
        return (present, following) if following and not self._restated_holds(following) else None

    def _of_list(self, sign: int) -> tuple[Restated, Restated] | None:
        """Of counts and threads, the last that holds on one side, the present one among them, and the next."""
        last: Restated | None = None
        for one in self._ladder(sign):
            if not self._restated_holds(one):
                return last or self._present(one.of), one
            last = one
        return None

    def _present(self, of: float) -> Restated:
        value = self._step.value
        now = value if isinstance(value, str) else round(self._step.stated)
        return Restated(f"{now}", now, 0.0, of)

    def _ladder(self, sign: int) -> Iterator[Restated]:
        if self._step.kind == "counted":
            now = round(self._step.stated)
            for more in range(1, _PIECES + 1):
                if (count := now + sign * more) > 0:
                    yield Restated(f"{count}", count, float(sign * more), now)
        elif isinstance(self._step.value, str):
            larger, smaller = threads(self._step.value)
            yield from larger if sign > 0 else smaller

    def _may_stand(self, one: Restated) -> bool:
        """Whether the spec could state it."""
        key, value = self._step.where.key, one.value
        if not isinstance(value, Measure):
            return True
        whole = self._holder if "." in key else self._holder.model_copy(update={key: value})
        return could_state(self._holder, key, value) and not any(
            misfits_of(whole, self._context.design.specs)
        )

    def _restated_holds(self, one: Restated) -> bool:
        return self._runs(self._changed(one))

    def _holds(self, value: Measure) -> bool:
        return self._runs(self._with(value))

    def _runs(self, context: Context) -> bool:
        return where_it_fails(self._found.rule, self._part, context, self._found.corners) is None

    def _changed(self, one: Restated) -> Context:
        where, design = self._step.where, self._context.design
        if isinstance(one.value, Measure):
            return self._with(one.value)
        if isinstance(one.value, str):
            return replace(self._context, worded=design.reworded(where, one.value))
        return replace(self._context, moved=design.moved(where, one.by))

    def _with(self, value: Measure) -> Context:
        return replace(self._context, moved=self._context.design.restated(self._step.where, value))
