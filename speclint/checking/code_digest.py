"""A digest of the code that makes a result: speclint, the families, Python, and the versions of what they need."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Iterator, Sequence
from functools import cache
from hashlib import blake2b
from importlib.util import find_spec
from typing import TYPE_CHECKING

from speclint.checking.installed import installed_beside
from speclint.checking.kept_folder import KeptFolder

if TYPE_CHECKING:
    from speclint.families import Loaded

#: Seconds for which a file must have stood as it is: a file system may give two changes within less the same time.
STILL = 2.0


def code_of(loaded: Loaded, kept: KeptFolder | None = None) -> str:
    """A digest of every file of the core and of each loaded family, and of what is installed beside them for a check.

    With a folder to keep it in, the files are read again where one of them is another, or was written since.

    :raises LookupError: for a family whose code lies in no file: nothing tells whether it is the same another time.
    """
    packages = packages_of(loaded, kept)
    digest = blake2b((_kept_of(packages, kept) if kept else _of_packages(packages)).encode(), digest_size=20)
    for name in (sys.version, sys.platform, *installed_beside(kept)):
        digest.update(name.encode("utf-8", "backslashreplace") + b"\0")
    return digest.hexdigest()


def packages_of(loaded: Loaded, kept: KeptFolder | None = None) -> tuple[str, ...]:
    """The packages whose code makes a result: speclint, those of the loaded families, and what lies beside these.

    With a folder to keep it in, what they import is read again where one of their files is another.

    :raises LookupError: for a family whose code lies in no file.
    """
    families = tuple(sorted({family.module.partition(".")[0] for family in loaded.families}))
    if families not in _beside:
        _beside[families] = _beside_of(families, kept)
    return "speclint", *families, *_beside[families]


#: Of the families that were asked about, what they import that lies beside them.
_beside: dict[tuple[str, ...], tuple[str, ...]] = {}


def _beside_of(families: tuple[str, ...], kept: KeptFolder | None) -> tuple[str, ...]:
    from speclint.checking.code_beside import code_beside  # only where a check is made

    standing = _standing(("speclint", *families)) if kept else None
    if kept is None or standing is None:
        return code_beside(families, _files_of)
    key = blake2b(f"beside\0{standing[0]}\0{sys.path}".encode("utf-8", "backslashreplace"), digest_size=20)
    body = kept.read(key.hexdigest())
    if body is not None:
        return tuple(name for name in body.decode().split("\0") if name)
    found = code_beside(families, _files_of)
    if standing[1]:
        kept.write(key.hexdigest(), "\0".join(found).encode())
    return found


def how_code_stands(packages: Sequence[str]) -> tuple[str, bool] | None:
    """How all files of some packages stand, by which Python; and whether they have stood so for long enough.

    None where code lies in no file. Nothing is imported to tell it, and no file is read. Of one process the answer is
    that of when it was first asked: code that changed since may have been imported before.
    """
    standing = _standing(tuple(packages))
    if standing is None:
        return None
    python = sys.version, sys.platform, sys.executable, sys.path, sys.flags
    stands = repr((standing[0], python)).encode("utf-8", "backslashreplace")
    return blake2b(stands, digest_size=20).hexdigest(), standing[1]


def _kept_of(packages: Sequence[str], kept: KeptFolder) -> str:
    """The digests of some packages, as an earlier run worked them of the same files."""
    standing = _standing(packages)
    if standing is None:
        return _of_packages(packages)
    stand, still = standing
    body = kept.read(stand)
    if body is not None:
        return body.decode()
    found = _of_packages(packages)
    if still:
        kept.write(stand, found.encode())
    return found


def _of_packages(packages: Sequence[str]) -> str:
    return "".join(f"{package}\0{_of_package(package)}\0" for package in packages)


@cache
def _standing(packages: tuple[str, ...]) -> tuple[str, bool] | None:
    """A digest of how every file stands, and whether all have for long enough; None where code lies in no file."""
    now, digest, latest = time.time(), blake2b(digest_size=20), 0.0
    try:
        for package in packages:
            for called, file in _files_of(package):
                found = os.stat(file)
                stands = (found.st_size, found.st_mtime_ns, found.st_ctime_ns, found.st_ino)
                digest.update(f"{package}\0{called}\0{file}\0{stands}\0".encode("utf-8", "backslashreplace"))
                latest = max(latest, found.st_mtime, found.st_ctime)
    except (LookupError, OSError):  # of a family made in memory nothing can be told so
        return None
    return digest.hexdigest(), latest <= now - STILL


@cache
def _of_package(name: str) -> str:
    """A digest of every file of a package, or of a module that is one file.

    :raises LookupError: for one that lies in no file, or in one that cannot be read.
    """
    digest = blake2b(digest_size=20)
    for called, file in sorted(_files_of(name)):
        try:
            with open(file, "rb") as opened:
                content = opened.read()
        except OSError as problem:
            raise LookupError(f"{file}: {problem.strerror or problem}") from problem
        digest.update(f"{called}\0{len(content)}\0".encode("utf-8", "backslashreplace"))
        digest.update(content)
    return digest.hexdigest()


def _files_of(name: str) -> Iterator[tuple[str, str]]:
    """Every file of a package or of a module, by its place in the package, with its path.

    :raises LookupError: for one that lies in no file.
    """
    try:
        found = find_spec(name)
    except ValueError:  # made in memory
        found = None
    if found is None or found.origin is None:
        raise LookupError(f"the code of {name} lies in no file")
    if not found.submodule_search_locations:
        yield os.path.basename(found.origin), found.origin
    for place in found.submodule_search_locations or ():
        yield from _files_below(place, "")


def _files_below(folder: str, within: str) -> Iterator[tuple[str, str]]:
    """Every file below a folder by its place in the package, but what Python compiled.

    A link that leads nowhere, by which some editors mark a file that is being edited, and a pipe hold no code.

    :raises LookupError: for a folder that cannot be read, and for a link to one, which may lead anywhere.
    """
    try:
        with os.scandir(folder) as entries:
            found = sorted(entries, key=lambda one: one.name)
    except OSError as problem:
        raise LookupError(f"{folder}: {problem.strerror or problem}") from problem
    for one in found:
        called = f"{within}{one.name}"
        if one.is_file():
            yield called, one.path
        elif one.is_dir(follow_symlinks=False):
            if one.name != "__pycache__":
                yield from _files_below(one.path, f"{called}{os.sep}")
        elif one.is_dir():
            raise LookupError(f"{one.path}: a link to a folder")
