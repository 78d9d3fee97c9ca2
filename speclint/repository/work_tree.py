"""The revision of git that a design was checked at, and which of its files differ from it."""

from __future__ import annotations

import hashlib
from collections.abc import Collection, Iterator
from pathlib import Path

from msgspec import Struct

from speclint.errors import RevisionError
from speclint.repository.drawing_files import with_line_ends_of_git
from speclint.repository.regular_files import blocks_of, not_regular
from speclint.repository.revisions import Snapshot, at_revision, commit_of
from speclint.repository.toml_files import is_toml

_SHA_1 = 40  # digits of its digest; a repository of git names its objects by it or by SHA-256


class WorkTree(Struct, frozen=True):
    """A commit, "" before the first one, and the files that are not in it as they lie in the folder, by name."""

    commit: str
    changed: tuple[str, ...]


def work_tree(root: Path, read: Collection[str]) -> WorkTree | None:
    """The commit of a folder, and how its TOML files and what else was read differ; None where git has no answer.

    ``read`` are files relative to the root. Contents are compared by the digests under which git keeps them, so that
    nothing which the repository configures is run; line ends of Windows make no difference.
    """
    try:
        commit = commit_of(root, "HEAD")
        known = at_revision(root, commit) if commit else Snapshot(root, "", {})
    except RevisionError:
        return None
    files = {file for file in known.blobs if is_toml(file)} | set(read)
    return WorkTree(commit or "", tuple(sorted(_changed(root, files, known))))


def _changed(root: Path, files: Collection[str], known: Snapshot) -> Iterator[str]:
    for file in files:
        blob = known.blobs.get(file)
        try:
            there = not not_regular(root, file) and (root / file).is_file()
            kept = blob is not None and there and blob.name in _names(root / file, len(blob.name))
        except OSError:
            there = kept = False
        if not kept and (there or blob is not None):
            yield file


def _names(path: Path, digits: int) -> Iterator[str]:
    """The names that git can give a content: as it is, and with the line ends that it keeps; read in blocks."""
    for line_ends in (iter, with_line_ends_of_git):
        size = sum(len(block) for block in line_ends(blocks_of(path)))
        name = hashlib.sha1(usedforsecurity=False) if digits == _SHA_1 else hashlib.sha256()
        name.update(b"blob %d\0" % size)
        for block in line_ends(blocks_of(path)):
            name.update(block)
        yield name.hexdigest()
