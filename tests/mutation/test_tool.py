"""The tool on a module and two tables of which it is known what their tests notice."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.mutation import cells, literals
from tests.mutation.exempt import EXEMPT, Exempt

ROOT = Path(__file__).parents[2]
LITTLE = '''"""A module."""

import functools
from pathlib import Path

RATE = 0.45
UNSEEN = 7.0


@functools.cache
def scale() -> float:
    """1.5 in a docstring is no constant."""
    return 250.0 + 0 * len("two") - 50


def tested(x: float, power: int = 2) -> float:
    if len(str(x)) > 30:
        return round(x, 3)
    return RATE * x**power


def untested(x: float) -> float:
    return x * 0.3


def loose(x: float) -> float:
    return x - 0.8


def table(file: str) -> str:
    return (Path(__file__).parent / file).read_text(encoding="utf-8")
'''
TESTS = """
import csv
import little
import tomllib
from pkg import deep

def test_a_constant_that_no_function_reads():
    assert deep.DEPTH == 3.0

def test_tested():
    assert abs(little.tested(2.0) - 1.8) < 1e-9

def test_loose():
    assert little.loose(1.0) > 0

def test_scale_first():
    assert little.scale() > 0

def test_scale_again():
    assert little.scale() == 200

def test_csv():
    rows = list(csv.reader(little.table("cells.csv").splitlines()))[2:]
    assert [row[1] for row in rows] == ["1.5", "-20"]

def test_toml():
    assert tomllib.loads(little.table("cells.toml"))["iron"]["rows"][0] == [1e3, 40]
"""
CSV = '# 12 a note\nname,value,unseen\nM20,1.5,8\n"6, or 7",-20,0\n'
TOML = '# 5\n[iron]\nrows = [[1e3, 40], [50, 60]]\ndate-2 = "12 mm"  # 7\n'


@pytest.fixture
def little(tmp_path: Path) -> Path:
    texts = {"little.py": LITTLE, "test_little.py": TESTS, "cells.csv": CSV, "cells.toml": TOML}
    (tmp_path / "pkg").mkdir()
    texts |= {"pkg/__init__.py": "", "pkg/deep.py": "DEPTH = 3.0\n"}
    for file, text in texts.items():
        (tmp_path / file).write_text(text, encoding="utf-8")
    return tmp_path


def run(little: Path, *words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "tests.mutation", f"--root={little}", *words]
    command += ["--modules", "little.py", "pkg/deep.py", "--tests", "test_little.py"]
    paths = os.pathsep.join((str(ROOT), str(ROOT / "plugins")))
    environment = {**os.environ, "PYTHONPATH": paths, "PYTHONUTF8": "1"}
    return subprocess.run(
        command, capture_output=True, encoding="utf-8", cwd=little, env=environment, check=False
    )


def test_a_literal_measures_unless_it_counts(little: Path) -> None:
    found = literals.mutants(little, "little.py")
    assert [(mutant.line, mutant.original) for mutant in found] == [
        (6, 0.45),
        (7, 7.0),
        (13, 250.0),
        (13, 50),
        (16, 2),
        (23, 0.3),
        (27, 0.8),
    ]
    assert [mutant.function for mutant in found] == [0, 0, 11, 11, 0, 22, 26]


def test_cells_are_numbers_of_the_table(little: Path) -> None:
    assert [cell.original for cell in cells.mutants(little, "cells.csv")] == [1.5, 8, -20]
    assert [cell.original for cell in cells.mutants(little, "cells.toml")] == [1e3, 40, 50, 60]


def test_one_cell_is_multiplied(little: Path) -> None:
    by_place = [cells.corrupt(cell, CSV) for cell in cells.mutants(little, "cells.csv")]
    assert by_place[0] == CSV.replace("1.5", "1.53")
    assert by_place[2] == CSV.replace("-20", "-20.4")
    assert cells.corrupt(cells.mutants(little, "cells.toml")[2], TOML) == TOML.replace("50", "51")


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


@pytest.mark.parametrize("exempt", EXEMPT, ids=lambda exempt: exempt.code)
def test_what_is_exempt_is_still_there(exempt: Exempt) -> None:
    assert any(exempt.covers(mutant) for mutant in literals.mutants(ROOT, exempt.file))
