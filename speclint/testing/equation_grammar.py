"""The notation in which formulae print their equations, read into a tree that can be evaluated.

A line of type as an engineer writes it: factors side by side are a product; a solidus divides what stands
before it in the product by the one factor after it, so ``p d/2 t`` is ``(p d/2) t``; ``x²``, ``x^(1/3)``,
``√x`` and ``√(…)``, ``|x|``, ``⌊x⌋``; ``sin θ`` and ``sin² θ`` take one factor; ``min(…)`` and ``max(…)``.
A number and the unit after it are one amount: ``1/20 mm`` is ``1/(20 mm)``. Cases are written
``A if x < 1, B if x < 2, else C``, symbols of the line's own after it: ``…, b = L − a``. What is solved for
is written ``f from 1/√f = …``. A chain ``A = B = C`` says that all are equal; ``≈`` may stand only after the
symbol of the result, for a formula that is itself an approximation.

>>> str(parse("y = w (L − b)², b = L/2").parts[0])
'(w · ((L − b) ^ 2))'
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, field

from speclint.testing.equation_tokens import (
    CLOSING,
    COMPARISONS,
    EQUALS,
    FRACTIONS,
    FUNCTIONS,
    SUPERSCRIPTS,
    WORDS,
    Cursor,
)
from speclint.testing.equation_tree import (
    Call,
    Cases,
    Comparison,
    Expression,
    Number,
    Operation,
    Symbol,
    Temperature,
)


@dataclass(frozen=True)
class Equation:
    """One printed equation: its result, all that this is equal to, and the symbols that the line defines itself.

    ``solved``: the result is what makes the parts equal to one another, as in ``f from 1/√f = …``.
    """

    result: str
    parts: tuple[Expression, ...]
    solved: bool = False
    definitions: dict[str, Expression] = field(default_factory=dict)


def parse(text: str, names: Collection[str] = (), units: Collection[str] = ()) -> Equation:
    """Read an equation; ``names`` are the symbols that have values, which no unit may be taken for.

    :raises Unreadable: where the line leaves the notation.
    """
    return _Parser(text, names, units).equation()


def parse_value(text: str, names: Collection[str] = (), units: Collection[str] = ()) -> Equation:
    """Read a right-hand side alone, with the symbols that it defines itself, as a sheet prints it with numbers."""
    return _Parser(text, names, units).right_hand_side()


class _Parser(Cursor):
    """Reads one line from left to right, one method for each kind of thing that can stand there."""

    def __init__(self, text: str, names: Collection[str], units: Collection[str]) -> None:
        super().__init__(text)
        self._in_bars = False
        self._names = {*names, *self._named()}
        self._units = units

    def _named(self) -> Iterator[str]:
        """The symbols that the line itself says something of."""
        before = ","
        for token, following in zip(self.tokens, self.tokens[1:], strict=False):
            if before == "," and token.kind == "symbol" and following.text in ("=", "≈", "from"):
                yield token.text
            before = token.text

    def equation(self) -> Equation:
        result = self.take()
        if result.kind != "symbol":
            raise self.refusal("on the left stands the symbol of the result alone", back=1)
        if self.now.text == "from":
            self.at -= 1
        elif self.now.text in EQUALS:
            self.take()
        else:
            raise self.refusal("after the symbol of the result stands = or from")
        return self.right_hand_side(result.text)

    def right_hand_side(self, result: str = "") -> Equation:
        solved = self.following.text == "from"
        if solved:
            result = self.take().text
            self.take()
        parts = [self._cases()]
        while self.now.text == "=":
            self.take()
            parts.append(self._cases())
        if solved and len(parts) < 2:
            raise self.refusal("after from stands an equation")
        return Equation(result, tuple(parts), solved, self._definitions())

    def _definitions(self) -> dict[str, Expression]:
        found: dict[str, Expression] = {}
        while self.now.text == ",":
            self.take()
            name = self.take()
            if name.kind != "symbol" or self.now.text != "=":
                raise self.refusal("after a comma stands a symbol, = and what it is")
            self.take()
            if name.text in found:
                raise self.refusal(f"{name.text} is defined twice")
            found[name.text] = self._cases()
        if self.now.kind != "end":
            raise self.refusal(f"{self.now.text!r} is not expected")
        return found

    def _cases(self) -> Expression:
        """``A if x < 1, B if x < 2, else C``, or one expression."""
        first = self._sum()
        if self.now.text != "if":
            return first
        pieces: list[tuple[Comparison | None, Expression]] = []
        value = first
        while True:
            self.expect("if")
            pieces.append((self._condition(), value))
            self.expect(",")
            if self.now.text == "else":
                self.take()
                return Cases((*pieces, (None, self._sum())))
            value = self._sum()

    def _condition(self) -> Comparison:
        terms, signs = [self._sum()], []
        while self.now.text in COMPARISONS:
            signs.append(self.take().text)
            terms.append(self._sum())
        if not signs:
            raise self.refusal("a condition needs one of < ≤ > ≥")
        return Comparison(tuple(terms), tuple(signs))

    def _sum(self) -> Expression:
        total = self._signed(self._product)
        while self.now.text in ("+", "−", "-"):
            sign = self.take().text
            total = Operation("+" if sign == "+" else "−", total, self._product())
        return total

    def _signed(self, read: Callable[[], Expression]) -> Expression:
        if self.now.text in ("−", "-"):
            self.take()
            return Operation("−", Number(0.0), read())
        if self.now.text == "+":
            self.take()
        return read()

    def _product(self) -> Expression:
        product = self._factor()
        while True:
            if self.now.text in ("·", "×", "/"):
                sign = "/" if self.take().text == "/" else "·"
                product = Operation(sign, product, self._factor())
            elif self.now.text in ("°C", "°F"):
                product = Temperature(product, self.take().text)
            elif self._starts_factor():
                product = Operation("·", product, self._factor())
            else:
                return product

    def _starts_factor(self) -> bool:
        token, before = self.now, self.tokens[self.at - 1]
        if token.text == "|":
            return not self._in_bars
        if token.kind == "number" and before.kind == "number":
            raise self.refusal("two numbers side by side")
        return token.text in ("(", "[", "√", "⌊") or (
            token.kind in ("number", "symbol") and token.text not in WORDS
        )

    def _factor(self) -> Expression:
        token = self.take()
        if token.text == "√":
            return Call("√", (self._factor(),))
        if token.text in CLOSING:
            return self._powers(self._bracket(token.text))
        if token.kind == "number":
            return self._powers(self._amount(token.text))
        if token.kind != "symbol" or token.text in WORDS:
            raise self.refusal(f"{token.text or 'the end'!r} is not expected", back=1)
        if token.text in FUNCTIONS and token.text not in self._names and not self._is_minute(token.text):
            return self._function(token.text)
        if self.now.text == "(" and not self.now.spaced:
            self.take()
            return self._powers(Call(token.text, self._arguments()))
        return self._powers(Symbol(token.text))

    def _is_minute(self, text: str) -> bool:
        return text == "min" and self.now.text not in ("(", "²")

    def _amount(self, text: str) -> Expression:
        """A number, with the unit after it where there is one."""
        number = Number(FRACTIONS.get(text) or float(text.replace("−", "-")))
        unit = self.now
        named = unit.text in self._names or self.following.text == "("
        if unit.kind != "symbol" or unit.text not in self._units or named:
            return number
        self.take()
        if unit.text in ("°C", "°F") and self.now.text != "difference":
            return Temperature(number, unit.text)
        if self.now.text == "difference":
            self.take()
        return Operation("·", number, self._powers(Symbol(unit.text)))

    def _bracket(self, opening: str) -> Expression:
        outside, self._in_bars = self._in_bars, opening == "|"
        inside = self._sum()
        self.expect(CLOSING[opening])
        self._in_bars = outside
        return Call(opening, (inside,)) if opening in ("|", "⌊") else inside

    def _function(self, name: str) -> Expression:
        exponent = self._exponent()
        if self.now.text == "(":
            self.take()
            inside = self._arguments()
        else:
            inside = (self._factor(),)
        called: Expression = Call(name, inside)
        return self._powers(called if exponent is None else Operation("^", called, exponent))

    def _arguments(self) -> tuple[Expression, ...]:
        outside, self._in_bars = self._in_bars, False
        found = [self._sum()]
        while self.now.text == ",":
            self.take()
            found.append(self._sum())
        self.expect(")")
        self._in_bars = outside
        return tuple(found)

    def _powers(self, base: Expression) -> Expression:
        while (exponent := self._exponent()) is not None:
            base = Operation("^", base, exponent)
        return base

    def _exponent(self) -> Expression | None:
        if self.now.kind == "power":
            return Number(float(self.take().text.translate(SUPERSCRIPTS)))
        if self.now.text != "^":
            return None
        self.take()
        return self._signed(self._plain_exponent)

    def _plain_exponent(self) -> Expression:
        token = self.take()
        if token.text == "(":
            return self._bracket("(")
        if token.kind == "number":
            return Number(float(token.text))
        if token.kind == "symbol":
            return Symbol(token.text)
        raise self.refusal("an exponent is a number, a symbol or stands in brackets", back=1)
