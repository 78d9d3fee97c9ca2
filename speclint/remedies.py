"""What would clear a finding: the change of one stated value, solved for and then proved.

One value that the rule took from the component's own spec is moved, its limits with it, until the rule holds.
The search runs at the governing corner only; the proof runs the whole check again, every corner and load case,
and a corner that then governs joins the search.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from speclint.assess import check, run_once
from speclint.checks import Check
from speclint.context import Context
from speclint.judgement import Judgement
from speclint.record import Step
from speclint.specs.part import Component
from speclint.where import Where
from speclint.writing import amount

#: A value moved by more than half is another design, not a remedy: common practice.
_REACH = 0.5
#: Shares of the reach looked at, since a window may lie between the present value and the reach.
_SHARES = (1.0, 0.4, 0.1, 0.02, 0.004, 0.0008)
_PROOFS = 6
_HALVINGS = 40
#: More added pieces than this are another design: common practice.
_PIECES = 12


@dataclass(frozen=True, slots=True)
class Remedy:
    """One stated value, and what it would have to be for the rule to hold; SI units."""

    where: Where
    name: str
    now: float
    then: float
    unit: str
    written_in: str
    utilisation: float | None

    @property
    def change(self) -> float:
        """The change as a share of the present value."""
        return abs(self.then - self.now) / abs(self.now) if self.now else math.inf

    def __str__(self) -> str:
        now = amount(self.now, self.unit, self.written_in)
        return f"{self.name} from {now} to {amount(self.then, self.unit, self.written_in)}"


def remedies(found: Check, context: Context) -> list[Remedy]:
    """The remedies of a finding, the smallest change first; none where the rule is not a matter of number."""
    component = context.design.specs.get(found.component)
    if found.outcome != "finding" or found.utilisation is None or not isinstance(component, Component):
        return []
    solved = [_solve(found, component, step, context) for step in _own_values(found, component)]
    return sorted((one for one in solved if one), key=lambda one: (one.change, one.name))


def _own_values(found: Check, component: Component) -> Iterator[Step]:
    """The dimensions and counts that the governing run took from the component's own file, each once."""
    seen: set[Where] = set()
    for step in found.steps:
        own = step.where.file == component.where.file and step.where.key and step.unit not in ("K", "ΔK")
        if step.kind in ("taken", "counted") and own and step.where not in seen and step.stated:
            seen.add(step.where)
            yield step


class _Trial:
    """Tries a rule with one value moved: at known corners cheaply, in full to prove."""

    def __init__(self, found: Check, component: Component, step: Step, context: Context) -> None:
        self._found, self._component, self._step, self._context = found, component, step, context
        self._corners = [(found.case, found.corner)]

    def holds(self, shift: float) -> bool:
        """Whether the rule holds at every corner met so far."""
        moved = self._moved(shift)
        endings = (
            run_once(self._found.rule, self._component, case, sides, moved) for case, sides in self._corners
        )
        return all(isinstance(ending, Judgement) and ending.holds for ending in endings)

    def proved(self, shift: float) -> Check:
        """The whole check with the value moved; where it fails, its corner joins those tried."""
        proof = check(self._found.rule, self._component, self._moved(shift))
        if proof.outcome != "conforms":
            self._corners.append((proof.case, proof.corner))
        return proof

    def _moved(self, shift: float) -> Context:
        return replace(self._context, moved={self._step.where: shift})


def _solve(found: Check, component: Component, step: Step, context: Context) -> Remedy | None:
    trial = _Trial(found, component, step, context)
    for _ in range(_PROOFS):
        shift = (
            _pieces(trial.holds)
            if step.kind == "counted"
            else _least_shift(trial.holds, step.stated, _step(step))
        )
        if shift is None:
            return None
        proof = trial.proved(shift)
        if proof.outcome == "conforms":
            then = step.stated + shift
            return Remedy(
                step.where, step.name, step.stated, then, step.unit, step.written_in, proof.utilisation
            )
    return None


def _pieces(holds: Callable[[float], bool]) -> float | None:
    return next((float(more) for more in range(1, _PIECES + 1) if holds(float(more))), None)


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
