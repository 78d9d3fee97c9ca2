"""A helper process as whoever started it sees it: given pieces of work, listened to, and ended.

A new interpreter is started apart from everything around it: it takes no module from the current folder, which may be
a design repository, and nothing from variables of the environment that are meant for Python. It has the folders of
modules that this process has.
"""

from __future__ import annotations

import os
import pickle
import sys
from collections.abc import Callable, Iterable
from contextlib import suppress
from time import monotonic
from typing import Any, BinaryIO, Literal, Protocol

from msgspec import Struct

from speclint.checking.time_limit import begin_anew
from speclint.errors import FamilyError, in_words
from speclint.families import end_process

Said = tuple[Literal["ready", "alive", "done", "failed"], Any]
#: What a new interpreter does first. An interrupt is for this process, which then ends its helpers.
_BEGIN = (
    "import signal, sys; signal.signal(signal.SIGINT, signal.SIG_IGN); sys.path[:] = sys.argv[1:]; "
    "from speclint.checking.helper_process import serve_pipes; serve_pipes()"
)


class HelperLost(Exception):
    """The process has ended, or closed its end of the pipes."""


class Ending(Protocol):
    """A process that can be ended."""

    def kill(self) -> None:
        """End it at once."""

    def wait(self) -> object:
        """Wait until it has ended."""


class Helper:
    """One helper process; ``heard`` is when it last said something, in seconds of a clock that only counts on."""

    def __init__(self, process: Ending, given: BinaryIO, said: BinaryIO) -> None:
        self._process, self._given, self._said = process, given, said
        self.heard = monotonic()

    def give(self, piece: object) -> None:
        """Hand over one thing, such as a function of a module with its argument.

        :raises HelperLost: where nobody takes it.
        """
        self.heard = monotonic()  # it is not silent before it has anything to do
        try:
            pickle.dump(piece, self._given)
            self._given.flush()
        except Exception as problem:  # of the pipe, or of what cannot be passed between processes
            raise HelperLost from problem

    def hear(self) -> Said:
        """The next thing that it says, but that it is alive.

        :raises HelperLost: where there is no more.
        """
        while True:
            try:
                said: Said = pickle.load(self._said)
            except Exception as problem:  # of the pipe, or of a thing that was cut short
                raise HelperLost from problem
            self.heard = monotonic()
            if said[0] != "alive":
                return said

    def end(self) -> None:
        """End the process at once: it has nothing to lose."""
        self._process.kill()
        with suppress(OSError, ValueError):
            self._given.close()
        self._process.wait()

    def forget(self) -> None:
        """Close what is left of its pipes, once nobody listens any longer."""
        with suppress(OSError, ValueError):
            self._said.close()

    def leave(self) -> None:
        """Close the ends of its pipes that a copy of this process has inherited."""
        for file in (self._given, self._said):
            os.close(file.fileno())


def new_interpreter() -> Helper:
    """A helper that begins from nothing, as every system can.

    :raises OSError: where no process can be started.
    """
    from subprocess import PIPE, Popen

    if not sys.executable or getattr(sys, "frozen", False):
        raise OSError("this Python cannot be started again")
    process = Popen([sys.executable, *_flags(), "-c", _BEGIN, *folders_of_modules()], stdin=PIPE, stdout=PIPE)
    assert process.stdin is not None
    assert process.stdout is not None
    return Helper(process, process.stdin, process.stdout)  # type: ignore[arg-type]


def folders_of_modules() -> list[str]:
    """Where this process finds modules; a relative place would be another for each current folder."""
    return [folder for folder in sys.path if os.path.isabs(folder)]


def _flags() -> list[str]:
    wanted = {
        "-I": True,  # apart: neither the current folder nor the environment adds to the folders of modules
        "-B": sys.dont_write_bytecode,
        "-O": sys.flags.optimize == 1,
        "-OO": sys.flags.optimize > 1,
        "-Xutf8": bool(sys.flags.utf8_mode),
    }
    return [flag for flag, needed in wanted.items() if needed]


class _Copy(Struct, frozen=True):
    """A copy of this process, by its number."""

    number: int

    def kill(self) -> None:
        from signal import SIGKILL

        with suppress(ProcessLookupError):
            os.kill(self.number, SIGKILL)

    def wait(self) -> None:
        with suppress(ChildProcessError):
            os.waitpid(self.number, 0)


def copy_of_this(serve: Callable[[BinaryIO, BinaryIO], None], others: Iterable[Helper]) -> Helper:
    """A helper that has everything loaded already; only where there is one thread, and the system can copy.

    ``others`` are the helpers there are, whose pipes it is not to hold open.

    :raises OSError: where no process can be started.
    """
    for stream in (sys.stdout, sys.stderr):  # what waits to be written would be written twice
        stream.flush()
    taken, given = os.pipe()
    heard, said = os.pipe()
    number = os.fork()
    if number == 0:
        try:
            os.close(given)
            os.close(heard)
            for other in others:
                other.leave()
            _apart()
            serve(os.fdopen(taken, "rb"), os.fdopen(said, "wb"))
        finally:
            end_process(0)
    os.close(taken)
    os.close(said)
    return Helper(_Copy(number), os.fdopen(given, "wb"), os.fdopen(heard, "rb"))


def said_of(work: Callable[[], object]) -> Said:
    """What is said of a piece of work: its result, or why there is none."""
    try:
        return "done", work()
    except BaseException as problem:
        return "failed", problem if isinstance(problem, FamilyError) else in_words(problem)


def copy_at_work(work: Callable[[], object], others: Iterable[Helper]) -> Helper:
    """A copy of this process that does one piece of work, says its result, and ends; as :func:`copy_of_this`.

    :raises OSError: where no process can be started.
    """

    def serve(_taken: BinaryIO, said: BinaryIO) -> None:
        begin_anew()
        pickle.dump(said_of(work), said)
        said.flush()

    return copy_of_this(serve, others)


def _apart() -> None:
    """Let a copy leave the interrupts to the process it comes from, and print nothing among its output."""
    from signal import SIG_IGN, SIGINT, signal

    signal(SIGINT, SIG_IGN)
    with suppress(OSError):
        os.dup2(2, 1)
