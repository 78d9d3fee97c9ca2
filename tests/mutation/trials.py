"""Runs tests in processes of their own, so that nothing of one mutant reaches the next."""

from __future__ import annotations

import contextlib
import importlib
import io
import multiprocessing
import os
import sys
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

import pytest

from tests.mutation.installing import install
from tests.mutation.mutants import Mutant
from tests.mutation.touching import Touches

#: A mutant may make a loop endless; one whose tests run so much longer than they ever do is noticed.
SECONDS = 300.0
_OPTIONS = (
    "--doctest-modules",
    "--import-mode=importlib",
    "-q",
    "-x",
    "-p",
    "no:cacheprovider",
    "-p",
    "no:randomly",
)
_KINDS = ("fork",) if hasattr(os, "fork") else ("spawn",)


@dataclass
class Baseline:
    """What the tests do as things are: keys touched and seconds by test, and the libraries they import."""

    touched: dict[str, set[str]]
    seconds: dict[str, float]
    libraries: list[str] = field(default_factory=list)


def baseline(root: Path, modules: Collection[str], tests: Sequence[str]) -> Baseline:
    """All tests once. RuntimeError with their output when one fails."""
    found = _apart(_run_baseline, root, tuple(modules), tuple(tests))
    if not isinstance(found, Baseline):
        raise RuntimeError(found or "the tests did not end")
    return found


def preload(names: Collection[str]) -> None:
    """Import libraries once, so that each process starts with them."""
    for name in names:
        with contextlib.suppress(
            Exception
        ):  # only to save time: who needs it imports it again and sees why not
            importlib.import_module(name)


def killer(root: Path, mutant: Mutant, tests: Sequence[str]) -> str | None:
    """The first of the tests to fail on the mutant; None when all pass."""
    found = _apart(_run_mutant, root, mutant, tuple(tests))
    return "out of time" if found is None else found or None


def _apart(work: Callable[..., Any], *given: Any) -> Any:
    context: Any = multiprocessing.get_context(_KINDS[0])
    mine, theirs = context.Pipe(duplex=False)
    process = context.Process(target=_send, args=(theirs, work, given))
    process.start()
    theirs.close()
    try:
        return mine.recv() if mine.poll(SECONDS) else None
    except EOFError:
        raise RuntimeError(f"the process for {given[1]} broke off") from None
    finally:
        process.kill()
        process.join()


def _send(connection: Connection, work: Callable[..., Any], given: tuple[Any, ...]) -> None:
    connection.send(work(*given))


def _run_baseline(root: Path, modules: tuple[str, ...], tests: tuple[str, ...]) -> Baseline | str:
    touches = Touches(root, modules)
    code, said = _pytest(root, tests, touches)
    if code != pytest.ExitCode.OK:
        return said
    return Baseline(dict(touches.of_tests), touches.seconds, _libraries(root))


def _libraries(root: Path) -> list[str]:
    """Modules from elsewhere, in the order of their import."""
    files = {name: getattr(module, "__file__", None) or "" for name, module in list(sys.modules.items())}
    return [
        name for name, file in files.items() if "site-packages" in file and not file.startswith(str(root))
    ]


def _run_mutant(root: Path, mutant: Mutant, tests: tuple[str, ...]) -> str:
    """The test that fails, or nothing."""
    try:
        install(root, mutant)
    except Exception as cannot:
        return f"import: {cannot!r}"
    chosen = _Chosen(tests)
    code, said = _pytest(root, sorted({_file(test) for test in tests}), chosen)
    if code == pytest.ExitCode.OK:
        return ""
    if code in (pytest.ExitCode.TESTS_FAILED, pytest.ExitCode.INTERRUPTED):
        return chosen.failed or "collection"
    raise RuntimeError(said)


def _pytest(root: Path, tests: Sequence[str], plugin: object) -> tuple[int, str]:
    os.chdir(root)
    options = (*_OPTIONS, f"--rootdir={root}", "-W", "ignore::pytest.PytestAssertRewriteWarning")
    with contextlib.redirect_stdout(io.StringIO()) as said, contextlib.redirect_stderr(said):
        code = pytest.main([*options, *tests], [_Settled(), plugin])
    return int(code), said.getvalue()


class _Settled:
    """Lets hypothesis try the same examples each time and show none in its shortest form."""

    def pytest_collection(self) -> None:
        from hypothesis import Phase, settings

        phases = (Phase.explicit, Phase.generate)
        settings.register_profile("mutation", deadline=None, derandomize=True, database=None, phases=phases)
        settings.load_profile("mutation")


class _Chosen:
    """Runs only the tests that can see the mutant, in the order given.

    Where the mutant gave a test another name, all tests of its file run.
    """

    def __init__(self, tests: Sequence[str]) -> None:
        self._order = {test: place for place, test in enumerate(tests)}
        self.failed = ""

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        renamed = {_file(test) for test in self._order.keys() - {item.nodeid for item in items}}
        chosen = [item for item in items if item.nodeid in self._order or _file(item.nodeid) in renamed]
        items[:] = sorted(chosen, key=lambda item: self._order.get(item.nodeid, len(self._order)))

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid


def _file(test: str) -> str:
    return test.partition("::")[0]
