"""A design with some changes, made in memory: keys set, specs added or left out, tables and files in another order.

Of a repository of hundreds of specs a change costs the reading of the specs that it concerns, and no file is written.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import tomli
from msgspec import Struct
from pydantic import ValidationError

from speclint.errors import DesignError, replace
from speclint.repository.all_specs import broken_links, loops
from speclint.repository.change import Change, changed_table, changed_tree, steps_of_key
from speclint.repository.concession import Register
from speclint.repository.design import Design
from speclint.repository.index import Index, Indexed, indexed, linked_at
from speclint.repository.lazy_specs import IndexedSpecs
from speclint.repository.misfits import misfits_of
from speclint.repository.opening import open_repository
from speclint.repository.reading import Draft, Read, read_drafts, validated
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.settings import Settings
from speclint.repository.taking_over import named_by, taken_over
from speclint.repository.toml_tables import read_toml
from speclint.repository.toml_writing import toml_text
from speclint.specs import Array, Catalogue, Spec, Table, bare

if TYPE_CHECKING:
    from speclint.handbook.materials import Material

T = TypeVar("T")
#: Puts some things, such as the keys of a table, in another order.
Reorder = Callable[[list[Any]], list[Any]]


class _Changed(IndexedSpecs):
    """The specs of a design, some of them changed, added or left out."""

    def __init__(self, specs: Mapping[str, Spec], index: Mapping[str, Indexed]) -> None:
        self._specs, self.index = specs, index

    def __getitem__(self, name: str) -> Spec:
        return self._specs[name]


class DraftedDesign(Struct, frozen=True):
    """A design, with each of its specs as it was before it was read."""

    design: Design
    drafts: Mapping[str, Read]
    settings: Mapping[str, Any]
    materials: Mapping[str, Material]
    register: Register
    kinds: Catalogue

    @staticmethod
    def opened(root: Path, kinds: Catalogue) -> DraftedDesign:
        """The design repository in a folder.

        :raises DesignError: where it draws a complaint.
        """
        opened = open_repository([root], kinds)
        if opened.complaints:
            raise DesignError(str(opened.complaints[0]))
        files = dict.fromkeys(sorted(opened.design.files.values()))
        read = (one for file in files for one in read_drafts(root / file, file, kinds))
        drafts = taken_over({one.id: one for one in read})
        settings = tomli.loads((root / FILE_NAME).read_text(encoding="utf-8"))
        return DraftedDesign(opened.design, drafts, settings, opened.materials, opened.register, kinds)

    def draft(self, name: str) -> Draft:
        """A spec as its file states it, with what it takes over.

        :raises DesignError: where the design has none of that id.
        """
        return _draft(self.drafts, name)

    def raw_at(self, name: str, key: str) -> tuple[Any, str]:
        """What a spec writes under a key, as TOML has it, and the key; of an entry of a list of values the whole list.

        :raises DesignError: where it writes nothing there.
        """
        value: Any = self.draft(name).table
        steps = steps_of_key(key)
        try:
            for depth, step in enumerate(steps):
                inner = value[step]
                if isinstance(step, int) and depth == len(steps) - 1:
                    return bare(value), key.rpartition("[")[0]
                value = inner
        except (LookupError, TypeError):
            raise DesignError(f"{name} does not state {key}") from None
        return bare(value), key

    def changed(self, changes: Sequence[Change]) -> DraftedDesign:
        """The design with some changes.

        :raises DesignError: where a spec or the settings cannot be read with them, or do not go together; a link to a
            spec that is left out is no fault.
        """
        settings = [one for one in changes if one.component == FILE_NAME]
        others = [one for one in changes if one.component != FILE_NAME]
        drafted = self._with_settings(settings) if settings else self
        return drafted._with_specs(others) if others else drafted

    def reordered(self, reorder: Reorder, parts: Collection[str]) -> DraftedDesign:
        """The design with its specs in another order, and of some of them the keys of every table.

        :raises DesignError: where one of these cannot be read so.
        """
        own = {
            name: replace(draft, table=_reordered(draft.table, reorder))
            for name in parts
            if isinstance(draft := self.drafts.get(name), Draft)
        }
        specs = dict(self.design.specs) | {name: self._read(draft) for name, draft in own.items()}
        old = self.design
        entries = {**old.index.entries, **{name: indexed(specs[name]) for name in own}}
        entries, files = _in_order(entries, reorder), _in_order(old.files, reorder)
        changed = _Changed({name: specs[name] for name in entries}, entries)
        design = replace(old, specs=changed, files=files, _known=Index(changed, old.cut))
        return replace(self, design=design, drafts={**self.drafts, **own})

    def _with_settings(self, changes: Iterable[Change]) -> DraftedDesign:
        tree = dict(self.settings)
        for one in changes:
            tree = changed_tree(tree, one)
        return replace(self, design=replace(self.design, settings=_settings(tree)), settings=tree)

    def _with_specs(self, changes: Iterable[Change]) -> DraftedDesign:
        drafts, own = dict(self.drafts), dict[str, Draft]()
        gone = set[str]()
        for one in changes:
            if one.key:
                draft = own.get(one.component) or _draft(drafts, one.component)
                own[one.component] = replace(draft, table=changed_table(draft.table, one))
            elif one.absent:
                gone.add(one.component)
                if drafts.pop(one.component, None) is None:
                    raise DesignError(f"no spec is called {one.component}")
            else:
                own |= self._added(one, drafts)
        drafts |= own
        specs = {name: spec for name, spec in self.design.specs.items() if name not in gone}
        specs |= {name: self._read(draft) for name, draft in own.items()}
        return replace(self, design=_design(self.design, specs, own, gone), drafts=drafts)

    def _added(self, one: Change, drafts: Mapping[str, Read]) -> dict[str, Draft]:
        file = f"{one.component}.toml"
        read = read_drafts(Path(file), file, self.kinds, str(one.value).encode())
        found: dict[str, Draft] = {}
        for spec in taken_over({**drafts, **{spec.id: spec for spec in read}}).values():
            if spec.id in {one.id for one in read}:
                if not isinstance(spec, Draft):
                    raise DesignError("; ".join(map(str, spec.complaints)))
                found[spec.id] = spec
        return found

    def _read(self, draft: Draft) -> Spec:
        loaded = validated(draft, self.kinds)
        if loaded.spec is None:
            raise DesignError("; ".join(map(str, loaded.complaints)))
        return loaded.spec


def _draft(drafts: Mapping[str, Read], name: str) -> Draft:
    found = drafts.get(name)
    if not isinstance(found, Draft):
        raise DesignError(f"no spec is called {name}")
    return found


def _design(old: Design, specs: dict[str, Spec], own: Mapping[str, Draft], gone: set[str]) -> Design:
    """The design with specs in the place of those that it had.

    :raises DesignError: where those that changed do not go with the others.
    """
    entries = {name: entry for name, entry in old.index.entries.items() if name not in gone}
    entries |= {name: indexed(specs[name]) for name in own}
    files = {name: file for name, file in old.files.items() if name not in gone}
    files |= {name: draft.file for name, draft in own.items() if name not in files}
    alike = {name: other for name, other in old.alike.items() if name in files}
    alike |= {name: other for name, draft in own.items() if (other := named_by(draft))}
    faults = [one for one in broken_links(entries, files, own) if one.read.strip('"') not in gone]
    faults += [one for name in own for one in misfits_of(specs[name], specs)]
    links_before = {name: linked_at(old.index.entries.get(name)) for name in own}
    cut = old.cut
    if gone or any(linked_at(entries[name]) != links_before[name] for name in own):
        looped, cut = loops(entries, files)
        faults += looped
    if faults:
        raise DesignError(str(faults[0]))
    changed = _Changed(specs, entries)
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


def _in_order(table: Mapping[str, T], reorder: Reorder) -> dict[str, T]:
    return {name: table[name] for name in reorder(list(table))}


def _reordered(value: Any, reorder: Reorder) -> Any:
    """A table with its keys in another order, and those of every table in it; lists stay as they are."""
    if isinstance(value, Table):
        inside = {name: _reordered(one, reorder) for name, one in _in_order(value, reorder).items()}
        return Table(inside, value.where, value.unstated_at)
    if isinstance(value, Array):
        return Array([_reordered(one, reorder) for one in value], value.where)
    return value


def _settings(tree: Mapping[str, Any]) -> Settings:
    table = read_toml(Path(FILE_NAME), FILE_NAME, content=toml_text(tree).encode())
    if not isinstance(table, Table):
        raise DesignError(str(table))
    try:
        return Settings.model_validate(table)
    except ValidationError as problem:
        raise DesignError(str(problem).replace("\n", " ")) from problem
