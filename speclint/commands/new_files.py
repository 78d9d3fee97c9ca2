"""Files that a command writes to begin with: all of them or none, and nothing that is there is touched."""

from __future__ import annotations

import os
from collections.abc import Collection, Mapping
from pathlib import Path

from speclint.errors import OutputError, SettingsError
from speclint.repository import replace_file, write_output


def write_new(files: Mapping[Path, str], runnable: Collection[Path] = ()) -> None:
    """Write all of the files, or leave none of them; ``runnable`` are those that a shell runs.

    :raises SettingsError: for files that are there already. Nothing is written then.
    :raises OutputError: where they cannot be written: none of them is left then.
    """
    there = [path for path in files if os.path.lexists(path)]
    if there:
        raise SettingsError(f"{there[0]} is there already; nothing was written")
    written: list[Path] = []
    made: list[Path] = []
    try:
        for path, text in files.items():
            missing = [folder for folder in path.parents if not folder.exists()]
            for folder in reversed(missing):
                folder.mkdir()
                made.append(folder)
            _write(path, text)
            written.append(path)
            if path in runnable:
                path.chmod(path.stat().st_mode | 0o111)
    except (OSError, OutputError) as problem:
        for path in written:
            path.unlink(missing_ok=True)
        for folder in reversed(made):
            folder.rmdir()
        if isinstance(problem, OutputError):
            raise
        raise OutputError(f"{problem.filename}: cannot be made: {problem.strerror or problem}") from problem


def _write(path: Path, text: str) -> None:
    """Write a new file; one of a design, which a report never replaces, is written as it is since none is there."""
    if path.suffix == ".toml":
        replace_file(path, text.encode("utf-8"))
    else:
        write_output(path, text)


def write_in_folder(path: Path, text: str) -> None:
    """Write a file of a design, and make its folder where there is none; what is there is replaced.

    :raises OutputError: where the folder cannot be made, or the file not written.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as problem:
        raise OutputError(f"{path.parent}: it cannot be made: {problem.strerror or problem}") from problem
    replace_file(path, text.encode("utf-8"))
