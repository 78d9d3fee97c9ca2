"""What the reference says of a formula: its docstring taken apart, and the formulae behind a rule, by hand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property, partial
from typing import Any

import pytest

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Pascals, Ratio
from speclint.facts import stages
from speclint.reports.reference import places
from speclint.reports.reference.entries import Entry, index_script
from speclint.reports.reference.formula_text import Symbol, plain, text_of
from speclint.reports.reference.worked_formulae import FormulaSearch, is_formula, name_of
from tests import tubes


@formula("σ = p d/(D − d)", cites=[FIRST_PRINCIPLES])
def quoted(p: Pascals, d: Metres, D: Metres) -> Pascals:
    """Mean stress of a tube,
    as ``a`` first paragraph.

    σ = p d/(D − d)

    ``p`` pressure within [Pa]; ``d``, ``D`` bore and outside [m]. Returns the stress [Pa]. Valid for thin walls.
    Thick walls need more.
    Other words stay.

    >>> quoted(1.0, 1.0, 2.0)
    1.0
    """
    return p * d / (D - d)


@formula("a = b + c", cites=[FIRST_PRINCIPLES])
def headed(b: Metres, c: Metres) -> Metres:
    """A sum.

    b and c: two lengths, m.
    Returns: their sum. Raises OutOfRange outside.
    """
    require(0.0 * b <= c, "c must not be negative")
    return b + c


@formula("a = b c", cites=[FIRST_PRINCIPLES])
def listed(b: Metres, c: Ratio) -> Metres:
    """A product.

    Parameters: b the length [m], c the share. Raises OutOfRange for a share above 1.
    """
    return b * c


@formula("a = b/c", cites=[FIRST_PRINCIPLES])
def as_another(b: Metres, c: Ratio) -> Metres:
    """A quotient, with the arguments of ``listed``.

    As for ``listed``.
    """
    require(c > 0, "c must be above 0")
    require(b >= 0.0 * c, "b must not be negative")
    return b / c


@formula("a = b − c", cites=[FIRST_PRINCIPLES])
def unsaid(b: Metres, c: Metres) -> Metres:
    """A difference. :func:`quoted` says more of ``b`` alone."""
    return b - c


def test_quoted_symbols_are_told_with_their_meaning() -> None:
    found = text_of(quoted)
    assert found.summary == "Mean stress of a tube, as a first paragraph."
    assert found.symbols == (
        Symbol(("p",), "Pa", "pressure within"),
        Symbol(("d", "D"), "m", "bore and outside"),
    )
    assert found.result == "the stress [Pa]"
    assert found.ranges == ("Valid for thin walls.",)
    assert found.rest == "Thick walls need more. Other words stay."
    assert found.example == ">>> quoted(1.0, 1.0, 2.0)\n1.0"


def test_symbols_may_head_their_meaning() -> None:
    found = text_of(headed)
    assert found.symbols == (Symbol(("b", "c"), "m", "two lengths"),)
    assert found.result == "their sum"
    assert found.ranges == ("The range of each symbol stands beside it; outside of it there is no result.",)
    assert found.rest == ""
    assert found.example == ""


def test_symbols_may_be_listed_as_parameters() -> None:
    found = text_of(listed)
    assert found.symbols == (Symbol(("b",), "m", "the length"), Symbol(("c",), "", "the share"))
    assert found.ranges == ("There is no result for a share above 1.",)


def test_the_meaning_of_arguments_is_taken_from_the_formula_that_is_named() -> None:
    """And where no sentence says the range, the code's own conditions do."""
    found = text_of(as_another)
    assert found.symbols == (Symbol(("b",), "m", "the length"), Symbol(("c",), "", "the share"))
    assert found.ranges == ("There is no result unless c > 0.", "There is no result unless b ≥ 0.")
    assert found.rest == "As for listed."


def test_what_no_docstring_means_stands_by_itself() -> None:
    found = text_of(unsaid)
    assert found.symbols == (Symbol(("b",), "m", ""), Symbol(("c",), "m", ""))
    assert (found.ranges, found.result, found.rest) == ((), "", "")
    assert found.summary == "A difference. quoted says more of b alone."


def test_marks_of_docstrings_are_left_out_of_words() -> None:
    assert plain("``a``  and :func:`b`\nof ``c``") == "a and b of c"


# The formulae behind a rule


@formula("a = b", cites=[FIRST_PRINCIPLES])
def deep(b: Metres) -> Metres:
    """One length."""
    return b


@formula("a = 2 b", cites=[FIRST_PRINCIPLES])
def calls_deep(b: Metres) -> Metres:
    """Twice a length; ``b`` length."""
    return 2 * deep(b)


TABLE = {"one": (deep, [listed])}


def by_call(b: float) -> float:
    return calls_deep(b)


def by_default(work: Callable[..., float] = deep) -> float:
    return work(1.0)


def by_keyword(*, work: Callable[..., float] = deep) -> float:
    return work(1.0)


def by_table(name: str) -> object:
    return TABLE[name]


def by_inner(b: float) -> float:
    def inner() -> float:
        return deep(b)

    return inner()


def by_lambda() -> Callable[[float], float]:
    return lambda b: deep(b)


def by_import(b: float) -> float:
    from speclint.facts.stages import pressure_after as after

    return after(b, b)


def by_module(b: float) -> float:
    return stages.bore_of_pipe(b, b)


def by_closure(work: Callable[..., float]) -> Callable[[], float]:
    def made() -> float:
        return work(1.0)

    return made


@dataclass(frozen=True)
class Held:
    work: Callable[..., float] = deep


HELD = Held()
PART = partial(by_call, b=1.0)


class Worker:
    """Methods of every sort."""

    @property
    def one(self) -> float:
        return quoted(1.0, 1.0, 2.0)

    @cached_property
    def two(self) -> float:
        return headed(1.0, 2.0)

    @classmethod
    def three(cls) -> float:
        return listed(1.0, 2.0)

    @staticmethod
    def four() -> float:
        return as_another(1.0, 2.0)

    def five(self) -> float:
        return unsaid(1.0, 2.0)


class Heir(Worker):
    """What it inherits it has too."""


def by_class() -> float:
    return Heir().five()


def by_held() -> float:
    return HELD.work(1.0)


def by_part() -> float:
    return PART()


def by_nothing() -> float:
    return float(len("no formula"))


@pytest.mark.parametrize(
    ("start", "found"),
    [
        (by_call, [calls_deep]),
        (calls_deep, [deep]),
        (by_default, [deep]),
        (by_keyword, [deep]),
        (by_table, [deep, listed]),
        (by_inner, [deep]),
        (by_lambda, [deep]),
        (by_import, [stages.pressure_after]),
        (by_module, [stages.bore_of_pipe]),
        (by_closure(deep), [deep]),
        (by_closure(by_call), [calls_deep]),
        (by_class, [as_another, headed, listed, quoted, unsaid]),
        (by_held, [deep]),
        (by_part, [calls_deep]),
        (by_nothing, []),
    ],
)
def test_a_formula_is_found_wherever_code_names_it(start: Any, found: list[Any]) -> None:
    """A formula ends the way: what it calls itself is not told."""
    assert list(FormulaSearch().named_by(start)) == sorted(found, key=name_of)


def test_code_of_other_packages_is_not_looked_into_unless_it_is_named() -> None:
    """What stands in a table is looked into, whosever it is; ``statistics`` knows no formula of ours."""
    import statistics

    def elsewhere() -> object:
        return statistics.mean

    search = FormulaSearch()
    assert search.named_by(elsewhere) == ()
    assert search.named_by(by_call) == search.named_by(by_call) == (calls_deep,)


def test_the_formulae_of_a_rule_are_those_that_its_function_can_work() -> None:
    names = [name_of(one) for one in FormulaSearch().of_rule(tubes.loose_hot)]
    assert names == ["tests.tubes.gap", "tests.tubes.hot_gap"]
    assert [one.__name__ for one in FormulaSearch().of_rule(tubes.hoops)] == []


def test_a_formula_is_told_by_its_mark() -> None:
    assert is_formula(deep)
    assert not is_formula(by_call)
    assert not is_formula(Worker)
    assert name_of(deep) == "tests.reports.test_formula_text.deep"


# Places and what the search finds


def test_each_thing_has_its_place() -> None:
    assert places.rule_place("liners", "liner.fit") == "rules/liners.html#liner.fit"
    assert places.kind_place("cam") == "kinds/cam.html"
    assert places.kind_place("cam", "base radius") == "kinds/cam.html#base-radius"
    assert places.list_place("units") == "names/units.html"
    assert places.list_place("units", "heat flux") == "names/units.html#heat-flux"
    assert places.case_place("running") == "words/load-cases.html#running"
    assert places.table_place("speclint_liners", "a.csv") == "tables/liners.a.html"
    assert (
        places.table_place("speclint.handbook.bolted_joints", "b-c.csv")
        == "tables/handbook.bolted-joints.b-c.html"
    )
    assert places.material_place("steels", "P265GH") == "materials/steels.html#P265GH"
    assert places.formula_group("speclint.facts.seats") == "facts"
    assert places.formula_place("speclint_liners.formulae.walls", "wall") == "formulae/liners.html#walls.wall"
    for odd in ("größe", "a/b"):
        assert places.anchor(odd).startswith("x")
    assert places.anchor("a_b-c.d[]") == "a_b-c.d.N"


def test_the_index_names_sorts_and_files_once_and_an_anchor_where_it_is_not_the_name() -> None:
    script = index_script(
        [
            Entry("a", "key", "kinds/cam.html#a", "x" * 241),
            Entry("b", "kind", "kinds/cam.html", "so"),
            Entry("c d", "key", "kinds/rod.html#c-d"),
        ],
        "made",
    )
    assert script == (
        '/* made */\nglobalThis.referenceIndex = {"sorts":["key","kind"],"files":["kinds/cam.html","kinds/rod.html"],'
        f'"entries":[["a",0,0,"","{"x" * 240}"],["b",1,0,0,"so"],["c d",0,1,"c-d",""]]}};\n'
    )
