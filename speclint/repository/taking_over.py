"""Following ``like`` and ``mirror_of``: what a spec does not state itself is as the other states it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct, field

from speclint.errors import Complaint, Location, one_of, replace
from speclint.quantities import negated, round_the_axis
from speclint.repository.own_drawing import of_other_drawing
from speclint.repository.reading import Draft, Read
from speclint.repository.validation import quoted
from speclint.specs import (
    SIGNED,
    Array,
    Component,
    Difference,
    FieldTaken,
    Leaf,
    Mirroring,
    Table,
    TakenOver,
    bare,
    fields_taken,
    own_places,
)

#: Stated by each spec for itself: what names it, and what says how it is read.
_OWN = frozenset({"id", "like", "mirror_of", "each"})
_SWAPPED = {"left": "right", "right": "left"}


def taken_over(drafts: Mapping[str, Read]) -> dict[str, Read]:
    """Every draft with what it takes over from another, or with a complaint where there is nothing to take over."""
    return {name: _followed(draft, drafts) for name, draft in drafts.items()}


def named_by(draft: Read) -> str:
    """The id of the spec from which a draft takes over; "" where it takes over from none."""
    leaf = _word(draft) if isinstance(draft, Draft) else None
    return str(leaf.raw) if leaf else ""


def _word(draft: Draft) -> Leaf | None:
    """The text under ``like`` or ``mirror_of``."""
    found = (draft.table.get(key) for key in ("like", "mirror_of"))
    texts = (leaf for leaf in found if isinstance(leaf, Leaf) and isinstance(leaf.raw, str))
    return next((leaf for leaf in texts if leaf.raw), None)


def _followed(draft: Read, drafts: Mapping[str, Read]) -> Read:
    if not isinstance(draft, Draft):
        return draft
    leaf = _word(draft)
    if leaf is None:
        return draft
    if "like" in draft.table and "mirror_of" in draft.table:
        said = "a spec is like another or the mirror of one, not both"
        refused = Complaint(leaf.where.drawn, said, quoted(leaf), "one of like and mirror_of")
        return replace(draft, complaints=(*draft.complaints, refused))
    refusal = _refusal(draft, leaf, drafts)
    if isinstance(refusal, tuple):
        return replace(draft, complaints=(*draft.complaints, *refusal))
    return _merged(draft, refusal, leaf)


def _refusal(draft: Draft, leaf: Leaf, drafts: Mapping[str, Read]) -> Draft | tuple[Complaint, ...]:
    """The draft to take over from, or why there is none."""
    where, name = leaf.where.drawn, str(leaf.raw)
    way = _way(draft, drafts)
    if way[-1] in way[:-1]:
        return tuple(_loop(draft, way, leaf, drafts))
    other = drafts.get(name)
    if other is None:
        alike = [one for one, read in drafts.items() if _is_of(read, draft) and one != draft.id]
        instead = one_of(name, alike) if alike else f"the id of another {draft.kind.kind}; there is none yet"
        return (Complaint(where, "no spec has this id", quoted(name), instead),)
    if not isinstance(other, Draft):
        said = f"nothing can be taken over, as {other.file} cannot be read"
        return (Complaint(where, said, quoted(name), f"{other.file} so that it can be read"),)
    if other.kind is not draft.kind:
        said = f"this leads to a {other.kind.kind} ({other.file}), and this is a {draft.kind.kind}"
        return (Complaint(where, said, quoted(name), f"the id of a {draft.kind.kind}"),)
    if further := named_by(other):
        said = f"{name} ({other.file}) itself takes over from {further}, and only a spec that states all can be named"
        instead = quoted(way[-1]) if further in drafts else "the id of a spec that states all"
        return (Complaint(where, said, quoted(name), instead),)
    return other


def _is_of(read: Read, draft: Draft) -> bool:
    return isinstance(read, Draft) and read.kind is draft.kind and not named_by(read)


def _way(draft: Draft, drafts: Mapping[str, Read]) -> list[str]:
    """The ids from one spec to the next that it takes over from, up to one that takes over from none, or again."""
    way = [draft.id]
    while (name := named_by(drafts[way[-1]])) and name in drafts:
        way.append(name)
        if name in way[:-1]:
            break
    return way


def _loop(draft: Draft, way: list[str], leaf: Leaf, drafts: Mapping[str, Read]) -> Iterator[Complaint]:
    """The complaint about a loop: once for each loop, and for each spec that leads into one."""
    loop = way[way.index(way[-1]) : -1]
    if draft.id in loop and draft.id != min(loop):
        return
    shown = " → ".join(f"{name} ({drafts[name].file})" for name in way)
    yield Complaint(leaf.where.drawn, f"links run in a loop: {shown}", quoted(leaf), "a spec that states all")


class _Merging(Struct):
    """One spec taken over from another, table by table, and what is met on the way."""

    part: str
    mirrored: bool
    root: Location
    differs: list[Difference] = field(default_factory=list)
    said_twice: list[Location] = field(default_factory=list)
    places: list[Location] = field(default_factory=list)
    turned: set[str] = field(default_factory=set)

    def table(self, own: Table | None, other: Table, kind: type, top: bool = False) -> Table:
        """What is stated here, and beside it what only the other states."""
        fields = fields_taken(kind)
        inside: dict[str, object] = {}
        for key, there in other.items():
            if top and key in _OWN:
                continue
            value = self._value(own.get(key) if own else None, there, fields.get(key))
            if value is not None:
                inside[key] = value
        if own is None and not own_places(kind):
            return Table(inside, self._here(other.where))
        if own is None:
            return Table(inside, self.root.at(other.where.key), self._here(other.where))
        for key, here in own.items():
            if key not in inside:
                inside[key] = here
                self._added(key, here, fields.get(key))
        return Table(inside, own.where, self._here(other.unstated_at or other.where))

    def _added(self, key: str, here: Any, about: FieldTaken | None) -> None:
        """A key that only the part itself states: it differs, unless it names the part or tells its place."""
        if key in _OWN or key in SIGNED or key == "notes" or (about is not None and about.own_place):
            return
        if isinstance(here, Table) and about is not None and about.inner is not None and not about.many:
            for name, value in here.items():
                self._added(name, value, fields_taken(about.inner).get(name))
        elif isinstance(here, Table | Array | Leaf):
            self.differs.append(Difference(here.where, _shown(here), "not stated"))

    def _value(self, here: Any, there: Any, about: FieldTaken | None) -> object:
        if about is not None and about.own_place:
            if here is None:
                self.places += _places_in(there)
            return here
        if isinstance(there, Table) and about is not None and about.inner is not None:
            if not isinstance(here, Table | None):
                return here
            if about.many:
                return self._entries(here, there, about)
            return self.table(here, there, about.inner)
        if isinstance(there, Table) and isinstance(here, Table) and about is not None and not about.dimension:
            for name in here if about.many else ():
                if name in there:
                    self._compared(here[name], there[name])
                else:
                    self._added(name, here[name], None)
            return Table({**self._taken(there, about), **here}, here.where)  # notes, and values by name
        taken = self._taken(there, about)
        if here is None:
            return taken
        self.turned.discard(there.where.key)
        self._compared(here, taken)
        return here

    def _entries(self, here: Table | None, there: Table, about: FieldTaken) -> Table:
        """Tables by name: those of the other that are not stated here, those of both merged, and those of here."""
        inside: dict[str, object] = {}
        for name, entry in there.items():
            own = here.get(name) if here else None
            inside[name] = _of_part(entry, self.part) if own is None else own
            if about.whole or about.inner is None:
                if own is not None:
                    self._compared(own, entry)
                continue
            if isinstance(entry, Table) and (own is None or isinstance(own, Table)):
                inside[name] = self.table(own, entry, about.inner)
        if here is None:
            return Table(inside, self._here(there.where))
        for name, entry in here.items():
            if name not in inside:
                inside[name] = entry
                self._added(name, entry, None)
        return Table(inside, here.where)

    def _here(self, where: Location) -> Location:
        return Location(where.file, where.line, where.key, self.part or where.part)

    def _taken(self, value: Any, about: FieldTaken | None) -> Any:
        """A value of the other as it is here: read of this part, and mirrored where the field says so."""
        how: Mirroring = about.mirroring if about is not None and self.mirrored else "keep"
        taken = _of_part(value, self.part)
        return taken if how == "keep" else self._mirrored(taken, how)

    def _mirrored(self, value: Any, how: Mirroring) -> Any:
        if isinstance(value, Array):
            return Array([self._mirrored(inner, how) for inner in value], value.where)
        leaf = value.get("value") if isinstance(value, Table) else value
        if not isinstance(leaf, Leaf) or not isinstance(leaf.raw, str):
            return value
        self.turned.add(value.where.key)
        if how == "swap":
            return Leaf(_SWAPPED.get(leaf.raw, leaf.raw), value.where)
        text = negated(leaf.raw) if how == "negate" else round_the_axis(leaf.raw)
        about = value if isinstance(value, Table) else {}
        notes = (bare(about.get("note", "")), f"mirrored from {leaf.raw}")
        note = Leaf("; ".join(str(one) for one in notes if one), value.where)
        return Table({**about, "value": Leaf(text, leaf.where), "note": note}, value.where)

    def _compared(self, here: Any, there: Any) -> None:
        """A key that both state: as a difference, or as said twice; who signs, signs for each spec."""
        where = here.where
        if where.key in SIGNED:
            return
        if _plain(here) == _plain(there):
            self.said_twice.append(where)
        else:
            self.differs.append(Difference(where, _shown(here), _shown(there)))


def _merged(draft: Draft, other: Draft, leaf: Leaf) -> Draft:
    mirrored = "mirror_of" in draft.table
    part = draft.id if issubclass(draft.kind, Component) else ""
    own = _of_part(draft.table, part) if part else draft.table
    merging = _Merging(part, mirrored, own.where)
    table = merging.table(own, other.table, draft.kind, top=True)
    for key in of_other_drawing(own, other.table):
        table.pop(key, None)
    if any(one.where.key != "title" for one in merging.differs):
        for key in SIGNED - own.keys():  # whoever signed the other did not see what differs here
            table.pop(key, None)
    taken = TakenOver(
        id=other.id,
        mirrored=mirrored,
        where=leaf.where,
        differs=tuple(merging.differs),
        said_twice=tuple(merging.said_twice),
        places=tuple(merging.places),
        turned=frozenset(merging.turned),
        notes=" ".join(str(word) for word in _words(bare(draft.table.get("notes", {})))),
    )
    return replace(draft, table=table, taken=taken)


def _of_part(value: Any, part: str) -> Any:
    """A tree whose places are read of a part."""
    if not part:
        return value
    if not isinstance(value, Table | Array | Leaf):
        return value
    where = Location(value.where.file, value.where.line, value.where.key, part)
    if isinstance(value, Table):
        inside = {key: _of_part(inner, part) for key, inner in value.items()}
        return Table(inside, where, value.unstated_at)
    if isinstance(value, Array):
        return Array([_of_part(inner, part) for inner in value], where)
    return Leaf(value.raw, where)


def _places_in(value: Any) -> Iterator[Location]:
    if isinstance(value, Leaf | Table | Array):
        yield value.where


def _plain(value: Any) -> object:
    """What a value says, without its place and without a note."""
    plain = bare(value)
    if isinstance(plain, dict) and "value" in plain:
        said = (_spaced(plain["value"]), plain.get("from", "drawing"))
        return said[0] if said[1] == "drawing" else said
    return _spaced(plain)


def _spaced(value: object) -> object:
    return " ".join(value.split()) if isinstance(value, str) else value


def _shown(value: Any) -> str:
    plain = bare(value)
    if isinstance(plain, dict) and "value" in plain:
        return f'"{plain["value"]}"'
    return quoted(value) if isinstance(value, Leaf) else ", ".join(str(one) for one in _words(plain))


def _words(value: object) -> Iterator[object]:
    if isinstance(value, dict):
        for key, inner in value.items():
            if not isinstance(inner, str) or inner.strip():
                yield key
                yield from _words(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _words(inner)
    else:
        yield value
