"""Every formula of a family has a check against something outside: a book, a standard, a library or a hand working.

Each has figures worked by hand in its docstring, which are run. One that cites a published work is named by a test
besides: in tests/published, or in the tests of its family. One that cites none is a definition, or plain geometry and
statics: its printed equation, which ``test_equations`` works out by itself, is all that there is to be held against.
"""

from __future__ import annotations

import ast
import inspect
from collections.abc import Callable
from functools import cache
from pathlib import Path

from speclint.equations import FIRST_PRINCIPLES, described
from speclint.testing import formulae_in, installed_families
from tests.each import each

TESTS = Path(__file__).parents[1]
FORMULAE = [
    one
    for one in formulae_in(*(family.module for family in installed_families().families))
    if one.__module__.startswith("speclint_")
]


def name_of(formula: Callable[..., float]) -> str:
    return f"{formula.__module__}.{formula.__name__}"


def cites_a_work(formula: Callable[..., float]) -> bool:
    """Whether a formula is taken from a published work."""
    return any(
        not source.common_practice and source.work != FIRST_PRINCIPLES.work
        for source in described(formula).cites
    )


@cache
def asked_in(folder: Path) -> frozenset[str]:
    """The names that the test files of a folder import, each with its module, and use besides."""
    found: set[str] = set()
    for path in folder.glob("test_*.py"):
        nodes = list(ast.walk(ast.parse(path.read_text(encoding="utf-8"))))
        used = {node.id for node in nodes if isinstance(node, ast.Name)}
        imports = (node for node in nodes if isinstance(node, ast.ImportFrom))
        found |= {
            f"{node.module}.{alias.name}"
            for node in imports
            for alias in node.names
            if (alias.asname or alias.name) in used
        }
    return frozenset(found)


def has_figures(formula: Callable[..., float]) -> bool:
    """Whether the docstring asks the formula for a figure and says what comes of it."""
    lines = (inspect.getdoc(formula) or "").splitlines()
    asked = [
        number for number, line in enumerate(lines) if line.startswith(">>> ") and formula.__name__ in line
    ]
    return any(
        any(line[:1].isdigit() or line[:1] in "[(-{" for line in lines[at + 1 : at + 4]) for at in asked
    )


def test_there_are_formulae_of_families() -> None:
    assert len(FORMULAE) > 500
    assert sum(map(cites_a_work, FORMULAE)) > 100


@each(FORMULAE, name_of)
def test_a_formula_of_a_family_has_figures_worked_by_hand(formula: Callable[..., float]) -> None:
    assert has_figures(formula), "add an example with its figures to the docstring"


@each(filter(cites_a_work, FORMULAE), name_of)
def test_a_formula_from_a_published_work_is_held_against_another_working(
    formula: Callable[..., float],
) -> None:
    family = formula.__module__.split(".")[0].removeprefix("speclint_")
    assert name_of(formula) in asked_in(TESTS / "published") | asked_in(TESTS / "plugins" / family), (
        "add a figure of a table, an example or a second working to tests/published/test_family_formulae.py"
    )


def test_figures_that_are_asked_for_and_not_given_are_none() -> None:
    def bare() -> float:
        """Half.

        >>> _ = bare()
        """
        return 0.5

    assert not has_figures(bare)
