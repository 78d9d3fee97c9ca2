"""What a check asked of the design, whole: at every corner and in every load case, and what was not there."""

from __future__ import annotations

from msgspec import Struct, field

from speclint.specs import OF_THE_DRAWING as OF_THE_DRAWING


class Consulted(Struct):
    """The specs, the words and the links that were asked for.

    ``specs`` are ids, also of specs that were not there. ``words`` are those of :data:`OF_THE_DRAWING` that were read,
    each with the id of its spec; all else that a spec states counts as read with it. ``linked`` are questions such as
    which piston rings link to a liner: the id of the one, and the class of the others in full. ``opened`` are the
    values that were opened, by file, part and key. ``asked`` are questions put to the whole repository: which
    components state a drawing number (``("drawing", number)``), which some words call by id, drawing number or title
    (``("called", words)``), which are said to be like one (``("alike", id)``),
    which specs nothing uses (``("unused", "")``), and how the drawing of one stands, its file against its readings
    (``("drawing file", id)``).
    """

    specs: set[str] = field(default_factory=set)
    words: set[tuple[str, str]] = field(default_factory=set)
    linked: set[tuple[str, str]] = field(default_factory=set)
    opened: set[tuple[str, str, str]] = field(default_factory=set)
    asked: set[tuple[str, str]] = field(default_factory=set)

    @property
    def ids(self) -> set[str]:
        """The specs of which anything was asked."""
        return self.specs | {name for name, _ in self.words} | {name for name, _ in self.linked}

    def add(self, other: Consulted) -> None:
        """Add what another asked."""
        self.specs |= other.specs
        self.words |= other.words
        self.linked |= other.linked
        self.opened |= other.opened
        self.asked |= other.asked


def class_in_full(kind: type) -> str:
    """A class by its module and name, by which it is found again."""
    return f"{kind.__module__}:{kind.__qualname__}"
