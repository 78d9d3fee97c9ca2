"""The index of a design: of each spec its kind, its links and its drawing number, and what can be told from these.

Questions about the repository as a whole are answered from it, so that no spec need be read for them.
"""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Collection, Iterator, Mapping
from functools import cache, cached_property
from typing import Any

from msgspec import Struct

from speclint.errors import Location
from speclint.specs import Component, Link, MadePart, Spec, Stated, as_filed, old_keys_in

_UNDER = ("cylinder-block", "engine")


class Indexed(Struct, frozen=True):
    """What the index says of a spec.

    ``words`` are those of its kind and of the kinds that it is built on, ``classes`` the classes of these in full.
    ``drawing`` is None where none is stated, and for what is no component; ``of_several`` tells whether its file
    states other parts too. ``drawing_file`` is the file of its drawing, None where none is named. ``of_old_keys`` tells
    whether it states a key by an old name. ``certified`` are the number and the heat of the certificate of a part as
    made, each behind its key: "heat H-2907". ``title`` is that of a component which it does not take over.
    """

    id: str
    words: tuple[str, ...]
    classes: tuple[str, ...]
    is_component: bool
    stated: tuple[Link[Any], ...]
    drawing: str | None = None
    of_several: bool = False
    drawing_file: str | None = None
    of_old_keys: bool = False
    certified: tuple[str, ...] = ()
    title: str | None = None

    @property
    def kind(self) -> str:
        """The word of its kind."""
        return self.words[0]

    def links(self) -> Iterator[Link[Any]]:
        """Every link that it states, in the order of the fields."""
        return iter(self.stated)

    def is_one_of(self, kinds: Collection[str]) -> bool:
        """Whether its kind, or one that it is built on, is among some."""
        return any(word in kinds for word in self.words)


def indexed(spec: Spec) -> Indexed:
    """What the index says of a spec that was read."""
    kind = type(spec)
    component = isinstance(spec, Component)
    number = spec.drawing.value if component and isinstance(spec.drawing, Stated) else None
    named = spec.drawing_file if isinstance(spec, Component) else None
    file = named.value if isinstance(named, Stated) else None
    several = len(spec.each) > 1
    links, old = tuple(spec.links()), any(True for _ in old_keys_in(spec))
    certified, title = tuple(_certified(spec)), _own_title(spec)
    return Indexed(
        spec.id, kind.words(), _classes(kind), component, links, number, several, file, old, certified, title
    )


def _own_title(spec: Spec) -> str | None:
    if isinstance(spec, Component) and isinstance(spec.title, Stated):
        return spec.title.value if spec.title.where.file == spec.where.file else None
    return None


def _certified(spec: Spec) -> Iterator[str]:
    if isinstance(spec, MadePart):
        for key, value in (("number", spec.certificate.number), ("heat", spec.certificate.heat)):
            if isinstance(value, Stated):
                yield f"{key} {value.value}"


def linked_at(entry: Indexed | None) -> list[tuple[str, str]] | None:
    """The id that each link of a spec names, with the key that names it; None where there is no such spec."""
    return None if entry is None else [(link.id, link.where.key) for link in entry.links()]


@cache
def _classes(kind: type[Spec]) -> tuple[str, ...]:
    return tuple(f"{one.__module__}:{one.__qualname__}" for one in kind.__mro__)


class Index:
    """The index of a design. ``specs`` are those that it is of, ``cut`` the places of links that close a loop."""

    def __init__(self, specs: Mapping[str, Spec], cut: frozenset[Location]) -> None:
        self.specs, self.cut = specs, cut
        self.entries: Mapping[str, Indexed] = getattr(specs, "index", None) or {
            name: indexed(spec) for name, spec in specs.items()
        }
        self._leads: dict[tuple[str, tuple[str, ...]], bool] = {}
        linking: dict[str, list[str]] = {}
        self._drawn: dict[str, list[str]] = {}
        self._certified: dict[str, list[str]] = {}
        for name in sorted(self.entries):
            entry = self.entries[name]
            if entry.is_component:
                for target in sorted({link.id for link in entry.stated if self.leads(link)}):
                    linking.setdefault(target, []).append(name)
            if entry.drawing is not None:
                self._drawn.setdefault(as_filed(entry.drawing), []).append(name)
            for words in entry.certified:
                self._certified.setdefault(as_filed(words), []).append(name)
        self._linking = {name: tuple(parts) for name, parts in linking.items()}

    def leads(self, link: Link[Any]) -> bool:
        """Whether a link leads to a spec that could be read, of a right kind, and closes no loop."""
        key = link.id, link.kinds
        found = self._leads.get(key)
        if found is None:
            entry = self.entries.get(link.id)
            found = self._leads[key] = entry is not None and entry.is_one_of(link.kinds)
        return found and not (self.cut and link.where in self.cut)

    def linking_to(self, name: str) -> tuple[str, ...]:
        """The components that state a link to a spec, in the order of their ids."""
        return self._linking.get(name, ())

    def of_drawing(self, number: str) -> tuple[str, ...]:
        """The components that state a drawing number, in small or large letters, in the order of their ids."""
        return tuple(self._drawn.get(as_filed(number), ()))

    def certified(self, key: str, word: str) -> tuple[str, ...]:
        """The parts as made whose certificate states a number or a heat, in the order of their ids."""
        return tuple(self._certified.get(as_filed(f"{key} {word}"), ()))

    def called(self, words: str) -> tuple[str, ...]:
        """The components that some words call by id, drawing number or title, in the order of their ids.

        The words may stand in any order; what stands between them, and small or large letters, tell no two apart.
        """
        return tuple(self._called.get(_in_any_order(words), ()))

    @cached_property
    def _called(self) -> dict[str, dict[str, None]]:
        """The components by the words that call them; made when it is first asked, as few runs do."""
        found: dict[str, dict[str, None]] = {}
        for name, entry in sorted(self.entries.items()):
            for called in (name, entry.drawing, entry.title) if entry.is_component else ():
                if called is not None:
                    found.setdefault(_in_any_order(called), {})[name] = None
        return found

    def left_over(self) -> tuple[str, ...]:
        """The specs that are no components, such as duties, and that nothing links to."""
        used = {link.id for entry in self.entries.values() for link in entry.stated}
        others = (name for name in sorted(self.entries) if not self.entries[name].is_component)
        return tuple(name for name in others if name not in used)

    def way_to(self, name: str, kinds: Collection[str]) -> tuple[str, frozenset[str]]:
        """The nearest component of some kinds to which a chain of links joins another, whichever way they lead.

        With those on the way there; where there is none, "" and all that links join to the component.
        """
        before: dict[str, str] = {name: ""}
        waiting = deque([name])
        while waiting:
            part = waiting.popleft()
            if self.entries[part].is_one_of(kinds):
                return part, frozenset(_way(part, before))
            for one in (*self._linked(part), *self.linking_to(part)):
                if one not in before:
                    before[one] = part
                    waiting.append(one)
        return "", frozenset(before)

    def listed_under(self, name: str) -> tuple[str, frozenset[str]]:
        """The id under which what is still to be drawn of a component is listed, and the ids that say so."""
        seen, waiting = {name}, deque([name])
        while waiting:
            part = waiting.popleft()
            if self.entries[part].is_one_of(_UNDER):
                return part, frozenset(seen)
            further = [one for one in self._linked(part) if one not in seen]
            seen.update(further)
            waiting.extend(further)
        return name, frozenset(seen)

    def _linked(self, name: str) -> list[str]:
        """The components that one is linked to."""
        return [
            link.id
            for link in self.entries[name].stated
            if self.leads(link) and self.entries[link.id].is_component
        ]


def _way(name: str, before: Mapping[str, str]) -> Iterator[str]:
    """The ids on the way to one, from where it was set out for."""
    while name:
        yield name
        name = before[name]


def _in_any_order(words: str) -> str:
    return " ".join(sorted(re.findall(r"[^\W_]+", words.casefold())))
