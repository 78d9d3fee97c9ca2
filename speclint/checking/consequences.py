"""What rests on a value of a spec: the checks that take it at any corner, their parts, drawings and concessions."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from typing import Any

from msgspec import Struct

from speclint.checking.assessment import Assessment
from speclint.checking.check_result import Check
from speclint.checking.rule_run import check
from speclint.errors import DesignError, Location, one_of, replace
from speclint.repository import Concession, Design
from speclint.rules import Context
from speclint.specs import Component, Link, MadePart, NotStated, Spec

#: Keys by which specs are found that no link leads to: questions put to the whole repository rest on them.
_ASKED_OF_ALL = frozenset({"title", "drawing", "like", "mirror_of", "certificate.number", "certificate.heat"})


class Consequences(Struct, frozen=True):
    """What a change of one value reaches; of a component as a whole where ``key`` is "".

    ``stated`` is the value as written; "" where it is not stated. ``read_in`` are the specs that read the same line of
    a file: the part itself, and those that are like it. ``checks`` take the value at some corner or load case.
    ``joined`` are the specs that a link joins to the part, either way; ``made`` the records of pieces that were made
    to a spec of ``read_in``, or to a part of the checks. ``concessions`` accept a finding of one of the checks.
    """

    component: str
    key: str
    stated: str
    read_in: tuple[str, ...]
    checks: tuple[Check, ...]
    joined: tuple[str, ...]
    made: tuple[str, ...]
    concessions: tuple[Concession, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts of the checks, in the order of their ids."""
        return tuple(sorted({one.component for one in self.checks}))


def spec_with(design: Design, component: str, key: str) -> Spec:
    """The spec of a value that is asked about; of a component as a whole where ``key`` is "".

    :raises DesignError: where there is no such spec, or it has no such key.
    """
    spec = design.specs.get(component)
    if spec is None:
        raise DesignError(f"no spec is called {component}; write {one_of(component, design.specs)}")
    keys = [name for name, _ in spec.at_keys()]
    if key and key not in keys:
        raise DesignError(f"{spec.id} has no key {key}; write {one_of(key, keys)}")
    return spec


def consequences(assessment: Assessment, component: str, key: str) -> Consequences:
    """What rests on a value, by what checks consulted.

    :raises DesignError: where there is no such spec, or it has no such key.
    """
    design, context = assessment.design, assessment.context
    if design is None or context is None:
        raise DesignError("nothing could be read to tell what rests on a value")
    spec = spec_with(design, component, key)
    places, stated = {component: list[Any]()}, ""
    if key:
        value = dict(spec.at_keys())[key]
        places, stated = dict(_places(design, spec, value.where.drawn)), _as_stated(value)
    checks = tuple(_resting_on(assessment, context, places, key))
    rules = {(one.component, one.rule.name) for one in checks}
    conceded = tuple(
        one for one in assessment.register.concessions if any((part, one.rule) in rules for part in one.parts)
    )
    joined = {link.id for link in spec.links() if design.index.leads(link)}
    joined |= {part.id for part in design.linking_to(spec)}
    made = tuple(_made_to(design, {*places, *(one.component for one in checks)}))
    return Consequences(
        component, key, stated, tuple(sorted(places)), checks, tuple(sorted(joined - {*made})), made, conceded
    )


def _made_to(design: Design, parts: Collection[str]) -> Iterator[str]:
    """The ids of the parts as made of some specs, in their order."""
    for one in design.parts_as_made():
        if isinstance(one, MadePart) and isinstance(one.of, Link) and one.of.id in parts:
            yield one.id


def _as_stated(value: Any) -> str:
    """A value as it is written; "" where it is not stated."""
    if isinstance(value, NotStated):
        return ""
    return value.id if isinstance(value, Link) else str(getattr(value, "text", getattr(value, "value", "")))


def _places(design: Design, spec: Spec, drawn: Location) -> Iterator[tuple[str, list[Any]]]:
    """The values in each spec that reads one line of a drawing: what a change there changes."""
    for name in (spec.id, *design.names_sharing(spec.id)):
        other = design.specs.get(name)
        if other and (found := [value for _, value in other.at_keys() if value.where.drawn == drawn]):
            yield name, found


def _resting_on(
    assessment: Assessment, context: Context, places: Mapping[str, list[Any]], key: str
) -> Iterator[Check]:
    """The checks that take the value, and on their parts the checks that review how the others came out."""
    taking = {one.order: one.component for one in _taking(assessment, context, places, key)}
    parts = set(taking.values())
    return (
        one
        for one in assessment.checks
        if one.order in taking or (one.rule.reviews and one.component in parts)
    )


def _taking(
    assessment: Assessment, context: Context, places: Mapping[str, list[Any]], key: str
) -> Iterator[Check]:
    """The checks that took the value: those that write it on their sheet, and of the others those that ask for it when
    they are made once more, each by itself.
    """
    values = [value for of_spec in places.values() for value in of_spec]
    opened = {id(value.where) for value in values}
    drawn = {value.where.drawn for value in values}
    led = {value.id for value in values if isinstance(value, Link)}
    alone = replace(context, shared=None)
    for one in assessment.checks:
        if one.consulted.ids.isdisjoint(places) and not (
            one.consulted.asked and (led or key in _ASKED_OF_ALL)
        ):
            continue
        part = alone.design.specs[one.component]
        on_sheet = any(step.where.drawn in drawn for step in one.steps)
        if on_sheet or not key or one.rule.reviews or not isinstance(part, Component):
            yield one
            continue
        alone.worked.clear()  # or a second check would not ask for what the first did
        check(one.rule, part, alone)
        if alone.asked.everything or opened & alone.asked.values.keys() or led & alone.asked.followed:
            yield one
