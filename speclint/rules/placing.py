"""What fills a place of a design, found through a sheet, so that what was there and what was not is on record."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any, Literal, TypeVar, cast

from msgspec import Struct

from speclint.errors import NOWHERE, Location
from speclint.rules.asked import Asked
from speclint.rules.consulted import class_in_full
from speclint.rules.context import Context
from speclint.rules.judgement import NotAssessed, Unread
from speclint.rules.record import STATED, Record
from speclint.specs import CASE_NAMES, Component, Link, MadePart, Spec, SpecTable, Stated, fields_of

if TYPE_CHECKING:
    from speclint.repository import Design, DrawingState

C = TypeVar("C", bound=Component)
T = TypeVar("T", bound=SpecTable)


class PlaceSeen(Struct, frozen=True):
    """A place that a rule looked at: what belongs in it, whether it is there, and where the place is known from."""

    called: str
    filled: bool
    where: Location = NOWHERE


class Placing:
    """The part of a sheet that looks for what fills a place, and under what it is listed while it is empty."""

    _component: Component
    _context: Context
    _record: Record | None
    _asked: Asked
    _unread: dict[str, None]

    def drawing_read(self) -> DrawingState | None:
        """How the file of the component's drawing stands against its last reading; None where it names no file."""
        self._asked.everything = True  # the file and the register are no part of a spec
        self._context.consulted.asked.add(("drawing file", self._component.id))
        found = self._context.drawing(self._component)
        if self._record and found:
            self._record.note("drawing file", repr(found.rests_on), shown=found.word)
            self._record.word(f"drawing file {found.file}", found.word)
        return found

    def fillers(
        self, owner: Spec, kind: type[C], *, by: str | Sequence[str], named: tuple[str, str] | None = None
    ) -> tuple[C, ...]:
        """The components of a kind that lead to a spec by a link, or by one of several, in the order of their ids.

        ``by`` are the keys of the links, dotted where they stand in a table; a star stands for every entry:
        "housed_in", "grooves.*.takes". ``named`` asks beside it for the name of an entry that the component states
        under a key: ``("in_bore", "left")``. It is on record which are there, and that nothing is, and which file that
        could not be read may hold one.
        """
        keys = (by,) if isinstance(by, str) else tuple(by)
        self._asked.everything = True
        linking = self._context.design.linking_of(owner, kind)
        self._context.consulted.specs.update(part.id for part in linking)
        self._context.consulted.linked.add((owner.id, class_in_full(kind)))
        found = tuple(
            part
            for part in linking
            if any(link.id == owner.id for key in keys for link in links_under(part, key))
            and (named is None or self._names(part, *named))
        )
        named_too = named[1:] if named else ()
        self._unread.update(dict.fromkeys(self._context.design.unread_linking(owner, kind, *named_too)))
        if self._record:
            ids = [part.id for part in found]
            place = f"{owner.id} {named[1]}" if named else owner.id
            note = f"{kind.kind} at {place} by {', '.join(keys)}"
            alike = " ".join(self._record.renaming.part(one) for one in (owner.id, *ids))
            self._record.note(note, repr(ids), shown=", ".join(ids) or "none", alike=alike)
        return found

    def filled(
        self, owner: Spec, kind: type[C], *, by: str | Sequence[str], named: tuple[str, str] | None = None
    ) -> C:
        """The one component that fills a place, as ``fillers`` finds it. Ends the rule where there is none, or several.

        :raises NotAssessed: with the files of all where there are several.
        """
        found = self.fillers(owner, kind, by=by, named=named)
        if len(found) == 1:
            return found[0]
        place = f"{named[1]} of {owner.id}" if named else owner.id
        if not found:
            self.require_read(self.unread_fillers())
            raise NotAssessed(f"no {kind.called or kind.kind} is drawn for {place}", owner.where)
        files = " and ".join(f"{one.id} ({one.where.file})" for one in found)
        raise NotAssessed(f"{place} is filled {len(found)} times: {files}", found[-1].where)

    def leading_to(
        self, target: Spec, kind: type[T], owner: Spec, table: str, *, by: str, called: str
    ) -> tuple[tuple[str, T], ...]:
        """The entries of a named table of a spec that lead to another by a link, each with its name: the cranks of an
        engine that a block turns.

        ``by`` is the key of the link, and ``called`` what a sheet calls an entry. An entry without the link leads
        nowhere. Asked so, a check depends on those entries alone, and is worked once for parts alike to which other
        entries lead: the names are for words, and nothing may be judged by them.

        :raises NotAssessed: where a link leads to a spec that could not be read.
        """
        self._asked.leading.add((owner.id, table, by, target.id))
        found = []
        for name, entry in entries_of(owner, table, kind).items():
            link = fields_of(entry)[by]
            self._note_stated(f"{by} of {called} {name}", link.where, isinstance(link, Link))
            if isinstance(link, Link):
                self._context.consulted.specs.add(link.id)
                self._note_link(link)
                if self._context.design.follow(link) is None:
                    self._asked.everything = True  # what cannot be read stands for no other part
                    raise no_spec_at(link, self._context.design)
                if link.id == target.id:
                    found.append((name, entry))
        return tuple(found)

    def unread_fillers(self) -> tuple[str, ...]:
        """The files that could not be read and may hold what ``fillers`` was asked for."""
        return tuple(self._unread)

    def require_read(self, files: Sequence[str]) -> None:
        """End the rule where there are files that could not be read, and may hold what it looks for.

        :raises NotAssessed: naming the files.
        """
        if files:
            raise not_read(files)

    def joined_to(self, component: Component, *words: str) -> bool:
        """Whether a chain of links joins a component to one of some kinds, by their words, whichever way it leads.

        :raises NotAssessed: where none does, and a file that could not be read may be on the way.
        """
        return self.nearest(component, *words) is not None

    def nearest(self, component: Component, *words: str) -> Component | None:
        """The nearest component of some kinds, by their words, to which a chain of links joins another; or none.

        :raises NotAssessed: as ``joined_to``.
        """
        self._asked.everything = True
        found, way = self._context.design.way_to(component, words)
        self._context.consulted.specs.update(way)
        if found is None:
            self.require_read(self._context.design.unread_on_way(way))
            self._context.consulted.linked.update((name, class_in_full(Component)) for name in way)
        if self._record:
            said = "yes" if found else "no"
            self._record.note(f"{component.id} joined to a {' or '.join(words)}", said)
        return found

    def sharing_drawing(self, component: Component) -> tuple[Component, ...]:
        """The other components of the repository that state the drawing number of one.

        :raises NotAssessed: where a file that could not be read may state it.
        """
        if not isinstance(component.drawing, Stated):
            return ()
        return self._on_drawing(
            component.drawing.value, f"others on drawing {component.drawing.value}", component.id
        )

    def on_drawing(self, number: str) -> tuple[Component, ...]:
        """The components of the repository that state a drawing number.

        :raises NotAssessed: where a file that could not be read may state it.
        """
        return self._on_drawing(number, f"on drawing {number}")

    def _on_drawing(self, number: str, name: str, but: str = "") -> tuple[Component, ...]:
        self._asked.everything = True
        self._context.consulted.asked.add(("drawing", number))
        found = tuple(one for one in self._context.design.of_drawing(number) if one.id != but)
        self._context.consulted.specs.update(one.id for one in found)
        self.require_read(self._context.design.unread_naming(number))
        if self._record:
            ids = [one.id for one in found]
            self._record.note(name, repr(ids), shown=", ".join(ids) or "none")
        return found

    def sharing_certificate(self, made: MadePart, key: Literal["number", "heat"]) -> tuple[MadePart, ...]:
        """The other parts as made whose certificate states the number, or the heat, of that of one.

        :raises NotAssessed: where a file that could not be read may state it.
        """
        own = made.certificate.number if key == "number" else made.certificate.heat
        if not isinstance(own, Stated):
            return ()
        self._asked.everything = True
        design = self._context.design
        self._context.consulted.asked.add((key, own.value))
        found = tuple(one for one in design.certified(key, own.value) if one.id != made.id)
        self._context.consulted.specs.update(one.id for one in found)
        self.require_read(design.unread_naming(own.value))
        if self._record:
            ids = [one.id for one in found]
            self._record.note(f"others of {key} {own.value}", repr(ids), shown=", ".join(ids) or "none")
        return cast("tuple[MadePart, ...]", found)

    def called(self, words: str) -> tuple[Component, ...]:
        """The components of the repository that some words call by id, drawing number or title.

        A file that could not be read is told by itself: what it holds is called by no words.
        """
        self._asked.everything = True
        self._context.consulted.asked.add(("called", words))
        found = self._context.design.called(words)
        self._context.consulted.specs.update(one.id for one in found)
        if self._record:
            ids = [one.id for one in found]
            self._record.note(f"called {words}", repr(ids), shown=", ".join(ids) or "none")
        return found

    def left_over(self) -> tuple[Spec, ...]:
        """The duties and outlines of the repository that nothing uses.

        :raises NotAssessed: where a file that could not be read may use one of them.
        """
        self._asked.everything = True
        found = self._context.design.left_over()
        self._context.consulted.asked.add(("unused", ""))
        self._context.consulted.specs.update(one.id for one in found)
        self.require_read(self._context.design.unread_naming(*(one.id for one in found)))
        if self._record:
            ids = [one.id for one in found]
            self._record.note("used by nothing", repr(ids), shown=", ".join(ids) or "none")
        return found

    def cases_of(self, component: Component) -> tuple[str, ...]:
        """The load cases of the duty that a component sees; none where it sees no duty.

        :raises NotAssessed: where its duty, or a part on the way to it, could not be read.
        """
        self._asked.everything = True
        design = self._context.design
        duty, way = design.duty_of(component)
        self._context.consulted.specs |= way
        if duty is None:
            self.require_read(design.unread_among(way))
        found = () if duty is None else tuple(name for name in CASE_NAMES if name in duty.cases)
        if self._record:
            self._record.note(f"load cases of {component.id}", repr(found), shown=", ".join(found) or "none")
        return found

    def cases_at(self, component: Component) -> Location:
        """Where the duty stands that a component sees, else the component: to be looked at, and nothing rests on it."""
        duty, way = self._context.design.duty_of(component)
        self._context.consulted.specs |= way
        return component.where if duty is None else duty.where

    def note_place(self, called: str, *, filled: bool, where: Location) -> None:
        """Put a place on record, for the list of what is still to be drawn."""
        if self._record:
            self._record.places.append(PlaceSeen(called, filled, where))

    def listed_under(self) -> str:
        """The id under which the component's empty places are listed: its block's, else its engine's, else its own."""
        self._asked.everything = True
        under, way = self._context.design.listed_under(self._component)
        self._context.consulted.specs |= way
        return under

    def reason_given(self, component: Component, name: str) -> str:
        """What a component says of a place or a value under ``[notes]``; "" where it says nothing."""
        self._asked.everything = True
        said = component.notes.get(name, "")
        reason = said.strip() if isinstance(said, str) else ""
        self._context.consulted.specs.add(component.id)
        if self._record:
            self._record.note(f"note {name} of {component.id}", repr(reason), shown=reason or "not stated")
        return reason

    def names_under(self, owner: Spec, table: str) -> tuple[str, ...]:
        """The names of the entries of a table of a spec."""
        self._asked.everything = True
        found = tuple(str(one) for one in getattr(owner, table))
        self._context.consulted.specs.add(owner.id)
        if self._record:
            note = f"entries {table} of {owner.id}"
            self._record.note(note, repr(found), shown=", ".join(found) or "none")
        return found

    def _note_link(self, link: Link[Any]) -> None:
        if self._record:
            place = self._record.place(link.where)
            alike = self._record.renaming.part(link.id)
            self._record.note(f"link {place}", link.id, place, at=link.where, alike=alike)

    def _note_stated(self, name: str, where: Location, found: bool) -> None:
        if self._record:
            place = self._record.place(where, name)
            shown = STATED if found else "not stated"
            if not found:
                self._record.silent[place] = None
            self._record.note(f"stated {name} {place}", repr(found), place, shown, at=where)

    def _names(self, part: Component, key: str, name: str) -> bool:
        """Whether a component states a name under a key."""
        value = getattr(part, key)
        stated = value.value if isinstance(value, Stated) else ""
        if self._record:
            place = self._record.place(value.where)
            self._record.note(f"read {place}", repr(stated), place, str(stated) or "not stated")
        return bool(stated == name)


def not_read(files: Sequence[str]) -> NotAssessed:
    """Why a rule ends that looks for parts which files that could not be read may hold."""
    return Unread(f"not judged: {' and '.join(files)} could not be read", Location(files[0]), files)


def no_spec_at(link: Link[Any], design: Design) -> NotAssessed:
    """Why a rule ends that follows a link to a spec which could not be read, or is of another kind."""
    wanted = (
        f" as a {link.kinds[0].replace('-', ' ')}" if len(link.kinds) == 1 else " as what is wanted there"
    )
    said = f'{link.where.key} leads to "{link.id}", which could not be read{wanted}'
    return Unread(said, link.where, (design.file_at_fault(link),))


def entries_of(owner: Spec, table: str, kind: type[T]) -> Mapping[str, T]:
    """The entries of a named table of a spec, of which a check is not held to depend on all."""
    found = fields_of(owner)[table]
    assert isinstance(found, Mapping)
    assert all(isinstance(one, kind) for one in found.values())
    return found


def links_under(value: object, key: str) -> Iterator[Link[Spec]]:
    """The links that are stated under a dotted key of a spec; a star stands for every entry of a table or a list."""
    part, _, rest = key.partition(".")
    if part == "*":
        entries = value.values() if isinstance(value, Mapping) else value if isinstance(value, tuple) else ()
        for entry in entries:
            yield from links_under(entry, rest)
    elif part and isinstance(value, SpecTable):
        yield from links_under(getattr(value, part), rest)
    elif isinstance(value, Link):
        yield value
    elif isinstance(value, tuple):
        yield from (one for one in value if isinstance(one, Link))
