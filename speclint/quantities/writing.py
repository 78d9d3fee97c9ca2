"""Numbers as an engineer writes them on a sheet: in the units of the trade, with significant digits only."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from functools import cache, lru_cache

from speclint.quantities import units

_ZERO_CELSIUS = 273.15  # exact: definition of the Celsius temperature
_FIGURES = 4  # significant figures, common practice for a design calculation
#: So many figures more at the most where two amounts would else read alike; nearer than this they are the same.
_MOST_MORE, _SAME = 4, 1e-9
#: Decimals of limits from one unit on: stated to a micrometre, and to a tenth of a thou, common practice.
_DECIMALS = {"mm": 3, "in": 4}
_LARGE = 1e4  # five figures before the point: the next multiple of a unit is easier to read, common practice
_THOUSAND = 1e3
#: What a difference of temperatures is printed in beside degrees Fahrenheit; 1.8 to the kelvin, by definition.
FAHRENHEIT_DIFFERENCE = "°F difference"
_MULTIPLES = {"N": "kN", "W": "kW", "J": "kJ"}


#: Below these amounts, by SI unit, a value is what rounding leaves of zero: floats hold about 16 figures, and no sheet
#: works with a length of 1 km, an area of 1000 m², a mass of 1000 t, a stress of 10 GPa or a force of 10 MN.
_NOTHING = {
    "1": 1e-13,
    "m": 1e-12,
    "m²": 1e-13,
    "m³": 1e-13,
    "kg": 1e-9,
    "rad": 1e-12,
    "rad/s": 1e-10,
    "ΔK": 1e-9,
    "Pa": 1e-5,
    "N": 1e-8,
    "N·m": 1e-8,
}

#: Amounts that are kept as they were written: most stand in many checks.
_KEPT = 16384


def without_rounding(value: float, si_unit: str) -> float:
    """A SI value, zero where it is only what rounding leaves of zero."""
    return 0.0 if abs(value) < _NOTHING.get(si_unit, 0.0) else value


def displayed(value: float, si_unit: str, written_in: str = "") -> tuple[float, str]:
    """A SI value in the unit a sheet writes, or in the unit the spec used; what rounding leaves of zero is zero."""
    value = without_rounding(value, si_unit)
    if si_unit == "K":
        if written_in == "°F":
            return (value - _ZERO_CELSIUS) * 1.8 + 32, "°F"  # definition of the Fahrenheit scale
        return value - _ZERO_CELSIUS, "°C"
    if si_unit == "ΔK":
        return (value * 1.8, written_in) if written_in == FAHRENHEIT_DIFFERENCE else (value, "K")
    dimension = units.by_si(si_unit)
    return units.shown(value, dimension.name, written_in) if dimension else (value, si_unit)


def readable(value: float, unit: str, written_in: str = "") -> tuple[float, str]:
    """A shown value in the next multiple of its unit where it is large, unless its spec wrote it in that unit.

    >>> readable(617768.0, "N"), readable(617768.0, "N", "N"), readable(900.0, "N")
    ((617.768, 'kN'), (617768.0, 'N'), (900.0, 'N'))
    """
    multiple = "" if unit == written_in else _MULTIPLES.get(unit, "")
    return (value / _THOUSAND, multiple) if multiple and abs(value) >= _LARGE else (value, unit)


def number(value: float, unit: str, more: int = 0) -> str:
    """A number in its shown unit, rounded as an engineer would; or with some more figures."""
    if math.isinf(value):
        return "∞" if value > 0 else "−∞"
    if unit in _DECIMALS and abs(value) >= 1:
        text = f"{value:.{_DECIMALS[unit] + more}f}"
    elif unit in ("°C", "°F"):
        text = f"{value:.{1 + more}f}"
    elif value != 0 and not 1e-3 <= abs(value) < 1e6:
        return _scientific(value, more)
    else:
        decimals = max(0, _FIGURES + more - 1 - math.floor(math.log10(abs(value)))) if value else 0
        text = f"{value:.{decimals}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text.replace("-", "−")


def _scientific(value: float, more: int) -> str:
    mantissa, exponent = f"{value:.{_FIGURES + more - 1}e}".split("e")
    mantissa = mantissa.rstrip("0").rstrip(".")
    return f"{mantissa}e{int(exponent)}".replace("-", "−")


@lru_cache(maxsize=_KEPT)
def amount(value: float, si_unit: str, written_in: str = "", more: int = 0) -> str:
    """Number and unit together: ``16.2 MPa``, ``480.063 mm``, ``310 °C``, ``11.7e-6/K``; or with some more figures."""
    shown, unit = readable(*displayed(value, si_unit, written_in), written_in)
    if unit.startswith(("1e-6", "1/°")):
        return f"{number(shown, unit, more)}{unit.removeprefix('1')}"
    return f"{number(shown, unit, more)} {unit}".rstrip()


def amounts_apart(one: float, other: float, si_unit: str, written_in: str = "") -> tuple[str, str]:
    """Two amounts of one unit side by side, with as many more figures as show that they differ.

    >>> amounts_apart(1764.6, 1765.2, "N"), amounts_apart(1764.0, 1765.0, "N"), amounts_apart(2.0, 2.0, "N")
    (('1764.6 N', '1765.2 N'), ('1764 N', '1765 N'), ('2 N', '2 N'))
    """
    differ = not math.isclose(one, other, rel_tol=_SAME)
    for more in range(_MOST_MORE + 1 if differ else 1):
        texts = amount(one, si_unit, written_in, more), amount(other, si_unit, written_in, more)
        if texts[0] != texts[1]:
            break
    return texts


_POWERS = "⁰¹²³⁴⁵⁶⁷⁸⁹⁻½"
_SYMBOL = re.compile(rf"[^\W\d{_POWERS}][^\W{_POWERS}]*′?")
#: After these a space is no product, nor after a power of a function, as in sin² θ.
_NO_FACTORS = ("sin", "cos", "tan", "ln", "lg", "exp", "if", "else", "from")
#: A symbol that a line defines itself.
_DEFINED = re.compile(rf", ([^\W\d][^\W{_POWERS}]*′?) = ")
#: A space that means a product: after a symbol, number, power or bracket and before a symbol or bracket.
_PRODUCT = re.compile(
    r"(?<=[\w)|′%])"
    + "".join(rf"(?<!\b{word}{power})" for word in _NO_FACTORS for power in ("", "²", "³", "⁴"))
    + r" (?=[\w(√|])(?!(?:if|else|from)\b)"
)


#: Greek letters as code spells them where an argument cannot carry the letter, such as Python's own lambda.
_GREEK = {
    "alpha": "α",
    "beta": "β",
    "gamma": "γ",
    "delta": "δ",
    "epsilon": "ε",
    "zeta": "ζ",
    "eta": "η",
    "theta": "θ",
    "iota": "ι",
    "kappa": "κ",
    "lambda": "λ",
    "mu": "μ",
    "nu": "ν",
    "xi": "ξ",
    "pi": "π",
    "rho": "ρ",
    "sigma": "σ",
    "tau": "τ",
    "phi": "φ",
    "chi": "χ",
    "psi": "ψ",
    "omega": "ω",
    "Gamma": "Γ",
    "Delta": "Δ",
    "Theta": "Θ",
    "Lambda": "Λ",
    "Sigma": "Σ",
    "Phi": "Φ",
    "Psi": "Ψ",
    "Omega": "Ω",
}


def as_written(argument: str) -> str:
    """The symbol of an argument: Greek letters spelt in code, and a trailing line where the word is Python's own."""
    head, line, tail = argument.rstrip("_").partition("_")
    written = _GREEK.get(head, head) + line + _GREEK.get(tail, tail)
    return written.removesuffix("_prime") + "′" if written.endswith("_prime") else written


@cache
def sides(equation: str) -> tuple[str, str]:
    """The symbol of the result, and what a line prints after it and its equals sign.

    >>> sides("A = π d²/4")
    ('A', 'π d²/4')

    A result that is solved for stands on both sides: the line is true only with its condition.

    >>> sides("f from 1/√f = √Re/8")
    ('f', 'f from 1/√f = √Re/8')
    """
    symbol, found, _ = equation.partition(" from ")
    if found and "=" not in symbol:
        return symbol.strip(), equation.strip()
    symbol, _, right = re.sub("[=≈]", "=", equation, count=1).partition("=")
    return symbol.strip(), right.strip()


def substituted(equation: str, values: Mapping[str, str]) -> str:
    """The right-hand side of an equation with numbers in place of its symbols.

    >>> substituted("A = π d²/4", {"d": "20 mm"})
    'π · (20 mm)²/4'
    >>> substituted("δ = α_b D", {"alpha_b": "11.7e-6/K", "D": "580 mm"})
    '11.7e-6/K · 580 mm'
    >>> substituted("s = F/k", {"F": "10 N", "k": "2.5 N/mm"})
    '10 N/(2.5 N/mm)'
    """
    values = {as_written(name): value for name, value in values.items()}

    def put(found: re.Match[str]) -> str:
        symbol, line = found[0], found.string
        if symbol not in values:
            return symbol
        value, after = values[symbol], line[found.end() : found.end() + 1]
        powered = bool(after) and (after in _POWERS or after == "^")
        return f"({value})" if powered or _falls_apart(value, line[: found.start()].rstrip()) else value

    return _SYMBOL.sub(put, _with_points(equation, frozenset(values)))


@cache
def _with_points(equation: str, symbols: frozenset[str]) -> str:
    """The right-hand side with a point for every space that is a product; none between a number and its unit."""
    right = sides(equation)[1]
    own = {*symbols, *_DEFINED.findall(right)}

    def point(found: re.Match[str]) -> str:
        word = _SYMBOL.match(found.string, found.end())
        return " " if word and word[0] not in own and word[0] in units.names() else " · "

    return _PRODUCT.sub(point, right)


def _falls_apart(value: str, before: str) -> bool:
    """Whether a value needs brackets where it stands: a sign, or a unit that a solidus or a root would cut off."""
    if value.startswith("−"):
        return True
    if before.endswith("/"):
        return bool(set(value) & set("/·")) or value.count(" ") > 1
    return before.endswith("√") and " " in value
