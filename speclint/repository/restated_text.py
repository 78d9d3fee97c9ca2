"""A file of a spec with another value in one place: as the designer would write it, everything else as it stands."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator
from copy import deepcopy
from typing import Any

from speclint.errors import DesignError, Location, Path, locate
from speclint.specs import MARK

_STEP = re.compile(r"\[(\d+)\]|([^.\[\]]+)")
_MARK = re.compile(MARK)
_EVERY_OTHER = 2  # of what a text is split into at its marks: the words of these stand between


def restated_text(text: str, where: Location, written: str, usual: object = "") -> str:
    """A TOML text in which the value at a place is written otherwise; where there is none, it is stated.

    ``written`` is the value as on a command line: a text needs no quotes where a text stands, or is usual.

    :raises DesignError: where the text cannot be changed there alone.
    """
    import tomli
    import tomlkit

    plain = text.replace("\r\n", "\n")
    tree: Any = tomli.loads(plain)
    path = _path_of(plain, where)
    present = _at(tree, path) if path else None
    if isinstance(present, dict) and "value" in present:
        path, present = (*path, "value"), present["value"]
    value = typed(written, usual if present is None else present)
    path = path or tuple(_steps(where.key))
    wanted = deepcopy(tree)
    document = tomlkit.parse(plain)
    try:
        _put(wanted, path, value)
        _put(document, path, value)
        changed = tomlkit.dumps(document)
        same = tomli.loads(changed) == wanted
    except (KeyError, IndexError, TypeError, ValueError):
        same = False
    if not same:
        raise DesignError(f"{where}: this cannot be written otherwise by itself: change the file")
    return changed


def typed(written: str, present: object) -> Any:
    """A value from the command line as TOML has one of the same sort; as a text where it cannot be read as that."""
    import tomli

    try:
        read = tomli.loads(f"value = {written}")["value"]
    except tomli.TOMLDecodeError:
        return written
    if isinstance(present, str):
        return read if isinstance(read, str | list | dict) else written
    if isinstance(present, bool | int | float | list | dict | dt.date) or not isinstance(read, str):
        return read
    return written


def _path_of(text: str, where: Location) -> Path:
    """The path in the text of the value that a spec has from a line; () where none stands there."""
    wanted = tuple(_steps(where.key))
    for path, line in locate(text).items():
        if line == where.line and _leads_to(path, wanted):
            return path
    return ()


def _leads_to(path: Path, wanted: Path) -> bool:
    """Whether a path is that of a key, at the head of a file or among what differs between its parts."""
    if path[:1] == ("for",) and len(path) > len(wanted):
        path = path[2:]
    return len(path) == len(wanted) and all(_is(one, other) for one, other in zip(path, wanted, strict=True))


def _is(written: str | int, read: str | int) -> bool:
    """Whether a step of a path is read as another, with the names put in for its marks."""
    if not isinstance(written, str) or not isinstance(read, str):
        return written == read
    pattern = ".+".join(re.escape(part) for part in _MARK.split(written)[::_EVERY_OTHER])
    return re.fullmatch(pattern, read) is not None


def _steps(key: str) -> Iterator[str | int]:
    """The steps of a dotted key: ``pads[2].width`` has three."""
    for found in _STEP.finditer(key):
        yield int(found[1]) if found[1] else found[2]


def _at(tree: Any, path: Path) -> Any:
    for step in path:
        tree = tree[step]
    return tree


def _put(tree: Any, path: Path, value: object) -> None:
    """Put a value in its place; tables on the way that are not there are made."""
    import tomlkit

    for step in path[:-1]:
        if isinstance(step, str) and step not in tree:
            tree[step] = {} if type(tree) is dict else tomlkit.table()
        tree = tree[step]
    tree[path[-1]] = value
