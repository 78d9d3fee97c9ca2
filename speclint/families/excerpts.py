"""Some keys of a spec as its file writes them: those of a table under its header, a part under its id."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from speclint.repository import key_text

_STEP = re.compile(r"[^.\[\]]+|\[\d+\]")


class ExcerptLine(NamedTuple):
    """A dotted key, such as ``corners[2].height``, and its value as TOML writes it; "" where the key is left out."""

    key: str
    value: str


def excerpt(part: str, lines: Iterable[ExcerptLine]) -> str:
    """Keys of one part: those of the spec itself first, then those of each table.

    >>> print(excerpt("liner-left", [ExcerptLine("collar.end", '"front"'), ExcerptLine("bore", "")]), end="")
    # liner-left
    # bore left out
    <BLANKLINE>
    [collar]
    end = "front"
    """
    tables: dict[str, list[str]] = {"": []}
    for one in lines:
        *above, last = _STEP.findall(one.key)
        written = f"{key_text(last)} = {one.value}" if one.value else f"# {last} left out"
        tables.setdefault(_header(above), []).append(written)
    own = tables.pop("")
    text = "\n".join([f"# {part}", *own]) + "\n"
    return text + "".join("\n" + "\n".join([header, *inside]) + "\n" for header, inside in tables.items())


def _header(steps: Iterable[str]) -> str:
    r"""The header of a table; of an array of tables with the number of the entry.

    >>> _header(["corners", "[2]"])
    '[[corners]]  # number 3'
    """
    names: list[str] = []
    numbers: list[str] = []
    for step in steps:
        if step.startswith("["):
            numbers.append(str(int(step[1:-1]) + 1))
        else:
            names.append(key_text(step))
    if not names:
        return ""
    path = ".".join(names)
    return f"[[{path}]]  # number {', '.join(numbers)}" if numbers else f"[{path}]"
