"""Lines of a report with emphasis, for a terminal or a pipe; the text never depends on colour."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from typing import IO, Literal

from msgspec import Struct, field

from speclint.reports.printable import visible
from speclint.reports.terminal import NARROWEST, takes_styles

Emphasis = Literal["", "strong", "faint", "hold", "nonconformity", "query", "observation", "conforms"]
Line = tuple[tuple[str, Emphasis], ...]

_SHORT = 5  # a mark such as [12] follows its line where it does not fit beside it

#: Styles for a terminal, legible on dark and light backgrounds.
_INK: dict[Emphasis, str] = {
    "strong": "bold",
    "faint": "dim",
    "hold": "bold reverse",
    "nonconformity": "bold underline",
    "query": "italic",
    "observation": "",
    "conforms": "",
}


class Page(Struct):
    """Collects lines of a width, for any output."""

    width: int
    lines: list[Line] = field(default_factory=list)

    def line(self, *parts: tuple[str, Emphasis] | str) -> None:
        """Add one line of parts, each plain text or text with an emphasis."""
        self.lines.append(
            tuple(
                (visible(part), "") if isinstance(part, str) else (visible(part[0]), part[1])
                for part in parts
            )
        )

    def gap(self) -> None:
        """Add an empty line, unless the last one is empty already."""
        if self.lines and self.lines[-1]:
            self.lines.append(())

    def gap_always(self) -> None:
        """Add an empty line, also where the page begins: its lines are to follow others."""
        self.lines.append(())

    def rule(self, mark: str = "─") -> None:
        """Add a line across the page."""
        self.line((mark * self.width, "faint"))

    def ends(self, left: str, right: str, emphasis: Emphasis = "", hanging: int = 2) -> None:
        """Add a line with something at each end; two lines where they do not fit."""
        space = self.width - len(left) - len(right)
        if space < 2:
            short = len(right) <= _SHORT
            self.wrapped(f"{left}  {right}" if short else left, hanging=hanging, emphasis=emphasis)
            if short:
                return
            self.line((right.rjust(self.width) if len(right) <= self.width else right, "faint"))
        else:
            self.line((left, emphasis), " " * space, (right, "faint"))

    def wrapped(self, text: str, *, indent: int = 0, hanging: int = 0, emphasis: Emphasis = "") -> None:
        """Add a paragraph, broken at words to the width of the page."""
        for row in self._broken(text, indent, hanging):
            self.line((row, emphasis))

    def entry(
        self, label: str, text: str, *, indent: int = 8, column: int = 11, emphasis: Emphasis = ""
    ) -> None:
        """Add a labelled paragraph: the label in a column of its own, the text hanging beside it."""
        if self.width < NARROWEST + indent + column:
            indent, column = min(indent, 2), min(column, 9)
        head = " " * indent + label.ljust(max(column, len(label) + 1 if label else 0))
        rows = list(self._broken(text, len(head), 0)) or [""]
        self.line((head, "faint"), (rows[0][len(head) :], emphasis))
        for row in rows[1:]:
            self.line((row, emphasis))

    def _broken(self, text: str, indent: int, hanging: int) -> Iterator[str]:
        yield from textwrap.wrap(
            visible(text),
            max(self.width, indent + 20),
            initial_indent=" " * indent,
            subsequent_indent=" " * (indent + hanging),
            break_long_words=False,
            break_on_hyphens=False,
        )

    def text(self) -> str:
        """The page without emphasis."""
        return "".join("".join(part for part, _ in line).rstrip() + "\n" for line in self.lines)


def put(page: Page, stream: IO[str]) -> None:
    """Write a page: with styles on a terminal that supports them, else plain."""
    if takes_styles(stream):
        _inked(page.lines, stream)
    else:
        stream.write(page.text())


def _inked(lines: Iterable[Line], stream: IO[str]) -> None:
    from rich.console import Console
    from rich.text import Text

    console = Console(file=stream, soft_wrap=True)
    for line in lines:
        console.print(Text.assemble(*((part, _INK.get(emphasis, "")) for part, emphasis in line)), end="\n")
