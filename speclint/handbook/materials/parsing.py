"""A file of materials, from TOML to Material: every problem with its place and what to write."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from speclint.errors import NotKnown
from speclint.handbook.materials.allowables import ALLOWABLES
from speclint.handbook.materials.material import Material, Tables
from speclint.handbook.materials.problems import Complaints
from speclint.handbook.materials.properties import FAMILIES, LOADINGS, PROPERTIES, USES, Property
from speclint.handbook.materials.refusal import RefusedError, nearest
from speclint.handbook.materials.table_reading import read_table, source_of
from speclint.sources import Source

Raw = Mapping[str, Any]
#: Finds the tables of a group or of another material that an entry is like; NotKnown when there is none.
Likeness = Callable[[str], Tables]

_HEADER_KEYS = ("title", "family", "standard", "structure", "allowable", "like")
_NEEDED = ("title", "family", "standard")
_SPLITS = {"temperature-limit": USES, "fatigue-strength": LOADINGS}
#: Tables of a file that are not materials.
RESERVED = ("sources", "common")


def load_toml(text: str, origin: str) -> dict[str, Any]:
    """The file as nested dictionaries; MaterialsError with line and column when it is not TOML."""
    import tomli

    try:
        return tomli.loads(text)
    except tomli.TOMLDecodeError as error:
        complaints = Complaints(origin, text)
        complaints.add((), f"not valid TOML: {error}")
        complaints.raise_if_any()
        raise AssertionError("unreachable") from error  # pragma: no cover


class FileReader:
    """Reads the entries of one file, one by one as they are asked for."""

    def __init__(self, raw: Raw, complaints: Complaints, like: Likeness) -> None:
        self.raw = raw
        self.complaints = complaints
        self._like = like
        self._sources: dict[str, Source] | None = None

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the materials in the file."""
        return tuple(name for name in self.raw if name not in RESERVED)

    def material(self, name: str) -> Material | None:
        """One entry; nothing, and complaints, when it cannot be used."""
        entry = self.raw[name]
        if not isinstance(entry, dict):
            self.complaints.add((name,), f"a material is a table: write [{name}]")
            return None
        header = self._header(name, entry)
        tables = self._all_tables(name, entry)
        return None if header is None else Material(name=name, tables=tables, **header)

    def group(self, name: str) -> Tables:
        """The tables of a group of [common]; NotKnown when the file has no such group."""
        common = self.raw.get("common", {})
        if name not in common:
            raise NotKnown(f"no group '{name}' in [common]")
        return self._all_tables(name, common[name], ("common", name))

    def _header(self, name: str, entry: Raw) -> dict[str, str] | None:
        header = {key: entry.get(key, "") for key in _HEADER_KEYS if key != "like"}
        sound = True
        for key, value in header.items():
            problem = _header_problem(key, value)
            if problem:
                self.complaints.add((name, key), problem)
                sound = False
        return header if sound else None

    def _all_tables(self, name: str, entry: Raw, path: tuple[str, ...] = ()) -> Tables:
        """An entry's own tables over those of what it is like."""
        path = path or (name,)
        found: dict[str, tuple[Any, ...]] = {}
        for like in self._likes(entry, path):
            for key, tables in self._likeness(like, path).items():
                found.setdefault(key, tables)
        for key, value in entry.items():
            if key not in _HEADER_KEYS:
                found.update(self._property(key, value, (*path, key)))
        return found

    def _likes(self, entry: Raw, path: tuple[str, ...]) -> Sequence[str]:
        like = entry.get("like", [])
        likes = [like] if isinstance(like, str) else like
        if isinstance(likes, list) and all(isinstance(one, str) for one in likes):
            return likes
        self.complaints.add(
            (*path, "like"), 'like is a name or a list of names: write like = "grey-iron-250"'
        )
        return ()

    def _likeness(self, like: str, path: tuple[str, ...]) -> Tables:
        try:
            if like in self.raw.get("common", {}):
                return self.group(like)
            return self._like(like)
        except NotKnown as error:
            self.complaints.add((*path, "like"), str(error))
            return {}

    def _property(self, key: str, value: Any, path: tuple[str, ...]) -> Tables:
        kind = PROPERTIES.get(key)
        if kind is None:
            known = (*_HEADER_KEYS, *PROPERTIES)
            self.complaints.add(path, f"'{key}' is not a property{nearest(key, known)}")
            return {}
        if key == "composition":
            return self._composition(value, path)
        if kind.split:
            return self._split(key, value, kind, path)
        tables = self._tables(value, kind, path)
        return {key: tables} if tables else {}

    def _split(self, key: str, value: Any, kind: Property, path: tuple[str, ...]) -> Tables:
        parts = _SPLITS[key]
        found: dict[str, tuple[Any, ...]] = {}
        if not isinstance(value, dict):
            self.complaints.add(path, f"{key} is stated by use: write [{'.'.join(path)}.{parts[0]}]")
            return {}
        for part, table in value.items():
            if part not in parts:
                self.complaints.add((*path, part), f"'{part}' is not known here{nearest(part, parts)}")
                continue
            tables = self._tables(table, kind, (*path, part))
            if tables:
                found[f"{key} {part}"] = tables
        return found

    def _composition(self, value: Any, path: tuple[str, ...]) -> Tables:
        """Elements share one unit and source: C = [0.1, 0.2] in a table with unit and source."""
        if not isinstance(value, dict):
            self.complaints.add(
                path, 'composition is a table: write unit = "%", source, and C = [least, most]'
            )
            return {}
        shared = {key: value[key] for key in ("unit", "source", "place", "note") if key in value}
        found: dict[str, tuple[Any, ...]] = {}
        for element, band in value.items():
            if element in shared:
                continue
            if not (isinstance(band, list) and len(band) == 2 and all(_is_number(one) for one in band)):
                self.complaints.add((*path, element), f"write {element} = [least, most]")
                continue
            whole = {**shared, "value": sum(band) / 2, "low": band[0], "high": band[1]}
            tables = self._tables(whole, PROPERTIES["composition"], (*path, element))
            if tables:
                found[f"composition {element}"] = tables
        return found

    def _tables(self, value: Any, kind: Property, path: tuple[str, ...]) -> tuple[Any, ...]:
        raws = value if isinstance(value, list) else [value]
        tables = []
        for raw in raws:
            if not isinstance(raw, dict):
                self.complaints.add(path, "a property is a table with unit, value and source")
                continue
            complain = _at(self.complaints, path)
            table = read_table(raw, kind, self.sources, complain)
            if table is not None:
                tables.append(table)
        return tuple(tables)

    @property
    def sources(self) -> Mapping[str, Source]:
        """The works that the file cites, by their key."""
        if self._sources is None:
            self._sources = {}
            for key, raw in self.raw.get("sources", {}).items():
                try:
                    self._sources[key] = source_of(raw)
                except RefusedError as refusal:
                    self.complaints.add(("sources", key), str(refusal))
        return self._sources


def _at(complaints: Complaints, path: tuple[str, ...]) -> Callable[[str], None]:
    return lambda message: complaints.add(path, message)


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _header_problem(key: str, value: Any) -> str:
    if not isinstance(value, str):
        return f'{key} is text: write {key} = "..."'
    if key in _NEEDED and not value:
        return f'{key} is missing: write {key} = "..."'
    if key == "family" and value not in FAMILIES:
        return f"family '{value}' is not known{nearest(value, FAMILIES)}"
    if key == "allowable" and value and value not in ALLOWABLES:
        return f"allowable '{value}' is not known{nearest(value, tuple(ALLOWABLES))}"
    return ""
