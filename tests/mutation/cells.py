"""The numeric cells of a table: the fields of a CSV file, the numbers of a TOML file.

Notes, headings, keys and words are no cells, nor is zero, of which 2 % is nothing.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

from tests.mutation.mutants import Mutant, corrupted

_WORDS = re.compile(
    r'"""[\s\S]*?"""'
    r"|'''[\s\S]*?'''"
    r'|"(?:\\.|[^"\\\n])*"'
    r"|'[^'\n]*'"
    r"|#[^\n]*"
    r"|^\s*\[\[?[^=\n]*\]\]?\s*$",
    re.MULTILINE,
)
_NUMBER = re.compile(r"(?<![\w.+-])[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.-])(?!\s*=)")
_FIELD = re.compile(r"(?<![^,\n])[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?(?![^,\n])")


def mutants(root: Path, file: str) -> list[Mutant]:
    """One for each cell, in the order of the text."""
    text = (root / file).read_text(encoding="utf-8")
    lines = text.splitlines()
    made = []
    for order, cell in enumerate(_cells(file, text)):
        line = text.count("\n", 0, cell.start())
        value = _value(cell)
        made.append(
            Mutant(
                file, line + 1, order, f"{value!r} -> {corrupted(value)!r}", lines[line].strip(), again=order
            )
        )
    return made


def corrupt(mutant: Mutant, text: str) -> str:
    """The text of the table with the one cell multiplied."""
    cell = list(_cells(mutant.file, text))[mutant.order]
    return f"{text[: cell.start()]}{corrupted(_value(cell))!r}{text[cell.end() :]}"


def _cells(file: str, text: str) -> Iterator[re.Match[str]]:
    found = _of_toml(text) if file.endswith(".toml") else _of_csv(text)
    return (cell for cell in found if _value(cell) != 0)


def _of_csv(text: str) -> Iterator[re.Match[str]]:
    """Fields under the heading, which is the first line that is no note."""
    masked = re.sub(r"^#.*|\"[^\"]*\"", _blank, text, flags=re.MULTILINE)
    heading = re.search(r"^[^\s].*$", masked, re.MULTILINE)
    return _FIELD.finditer(masked, heading.end() if heading else 0)


def _of_toml(text: str) -> Iterator[re.Match[str]]:
    tomllib.loads(text)
    return _NUMBER.finditer(_WORDS.sub(_blank, text))


def _blank(match: re.Match[str]) -> str:
    """As long as what it hides, so that places stay the same."""
    return re.sub(r"[^\n]", " ", match[0])


def _value(cell: re.Match[str]) -> float:
    return int(cell[0]) if re.fullmatch(r"[+-]?\d+", cell[0]) else float(cell[0])
