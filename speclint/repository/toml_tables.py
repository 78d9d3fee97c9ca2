"""A TOML file as a table in which every value knows its place."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from speclint.errors import (
    Complaint,
    Location,
    Path as KeyPath,
    TomlError,
    locate,
    read_toml_text,
    shortened,
)
from speclint.repository.regular_files import LARGEST, not_regular, read_regular
from speclint.specs import Array, Leaf, Table


def read_named(root: Path, file: str, largest: int = LARGEST) -> Table | Complaint:
    """Read a TOML file of a repository whose name is fixed or is in the settings: only a regular one inside of it."""
    if what := not_regular(root, file):
        return Complaint(
            Location(file), f"this is {what}, which is not read", write="the file itself in its place"
        )
    return read_toml(root / file, file, largest)


def read_toml(
    path: Path, file: str, largest: int = LARGEST, content: bytes | None = None
) -> Table | Complaint:
    """Read a TOML file, or its ``content``, into a table in which every value has its place in the file."""
    try:
        text = (read_regular(path, largest) if content is None else content).decode("utf-8")
        tree = read_toml_text(text)
    except TomlError as problem:
        where = Location(file, problem.line, shortened(dotted(problem.path)))
        return Complaint(where, str(problem), shortened(_line(text, problem.line)), problem.write)
    except UnicodeDecodeError as problem:
        line = problem.object.count(b"\n", 0, problem.start) + 1
        return Complaint(Location(file, line), "the file is not UTF-8 text", write="the file saved as UTF-8")
    except OSError as problem:
        return Complaint(Location(file), f"the file cannot be read: {problem.strerror or problem}")
    lines = locate(text.replace("\r\n", "\n"))
    return _with_places(tree, (), file, lines, 1)


def _line(text: str, number: int) -> str:
    lines = text.splitlines()
    return lines[number - 1].strip() if 0 < number <= len(lines) else ""


def _with_places(
    tree: Mapping[str, Any], path: KeyPath, file: str, lines: Mapping[KeyPath, int], line: int
) -> Table:
    here = Location(file, lines.get(path, line), dotted(path))
    inside = {name: _placed(value, (*path, name), file, lines, here.line) for name, value in tree.items()}
    return Table(inside, here)


def _placed(value: Any, path: KeyPath, file: str, lines: Mapping[KeyPath, int], line: int) -> Any:
    if isinstance(value, dict):
        return _with_places(value, path, file, lines, line)
    line = lines.get(path, line)
    if isinstance(value, list):
        items = [_placed(item, (*path, index), file, lines, line) for index, item in enumerate(value)]
        return Array(items, Location(file, line, dotted(path)))
    return Leaf(value, Location(file, line, dotted(path)))


def dotted(path: KeyPath) -> str:
    """A path of keys as a spec would write it: ``bores.main.diameter``, ``pads[2].width``."""
    text = ""
    for step in path:
        if isinstance(step, int):
            text += f"[{step}]"
        else:
            text += f".{step}" if text else step
    return text
