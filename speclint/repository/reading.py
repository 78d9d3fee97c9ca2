"""From a TOML file to typed specs, or to every complaint about it: one spec, or one for each name that it lists."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any, TypeAlias

from msgspec import Struct
from pydantic import ValidationError

from speclint.errors import Complaint, Location, one_of, shortened
from speclint.repository.each import parts_of, without_each
from speclint.repository.regular_files import read_regular
from speclint.repository.toml_tables import read_toml
from speclint.repository.unread import ids_in
from speclint.repository.validation import complaint_of, of_no_family, quoted
from speclint.specs import LONGEST_ID, Catalogue, Leaf, Spec, Table, TakenOver

_NO_TEXT = "the name of this file is not UTF-8 text, so that nothing can refer to it"


class Loaded(Struct, frozen=True):
    """The result of reading one spec: it, or complaints. ``id`` is that of the spec even where it is unreadable."""

    file: str
    id: str
    spec: Spec | None
    complaints: tuple[Complaint, ...]


class Draft(Struct, frozen=True):
    """One spec as its file states it, before its values are read.

    ``taken`` says what its ``table`` takes over from another spec; ``complaints`` stand in the way of its being read.
    """

    file: str
    id: str
    kind: type[Spec]
    table: Table
    taken: TakenOver | None = None
    complaints: tuple[Complaint, ...] = ()


Read: TypeAlias = Draft | Loaded


def load_specs(path: Path, file: str, kinds: Mapping[str, type[Spec]]) -> tuple[Loaded, ...]:
    """Read the specs of one file by itself: nothing is taken over from the specs of others."""
    return tuple(validated(one, kinds) for one in read_drafts(path, file, kinds))


def read_drafts(
    path: Path, file: str, kinds: Mapping[str, type[Spec]], content: bytes | None = None
) -> tuple[Read, ...]:
    """The specs that a file states; ``file`` is its name in reports. Never raises for what the file contains.

    ``content`` is that of the file, where it was read before.
    """
    if any("\ud800" <= letter <= "\udfff" for letter in file):  # how Python has the bytes of such a name
        instead = "a name in letters and digits"
        return (Loaded(file, path.stem, None, (Complaint(Location(file), _NO_TEXT, write=instead),)),)
    table = read_toml(path, file, content=content)
    if isinstance(table, Complaint):
        return _unread(path, file, content, table)
    kind = _kind_of(table, file, kinds)
    if isinstance(kind, Complaint):
        return _unread(path, file, content, kind)
    if "each" not in table:
        stray = tuple(without_each(table))
        return (_draft(kind, _plain(table), file, path.stem, stray),)
    parts, complaints = parts_of(table, file, path.stem)
    if not parts:
        return (_draft(kind, _plain(table), file, path.stem, complaints),)
    return tuple(_draft(kind, part, file, stem, complaints) for part, stem in parts)


def _unread(path: Path, file: str, content: bytes | None, complaint: Complaint) -> tuple[Loaded, ...]:
    """What is left of the specs of a file that cannot be read: their ids, so that links to them lead somewhere."""
    names: tuple[str, ...] = (path.stem,)
    with suppress(OSError):
        text = (read_regular(path) if content is None else content).decode("utf-8", "replace")
        names = ids_in(text, path.stem)
    return tuple(Loaded(file, name, None, (complaint,)) for name in names)


def ids_stated(content: bytes, file: str, kinds: Mapping[str, type[Spec]]) -> frozenset[str]:
    """The ids of the specs that the content of a file states; none where they cannot be told."""
    found = read_drafts(Path(file), file, kinds, content)
    return frozenset(one.id for one in found if isinstance(one, Draft))


def _plain(table: Table) -> Table:
    """A file as that of one part."""
    return Table({key: value for key, value in table.items() if key not in ("each", "for")}, table.where)


def _kind_of(table: Table, file: str, kinds: Mapping[str, type[Spec]]) -> type[Spec] | Complaint:
    leaf = table.get("kind")
    word = leaf.raw if isinstance(leaf, Leaf) else None
    where = leaf.where if isinstance(leaf, Leaf) else Location(file, 1, "kind")
    if word is None:
        return Complaint(
            where, "the spec does not say what kind of component it is", "", f"kind = {one_of('', kinds)}"
        )
    if not isinstance(word, str) or word not in kinds:
        said = f"this kind of component is not known{_with_left_out(kinds)}"
        return Complaint(where, said, quoted(word), f"kind = {one_of(str(word), kinds)}")
    return kinds[word]


def _with_left_out(kinds: Mapping[str, type[Spec]]) -> str:
    left_out = kinds.left_out if isinstance(kinds, Catalogue) else ()
    return f" while speclint.toml leaves out the family {' and '.join(left_out)}" if left_out else ""


def _draft(
    kind: type[Spec], table: Table, file: str, stem: str, complaints: tuple[Complaint, ...] = ()
) -> Read:
    leaf: Any = table.get("id", Leaf(stem, Location(file, 1, "id")))
    raw = leaf.raw if isinstance(leaf, Leaf) else leaf
    name = str(raw)
    if said := _fault_of_id(raw):
        name = stem  # so that all else in the file is read, and told
        plain = "".join(letter for letter in stem if letter.isprintable()).strip()
        refused = Complaint(leaf.where.drawn, said, quoted(raw), f'id = "{shortened(plain)}"')
        complaints = (*complaints, refused)
    content = Table({**table, "id": name}, Location(file, leaf.where.line, "", leaf.where.part))
    del content["kind"]
    return Draft(file, name, kind, content, None, complaints)


def _fault_of_id(raw: object) -> str:
    """What is wrong with an id; "" where nothing is."""
    if not isinstance(raw, str) or not raw.strip():
        return "an id is a word in quotes"
    if len(raw) > LONGEST_ID:
        return f"an id has at most {LONGEST_ID} characters; this has {len(raw)}"
    if not raw.isprintable() or raw != raw.strip():
        return "an id is written on one line, of signs that are printed, without spaces at its ends"
    return ""


def validated(draft: Read, kinds: Mapping[str, type[Spec]]) -> Loaded:
    """The spec of a draft, or everything that is wrong with it: where something stands in its way, there is no spec."""
    if isinstance(draft, Loaded):
        return draft
    try:
        spec = draft.kind.model_validate(draft.table)
    except ValidationError as problem:
        errors = problem.errors()
        found = sorted((_complaint(error, draft, kinds) for error in errors), key=lambda one: one.order)
        return Loaded(draft.file, draft.id, None, (*draft.complaints, *found))
    if draft.complaints:
        return Loaded(draft.file, draft.id, None, draft.complaints)
    if draft.taken is not None:
        spec.takes_over(draft.taken)
    return Loaded(draft.file, draft.id, spec, ())


def _complaint(error: Any, draft: Draft, kinds: Mapping[str, type[Spec]]) -> Complaint:
    kind, content, file = draft.kind, draft.table, draft.file
    return of_no_family(error, kind, content, file, kinds) or complaint_of(error, kind, content, file)
