"""What is kept is found again where nothing that it consulted has changed: each sort of question by itself."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path

import pytest

from speclint.checking import Check, KeptFolder
from speclint.checking.code_digest import code_of
from speclint.checking.inputs import Inputs
from speclint.checking.kept_results import KeptResults
from speclint.checking.packing import packed
from speclint.checking.remedy import Remedy, Sought
from speclint.errors import Location, replace
from speclint.repository import Register
from speclint.repository.drawing_reading import DrawingReading
from speclint.rules import Consulted
from speclint.rules.consulted import class_in_full
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.tubes import DUTY, FILES, RACK, TUBE, Tube

TODAY = dt.date(2026, 3, 10)
NUMBERED = TUBE + 'drawing = "T-12"\n'
ALL = {**FILES, "tube.toml": NUMBERED, "other.toml": RACK}


@pytest.fixture(autouse=True, scope="module")
def _of_this_test() -> Iterator[None]:
    """The family of tubes is made in memory: its name stands for its code."""
    with pytest.MonkeyPatch.context() as patch:
        tubes.code_known(patch)
        yield


class Office:
    """A design that is changed, and what is kept of it."""

    def __init__(self, folder: Path) -> None:
        self.shop = DesignFolder(folder / "design", tubes.tubes())
        self.shop.root.mkdir()
        self.shop.write(ALL)
        self.folder = KeptFolder(folder / "kept")
        self.register = Register("register.toml")
        self.today = TODAY

    def kept(self) -> KeptResults:
        """What is kept, as a new run finds it."""
        found = self.shop.assess()
        assert found.design is not None
        inputs = Inputs(found.design, {}, {}, self.register, self.today)
        results = KeptResults(self.folder, inputs, self.shop.loaded, code_of(self.shop.loaded))
        results.of_rules(self.shop.loaded.rules)
        return results

    def check(self, consulted: Consulted) -> Check:
        """A check that consulted so much."""
        return replace(self.shop.only("tube.stress", "tube", readable=False), consulted=consulted)

    def keep(self, consulted: Consulted) -> Check:
        check = self.check(consulted)
        self.kept().keep_checks("tube", [check])
        assert self.kept().checks_of("tube") == [check]
        return check

    def holds(self) -> bool:
        """Whether what was kept of the tube still holds."""
        return self.kept().checks_of("tube") is not None


@pytest.fixture
def office(tmp_path: Path) -> Office:
    return Office(tmp_path)


def test_a_spec_that_was_consulted_is_as_it_was(office: Office) -> None:
    office.keep(Consulted({"rack"}))
    office.shop.write(
        {"other.toml": RACK.replace("106", "107"), "duty.toml": DUTY.replace("12 bar", "13 bar")}
    )
    assert office.holds()
    office.shop.write({"rack.toml": RACK.replace("106", "107")})
    assert not office.holds()
    office.shop.write({"rack.toml": RACK})
    assert office.holds()


def test_a_spec_that_is_not_there_or_cannot_be_read_is_another_than_one_that_is(office: Office) -> None:
    office.keep(Consulted({"nobody"}))
    office.shop.write({"nobody.toml": RACK + "x = 1\n"})
    assert not office.holds()
    office.keep(Consulted({"nobody"}))
    office.shop.write({"nobody.toml": RACK})
    assert not office.holds()
    (office.shop.root / "nobody.toml").unlink()
    assert office.holds()  # as it was at first


def test_a_spec_of_no_known_kind_is_another_than_none(office: Office) -> None:
    """A link that leads to nothing and one to a file that cannot be told are told otherwise."""
    office.keep(Consulted({"nobody"}))
    office.shop.write({"nobody.toml": 'kind = "rck"\n'})
    assert not office.holds()
    office.keep(Consulted({"nobody"}))
    (office.shop.root / "nobody.toml").unlink()
    assert office.holds()  # as it was at first


def test_a_word_of_a_drawing_counts_where_it_was_read(office: Office) -> None:
    office.keep(Consulted({"rack"}, {("rack", "title")}))
    office.shop.write({"rack.toml": RACK + 'prepared_by = "M. Coyle"\n'})
    assert office.holds()
    office.shop.write({"rack.toml": RACK + 'title = "A rack"\n'})
    assert not office.holds()


def test_the_parts_that_link_to_one_are_the_same(office: Office) -> None:
    """Of that kind; another part that links there is nothing to it."""
    office.keep(Consulted(linked={("rack", class_in_full(Tube))}))
    office.shop.write({"second.toml": TUBE.replace('"rack"', '"other"')})
    assert office.holds()
    office.shop.write({"second.toml": TUBE})
    assert not office.holds()
    office.keep(Consulted(linked={("rack", class_in_full(tubes.Rack))}))
    office.shop.write({"third.toml": TUBE})
    assert office.holds()


@pytest.mark.parametrize(
    ("asked", "nothing_to_it", "another"),
    [
        (("alike", "tube"), {"x.toml": RACK}, {"x.toml": 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'}),
        (
            ("drawing", "T-12"),
            {"x.toml": TUBE + 'drawing = "T-13"\n'},
            {"x.toml": TUBE + 'drawing = "t-12"\n'},
        ),
        (
            ("number", "C-12"),
            {"x.toml": 'kind = "made-part"\n[certificate]\nheat = "C-12"\n'},
            {"x.toml": 'kind = "made-part"\n[certificate]\nnumber = "c-12"\n'},
        ),
        (
            ("heat", "C-12"),
            {"x.toml": 'kind = "made-part"\n[certificate]\nnumber = "C-12"\n'},
            {"x.toml": 'kind = "made-part"\n[certificate]\nheat = "C-12"\n'},
        ),
        (
            ("called", "left tube"),
            {"x.toml": TUBE + 'title = "Tube"\n'},
            {"x.toml": TUBE + 'title = "Tube, left"\n'},
        ),
        (
            ("unused", ""),
            {"x.toml": RACK + 'duty = "duty"\n'},
            {"x.toml": DUTY.replace('id = "duty"', 'id = "more"')},
        ),
    ],
)
def test_a_question_to_the_whole_repository_has_the_same_answer(
    office: Office, asked: tuple[str, str], nothing_to_it: dict[str, str], another: dict[str, str]
) -> None:
    office.keep(Consulted(asked={asked}))
    office.shop.write(nothing_to_it)
    assert office.holds()
    office.shop.write(another)
    assert not office.holds()


def test_the_drawing_of_a_part_and_its_readings_are_as_they_were(office: Office) -> None:
    asked = Consulted(asked={("drawing file", "tube")})
    office.keep(asked)  # it names no file
    office.shop.write({"tube.toml": NUMBERED + 'drawing_file = "tube.svg"\n', "tube.svg": "<svg/>"})
    office.keep(asked)
    office.shop.write({"tube.svg": "<svg />"})
    assert not office.holds()
    office.keep(asked)
    digest = "0" * 64
    reading = DrawingReading("R-1", "tube", "tube.svg", digest, "M. Coyle", TODAY)
    office.register = Register("register.toml", readings=(replace(reading, component="rack"),))
    assert office.holds()  # that is of another part
    office.register = Register("register.toml", readings=(reading,))
    assert not office.holds()
    office.keep(Consulted(asked={("drawing file", "nobody")}))
    office.keep(Consulted(asked={("drawing file", "duty")}))


def test_what_judges_it_is_as_it_was(office: Office) -> None:
    office.keep(Consulted())
    office.today = TODAY + dt.timedelta(days=1)
    assert not office.holds()
    office.today = TODAY
    assert office.holds()
    office.shop.write({}, settings=SETTINGS.replace("1.01325", "0.95"))
    assert not office.holds()
    office.shop.write({})
    office.shop.write({"broken.toml": TUBE + "x = 1\n"})
    assert not office.holds()


def test_what_could_not_be_run_is_not_kept(office: Office) -> None:
    check = replace(office.check(Consulted()), could_not_run="it broke off")
    office.kept().keep_checks("tube", [office.check(Consulted()), check])
    assert not office.holds()
    office.kept().keep_again(check, check, "x")
    assert office.kept().again_of(check, "x") is None


def test_the_specs_that_kept_checks_consulted(office: Office) -> None:
    office.keep(
        Consulted(
            {"tube", "rack"}, {("duty", "title")}, {("other", class_in_full(Tube))}, asked={("unused", "")}
        )
    )
    assert office.kept().consulted_by("tube") == {"tube", "rack", "duty", "other"}
    assert office.kept().consulted_by("rack") is None


def test_a_check_with_other_values_is_kept_by_their_digest(office: Office) -> None:
    check = office.check(Consulted({"tube"}))
    again = replace(check, says="with other values", consulted=Consulted({"rack"}))
    office.kept().keep_again(check, again, "one")
    kept = office.kept()
    assert kept.again_of(check, "one") == again
    assert kept.again_of(check, "other") is None
    office.shop.write({"rack.toml": RACK.replace("106", "107")})
    assert office.kept().again_of(check, "one") is None


def test_remedies_are_kept_by_the_finding_and_what_they_could_spoil(office: Office) -> None:
    found = replace(office.check(Consulted({"tube"})), outcome="finding")
    other = replace(office.shop.only("tube.loose-hot"), consulted=Consulted())
    remedy = Remedy(Location("tube.toml", 4, "bore"), "bore", 0.1, 0.09, "m", "mm", None)
    sought = Sought((remedy,))
    office.kept().keep_remedies(found, [other], sought, Consulted({"rack"}))
    kept = office.kept()
    assert kept.remedies_of(found, [other]) == sought
    assert kept.remedies_of(found, []) is None
    assert kept.remedies_of(replace(found, says="otherwise"), [other]) is None
    assert kept.remedies_of(replace(found, fingerprint="other"), [other]) is None
    assert kept.remedies_of(found, [replace(other, fingerprint="other")]) is None
    assert kept.remedies_of(found, [replace(other, fingerprint="x", corners={"": {"a": True}})]) is None
    office.shop.write({"rack.toml": RACK.replace("106", "107")})
    assert office.kept().remedies_of(found, [other]) is None  # the remedies rest on the rack


def test_what_rests_on_the_code_alone_is_kept_whatever_the_design(office: Office) -> None:
    office.kept().keep_of_code("a list", b"body")
    office.shop.write({"rack.toml": RACK.replace("106", "107")}, settings=SETTINGS.replace("1.01325", "0.95"))
    assert office.kept().of_code("a list") == b"body"
    assert office.kept().of_code("another") is None


def test_what_some_specs_state_has_one_digest(office: Office) -> None:
    kept = office.kept()
    before = kept.stated_in(["tube", "rack"])
    assert before != kept.stated_in(["rack", "tube"]) != kept.stated_in(["rack"])
    office.shop.write({"rack.toml": RACK.replace("106", "107")})
    after = office.kept()
    assert after.stated_in(["tube", "rack"]) != before
    assert after.stated_in(["tube"]) == kept.stated_in(["tube"])


@pytest.mark.parametrize(
    "other", ["a word", 3, (1, 2, 3), ("no trace",), ((), b"no result"), ((), packed("a word"))]
)
def test_a_file_that_holds_something_else_is_as_if_it_were_not_there(office: Office, other: object) -> None:
    kept = office.kept()
    office.folder.write(kept._name_of("tube"), packed(other))
    assert kept.checks_of("tube") is None
    office.folder.write(kept._name_of("tube"), packed(((), packed(["kept"]))))
    assert kept.checks_of("tube") == ["kept"]
