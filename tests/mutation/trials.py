"""Tries a mutant in a process that imports everything anew, for what only an import brings in."""

from __future__ import annotations

import contextlib
import importlib
import os
from collections.abc import Collection, Sequence
from pathlib import Path

import pytest

from tests.mutation.apart import apart
from tests.mutation.installing import install
from tests.mutation.mutants import Mutant
from tests.mutation.running import Chosen, file_of, run_pytest
from tests.mutation.serving import OUT_OF_TIME


def preload(names: Collection[str]) -> None:
    """Import libraries once, so that each process starts with them."""
    for name in names:
        with contextlib.suppress(
            Exception
        ):  # only to save time: who needs it imports it again and sees why not
            importlib.import_module(name)


def killer(root: Path, mutant: Mutant, tests: Sequence[str], seconds: float) -> str | None:
    """The first of the tests to fail on the mutant, or to take longer than that; None when all pass."""
    found = apart(seconds, _run_mutant, root, mutant, tuple(tests), called=mutant)
    return OUT_OF_TIME if found is None else found or None


def _run_mutant(root: Path, mutant: Mutant, tests: tuple[str, ...]) -> str:
    """The test that fails, or nothing."""
    os.chdir(root)
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
