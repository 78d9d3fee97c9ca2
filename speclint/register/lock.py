"""The lock of a register: one run at a time reads it, numbers an entry and writes it.

The lock is a file beside the register, so that it holds for everyone who works in a shared folder, and it is gone when
the run has ended.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from speclint.errors import OutputError

#: Seconds to wait for another run: common practice. Entering takes less than one, typing a passphrase a few.
PATIENCE = 30.0


@contextmanager
def locked(register: Path) -> Iterator[None]:
    """Hold the lock of a register while a block runs; a folder that the register will need is made.

    :raises OutputError: where another run keeps it for longer than :data:`PATIENCE`, and where there can be no lock.
    """
    from filelock import FileLock, Timeout  # only where something is entered or signed

    file = register.with_name(f".{register.name}.lock")
    try:
        register.parent.mkdir(parents=True, exist_ok=True)
        lock = FileLock(file, timeout=PATIENCE)
        lock.acquire()
    except Timeout as problem:
        said = (
            f"another run of speclint has kept the register for {PATIENCE:g} s; try again when it has ended"
        )
        raise OutputError(f"{register}: {said}") from problem
    except (OSError, NotImplementedError) as problem:
        why = getattr(problem, "strerror", None) or problem
        raise OutputError(f"{register}: the register cannot be locked: {why}") from problem
    try:
        yield
    finally:
        _remove(file)
        lock.release()


def _remove(file: Path) -> None:
    """Remove the file of a lock that is still held, so that none is left to be committed by mistake.

    Whoever waits for it finds that out and takes a new one. A file that is not empty is the lock itself, on a file
    system without locks of its own, and goes with its release; so does one that Windows does not let go before.
    """
    with suppress(OSError):
        if file.stat().st_size == 0:
            file.unlink()
