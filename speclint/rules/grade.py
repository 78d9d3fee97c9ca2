"""How grave a finding is."""

from __future__ import annotations

from enum import IntEnum, auto


class Grade(IntEnum):
    """The grade of a finding: the greater, the more serious."""

    OBSERVATION = auto()
    QUERY = auto()
    NONCONFORMITY = auto()
    HOLD = auto()

    @property
    def word(self) -> str:
        """The grade as reports and settings write it."""
        return self.name.lower()
