"""Work handed to an executor, such as that of a cluster: anything with the interface of concurrent.futures.

Whoever works for it takes the design as it was read, and refuses the work where its code is another. What is lost on
the way is done here, so that the result is the same to the byte wherever it was made.
"""

from __future__ import annotations

import pickle
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Executor
from contextlib import contextmanager
from hashlib import blake2b
from threading import Lock
from typing import Any, TypeVar

from speclint.checking.code_digest import code_of
from speclint.checking.helper_process import Beginning, begin
from speclint.checking.processes import Processes, Transport
from speclint.errors import FamilyError, SettingsError, in_words
from speclint.families import find_families
from speclint.rules import Context

W = TypeVar("W")
R = TypeVar("R")
#: The work is cut into so many pieces, some for each worker of a large cluster: common practice.
_PIECES = 64
_SECONDS = 20  # to find the scheduler of a cluster


class OnExecutor(Processes):
    """Helpers are whoever works for an executor."""

    def __init__(
        self, executor: Executor, on_part: Callable[[int, int], None] = lambda _done, _whole: None
    ) -> None:
        super().__init__(helpers=1, enough=1, on_part=on_part)
        self._executor, self._code = executor, code_of(find_families())
        self._begun = b""

    def _begin(self, context: Context, given: object) -> None:
        left_out = context.design.settings.families.left_out
        all_rules = context.outcomes is not None
        self._beginning = Beginning(pickle.dumps(given), tuple(self._rules), all_rules, left_out)
        self._begun = pickle.dumps(self._beginning)

    def _divide(
        self,
        make_transport: Callable[[], Transport],
        local: Callable[[W], R],
        items: Sequence[W],
        lost: Callable[[W], R] | None = None,
    ) -> list[R]:
        if not self._begun:
            return [local(item) for item in items]
        way = make_transport()
        size = max(1, -(-len(items) // _PIECES))
        pieces = [items[start : start + size] for start in range(0, len(items), size)]
        given = [
            self._executor.submit(
                worked, self._code, self._begun, way.remote, [way.pack(one) for one in piece]
            )
            for piece in pieces
        ]
        done: list[R] = []
        for piece, future in zip(pieces, given, strict=True):
            try:
                done += [way.unpack(one) for one in future.result()]
            except FamilyError:
                raise
            except Exception:  # whatever became of the worker
                done += [(lost or local)(one) for one in piece]
            self._on_part(len(done), len(items))
        return done


_LOCK = Lock()
_begun_with = ""


def worked(code: str, beginning: bytes, function: Callable[[Any], Any], tasks: Sequence[Any]) -> list[Any]:
    """Some pieces of work done here, one at a time in each process; for whoever works for an executor.

    :raises FamilyError: where the code here is not that of whoever gave the work.
    """
    global _begun_with
    digest = blake2b(beginning, digest_size=16).hexdigest()
    with _LOCK:
        if _begun_with != digest:
            if code_of(find_families()) != code:
                raise FamilyError("a worker has other versions of speclint, of a family or of what they need")
            begin(pickle.loads(beginning))
            _begun_with = digest
        return [function(task) for task in tasks]


@contextmanager
def cluster(
    address: str, on_part: Callable[[int, int], None] = lambda _done, _whole: None
) -> Iterator[OnExecutor]:
    """The workers of a cluster of dask.distributed, by the address of its scheduler, for the time of a run.

    ``on_part`` is told how many pieces of the work at hand are done, and of how many.

    :raises SettingsError: where the extra is not installed, or no scheduler answers.
    """
    try:
        from distributed import Client
    except ImportError as problem:
        raise SettingsError("a cluster needs more: pip install 'speclint[cluster]'") from problem
    try:
        client = Client(address, timeout=_SECONDS, set_as_default=False)
    except (OSError, ValueError, TypeError) as problem:  # of the network, or of the address
        raise SettingsError(f"no cluster is found at {address}: {in_words(problem)}") from problem
    try:
        yield OnExecutor(client.get_executor(pure=False), on_part)
    finally:
        client.close()
