"""What the statement of each rule of hold grade rests on, held against what sheets took.

Each family declares it in ``data/promises.toml``, beside its rules: keys by the kind of spec that states them, and what
is still open, with the reason. Only tests read that file, so that it costs no start. A group of keys stands once
for all rules of a family that rest on it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fnmatch import fnmatchcase
from functools import cache
from pathlib import Path
from typing import get_args

import tomli
from pydantic import BaseModel

ROOT = Path(__file__).parents[2]


@dataclass(frozen=True)
class Promise:
    """What a rule promises to read, as patterns of a kind and a general key; and what is open, with the reason."""

    rests_on: tuple[str, ...] = ()
    open: Mapping[str, str] = field(default_factory=dict)

    def includes(self, key: str) -> bool:
        """Whether a general key is among those that the rule promises to read."""
        return any(fnmatchcase(key, pattern) for pattern in self.rests_on)

    def listing(self, omission: str) -> str:
        """The row that lists an omission as open; "" where none does."""
        return next((row for row in self.open if fnmatchcase(omission, row)), "")


@cache
def promised() -> Mapping[str, Promise]:
    """The promise of every rule that makes one, by its name."""
    found = {}
    for file in sorted(ROOT.glob("plugins/speclint_*/data/promises.toml")):
        content = tomli.loads(file.read_text(encoding="utf-8"))
        groups = {name: _keys(group) for name, group in content.pop("groups", {}).items()}
        for rule, table in content.items():
            shared = [key for name in table.get("with", ()) for key in groups[name]]
            found[rule] = Promise((*shared, *_keys(table.get("rests_on", {}))), table.get("open", {}))
    return found


def names_a_key(row: str, kinds: Mapping[str, type[BaseModel]]) -> bool:
    """Whether the key of an open row is one that its kind can state; a kind of "*" is any."""
    kind, _, key = row.split()[0].partition(".")
    steps = [step for step in key.replace("[]", "").split(".") if step != "*"]
    return kind == "*" or (kind in kinds and _has(kinds[kind], steps))


def _has(table: type[BaseModel], steps: Sequence[str]) -> bool:
    if not steps:
        return True
    fields = [field for name, field in table.model_fields.items() if fnmatchcase(name, steps[0])]
    return any(
        len(steps) == 1 or any(_has(inner, steps[1:]) for inner in _tables_in(field.annotation))
        for field in fields
    )


def _tables_in(declared: object) -> Iterator[type[BaseModel]]:
    """The tables that a field may hold, by itself, by name or in a list."""
    if isinstance(declared, type) and issubclass(declared, BaseModel):
        yield declared
    for argument in get_args(declared):
        yield from _tables_in(argument)


def _keys(by_kind: Mapping[str, Sequence[str]]) -> list[str]:
    return [f"{kind}.{key}" for kind, keys in by_kind.items() for key in keys]
