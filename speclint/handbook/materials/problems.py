"""Complaints about a file of materials: all of them at once, each with its place and what to write."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from speclint.errors import Complaint, Location, Path, SpeclintError, locate


class MaterialsError(SpeclintError):
    """A file of materials that cannot be used: ``complaints`` holds every problem, with its place."""

    def __init__(self, complaints: Sequence[Complaint]) -> None:
        super().__init__("\n".join(map(str, complaints)))
        self.complaints = tuple(complaints)

    @property
    def problems(self) -> tuple[str, ...]:
        """The complaints as lines."""
        return tuple(map(str, self.complaints))


class Complaints:
    """The problems found so far in one file, each reported once."""

    def __init__(self, origin: str, text: str = "") -> None:
        self._origin = origin
        self._text = text
        self._found: dict[Complaint, None] = {}

    def add(self, path: Path, message: str, write: str = "") -> None:
        """Record a problem at a key, and what to write instead."""
        self._found[Complaint(Location(self._origin, self._line(path), dotted(path)), message, "", write)] = (
            None
        )

    def raise_if_any(self) -> None:
        """Raise MaterialsError with everything recorded, in the order of the file."""
        if self._found:
            raise MaterialsError(sorted(self._found, key=lambda complaint: complaint.order))

    def _line(self, path: Path) -> int:
        """Line of the key, or of the nearest key around it that is written out; 0 when there is none."""
        for length in range(len(path), 0, -1):
            if path[:length] in self._lines:
                return self._lines[path[:length]]
        return 0

    @cached_property
    def _lines(self) -> dict[Path, int]:
        return locate(self._text.replace("\r\n", "\n"))


def dotted(path: Path) -> str:
    """A path of keys as TOML writes it; the tables of an array are counted from 1.

    >>> dotted(("bolting-8.8", "proof-stress", 0))
    '"bolting-8.8".proof-stress[1]'
    """
    parts = [
        f"[{step + 1}]" if isinstance(step, int) else f'."{step}"' if "." in step else f".{step}"
        for step in path
    ]
    return "".join(parts).removeprefix(".")
