"""Where a report may be written: never over a file of a design, and never through a link."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from speclint.errors import OutputError
from speclint.repository.file_replacement import replace_file
from speclint.repository.regular_files import called
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.settings import Settings, load_settings


def write_output(path: Path, text: str) -> None:
    """Write a report or another new file, in place of an older one.

    :raises OutputError: for a place that :func:`refuse_target` refuses, and where the file cannot be written.
    """
    refuse_target(path)
    replace_file(path, text.encode("utf-8"))


def refuse_target(path: Path, instead: str = "give the report another") -> None:
    """Refuse what no report is written to, before any work is done for it. A folder may stand there, a link may not.

    ``instead`` says what to do where the name belongs to a design.

    :raises OutputError: for a link, a pipe, a socket or a device, a place inside a design repository behind a link,
        and a file that belongs to a design or to git.
    """
    what = called(os.lstat(path).st_mode) if os.path.lexists(path) else ""
    if what not in ("", "a folder"):
        raise OutputError(f"{path}: this is {what}, which a report does not replace; give the name of a file")
    for folder in _links_to(path):
        raise OutputError(f"{path}: {folder} is a link, and a report in a design repository follows none")
    place = path.parent.resolve() / path.name
    if ".git" in place.parts:
        raise OutputError(f"{path}: git keeps its own files there; give another place")
    root = next((folder for folder in place.parents if os.path.lexists(folder / FILE_NAME)), None)
    if root is not None and not place.is_dir() and _is_own(place, root):
        raise OutputError(f"{path}: this name belongs to the design in {root}; {instead}")


def _links_to(path: Path) -> Iterator[Path]:
    """The links on the way from the root of a design repository to a place in it, as the path is written."""
    links: list[Path] = []
    for folder in path.absolute().parents:
        if os.path.lexists(folder / FILE_NAME):
            yield from links
            return
        if folder.is_symlink():
            links.append(folder)


def _is_own(place: Path, root: Path) -> bool:
    """Whether a place is that of a spec, present or not, or of a file that the settings name."""
    settings = load_settings(root)[0] or Settings()
    named = (settings.register_file, settings.signers_file, *settings.materials)
    return place.suffix.lower() == ".toml" or any(_same(place, root / file) for file in named)


def _same(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)  # whatever the case of the letters, where that does not matter
    except OSError:
        return one == other
