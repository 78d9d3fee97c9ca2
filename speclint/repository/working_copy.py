"""A copy of a design repository in another folder, in which files may be changed: the design itself is not touched."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from speclint.errors import OutputError
from speclint.repository.regular_files import LARGEST_REGISTER, read_regular
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.settings import Settings
from speclint.repository.spec_files import spec_files


def copy_repository(root: Path, settings: Settings, folder: Path, changed: Mapping[str, str]) -> None:
    """Copy the specs of a repository, and what its settings name, into a folder; some files with another text.

    :raises OutputError: where the folder has no room for them.
    """
    named = {FILE_NAME, settings.register_file, settings.signers_file}
    named |= {*settings.materials, *settings.made.mappings}
    for file in (*spec_files(root, settings), *sorted(named)):
        try:
            content = changed[file].encode("utf-8") if file in changed else _content(root / file)
            if content is not None:
                place = folder / file
                place.parent.mkdir(parents=True, exist_ok=True)
                place.write_bytes(content)
        except OSError as problem:
            raise OutputError(
                f"{problem.filename}: cannot be copied: {problem.strerror or problem}"
            ) from problem


def _content(path: Path) -> bytes | None:
    """What a regular file holds; None for what is none, which is told of where the repository itself is read."""
    try:
        return read_regular(path, LARGEST_REGISTER)
    except OSError:
        return None
