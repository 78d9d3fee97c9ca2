"""What the sheets of a run consult: limits as they are in force, figures looked up once, and what each check asked."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Limit, rule
from speclint.errors import Location
from speclint.handbook.materials import material
from speclint.handbook.tables import Reading
from speclint.quantities import read
from speclint.repository import Design, Settings
from speclint.rules import Context, Corner
from speclint.rules.consulted import Consulted, class_in_full
from speclint.rules.context import _no_concession, _no_drawing
from speclint.rules.likeness import Renaming
from speclint.rules.no_result import unworkable
from speclint.specs import Component, Estimate, FromEvents, NotStated, Stated


@rule(
    "test.limits",
    title="t",
    on=Component,
    grade=Grade.QUERY,
    cites=[FIRST_PRINCIPLES],
    why="w",
    leaves_out="l",
    limits=[
        Limit("most", "1 mm", "length", COMMON_PRACTICE),
        Limit("air", "20 °C", "temperature", COMMON_PRACTICE, setting="boiler_house"),  # type: ignore[arg-type]
    ],
)
def _limited(component: Component, sheet: Any) -> Any:  # noqa: ARG001 - the form of a rule
    raise AssertionError("never run")


class Told(Settings):
    """Settings that state one temperature."""

    def measured(self, setting: Any) -> Any:
        return read("30 °C", "temperature") if setting == "boiler_house" else None


def context(settings: Settings | None = None, **limits: str) -> Context:
    part = Component(id="part")
    design = Design(
        Path(), settings or Settings(), {"part": part}, {"part": "part.toml"}, frozenset({"part"})
    )
    own = {("test.limits", name): read(text, "length") for name, text in limits.items()}
    return Context(design, material, own)


def test_a_limit_is_that_of_the_repository_or_the_rule_s_own() -> None:
    declared, measure, own = context().limit(_limited, "most")
    assert (declared.name, measure.nominal, own) == ("most", 0.001, False)
    declared, measure, own = context(most="2 mm").limit(_limited, "most")
    assert (declared.name, measure.nominal, own) == ("most", 0.002, True)


def test_a_limit_that_names_a_setting_is_what_that_states() -> None:
    told = context(Told())
    _, measure, own = told.limit(_limited, "air")
    assert (measure.text, own) == ("30 °C", True)
    _, measure, own = told.limit(_limited, "most")
    assert (measure.text, own) == ("1 mm", False)


def test_a_limit_is_read_once() -> None:
    one = context()
    assert one.limit(_limited, "most") is one.limit(_limited, "most")


def test_a_figure_is_looked_up_once_for_the_same_arguments_until_the_next_check() -> None:
    asked: list[Any] = []

    def figure(**at: Any) -> Reading:
        asked.append(at)
        return Reading.exact("a figure", 1.0, "", COMMON_PRACTICE)

    one = context()
    for at in ({"a": 1}, {"a": 1}, {"b": 1}, {"a": 2}, {"a": [1]}, {"a": [1]}):
        one.look_up(figure, at)
    assert asked == [{"a": 1}, {"b": 1}, {"a": 2}, {"a": [1]}, {"a": [1]}]  # a list cannot be remembered
    one.enclosed["x"] = one.steady["x"] = 1
    one.asked.followed.add("rack")
    one.begin()
    one.look_up(figure, {"a": 1})
    assert len(asked) == 6
    assert (one.enclosed, one.steady, one.asked.followed) == ({}, {}, set())


def test_what_is_asked_within_is_told_apart_and_was_asked_by_whoever_began_before() -> None:
    one = context()
    outer = one.consulted
    outer.specs.add("first")
    with one.asking() as inner:
        assert one.consulted is inner
        assert inner.specs == set()
        inner.specs.add("second")
    assert one.consulted is outer
    assert outer.specs == {"first", "second"}


def test_what_does_not_hang_on_the_check_is_worked_once_and_asked_by_each() -> None:
    """What does not last is given to that check alone."""
    one, where = context(), Location("a.toml", 1, "x")
    worked: list[int] = []

    def work() -> int:
        worked.append(1)
        one.consulted.specs.add("rack")
        one.asked.values[id(where)] = where
        return len(worked)

    assert one.worked_once("brief", work, lasts=lambda _: False) == 1
    assert one.worked_once("brief", work, lasts=lambda found: found == 2) == 2
    one.begin()
    one.consulted = Consulted()
    assert one.worked_once("brief", work) == 2
    assert len(worked) == 2
    assert one.consulted.specs == {"rack"}
    assert one.asked.values == {id(where): where}


def test_where_nothing_is_conceded_and_no_drawing_is_named() -> None:
    part: Any = object()
    assert _no_concession(part, _limited) == ()
    _no_drawing(part)
    assert context().drawing(part) is None


def test_what_was_consulted_of_two_is_that_of_both() -> None:
    one = Consulted({"a"}, {("b", "title")}, {("c", "k")}, {("f", "a", "x")}, {("unused", "")})
    other = Consulted({"d"}, {("e", "title")}, {("g", "k")}, {("f", "d", "x")}, {("alike", "a")})
    assert one.ids == {"a", "b", "c"}
    one.add(other)
    assert one == Consulted(
        {"a", "d"},
        {("b", "title"), ("e", "title")},
        {("c", "k"), ("g", "k")},
        {("f", "a", "x"), ("f", "d", "x")},
        {("unused", ""), ("alike", "a")},
    )
    assert one.ids == {"a", "b", "c", "d", "e", "g"}
    assert class_in_full(Component) == f"{Component.__module__}:Component"


def test_a_corner_is_at_the_side_that_is_chosen_or_low() -> None:
    corner = Corner({"a": True}, {1: 0.25})
    assert [corner.pick(name, 1.0, 2.0) for name in "ab"] == [2.0, 1.0]
    assert corner.pick("exact", 1.5, 1.5) == 1.5
    assert corner.met == {"a": True, "b": False}
    assert [corner.next_place() for _ in range(3)] == [None, 0.25, None]
    corner.note_place(2.0, 4.0, 2.5)
    corner.note_place(2.0, 2.0, 2.0)
    assert corner.shares == [0.25, 0.0]


def test_names_are_replaced_by_numbers_in_the_order_in_which_they_are_met() -> None:
    names = Renaming({"tube", "rack", "tube-2"})
    assert names.part("rack") == "part 1"
    assert [names.part("tube"), names.part("rack")] == ["part 2", "part 1"]
    assert names.met == ("rack", "tube")
    assert [names.place("left"), names.place("right"), names.place("left")] == [
        "place 1",
        "place 2",
        "place 1",
    ]
    assert names.key("bores.left.tube-2") == "bores.place 1.part 3"
    assert names.key("bores.middle") == "bores.middle"
    assert names.text("tube, rack: tube-2 (tube) tubes left") == "part 2, part 1: part 3 (part 2) tubes left"


@pytest.mark.parametrize("kind", [FromEvents, Estimate])
def test_a_value_that_cannot_be_worked_is_missing_and_says_why(kind: Any) -> None:
    where = Location("duty.toml", 3, "cases.running.exhaust_temperature")
    found = unworkable(kind(where, "no gear is drawn"))
    assert found is not None
    assert found.says == "cases.running.exhaust_temperature cannot be worked: no gear is drawn"
    assert found.where == where
    assert unworkable(kind(where)) is None
    assert unworkable(NotStated(where)) is None
    assert unworkable(Stated("x", where)) is None
