"""Values that a load case asks to have worked: once for each, placed where they are asked for, and why they cannot be.

What works them is put in their place here: a number in the place of the cycle in a cylinder.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from speclint import facts
from speclint.checking.worked_case import WorkedCase, worked_case
from speclint.errors import Location, replace
from speclint.quantities import Measure, read
from speclint.rules import Context, NotAssessed
from speclint.specs import Component, Estimate, FromEvents, LoadCase, Tie
from tests.rules.test_placing import ALL, PLAIN, Bench
from tests.tubes import DUTY

RUNNING = """
exhaust_temperature = { from = "events" }
[cases.running.temperatures]
tube = "estimate"
rack = "tube + 20 K"
wagon = "120 °C"
"""
#: The tube that is checked, another of the same rack, and what is asked.
Work = Callable[[str, Component, Any, Any], Any]


class Worked:
    """The load cases of a design, and what was asked to be worked: of what, and near which component."""

    def __init__(self, folder: Path) -> None:
        self.bench = Bench(folder, {**ALL, "duty.toml": DUTY + RUNNING})
        self.asked: list[tuple[str, str]] = []
        self.answer: Work = lambda *_: read("114 °C", "temperature")

    @property
    def context(self) -> Context:
        return self.bench.context

    def case(self, component: str = "tube", context: Context | None = None, name: str = "running") -> Any:
        duty: Any = self.context.design.specs["duty"]
        return worked_case(duty.cases[name], PLAIN, self.bench.part(component), context or self.context)


@pytest.fixture
def worked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Worked:
    found = Worked(tmp_path)

    def from_events(name: str, near: Component, case: Any, sheet: Any) -> Any:
        found.asked.append((name, near.id))
        return found.answer(name, near, case, sheet)

    def estimated(_value: Any, part: Component | None, near: Component, case: Any, sheet: Any) -> Any:
        name = f"temperature of {part.id if part else 'a kind'}"
        found.asked.append((name, near.id))
        return found.answer(name, near, case, sheet)

    monkeypatch.setattr(facts, "value_from_events", from_events)
    monkeypatch.setattr(facts, "estimated_temperature", estimated)
    return found


def test_a_case_that_asks_for_nothing_or_is_not_stated_is_itself(worked: Worked) -> None:
    wanting = NotAssessed("the case is not stated")
    assert worked_case(wanting, PLAIN, worked.bench.part("tube"), worked.context) is wanting
    assert not isinstance(worked.case(name="starting"), WorkedCase)
    case = worked.case()
    assert isinstance(case, WorkedCase)
    assert isinstance(case, LoadCase)
    plain: Any = worked.context.design.specs["duty"]
    assert case.live_pressure is plain.cases["running"].live_pressure
    assert worked.asked == []


def test_a_value_is_worked_when_it_is_first_asked_for_and_stands_at_its_place(worked: Worked) -> None:
    case = worked.case()
    found = case.exhaust_temperature
    assert isinstance(found, Measure)
    assert found.nominal == pytest.approx(387.15)
    assert found.where.key == "cases.running.exhaust_temperature"
    assert found.where.file == "duty.toml"
    assert found.worked.startswith("worked from ")
    assert len(found.worked) == len("worked from ") + 16
    assert case.exhaust_temperature is found
    assert worked.asked == [("exhaust_temperature", "tube")]


def test_what_it_is_worked_from_makes_its_digest(worked: Worked) -> None:
    def answer(_name: str, near: Any, _case: Any, sheet: Any) -> Any:
        sheet.take("d", near.bore)
        return read("114 °C", "temperature")

    plain = worked.case("second").exhaust_temperature.worked
    worked.answer = answer
    worked.context.worked.clear()
    assert worked.case().exhaust_temperature.worked != plain


def test_it_is_worked_once_for_each_component_that_it_is_worked_near(worked: Worked) -> None:
    first, again = worked.case().exhaust_temperature, worked.case().exhaust_temperature
    assert again == first
    assert worked.case("second").exhaust_temperature.worked == first.worked
    assert worked.asked == [("exhaust_temperature", "tube"), ("exhaust_temperature", "second")]
    assert worked.context.asked.everything
    assert "tube" in worked.context.consulted.specs


@pytest.mark.parametrize("change", ["moved", "worded"])
def test_in_the_search_for_a_remedy_it_is_worked_anew(worked: Worked, change: str) -> None:
    first = worked.case().exhaust_temperature
    where = Location("tube.toml", 4, "bore")
    moved = (
        replace(worked.context, moved={where: 0.001})
        if change == "moved"
        else replace(worked.context, worded={where: "x"})
    )
    for _ in range(2):
        assert worked.case(context=moved).exhaust_temperature.nominal == first.nominal
    assert worked.asked == [("exhaust_temperature", "tube")] * 3


def test_what_cannot_be_worked_says_why_and_is_tried_again_for_the_next_check(worked: Worked) -> None:
    def answer(*_: Any) -> Any:
        raise NotAssessed("no gear is drawn")

    worked.answer = answer
    case = worked.case()
    for _ in range(2):
        found = case.exhaust_temperature
        assert isinstance(found, FromEvents)
        assert (found.why, found.where.key) == ("no gear is drawn", "cases.running.exhaust_temperature")
    assert len(worked.asked) == 1
    assert isinstance(worked.case().exhaust_temperature, FromEvents)
    assert len(worked.asked) == 2


def test_a_value_that_rests_on_itself_says_so(worked: Worked) -> None:
    seen: list[Any] = []

    def answer(_name: str, _near: Any, case: Any, _sheet: Any) -> Any:
        seen.append(case.exhaust_temperature)
        raise NotAssessed(seen[-1].why)

    worked.answer = answer
    found = worked.case().exhaust_temperature
    assert [one.why for one in seen] == ["it rests on itself"]
    assert found.why == "it rests on itself"


def test_the_temperature_of_a_part_is_estimated_stated_or_tied(worked: Worked) -> None:
    """The rack is 20 K hotter than the tube, of which it is estimated; that of the wagon is stated."""
    case, part = worked.case(), worked.bench.part
    tube = case.temperature_of(part("tube"))
    assert isinstance(tube, Measure)
    assert tube.where.key == "cases.running.temperatures.tube"
    assert tube.worked
    rack = case.temperature_of(part("rack"))
    assert isinstance(rack, Tie)
    assert isinstance(rack.base, Measure)
    assert rack.base.nominal == pytest.approx(387.15)
    assert rack.base.where.key == "cases.running.temperatures.tube"
    assert rack.difference.nominal == pytest.approx(20.0)
    wagon = case.temperature_of(part("wagon"))
    assert (wagon.nominal, wagon.worked) == (pytest.approx(393.15), "")
    assert worked.asked == [("temperature of tube", "tube"), ("temperature of a kind", "tube")]
    assert case.temperature_named("wagon") == wagon
    assert case.temperature_named("tube").nominal == pytest.approx(387.15)
    assert len(worked.asked) == 2  # the second is that of the name, which the rack is tied to


def test_a_temperature_that_cannot_be_estimated_says_why(worked: Worked) -> None:
    def answer(*_: Any) -> Any:
        raise NotAssessed("no steam is near")

    worked.answer = answer
    found = worked.case().temperature_of(worked.bench.part("tube"))
    assert isinstance(found, Estimate)
    assert found.why == "no steam is near"


def test_a_temperature_that_is_worked_as_tied_to_another_stands_at_its_place(worked: Worked) -> None:
    tie = Tie(read("100 °C", "temperature"), read("5 K", "temperature difference"))
    worked.answer = lambda *_: tie
    found = worked.case().temperature_of(worked.bench.part("tube"))
    assert isinstance(found, Tie)
    assert found.where.key == "cases.running.temperatures.tube"
    assert (found.base, found.difference) == (tie.base, tie.difference)
