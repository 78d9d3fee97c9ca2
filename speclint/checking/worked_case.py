"""A load case with the values that it asks to have worked: from the valve events, or as an estimate."""

from __future__ import annotations

from collections.abc import Callable
from hashlib import sha256
from typing import Any

from speclint.errors import replace
from speclint.quantities import Measure
from speclint.rules import Context, Corner, NotAssessed, Rule, RuleEnded, Sheet
from speclint.specs import Component, Estimate, FromEvents, LoadCase, NotStated, Spec, Tie, ValveGear

#: Worked on a sheet of its own, from the block or the component that is checked.
_Work = Callable[[Component, Sheet], "Measure | Tie"]


class WorkedCase(LoadCase):
    """A load case of which a value is worked when a rule first asks for it.

    What cannot be worked is not stated, and says why. What it is worked from goes into its digest, on which a
    concession rests.
    """

    def __init__(self, case: LoadCase, rule: Rule, component: Component, context: Context) -> None:
        # not validated: it has been, as the case that it stands for
        for name, value in (("case", case), ("rule", rule), ("component", component), ("context", context)):
            object.__setattr__(self, f"_{name}", value)
        object.__setattr__(self, "_known", {})

    def __getattribute__(self, name: str) -> Any:
        if name.startswith("_") or name in _OWN:
            return object.__getattribute__(self, name)
        value = getattr(self._case, name)
        if isinstance(value, FromEvents):
            from speclint.facts import value_from_events  # only where a case asks for one

            return self._worked(value, lambda near, sheet: value_from_events(name, near, self, sheet))
        return value

    def temperature_of(self, part: Spec) -> Any:
        """The metal temperature of a part, worked where the case asks for that."""
        return self._resolved(self._case.temperature_of(part), part)

    def temperature_named(self, name: str) -> Any:
        """The temperature that the case states under a name, worked where it asks for that."""
        return self._resolved(self._case.temperature_named(name), None)

    def _resolved(self, value: Measure | Tie | NotStated, part: Spec | None) -> Any:
        if isinstance(value, Tie):
            return replace(value, base=self._resolved(value.base, None))
        if isinstance(value, FromEvents):
            return getattr(self, value.where.key.rpartition(".")[2])
        if isinstance(value, Estimate):
            from speclint.facts import estimated_temperature  # only where a case asks for one

            def estimated(near: Component, sheet: Sheet) -> Measure | Tie:
                return estimated_temperature(value, part, near, self, sheet)

            return self._worked(value, estimated, part)
        return value

    def _worked(self, value: FromEvents | Estimate, work: _Work, part: Spec | None = None) -> Any:
        key = value.where, part.id if part is not None else ""
        if key not in self._known:
            self._known[key] = replace(value, why="it rests on itself")
            self._known[key] = self._once(value, work, part)
        return self._known[key]

    def _once(self, value: FromEvents | Estimate, work: _Work, part: Spec | None) -> Any:
        """The value as it was worked for another component of the same block, or worked now.

        It is worked from the block, so that what it rests on is the same whichever component asks first.
        """
        context = self._context
        if context.moved or context.worded:
            return self._work(value, work, self._component)
        block, way = context.design.way_to(self._component, ("cylinder-block",))
        context.consulted.specs.update(way)
        context.asked.everything = True
        by_block = block is not None and (part is not None or isinstance(value, FromEvents))
        by_block = by_block and not isinstance(self._component, ValveGear)
        near = block if by_block and isinstance(block, Component) else self._component
        key = value.where, near.id, part.id if part is not None else ""
        return context.worked_once(
            key,
            lambda: self._work(value, work, near),
            lasts=lambda found: (
                not isinstance(found, FromEvents | Estimate)
            ),  # it may only rest on itself here
        )

    def _work(self, value: FromEvents | Estimate, work: _Work, near: Component) -> Any:
        sheet = Sheet(self._rule, near, self._context, Corner(), record=True)
        try:
            found = work(near, sheet)
        except RuleEnded as ended:
            return replace(value, why=ended.says)
        rests = repr(sorted(sheet.record.basis.items())).encode()
        digest = f"worked from {sha256(rests).hexdigest()[:16]}"
        return _placed(found, value, digest)


_OWN = ("temperature_of", "temperature_named")


def _placed(found: Measure | Tie, value: FromEvents | Estimate, digest: str) -> Measure | Tie:
    """A worked value at the place where the load case asks for it."""
    if isinstance(found, Measure):
        return replace(found, where=value.where, worked=digest)
    return replace(found, where=value.where)


def worked_case(
    case: LoadCase | NotAssessed, rule: Rule, component: Component, context: Context
) -> LoadCase | NotAssessed:
    """A load case as it is, or with whatever it asks to have worked."""
    if isinstance(case, NotAssessed) or not case.asks:
        return case
    return WorkedCase(case, rule, component, context)
