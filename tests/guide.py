"""The guide of the reference: its command blocks run, their outputs written anew by ``python -m tests.guide``.

In a text, a block ``sh`` is typed line by line and a block ``text`` after it is what is printed. A line that holds
only ``…`` stands for lines left out: above it is the beginning of the output, below it the end.
A block ``toml`` belongs to the file that the paragraph before it names last: after "Write" it is the whole file, after
"In" its keys are set there, in the place of the example behind the mark # where there is one, else under the heading of
their table. "Exit code N" opens the paragraph after a command that does not end with 0.
"""

from __future__ import annotations

import contextlib
import datetime as dt
import io
import os
import re
import shlex
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from types import SimpleNamespace

import pytest

from speclint.checking import loop
from speclint.commands import concede, gate, main
from speclint.reports import accepted

FOLDER = Path(__file__).parents[1] / "speclint" / "reports" / "reference" / "guide"
TUTORIAL = FOLDER / "10-tutorial.md"
#: The texts with outputs, in the order in which they are worked through: what one leaves the next finds.
SHOWN = (TUTORIAL, FOLDER / "50-how-to-read-a-sheet.md")
#: The day on which the tutorial is worked: what it concedes ends later than that.
DAY = dt.date(2026, 12, 1)
WIDTH = "100"
_LEFT_OUT = "…"
_BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)


@dataclass(frozen=True)
class Block:
    """A block of a text: its language, what stands in it, the paragraph before it, and where its inside begins."""

    language: str
    inside: str
    before: str
    after: str
    start: int


@dataclass(frozen=True)
class Ran:
    """A command that was run: as typed, what it printed, the exit code, and the one that the text gives."""

    command: str
    printed: str
    code: int
    told: int


def blocks(text: str) -> list[Block]:
    """The blocks of a text, in order."""
    return [
        Block(
            found[1],
            found[2],
            text[: found.start()].rstrip().rpartition("\n\n")[2],
            text[found.end() :].lstrip().partition("\n\n")[0],
            found.start(2),
        )
        for found in _BLOCK.finditer(text)
    ]


def worked_through(text: str) -> tuple[str, list[Ran]]:
    """The text with the outputs of its commands as they are, run in order in the present folder; and each run."""
    ran: list[Ran] = []
    renewed, last = [], 0
    listed = blocks(text)
    for number, block in enumerate(listed):
        if block.language == "sh":
            shown = listed[number + 1]
            assert shown.language == "text", block.inside
            told = re.match(r"Exit code (\d)", shown.after)
            for command in block.inside.splitlines():
                printed, code = run(command)
                ran.append(Ran(command, printed, code, int(told[1]) if told else 0))
            renewed += [text[last : shown.start], cut(printed, shown.inside)]
            last = shown.start + len(shown.inside)
        elif block.language == "toml":
            enter(block)
    return "".join([*renewed, text[last:]]), ran


def run(command: str) -> tuple[str, int]:
    """What a command prints into a pipe, both streams, and its exit code."""
    program, *words = shlex.split(command)
    assert program == "speclint", command
    out = io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(out):
        code = main(words)
    printed = "".join(f"{line.rstrip()}\n" for line in out.getvalue().splitlines())
    return (printed.replace("\\", "/") if os.sep == "\\" else printed), code


def cut(printed: str, shown: str) -> str:
    """An output with as many lines as are shown of it before and after the mark of those left out."""
    if f"{_LEFT_OUT}\n" not in shown.splitlines(keepends=True):
        return printed
    lines, (head, _, tail) = printed.splitlines(keepends=True), shown.partition(f"{_LEFT_OUT}\n")
    first, last = head.count("\n"), tail.count("\n")
    assert first + last < len(lines), "nothing is left out"
    return "".join([*lines[:first], f"{_LEFT_OUT}\n", *lines[len(lines) - last :]])


def enter(block: Block) -> None:
    """Write a block of TOML into the file that the paragraph before it names."""
    found = re.search(r"\b(Write|In) `([\w./-]+)`:$", " ".join(block.before.split()))
    assert found, f"no file is named before: {block.inside}"
    file = Path(found[2])
    if found[1] == "Write":
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(block.inside, encoding="utf-8", newline="\n")
        return
    text = file.read_text(encoding="utf-8")
    for table, line in _lines(block.inside):
        text = _with_key(text, table, line)
    file.write_text(text, encoding="utf-8", newline="\n")


def _lines(text: str) -> Iterator[tuple[str, str]]:
    """Each line with a key, with the heading of its table; "" before the first."""
    table = ""
    for line in text.splitlines():
        if line.startswith("["):
            table = f"{line}\n"
        elif line:
            yield table, line


def _with_key(text: str, table: str, line: str) -> str:
    """The text with a key of a table set: of the first line that has it or its example, else below the heading."""
    head, heading, rest = text.partition(table) if table else ("", "", text)
    assert heading == table, f"there is no {table}"
    inside, following = _parted(rest)
    key = line.partition(" = ")[0]
    inside, changed = re.subn(
        rf"^#?{re.escape(key)} = .*$", lambda _: line, inside, count=1, flags=re.MULTILINE
    )
    return f"{head}{heading}{inside if changed else f'{line}{chr(10)}{inside}'}{following}"


def _parted(rest: str) -> tuple[str, str]:
    """The lines of a table, and what follows it."""
    found = re.search(r"^\[", rest, re.MULTILINE)
    return (rest[: found.start()], rest[found.start() :]) if found else (rest, "")


@contextlib.contextmanager
def desk(folder: Path, cache: Path) -> Iterator[None]:
    """A folder to work in on the day of the tutorial, with no results of earlier runs."""

    class Day(dt.date):
        @classmethod
        def today(cls) -> dt.date:  # type: ignore[override]
            return DAY

    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        patch.setenv("COLUMNS", WIDTH)
        patch.setenv("XDG_CACHE_HOME", str(cache))
        for module in (concede, gate, accepted):
            patch.setattr(module, "dt", SimpleNamespace(date=Day))
        patch.setattr(loop, "date", Day)
        yield


def renewed(place: Path) -> tuple[dict[Path, str], list[Ran]]:
    """The texts worked through in a fresh folder "new-engine": with their outputs as they are, and each run."""
    folder, cache = place / "new-engine", place / "cache"
    folder.mkdir()
    cache.mkdir(mode=0o700)
    texts: dict[Path, str] = {}
    ran: list[Ran] = []
    with desk(folder, cache):
        for file in SHOWN:
            texts[file], more = worked_through(file.read_text(encoding="utf-8"))
            ran += more
    return texts, ran


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as named:
        for file, text in renewed(Path(named))[0].items():
            file.write_text(text, encoding="utf-8", newline="\n")
