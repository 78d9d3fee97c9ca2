"""Output of a command: a page to the terminal, text or data to a pipe or a file."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.streams import standard_output

if TYPE_CHECKING:
    from speclint.reports import Page


def show(page_of: Callable[[int], Page], file: Path | None = None) -> Page:
    """Print a page as wide as there is room, or write it to a file; returns the page.

    :raises OutputError: for a file that cannot be written, or belongs to a design.
    :raises StreamError: for a standard output that cannot be.
    """
    from speclint.reports import put, width_of

    page = page_of(width_of(sys.stdout))
    if file is not None:
        write(page.text(), file)
        return page
    with standard_output() as stream:
        put(page, stream)
    return page


def kept_of(page: Page) -> str:
    """What :func:`show_again` prints a page from, on the same terminal."""
    from speclint.reports import takes_styles

    if not takes_styles(sys.stdout):
        return page.text()
    import json

    return json.dumps(page.lines)


def show_again(shown: str) -> None:
    """Print a page once more, from what was kept of it.

    :raises StreamError: for a standard output that cannot be.
    """
    from speclint.reports import takes_styles

    if not takes_styles(sys.stdout):
        write(shown)
        return
    import json

    from speclint.reports import Page, put

    with standard_output() as stream:
        put(Page(0, [tuple((text, ink) for text, ink in line) for line in json.loads(shown)]), stream)


def write(text: str, file: Path | None = None) -> None:
    """Print text, or write it to a file.

    :raises OutputError: for a file that cannot be written, or belongs to a design.
    :raises StreamError: for a standard output that cannot be.
    """
    if file is None:
        with standard_output() as stream:
            stream.write(text)
        return
    from speclint.repository import write_output

    write_output(file, text)


def write_data(data: object, file: Path | None = None) -> None:
    """Print data as JSON, or write it to a file."""
    from speclint.reports import json_text

    write(json_text(data), file)
