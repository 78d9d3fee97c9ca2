r"""Equations as the formulae write them, set as LaTeX: fractions, powers, indices, roots and words.

The notation is that of an engineer's line of type: a space between factors is a product, a solidus divides all
factors before it by the one factor after it, ``x_max`` has an index, ``√(…)`` or ``√2`` is a root.

>>> latex("σ = p d/(D − d)")
'\\sigma  = \\frac{p \\, d}{D - d}'
"""

from __future__ import annotations

import re
from collections.abc import Callable

from speclint.quantities import units

Value = Callable[[str], str]  # what stands for a symbol

#: The name of a part, whose hyphen is no minus.
_NAME = re.compile("[a-z]{2,}(?:-[a-z0-9]+)+")
_TOKEN = re.compile(
    r"(?P<power>[²³⁴⁵⁶⁷⁸⁹⁻¹⁰½]+)|(?P<number>\d+(?:\.\d+)?(?:e[-−]?\d+)?)|(?P<space>\s+)"
    rf"|(?P<name>{_NAME.pattern})"
    r"|(?P<symbol>[^\W\d_²³⁴⁵⁶⁷⁸⁹⁻¹⁰½]+(?:_[^\W_²³⁴⁵⁶⁷⁸⁹⁻¹⁰½]+)*[′*]?)|(?P<mark>.)"
)
_POWERS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")
_FUNCTION_NAMES = "sin cos tan asin acos atan arcsin arccos arctan sinh cosh tanh ln lg log exp min max"
_FUNCTIONS = frozenset(_FUNCTION_NAMES.split())
_GREEK_LETTERS = "αβγδεζηθικλμνξπρστφχψωΓΔΘΛΞΠΣΦΨΩ"
_GREEK_NAMES = """alpha beta gamma delta varepsilon zeta eta theta iota kappa lambda mu nu xi pi rho sigma tau varphi
chi psi omega Gamma Delta Theta Lambda Xi Pi Sigma Phi Psi Omega"""
_GREEK = dict(zip(_GREEK_LETTERS, _GREEK_NAMES.split(), strict=True))
_SPELT = {name.removeprefix("var"): name for name in _GREEK.values()}
_RELATIONS = {
    "=": "=",
    "≤": r"\le",
    "≥": r"\ge",
    "<": "<",
    ">": ">",
    "≈": r"\approx",
    "≠": r"\ne",
    "→": r"\to",
}
_OPERATORS = {"+": "+", "−": "-", "-": "-", "±": r"\pm", "·": r"\cdot", "×": r"\times"}
_SUMS = frozenset("+−-±")
_BRACKETS = {"(": ")", "[": "]", "{": "}", "|": "|", "⌊": "⌋"}
_DRAWN = {"(": "(", "[": "[", "{": r"\{", "|": "|", "⌊": r"\lfloor "}
_SHUT = {")": ")", "]": "]", "}": r"\}", "|": "|", "⌋": r"\rfloor "}
_SEPARATORS = {",": r",\;", ";": r";\;", ":": r":\;", "…": r"\dots ", "%": r"\%", "°": r"{}^{\circ}"}


def latex(equation: str, value: Value | None = None) -> str:
    """An equation as LaTeX.

    ``value`` gives what stands for a symbol, "" to leave it a symbol: so numbers are put in, and then a point
    stands between factors.

    :raises ValueError: for brackets that do not match.
    """
    return _Reader(equation, value or (lambda _symbol: ""), r"\cdot" if value else "\\,").whole()


class _Reader:
    """Reads one line of notation from left to right."""

    def __init__(self, equation: str, value: Value, times: str) -> None:
        self._tokens = [(str(found.lastgroup), found[0]) for found in _TOKEN.finditer(equation.strip())]
        self._at = 0
        self._value, self._times = value, times
        self._inside: dict[str, str] = {}  # what stands in a plain bracket

    def whole(self) -> str:
        text = self._run(stop="")
        if self._at < len(self._tokens):
            raise ValueError(f"a bracket is shut that was not opened: {self._tokens[self._at][1]}")
        return text

    def _run(self, stop: str) -> str:
        """Terms, signs and words until a bracket shuts."""
        parts: list[str] = []
        while (token := self._peek()) is not None and token[1] != stop and token[1] not in ")]}⌋":
            kind, text = token
            if kind == "space":
                self._at += 1
            elif text in _RELATIONS or text in _OPERATORS or text in _SEPARATORS:
                self._at += 1
                parts.append({**_RELATIONS, **_OPERATORS, **_SEPARATORS}[text])
            elif self._is_word(text):
                parts.append(self._words())
            else:
                parts.append(self._product(stop))
        return " ".join(parts)

    def _words(self) -> str:
        """A run of plain words, as in "cones from both ends that meet at"."""
        words: list[str] = []
        while (token := self._peek()) is not None and (token[0] == "space" or self._is_word(token[1])):
            if (per := self._peek(1)) and per[1] == "/" and token[0] != "space":
                words.append(f"{token[1]}/")  # a unit, as in "v in ft/min"
                self._at += 2
                token = self._take()
                words.append(token[1])
                continue
            words.append(token[1])
            self._at += 1
        return rf"\text{{ {' '.join(''.join(words).split())} }}"

    def _product(self, stop: str) -> str:
        """Factors side by side; a solidus divides what stands before it by the next factor."""
        factors: list[str] = []
        while (token := self._peek()) is not None and token[1] != stop:
            kind, text = token
            if text == "/":
                self._at += 1
                self._skip_space()
                bottom = self._factor(bare=True)
                factors = [rf"\frac{{{self._top(factors)}}}{{{bottom}}}"]
            elif kind == "space":
                if not self._another_factor(stop):
                    break
                self._at += 1
            elif text in ("·", "×") and factors:
                self._at += 1
                self._skip_space()
                factors.append(f"{_OPERATORS[text]} {self._factor()}")
            elif self._ends_product(kind, text):
                break
            else:
                factors.append(self._factor())
        return " ".join(self._spaced(factors))

    def _top(self, factors: list[str]) -> str:
        """The top of a fraction, without a bracket that the bar makes needless."""
        return (
            self._inside.get(factors[0], factors[0]) if len(factors) == 1 else " ".join(self._spaced(factors))
        )

    def _spaced(self, factors: list[str]) -> list[str]:
        """Thin spaces or points between factors that stand side by side, so that none read as one word."""
        spaced = factors[:1]
        for factor in factors[1:]:
            spaced += [factor] if factor.startswith(("\\cdot", "\\times")) else [self._times, factor]
        return spaced

    def _another_factor(self, stop: str) -> bool:
        following = self._peek(1)
        if following is None or following[1] == stop:
            return False
        return following[1] in ("·", "×", "/") or not self._ends_product(*following)

    def _ends_product(self, kind: str, text: str) -> bool:
        ending = text in _RELATIONS or text in _SUMS or text in _SEPARATORS or text in ")]}⌋"
        return ending or kind == "space" or self._is_word(text)

    def _factor(self, *, bare: bool = False) -> str:
        """One symbol, number, root, function or bracket, with its power; ``bare`` leaves out a bracket of its own."""
        kind, text = self._take()
        if text == "√":
            self._skip_space()
            return rf"\sqrt{{{self._factor(bare=True)}}}" + self._power()
        if text in ("Σ", "∑"):
            self._skip_space()
            return rf"\sum {self._product(stop='')}"
        if text in _BRACKETS:
            inner = self._run(stop=_BRACKETS[text])
            self._shut(_BRACKETS[text])
            power = self._power()
            drawn = rf"\left{_DRAWN[text]} {inner} \right{_SHUT[_BRACKETS[text]]}"
            if text == "(" and not power:
                self._inside[drawn] = inner
            return inner if bare and text == "(" and not power else drawn + power
        if kind == "symbol" and text in _FUNCTIONS and not self._is_minute(text):
            return self._function(text)
        shown = self._value(text) if kind == "symbol" else ""
        power = self._power()
        if shown:
            return rf"\left( {shown} \right){power}" if power else shown
        if kind == "symbol" and not power and (following := self._peek()) and following[1] == "(":
            return _symbol(text) + self._factor()  # a function of what stands in the bracket
        return (_symbol(text) if kind == "symbol" else _number(text)) + power

    def _is_minute(self, text: str) -> bool:
        """Whether min is the unit: the function has a bracket."""
        following = self._peek()
        return text == "min" and (following is None or following[1] != "(")

    def _function(self, name: str) -> str:
        power = self._power()
        self._skip_space()
        drawn = rf"\operatorname{{{name}}}" if name.startswith(("a", "lg")) else rf"\{name}"
        return rf"{drawn}{power} {self._factor()}"

    def _power(self) -> str:
        token = self._peek()
        if token is not None and token[0] == "power":
            self._at += 1
            return f"^{{{token[1].replace('½', '1/2').translate(_POWERS)}}}"
        if token is not None and token[1] == "^":
            self._at += 1
            sign = "-" if (sign_token := self._peek()) and sign_token[1] in "-−" else ""
            self._at += len(sign)
            return f"^{{{sign}{self._factor(bare=True)}}}"
        return ""

    def _is_word(self, text: str) -> bool:
        """Whether a run of letters is a word of English, or the name of a part, not a symbol."""
        if _NAME.fullmatch(text):
            return True
        if len(text) < 2 or not text.isascii() or not text.isalpha() or text in _FUNCTIONS or text in _SPELT:
            return False
        return not self._value(text) and text.islower() and text not in units.names()

    def _peek(self, ahead: int = 0) -> tuple[str, str] | None:
        return self._tokens[self._at + ahead] if self._at + ahead < len(self._tokens) else None

    def _take(self) -> tuple[str, str]:
        token = self._peek()
        if token is None:
            raise ValueError("the equation ends too soon")
        self._at += 1
        return token

    def _shut(self, mark: str) -> None:
        if self._take()[1] != mark:
            raise ValueError(f"a bracket is not shut: {mark} is missing")

    def _skip_space(self) -> None:
        while (token := self._peek()) is not None and token[0] == "space":
            self._at += 1


def _number(text: str) -> str:
    """A number; one with an exponent as a power of ten."""
    mantissa, _, exponent = text.partition("e")
    if not exponent:
        return _escaped(text)
    return rf"{mantissa} \times 10^{{{exponent.replace('−', '-')}}}"


def _symbol(text: str) -> str:
    star, prime = text.endswith("*"), text.endswith("′")
    head, *indices = text.rstrip("*′").split("_")
    mark = "^{*}" if star else "'" if prime else ""
    index = "".join(f"_{{{', '.join(_plain(part) for part in indices)}}}" if indices else "")
    return f"{_letters(head)}{index}{mark}"


def _letters(head: str) -> str:
    """Greek letters by their names; several letters of a symbol upright, as one name."""
    if head in _SPELT:
        return rf"\{_SPELT[head]} "
    if len(head) > 1 and head[0] in "ΔΣ":
        return rf"\{_GREEK[head[0]]} {_letters(head[1:])}"
    if head in _GREEK:
        return rf"\{_GREEK[head]} "
    return head if len(head) == 1 else rf"\mathrm{{{_escaped(head)}}}"


def _plain(part: str) -> str:
    if part in _SPELT or part in _GREEK:
        return _letters(part).strip()
    return part if len(part) == 1 else rf"\mathrm{{{_escaped(part)}}}"


def _escaped(text: str) -> str:
    return re.sub(r"([#$%&_{}~^\\])", lambda found: "\\" + found[1] if found[1] not in "~^\\" else " ", text)
