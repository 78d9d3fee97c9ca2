"""Keys that are read for one more edition, and what is written now in their place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache

from speclint.errors import Complaint, shortened
from speclint.quantities import Measure
from speclint.specs.fields import Link, Stated
from speclint.specs.spec import Spec, SpecTable

#: What is said of each.
OLD = "an old key, read for one more edition"


@cache
def old_keys_of(table: type[SpecTable]) -> Mapping[str, str]:
    """The old keys of a table and of those that it is built on, each with what is written now."""
    found: dict[str, str] = {}
    for base in reversed(table.__mro__):
        found.update(base.__dict__.get("old_keys", {}))
    return found


def old_keys_in(spec: Spec) -> Iterator[Complaint]:
    """A note for each old key that a spec states: where, what was read, and what is written now."""
    for value, now in _in(spec, {}, ""):
        yield Complaint(value.where, OLD, shortened(_as_written(value)), now)


def _in(
    value: object, old: Mapping[str, str], name: str
) -> Iterator[tuple[Measure | Stated[object] | Link[Spec], str]]:
    """Whatever is stated under an old key, down to the innermost table."""
    if isinstance(value, SpecTable):
        own = old_keys_of(type(value))
        for key, inner in value.__dict__.items():
            yield from _in(inner, own, key)
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from _in(inner, old, name)
    elif name in old and isinstance(value, Measure | Stated | Link):
        yield value, old[name]


def _as_written(value: Measure | Stated[object] | Link[Spec]) -> str:
    if isinstance(value, Measure):
        return f'"{value.text}"'
    if isinstance(value, Link):
        return f'"{value.id}"'
    if isinstance(value.value, bool):
        return "true" if value.value else "false"
    return f'"{value.value}"' if isinstance(value.value, str) else str(value.value)
