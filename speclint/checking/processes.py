"""The checks of a large design shared out to helper processes.

Each helper is an interpreter of its own. It is given the design as it was read, so that all work on the
same data; it loads the same families, and returns its results with each rule by its name. The caller works too.
"""

from __future__ import annotations

import os
import sys
from collections import deque
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from threading import RLock, active_count
from types import TracebackType
from typing import TYPE_CHECKING, Any, Literal, Self, TypeVar

from speclint.checking.check_result import Check
from speclint.checking.remedy import Remedy
from speclint.checking.remedy_search import Spoiling, remedies
from speclint.checking.rule_run import check_named, remember
from speclint.rules import Context, Rule

if TYPE_CHECKING:
    from concurrent.futures import Future, ProcessPoolExecutor

#: This many components take one processor some seconds; fewer are done before a helper has started.
_ENOUGH = 24
#: Pieces of work given to each helper in advance, so that it never waits for the next.
_QUEUED_AHEAD = 2
#: More helpers than this cost more memory than they save time.
_MOST = 15

W = TypeVar("W")
R = TypeVar("R")


class Processes:
    """Helpers for one run; to be used in a ``with`` statement. None are started where there is little work."""

    def __init__(
        self,
        helpers: int | None = None,
        enough: int = _ENOUGH,
        start: Literal["spawn", "fork"] | None = None,
    ) -> None:
        self._start = start
        self._helpers = min((os.cpu_count() or 1) - 1, _MOST) if helpers is None else helpers
        self._enough = enough
        self._pool: ProcessPoolExecutor | None = None
        self._rules: dict[str, Rule] = {}

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, _: object, __: TracebackType | None) -> None:
        if self._pool is not None:
            self._pool.shutdown(wait=kind is None, cancel_futures=True)

    def check(self, rules: Sequence[Rule], context: Context, given: object) -> list[Check]:
        """Every check of the selected components, in the order of their names.

        ``given`` is the data from which a helper makes the same context.
        """
        parts = [part.id for part in context.design.parts()]
        self._rules = {rule.name: rule for rule in rules}
        if self._helpers > 0 and len(parts) >= self._enough:
            named = None if context.outcomes is not None else tuple(self._rules)
            left_out = context.design.settings.families.left_out
            self._pool = self._start_pool(given, named, left_out)
        found = self._divide(
            self._transport("checked"), lambda part: check_named(part, rules, context), parts
        )
        for part, checks in zip(parts, found, strict=True):
            remember(part, checks, context)
        return [check for checks in found for check in checks]

    def remedies(
        self, findings: Sequence[Check], checks: Sequence[Check], context: Context
    ) -> dict[tuple[str, str], list[Remedy]]:
        """The remedies of some findings, by component and rule."""
        spoiling = Spoiling(checks)
        tasks = [(found, spoiling.by(found), _own(found, checks)) for found in findings]
        solved = self._divide(
            self._transport("remedied"), lambda task: remedies(task[0], task[1], context), tasks
        )
        return {found.order: one for found, one in zip(findings, solved, strict=True)}

    def spread(self, work: Callable[[W], R], items: Sequence[W]) -> list[R]:
        """The result of a module-level function for each item, where neither contains a rule."""
        return self._divide(_Transport(work, _unchanged, _unchanged), work, items)

    def _transport(self, work: Literal["checked", "remedied"]) -> _Transport | None:
        if self._pool is None:
            return None
        from speclint.checking import helper_process

        remote = helper_process.checked if work == "checked" else helper_process.remedied
        return _Transport(
            remote, helper_process.packed, lambda done: helper_process.unpacked(done, self._rules)
        )

    def _divide(self, transport: _Transport | None, local: Callable[[W], R], items: Sequence[W]) -> list[R]:
        """Let the helpers work from the first item on, and work from the last one back until all are begun."""
        queue = _WorkQueue(self._pool, transport, items)
        for _ in range(_QUEUED_AHEAD * self._helpers):
            queue.give()
        own = {index: local(items[index]) for index in iter(queue.take_last, None)}
        return [
            own[index] if index in own else queue.result(index, local, items[index])
            for index in range(len(items))
        ]

    def _start_pool(
        self, given: object, named: tuple[str, ...] | None, left_out: tuple[str, ...]
    ) -> ProcessPoolExecutor:
        import pickle
        from concurrent.futures import ProcessPoolExecutor
        from multiprocessing import get_context

        from speclint.checking.helper_process import begin

        fresh = get_context(self._start or _start_method())
        return ProcessPoolExecutor(
            self._helpers, fresh, initializer=begin, initargs=(pickle.dumps(given), named, left_out)
        )


def _start_method() -> Literal["spawn", "fork"]:
    """A new interpreter, which every system can start; a copy of this one where that is safe, as it has all loaded."""
    return "fork" if sys.platform == "linux" and active_count() == 1 else "spawn"


@dataclass(frozen=True)
class _Transport:
    """How work is done in a helper: the function, and how work and result are packed."""

    remote: Callable[[Any], Any]
    pack: Callable[[Any], Any]
    unpack: Callable[[Any], Any]


def _unchanged(item: Any) -> Any:
    return item


class _WorkQueue:
    """Pieces of work in their order: a helper is given the next one when it is done, the caller takes the last."""

    def __init__(
        self, pool: ProcessPoolExecutor | None, transport: _Transport | None, items: Sequence[object]
    ) -> None:
        self._pool, self._transport, self._items = pool, transport, items
        self._waiting = deque(range(len(items)))
        self._lock = RLock()  # another thread reports that a helper is done
        self._given: dict[int, Future[Any]] = {}

    def give(self, _: object = None) -> None:
        """Give the next piece to a helper, and one more when it is done."""
        if self._pool is None or self._transport is None:
            return
        from concurrent.futures.process import BrokenProcessPool

        with self._lock:
            if not self._waiting:
                return
            try:
                done = self._pool.submit(
                    self._transport.remote, self._transport.pack(self._items[self._waiting[0]])
                )
            except BrokenProcessPool:  # the helpers are lost: the caller does what is left
                self._pool = None
                return
            self._given[self._waiting.popleft()] = done
        done.add_done_callback(self.give)

    def take_last(self) -> int | None:
        """The last waiting piece, for the caller; None when none is left."""
        with self._lock:
            return self._waiting.pop() if self._waiting else None

    def result(self, index: int, local: Callable[[W], R], item: W) -> R:
        """The result of a piece that was given out; done here where a helper was lost."""
        from concurrent.futures.process import BrokenProcessPool

        if index not in self._given or self._transport is None:
            return local(item)
        try:
            found: R = self._transport.unpack(self._given[index].result())
        except (BrokenProcessPool, OSError):  # a helper was stopped from outside: its work is done here
            return local(item)
        return found


def _own(found: Check, checks: Iterable[Check]) -> list[Check]:
    """The checks of the component of a finding, without their working."""
    return [replace(one, steps=()) for one in checks if one.component == found.component]
