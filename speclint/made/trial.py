"""The design with some specs in the place of those drawn, and its checks made again in it: only what that can change.

A check is made again where it opened a value, at any corner, that now stands otherwise; of every other the result is
that of before, which it would give again. What was worked once for many checks, such as the steam in a cylinder, is
taken over in the same way, and given back for the next trial.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass, field

from speclint.checking import Check, KeptResults, check
from speclint.errors import Location
from speclint.repository import digest
from speclint.rules import Consulted, Context
from speclint.specs import Component, Duty, LoadCase, MadePart, Spec, Tie

#: File, part and key of a value.
_At = tuple[str, str, str]


@dataclass(frozen=True)
class Trial:
    """Some specs in the place of others, and the context in which checks are made with them.

    ``before`` is the trial, or the design as drawn, that this one differs from in ``changed`` alone: the places of
    values as they were there, and as they are here. A part that has a temperature of its own here, and had that of its
    kind there, stands in ``warmed`` with the places of that: it is changed for the part alone. ``kept`` is where its
    checks are found that an earlier run made with the same values, of which ``instead`` is a digest.
    """

    context: Context
    before: Trial | None = None
    changed: frozenset[_At] = frozenset()
    warmed: tuple[tuple[str, frozenset[_At]], ...] = ()
    kept: KeptResults | None = None
    instead: str = ""
    _made: dict[tuple[str, str], Check] = field(default_factory=dict, repr=False)

    @staticmethod
    def after(
        before: Trial, context: Context, specs: Mapping[str, Spec], kept: KeptResults | None = None
    ) -> Trial:
        """A trial of some specs, in a context that has them, in the place of those of another trial.

        What it makes is ``kept`` where that is given, and the other trial has its own kept or is the design as drawn.
        """
        there = before.context.design.specs
        changed = frozenset(at for name, spec in specs.items() for at in _changed(there[name], spec))
        warmed = (
            one
            for name, spec in specs.items()
            if isinstance(spec, Duty)
            for one in _warmed(there[name], spec, there)
        )
        instead = ""
        if kept is not None and (before.kept is not None or before.before is None):
            made = (name for name, one in context.design.index.entries.items() if one.kind == MadePart.kind)
            values = [(name, _said(there[name], spec)) for name, spec in sorted(specs.items())]
            instead = digest(before.instead, kept.stated_in(sorted(made)), values)
        found = Trial(context, before, changed, tuple(warmed), kept if instead else None, instead)
        found.context.toleranced |= before.context.toleranced
        found.context.worked.update(
            (key, one) for key, one in before.context.worked.items() if not found._differs(*one[1:])
        )
        return found

    def again(self, one: Check) -> Check:
        """How a check of the drawings comes out here."""
        found = self._made.get(one.order)
        if found is None:
            found = self._made[one.order] = self._again(one)
        return found

    def _again(self, one: Check) -> Check:
        if self.before is None:
            return one
        earlier = self.before.again(one)
        if not self._touches(earlier.consulted, earlier.consulted.opened):
            return earlier
        if self.kept is not None and (known := self.kept.again_of(one, self.instead)) is not None:
            return known
        component = self.context.design.specs[one.component]
        assert isinstance(component, Component)
        worked = set(self.context.worked)
        found = check(one.rule, component, self.context)
        self._give_back(worked)
        if self.kept is not None:
            self.kept.keep_again(one, found, self.instead)
        return found

    def _give_back(self, known: set[object]) -> None:
        """Let the next trial have what was worked here, and rests on nothing that differs here."""
        trial: Trial | None = self
        new = {key: one for key, one in self.context.worked.items() if key not in known}
        while trial is not None and trial.before is not None and new:
            new = {key: one for key, one in new.items() if not trial._differs(*one[1:])}
            trial = trial.before
            trial.context.worked.update(new)

    def _differs(self, consulted: Consulted, opened: Mapping[int, Location]) -> bool:
        return self._touches(consulted, set(map(_at, opened.values())))

    def _touches(self, consulted: Consulted, opened: Set[_At]) -> bool:
        """Whether what consulted some specs, and opened some values, opened one that differs here."""
        if not opened.isdisjoint(self.changed):
            return True
        return any(name in consulted.specs and not opened.isdisjoint(places) for name, places in self.warmed)


def _said(one: Spec, other: Spec) -> list[tuple[str, str]]:
    """What a spec states otherwise than another, by key."""
    was = dict(one.at_keys())
    return [(key, repr(value)) for key, value in other.at_keys() if value != was.get(key)]


def _changed(one: Spec, other: Spec) -> Iterator[_At]:
    """The places of the values in which two specs of one kind differ: in the one, and in the other."""
    if one is other:
        return
    was, now = dict(one.at_keys()), dict(other.at_keys())
    for key in {**was, **now}:
        here, there = was.get(key), now.get(key)
        if here is not there and here != there:
            yield from (_at(value.where) for value in (here, there) if value is not None)


def _warmed(one: Spec, other: Duty, specs: Mapping[str, Spec]) -> Iterator[tuple[str, frozenset[_At]]]:
    """The parts that get a temperature of their own in a duty, each with the places of that which it had."""
    assert isinstance(one, Duty)
    for name, case in other.cases.items():
        was: LoadCase = one.cases[name]
        for part in case.temperatures.keys() - was.temperatures.keys():
            yield part, frozenset(_of_temperature(was.temperature_of(specs[part])))


def _of_temperature(value: object) -> Iterator[_At]:
    """The places of a temperature, and of those to which it is tied."""
    if isinstance(value, Tie):
        yield from (*_of_temperature(value.base), _at(value.difference.where))
    else:
        yield _at(value.where)  # type: ignore[attr-defined]  # a quantity, or where it would be stated


def _at(where: Location) -> _At:
    return where.file, where.part, where.key
