"""Items of a rule, each judged by itself: one that fails is found beside one that is not stated."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.checking import Check
from speclint.rules import RuleEnded
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, RACK, Rack

Judge = Callable[[str, Any, Sheet], Judgement]


def wide_enough(_: str, slot: Any, sheet: Sheet) -> Judgement:
    return sheet.at_least(sheet.take("w", slot.width), sheet.limit("least"))


@pytest.fixture
def judged(tmp_path: Path) -> Callable[..., Check]:
    """The check of a rule that goes over the slots of a rack, each to be 4.5 mm wide."""

    def check(widths: dict[str, str], judge: Judge = wide_enough, *, runs: bool = True) -> Check:
        @rule(
            "rack.slots",
            title="t",
            on=Rack,
            grade=Grade.HOLD,
            cites=[FIRST_PRINCIPLES],
            why="w",
            leaves_out="l",
            limits=[Limit("least", "4.5 mm", "length", COMMON_PRACTICE, "least width")],
        )
        def made(rack: Rack, sheet: Sheet) -> Judgement:
            return sheet.each(rack.slots.items(), lambda item: judge(*item, sheet))

        slots = "".join(f"[slots.{name}]\n{width}\n" for name, width in widths.items())
        files = {**FILES, "rack.toml": RACK + slots}
        return DesignFolder(tmp_path, tubes.tubes(made)).write(files).only("rack.slots", runs=runs)

    return check


WIDE, NARROW, NARROWER = 'width = "5 mm"', 'width = "4 mm"', 'width = "2..3 mm"'


def test_every_item_that_fails_is_listed_the_worst_first(judged: Callable[..., Check]) -> None:
    """4.5/2 and 4.5/4 of the limit are used."""
    found = judged({"a": NARROW, "b": WIDE, "c": NARROWER})
    assert (found.outcome, found.grade, found.utilisation) == ("finding", Grade.HOLD, pytest.approx(2.25))
    assert [one.of for one in found.failing] == ["c", "a"]
    assert found.missing == ()
    assert [one.of for one in found.also_failing] == ["a"]


def test_an_item_that_is_not_stated_hides_none_that_fails(judged: Callable[..., Check]) -> None:
    for order in ("a", "z"):
        found = judged({order: "", "m": NARROW})
        assert (found.outcome, found.grade) == ("finding", Grade.HOLD)
        assert [one.of for one in found.failing] == ["m"]
        assert found.missing == (f"slots.{order}.width is not stated in rack.toml",)


def test_items_not_stated_beside_those_that_hold_are_not_assessed(judged: Callable[..., Check]) -> None:
    found = judged({"a": "", "b": WIDE, "c": ""})
    assert (found.outcome, found.grade, found.judgement) == ("not assessed", Grade.HOLD, None)
    assert found.missing == tuple(f"slots.{name}.width is not stated in rack.toml" for name in "ac")
    assert found.says == found.missing[0]


def test_items_of_which_none_is_stated_are_all_named(judged: Callable[..., Check]) -> None:
    found = judged({"a": "", "b": ""})
    assert found.outcome == "not assessed"
    assert found.missing == tuple(f"slots.{name}.width is not stated in rack.toml" for name in "ab")


def test_an_item_that_no_source_covers_is_a_hold_beside_those_that_hold(
    judged: Callable[..., Check],
) -> None:
    def judge(name: str, slot: Any, sheet: Sheet) -> Judgement:
        if name == "b":
            raise sheet.not_covered("b is beyond the sources")
        return wide_enough(name, slot, sheet)

    found = judged({"a": WIDE, "b": WIDE, "c": ""}, judge)
    assert (found.outcome, found.grade, found.says) == ("finding", Grade.HOLD, "b is beyond the sources")
    assert found.missing == ("slots.c.width is not stated in rack.toml",)
    assert judged({"a": NARROW, "b": WIDE}, judge).grade is Grade.HOLD


def test_an_item_that_the_rule_does_not_concern_is_left_out(judged: Callable[..., Check]) -> None:
    def judge(name: str, slot: Any, sheet: Sheet) -> Judgement:
        if name == "b":
            raise sheet.not_applicable("b does not count")
        return wide_enough(name, slot, sheet)

    assert judged({"a": WIDE, "b": NARROW}, judge).outcome == "conforms"
    assert judged({"b": NARROW}, judge).outcome == "not applicable"
    assert judged({"a": "", "b": NARROW}, judge).outcome == "not assessed"


def test_no_item_at_all_is_an_error_of_the_rule(judged: Callable[..., Check]) -> None:
    assert "there is no item to be judged" in judged({}, runs=False).could_not_run


def test_reasons_travel_between_processes() -> None:
    import pickle

    why = RuleEnded("not stated")
    why.beside = (RuleEnded("nor this"),)
    again = pickle.loads(pickle.dumps(why))
    assert (again.says, again.beside[0].says) == ("not stated", "nor this")
