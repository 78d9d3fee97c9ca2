"""The clock that looks at rules while they run: each in its own time, again after a pause, and set within bounds."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from contextlib import suppress

import pytest

from speclint.checking import time_limit
from speclint.checking.time_limit import Overrun, TimeLimit, end_watch
from speclint.testing import DesignFolder


@pytest.fixture(autouse=True)
def _own_clock(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A clock of the test's own, which looks often."""
    monkeypatch.setattr(time_limit, "_LOOKS_EVERY", 0.01)
    monkeypatch.setattr(time_limit, "_CLOCK", time_limit._Clock())
    yield
    end_watch()


def busy(until: Callable[[], bool] = lambda: False, seconds: float = 10.0) -> None:
    """Work for longer than any limit here, but not for ever."""
    over = time.monotonic() + seconds
    while not until() and time.monotonic() < over:
        pass


def wait(seconds: float = 10.0) -> None:
    """Do nothing, in short spells, for longer than any limit here."""
    over = time.monotonic() + seconds
    while time.monotonic() < over:
        time.sleep(0.01)


def test_a_rule_in_time_is_left_alone_and_one_inside_another_has_its_own() -> None:
    with TimeLimit("outer", "tube", 30):
        with pytest.raises(Overrun), TimeLimit("inner", "tube", 0.05):
            busy()
        time.sleep(0.1)


def test_a_rule_is_given_the_time_of_the_processor_and_five_times_as_much_by_the_clock() -> None:
    """One that waits for less than that is left alone, however short its limit; one that works is stopped."""
    with TimeLimit("tube.waits", "tube", 0.1):
        time.sleep(0.3)
    begun, worked = time.monotonic(), time.process_time()
    with pytest.raises(Overrun), TimeLimit("tube.waits", "tube", 0.1):
        wait()
    assert time.monotonic() - begun >= 0.5
    assert time.process_time() - worked < 0.3
    begun, worked = time.monotonic(), time.process_time()
    with pytest.raises(Overrun), TimeLimit("tube.works", "tube", 0.1):
        busy()
    # A machine that gives it less than a fifth of a processor lets the clock come first.
    assert time.process_time() - worked >= 0.1 or time.monotonic() - begun >= 0.5


@pytest.mark.parametrize(("seconds", "refused"), [("0", True), ("1", False), ("3600", False), ("3601", True)])
def test_the_limit_is_set_within_bounds(seconds: str, refused: bool, workshop: DesignFolder) -> None:
    workshop.write({}, settings=f"[families]\nseconds_per_rule = {seconds}\n")
    complaints = [str(one) for one in workshop.assess().complaints]
    where = "speclint.toml:2 families.seconds_per_rule"
    wanted = f"{where}: a rule is given from 1 to 3600 seconds; read {seconds}; write 60"
    assert complaints == [wanted] * refused


def test_the_clock_goes_on_with_the_next_rule_after_it_was_ended() -> None:
    before = set(threading.enumerate())
    for _ in range(2):
        with pytest.raises(Overrun), TimeLimit("tube.slow", "tube", 0.05):
            busy()
        end_watch()
        assert set(threading.enumerate()) <= before


def test_a_rule_that_goes_on_after_it_was_stopped_is_told_and_ends_the_process(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """It is stopped after 0.05 s, and given as much again, which is less than the grace."""
    said: list[str] = []
    codes: list[int] = []

    monkeypatch.setattr(time_limit, "end_process", codes.append)
    monkeypatch.setattr(time_limit._CLOCK, "on_stuck", said.append)
    stopped = 0
    begun = time.monotonic()
    with suppress(Overrun), TimeLimit("tube.bad", "bad", 0.05):
        while not codes and time.monotonic() < begun + 10:
            try:
                busy(lambda: bool(codes))
            except Overrun:
                stopped += 1
    assert stopped
    assert (said[0], codes[0]) == ("rule tube.bad on bad", 3)
    assert 0.1 <= time.monotonic() - begun < time_limit.GRACE


def test_what_was_not_raised_yet_when_the_rule_ended_is_taken_back(monkeypatch: pytest.MonkeyPatch) -> None:
    raised: list[tuple[int, object]] = []
    monkeypatch.setattr(time_limit, "_raise_in", lambda thread, what: raised.append((thread, what)))
    turn = TimeLimit("tube.slow", "tube", 30)
    with turn:
        pass
    assert raised == []
    with turn:
        turn.stopped = True
    assert raised == [(threading.get_ident(), None)]


def test_a_rule_that_is_stopped_as_it_ends_leaves_the_clock_all_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    left: list[str] = []
    whole = TimeLimit._leave

    def leave(turn: TimeLimit) -> None:
        left.append(turn.says)
        if len(left) == 1:
            raise Overrun
        whole(turn)

    monkeypatch.setattr(TimeLimit, "_leave", leave)
    with pytest.raises(Overrun), TimeLimit("tube.slow", "tube", 30):
        pass
    assert left == ["rule tube.slow on tube"] * 2
    assert time_limit._CLOCK.turns == {}
