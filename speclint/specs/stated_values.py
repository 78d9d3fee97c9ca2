"""What a spec states, as it is written, by key: so that two states of one spec can be compared by a reader."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint.quantities import Measure
from speclint.specs.fields import Link, NotStated, Stated
from speclint.specs.spec import Spec, SpecTable
from speclint.specs.ties import Tie
from speclint.specs.worked_values import Estimate, FromEvents


def stated_values(spec: Spec) -> dict[str, str]:
    """Every value that a spec states or takes over, by its dotted key, as it is written."""
    return {"kind": spec.kind, **dict(_of_table(spec, ""))}


def _of_table(table: SpecTable, prefix: str) -> Iterator[tuple[str, str]]:
    for name, value in table.__dict__.items():
        yield from _of_value(value, f"{prefix}{name}")


def _of_value(value: object, key: str) -> Iterator[tuple[str, str]]:
    if isinstance(value, SpecTable):
        yield from _of_table(value, f"{key}.")
    elif isinstance(value, Mapping):
        for name, inner in value.items():
            yield from _of_value(inner, f"{key}.{name}")
    elif isinstance(value, tuple | list):
        for number, inner in enumerate(value, start=1):
            yield from _of_value(inner, f"{key}[{number}]")
    elif (written := _as_written(value)) is not None:
        yield key, written


def _as_written(value: object) -> str | None:
    """A value as it stands in its file; None for what is not stated."""
    if isinstance(value, Measure):
        return value.text
    if isinstance(value, Link):
        return str(value.id)
    if isinstance(value, Stated):
        return str(value.value).lower() if isinstance(value.value, bool) else str(value.value)
    if isinstance(value, Tie):
        return f"{_as_written(value.base)} + {value.difference.text}"
    if isinstance(value, FromEvents | Estimate):
        return "from the valve events" if isinstance(value, FromEvents) else "an estimate"
    return None if isinstance(value, NotStated) else str(value)
