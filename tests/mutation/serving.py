"""A process that has collected the tests of a package and tries mutants in forks of itself, one after another."""

from __future__ import annotations

import gc
import multiprocessing
import tempfile
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from types import TracebackType
from typing import Any

import pytest

from tests.mutation.apart import by_itself, end
from tests.mutation.live import Live
from tests.mutation.mutants import Mutant
from tests.mutation.running import assess_example, keep_example, run_pytest

#: What a fork answers where only a fresh import brings the mutant in.
FRESH = "fresh"
OUT_OF_TIME = "out of time"
_LOOKS_EVERY = 5.0  # seconds, whether the process that tries mutants is still there


class Server:
    """The tests of some files, ready to be run. Only where a process can fork.

    It runs one test before all mutants, so that what each test loads anew is there: what that one touches is tried
    again with a fresh import where nothing else notices. Where they read the example it is assessed first instead.
    """

    def __init__(self, root: Path, tests: Sequence[str], first: str, example: bool = False) -> None:
        if example:
            keep_example()
        context: Any = multiprocessing.get_context("fork")
        self._mine, theirs = context.Pipe()
        self._folder = tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
        self._sound: set[str] = set()
        given = (theirs, self._folder.name, root, tuple(tests), first, example)
        self._process = context.Process(target=_serve, args=given)
        self._process.start()
        theirs.close()

    def first_to_fail(self, mutant: Mutant, tests: Mapping[str, float], seconds: float) -> str | None:
        """The first of the tests that fails on the mutant; None where none does; or ``FRESH``.

        Each is given with the seconds that it may take; all together may take ``seconds``. One that takes longer fails.

        :raises RuntimeError: where that test fails without the mutant too, and would pass for noticing every one.
        """
        found = self._tried(mutant, tests, seconds)
        if found is not None and found in tests and found not in self._sound:
            if self._tried(None, {found: tests[found]}, seconds) is not None:
                raise RuntimeError(f"{found} fails where nothing is changed")
            self._sound.add(found)
        return found

    def _tried(self, mutant: Mutant | None, tests: Mapping[str, float], seconds: float) -> str | None:
        self._mine.send((mutant, dict(tests), seconds))
        try:
            while not self._mine.poll(_LOOKS_EVERY):
                if not self._process.is_alive():  # what it started may hold its end of the pipe open
                    raise EOFError
            found: str | None = self._mine.recv()
        except EOFError:
            raise RuntimeError(f"the process that tries {mutant} broke off") from None
        return found

    def __enter__(self) -> Server:
        return self

    def __exit__(self, *_: type[BaseException] | BaseException | TracebackType | None) -> None:
        end(self._process)
        self._folder.cleanup()


def _serve(
    connection: Connection, folder: str, root: Path, tests: tuple[str, ...], first: str, example: bool
) -> None:
    by_itself(folder)
    if example:
        assess_example()
    run_pytest(root, tests, _Trials(connection, root, first))


class _Trials:
    """A pytest plugin that waits for mutants in the place of running tests."""

    def __init__(self, connection: Connection, root: Path, first: str) -> None:
        self._connection, self._root, self._first = connection, root, first
        self.failed = ""

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        items = {item.nodeid: item for item in session.items}
        if self._first in items:
            _run(items[self._first], None)
            self.failed = ""
        gc.collect()
        live = Live(self._root)
        gc.freeze()
        while True:
            mutant, tests, seconds = self._connection.recv()
            chosen = [items[test] for test in tests if test in items]
            self._connection.send(self._tried(live, mutant, chosen, _Patience(tests, seconds)))

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid

    def _tried(
        self, live: Live, mutant: Mutant | None, items: list[pytest.Item], patience: _Patience
    ) -> str | None:
        context: Any = multiprocessing.get_context("fork")
        mine, theirs = context.Pipe(duplex=False)
        with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
            process = context.Process(target=self._run, args=(theirs, folder, live, mutant, items))
            process.start()
            theirs.close()
            try:
                return _told(mine, patience)
            except EOFError:
                return "the process broke off"
            finally:
                end(process)
                mine.close()

    def _run(
        self, connection: Connection, folder: str, live: Live, mutant: Mutant | None, items: list[pytest.Item]
    ) -> None:
        by_itself(folder)
        if mutant is not None and not live.install(mutant):
            connection.send(FRESH)
            return
        for place, item in enumerate(items):
            connection.send(f"{OUT_OF_TIME}: {item.nodeid}")
            _run(item, items[place + 1] if place + 1 < len(items) else None)
            if self.failed:
                break
        connection.send(self.failed)


@dataclass(frozen=True)
class _Patience:
    """The seconds that each test may take, and all of them together: one that a mutant makes endless is left soon."""

    of_tests: Mapping[str, float]
    of_all: float


def _told(fork: Connection, patience: _Patience) -> str | None:
    """What a fork finds, or in which test it is when the time of that test, or of all, is over."""
    until = end = time.monotonic() + patience.of_all
    last: str | None = OUT_OF_TIME
    while fork.poll(max(until - time.monotonic(), 0)):
        found: str = fork.recv()
        if not found.startswith(OUT_OF_TIME):
            return found or None
        last = found
        test = found.removeprefix(f"{OUT_OF_TIME}: ")
        until = min(end, time.monotonic() + patience.of_tests[test])
    return last


def _run(item: pytest.Item, following: pytest.Item | None) -> None:
    item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
