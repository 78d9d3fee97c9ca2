"""Designs with some changes, made in memory: the example, or none, with keys set and specs added or left out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import Any

import tomli
from pydantic import ValidationError

from speclint.checking import Check, Inputs, check, context_of
from speclint.checking.rule_run import check_component
from speclint.families import Change, Loaded, RuleExample
from speclint.handbook.materials import Material
from speclint.repository import (
    FILE_NAME,
    Design,
    Register,
    Settings,
    is_toml,
    misfits_of,
    open_repository,
    scratch_folder,
)
from speclint.repository.all_specs import broken_links, loops
from speclint.repository.index import Index, Indexed, indexed
from speclint.repository.lazy_specs import IndexedSpecs
from speclint.repository.reading import Draft, Read, read_drafts, validated
from speclint.repository.taking_over import named_by, taken_over
from speclint.repository.toml_tables import read_toml
from speclint.repository.toml_writing import toml_text
from speclint.rules import Context, Rule, read_limits
from speclint.specs import Array, Component, Leaf, Spec, Table
from speclint.testing import SETTINGS, installed_families
from tests.contracts.promises import steps_of
from tests.example import EXAMPLE

#: Concessions and readings of drawings are asked of one day, so that no result hangs on the day of the run.
DAY = date(2026, 1, 15)


class Unreadable(Exception):
    """What is wrong with a design once it is changed, in one line."""


class ChangedSpecs(IndexedSpecs):
    """The specs of a design, some of them changed, added or left out."""

    def __init__(self, specs: Mapping[str, Spec], index: Mapping[str, Indexed]) -> None:
        self._specs, self.index = specs, index

    def __getitem__(self, name: str) -> Spec:
        return self._specs[name]


@dataclass(frozen=True)
class State:
    """A design, with each of its specs as it was before it was read."""

    design: Design
    drafts: Mapping[str, Read]
    settings: Mapping[str, Any]
    materials: Mapping[str, Material]
    register: Register

    def draft(self, name: str) -> Draft:
        """A spec as its file states it, with what it takes over.

        :raises Unreadable: where the design has none of that id.
        """
        found = self.drafts.get(name)
        if not isinstance(found, Draft):
            raise Unreadable(f"no spec is called {name}")
        return found


class Bench:
    """Every installed family, the example read once, and checks of changed designs."""

    def __init__(self, loaded: Loaded | None = None) -> None:
        self.loaded = loaded or installed_families()
        self.rules = {rule.name: rule for rule in self.loaded.rules}
        self._before: tuple[RuleExample, State] | None = None

    @cached_property
    def example(self) -> State:
        """The design of example_specs."""
        return self._opened(EXAMPLE)

    def _opened(self, root: Path) -> State:
        """The design repository in a folder.

        :raises Unreadable: where it draws a complaint.
        """
        opened = open_repository([root], self.loaded.kinds)
        if opened.complaints:
            raise Unreadable(str(opened.complaints[0]))
        files = sorted(set(opened.design.files.values()))
        read = (one for file in files for one in read_drafts(root / file, file, self.loaded.kinds))
        drafts = taken_over({one.id: one for one in read})
        settings = tomli.loads((root / FILE_NAME).read_text(encoding="utf-8"))
        return State(opened.design, drafts, settings, opened.materials, opened.register)

    def alone(self, given: Sequence[Change]) -> State:
        """A design of some whole specs, and of files such as the settings and materials, and of nothing else.

        :raises Unreadable: where it draws a complaint.
        """
        files = {FILE_NAME: SETTINGS}
        for one in given:
            files[one.component if is_toml(one.component) else f"{one.component}.toml"] = str(one.value)
        with scratch_folder() as root:
            for name, text in files.items():
                (root / name).write_text(text, encoding="utf-8", newline="\n")
            return self._opened(root)

    @cached_property
    def _at_rest(self) -> Context:
        """What the checks of the example consult, unchanged."""
        return self.context(self.example)

    def context(self, state: State) -> Context:
        """What checks of a design consult."""
        design = state.design
        limits, refused = (
            read_limits(design.settings, self.loaded.rules) if design.settings.limits else ({}, [])
        )
        if refused:
            raise Unreadable(str(refused[0]))
        inputs = Inputs(design, limits, state.materials, state.register, DAY)
        context = context_of(inputs, self.loaded)
        context.shared = False  # of parts alike only some corners would be run
        context.outcomes = {}
        return context

    def before(self, one: RuleExample) -> State:
        """The design of an example that holds; that of the last is kept, since it is asked for again."""
        if self._before is None or self._before[0] is not one:
            made = self.alone(one.given) if one.alone else self.changed(self.example, one.given)
            self._before = one, made
        return self._before[1]

    def checks(self, one: RuleExample) -> tuple[Check, Check]:
        """The check of an example: as it holds, and as its changes break it."""
        start = self.before(one)
        rule, broken = self.rules[one.rule], self.changed(start, one.changes)
        return self.made(rule, one.component, start), self.made(rule, one.component, broken)

    def made(self, rule: Rule, component: str, state: State) -> Check:
        """One check; of a rule that reviews the others of its component, after them.

        :raises Unreadable: where the component is not there.
        """
        part = state.design.specs.get(component)
        if not isinstance(part, Component):
            raise Unreadable(f"no component is called {component}")
        context = self._at_rest if state is self.example else self.context(state)
        if not rule.reviews:
            return check(rule, part, context)
        done = check_component(part, self.loaded.rules_for({part.kind}), context)
        return next(found for found in done if found.rule.name == rule.name)

    def changed(self, state: State, changes: Sequence[Change]) -> State:
        """A design with some changes.

        :raises Unreadable: where a spec or the settings cannot be read with them, or do not go together; a link to a
            spec that is left out is no fault.
        """
        if not changes:
            return state
        settings = [one for one in changes if one.component == FILE_NAME]
        if settings:
            state = _with_settings(state, settings)
        others = [one for one in changes if one.component != FILE_NAME]
        return self._with_specs(state, others) if others else state

    def _with_specs(self, state: State, changes: Iterable[Change]) -> State:
        drafts, own = dict(state.drafts), dict[str, Draft]()
        gone = set[str]()
        for one in changes:
            if one.key:
                draft = own.get(one.component) or _draft(drafts, one.component)
                own[one.component] = replace(draft, table=_set(draft.table, one))
            elif one.absent:
                gone.add(one.component)
                if drafts.pop(one.component, None) is None:
                    raise Unreadable(f"no spec is called {one.component}")
            else:
                own |= self._added(one, drafts)
        drafts |= own
        specs = dict(state.design.specs)
        for name in gone:
            specs.pop(name)
        for name, draft in own.items():
            specs[name] = self._read(draft)
        return replace(state, design=_design(state.design, specs, own, gone), drafts=drafts)

    def _added(self, one: Change, drafts: Mapping[str, Read]) -> dict[str, Draft]:
        file = f"{one.component}.toml"
        read = read_drafts(Path(file), file, self.loaded.kinds, str(one.value).encode())
        found: dict[str, Draft] = {}
        for spec in taken_over({**drafts, **{spec.id: spec for spec in read}}).values():
            if spec.id in {one.id for one in read}:
                if not isinstance(spec, Draft):
                    raise Unreadable("; ".join(map(str, spec.complaints)))
                found[spec.id] = spec
        return found

    def _read(self, draft: Draft) -> Spec:
        loaded = validated(draft, self.loaded.kinds)
        if loaded.spec is None:
            raise Unreadable("; ".join(map(str, loaded.complaints)))
        return loaded.spec


def _draft(drafts: Mapping[str, Read], name: str) -> Draft:
    found = drafts.get(name)
    if not isinstance(found, Draft):
        raise Unreadable(f"no spec is called {name}")
    return found


def _design(old: Design, specs: dict[str, Spec], own: Mapping[str, Draft], gone: set[str]) -> Design:
    """The design with specs in the place of those that it had.

    :raises Unreadable: where those that changed do not go with the others.
    """
    entries = {name: entry for name, entry in old.index.entries.items() if name not in gone}
    entries |= {name: indexed(specs[name]) for name in own}
    files = {name: file for name, file in old.files.items() if name not in gone}
    files |= {name: draft.file for name, draft in own.items() if name not in files}
    alike = {name: other for name, other in old.alike.items() if name in files}
    alike |= {name: other for name, draft in own.items() if (other := named_by(draft))}
    faults = [one for one in broken_links(entries, files, own) if one.read.strip('"') not in gone]
    faults += [one for name in own for one in misfits_of(specs[name], specs)]
    links_before = {name: _links(old.index.entries.get(name)) for name in own}
    cut = old.cut
    if gone or any(_links(entries[name]) != links_before[name] for name in own):
        looped, cut = loops(entries, files)
        faults += looped
    if faults:
        raise Unreadable(str(faults[0]))
    changed = ChangedSpecs(specs, entries)
    return replace(
        old,
        specs=changed,
        files=files,
        selected=frozenset(files),
        complaints=(),
        cut=cut,
        alike=alike,
        _known=Index(changed, cut),
    )


def _links(entry: Indexed | None) -> list[tuple[str, str]] | None:
    return None if entry is None else [(link.id, link.where.key) for link in entry.links()]


def _set(table: Any, one: Change) -> Any:
    """A copy of a table with what stands under a key set, or left out.

    :raises Unreadable: where nothing can stand there.
    """
    return _set_at(table, steps_of(one.key), one)


def _set_at(table: Any, path: tuple[str | int, ...], one: Change) -> Any:
    step, rest = path[0], path[1:]
    there = _has(table, step)
    if not there and (rest or one.absent) and not (isinstance(table, Table) and rest):
        raise Unreadable(f"{one.component} does not state {one.key}")
    copied: Any = _copy(table)
    where = getattr(table[step], "where", None) if there else None
    if rest:
        inner = table[step] if there else Table({}, _place_of(table, step))
        copied[step] = _set_at(inner, rest, one)
    elif one.absent:
        del copied[step]
    else:
        copied[step] = _placed(one.value, where or _place_of(table, step))
    return copied


def _has(table: Any, step: str | int) -> bool:
    """Whether something stands at a step of a table or a list."""
    if isinstance(table, Array):
        return isinstance(step, int) and step < len(table)
    return isinstance(table, Table) and step in table


def _copy(table: Any) -> Table | Array:
    if isinstance(table, Array):
        return Array(table, table.where)
    if isinstance(table, Table):
        return Table(table, table.where, table.unstated_at)
    raise Unreadable("a table or a list is wanted where a value stands")


def _place_of(table: Any, step: str | int) -> Any:
    prefix = f"{table.where.key}." if table.where.key else ""
    return table.where.at(f"{prefix}{step}")


def _placed(value: Any, where: Any) -> Any:
    """A value as TOML has it, each of its parts at its place."""
    if isinstance(value, Mapping):
        return Table(
            {name: _placed(one, where.at(f"{where.key}.{name}")) for name, one in value.items()}, where
        )
    if isinstance(value, list):
        inside = [_placed(one, where.at(f"{where.key}[{number}]")) for number, one in enumerate(value)]
        return Array(inside, where)
    return Leaf(value, where)


def _with_settings(state: State, changes: Iterable[Change]) -> State:
    tree: dict[str, Any] = dict(state.settings)
    for one in changes:
        steps = (
            [str(step).strip('"') for step in one.key.split("/")] if "/" in one.key else one.key.split(".")
        )
        tree = _in_tree(tree, steps, one)
    return replace(state, design=replace(state.design, settings=_settings(tree)), settings=tree)


def _in_tree(tree: Mapping[str, Any], path: Sequence[str], one: Change) -> dict[str, Any]:
    copied = dict(tree)
    step, rest = path[0], path[1:]
    if rest:
        copied[step] = _in_tree(tree.get(step, {}), rest, one)
    elif one.absent:
        del copied[step]
    else:
        copied[step] = one.value
    return copied


def _settings(tree: Mapping[str, Any]) -> Settings:
    table = read_toml(Path(FILE_NAME), FILE_NAME, content=toml_text(tree).encode())
    if not isinstance(table, Table):
        raise Unreadable(str(table))
    try:
        return Settings.model_validate(table)
    except ValidationError as problem:
        raise Unreadable(str(problem).replace("\n", " ")) from problem
