"""The file of the register, changed by one entry or one signature; all other bytes stay as they are."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import tomli

from speclint.errors import SettingsError, TomlError, read_toml_text
from speclint.repository import ENTRY, LARGEST_REGISTER, Concession, read_regular, replace_file

if TYPE_CHECKING:
    from tomlkit import TOMLDocument
    from tomlkit.items import String, Table

_HEAD = """\
# The register of concessions: which findings were accepted, by whom, on what grounds and until when.
# Entries are made with "speclint concede"; a change of what a finding rests on ends its concession.
"""


def append_entry(path: Path, concession: Concession) -> None:
    """Put an entry at the end of the register, which is created where there is none.

    :raises SettingsError: where the file cannot be read, or is not a register.
    :raises OutputError: where it cannot be written.
    """
    import tomlkit

    text = _read(path) if path.exists() else _HEAD
    document = _parsed(text, path)
    entries = document.get(ENTRY)
    if entries is None:
        document.append(ENTRY, entries := tomlkit.aot())
    entries.append(_table(concession))
    expected = tomli.loads(text)
    expected.setdefault(ENTRY, []).append(_plain(concession))
    _write(path, document, expected, text)


def put_signature(path: Path, concession: Concession) -> None:
    """Put the signature of a concession into its entry, in place of any other.

    :raises SettingsError: as for an entry; so is OutputError.
    """
    text = _read(path)
    document = _parsed(text, path)
    expected = tomli.loads(text)
    for written, plain in zip(document.get(ENTRY, ()), expected.get(ENTRY, ()), strict=True):
        if plain.get("number") == concession.number:
            written["signature"] = _string(concession.signature)
            plain["signature"] = concession.signature
    _write(path, document, expected, text)


def _plain(concession: Concession) -> dict[str, Any]:
    """An entry as it is in the file: what is not stated is left out."""
    said = {**concession.content(), "signature": concession.signature}
    if concession.also_on:
        said["also_on"] = list(concession.also_on)
    return {name: value for name, value in said.items() if value not in ("", {})}


def _table(concession: Concession) -> Table:
    import tomlkit

    table = tomlkit.table()
    table.trivia.indent = "\n"
    plain = _plain(concession)
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
