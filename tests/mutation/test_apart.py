"""A process of its own that does not end, or takes all memory, is ended."""

from __future__ import annotations

import os
import sys
import time
from multiprocessing import Pipe
from types import SimpleNamespace

import pytest

from tests.mutation import apart as module, serving
from tests.mutation.apart import apart
from tests.mutation.mutants import Mutant


def _for_ever() -> None:
    while True:
        time.sleep(1)


def _held() -> str:
    """What becomes of a list that grows without end."""
    held = []
    try:
        while True:
            held.append(bytes(1 << 20))
    except MemoryError:
        return f"refused after {len(held) >> 10} GB"


def test_what_is_worked_apart_comes_back_and_what_does_not_end_is_left() -> None:
    assert apart(60.0, sum, [1, 2], called="a sum") == 3
    begun = time.monotonic()
    assert apart(0.5, _for_ever, called="a loop") is None
    assert time.monotonic() - begun < 30


@pytest.mark.skipif(sys.platform != "linux", reason="only there memory is limited so")
def test_memory_that_grows_without_end_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "_MOST_HELD", 1 << 30)
    assert apart(60.0, _held, called="a list") == "refused after 0 GB"


@pytest.mark.skipif(not hasattr(os, "fork"), reason="forks try mutants only where a process can fork")
@pytest.mark.parametrize(
    ("of_tests", "of_all"),
    [
        ({"quick": 0.2, "slow": 60.0}, 60.0),  # the time of the one test that is at work
        ({"quick": 60.0, "slow": 60.0}, 0.2),  # the time of all
    ],
)
def test_a_test_made_endless_is_told_without_waiting_for_the_time_of_all(
    of_tests: dict[str, float], of_all: float
) -> None:
    mine, theirs = Pipe(duplex=False)
    theirs.send(f"{serving.OUT_OF_TIME}: quick")
    begun = time.monotonic()
    assert serving._told(mine, serving._Patience(of_tests, of_all)) == f"{serving.OUT_OF_TIME}: quick"
    assert time.monotonic() - begun < 30


def test_each_test_has_a_time_of_its_own() -> None:
    """The second test has 60 s from when it begins, whatever was left of the first one's."""
    mine, theirs = Pipe(duplex=False)
    for said in (f"{serving.OUT_OF_TIME}: quick", f"{serving.OUT_OF_TIME}: slow", "slow"):
        theirs.send(said)
    assert serving._told(mine, serving._Patience({"quick": 0.0, "slow": 60.0}, 60.0)) == "slow"


@pytest.mark.parametrize(
    ("said", "found"), [("", None), ("a test", "a test"), (serving.FRESH, serving.FRESH)]
)
def test_what_a_fork_says_at_last_is_what_it_found(said: str, found: str | None) -> None:
    mine, theirs = Pipe(duplex=False)
    theirs.send(said)
    assert serving._told(mine, serving._Patience({}, 60.0)) == found


def test_a_process_that_is_gone_is_not_waited_for_though_another_holds_its_pipe(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(serving, "_LOOKS_EVERY", 0.01)
    server = object.__new__(serving.Server)
    server._mine, theirs = Pipe()
    server._process = SimpleNamespace(is_alive=lambda: False)
    mutant = Mutant("one.py", 1, 0, "+ -> -", "a + b")
    with pytest.raises(RuntimeError, match=r"the process that tries one\.py:1: .* broke off"):
        server.first_to_fail(mutant, {}, 60.0)
    theirs.close()
