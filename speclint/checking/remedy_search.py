"""What would clear a finding: the change of one stated value, solved for and then proved.

One value that the rule took from the component's own spec is moved, its limits with it, until the rule holds.
The search runs at the governing corner only; the proof runs the whole check again, every corner and load case,
and a corner that then governs joins the search. Places that do not agree are another matter
(:mod:`speclint.checking.agreement_remedy`).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Iterator, Sequence
from dataclasses import replace

from speclint.checking.agreement_remedy import agreed
from speclint.checking.check_result import Check
from speclint.checking.remedy import Remedy
from speclint.checking.rule_run import check, run_once, still_conforms, where_it_fails
from speclint.checking.severity import Ending
from speclint.checking.time_limit import Overrun
from speclint.errors import FamilyError, Location
from speclint.rules import Consulted, Context, Judgement, Step
from speclint.specs import Component

#: A value moved by more than half is another design, not a remedy: common practice.
_REACH = 0.5
#: Shares of the reach looked at, since a window may lie between the present value and the reach.
_SHARES = (1.0, 0.4, 0.1, 0.02, 0.004, 0.0008)
_PROOFS = 6
_HALVINGS = 40
#: More added pieces than this are another design: common practice.
_PIECES = 12


def remedies(found: Check, checks: Sequence[Check], context: Context, most: int = 3) -> list[Remedy]:
    """The remedies of a finding: those that spoil no other check first, then the smallest change.

    ``checks`` are the others of the same run. None are found where the rule is not a matter of number, nor where it
    rests on a long calculation, such as that of a cylinder's cycle: a search would repeat that hundreds of times.

    :raises FamilyError: where a rule that is run for it takes longer than the settings allow.
    """
    component = context.design.specs.get(found.component)
    if found.outcome != "finding" or found.judgement is None or not isinstance(component, Component):
        return []
    try:
        if found.judgement.places:
            return agreed(found, component, checks, context)
        if found.utilisation is None or any(step.long for step in found.steps):
            return []
        trials = [_Trial(found, component, step, checks, context) for step in _own_values(found, context)]
        return sorted(_proved(trials, most), key=_order)
    except Overrun as problem:
        what = f"a remedy of {found.rule.name} was sought on {found.component}"
        raise FamilyError(
            f"family {found.rule.family}: a rule did not end in its time while {what}"
        ) from problem


def of_part_alike(remedy: Remedy, found: Check) -> Remedy:
    """A remedy as that of a finding alike on another part: the same place of the drawing."""
    where = remedy.where
    return replace(remedy, where=Location(where.file, where.line, where.key, where.part and found.component))


def solved(found: Check, checks: Sequence[Check], context: Context) -> tuple[list[Remedy], Consulted]:
    """The remedies of a finding, and what was consulted to find them."""
    with context.asking() as consulted:
        return remedies(found, checks, context), consulted


class Spoiling:
    """The checks that remedies could spoil: those that hold, by the places of the values that they took.

    Of parts alike one stands for all: a value is moved on the drawing, and what rests on the same values holds or
    fails alike. ``alike`` tells of a finding which others share its remedies.
    """

    def __init__(self, checks: Sequence[Check]) -> None:
        self._took: dict[tuple[str, str], list[Check]] = {}
        self._parts = {one.component for one in checks}
        self._rests: dict[tuple[str, str], Hashable] = {}
        for one in checks:
            if one.outcome == "conforms" and not one.rule.reviews:
                for place in {_drawn_at(step.where) for step in one.steps if step.where.key}:
                    self._took.setdefault(place, []).append(one)

    def by(self, found: Check) -> list[Check]:
        """Those that took a value which the finding took, without the rest of their working."""
        own = {_drawn_at(step.where) for step in found.steps if step.where.key}
        among = {one.order: one for place in own for one in self._took.get(place, ())}
        standing: dict[Hashable, Check] = {}
        for _, one in sorted(among.items()):
            steps = tuple(step for step in one.steps if _drawn_at(step.where) in own)
            drawn = tuple((step.where.file, step.where.line, step.where.key) for step in steps)
            standing.setdefault((self._rests_on(one), drawn), replace(one, steps=steps))
        return list(standing.values())

    def _rests_on(self, one: Check) -> Hashable:
        """What a check was made of, without the ids of parts."""
        if one.order not in self._rests:
            values = tuple(value for value in one.rests_on.values() if value not in self._parts)
            self._rests[one.order] = (one.rule.name, one.case, one.utilisation, values)
        return self._rests[one.order]

    @staticmethod
    def alike(found: Check) -> Hashable:
        """The same for findings of parts alike that took their values from the same places of one drawing."""
        drawn = tuple((step.where.file, step.where.line, step.where.key) for step in found.steps)
        places = found.judgement.places if found.judgement else ()
        return (found.alike, drawn) if found.alike and not places else found.order


def _drawn_at(where: Location) -> tuple[str, str]:
    """A place on a drawing, told from the same key in other files sooner than a location is."""
    return where.file, where.key


def _proved(trials: Sequence[_Trial], most: int) -> list[Remedy]:
    """The best remedies: whatever looks best is proved first, and looked at again where its proof fails."""
    hoped = [(trial, one) for trial in trials if (one := trial.hoped()) is not None]
    found: list[Remedy] = []
    while hoped and len(found) < most:
        best = min(hoped, key=lambda pair: _order(pair[1]))
        hoped.remove(best)
        trial, remedy = best
        if proved := trial.proved(remedy):
            found.append(proved)
        elif again := trial.hoped():
            hoped.append((trial, again))
    return found


def _order(remedy: Remedy) -> tuple[int, float, str]:
    return len(remedy.spoils), remedy.change, remedy.name


def _own_values(found: Check, context: Context) -> Iterator[Step]:
    """The dimensions and counts of the component that the governing run took, each once.

    A mirrored one is left out: its drawing states another number, and has its own remedy there.
    """
    design = context.design
    seen: set[Location] = set()
    for step in found.steps:
        own = design.owner(step.where) == found.component and step.where.key and step.unit not in ("K", "ΔK")
        own = own and not design.is_turned(step.where)
        if step.kind in ("taken", "counted") and own and step.where not in seen and step.stated:
            seen.add(step.where)
            yield step


class _Trial:
    """Tries a rule with one value moved: at known corners cheaply, in full to prove."""

    def __init__(
        self, found: Check, component: Component, step: Step, checks: Sequence[Check], context: Context
    ) -> None:
        self._found, self._component, self._context = found, component, context
        self.step = step
        self._corners = [(found.case, found.corner)]
        self._others = [one for one in checks if one.outcome == "conforms" and _took(one, step.where)]
        self._proofs = 0

    def hoped(self) -> Remedy | None:
        """The least change that holds at every corner met so far; None where none does, or too many proofs failed."""
        step = self.step
        if self._proofs == _PROOFS:
            return None
        shift = (
            _pieces(self) if step.kind == "counted" else _least_shift(self.holds, step.stated, _step(step))
        )
        if shift is None:
            return None
        then, spoils = step.stated + shift, self.seems_to_spoil(shift)
        return Remedy(step.where, step.name, step.stated, then, step.unit, step.written_in, None, spoils)

    def holds(self, shift: float) -> bool:
        """Whether the rule holds at every corner met so far."""
        moved = self._moved(shift)
        endings = (
            run_once(self._found.rule, self._component, case, sides, moved) for case, sides in self._corners
        )
        return all(_holds(ending) for ending in endings)

    def proved(self, remedy: Remedy) -> Remedy | None:
        """The remedy with the whole check behind it; None where that fails, and its corner joins those tried."""
        shift = float(remedy.then) - float(remedy.now)  # both are numbers: they came from hoped()
        moved = self._moved(shift)
        self._proofs += 1
        if failing := where_it_fails(self._found.rule, self._component, moved, self._found.corners):
            self._corners.append(failing)
            return None
        proof = check(self._found.rule, self._component, moved)
        if proof.outcome == "conforms":
            return replace(remedy, utilisation=proof.utilisation, spoils=self.spoils(shift))
        self._corners.append((proof.case, proof.corner))
        return None

    def spoils(self, shift: float) -> tuple[str, ...]:
        """The rules that took the same value, hold as it is, and would not hold with it moved."""
        moved = self._moved(shift)
        return self._failing(
            lambda one, part: (
                _holds(run_once(one.rule, part, one.case, one.corner, moved))
                and still_conforms(one, part, moved)
            )
        )

    def seems_to_spoil(self, shift: float) -> tuple[str, ...]:
        """The same at the corners that govern now: quick, and enough to choose by."""
        moved = self._moved(shift)
        return self._failing(lambda one, part: _holds(run_once(one.rule, part, one.case, one.corner, moved)))

    def _failing(self, holds: Callable[[Check, Component], bool]) -> tuple[str, ...]:
        failing: dict[str, None] = {}
        for one in self._others:
            part = self._context.design.specs[one.component]
            if one.rule.name not in failing and isinstance(part, Component) and not holds(one, part):
                failing[one.rule.name] = None
        return tuple(failing)

    def _moved(self, shift: float) -> Context:
        return replace(self._context, moved=self._context.design.moved(self.step.where, shift))


def _holds(ending: Ending) -> bool:
    return isinstance(ending, Judgement) and ending.holds


def _took(one: Check, where: Location) -> bool:
    return not one.rule.reviews and any(step.where.drawn == where.drawn for step in one.steps)


def _pieces(trial: _Trial) -> float | None:
    """The fewest added pieces that clear the finding and spoil nothing, or else that clear it."""
    fewest: float | None = None
    for more in map(float, range(1, _PIECES + 1)):
        if trial.holds(more):
            if not trial.seems_to_spoil(more):
                return more
            fewest = more if fewest is None else fewest
    return fewest


def _step(step: Step) -> float:
    """What a drawing can state: a micrometre of a length, else a hundred-thousandth of the value's decade."""
    return 1e-6 if step.unit == "m" else float(10.0 ** (math.floor(math.log10(abs(step.stated))) - 5))


def _least_shift(holds: Callable[[float], bool], stated: float, step: float) -> float | None:
    """The least shift up or down that holds, rounded away to a step that a drawing can state."""
    reach = _REACH * abs(stated)
    ends = (
        next((sign * share * reach for share in _SHARES if holds(sign * share * reach)), None)
        for sign in (1, -1)
    )
    return min((_halved(holds, end, step) for end in ends if end is not None), key=abs, default=None)


def _halved(holds: Callable[[float], bool], end: float, step: float) -> float:
    fails, works = 0.0, end
    for _ in range(_HALVINGS):
        if abs(works - fails) < step / 10:
            break
        middle = (fails + works) / 2
        fails, works = (fails, middle) if holds(middle) else (middle, works)
    rounded = math.copysign(math.ceil(abs(works) / step) * step, works)
    return rounded if holds(rounded) else works
