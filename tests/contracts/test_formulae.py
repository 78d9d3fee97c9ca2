"""Every formula is described, and dimensionally sound: run with pint, its result has the dimension it states."""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Callable, Iterator
from typing import Any

from speclint.equations import described
from speclint.testing import (
    expect_answer,
    expect_dimensions,
    expect_formula,
    formulae_in,
    installed_families,
)
from tests.contracts.test_equations import ranges
from tests.each import each

FORMULAE = formulae_in(
    "speclint.facts", "speclint.handbook", *(family.module for family in installed_families().families)
)


def name_of(formula: Callable[..., Any]) -> str:
    return formula.__qualname__


def test_there_are_formulae() -> None:
    assert len(FORMULAE) > 40


@each(FORMULAE, name_of)
def test_a_formula_is_described(formula: Callable[..., Any]) -> None:
    expect_formula(formula)


@each((one for one in FORMULAE if not described(one).empirical), name_of)
def test_a_formula_is_dimensionally_sound(formula: Callable[..., Any]) -> None:
    expect_dimensions(formula)


@each(FORMULAE, name_of)
def test_a_formula_answers_or_refuses(formula: Callable[..., Any]) -> None:
    expect_answer(formula, ranges=ranges(formula))


#: Dimensions that a drawing states in millimetres, megapascals and bar, which no message shows as SI has them.
_NOT_AS_THE_TRADE_HAS_THEM = {"Metres", "SquareMetres", "Pascals", "NewtonsPerMetre"}


def _bare_figures(source: str) -> Iterator[str]:
    """Arguments of such a dimension that a message of a formula shows as they are, without a unit that follows."""
    function = ast.parse(textwrap.dedent(source)).body[0]
    assert isinstance(function, ast.FunctionDef)
    arguments = (*function.args.args, *function.args.kwonlyargs)
    given = {one.arg: ast.unparse(one.annotation) for one in arguments if one.annotation}
    for text in (node for node in ast.walk(function) if isinstance(node, ast.JoinedStr)):
        for shown, after in zip(text.values, (*text.values[1:], ast.Constant("")), strict=True):
            if isinstance(shown, ast.FormattedValue) and isinstance(shown.value, ast.Name):
                unit = isinstance(after, ast.Constant) and str(after.value).startswith(" m ")
                if given.get(shown.value.id) in _NOT_AS_THE_TRADE_HAS_THEM and not unit:
                    yield shown.value.id


@each(FORMULAE, name_of)
def test_what_a_formula_refuses_is_shown_in_the_units_of_the_trade(formula: Callable[..., Any]) -> None:
    assert not list(_bare_figures(inspect.getsource(formula)))


def test_a_bare_figure_is_found() -> None:
    refused = 'def f(d: Metres, R: Metres) -> Metres:\n    require(d < R, f"{d:.4g} of {R * 1e3:.4g} mm")\n'
    assert list(_bare_figures(refused)) == ["d"]
    assert not list(_bare_figures(refused.replace("{d:.4g}", "{d:.4g} m ")))
