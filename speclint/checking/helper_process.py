"""A helper process: its inputs, its work, and how work and results are passed between processes.

Everything is pickled between processes of one run, never from a file. A rule is passed as its name.
"""

from __future__ import annotations

import io
import os
import pickle
import sys
from collections.abc import Callable, Mapping
from functools import partial
from queue import SimpleQueue
from threading import Event, Lock, Thread
from typing import Any, BinaryIO

from msgspec import Struct

from speclint.checking.helper import Said, said_of
from speclint.checking.inputs import context_of
from speclint.checking.outcomes import remember
from speclint.checking.packing import Unpacker, packed
from speclint.checking.rule_run import check, check_named
from speclint.checking.time_limit import begin_anew
from speclint.errors import FamilyError, in_words
from speclint.families import end_process, find_families
from speclint.rules import Context, Rule
from speclint.specs import Component

_SAYS_SO_EVERY = 1.0  # seconds, that it is alive


class _Helper(Struct):
    """The data of a helper process."""

    rules: dict[str, Rule]
    context: Context


_helper: _Helper | None = None


class Beginning(Struct, frozen=True):
    """What a helper begins with: the pickled inputs, the rules, whether they are all, and the families left out."""

    inputs: bytes
    rules: tuple[str, ...]
    all_rules: bool
    left_out: tuple[str, ...]


def begin(given: Beginning) -> None:
    """Set up a helper: load the families but for those left out, and make the same context as the caller's.

    :raises FamilyError: where other rules are found than the caller's.
    """
    global _helper
    loaded = find_families().without(given.left_out).sound()
    context = context_of(pickle.loads(given.inputs), loaded)
    context.outcomes = {} if given.all_rules else None
    if given.all_rules:
        rules = loaded.rules_for({part.kind for part in context.design.parts()})
    else:
        rules = tuple(one for one in loaded.rules if one.name in given.rules)
    _helper = _Helper({one.name: one for one in rules}, context)
    if set(_helper.rules) != set(given.rules):
        raise FamilyError("a helper process found other rules: a family was installed or removed meanwhile")


def checked(task: bytes) -> bytes:
    """Check one component."""
    helper = _set_up()
    name: str = unpacked(task, helper.rules)
    return packed(check_named(name, tuple(helper.rules.values()), helper.context))


def checked_by(task: bytes) -> bytes:
    """Check one component by one rule, given the checks made of it before."""
    helper = _set_up()
    name, rule, before = unpacked(task, helper.rules)
    part = helper.context.design.specs[name]
    assert isinstance(part, Component)
    remember(name, before, helper.context)
    return packed(check(helper.rules[rule], part, helper.context))


def remedied(task: bytes) -> bytes:
    """Find the remedies of one finding, and what was consulted for them.

    Given are the checks that they could break, and those of its component.
    """
    from speclint.checking.remedy_search import solved  # only where remedies are sought

    helper = _set_up()
    found, checks, own = unpacked(task, helper.rules)
    remember(found.component, own, helper.context)
    return packed(solved(found, checks, helper.context))


def serve_pipes() -> None:
    """Serve through the standard streams of this process; whatever is printed goes to the error stream."""
    taken, said = os.fdopen(os.dup(0), "rb"), os.fdopen(os.dup(1), "wb")
    with open(os.devnull, "rb") as nothing:
        os.dup2(nothing.fileno(), 0)
    os.dup2(2, 1)
    sys.stdout = sys.stderr
    serve(taken, said)


def serve(taken: BinaryIO, said: BinaryIO) -> None:
    """Begin, and work at one piece after the other until there are no more; then the process ends."""
    begin_anew()
    service = _Service(said)
    try:
        begin(pickle.load(taken))
    except BaseException as problem:
        service.say(("failed", in_words(problem)))
        return
    service.say(("ready", None))
    service.work_at(taken)


class _Service:
    """One helper at work: it says now and then that it is alive, since one that says nothing more is given up."""

    def __init__(self, said: BinaryIO) -> None:
        self._said, self._lock = said, Lock()
        self._waiting: SimpleQueue[tuple[Callable[[Any], Any], Any]] = SimpleQueue()

    def say(self, what: Said) -> None:
        """Say one thing; where nobody listens any longer, the process ends."""
        try:
            with self._lock:
                pickle.dump(what, self._said)
                self._said.flush()
        except OSError:
            end_process(0)

    def work_at(self, taken: BinaryIO) -> None:
        """Work at what comes in, in its order."""
        Thread(target=self._take, args=(taken,), daemon=True).start()
        Thread(target=self._be_alive, daemon=True).start()
        while True:
            work, argument = self._waiting.get()
            self.say(said_of(partial(work, argument)))

    def _take(self, taken: BinaryIO) -> None:
        """Take in what is given as it comes, so that whoever gives never waits; the process ends with it."""
        while True:
            try:
                self._waiting.put(pickle.load(taken))
            except BaseException:
                end_process(0)

    def _be_alive(self) -> None:
        never = Event()
        while not never.wait(_SAYS_SO_EVERY):
            self.say(("alive", None))


def _set_up() -> _Helper:
    if _helper is None:
        raise RuntimeError("a helper was given work before it was set up")
    return _helper


def unpacked(value: bytes, rules: Mapping[str, Rule]) -> Any:
    """A piece of work or a result from its bytes, with the rules of this process."""
    return Unpacker(io.BytesIO(value), rules).load()
