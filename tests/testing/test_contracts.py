"""The contracts of rules and formulae fail on what breaks them, and dimensions are run with pint."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Limit,
    OutOfRange,
    Rule,
    Source,
    formula,
    rules_in,
)
from speclint.equations import Metres, Newtons, Pascals, Radians, Ratio, SquareMetres
from speclint.errors import replace
from speclint.families import load_families
from speclint.specs import Spec
from speclint.testing import (
    expect_declared_kinds,
    expect_dimensions,
    expect_formula,
    expect_rule,
    formulae_in,
    made_family,
)
from tests import drums, tubes

SOUND = replace(
    tubes.stress,
    title="The tube carries its pressure",
    why="a burst tube scalds whoever stands beside it",
    leaves_out="the local code and a competent person decide on the rest",
    against=(),
)


def test_a_sound_rule_keeps_the_contracts() -> None:
    expect_rule(SOUND)
    expect_rule(replace(SOUND, cites=(Source("A work", "2012", "page 3"),)))
    expect_rule(replace(SOUND, grade=Grade.QUERY, gravest=Grade.QUERY, leaves_out="fatigue", against=None))
    expect_rule(replace(drums.wall, why="a thin wall bursts", against=("burst", "wear")))


@pytest.mark.parametrize(
    ("enough", "too_short"),
    [
        (replace(SOUND, title="Tubes carry"), replace(SOUND, title="Tubes hold")),
        (replace(SOUND, why="it may burst"[:11]), replace(SOUND, why="it may burst"[:10])),
        (
            replace(SOUND, grade=Grade.QUERY, gravest=Grade.QUERY, leaves_out="creep!", against=None),
            replace(SOUND, grade=Grade.QUERY, gravest=Grade.QUERY, leaves_out="creep", against=None),
        ),
    ],
)
def test_fewer_letters_than_some_say_nothing(enough: Rule, too_short: Rule) -> None:
    """Eleven of a title and of a reason, six of what is left out."""
    expect_rule(enough)
    with pytest.raises(AssertionError):
        expect_rule(too_short)


@pytest.mark.parametrize(
    ("broken", "said"),
    [
        (replace(SOUND, name="T104"), "its name is not"),
        (replace(SOUND, name="tube.Stress"), "its name is not"),
        (replace(SOUND, title="Pressure"), "its title is no statement"),
        (replace(SOUND, title="The tube carries its pressure."), "ends with a full stop"),
        (replace(SOUND, why="unsafe"), "it does not say why"),
        (replace(SOUND, leaves_out="-"), "what it leaves out; a hold leaves"),
        (replace(SOUND, leaves_out="fatigue"), "a hold leaves something to the local code"),
        (replace(SOUND, cites=()), "it has no source"),
        (replace(SOUND, cites=(Source("A work", "2012"),)), "the source A work, 2012 has no place"),
        (
            replace(SOUND, cites=(*SOUND.cites, Source("A work", place="p. 3"))),
            "the source A work, p. 3 has no edition",
        ),
        (replace(SOUND, edition=0), "its edition is less than 1"),
        (replace(SOUND, gravest=Grade.QUERY), "its gravest finding is lighter"),
        (replace(SOUND, cases=("running",)), "its function takes the component, the load case"),
        (
            replace(SOUND, on=(Spec,)),  # type: ignore[arg-type]
            "Spec is no kind of component",
        ),
        (replace(SOUND, against=None), "it does not say which hazards it guards against"),
        (replace(SOUND, against=("burst",)), "it guards against burst, which none of its kinds can suffer"),
        (replace(SOUND, limits=2 * SOUND.limits), "two of its limits have one name"),
        (replace(SOUND, limits=(Limit("a", "1 m", "length", Source("")),)), "the limit a has no source"),
        (
            replace(SOUND, limits=(Limit("a", "1 m", "length", Source("A work", "2012")),)),
            "of the limit a, the source A work, 2012 has no place",
        ),
        (
            replace(SOUND, limits=(Limit("a", "1 m", "stress", COMMON_PRACTICE),)),
            "the limit a cannot be read",
        ),
        (
            replace(SOUND, limits=(Limit("a", "1 m ±0.1", "length", COMMON_PRACTICE),)),
            "the limit a has a tol",
        ),
    ],
)
def test_a_rule_that_breaks_a_contract(broken: Rule, said: str) -> None:
    with pytest.raises(AssertionError, match=f"^{broken.name}: .*{said}"):
        expect_rule(broken)


def test_a_rule_on_a_kind_that_its_module_does_not_declare() -> None:
    """The rules of tubes stand in tests.tubes; declared for racks alone, none would be applied to a tube."""
    for kinds in ((), ("tube",)):
        expect_declared_kinds(load_families([made_family("a", rules=[rules_in("tests.tubes", *kinds)])]))
    for named, said in (
        (["rack"], "is on a tube, but"),
        (["rack", "tube"], 'names "rack", but no rule in it'),
    ):
        loaded = load_families([made_family("a", rules=[rules_in("tests.tubes", *named)])])
        with pytest.raises(AssertionError, match=said):
            expect_declared_kinds(loaded)


@formula("A = a b", cites=[FIRST_PRINCIPLES])
def area(a: Metres, b: Metres) -> SquareMetres:
    """Area of a rectangle."""
    return a * b


@formula("A ≈ a b", cites=[FIRST_PRINCIPLES])
def area_nearly(a: Metres, b: Metres) -> SquareMetres:
    """Area of a rectangle, near enough."""
    return a * b


@formula("A = a b", cites=[])
def nothing_known(a: float, b: Metres) -> SquareMetres:
    return a * b


@formula("a times b", cites=[Source("A work")])
def badly_cited(a: Metres, b: Metres) -> SquareMetres:
    """Area of a rectangle."""
    return a * b


@formula("A = a + b", cites=[FIRST_PRINCIPLES])
def wrong_result(a: Metres, b: Metres) -> SquareMetres:
    """A sum of lengths is no area."""
    return a + b


@formula("s = F + A", cites=[FIRST_PRINCIPLES])
def wrong_sum(F: Newtons, A: SquareMetres) -> Newtons:
    """A force and an area cannot be added."""
    return F + A


@formula("r = a/b", cites=[FIRST_PRINCIPLES])
def missing_ratio(a: Metres, b: SquareMetres) -> Ratio:
    """Not without a dimension."""
    return a / b


@formula("p = F/A", cites=[FIRST_PRINCIPLES])
def of_shape(F: Newtons, A: SquareMetres, shape: str) -> Pascals:
    """Pressure of a force on an area, round or square."""
    return F / A if shape == "square" else 4 * F / A


@formula("φ = a/b", cites=[FIRST_PRINCIPLES])
def never(a: Metres, b: Metres) -> Radians:
    """Outside its range at every value."""
    raise OutOfRange(f"{a}/{b} is not covered")


@formula("A = a²", cites=[FIRST_PRINCIPLES], empirical="inches")
def empirical(a: Metres) -> Metres:
    """Not run: it holds in inches alone."""
    return a**2


def test_a_sound_formula() -> None:
    expect_formula(area)
    expect_formula(area_nearly)  # an equation that holds nearly is one too
    expect_dimensions(area)
    expect_dimensions(empirical)
    expect_dimensions(of_shape, shape="round")


@pytest.mark.parametrize(
    ("broken", "said"),
    [
        (nothing_known, "it has no docstring; it has no source; a has no unit"),
        (badly_cited, "'a times b' is no equation; the source A work has no edition and no place"),
    ],
)
def test_a_formula_that_is_not_described(broken: Callable[..., Any], said: str) -> None:
    with pytest.raises(AssertionError, match=f"{broken.__name__}: {said}$"):
        expect_formula(broken)


def test_dimensions_that_are_wrong() -> None:
    with pytest.raises(
        AssertionError, match=r"wrong_result gives \[length\], and is stated to give \[length\] \*\* 2"
    ):
        expect_dimensions(wrong_result)
    with pytest.raises(
        AssertionError, match=r"missing_ratio gives 1 / \[length\], and is stated to give dimensionless"
    ):
        expect_dimensions(missing_ratio)
    with pytest.raises(Exception, match="Cannot convert"):
        expect_dimensions(wrong_sum)
    with pytest.raises(AssertionError, match="no values tried lie in the range of never"):
        expect_dimensions(never)


def test_formulae_are_found_below_a_package() -> None:
    names = [one.__name__ for one in formulae_in("speclint_springs", "speclint_springs.formulae")]
    assert "load_tolerance" in names
    assert len(names) == len(set(names))
