"""Which test runs which block of a package and reads which table, found by one run of the tests as they are.

Each block of statements gets a first statement that says so. A cached function keeps what ran while it was worked
out, and says it again whenever its result is handed out; a fixture that serves several tests says it for each of them.
What a file of tests runs while it is imported is kept apart.
"""

from __future__ import annotations

import ast
import builtins
import functools
from collections import defaultdict
from collections.abc import Callable, Collection, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.mutation.blocks import Blocks
from tests.mutation.installing import change_modules, watch_files
from tests.mutation.running import file_of

_TABLES = frozenset({".csv", ".toml"})


class Touches:
    """A pytest plugin that collects, for each test, the keys it touches: of blocks, and names of files.

    Fields:
        of_tests: by the name of the test.
        of_imports: by file of tests, what runs as it is imported.
        in_caches: keys of what ran to find a result that a cache keeps.
        seconds: that each test takes.
        failed: tests that fail.
    """

    def __init__(self, root: Path, modules: Collection[str]) -> None:
        self.root = root
        self.of_tests: dict[str, set[str]] = {}
        self.of_imports: dict[str, set[str]] = defaultdict(set)
        self.in_caches: set[str] = set()
        self.seconds: dict[str, float] = {}
        self.failed: list[str] = []
        self._of_fixtures: dict[str, set[str]] = defaultdict(set)
        self._now: set[str] = set()
        self._handed_out: set[tuple[int, Any]] = set()
        vars(builtins)["_touch_"] = self._now.add
        functools.lru_cache = _replaying(self)
        watch_files(self._opened)
        change_modules(
            root, {file: functools.partial(_instrument, file=file) for file in modules}, at_once=False
        )

    def replay(self, cached: Callable[..., Any]) -> Callable[..., Any]:
        """The cached function, which touches with each result all that was touched to find it."""
        kept: dict[Any, frozenset[str]] = {}

        @functools.wraps(cached)
        def handed_out(*arguments: Any, **named: Any) -> Any:
            key = (arguments, tuple(named.items()))
            if key in kept:
                if (id(cached), key) not in self._handed_out:
                    self._handed_out.add((id(cached), key))
                    self._now |= kept[key]
                return cached(*arguments, **named)
            outer = frozenset(self._now)
            self._now.clear()
            try:
                return cached(*arguments, **named)
            finally:
                kept[key] = frozenset(self._now)
                self.in_caches |= self._now
                self._now |= outer

        for name in ("cache_clear", "cache_info", "cache_parameters"):
            setattr(handed_out, name, getattr(cached, name))
        return handed_out

    def _opened(self, file: Path) -> None:
        if file.suffix in _TABLES and file.is_relative_to(self.root):
            self._now.add(file.relative_to(self.root).as_posix())

    def _begin(self) -> None:
        self._now.clear()
        self._handed_out.clear()

    @pytest.hookimpl(wrapper=True)
    def pytest_make_collect_report(self, collector: pytest.Collector) -> Iterator[None]:
        self._begin()
        try:
            return (yield)
        finally:
            self.of_imports[file_of(collector.nodeid)] |= self._now

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: Any) -> Iterator[None]:
        outer = frozenset(self._now)
        self._now.clear()
        try:
            return (yield)
        finally:
            if fixturedef.scope != "function":
                self._of_fixtures[fixturedef.argname] |= self._now
            self._now |= outer

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        self._begin()
        try:
            return (yield)
        finally:
            for name in getattr(item, "fixturenames", ()):
                self._now |= self._of_fixtures.get(name, set())
            self.of_tests[item.nodeid] = set(self._now)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        self.seconds[report.nodeid] = self.seconds.get(report.nodeid, 0.0) + report.duration
        if report.failed:
            self.failed.append(report.nodeid)


def _replaying(touches: Touches) -> Any:
    """``functools.lru_cache`` with caches of this project that touch again."""
    real = functools.lru_cache

    def lru_cache(maxsize: Any = 128, typed: bool = False) -> Any:
        def decorated(function: Any) -> Any:
            cached = real(maxsize, typed)(function)
            code = getattr(function, "__code__", None)
            own = code is not None and code.co_filename.startswith(str(touches.root))
            return touches.replay(cached) if own else cached

        if callable(maxsize):
            function, maxsize = maxsize, 128
            return decorated(function)
        return decorated

    return lru_cache


def _instrument(tree: ast.Module, file: str) -> None:
    for key, body in Blocks(tree, file).bodies.items():
        told: list[ast.stmt] = [*ast.parse(f"_touch_({key!r})").body]
        if key.endswith(":0"):
            told += ast.parse(f"_touch_({file!r})").body
        documented = isinstance(body[0], ast.Expr) and isinstance(body[0].value, ast.Constant)
        body[int(documented) : 0] = told
