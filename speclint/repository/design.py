"""The whole design repository: its specs, the links between them, the duties they inherit."""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, TypeVar

from speclint.errors import Complaint, Location, replace
from speclint.quantities import Measure
from speclint.repository.digests import State, state_of
from speclint.repository.drawing_files import DrawingFiles, InFolder
from speclint.repository.index import Index
from speclint.repository.lazy_specs import LazySpecs
from speclint.repository.settings import Settings
from speclint.repository.spec_files import PassedOver
from speclint.repository.unread import Unread
from speclint.specs import Component, Duty, Link, SizeApart, Sizes, Spec, old_keys_in, sizes_apart, sizes_made

C = TypeVar("C", bound=Component)
_MADE = "made-part"


@dataclass(frozen=True)
class Design:
    """Every readable spec of a repository by id, and what could not be read.

    ``files`` gives the file of each id, readable or not. ``selected`` are the ids that the command line
    asked for; links may lead anywhere in the repository. ``cut`` are the places of links that close a loop.
    ``passed_over`` are TOML files where the command line pointed that were not read as specs. ``alike`` gives, for
    each spec that is like another or the mirror of it, the id of that other. ``unread`` is what the files of specs that
    are missing tell.
    """

    root: Path
    settings: Settings
    specs: Mapping[str, Spec]
    files: Mapping[str, str]
    selected: frozenset[str]
    complaints: tuple[Complaint, ...] = ()
    cut: frozenset[Location] = frozenset()
    passed_over: tuple[PassedOver, ...] = ()
    alike: Mapping[str, str] = field(default_factory=dict)
    unread: tuple[Unread, ...] = ()
    _drawings: DrawingFiles | None = field(default=None, repr=False, compare=False)
    _known: Index | None = field(default=None, repr=False, compare=False)
    _linking: dict[str, tuple[Component, ...]] = field(
        init=False, default_factory=dict, repr=False, compare=False
    )
    _duties: dict[str, tuple[Duty | None, frozenset[str]]] = field(
        init=False, default_factory=dict, repr=False, compare=False
    )
    _of_kind: dict[tuple[str, type[Component]], tuple[Any, ...]] = field(
        init=False, default_factory=dict, repr=False, compare=False
    )
    _firsts: dict[str, str] = field(init=False, default_factory=dict, repr=False, compare=False)
    _owners: dict[str, str] = field(init=False, default_factory=dict, repr=False, compare=False)
    _sizes: dict[str, Sizes] = field(init=False, default_factory=dict, repr=False, compare=False)
    _sharing: dict[str, list[str]] = field(init=False, default_factory=dict, repr=False, compare=False)

    def __post_init__(self) -> None:
        known = self._known
        if known is None or known.specs is not self.specs or known.cut != self.cut:
            object.__setattr__(self, "_known", Index(self.specs, self.cut))
        if self._drawings is None:
            object.__setattr__(self, "_drawings", DrawingFiles(InFolder(self.root)))
        self._owners.update({file: name for name, file in self.files.items()})

    @property
    def index(self) -> Index:
        """What is known of every spec, whether it was read or not."""
        assert self._known is not None  # it is made with the design
        return self._known

    @property
    def drawing_files(self) -> DrawingFiles:
        """The files that specs name as their drawings; each is read when it is asked for."""
        assert self._drawings is not None  # they are set with the design
        return self._drawings

    @property
    def only_indexed(self) -> int:
        """Of how many specs no more was read than the index says."""
        return len(self.specs) - self.specs.read if isinstance(self.specs, LazySpecs) else 0

    def state_of(self, name: str) -> State | None:
        """The digests of a spec, whether it was read or not; None where there is none, or it cannot be read."""
        known = self.specs.states.get(name) if isinstance(self.specs, LazySpecs) else None
        if known is None and (spec := self.specs.get(name)) is not None:
            known = state_of(spec)
        return known

    def follow(self, link: Link[Any]) -> Spec | None:
        """The spec a link leads to; None where it is missing, unreadable, of a wrong kind or closes a loop."""
        return self.specs.get(link.id) if self.index.leads(link) else None

    def first_alike(self, name: str) -> str:
        """The spec that a spec is like, or the first of those of its file; "" for one that stands alone."""
        if not self._firsts:
            first: dict[str, str] = {}
            for one, entry in sorted(self.index.entries.items()):
                if entry.of_several:
                    self._firsts[one] = first.setdefault(self.files[one], one)
            for one, other in self.alike.items():
                self._firsts[one] = self._firsts.setdefault(other, other)
            self._firsts.setdefault("", "")
        return self._firsts.get(name, "")

    def names_alike(self, name: str) -> tuple[str, ...]:
        """The ids of the others that are said to be like a spec, in their order."""
        first = self.first_alike(name)
        return tuple(sorted(one for one, of in self._firsts.items() if first and of == first and one != name))

    def parts_alike(self, part: Component) -> tuple[Component, ...]:
        """The other components of its kind that are said to be like a part."""
        found = self._components(self.names_alike(part.id))
        return tuple(one for one in found if one.kind == part.kind)

    def sizes_apart(self, one: Component, other: Component) -> tuple[SizeApart, ...]:
        """The sizes and words that two parts both state for the shop, and in which they differ."""
        for part in (one, other):
            if part.id not in self._sizes:
                self._sizes[part.id] = sizes_made(part)
        return sizes_apart(self._sizes[one.id], self._sizes[other.id])

    def linking_to(self, target: Spec) -> tuple[Component, ...]:
        """The components that state a link to a spec, in the order of their ids."""
        found = self._linking.get(target.id)
        if found is None:
            found = self._linking[target.id] = self._components(self.index.linking_to(target.id))
        return found

    def linking_of(self, target: Spec, kind: type[C]) -> tuple[C, ...]:
        """The components of a kind that state a link to a spec; no other is read.

        Parts as made are given only where that kind is asked for: they stand beside the design, and are no part of it.
        """
        key = target.id, kind
        found = self._of_kind.get(key)
        if found is None:
            entries, word = self.index.entries, kind.kind
            linking = self.index.linking_to(target.id)
            names = (one for one in linking if not word or word in entries[one].words)
            names = (one for one in names if word == _MADE or entries[one].kind != _MADE)
            found = tuple(part for part in self._components(names) if isinstance(part, kind))
            self._of_kind[key] = found
        return found

    def parts_as_made(self) -> tuple[Component, ...]:
        """Every part as made, in the order of the ids."""
        return self._components(
            name for name, entry in sorted(self.index.entries.items()) if entry.kind == _MADE
        )

    def _components(self, names: Iterable[str]) -> tuple[Component, ...]:
        found = (self.specs.get(name) for name in names)
        return tuple(part for part in found if isinstance(part, Component))

    def unread_linking(self, target: Spec, kind: type[Component], *words: str) -> tuple[str, ...]:
        """The files that could not be read and may hold a component of a kind that links to a spec, and names words."""
        return tuple(one.file for one in self.unread if one.may_be(kind) and one.may_name(target.id, *words))

    def unread_naming(self, *words: str) -> tuple[str, ...]:
        """The files that could not be read and may name one of some words, such as ids."""
        return tuple(one.file for one in self.unread if any(one.may_name(word) for word in words))

    def unread_on_way(self, ids: Collection[str]) -> tuple[str, ...]:
        """The files that could not be read and may join some components to others: by a link of theirs, or to one."""
        if not self.unread:
            return ()
        entries = self.index.entries
        led_to = {link.id for name in ids if name in entries for link in entries[name].links()}
        return tuple(sorted({*self.unread_among(led_to), *self.unread_naming(*ids)}))

    def unread_among(self, ids: Collection[str]) -> tuple[str, ...]:
        """The files of those of some ids whose specs could not be read."""
        return tuple(
            sorted(self.files[name] for name in ids if name in self.files and name not in self.specs)
        )

    def file_at_fault(self, link: Link[Any]) -> str:
        """The file that keeps a link from being followed: that of a spec which could not be read, else the link's."""
        return next(iter(self.unread_among((link.id,))), link.where.file)

    def owner(self, where: Location) -> str:
        """The id of the spec of which a place is read; the file itself where it holds none."""
        return where.part or self._owners.get(where.file, where.file)

    def files_of(self, name: str) -> tuple[str, ...]:
        """The file of a spec, and that of the other from which it takes over what it does not state itself."""
        return tuple(self.files[one] for one in (name, self.alike.get(name, "")) if one in self.files)

    def is_turned(self, where: Location) -> bool:
        """Whether the value at a place is mirrored, so that its drawing states another."""
        spec = self.specs.get(where.part) if where.part else None
        taken = spec.taken_over if spec else None
        return taken is not None and where.key in taken.turned and where.file != self.files[where.part]

    def moved(self, where: Location, by: float) -> dict[Location, float | Measure]:
        """A change of a stated value, by each place where it is read: every part of the drawing changes with it."""
        return {
            place: -by if self.is_turned(place) != self.is_turned(where) else by
            for place in self._read_at(where)
        }

    def restated(self, where: Location, instead: Measure) -> dict[Location, float | Measure]:
        """Another quantity in the place of a stated one, by each place where it is read.

        On a part of the other hand nominal and limits are moved the other way.

        :raises LookupError: when no quantity is read there.
        """
        changed: dict[Location, float | Measure] = {}
        for place in self._read_at(where):
            if self.is_turned(place) == self.is_turned(where):
                changed[place] = replace(instead, where=place)
            else:
                changed[place] = self._turned(place, where, instead)
        return changed

    def _turned(self, place: Location, where: Location, instead: Measure) -> Measure:
        there, here = (self.specs[self.owner(one)].under(one.key) for one in (place, where))
        assert isinstance(there, Measure)  # what is turned is stated
        assert isinstance(here, Measure)
        return replace(
            there,
            nominal=there.nominal - (instead.nominal - here.nominal),
            low=there.low - (instead.high - here.high),
            high=there.high - (instead.low - here.low),
            tolerance_class=instead.tolerance_class,
        )

    def reworded(self, where: Location, word: str | bool) -> dict[Location, str | bool]:
        """A change of a stated word, by each place where it is read."""
        return {place: word for place in self._read_at(where) if not self.is_turned(place)}

    def _read_at(self, where: Location) -> list[Location]:
        """The places at which the parts of a drawing read one line of it, that of the one given among them."""
        sharing = self._sharing_file(where.file)
        drawn = where.drawn
        more = (Location(where.file, where.line, where.key, name) for name in sharing if len(sharing) > 1)
        return list(dict.fromkeys((where, drawn, *more)))

    def _sharing_file(self, file: str) -> Sequence[str]:
        """The specs that are read from a file, in whole or by what they take over."""
        if not self._sharing:
            for name in self.files:
                for one in self.files_of(name):
                    self._sharing.setdefault(one, []).append(name)
        return self._sharing.get(file, ())

    def names_sharing(self, name: str) -> tuple[str, ...]:
        """The other specs that may read a line of the files of a spec."""
        found = {one for file in self.files_of(name) for one in self._sharing_file(file)}
        return tuple(sorted(found - {name}))

    def of_drawing(self, number: str) -> tuple[Component, ...]:
        """The components that state a drawing number, in the order of their ids."""
        return self._components(self.index.of_drawing(number))

    def certified(self, key: str, word: str) -> tuple[Component, ...]:
        """The parts as made whose certificate states a number or a heat, in the order of their ids."""
        return self._components(self.index.certified(key, word))

    def called(self, words: str) -> tuple[Component, ...]:
        """The components that some words call by id, drawing number or title, in the order of their ids."""
        return self._components(self.index.called(words))

    def left_over(self) -> tuple[Spec, ...]:
        """The specs that are no components, such as duties, and that nothing links to."""
        return tuple(self.specs[name] for name in self.index.left_over())

    def way_to(self, component: Component, kinds: Collection[str]) -> tuple[Component | None, frozenset[str]]:
        """The nearest component of some kinds to which a chain of links joins another, whichever way they lead.

        With the ids of those on the way there; where there is none, of all that links join to the component.
        """
        name, way = self.index.way_to(component.id, kinds)
        found = self.specs.get(name)
        return (found if isinstance(found, Component) else None), way

    def listed_under(self, component: Component) -> tuple[str, frozenset[str]]:
        """The id under which what is still to be drawn of a component is listed, and the ids that say so.

        That of the nearest block or engine that it is linked to; where there is none its own.
        """
        return self.index.listed_under(component.id)

    def duty_of(self, component: Component) -> tuple[Duty | None, frozenset[str]]:
        """The duty a component states, or else that of the nearest component it is linked to.

        With the ids of all specs that were looked at to find it, the duty and whatever it is like among them.
        """
        if component.id not in self._duties:
            self._duties[component.id] = self._nearest_duty(component)
        return self._duties[component.id]

    def _nearest_duty(self, component: Component) -> tuple[Duty | None, frozenset[str]]:
        passed: set[str] = set()
        waiting: deque[Component] = deque([component])
        while waiting:
            part = waiting.popleft()
            if part.id in passed:
                continue
            passed.add(part.id)
            if isinstance(part.duty, Link):
                duty = self.follow(part.duty)
                passed |= {part.duty.id, self.alike.get(part.duty.id, part.duty.id)}
                return duty if isinstance(duty, Duty) else None, frozenset(passed)
            for link in self.index.entries[part.id].links():
                passed_on = self.follow(link)
                if isinstance(passed_on, Component):
                    waiting.append(passed_on)
                elif passed_on is None:
                    passed.add(link.id)
        return None, frozenset(passed)

    @property
    def old_keys(self) -> tuple[Complaint, ...]:
        """A note for each old key that a selected spec states, by file and line."""
        entries = self.index.entries
        some = [name for name in self.selected if name in entries and entries[name].of_old_keys]
        notes = (note for name in some for note in old_keys_in(self.specs[name]))
        return tuple(sorted(notes, key=lambda note: note.order))

    def part_names(self) -> tuple[str, ...]:
        """The ids of the selected components that can be read, in their order."""
        entries = self.index.entries
        return tuple(name for name in sorted(self.selected & entries.keys()) if entries[name].is_component)

    def parts(self) -> Iterator[Component]:
        """The selected components that could be read, in the order of their ids."""
        for name in sorted(self.selected):
            spec = self.specs.get(name)
            if isinstance(spec, Component):
                yield spec
