"""What the statement of each rule of hold grade rests on, held against what sheets took.

Each family declares it in ``data/promises.toml``, beside its rules: keys by the kind of spec that states them, and what
is still open, with the reason. Only tests read that file, so that it costs no start. A group of keys stands once
for all rules of a family that rest on it. What a check took is known from what its fingerprint rests on.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fnmatch import fnmatchcase
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple, get_args, get_origin

import tomli
from pydantic import BaseModel

from speclint.checking import Check
from speclint.repository import Design
from speclint.specs import Spec

ROOT = Path(__file__).parents[2]
_STEP = re.compile(r"[^.\[\]]+|\[\d+\]")
#: A place as a check rests on it: spec, key, and the load case where it differs between them.
_PLACE = re.compile(r"(\S+) ([\w.\-\[\]]+)′*(?: \([a-z-]+\))?")
#: What fills a place as a check rests on it: the kind, the place, and the keys of the links that lead to it.
_FILLED = re.compile(r"[\w-]+ at .+ by (?P<keys>[\w.*, \-]+?)′*")


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


class Taken(NamedTuple):
    """One value that a check rests on: the spec, its key there and in general, and whether it is stated."""

    spec: str
    key: str
    general: str
    stated: bool


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


def _keys(by_kind: Mapping[str, Sequence[str]]) -> list[str]:
    return [f"{kind}.{key}" for kind, keys in by_kind.items() for key in keys]


def taken_by(check: Check, design: Design) -> Iterator[Taken]:
    """What a check rests on, by spec and key."""
    for words, shown in check.rests_on.items():
        place = _PLACE.fullmatch(words)
        spec = design.specs.get(place[1]) if place else None
        if place and spec:
            key = f"{spec.kind}.{general(type(spec), place[2])}"
            yield Taken(spec.id, place[2], key, shown != "not stated")
        elif filled := _FILLED.fullmatch(words):
            yield from _links(filled["keys"].split(", "), shown.split(", "), design)


def _links(keys: Sequence[str], ids: Sequence[str], design: Design) -> Iterator[Taken]:
    """The links by which some parts fill a place."""
    for spec in (design.specs[name] for name in ids if name in design.specs):
        for link in spec.links():
            key = general(type(spec), link.where.key)
            if key in keys:
                yield Taken(spec.id, link.where.key, f"{spec.kind}.{key}", True)


def steps_of(key: str) -> tuple[str | int, ...]:
    """The steps of a dotted key: names, and places in arrays.

    >>> steps_of("corners[2].height")
    ('corners', 2, 'height')
    """
    return tuple(int(step[1:-1]) if step[0] == "[" else step for step in _STEP.findall(key))


def general(kind: type[Spec], key: str) -> str:
    """A key with ``*`` for each name that a spec chooses, and ``[]`` for each place in an array."""
    declared: Any = kind
    found = ""
    for step in steps_of(key):
        if isinstance(step, int):
            found += "[]"
        elif isinstance(declared, type) and issubclass(declared, BaseModel) and step in declared.model_fields:
            declared = _inner(declared.model_fields[step].annotation)
            found += f".{step}"
        else:
            found += ".*"
            named = _named(declared)
            declared = _inner(get_args(named)[1]) if named else None
    return found[1:]


def _named(declared: Any) -> Any:
    """The table of named entries that an annotation holds."""
    if get_origin(declared) in (dict, Mapping):
        return declared
    return next((found for one in get_args(declared) if (found := _named(one))), None)


def _inner(declared: Any) -> Any:
    """The model that an annotation holds, where it is no table of named entries."""
    if isinstance(declared, type) or _named(declared):
        return declared
    found = (_inner(one) for one in get_args(declared))
    return next((one for one in found if isinstance(one, type) and issubclass(one, BaseModel)), declared)
