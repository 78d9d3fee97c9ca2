"""A digest of the code that makes a result: speclint, the families, Python, and the versions of what they need."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from functools import cache
from hashlib import blake2b
from importlib.util import find_spec
from pathlib import Path

from speclint.families import Loaded


def code_of(loaded: Loaded) -> str:
    """A digest of every file of the core and of each loaded family, and of what is installed beside them.

    :raises LookupError: for a family whose code lies in no file: nothing tells whether it is the same another time.
    """
    digest = blake2b(digest_size=20)
    for package in ("speclint", *sorted({family.module.partition(".")[0] for family in loaded.families})):
        digest.update(f"{package}\0{_of_package(package)}\0".encode())
    for name in (sys.version, sys.platform, *_installed()):
        digest.update(name.encode("utf-8", "backslashreplace") + b"\0")
    return digest.hexdigest()


@cache
def _of_package(name: str) -> str:
    """A digest of every file of a package, or of a module that is one file."""
    try:
        found = find_spec(name)
    except ValueError:  # made in memory
        found = None
    if found is None or found.origin is None:
        raise LookupError(f"the code of {name} lies in no file")
    places = [Path(place) for place in (found.submodule_search_locations or ())]
    files = {file: file.relative_to(place) for place in places for file in _files(place)}
    if not places:
        files[Path(found.origin)] = Path(Path(found.origin).name)
    digest = blake2b(digest_size=20)
    for file, called in sorted(files.items(), key=lambda pair: str(pair[1])):
        content = file.read_bytes()
        digest.update(f"{called}\0{len(content)}\0".encode("utf-8", "backslashreplace"))
        digest.update(content)
    return digest.hexdigest()


def _files(folder: Path) -> Iterator[Path]:
    for place, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if name != "__pycache__"]
        yield from (Path(place) / name for name in names)


def _installed() -> list[str]:
    """Every distribution that Python could import, by its name and version: its folder is named so."""
    found: set[str] = set()
    for place in sys.path:
        try:
            found.update(
                name for name in os.listdir(place or ".") if name.endswith((".dist-info", ".egg-info"))
            )
        except OSError:  # a place that is not there, or an archive
            continue
    return sorted(found)
