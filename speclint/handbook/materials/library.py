"""The built-in library of materials: one file a family, read only when a material of it is asked for."""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Any

from speclint.errors import NotKnown, nearest_few
from speclint.handbook.materials.model import Material, Tables
from speclint.handbook.materials.parsing import FileReader, load_toml
from speclint.handbook.materials.problems import Complaints

_INDEX = "index.toml"
_COMMON = "common.toml"


def material(name: str) -> Material:
    """A material of the built-in library by its name.

    >>> material("grey-iron-250").title
    'grey cast iron EN-GJL-250'

    Raises:
        NotKnown: the library has no such entry; the message offers the nearest names.
    """
    return _material(name)


def names() -> tuple[str, ...]:
    """Names of all materials of the built-in library, in order."""
    return tuple(sorted(_index()))


@lru_cache(maxsize=8)  # an editor has the same files read at every keystroke
def read_materials(text: str, origin: str) -> tuple[Material, ...]:
    """Materials of a design repository's own, from TOML text in the format of the shipped files.

    ``origin`` is the file's name, for the complaints. An entry may say ``like = "grey-iron-250"`` to take
    what it does not state itself from a built-in material or from a group under [common].

    Raises:
        MaterialsError: with every problem found, each with its line, its key and what to write.
    """
    complaints = Complaints(origin, text)
    found = FileReader(load_toml(text, origin), complaints, _likeness).everything()
    complaints.raise_if_any()
    return found


@cache
def _material(name: str) -> Material:
    index = _index()
    if name not in index:
        raise NotKnown(f"no material '{name}' in the library{_nearest(name, tuple(index))}")
    reader = _reader(index[name])
    found = reader.material(name)
    reader.complaints.raise_if_any()
    if found is None:  # pragma: no cover - a complaint was raised above
        raise NotKnown(f"material '{name}' could not be read")
    return found


@cache
def _index() -> dict[str, str]:
    """The file of each material."""
    files = _shipped(_INDEX)
    return {name: f"{file}.toml" for file, listed in files.items() for name in listed}


@cache
def _reader(file: str) -> FileReader:
    return FileReader(_shipped(file), Complaints(file, _text(file)), _shipped_group)


def _shipped(file: str) -> dict[str, Any]:
    """A file of the library, which is not held to the bounds of what others write."""
    import tomli

    return tomli.loads(_text(file))


def _shipped_group(name: str) -> Tables:
    reader = _reader(_COMMON)
    tables = reader.group(name)
    reader.complaints.raise_if_any()
    return tables


def _likeness(name: str) -> Tables:
    """What an own material may be like: a shipped group, or a built-in material."""
    try:
        return _shipped_group(name)
    except NotKnown:
        return _material(name).tables


@cache
def _text(file: str) -> str:
    from importlib.resources import files

    return (files("speclint.handbook") / "data" / "materials" / file).read_text(encoding="utf-8")


def _nearest(name: str, known: tuple[str, ...]) -> str:
    """The names that it may stand for: by the name, or else by the title, such as EN-GJL-250 for grey-iron-250."""
    close = nearest_few(name, known)
    if not close:
        titles = {material(one).title: one for one in known}
        close = tuple(
            titles[title] for title in nearest_few(name, titles) if name.casefold() in title.casefold()
        )
    return f"; nearest are {', '.join(close)}" if close else ""
