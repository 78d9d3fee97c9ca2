"""Writing a file whole: beside its place under a name of its own, onto the disk, then in place of what was there.

Whatever fails, a full disk or an interrupt, what was there is left as it was, and no other file stays behind.
"""

from __future__ import annotations

import errno
import os
import secrets
import stat
from contextlib import suppress
from pathlib import Path

from speclint.errors import OutputError
from speclint.repository.regular_files import called

_NEW = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0) | getattr(os, "O_NOFOLLOW", 0)
_NO_SUCH_CALL = (
    errno.EINVAL,
    errno.ENOSYS,
    errno.ENOTSUP,
)  # a file system that cannot be told to write at once


def replace_file(path: Path, content: bytes) -> None:
    """Write a file, in place of the regular file that may be there; a link is not followed.

    :raises OutputError: for a link, a folder, a pipe, a socket or a device, and where the file cannot be written: then
        what was there is left as it was.
    """
    try:
        before = _what_is_there(path)
        part = path.with_name(f".speclint-{secrets.token_hex(8)}.part")
        try:
            _write(part, content)
            if before is not None:
                _keep_access(part, before)
            os.replace(part, path)
        finally:
            with suppress(OSError):
                part.unlink()  # which is there no more where it took its place
        _sync_folder(path.parent)
    except OSError as problem:
        said = problem.strerror or problem
        left = "; what was there is left as it was" if path.is_file() else ""
        raise OutputError(f"{path}: cannot be written: {said}{left}") from problem


def _what_is_there(path: Path) -> os.stat_result | None:
    try:
        before = os.lstat(path)
    except FileNotFoundError:
        return None
    if what := called(before.st_mode):
        raise OutputError(f"{path}: cannot be written: this is {what}; give the name of a file")
    if not os.access(path, os.W_OK):
        raise PermissionError(errno.EACCES, "the file is read-only")
    return before


def _write(part: Path, content: bytes) -> None:
    with os.fdopen(os.open(part, _NEW, 0o666), "wb") as file:
        file.write(content)
        file.flush()
        _sync(file.fileno())


def _keep_access(part: Path, before: os.stat_result) -> None:
    if hasattr(os, "chown"):
        with suppress(OSError):  # the group of others, where this person may not give it
            os.chown(part, -1, before.st_gid)
    os.chmod(part, stat.S_IMODE(before.st_mode))


def _sync(descriptor: int) -> None:
    try:
        os.fsync(descriptor)
    except OSError as problem:
        if problem.errno not in _NO_SUCH_CALL:
            raise


def _sync_folder(folder: Path) -> None:
    """Write the new name of the file onto the disk, on platforms that have this for folders."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    with suppress(OSError):  # the file is whole, and in its place
        descriptor = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
