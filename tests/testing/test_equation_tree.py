"""What a printed equation says, node by node: how it is read, which way it goes, and what it is in quantities."""

from __future__ import annotations

import math
from typing import Any

import pytest

from speclint.testing.equation_grammar import parse, parse_value
from speclint.testing.equation_tokens import Cursor, Unreadable, tokens
from speclint.testing.equation_tree import Call, Cases, Number, Symbol, everything_in, plain, plain_sign
from speclint.testing.equation_values import Floats, Quantities, quantity, registry, unit_table


def refuse(name: str, _: tuple[Any, ...]) -> Any:
    raise Unreadable(name)


def read(line: str, **values: Any) -> tuple[Any, Floats]:
    """The tree of a right-hand side, and where its symbols have their values."""
    equation = parse_value(line, values, unit_table())
    return equation.parts[0], Floats(equation, values, refuse)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("a + b − c", "((a + b) − c)"),
        ("−a b", "(0 − (a · b))"),
        ("+a", "a"),
        ("a b/2 c", "(((a · b) / 2) · c)"),
        ("a × b · c", "((a · b) · c)"),
        ("a²b^c", "((a ^ 2) · (b ^ c))"),
        ("a^(b + 1)", "(a ^ (b + 1))"),
        ("a^−2", "(a ^ (0 − 2))"),
        ("√a b", "(√(a) · b)"),
        ("|a| ⌊b⌋", "(|(a) · ⌊(b))"),
        ("sin² a b", "((sin(a) ^ 2) · b)"),
        ("sin(a, b)", "sin(a, b)"),
        ("min(a, b)", "min(a, b)"),
        ("f(a)²", "(f(a) ^ 2)"),
        ("f (a)", "(f · a)"),  # a space before the bracket: a product
        ("[a + b] c", "((a + b) · c)"),
        ("½ a", "(0.5 · a)"),
        ("2 m a", "((2 · m) · a)"),
        ("20 °C", "(20 °C)"),
        ("a °F", "(a °F)"),
        ("20 °C difference", "(20 · °C)"),
        ("1.5e3 a", "(1500 · a)"),
        ("1e−3", "0.001"),
        ("a if 1 < b ≤ 2, else c", "a if 1 < b ≤ 2, else c"),
        ("a if b < 1, b if b < 2, else c", "a if b < 1, b if b < 2, else c"),
    ],
)
def test_how_a_line_is_read(line: str, said: str) -> None:
    assert str(parse_value(line, {"a", "b", "c", "f"}, unit_table()).parts[0]) == said


@pytest.mark.parametrize(
    ("line", "ways"),
    [
        ("a + b", []),
        ("min(a, b, c)", [3]),
        ("max(a, b)", [2]),
        ("|a|", [2]),
        ("√a", []),
        ("a if a < 1, b if a < 2, else c", [3]),
        ("min(|a|, b) + c", [2, 2]),
        ("a if |b| < 1, else c", [2, 2]),
    ],
)
def test_in_how_many_ways_a_line_can_go(line: str, ways: list[int]) -> None:
    tree, _ = read(line, a=1.0, b=1.0, c=1.0)
    assert [node.ways() for node in everything_in(tree) if node.ways() > 1] == ways


@pytest.mark.parametrize(
    ("line", "a", "choice", "value"),
    [
        ("min(a, 2)", 1.0, 0, 1.0),
        ("min(a, 2)", 2.0, 0, 2.0),  # of two alike the first
        ("min(a, 2)", 3.0, 1, 2.0),
        ("max(a, 2)", 1.0, 1, 2.0),
        ("max(a, 2)", 2.0, 0, 2.0),
        ("max(a, 2)", 3.0, 0, 3.0),
        ("|a|", 0.0, 0, 0.0),
        ("|a|", 2.0, 0, 2.0),
        ("|a|", -2.0, 1, 2.0),
        ("1 if a < 2, 5 if a ≤ 3, else 7", 1.9, 0, 1.0),
        ("1 if a < 2, 5 if a ≤ 3, else 7", 2.0, 1, 5.0),
        ("1 if a < 2, 5 if a ≤ 3, else 7", 3.0, 1, 5.0),
        ("1 if a < 2, 5 if a ≤ 3, else 7", 3.1, 2, 7.0),
        ("1 if a > 2, 5 if a ≥ 1, else 7", 2.0, 1, 5.0),
        ("1 if a > 2, 5 if a ≥ 1, else 7", 1.0, 1, 5.0),
    ],
)
def test_which_way_it_goes_is_noted(line: str, a: float, choice: int, value: float) -> None:
    tree, names = read(line, a=a)
    assert tree.of(names) == value
    assert {number for _, number in names.taken} == {choice}


@pytest.mark.parametrize(
    ("line", "a", "value"),
    [
        ("a^(1/3)", -8.0, -2.0),
        ("a^(1/5)", -32.0, -2.0),
        ("a^3", -2.0, -8.0),
        ("a^(2/3)", 8.0, 4.0),
        ("sinh a", 0.0, 0.0),
        ("cosh a", 0.0, 1.0),
        ("arccos a", 1.0, 0.0),
        ("arcsin a", 1.0, math.pi / 2),
        ("lg a", 100.0, 2.0),
        ("⌊a⌋", -0.5, -1.0),
        ("−a", 2.0, -2.0),
        ("0 − a", 2.0, -2.0),
        ("π a", 2.0, 2 * math.pi),
    ],
)
def test_functions_and_roots(line: str, a: float, value: float) -> None:
    tree, names = read(line, a=a)
    assert tree.of(names) == pytest.approx(value)


@pytest.mark.parametrize("line", ["a^0.5", "a^(1/2)", "a^(1/4)", "a^0.3"])
def test_an_even_root_of_a_negative_number_is_none(line: str) -> None:
    tree, names = read(line, a=-4.0)
    with pytest.raises(ValueError, match="of the negative number"):
        tree.of(names)


def test_a_case_without_a_last_one_is_a_fault() -> None:
    _, names = read("a", a=1.0)
    with pytest.raises(AssertionError, match="the last case holds"):
        Cases(()).of(names)


def test_symbols_that_the_line_defines_are_worked_once_and_not_by_themselves() -> None:
    equation = parse("y = z + z, z = 2 a", {"a"}, unit_table())
    assert (equation.result, list(equation.definitions)) == ("y", ["z"])
    names = Floats(equation, {"a": 3.0}, refuse)
    assert equation.parts[0].of(names) == 12.0
    looped = parse("y = z, z = x, x = z", (), unit_table())
    with pytest.raises(Unreadable, match="is defined by itself"):
        looped.parts[0].of(Floats(looped, {}, refuse))
    with pytest.raises(Unreadable, match="nothing says what q is"):
        Floats(equation, {}, refuse).value("q")


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("N = 6/2 m", "(6 / (2 · m))"),  # an amount of metres
        ("N ≈ 6/2 N", "((6 / 2) · N)"),  # the result itself, and no newtons
        ("N from 6/2 N = a", "((6 / 2) · N)"),
        ("y = 6/2 m, m = a", "((6 / 2) · m)"),
        ("y = 6/2 m(a)", "((6 / 2) · m(a))"),  # a function
        ("y = 6/2 min", "(6 / (2 · min))"),  # minutes
        ("y = 6/2 min(a, a)", "((6 / 2) · min(a, a))"),
        ("y = 6/2 °C difference a", "((6 / (2 · °C)) · a)"),
        ("y = 6/20 °C", "(6 / (20 °C))"),
        ("y = a |a| a", "((a · |(a)) · a)"),
        ("y = |a (a + 1)| a", "(|((a · (a + 1))) · a)"),
        ("y = ⌊a⌋ + [a]", "(⌊(a) + a)"),
    ],
)
def test_a_symbol_that_the_line_names_is_no_unit(line: str, said: str) -> None:
    assert str(parse(line, {"a"}, unit_table()).parts[0]) == said


def test_what_is_solved_for() -> None:
    equation = parse("f from 1/√f = a", {"a"}, unit_table())
    assert (equation.result, equation.solved, len(equation.parts)) == ("f", True, 2)
    chained = parse("y = a = 2 b", {"a", "b"}, unit_table())
    assert (chained.result, chained.solved, len(chained.parts)) == ("y", False, 2)


def test_quantities_have_dimensions() -> None:
    equation = parse_value("2 m + a", {"a"}, unit_table())
    length = quantity(3.0, "m")
    found = equation.parts[0].of(Quantities(equation, {"a": length}, refuse))
    assert found.m_as("m") == 5.0
    tree = parse_value("min(a, 2 m) + max(a, 2 m) + |a|", {"a"}, unit_table())
    assert tree.parts[0].of(Quantities(tree, {"a": length}, refuse)).m_as("m") == 8.0
    warm = parse_value("20 °C", (), unit_table())
    kelvins = warm.parts[0].of(Quantities(warm, {}, refuse))
    assert kelvins.m_as("kelvin") == pytest.approx(293.15)
    angle = parse_value("30 °", (), unit_table())
    assert angle.parts[0].of(Quantities(angle, {}, refuse)) == pytest.approx(math.pi / 6)
    assert quantity(2.0, "") == quantity(2.0, "rad") == quantity(2.0, "HB") == 2.0
    assert [type(quantity(2.0, unit)) for unit in ("", "rad", "HB")] == [float, float, float]
    assert quantity(2.0, "W/(m·K)").dimensionality == registry()("W/(m*K)").dimensionality
    assert quantity(1.0, "m²").m_as("m^2") == 1.0


def test_a_quantity_without_dimension_is_a_number() -> None:
    assert plain(2.5) == 2.5
    assert plain(registry().Quantity(2.0, "mm/m")) == pytest.approx(0.002)
    assert plain_sign(registry().Quantity(-2.0, "m")) == -2.0
    assert plain_sign(-3.0) == -3.0
    with pytest.raises(Exception, match="Cannot convert"):
        plain(registry().Quantity(2.0, "m"))


def test_the_signs_of_a_line() -> None:
    found = tokens("sin² x_1 ≤ 3/4 m′ ⁻¹ °C")
    assert [(one.kind, one.text, one.spaced) for one in found] == [
        ("symbol", "sin", False),
        ("power", "²", False),
        ("symbol", "x_1", True),
        ("mark", "≤", True),
        ("number", "3", True),
        ("mark", "/", False),
        ("number", "4", False),
        ("symbol", "m′", True),
        ("power", "⁻¹", True),
        ("symbol", "°C", True),
        ("end", "", False),
    ]
    assert [one.text for one in tokens("1.5 2e−3 ½ %")] == ["1.5", "2e−3", "½", "%", ""]


def test_a_place_in_a_line_never_leaves_it() -> None:
    cursor = Cursor("a b")
    assert (cursor.now.text, cursor.following.text) == ("a", "b")
    assert [cursor.take().text for _ in range(4)] == ["a", "b", "", ""]
    assert (cursor.now.kind, cursor.following.kind) == ("end", "end")
    cursor = Cursor("a b")
    cursor.expect("a")
    with pytest.raises(Unreadable, match=r"^'a b': 'x' is missing before 'b' \(sign 2\)$"):
        cursor.expect("x")
    assert str(cursor.refusal("why", back=1)) == "'a b': why (sign 1)"


def test_nodes_as_they_stand() -> None:
    call = Call("f", (Number(1.5), Symbol("a")))
    assert (str(call), call.ways()) == ("f(1.5, a)", 1)
    assert [str(one) for one in everything_in(call)] == ["f(1.5, a)", "1.5", "a"]
