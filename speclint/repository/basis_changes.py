"""What a change alters in the basis of its own judgement: settings, signers, materials, and removed specs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from speclint.repository.folder import spec_files
from speclint.repository.reading import read_named
from speclint.repository.regular_files import LARGEST_REGISTER, not_regular, read_regular
from speclint.repository.revisions import Snapshot
from speclint.repository.settings import FILE_NAME, Settings
from speclint.specs import bare


def changes_of_basis(
    root: Path, before: Snapshot, folder: Path, old: Settings, new: Settings | None
) -> Iterator[str]:
    """What the change alters in the basis of its own judgement, in words."""
    yield from _settings_changed(root, folder)
    files = {old.signers_file, *old.materials} | ({new.signers_file, *new.materials} if new else set())
    for file in sorted(files):
        was, now = before.read(file), _content(root, file)
        if _plain(was) != _plain(now):
            yield f"{file} {_removed_or_changed(was, now)}"
    there = set(spec_files(root, old))
    for file in sorted(set(spec_files(folder, old)) - there):
        yield f"{file} is removed or moved: what it held is no longer checked under that name"


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
    for key in sorted({**was, **now}):
        if was.get(key) != now.get(key):
            before, after = was.get(key, "not stated"), now.get(key, "not stated")
            yield f"{FILE_NAME} {key} was {before}, is {after}"


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
