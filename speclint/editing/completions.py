"""What may be written at a place of a spec or of the settings: keys, words, units, tolerance classes, ids, names."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, Literal

from msgspec import Struct

from speclint.editing.cursor import Cursor, cursor_at, stated_in
from speclint.editing.settings_words import limits_of, names_of_settings, tables_of_limits
from speclint.editing.workspace import OpenText, Workspace
from speclint.errors import NotKnown, QuantityError
from speclint.quantities import Measure, classes_of_grade, read
from speclint.repository import FILE_NAME, CellError, Known, Schema, names_for
from speclint.specs import Spec

Sort = Literal["kind", "table", "key", "word", "unit", "class", "material", "part", "name"]
_BEFORE_UNIT = re.compile(r"\s*[+-]?[\d.]+(?:\s+\d+/\d+|/\d+)?(?:\.\.[+-]?[\d.]+)?\s*([^\d\s±+]*)$")
_BEFORE_CLASS = re.compile(r"\s*([\d.]+(?:\s+\d+/\d+)?\s*(?:mm|in|cm|m))\s+([A-Za-z]{0,2}\d{0,2})$")
_GRADES = range(
    4, 14
)  # ISO 286-1: of machined and of drawn parts; finer and coarser ones are rarely on a drawing


class Completion(Struct, frozen=True):
    """One thing that may be written: its text, what it is, and what is said of it.

    It takes the place of the columns from ``start`` to ``end`` of its line. ``written`` is the text as it is put there.
    """

    text: str
    sort: Sort
    says: str
    written: str
    start: int
    end: int


def completions(space: Workspace, text: OpenText, line: int, column: int) -> list[Completion]:
    """What may be written at a line and a column, both from 0."""
    at = cursor_at(text.lines, line, column)
    kind = space.kind_of(text.lines)
    if at.side == "remark":
        return []
    if text.file == FILE_NAME:
        return list(_of_settings(space, text, at, line))
    if at.side == "value" and at.path == ("kind",):
        known = {word: str(one.called or word) for word, one in space.loaded.kinds.items()}
        return [_value(at, word, "kind", says) for word, says in known.items()]
    if kind is None:
        return [_key(at, "kind", "what kind of component it is")] if at.side == "key" else []
    schema = space.schema(kind)
    if at.side == "header":
        return list(_tables(at, schema))
    if at.side == "key":
        return list(_keys(at, schema, _stated(text, at, line)))
    return list(_values(space, text, at, schema))


def _stated(text: OpenText, at: Cursor, line: int) -> frozenset[str]:
    """The keys that the table of a place states already."""
    return stated_in(text.lines, line) if at.beside is None else at.beside


def _of_settings(space: Workspace, text: OpenText, at: Cursor, line: int) -> Iterator[Completion]:
    """What may be written in speclint.toml; the limits of a rule stand in a table by its name."""
    schema, loaded = space.settings_schema, space.installed
    if at.side == "header":
        yield from _tables(at, schema)
        for name, says in tables_of_limits(loaded):
            yield Completion(name, "table", says, name, at.start, at.end)
    elif at.side == "key" and at.table[:1] == ("limits",) and len(at.table) == 2:
        stated = _stated(text, at, line)
        for limit in limits_of(loaded, at.table[1]):
            if limit.name not in stated:
                yield _key(at, limit.name, limit.says)
    elif at.side == "key":
        yield from _keys(at, schema, _stated(text, at, line))
    else:
        yield from _values(space, text, at, schema)
        yield from (_value(at, name, "name", says) for name, says in names_of_settings(loaded, at.path))


def _keys(at: Cursor, schema: Schema, stated: frozenset[str]) -> Iterator[Completion]:
    """The keys of the table that it does not state yet."""
    try:
        ways = schema.ways(schema.at(at.table))
    except CellError:
        return
    for way in ways:
        for name, about in way.get("properties", {}).items():
            if name not in stated and not about.get("deprecated"):
                yield _key(at, name, str(about.get("description", "")))


def _key(at: Cursor, name: str, says: str) -> Completion:
    return Completion(name, "key", says, name if "=" in at.whole else f"{name} = ", at.start, at.end)


def _tables(at: Cursor, schema: Schema) -> Iterator[Completion]:
    """The tables of a kind, by their dotted keys."""
    for path, about in _tables_below((), schema.whole, schema, 3):
        name = ".".join(path)
        yield Completion(name, "table", str(about.get("description", "")), name, at.start, at.end)


def _tables_below(
    path: tuple[str, ...], node: Mapping[str, Any], schema: Schema, deep: int
) -> Iterator[tuple[tuple[str, ...], Mapping[str, Any]]]:
    for way in schema.ways(node):
        for name, about in way.get("properties", {}).items() if deep else ():
            inner = schema.at((*path, name))
            holds = [one for one in schema.ways(inner) if _is_table(one, schema)]
            if holds and not schema.dimension((*path, name)):
                yield (*path, name), about
                if any("properties" in one for one in holds):
                    yield from _tables_below((*path, name), inner, schema, deep - 1)


def _is_table(node: Mapping[str, Any], schema: Schema) -> bool:
    """Whether a value stands under a header: a table, or a list of them."""
    items = node.get("items")
    return node.get("type") == "object" or (
        items is not None and any(one.get("type") == "object" for one in schema.ways(items))
    )


def _values(space: Workspace, text: OpenText, at: Cursor, schema: Schema) -> Iterator[Completion]:
    try:
        ways = schema.ways(schema.at(at.path))
        dimension = schema.dimension(at.path)
    except CellError:
        return
    if dimension:
        yield from _of_quantity(at, dimension, schema.at(at.path).get("x-units", ()))
        return
    for way in ways:
        yield from (_value(at, str(word), "word", "") for word in way.get("enum", ()))
        if way.get("type") == "boolean":
            yield from (Completion(word, "word", "", word, at.start, at.end) for word in ("true", "false"))
        if kinds := way.get("x-link-to"):
            yield from _parts(space, at, kinds)
    if at.path[-1] == "material":
        yield from (_value(at, name, "material", "") for name in space.materials)
    yield from (_value(at, name, "name", "") for name in _names(space, text, at))


def _parts(space: Workspace, at: Cursor, kinds: Iterable[str]) -> Iterator[Completion]:
    design, wanted = space.edited.design, tuple(kinds)
    for name, entry in sorted(design.index.entries.items()):
        if entry.is_one_of(wanted):
            yield _value(at, name, "part", f"{entry.kind}, {design.files[name]}")


def _names(space: Workspace, text: OpenText, at: Cursor) -> Sequence[str]:
    """The names of the table that the key is looked up in, by the links of the spec as it could last be read."""
    design = space.edited.design
    known = Known(design.specs, design.files, design.index)
    for name in space.edited.names_in(text.file):
        spec: Spec | None = design.specs.get(name) or space.last_read.get(name)
        if spec is not None:
            return sorted(names_for(spec, at.path, known, of_unstated=True))
    return ()


def _of_quantity(at: Cursor, dimension: str, units: Sequence[str]) -> Iterator[Completion]:
    """Units behind a number, and tolerance classes behind a length."""
    if dimension == "length" and (found := _BEFORE_CLASS.fullmatch(at.written)):
        start = at.start + found.start(2)
        for name, says in _classes(found[1]):
            yield Completion(name, "class", says, name, start, at.end)
    elif found := _BEFORE_UNIT.fullmatch(at.written):
        start = at.start + found.start(1)
        space = "" if at.written[: found.start(1)].endswith(" ") else " "
        datums = (" gauge", " absolute") if dimension == "fluid pressure" else ("",)
        for unit in units:
            for datum in datums:
                yield Completion(unit + datum, "unit", dimension, space + unit + datum, start, at.end)


def _classes(size: str) -> Iterator[tuple[str, str]]:
    """The tolerance classes of ISO 286-1 at a size, with their limit deviations."""
    try:
        nominal = read(size, "length").nominal
    except QuantityError:
        return
    for letter in ("H", "h"):
        for grade in _GRADES:
            try:
                found = classes_of_grade(nominal, f"{letter}{grade}")
            except NotKnown:
                continue
            for name, _ in found:
                yield name, _deviations(read(f"{size} {name}", "length"))


def _deviations(measure: Measure) -> str:
    low, high = (round((one - measure.nominal) * 1e3, 4) for one in (measure.low, measure.high))
    return f"{high:+.4g}/{low:+.4g} mm, ISO 286-1"


def _value(at: Cursor, text: str, sort: Sort, says: str) -> Completion:
    return Completion(text, sort, says, text if at.quoted else f'"{text}"', at.start, at.end)
