"""Work in a process of its own, so that nothing of one mutant reaches the next."""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import signal
import tempfile
from collections.abc import Callable
from multiprocessing.connection import Connection
from typing import Any

_KIND = "fork" if hasattr(os, "fork") else "spawn"
#: Bytes that a process may hold: the tests of a package take some tenth of it, a list that grows without end takes all.
_MOST_HELD = 6 << 30


def apart(seconds: float, work: Callable[..., Any], *given: Any, called: object) -> Any:
    """What the work returns; None when it takes longer. RuntimeError when its process breaks off, which is ``called``
    so."""
    context: Any = multiprocessing.get_context(_KIND)
    mine, theirs = context.Pipe(duplex=False)
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        process = context.Process(target=_send, args=(theirs, folder, work, given))
        process.start()
        theirs.close()
        try:
            return mine.recv() if mine.poll(seconds) else None
        except EOFError:
            raise RuntimeError(f"the process for {called} broke off") from None
        finally:
            end(process)
            mine.close()


def end(process: Any) -> None:
    """Stop a process of this module and what it started."""
    if hasattr(os, "killpg"):
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(process.pid, signal.SIGKILL)
    process.kill()
    process.join()


def by_itself(folder: str) -> None:
    """Let this process lead those that it starts, and write what tests write below the folder."""
    if hasattr(os, "setpgid"):
        os.setpgid(0, 0)
    _limit_memory()
    os.environ["PYTEST_DEBUG_TEMPROOT"] = folder


def _limit_memory() -> None:
    """Let a mutant that takes memory without end fail for want of it, before the system ends processes to get some."""
    with contextlib.suppress(ImportError, OSError, ValueError):  # not every system knows such a limit
        import resource

        _, most = resource.getrlimit(resource.RLIMIT_DATA)
        resource.setrlimit(resource.RLIMIT_DATA, (_MOST_HELD, most))


def _send(connection: Connection, folder: str, work: Callable[..., Any], given: tuple[Any, ...]) -> None:
    by_itself(folder)
    connection.send(work(*given))
