"""What a sheet finds beside its component: what fills a place, what is near, what others say, and what is on record."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import Any, ClassVar

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Limit, Rule, Sheet, rule
from speclint.errors import Location, NotKnown, replace
from speclint.families import load_families
from speclint.repository.drawing_state import DrawingState
from speclint.rules import Context, Corner, NotAssessed
from speclint.rules.judgement import NotApplicable, Unstated
from speclint.rules.other_check import OtherCheck, no_other
from speclint.rules.placing import links_under
from speclint.specs import NOT_STATED, Component, Link, LinkTo, MadePart, SpecTable, Word
from speclint.testing import DesignFolder, made_family
from tests.tubes import DUTY, FILES, RACK, TUBE, Rack, Tube, entry_point


class Bay(SpecTable):
    """A bay of a wagon."""

    rack: LinkTo[Rack] = NOT_STATED
    beside: LinkTo[Rack] = NOT_STATED


class Wagon(Component):
    """A wagon with racks, spare ones, and a tube on its roof."""

    kind: ClassVar[str] = "wagon"
    called: ClassVar[str] = "wagon"

    bays: dict[str, Bay] = {}
    spare: tuple[LinkTo[Rack], ...] = ()
    roof: LinkTo[Tube] = NOT_STATED
    note: Word[str] = NOT_STATED


WAGON = """
kind = "wagon"
[bays.left]
rack = "rack"
[bays.middle]
[bays.right]
rack = "other"
"""
LOADED = load_families([entry_point("tubes"), made_family("wagons", [Wagon], [])])
ALL = {**FILES, "other.toml": RACK, "wagon.toml": WAGON, "second.toml": TUBE.replace('"rack"', '"other"')}


@rule(
    "test.placing",
    title="t",
    on=Component,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES],
    why="w",
    leaves_out="l",
    reviews=True,
    limits=[Limit("most", "1 mm", "length", COMMON_PRACTICE, "a limit")],
)
def _reviewing(component: Component, sheet: Sheet) -> object:  # noqa: ARG001 - the form of a rule
    raise AssertionError("never run")


PLAIN = replace(_reviewing, reviews=False)


class Bench:
    """A design, and sheets of one of its components."""

    def __init__(self, folder: Path, files: dict[str, str] | None = None) -> None:
        found = DesignFolder(folder, LOADED).write(ALL if files is None else files).assess()
        assert found.context is not None
        self.context: Context = found.context
        self.context.begin()
        self.context.consulted.specs.clear()
        self.context.consulted.linked.clear()
        self.context.consulted.asked.clear()
        self.context.asked.everything = False

    def part(self, name: str) -> Component:
        found = self.context.design.specs[name]
        assert isinstance(found, Component)
        return found

    def sheet(self, name: str = "tube", *, record: bool = True, of: Rule = _reviewing) -> Sheet:
        return Sheet(of, self.part(name), self.context, Corner(), record=record)


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    return Bench(tmp_path)


def test_what_fills_a_place_is_found_by_its_link_and_is_on_record(bench: Bench) -> None:
    sheet = bench.sheet()
    found = sheet.fillers(bench.part("rack"), Tube, by="held_in")
    assert [one.id for one in found] == ["tube"]
    assert sheet.record.basis["tube at rack by held_in"] == "['tube']"
    assert sheet.record.rests_on["tube at rack by held_in"] == "tube"
    assert bench.context.asked.everything
    assert bench.context.consulted.specs == {"tube"}
    assert {name for name, _ in bench.context.consulted.linked} == {"rack"}
    assert sheet.unread_fillers() == ()


def test_one_of_several_links_is_enough_and_another_link_is_none(bench: Bench) -> None:
    """The wagon leads to the rack by a bay, and to none by its spare ones."""
    sheet, rack = bench.sheet(), bench.part("rack")
    assert sheet.fillers(rack, Wagon, by="spare") == ()
    assert sheet.record.rests_on["wagon at rack by spare"] == "none"
    found = sheet.fillers(rack, Wagon, by=("spare", "bays.*.rack"))
    assert [one.id for one in found] == ["wagon"]
    assert "wagon at rack by spare, bays.*.rack" in sheet.record.basis


@pytest.mark.parametrize(("name", "ids"), [("a", ["tube"]), ("b", ["third"]), ("c", [])])
def test_what_fills_a_named_entry_states_its_name(tmp_path: Path, name: str, ids: list[str]) -> None:
    files = {**FILES, "tube.toml": TUBE + 'in_slot = "a"\n', "third.toml": TUBE + 'in_slot = "b"\n'}
    bench = Bench(tmp_path, {**files, "fourth.toml": TUBE})
    sheet = bench.sheet()
    found = sheet.fillers(bench.part("rack"), Tube, by="held_in", named=("in_slot", name))
    assert [one.id for one in found] == ids
    assert f"tube at rack {name} by held_in" in sheet.record.basis
    assert sheet.record.rests_on["tube in_slot"] == "a"
    assert sheet.record.rests_on["fourth in_slot"] == "not stated"


def test_a_file_that_cannot_be_read_may_hold_what_fills_a_place(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "third.toml": TUBE + "x = 1\n"})
    sheet = bench.sheet()
    sheet.fillers(bench.part("other"), Tube, by="held_in")
    assert sheet.unread_fillers() == ()  # it names "rack", not "other"
    sheet.fillers(bench.part("rack"), Tube, by="held_in")
    assert sheet.unread_fillers() == ("third.toml",)
    with pytest.raises(NotAssessed, match=r"^not judged: third\.toml could not be read$"):
        sheet.require_read(sheet.unread_fillers())


def test_a_place_that_is_filled_once_has_its_part(bench: Bench) -> None:
    assert bench.sheet().filled(bench.part("rack"), Tube, by="held_in").id == "tube"


def test_a_place_that_is_empty_or_filled_twice_ends_the_rule(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "third.toml": TUBE + 'in_slot = "a"\n'})
    rack = bench.part("rack")
    with pytest.raises(NotAssessed) as twice:
        bench.sheet().filled(rack, Tube, by="held_in")
    assert twice.value.says == "rack is filled 2 times: third (third.toml) and tube (tube.toml)"
    assert twice.value.where == bench.part("tube").where
    with pytest.raises(NotAssessed) as empty:
        bench.sheet().filled(rack, Wagon, by="spare")
    assert (empty.value.says, empty.value.where) == ("no wagon is drawn for rack", rack.where)
    with pytest.raises(NotAssessed, match=r"^no tube is drawn for b of rack$"):
        bench.sheet().filled(rack, Tube, by="held_in", named=("in_slot", "b"))


def test_an_empty_place_is_not_said_to_be_so_where_a_file_could_not_be_read(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {"rack.toml": RACK, "tube.toml": TUBE + "x = 1\n"})
    with pytest.raises(NotAssessed, match=r"^not judged: tube\.toml could not be read$"):
        bench.sheet("rack").filled(bench.part("rack"), Tube, by="held_in")


def test_the_entries_that_lead_to_a_part(bench: Bench) -> None:
    sheet, wagon = bench.sheet(), bench.part("wagon")
    found = sheet.leading_to(bench.part("other"), Bay, wagon, "bays", by="rack", called="bay")
    assert [name for name, _ in found] == ["right"]
    assert isinstance(found[0][1], Bay)
    assert bench.context.asked.leading == {("wagon", "bays", "rack", "other")}
    assert not bench.context.asked.everything
    assert bench.context.consulted.specs == {"rack", "other"}
    assert sheet.record.basis["link wagon bays.left.rack"] == "rack"
    assert sheet.record.basis["link wagon bays.right.rack"] == "other"
    stated = {name: said for name, said in sheet.record.basis.items() if name.startswith("stated ")}
    assert stated == {
        "stated rack of bay left wagon bays.left.rack": "True",
        "stated rack of bay middle wagon bays.middle.rack": "False",
        "stated rack of bay right wagon bays.right.rack": "True",
    }
    assert sheet.silent == ["wagon bays.middle.rack"]


def test_an_entry_that_leads_to_what_cannot_be_read_ends_the_rule(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "other.toml": RACK + "x = 1\n"})
    with pytest.raises(NotAssessed) as ended:
        bench.sheet().leading_to(
            bench.part("rack"), Bay, bench.part("wagon"), "bays", by="rack", called="bay"
        )
    assert ended.value.says == 'bays.right.rack leads to "other", which could not be read as a rack'
    assert bench.context.asked.everything


def test_the_nearest_part_of_some_kinds(bench: Bench) -> None:
    """The tube is held in the rack, which stands in the wagon: whichever way the links lead."""
    sheet = bench.sheet()
    found = sheet.nearest(bench.part("tube"), "wagon", "engine")
    assert found is bench.part("wagon")
    assert sheet.joined_to(bench.part("tube"), "wagon")
    assert sheet.record.basis["tube joined to a wagon or engine"] == "yes"
    assert bench.context.consulted.specs == {"tube", "rack", "wagon"}
    assert bench.context.consulted.linked == set()
    assert not sheet.joined_to(bench.part("tube"), "engine")
    assert sheet.record.basis["tube joined to a engine"] == "no"
    assert {name for name, _ in bench.context.consulted.linked} >= {"tube", "rack", "wagon"}


def test_no_part_is_said_to_be_far_where_a_file_on_the_way_could_not_be_read(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**FILES, "wagon.toml": WAGON + "x = 1\n", "other.toml": RACK})
    with pytest.raises(NotAssessed, match=r"^not judged: wagon\.toml could not be read$"):
        bench.sheet().joined_to(bench.part("tube"), "engine")


def test_how_a_drawing_stands_is_on_record(bench: Bench) -> None:
    never_read = DrawingState("tube", "tube.pdf", "", "a" * 64, "", None, None, dt.date(2026, 3, 10))
    bench.context = replace(bench.context, drawing=lambda _: never_read)
    sheet = bench.sheet()
    assert sheet.drawing_read() is never_read
    assert sheet.record.rests_on["drawing file"] == "never read"
    assert [(one.name, one.value) for one in sheet.record.steps] == [("drawing file tube.pdf", "never read")]
    assert bench.context.consulted.asked == {("drawing file", "tube")}


def test_the_others_of_a_drawing(tmp_path: Path) -> None:
    numbered = 'drawing = "T 12"\n'
    files = {**ALL, "tube.toml": TUBE + numbered, "second.toml": TUBE + 'drawing = "t12"\n'}
    bench = Bench(tmp_path, files)
    sheet = bench.sheet()
    found = sheet.sharing_drawing(bench.part("tube"))
    assert [one.id for one in found] == ["second"]
    assert sheet.record.rests_on["others on drawing T 12"] == "second"
    assert ("drawing", "T 12") in bench.context.consulted.asked
    assert bench.context.consulted.specs == {"second"}
    assert bench.context.asked.everything
    assert bench.sheet("rack").sharing_drawing(bench.part("rack")) == ()
    sheet = bench.sheet("rack")
    assert [one.id for one in sheet.on_drawing("t12")] == ["second", "tube"]
    assert sheet.record.rests_on["on drawing t12"] == "second, tube"
    assert sheet.on_drawing("T 13") == ()


def test_no_other_is_said_to_be_on_a_drawing_where_a_file_may_be(tmp_path: Path) -> None:
    files = {
        **ALL,
        "tube.toml": TUBE + 'drawing = "T-12"\n',
        "third.toml": TUBE + 'drawing = "T-12"\nx = 1\n',
    }
    bench = Bench(tmp_path, files)
    with pytest.raises(NotAssessed, match=r"^not judged: third\.toml could not be read$"):
        bench.sheet().sharing_drawing(bench.part("tube"))


def test_the_others_of_a_certificate(tmp_path: Path) -> None:
    """By its number and by its heat; a part without either shares none."""
    made = 'kind = "made-part"\nof = "tube"\n'
    numbered = '[certificate]\nnumber = "C-12"\nheat = "H-7"\n'
    files = {
        **ALL,
        "first.toml": made + numbered,
        "next.toml": made + numbered.replace("H-7", "H-8"),
        "last.toml": made + numbered.replace("C-12", "C-13"),
        "bare.toml": made,
    }
    bench = Bench(tmp_path, files)
    sheet, first = bench.sheet("first"), bench.part("first")
    assert isinstance(first, MadePart)
    assert [one.id for one in sheet.sharing_certificate(first, "number")] == ["next"]
    assert bench.context.consulted.specs == {"next"}
    assert [one.id for one in sheet.sharing_certificate(first, "heat")] == ["last"]
    assert sheet.record.rests_on["others of number C-12"] == "next"
    assert sheet.record.rests_on["others of heat H-7"] == "last"
    assert bench.context.consulted.asked == {("number", "C-12"), ("heat", "H-7")}
    assert bench.context.asked.everything
    bench.context.asked.everything = False
    bare = bench.part("bare")
    assert isinstance(bare, MadePart)
    assert bench.sheet("bare").sharing_certificate(bare, "heat") == ()
    assert not bench.context.asked.everything
    unrecorded = bench.sheet("last", record=False)
    last = bench.part("last")
    assert isinstance(last, MadePart)
    assert unrecorded.sharing_certificate(last, "number") == ()


def test_no_other_is_said_to_be_certified_so_where_a_file_may_be(tmp_path: Path) -> None:
    made = 'kind = "made-part"\nof = "tube"\n[certificate]\nheat = "H-7"\n'
    bench = Bench(tmp_path, {**ALL, "first.toml": made, "next.toml": f"x = 1\n{made}"})
    first = bench.part("first")
    assert isinstance(first, MadePart)
    with pytest.raises(NotAssessed, match=r"^not judged: next\.toml could not be read$"):
        bench.sheet("first").sharing_certificate(first, "heat")


def test_what_some_words_call(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "second.toml": TUBE + 'title = "Tube, left"\n'})
    sheet = bench.sheet()
    assert [one.id for one in sheet.called("left tube")] == ["second"]
    assert sheet.called("right tube") == ()
    assert sheet.record.rests_on["called left tube"] == "second"
    assert sheet.record.rests_on["called right tube"] == "none"
    assert bench.context.consulted.asked == {("called", "left tube"), ("called", "right tube")}
    assert bench.context.consulted.specs == {"second"}
    assert bench.context.asked.everything
    assert bench.sheet(record=False).called("right tube") == ()


def test_what_nothing_uses(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "more.toml": DUTY.replace('id = "duty"', 'id = "more"')})
    sheet = bench.sheet()
    assert [one.id for one in sheet.left_over()] == ["more"]
    assert sheet.record.rests_on["used by nothing"] == "more"
    assert bench.context.consulted.asked == {("unused", "")}
    assert bench.context.consulted.specs == {"more"}
    assert bench.context.asked.everything
    (tmp_path / "a").mkdir()
    none = Bench(tmp_path / "a").sheet()
    assert none.left_over() == ()
    assert none.record.rests_on["used by nothing"] == "none"


def test_the_load_cases_that_a_part_sees(bench: Bench) -> None:
    sheet = bench.sheet()
    assert sheet.cases_of(bench.part("tube")) == ("starting", "running")
    assert sheet.record.rests_on["load cases of tube"] == "starting, running"
    assert sheet.cases_of(bench.part("rack")) == ()
    assert sheet.record.rests_on["load cases of rack"] == "none"
    assert bench.context.consulted.specs == {"tube", "duty", "rack"}


def more_was_asked(bench: Bench) -> bool:
    """Whether more was asked than can be told."""
    return bench.context.asked.everything


def test_the_duty_of_a_part_and_of_one_without(bench: Bench) -> None:
    sheet = bench.sheet()
    assert sheet.duty_of(bench.part("tube")) is bench.context.design.specs["duty"]
    assert not more_was_asked(bench)  # of the part itself a part alike is compared by it
    assert (sheet.record.basis["duty of tube"], sheet.record.rests_on["duty of tube"]) == ("duty", "duty")
    assert sheet.duty_of(bench.part("rack")) is None
    assert more_was_asked(bench)
    assert (sheet.record.basis["duty of rack"], sheet.record.rests_on["duty of rack"]) == ("", "none")
    assert bench.context.consulted.specs == {"tube", "duty", "rack"}


def test_a_part_that_cannot_be_read_beside_the_way_to_the_duty_is_no_matter(tmp_path: Path) -> None:
    """The wagon leads to two racks, of which one cannot be read and the other states a duty."""
    files = {**ALL, "rack.toml": RACK + "x = 1\n", "other.toml": RACK + 'duty = "duty"\n'}
    bench = Bench(tmp_path, files)
    assert bench.sheet("wagon").duty_of(bench.part("wagon")) is bench.context.design.specs["duty"]
    assert bench.context.consulted.specs >= {"rack", "other", "duty"}


def test_a_duty_that_cannot_be_read_ends_the_rule(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "duty.toml": DUTY + "x = 1\n"})
    for asked in (bench.sheet().cases_of, bench.sheet().duty_of):
        with pytest.raises(NotAssessed, match=r"^not judged: duty\.toml could not be read$"):
            asked(bench.part("tube"))


@pytest.mark.parametrize(
    ("notes", "reason"),
    [
        ('[notes]\n"no hoop" = " not wanted "\n', "not wanted"),
        ('[notes]\n"no hoop" = 3\n', ""),
        ('[notes]\nother = "x"\n', ""),
        ("", ""),
    ],
)
def test_the_reason_that_a_part_gives(tmp_path: Path, notes: str, reason: str) -> None:
    bench = Bench(tmp_path, {**ALL, "tube.toml": TUBE + notes})
    sheet = bench.sheet()
    assert sheet.reason_given(bench.part("tube"), "no hoop") == reason
    assert sheet.record.basis["note no hoop of tube"] == repr(reason)
    assert sheet.record.rests_on["note no hoop of tube"] == (reason or "not stated")
    assert bench.context.consulted.specs == {"tube"}
    assert bench.context.asked.everything


def test_the_names_of_a_table(bench: Bench) -> None:
    sheet = bench.sheet()
    assert sheet.names_under(bench.part("wagon"), "bays") == ("left", "middle", "right")
    assert sheet.record.rests_on["entries bays of wagon"] == "left, middle, right"
    assert sheet.names_under(bench.part("rack"), "slots") == ()
    assert sheet.record.rests_on["entries slots of rack"] == "none"
    assert bench.context.consulted.specs == {"wagon", "rack"}
    assert bench.context.asked.everything


def test_places_are_put_on_record_where_there_is_one(bench: Bench) -> None:
    sheet, where = bench.sheet(), Location("wagon.toml", 3, "bays.left")
    sheet.note_place("rack (left)", filled=True, where=where)
    assert [(one.called, one.filled, one.where) for one in sheet.record.places] == [
        ("rack (left)", True, where)
    ]
    bench.sheet(record=False).note_place("rack (left)", filled=True, where=where)
    assert sheet.listed_under() == "tube"
    assert bench.context.consulted.specs >= {"tube"}


def test_a_sheet_that_does_not_record_answers_the_same(bench: Bench) -> None:
    plain, rack, tube = bench.sheet(record=False), bench.part("rack"), bench.part("tube")
    assert plain.filled(rack, Tube, by="held_in", named=None) is tube
    assert plain.nearest(tube, "wagon") is bench.part("wagon")
    assert plain.left_over() == plain.sharing_drawing(tube) == ()
    assert plain.cases_of(tube) == ("starting", "running")
    assert plain.duty_of(rack) is None
    assert plain.reason_given(tube, "x") == ""
    assert plain.names_under(rack, "slots") == ()
    assert plain.silent == []
    assert len(plain.leading_to(rack, Bay, bench.part("wagon"), "bays", by="rack", called="bay")) == 1
    with pytest.raises(ValueError, match="does not record"):
        _ = plain.record


@pytest.mark.parametrize(
    ("key", "ids"),
    [
        ("roof", ["tube"]),
        ("spare", ["rack", "other"]),
        ("bays.*.rack", ["rack", "other"]),
        ("bays.left.rack", []),  # an entry is asked for by a star
        ("note", []),
        ("spare.*", ["rack", "other"]),
        ("roof.*", []),
        ("note.more", []),
    ],
)
def test_the_links_under_a_key(tmp_path: Path, key: str, ids: list[str]) -> None:
    more = 'roof = "tube"\nspare = ["rack", "other"]\nnote = "x"\n'
    bench = Bench(tmp_path, {**ALL, "wagon.toml": WAGON.replace('"wagon"\n', '"wagon"\n' + more)})
    assert [link.id for link in links_under(bench.part("wagon"), key)] == ids
    assert all(isinstance(link, Link) for link in links_under(bench.part("wagon"), key))


def test_the_parts_alike_are_told_with_their_ids(tmp_path: Path) -> None:
    like = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'
    bench = Bench(tmp_path, {**ALL, "fifth.toml": like})
    sheet = bench.sheet()
    assert [one.id for one in sheet.parts_alike(bench.part("tube"))] == ["fifth"]
    assert sheet.record.rests_on["parts alike to tube"] == "fifth"
    assert ("alike", "tube") in bench.context.consulted.asked
    assert bench.context.asked.everything
    assert sheet.parts_alike(bench.part("rack")) == ()
    assert sheet.record.rests_on["parts alike to rack"] == "none"


def test_what_a_part_takes_over_from_another(tmp_path: Path) -> None:
    like = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\nbore = "99 mm ±0.5"\n'
    bench = Bench(tmp_path, {**ALL, "fifth.toml": like})
    sheet = bench.sheet("fifth")
    found = sheet.taken_over(bench.part("fifth"))
    assert (found.id, found.mirrored) == ("tube", False)
    assert 'bore "99 mm ±0.5", not "100 mm ±0.5"' in sheet.record.rests_on["the like of fifth"]
    assert "tube" in bench.context.consulted.specs
    assert {("fifth", "title"), ("tube", "title")} <= bench.context.consulted.words
    assert bench.context.asked.everything
    named = [(step.name, step.value) for step in sheet.record.steps]
    assert ("like", "tube") in named
    assert ('bore, there "100 mm ±0.5"', '"99 mm ±0.5"') in named
    with pytest.raises(NotApplicable, match=r"^it is like no other part$"):
        sheet.taken_over(bench.part("tube"))


def test_a_part_like_another_in_all_says_so(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "fifth.toml": 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'})
    sheet = bench.sheet("fifth")
    sheet.taken_over(bench.part("fifth"))
    assert sheet.record.rests_on["the like of fifth"] == "nothing differs"


def test_only_a_rule_that_reviews_sees_how_others_came_out(bench: Bench) -> None:
    plain = bench.sheet(of=PLAIN)
    name: Any = bench.part("tube").ends  # type: ignore[attr-defined]
    for asked in (plain.outcomes, lambda: plain.other_check(bench.part("tube"), name)):
        with pytest.raises(ValueError, match=r"^test\.placing does not say that it reviews other checks$"):
            asked()


def test_how_other_checks_came_out(bench: Bench) -> None:
    bench.context.outcomes = {"tube": {"tube.stress": "conforms"}}
    bench.context.assumed_by_holds = {"tube": ("tube.stress", "tube.bore")}
    sheet = bench.sheet()
    assert sheet.outcomes() == {"tube.stress": "conforms"}
    assert sheet.record.basis["outcomes"] == "[('tube.stress', 'conforms')]"
    assert bench.context.asked.everything
    assert sheet.assumed_by_holds() == ("tube.stress", "tube.bore")
    assert sheet.record.rests_on["assumed by holds"] == "tube.stress, tube.bore"
    other = bench.sheet("rack")
    assert (other.outcomes(), other.assumed_by_holds()) == ({}, ())
    assert other.record.rests_on["assumed by holds"] == "none"


def test_where_only_some_rules_were_run_nothing_is_said_of_the_others(bench: Bench) -> None:
    bench.context.outcomes = None
    for asked in (bench.sheet().outcomes, bench.sheet().assumed_by_holds):
        with pytest.raises(NotAssessed, match=r"^only some of the rules were run"):
            asked()


def test_the_check_of_another_part(bench: Bench) -> None:
    name: Any = bench.part("tube").ends  # type: ignore[attr-defined]  # the word "open" stands for a rule
    asked: list[tuple[str, str]] = []

    def made(part: str, of: str) -> OtherCheck | str:
        asked.append((part, of))
        return OtherCheck(of, part, "conforms", "all is well", 0.5)

    bench.context.other_check = made
    sheet = bench.sheet("rack")
    assert sheet.other_check(bench.part("tube"), name).used == 0.5
    assert asked == [("tube", "open")]
    assert sheet.record.rests_on["open on tube"] == "conforms, 0.50 of its limit"
    assert bench.context.asked.everything
    bench.context.other_check = no_other
    with pytest.raises(NotAssessed, match=r"^no other check can be made here$") as ended:
        sheet.other_check(bench.part("tube"), name)
    assert ended.value.where.key == "ends"
    assert OtherCheck("a", "b", "not assessed", "").briefly == "not assessed"


def test_a_material_that_nobody_knows(bench: Bench) -> None:
    def find(name: str) -> Any:
        if name != "open":
            raise NotKnown(f"no material is called {name}")
        return name

    bench.context.material = find
    tube: Any = bench.part("tube")
    sheet = bench.sheet()
    assert sheet.knows_material(tube.ends)
    assert sheet.material_named("the ends", tube.ends) == "open"
    bench.context.material = lambda name: find(f"not {name}")
    assert not sheet.knows_material(tube.ends)
    with pytest.raises(NotAssessed, match=r"^no material is called not open$") as ended:
        sheet.material_named("the ends", tube.ends)
    assert ended.value.where.key == "ends"
    with pytest.raises(Unstated):
        sheet.material_of(tube)


def test_concessions_are_told_with_why_their_time_is_over(bench: Bench) -> None:
    bench.context.concessions = lambda part, asking: (("C-1", ""), (f"{part.id} {asking.name}", "it ended"))
    sheet = bench.sheet()
    assert sheet.concessions() == (("C-1", ""), ("tube test.placing", "it ended"))
    assert sheet.record.rests_on["concessions"] == "C-1 in time; tube test.placing it ended"
    assert ("concession C-1", "in time") in [(step.name, step.value) for step in sheet.record.steps]
    assert bench.context.asked.everything
    bench.context.concessions = lambda *_: ()
    none = bench.sheet()
    assert none.concessions() == ()
    assert none.record.rests_on["concessions"] == "none"


def test_a_setting_is_told_also_where_it_is_not_set(bench: Bench) -> None:
    sheet = bench.sheet()
    assert sheet.setting("stage") == "draft"
    assert sheet.record.basis["setting stage"] == "draft"


def test_a_pressure_as_absolute_is_that_above_the_site(bench: Bench) -> None:
    """30 bar gauge at a site of 1.01325 bar absolute."""
    tube: Any = bench.part("tube")
    sheet = bench.sheet()
    assert sheet.take_absolute("p", tube.pressure) == pytest.approx(31.01325e5)
    assert sheet.record.steps[-1].name == "pressure, absolute"
    assert "setting site pressure" in sheet.record.basis
    assert sheet.take_absolute("p", tube.pressure, "of the steam") == pytest.approx(31.01325e5)
    assert sheet.record.steps[-1].name == "of the steam"
    held = replace(tube.pressure, datum="absolute")
    assert bench.sheet().take_absolute("p", held) == pytest.approx(30e5)


def test_what_is_worked_once_is_worked_again_where_it_is_written_down_or_moved(bench: Bench) -> None:
    worked: list[int] = []

    def work() -> int:
        worked.append(1)
        return len(worked)

    plain = bench.sheet(record=False)
    assert [plain.once("a", work), bench.sheet(record=False).once("a", work)] == [1, 1]
    assert plain.once("b", work) == 2
    assert bench.sheet().once("a", work) == 3
    where = Location("tube.toml", 1, "bore")
    for context in (
        replace(bench.context, moved={where: 0.001}),
        replace(bench.context, worded={where: "x"}),
    ):
        before = len(worked)
        assert Sheet(PLAIN, bench.part("tube"), context, Corner(), record=False).once("a", work) == before + 1
    assert plain.once("a", work) == 1


def test_a_line_of_a_result_rests_on_nothing(bench: Bench) -> None:
    sheet = bench.sheet()
    sheet.list_item("step 1", "lay the tube in")
    assert [(step.name, step.value) for step in sheet.record.steps] == [("step 1", "lay the tube in")]
    assert sheet.record.basis == {}
    bench.sheet(record=False).list_item("step 1", "lay the tube in")


def test_an_entry_that_a_table_has_not_ends_the_rule(bench: Bench) -> None:
    tube: Any = bench.part("tube")
    sheet = bench.sheet()
    assert sheet.entry({"open": 3}, tube.ends, "rack") == 3
    with pytest.raises(NotAssessed, match=r"^rack has no entry 'open'$") as ended:
        sheet.entry({"closed": 3}, tube.ends, "rack")
    assert ended.value.where.key == "ends"


def test_a_link_that_leads_nowhere_ends_the_rule(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {**ALL, "rack.toml": RACK + "x = 1\n"})
    tube: Any = bench.part("tube")
    with pytest.raises(NotAssessed, match=r'^held_in leads to "rack", which could not be read as a rack$'):
        bench.sheet().follow(tube.held_in)
    assert "rack" in bench.context.consulted.specs
    assert bench.context.asked.followed == {"rack"}


def test_a_file_that_names_another_entry_fills_none_of_this_name(tmp_path: Path) -> None:
    """It cannot be read, but what it names can: the slot b, and no slot a."""
    broken = TUBE + 'in_slot = "b"\nx = 1\n'
    bench = Bench(tmp_path, {**ALL, "broken.toml": broken})
    rack = bench.part("rack")
    for name, unread in (("a", ()), ("b", ("broken.toml",))):
        sheet = bench.sheet()
        sheet.fillers(rack, Tube, by="held_in", named=("in_slot", name))
        assert sheet.unread_fillers() == unread
    sheet = bench.sheet()
    sheet.fillers(rack, Tube, by="held_in")
    assert sheet.unread_fillers() == ("broken.toml",)
