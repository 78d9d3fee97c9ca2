"""What a comparison leaves before its limit, in numbers and in words, and which of several governs."""

from __future__ import annotations

import math
from enum import Enum
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import Location, replace
from speclint.quantities import read
from speclint.rules import Grade, Judgement, Sheet
from speclint.rules.comparisons import _name_of, _used_of_band, _written_alike
from speclint.rules.judgement import Amount, NotApplicable, NotAssessed, NotCovered, RuleEnded, as_it_is
from speclint.rules.margin import margin_above, margin_below, margin_of_stay, margins_within
from tests.rules.test_comparisons import sheet


@pytest.mark.parametrize(
    ("value", "limit", "left"),
    [
        (75.0, 100.0, 0.25),
        (150.0, 100.0, -0.5),
        (-50.0, 100.0, 1.5),
        (-3.0, -2.0, 0.5),
        (-1.0, -2.0, -0.5),
        (0.5, 0.0, -0.5),
    ],
)
def test_what_is_left_below_a_limit_and_above_it(value: float, limit: float, left: float) -> None:
    assert margin_below(value, limit) == pytest.approx(left)
    assert margin_above(value, limit) == pytest.approx(-left)


@pytest.mark.parametrize(
    ("value", "low", "high", "both"),
    [
        (50.0, 40.0, 100.0, (0.5, 0.25)),
        (120.0, 40.0, 100.0, (-0.2, 2.0)),
        (10.0, -10.0, 30.0, (1.0, 1.0)),
        (25.0, -10.0, 30.0, (0.25, 1.75)),
        (-15.0, -10.0, 30.0, (2.25, -0.25)),
        (10.0, 0.0, 40.0, (1.5, 0.5)),
        (0.5, 0.0, 0.0, (-0.5, 0.5)),
    ],
)
def test_what_is_left_in_a_band(value: float, low: float, high: float, both: tuple[float, float]) -> None:
    assert margins_within(value, low, high) == pytest.approx(both)


@pytest.mark.parametrize(
    ("left", "cold", "share"), [(0.25, 1.0, 0.25), (-0.5, 2.0, -0.25), (0.5, -2.0, 0.5), (0.5, 0.0, 0.5)]
)
def test_what_stays_as_a_share_of_what_was_there(left: float, cold: float, share: float) -> None:
    assert margin_of_stay(left, cold) == pytest.approx(share)


def test_of_two_gaps_where_something_must_stay_the_greater_is_the_worse() -> None:
    """Heat takes 0.1 of what there is: of -0.1 it leaves -0.2, of -0.2 it leaves -0.3."""
    assert margin_of_stay(-0.3, -0.2) < margin_of_stay(-0.2, -0.1) < margin_of_stay(-0.1, 0.0)


@pytest.mark.parametrize(
    ("value", "low", "high", "used"),
    [
        (50.0, 40.0, 100.0, 0.8),
        (80.0, 40.0, 100.0, 0.8),
        (20.0, 40.0, 100.0, 2.0),
        (0.0, -10.0, 30.0, 0.5),
        (40.0, -10.0, 30.0, 1.5),
        (0.0, 0.0, 0.0, 0.0),
        (1.0, 0.0, 0.0, math.inf),
    ],
)
def test_what_is_used_of_a_band(value: float, low: float, high: float, used: float) -> None:
    assert _used_of_band(value, low, high) == pytest.approx(used)


def taken(page: Sheet, *texts: str) -> list[float]:
    """Lengths as numbers, each with a name."""
    return [
        page.take_nominal(f"x_{number}", read(text, "length", "any"), f"Size {number}")
        for number, text in enumerate(texts)
    ]


def test_every_comparison_has_its_margin_and_its_words() -> None:
    page = sheet(record=True)
    small, great, middle = taken(page, "20 mm", "40 mm", "30 mm")
    below = page.at_most(small, great)
    assert (below.margins, below.utilisation) == ((pytest.approx(0.5),), pytest.approx(0.5))
    assert below.says == "size 0 20 mm ≤ 40 mm size 1"
    above = page.at_least(small, great)
    assert (above.margins, above.utilisation) == ((pytest.approx(-0.5),), pytest.approx(2.0))
    assert above.says == "size 0 20 mm < 40 mm size 1"
    inside = page.within(middle, small, great)
    assert inside.margins == pytest.approx((0.25, 0.5))
    assert inside.margin == pytest.approx(0.25)
    alike = page.equals(small, middle, 0.02)
    assert (alike.margins, alike.compared) == ((pytest.approx(0.5),), "=")
    left = page.stays(small, great)
    assert left.says == "size 0 20 mm left of 40 mm cold: 50% of it is used"
    assert (left.margins, left.compared) == ((pytest.approx(0.5),), "≥")
    assert page.stays(small, great, strictly=True).compared == ">"
    assert page.stays(small, 0.0).says == "size 0 20 mm left"
    (less,) = taken(below_nothing := sheet(record=True), "-20 mm")
    assert below_nothing.stays(less, 0.040).says == "size 0 −20 mm: nothing left of 40 mm cold"
    assert below_nothing.stays(less, 0.0).says == "size 0 −20 mm: nothing left"
    told = page.reported(middle, "so much is there")
    assert (told.holds, told.says, told.compared) == (True, "so much is there: 30 mm", "reported")
    where = Location("a.toml", 1, "x")
    assert page.states(False, "no", where=where) == Judgement(False, "no", where=where)


def test_a_sheet_that_does_not_record_says_nothing_and_judges_the_same() -> None:
    plain = sheet()
    assert plain.at_most(1.0, 2.0).says == plain.within(1.0, 0.5, 2.0).says == ""
    assert plain.at_most(1.0, 2.0).utilisation == 0.5
    assert plain.reported(1.0, "x").holds


@pytest.mark.parametrize(("compared", "failing"), [("≤", ">"), ("≥", "<"), ("=", "≠"), (">", "≤")])
def test_the_sign_between_two_values(compared: str, failing: str) -> None:
    assert as_it_is(compared, holds=True) == compared
    assert as_it_is(compared, holds=False) == failing


def judged(
    used: float | None, *, holds: bool = True, grade: Grade | None = None, says: str = ""
) -> Judgement:
    margins = () if used is None else (1.0 - used,)
    return Judgement(holds, says, used, grade=grade, margins=margins)


HELD, MORE = judged(0.5), judged(0.75)
FAILED = judged(1.2, holds=False)
GRAVE = judged(1.1, holds=False, grade=Grade.HOLD)


@pytest.mark.parametrize(
    ("some", "governs"),
    [
        ((HELD, MORE), MORE),
        ((MORE, FAILED), FAILED),
        ((FAILED, GRAVE), GRAVE),  # the rule's own grade is an observation
        ((FAILED, judged(1.3, holds=False)), judged(1.3, holds=False)),
        ((HELD, judged(None)), HELD),
        ((judged(math.inf, holds=False), FAILED), judged(math.inf, holds=False)),
        ((judged(2.0, holds=True), FAILED), FAILED),
    ],
)
def test_the_gravest_of_several_governs(some: tuple[Judgement, ...], governs: Judgement) -> None:
    for order in (some, some[::-1]):
        found = sheet().worst(*order)
        assert replace(found, parts=()) == governs
        assert found.parts == order
    assert sheet().worst(HELD) is HELD


def test_of_two_that_use_as_much_the_one_with_less_left_governs() -> None:
    one, other = (replace(judged(0.0), margins=(left,)) for left in (1.5, 1.2))
    assert sheet().worst(one, other).margins == (1.2,)


def test_what_ended_beside_is_kept() -> None:
    wanting = NotAssessed("a")
    first = replace(HELD, ended=(wanting,))
    assert sheet().worst(first, MORE).ended == (wanting,)


ENDS: dict[str, RuleEnded] = {
    "wanting": NotAssessed("a"),
    "idle": NotApplicable("b"),
    "open": NotCovered("c"),
}


def each(*names: str, record: bool = False) -> Judgement:
    """Items that end, or are held with some used."""

    def judge(name: str) -> Judgement:
        if name in ENDS:
            raise ENDS[name]
        return judged(float(name), says=name)

    return sheet(record=record).each(list(names), judge)


def test_each_item_is_judged_by_itself() -> None:
    found = each("0.5", "wanting", "0.75", "idle", record=True)
    assert (found.utilisation, found.of) == (0.75, "0.75")
    assert [one.of for one in found.parts] == ["0.5", "0.75"]
    assert found.ended == (ENDS["wanting"],)
    assert each("0.5").ended == ()
    assert each("0.5").of == ""


@pytest.mark.parametrize(
    ("names", "gravest", "beside"),
    [
        (("idle",), "idle", ()),
        (("idle", "wanting"), "wanting", ()),
        (("wanting", "open"), "open", ("wanting",)),
        (("wanting", "idle", "open"), "open", ("wanting",)),
    ],
)
def test_where_none_could_be_judged_the_gravest_reason_is_told(
    names: tuple[str, ...], gravest: str, beside: tuple[str, ...]
) -> None:
    with pytest.raises(RuleEnded) as ended:
        each(*names)
    assert ended.value is ENDS[gravest]
    assert ended.value.beside == tuple(ENDS[name] for name in beside)


def test_without_an_item_there_is_nothing_to_judge() -> None:
    with pytest.raises(ValueError, match="there is no item to be judged"):
        each()


class Side(Enum):
    """A side."""

    LEFT = "left"


@pytest.mark.parametrize(
    ("item", "name"),
    [
        (("bore left", 3), "bore left"),
        ((3, "x"), ""),
        (Side.LEFT, "left"),
        ("a word", "a word"),
        (SimpleNamespace(where=Location("a", 1, "bores.left"), id="part"), "bores.left"),
        (SimpleNamespace(where=Location("a", 1, ""), id="part"), "part"),
        (SimpleNamespace(id="part"), "part"),
        (3, ""),
        ((), ""),
    ],
)
def test_what_an_item_is_called(item: Any, name: str) -> None:
    assert _name_of(item) == name


def test_two_amounts_are_written_in_the_unit_of_the_one_that_a_spec_wrote() -> None:
    inch, plain, force = Amount(0.0254, "m", written_in="in"), Amount(0.03, "m"), Amount(1.0, "N")
    assert _written_alike(inch, plain) == (inch, replace(plain, written_in="in"))
    assert _written_alike(plain, inch) == (replace(plain, written_in="in"), inch)
    millimetre = replace(plain, written_in="mm")
    assert _written_alike(inch, millimetre) == (inch, millimetre)
    assert _written_alike(inch, force) == (inch, force)
    assert _written_alike(None, inch) == (None, inch)
    assert _written_alike(inch, None) == (inch, None)


def test_a_length_in_a_sentence() -> None:
    for record in (True, False):
        page = sheet(record=record)
        assert page.millimetres(0.0123456) == "12.346 mm"
        assert page.millimetres(0.0123456, ".1f") == "12.3 mm"
        assert page.millimetres(0.001, ".0f", 0.002) == "1 to 2 mm"


def test_a_judgement_of_several_is_changed_with_its_parts() -> None:
    whole = replace(FAILED, says="x", parts=(replace(HELD, says="a"), replace(FAILED, says="b", of="own")))
    assert {one.grade for one in (*whole.graded(Grade.QUERY).parts, whole.graded(Grade.QUERY))} == {
        Grade.QUERY
    }
    where = Location("a", 1, "x")
    assert {one.where for one in (*whole.pointing_at(where).parts, whole.pointing_at(where))} == {where}
    named = whole.of_item("item")
    assert (named.of, [one.of for one in named.parts]) == ("item", ["item", "own"])
    assert whole.saying("y").says == "y"
    assert replace(whole, brief="z").saying("y").brief == ""
    other = whole.else_says("it is wrong")
    assert (other.wrong, [one.wrong for one in other.parts]) == ("it is wrong", ["it is wrong"] * 2)
    assert other.else_says("again").wrong == "it is wrong"
    silent = replace(whole, says="")
    assert silent.else_says("x") is silent
    assert whole.every == whole.parts
    assert HELD.every == (HELD,)
    assert judged(None).margin is None
