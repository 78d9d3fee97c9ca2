"""Text as Markdown that shows exactly that text."""

from __future__ import annotations

import re
from collections.abc import Sequence

from speclint.reports.printable import visible

#: What begins a mark, a table cell, an HTML tag or an entity, and what a forge makes a link or a mention of.
_MEANT = re.compile(r"[\\`*_\[\]()<>|~#@&:!$]|(?<=\bwww)\.|^[-+=]")
#: A number at the beginning of a line that would begin a list, as Markdown reads up to nine digits.
_LISTED = re.compile(r"^(\d{1,9})([.)])")
_ENTITIES = {"<": "&lt;", ">": "&gt;", "&": "&amp;", "@": "&#64;", ":": "&#58;", ".": "&#46;", "#": "&#35;"}
_HARMLESS_COLON = re.compile(r"&#58;(?=\s|\d|$)")
_HARMLESS_BRACKET = re.compile(r"\\([()])")


def marked(text: str) -> str:
    r"""Text on one line in which nothing is a mark, a tag, a link or a mention.

    >>> marked("d_2 < 5 | <b>")
    'd\\_2 &lt; 5 \\| &lt;b&gt;'
    """
    shown = _MEANT.sub(lambda found: _ENTITIES.get(found[0], f"\\{found[0]}"), visible(text).strip())
    shown = _HARMLESS_BRACKET.sub(r"\1", _HARMLESS_COLON.sub(":", shown))
    return _LISTED.sub(r"\1\\\2", shown)


def row(*cells: str) -> str:
    """A row of a table; the cells are Markdown already."""
    return f"| {' | '.join(cells)} |"


def table(heading: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> list[str]:
    """A table with its heading; nothing where there are no rows."""
    if not rows:
        return []
    return [row(*heading), row(*("---" for _ in heading)), *(row(*cells) for cells in rows), ""]
