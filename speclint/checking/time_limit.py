"""A limit on the time of a rule: one that does not end is stopped, and counts as one that could not be run.

What counts is the time of the processor, so that a machine with much else to do gives the same verdict; a rule that
waits takes none, and is stopped by the clock. A thread looks at both while rules are run, and raises :class:`Overrun`
in the thread of a rule that takes longer. Where that does not stop it, since it waits for something or goes on after
any exception, nothing in one process could: the process is ended, with the exit code of a rule that could not be run
and a line that names it.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from contextlib import suppress
from math import inf
from threading import Event, Lock, Thread, get_ident
from time import monotonic, process_time
from types import TracebackType

from speclint.families import end_process

_LOOKS_EVERY = 0.25  # seconds
#: So many times its limit a rule may take by the clock, as where others use the processors too.
BY_THE_CLOCK = 5
#: A rule that goes on after it was stopped is given so many seconds more, or its limit again where that is less.
GRACE = 5.0
NOT_RUN = 3  # exit code of the program


class Overrun(BaseException):
    """Raised in a rule that takes longer than the settings allow."""


class TimeLimit:
    """For a ``with`` statement around the work of one rule on one component, which may take so many seconds.

    They are seconds of the processor; by the clock it may take five times as many.
    """

    __slots__ = ("_before", "_named", "ends", "seconds", "stopped", "thread", "worked_out")

    def __init__(self, rule: str, component: str, seconds: float) -> None:
        self._named = rule, component
        self.seconds = seconds
        self.stopped = False

    def __enter__(self) -> None:
        self.thread = get_ident()
        self.worked_out, self.ends = process_time() + self.seconds, monotonic() + BY_THE_CLOCK * self.seconds
        self._before = _CLOCK.turns.get(self.thread)
        _CLOCK.give(self)

    def __exit__(
        self, _: type[BaseException] | None, __: BaseException | None, ___: TracebackType | None
    ) -> None:
        try:
            self._leave()
        except Overrun:  # it came as the rule ended
            self._leave()
            raise

    def _leave(self) -> None:
        with _CLOCK.lock:
            if self._before is None:
                _CLOCK.turns.pop(self.thread, None)
            else:
                _CLOCK.turns[self.thread] = self._before
            if self.stopped:
                _raise_in(self.thread, None)  # what was not raised yet is not to come later

    @property
    def over(self) -> bool:
        """Whether it has had its time."""
        return process_time() > self.worked_out or monotonic() > self.ends

    @property
    def says(self) -> str:
        """Which rule on what."""
        return "rule {} on {}".format(*self._named)


class _Clock:
    """The thread that looks at the clock, and the rules that run, one in each thread."""

    def __init__(self) -> None:
        self.lock = Lock()
        self.turns: dict[int, TimeLimit] = {}
        self.on_stuck: Callable[[str], None] = _say
        self._thread: Thread | None = None
        self._ended = Event()

    def give(self, turn: TimeLimit) -> None:
        self.turns[turn.thread] = turn
        if self._thread is None:
            self._ended.clear()
            self._thread = Thread(target=self._look, name="time limit of rules", daemon=True)
            self._thread.start()

    def end(self) -> None:
        """End the thread; it begins again with the next rule."""
        if self._thread is not None:
            self._ended.set()
            self._thread.join()
            self._thread = None

    def _look(self) -> None:
        while not self._ended.wait(_LOOKS_EVERY):
            with self.lock:
                for turn in tuple(self.turns.values()):
                    if turn.over:
                        self._past(turn)

    def _past(self, turn: TimeLimit) -> None:
        """A rule has had its time: stop it; or it was stopped and has had its grace too."""
        if turn.stopped:
            self.on_stuck(turn.says)
            end_process(NOT_RUN)
        turn.stopped = True
        turn.worked_out, turn.ends = inf, monotonic() + min(GRACE, turn.seconds)
        _raise_in(turn.thread, Overrun)


def _say(says: str) -> None:
    with suppress(OSError, ValueError):  # where nobody reads the error stream
        print(f"speclint: {says} did not end in its time, and cannot be stopped", file=sys.stderr, flush=True)


def _raise_in(thread: int, what: type[BaseException] | None) -> None:
    """Raise something in a thread as soon as it runs Python again; None takes back what was not raised yet."""
    from ctypes import c_ulong, py_object, pythonapi

    pythonapi.PyThreadState_SetAsyncExc(c_ulong(thread), None if what is None else py_object(what))


_CLOCK = _Clock()


def end_watch() -> None:
    """End the thread that looks at the clock, as before the process is copied; it begins again with the next rule."""
    _CLOCK.end()


def begin_anew() -> None:
    """Begin in a process that helps another: with a clock of its own, and without a word where a rule cannot be
    stopped, since the other says so."""
    global _CLOCK
    _CLOCK = _Clock()  # of a process that was copied only the memory is here, and none of its threads
    _CLOCK.on_stuck = lambda _says: None
