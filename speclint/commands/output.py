"""Output of a command: a page to the terminal, text or data to a pipe or a file."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.reports import Page


def show(page_of: Callable[[int], Page], file: Path | None = None) -> None:
    """Print a page as wide as there is room, or write it to a file.

    :raises OutputError: for a file that cannot be written, or belongs to a design.
    """
    from speclint.reports import put, width_of

    page = page_of(width_of(sys.stdout))
    if file is not None:
        write(page.text(), file)
    else:
        put(page, sys.stdout)


def write(text: str, file: Path | None = None) -> None:
    """Print text, or write it to a file.

    :raises OutputError: for a file that cannot be written, or belongs to a design.
    """
    if file is None:
        sys.stdout.write(text)
        return
    from speclint.repository import write_output

    write_output(file, text)


def write_data(data: object, file: Path | None = None) -> None:
    """Print data as JSON, or write it to a file."""
    import json

    write(json.dumps(data, ensure_ascii=False, indent=1) + "\n", file)
