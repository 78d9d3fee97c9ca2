"""Many processes find what one pair finds, and lose nothing when a helper is lost."""

from __future__ import annotations

import io
import os
import subprocess
import sys
import time
from functools import partial
from pathlib import Path
from threading import Event

import pytest

from speclint.checking import Assessment, Processes, assess, chosen_rules, find_remedies
from speclint.checking.helper import Helper, _Copy
from speclint.checking.shared_work import TendedHelper
from speclint.errors import FamilyError, replace
from speclint.families import load_families
from speclint.reports import json_report as jsoned
from speclint.rules import Context
from tests.benchmarks.specs import make

LOADED = load_families()


class Lost(Processes):
    """Helpers that end as soon as they begin."""

    def _begin(self, context: Context, given: object) -> None:
        process = subprocess.Popen(
            [sys.executable, "-I", "-c", ""], stdin=subprocess.PIPE, stdout=subprocess.PIPE
        )
        assert process.stdin is not None
        assert process.stdout is not None
        helper = Helper(process, process.stdin, process.stdout)  # type: ignore[arg-type]
        self._helpers = [TendedHelper(helper, (context is None, given is None))]


class Never(Lost):
    """A helper that never becomes ready."""

    def _begin(self, context: Context, given: object) -> None:
        assert context is not None
        assert given is not None
        silent = _Silent()
        self._helpers = [TendedHelper(Helper(silent, io.BytesIO(), silent), None)]


class _Silent(io.BytesIO):
    """Says nothing until it is ended."""

    def __init__(self) -> None:
        super().__init__()
        self._ended = Event()

    def kill(self) -> None:
        self._ended.set()

    def wait(self) -> None:
        pass

    def read(self, _: int | None = -1, /) -> bytes:
        assert self._ended.wait(60)
        return b""

    def readline(self, _: int | None = -1, /) -> bytes:
        return self.read()

    def readinto(self, _: object, /) -> int:
        return len(self.read())


@pytest.fixture(scope="module")
def repository(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Nine springs and their duty."""
    folder = tmp_path_factory.mktemp("springs")
    make(folder, 10)
    return folder


@pytest.fixture(scope="module")
def alone(repository: Path) -> Assessment:
    """What one process finds, its remedies too: JSON writes those that were sought before the report."""
    found = assess([repository], LOADED)
    with Processes(helpers=0) as processes:
        find_remedies(found, processes)
    return found


def remedied(assessment: Assessment) -> list[list[str]]:
    findings = [check for check in assessment.checks if check.outcome == "finding"]
    return [[str(remedy) for remedy in assessment.remedies(check)] for check in findings]


HELPED = [
    Processes(helpers=2, enough=2, start="new"),
    Lost(helpers=1, enough=2),
    Never(helpers=1, enough=2),
]
if sys.platform == "linux":
    HELPED.append(Processes(helpers=2, enough=2, start="copy"))


@pytest.mark.parametrize("processes", HELPED)
@pytest.mark.filterwarnings(
    "ignore:.*multi-threaded:DeprecationWarning"
)  # of a copy, where the runner has threads
def test_helpers_find_what_one_finds_alone(repository: Path, alone: Assessment, processes: Processes) -> None:
    with processes:
        assessment = assess([repository], LOADED, processes=processes)
        find_remedies(assessment, processes)
    assert jsoned.write(assessment) == jsoned.write(alone)
    assert any(remedied(alone)), "without a remedy this would compare nothing"
    assert remedied(assessment) == remedied(alone)


def test_helpers_run_only_the_rules_that_were_asked_for(repository: Path) -> None:
    rules = chosen_rules(LOADED, [], ["coil-spring.index", "release.share-assessed"])
    told: list[tuple[int, int]] = []
    with Processes(helpers=1, enough=2, on_part=lambda *counts: told.append(counts)) as processes:
        spread = assess([repository], LOADED, rules, processes=processes)
    assert [done for done, _ in told] == sorted(done for done, _ in told)
    assert told[-1][0] == told[-1][1] >= 2
    assert jsoned.write(spread) == jsoned.write(assess([repository], LOADED, rules))
    assert {check.rule.name for check in spread.checks} == {"coil-spring.index", "release.share-assessed"}


def test_no_helper_is_called_for_little_work(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise AssertionError("a helper was called")

    monkeypatch.setattr(Processes, "_begin", refuse)
    with Processes(helpers=3, enough=10) as processes:
        assert assess([repository], LOADED, processes=processes).checks
    with (
        pytest.raises(AssertionError, match="a helper was called"),
        Processes(helpers=3, enough=9) as processes,
    ):
        assess([repository], LOADED, processes=processes)


def test_remedies_found_with_help_are_kept(alone: Assessment) -> None:
    with Processes(helpers=0) as processes:
        copy = replace(alone, _remedies={}, _sought=set())
        find_remedies(copy, processes)
    finding = next(check for check in copy.checks if check.outcome == "finding")
    assert copy.remedies(finding) is copy.remedies(finding)


@pytest.mark.parametrize(("enough", "begun"), [(1, 1), (2, 0)])
def test_helpers_are_called_for_remedies_where_no_check_was_left_to_make(
    alone: Assessment, monkeypatch: pytest.MonkeyPatch, enough: int, begun: int
) -> None:
    """As where all checks were kept of an earlier run, by which remedies were not asked for."""
    calls: list[object] = []
    monkeypatch.setattr(Processes, "_begin", lambda *given: calls.append(given))
    copy = replace(alone, _remedies={}, _sought=set())
    finding = next(check for check in copy.checks if check.outcome == "finding")
    assert copy.context is not None
    with Processes(helpers=1, enough=enough) as processes:
        processes.check((), copy.context, None, [])
        find_remedies(copy, processes, [finding])
    assert len(calls) == begun
    assert copy.sought(finding) is not None


def test_helpers_of_some_rules_do_not_serve_a_run_of_all(repository: Path, alone: Assessment) -> None:
    """As where one rule is asked for in full, and what else rests on the same values was kept of an earlier run."""
    finding = next(check for check in alone.checks if alone.remedies(check))
    other = chosen_rules(LOADED, [], ["coil-spring.buckling"])
    assert alone.context is not None
    assert finding.rule not in other
    with Processes(helpers=1, enough=3, start="new") as processes:
        assess([repository], LOADED, other, processes=processes)
        assert processes.wait_until_ready() == 1
        processes.check(LOADED.rules, alone.context, None, [])
        assert processes.wait_until_ready() == 0
        twice = processes.remedies([(finding, []), (finding, [])], alone.checks, alone.context)
    assert [bool(sought.remedies) for sought, _ in twice] == [True, True]


def test_helpers_do_any_function_of_a_module(repository: Path) -> None:
    """The lengths of words, once with helpers and once where they are lost."""
    words = [["bore", "rod"], ["piston"], [], ["liner", "cover"]]
    for processes in (Processes(helpers=1, enough=2), Lost(helpers=1, enough=2), Processes(helpers=0)):
        with processes:
            assess([repository], LOADED, [], processes=processes)
            assert processes.spread(lengths, words) == [[4, 3], [6], [], [5, 5]]


def lengths(words: list[str]) -> list[int]:
    return [len(word) for word in words]


def _number_of_process() -> int:
    return os.getpid()


def _fail() -> int:
    raise FamilyError("family x: a drawing was not made")


def _end_the_process() -> int:
    if os.getpid() != _TESTS:
        os._exit(3)
    return 7


_TESTS = os.getpid()
_COPIES = pytest.mark.skipif(sys.platform != "linux", reason="only there a process copies itself safely")


@_COPIES
def test_work_that_is_begun_meanwhile_is_done_in_a_copy() -> None:
    with Processes(1, start="copy") as processes:
        result = processes.meanwhile(_number_of_process)
        assert result() != os.getpid()


@_COPIES
def test_an_error_of_work_in_a_copy_is_told_as_if_it_were_done_here() -> None:
    with Processes(1, start="copy") as processes, pytest.raises(FamilyError, match="a drawing was not made"):
        processes.meanwhile(_fail)()


@_COPIES
def test_work_of_a_copy_that_is_lost_is_done_here() -> None:
    with Processes(1, start="copy") as processes:
        assert processes.meanwhile(_end_the_process)() == 7


@_COPIES
def test_a_copy_whose_work_nobody_asks_for_is_ended() -> None:
    with Processes(1, start="copy") as processes:
        processes.meanwhile(partial(time.sleep, 60))
        (copy,) = processes._copies
    assert isinstance(copy._process, _Copy)
    with pytest.raises(ProcessLookupError):
        os.kill(copy._process.number, 0)


@pytest.mark.parametrize("processes", [Processes(0), Processes(1, start="new")], ids=["none", "new"])
def test_where_there_is_no_copy_the_work_is_done_when_it_is_asked_for(processes: Processes) -> None:
    with processes:
        assert processes.meanwhile(_number_of_process)() == os.getpid()
