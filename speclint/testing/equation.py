"""The printed equation is the code: what a formula prints, worked out and held against what it returns.

A family proves its own formulae so:

    @pytest.mark.parametrize("one", formulae_in("speclint_drains"), ids=lambda one: one.__name__)
    def test_the_printed_equation_is_the_code(one):
        expect_equation(one)
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from typing import Any

from speclint.equations import Described, described
from speclint.errors import OutOfRange
from speclint.quantities import amount, as_written, substituted
from speclint.testing.equation_grammar import parse, parse_value
from speclint.testing.equation_tokens import Unreadable
from speclint.testing.equation_tree import Expression, everything_in, plain_sign
from speclint.testing.equation_values import (
    Floats,
    Functions,
    Quantities,
    dimension_of,
    quantity,
    unit_table,
)
from speclint.testing.sampling import draws

_DRAWS = 6000
#: Points in the formula's range that are enough, once every way is gone, and the fewest that prove anything.
_ENOUGH, _FEWEST = 60, 8
#: How near two numbers must be: what an iterative solution leaves.
_CLOSE = 1e-7
#: A small difference of large numbers may differ by as much as such a change of all arguments moves it, so often.
_NUDGE, _NUDGED = 1e-12, 1e4
#: Halvings between two points: near enough to tell limits apart, too far for round-off to.
_HALVINGS = 30

Way = tuple[Expression, int]  # of a node that can go several ways, one
Write = Callable[[float, str], str]  # how a sheet writes a value of an SI unit


def expect_equation(
    formula: Callable[..., float],
    *,
    ranges: Mapping[str, tuple[float, float]] | None = None,
    others: Mapping[str, object] | None = None,
    also: Mapping[str, Callable[..., Any]] | None = None,
    write: Write = amount,
) -> None:
    """Prove that the equation which a formula prints is what the formula works out.

    At points within the formula's range, on every side of each min, max, \\|x\\| and case that it prints: the
    equation in SI floats gives what the function returns; in pint quantities it has the annotated dimension;
    and the line that a sheet prints with numbers and units in place of the symbols evaluates to the same.

    ``ranges`` narrows what is tried for an argument, by name, where few values are in range; ``others`` gives
    arguments that are no numbers. ``also`` gives functions that the equation names and no formula in sight of
    its module has, such as those of an international standard, annotated with units as formulae are.
    ``write`` is how a sheet writes a value of an SI unit.

    :raises AssertionError: where they differ, with the values; where a line cannot be read, why.
    """
    _Proof(described(formula), ranges or {}, others or {}, also or {}, write).run()


class Unequal(ValueError):
    """The printed equation and the formula differ."""


class _Proof:
    """The equation of one formula, held against it."""

    def __init__(
        self,
        about: Described,
        ranges: Mapping[str, tuple[float, float]],
        others: Mapping[str, object],
        also: Mapping[str, Callable[..., Any]],
        write: Write,
    ) -> None:
        self._about, self._ranges, self._others, self._write = about, ranges, others, write
        self._functions = Functions(about, also)
        self._symbols = {name: as_written(name) for name in about.units}
        self._values: Mapping[str, float] = {}
        self._result = math.nan
        with self._said():
            self._equation = parse(about.equation, set(self._symbols.values()), unit_table())
            if self._equation.result in self._symbols.values():
                raise Unreadable(f"{self._equation.result} is both the result and an argument")

    def run(self) -> None:
        """Draw points until enough are in range and every way is gone; then close in on where ways part."""
        points, met = 0, dict.fromkeys(self._ways())
        for values in draws(self._about, _DRAWS, self._ranges):
            taken = self._compare(values)
            if taken is None:
                continue
            if points < _FEWEST or any(met[way] is None for way in taken):
                self._compare_other_forms()
            points += 1
            met.update((way, values) for way in taken if met[way] is None)
            if points >= _ENOUGH and None not in met.values():
                break
        self._enough(points, [way for way, values in met.items() if values is None])
        self._close_in(met)

    def _close_in(self, met: Mapping[Way, Mapping[str, float] | None]) -> None:
        """Compare ever nearer to the place where one way gives over to another: there a limit that differs shows."""
        for (place, number), here in met.items():
            there = met.get((place, number + 1))
            for _ in range(_HALVINGS if here and there else 0):
                assert here is not None  # as was asked
                assert there is not None
                middle = {name: (here[name] + there[name]) / 2 for name in here}
                taken = self._compare(middle)
                if taken is None:
                    break
                here, there = (middle, there) if (place, number) in taken else (here, middle)

    def _enough(self, points: int, open_ways: list[Way]) -> None:
        if points < _FEWEST:
            raise AssertionError(
                f"{self._name}: {points} of {_DRAWS} draws are in range; narrow some in ranges"
            )
        if open_ways:
            ways = ", ".join(sorted(f"{number + 1} of {place}" for place, number in open_ways))
            raise AssertionError(
                f"{self._name} prints {self._about.equation}; no value tried goes way {ways}"
            )

    @property
    def _name(self) -> str:
        return f"{self._about.function.__module__}.{self._about.function.__name__}"

    def _ways(self) -> list[Way]:
        trees = (*self._equation.parts, *self._equation.definitions.values())
        nodes = [node for tree in trees for node in everything_in(tree) if node.ways() > 1]
        return [(node, number) for node in nodes for number in range(node.ways())]

    def _returned(self, values: Mapping[str, float]) -> float | None:
        """What the formula returns; None out of its range."""
        try:
            result = self._about.function(**values, **self._others)
        except (OutOfRange, ZeroDivisionError, OverflowError, ValueError, TypeError):
            return None
        return result if isinstance(result, int | float) and math.isfinite(result) else None

    def _compare(self, values: Mapping[str, float]) -> set[Way] | None:
        """Hold the equation in SI floats against the formula: the ways it went, None out of the formula's range."""
        result = self._returned(values)
        if result is None:
            return None
        self._values, self._result = values, result
        with self._said():
            names = self._floats(values, result)
            parts = [part.of(names) for part in self._equation.parts]
            first = parts[0] if self._equation.solved else result
            for part in parts:
                if not self._close(part, first, result):
                    said = (
                        "one side is {}, the other {}"
                        if self._equation.solved
                        else "it is {}, but {} is returned"
                    )
                    raise Unequal(said.format(repr(part), repr(first)))
        return names.taken

    def _compare_other_forms(self) -> None:
        with self._said():
            self._compare_dimensions(self._result)
            self._compare_printed()

    def _floats(self, values: Mapping[str, float], result: float) -> Floats:
        bound = {self._symbols[name]: value for name, value in values.items()}
        if self._equation.solved:
            bound[self._equation.result] = result
        return Floats(self._equation, bound, self._functions.floats)

    def _close(self, value: Any, wanted: float, result: float) -> bool:
        """Whether two numbers are the same but for rounding, where small differences of large numbers count."""
        if isinstance(value, complex):
            return False
        if math.isclose(value, wanted, rel_tol=_CLOSE):
            return True
        nudged = {
            name: given * (1 + _NUDGE * (-1) ** number)
            for number, (name, given) in enumerate(self._values.items())
        }
        here = self._floats(self._values, result)
        there = self._floats(nudged, result * (1 + _NUDGE))
        moved = sum(abs(part.of(here) - part.of(there)) for part in self._equation.parts)
        return bool(abs(value - wanted) <= _NUDGED * moved)

    def _compare_dimensions(self, result: float) -> None:
        """The equation in pint quantities has the dimension that the annotation promises."""
        about = self._about
        given = {
            self._symbols[name]: quantity(self._values[name], unit) for name, unit in about.units.items()
        }
        returned = quantity(result, about.unit)
        if self._equation.solved:
            given[self._equation.result] = returned
        names = Quantities(self._equation, given, self._functions.quantities)
        for part in self._equation.parts:
            value = part.of(names)
            wanted = self._equation.parts[0].of(names) if self._equation.solved else returned
            found, annotated = dimension_of(value), dimension_of(wanted)
            if found != annotated and plain_sign(value) != 0:
                raise Unequal(f"it is a quantity of {found}, not {annotated}")

    def _compare_printed(self) -> None:
        """The line that a sheet prints with numbers says the same as the equation does of those numbers."""
        shown = {name: self._write(self._values[name], unit) for name, unit in self._about.units.items()}
        line = substituted(self._about.equation, shown)
        printed = parse_value(line, self._equation.definitions, unit_table())
        rounded = {name: self._read(text) for name, text in shown.items()}
        result = self._returned(rounded)
        if result is None:
            return
        names = Floats(
            printed, {self._equation.result: result} if printed.solved else {}, self._functions.floats
        )
        wanted = self._floats(rounded, result)
        for part, origin in zip(printed.parts, self._equation.parts, strict=True):
            said, meant = part.of(names), origin.of(wanted)
            if not math.isclose(said, meant, rel_tol=_CLOSE):
                raise Unequal(f"the sheet prints {line}, which is {said!r}, not {meant!r}")

    def _read(self, text: str) -> float:
        tree = parse_value(text, (), unit_table())
        return float(tree.parts[0].of(Floats(tree, {}, self._functions.floats)))

    @contextmanager
    def _said(self) -> Iterator[None]:
        """Whatever goes wrong is said with the equation and the values."""
        try:
            yield
        except Exception as problem:
            known = isinstance(problem, Unequal | Unreadable)
            said = str(problem) if known else f"{type(problem).__name__}: {problem}"
            at = ", ".join(f"{self._symbols[name]} = {value!r}" for name, value in self._values.items())
            where = f"; at {at} in SI" if at else ""
            raise AssertionError(f"{self._name} prints {self._about.equation}; {said}{where}") from problem
