"""The tool on a module and two tables of which it is known what their tests notice."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
import tomli

from tests.mutation.running import _OPTIONS

ROOT = Path(__file__).parents[2]


def run(little: Path, *words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "tests.mutation", f"--root={little}", f"--keep={little / 'kept'}"]
    command += ["--patience=3", *words]
    command += ["--modules", "little.py", "pkg/deep.py", "--tests", "test_little.py"]
    paths = os.pathsep.join((str(ROOT), str(ROOT / "plugins")))
    environment = {**os.environ, "PYTHONPATH": paths, "PYTHONUTF8": "1"}
    return subprocess.run(
        command, capture_output=True, encoding="utf-8", cwd=little, env=environment, check=False
    )


SURVIVORS = [
    "      little.py:7: 7.0 -> 7.14   UNSEEN = 7.0",
    '      little.py:13: + -> -   return 250.0 + 0 * len("two") - 50',
    '      little.py:13: * -> /   return 250.0 + 0 * len("two") - 50',
    "      little.py:17: ** -> *   return RATE * x**power",
    "      little.py:21: * -> /   return x * 0.3",
    "      little.py:21: 0.3 -> 0.306   return x * 0.3",
    "      little.py:25: > -> >=   return x > 0.8",
    "      little.py:25: 0.8 -> 0.816   return x > 0.8",
]


@pytest.mark.long
def test_what_no_test_sees_survives_and_a_loop_without_end_does_not(little: Path) -> None:
    """Noticed are all that move 200 or 1.8, the word table, and whatever loses the way from 1 to 3.

    A constant that nobody reads, 0 that is added or taken away, 2 × 2 for 2², a function that no test runs and one
    that is held from one side alone survive.
    """
    done = run(little, "little.py")
    assert done.returncode == 1, done.stderr
    assert [line for line in done.stdout.splitlines() if "->" in line] == SURVIVORS


def test_a_constant_that_is_only_compared_is_seen(little: Path) -> None:
    done = run(little, "pkg/deep.py")
    assert done.returncode == 0, done.stdout + done.stderr
    assert done.stdout.startswith("    1 mutants     1 killed  100.0%  pkg")


def test_cells_that_no_test_sees_survive(little: Path) -> None:
    done = run(little, "--tables", "cells.csv", "cells.toml")
    assert done.returncode == 1, done.stderr
    assert done.stdout.splitlines() == [
        "    3 mutants     2 killed   66.7%  cells.csv",
        "      cells.csv:3: 8 -> 8.16   M20,1.5,8",
        "    4 mutants     2 killed   50.0%  cells.toml",
        "      cells.toml:3: 50 -> 51   rows = [[1e3, 40], [50, 60]]",
        "      cells.toml:3: 60 -> 61.2   rows = [[1e3, 40], [50, 60]]",
        "    7 mutants     4 killed   57.1%  in total",
    ]


@pytest.mark.long
def test_what_was_tried_is_kept_until_the_text_changes(little: Path) -> None:
    words = ("little.py", "--each", "4", "--seed", "4", "--told")
    first = run(little, *words).stdout
    assert first.count(" s  little.py") == 4
    again = run(little, *words).stdout
    assert " s  little.py" not in again
    assert again.splitlines() == [line for line in first.splitlines() if " s  little.py" not in line]
    (little / "little.py").write_text((little / "little.py").read_text("utf-8") + "\n# more\n", "utf-8")
    assert run(little, *words).stdout.count(" s  little.py") == 4


@pytest.mark.long
def test_an_accepted_survivor_is_not_counted_and_an_entry_that_covers_nothing_fails(little: Path) -> None:
    listed = little / "tests" / "mutation" / "accepted.toml"
    listed.parent.mkdir(parents=True)
    entries = ['["little.py", "UNSEEN = ", "7.0 -> 7.14"]', '["pkg/deep.py", "DEPTH = ", "3.1 -> 3.162"]']
    listed.write_text(f'[[accepted]]\nreason = "seen by nobody"\nof = [{", ".join(entries)}]\n', "utf-8")
    told = run(little, "little.py").stdout
    assert [line for line in told.splitlines() if "->" in line] == SURVIVORS[1:]
    assert "little.py, 1 accepted" in told
    deep = run(little, "pkg/deep.py")
    assert deep.returncode == 1
    assert deep.stdout.startswith("accepted.toml lists what is no longer there: pkg/deep.py: 3.1 -> 3.162")


def test_tests_that_fail_as_things_are_stop_the_run(little: Path) -> None:
    (little / "test_little.py").write_text("def test_no():\n    assert not 1\n", encoding="utf-8")
    done = run(little, "little.py")
    assert done.returncode == 1
    assert "test_no" in done.stderr
    assert not done.stdout


@pytest.mark.skipif(not hasattr(os, "fork"), reason="there is no process that tries one change after another")
def test_a_test_that_fails_where_nothing_is_changed_notices_nothing(little: Path) -> None:
    """It makes a folder that the second of two forks finds there: it would pass for noticing every change."""
    text = """import pathlib, tempfile
import little
BASE = pathlib.Path(tempfile.mkdtemp())

def test_tested():
    (BASE / "one").mkdir()
    assert abs(little.tested(2.0) - 1.8) < 1e-9
"""
    (little / "test_little.py").write_text(text, encoding="utf-8")
    done = run(little, "little.py")
    assert done.returncode == 1
    assert "test_little.py::test_tested fails where nothing is changed" in done.stderr


@pytest.mark.long
def test_a_sample_is_tried_first_on_the_test_that_noticed_each(little: Path) -> None:
    """Only what no test noticed is tried in full again; the result is the same, and that of a redrawn one too."""
    (little / "tests" / "mutation").mkdir(parents=True)
    words = ("little.py", "--sample", "40", "--patience=1")
    first = run(little, *words, "--write").stdout
    listed = json.loads((little / "tests" / "mutation" / "noticed.json").read_text("utf-8"))
    assert len(listed) == 22 - len(SURVIVORS)
    again = run(little, *words, "--noticed", "--told", f"--keep={little / 'other'}").stdout
    assert again.count(" s  little.py") == len(SURVIVORS)
    assert again.splitlines()[-1] == first.splitlines()[-1]
    tests = (little / "test_little.py").read_text("utf-8")
    (little / "test_little.py").write_text(tests.replace("== 200", "> 0"), "utf-8")
    looser = run(little, *words, "--noticed", f"--keep={little / 'other'}").stdout
    assert "- -> +   return 250.0" in looser


def test_the_options_of_every_run_ask_for_no_plug_in_that_the_tool_leaves_out() -> None:
    """An option of such a plug-in is unknown to the tool's runs, which then begin no test."""
    options = tomli.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    asked = options["tool"]["pytest"]["ini_options"]["addopts"]
    left_out = [one.removeprefix("no:") for one in _OPTIONS if one.startswith("no:")]
    assert left_out
    assert [one for one in left_out if f"--{one}" in asked] == []
