"""No rule takes a stated value where a fact works it from elsewhere, or is the worse of the two: it asks the fact.

``worked.csv`` lists the keys, as code writes them, and the fact of ``speclint.facts`` that is to be asked; where a rule
takes one itself all the same, with the reason. ``tests.contracts.kinder`` tries on the example what comes of it.
"""

from __future__ import annotations

import ast
import csv
from collections import defaultdict
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest

from speclint import facts
from tests.contracts.kinder import OPEN, is_kinder, is_open, tried
from tests.contracts.omissions import ROOT

LIST = Path(__file__).with_name("worked.csv")
#: What a rule takes a value with.
_TAKES = {"take", "take_nominal", "take_absolute", "take_limits", "read", "count"}
#: So many trials on the example are made here, spread over all; ``python -m tests.contracts.kinder`` makes them all.
_TRIED = 10


class Row(NamedTuple):
    """The fact that gives a key, the functions that take the key themselves, and why."""

    fact: str
    elsewhere: frozenset[str]
    why: str


@cache
def listed() -> Mapping[str, Row]:
    with LIST.open(encoding="utf-8", newline="") as lines:
        rows = [list(row.values()) for row in csv.DictReader(lines)]
    found = {key: Row(fact, frozenset(elsewhere.split()), why) for key, fact, elsewhere, why in rows}
    assert len(found) == len(rows), f"{LIST.name} lists a key twice"
    return found


@cache
def takers() -> Mapping[str, frozenset[str]]:
    """The functions of each family but that of agreements that take a value, by how they write it."""
    found: dict[str, set[str]] = defaultdict(set)
    for path in ROOT.glob("plugins/speclint_*/**/*.py"):
        module = ".".join(path.relative_to(ROOT / "plugins").with_suffix("").parts)
        if module.startswith("speclint_agreement."):
            continue
        for function in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(function, ast.FunctionDef):
                for written in _taken(function):
                    found[written].add(f"{module}.{function.name}")
    return {written: frozenset(functions) for written, functions in found.items()}


def _taken(function: ast.FunctionDef) -> set[str]:
    calls = (node for node in ast.walk(function) if isinstance(node, ast.Call))
    taking = (call for call in calls if getattr(call.func, "attr", getattr(call.func, "id", "")) in _TAKES)
    values = (
        ast.unparse(value) for call in taking for value in call.args if isinstance(value, ast.Attribute)
    )
    return {".".join(value.split(".")[-2:]) for value in values}


def test_a_key_that_a_fact_gives_is_asked_of_the_fact() -> None:
    wrong = {
        key: sorted(takers().get(key, frozenset()) ^ row.elsewhere)
        for key, row in listed().items()
        if takers().get(key, frozenset()) != row.elsewhere
    }
    assert not wrong, (
        f"to be asked of the fact that {LIST.name} names, or listed there with the reason: {wrong}"
    )


def test_every_row_names_a_fact_and_says_why() -> None:
    known = set(dir(facts))
    assert not {row.fact for row in listed().values()} - known
    assert not [key for key, row in listed().items() if bool(row.elsewhere) != (len(row.why) > 15)]


@pytest.mark.parametrize(
    "number", [pytest.param(one, marks=pytest.mark.long) if one % 2 else one for one in range(_TRIED)]
)
def test_a_stated_value_that_is_contradicted_makes_no_check_kinder(number: int) -> None:
    closed = sorted(trial for trial in tried() if not is_open(trial))
    trial = closed[number * len(closed) // _TRIED]
    assert not is_kinder(tried()[trial]), trial


def test_what_is_kinder_all_the_same_says_why_and_is_tried() -> None:
    assert set(OPEN) <= {(trial.key, trial.rule) for trial in tried()}
    assert all(len(why.split()) > 8 for why in OPEN.values())


def test_facts_of_many_kinds_are_tried() -> None:
    assert len({trial.key for trial in tried()}) > 20
    assert len({trial.rule for trial in tried()}) > 30
