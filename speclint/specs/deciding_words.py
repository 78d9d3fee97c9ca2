"""The words of a spec that decide by what it is judged: a reviewer is shown each of them that a change alters.

A dimension is judged by rules; a word decides which rules apply, how grave a finding is, and who may accept it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any, Literal, get_args, get_origin

from speclint.quantities import Measure
from speclint.specs.fields import Deciding, Link, Stated
from speclint.specs.spec import Spec, SpecTable
from speclint.specs.worked_values import Estimate, FromEvents


def deciding_words(spec: Spec) -> dict[str, str]:
    """What a spec states that decides by what it is judged, by its dotted key: see ``FOR_REVIEW``.

    These are every yes/no and every word chosen from a list, the fields marked ``FOR_REVIEW``, the kind, and the
    provenance of every quantity that is not from the drawing, under its key and ``from``: that it is worked from the
    valve events, or estimated, among them.
    """
    return {"kind": spec.kind, **dict(_of_table(spec, ""))}


def _of_table(table: SpecTable, prefix: str) -> Iterator[tuple[str, str]]:
    marked = _deciding_fields(type(table))
    for name, value in table.__dict__.items():
        yield from _of_value(value, f"{prefix}{name}", name in marked)


def _of_value(value: object, key: str, deciding: bool) -> Iterator[tuple[str, str]]:
    if isinstance(value, SpecTable):
        yield from _of_table(value, f"{key}.")
    elif isinstance(value, Mapping):
        for name, inner in value.items():
            yield from _of_value(inner, f"{key}.{name}", deciding)
    elif isinstance(value, tuple | list):
        for number, inner in enumerate(value):
            yield from _of_value(inner, f"{key}[{number}]", deciding)
    elif isinstance(value, Measure):
        if value.provenance != "drawing":
            yield f"{key} from", value.provenance
    elif isinstance(value, FromEvents | Estimate):
        yield f"{key} from", "events" if isinstance(value, FromEvents) else "estimate"
    elif deciding and isinstance(value, Stated):
        yield key, str(value.value).lower() if isinstance(value.value, bool) else str(value.value)
    elif deciding and isinstance(value, Link):
        yield key, value.id


@cache
def _deciding_fields(table: type[SpecTable]) -> frozenset[str]:
    return frozenset(
        name
        for name, declared in table.model_fields.items()
        if any(isinstance(mark, Deciding) for mark in declared.metadata) or _is_choice(declared.annotation)
    )


def _is_choice(declared: Any) -> bool:
    """Whether a field, or what it holds many of, is a yes/no or a word chosen from a list."""
    if get_origin(declared) is Stated:
        (wanted,) = get_args(declared)
        return wanted is bool or get_origin(wanted) is Literal
    return any(_is_choice(inner) for inner in get_args(declared))
