"""The docstring of every formula says of each symbol what it means, so that a reader can work it by hand."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import KelvinDifference, Metres, Pascals, Ratio
from speclint.quantities import as_written
from speclint.reports.reference.formula_text import text_of
from speclint.reports.reference.worked_formulae import FormulaSearch
from speclint.testing import formulae_in, installed_families
from tests.each import each

LOADED = installed_families()
FORMULAE = formulae_in("speclint.facts", "speclint.handbook", *(family.module for family in LOADED.families))


def test_the_formulae_that_a_rule_can_work_are_among_those_that_are_tried() -> None:
    search = FormulaSearch()
    worked = {one for rule in LOADED.rules for one in search.of_rule(rule)}
    assert len(worked) > 1000
    assert worked <= set(FORMULAE)


def _unsaid(formula: Callable[..., Any]) -> Iterator[str]:
    """What is wrong with the meaning of each symbol that has none, or one that is not of this symbol alone."""
    symbols = text_of(formula).symbols
    names = {name for one in symbols for name in one.names} | set(_in_code(formula))
    explained = re.compile(
        rf"(?<![\w′])(?:{'|'.join(map(re.escape, sorted(names, key=len, reverse=True)))}):"
    )
    for one in symbols:
        together, first = ", ".join(one.names), one.means.split(maxsplit=1)[:1]
        if not one.means:
            yield f"{together}: no meaning"
        elif first[0].strip(",;") in {one.unit, *one.names}:
            yield f"{together}: begins with the symbol or the unit instead of its meaning: {one.means}"
        elif other := explained.search(one.means):
            yield f"{together}: holds the meaning of {other[0]} {one.means}"
        elif others := sorted({other.unit for other in symbols if other.means == one.means} - {one.unit}):
            yield f"{together}: has the meaning of a symbol in {others[0] or 'no unit'}: {one.means}"
        elif "OutOfRange" in one.means:
            yield f"{together}: says what is raised: {one.means}"


def _in_code(formula: Callable[..., Any]) -> list[str]:
    """The arguments whose name in the code is not the symbol as it is printed: ``alpha`` of α, ``s_prime`` of s′."""
    return [name for name in formula.__annotations__ if as_written(name) != name]


def _printed_as_code(formula: Callable[..., Any]) -> list[str]:
    """Those of these names that the printed words have, where a reader looks for the symbol of the equation."""
    text = text_of(formula)
    words = " ".join(
        (text.summary, text.result, *text.ranges, text.rest, *(one.means for one in text.symbols))
    )
    return [name for name in _in_code(formula) if re.search(rf"(?<!\w){name}(?!\w)", words)]


@each(FORMULAE, lambda one: f"{one.__module__}.{one.__qualname__}")
def test_each_symbol_has_a_meaning_of_its_own(formula: Callable[..., Any]) -> None:
    assert not list(_unsaid(formula))


@each(FORMULAE, lambda one: f"{one.__module__}.{one.__qualname__}")
def test_words_name_a_symbol_as_the_equation_has_it(formula: Callable[..., Any]) -> None:
    assert not _printed_as_code(formula)


# Each of these has a fault of its own.


@formula("a = b c", cites=[FIRST_PRINCIPLES])
def without_meaning(b: Metres, c: Ratio) -> Metres:
    """A product.

    ``b`` [m]; ``c`` share. Returns [m].
    """
    return b * c


@formula("a = b c", cites=[FIRST_PRINCIPLES])
def without_words(b: Metres, c: Ratio) -> Metres:
    """A product."""
    return b * c


@formula("w = D − d", cites=[FIRST_PRINCIPLES])
def with_another(D: Metres, d: Metres) -> Metres:
    """A difference.

    ``D`` outside, d: bore [m]; ``d`` bore [m]. Returns [m].
    """
    return D - d


@formula("σ = σ_p + σ_B", cites=[FIRST_PRINCIPLES])
def with_another_in_ascii(sigma_p: Pascals, sigma_B: Pascals) -> Pascals:
    """A sum.

    ``sigma_p`` by the steam, sigma_B: by the load [Pa]; ``sigma_B`` by the load [Pa]. Returns [Pa].
    """
    return sigma_p + sigma_B


@formula("T = ΔT", cites=[FIRST_PRINCIPLES])
def with_its_unit(ΔT: KelvinDifference) -> KelvinDifference:
    """A difference.

    ΔT: ΔK. Returns K.
    """
    return ΔT


@formula("b = s′", cites=[FIRST_PRINCIPLES])
def with_itself(s_prime: Metres) -> Metres:
    """A length.

    ``s_prime`` s′ [m]. Returns [m].
    """
    return s_prime


@formula("a = b", cites=[FIRST_PRINCIPLES])
def with_what_is_raised(b: Metres) -> Metres:
    """A length.

    ``b`` length, above 0, else OutOfRange [m]. Returns [m].
    """
    return b


@formula("x = b c", cites=[FIRST_PRINCIPLES])
def with_two_units(b: Metres, c: Ratio) -> Metres:
    """A product.

    ``b``, ``c`` length and share [m]. Returns [m].
    """
    return b * c


@formula("a = α b", cites=[FIRST_PRINCIPLES])
def as_code_has_it(alpha: Ratio, b: Metres) -> Metres:
    """A product.

    ``alpha`` share [-]; ``b`` length [m]. Returns [m]. Raises OutOfRange unless alpha > 0.
    """
    return alpha * b


@formula("a = α b", cites=[FIRST_PRINCIPLES])
def sound(alpha: Ratio, b: Metres) -> Metres:
    """A product.

    ``alpha`` share: a part of the whole [-]; ``b`` length [m]. Returns [m]. Raises OutOfRange unless α > 0.
    """
    return alpha * b


@pytest.mark.parametrize(
    ("faulty", "said"),
    [
        (without_meaning, ["b: no meaning"]),
        (without_words, ["b: no meaning", "c: no meaning"]),
        (with_another, ["D: holds the meaning of d: outside, d: bore"]),
        (with_another_in_ascii, ["σ_p: holds the meaning of sigma_B: by the steam, sigma_B: by the load"]),
        (with_its_unit, ["ΔT: begins with the symbol or the unit instead of its meaning: ΔK"]),
        (with_itself, ["s′: begins with the symbol or the unit instead of its meaning: s′"]),
        (with_what_is_raised, ["b: says what is raised: length, above 0, else OutOfRange"]),
        (
            with_two_units,
            [
                "b: has the meaning of a symbol in no unit: length and share",
                "c: has the meaning of a symbol in m: length and share",
            ],
        ),
        (sound, []),
    ],
    ids=lambda one: getattr(one, "__name__", ""),
)
def test_a_symbol_without_a_meaning_of_its_own_is_found(faulty: Callable[..., Any], said: list[str]) -> None:
    assert list(_unsaid(faulty)) == said


def test_the_name_of_an_argument_in_the_words_is_found() -> None:
    assert _printed_as_code(as_code_has_it) == ["alpha"]
    assert not _printed_as_code(sound)
