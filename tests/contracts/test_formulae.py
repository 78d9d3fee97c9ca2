"""Every formula is described, and dimensionally sound: run with pint, its result has the dimension it states."""

from __future__ import annotations

import ast
import inspect
import math
import re
import textwrap
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from speclint.equations import described
from speclint.quantities import DIMENSIONS
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


_ROOT = Path(__file__).parent.parent.parent
_FAMILIES = _ROOT / "plugins"


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


#: What one of each unit is in SI; a name may be of several dimensions.
_SIZES = {(unit, size) for dimension in DIMENSIONS.values() for unit, size in dimension.units.items() if unit}
#: Of dimensions that no spec states, and turns per second in the unit that engines are known by.
_SIZES |= {("mm⁴", 1e-12), ("kJ/kg", 1e3), ("rev/min", 1 / 60)}
_UNITS = {unit for unit, _ in _SIZES} | {"°C"}
#: In a temperature of °C there are so many kelvins less.
_CELSIUS = 273.15
_WORD = re.compile(r"[^\s(),;:]+")


def _scales(tree: ast.AST) -> Iterator[tuple[str, str, float, str]]:
    """Of each figure in a message that is scaled: its text, the operator, by what, and the unit that comes next."""
    for text in (node for node in ast.walk(tree) if isinstance(node, ast.JoinedStr)):
        for place, shown in enumerate(text.values):
            scaled = shown.value if isinstance(shown, ast.FormattedValue) else None
            if isinstance(scaled, ast.BinOp) and isinstance(by := scaled.right, ast.Constant):
                assert isinstance(by.value, int | float)
                after = (str(one.value) for one in text.values[place + 1 :] if isinstance(one, ast.Constant))
                words = (word for part in after for word in _WORD.findall(part))
                unit = next((word for word in words if word in _UNITS), "")
                yield ast.unparse(scaled), type(scaled.op).__name__, by.value, unit


def _is_right(operator: str, scale: float, unit: str) -> bool:
    if operator in ("Add", "Sub"):  # a whole number counts on or back
        return (isinstance(scale, int) and unit != "°C") or (operator, scale, unit) == ("Sub", _CELSIUS, "°C")
    size = scale if operator == "Div" else 1 / scale
    return any(unit == one and math.isclose(size, in_si) for one, in_si in _SIZES)


def _modules_of_formulae() -> list[Path]:
    places = ("speclint/facts", "speclint/handbook", *(f"plugins/{one.name}" for one in _FAMILIES.iterdir()))
    return [
        file
        for place in places
        for file in sorted((_ROOT / place).rglob("*.py"))
        if "figures" not in file.parts
    ]


@each(_modules_of_formulae(), lambda file: file.relative_to(_ROOT).as_posix())
def test_a_figure_in_a_message_is_scaled_to_its_unit(file: Path) -> None:
    found = _scales(ast.parse(file.read_text(encoding="utf-8")))
    assert not [one for one in found if not _is_right(*one[1:])]


@pytest.mark.parametrize(
    ("message", "right"),
    [
        ("{d * 1e3:.4g} mm", True),
        ("{d * 1e6:.4g} mm", False),
        ("{d / 1e3:.4g} mm", False),
        ("{A * 1e6:.4g} mm²", True),
        ("{A * 1e3:.4g} mm²", False),
        ("{d * 1e3:.4g} to {D * 1e3:.4g} mm", True),
        ("{d * 1e3:.4g} to {D * 1e6:.4g} mm²", False),
        ("{p / 1e6:.4g} MPa", True),
        ("{p / 1e5:.4g} MPa", False),
        ("{p / 1e5:.4g} bar", True),
        ("{p / 1e5:.4g}", False),
        ("{T - 273.15:.4g} °C", True),
        ("{T - 273:.4g} °C", False),
        ("{T - 273.15:.4g} K", False),
        ("{number + 1}", True),
    ],
)
def test_a_wrong_scale_in_a_message_is_found(message: str, right: bool) -> None:
    found = list(_scales(ast.parse(f'require(x, f"{message}")')))
    assert found
    assert all(_is_right(*one[1:]) for one in found) is right


@each(FORMULAE, name_of)
def test_what_a_formula_refuses_is_shown_in_the_units_of_the_trade(formula: Callable[..., Any]) -> None:
    assert not list(_bare_figures(inspect.getsource(formula)))


def test_a_bare_figure_is_found() -> None:
    refused = 'def f(d: Metres, R: Metres) -> Metres:\n    require(d < R, f"{d:.4g} of {R * 1e3:.4g} mm")\n'
    assert list(_bare_figures(refused)) == ["d"]
    assert not list(_bare_figures(refused.replace("{d:.4g}", "{d:.4g} m ")))
