"""A folder with a module and two tables of which it is known what their tests notice."""

from __future__ import annotations

from pathlib import Path

import pytest

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
    return RATE * x**power


def untested(x: float) -> float:
    return x * 0.3


def loose(x: float) -> bool:
    return x > 0.8


def table(file: str) -> str:
    return (Path(__file__).parent / file).read_text(encoding="utf-8")


def endless(x: int) -> int:
    while x < 3:
        x += 1
    return x
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
    assert little.loose(1.0)

def test_scale_first():
    assert little.scale() > 0

def test_scale_again():
    assert little.scale() == 200

def test_endless():
    assert little.endless(1) == 3

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
