"""The document as one page of HTML that needs nothing but a browser."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import partial
from typing import TYPE_CHECKING, Any

from speclint.reports.pack.document import Document
from speclint.reports.pack.packed_sheets import packed
from speclint.reports.pack.policy import policy_of
from speclint.reports.pack.sheet_pages import SheetPages
from speclint.reports.pack.templating import file_text, template
from speclint.reports.printable import visible

if TYPE_CHECKING:
    from speclint.reports.dossier import DossierSaid


#: An inspection sheet lies across, and is as wide as its table; a key may be broken anywhere, a head nowhere.
_LANDSCAPE = """@page { size: A4 landscape; margin: 12mm; }
@media (min-width: 64rem) { body { display: block; max-width: none; } }
.inspection { table-layout: auto; } .inspection :is(th, td):is(:first-child, :nth-child(2)) { width: auto; }
.inspection tbody th { min-width: 14rem; } .inspection td { min-width: 2.4rem; overflow-wrap: normal; }
@media print { .decision.inspection.index { break-inside: auto; }
  .inspection tbody th { min-width: 44mm; } .inspection td { min-width: 10mm; height: 9mm; }
  .inspection td:is(:nth-child(9), :nth-child(n+14)) { min-width: 20mm; } }
"""
#: Rows of a folded list from which on it is packed.
_LONG = 200
#: The width of a drawing, as its class says it.
_WIDTH = re.compile(r'class="drawing own-(\d+)"')
_DRAWING = re.compile(r"<svg .*?</svg>", re.DOTALL)
#: An attribute of one word; the last of a tag is left as it is, since a slash may follow it.
_OF_ONE_WORD = re.compile(r' ([a-z0-9-]+)="([\w.#-]+)"(?= )')
_NAMESPACE = ' xmlns="http://www.w3.org/2000/svg"'


def page_of(document: Document) -> str:
    """The whole pack.

    Sheets of checks that conform, and long ones, are kept packed in the page, and laid out when they are opened or
    printed.
    """
    # sheets of one rule are nearly alike: side by side they pack into less
    kept = (one for one in document.sheets() if one.way)
    alike = sorted(kept, key=lambda one: (one.check.rule.name, one.check.component))
    laid_out = SheetPages(document.sheets())
    sheets = {one.anchor: laid_out.unnumbered(one) for one in alike}
    long_lists = dict(_long_lists(document))
    placed = [*document.figures, *(one for part in document.parts for one in part.figures)]
    style = _style(document.title.works, (one.shown.figure.drawing for one in placed))
    script = file_text("script.js")
    page: str = template("pack.html").render(
        document=document,
        packed=packed({**sheets, **long_lists}),
        long_lists=long_lists,
        style=style,
        script=script,
        policy=policy_of(style, script),
        sheet_html=laid_out.numbered,
    )
    return with_shorter_drawings(page)


def with_shorter_drawings(page: str) -> str:
    """A page whose drawings leave out what HTML does not ask of them: quotes round one word, and the namespace."""
    return _DRAWING.sub(lambda one: _OF_ONE_WORD.sub(r" \1=\2", one[0]).replace(_NAMESPACE, "", 1), page)


def _long_lists(document: Document) -> Iterator[tuple[str, str]]:
    """The lists of what was not looked at that are long, by their places in the page: they are packed as sheets are."""
    for number, (_, rows) in enumerate(document.not_looked_at.lists, start=1):
        if len(rows) > _LONG:
            yield f"gaps.{number}", template("listed.html").render(rows=rows).strip()


def sheets_page(document: Document) -> str:
    """Some sheets alone, laid out in full."""
    style = file_text("style.css")
    return template("sheets.html").render(
        document=document,
        style=style,
        policy=policy_of(style),
        sheet_html=partial(SheetPages(document.sheets()).numbered, alone=True),
    )


def inspection_html(**content: Any) -> str:
    """The inspection sheet of a part, in landscape: from what its template names."""
    style = file_text("style.css") + _LANDSCAPE
    return template("inspection.html").render(style=style, policy=policy_of(style), **content)


def dossier_page(heading: str, found: DossierSaid) -> str:
    """The record for certification alone."""
    style = file_text("style.css")
    return template("dossier.html").render(style=style, policy=policy_of(style), heading=heading, found=found)


def _style(works: str, drawings: Iterable[str]) -> str:
    """The style of the pack: with the works at the head of each page, and that of its drawings."""
    head = f"@page {{ @top-left {{ content: {quoted(visible(works))} ', design review'; }} }}\n"
    return style_with(drawings) + head


def style_with(drawings: Iterable[str]) -> str:
    """The style of a page with some drawings: with a rule for each width of one, for no element has its own."""
    widths = sorted({int(width) for drawing in drawings for width in _WIDTH.findall(drawing)})
    rules = "".join(f".own-{width} {{ --own: {width}px; }}\n" for width in widths)
    return file_text("drawings.css") + file_text("style.css") + rules


def quoted(text: str) -> str:
    r"""A text as a string of CSS, of which nothing can be taken for an end of it, or of the style.

    >>> print(quoted('5" </style>'))
    "5\22  \3c \2f style\3e "
    """
    letters = (one if one.isalnum() or one in " ,.-" else f"\\{ord(one):x} " for one in text)
    return f'"{"".join(letters)}"'
