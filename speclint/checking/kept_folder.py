"""Results of earlier runs in a folder of the user's own: written whole, checked when read, and never more than so many.

Nothing is taken from a folder that another may write to; where a file is damaged, it is as if it were not there.
"""

from __future__ import annotations

import os
import stat
from contextlib import suppress
from hashlib import blake2b
from pathlib import Path

#: Bytes that the folder may hold: some fifty states of a design of a hundred parts.
_MOST = 256 * 2**20
_MAGIC = b"speclint kept 2\n"
_DIGEST = 20


def usual_folder() -> Path:
    """Where the system wants what a program can make anew."""
    from platformdirs import user_cache_path

    return user_cache_path("speclint", appauthor=False) / "results"


class KeptFolder:
    """Files by name. A folder that cannot be used, or that is not the user's alone, keeps nothing.

    Each file has a digest of its content and of its name, so that one is never taken for another.
    """

    def __init__(self, folder: Path, most: int = _MOST) -> None:
        self._folder, self._most, self._written = folder, most, False
        self.why_not = _why_not(folder)

    def read(self, name: str) -> bytes | None:
        """What was kept under a name; None where there is none, or it is damaged."""
        if self.why_not:
            return None
        try:
            content = (self._folder / name).read_bytes()
        except OSError:
            return None
        body = content[len(_MAGIC) + _DIGEST :]
        if content[: len(_MAGIC) + _DIGEST] != _MAGIC + _digest(name, body):
            return None
        with suppress(OSError):  # what is used is kept the longest
            os.utime(self._folder / name)
        return body

    def write(self, name: str, body: bytes) -> None:
        """Keep something under a name, whole or not at all; where there is no room, nothing is kept."""
        if self.why_not:
            return
        import secrets  # only where something is written

        part = self._folder / f"{secrets.token_hex(8)}.part"
        try:
            part.write_bytes(_MAGIC + _digest(name, body) + body)
            os.replace(part, self._folder / name)
            self._written = True
        except OSError:
            with suppress(OSError):
                part.unlink()

    def tidy(self) -> None:
        """Remove what was used the longest ago, where there is too much."""
        if not self._written:
            return
        with suppress(OSError):
            found = sorted(
                ((one.stat().st_mtime, one.stat().st_size, one.path) for one in os.scandir(self._folder)),
                reverse=True,
            )
            left = self._most
            for _, size, path in found:
                left -= size
                if left < 0:
                    with suppress(OSError):  # another run may have removed it
                        os.unlink(path)


def _why_not(folder: Path) -> str:
    """Why nothing is kept in a folder; "" where it can be used. It is made where it is not there."""
    try:
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        state = os.stat(folder)
    except OSError as problem:
        return f"{folder}: {problem.strerror or problem}"
    if not hasattr(os, "geteuid"):  # Windows: a folder of the user's profile is the user's
        return ""
    if state.st_uid != os.geteuid() or state.st_mode & (stat.S_IWGRP | stat.S_IWOTH):
        return f"{folder}: others may write to this folder"
    return ""


def _digest(name: str, body: bytes) -> bytes:
    return blake2b(name.encode() + b"\0" + body, digest_size=_DIGEST).digest()
