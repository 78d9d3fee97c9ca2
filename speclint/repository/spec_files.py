"""Which TOML files of a repository hold specs, and which are passed over: each of those is named with the reason."""

from __future__ import annotations

import os
import stat
from collections.abc import Collection, Iterator
from fnmatch import fnmatch
from pathlib import Path

from msgspec import Struct

from speclint.repository.regular_files import not_regular
from speclint.repository.settings import FILE_NAME, Settings

_SUFFIX = ".toml"
#: The folder, or the file, by which a git repository is known.
OF_GIT = ".git"
#: Files that mark an environment of Python (PEP 405) and a cache (Cache Directory Tagging Specification 0.6).
_MARKS = frozenset({"pyvenv.cfg", "CACHEDIR.TAG"})
_LINK = "the folder is a link, and none is followed"


class PassedOver(Struct, frozen=True):
    """A TOML file that was not read as a spec, or a folder not looked into: relative to the root, and why.

    ``unknown`` where nobody can tell what a folder holds: its specs, if it has any, are not checked.
    """

    file: str
    why: str
    unknown: bool = False


def spec_files(root: Path, settings: Settings) -> Iterator[str]:
    """The TOML files of a repository that hold specs, relative to its root with forward slashes."""
    return iter(sorted_out(root, settings)[0])


def passed_over(root: Path, settings: Settings) -> tuple[PassedOver, ...]:
    """The TOML files of a repository that are not read as specs, the folders not looked into, and why."""
    return sorted_out(root, settings)[1]


def _toml_files(root: Path, closed: list[PassedOver]) -> Iterator[str]:
    """Every file whose name ends in ``.toml``, in any case, relative to the root with forward slashes.

    Git's own folder, and hidden ones that say they are a cache or an environment of Python, are not looked into: they
    hold thousands of files and no design. Folders that are links or cannot be read are added to ``closed``.
    """

    def unreadable(problem: OSError) -> None:
        folder = Path(problem.filename).relative_to(root).as_posix()
        closed.append(
            PassedOver(f"{folder}/", f"the folder cannot be read: {problem.strerror}", unknown=True)
        )

    for folder, inner, names in os.walk(root, onerror=unreadable):
        if os.path.basename(folder).startswith(".") and not _MARKS.isdisjoint(names) and Path(folder) != root:
            inner.clear()
            continue
        inner[:] = sorted(name for name in inner if name != OF_GIT)
        here = Path(folder).relative_to(root).as_posix()
        links = [name for name in inner if not name.startswith(".") and os.path.islink(f"{folder}/{name}")]
        closed += [PassedOver(f"{name if here == '.' else f'{here}/{name}'}/", _LINK) for name in links]
        for name in sorted(names):
            if is_toml(name):
                yield name if here == "." else f"{here}/{name}"


def roots_below(folder: Path) -> Iterator[Path]:
    """The design repositories in the folders below one, the outermost only; hidden folders and links are passed by."""
    for here, inner, names in os.walk(folder):
        if FILE_NAME in names:
            inner.clear()
            yield Path(here)
        else:
            inner[:] = sorted(name for name in inner if not name.startswith("."))


def is_toml(file: str) -> bool:
    """Whether a file is TOML by its name, however that is written."""
    return file.lower().endswith(_SUFFIX)


def sorted_out(root: Path, settings: Settings) -> tuple[tuple[str, ...], tuple[PassedOver, ...]]:
    """Of all TOML files of a repository those that hold specs, and those that are passed over.

    Neither are the settings, the register, the files of materials and the mappings of tables, which are read as what
    they are.
    """
    specs: list[str] = []
    passed_over: list[PassedOver] = []
    closed: list[PassedOver] = []
    files = tuple(_toml_files(root, closed))
    mappings = (*settings.made.mappings, *settings.tables.mappings)
    own = {FILE_NAME, settings.register_file, *settings.materials, *mappings}
    nested = {file.rpartition("/")[0] for file in files if file.rpartition("/")[2] == FILE_NAME} - {""}
    for folder in closed:  # what is hidden or left out anyway hides nothing
        why = _why_passed_over(f"{folder.file}any{_SUFFIX}", nested, settings)
        passed_over.append(PassedOver(folder.file, why) if folder.unknown and why else folder)
    for file in files:
        if file in own or file.rpartition("/")[2] == FILE_NAME:
            continue
        why = _why_passed_over(file, nested, settings) or _why_not_read(root, file)
        if why:
            passed_over.append(PassedOver(file, why))
        else:
            specs.append(file)
    return tuple(specs), tuple(sorted(passed_over, key=lambda one: one.file))


def _why_not_read(root: Path, file: str) -> str:
    """The reason why a file is not read at all; "" for a regular file, and for a link to one inside the repository."""
    try:
        regular = stat.S_ISREG(os.lstat(f"{root}/{file}").st_mode)
    except OSError:
        return ""  # whoever reads it says what is wrong
    what = "" if regular else not_regular(root, file)
    return f"it is {what}" if what else ""


def _why_passed_over(file: str, nested: Collection[str], settings: Settings) -> str:
    """The reason why a file is not read as a spec; "" where it is."""
    *folders, name = file.split("/")
    within = ("/".join(folders[:depth]) for depth in range(1, len(folders) + 1))
    if nested and (outermost := next((folder for folder in within if folder in nested), "")):
        return f"{outermost}/{FILE_NAME} makes its folder a repository of its own"
    if hidden := next((folder for folder in folders if folder.startswith(".")), ""):
        return f"its folder {hidden} is hidden: the name begins with a dot"
    if name.startswith("."):
        return "its name begins with a dot"
    suffix = os.path.splitext(name)[1]
    if suffix != _SUFFIX:
        return f"its name ends in {suffix}, not in {_SUFFIX}"
    pattern = next((one for one in settings.leave_out if fnmatch(file, one)), "")
    return f'{FILE_NAME} leaves out "{pattern}"' if pattern else ""
