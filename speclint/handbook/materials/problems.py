"""Complaints about a file of materials: all of them at once, each with its place and what to write."""

from __future__ import annotations

import re
from collections.abc import Sequence

from speclint.errors import SpeclintError

_HEADER = re.compile(r"^\s*\[\[?\s*(?P<key>[^\]]+?)\s*\]\]?\s*(#.*)?$")
_KEY = re.compile(r"^\s*(?P<key>[A-Za-z0-9_.\"'-]+)\s*=")


class MaterialsError(SpeclintError):
    """A file of materials that cannot be used; one line a problem.

    ``problems`` holds them one by one, each beginning with its place: file, line and key.
    """

    def __init__(self, problems: Sequence[str]) -> None:
        super().__init__("\n".join(problems))
        self.problems = tuple(problems)


class Complaints:
    """The problems found so far in one file."""

    def __init__(self, origin: str, text: str = "") -> None:
        self.origin = origin
        self._lines = text.splitlines()
        self._found: list[tuple[int, str]] = []

    def add(self, key: Sequence[str], message: str) -> None:
        """Record a problem at a key."""
        line = self._line(tuple(key))
        place = f"{self.origin}:{line}" if line else self.origin
        where = f" [{'.'.join(key)}]" if key else ""
        self._found.append((line, f"{place}:{where} {message}"))

    def raise_if_any(self) -> None:
        """Raise MaterialsError with everything recorded, in the order of the file."""
        if self._found:
            raise MaterialsError([message for _, message in sorted(self._found, key=lambda one: one[0])])

    def _line(self, key: tuple[str, ...]) -> int:
        """Line of the key, or of the nearest table around it that is written out; 0 when there is none."""
        best, length = 0, 0
        table: tuple[str, ...] = ()
        for number, line in enumerate(self._lines, start=1):
            header = _HEADER.match(line)
            written = header or _KEY.match(line)
            if written is None:
                continue
            path = _path(written["key"])
            if header:
                table = path
            full = path if header else table + path
            if len(full) > length and key[: len(full)] == full:
                best, length = number, len(full)
        return best


def _path(written: str) -> tuple[str, ...]:
    """A dotted key as TOML writes it, cut at its dots outside quotes."""
    parts = re.findall(r"\"[^\"]*\"|'[^']*'|[^.\s]+", written)
    return tuple(part.strip("\"'") for part in parts)
