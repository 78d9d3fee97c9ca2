"""The materials' files as written: each number with its material, property and field, before any unit is applied."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.resources import files
from typing import Any

FILES = (
    *("alloy-steel", "bearing-and-packing", "bolting-steel", "carbon-steel", "cast-steel", "common"),
    *("copper-alloy", "grey-iron", "other-iron", "spring-wire", "stainless"),
)


@dataclass(frozen=True)
class Printed:
    """One number: whose, of which property ("composition"), in which field ("C", "value"), column and unit."""

    owner: str
    of: str
    field: str
    column: int
    unit: str
    value: float


def printed(file: str) -> Iterator[Printed]:
    """Every number of a file but those of its list of sources."""
    folder = files("speclint.handbook") / "data" / "materials"
    whole = tomllib.loads((folder / f"{file}.toml").read_text(encoding="utf-8"))
    for owner, entry in whole.items():
        if owner == "common":
            for group, shared in entry.items():
                yield from _properties(group, shared)
        elif owner != "sources":
            yield from _properties(owner, entry)


def _properties(owner: str, entry: dict[str, Any]) -> Iterator[Printed]:
    for of, tables in entry.items():
        for table in tables if isinstance(tables, list) else [tables]:
            if isinstance(table, dict):
                yield from _numbers(owner, of, "", 0, table.get("unit", ""), table)


def _numbers(owner: str, of: str, field: str, column: int, unit: str, node: Any) -> Iterator[Printed]:
    if isinstance(node, dict):
        for key, inner in node.items():
            yield from _numbers(owner, of, f"{field}.{key}".strip("."), 0, node.get("unit", unit), inner)
    elif isinstance(node, list):
        for place, inner in enumerate(node):
            yield from _numbers(owner, of, field, place, unit, inner)
    elif isinstance(node, int | float):
        yield Printed(owner, of, field, column, unit, float(node))
