"""A process of its own in which mutants are tried: it may hang or fill the memory, and is then ended and begun anew."""

from __future__ import annotations

import multiprocessing
import sys
import time
from collections.abc import Mapping
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, TypeAlias

LONGEST = 20.0  # seconds of the processor for one mutant
MOST_MEMORY = 500e6  # bytes
_PATIENCE = 15.0  # a machine that is busy is given so many times as long

Holds: TypeAlias = Mapping[tuple[str, str], frozenset[str]]


class Bench:
    """Tries mutants one by one in another process."""

    def __init__(self) -> None:
        self._process: BaseProcess | None = None
        self._pipe: Connection[Any, Any] | None = None

    @property
    def fresh(self) -> bool:
        """Whether the process is still to be begun, and knows no design."""
        return self._process is None

    def try_out(
        self, files: Mapping[str, bytes], checked: str, command: tuple[str, ...], mutated: str
    ) -> list[str]:
        """What is wrong with how a design was received."""
        if self._process is None:
            self._begin()
        assert self._process is not None
        assert self._pipe is not None
        try:
            self._pipe.send((dict(files), checked, command, mutated))
            return self._answer(self._process, self._pipe)
        except (EOFError, OSError):
            self.end()
            return ["the process ended"]

    def _answer(self, process: BaseProcess, pipe: Connection[Any, Any]) -> list[str]:
        began = time.monotonic()
        while not pipe.poll(1.0):
            waited = time.monotonic() - began
            if not process.is_alive():
                raise EOFError
            if waited > LONGEST * _PATIENCE:
                self.end()
                return [f"no answer in {waited:.0f} s"]
        found: list[str] = pipe.recv()
        return found

    def _begin(self) -> None:
        context = multiprocessing.get_context("spawn")
        self._pipe, theirs = context.Pipe()
        self._process = context.Process(target=_serve, args=(theirs,), daemon=True)
        self._process.start()
        theirs.close()

    def end(self) -> None:
        """End the process."""
        if self._process is not None:
            self._process.kill()
            self._process.join()
        self._process = self._pipe = None


def _serve(pipe: Connection[Any, Any]) -> None:
    from tests.fuzzing.trial import assessed, faults, holds_of

    known: dict[str, Holds] = {}
    while True:
        files, checked, command, mutated = pipe.recv()
        with TemporaryDirectory() as name:
            folder = Path(name).resolve()
            _write(folder, files)
            if mutated == "":
                known[checked] = holds_of(assessed(folder, checked))
                pipe.send([])
                continue
            before = _peak()
            found = faults(folder, checked, command, mutated, known[checked])
            if (grown := _peak() - before) > MOST_MEMORY:
                found.append(f"it took {grown / 1e6:.0f} MB")
            pipe.send(found)


def _write(folder: Path, files: Mapping[str, bytes]) -> None:
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text)


def _peak() -> float:
    """The most memory that the process has held, in bytes; 0 where the system does not say."""
    if sys.platform == "win32":
        return 0.0
    import resource

    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return float(most) if sys.platform == "darwin" else most * 1024.0
