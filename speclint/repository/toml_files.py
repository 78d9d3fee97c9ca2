"""Every TOML file below a folder, whatever it holds, and the folders not looked into. It is quick to import."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

#: The end of the name of a file that holds specs or settings.
SUFFIX = ".toml"
#: The folder, or the file, by which a git repository is known.
OF_GIT = ".git"
#: Files that mark an environment of Python (PEP 405) and a cache (Cache Directory Tagging Specification 0.6).
_MARKS = frozenset({"pyvenv.cfg", "CACHEDIR.TAG"})


def is_toml(file: str) -> bool:
    """Whether a file is TOML by its name, however that is written."""
    return file.lower().endswith(SUFFIX)


def toml_files(root: Path, links: list[str], unreadable: list[tuple[str, str]]) -> Iterator[str]:
    """Every file whose name ends in ``.toml``, in any case, relative to the root with forward slashes.

    Git's own folder, and hidden ones that say they are a cache or an environment of Python, are not looked into: they
    hold thousands of files and no design. Folders that are links are added to ``links``, and those that cannot be read
    to ``unreadable``, with what the system says.
    """

    def cannot_be_read(problem: OSError) -> None:
        folder = Path(problem.filename).relative_to(root).as_posix()
        unreadable.append((folder, str(problem.strerror)))

    for folder, inner, names in os.walk(root, onerror=cannot_be_read):
        if os.path.basename(folder).startswith(".") and not _MARKS.isdisjoint(names) and Path(folder) != root:
            inner.clear()
            continue
        inner[:] = sorted(name for name in inner if name != OF_GIT)
        here = Path(folder).relative_to(root).as_posix()
        before = "" if here == "." else f"{here}/"
        links += [
            f"{before}{name}"
            for name in inner
            if not name.startswith(".") and os.path.islink(f"{folder}/{name}")
        ]
        yield from (f"{before}{name}" for name in sorted(names) if is_toml(name))
