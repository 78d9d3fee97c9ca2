"""A TOML text read within bounds: what no spec, setting, register or material needs is refused at once.

The bounds are common practice: far above what a person writes, far below what would fill a machine's memory.
"""

from __future__ import annotations

import math
import re
from itertools import islice
from typing import Any, Final, cast

from speclint.errors.toml_faults import fault_in_words
from speclint.errors.toml_lines import Path, locate

#: Tables within tables, arrays within arrays.
DEEPEST: Final = 20
#: Entries of one array or one table.
MOST_ENTRIES: Final = 10_000
#: Characters of one text.
LONGEST_TEXT: Final = 20_000
#: Characters of one key.
LONGEST_KEY: Final = 300
#: Digits of a whole number.
MOST_DIGITS: Final = 15
#: Powers of ten between which a number lies that is not 0.
LARGEST_POWER: Final = 30

_PART = r"""(?:[A-Za-z0-9_-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+"""
#: A key of too many parts, where a line, an inline table or a header begins.
_DEEP_KEY = re.compile(
    rf"(?:^[ \t]*+(?:\[{{1,2}})?|[{{,])[ \t]*+(?:{_PART}\.[ \t]*+){{{DEEPEST}}}", re.MULTILINE
)
_MANY_DIGITS = re.compile(r"[0-9_]{4000}")
_BYTE_ORDER_MARK = "the file begins with a byte order mark, which cannot be seen and which TOML does not have"
_DEEP = f"tables or arrays stand in one another more than {DEEPEST} deep"
_FEW = "at most a few levels"
_DIGITS = f"a whole number has at most {MOST_DIGITS} digits"
_WHOLE = "the number itself, such as 16"


class TomlError(ValueError):
    """A text that is not TOML, or is beyond the bounds: where, and what to write instead."""

    def __init__(self, message: str, line: int, write: str, path: Path = ()) -> None:
        super().__init__(message)
        self.line = line
        self.write = write
        self.path = path


def read_toml_text(text: str) -> dict[str, Any]:
    """The tables of a TOML text.

    :raises TomlError: for what is not TOML, for tables too deep, and for arrays, texts, keys and numbers beyond the
        bounds of this module.
    """
    import tomli

    if text.startswith("\ufeff"):
        raise TomlError(_BYTE_ORDER_MARK, 1, "the file saved as UTF-8 without one, that is without BOM")
    if deep := _DEEP_KEY.search(text):
        raise _too_deep(text.count("\n", 0, deep.end()) + 1)
    try:
        tree = tomli.loads(text)
    except tomli.TOMLDecodeError as problem:
        line = getattr(problem, "lineno", 0)
        said, write = fault_in_words(str(getattr(problem, "msg", problem)), _line_at(line, text))
        raise TomlError(f"this is not TOML: {said}", line, write) from problem
    except RecursionError as problem:
        raise _too_deep(_line_of_brackets(text)) from problem
    except ValueError as problem:  # Python converts no whole number of more than 4300 digits
        found = _MANY_DIGITS.search(text)
        line = text.count("\n", 0, found.start()) + 1 if found else 0
        raise TomlError(_DIGITS, line, _WHOLE) from problem
    if not _within(tree) and (beyond := _beyond(tree)):
        path, said, write = beyond
        raise TomlError(said, _line_of(path, text), write, path)
    return tree


def _too_deep(line: int) -> TomlError:
    return TomlError(_DEEP, line, _FEW)


def _line_at(number: int, text: str) -> str:
    """A line of a text, counted from 1; "" where there is none of that number."""
    return next(islice(text.split("\n"), number - 1, number), "") if number > 0 else ""


def _line_of_brackets(text: str) -> int:
    """The first line that opens more brackets than the bound; 0 where they are spread over lines."""
    lines = enumerate(text.splitlines(), start=1)
    return next((number for number, line in lines if line.count("[") + line.count("{") > DEEPEST), 0)


def _line_of(path: Path, text: str) -> int:
    """The line of a key, or of the nearest around it that is written out; 0 where there is none."""
    try:
        lines = locate(text.replace("\r\n", "\n"))
    except RecursionError:
        return _line_of_brackets(text)
    return next((lines[path[:length]] for length in range(len(path), 0, -1) if path[:length] in lines), 0)


def _within(tree: dict[str, Any]) -> bool:
    """Whether everything surely lies within the bounds: most texts do, and are only walked level by level."""
    level: list[Any] = [tree]
    for _ in range(DEEPEST):
        deeper: list[Any] = []
        for holder in level:
            if len(holder) > MOST_ENTRIES:
                return False
            inner = holder
            if isinstance(holder, dict):
                if max(map(len, holder), default=0) > LONGEST_KEY:
                    return False
                inner = holder.values()
            for value in inner:
                if isinstance(value, str):
                    if len(value) > LONGEST_TEXT:
                        return False
                elif isinstance(value, dict | list):
                    deeper.append(value)
                elif _fault(value):
                    return False
        if not deeper:
            return True
        level = deeper
    return False


def _beyond(tree: dict[str, Any]) -> tuple[Path, str, str] | None:
    """The first value beyond the bounds: its keys, what is wrong, what to write; walked without recursion."""
    waiting: list[tuple[Path, object]] = [((), tree)]
    while waiting:
        path, value = waiting.pop()
        if fault := _fault(value):
            return (*path, *_too_long(value)), *fault
        if isinstance(value, dict | list):
            if len(path) >= DEEPEST:
                return path, _DEEP, _FEW
            pairs = value.items() if isinstance(value, dict) else enumerate(value)
            waiting += [((*path, cast("str | int", name)), inner) for name, inner in pairs][::-1]
    return None


def _fault(value: object) -> tuple[str, str] | None:
    """What is wrong with one value, and what to write instead."""
    if isinstance(value, str):
        if len(value) > LONGEST_TEXT:
            return f"a text has at most {LONGEST_TEXT} characters; this has {len(value)}", "a shorter text"
    elif isinstance(value, int):
        if abs(value) >= 10**MOST_DIGITS:
            return _DIGITS, _WHOLE
    elif isinstance(value, float):
        return _fault_of_number(value)
    elif isinstance(value, dict | list):
        return _fault_of_entries(value)
    return None


def _fault_of_number(value: float) -> tuple[str, str] | None:
    if not math.isfinite(value):
        return "this is not a finite number, or too large for one", "a number such as 0.3"
    if value and not 10.0**-LARGEST_POWER <= abs(value) <= 10.0**LARGEST_POWER:
        said = f"a number lies between 1e-{LARGEST_POWER} and 1e{LARGEST_POWER}, or is 0"
        return said, "a number such as 0.3"
    return None


def _fault_of_entries(value: dict[str, Any] | list[Any]) -> tuple[str, str] | None:
    called = "a table" if isinstance(value, dict) else "an array"
    if len(value) > MOST_ENTRIES:
        said = f"{called} has at most {MOST_ENTRIES} entries; this has {len(value)}"
        return said, "what belongs elsewhere in files of its own"
    if long := _too_long(value):
        return f"a key has at most {LONGEST_KEY} characters; this has {len(long[0])}", "a shorter key"
    return None


def _too_long(value: object) -> tuple[str, ...]:
    """The first key of a table that is too long; none where there is none, or where a fault of its entries is told."""
    if not isinstance(value, dict) or len(value) > MOST_ENTRIES:
        return ()
    return tuple(islice((name for name in value if len(name) > LONGEST_KEY), 1))
