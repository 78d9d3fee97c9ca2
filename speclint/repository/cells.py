"""One spec as the cells of a row, and back: a cell for each value, under the key that it has in the spec.

What a cell may hold is taken from the schema of the kind. A value in a list stands under its number, from 1. Text that
a table would not give back as it is stands in quotes, as in TOML; ``[]`` and ``{}`` are a list and a table with nothing
in it. Below a key of free data, such as ``notes``, a cell that TOML reads as a value is that value.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any
from urllib.parse import unquote

from msgspec import Struct

from speclint.errors import QuantityError, TomlError, nearest, read_toml_text
from speclint.quantities import read
from speclint.repository.toml_writing import inline, key_text

Path = tuple[str, ...]
_STEP = re.compile(r'\s*(?:"((?:[^"\\]|\\.)*)"|([^."\s()\[\]]+))\s*(?:\.|$)')
_HEAD = re.compile(r"(?P<key>.*?\S)\s+[(\[](?P<unit>.+)[)\]]")
_NUMBER = r"[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?(?:\s+\d+/\d+|/\d+)?"
_FIRST = re.compile(rf"({_NUMBER}(?:\.\.{_NUMBER})?)\s*(.*)")
#: What may stand behind the first number of a quantity, limits among it, that is no unit.
_NO_UNIT = re.compile(r"[\d.±+/\s-]*")
#: What a spreadsheet takes for the beginning of a formula.
_FORMULA = re.compile(r"[=@]|[+-](?![\d.])")
_FREE: Mapping[str, Any] = {"additionalProperties": True}
_EMPTY: Mapping[str, Any] = {"[]": [], "{}": {}}


class CellError(ValueError):
    """A head or a cell cannot be read; the message says why and what to write."""


class Head(Struct, frozen=True):
    """The head of a column: the key that its cells are of, and the unit of those that state none."""

    path: Path
    unit: str = ""

    def __str__(self) -> str:
        key = ".".join(map(key_text, self.path))
        return f"{key} ({self.unit})" if self.unit else key


class Schema(Struct, frozen=True):
    """The schema of a kind, asked what stands under a key."""

    whole: Mapping[str, Any]

    def head(self, text: str) -> Head:
        """The head that a column has: a key, with a unit in brackets or without.

        :raises CellError: for one that is no key of the kind, or has a unit that its values cannot have.
        """
        found = _HEAD.fullmatch(text)
        unit = " ".join(found["unit"].split()) if found else ""
        head = Head(_steps(found["key"] if found else text), unit)
        self.at(head.path)
        if head.unit:
            self._refuse_unit(head)
        return head

    def _refuse_unit(self, head: Head) -> None:
        dimension = self.dimension(head.path)
        if not dimension:
            raise CellError(f"{key_of(head.path)} is no quantity, and has no unit")
        try:
            read(f"1 {head.unit}", dimension, "any")
        except QuantityError as problem:
            says = f"{head.unit} is no unit of {key_of(head.path)}, which is a {dimension}"
            raise CellError(f"{says}; a value is written {problem.instead}") from problem

    def at(self, path: Path) -> Mapping[str, Any]:
        """What the schema says of a key.

        :raises CellError: where the kind has no such key.
        """
        node: Mapping[str, Any] = self.whole
        for number, step in enumerate(path):
            inner = self._inner(node, step)
            if inner is None:
                known = sorted({name for one in self.ways(node) for name in one.get("properties", ())})
                near = nearest(step, known)
                instead = f'; write "{near}"' if near else ""
                raise CellError(
                    f'"{key_of(path[: number + 1])}" is no key of a {self.whole["title"]}{instead}'
                )
            node = inner
        return node

    def _inner(self, node: Mapping[str, Any], step: str) -> Mapping[str, Any] | None:
        for one in self.ways(node):
            if step in one.get("properties", ()):
                return self._read(one["properties"][step])
            if one.get("type") == "array" and step.isdecimal() and int(step):
                return self._read(one.get("items", _FREE))
            more = one.get("additionalProperties", False)
            if more is not False and one.get("type", "object") == "object":
                return _FREE if more is True else self._read(more)
        return None

    def ways(self, node: Mapping[str, Any]) -> list[Mapping[str, Any]]:
        """The forms that a value may have."""
        node = self._read(node)
        if "anyOf" not in node:
            return [node]
        return [way for one in node["anyOf"] for way in self.ways(one)]

    def _read(self, node: Mapping[str, Any]) -> Mapping[str, Any]:
        if "$ref" not in node:
            return node
        found: Any = self.whole
        for step in node["$ref"].removeprefix("#/").split("/"):
            found = found[unquote(step)]
        return (
            {**found, "x-dimension": unquote(node["$ref"].rpartition("/")[2])}
            if "x-units" in found
            else found
        )

    def dimension(self, path: Path) -> str:
        """The dimension of a quantity; "" for what is none."""
        return str(self.at(path).get("x-dimension", ""))

    def is_list(self, path: Path) -> bool:
        """Whether a key holds several values in order, each under its number."""
        ways = self.ways(self.at(path))
        return any(one.get("type") == "array" for one in ways)

    def is_free(self, path: Path) -> bool:
        """Whether a key holds data of a works' own."""
        node = self.at(path)
        return node is _FREE or ("type" not in node and "anyOf" not in node and "enum" not in node)


def key_of(path: Path) -> str:
    """A path as a spec and the head of a column write it."""
    return ".".join(map(key_text, path))


def _steps(text: str) -> Path:
    steps: list[str] = []
    at = 0
    while at < len(text):
        found = _STEP.match(text, at)
        if found is None:
            raise CellError(f'"{text}" is no key: write it as wall, ends_at.part or wall (mm)')
        quoted, bare = found.groups()
        steps.append(str(_toml(f'"{quoted}"')) if bare is None else bare)
        at = found.end()
    return tuple(steps)


# From a spec to cells


def cells_of(tree: Mapping[str, Any], schema: Schema) -> dict[Path, str]:
    """The cells of a spec by the keys of its values."""
    return dict(_cells(tree, (), schema))


def _cells(value: Any, path: Path, schema: Schema) -> Iterator[tuple[Path, str]]:
    if isinstance(value, Mapping) and value:
        if path and schema.dimension(path) and "value" in value:
            yield path, _cell(value["value"], schema, path)
            yield from (
                ((*path, word), _cell(value[word], schema, path)) for word in value if word != "value"
            )
            return
        for name, inner in value.items():
            yield from _cells(inner, (*path, name), schema)
    elif isinstance(value, list) and value and not schema.is_free(path):
        for number, inner in enumerate(value, start=1):
            yield from _cells(inner, (*path, str(number)), schema)
    else:
        yield path, _cell(value, schema, path)


def _cell(value: Any, schema: Schema, path: Path) -> str:
    if not isinstance(value, str):
        return inline(value)
    plain = value.isprintable() and value == value.strip() and value and not value.startswith('"')
    if not plain or value in _EMPTY or _FORMULA.match(value):
        return inline(value)
    return inline(value) if schema.is_free(path) and _free(value) != value else value


# From cells to a spec


def tree_of(cells: Mapping[Head, str], schema: Schema, decimal: str = ".") -> dict[str, Any]:
    """The spec that some cells state.

    :raises CellError: for a cell that cannot be read, naming its column.
    """
    tree: dict[str, Any] = {}
    for head, cell in cells.items():
        _put(tree, head, _value(cell, head, schema, decimal), schema)
    return {name: _listed(inner, (name,), schema) for name, inner in tree.items()}


def _put(tree: dict[str, Any], head: Head, value: Any, schema: Schema) -> None:
    """Put a value under its key; that of a quantity, whose origin has columns of its own, in the table of both."""
    place: Any = tree
    for number, step in enumerate(head.path[:-1], start=1):
        inside = place.setdefault(step, {})
        if not isinstance(inside, dict):
            if not schema.dimension(head.path[:number]):
                raise CellError(f"{key_of(head.path[:number])}: it has a value, and {head} is a key below it")
            inside = place[step] = {"value": inside}
        place = inside
    last = head.path[-1]
    if not place.get(last):
        place[last] = value
    elif schema.dimension(head.path):
        place[last]["value"] = value
    else:
        raise CellError(f"{head}: there are keys below it, and it has a value")


def _listed(value: Any, path: Path, schema: Schema) -> Any:
    """The same with lists where the schema has them, in place of values by number."""
    if not isinstance(value, dict) or schema.dimension(path):
        return value
    inside = {name: _listed(inner, (*path, name), schema) for name, inner in value.items()}
    if not schema.is_list(path):
        return inside
    numbers = sorted(map(int, inside))
    if numbers and numbers != list(range(1, len(numbers) + 1)):
        missing = next(number for number in range(1, numbers[-1]) if number not in numbers)
        raise CellError(f"{key_of(path)}: there is a {numbers[-1]} and no {missing}")
    return [inside[str(number)] for number in numbers]


def _value(cell: str, head: Head, schema: Schema, decimal: str) -> Any:
    if cell in _EMPTY:
        return type(_EMPTY[cell])()
    if schema.is_free(head.path):
        return _free(cell)
    if cell.startswith('"'):
        return _toml(cell)
    if dimension := schema.dimension(head.path):
        return _quantity(cell if decimal == "." else re.sub(r"(?<=\d),(?=\d)", ".", cell), head, dimension)
    ways = schema.ways(schema.at(head.path))
    return _word(cell, head, ways)


def _word(cell: str, head: Head, ways: Sequence[Mapping[str, Any]]) -> Any:
    types = {one.get("type") for one in ways}
    if "integer" in types and re.fullmatch(r"[+-]?\d+", cell):
        return int(cell)
    if "boolean" in types and cell.lower() in ("true", "false"):
        return cell.lower() == "true"
    if any(one.get("format") == "date" for one in ways):
        try:
            return dt.date.fromisoformat(cell)
        except ValueError as problem:
            raise CellError(f"{head}: this is not a date; read {cell}; write it as 2027-05-31") from problem
    if types & {"string", None}:
        return cell
    wanted = {
        "integer": "a whole number",
        "boolean": "true or false",
        "array": "a value under a number, from 1",
    }
    wants = (
        " or ".join(said for word, said in wanted.items() if word in types)
        or "a value under a key of its own"
    )
    raise CellError(f"{head}: read {cell}; write {wants}")


def _quantity(cell: str, head: Head, dimension: str) -> str:
    """A quantity with its unit: that of the cell, or that of the head behind its first number."""
    found = _FIRST.fullmatch(cell)
    if not head.unit or found is None:
        return cell
    first, rest = found.groups()
    with_unit = f"{first} {head.unit} {rest}".strip()
    if _NO_UNIT.fullmatch(rest):
        return with_unit
    return with_unit if not _reads(cell, dimension) and _reads(with_unit, dimension) else cell


def _reads(text: str, dimension: str) -> bool:
    try:
        read(text, dimension, "any")
    except QuantityError:
        return False
    return True


def _free(cell: str) -> Any:
    if cell[:1] not in ('"', "'", "[", "{") and re.search(r"[#\n]", cell):
        return cell  # which TOML would read as a value with a remark behind it
    try:
        return _toml(cell)
    except CellError:
        return cell


def _toml(cell: str) -> Any:
    try:
        return read_toml_text(f"value = {cell}\n")["value"]
    except (TomlError, KeyError) as problem:
        raise CellError(f"read {cell}; write text in quotes as TOML has it, or without quotes") from problem
