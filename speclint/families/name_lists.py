"""Every name that a field of a spec accepts, each with the property that matters: read from what is loaded.

Names stand in lists, such as materials and gaskets; and each key of a kind says for itself what it takes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.errors import SettingsError, nearest, one_of
from speclint.families.names import Name, NameList, dimensions, materials_with, rows_of, threads, units_of
from speclint.repository import Design, Known, component_and_key, names_for
from speclint.specs import (
    CASE_MEANINGS,
    MATERIALS,
    THREADS,
    Catalogue,
    Duty,
    ListedIn,
    NamedIn,
    Spec,
    SpecTable,
    Stated,
    inner_table,
    linked_kinds,
    looked_up_in,
    meanings,
    quantity_of,
    said_of,
    summary,
    words_of,
)

if TYPE_CHECKING:
    from pydantic.fields import FieldInfo

    from speclint.handbook.materials import Material

_NAME, _ENTRY = "NAME", "*"


class _Key(Struct, frozen=True):
    """A key of a kind: its path with "*" for each entry of several, as it is written, and its field."""

    kind: type[Spec]
    path: tuple[str, ...]
    field: FieldInfo
    means: str

    @property
    def written(self) -> str:
        return ".".join(_NAME if one == _ENTRY else one for one in self.path)


class NameLists(Struct, frozen=True, dict=True):
    """The lists of what is loaded, and of a design where there is one.

    ``materials`` are those of families and of the repository, by name.
    """

    kinds: Catalogue
    materials: Mapping[str, Material]
    design: Design | None = None

    def called(self) -> tuple[str, ...]:
        """The names of the lists."""
        return tuple(sorted({*self._marks, "cases", "kinds", "units"}))

    def of(self, word: str) -> tuple[NameList, ...]:
        """A list by its name; or what a key accepts, as KIND.KEY, COMPONENT.KEY, or the key alone in every kind.

        A word that is none of these, nor nearly the name of a list, gives every list with only the names that have it
        in them or beside them.

        :raises SettingsError: where there is none of that name.
        """
        if word in self.called():
            return (self._list(word),)
        owner, key = component_and_key(word, self.design.files.keys() if self.design else ())
        if key and (owner in self.kinds or (self.design and owner in self.design.files)):
            return (self._of_key(owner, key),)
        if found := self._alike(word) or self._holding(word):
            return found
        raise SettingsError(f"no list is called {word}; {self._instead(word)}")

    def _holding(self, word: str) -> tuple[NameList, ...]:
        """The lists with only the names that have a word; none for what is nearly the name of a list, or is a key."""
        if nearest(word, self.called()) or any(key.path == (word,) for key in self._keys):
            return ()
        found = (self._list(one).holding(word) for one in self.called())
        return tuple(one for one in found if one.names)

    def _instead(self, word: str) -> str:
        """What to write in place of a word that is no list: the list with such names, the key in full, or a list."""
        if kinds := [key.kind.kind for key in self._keys if key.path == (word,)]:
            return f"it is a key: write it with its kind, {one_of('', [f'{kind}.{word}' for kind in kinds])}"
        keys = {key.path[-1] for key in self._keys if words_of(key.field)}
        near = one_of(word, {*self.called(), *keys})
        if not near.startswith('"'):
            near = one_of("", self.called())
        return f"write {near}, or KIND.KEY for what a key accepts"

    @cached_property
    def _keys(self) -> tuple[_Key, ...]:
        return tuple(key for kind in self.kinds.values() for key in _keys_of(kind, kind, ()))

    @cached_property
    def _marks(self) -> Mapping[str, list[tuple[_Key, ListedIn]]]:
        found: dict[str, list[tuple[_Key, ListedIn]]] = {}
        for key in self._keys:
            if mark := looked_up_in(key.field):
                found.setdefault(mark.called, []).append((key, mark))
        return found

    def _list(self, called: str) -> NameList:
        if called == "cases":
            return NameList(
                called, "load cases, the moments that a duty states", tuple(self._cases()), ("duty.cases",)
            )
        if called == "kinds":
            names = tuple(Name(kind.kind, summary(kind)) for kind in self.kinds.values())
            return NameList(called, "kinds of component", names, ("kind",))
        if called == "units":
            return NameList(called, "units by what is measured", tuple(dimensions()))
        marked = self._marks[called]
        names = tuple(dict.fromkeys(name for key, mark in marked for name in self._listed(mark, key.field)))
        taken_by = tuple(dict.fromkeys(f"{key.kind.kind}.{key.written}" for key, _ in marked))
        return NameList(called, marked[0][1].about, names, taken_by)

    def _listed(self, mark: ListedIn, field: FieldInfo) -> Iterator[Name]:
        """The names of one list as a field takes them: its own words where it fixes them, else those of the table."""
        if mark.table:
            shown = dict(rows_of(mark))
            yield from (Name(word, shown.get(word, "")) for word in words_of(field) or shown)
        elif fixed := words_of(field):
            yield from map(Name, fixed)
        else:
            yield from self._made(mark)

    def _made(self, mark: ListedIn) -> Iterator[Name]:
        """The names of a list that the handbook makes."""
        if mark == MATERIALS:
            yield from materials_with(self.materials)
        elif mark == THREADS:
            yield from threads()

    def _cases(self) -> Iterator[Name]:
        for case, means in CASE_MEANINGS.items():
            stating = [one.id for one in self._specs() if isinstance(one, Duty) and case in one.cases]
            yield Name(case, means + (f"; stated by {', '.join(stating)}" if stating else ""))

    def _specs(self) -> Iterator[Spec]:
        for name in self.design.files if self.design else ():
            if self.design and (spec := self.design.specs.get(name)) is not None:
                yield spec

    def _alike(self, word: str) -> tuple[NameList, ...]:
        """What every key of that name accepts: those that accept the same, once."""
        found: dict[tuple[Name, ...], list[_Key]] = {}
        for key in self._keys:
            if key.path[-1] == word and (words_of(key.field) or looked_up_in(key.field)):
                found.setdefault(tuple(self._names(key, None)), []).append(key)
        lists = []
        for names, keys in found.items():
            taken_by = tuple(f"{key.kind.kind}.{key.written}" for key in keys)
            lists.append(NameList(word, _about(keys[0]), names, taken_by))
        return tuple(lists)

    def _of_key(self, owner: str, key: str) -> NameList:
        """What one key of a kind, or of a component, accepts."""
        spec = self.design.specs.get(owner) if self.design and owner not in self.kinds else None
        kind = type(spec) if spec else self.kinds.get(owner)
        if kind is None:
            raise SettingsError(f"{owner} could not be read: speclint check says why")
        known = [one for one in _keys_of(kind, kind, ()) if _is(one, key)]
        if not known:
            keys = [one.written for one in _keys_of(kind, kind, ())]
            raise SettingsError(f"a {kind.kind} has no key {key}; write {one_of(key, keys)}")
        names = tuple(self._names(known[0], spec))
        return NameList(f"{owner}.{key}", _about(known[0]), names, (f"{kind.kind}.{known[0].written}",))

    def _names(self, key: _Key, spec: Spec | None) -> Iterator[Name]:
        """What a key accepts, in one spec or in any of its kind."""
        field = key.field
        if quantity := quantity_of(field):
            yield from units_of(quantity[0].dimension)
        elif mark := looked_up_in(field):
            yield from self._listed(mark, field)
        elif fixed := words_of(field):
            yield from (Name(word, CASE_MEANINGS.get(word, "")) for word in fixed)  # type: ignore[call-overload]
        elif kinds := linked_kinds(field):
            yield from self._ids(kinds)
        elif any(isinstance(mark, NamedIn) for mark in field.metadata):
            yield from self._names_of_design(key, spec)
        elif "true or false" in said_of(field):
            yield from (Name("true"), Name("false"))

    def _ids(self, kinds: tuple[str, ...]) -> Iterator[Name]:
        for spec in self._specs():
            if spec.is_one_of(kinds):
                yield Name(spec.id, spec.title.value if isinstance(spec.title, Stated) else "")

    def _names_of_design(self, key: _Key, spec: Spec | None) -> Iterator[Name]:
        """The names in the tables in which those of the key are looked up, each with the parts that may write it."""
        if self.design is None:
            return
        known = Known(self.design.specs, files=self.design.files, index=self.design.index)
        by_name: dict[str, list[str]] = {}
        for one in self._specs() if spec is None else (spec,):
            if isinstance(one, key.kind):
                for name in sorted(names_for(one, key.path, known)):
                    by_name.setdefault(name, []).append(one.id)
        for name, parts in by_name.items():
            yield Name(name, f"for {', '.join(parts)}")


def _keys_of(kind: type[Spec], table: type[SpecTable], path: tuple[str, ...]) -> Iterator[_Key]:
    known = meanings(table)
    for name, field in table.model_fields.items():
        here = (*path, name)
        inner, several = inner_table(field.annotation)
        if inner is None or words_of(field) or any(isinstance(mark, NamedIn) for mark in field.metadata):
            yield _Key(kind, here, field, known.get(name, ""))
        if inner is not None:
            yield from _keys_of(kind, inner, (*here, _ENTRY) if several else here)


def _is(key: _Key, written: str) -> bool:
    """Whether a key is the one written: the name of an entry of a table may be any, or be left out."""
    steps = written.replace("[]", f".{_NAME}").split(".")
    plain = [one for one in key.path if one != _ENTRY]
    if steps == plain:
        return True
    return len(steps) == len(key.path) and all(
        mine in (_ENTRY, theirs) for mine, theirs in zip(key.path, steps, strict=True)
    )


def _about(key: _Key) -> str:
    takes = said_of(key.field) if inner_table(key.field.annotation)[0] is None else "a table of these names"
    return f"{key.means}; {takes}" if key.means else takes
