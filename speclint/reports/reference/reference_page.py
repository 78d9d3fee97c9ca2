"""One page of the reference: what stands on it, and how it is laid out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct, field

from speclint.reports.pack.page import style_with
from speclint.reports.pack.policy import policy_of
from speclint.reports.pack.templating import file_text, template
from speclint.reports.phrases import CAUTIONS
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.places import REFERENCE_MARK

PACKAGE = "speclint.reports.reference"
INDEX_FILE = "search-index.js"


class ReferencePage(Struct, frozen=True):
    """A page: its file, its title, the section to which it belongs, and what its template is given.

    ``entries`` are what the search finds of it; ``drawings`` the drawings on it; ``here`` the names of what stands on
    it, for a list at its side: the anchor of each is that of its entry.
    """

    file: str
    title: str
    section: str
    layout: str
    content: Mapping[str, Any] = field(default_factory=dict)
    entries: Sequence[Entry] = ()
    drawings: Sequence[str] = ()
    here: Sequence[str] = ()


class Link(Struct, frozen=True):
    """Words that lead to a place, which is written from the top of the reference; "" where they lead nowhere."""

    words: str
    place: str


def html_of(page: ReferencePage, pages: Sequence[ReferencePage]) -> str:
    """A page as HTML, with the contents of its section beside it."""
    style = (style_with(page.drawings) if page.drawings else file_text("style.css")) + file_text(
        "reference.css", PACKAGE
    )
    script = file_text("search.js", PACKAGE)
    up = "../" * page.file.count("/")
    firsts = {one.section: one for one in reversed(pages)}
    return template(page.layout, PACKAGE).render(
        page=page,
        here=[(one.name, one.place) for one in page.entries if one.name in page.here],
        up=up,
        index_file=INDEX_FILE,
        mark=REFERENCE_MARK,
        firsts=firsts,
        cautions=CAUTIONS,
        sections=[(name, firsts[name]) for name in dict.fromkeys(one.section for one in pages)],
        beside=[one for one in pages if one.section == page.section],
        policy=policy_of(style, script, loads=True),
        style=style,
        script=script,
        **page.content,
    )
