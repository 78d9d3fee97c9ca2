"""A helper process: its inputs, its work, and how work and results are passed between processes.

Everything is pickled between processes of one run, never from a file. A rule is passed as its name.
"""

from __future__ import annotations

import io
import pickle
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Any

from speclint.checking.inputs import context_of
from speclint.checking.remedy_search import remedies
from speclint.checking.rule_run import check_named, remember
from speclint.families import find_families
from speclint.rules import Context, Rule


@dataclass
class _Helper:
    """The data of a helper process."""

    rules: dict[str, Rule]
    context: Context


_helper: _Helper | None = None


def begin(given: bytes, named: Collection[str] | None, left_out: Collection[str]) -> None:
    """Set up a helper: load the families but for those left out, and make the same context as the caller's."""
    global _helper
    loaded = find_families().without(left_out).sound()
    context = context_of(pickle.loads(given), loaded)
    context.outcomes = {} if named is None else None
    if named is None:
        rules = loaded.rules_for({part.kind for part in context.design.parts()})
    else:
        rules = tuple(one for one in loaded.rules if one.name in named)
    _helper = _Helper({one.name: one for one in rules}, context)


def checked(task: bytes) -> bytes:
    """Check one component."""
    helper = _set_up()
    name: str = unpacked(task, helper.rules)
    return packed(check_named(name, tuple(helper.rules.values()), helper.context))


def remedied(task: bytes) -> bytes:
    """Find the remedies of one finding, given the checks that they could break and those of its component."""
    helper = _set_up()
    found, checks, own = unpacked(task, helper.rules)
    remember(found.component, own, helper.context)
    return packed(remedies(found, checks, helper.context))


def _set_up() -> _Helper:
    if _helper is None:
        raise RuntimeError("a helper was given work before it was set up")
    return _helper


class _Packer(pickle.Pickler):
    def persistent_id(self, one: object) -> str | None:
        return one.name if isinstance(one, Rule) else None


class _Unpacker(pickle.Unpickler):
    def __init__(self, file: io.BytesIO, rules: Mapping[str, Rule]) -> None:
        super().__init__(file)
        self._rules = rules

    def persistent_load(self, name: str) -> Rule:
        return self._rules[name]


def packed(value: object) -> bytes:
    """A piece of work or a result as bytes."""
    file = io.BytesIO()
    _Packer(file).dump(value)
    return file.getvalue()


def unpacked(value: bytes, rules: Mapping[str, Rule]) -> Any:
    """A piece of work or a result from its bytes, with the rules of this process."""
    return _Unpacker(io.BytesIO(value), rules).load()
