"""What a check rests on with its parts and places renamed in the order in which they are met.

Two checks of one rule whose inputs are then the same were made of the same values on parts that are wired alike: the
findings are those of parts alike. Only names are replaced, and each name by its own number, never a value.
"""

from __future__ import annotations

import re
from collections.abc import Set

_WORD = re.compile(r"[^\s,;:()'\"]+")


class Renaming:
    """The numbers that stand for the ids of parts, and for the names of places, in the order in which they are met."""

    def __init__(self, ids: Set[str]) -> None:
        self._ids = ids
        self._parts: dict[str, str] = {}
        self._places: dict[str, str] = {}

    @property
    def met(self) -> tuple[str, ...]:
        """The ids that have a number, in its order."""
        return tuple(self._parts)

    def part(self, name: str) -> str:
        """What stands for the id of a part."""
        return self._parts.setdefault(name, f"part {len(self._parts) + 1}")

    def place(self, name: str) -> str:
        """What stands for the name of a place that a part states as its own."""
        return self._places.setdefault(name, f"place {len(self._places) + 1}")

    def key(self, key: str) -> str:
        """A dotted key, with the names in it replaced."""
        return ".".join(self._step(step) for step in key.split("."))

    def text(self, text: str) -> str:
        """A text with the ids in it replaced, where they stand as words of their own."""
        if self._ids.isdisjoint(_WORD.findall(text)):  # most name no part, and this is asked often
            return text
        return _WORD.sub(lambda found: self._step(found[0]) if found[0] in self._ids else found[0], text)

    def _step(self, step: str) -> str:
        if step in self._ids:
            return self.part(step)
        return self._places.get(step, step)
