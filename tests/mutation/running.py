"""Runs pytest in this process, the same way each time."""

from __future__ import annotations

import contextlib
import io
import os
import sys
import tempfile
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import pytest

from tests.mutation.apart import apart
from tests.mutation.installing import Finder

#: Seconds that the whole example may take.
_LONGEST = 1800.0
_OPTIONS = (
    "--doctest-modules",
    "--import-mode=importlib",
    "-q",
    "-p",
    "no:cacheprovider",
    "-p",
    "no:randomly",
)


def run_pytest(root: Path, tests: Sequence[str], plugin: object, stop: bool = True) -> tuple[int, str]:
    """The exit code and what was printed. Stops at the first test that fails unless told to run all."""
    os.chdir(root)
    options = (
        *_OPTIONS,
        *(["-x"] if stop else []),
        f"--rootdir={root}",
        "-W",
        "ignore::pytest.PytestAssertRewriteWarning",
    )
    with contextlib.redirect_stdout(io.StringIO()) as said, contextlib.redirect_stderr(said):
        code = pytest.main([*options, *tests], [_Settled(), plugin])
    return int(code), said.getvalue()


@cache
def keep_example() -> None:
    """Have what the user keeps hold the whole example, worked in a process of its own by the code as it stands: some
    minutes where the code has changed."""
    if not apart(_LONGEST, _assess, called="the example"):
        raise RuntimeError(f"the example was not assessed within {_LONGEST:.0f} s")


def assess_example() -> None:
    """Have the whole example assessed in this process, from what the user keeps where it is there.

    What this process makes is kept for nobody: its code is changed, and what changed code gives would pass for the
    result of the code as it stands.
    """
    with tempfile.TemporaryDirectory() as folder:
        _assess(folder)


def _assess(caches: str | None = None) -> bool:
    from speclint.checking import usual_folder
    from tests.example import LENT, SHARED, assessed

    lent = str(usual_folder())
    with tempfile.TemporaryDirectory() as folder, pytest.MonkeyPatch.context() as patch:
        for name, place in ((SHARED, folder), (LENT, lent), ("XDG_CACHE_HOME", caches)):
            if place is not None:
                patch.setenv(name, place)
        assessed()
    return True


class _Settled:
    """Lets hypothesis try the same examples each time and show none in its shortest form, and changed modules be
    found before pytest finds those that it was told by name, for their doctests."""

    def pytest_collection(self) -> None:
        from hypothesis import Phase, settings

        sys.meta_path.sort(key=lambda finder: not isinstance(finder, Finder))

        phases = (Phase.explicit, Phase.generate)
        settings.register_profile("mutation", deadline=None, derandomize=True, database=None, phases=phases)
        settings.load_profile("mutation")


class Chosen:
    """Runs only the tests that can see the mutant, in the order given.

    Where the mutant gave a test another name, all tests of its file run.
    """

    def __init__(self, tests: Sequence[str]) -> None:
        self._order = {test: place for place, test in enumerate(tests)}
        self.failed = ""

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        renamed = {file_of(test) for test in self._order.keys() - {item.nodeid for item in items}}
        chosen = [item for item in items if item.nodeid in self._order or file_of(item.nodeid) in renamed]
        items[:] = sorted(chosen, key=lambda item: self._order.get(item.nodeid, len(self._order)))

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid


def file_of(test: str) -> str:
    """The file that a test stands in."""
    return test.partition("::")[0]
