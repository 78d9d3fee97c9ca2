"""What all TOML files of a repository hold, as one digest; and whether that still is so, without reading all again."""

from __future__ import annotations

import os
import stat
import time
from collections.abc import Iterator
from hashlib import blake2b
from pathlib import Path

from speclint.repository import not_regular, toml_files

#: What a file system tells of a file: it is another where the file was written since, but for one written a moment ago.
Stands = tuple[int, int, int, int]

#: Seconds for which a file must have stood as it is: a file system may give two changes within less the same time.
_STILL = 2.0
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
        self._files = {file: self._held(file) for file in self._names(self._links, self._unreadable)}

    @property
    def digest(self) -> str:
        """The same for the same content of the same files."""
        held = [(file, content) for file, (content, _) in self._files.items()]
        return blake2b(repr((held, self._links, self._unreadable)).encode(), digest_size=20).hexdigest()

    def still_holds(self) -> bool:
        """Whether all is as it was. What was written only a moment before it was read is read again."""
        links: list[str] = []
        unreadable: list[tuple[str, str]] = []
        if list(self._names(links, unreadable)) != [*self._files]:
            return False
        same = links == self._links and unreadable == self._unreadable
        return same and all(self._is_as(file, *was) for file, was in self._files.items())

    def _names(self, links: list[str], unreadable: list[tuple[str, str]]) -> Iterator[str]:
        return toml_files(self._root, links, unreadable)

    def _is_as(self, file: str, content: str, stood: Stands | None) -> bool:
        if stood is None or max(stood[1], stood[2]) > (self._began - _STILL) * 1e9:
            return self._held(file)[0] == content
        try:
            return _stands(os.stat(f"{self._root}/{file}", follow_symlinks=False)) == stood
        except OSError:
            return False

    def _held(self, file: str) -> tuple[str, Stands | None]:
        """A digest of the content of a file, with how it stands; or why it is not read."""
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
                return not_regular(self._root, file), None
            return _digest_of(handle, state.st_size), _stands(state)
        except OSError as problem:
            return str(problem), None
        finally:
            os.close(handle)

    def _of_link(self, file: str) -> tuple[str, None]:
        """The content of what a link leads to; why it is not read where it leads out, or is no link at all."""
        place = f"{self._root}/{file}"
        try:
            if what := not_regular(self._root, file):
                return what, None
            with open(place, "rb") as opened:
                return blake2b(opened.read(), digest_size=20).hexdigest(), None
        except OSError as problem:
            return str(problem), None


def _digest_of(handle: int, size: int) -> str:
    """A digest of all that a file holds, most often in one piece."""
    digest = blake2b(digest_size=20)
    while block := os.read(handle, max(size, 1) + 1):
        digest.update(block)
    return digest.hexdigest()


def _stands(state: os.stat_result) -> Stands:
    return state.st_size, state.st_mtime_ns, state.st_ctime_ns, state.st_ino
