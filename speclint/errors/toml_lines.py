"""On which line of a TOML text a key stands.

TOML readers give values without positions. This scanner walks a text that the reader has already
accepted, so it does not validate: it follows headers, dotted and quoted keys, strings, arrays and inline tables.

>>> lines = locate('a = 1\\n[b."c d"]\\ne = [1,\\n 2]\\n')
>>> lines[("b", "c d", "e")], lines[("b", "c d", "e", 1)]
(3, 4)
"""

from __future__ import annotations

import re
from typing import TypeAlias

Path: TypeAlias = tuple[str | int, ...]

_BLANK = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_SPACE = re.compile(r"[ \t]*")
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_BASIC = re.compile(r'"(?:[^"\\]|\\.)*"')
_LITERAL = re.compile(r"'[^']*'")
_LONG_BASIC = re.compile(r'"""(?:[^\\]|\\.)*?"""(?:"{0,2})', re.DOTALL)
_LONG_LITERAL = re.compile(r"'''.*?'''(?:'{0,2})", re.DOTALL)
_SCALAR = re.compile(r"[^,\]}\n#]*")


def locate(text: str) -> dict[Path, int]:
    """The line, counted from 1, of every key, table and array element of a valid TOML text."""
    return _Scanner(text).run()


class _Scanner:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.lines: dict[Path, int] = {}
        self._line, self._counted = 1, 0
        self._array_tables: dict[Path, int] = {}

    def run(self) -> dict[Path, int]:
        table: Path = ()
        self._skip(_BLANK)
        while self.at < len(self.text):
            if self.text[self.at] == "[":
                table = self._header()
            else:
                self._key_and_value(table)
            self._skip(_BLANK)
        return self.lines

    def _header(self) -> Path:
        is_array = self.text.startswith("[[", self.at)
        line = self._line_here()
        self.at += 2 if is_array else 1
        names = self._key()
        self.at += 2 if is_array else 1
        path: Path = ()
        for name in names[:-1]:
            path = self._latest((*path, name))
        path = (*path, names[-1])
        if is_array:
            self.lines.setdefault(path, line)
            self._array_tables[path] = self._array_tables.get(path, -1) + 1
        path = self._latest(path)
        self.lines[path] = line
        return path

    def _latest(self, path: Path) -> Path:
        return (*path, self._array_tables[path]) if path in self._array_tables else path

    def _key_and_value(self, table: Path) -> None:
        line = self._line_here()
        path = table
        for name in self._key():
            path = (*path, name)
            self.lines.setdefault(path, line)
        self.at += 1  # the equals sign
        self._skip(_SPACE)
        self._value(path)

    def _key(self) -> list[str]:
        names: list[str] = []
        while True:
            self._skip(_SPACE)
            names.append(self._name())
            self._skip(_SPACE)
            if self.text[self.at] != ".":
                return names
            self.at += 1

    def _name(self) -> str:
        quote = self.text[self.at]
        if quote == '"':
            import tomli

            written = self._skip(_BASIC)
            return str(tomli.loads(f"key = {written}")["key"])
        if quote == "'":
            return self._skip(_LITERAL)[1:-1]
        return self._skip(_BARE_KEY)

    def _value(self, path: Path) -> None:
        first = self.text[self.at]
        if first == "[":
            self._array(path)
        elif first == "{":
            self._inline_table(path)
        else:
            self._skip(self._pattern_of(first))

    def _pattern_of(self, first: str) -> re.Pattern[str]:
        if first == '"':
            return _LONG_BASIC if self.text.startswith('"""', self.at) else _BASIC
        if first == "'":
            return _LONG_LITERAL if self.text.startswith("'''", self.at) else _LITERAL
        return _SCALAR

    def _array(self, path: Path) -> None:
        self.at += 1
        index = 0
        while True:
            self._skip(_BLANK)
            if self.text[self.at] == "]":
                self.at += 1
                return
            self.lines[(*path, index)] = self._line_here()
            self._value((*path, index))
            self._skip(_BLANK)
            if self.text[self.at] == ",":
                self.at += 1
                index += 1

    def _inline_table(self, path: Path) -> None:
        self.at += 1
        while True:
            self._skip(_BLANK)
            if self.text[self.at] == "}":
                self.at += 1
                return
            if self.text[self.at] == ",":
                self.at += 1
                continue
            self._key_and_value(path)

    def _skip(self, pattern: re.Pattern[str]) -> str:
        found = pattern.match(self.text, self.at)
        if found is None:
            raise ValueError(f"no TOML at offset {self.at}")
        self.at = found.end()
        return found[0]

    def _line_here(self) -> int:
        self._line += self.text.count("\n", self._counted, self.at)
        self._counted = self.at
        return self._line
