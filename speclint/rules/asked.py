"""What the sheets of one check asked for, over all corners and load cases: what a part alike is compared by."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.specs import Component


@dataclass(slots=True)
class Asked:
    """What was asked for.

    ``values`` are the values that were opened, by the identity of their places, which live as long as the specs;
    ``followed`` the ids to which links led; ``queried`` the parts of which it was asked what belongs to them, and of
    what kind. ``everything`` where more was asked than can be told, such as how other checks came out.
    """

    values: set[int] = field(default_factory=set)
    followed: set[str] = field(default_factory=set)
    queried: set[tuple[str, type[Component]]] = field(default_factory=set)
    everything: bool = False

    def clear(self) -> None:
        """Forget it, before another check."""
        self.values.clear()
        self.followed.clear()
        self.queried.clear()
        self.everything = False

    def copy(self) -> Asked:
        """The same, to be kept."""
        return Asked(set(self.values), set(self.followed), set(self.queried), self.everything)
