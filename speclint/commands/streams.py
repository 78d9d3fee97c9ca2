"""The standard streams of a command: whatever happens to them, one line says so, and the exit code is never 0."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import IO

from speclint.errors import ReaderLeft, StreamError


@contextmanager
def standard_output() -> Iterator[IO[str]]:
    """Standard output, to be written to; at the end everything is written.

    :raises StreamError: where it cannot be.
    """
    stream = sys.stdout
    if stream is None:  # as Python has it where the stream was closed before it began
        raise StreamError("standard output is closed: send it to a file or to the null device")
    try:
        try:
            yield stream
        finally:
            stream.flush()
    except BrokenPipeError as problem:
        _give_up(stream)
        raise ReaderLeft("the reader of standard output has left") from problem
    except OSError as problem:
        _give_up(stream)
        raise StreamError(f"standard output cannot be written to: {problem.strerror or problem}") from problem


def _give_up(stream: IO[str]) -> None:
    """Give the interpreter a place to write what is left when it ends."""
    with suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)


def complain(problem: object) -> None:
    """One line on the error stream; where that cannot be written to, the exit code has to do."""
    with suppress(OSError, ValueError):
        print(f"speclint: {problem}", file=sys.stderr, flush=True)


def occupy() -> None:
    """Open what is closed of the first three files of a process, so that no file of a design is taken for a stream.

    An error stream that was closed takes what it is given and drops it: ``print`` would write it to standard output.
    """
    with suppress(OSError):
        while (number := os.open(os.devnull, os.O_RDWR)) <= 2:
            pass
        os.close(number)
    if sys.stderr is None:
        sys.stderr = os.fdopen(os.open(os.devnull, os.O_WRONLY), "w", encoding="utf-8")
