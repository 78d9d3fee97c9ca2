"""The proof that a printed equation is the code: what it reads, each by hand, and every way in which it must fail."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

import pytest

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    Newtons,
    Pascals,
    Ratio,
    SquareMetres,
    described,
    formula,
    require,
)
from speclint.handbook.cylinders import thick
from speclint.testing import expect_equation, formulae_in
from speclint.testing.equation_grammar import parse, parse_value
from speclint.testing.equation_tokens import Unreadable
from speclint.testing.equation_values import Floats, unit_table
from speclint.testing.sampling import draws

CITES = [FIRST_PRINCIPLES]


def to_the_digit(value: float, unit: str) -> str:
    """As a sheet never writes it: so that what is read back is what was drawn."""
    return f"({value!r} {unit})"


def worth(line: str, **values: float) -> float:
    """The value of a right-hand side, with a called function f(x, y) = 10 x + y."""
    tree = parse_value(line, values, unit_table())

    def call(name: str, arguments: tuple[float, ...]) -> float:
        assert name == "f"
        return 10 * arguments[0] + arguments[1]

    return float(tree.parts[0].of(Floats(tree, values, call)))


@pytest.mark.parametrize(
    ("line", "by_hand"),
    [
        ("2 a b", 12),
        ("a b/2 c", 15),  # (2 · 3/2) · 5
        ("a/(b c)", 2 / 15),
        ("2a + b", 7),
        ("−a²", -4),
        ("(−a)²", 4),
        ("a − b − c", -6),
        ("a³ c²", 200),
        ("c^−2", 0.04),
        ("c^(1/2)", math.sqrt(5)),
        ("(−8)^(1/3)", -2),
        ("½ √(a + 2)", 1),
        ("¼ a + ¾ b", 2.75),
        ("-a + b", 1),
        ("a - b", -1),
        ("c^-2", 0.04),
        ("+a b", 6),
        ("min²(a, c)", 4),
        ("sin² (x) + cos²(x)", 1),
        ("a |b| c", 30),
        ("|a (−b)| c", 30),
        ("f(|a − c|, b) |b|", 99),
        ("|f(a, −b)|", 17),
        ("|a − f(|b − c|, 1)|", 19),
        ("√a c", math.sqrt(2) * 5),
        ("√a²", 2),
        ("|a − c| |b|", 9),
        ("||a − c| − c|", 2),
        ("⌊7/a⌋", 3),
        ("min(a, b, c) max(a, b)", 6),
        ("sin² x + cos² x", 1),
        ("tan x/tan(x)", 1),
        ("2 sin 0.5 a", 4 * math.sin(0.5)),  # a function takes one factor
        ("ln c/lg 100", math.log(5) / 2),
        ("arcsin(sin x) + arctan(tan x)", 1.0),
        ("exp(a) tanh(0)", 0),
        ("1.5e-3 a", 0.003),
        ("a^b", 8),
        ("b^a c", 45),
        ("2·a × b", 12),
        ("[a (b + c)]/a", 8),
        ("f(a, b) + 1", 24),
        ("a if b < c, else 7", 2),
        ("a if b > c, b if b ≥ c, else c", 5),
        ("y + z, y = a z, z = b + 1", 12),
        ("a if 1 < a ≤ 2, else 0", 2),
        ("a if 1 < a < 2, else 7", 7),
        ("c if 1 < c ≤ 2, else 7", 7),
        (
            "2 m, m = a",
            4,
        ),  # a symbol that the line defines is no unit: no amount of metres, which 6 is divided by
        ("6/2 m, m = a", 6),
        ("6/2 m", 3),
        ("2 a m", 4),
        ("28.5 mm √(d/mm)", 0.0285 * math.sqrt(20)),
        ("10 N/2 mm²", 5e6),  # a number and its unit are one amount
        ("6 N/(3 N/mm)", 0.002),
        ("(1 + 2) min", 180),
        ("3 ft/min", 3 * 0.3048 / 60),
        ("min(20 min, 1 h)", 1200),
        ("30 °C − 20 °C", 10),
        ("(10 + 10) °C", 293.15),
        ("50 °F − 32 °F", 10),
        ("20 °C", 293.15),
        ("68 °F", 293.15),
        ("20 °C difference", 20),
        ("18 °F difference", 10),
        ("1 Btu/(h·ft·°F)", 1055.05585262 / 3600 / 0.3048 * 1.8),
        ("60 rev/min", 2 * math.pi),
        ("50 %", 0.5),
        ("1000 mPa", 1),
        ("5 K", 5),
        ("0.5 rev", math.pi),
        ("sin 30 °", 0.5),
    ],
)
def test_a_line_is_worth_what_an_engineer_reads(line: str, by_hand: float) -> None:
    assert worth(line, a=2.0, b=3.0, c=5.0, d=0.020, x=0.5) == pytest.approx(by_hand, rel=1e-12)


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("A", "= or from"),
        ("1/A = b", "symbol of the result alone"),
        ("A = b where b > 0", "'>' is not expected"),
        ("A = (b", r"'\)' is missing"),
        ("A = b)", r"'\)' is not expected"),
        ("A = 2 3", "two numbers side by side"),
        ("A = b if b", "a condition needs one of"),
        ("A = b if b > 1", "',' is missing"),
        ("A = b, 2 c", "after a comma stands a symbol"),
        ("A = x, x = 1, x = 2", "x is defined twice"),
        ("A = x, x = y, y = x", "defined by itself"),
        ("A = b^/2", "an exponent is"),
        ("A = ± b", "'±' is not expected"),
        ("A = else", "'else' is not expected"),
        ("A = b c from", "'from' is not expected"),
        ("A = b c else 2", "'else' is not expected"),
        ("A = b if b < 1, 2 if b", "a condition needs one of"),
        ("A = b, 2 = 3", "after a comma stands a symbol"),
        ("A = b, x ≈ 3", "after a comma stands a symbol"),
        ("A = b +", "'the end' is not expected"),
        ("A = sin(b", r"'\)' is missing"),
        ("A = |b", r"'\|' is missing"),
        ("A = b^", "an exponent is"),
        ("A = b = c ≈ 1", "'≈' is not expected"),
        ("A from b", "after from stands an equation"),
        ("A = g(b)", r"g\(…\) of 1 means one formula in sight"),
        ("b = b", "both the result and an argument"),
        ("A = x", "nothing says what x is"),
    ],
)
def test_what_cannot_be_read_is_said(line: str, why: str) -> None:
    @formula(line, cites=CITES)
    def one(b: Ratio) -> Ratio:
        return b

    with pytest.raises(AssertionError, match=why):
        expect_equation(one)


def test_what_is_wrong_is_said_behind_the_equation_in_its_own_words() -> None:
    """With the sort of the fault only where it is none of this proof's own."""

    @formula("A = (b", cites=CITES)
    def unread(b: Ratio) -> Ratio:
        return b

    with pytest.raises(AssertionError) as refused:
        expect_equation(unread)
    assert str(refused.value).endswith(
        "unread prints A = (b; 'A = (b': ')' is missing before 'the end' (sign 5)"
    )
    with pytest.raises(
        AssertionError, match=r"prints σ = 4 F/\(π d³\); it is .*, but .* is returned; at F = .* in SI$"
    ):
        expect_equation(stress("σ = 4 F/(π d³)"))
    with pytest.raises(AssertionError, match=r"prints σ = F \+ 4 F/\(π d²\) − F; DimensionalityError: "):
        expect_equation(stress("σ = F + 4 F/(π d²) − F"))


def test_a_way_that_is_seldom_gone_is_waited_for() -> None:
    """Of pure numbers a tenth are drawn from 50 to 1e10, evenly by decades: one of some 280 is beyond 5e9."""

    @formula("y = x if x ≤ 5e9, else 2 x", cites=CITES)
    def seldom(x: Ratio) -> Ratio:
        return x if x <= 5e9 else 2 * x

    expect_equation(seldom)


def test_when_enough_was_seen_no_more_is_drawn() -> None:
    """Of 6000 draws sixty suffice where every one is in range, with some more runs to compare each."""
    runs = []

    @formula("y = 2 x", cites=CITES)
    def doubled(x: Ratio) -> Ratio:
        runs.append(x)
        return 2 * x

    expect_equation(doubled)
    assert 60 <= len(runs) < 1000


def test_cases_are_written_as_they_are_read() -> None:
    line = "a if b < c, b if b ≥ c, else c"
    assert str(parse_value(line, {"a": 1.0, "b": 2.0, "c": 3.0}, unit_table()).parts[0]) == line


def test_a_refusal_says_where() -> None:
    with pytest.raises(Unreadable, match=r"'A = \(b': '\)' is missing before 'the end' \(sign 5\)"):
        parse("A = (b")


def stress(equation: str) -> Callable[..., float]:
    @formula(equation, cites=CITES)
    def mean_stress(F: Newtons, d: Metres) -> Pascals:
        require(d > 0, "the diameter must be above 0")
        return 4 * F / (math.pi * d**2)

    return mean_stress


@pytest.mark.parametrize(
    "equation",
    [
        "σ = 4 F/(π d²)",
        "σ ≈ 4 F/(π d²)",
        "σ = F/A, A = π d²/4",
        "σ = 4 F/(π d²) = F/(π (d/2)²)",
        "σ from σ π d² = 4 F",
    ],
)
def test_a_true_equation_stands(equation: str) -> None:
    expect_equation(stress(equation))


@pytest.mark.parametrize(
    ("equation", "why"),
    [
        ("σ = 4 F/(π d³)", "is returned"),
        ("σ = 4.01 F/(π d²)", "is returned"),
        ("σ = 4 F/π d²", "is returned"),
        ("σ = 4 F/(π d²) = 4 F/(3 d²)", "is returned"),
        ("σ = |4 F/(π d²)|", "is returned"),  # differs in the sign of F alone
        ("σ = max(4 F/(π d²), 0)", "is returned"),
        ("σ from σ π d² = 5 F", "one side is"),
        ("σ = 4 F/(π D²)", "nothing says what D is"),
        ("σ = σ", "nothing says what σ is"),
        ("σ = 4 F/(π d²) = σ", "nothing says what σ is"),
        ("σ = 4 F/(π d²) (1 m)²", "a quantity of"),  # right in SI floats alone
        ("σ = min(4 F/(π d²), 1e40 N/m²)", "no value tried goes way 2"),
    ],
)
def test_an_untrue_equation_is_found(equation: str, why: str) -> None:
    with pytest.raises(AssertionError, match=f"mean_stress prints σ .*{why}"):
        expect_equation(stress(equation))


def test_a_hidden_unit_is_found() -> None:
    """s = 28.5 √d in millimetres: by hand 0.9012 of SI at d = 1 m, where the line says 28.5."""

    def pitch(equation: str) -> Callable[..., float]:
        @formula(equation, cites=CITES, empirical="millimetres")
        def greatest_pitch(d: Metres) -> Metres:
            require(d > 0, "the diameter must be above 0")
            return float(28.5e-3 * (d * 1e3) ** 0.5)

        return greatest_pitch

    expect_equation(pitch("s = 28.5 mm √(d/mm)"))
    with pytest.raises(AssertionError, match="is returned"):
        expect_equation(pitch("s = 28.5 √d"))
    with pytest.raises(AssertionError, match="a quantity of"):
        expect_equation(pitch("s = 0.0285 √(1000 d)"))


def test_a_limit_that_differs_a_little_is_found() -> None:
    def cut_off(equation: str) -> Callable[..., float]:
        @formula(equation, cites=CITES)
        def factor(t: Metres) -> Ratio:
            return 1.0 if t <= 0.025 else 0.9

        return factor

    expect_equation(cut_off("f = 1 if t ≤ 25 mm, else 0.9"))
    with pytest.raises(AssertionError, match="is returned"):
        expect_equation(cut_off("f = 1 if t ≤ 25.1 mm, else 0.9"))


def test_a_greek_letter_spelt_out_is_no_symbol() -> None:
    """A sheet puts no number in its place, so the proof must not either."""

    def doubled(equation: str) -> Callable[..., float]:
        @formula(equation, cites=CITES)
        def twice(sigma: Pascals) -> Pascals:
            return 2 * sigma

        return twice

    expect_equation(doubled("S = 2 σ"))
    with pytest.raises(AssertionError, match="nothing says what sigma is"):
        expect_equation(doubled("S = 2 sigma"))


def test_a_line_with_numbers_that_reads_otherwise_is_found() -> None:
    """Amounts of two terms, as 5 ft + 3 in, fall apart in a product unless they stand in brackets."""

    @formula("σ = F/A", cites=CITES)
    def pressure(F: Newtons, A: SquareMetres) -> Pascals:
        return F / A

    expect_equation(pressure)
    expect_equation(pressure, write=lambda value, unit: f"{value:.4g} {unit}")
    with pytest.raises(AssertionError, match="the sheet prints"):
        expect_equation(pressure, write=lambda value, unit: f"{value:.4g} {unit} + 1 {unit}")


@formula("k = x + 1", cites=CITES)
def one_more(x: Ratio) -> Ratio:
    return x + 1


@formula("j = k(2 x)", cites=CITES)
def by_the_other(x: Ratio) -> Ratio:
    return 2 * x + 1


def test_a_formula_in_sight_may_be_named_by_its_symbol() -> None:
    expect_equation(by_the_other)


def table(x: Ratio) -> Metres:
    return 3 * x


def test_a_table_is_handed_over_and_words_too() -> None:
    @formula("L = k_table(x)", cites=CITES)
    def length(x: Ratio, ends: str) -> Metres:
        assert ends == "ground"
        return 3 * x

    expect_equation(length, also={"k_table": table}, others={"ends": "ground"})
    with pytest.raises(AssertionError, match=r"k_table\(…\) of 1 means one formula in sight"):
        expect_equation(length, others={"ends": "ground"})
    with pytest.raises(AssertionError, match="0 of 6000 draws are in range"):
        expect_equation(length, also={"k_table": table})


def test_a_narrow_range_is_asked_for() -> None:
    @formula("y = x²", cites=CITES)
    def squared(x: Ratio) -> Ratio:
        require(7 <= x <= 7.0001, "x must be about 7")
        return x**2

    with pytest.raises(AssertionError, match="narrow some in ranges"):
        expect_equation(squared)
    expect_equation(squared, ranges={"x": (7.0, 7.0001)})


@pytest.mark.parametrize(("in_range", "proves"), [(8, True), (7, False)])
def test_eight_points_prove_something_and_seven_nothing(in_range: int, proves: bool) -> None:
    seen: list[float] = []

    @formula("y = 2 x", cites=CITES)
    def seldom(x: Ratio) -> Ratio:
        if x not in seen:
            seen.append(x)
        require(seen.index(x) < in_range, "enough")
        return 2 * x

    if proves:
        expect_equation(seldom, write=to_the_digit)
    else:
        with pytest.raises(AssertionError, match=r"7 of 6000 draws are in range; narrow some in ranges"):
            expect_equation(seldom, write=to_the_digit)
    assert len(seen) == 6000  # which are all drawn where sixty are not in range


def test_sixty_points_are_enough() -> None:
    seen: set[float] = set()

    @formula("y = 2 x", cites=CITES)
    def doubled(x: Ratio) -> Ratio:
        seen.add(x)
        return 2 * x

    expect_equation(doubled, write=to_the_digit)
    assert len(seen) == 60


@pytest.mark.parametrize(("off", "stands"), [(0.99e-7, True), (1.01e-7, False)])
def test_two_numbers_are_the_same_to_one_part_in_ten_millions(off: float, stands: bool) -> None:
    @formula("y = 3 x", cites=CITES)
    def trebled(x: Ratio) -> Ratio:
        return 3 * x * (1 + off)

    if stands:
        expect_equation(trebled)
    else:
        with pytest.raises(AssertionError, match="is returned"):
            expect_equation(trebled)


def test_a_small_difference_of_large_numbers_may_be_worked_otherwise() -> None:
    """1 + 1e-10 less 1: its last digits are those that rounding leaves of 1, one part in a million of it."""

    @formula("y = x − 1", cites=CITES)
    def above_one(x: Ratio) -> Ratio:
        return (x * x - 1) / (x + 1)

    @formula("y = a − b", cites=CITES)
    def between(a: Ratio, b: Ratio) -> Ratio:
        return (a * a - b * b) / (a + b)

    near = (1 + 1e-11, 1 + 1e-10)
    expect_equation(above_one, ranges={"x": near}, write=to_the_digit)
    expect_equation(between, ranges={"a": near, "b": near}, write=to_the_digit)


def beyond(equation: str, *, with_sign: bool = False) -> Callable[..., float]:
    """A formula with a way that one draw in some 550 goes: of lengths up to 2 m those beyond 1.97 m."""

    @formula(equation, cites=CITES)
    def grown(d: Metres) -> Metres:
        more = d if d > 1.97 else 0.0
        return (abs(d) if with_sign else d) + more

    return grown


def test_that_way_is_gone_long_after_the_first_points() -> None:
    """Or it would be compared in every form because of these."""
    seldom = described(beyond("y = d if d ≤ 1.97 m, else 2 d"))
    assert not any(one["d"] > 1.97 for one in draws(seldom, 100, {}))


def test_a_dimension_that_is_wrong_in_a_way_that_is_seldom_gone_is_found() -> None:
    expect_equation(beyond("y = d if d ≤ 1.97 m, else 2 d"))
    with pytest.raises(AssertionError, match=r"a quantity of \[length\] \*\* 2, not \[length\]"):
        expect_equation(beyond("y = d if d ≤ 1.97 m, else 2 d (1 m)"))


def test_it_is_found_too_where_another_way_was_gone_before() -> None:
    expect_equation(beyond("y = |d| + x, x = 0 m if d ≤ 1.97 m, else d", with_sign=True))
    with pytest.raises(AssertionError, match="DimensionalityError"):
        expect_equation(beyond("y = |d| + x, x = 0 m if d ≤ 1.97 m, else d (1 m)", with_sign=True))


def test_nothing_has_no_dimension() -> None:
    """A zero may be written without its unit, and nothing else."""

    def of_large(equation: str) -> Callable[..., float]:
        @formula(equation, cites=CITES)
        def large(d: Metres) -> Metres:
            return d if d > 0.01 else 0.0

        return large

    expect_equation(of_large("y = d if d > 10 mm, else 0"))

    @formula("y = 1", cites=CITES)
    def unit_length(d: Metres) -> Metres:
        return 1.0 + 0 * d

    with pytest.raises(AssertionError, match=r"it is a quantity of dimensionless, not \[length\]"):
        expect_equation(unit_length)


def test_of_what_is_solved_for_the_sides_are_told_in_their_order() -> None:
    """5 F on the right of σ π d² = 4 F: by hand the right is five quarters of the left."""
    with pytest.raises(AssertionError) as refused:
        expect_equation(stress("σ from σ π d² = 5 F"))
    right, left = re.findall(r"one side is ([-\d.e+]+), the other ([-\d.e+]+);", str(refused.value))[0]
    assert float(right) / float(left) == pytest.approx(1.25)
    with pytest.raises(AssertionError) as refused:
        expect_equation(stress("σ from σ π d² = 4 F (1 m)"))
    found, wanted = re.findall(r"it is a quantity of (.+), not (.+); at ", str(refused.value))[0]
    assert "[length] ** 2" in found  # a force times a length: kg m²/s²
    assert "[length] ** 2" not in wanted
    assert "[mass]" in wanted


@formula("n = a + 1", cites=CITES)
def of_one(a: Ratio) -> Ratio:
    return a + 1


@formula("n = a + b", cites=CITES)
def of_two(a: Ratio, b: Ratio) -> Ratio:
    return a + b


def test_of_two_formulae_of_one_symbol_that_of_as_many_arguments_is_meant() -> None:
    @formula("w = n(x) + n(x, 2)", cites=CITES)
    def both(x: Ratio) -> Ratio:
        return (x + 1) + (x + 2)

    expect_equation(both)


@formula("g_0 = g_0(x) + 1", cites=CITES)
def of_itself(x: Ratio) -> Ratio:
    return x + 1


def test_no_formula_is_named_by_itself() -> None:
    with pytest.raises(AssertionError, match=r"g_0\(…\) of 1 means one formula in sight .* which has none"):
        expect_equation(of_itself)


def test_a_formula_of_a_module_in_sight_may_be_named() -> None:
    """Of a whole module of speclint that is named here, such as that of thick cylinders: D = d + 2 t."""

    @formula("A = D(d, t)² − d²", cites=CITES)
    def ring(d: Metres, t: Metres) -> SquareMetres:
        return thick.outside_of_wall(d, t) ** 2 - d**2

    expect_equation(ring, ranges={"d": (0.1, 1.0), "t": (0.01, 0.1)})


def test_formulae_in_a_package_are_found_once() -> None:
    names = [one.__name__ for one in formulae_in("speclint.handbook.cylinders")]
    assert "bore_hoop_stress" in names
    assert len(names) == len(set(names))
    assert formulae_in("speclint.handbook.cylinders.thick")
    assert formulae_in("speclint.errors") == []
