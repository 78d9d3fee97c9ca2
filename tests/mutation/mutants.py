"""One number corrupted, and what that is called in a report."""

from __future__ import annotations

from dataclasses import dataclass

#: Every number is multiplied by this.
FACTOR = 1.02


@dataclass(frozen=True)
class Mutant:
    """A number of a file, multiplied.

    Fields:
        file: relative to the root, with slashes.
        line: where the number stands.
        order: of the number among those of the file that may be corrupted.
        original: the number.
        code: the line it stands in.
        function: first line of the function that it stands in; 0 for a number at the level of the module, for a
            default, and for a cell of a table.
    """

    file: str
    line: int
    order: int
    original: float
    code: str
    function: int = 0

    @property
    def corrupted(self) -> float:
        """The number as it is put in; still an integer where it comes out as one."""
        return corrupted(self.original)

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.original!r} -> {self.corrupted!r}   {self.code}"


def corrupted(value: float) -> float:
    """The number times 1.02, rounded to the digits that a float holds anyway."""
    changed = float(f"{value * FACTOR:.15g}")
    return int(changed) if isinstance(value, int) and changed.is_integer() else changed
