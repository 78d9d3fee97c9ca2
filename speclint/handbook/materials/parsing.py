"""A file of materials, from TOML to Material: every problem with its place and what to write."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from speclint.equations import Source
from speclint.errors import Complaint, Location, NotKnown, Path, TomlError, one_of, read_toml_text
from speclint.handbook.materials.allowables import ALLOWABLES
from speclint.handbook.materials.citing import source_of
from speclint.handbook.materials.model import Material, Tables
from speclint.handbook.materials.problems import Complaints, MaterialsError, dotted
from speclint.handbook.materials.properties import FAMILIES, PROPERTIES
from speclint.handbook.materials.property_reading import PropertyReader
from speclint.handbook.materials.refusal import attempt
from speclint.handbook.materials.tables import Table

#: Finds the tables of a shipped group or of another material that an entry is like; NotKnown without any.
Likeness = Callable[[str], Tables]

_HEADER = ("title", "family", "standard", "structure", "allowable")
_NEEDED = ("title", "family", "standard")
_CHOICES = {"family": FAMILIES, "allowable": tuple(ALLOWABLES)}
#: Tables of a file that are not materials.
_RESERVED = ("sources", "common")


def load_toml(text: str, origin: str) -> dict[str, Any]:
    """The file as nested dictionaries; MaterialsError with its line when it is not TOML or beyond its bounds."""
    try:
        return read_toml_text(text)
    except TomlError as error:
        where = Location(origin, error.line, dotted(error.path))
        raise MaterialsError([Complaint(where, str(error), "", error.write)]) from error


class FileReader:
    """Reads the entries of one file, one by one as they are asked for."""

    def __init__(self, raw: Mapping[str, Any], complaints: Complaints, like: Likeness) -> None:
        self.raw = raw
        self.complaints = complaints
        self._like = like
        self._open: list[str] = []
        self._properties = PropertyReader(self._sources(), complaints)

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the materials in the file."""
        return tuple(name for name in self.raw if name not in _RESERVED)

    @property
    def groups(self) -> tuple[str, ...]:
        """Names of the groups that entries of the file may be like."""
        return tuple(self._table("common"))

    def everything(self) -> tuple[Material, ...]:
        """All entries, with every group read too, so that every problem is found."""
        for group in self.groups:
            self.group(group)
        found = [self.material(name) for name in self.names]
        return tuple(one for one in found if one is not None)

    def material(self, name: str) -> Material | None:
        """One entry; nothing, and complaints, when it cannot be used."""
        entry = self.raw[name]
        if not isinstance(entry, dict):
            self.complaints.add((name,), "a material is a table", f"[{dotted((name,))}]")
            return None
        header = {key: self._heading(name, key, entry.get(key, "")) for key in _HEADER}
        tables = self._tables((name,), entry)
        return Material(name=name, tables=tables, **header)

    def group(self, name: str) -> Tables:
        """The tables of a group of [common]; NotKnown when the file has no such group."""
        common = self._table("common")
        if name not in common:
            raise NotKnown(f'no group "{name}" in [common]')
        if name in self._open:
            raise NotKnown(f'"{name}" is like itself')
        if not isinstance(common[name], dict):
            self.complaints.add(("common", name), "a group is a table", f"[common.{name}]")
            return {}
        self._open.append(name)
        try:
            return self._tables(("common", name), common[name])
        finally:
            self._open.pop()

    def _table(self, key: str) -> Mapping[str, Any]:
        table = self.raw.get(key, {})
        if isinstance(table, dict):
            return table
        self.complaints.add((key,), f"{key} is a table", f"[{key}]")
        return {}

    def _heading(self, name: str, key: str, value: Any) -> str:
        if not isinstance(value, str) or (key in _NEEDED and not value):
            said = f"{key} is not text" if value not in (None, "") else f"{key} is not stated"
            self.complaints.add((name, key), said, f'{key} = "..."')
            return ""
        if value and key in _CHOICES and value not in _CHOICES[key]:
            self.complaints.add((name, key), f'{key} "{value}" is not known', one_of(value, _CHOICES[key]))
        return value

    def _tables(self, path: Path, entry: Mapping[str, Any]) -> Tables:
        """An entry's own tables over those of the materials it is like, the first named one first."""
        found: dict[str, tuple[Table, ...]] = {}
        for key, value in entry.items():
            if key in PROPERTIES:
                found.update(self._properties.read(key, value, (*path, key)))
            elif key not in (*_HEADER, "like"):
                known = (*_HEADER, "like", *PROPERTIES)
                self.complaints.add((*path, key), f'"{key}" is no property', one_of(key, known))
        for like in self._likes(path, entry):
            for key, tables in self._likeness(like, path).items():
                found.setdefault(key, tables)
        return found

    def _likes(self, path: Path, entry: Mapping[str, Any]) -> Sequence[str]:
        like = entry.get("like", [])
        likes = [like] if isinstance(like, str) else like
        if isinstance(likes, list) and all(isinstance(one, str) for one in likes):
            return likes
        self.complaints.add((*path, "like"), "like is a name or a list of names", 'like = "grey-iron-250"')
        return ()

    def _likeness(self, like: str, path: Path) -> Tables:
        try:
            return self.group(like) if like in self._table("common") else self._like(like)
        except NotKnown as error:
            self.complaints.add((*path, "like"), str(error))
            return {}

    def _sources(self) -> dict[str, Source]:
        read = {key: self._source(key, raw) for key, raw in self._table("sources").items()}
        return {key: source for key, source in read.items() if source is not None}

    def _source(self, key: str, raw: Any) -> Source | None:
        return attempt(
            lambda: source_of(raw),
            lambda message, write: self.complaints.add(("sources", key), message, write),
        )
