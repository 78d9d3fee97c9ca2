"""One stated value of a finding, tried at other values in the steps of the drawing office.

At known corners a trial is cheap; whatever holds there is proved by the whole check.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from speclint.checking.check_result import Check
from speclint.checking.office_steps import Restated, Rounding, listed, rounding, threads
from speclint.checking.one_corner import run_once
from speclint.checking.remedy import Remedy
from speclint.checking.rolled_parts import is_of_plate
from speclint.checking.rule_run import check
from speclint.checking.severity import Ending, Severity, severity
from speclint.checking.stated_value import StatedValue
from speclint.checking.where_it_fails import still_conforms, where_it_fails
from speclint.checking.window import halved, shift_that_holds
from speclint.errors import Location, replace
from speclint.quantities import Measure
from speclint.repository import misfits_of
from speclint.rules import Context, Judgement
from speclint.specs import Component, Spec, could_state

#: Shares of the reach looked at, since a window may lie between the present value and the reach: of a whole value, and
#: of limits alone, where windows are narrow.
_SHARES = (1.0, 0.4, 0.1, 0.02, 0.004, 0.0008)
_SHARES_OF_LIMITS = (1.0, 0.4, 0.15, 0.06, 0.02, 0.006)
_PROOFS = 6
#: More added pieces than this are another design: common practice.
_PIECES = 12


class Trial:
    """Tries a rule with one value restated: at known corners cheaply, in full to prove.

    ``ways`` are the signs of the changes that are tried: of a part as made metal comes off, and not on. ``holder`` is
    the spec that states the value, where it is not the component of the finding. ``beside`` are findings of the rule on
    other parts, which are to be cleared too where they read the same line, and ``short_of`` those that need not be.
    """

    def __init__(
        self,
        value: StatedValue,
        *,
        ways: Sequence[int] = (1, -1),
        holder: Spec | None = None,
        beside: Sequence[Check] = (),
        short_of: Sequence[Check] = (),
    ) -> None:
        found, component = value.found, value.component
        self._ways, self._holder = tuple(ways), holder or component
        self._found, self._component, self._context = found, component, value.context
        self.step = value.step
        #: The worst first, as it fails soonest: in one order, whichever of the parts the finding is of.
        self._parts = sorted(
            [(component, found), *self._reading(beside)],
            key=lambda pair: (-(pair[1].utilisation or 0.0), pair[0].id),
        )
        self._short_of = self._reading(short_of)
        self._corners = [(part, one.case, one.corner) for part, one in self._parts]
        self._others = [
            one for one in value.checks if one.outcome == "conforms" and took(one, self.step.where)
        ]
        self._proofs = 0
        self._hoped: Restated | None = None
        #: What each part would use of its limit with the change that was proved last.
        self.used: dict[str, float | None] = {}

    def _reading(self, findings: Sequence[Check]) -> list[tuple[Component, Check]]:
        """Those of some findings that read the line, with their parts."""
        specs = self._context.design.specs
        both = ((specs.get(one.component), one) for one in findings if took(one, self.step.where))
        return [(part, one) for part, one in both if isinstance(part, Component)]

    def hoped(self) -> Remedy | None:
        """The least change that holds at every corner met so far; None where none does, or too many proofs failed."""
        self._work_what_is_long()
        self._hoped = self._least() if self._proofs < _PROOFS else None
        return self._remedy(self._hoped) if self._hoped else None

    def _work_what_is_long(self) -> None:
        """Work each long calculation with nothing moved: trials take it over where they move nothing that it took."""
        if any(step.long for step in self._found.steps):
            for part, case, sides in self._corners:
                run_once(self._found.rule, part, case, sides, self._context)

    @property
    def rises(self) -> bool:
        """Whether the change that was hoped for last makes the value greater."""
        return self._hoped is not None and self._hoped.by > 0

    def proved(self, remedy: Remedy) -> Remedy | None:
        """The remedy hoped for with the whole check behind it; None where that fails: its corner joins those tried."""
        assert self._hoped is not None  # the remedy is made of it
        changed = self._changed(self._hoped)
        self._proofs += 1
        used: dict[str, float | None] = {}
        for part, found in self._parts:
            if failing := where_it_fails(found.rule, part, changed, found.corners):
                self._corners.append((part, *failing))
                return None
            one = check(found.rule, part, changed)
            if one.outcome != "conforms":
                self._corners.append((part, one.case, one.corner))
                return None
            used[part.id] = one.utilisation
        self.used = used
        return replace(
            remedy,
            utilisation=used[self._component.id],
            spoils=self._spoils(changed),
            short_of=tuple(
                part.id
                for part, one in self._short_of
                if where_it_fails(one.rule, part, changed, {one.case: one.corner}) is not None
            ),
        )

    def _least(self) -> Restated | None:
        step = self.step
        if step.kind == "counted":
            return self._pieces()
        if isinstance(step.value, str):
            larger, smaller = threads(step.value)
            return self._first(larger) or self._first(smaller)
        stated = self._stated()
        if stated is None:
            return None
        if found := self._of_a_list(stated):
            return found
        limits, whole = rounding(stated, limits=True), rounding(stated)
        found = self._rounded(limits, _SHARES_OF_LIMITS) if limits else None
        return found or (self._rounded(whole, _SHARES) if whole else None)

    def _of_a_list(self, stated: Measure) -> Restated | None:
        """The nearest value that a list gives: of a part as made none is taken, since it has the size that it has."""
        if len(self._ways) < 2:
            return None
        above, below = listed(stated, plate=is_of_plate(self._holder, self.step.where.key, self._context))
        up = self._first(above)
        down = self._first(one for one in below if up is None or abs(one.by) < abs(up.by))
        return down or up

    def _stated(self) -> Measure | None:
        """The quantity as the component states it."""
        try:
            found = self._holder.under(self.step.where.key)
        except LookupError:
            return None
        return found if isinstance(found, Measure) and found.where == self.step.where else None

    def _pieces(self) -> Restated | None:
        """The fewest added pieces that clear the finding and spoil nothing, or else that clear it."""
        fewest: Restated | None = None
        now = round(self.step.stated)
        for more in range(1, _PIECES + 1):
            one = Restated(f"{now + more}", now + more, float(more), now)
            if self._holds(one):
                if not self._seems_to_spoil(one):
                    return one
                fewest = fewest or one
        return fewest

    def _first(self, some: Iterable[Restated]) -> Restated | None:
        return next((one for one in some if self._holds(one)), None)

    def _rounded(self, steps: Rounding, shares: Sequence[float]) -> Restated | None:
        """The least change up or down, rounded to a step."""
        found = []
        for sign in self._ways:
            shifts = [sign * share * steps.reach for share in shares]
            end = shift_that_holds(lambda by: self._grave(steps.moved(by)), shifts)
            found.append(None if end is None else self._on_a_step(steps, end))
        return min((one for one in found if one), key=lambda one: abs(one.by), default=None)

    def _on_a_step(self, steps: Rounding, end: float) -> Restated | None:
        """The first step that holds on the way to a change that does: the coarsest that there is."""
        fails, works = 0.0, end
        for finer, step in enumerate(steps.steps):
            fails, works = halved(lambda by: self._runs(steps.moved(by)), fails, works, step / 10)
            for further in (-1, 0, 1):
                one = steps.rounded(works, finer, further)
                if one and abs(one.by) > abs(fails) and self._holds(one):
                    return one
        return None

    def _holds(self, restated: Restated) -> bool:
        """Whether the spec could state it, and the rule holds with it at every corner met so far."""
        return self._may_stand(restated) and self._at_corners(self._changed(restated))

    def _may_stand(self, restated: Restated) -> bool:
        value, key, part = restated.value, self.step.where.key, self._holder
        if not isinstance(value, Measure):
            return True
        whole = part if "." in key else part.model_copy(update={key: value})
        return could_state(part, key, value) and not any(misfits_of(whole, self._context.design.specs))

    def _runs(self, moved: Measure) -> bool:
        """Whether the rule holds with a quantity that nobody could write."""
        return self._at_corners(self._with(moved))

    def _grave(self, moved: Measure) -> Severity | None:
        """How grave the rule is with such a quantity, at the first corner where it fails; None where it holds."""
        ending = self._failing_ending(self._with(moved))
        return None if ending is None else severity(ending, self._found.rule)

    def _at_corners(self, changed: Context) -> bool:
        """Whether the rule holds at every corner met so far."""
        return self._failing_ending(changed) is None

    def _failing_ending(self, changed: Context) -> Ending | None:
        """How the rule ends at the first of the corners met so far where it fails; None where it holds at all."""
        for part, case, sides in self._corners:
            ending = run_once(self._found.rule, part, case, sides, changed)
            if not _ends_well(ending):
                return ending
        return None

    def _changed(self, restated: Restated) -> Context:
        where, design = self.step.where, self._context.design
        if isinstance(restated.value, Measure):
            return self._with(restated.value)
        if isinstance(restated.value, str):
            return replace(self._context, worded=design.reworded(where, restated.value))
        return replace(self._context, moved=design.moved(where, restated.by))

    def _with(self, value: Measure) -> Context:
        return replace(self._context, moved=self._context.design.restated(self.step.where, value))

    def _remedy(self, restated: Restated) -> Remedy:
        step, value = self.step, restated.value
        now: float | str = step.value if isinstance(step.value, str) else step.stated
        then: float | str
        written, by = f"{now:g}" if isinstance(now, float) else now, 0.0
        if isinstance(value, Measure):
            stated = self._stated()
            assert stated is not None  # it was restated
            written, then = stated.text, value.nominal
            if value.nominal == stated.nominal:  # its limits alone move
                now, then = (stated.low + stated.high) / 2, (value.low + value.high) / 2
                by = restated.share
        else:
            then = value if isinstance(value, str) else float(value)
            by = restated.share
        spoils = self._seems_to_spoil(restated)
        own = self._stated()
        unit = own.unit if own is not None else step.written_in
        plain = Remedy(step.where, step.name, now, then, step.unit, unit, None, spoils)
        return replace(plain, written=written, instead=restated.text, exact=restated.exact, by=by)

    def _spoils(self, changed: Context) -> tuple[str, ...]:
        """The rules that took the same value, hold as it is, and would not hold with it changed."""
        return self._failing(
            lambda one, part: (
                _ends_well(run_once(one.rule, part, one.case, one.corner, changed))
                and self._still_conforms(one, part, changed)
            )
        )

    def _still_conforms(self, one: Check, part: Component, changed: Context) -> bool:
        """Whether a check would still hold with the change that was hoped for, worked once for all findings."""
        hoped, where = self._hoped, self.step.where.drawn
        assert hoped is not None  # it is proved
        key = "still conforms", one.order, where, hoped.text, hoped.by
        found: bool = self._context.worked_once(key, lambda: still_conforms(one, part, changed))
        return found

    def _seems_to_spoil(self, restated: Restated) -> tuple[str, ...]:
        """The same at the corners that govern now: quick, and enough to choose by."""
        changed = self._changed(restated)
        return self._failing(
            lambda one, part: _ends_well(run_once(one.rule, part, one.case, one.corner, changed))
        )

    def _failing(self, holds: Callable[[Check, Component], bool]) -> tuple[str, ...]:
        failing: dict[str, None] = {}
        for one in self._others:
            part = self._context.design.specs[one.component]
            if one.rule.name not in failing and isinstance(part, Component) and not holds(one, part):
                failing[one.rule.name] = None
        return tuple(failing)


def _ends_well(ending: Ending) -> bool:
    return isinstance(ending, Judgement) and ending.holds


def took(one: Check, where: Location) -> bool:
    """Whether a check took a value that stands at a place of a drawing, of whatever part it is there."""
    return not one.rule.reviews and any(step.where.drawn == where.drawn for step in one.steps)
