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
from speclint.reports.pack.mathematics import equation, filled, symbol
from speclint.reports.pack.notation import latex
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
    ],
)
def test_a_line_is_set_as_a_textbook_sets_it(line: str, set_as: str) -> None:
    assert " ".join(latex(line).split()) == set_as


@pytest.mark.parametrize("line", ["σ = p d/(D − d", "σ = p)", "a = √", "x = |a", "y = 3^"])
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
