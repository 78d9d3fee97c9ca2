"""One change of one file, and what it is called in a report."""

from __future__ import annotations

from dataclasses import dataclass, field

#: Every number that measures is multiplied by this.
FACTOR = 1.02


@dataclass(frozen=True)
class Mutant:
    """A file with one thing changed.

    Fields:
        file: relative to the root, with slashes.
        line: where the change stands.
        order: of the change among all of the file.
        change: what is written before and after, ``"0.3 -> 0.306"``.
        code: the line it stands in.
        block: key of the block of statements that runs it; empty at the level of a module or a class, for a default,
            a decorator, and for a cell of a table.
        again: how many changes of the same name stand before it in lines of the same text.
    """

    file: str
    line: int
    order: int
    change: str
    code: str
    block: str = field(default="", compare=False)
    again: int = 0

    @property
    def function(self) -> str:
        """Key of the function that runs it; empty where there is no block."""
        return self.block.rpartition(":")[0]

    @property
    def package(self) -> str:
        """The package of speclint, or the family, that the file belongs to."""
        return package_of(self.file)

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.change}   {self.code}"


def package_of(file: str) -> str:
    """``speclint/rules`` or ``plugins/speclint_valves``: at most the first two folders of a file."""
    return "/".join(file.split("/")[:-1][:2])


def corrupted(value: float) -> float:
    """The number times 1.02, rounded to the digits that a float holds anyway."""
    changed = float(f"{value * FACTOR:.15g}")
    return int(changed) if isinstance(value, int) and changed.is_integer() else changed
