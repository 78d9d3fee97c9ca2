"""Equations as LaTeX and MathML: each set by hand as a textbook would set it, and every formula of the project."""

from __future__ import annotations

import inspect
import pkgutil
from collections.abc import Iterator
from importlib import import_module
from xml.etree import ElementTree

import pytest

import speclint.handbook
from speclint.equations import Described
from speclint.reports.pack import mathematics
from speclint.reports.pack.mathematics import equation, filled, symbol, wide_equation
from speclint.reports.pack.notation import latex
from speclint.rules import Step
from speclint.testing import installed_families
from tests.reports.hostile import TEXTS


@pytest.mark.parametrize(
    ("line", "set_as"),
    [
        ("A = π d²/4", r"A = \frac{\pi \, d^{2}}{4}"),
        ("σ = p d/(D − d)", r"\sigma = \frac{p \, d}{D - d}"),
        ("t = d/2 (k − 1)", r"t = \frac{d}{2} \, \left( k - 1 \right)"),
        ("b = 0.5 √b_0", r"b = 0.5 \, \sqrt{b_{0}}"),
        ("a = √(x² + y²)/z", r"a = \frac{\sqrt{x^{2} + y^{2}}}{z}"),
        ("p = p_b (1 + x/c)^n", r"p = p_{b} \, \left( 1 + \frac{x}{c} \right)^{n}"),
        ("D = d^1.6", "D = d^{1.6}"),
        ("e = |D_c - D|", r"e = \left| D_{c} - D \right|"),
        ("q = sin⁴ θ", r"q = \sin^{4} \theta"),
        ("F = F_20 (1 − r)", r"F = F_{\mathrm{20}} \, \left( 1 - r \right)"),
        ("k = 1/Σ 1/k_i", r"k = \frac{1}{\sum \frac{1}{k_{i}}}"),
        ("m = max(a, 0)", r"m = \max \left( a ,\; 0 \right)"),
        ("F = nu R_p02 A_s", r"F = \nu \, R_{\mathrm{p02}} \, A_{s}"),
        ("ΔT = T_d − T", r"\Delta T = T_{d} - T"),
        ("a = 2 if x < 0.5, else −2", r"a = 2 \text{ if } x < 0.5 ,\; \text{ else } - 2"),
        ("s = 28.5 mm √(d/mm)", r"s = 28.5 \, \mathrm{mm} \, \sqrt{\frac{d}{\mathrm{mm}}}"),
        ("t = d p/(5000 lbf/in²)", r"t = \frac{d \, p}{\frac{5000 \, \mathrm{lbf}}{\mathrm{in}^{2}}}"),
        ("τ = (t/mm − 5) min", r"\tau = \left( \frac{t}{\mathrm{mm}} - 5 \right) \, \mathrm{min}"),
        ("φ = arcsin(r/l)", r"\varphi = \operatorname{arcsin} \left( \frac{r}{l} \right)"),
        ("σ = 5.67e-8 T⁴", r"\sigma = 5.67 \times 10^{-8} \, T^{4}"),
        ("F = N(θ, r)/z", r"F = \frac{N\left( \theta ,\; r \right)}{z}"),
        ("e = c where d ≤ 1.7", r"e = c \text{ where } d \le 1.7"),
        ("p_t of gland-left − p_1", r"p_{t} \text{ of gland-left } - p_{1}"),  # a hyphen is no minus
        ("v = h½", "v = h^{1/2}"),
        ("x = a⁻¹", "x = a^{-1}"),
        ("y = x^-2 + z^−3", "y = x^{-2} + z^{-3}"),
        ("y = x^(a + b)", "y = x^{a + b}"),
        ("F = a × b · c", r"F = a \times b \cdot c"),
        ("F = a·b×c", r"F = a \cdot b \times c"),
        ("F = a · b/c", r"F = \frac{a \cdot b}{c}"),
        ("F = a / b", r"F = \frac{a}{b}"),
        ("s = Σ x_i y + 1", r"s = \sum x_{i} \, y + 1"),
        ("s = ∑(x + y) z", r"s = \sum \left( x + y \right) \, z"),
        ("S = Σx", r"S = \Sigma x"),
        ("a = √ (x + y)", r"a = \sqrt{x + y}"),
        ("a = √(x)²", r"a = \sqrt{\left( x \right)^{2}}"),
        ("a = √2 b", r"a = \sqrt{2} \, b"),
        ("q = tan α + lg x + acos y", r"q = \tan \alpha + \operatorname{lg} x + \operatorname{acos} y"),
        ("n = 60/min", r"n = \frac{60}{\mathrm{min}}"),
        ("n = 3 min + 2", r"n = 3 \, \mathrm{min} + 2"),
        ("m = min(a, b)", r"m = \min \left( a ,\; b \right)"),
        ("k = [a + b]/c", r"k = \frac{\left[ a + b \right]}{c}"),
        ("k = (a + b)²/c", r"k = \frac{\left( a + b \right)^{2}}{c}"),
        ("k = (a) (b)/c", r"k = \frac{\left( a \right) \, \left( b \right)}{c}"),
        ("k = a/(b)²", r"k = \frac{a}{\left( b \right)^{2}}"),
        ("k = a/[b]", r"k = \frac{a}{\left[ b \right]}"),
        ("k = a/b/c", r"k = \frac{\frac{a}{b}}{c}"),
        ("k = {a + b}", r"k = \left\{ a + b \right\}"),
        ("n = ⌊x⌋ + 1", r"n = \left\lfloor x \right\rfloor + 1"),
        ("e = |a| b", r"e = \left| a \right| \, b"),
        ("x* = x′", "x^{*} = x'"),
        ("F = F_a_max", r"F = F_{a, \mathrm{max}}"),
        ("F = F_α + G_beta", r"F = F_{\alpha} + G_{\beta}"),
        ("ΔF_a = Δ", r"\Delta F_{a} = \Delta"),
        ("ΔΔT = AB", r"\Delta \Delta T = \mathrm{AB}"),
        ("x = alpha Cone", r"x = \alpha \, \mathrm{Cone}"),
        ("v = 3 ft/min", r"v = \frac{3 \, \mathrm{ft}}{\mathrm{min}}"),
        ("x = height of the cone", r"x = \text{ height of the cone }"),
        ("x = wheels/axle of a", r"x = \text{ wheels/axle of } a"),
        ("x = ab_c größe", r"x = \mathrm{ab}_{c} \, \mathrm{größe}"),
        ("x = 1.5e-3 + 2e−6", r"x = 1.5 \times 10^{-3} + 2 \times 10^{-6}"),
        ("x = 5 % of 10°", r"x = 5 \% \text{ of } 10 {}^{\circ}"),
        ("x = a, b; c: 1 … 5", r"x = a ,\; b ;\; c :\; 1 \dots 5"),
        ("a ≤ b ≥ c ≈ d ≠ e → f", r"a \le b \ge c \approx d \ne e \to f"),
        ("x = ±a # b", r"x = \pm a \, \# \, b"),
        ("x = a ~ b", r"x = a \, \, b"),
        ("y = f(x) (z)", r"y = f\left( x \right) \, \left( z \right)"),
        ("y = x²(z)", r"y = x^{2} \, \left( z \right)"),
        ("y = 2(x + 1)", r"y = 2 \, \left( x + 1 \right)"),
        ("  y = x  ", "y = x"),
    ],
)
def test_a_line_is_set_as_a_textbook_sets_it(line: str, set_as: str) -> None:
    assert " ".join(latex(line).split()) == set_as


@pytest.mark.parametrize(
    ("line", "set_as"),
    [
        ("A = d b", r"A = 2 \cdot b"),
        ("A = d² b", r"A = \left( 2 \right)^{2} \cdot b"),
        ("A = d · b", r"A = 2 \cdot b"),
        ("A = load d", r"A = 3 \cdot 2"),  # whatever has a value is no word
        ("A = d(b)", r"A = 2 \cdot \left( b \right)"),
    ],
)
def test_a_value_stands_in_place_of_its_symbol_with_points_between_factors(line: str, set_as: str) -> None:
    values = {"d": "2", "load": "3"}
    assert " ".join(latex(line, lambda symbol: values.get(symbol, "")).split()) == set_as


@pytest.mark.parametrize(
    "line", ["σ = p d/(D − d", "σ = p)", "a = √", "x = |a", "y = 3^", "x = a]", "x = a}", "x = a⌋", "x = (a]"]
)
def test_a_line_that_cannot_be_read_is_shown_as_it_stands(line: str) -> None:
    with pytest.raises(ValueError, match=r"bracket|ends too soon"):
        latex(line)
    assert equation(line) == f"<span class=plain>{line}</span>"


def test_numbers_stand_in_place_of_symbols_and_powers_bracket_them() -> None:
    page = filled("A = π d²/4 − x", {"d": "20 mm", "x": "−3 mm²"})
    math = ElementTree.fromstring(page)
    assert "".join(math.itertext()) == "=π·(20 mm)24−(−3 mm²)"
    assert [node.text for node in math.iter("mtext")] == ["20 mm", "(−3 mm²)"]


def test_an_argument_spelt_in_code_is_its_greek_letter() -> None:
    assert "11.7e-6/K" in filled("δ = α_b D", {"alpha_b": "11.7e-6/K", "D": "580 mm"})


@pytest.mark.parametrize("name", TEXTS)
def test_hostile_text_is_escaped(name: str) -> None:
    for page in (equation(TEXTS[name]), filled(f"x = d + {TEXTS[name]}", {"d": TEXTS[name]})):
        assert "<script" not in page
        assert "onmouseover=" not in page.replace("&quot;", '"') or "<b onmouseover" not in page


def all_formulae() -> Iterator[Described]:
    modules = [speclint.handbook.__name__, *(one.module for one in installed_families().families)]
    for name in modules:
        package = import_module(name)
        for found in pkgutil.walk_packages(package.__path__, f"{name}."):
            for _, function in inspect.getmembers(import_module(found.name), inspect.isfunction):
                about = getattr(function, "described", None)
                if isinstance(about, Described) and function.__module__ == found.name:
                    yield about


def test_every_formula_of_the_project_can_be_set() -> None:
    """None is left as a line of type, and each gives well-formed MathML with and without numbers."""
    found = list(all_formulae())
    assert len(found) > 300
    wide = [about.equation for about in found if not equation(about.equation).startswith("<math")]
    assert all(len(text) > 70 for text in wide), "only what a line does not hold is left as type"
    assert len(wide) < len(found) / 20
    for about in found:
        latex(about.equation)
        page = filled(about.equation, dict.fromkeys(about.units, "1 m"))
        assert not page or ElementTree.fromstring(page).tag == "math"


def test_what_a_line_does_not_hold_is_left_to_wrap() -> None:
    """MathML does not wrap: 12 factors of 10 letters do not fit a line of 80; five over five do."""
    values = {"a": "1234567 mm"}
    assert filled(f"x = {' '.join(['a'] * 12)}", values) == ""
    assert filled("x = a a a a a/(a a a a a)", values).startswith("<math")


def test_a_product_is_set_as_an_operator() -> None:
    """Older versions of the library that sets it took the point for a letter."""
    assert "<mo>·</mo>" in equation("F = m · a")


@pytest.mark.parametrize(("length", "wraps"), [(20, False), (30, True)])
def test_a_symbol_that_the_column_does_not_hold_is_left_to_wrap(length: int, wraps: bool) -> None:
    shown = symbol(f"y of {'b' * (length - 5)}")
    assert shown.startswith("<span" if wraps else "<math")
    assert symbol("F_n").startswith("<math")


# How wide an equation is


def drawn(inner: str) -> str:
    return f"<math>{inner}</math>"


@pytest.mark.parametrize(
    ("inner", "letters"),
    [
        ("<mi>ab</mi>", 2),
        ("<mn>12.5</mn><mtext>mm</mtext><mspace/>", 6),
        ("<mi>a</mi><mo>=</mo>", 1 + 1 + 1.2),
        ("<mfrac><mi>abc</mi><mi>d</mi></mfrac>", 3 + 1.2),
        ("<mfrac><mi>d</mi><mi>abc</mi></mfrac>", 3 + 1.2),
        ("<msqrt><mi>ab</mi></msqrt>", 2 + 1.2),
        ("<msub><mi>F</mi><mi>max</mi></msub>", 1 + 0.75 * 3),
        ("<msup><mi>Fx</mi><mn>2</mn></msup>", 2 + 0.75),
        ("<msubsup><mi>F</mi><mi>a</mi><mn>10</mn></msubsup>", 1 + 0.75 * 2),
        ("<mrow><mi>a</mi><mrow><mi>b</mi></mrow></mrow>", 2),
    ],
)
def test_the_width_of_an_equation_in_letters(inner: str, letters: float) -> None:
    """A sign takes 1.2 letters beside its own, as does the bar of a fraction or a root; an index three quarters."""
    page = drawn(inner)
    assert mathematics._letters(ElementTree.fromstring(page)) == pytest.approx(letters)
    assert mathematics._letters_at_most(page) >= letters - 1e-9
    assert mathematics._fits(page, letters)
    assert not mathematics._fits(page, letters - 0.01)


def test_the_quick_measure_counts_each_sign_bar_and_root() -> None:
    """Nothing above anything else: 2 + 1 letters, one of each sign."""
    page = drawn("<mfrac><mi>ab</mi><msqrt><mi>c</mi></msqrt></mfrac>")
    assert mathematics._letters_at_most(page) == pytest.approx(3 + 2 * 1.2)
    assert mathematics._letters_at_most(drawn("<mi>a</mi><mo>+</mo>")) == pytest.approx(2 + 1.2)
    assert mathematics._fits("<span>what is plain wraps</span>", 1.0)


def test_an_equation_has_no_more_marks_than_a_browser_needs() -> None:
    """No prefixes of a namespace, no rows of one, no marks that brackets have by themselves; a name is one word."""
    page = equation("x = (AB + d_i)²/(2 c)")
    assert "<mo>(</mo>" in page
    assert "<mi>AB</mi>" in page
    for needless in ("ns0", "xmlns:", 'display="inline"', " />", "<mrow><mi>AB</mi></mrow>", "mathvariant"):
        assert needless not in page, needless
    root = ElementTree.fromstring(page)
    assert all(len(row) != 1 for row in root.iter("mrow"))
    assert [child.tag for child in root] != ["mrow"]
    assert "<mrow><mn>2</mn>" in page, "what a fraction has below its bar stays together"


def test_what_sheets_will_need_is_told_once_and_set_alike(monkeypatch: pytest.MonkeyPatch) -> None:
    """A taken size needs its symbol; what is worked its equation, and its right-hand side for the numbers too."""
    monkeypatch.setattr(mathematics, "_known", {})
    taken = Step("taken", "d", "bore", 0.1, "m")
    worked = Step(
        "worked", "A", "area", 1.0, "m²", expression="A = π d²/4", filled=(("d", 0.1, "m"), ("n", 2.0, ""))
    )
    unnamed = Step("read", "", "ends", "open", expression="not an equation")
    found = mathematics.pieces([taken, worked, taken, unnamed])
    assert found == ["d =", "A =", "A = π d²/4", ("π d²/4", ("d", "n"))]
    pairs = dict(mathematics.typeset(found))
    assert pairs["d ="] == symbol("d")
    assert pairs["A = π d²/4"] == equation("A = π d²/4")
    assert filled("A = π d²/4", {"d": "20 mm", "n": "2"}) == pairs["π d²/4", ("d", "n")].replace(
        "\ue0000\ue001", "20 mm"
    )
    assert mathematics.known().keys() >= pairs.keys()
    mathematics.learn([("a piece", "its page")])
    assert mathematics.known()["a piece"] == "its page"
    assert equation("a piece") == "its page"


def test_where_it_scrolls_an_equation_may_be_as_wide_as_it_gets() -> None:
    wide = f"x = {' '.join(['abcdefghij_k'] * 12)}"
    assert equation(wide).startswith("<span class=plain>")
    assert wide_equation(wide).startswith("<math")
    assert wide_equation("x = (a < b") == "<span class=plain>x = (a &lt; b</span>"
    assert filled("x = (a", {"a": "2"}) == "<span class=plain>= (a</span>"
