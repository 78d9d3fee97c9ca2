"""A spec as TOML text: its values first, then its tables, so that it is read back as it was."""

from __future__ import annotations

import datetime as dt
import json
import math
import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

_BARE = re.compile(r"[A-Za-z0-9_-]+")


def toml_text(tree: Mapping[str, Any]) -> str:
    r"""A tree of tables, lists and plain values as TOML 1.0.

    >>> print(toml_text({"kind": "steam-pipe", "ends_at": {"part": "block"}, "bends": 2}), end="")
    kind = "steam-pipe"
    bends = 2
    <BLANKLINE>
    [ends_at]
    part = "block"
    """
    return "\n".join(_lines(tree, ())) + "\n"


def inline(value: Any) -> str:
    """A value on one line, as TOML 1.0 writes it.

    >>> inline(["a", {"of": True}])
    '["a", { of = true }]'
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    if isinstance(value, float):
        return repr(value) if math.isfinite(value) else str(value)
    if isinstance(value, dt.datetime | dt.date | dt.time):
        return value.isoformat()
    if isinstance(value, Mapping):
        inside = ", ".join(f"{key_text(name)} = {inline(one)}" for name, one in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    if isinstance(value, Sequence):
        return f"[{', '.join(map(inline, value))}]"
    return str(value)


def key_text(name: str) -> str:
    """A key as TOML writes it: bare where it may be."""
    return name if _BARE.fullmatch(name) else inline(name)


def _lines(tree: Mapping[str, Any], path: tuple[str, ...]) -> Iterator[str]:
    tables = {name: value for name, value in tree.items() if _has_header(value)}
    yield from (f"{key_text(name)} = {inline(value)}" for name, value in tree.items() if name not in tables)
    for name, value in tables.items():
        inner = (*path, name)
        header = ".".join(map(key_text, inner))
        for one in value if isinstance(value, list) else [value]:
            if isinstance(value, list) or not one or not all(map(_has_header, one.values())):
                yield ""
                yield f"[[{header}]]" if isinstance(value, list) else f"[{header}]"
            yield from _lines(one, inner)


def _has_header(value: Any) -> bool:
    """Whether a value stands under a header of its own: a table, but for one value with where it comes from."""
    if isinstance(value, list):
        return bool(value) and all(isinstance(one, Mapping) and "value" not in one for one in value)
    return isinstance(value, Mapping) and "value" not in value
