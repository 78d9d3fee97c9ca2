"""Progress of long work: on a terminal only, beside the output of the command, never in a pipe."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Told = Callable[[str], None]


@contextmanager
def progress(what: str) -> Iterator[Told]:
    """Show the stage of the work while a block runs; call the function that it gives with each next stage."""
    if sys.stderr is None or not sys.stderr.isatty() or os.environ.get("TERM") == "dumb":
        yield lambda _text: None
        return
    from rich.console import Console
    from rich.text import Text

    with Console(stderr=True).status(Text(what)) as status:
        yield lambda text: status.update(Text(text))
