"""The files of drawings, of any format: each has a digest, and nothing else is taken from it.

A file is read when its digest is first asked for, once, block by block. Of a text the line ends make no difference: git
may keep others than the work tree has.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import chain
from pathlib import Path
from typing import Protocol

from msgspec import Struct

from speclint.errors import RevisionError
from speclint.repository.regular_files import blocks_of, not_regular

_LOOKED_AT = 8000  # bytes in which git looks for a zero, which no text has


class FileState(Struct, frozen=True):
    """The digest of a file by SHA-256, or why it has none: ``fault`` completes the sentence "the file …"."""

    sha256: str = ""
    fault: str = ""


class Source(Protocol):
    """Where the files of a design repository are read."""

    def blocks(self, file: str) -> Iterator[bytes] | str:
        """The content of a file, block by block, or why it is not read."""


class InFolder(Struct, frozen=True):
    """The files as they lie in a folder."""

    root: Path

    def blocks(self, file: str) -> Iterator[bytes] | str:
        """The content of a file that lies in the folder and is a regular one."""
        if what := not_regular(self.root, file):
            return f"is {what}"
        return blocks_of(self.root / file) if os.path.exists(self.root / file) else "is not there"


@dataclass(frozen=True)
class DrawingFiles:
    """The files of the drawings of a design, each read once."""

    source: Source
    _known: dict[str, FileState] = field(default_factory=dict, repr=False, compare=False)

    def state(self, file: str) -> FileState:
        """The digest of a file by its path in the repository, or why there is none."""
        if file not in self._known:
            self._known[file] = self._read(file)
        return self._known[file]

    @property
    def read(self) -> Mapping[str, FileState]:
        """The files that were read so far."""
        return self._known

    def _read(self, file: str) -> FileState:
        blocks = self.source.blocks(file)
        if isinstance(blocks, str):
            return FileState(fault=blocks)
        try:
            return FileState(sha256_of(blocks))
        except OSError as problem:
            return FileState(fault=f"cannot be read: {problem.strerror or problem}")
        except RevisionError as problem:
            return FileState(fault=f"cannot be read: {problem}")


def sha256_of(blocks: Iterable[bytes]) -> str:
    """The digest of a content by SHA-256; of a text with the line ends that git keeps.

    What git takes for a text has no zero among its first bytes: after gitattributes(5).

    >>> sha256_of([b"a\\r", b"\\n"]) == sha256_of([b"a\\n"])
    True
    """
    found = hashlib.sha256()
    for block in _as_git_keeps(iter(blocks)):
        found.update(block)
    return found.hexdigest()


def _as_git_keeps(blocks: Iterator[bytes]) -> Iterator[bytes]:
    first = b""
    for block in blocks:
        first += block
        if len(first) >= _LOOKED_AT:
            break
    if b"\0" in first[:_LOOKED_AT]:
        yield first
        yield from blocks
        return
    yield from with_line_ends_of_git(chain([first], blocks))


def with_line_ends_of_git(blocks: Iterable[bytes]) -> Iterator[bytes]:
    """A text with the line ends that git keeps, block by block."""
    left = b""  # a carriage return at the end of a block, which may belong to a line end
    for block in blocks:
        left, plain = _plain(left + block)
        yield plain
    yield left


def _plain(block: bytes) -> tuple[bytes, bytes]:
    """What is left of a block for the next one, and the block with the line ends of git."""
    left = b"\r" if block.endswith(b"\r") else b""
    return left, block.removesuffix(left).replace(b"\r\n", b"\n")
