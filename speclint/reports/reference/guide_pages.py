"""The guide: texts of Markdown that stand beside this module, a page each in the order of their file names.

A text begins with its title, ``# Title``. A picture is written ``![caption](figure:NAME)`` in a paragraph of its own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from html import escape
from importlib.resources import files
from typing import TYPE_CHECKING

from speclint.reports.reference.entries import Entry
from speclint.reports.reference.places import file_of
from speclint.reports.reference.reference_page import PACKAGE, ReferencePage
from speclint.reports.reference.sections import GUIDE

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token

_FOLDER, _ENDING, _FIGURE = "guide", ".md", "figure:"
_TITLE = re.compile(r"# (.+)\n")
_NUMBER = re.compile(r"^\d+-")

#: Gives a picture of the guide as SVG by its name.
Draws = Callable[[str], str]


def guide_texts() -> list[tuple[str, str]]:
    """The texts of the guide, each with the name of its file, in their order."""
    folder = files(PACKAGE).joinpath(_FOLDER)
    found = (one for one in folder.iterdir() if one.name.endswith(_ENDING))
    return [(one.name, one.read_text(encoding="utf-8")) for one in sorted(found, key=lambda one: one.name)]


def guide_pages(texts: Iterable[tuple[str, str]], draw: Draws) -> Iterator[ReferencePage]:
    """A page for each text.

    :raises ValueError: for a text that does not begin with its title.
    """
    for name, text in texts:
        title = _TITLE.match(text)
        if title is None:
            raise ValueError(f"{name}: a text of the guide begins with its title, # Title")
        page = _Text(draw)
        html = page.html(text[title.end() :])
        file = file_of(_FOLDER, _NUMBER.sub("", name.removesuffix(_ENDING)))
        entries = [Entry(title[1], "guide", file, page.first)]
        entries += [Entry(words, f"guide: {title[1]}", f"{file}#{anchor}") for anchor, words in page.headings]
        yield ReferencePage(file, title[1], GUIDE, "guide.html", {"html": html}, entries, page.drawings)


class _Text:
    """One text as HTML: its headings can be linked to, its pictures are drawn in place."""

    def __init__(self, draw: Draws) -> None:
        self._draw = draw
        self.headings: list[tuple[str, str]] = []
        self.drawings: list[str] = []
        self.first = ""

    def html(self, text: str) -> str:
        """The text after its title."""
        reader = _reader()
        tokens = reader.parse(text)
        return "".join(self._blocks(tokens, reader))

    def _blocks(self, tokens: Sequence[Token], reader: MarkdownIt) -> Iterator[str]:
        begun: list[Token] = []
        for number, token in enumerate(tokens):
            inline = tokens[number - 1] if number else token
            if token.type == "fence" or token.type == "code_block":
                yield self._rendered(begun, reader) + _code(token)
                begun = []
                continue
            if token.type == "heading_close":
                anchor = f"part-{len(self.headings) + 1}"
                begun[-2].attrSet("id", anchor)
                self.headings.append((anchor, inline.content))
            begun.append(token)
            if token.type == "inline" and not self.first:
                self.first = token.content
            if token.type == "paragraph_close" and _is_figure(inline):
                yield self._rendered(begun[:-3], reader) + self._figure(inline)
                begun = []
        yield self._rendered(begun, reader)

    def _rendered(self, tokens: Sequence[Token], reader: MarkdownIt) -> str:
        return str(reader.renderer.render(tokens, reader.options, {}))

    def _figure(self, inline: Token) -> str:
        image = (inline.children or [])[0]
        drawing = self._draw(str(image.attrs["src"]).removeprefix(_FIGURE))
        self.drawings.append(drawing)
        caption = escape(image.content)
        return (
            f"<figure class=drawn><figcaption>{caption}</figcaption><div class=scroll tabindex=0 role=group "
            f'aria-label="drawing: {caption}">{drawing}</div></figure>\n'
        )


def _code(token: Token) -> str:
    """A block of code, which scrolls in a frame of its own where it is wide."""
    code = escape(token.content)
    return (
        f"<div class=scroll tabindex=0 role=group aria-label=example><pre><code>{code}</code></pre></div>\n"
    )


def _is_figure(token: Token) -> bool:
    children = token.children or []
    return (
        len(children) == 1
        and children[0].type == "image"
        and str(children[0].attrs["src"]).startswith(_FIGURE)
    )


def _reader() -> MarkdownIt:
    """CommonMark with tables; markup in a text is shown as it is written."""
    from markdown_it import MarkdownIt

    return MarkdownIt("commonmark", {"html": False}).enable("table")
