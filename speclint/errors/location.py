"""Where something was written: file, line and key."""

from __future__ import annotations

from msgspec import Struct


class Location(Struct, frozen=True):
    """A place in the design repository. ``file`` is relative to its root, with forward slashes; line 0 is no line.

    ``part`` is the id of the part of which the place is read, where the file alone does not tell: one file may state
    several parts, and a part may take over what the file of another states.
    """

    file: str = ""
    line: int = 0
    key: str = ""
    part: str = ""

    def __hash__(self) -> int:
        """The hash of the key, which nearly always tells places apart: every quantity that is taken is hashed."""
        return hash(self.key)

    @property
    def drawn(self) -> Location:
        """The place on the drawing alone, whichever part is read there."""
        return Location(self.file, self.line, self.key) if self.part else self

    def at(self, key: str) -> Location:
        """The same place under another key."""
        return Location(self.file, self.line, key, self.part)

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}" if self.line else self.file
        return f"{place} {self.key}".strip()


NOWHERE = Location()
