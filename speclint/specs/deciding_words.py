"""The words of a spec that decide by what it is judged: a reviewer is shown each of them that a change alters.

A dimension is judged by rules; a word decides which rules apply, how grave a finding is, and who may accept it.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any, Literal, get_args, get_origin

from speclint.quantities import Measure
from speclint.specs.fields import Deciding, Link, Stated
from speclint.specs.spec import Spec, SpecTable, leaves
from speclint.specs.stated_values import as_written
from speclint.specs.worked_values import Estimate, FromEvents


def deciding_words(spec: Spec) -> dict[str, str]:
    """What a spec states that decides by what it is judged, by its dotted key: see ``FOR_REVIEW``.

    These are every yes/no and every word chosen from a list, the fields marked ``FOR_REVIEW``, the kind, and the
    provenance of every quantity that is not from the drawing, under its key and ``from``: that it is worked from the
    valve events, or estimated, among them.
    """
    return {"kind": spec.kind, **dict(_words(spec))}


def _words(spec: Spec) -> Iterator[tuple[str, str]]:
    for key, value, table, field in leaves(spec):
        if isinstance(value, Measure):
            if value.provenance != "drawing":
                yield f"{key} from", value.provenance
        elif isinstance(value, FromEvents | Estimate):
            yield f"{key} from", "events" if isinstance(value, FromEvents) else "estimate"
        elif isinstance(value, Stated | Link) and field in _deciding_fields(table):
            yield key, as_written(value)


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
