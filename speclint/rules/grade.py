"""How grave a finding is."""

from __future__ import annotations

from enum import IntEnum


class Grade(IntEnum):
    """How grave a finding is: the greater, the graver."""

    OBSERVATION = 1
    QUERY = 2
    NONCONFORMITY = 3
    HOLD = 4

    @property
    def word(self) -> str:
        """The grade as reports and settings write it."""
        return self.name.lower()
