"""Work handed to an executor: the same is found, and nothing is lost with a worker."""

from __future__ import annotations

from concurrent.futures import Executor, Future, ThreadPoolExecutor
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking import OnExecutor, Processes, assess, cluster, find_remedies, on_executor
from speclint.errors import FamilyError, SettingsError
from speclint.families import load_families
from speclint.reports import json_report
from tests.benchmarks.specs import make

LOADED = load_families()


class Losing(ThreadPoolExecutor):
    """Every second piece of work is lost."""

    given = 0

    def submit(self, *work: Any, **more: Any) -> Future[Any]:
        self.given += 1
        if self.given % 2:
            return super().submit(*work, **more)
        lost: Future[Any] = Future()
        lost.set_exception(OSError("the worker is gone"))
        return lost


def told(folder: Path, processes: Processes) -> tuple[str, list[list[str]]]:
    found = assess([folder], LOADED, processes=processes)
    find_remedies(found, processes)
    return json_report.write(found), [[str(one) for one in found.remedies(check)] for check in found.checks]


@pytest.mark.parametrize("kind", [ThreadPoolExecutor, Losing])
def test_an_executor_finds_what_one_process_finds(tmp_path: Path, kind: type[ThreadPoolExecutor]) -> None:
    make(tmp_path, 6)
    with kind(2) as executor:
        spread = told(tmp_path, OnExecutor(executor))
        assert executor.given > 1 if isinstance(executor, Losing) else isinstance(executor, Executor)
    assert spread == told(tmp_path, Processes(0))


def test_a_worker_with_other_code_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    make(tmp_path, 3)
    with ThreadPoolExecutor(1) as executor:
        workers = OnExecutor(executor)
        monkeypatch.setattr(on_executor, "code_of", lambda _: "another")
        with pytest.raises(FamilyError, match="other versions"):
            told(tmp_path, workers)


def test_no_cluster_is_one_line() -> None:
    with (
        pytest.raises(SettingsError, match=r"speclint\[cluster\]|no cluster is found at"),
        cluster("nowhere"),
    ):
        pass


class Answering(Executor):
    """Answers each piece of work at once: what was given of it, or that it was lost where 7 is among it."""

    def submit(self, *work: Any, **_: Any) -> Future[Any]:
        tasks, answer = work[-1], Future[Any]()
        if 7 in tasks:
            answer.set_exception(OSError("the worker is gone"))
        else:
            answer.set_result(tasks)
        return answer


def test_only_what_was_lost_is_done_here_and_each_part_is_told() -> None:
    """A hundred pieces in 64 parts at the most: 50 parts of 2; that of 6 and 7 is lost."""
    told_of: list[tuple[int, int]] = []
    workers = OnExecutor(Answering(), lambda done, whole: told_of.append((done, whole)))
    workers._begun = b"begun"
    way: Any = SimpleNamespace(remote=None, pack=lambda item: item, unpack=lambda item: item * 2)
    here: list[int] = []

    def local(item: int) -> int:
        here.append(item)
        return -item

    found = workers._divide(lambda: way, local, range(100))
    assert found == [-item if item in (6, 7) else 2 * item for item in range(100)]
    assert here == [6, 7]
    assert told_of == [(done, 100) for done in range(2, 101, 2)]
    assert workers._divide(lambda: way, local, [6, 7], lambda _: 0) == [12, 0]
    assert here == [6, 7]


def test_before_it_has_begun_all_is_done_here() -> None:
    workers = OnExecutor(Answering())
    way: Any = SimpleNamespace()
    assert workers._divide(lambda: way, lambda item: item + 1, [1, 2]) == [2, 3]
