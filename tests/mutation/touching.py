"""Which test runs which function and reads which table, found by one run of all tests as they are.

Each function of the modules gets a first statement that says so. A cached function keeps what ran while it was
worked out, and says it again whenever its result is handed out. What a file of tests runs while it is imported is
put down to all tests of the file.
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

from tests.mutation.installing import change_modules, watch_files
from tests.mutation.running import file_of

_CACHES = frozenset({"cache", "lru_cache"})


class Touches:
    """A pytest plugin that collects, for each test, the keys it touches: ``file:line`` and ``file``."""

    def __init__(self, root: Path, modules: Collection[str]) -> None:
        self.root = root
        self.of_tests: dict[str, set[str]] = defaultdict(set)
        self.seconds: dict[str, float] = {}
        self._of_files: dict[str, set[str]] = defaultdict(set)
        self._now: set[str] = set()
        vars(builtins).update(_touch_=self.touch, _replay_=self.replay)
        watch_files(self._opened)
        change_modules(root, {file: functools.partial(_instrument, file=file) for file in modules})

    def touch(self, key: str) -> None:
        """A function runs."""
        self._now.add(key)
        self._now.add(key.rpartition(":")[0])

    def replay(self, cached: Callable[..., Any]) -> Callable[..., Any]:
        """The cached function, which touches with each result all that was touched to find it."""
        kept: dict[Any, set[str]] = defaultdict(set)

        @functools.wraps(cached)
        def handed_out(*arguments: Any, **named: Any) -> Any:
            outer, self._now = self._now, kept[arguments, tuple(named.items())]
            try:
                return cached(*arguments, **named)
            finally:
                outer |= self._now
                self._now = outer

        for name in ("cache_clear", "cache_info"):
            setattr(handed_out, name, getattr(cached, name))
        return handed_out

    def _opened(self, file: Path) -> None:
        if file.is_relative_to(self.root):
            self._now.add(file.relative_to(self.root).as_posix())

    @pytest.hookimpl(wrapper=True)
    def pytest_make_collect_report(self, collector: pytest.Collector) -> Iterator[None]:
        self._now = self._of_files[file_of(collector.nodeid)]
        return (yield)

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        self._now = self.of_tests[item.nodeid]
        self._now |= self._of_files[file_of(item.nodeid)]
        return (yield)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        self.seconds[report.nodeid] = self.seconds.get(report.nodeid, 0.0) + report.duration


def _instrument(tree: ast.Module, file: str) -> None:
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef):
            told = ast.parse(f"_touch_('{file}:{node.lineno}')").body
            node.body[_after_docstring(node) : 0] = told
            if any(_named(decorator) in _CACHES for decorator in node.decorator_list):
                node.decorator_list.insert(0, ast.Name("_replay_", ast.Load()))


def _after_docstring(node: ast.FunctionDef) -> int:
    return 0 if ast.get_docstring(node, clean=False) is None else 1


def _named(decorator: ast.expr) -> str:
    called = decorator.func if isinstance(decorator, ast.Call) else decorator
    return getattr(called, "id", getattr(called, "attr", ""))
