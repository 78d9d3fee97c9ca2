"""Sheet.aside: a long calculation on a sheet of its own, worked once for all corners of a check."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.equations import FIRST_PRINCIPLES
from speclint.errors import Location, replace
from speclint.handbook.materials import material
from speclint.quantities import Measure, read
from speclint.repository import Design, Settings
from speclint.rules import Context, Corner, Grade, Sheet, rule
from speclint.specs import Component

_PLACE = Location("part.toml", 1, "length")


@rule(
    "test.aside",
    title="t",
    on=Component,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES],
    why="w",
    leaves_out="l",
)
def _rule(component: Component, sheet: Sheet) -> object:  # noqa: ARG001 - the form of a rule
    raise AssertionError("never run")


def _length(text: str) -> Measure:
    return replace(read(text, "length"), where=_PLACE)


class _Work:
    """Twice a length, and how often it was worked."""

    def __init__(self) -> None:
        self.times = 0

    def __call__(self, measure: Measure, sheet: Sheet) -> float:
        self.times += 1
        return 2 * sheet.take_nominal("L", measure)


def _context() -> Context:
    part = Component(id="part")
    design = Design(Path(), Settings(), {"part": part}, {"part": "part.toml"}, frozenset({"part"}))
    return Context(design, material, {})


def _sheet(context: Context, *, record: bool) -> Sheet:
    part = context.design.specs["part"]
    assert isinstance(part, Component)
    return Sheet(_rule, part, context, Corner(), record=record)


def test_it_is_worked_once_for_all_corners() -> None:
    context, work = _context(), _Work()
    for record in (False, False, True):
        assert _sheet(context, record=record).aside("twice", work, _length("25 mm")) == 0.050
    assert work.times == 1


def test_the_sheet_shows_none_of_its_steps_and_rests_on_what_went_in() -> None:
    bases = []
    for text in ("25 mm", "26 mm", "25.0 mm"):
        sheet = _sheet(_context(), record=True)
        sheet.aside("twice", _Work(), _length(text))
        assert sheet.record.steps == []
        assert set(sheet.record.basis) == {"twice"}
        bases.append(sheet.record.basis["twice"])
    assert bases[0] != bases[1]
    assert bases[0] == bases[2]


def test_a_value_that_is_moved_to_seek_a_remedy_is_taken_as_moved() -> None:
    """Worked anew where the calculation took the place that is moved, and taken over where it did not."""
    context, work = _context(), _Work()
    _sheet(context, record=False).aside("twice", work, _length("25 mm"))
    elsewhere = replace(context, moved={Location("part.toml", 2, "width"): 0.001})
    assert _sheet(elsewhere, record=False).aside("twice", work, _length("25 mm")) == 0.050
    assert work.times == 1
    moved = replace(context, moved={_PLACE: 0.001})
    found = _sheet(moved, record=False).aside("twice", work, _length("25 mm"))
    assert found == pytest.approx(0.052, rel=1e-12)
    assert _sheet(context, record=False).aside("twice", work, _length("25 mm")) == 0.050
    assert work.times == 2


def test_each_part_that_it_is_about_has_its_own() -> None:
    """A remedy is tried on several parts, one after the other."""
    context = _context()
    one, other = Component(id="one"), Component(id="another")

    def letters(part: Component, _: Sheet) -> int:
        return len(part.id)

    found = [_sheet(context, record=False).aside("letters", letters, part) for part in (one, other, one)]
    assert found == [3, 7, 3]


def test_what_another_calculation_took_for_it_counts_as_its_own() -> None:
    """A calculation aside that rests on another aside is worked anew where the other one is."""
    context, work = _context(), _Work()

    def through(measure: Measure, sheet: Sheet) -> float:
        return sheet.aside("twice", work, measure) + 1.0

    _sheet(context, record=False).aside("and one", through, _length("25 mm"))
    moved = replace(context, moved={_PLACE: 0.001})
    found = _sheet(moved, record=False).aside("and one", through, _length("25 mm"))
    assert found == pytest.approx(1.052, rel=1e-12)


def test_each_value_that_is_tried_is_worked_once_for_all_corners() -> None:
    """Whether the value as it stands was worked before or not."""
    context, work = _context(), _Work()
    trials = [replace(context, moved={_PLACE: by}) for by in (0.001, 0.002)]
    for trial, size in (*zip(trials, (0.052, 0.054), strict=True), *zip(trials, (0.052, 0.054), strict=True)):
        found = _sheet(trial, record=False).aside("twice", work, _length("25 mm"))
        assert found == pytest.approx(size, rel=1e-12)
    assert work.times == 2
    assert _sheet(context, record=False).aside("twice", work, _length("25 mm")) == 0.050
    assert work.times == 3


def test_a_word_that_is_tried_in_place_of_another_is_worked_by_itself() -> None:
    context, work = _context(), _Work()
    for word in ("one", "one", "two"):
        tried = replace(context, worded={_PLACE: word})
        assert _sheet(tried, record=False).aside("twice", work, _length("25 mm")) == 0.050
    assert work.times == 2


def test_what_is_asked_aside_was_asked_by_the_check() -> None:
    """So a part alike is compared by it too."""
    context, measure = _context(), _length("25 mm")
    _sheet(context, record=False).aside("twice", _Work(), measure)
    assert id(measure.where) in context.asked.values


def test_two_calculations_of_one_check_have_two_names() -> None:
    sheet = _sheet(_context(), record=True)
    assert sheet.aside("twice", _Work(), _length("25 mm")) == 0.050
    assert sheet.aside("twice of another", _Work(), _length("30 mm")) == 0.060
