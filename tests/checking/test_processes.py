"""Many processes find what one pair finds, and lose nothing when a helper is lost."""

from __future__ import annotations

import os
import sys
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from multiprocessing import get_context
from pathlib import Path

import pytest

from speclint.checking import Assessment, Processes, assess, chosen_rules, find_remedies
from speclint.families import load_families
from speclint.reports import json_report as jsoned
from tests.benchmarks.specs import make

LOADED = load_families()


class Lost(Processes):
    """Helpers that end as soon as they begin."""

    def _start_pool(
        self, given: object, named: tuple[str, ...] | None, left_out: tuple[str, ...]
    ) -> ProcessPoolExecutor:
        return ProcessPoolExecutor(
            1, get_context("spawn"), initializer=_end, initargs=(given is None, named, left_out)
        )


def _end(*_: object) -> None:
    os._exit(1)


@pytest.fixture(scope="module")
def repository(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Nine springs and their duty."""
    folder = tmp_path_factory.mktemp("springs")
    make(folder, 10)
    return folder


@pytest.fixture(scope="module")
def alone(repository: Path) -> Assessment:
    return assess([repository], LOADED)


def remedied(assessment: Assessment) -> list[list[str]]:
    findings = [check for check in assessment.checks if check.outcome == "finding"]
    return [[str(remedy) for remedy in assessment.remedies(check)] for check in findings]


HELPED = [Processes(helpers=2, enough=2, start="spawn"), Lost(helpers=1, enough=2)]
if sys.platform == "linux":
    HELPED.append(Processes(helpers=2, enough=2, start="fork"))


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
    with Processes(helpers=1, enough=2) as processes:
        spread = assess([repository], LOADED, rules, processes=processes)
    assert jsoned.write(spread) == jsoned.write(assess([repository], LOADED, rules))
    assert {check.rule.name for check in spread.checks} == {"coil-spring.index", "release.share-assessed"}


def test_no_helper_is_called_for_little_work(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> ProcessPoolExecutor:
        raise AssertionError("a helper was called")

    monkeypatch.setattr(Processes, "_start_pool", refuse)
    with Processes(helpers=3, enough=10) as processes:
        assert assess([repository], LOADED, processes=processes).checks
    with (
        pytest.raises(AssertionError, match="a helper was called"),
        Processes(helpers=3, enough=9) as processes,
    ):
        assess([repository], LOADED, processes=processes)


def test_remedies_found_with_help_are_kept(alone: Assessment) -> None:
    with Processes(helpers=0) as processes:
        copy = replace(alone, _remedies={})
        find_remedies(copy, processes)
    finding = next(check for check in copy.checks if check.outcome == "finding")
    assert copy.remedies(finding) is copy.remedies(finding)


def test_helpers_do_any_function_of_a_module(repository: Path) -> None:
    """The lengths of words, once with helpers and once where they are lost."""
    words = [["bore", "rod"], ["piston"], [], ["liner", "cover"]]
    for processes in (Processes(helpers=1, enough=2), Lost(helpers=1, enough=2), Processes(helpers=0)):
        with processes:
            assess([repository], LOADED, [], processes=processes)
            assert processes.spread(lengths, words) == [[4, 3], [6], [], [5, 5]]


def lengths(words: list[str]) -> list[int]:
    return [len(word) for word in words]
