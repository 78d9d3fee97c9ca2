"""A folder of files that a command makes anew each time: its own of an earlier run go, and no other is touched."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from pathlib import Path

from speclint.errors import OutputError, SettingsError
from speclint.repository import refuse_target, write_output

#: Bytes at the beginning of a file among which the mark of its maker stands.
_HEAD = 100_000


def write_made(folder: Path, files: Mapping[str, str], mark: str) -> None:
    """Write files by their places in a folder, and take away those of an earlier run that are made no more.

    A file is of an earlier run where ``mark`` stands in it.

    :raises SettingsError: for a file under one of their names that bears no such mark. Nothing is written then.
    :raises OutputError: where a file cannot be written, or belongs to a design.
    """
    wanted = {folder / place: text for place, text in files.items()}
    for path in wanted:
        refuse_target(path)
        if os.path.lexists(path) and not _bears(path, mark):
            raise SettingsError(
                f"{path} is there already, and is none of an earlier run; nothing was written"
            )
    older = [path for path in _within(folder) if path not in wanted and _bears(path, mark)]
    try:
        for parent in dict.fromkeys(path.parent for path in wanted):
            parent.mkdir(parents=True, exist_ok=True)
        for path, text in wanted.items():
            write_output(path, text)
        for path in older:
            path.unlink()
    except OSError as problem:
        raise OutputError(f"{problem.filename}: cannot be made: {problem.strerror or problem}") from problem


def _within(folder: Path) -> Iterator[Path]:
    """The pages in a folder and in those directly below it; a link to another folder is not followed."""
    for path in sorted((*folder.glob("*.html"), *folder.glob("*/*.html"))):
        if not path.parent.is_symlink():
            yield path


def _bears(path: Path, mark: str) -> bool:
    """Whether a file bears the mark of whoever made it."""
    if path.is_symlink() or not path.is_file():
        return False
    try:
        with path.open("rb") as file:
            return mark.encode("utf-8") in file.read(_HEAD)
    except OSError as problem:
        raise OutputError(f"{path}: cannot be read: {problem.strerror or problem}") from problem
