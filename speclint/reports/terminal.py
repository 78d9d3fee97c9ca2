"""Where a page is written to: how wide it is, whether it takes styles, and that it takes every character."""

from __future__ import annotations

import os
import sys
from typing import IO, Final

#: Columns of the narrowest page.
NARROWEST: Final = 40
_PIPE_WIDTH = 100  # columns where there is no terminal to ask


def width_of(stream: IO[str] | None) -> int:
    """Columns to write for: those that COLUMNS sets, else of the terminal, else a fixed number."""
    if stream is None or not stream.isatty():
        wanted = os.environ.get("COLUMNS", "")
        return max(NARROWEST, int(wanted)) if wanted.isdecimal() and int(wanted) else _PIPE_WIDTH
    import shutil  # which takes longer to import than all else here

    return max(NARROWEST, shutil.get_terminal_size((_PIPE_WIDTH, 24)).columns)


def takes_styles(stream: IO[str] | None) -> bool:
    """Whether a stream leads to a terminal that shows styles."""
    at_terminal = stream is not None and stream.isatty()
    return at_terminal and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def speak_utf8() -> None:
    """Make the standard streams take every character, also where the encoding of the system cannot."""
    for stream in (sys.stdout, sys.stderr):  # None where it was closed before Python began
        encoding = getattr(stream, "encoding", "") or ""
        if encoding.lower().replace("-", "") != "utf8" and hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8")
