"""The tool on a module and two tables of which it is known what their tests notice."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def run(little: Path, *words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "tests.mutation", f"--root={little}", *words]
    command += ["--modules", "little.py", "pkg/deep.py", "--tests", "test_little.py"]
    paths = os.pathsep.join((str(ROOT), str(ROOT / "plugins")))
    environment = {**os.environ, "PYTHONPATH": paths, "PYTHONUTF8": "1"}
    return subprocess.run(
        command, capture_output=True, encoding="utf-8", cwd=little, env=environment, check=False
    )


def test_constants_that_no_test_sees_survive(little: Path) -> None:
    done = run(little, "little.py")
    assert done.returncode == 1, done.stderr
    assert done.stdout.splitlines() == [
        "    7 mutants     4 killed   57.1%  little.py",
        "      little.py:7: 7.0 -> 7.14   UNSEEN = 7.0",
        "      little.py:23: 0.3 -> 0.306   return x * 0.3",
        "      little.py:27: 0.8 -> 0.816   return x - 0.8",
        "    7 mutants     4 killed   57.1%  in total",
    ]


def test_a_constant_that_is_only_compared_is_seen(little: Path) -> None:
    done = run(little, "pkg/deep.py")
    assert done.returncode == 0, done.stdout + done.stderr
    assert done.stdout.startswith("    1 mutants     1 killed  100.0%  pkg/deep.py")


def test_cells_that_no_test_sees_survive(little: Path) -> None:
    done = run(little, "cells.csv", "cells.toml")
    assert done.returncode == 1, done.stderr
    assert done.stdout.splitlines() == [
        "    3 mutants     2 killed   66.7%  cells.csv",
        "      cells.csv:3: 8 -> 8.16   M20,1.5,8",
        "    4 mutants     2 killed   50.0%  cells.toml",
        "      cells.toml:3: 50 -> 51   rows = [[1e3, 40], [50, 60]]",
        "      cells.toml:3: 60 -> 61.2   rows = [[1e3, 40], [50, 60]]",
        "    7 mutants     4 killed   57.1%  in total",
    ]


def test_a_sample_is_the_same_for_the_same_seed(little: Path) -> None:
    first, again = (run(little, "little.py", "--sample", "3", "--seed", "4") for _ in range(2))
    assert first.stdout.startswith("    3 mutants")
    assert first.stdout == again.stdout


def test_tests_that_fail_as_things_are_stop_the_run(little: Path) -> None:
    (little / "test_little.py").write_text("def test_no():\n    assert not 1\n", encoding="utf-8")
    done = run(little, "little.py")
    assert done.returncode == 1
    assert "test_no" in done.stderr
    assert not done.stdout
