"""How grave a finding is."""

from __future__ import annotations

from enum import IntEnum


class Grade(IntEnum):
    """The grade of a finding: the greater, the more serious."""

    OBSERVATION = 1
    QUERY = 2
    NONCONFORMITY = 3
    HOLD = 4

    @property
    def word(self) -> str:
        """The grade as reports and settings write it."""
        return self.name.lower()
