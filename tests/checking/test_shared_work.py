"""Work shared out to helpers that are made for it: what is given, what comes back, and what becomes of what is lost."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path
from queue import Queue
from threading import Event, active_count
from typing import Any

import pytest

from speclint.checking import processes as module, shared_work
from speclint.checking.helper import Helper, HelperLost
from speclint.checking.processes import Processes, Transport, _why_lost
from speclint.checking.shared_work import Lost, SharedWork, TendedHelper
from speclint.checking.time_limit import GRACE
from speclint.testing import DesignFolder
from tests import tubes


def twice(number: int) -> int:
    return 2 * number


def packed(number: int) -> bytes:
    return str(number).encode()


def work_of(number: int) -> SharedWork:
    return SharedWork(twice, packed, list(range(number)))


def test_a_piece_is_taken_once_by_a_helper_from_the_first_and_by_the_caller_from_the_last() -> None:
    work = work_of(3)
    assert (work.take_first(), work.take_last(), work.given) == (0, 2, 1)
    assert (work.take_first(), work.given) == (1, 2)
    assert (work.take_first(), work.take_last(), work.given) == (None, None, 2)
    assert work.piece(1) == (twice, b"1")


def test_what_is_given_back_waits_again_before_the_others() -> None:
    work = work_of(3)
    first = work.take_first()
    assert first == 0
    work.give_back(first)
    assert (work.given, work.take_first()) == (0, 0)


def test_it_is_done_when_something_came_of_every_piece() -> None:
    work = work_of(2)
    for index in (0, 1):
        assert not work.is_done()
        work.take_first()
        work.keep(index, ("done", index))
    assert work.is_done()
    assert (work.given, work.results) == (0, {0: ("done", 0), 1: ("done", 1)})
    assert work_of(0).is_done()


def test_nobody_waits_for_what_is_done_and_not_for_long_for_the_rest(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(shared_work, "_LOOKS_EVERY", 30.0)
    begun = time.monotonic()
    work_of(0).wait_a_little()
    assert time.monotonic() - begun < 10
    monkeypatch.setattr(shared_work, "_LOOKS_EVERY", 0.2)
    begun = time.monotonic()
    work_of(1).wait_a_little()
    assert time.monotonic() - begun >= 0.15


class Patient:
    """A helper that is looked after: what it does when it has had so long."""

    def __init__(self, does: Callable[[], None]) -> None:
        self.patience: list[float] = []
        self._does = does

    def give_up_after(self, patience: float) -> None:
        self.patience.append(patience)
        self._does()


def test_the_caller_waits_until_all_came_back_or_pieces_wait_again(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(shared_work, "_LOOKS_EVERY", 0.01)
    work = work_of(1)
    assert work.wait([], 5.0) is True  # one waits that nobody has taken
    work.take_first()
    helper: Any = Patient(lambda: work.keep(0, ("done", 0)))
    assert work.wait([helper], 5.0) is False
    assert helper.patience == [5.0]
    work = work_of(1)
    work.take_first()
    again: Any = Patient(lambda: work.give_back(0))
    assert work.wait([again], 5.0) is True


class Process:
    """A process that can be ended."""

    def __init__(self) -> None:
        self.ended = Event()

    def kill(self) -> None:
        self.ended.set()

    def wait(self) -> None:
        assert self.ended.is_set()


class Made(Helper):
    """A helper made for a test: it answers what is put into ``says``; an error there is raised."""

    def __init__(self, *says: Any) -> None:
        self.process = Process()
        self.given: list[Any] = []
        self.says: Queue[Any] = Queue()
        self.forgotten = False
        self.heard = time.monotonic()
        for one in says:
            self.says.put(one)

    def give(self, piece: object) -> None:
        self.heard = time.monotonic()
        if self.process.ended.is_set():
            raise HelperLost
        self.given.append(piece)

    def hear(self) -> Any:
        found = self.says.get(timeout=60)
        if found is None:
            raise HelperLost
        self.heard = time.monotonic()
        return found

    def end(self) -> None:
        self.process.kill()
        self.says.put(None)

    def forget(self) -> None:
        self.forgotten = True


READY = ("ready", None)


def tended(*says: Any) -> tuple[TendedHelper, Made]:
    helper = Made(*says)
    return TendedHelper(helper, "how to begin"), helper


def until(true: Callable[[], bool]) -> bool:
    """Whether something comes true, in good time."""
    for _ in range(1000):
        if true():
            return True
        time.sleep(0.01)
    return False


def test_a_helper_is_told_how_to_begin_and_then_works_piece_by_piece() -> None:
    one, helper = tended(READY, ("done", 0), ("done", 2), ("failed", "no"))
    assert one.becomes_ready()
    work = work_of(3)
    one.do(work, 60.0)
    assert helper.given == ["how to begin", (twice, b"0"), (twice, b"1"), (twice, b"2")]
    assert work.results == {0: ("done", 0), 1: ("done", 2), 2: ("failed", "no")}
    assert work.given == 0
    one.end()
    assert helper.process.ended.is_set()
    assert until(lambda: helper.forgotten)


def test_no_more_than_two_pieces_are_given_in_advance() -> None:
    one, helper = tended(READY)
    work = work_of(5)
    one.serve(work)
    assert until(lambda: len(helper.given) == 3)
    assert work.given == 2
    helper.says.put(("done", 0))
    assert until(lambda: len(helper.given) == 4)
    assert work.given == 2
    one.end()
    assert until(lambda: work.given == 0)


def test_a_helper_that_is_lost_loses_the_piece_it_is_at_and_gives_back_those_after_it() -> None:
    one, helper = tended(READY, ("done", 0), None)
    work = work_of(4)
    one.do(work, 60.0)
    assert work.results[0] == ("done", 0)
    lost = work.results[1]
    assert isinstance(lost, Lost)
    assert 0.0 <= lost.after < 30.0
    assert set(work.results) == {0, 1}
    assert [work.take_first(), work.take_first(), work.take_first()] == [2, 3, None]
    assert until(lambda: helper.forgotten)


@pytest.mark.parametrize("says", [("failed", "other rules"), None])
def test_a_helper_that_does_not_begin_is_ended_and_does_nothing(says: Any) -> None:
    one, helper = tended(says)
    work = work_of(1)
    one.do(work, 60.0)
    assert not one.becomes_ready()
    assert helper.process.ended.is_set()
    assert (work.results, work.take_first()) == ({}, 0)


def test_a_helper_that_never_says_that_it_is_ready_is_not_waited_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(shared_work, "_READY_WITHIN", 0.05)
    one, helper = tended()
    begun = time.monotonic()
    one.do(work_of(1), 60.0)
    assert time.monotonic() - begun < 30
    assert helper.process.ended.is_set()


def test_only_a_helper_at_work_that_says_nothing_is_given_up() -> None:
    one, helper = tended(READY)
    assert one.becomes_ready()
    helper.heard -= 100.0
    one.give_up_after(50.0)
    assert not helper.process.ended.is_set()  # it has nothing to do
    work = work_of(1)
    one.serve(work)
    assert until(lambda: len(helper.given) == 2)
    one.give_up_after(50.0)
    assert not helper.process.ended.is_set()  # it was heard a moment ago
    helper.heard -= 49.0
    one.give_up_after(50.0)
    assert not helper.process.ended.is_set()
    helper.heard -= 2.0
    one.give_up_after(50.0)
    assert helper.process.ended.is_set()
    assert until(work.is_done)
    assert isinstance(work.results[0], Lost)


def test_a_helper_is_ended_once(monkeypatch: pytest.MonkeyPatch) -> None:
    one, helper = tended(READY)
    assert one.becomes_ready()
    times = []

    def end() -> None:
        times.append(1)
        helper.says.put(None)

    monkeypatch.setattr(helper, "end", end)
    one.end()
    one.end()
    assert times == [1]
    assert until(lambda: helper.forgotten)


class Helped(Processes):
    """Processes with helpers that are made for a test."""

    def begin_with(self, *helpers: TendedHelper) -> None:
        self._helpers = list(helpers)


def transport() -> Transport:
    return Transport(twice, packed, lambda done: done)


def test_the_work_is_divided_and_comes_back_in_its_order() -> None:
    """The helper answers three times as much, so that it is seen who did what: the caller begins from the last."""
    told: list[tuple[int, int]] = []
    one, helper = tended(READY, *(("done", 300 + number) for number in range(10)))
    assert one.becomes_ready()
    with Helped(1, on_part=lambda *counts: told.append(counts)) as some:
        some.begin_with(one)

        def local(number: int) -> int:
            assert until(lambda: len(helper.given) > 2)
            return twice(number)

        found = some._divide(transport, local, list(range(10)))
    assert found[0] == 300
    assert found[9] == 18
    assert all(one in (twice(place), 300 + place) for place, one in enumerate(found))
    assert told[-1] == (10, 10)


def test_a_lost_piece_is_done_here_or_as_the_caller_says() -> None:
    for lost, wanted in ((None, 0), (lambda number: -1 - number, -1)):
        one, helper = tended(READY)
        assert one.becomes_ready()
        with Helped(1) as some:
            some.begin_with(one)

            def local(number: int, helper: Made = helper) -> int:
                if number:
                    assert until(lambda: len(helper.given) > 1)
                    helper.says.put(None)
                return twice(number)

            assert some._divide(transport, local, [0, 1], lost) == [wanted, 2]


def test_without_helpers_the_work_is_done_here_and_counted() -> None:
    told: list[tuple[int, int]] = []
    with Processes(0, on_part=lambda *counts: told.append(counts)) as some:
        assert some._divide(transport, twice, [1, 2]) == [2, 4]
        assert some.spread(twice, [3]) == [6]
    assert told == [(1, 2), (2, 2), (1, 1)]


@pytest.mark.parametrize(
    ("lost", "why"),
    [
        (None, "the process to run it in did not begin"),
        (
            Lost(60.0),
            "it did not end within 60 s of the processor, or 300 s by the clock (seconds_per_rule in speclint.toml)",
        ),
        (
            Lost(60.1),
            "it did not end within 60 s of the processor, or 300 s by the clock (seconds_per_rule in speclint.toml)",
        ),
        (Lost(59.9), "it ended the process that it ran in"),
    ],
)
def test_why_a_rule_was_lost(lost: Lost | None, why: str) -> None:
    assert _why_lost(lost, 60) == why


def test_how_long_a_helper_may_be_silent() -> None:
    """A rule has its time and is then stopped, which may take its grace twice."""
    some = Processes(0)
    some._seconds = 60
    assert some._patience == 60 + 2 * GRACE


@pytest.mark.parametrize(("platform", "way"), [("linux", "copy"), ("darwin", "new"), ("win32", "new")])
def test_how_a_helper_is_started(monkeypatch: pytest.MonkeyPatch, platform: str, way: str) -> None:
    monkeypatch.setattr(sys, "platform", platform)
    monkeypatch.setattr(module, "active_count", lambda: 1)
    assert module._way_to_start() == way
    monkeypatch.setattr(module, "active_count", lambda: 2)
    assert module._way_to_start() == "new"
    assert active_count() >= 1


class Spare:
    """A helper for one check, which says something of it or is lost."""

    def __init__(self, says: Any) -> None:
        self.says, self.ended, self.asked = says, 0, []  # type: ignore[var-annotated]

    def do(self, work: SharedWork, patience: float) -> None:
        self.asked.append((work._items, patience))
        if self.says is not None:
            work.results[0] = self.says

    def end(self) -> None:
        self.ended += 1


@pytest.mark.parametrize(
    ("says", "why"),
    [
        (Lost(60.0), "it did not end within 60 s"),
        (Lost(1.0), "it ended the process that it ran in"),
        (None, "the process to run it in did not begin"),
    ],
)
def test_a_rule_that_loses_its_own_helper_could_not_be_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, says: Any, why: str
) -> None:
    design = DesignFolder(tmp_path, tubes.tubes()).write(tubes.FILES).assess().design
    assert design is not None
    part: Any = design.specs["tube"]
    some, spare = Processes(0), Spare(says)
    some._seconds = 60
    monkeypatch.setattr(some, "_spare", spare)
    found = some._alone(tubes.stress, part, ())
    assert why in found.could_not_run
    assert (spare.ended, some._spare) == (1, None)
    assert spare.asked == [([("tube", "tube.stress", ())], 60 + 2 * GRACE)]


def test_a_helper_that_says_its_check_is_kept_for_the_next(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop = DesignFolder(tmp_path, tubes.tubes()).write(tubes.FILES)
    found = shop.assess()
    assert found.design is not None
    part: Any = found.design.specs["tube"]
    some, spare = Processes(0), Spare(("done", "a check"))
    monkeypatch.setattr(some, "_spare", spare)
    monkeypatch.setattr(
        some, "_transport", lambda _: Transport(twice, twice, lambda done: f"{done} unpacked")
    )
    answer: Any = some._alone(tubes.stress, part, ())
    assert answer == "a check unpacked"
    assert (spare.ended, some._spare) == (0, spare)
