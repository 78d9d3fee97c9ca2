"""What a sheet writes down: its steps, what the result rests on, and how a place is named."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Limit, Source, formula
from speclint.equations import Metres
from speclint.errors import NOWHERE, Location, replace
from speclint.handbook.tables import Reading
from speclint.quantities import Measure, read
from speclint.rules.record import STATED, Record, in_words, stated_as
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.tubes import FILES, TUBE

NUMBERED = TUBE + 'drawing = "T-12"\nrevision = "B"\n'


def record(folder: Path, *, units: str = "", of: str = "tube") -> Record:
    settings = SETTINGS.replace("[works]", f'[works]\nunits = "{units}"') if units else SETTINGS
    shop = DesignFolder(folder, tubes.tubes()).write({**FILES, "tube.toml": NUMBERED}, settings=settings)
    design = shop.assess().design
    assert design is not None
    return Record(design, of)


@pytest.fixture
def page(tmp_path: Path) -> Record:
    return record(tmp_path)


def value(page: Record, spec: str, key: str) -> Any:
    return dict(page._design.specs[spec].at_keys())[key]


def test_what_a_result_rests_on_is_kept_exactly_and_in_words(page: Record) -> None:
    page.note("taken tube bore", "0.0995 0.1005", "tube bore", "100 mm")
    page.note("setting stage", "draft")
    assert page.basis == {"taken tube bore": "0.0995 0.1005", "setting stage": "draft"}
    assert page.rests_on == {"tube bore": "100 mm", "setting stage": "draft"}
    page.note("setting stage", "draft")
    assert list(page.basis) == ["taken tube bore", "setting stage"]


def test_another_value_of_the_same_name_has_a_name_of_its_own(page: Record) -> None:
    for shown in ("1", "2", "2", "3"):
        page.note("look-up x", shown)
    assert page.basis == {"look-up x": "1", "look-up x′": "2", "look-up x′′": "3"}
    assert page.rests_on == {"look-up x": "1", "look-up x′": "2", "look-up x′′": "3"}


@pytest.mark.parametrize("order", [(STATED, "100 mm"), ("100 mm", STATED)])
def test_a_value_says_more_than_that_it_is_stated(page: Record, order: tuple[str, str]) -> None:
    for number, shown in enumerate(order):
        page.note(f"name {number}", "x", "tube bore", shown)
    assert page.rests_on == {"tube bore": "100 mm"}


def test_that_something_is_not_stated_is_another_word(page: Record) -> None:
    page.note("a", "x", "tube bore", "not stated")
    page.note("b", "x", "tube bore", "100 mm")
    assert page.rests_on == {"tube bore": "not stated", "tube bore′": "100 mm"}


def test_a_place_is_named_by_its_component_and_key(page: Record) -> None:
    assert page.place(Location("rack.toml", 3, "hole")) == "rack hole"
    assert page.place(Location("rack.toml", 3, "", "tube"), "d") == "tube d"
    assert page.place(Location("rack.toml", 3, "")) == "rack"
    assert page.label(Location("tube.toml", 3, "bore")) == "bore"
    assert page.label(Location("rack.toml", 3, "hole")) == "hole of rack"
    assert page.label(Location("duty.toml", 3, "cases.running.live_pressure")) == "live pressure"
    assert page.label(Location("", 0, "a_key")) == "a key"


def test_a_taken_quantity_has_its_place_its_text_and_its_side(page: Record) -> None:
    """100 mm ±0.5 at its high limit, 0.1005 m."""
    bore: Measure = value(page, "tube", "bore")
    page.taken("d", "d", "", bore, 0.1005)
    (step,) = page.steps
    assert (step.kind, step.symbol, step.name, step.value, step.unit) == ("taken", "d", "bore", 0.1005, "m")
    assert (step.note, step.where, step.written_in, step.stated) == ("100 mm ±0.5", bore.where, "mm", 0.1)
    assert page.basis == {"taken tube bore": "0.0995 0.1005"}
    assert page.rests_on == {"tube bore": "100 mm ±0.5"}
    assert page.side("d", high=True) == "bore 100.5 mm (greatest)"
    assert page.side("d", high=False) == "bore 100.5 mm (least)"
    assert page.assumed == []
    page.taken("p", "p", "of the steam", value(page, "tube", "pressure"), 3e6)
    assert page.steps[1].name == "of the steam"
    assert page.basis["taken tube pressure"] == "3000000.0 3000000.0 gauge"


def test_what_is_assumed_or_worked_is_told_as_such(page: Record) -> None:
    bore: Measure = value(page, "tube", "bore")
    page.taken("d", "d", "", replace(bore, provenance="assumed", note="by eye"), 0.1)
    assert page.assumed == [bore.where]
    assert page.steps[0].note == "100 mm ±0.5; assumed; by eye"
    outside: Measure = value(page, "tube", "outside")
    page.taken("D", "D", "", replace(outside, worked="worked from x"), 0.1)
    assert page.basis["taken tube outside"] == "worked from x"
    assert page.assumed == [bore.where]


def test_imperial_units_are_those_of_the_steps(tmp_path: Path) -> None:
    page = record(tmp_path, units="imperial")
    page.taken("d", "d", "", value(page, "tube", "bore"), 0.1)
    assert page.steps[0].written_in == "in"
    assert page.said(0.0254, "m") == "1 in"


def test_a_word_is_written_once(page: Record) -> None:
    ends = value(page, "tube", "ends")
    for said in ("open", "open", True, 3):
        page.word("ends", said, ends.where)
    page.word("ends", 2.5, ends.where)  # no word
    assert [step.value for step in page.steps] == ["open", True, 3]
    assert {step.kind for step in page.steps} == {"read"}


def test_a_count_has_its_own_number_beside_the_one_that_is_tried(page: Record) -> None:
    hoops = value(page, "tube", "hoops")
    page.counted("n", "", 5, 4, hoops.where)
    page.counted("n", "number", 5, 4, hoops.where)
    assert [(step.name, step.value, step.stated) for step in page.steps] == [
        ("hoops", 5.0, 4.0),
        ("number", 5.0, 4.0),
    ]


def test_a_figure_of_a_table_has_its_band(page: Record) -> None:
    banded = Reading("an expansion", 12e-6, 11.7e-6, 12.3e-6, "1/K", COMMON_PRACTICE)
    page.looked_up("α", "α", "expansion", banded, 12.3e-6)
    exact = Reading.exact("a factor", 0.5, "", COMMON_PRACTICE)
    page.looked_up("f", "f", "factor", exact, 0.5)
    worked = replace(exact, worked=True)
    page.looked_up("w", "w", "cycle", worked, 0.5)
    first, second, third = page.steps
    assert (first.name, first.note, first.long) == ("an expansion", "11.7e-6/K to 12.3e-6/K", False)
    assert (second.note, second.long, third.long) == ("", False, True)
    assert first.source is COMMON_PRACTICE
    assert page.rests_on == {
        "expansion α": "11.7e-6/K to 12.3e-6/K",
        "factor f": "0.5",
        "cycle w": "worked from what is taken here",
    }
    assert page.basis["look-up expansion α"] == "1.17e-05 1.23e-05"
    assert page.basis["look-up cycle w"] == "worked from what is taken here"
    assert page.varying == {"expansion α", "factor f", "cycle w"}
    assert page.side("α", high=True) == "expansion 12.3e-6/K (greatest)"


@pytest.mark.parametrize(
    ("own", "says", "name", "note"),
    [
        (False, "greatest bore", "greatest bore", ""),
        (False, "", "most wanted", ""),
        (True, "greatest bore", "greatest bore", "set to 90 mm in speclint.toml; the rule's own is 100 mm"),
    ],
)
def test_a_limit_says_who_set_it(page: Record, own: bool, says: str, name: str, note: str) -> None:
    declared = Limit("most_wanted", "100 mm", "length", COMMON_PRACTICE, says)
    page.limit("L", declared, read("90 mm", "length"), own=own)
    (step,) = page.steps
    assert (step.kind, step.name, step.note, step.value) == ("limit", name, note, 0.09)
    assert page.basis == {"limit most_wanted": "0.09"}
    assert page.rests_on == {"limit most_wanted": "90 mm"}


@pytest.mark.parametrize(
    ("units", "own", "unit", "note"),
    [
        ("", False, "", "stated as 3/8 in"),
        ("", True, "in", "set to 3/8 in in speclint.toml; the rule's own is 3/8 in"),
        ("metric", False, "", "stated as 3/8 in"),
        ("imperial", False, "in", ""),
    ],
)
def test_a_limit_in_the_inches_of_its_source_is_printed_in_the_units_of_the_design(
    tmp_path: Path, units: str, own: bool, unit: str, note: str
) -> None:
    """Limits that the repository sets are printed as it wrote them; "" is the millimetre of a sheet."""
    page = record(tmp_path, units=units)
    declared = Limit("most", "3/8 in", "length", COMMON_PRACTICE)
    page.limit("L", declared, read("3/8 in", "length"), own=own)
    (step,) = page.steps
    assert (step.value, step.written_in, step.note) == (pytest.approx(9.525e-3), unit, note)


@formula("L = a + b", cites=[Source("A book", "2nd", "p. 3"), FIRST_PRINCIPLES])
def added(a: Metres, b: Metres) -> Metres:
    """Sum of two lengths.

    More words.
    """
    return a + b


def test_a_formula_is_written_with_its_numbers_and_its_first_source(page: Record) -> None:
    page.worked("L", added, {"a": 0.01, "b": 0.02}, 0.03)
    (step,) = page.steps
    assert (step.name, step.expression) == ("Sum of two lengths", "L = a + b")
    assert step.numbers == "10 mm + 20 mm"
    assert step.filled == (("a", 0.01, "m"), ("b", 0.02, "m"))
    assert step.source == Source("A book", "2nd", "p. 3")
    assert page.written.amount(0.03).name == "Sum of two lengths"


def test_a_value_is_known_by_the_latest_step_that_gives_it(page: Record) -> None:
    """Two steps give 0.5: the very number goes before one as great, and one of the unit of the limit before both."""
    one, other = 0.5, 1.0 / 2.0 + 0.0 * len(page.steps)
    assert one is not other
    page.scanned("x", "a place", one, "m", "greatest over a to b")
    page.scanned("y", "a depth", 0.25, "mm", "")
    page.scanned("z", "a share", other, "", "")
    assert (page.written.amount(one).name, page.written.amount(other).name) == ("a place", "a share")
    assert page.written.amount(1.0 - len("a") / 2.0).name == "a share"  # as great as both: the latest
    page.scanned("v", "another place", 0.7, "m", "")
    found, limit = page.written.amounts(other, 0.7)
    assert (found.name, limit.name) == ("a place", "another place")
    found, limit = page.written.amounts(one, 0.25)
    assert (found.name, limit.name) == ("a place", "a depth")  # of no unit alike
    with pytest.raises(LookupError, match=r"^0\.6 is judged, but no step of the sheet gives it$"):
        page.written.amount(0.6)
    with pytest.raises(LookupError, match=r"^0\.6 is judged"):
        page.written.amounts(0.5, 0.6)


def test_a_step_is_not_its_own_limit(page: Record) -> None:
    page.scanned("x", "one", 0.5, "m", "")
    page.scanned("y", "two", 0.5, "m", "")
    found, limit = page.written.amounts(0.5, 0.5)
    assert {found.name, limit.name} == {"one", "two"}


def test_a_place_is_told_with_its_value_its_line_and_its_drawing(page: Record) -> None:
    bore: Measure = value(page, "tube", "bore")
    hole: Measure = value(page, "rack", "hole")
    for low_or_high in (0.0995, 0.1005):
        page.taken("d", "d", "", bore, low_or_high)
    page.taken("H", "H", "", hole, 0.106)
    line = bore.where.line
    assert page.stated_at(bore.where) == f"bore 100.5 mm (tube.toml:{line}, drawing T-12 revision B)"
    assert page.stated_at(bore.where, 0.0995) == f"bore 99.5 mm (tube.toml:{line}, drawing T-12 revision B)"
    assert page.stated_at(hole.where).endswith(f"(rack.toml:{hole.where.line}, no drawing number)")
    assert page.named_at(hole.where) == "hole of rack 106 mm"
    assert page.named_at(Location("tube.toml", 9, "hoops")) == "hoops"
    assert page.stated_at(Location("tube.toml", 0, "hoops")) == "hoops (tube.toml, drawing T-12 revision B)"


def test_a_link_a_word_and_a_count_are_shown_as_they_are_stated(page: Record) -> None:
    held, ends, hoops = (value(page, "tube", key) for key in ("held_in", "ends", "hoops"))
    page.note("link tube held_in", "rack")
    assert page.named_at(held.where) == 'held in "rack"'
    page.word("ends", "open", ends.where)
    assert page.named_at(ends.where) == 'ends "open"'
    page.counted("n", "", 4, 4, hoops.where)
    assert page.named_at(hoops.where) == "hoops 4"
    page.word("yes", True, Location("tube.toml", 30, "yes"))
    page.word("no", False, Location("tube.toml", 31, "no"))
    assert page.named_at(Location("tube.toml", 30, "yes")) == "yes true"
    assert page.named_at(Location("tube.toml", 31, "no")) == "no false"


def test_names_of_places_of_their_own_are_told_from_other_words(page: Record) -> None:
    """The rack that a tube stands in, and its slot there, are names of places."""
    assert page.is_own_place(Location("tube.toml", 1, "in_slot"))
    assert not page.is_own_place(Location("tube.toml", 1, "ends"))
    assert not page.is_own_place(Location("nobody.toml", 1, "in_slot"))


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("bore", "bore"),
        ("in_slot", "in slot"),
        ("bores.main.diameter", "diameter, bores main"),
        ("cases.running.live_pressure", "live pressure"),
        ("cases.running.temperatures.liner-left", "temperature of liner-left"),
        ("cases.running", "running, cases"),
        ("cases.running.temperatures", "temperatures"),
    ],
)
def test_a_key_in_words(key: str, words: str) -> None:
    assert in_words(key) == words


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("500 mm H8", "500 mm H8 (500 mm to 500.097 mm)"),  # ISO 286-1, 400 to 500 mm: 97 µm
        ("500 mm ±0.1", "500 mm ±0.1"),
        ("500 mm", "500 mm"),
    ],
)
def test_a_quantity_is_shown_as_its_spec_has_it(text: str, shown: str) -> None:
    measure = read(text, "length")
    assert stated_as(measure) == shown
    assert stated_as(replace(measure, text="", tolerance_class="")) in (
        "500 mm to 500.097 mm",
        "499.9 mm to 500.1 mm",
        "500 mm",
    )
    assert NOWHERE.file == ""
