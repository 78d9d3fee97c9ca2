"""The signs of which printed equations are made: numbers, symbols, powers and marks."""

from __future__ import annotations

import re
from dataclasses import dataclass

FUNCTIONS = frozenset(
    {
        "sin",
        "cos",
        "tan",
        "arcsin",
        "arccos",
        "arctan",
        "sinh",
        "cosh",
        "tanh",
        "ln",
        "lg",
        "exp",
        "min",
        "max",
    }
)
#: What may stand after the symbol of the result.
EQUALS = frozenset({"=", "≈"})
COMPARISONS = frozenset("<>≤≥")
WORDS = frozenset({"if", "else", "from"})
CLOSING = {"(": ")", "[": "]", "⌊": "⌋", "|": "|"}
FRACTIONS = {"½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4}
SUPERSCRIPTS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")
_TOKEN = re.compile(
    r"(?P<power>⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)|(?P<number>\d+(?:\.\d+)?(?:e[-−+]?\d+)?|[½¼¾])"
    r"|(?P<symbol>°[CF]?|%|[^\W\d_⁰¹²³⁴⁵⁶⁷⁸⁹½¼¾]+(?:_[^\W_⁰¹²³⁴⁵⁶⁷⁸⁹½¼¾]+)*′*)"
    r"|(?P<mark>\S)|(?P<space>\s+)"
)


@dataclass(frozen=True)
class Token:
    """One sign: its kind (number, symbol, power, mark or end), its text, and whether a space stands before it."""

    kind: str
    text: str
    spaced: bool


def tokens(text: str) -> list[Token]:
    """The signs of a line, with one of kind "end" behind them.

    >>> [one.text for one in tokens("1.5e-4 d²/(π r_0)")]
    ['1.5e-4', 'd', '²', '/', '(', 'π', 'r_0', ')', '']
    """
    found: list[Token] = []
    spaced = False
    for match in _TOKEN.finditer(text):
        if match.lastgroup != "space":
            found.append(Token(str(match.lastgroup), match[0], spaced))
        spaced = match.lastgroup == "space"
    return [*found, Token("end", "", False)]


class Unreadable(ValueError):
    """A line of type that is no equation in this notation; the message says where and why."""


class Cursor:
    """A place in a line that is read from left to right."""

    def __init__(self, text: str) -> None:
        self.text, self.tokens, self.at = text, tokens(text), 0

    @property
    def now(self) -> Token:
        """The sign here."""
        return self.tokens[self.at]

    @property
    def following(self) -> Token:
        """The sign after it."""
        return self.tokens[min(self.at + 1, len(self.tokens) - 1)]

    def take(self) -> Token:
        """The sign here; the place moves on."""
        token = self.now
        self.at = min(self.at + 1, len(self.tokens) - 1)
        return token

    def expect(self, text: str) -> None:
        """Move on past a sign that must stand here."""
        if self.now.text != text:
            raise self.refusal(f"{text!r} is missing before {self.now.text or 'the end'!r}")
        self.take()

    def refusal(self, why: str, back: int = 0) -> Unreadable:
        """What to raise where the line leaves the notation, here or ``back`` signs before."""
        return Unreadable(f"{self.text!r}: {why} (sign {self.at + 1 - back})")
