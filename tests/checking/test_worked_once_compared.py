"""What two parts are compared by before a check of the one is taken over by the other: field by field, by hand."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.checking.side_by_side import SpecPair, say_the_same
from speclint.checking.worked_once import Renamed, WorkedOnce
from speclint.errors import Location, replace
from speclint.quantities import Measure, read
from speclint.repository import Design
from speclint.rules import Consulted
from speclint.specs import EVERY_FIELD, Link, Spec, Stated, Tie
from tests.rules.test_placing import ALL, PLAIN, Bench, Wagon
from tests.tubes import DUTY, RACK, TUBE, Tube

#: The second tube has another bore and hangs in another rack; a third wagon leads to fewer racks than the first.
FILES = {
    **ALL,
    "tube.toml": TUBE,
    "second.toml": TUBE.replace("100 mm", "99 mm").replace('"rack"', '"other"'),
    "first-wagon.toml": 'kind = "wagon"\nspare = ["rack", "other"]\nnote = "tube"\n[bays.a]\nrack = "rack"\n',
    "second-wagon.toml": 'kind = "wagon"\nspare = ["rack"]\nnote = "tube"\n[bays.a]\nrack = "other"\n',
    "third-wagon.toml": 'kind = "wagon"\nspare = ["other", "rack"]\nnote = "x"\n[bays.b]\nrack = "rack"\n',
}


@pytest.fixture
def design(tmp_path: Path) -> Design:
    return Bench(tmp_path, FILES).context.design


def paired(
    design: Design, one: str, other: str, *names: str, within: tuple[str, ...] = ()
) -> tuple[bool, SpecPair]:
    """Whether two specs are alike in some fields, and in some of those of the tables within."""
    here, there = design.specs[one], design.specs[other]
    read: dict[int, frozenset[str]] = {id(here): frozenset(names)}
    for table in (*dict(getattr(here, "bays", {})).values(), *dict(getattr(here, "slots", {})).values()):
        read[id(table)] = frozenset(within)
    pair = SpecPair(read, design.files)
    return pair.alike(here, there), pair


def where_of(design: Design, name: str, key: str) -> Location:
    found: Location = dict(design.specs[name].at_keys())[key].where
    return found


def test_values_that_were_looked_at_are_put_down_where_they_differ(design: Design) -> None:
    alike, pair = paired(design, "tube", "second", "bore", "outside", "held_in")
    assert alike
    assert pair.differ == {id(where_of(design, "tube", "bore"))}
    assert pair.links == [("rack", "other")]
    assert pair.places[("tube.toml", "", "outside")] == where_of(design, "second", "outside")
    assert set(pair.places) == {("tube.toml", "", key) for key in ("bore", "outside", "held_in")}


def test_what_was_not_looked_at_may_differ(design: Design) -> None:
    assert paired(design, "tube", "second", "outside")[1].differ == set()
    assert paired(design, "tube", "second")[1].places == {}
    assert paired(design, "tube", "second", EVERY_FIELD)[1].differ == {id(where_of(design, "tube", "bore"))}


def test_specs_of_two_kinds_are_never_alike(design: Design) -> None:
    assert not paired(design, "tube", "rack", "bore")[0]
    assert not paired(design, "tube", "rack")[0]


def changed(tmp_path: Path, more: str, less: str = "") -> Design:
    """A design with a second tube that states more, or less."""
    files = {**ALL, "second.toml": TUBE.replace(less, "") + more}
    return Bench(tmp_path, files).context.design


def test_a_value_that_only_one_states_is_a_difference_of_build(tmp_path: Path) -> None:
    design = changed(tmp_path, "", "hoops = 4\n")
    assert not paired(design, "tube", "second", "hoops")[0]
    assert paired(design, "tube", "second", "bore")[0]


def test_that_a_word_of_the_drawing_is_stated_is_a_difference_only_where_it_is_asked(tmp_path: Path) -> None:
    design = changed(tmp_path, 'title = "Second"\n')
    alike, pair = paired(design, "tube", "second", "title")
    assert alike
    assert pair.differ == {id(design.specs["tube"].title.where)}
    alike, pair = paired(design, "second", "tube", "title")
    assert alike
    assert pair.differ == {id(where_of(design, "second", "title"))}
    alike, pair = paired(design, "tube", "second", "revision")
    assert alike
    assert pair.differ == set()


def test_a_word_of_two_drawings_differs_by_what_it_says(tmp_path: Path) -> None:
    files = {
        **ALL,
        "tube.toml": TUBE + 'title = "First"\nrevision = "A"\n',
        "second.toml": TUBE + 'title = "Second"\nrevision = "A"\n',
    }
    design = Bench(tmp_path, files).context.design
    alike, pair = paired(design, "tube", "second", "title", "revision")
    assert alike
    assert pair.differ == {id(where_of(design, "tube", "title"))}


def test_ids_and_notes_are_what_no_rule_reads(tmp_path: Path) -> None:
    design = changed(tmp_path, '[notes]\nx = "y"\n')
    alike, pair = paired(design, "tube", "second", "id", "notes", "like", "each", "mirror_of")
    assert alike
    assert (pair.differ, pair.places, pair.names) == (set(), {}, set())


def test_lists_are_compared_one_by_one(design: Design) -> None:
    assert not paired(design, "first-wagon", "second-wagon", "spare")[0]
    alike, pair = paired(design, "first-wagon", "third-wagon", "spare")
    assert alike
    assert pair.links == [("rack", "other"), ("other", "rack")]


def test_tables_are_compared_by_the_names_of_their_entries_and_by_what_was_read_of_them(
    design: Design,
) -> None:
    assert not paired(design, "first-wagon", "third-wagon", "bays")[0]
    alike, pair = paired(design, "first-wagon", "second-wagon", "bays", within=("rack",))
    assert alike
    assert pair.links == [("rack", "other")]
    assert paired(design, "first-wagon", "second-wagon", "bays")[1].links == []


def test_ids_that_stand_as_words_are_put_down(design: Design) -> None:
    """The note of a wagon is the id of a tube, that of another is none; a number is no word."""
    assert paired(design, "first-wagon", "second-wagon", "note")[1].names == {"tube"}
    assert paired(design, "third-wagon", "first-wagon", "note")[1].names == set()
    assert paired(design, "tube", "second", "hoops", "ends")[1].names == set()


def test_a_table_whose_keys_are_ids_names_them(tmp_path: Path) -> None:
    """A rack with a slot that is called as a tube is: its entries are no quantities."""
    slots = '[slots.tube]\nwidth = "10 mm"\n[slots.free]\nwidth = "12 mm"\n'
    files = {**ALL, "rack.toml": RACK + slots, "other.toml": RACK + slots.replace("12 mm", "13 mm")}
    design = Bench(tmp_path, files).context.design
    alike, pair = paired(design, "rack", "other", "slots", within=("width",))
    assert alike
    assert (pair.names, pair.tables) == ({"tube"}, [])
    assert pair.differ == {id(where_of(design, "rack", "slots.free.width"))}


def test_quantities_under_ids_are_kept_for_later(tmp_path: Path) -> None:
    temperatures = '[cases.running.temperatures]\ntube = "200 °C"\nsecond = "210 °C"\n'
    duty = DUTY + temperatures
    files = {**ALL, "duty.toml": duty, "more.toml": duty.replace('id = "duty"', 'id = "more"')}
    design = Bench(tmp_path, files).context.design
    here, there = (
        spec.cases["running"].temperatures  # type: ignore[attr-defined]
        for spec in (design.specs["duty"], design.specs["more"])
    )
    pair = SpecPair({}, design.files)
    assert pair.alike(here, there)
    assert pair.tables == [(here, there)]
    assert pair.names == set()


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("a", "a", True),
        ("a", "b", False),
        (1, 1, True),
        (1, 2, False),
        (1, 1.0, False),
        ((1, 2), (1, 2), True),
        ((1, 2), (1, 3), False),
        ((1, 2), (3, 2), False),
        ((1,), (1, 2), False),
        ([1], [1], True),
        ({"a": 1, "b": 2}, {"a": 1, "b": 2}, True),
        ({"a": 1, "b": 2}, {"b": 2, "a": 1}, False),  # in another order
        ({"a": 1, "b": 2}, {"a": 1, "b": 3}, False),
        ({"a": 1, "b": 2}, {"a": 2, "b": 2}, False),
        (Link("rack", ("rack",)), Link("other", ("rack",)), True),
        (Link("rack", ("rack",)), Link("rack", ("wagon",)), False),
    ],
)
def test_plain_values_are_alike_where_they_are_the_same(one: object, other: object, alike: bool) -> None:
    assert SpecPair({}, {}).alike(one, other) is alike


def hot(text: str, name: str) -> Measure:
    return replace(read(text, "temperature"), where=Location("duty.toml", 4, f"temperatures.{name}"))


FIRST, SECOND = hot("200 °C", "tube"), hot("200 °C", "second")
PARTS = {"tube": "second", "rack": "other"}


@pytest.mark.parametrize(
    ("here", "there", "found"),
    [
        ({"tube": FIRST}, {"second": SECOND}, {("duty.toml", "", "temperatures.tube"): SECOND.where}),
        ({"third": FIRST}, {"third": SECOND}, {}),  # of a part that has no part in it
        ({"tube": FIRST}, {}, None),
        ({}, {"second": SECOND}, None),
        ({"tube": FIRST}, {"second": hot("201 °C", "second")}, None),
        ({"tube": FIRST}, {"tube": FIRST}, None),
        (
            {"rack": hot("90 °C", "rack"), "tube": FIRST},
            {"other": (of_other := hot("90 °C", "other")), "second": SECOND},
            {
                ("duty.toml", "", "temperatures.rack"): of_other.where,
                ("duty.toml", "", "temperatures.tube"): SECOND.where,
            },
        ),
    ],
)
def test_what_stands_under_an_id_is_that_under_the_id_in_its_stead(
    here: dict[str, Measure], there: dict[str, Measure], found: dict[Any, Location] | None
) -> None:
    pair = SpecPair({}, {}, tables=[(here, there)])
    assert pair.by_id(PARTS) == found


def test_places_are_those_of_the_part_in_its_stead() -> None:
    bore = Location("second.toml", 3, "bore", "second")
    renamed = Renamed(PARTS, {("tube.toml", "tube", "bore"): bore})
    assert renamed.key(("taken", "tube.toml", "tube", "bore")) == ("taken", "second.toml", "second", "bore")
    for same in (
        ("taken", "tube.toml", "tube", "outside"),
        ("limit", "tube.toml", "tube", "bore"),
        ("looked up", "expansion", "α"),
        ("scan", "tube", "tube"),
    ):
        assert renamed.key(same) == same
    assert renamed.key(("looked up", "expansion", "tube")) == ("looked up", "expansion", "second")
    sides: dict[Any, bool] = {("taken", "tube.toml", "tube", "bore"): True, ("looked up", "f", "rack"): False}
    assert renamed.sides(sides) == {
        ("taken", "second.toml", "second", "bore"): True,
        ("looked up", "f", "other"): False,
    }
    asked = Consulted(
        {"tube", "duty"},
        {("tube", "title")},
        {("rack", "a:B")},
        {("tube.toml", "tube", "bore"), ("duty.toml", "", "x")},
    )
    assert renamed.consulted(asked) == Consulted(
        {"second", "duty"},
        {("second", "title")},
        {("other", "a:B")},
        {("second.toml", "second", "bore"), ("duty.toml", "", "x")},
    )


LENGTH = replace(read("20 mm ±1", "length"), where=Location("a.toml", 1, "x"))
ELSEWHERE = replace(LENGTH, where=Location("b.toml", 2, "y"))
TIE = Tie(FIRST, read("5 K", "temperature difference"), Location("duty.toml", 1, "a"))


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        (LENGTH, LENGTH, True),
        (LENGTH, ELSEWHERE, True),
        (LENGTH, replace(ELSEWHERE, high=0.03), False),
        (LENGTH, replace(ELSEWHERE, text="2 cm"), False),
        (LENGTH, Stated("20 mm"), False),
        (Stated("a", Location("a", 1, "x")), Stated("a", Location("b", 2, "y")), True),
        (Stated("a"), Stated("b"), False),
        (TIE, replace(TIE, base=SECOND, where=Location("duty.toml", 2, "b")), True),  # a value within a value
        (TIE, replace(TIE, base=hot("201 °C", "second")), False),
        (TIE, replace(TIE, difference=read("6 K", "temperature difference")), False),
    ],
)
def test_values_say_the_same_wherever_they_stand(one: object, other: object, same: bool) -> None:
    assert say_the_same(one, other) is same
    assert say_the_same(other, one) is same


def kept(bench: Bench, name: str, *, whole: bool = True) -> tuple[WorkedOnce, Spec]:
    """What a rule that only followed the link of a part was kept as."""
    once, context = WorkedOnce(), bench.context
    context.begin()
    part: Any = bench.part(name)
    if name != "rack":
        context.asked.followed.add(part.held_in.id)
    context.asked.everything = not whole
    once.keep(PLAIN, name, {}, Consulted(), context)
    return once, part


LIKE = 'kind = "tube"\nlike = "tube"\nheld_in = "other"\n'


def test_a_check_is_known_to_parts_alike_alone(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "fifth.toml": LIKE, "third.toml": RACK})
    once, _ = kept(bench, "tube")
    found = once.known(PLAIN, "fifth", bench.context)
    assert found is not None
    worked, renamed = found
    assert worked.component == "tube"
    assert renamed.parts == {"tube": "fifth", "rack": "other", "duty": "duty"}
    assert once.known(PLAIN, "tube", bench.context) is None
    assert once.known(PLAIN, "second", bench.context) is None
    assert once.known(replace(PLAIN, name="test.other"), "fifth", bench.context) is None
    alone, _ = kept(bench, "rack")
    assert alone.known(PLAIN, "third", bench.context) is None  # as great, and said to be like no other


def test_a_check_that_asked_more_than_can_be_told_is_not_kept(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "fifth.toml": LIKE})
    once, _ = kept(bench, "tube", whole=False)
    assert once.known(PLAIN, "fifth", bench.context) is None


RACK_LIKE = 'kind = "rack"\nlike = "rack"\n'


@pytest.mark.parametrize(("more", "known"), [("", True), ('duty = "duty"\n', False)])
def test_parts_alike_have_the_same_duty_or_none(tmp_path: Path, more: str, known: bool) -> None:
    bench = Bench(tmp_path, {**ALL, "third.toml": RACK_LIKE + more})
    once, _ = kept(bench, "rack")
    assert (once.known(PLAIN, "third", bench.context) is not None) is known


IN_OTHER = TUBE.replace('"rack"', '"other"')


@pytest.mark.parametrize(
    ("files", "known"),
    [
        ({"second.toml": IN_OTHER}, True),
        ({"second.toml": IN_OTHER, "third.toml": IN_OTHER}, False),  # two belong to it
        ({"second.toml": IN_OTHER.replace("100 mm", "99 mm")}, True),  # which was not looked at
        ({"second.toml": TUBE}, False),  # none belongs to it
    ],
)
def test_a_check_that_asked_what_belongs_to_a_part_is_that_of_one_with_as_many(
    tmp_path: Path, files: dict[str, str], known: bool
) -> None:
    bench = Bench(
        tmp_path, {"duty.toml": DUTY, "rack.toml": RACK, "tube.toml": TUBE, "other.toml": RACK_LIKE, **files}
    )
    bench.context.begin()
    bench.context.asked.queried.add(("rack", Tube))
    once = WorkedOnce()
    once.keep(PLAIN, "rack", {}, Consulted(), bench.context)
    found = once.known(PLAIN, "other", bench.context)
    assert (found is not None) is known
    if found is not None:
        assert found[1].parts == {"rack": "other", "tube": "second"}


@pytest.mark.parametrize(
    ("bays", "known"),
    [
        ('[bays.a]\nrack = "rack"\n[bays.b]\nrack = "other"\n', True),
        ('[bays.a]\nrack = "rack"\n', False),
        ('[bays.a]\nrack = "rack"\n[bays.b]\nrack = "other"\n[bays.c]\nrack = "other"\n', False),
    ],
)
def test_a_check_that_asked_which_entries_lead_to_a_part_is_that_of_one_with_as_many(
    tmp_path: Path, bays: str, known: bool
) -> None:
    files = {"rack.toml": RACK, "other.toml": RACK_LIKE, "wagon.toml": f'kind = "wagon"\n{bays}'}
    bench = Bench(tmp_path, files)
    bench.context.begin()
    bench.context.asked.followed.add("wagon")
    bench.context.asked.queried.add(("rack", Wagon))
    bench.context.asked.leading.add(("wagon", "bays", "rack", "rack"))
    once = WorkedOnce()
    once.keep(PLAIN, "rack", {}, Consulted(), bench.context)
    assert (once.known(PLAIN, "other", bench.context) is not None) is known


@pytest.mark.parametrize(("beside", "known"), [("third", True), ("fourth", False)])
def test_entries_that_lead_to_parts_alike_lead_on_to_one_part(
    tmp_path: Path, beside: str, known: bool
) -> None:
    """The bay of the one rack is beside the third: so must be that of the other, which no other rack stands for."""
    bays = f'[bays.a]\nrack = "rack"\nbeside = "third"\n[bays.b]\nrack = "other"\nbeside = "{beside}"\n'
    files = {"rack.toml": RACK, "other.toml": RACK_LIKE, "wagon.toml": f'kind = "wagon"\n{bays}'}
    files |= {"third.toml": RACK, "fourth.toml": RACK}
    bench = Bench(tmp_path, files)
    bench.context.begin()
    wagon = bench.part("wagon")
    assert isinstance(wagon, Wagon)
    bench.context.asked.followed.add("wagon")
    bench.context.asked.queried.add(("rack", Wagon))
    bench.context.asked.leading.add(("wagon", "bays", "rack", "rack"))
    bench.context.asked.fields.add((id(wagon.bays["a"]), "beside"))
    once = WorkedOnce()
    once.keep(PLAIN, "rack", {}, Consulted(), bench.context)
    assert (once.known(PLAIN, "other", bench.context) is not None) is known


@pytest.mark.parametrize(("slot", "known"), [("free", True), ("tube", False), ("second", False)])
def test_an_id_that_stands_for_another_is_no_name_of_an_entry(tmp_path: Path, slot: str, known: bool) -> None:
    """Both racks have a slot that is called as one of the tubes: of the one the name would be another."""
    slots = f'[slots.{slot}]\nwidth = "10 mm"\n'
    files = {"rack.toml": RACK + slots, "other.toml": RACK_LIKE, "tube.toml": TUBE, "second.toml": IN_OTHER}
    bench = Bench(tmp_path, {"duty.toml": DUTY, **files})
    bench.context.begin()
    bench.context.asked.queried.add(("rack", Tube))
    bench.context.asked.fields.add((id(bench.part("rack")), "slots"))
    once = WorkedOnce()
    once.keep(PLAIN, "rack", {}, Consulted(), bench.context)
    assert (once.known(PLAIN, "other", bench.context) is not None) is known
