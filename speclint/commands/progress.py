"""Progress of long work with its counts: on a terminal only, beside the output of the command, never in a pipe."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import IO


class Progress:
    """One line on a terminal that says how far the work is; where there is none to say it on, it says nothing."""

    def __init__(self, stage: str, terminal: IO[str] | None) -> None:
        self._stage, self._terminal, self._shown = stage, terminal, 0
        self._say(stage)

    def __call__(self, stage: str) -> None:
        """Begin the next stage of the work."""
        self._stage = stage
        self._say(stage)

    def part(self, done: int, whole: int) -> None:
        """Say how many pieces of the stage are done."""
        self._say(f"{self._stage}: {done} of {whole}")

    def end(self) -> None:
        """Take the line away."""
        self._say("")

    def _say(self, text: str) -> None:
        if self._terminal is None:
            return
        blank = " " * max(0, self._shown - len(text))
        self._terminal.write(f"\r{text}{blank}" + ("" if text else "\r"))
        self._terminal.flush()
        self._shown = len(text)


@contextmanager
def progress(stage: str) -> Iterator[Progress]:
    """Say how far the work is while a block runs, on the terminal of the error stream."""
    stream = sys.stderr
    told = stream is not None and stream.isatty() and os.environ.get("TERM") != "dumb"
    shown = Progress(stage, stream if told else None)
    try:
        yield shown
    finally:
        shown.end()
