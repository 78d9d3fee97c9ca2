"""The index of a repository kept between runs, by the bytes of its files, so that an unchanged file is not read again.

It is kept only of a repository in which everything could be read and fits together. What an entry rests on beside its
own file is kept with it: that of the spec that it takes over from, and those of its neighbours that it was held
against. Where any of these has changed, the spec is read again.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from hashlib import blake2b
from typing import Any, Protocol, TypeAlias

from msgspec import Struct

from speclint.errors import Location
from speclint.repository.digests import State
from speclint.repository.index import Index, Indexed
from speclint.repository.neighbours import HeldAgainst
from speclint.specs import Link

#: Of each file its digest, and what is kept of each of its specs.
Kept: TypeAlias = dict[str, tuple[str, list["Row"]]]


class Shelf(Protocol):
    """Where something can be kept between runs, under a name."""

    def read(self, name: str) -> bytes | None:
        """What was kept; None where there is none."""

    def write(self, name: str, body: bytes) -> None:
        """Keep something."""


class Remembered(Struct, frozen=True):
    """Where the index is kept between runs, and the digest of the code that makes it."""

    shelf: Shelf
    code: str

    def read(self, name: str, left_out: Iterable[str]) -> Kept | None:
        """The index kept of the repository in a folder of some name."""
        body = self.shelf.read(self._called(name, left_out))
        if body is None:
            return None
        kinds, files = json.loads(body)
        return {
            file: (digest, [Row.of(values, kinds) for values in rows])
            for file, (digest, rows) in files.items()
        }

    def write(self, name: str, left_out: Iterable[str], kept: Kept) -> None:
        """Keep the index of the repository in a folder of some name."""
        kinds: dict[str, Any] = {}
        files = {file: (digest, [row.values(kinds) for row in rows]) for file, (digest, rows) in kept.items()}
        body = json.dumps([kinds, files], separators=(",", ":")).encode("utf-8", "backslashreplace")
        self.shelf.write(self._called(name, left_out), body)

    def _called(self, name: str, left_out: Iterable[str]) -> str:
        return digest_of(f"index\0{self.code}\0{' '.join(left_out)}\0{name}".encode("utf-8", "replace"))


def digest_of(content: bytes) -> str:
    """A digest of some bytes."""
    return blake2b(content, digest_size=16).hexdigest()


class Row(Struct, frozen=True):
    """What is kept of one spec.

    ``state`` are the digests of the spec. ``like`` is the id of the spec that it takes over from, ``like_digest`` that
    of the file of this one. ``against`` is what it was held against, and ``seal`` a digest of how that stood.
    """

    entry: Indexed
    like: str
    like_digest: str
    against: HeldAgainst
    seal: str
    state: State

    @classmethod
    def of(cls, values: list[Any], kinds: Mapping[str, Any]) -> Row:
        """A row as it was written."""
        (
            (name, kind, drawing, file, several, old, certified, title, links),
            (like, like_digest),
            against,
            seal,
            state,
        ) = values
        words, classes, component = kinds[kind]
        stated = tuple(_link(*one) for one in links)
        entry = Indexed(
            name,
            tuple(words),
            tuple(classes),
            component,
            stated,
            drawing,
            several,
            file,
            old,
            tuple(certified),
            title,
        )
        specs, linking, asked = against
        held = HeldAgainst(set(specs), set(linking), {tuple(one) for one in asked})
        return cls(entry, like, like_digest, held, seal, State(*state))

    def values(self, kinds: dict[str, Any]) -> list[Any]:
        """The row to be written; what is the same for all of a kind goes to ``kinds``."""
        one, against = self.entry, self.against
        kinds.setdefault(one.kind, (one.words, one.classes, one.is_component))
        links = [(each.id, each.kinds, *_place(each.where)) for each in one.links()]
        entry = [
            one.id,
            one.kind,
            one.drawing,
            one.drawing_file,
            one.of_several,
            one.of_old_keys,
            one.certified,
            one.title,
            links,
        ]
        held = [sorted(against.specs), sorted(against.linking), sorted(against.kinds)]
        state = [self.state.part, dict(self.state.words)]
        return [entry, [self.like, self.like_digest], held, self.seal, state]


def _link(name: str, kinds: list[str], *where: Any) -> Link[Any]:
    return Link(name, tuple(kinds), Location(*where))


def _place(where: Location) -> tuple[str, int, str, str]:
    return where.file, where.line, where.key, where.part


class Seals:
    """How the neighbours of specs stand now, as digests."""

    def __init__(
        self, index: Index, files: Mapping[str, str], digests: Mapping[str, str], alike: Mapping[str, str]
    ) -> None:
        self._index, self._files, self._digests, self._alike = index, files, digests, alike
        self._of_kinds: dict[tuple[str, ...], str] = {}

    def of(self, against: HeldAgainst) -> str:
        """A digest of all that a spec is held against; it is the same while nothing of that changes."""
        return digest_of("\0".join(self._said(against)).encode("utf-8", "backslashreplace"))

    def of_file(self, name: str) -> str:
        """The digest of the file of a spec; "" where there is no such spec."""
        return self._digests.get(self._files.get(name, ""), "")

    def _said(self, against: HeldAgainst) -> Iterator[str]:
        linking = [one for owner in sorted(against.linking) for one in self._index.linking_to(owner)]
        yield " ".join(linking)
        for one in sorted({*against.specs, *linking}):
            yield f"{one}={self.of_file(one)} {self.of_file(self._alike.get(one, ''))}"
        for kinds in sorted(against.kinds):
            yield self._ids_of(kinds)

    def _ids_of(self, kinds: tuple[str, ...]) -> str:
        if kinds not in self._of_kinds:
            ids = sorted(name for name, one in self._index.entries.items() if one.is_one_of(kinds))
            self._of_kinds[kinds] = digest_of("\0".join(ids).encode("utf-8", "backslashreplace"))
        return self._of_kinds[kinds]
