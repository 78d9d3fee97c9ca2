"""What is said of work in helper processes, how they are started, and when none is: without starting any."""

from __future__ import annotations

import sys
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking import Processes, helper, processes
from speclint.checking.helper import HelperLost
from speclint.checking.processes import (
    _MOST,
    Transport,
    _of,
    _result_of,
    _unchanged,
    _way_to_start,
    _why_lost,
)
from speclint.checking.shared_work import Lost
from speclint.errors import FamilyError
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


def test_why_a_rule_that_was_lost_could_not_be_run() -> None:
    assert _why_lost(None, 60) == "the process to run it in did not begin"
    assert _why_lost(Lost(59.9), 60) == "it ended the process that it ran in"
    assert (
        _why_lost(Lost(60.0), 60)
        == "it did not end within 60 s of the processor, or 300 s by the clock (seconds_per_rule in speclint.toml)"
    )


def test_what_a_helper_says_is_its_result_or_its_error() -> None:
    assert _of(("done", 3)) == 3
    with pytest.raises(FamilyError, match=r"^of a family$"):
        _of(("failed", FamilyError("of a family")))
    with pytest.raises(RuntimeError, match=r"^in a helper process: KeyError$"):
        _of(("failed", "KeyError"))


def test_the_result_of_a_copy_that_is_lost_is_worked_here() -> None:
    def lost() -> Any:
        raise HelperLost

    copy: Any = SimpleNamespace(hear=lambda: ("done", 3))
    assert _result_of(copy, lambda: 4) == 3
    copy.hear = lost
    assert _result_of(copy, lambda: 4) == 4


@pytest.mark.parametrize(
    ("system", "threads", "way"), [("linux", 1, "copy"), ("linux", 2, "new"), ("darwin", 1, "new")]
)
def test_a_copy_is_made_only_where_that_is_safe(
    monkeypatch: pytest.MonkeyPatch, system: str, threads: int, way: str
) -> None:
    monkeypatch.setattr(sys, "platform", system)
    monkeypatch.setattr(processes, "active_count", lambda: threads)
    assert _way_to_start() == way


@pytest.mark.parametrize(
    ("asked", "safe", "copies"),
    [("copy", "new", 1), ("new", "copy", 0), (None, "copy", 1), (None, "new", 0), ("copy", "copy", 1)],
)
def test_work_is_done_meanwhile_in_a_copy_where_that_is_asked_or_else_is_safe(
    monkeypatch: pytest.MonkeyPatch, asked: Any, safe: str, copies: int
) -> None:
    """The copy says 3, this process 4."""
    copy = SimpleNamespace(hear=lambda: ("done", 3))
    monkeypatch.setattr(helper, "copy_at_work", lambda _work, _others: copy)
    monkeypatch.setattr(processes, "_way_to_start", lambda: safe)
    some = Processes(1, start=asked)
    done = some.meanwhile(lambda: 4)
    assert (done(), len(some._copies)) == ((3, 1) if copies else (4, 0))


@pytest.mark.parametrize(("asked", "way"), [("new", "new"), ("copy", "copy"), (None, "as is safe")])
def test_a_helper_is_started_in_the_way_that_is_asked(
    monkeypatch: pytest.MonkeyPatch, asked: Any, way: str
) -> None:
    ways: list[str] = []

    def no_room(how: str, _others: object) -> None:
        ways.append(how)
        raise OSError("no room for another process")

    monkeypatch.setattr(processes, "_helper", no_room)
    monkeypatch.setattr(processes, "_way_to_start", lambda: "as is safe")
    monkeypatch.setattr(Processes, "_told", lambda *_: None)
    context: Any = None
    Processes(2, start=asked)._begin(context, None)
    assert ways == [way]


@pytest.mark.parametrize(
    ("usable", "wanted", "helpers"), [(1, None, 0), (4, None, 3), (99, None, _MOST), (4, 7, 7), (1, 0, 0)]
)
def test_one_processor_is_left_for_the_caller(
    monkeypatch: pytest.MonkeyPatch, usable: int, wanted: int | None, helpers: int
) -> None:
    monkeypatch.setattr(processes, "usable_processors", lambda: usable)
    assert Processes(wanted)._wanted == helpers


class Begun(Processes):
    """Notes how often helpers would be started, and starts none."""

    def __init__(self, *given: Any, **more: Any) -> None:
        super().__init__(*given, **more)
        self.begun = 0

    def _begin(self, context: Any, given: object) -> None:
        assert context is not None
        assert given == "given"
        self.begun += 1


@pytest.mark.parametrize(("helpers", "enough", "begun"), [(2, 1, 1), (2, 2, 0), (0, 1, 0), (1, 1, 1)])
def test_helpers_are_called_where_there_is_enough_to_do(
    tmp_path: Path, helpers: int, enough: int, begun: int
) -> None:
    shop = DesignFolder(tmp_path, tubes.tubes()).write(FILES)
    context = shop.assess().context
    assert context is not None
    told: list[tuple[int, int]] = []
    some = Begun(helpers, enough, on_part=lambda *one: told.append(one))
    for _ in range(2):
        (found,) = some.check(shop.loaded.rules, context, "given", ["tube"])
        assert [one.rule.name for one in found] == sorted(one.name for one in shop.loaded.rules)
    assert some.begun == begun * 2
    assert told == [(1, 1)] * 2
    some.remedies([], found, context)
    assert some.begun == begun * 2  # none is sought


@pytest.mark.parametrize(("findings", "begun"), [(7, 0), (8, 1)])
def test_helpers_are_called_for_the_remedies_of_eight_findings(
    tmp_path: Path, findings: int, begun: int
) -> None:
    """Where none was called for checks, which were all kept."""
    shop = DesignFolder(tmp_path, tubes.tubes()).write(FILES)
    found = shop.assess()
    assert found.context is not None
    some = Begun(1)
    some.check(shop.loaded.rules, found.context, "given", [])
    (check,) = (one for one in found.checks if one.rule.name == "tube.stress")
    assert some.remedies([(check, [])] * findings, found.checks, found.context) != []
    assert some.begun == begun


def test_the_data_of_work_are_passed_as_they_are() -> None:
    assert _unchanged("x") == "x"
    assert Processes(0).spread(len, ["a", "bb"]) == [1, 2]
    assert Transport(len, _unchanged, _unchanged).pack("x") == "x"
    assert Processes(0).wait_until_ready() == 0


def test_how_long_a_silent_helper_is_waited_for() -> None:
    """The time of a rule, and twice the grace of five seconds in which it stops the rule of its own accord."""
    some = Processes(0)
    some._seconds = 60
    assert some._patience == 70.0


class Serving:
    """A helper that does so many pieces at once, the first ones."""

    def __init__(self, pieces: int) -> None:
        self._pieces = pieces

    def serve(self, work: Any) -> None:
        for _ in range(self._pieces):
            index = work.take_first()
            function, item = work.piece(index)
            work.keep(index, ("done", function(item)) if item else Lost(1.0))

    def give_up_after(self, patience: float) -> None:
        """It says all that it has to say."""

    def end(self) -> None:
        """It has ended."""


@pytest.mark.parametrize(("pieces", "told"), [(0, [1, 2, 3, 3]), (1, [2, 3, 3]), (2, [3, 3]), (3, [3])])
def test_how_much_is_done_counts_what_helpers_did(pieces: int, told: list[int]) -> None:
    parts: list[tuple[int, int]] = []
    some = Processes(0, on_part=lambda *one: parts.append(one))
    some._helpers = [Serving(pieces)]  # type: ignore[list-item]
    assert some.spread(len, ["a", "bb", "ccc"]) == [1, 2, 3]
    assert parts == [(done, 3) for done in told]


def test_a_piece_that_a_helper_lost_is_done_here() -> None:
    some = Processes(0)
    some._helpers = [Serving(2)]  # type: ignore[list-item]
    assert some.spread(len, ["", "bb", "ccc"]) == [0, 2, 3]
