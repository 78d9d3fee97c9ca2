"""Many hands find what one pair finds, and lose nothing when a helper is lost."""

from __future__ import annotations

import os
import sys
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from multiprocessing import get_context
from pathlib import Path

import pytest

from speclint.checking.assessment import Assessment, assess, chosen_rules
from speclint.checking.processes import Hands
from speclint.families.loading import load_families
from speclint.reports import json_report as jsoned
from tests.benchmarks.specs import make

LOADED = load_families()


class Lost(Hands):
    """Helpers that end as soon as they begin."""

    def _call(self, given: object, named: tuple[str, ...] | None) -> ProcessPoolExecutor:
        return ProcessPoolExecutor(1, get_context("spawn"), initializer=_end, initargs=(given is None, named))


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


HELPED = [Hands(helpers=2, enough=2, start="spawn"), Lost(helpers=1, enough=2)]
if sys.platform == "linux":
    HELPED.append(Hands(helpers=2, enough=2, start="fork"))


@pytest.mark.parametrize("hands", HELPED)
@pytest.mark.filterwarnings(
    "ignore:.*multi-threaded:DeprecationWarning"
)  # of a copy, where the runner has threads
def test_helpers_find_what_one_finds_alone(repository: Path, alone: Assessment, hands: Hands) -> None:
    with hands:
        assessment = assess([repository], LOADED, hands=hands)
        assessment.find_remedies(hands)
    assert jsoned.write(assessment) == jsoned.write(alone)
    assert any(remedied(alone)), "without a remedy this would compare nothing"
    assert remedied(assessment) == remedied(alone)


def test_helpers_run_only_the_rules_that_were_asked_for(repository: Path) -> None:
    rules = chosen_rules(LOADED, [], ["coil-spring.index", "release.share-assessed"])
    with Hands(helpers=1, enough=2) as hands:
        spread = assess([repository], LOADED, rules, hands=hands)
    assert jsoned.write(spread) == jsoned.write(assess([repository], LOADED, rules))
    assert {check.rule.name for check in spread.checks} == {"coil-spring.index", "release.share-assessed"}


def test_no_helper_is_called_for_little_work(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> ProcessPoolExecutor:
        raise AssertionError("a helper was called")

    monkeypatch.setattr(Hands, "_call", refuse)
    with Hands(helpers=3, enough=10) as hands:
        assert assess([repository], LOADED, hands=hands).checks
    with pytest.raises(AssertionError, match="a helper was called"), Hands(helpers=3, enough=9) as hands:
        assess([repository], LOADED, hands=hands)


def test_remedies_found_with_help_are_kept(alone: Assessment) -> None:
    with Hands(helpers=0) as hands:
        copy = replace(alone, _remedies={})
        copy.find_remedies(hands)
    finding = next(check for check in copy.checks if check.outcome == "finding")
    assert copy.remedies(finding) is copy.remedies(finding)


def test_helpers_do_any_function_of_a_module(repository: Path) -> None:
    """The lengths of words, once with helpers and once where they are lost."""
    words = [["bore", "rod"], ["piston"], [], ["liner", "cover"]]
    for hands in (Hands(helpers=1, enough=2), Lost(helpers=1, enough=2), Hands(helpers=0)):
        with hands:
            assess([repository], LOADED, [], hands=hands)
            assert hands.spread(lengths, words) == [[4, 3], [6], [], [5, 5]]


def lengths(words: list[str]) -> list[int]:
    return [len(word) for word in words]
