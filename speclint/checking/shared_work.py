"""Pieces of work shared out: helpers are given them from the first on, and the caller takes them from the last."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Sequence
from queue import SimpleQueue
from threading import Condition, Event, Thread
from time import monotonic
from typing import Any

from msgspec import Struct

from speclint.checking.helper import Helper, HelperLost, Said

#: Pieces given to each helper in advance, so that it never waits for the next.
_AHEAD = 2
_LOOKS_EVERY = 0.25  # seconds


class Lost(Struct, frozen=True):
    """A piece with which a helper was lost, after so many seconds."""

    after: float


class SharedWork:
    """The pieces of one sort of work, and what came of those given out, by their place in the order."""

    def __init__(
        self, function: Callable[[Any], Any], pack: Callable[[Any], Any], items: Sequence[object]
    ) -> None:
        self._function, self._pack, self._items = function, pack, items
        self._waiting = deque(range(len(items)))
        self.given = 0
        self.results: dict[int, Said | Lost] = {}
        self._changed = Condition()

    def take_last(self) -> int | None:
        """The last waiting piece, for the caller; None when none is left."""
        with self._changed:
            return self._waiting.pop() if self._waiting else None

    def take_first(self) -> int | None:
        """The first waiting piece, for a helper; None when none is left."""
        with self._changed:
            if not self._waiting:
                return None
            self.given += 1
            return self._waiting.popleft()

    def piece(self, index: int) -> tuple[Callable[[Any], Any], Any]:
        """One piece as a helper is given it."""
        return self._function, self._pack(self._items[index])

    def keep(self, index: int, result: Said | Lost) -> None:
        """Keep what came of a piece."""
        with self._changed:
            self.results[index] = result
            self.given -= 1
            self._changed.notify_all()

    def give_back(self, index: int) -> None:
        """Give back a piece that nobody has begun."""
        with self._changed:
            self._waiting.appendleft(index)
            self.given -= 1
            self._changed.notify_all()

    def is_done(self) -> bool:
        """Whether something came of every piece."""
        return len(self.results) == len(self._items)

    def wait_a_little(self) -> None:
        """Wait until something comes of a piece, but not for long."""
        with self._changed:
            if not self.is_done():
                self._changed.wait(_LOOKS_EVERY)

    def wait(self, helpers: Iterable[TendedHelper], patience: float) -> bool:
        """Wait for what is given out, and give up a helper that says nothing; whether pieces came back instead."""
        while True:
            with self._changed:
                if self._waiting or not self.given:
                    return bool(self._waiting)
                self._changed.wait(_LOOKS_EVERY)
            for helper in helpers:
                helper.give_up_after(patience)


#: So long a helper may take to begin where somebody waits for it.
_READY_WITHIN = 60.0  # seconds
_ENDS_WITHIN = 5.0  # seconds, of the thread of a process that has ended


class TendedHelper:
    """A helper with a thread that gives it pieces of work and listens to it."""

    def __init__(self, helper: Helper, beginning: object) -> None:
        self._helper, self._beginning = helper, beginning
        self._busy = self._lost = self._ended = False
        self._is_ready = False
        self._begun = Event()
        self._work: SimpleQueue[SharedWork | None] = SimpleQueue()
        self._thread = Thread(target=self._tend, name="helper process", daemon=True)
        self._thread.start()

    def serve(self, work: SharedWork) -> None:
        """Let it take its share of some work, as soon as it is ready."""
        self._work.put(work)

    def do(self, work: SharedWork, patience: float) -> None:
        """Let it do all of some work, and wait for it; nothing is left of it where it does not begin."""
        self.serve(work)
        if not self.becomes_ready():
            self.end()
        while not work.is_done() and not self._lost:
            work.wait_a_little()
            self.give_up_after(patience)

    def becomes_ready(self) -> bool:
        """Wait until it is ready; whether it is, in good time."""
        self._begun.wait(_READY_WITHIN)
        return self._is_ready

    def give_up_after(self, patience: float) -> None:
        """End it where it has work and has said nothing for so many seconds."""
        if self._busy and monotonic() - self._helper.heard > patience:
            self.end()

    def end(self) -> None:
        """End it."""
        if not self._ended:
            self._ended = True
            self._helper.end()
            self._work.put(None)
            self._thread.join(_ENDS_WITHIN)

    def _tend(self) -> None:
        try:
            self._helper.give(self._beginning)
            self._is_ready = self._helper.hear()[0] == "ready"
            self._begun.set()
            while self._is_ready and (work := self._work.get()) is not None:
                self._share(work)
        except HelperLost:
            pass
        self._lost = True
        self._begun.set()
        self._helper.forget()

    def _share(self, work: SharedWork) -> None:
        """Give it pieces of some work until none is left.

        :raises HelperLost: when it is; the piece that it was at is kept as lost, those after it are given back.
        """
        given: deque[int] = deque()
        began = monotonic()
        try:
            while True:
                while len(given) < _AHEAD and (index := work.take_first()) is not None:
                    given.append(index)
                    self._busy = True
                    self._helper.give(work.piece(index))
                if not given:
                    return
                said = self._helper.hear()
                work.keep(given.popleft(), said)
                began = monotonic()
        except HelperLost:
            for index in reversed(list(given)[1:]):
                work.give_back(index)
            if given:
                work.keep(given[0], Lost(monotonic() - began))
            raise
        finally:
            self._busy = False
