"""What a change alters in the design basis it is judged by: settings, signers, materials, duties; and removed specs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Protocol

from msgspec import Struct

from speclint.repository.design import Design
from speclint.repository.regular_files import LARGEST_REGISTER, not_regular, read_regular
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.settings import Settings
from speclint.repository.toml_files import is_toml
from speclint.repository.toml_tables import read_named
from speclint.specs import Duty, bare


class Files(Protocol):
    """The files of a state of a repository, by their names relative to its root."""

    def read(self, file: str) -> bytes | None:
        """The content of one file; None where the state has no such file."""


class FilesInFolder(Struct, frozen=True):
    """The files of a repository as they lie in its folder."""

    root: Path

    def read(self, file: str) -> bytes | None:
        """The content of one file; None where it is not there, or is not one that is read."""
        return _content(self.root, file)


def changes_of_basis(
    root: Path, before: Files, folder: Path, old: Settings, new: Settings | None
) -> Iterator[str]:
    """What the change alters in settings, signers and files of materials, in words."""
    yield from _settings_changed(root, folder)
    files = {old.signers_file, *old.materials} | ({new.signers_file, *new.materials} if new else set())
    for file in sorted(files):
        was, now = before.read(file), _content(root, file)
        if _plain(was) == _plain(now):
            continue
        if was is not None and now is not None and is_toml(file):
            tables = (_flat(bare(read_named(place, file))) for place in (folder, root))
            yield from (f"{file} {line}" for line in _differences(*tables))
        else:
            yield f"{file} {_removed_or_changed(was, now)}"


def changes_of_duties(before: Design, now: Design) -> Iterator[str]:
    """What the change alters in the duties, in words: key by key, with the value as written."""
    yield from dict.fromkeys(_changes_of_duties(before, now))  # several of one file change with it alike


def _changes_of_duties(before: Design, now: Design) -> Iterator[str]:
    was_there, there = _duties(before), _duties(now)
    for name in sorted({**was_there, **there}):
        if name not in was_there:
            yield f"{there[name]}: the duty {name} is new"
        elif name not in there:
            yield f"{was_there[name]}: the duty {name} is removed"
        else:
            was, is_now = _table(before, was_there[name]), _table(now, there[name])
            yield from (f"{there[name]} {line}" for line in _differences(was, is_now))


def removed_specs(before: Design, now: Design) -> Iterator[str]:
    """The spec files that are no longer there under their names, in words."""
    for file in sorted({*before.files.values()} - {*now.files.values()}):
        yield f"{file} is removed or moved: what it held is no longer checked under that name"


def touched_specs(before: Design, now: Design) -> set[str]:
    """The ids of the specs that the change alters, adds or takes away, and of those that it links to or unlinks."""
    changed = {
        name for name in before.files.keys() | now.files.keys() if _spec(before, name) != _spec(now, name)
    }
    linked = {name for one in changed for name in _links(before, one) ^ _links(now, one)}
    return changed | linked


def _spec(design: Design, name: str) -> tuple[bytes | None, ...]:
    """What the files of a spec hold; nothing where there is none."""
    return tuple(_plain(_content(design.root, file)) for file in design.files_of(name))


def _links(design: Design, name: str) -> set[str]:
    spec = design.specs.get(name)
    return {link.id for link in spec.links()} if spec else set()


def _duties(design: Design) -> dict[str, str]:
    return {name: design.files[name] for name, spec in design.specs.items() if isinstance(spec, Duty)}


def _table(design: Design, file: str) -> dict[str, str]:
    return _flat(bare(read_named(design.root, file)))


def _differences(was: Mapping[str, str], now: Mapping[str, str]) -> Iterator[str]:
    for key in sorted({**was, **now}):
        if was.get(key) != now.get(key):
            yield f"{key} was {was.get(key, 'not stated')}, is {now.get(key, 'not stated')}"


def _content(root: Path, file: str) -> bytes | None:
    """What a file holds; None where it is not there, or is not one that is read."""
    if not_regular(root, file):
        return None
    try:
        return read_regular(root / file, LARGEST_REGISTER)
    except OSError:
        return None


def _plain(content: bytes | None) -> bytes | None:
    return None if content is None else content.replace(b"\r\n", b"\n")


def _removed_or_changed(was: bytes | None, now: bytes | None) -> str:
    if was is None:
        return "is new"
    return "is removed" if now is None else "is changed"


def _settings_changed(root: Path, folder: Path) -> Iterator[str]:
    was, now = (_flat(bare(read_named(place, FILE_NAME))) for place in (folder, root))
    yield from (f"{FILE_NAME} {line}" for line in _differences(was, now))


def _flat(tree: Any, prefix: str = "") -> dict[str, str]:
    """Every setting by its dotted key, as text; a value that is not a table is one entry."""
    if not isinstance(tree, Mapping):
        return {prefix or "as a whole": str(tree)}
    flat: dict[str, str] = {}
    for name, value in tree.items():
        written = f'"{name}"' if "." in name or " " in name else name
        key = f"{prefix}.{written}" if prefix else written
        flat |= _flat(value, key) if isinstance(value, Mapping) else {key: _shown(value)}
    return flat


def _shown(value: Any) -> str:
    if isinstance(value, list):
        return ", ".join(_shown(item) for item in value) or "nothing"
    return str(value).lower() if isinstance(value, bool) else str(value)
