"""Keys that ``example_specs`` states and no rule reads: found by comparing what is stated with what the checks rest on.

A quantity is read where a sheet takes it, a word where a sheet reads it or asks whether it is there, a link where it is
followed, or found from its other end. Only checks of the example count: what a rule reads in other circumstances is
listed in ``unread.csv`` with that rule.
"""

from __future__ import annotations

import ast
import csv
import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

from speclint import Rule
from speclint.rules.record import STATED
from speclint.specs import Link, NotStated, Spec, SpecTable, Stated, inner_table
from tests.contracts.omissions import ROOT, code
from tests.example import assessed

LIST = Path(__file__).with_name("unread.csv")
_ASKED = (STATED, "not stated")
#: What a check says that it went over: the components of a kind that are linked to a spec.
_GATHERED = re.compile(r"(?P<kind>[\w-]+) on (?P<target>\S+)")


class Key(NamedTuple):
    """A key of a kind; a name in it that a spec is free to choose is ``*``."""

    kind: str
    key: str


class Row(NamedTuple):
    """Why no rule reads a key, or the rule that reads it where the example does not lead."""

    why: str
    rule: str


@cache
def _rests_on() -> Mapping[str, frozenset[str]]:
    """Every place that a check rests on, and the values that it is shown with."""
    found: dict[str, set[str]] = defaultdict(set)
    for check in assessed().checks:
        for words, shown in check.rests_on.items():
            found[re.sub(r" \([\w-]+\)$", "", words.rstrip("′"))].add(shown)
    return {words: frozenset(shown) for words, shown in found.items()}


@cache
def _gathered() -> frozenset[tuple[str, str]]:
    """The pairs of components of which the one was found by its link to the other."""
    found = set()
    for words, shown in _rests_on().items():
        if one := _GATHERED.fullmatch(words):
            found |= {(part, one["target"]) for said in shown for part in said.split(", ")}
    return frozenset(found)


def _leaves(value: object, key: tuple[str, ...] = ()) -> Iterator[tuple[str, object]]:
    if isinstance(value, SpecTable):
        for name, inner in value.__dict__.items():
            yield from _leaves(inner, (*key, name))
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from _leaves(inner, (*key, "*"))
    elif isinstance(value, tuple):
        for inner in value:
            yield from _leaves(inner, key)
    elif hasattr(value, "where") and not isinstance(value, NotStated):
        yield ".".join(key), value


def _is_read(spec: Spec, value: object) -> bool:
    shown = _rests_on().get(f"{spec.id} {value.where.key}", frozenset())  # type: ignore[attr-defined]
    if isinstance(value, Link):
        return bool(shown.difference(_ASKED)) or (spec.id, value.id) in _gathered()
    if isinstance(value, Stated) and isinstance(value.value, str):
        return bool(shown.difference(("not stated",)))
    return bool(shown.difference(_ASKED))


@cache
def unread() -> frozenset[Key]:
    """Every key that some spec of the example states and that no check reads of any."""
    design = assessed().design
    assert design is not None
    read: dict[Key, bool] = defaultdict(bool)
    for spec in design.specs.values():
        for key, value in _leaves(spec):
            read[Key(spec.kind, key)] |= _is_read(spec, value)
    return frozenset(key for key, is_read in read.items() if not is_read)


@cache
def listed() -> Mapping[Key, Row]:
    """The list of keys that no rule reads; of ``*`` the row is for every kind that has no row of its own."""
    with LIST.open(encoding="utf-8", newline="") as lines:
        rows = [list(row.values()) for row in csv.DictReader(lines)]
    found = {Key(*row[:2]): Row(*row[2:]) for row in rows}
    if len(found) != len(rows):
        raise ValueError(f"{LIST.name} lists a key twice")
    return found


@cache
def named_in_code() -> frozenset[str]:
    """Every name that the code of the families and of the facts names, as an attribute or as a key in words."""
    found: set[str] = set()
    for path in [*ROOT.glob("plugins/speclint_*/**/*.py"), *ROOT.glob("speclint/facts/*.py")]:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Attribute):
                found.add(node.attr)
            elif isinstance(node, ast.Constant) and isinstance(node.value, str):
                found.add(node.value)
    return frozenset(found)


def keys_of(table: type[SpecTable]) -> Iterator[str]:
    """The last word of each key of a kind and of its tables."""
    for name, field in table.model_fields.items():
        inner, _ = inner_table(field.annotation)
        if inner is None:
            yield name
        else:
            yield from keys_of(inner)


def row_for(key: Key) -> Key | None:
    """The row that a key has, its own or that for every kind; None where there is none."""
    return next((one for one in (key, Key("*", key.key)) if one in listed()), None)


def names_key(rule: Rule, key: str) -> bool:
    """Whether the code of a rule, at any depth, names the last part of a key; of a size the dimension that it is of."""
    last = key.removesuffix(".size").rpartition(".")[2]
    return any(
        isinstance(node, ast.Attribute) and node.attr == last
        for one in code().reached(rule)
        for node in ast.walk(code().functions[one])
    )
