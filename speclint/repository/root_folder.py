"""The root of a design repository: the folder that holds its settings. Nothing here takes long to import."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

#: The settings of a design repository.
FILE_NAME = "speclint.toml"


def is_root(folder: Path) -> bool:
    """Whether a folder has settings; what else than a file may be in their place is told when they are read."""
    place = folder / FILE_NAME
    return os.path.lexists(place) and not place.is_dir()


def folders_from(path: Path) -> list[Path]:
    """A folder, or that of a file, and all above it, where links lead; the nearest first."""
    start = path.resolve()
    return [start, *start.parents] if start.is_dir() else [*start.parents]


def root_above(path: Path) -> Path | None:
    """The nearest folder with settings, from a path upwards; None where there is none."""
    return next((folder for folder in folders_from(path) if is_root(folder)), None)


def roots_below(folder: Path) -> Iterator[Path]:
    """The design repositories in the folders below one, the outermost only; hidden folders and links are passed by."""
    for here, inner, names in os.walk(folder):
        if FILE_NAME in names:
            inner.clear()
            yield Path(here)
        else:
            inner[:] = sorted(name for name in inner if not name.startswith("."))
