"""What all TOML files of a repository hold, as one digest; and whether nothing was written to them since."""

from __future__ import annotations

import os
import stat
import time
from collections.abc import Iterable
from hashlib import blake2b
from pathlib import Path

from speclint.checking.code_digest import STILL
from speclint.repository import not_regular, toml_files

#: What a file system tells of a file or a folder, of a link and of what it leads to: its number, its size, when it was
#: written and when it was changed, in nanoseconds. It is another once that is written or moved, but within a moment.
Stands = tuple[int, ...]

_NOT_FOLLOWING = getattr(os, "O_NOFOLLOW", 0)
_READING = (
    os.O_RDONLY
    | _NOT_FOLLOWING
    | getattr(os, "O_BINARY", 0)
    | getattr(os, "O_CLOEXEC", 0)
    | getattr(os, "O_NONBLOCK", 0)  # opening a pipe would wait for whoever writes into it
)


class TomlState:
    """The content of every TOML file below a folder, and the folders there that are not looked into."""

    def __init__(self, root: Path) -> None:
        self._root, self._began = root, time.time()
        self._links: list[str] = []
        self._unreadable: list[tuple[str, str]] = []
        self._files = {file: self._held(file) for file in toml_files(root, self._links, self._unreadable)}
        self._folders = {folder: self._stands(folder) for folder in _folders_of(self._files)}

    def __contains__(self, file: str) -> bool:
        """Whether a file is one of them, by its path from the folder."""
        return file in self._files

    @property
    def digest(self) -> str:
        """The same for the same content of the same files."""
        held = [(file, content) for file, (content, _) in self._files.items()]
        return blake2b(repr((held, self._links, self._unreadable)).encode(), digest_size=20).hexdigest()

    def still_stand(self) -> bool:
        """Whether nothing was written since: not even back to what it was, as it may have been read meanwhile.

        What was written only a moment before it was read is read again.
        """
        links: list[str] = []
        unreadable: list[tuple[str, str]] = []
        names = list(toml_files(self._root, links, unreadable))
        if (names, links, unreadable) != ([*self._files], self._links, self._unreadable):
            return False
        folders = all(self._stands(folder) == stood for folder, stood in self._folders.items())
        return folders and all(self._is_as(file, *was) for file, was in self._files.items())

    def _is_as(self, file: str, content: str, stood: Stands) -> bool:
        if self._stands(file) != stood:
            return False
        young = max((*stood[2::4], *stood[3::4]), default=0) > (self._began - STILL) * 1e9
        return not young or self._held(file)[0] == content

    def _held(self, file: str) -> tuple[str, Stands]:
        """A digest of the content of a file, or why it is not read; and how it stands."""
        place = f"{self._root}/{file}"
        try:
            if not _NOT_FOLLOWING and os.path.islink(place):
                return self._of_link(file)
            handle = os.open(place, _READING)
        except OSError:
            return self._of_link(file)
        try:
            state = os.fstat(handle)
            if not stat.S_ISREG(state.st_mode):
                return not_regular(self._root, file), _told(state)
            return _digest_of(handle, state.st_size), _told(state)
        except OSError as problem:
            return str(problem), self._stands(file)
        finally:
            os.close(handle)

    def _of_link(self, file: str) -> tuple[str, Stands]:
        """The content of what a link leads to; why it is not read where it leads out, or is no link at all."""
        stands = self._stands(file)
        try:
            if what := not_regular(self._root, file):
                return what, stands
            with open(f"{self._root}/{file}", "rb") as opened:
                return blake2b(opened.read(), digest_size=20).hexdigest(), stands
        except OSError as problem:
            return str(problem), stands

    def _stands(self, name: str) -> Stands:
        """How a file or a folder stands; of a link, where it leads too; nothing where it is not there."""
        place = f"{self._root}/{name}"
        try:
            state = os.lstat(place)
            link = stat.S_ISLNK(state.st_mode)
            return (*_told(state), *_told(os.stat(place))) if link else _told(state)
        except OSError:
            return ()


def _folders_of(files: Iterable[str]) -> set[str]:
    """The folders that hold some files, and those that hold these; the uppermost has no name."""
    found = {""}
    for file in files:
        above = file.rpartition("/")[0]
        while above not in found:
            found.add(above)
            above = above.rpartition("/")[0]
    return found


def _digest_of(handle: int, size: int) -> str:
    """A digest of all that a file holds, most often in one piece."""
    digest = blake2b(digest_size=20)
    while block := os.read(handle, max(size, 1) + 1):
        digest.update(block)
    return digest.hexdigest()


def _told(state: os.stat_result) -> Stands:
    return state.st_ino, state.st_size, state.st_mtime_ns, state.st_ctime_ns
