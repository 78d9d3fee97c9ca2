"""The source of a number: a published work, or common practice, marked as such."""

from __future__ import annotations

from msgspec import Struct

from speclint.errors import replace


class Source(Struct, frozen=True):
    """A work in which a formula, a table or a limit is published.

    ``work`` names author and title, ``edition`` the edition or year, ``place`` the clause, table or page.
    ``memory`` is true when the value was recalled from the work and not read in it: reports say so,
    so that someone with the book can confirm it.
    """

    work: str
    edition: str = ""
    place: str = ""
    memory: bool = False

    def at(self, place: str, *, memory: bool | None = None) -> Source:
        """The same work at a clause, table or page."""
        return replace(self, place=place, memory=self.memory if memory is None else memory)

    @property
    def common_practice(self) -> bool:
        """True when no published source is claimed."""
        return self.work == _COMMON_PRACTICE

    def __str__(self) -> str:
        parts = [self.work, self.edition, self.place]
        text = ", ".join(part for part in parts if part)
        return f"{text} (from memory)" if self.memory else text


_COMMON_PRACTICE = "common practice"

#: A fact or a limit of the trade for which no published source is claimed.
COMMON_PRACTICE = Source(_COMMON_PRACTICE)

#: A definition, or plain geometry and statics that need no published source.
FIRST_PRINCIPLES = Source("first principles")
