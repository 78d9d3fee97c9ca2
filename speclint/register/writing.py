"""The file of the register, changed by one entry or one signature; all other bytes stay as they are."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeAlias

import tomli

from speclint.errors import SettingsError, TomlError, read_toml_text
from speclint.repository import LARGEST_REGISTER, Concession, DrawingReading, read_regular, replace_file

if TYPE_CHECKING:
    from tomlkit import TOMLDocument
    from tomlkit.items import String, Table

_HEAD = """\
# The register of concessions: which findings were accepted, by whom, on what grounds and until when.
# Entries are made with "speclint concede"; a change of what a finding rests on ends its concession.
"""
_HEAD_OF_READINGS = """\
# The register: which drawings were read against their specs, by whom, when, and what their files then were.
# Entries are made with "speclint read"; a change of the file or of the revision asks for another reading.
"""
_Entry: TypeAlias = Concession | DrawingReading


def append_entries(path: Path, *added: _Entry) -> None:
    """Put entries at the end of those of their sort in the register, all or none; it is created where there is none.

    :raises SettingsError: where the file cannot be read, or is not a register.
    :raises OutputError: where it cannot be written.
    """
    import tomlkit

    text = _read(path) if path.exists() else _head(added)
    document, expected = _parsed(text, path), tomli.loads(text)
    for one in added:
        entries = document.get(one.entry)
        if entries is None:
            document.append(one.entry, entries := tomlkit.aot())
        entries.append(_table(one))
        expected.setdefault(one.entry, []).append(_plain(one))
    _write(path, document, expected, text)


def _head(added: Sequence[_Entry]) -> str:
    return _HEAD if any(isinstance(one, Concession) for one in added) else _HEAD_OF_READINGS


def put_signature(path: Path, signed: _Entry) -> None:
    """Put the signature of an entry into its entry, in place of any other.

    :raises SettingsError: as for an entry; so is OutputError.
    """
    text = _read(path)
    document = _parsed(text, path)
    expected = tomli.loads(text)
    for written, plain in zip(document.get(signed.entry, ()), expected.get(signed.entry, ()), strict=True):
        if plain.get("number") == signed.number:
            written["signature"] = _string(signed.signature)
            plain["signature"] = signed.signature
    _write(path, document, expected, text)


def _plain(one: _Entry) -> dict[str, Any]:
    """An entry as it is in the file: what is not stated is left out."""
    said = {**one.content(), "signature": one.signature}
    if one.also_on:
        said["also_on"] = list(one.also_on)
    return {name: value for name, value in said.items() if value not in ("", {})}


def _table(one: _Entry) -> Table:
    import tomlkit

    table = tomlkit.table()
    table.trivia.indent = "\n"
    plain = _plain(one)
    rests_on = plain.pop("rests_on", {})
    for name, value in plain.items():
        table.append(name, _string(value) if isinstance(value, str) else value)
    if rests_on:
        inner = tomlkit.table()
        inner.trivia.indent = "\n"
        for name, shown in rests_on.items():
            inner.append(tomlkit.key(name) if name.isidentifier() else _quoted(name), shown)
        table.append("rests_on", inner)
    return table


def _quoted(name: str) -> Any:
    from tomlkit.items import KeyType, SingleKey

    return SingleKey(name, KeyType.Basic)


def _string(value: str) -> String:
    import tomlkit

    lines = (
        "\n" in value and "\r" not in value and not value.startswith("\n")
    )  # whose first line end is dropped
    return tomlkit.string(value, multiline=lines)


def _read(path: Path) -> str:
    try:
        return read_regular(path, LARGEST_REGISTER).decode("utf-8")
    except (OSError, UnicodeDecodeError) as problem:
        raise SettingsError(f"{path}: the register cannot be read: {problem}") from problem


def _parsed(text: str, path: Path) -> TOMLDocument:
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        return tomlkit.parse(text.replace("\r\n", "\n"))
    except TOMLKitError as problem:
        raise SettingsError(f"{path}: the register cannot be read: {problem}") from problem


def _write(path: Path, document: TOMLDocument, expected: dict[str, Any], before: str) -> None:
    """Write the whole file at once, after reading the text back: a register half written would lose concessions."""
    import tomlkit

    text = tomlkit.dumps(document)
    if _read_back(text, path) != expected:
        raise SettingsError(
            f"{path}: the new text of the register does not read back correctly; nothing was written"
        )
    if "\r\n" in before:
        text = text.replace("\n", "\r\n")
    content = text.encode("utf-8")
    if len(content) > LARGEST_REGISTER:
        says = f"with this entry it has {len(content)} bytes, and at most {LARGEST_REGISTER} are read"
        raise SettingsError(f"{path}: {says}; nothing was written")
    replace_file(path, content)


def _read_back(text: str, path: Path) -> dict[str, Any]:
    """The new text as it will be read, within the same bounds: an entry that is too long would spoil all others."""
    try:
        return read_toml_text(text)
    except TomlError as problem:
        raise SettingsError(
            f"{path}: with this entry it could not be read: {problem}; nothing was written"
        ) from problem
