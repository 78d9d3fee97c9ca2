"""Which TOML files of a repository hold specs, and which are passed over: each of those is named with the reason."""

from __future__ import annotations

import os
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from fnmatch import fnmatch
from pathlib import Path, PurePosixPath

from speclint.repository.settings import FILE_NAME, Settings

_SUFFIX = ".toml"
_OF_GIT = ".git"
#: Files that mark an environment of Python (PEP 405) and a cache (Cache Directory Tagging Specification 0.6).
_MARKS = frozenset({"pyvenv.cfg", "CACHEDIR.TAG"})


@dataclass(frozen=True, slots=True)
class PassedOver:
    """A TOML file that was not read as a spec, relative to the root, and why."""

    file: str
    why: str


def spec_files(root: Path, settings: Settings) -> Iterator[str]:
    """The TOML files of a repository that hold specs, relative to its root with forward slashes."""
    return iter(sorted_out(tuple(toml_files(root)), settings)[0])


def passed_over(root: Path, settings: Settings) -> tuple[PassedOver, ...]:
    """The TOML files of a repository that are not read as specs, and why."""
    return sorted_out(tuple(toml_files(root)), settings)[1]


def toml_files(root: Path) -> Iterator[str]:
    """Every file whose name ends in ``.toml``, in any case, relative to the root with forward slashes.

    Git's own folder, and hidden ones that say they are a cache or an environment of Python, are not looked into: they
    hold thousands of files and no design.
    """
    for folder, inner, names in os.walk(root):
        if os.path.basename(folder).startswith(".") and not _MARKS.isdisjoint(names) and Path(folder) != root:
            inner.clear()
            continue
        inner[:] = sorted(name for name in inner if name != _OF_GIT)
        here = Path(folder).relative_to(root).as_posix()
        for name in sorted(names):
            if is_toml(name):
                yield name if here == "." else f"{here}/{name}"


def is_toml(file: str) -> bool:
    """Whether a file is TOML by its name, however that is written."""
    return file.lower().endswith(_SUFFIX)


def sorted_out(files: Collection[str], settings: Settings) -> tuple[tuple[str, ...], tuple[PassedOver, ...]]:
    """Of all TOML files of a repository those that hold specs, and those that are passed over.

    Neither are the settings, the register and the files of materials, which are read as what they are.
    """
    own = {FILE_NAME, settings.register_file, *settings.materials}
    nested = {str(path.parent) for file in files if (path := PurePosixPath(file)).name == FILE_NAME} - {"."}
    specs, passed_over = [], []
    for file in files:
        if file in own or PurePosixPath(file).name == FILE_NAME:
            continue
        why = _why_passed_over(PurePosixPath(file), nested, settings)
        if why:
            passed_over.append(PassedOver(file, why))
        else:
            specs.append(file)
    return tuple(specs), tuple(passed_over)


def _why_passed_over(path: PurePosixPath, nested: Collection[str], settings: Settings) -> str:
    """The reason why a file is not read as a spec; "" where it is."""
    within = [str(folder) for folder in path.parents if str(folder) in nested]
    if within:
        return f"{within[-1]}/{FILE_NAME} makes its folder a repository of its own"
    for part in path.parts[:-1]:
        if part.startswith("."):
            return f"its folder {part} is hidden: the name begins with a dot"
    if path.name.startswith("."):
        return "its name begins with a dot"
    if path.suffix != _SUFFIX:
        return f"its name ends in {path.suffix}, not in {_SUFFIX}"
    pattern = next((one for one in settings.leave_out if fnmatch(str(path), one)), "")
    return f'{FILE_NAME} leaves out "{pattern}"' if pattern else ""
