"""A new family of rules, written from the files in ``family_template``: a distribution of its own, with tests."""

from __future__ import annotations

import os
import re
from collections.abc import Mapping
from pathlib import Path
from string import Template

from speclint.errors import OutputError, SettingsError
from speclint.repository import write_output

_TEMPLATE = Path(__file__).parent / "family_template"
_NAME = re.compile(r"[a-z]+(-[a-z]+)*")


def write_family(name: str, folder: Path) -> tuple[Path, ...]:
    """Write the distribution ``speclint-NAME`` into a folder; returns its files. Nothing that is there is touched.

    :raises SettingsError: for a name that is not small letters and hyphens, a folder that is not there, and files
        that are there already. Nothing is written then.
    :raises OutputError: where they cannot be written: none of them is left then.
    """
    if not _NAME.fullmatch(name):
        raise SettingsError(
            f'"{name}" is no name of a family: write small letters and hyphens, such as wheel-sets'
        )
    if not folder.is_dir():
        raise SettingsError(f"{folder}: there is no such folder")
    root = folder / f"speclint-{name}"
    files = {root / place: text for place, text in family_files(name).items()}
    there = [path for path in files if os.path.lexists(path)]
    if there:
        raise SettingsError(f"{there[0]} is there already; nothing was written")
    _write(files)
    return tuple(files)


def _write(files: Mapping[Path, str]) -> None:
    """Write all of the files, or leave none of them."""
    written: list[Path] = []
    made: list[Path] = []
    try:
        for path, text in files.items():
            missing = [folder for folder in path.parents if not folder.exists()]
            for folder in reversed(missing):
                folder.mkdir()
                made.append(folder)
            write_output(path, text)
            written.append(path)
    except (OSError, OutputError) as problem:
        for path in written:
            path.unlink(missing_ok=True)
        for folder in reversed(made):
            folder.rmdir()
        if isinstance(problem, OutputError):
            raise
        raise OutputError(f"{problem.filename}: cannot be made: {problem.strerror or problem}") from problem


def family_files(name: str) -> dict[str, str]:
    """The files of a new family by their place in its distribution."""
    package = f"speclint_{name.replace('-', '_')}"
    words = {"family": name, "package": package, "distribution": f"speclint-{name}"}
    found = {}
    for path in sorted(_TEMPLATE.rglob("*.txt")):
        place = (
            path.relative_to(_TEMPLATE).as_posix().removesuffix(".txt").replace("package/", f"{package}/", 1)
        )
        found[place] = Template(path.read_text(encoding="utf-8")).substitute(words)
    return found
