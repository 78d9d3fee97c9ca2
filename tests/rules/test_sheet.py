"""What a rule takes through its sheet: with limits and without, moved, counted, read; and what it asked for."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Course, formula
from speclint.equations import Metres
from speclint.errors import Location, NotKnown, OutOfRange, replace
from speclint.handbook.tables import Reading
from speclint.quantities import Measure, read
from speclint.rules import Corner, NotAssessed, Sheet
from speclint.rules.judgement import NotCovered, Unstated
from speclint.specs import Dimension, FromEvents, Link, NotStated, Stated
from tests.rules.test_placing import ALL, Bench
from tests.tubes import TUBE


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    return Bench(tmp_path, {**ALL, "tube.toml": TUBE + 'title = "A tube"\n'})


def of_tube(bench: Bench, key: str) -> Any:
    return getattr(bench.part("tube"), key)


def at(bench: Bench, **sides: bool) -> Sheet:
    """A sheet at a corner, which records."""
    places = {key: ("taken", "tube.toml", "", key) for key in sides}
    corner = Corner({places[key]: high for key, high in sides.items()})
    return Sheet(bench.sheet()._rule, bench.part("tube"), bench.context, corner, record=True)


def test_a_quantity_is_taken_at_its_side(bench: Bench) -> None:
    bore = of_tube(bench, "bore")
    assert at(bench).take("d", bore) == pytest.approx(0.0995)
    assert at(bench, bore=True).take("d", bore) == pytest.approx(0.1005)
    assert at(bench, bore=True).take_nominal("d", bore) == 0.1
    assert at(bench).take_limits("d", bore) == (pytest.approx(0.0995), pytest.approx(0.1005))
    assert at(bench).tolerance("d", bore) == pytest.approx(0.001)
    assert id(bore.where) in bench.context.asked.values


def test_what_is_taken_is_written_down_under_its_own_name(bench: Bench) -> None:
    bore = of_tube(bench, "bore")
    sheet = at(bench)
    sheet.take("d", bore)
    sheet.take_nominal("d_0", bore)
    sheet.take_limits("b", bore)
    sheet.tolerance("t", bore)
    assert [(step.symbol, step.name) for step in sheet.record.steps] == [
        ("d", "bore"),
        ("d_0", "bore, nominal"),
        ("b_min", "bore, min"),
        ("b_max", "bore, max"),
        ("t", "tolerance of bore"),
    ]
    assert [step.value for step in sheet.record.steps][3:] == [pytest.approx(0.1005), pytest.approx(0.001)]
    own = at(bench)
    own.take("d", bore, "x")
    own.take_nominal("d", bore, "y")
    own.take_limits("b", bore, "z")
    own.tolerance("t", bore, "w")
    assert [step.name for step in own.record.steps] == ["x", "y", "z, min", "z, max", "w"]
    assert own.record.basis["tolerance tube bore"] == repr(bore.high - bore.low)


def test_the_class_of_a_size(bench: Bench) -> None:
    bore = replace(read("100 mm H7", "length"), where=of_tube(bench, "bore").where)
    sheet = at(bench)
    assert sheet.tolerance_class(bore) == "H7"
    assert sheet.record.rests_on["class of tube bore"] == "H7"
    assert [(step.name, step.value) for step in sheet.record.steps] == [("tolerance class of bore", "H7")]
    none = at(bench)
    assert none.tolerance_class(of_tube(bench, "bore")) == ""
    assert none.record.rests_on["class of tube bore"] == "none"
    assert bench.sheet(record=False).tolerance_class(bore) == "H7"


def test_an_absolute_pressure_is_taken_as_gauge(bench: Bench) -> None:
    pressure = replace(of_tube(bench, "pressure"), datum="absolute")
    assert at(bench).take("p", pressure) == pytest.approx(30e5 - 1.01325e5)
    assert at(bench).take("p", of_tube(bench, "pressure")) == 30e5
    assert bench.sheet(record=False).take("p", pressure) == pytest.approx(30e5 - 1.01325e5)


def test_what_is_not_stated_ends_the_rule_and_is_told(bench: Bench) -> None:
    unstated = NotStated(Location("tube.toml", 1, "wall"))
    sheet = at(bench)
    for take in (
        sheet.take,
        sheet.take_nominal,
        sheet.take_limits,
        sheet.tolerance,
        sheet.take_absolute,
        sheet.count,
    ):
        with pytest.raises(Unstated, match=r"^wall is not stated in tube\.toml$"):
            take("x", unstated)
    with pytest.raises(Unstated):
        sheet.read("x", unstated)
    with pytest.raises(Unstated):
        sheet.follow(unstated)
    assert sheet.silent == ["tube wall"]
    assert id(unstated.where) in bench.context.asked.values
    from_events = FromEvents(Location("duty.toml", 3, "cases.running.steam_flow"), why="there is no gear")
    with pytest.raises(NotAssessed, match=r"^cases\.running\.steam_flow cannot be worked: there is no gear$"):
        sheet.take("x", from_events)


def test_whether_something_is_stated_is_on_record_either_way(bench: Bench) -> None:
    sheet = at(bench)
    unstated = NotStated(Location("tube.toml", 1, "wall"))
    assert sheet.is_stated("bore", of_tube(bench, "bore"))
    assert not sheet.is_stated("wall", unstated)
    assert sheet.record.basis == {"stated bore tube bore": "True", "stated wall tube wall": "False"}
    assert sheet.record.rests_on == {"tube bore": "stated", "tube wall": "not stated"}
    assert sheet.silent == ["tube wall"]
    assert bench.context.consulted.words == set()
    assert sheet.is_stated("title", of_tube(bench, "title"))
    assert bench.context.consulted.words == {("tube", "title")}


def test_what_is_said_is_asked_and_read_or_else_nothing(bench: Bench) -> None:
    """On record is the question either way, and the word where there is one."""
    sheet = at(bench)
    assert sheet.said("ends", of_tube(bench, "ends")) == "open"
    assert sheet.said("wall", NotStated(Location("tube.toml", 1, "wall"))) is None
    assert sheet.record.basis == {
        "stated ends tube ends": "True",
        "read ends tube ends": "'open'",
        "stated wall tube wall": "False",
    }
    assert sheet.silent == ["tube wall"]


def test_words_are_read_and_those_of_the_drawing_consulted(bench: Bench) -> None:
    sheet = at(bench)
    assert sheet.read("ends", of_tube(bench, "ends")) == "open"
    assert bench.context.consulted.words == set()
    assert sheet.read("title", of_tube(bench, "title")) == "A tube"
    assert bench.context.consulted.words == {("tube", "title")}
    assert sheet.record.basis["read ends tube ends"] == "'open'"
    assert sheet.record.rests_on["tube ends"] == "open"
    assert [step.value for step in sheet.record.steps] == ["open", "A tube"]
    worded = replace(bench.context, worded={of_tube(bench, "ends").where: "closed"})
    for record in (True, False):
        tried = Sheet(sheet._rule, bench.part("tube"), worded, Corner(), record=record)
        assert tried.read("ends", of_tube(bench, "ends")) == "closed"
        assert tried.read("title", of_tube(bench, "title")) == "A tube"
    truth = Stated(True, Location("tube.toml", 40, "kept"))
    sheet.read("kept", truth)
    assert sheet.record.rests_on["tube kept"] == "true"


def test_a_count_is_moved_as_a_whole_number(bench: Bench) -> None:
    hoops = of_tube(bench, "hoops")
    sheet = at(bench)
    assert sheet.count("n", hoops) == 4
    moved = replace(bench.context, moved={hoops.where: 2.0})
    tried = Sheet(sheet._rule, bench.part("tube"), moved, Corner(), record=True)
    assert tried.count("n", hoops) == 6
    (step,) = tried.record.steps
    assert (step.kind, step.name, step.value, step.stated) == ("counted", "hoops", 6.0, 4.0)


def test_a_quantity_is_taken_as_the_search_for_a_remedy_has_it(bench: Bench) -> None:
    bore = of_tube(bench, "bore")
    shifted = replace(bench.context, moved={bore.where: 0.002})
    instead = replace(
        bench.context, moved={bore.where: replace(read("90 mm ±1", "length"), where=bore.where)}
    )
    elsewhere = replace(bench.context, moved={of_tube(bench, "outside").where: 0.002})
    for context, low, nominal, high in (
        (shifted, 0.1015, 0.102, 0.1025),
        (instead, 0.089, 0.09, 0.091),
        (elsewhere, 0.0995, 0.1, 0.1005),
    ):
        tried = Sheet(bench.sheet()._rule, bench.part("tube"), context, Corner(), record=False)
        assert tried.take("d", bore) == pytest.approx(low)
        assert tried.take_nominal("d", bore) == pytest.approx(nominal)
        assert tried.take_limits("d", bore)[1] == pytest.approx(high)


def figure(d: float = 1.0) -> Reading:
    """A figure to 10."""
    if d > 10:
        raise OutOfRange("the table ends at 10")
    if d < 0:
        raise NotKnown("nobody knows")
    return Reading("a figure", d, 0.9 * d, 1.1 * d, "m", COMMON_PRACTICE)


def test_a_figure_is_one_input_for_all_its_look_ups_of_one_part(bench: Bench) -> None:
    tube, rack = bench.part("tube"), bench.part("rack")
    sheet = at(bench)
    assert sheet.look_up("x", figure, d=2.0) == pytest.approx(1.8)
    assert sheet.look_up("y", figure, of=tube, d=3.0) == pytest.approx(2.7)
    assert sheet.look_up("y", figure, of=rack) == pytest.approx(0.9)
    assert [key[1:] for key in sheet._corner.met] == [("figure", "x"), ("figure", "tube"), ("figure", "rack")]  # type: ignore[index]
    assert set(sheet.record.labels.values()) == {"figure", "figure of rack"}
    high = Corner({("looked up", "figure", "tube"): True})
    other = Sheet(sheet._rule, tube, bench.context, high, record=False)
    assert other.look_up("y", figure, of=tube, d=3.0) == pytest.approx(3.3)
    with pytest.raises(NotCovered, match="the table ends at 10"):
        sheet.look_up("x", figure, d=11.0)
    with pytest.raises(NotAssessed, match="nobody knows"):
        sheet.look_up("x", figure, d=-1.0)


def test_an_exact_figure_is_no_corner(bench: Bench) -> None:
    plain = bench.sheet(record=False)
    assert plain.look_up("x", lambda: Reading.exact("a figure", 2.0, "m", COMMON_PRACTICE)) == 2.0
    assert plain._corner.met == {}


@formula("L = 2 d", cites=[FIRST_PRINCIPLES])
def twice(d: Metres) -> Metres:
    """Twice a length, to 10 m."""
    if d > 10:
        raise OutOfRange("it ends at 10 m")
    if d < 0:
        return float("nan")
    return 2 * d


def test_a_formula_is_worked_and_written_down(bench: Bench) -> None:
    sheet = at(bench)
    assert sheet.work("L", twice, d=3.0) == 6.0
    assert [(step.symbol, step.value) for step in sheet.record.steps] == [("L", 6.0)]
    with pytest.raises(NotCovered, match="it ends at 10 m"):
        sheet.work("L", twice, d=11.0)
    with pytest.raises(ValueError, match="L is not a number"):
        sheet.work("L", twice, d=-1.0)
    assert bench.sheet(record=False).work("L", twice, d=3.0) == 6.0


def hill(x: float) -> float:
    return 1.0 - (x - 0.3) ** 2


@pytest.mark.parametrize(("find", "place"), [("greatest", 0.3), ("least", 1.0)])
def test_the_place_of_a_scan_is_written_down_with_what_was_recorded_beside_it(
    bench: Bench, find: Any, place: float
) -> None:
    sheet = at(bench)
    beside = [Course("y", "height", "m", hill)]
    found = sheet.scan("x", "place", hill, 0.0, 1.0, unit="m", find=find, steps=4, beside=beside)
    assert found == pytest.approx(place, abs=1e-5)
    (step,) = sheet.record.steps
    assert (step.kind, step.symbol, step.name, step.value) == ("scanned", "x", "place", found)
    assert step.note.startswith(f"{find} over 0 ")
    along, height = step.series
    assert (along.symbol, along.name, along.unit) == ("x", "place", "m")
    assert along.values == (0.0, 0.25, 0.5, 0.75, 1.0)
    assert height.values == tuple(map(hill, along.values))
    assert sheet._corner.shares == [pytest.approx(place, abs=1e-5)]
    plain = at(bench)
    plain.scan("x", "place", hill, 0.0, 1.0, unit="m")
    assert plain.record.steps[0].series == ()


def test_a_scan_may_be_held_at_a_share_of_its_way(bench: Bench) -> None:
    held = Corner(places={1: 0.25})
    sheet = Sheet(bench.sheet()._rule, bench.part("tube"), bench.context, held, record=False)
    assert sheet.scan("x", "place", hill, 0.0, 2.0, unit="m") == pytest.approx(0.3, abs=1e-5)
    assert sheet.scan("x", "place", hill, 1.0, 2.0, unit="m") == 1.25

    def refuse(_: float) -> float:
        raise OutOfRange("beyond it")

    with pytest.raises(NotCovered, match="beyond it"):
        sheet.scan("x", "place", refuse, 0.0, 1.0, unit="m")


def test_what_belongs_to_a_part(bench: Bench) -> None:
    sheet = at(bench)
    found = sheet.belonging_to(bench.part("rack"), type(bench.part("tube")))
    assert [one.id for one in found] == ["tube"]
    assert sheet.record.rests_on["tube on rack"] == "tube"
    assert bench.context.consulted.specs == {"tube"}
    assert {name for name, _ in bench.context.consulted.linked} == {"rack"}
    assert len(bench.context.asked.queried) == 1
    none = sheet.belonging_to(bench.part("tube"), type(bench.part("rack")))
    assert none == ()
    assert sheet.record.rests_on["rack on tube"] == "none"


def test_what_is_stated_from_one_source(tmp_path: Path) -> None:
    text = TUBE.replace('bore = "100 mm ±0.5"', 'bore = { value = "100 mm ±0.5", from = "assumed" }')
    bench = Bench(tmp_path, {**ALL, "tube.toml": text})
    sheet = bench.sheet()
    (where,) = sheet.stated_from("assumed", bench.part("tube"))
    assert where.key == "bore"
    assert sheet.record.rests_on["assumed in tube"] == "bore 100 mm ±0.5"
    assert [(step.name, step.value) for step in sheet.record.steps] == [("assumed: bore", "100 mm ±0.5")]
    assert sheet.stated_from("measured", bench.part("tube")) == ()
    assert sheet.record.rests_on["measured in tube"] == "nothing"
    bore = of_tube(bench, "bore")
    assert isinstance(bore, Measure)
    assert {where.key for where in bench.context.asked.values.values()} >= {"bore", "outside", "pressure"}


def pointing(sheet: Sheet, part: str, key: str) -> Any:
    """What a table points at: a dimension under a key of a part."""
    there = Location("tube.toml", 7, "play.dimension")
    table = Dimension(
        of=Link(part, ("tube", "rack"), Location("tube.toml", 6, "play.of")), dimension=Stated(key, there)
    )
    return sheet.pointed_at(table)


def test_a_length_of_another_spec_is_pointed_at_by_its_key(bench: Bench) -> None:
    sheet = at(bench)
    assert pointing(sheet, "rack", "hole") == bench.part("rack").under("hole")
    assert sheet.record.rests_on["tube play.dimension"] == "hole"
    unstated = pointing(sheet, "tube", "in_slot")
    assert isinstance(unstated, NotStated)  # to be taken, which then says that it is not stated
    with pytest.raises(NotAssessed, match=r'^rack has no dimension "hol"$') as wrong:
        pointing(sheet, "rack", "hol")
    assert wrong.value.where.key == "play.dimension"
    with pytest.raises(NotAssessed, match=r'^"pressure" of tube is no length but ') as other:
        pointing(sheet, "tube", "pressure")
    assert other.value.where.key == "play.dimension"


def test_what_hangs_on_no_check_is_worked_for_the_first_and_asked_by_each(bench: Bench) -> None:
    context, bore = bench.context, of_tube(bench, "bore")
    worked = []

    def work() -> float:
        worked.append("worked")
        context.consulted.specs.add("rack")
        return at(bench).take("d", bore)

    for _ in range(2):
        context.begin()
        context.consulted.specs.clear()
        assert context.worked_once("key", work) == pytest.approx(0.0995)
        assert context.consulted.specs == {"rack"}
        assert id(bore.where) in context.asked.values
    assert worked == ["worked"]
    context.worked_once("another key", work)
    assert len(worked) == 2


def test_what_does_not_last_is_worked_for_each(bench: Bench) -> None:
    numbers = iter((1.0, 2.0, 3.0))

    def lasts(found: float) -> bool:
        return found > 1.0

    found = [bench.context.worked_once("key", lambda: next(numbers), lasts) for _ in range(3)]
    assert found == [1.0, 2.0, 2.0]


def test_figures_are_looked_up_once_for_the_same_arguments(bench: Bench) -> None:
    asked = []

    def table(**at: Any) -> Reading:
        asked.append(at)
        return figure(2.0)

    for at_what in ({"d": 1.0}, {"d": 1.0}, {"d": 2.0}, {"x": 1.0}):
        assert bench.context.look_up(table, at_what) == figure(2.0)
    assert asked == [{"d": 1.0}, {"d": 2.0}, {"x": 1.0}]
    for _ in range(2):
        bench.context.look_up(table, {"d": [1.0]})  # a list has no hash
    assert asked[3:] == [{"d": [1.0]}, {"d": [1.0]}]
