"""Runs tests in processes of their own, so that nothing of one mutant reaches the next."""

from __future__ import annotations

import contextlib
import importlib
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
from tests.mutation.running import Chosen, file_of, run_pytest
from tests.mutation.touching import Touches

#: Longest that all tests together may take.
LONGEST = 3600.0
_KINDS = ("fork",) if hasattr(os, "fork") else ("spawn",)


@dataclass
class Baseline:
    """What the tests do as things are: keys touched and seconds by test, and the libraries they import."""

    touched: dict[str, set[str]]
    seconds: dict[str, float]
    libraries: list[str] = field(default_factory=list)


def baseline(root: Path, modules: Collection[str], tests: Sequence[str]) -> Baseline:
    """All tests once. RuntimeError with their output when one fails."""
    found = _apart(LONGEST, _run_baseline, root, tuple(modules), tuple(tests))
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


def killer(root: Path, mutant: Mutant, tests: Sequence[str], seconds: float) -> str | None:
    """The first of the tests to fail on the mutant, or to take longer than that; None when all pass."""
    found = _apart(seconds, _run_mutant, root, mutant, tuple(tests))
    return "out of time" if found is None else found or None


def _apart(seconds: float, work: Callable[..., Any], *given: Any) -> Any:
    context: Any = multiprocessing.get_context(_KINDS[0])
    mine, theirs = context.Pipe(duplex=False)
    process = context.Process(target=_send, args=(theirs, work, given))
    process.start()
    theirs.close()
    try:
        return mine.recv() if mine.poll(seconds) else None
    except EOFError:
        raise RuntimeError(f"the process for {given[1]} broke off") from None
    finally:
        process.kill()
        process.join()


def _send(connection: Connection, work: Callable[..., Any], given: tuple[Any, ...]) -> None:
    connection.send(work(*given))


def _run_baseline(root: Path, modules: tuple[str, ...], tests: tuple[str, ...]) -> Baseline | str:
    touches = Touches(root, modules)
    code, said = run_pytest(root, tests, touches)
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
    chosen = Chosen(tests)
    code, said = run_pytest(root, sorted({file_of(test) for test in tests}), chosen)
    if code == pytest.ExitCode.OK:
        return ""
    if code in (pytest.ExitCode.TESTS_FAILED, pytest.ExitCode.INTERRUPTED):
        return chosen.failed or "collection"
    raise RuntimeError(said)
