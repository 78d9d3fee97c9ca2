"""From paths on the command line to a design: find the root, read every file, resolve every link."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.errors import Complaint, DesignError, Location
from speclint.repository.all_specs import all_read
from speclint.repository.design import Design
from speclint.repository.drawing_files import DrawingFiles, InFolder, Source
from speclint.repository.root_folder import FILE_NAME, folders_from, root_above, roots_below
from speclint.repository.settings import Settings
from speclint.repository.spec_files import PassedOver, sorted_out
from speclint.repository.toml_files import OF_GIT
from speclint.repository.unread import unread_files
from speclint.specs import Spec

if TYPE_CHECKING:
    from speclint.repository.kept_index import Remembered

#: This many of several repositories are named.
_NAMED = 4


def find_root(paths: Sequence[Path]) -> Path:
    """The repository that all paths lie in: the nearest folder upwards that holds speclint.toml.

    In a git repository it may also be the only folder below that does, so that every command works at its top.

    :raises DesignError: for a path that does not exist, has no speclint.toml above it nor one below it, or lies in
        another repository than the first; and for no path at all.
    """
    if not paths:
        raise DesignError("no file and no folder is named: name one of a design repository")
    roots: dict[Path, Path] = {}
    for path in paths:
        if not os.path.exists(path):  # a name that no system takes is none either
            raise DesignError(f"{path}: there is no such file or folder")
        root = root_above(path) or _root_below(path, folders_from(path))
        roots.setdefault(root, path)
    if len(roots) > 1:
        (first, _), (other, path) = list(roots.items())[:2]
        raise DesignError(
            f"{path}: lies in the repository {other}, not in {first}; check one repository at a time"
        )
    return next(iter(roots))


def _root_below(path: Path, above: Sequence[Path]) -> Path:
    """The only design repository in the folders below a path, where that lies in a git repository.

    :raises DesignError: where there is none, or more than one.
    """
    in_git = any(os.path.lexists(folder / OF_GIT) for folder in above)
    found = list(roots_below(above[0])) if in_git else []
    if len(found) == 1:
        return found[0]
    if found:
        named = ", ".join(str(one) for one in found[:_NAMED])
        raise DesignError(f"{path}: several design repositories lie here; say which: {named}")
    begun = path if path.is_dir() else path.parent
    raise DesignError(
        f"{path}: no {FILE_NAME} here or in any folder above; every design repository has one: "
        f"speclint begin {begun} writes one"
    )


def load_design(
    root: Path,
    paths: Sequence[Path],
    settings: Settings,
    kinds: Mapping[str, type[Spec]],
    remembered: Remembered | None = None,
    drawing_files: Source | None = None,
) -> Design:
    """Read the specs of the repository; ``paths`` choose what is checked.

    Where its index is ``remembered`` from an earlier run, a spec that has not changed is only read when it is asked
    for. What is told of the repository is the same. The files of drawings lie in the repository, or in another source.
    """
    holding, passed_over = sorted_out(root, settings)
    if remembered is None:
        found = all_read(root, sorted(holding), kinds)
    else:
        from speclint.repository.lazy_reading import Reading  # only where an index is kept

        found = Reading(root, sorted(holding), kinds, remembered, settings.families.left_out).specs()
    choice = _Choice(root, paths)
    closed = tuple(_unknown(one) for one in passed_over if one.unknown)
    return Design(
        root=root,
        settings=settings,
        specs=found.specs,
        files=found.files,
        selected=frozenset(name for name, file in found.files.items() if choice.has(file)),
        complaints=tuple(sorted((*found.complaints, *closed), key=lambda one: one.order)),
        cut=found.cut,
        passed_over=tuple(one for one in passed_over if not one.unknown and choice.has(one.file)),
        alike=found.alike,
        unread=tuple(unread_files(root, found.missing, kinds)),
        _drawings=DrawingFiles(drawing_files or InFolder(root)),
        _known=found.index,
    )


def _unknown(folder: PassedOver) -> Complaint:
    """A complaint about a folder that may hold specs which nobody could read."""
    write = f"the right to read it, or leave_out in {FILE_NAME} where it holds no spec"
    return Complaint(Location(folder.file), folder.why, write=write)


def chosen(file: Path, paths: Sequence[Path]) -> bool:
    """Whether some paths on the command line choose a file of a repository: it is one of them, or lies in one."""
    return _Choice(file.parent, paths).has(file.name)


class _Choice:
    """What some paths on the command line choose of the files of a repository."""

    def __init__(self, root: Path, paths: Sequence[Path]) -> None:
        self._root = str(root)
        self._paths = frozenset(str(path.resolve()) for path in paths)

    def has(self, file: str) -> bool:
        """Whether a file is one of the paths, or lies in one; relative to the root, with forward slashes."""
        place = os.path.join(self._root, *file.split("/"))
        while place not in self._paths:
            above = os.path.dirname(place)
            if above == place:
                return False
            place = above
        return True
