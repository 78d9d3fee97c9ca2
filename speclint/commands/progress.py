"""How far long work has come: on a terminal only, beside what the command prints, never in a pipe."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Told = Callable[[str], None]


@contextmanager
def progress(what: str) -> Iterator[Told]:
    """Show what is going on while a block runs; the function that it gives takes what comes next."""
    if not sys.stderr.isatty() or os.environ.get("TERM") == "dumb":
        yield lambda _text: None
        return
    from rich.console import Console
    from rich.text import Text

    with Console(stderr=True).status(Text(what)) as status:
        yield lambda text: status.update(Text(text))
