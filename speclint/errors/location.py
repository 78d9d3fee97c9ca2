"""Where something was written: file, line and key."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Location:
    """A place in the design repository. ``file`` is relative to its root, with forward slashes; line 0 is no line."""

    file: str = ""
    line: int = 0
    key: str = ""

    def __hash__(self) -> int:
        """The hash of the key, which nearly always tells places apart: every quantity that is taken is hashed."""
        return hash(self.key)

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}" if self.line else self.file
        return f"{place} {self.key}".strip()


NOWHERE = Location()
