"""The files of drawings as git has them, read in blocks and never written anywhere."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from speclint.errors import RevisionError
from speclint.repository.revisions import Snapshot


class InGit(Struct, frozen=True):
    """The files as git has them: staged, or at a revision."""

    snapshot: Snapshot

    def blocks(self, file: str) -> Iterator[bytes] | str:
        """The content of a file of which git has more than a link."""
        if file not in self.snapshot.blobs:
            return f"is not there {self.snapshot.called}"
        try:
            return self.snapshot.blocks_of(file)
        except RevisionError as problem:
            return f"is not read: {problem}"
