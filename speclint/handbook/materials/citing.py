"""The works that a file of materials cites."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from speclint.equations import COMMON_PRACTICE, Source
from speclint.errors import one_of
from speclint.handbook.materials.refusal import RefusedError, text

_EXAMPLE = '{ work = "author or body, title", edition = "2011" }'
_KEYS = ("work", "edition", "place", "memory")


def cited(raw: Mapping[str, Any], sources: Mapping[str, Source]) -> Source:
    """The source that a table names, at its place, with its note: a key of [sources], a table, or common practice."""
    named, place = raw.get("source"), text(raw.get("place"), "place")
    note = text(raw.get("note"), "note")
    source = _named(named, sources)
    said = "; ".join(part for part in (place or source.place, note) if part)
    return source.at(said)


def _named(named: Any, sources: Mapping[str, Source]) -> Source:
    if named is None or named == "":
        raise RefusedError("no source is stated", f'source = "KEY OF [sources]", or source = {_EXAMPLE}')
    if isinstance(named, dict):
        return source_of(named)
    if named == COMMON_PRACTICE.work:
        return COMMON_PRACTICE
    if not isinstance(named, str) or named not in sources:
        known = (*sources, COMMON_PRACTICE.work)
        raise RefusedError(f"source {named!r} is not in [sources]", one_of(str(named), known))
    return sources[named]


def source_of(raw: Any) -> Source:
    """A work cited: what [sources] holds under one key."""
    if not isinstance(raw, dict):
        raise RefusedError("a source is a table", _EXAMPLE)
    for key in raw:
        if key not in _KEYS:
            raise RefusedError(f'"{key}" is no part of a source', one_of(key, _KEYS))
    work = text(raw.get("work"), "work")
    if not work:
        raise RefusedError("a source without its work", _EXAMPLE)
    memory = raw.get("memory", False)
    if not isinstance(memory, bool):
        raise RefusedError("memory is neither true nor false", "memory = true where the work was not seen")
    return Source(work, text(raw.get("edition"), "edition"), text(raw.get("place"), "place"), memory)
