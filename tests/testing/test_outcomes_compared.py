"""Two checks held against each other: whether they come out alike, say the same, or one is worse."""

from __future__ import annotations

import math
from itertools import islice
from pathlib import Path
from typing import Any

import pytest

from speclint import FIRST_PRINCIPLES, Grade, formula
from speclint.checking import Check
from speclint.equations import Metres
from speclint.errors import replace
from speclint.testing import DesignFolder, expect_dimensions
from speclint.testing.dimensions import _MAGNITUDES, _some
from speclint.testing.outcomes_compared import said_otherwise, same_numbers, shown, words_of, worse
from tests import tubes


@pytest.fixture
def check(tmp_path: Path) -> Check:
    return DesignFolder(tmp_path, tubes.tubes()).write(tubes.FILES).only("tube.stress")


def used(check: Check, share: float | None, **changes: Any) -> Check:
    """A check that uses a share of its limit."""
    assert check.judgement is not None
    judgement = None if share is None else replace(check.judgement, utilisation=share)
    return replace(check, judgement=judgement, **changes)


def found(check: Check, share: float | None, grade: Grade = Grade.QUERY) -> Check:
    return used(check, share, outcome="finding", grade=grade)


def test_what_comes_out_alike(check: Check) -> None:
    one = used(check, 0.5)
    for other in (used(check, 0.5), used(check, 0.5 * (1 + 0.9e-9)), used(check, 0.5, says="otherwise")):
        assert same_numbers(one, other)
    for other in (used(check, 0.5 * (1 + 1.1e-9)), found(check, 0.5), used(check, None)):
        assert not same_numbers(one, other)
        assert not same_numbers(other, one)
    assert not same_numbers(found(check, 0.5), found(check, 0.5, Grade.HOLD))
    assert same_numbers(used(check, None), used(check, None))
    assert same_numbers(used(check, math.inf), used(check, math.inf))
    assert same_numbers(used(check, 0.0), used(check, 0.9e-12))  # what rounding leaves of nothing
    assert not same_numbers(used(check, 0.0), used(check, 1.1e-12))


def test_the_first_thing_that_is_said_otherwise(check: Check) -> None:
    assert said_otherwise(check, replace(check, component="another")) == ""
    other = replace(check, says="it is otherwise", missing=("x",))
    assert said_otherwise(check, other) == f"'it is otherwise', not {check.says!r}"
    assert said_otherwise(check, replace(check, case="running")) == f"'running', not {check.case!r}"
    assert len(words_of(check)) == 10


@pytest.mark.parametrize(
    ("changes", "is_worse"),
    [
        ((0.5, 0.6), True),
        ((0.6, 0.5), False),
        ((0.5, 0.5), False),
        ((0.5, 0.5 * (1 + 0.9e-9)), False),
        ((0.5, 0.5 * (1 + 1.1e-9)), True),
        ((0.0, 0.9e-12), False),
        ((0.0, 1.1e-12), True),
        ((None, 0.5), False),
        ((0.5, None), False),
        ((0.5, math.inf), True),
        ((math.inf, math.inf), False),
    ],
)
def test_more_of_the_limit_is_worse(
    check: Check, changes: tuple[float | None, float | None], is_worse: bool
) -> None:
    before, after = changes
    assert worse(used(check, before), used(check, after)) is is_worse
    assert worse(found(check, before), found(check, after)) is is_worse


def test_a_graver_outcome_is_worse_whatever_is_used(check: Check) -> None:
    holds, query, hold = used(check, 0.9), found(check, 1.5), found(check, 1.1, Grade.HOLD)
    for before, after in ((holds, query), (holds, hold), (query, hold)):
        assert worse(before, after)
        assert not worse(after, before)


def test_what_was_not_judged_is_neither(check: Check) -> None:
    none = used(check, None, outcome="not assessed", grade=None)
    for other in (used(check, 0.5), found(check, 1.5), none):
        assert not worse(none, other)
        assert not worse(other, none)


@pytest.mark.parametrize(
    ("share", "changes", "said"),
    [
        (0.5, {"says": "all  is\n well"}, "conforms, 0.5 of the limit used: all is well"),
        (None, {"says": "x"}, "conforms: x"),
        (
            1.25,
            {"outcome": "finding", "grade": Grade.HOLD, "says": "x"},
            "finding (hold), 1.25 of the limit used: x",
        ),
        (None, {"outcome": "finding", "grade": None, "says": "x"}, "finding: x"),
        (None, {"outcome": "not assessed", "grade": Grade.HOLD, "says": "x"}, "not assessed: x"),
    ],
)
def test_how_a_check_came_out_in_a_line(
    check: Check, share: float | None, changes: dict[str, Any], said: str
) -> None:
    assert shown(used(check, share, **changes)) == said


@formula("L = a + b + c + d + e for e < 0.5 m", cites=[FIRST_PRINCIPLES])
def length_of_five(a: Metres, b: Metres, c: Metres, d: Metres, e: Metres) -> Metres:
    """Five lengths in a row."""
    return a + b + c + d + e


@formula("L = a b + c + d + e", cites=[FIRST_PRINCIPLES])
def no_length(a: Metres, b: Metres, c: Metres, d: Metres, e: Metres) -> Metres:
    """An area where a length is stated, or the other way."""
    return a * b * (c + d + e) / (c + d + e)


def test_dimensions_of_a_formula_of_many_arguments() -> None:
    expect_dimensions(length_of_five)
    with pytest.raises(AssertionError, match="no_length gives"):
        expect_dimensions(no_length)


def test_many_values_are_tried_in_a_known_order() -> None:
    """The minimal standard generator of Park and Miller: from 1 the first number is 48 271, the second 182 605 794, and
    the 10 000th 399 268 537 (ISO/IEC 14882, minstd_rand)."""
    drawn = list(islice(_some(1), 10_000))
    for place, state in ((0, 48_271), (1, 182_605_794), (9_999, 399_268_537)):
        shares = state // 256 % 97
        assert drawn[place] == (pytest.approx(_MAGNITUDES[state % 11] * (1 + shares / 97), rel=1e-12),)
    assert [len(one) for one in islice(_some(5), 3)] == [5, 5, 5]
    assert next(_some(2)) == (*drawn[0], *drawn[1])
    assert sum(1 for _ in _some(1)) == 20_000
