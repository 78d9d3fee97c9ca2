"""Reading files of a design repository: regular ones inside of it only, and up to a size.

A link that leads out of the repository, a pipe, a socket and a device are never opened for reading: one of them may
never end, and what lies outside is no part of the design that was reviewed.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from pathlib import Path
from typing import Final

#: Bytes of a spec, of the settings, of a file of materials: common practice, where a spec takes some thousands.
LARGEST: Final = 1_000_000
#: Bytes of a register: common practice, room for some thousands of concessions.
LARGEST_REGISTER: Final = 10_000_000

#: Bytes that are read at a time of a file of any size: common practice.
BLOCK: Final = 1 << 20

_CALLED = {
    stat.S_IFDIR: "a folder",
    stat.S_IFIFO: "a pipe",
    stat.S_IFSOCK: "a socket",
    stat.S_IFCHR: "a device",
    stat.S_IFBLK: "a device",
    stat.S_IFLNK: "a link",
}
_READING = os.O_RDONLY | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
_WITHOUT_WAITING = getattr(os, "O_NONBLOCK", 0)  # opening a pipe waits for whoever writes into it


def not_regular(root: Path, file: str) -> str:
    """Why a file of a repository is not to be read, such as "a pipe"; "" where it may be, or is not there."""
    path = root / file
    place = os.path.realpath(path)
    if not Path(place).is_relative_to(os.path.realpath(root)):
        return "a link that leads out of the repository"
    try:
        return called(os.stat(place).st_mode)
    except OSError:
        return "a link that leads nowhere" if path.is_symlink() else ""


def called(mode: int) -> str:
    """What a file of some mode is called; "" for a regular file."""
    return "" if stat.S_ISREG(mode) else _CALLED.get(stat.S_IFMT(mode), "no regular file")


def read_regular(path: Path, largest: int = LARGEST) -> bytes:
    """The content of a regular file.

    :raises OSError: for a file that is absent, is not regular or has more than ``largest`` bytes.
    """
    _refuse_other(os.stat(path).st_mode)
    with os.fdopen(os.open(path, _READING | _WITHOUT_WAITING), "rb") as file:
        _refuse_other(os.fstat(file.fileno()).st_mode)  # again, as another may stand there by now
        content = file.read(largest + 1)
        size = max(os.fstat(file.fileno()).st_size, len(content))
    if len(content) > largest:
        raise OSError(f"it has {size} bytes, and at most {largest} are read")
    return content


def blocks_of(path: Path) -> Iterator[bytes]:
    """The content of a regular file of any size, block by block.

    :raises OSError: for a file that is absent or is not regular.
    """
    _refuse_other(os.stat(path).st_mode)
    with os.fdopen(os.open(path, _READING | _WITHOUT_WAITING), "rb") as file:
        _refuse_other(os.fstat(file.fileno()).st_mode)  # again, as another may stand there by now
        while block := file.read(BLOCK):
            yield block


def _refuse_other(mode: int) -> None:
    if what := called(mode):
        raise OSError(f"it is {what}, and only regular files are read")


def text_read_again(path: Path) -> str:
    """The text of a file that was read before; "" where it cannot be read any longer. No byte of it is refused."""
    try:
        return read_regular(path).decode("utf-8", "replace")
    except OSError:
        return ""
