"""Places that are to be filled: where they are looked for, and what is said of each by the stage of the design."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint import Grade, Sheet, ToFill, filled_once
from speclint.checking import Check
from speclint.errors import Location
from speclint.families import load_families
from speclint.rules.filling import Gravity
from speclint.testing import SETTINGS, DesignFolder, made_family
from tests.tubes import RACK, TUBE, Rack, Tube

OWNER: Any = SimpleNamespace(where=Location("block.toml", 1, ""))


def test_a_place_is_looked_for_where_it_is_stated_else_at_its_owner() -> None:
    stated = Location("block.toml", 12, "bores.left")
    assert ToFill("bore left", "cylinder liner", where=stated).at(OWNER) == stated
    assert ToFill("bore left", "cylinder liner").at(OWNER) == OWNER.where


@pytest.mark.parametrize(
    ("there", "least", "most", "filled", "too_many"),
    [
        (0, 1, 1, False, False),
        (1, 1, 1, True, False),
        (2, 1, 1, True, True),
        (1, 2, 3, False, False),
        (3, 2, 3, True, False),
        (4, 2, 3, True, True),
        (9, 1, 0, True, False),  # without a limit
        (0, 0, 1, True, False),
    ],
)
def test_how_many_parts_fill_a_place(there: int, least: int, most: int, filled: bool, too_many: bool) -> None:
    one = ToFill("bore", "liner", ["liner"] * there, least, most)
    assert (one.filled, one.too_many) == (filled, too_many)


def design(folder: Path, *places: ToFill, gravity: Gravity = "part", stage: str = "released") -> DesignFolder:
    """A rack with a tube, and a rule of places that are given."""

    def known(rack: Rack, sheet: Sheet) -> list[ToFill]:
        """The places given, and one for the tubes in the rack where they are named so."""
        tubes = sheet.fillers(rack, Tube, by="held_in")
        found = []
        for one in places:
            fillers = tubes if list(one.fillers) == ["tubes"] else one.fillers
            found.append(ToFill(one.name, one.wants, fillers, one.least, one.most, one.wrong, one.where))
        return found

    made = filled_once(
        "rack.filled",
        on=Rack,
        places=known,
        row=10,
        gravity=gravity,
        title="Each place of a rack is filled",
        why="what is not there holds nothing",
        leaves_out="nothing",
    )
    loaded = load_families([made_family("racks", [Rack, Tube], [made])])
    settings = SETTINGS.replace('"draft"', f'"{stage}"')
    tube = TUBE.replace('duty = "duty"\n', "")
    return DesignFolder(folder, loaded).write({"rack.toml": RACK, "tube.toml": tube}, settings=settings)


def check(folder: Path, *places: ToFill, gravity: Gravity = "part", stage: str = "released") -> Check:
    return design(folder, *places, gravity=gravity, stage=stage).only("rack.filled")


FULL = ToFill("slot a", "tube", ["tubes"])
EMPTY = ToFill("slot b", "clamp")
TWICE = ToFill("slot c", "tube", ["one", "two"])
WRONG = ToFill("slot d", "tube", ["tubes"], wrong="it stands on its head")


def test_a_place_that_is_filled_conforms_and_says_by_what(tmp_path: Path) -> None:
    found = check(tmp_path, FULL)
    assert (found.outcome, found.says) == ("conforms", "slot a: tube (tube.toml)")
    assert [(one.called, one.filled) for one in found.places] == [("tube (slot a)", True)]


def test_a_place_of_which_nothing_is_wanted_conforms(tmp_path: Path) -> None:
    assert check(tmp_path, ToFill("slot", "clamp", least=0)).says == "slot: none is wanted"


def test_a_part_without_such_places_is_not_concerned(tmp_path: Path) -> None:
    found = check(tmp_path)
    assert (found.outcome, found.says) == ("not applicable", "it has no such place")


@pytest.mark.parametrize(
    ("gravity", "for_review", "released"),
    [
        ("hold", Grade.HOLD, Grade.HOLD),
        ("part", Grade.NONCONFORMITY, Grade.NONCONFORMITY),
        ("plan", Grade.OBSERVATION, Grade.NONCONFORMITY),
        ("plan to hold", Grade.OBSERVATION, Grade.HOLD),
    ],
)
def test_an_empty_place_is_as_grave_as_its_gravity_and_the_stage_make_it(
    tmp_path: Path, gravity: Gravity, for_review: Grade, released: Grade
) -> None:
    for number, (stage, grade) in enumerate((("for-review", for_review), ("released", released))):
        folder = tmp_path / str(number)
        folder.mkdir()
        found = check(folder, FULL, EMPTY, gravity=gravity, stage=stage)
        assert (found.outcome, found.grade) == ("finding", grade)
        assert found.says == "slot b wants a clamp: none is there"
        assert [(one.called, one.filled) for one in found.places] == [
            ("tube (slot a)", True),
            ("clamp (slot b)", False),
        ]


@pytest.mark.parametrize(
    ("place", "says"),
    [
        (ToFill("slot", "eye bolt"), "slot wants an eye bolt: none is there"),
        (ToFill("slot", "Eye bolt"), "slot wants an Eye bolt: none is there"),
        (ToFill("slot", "tube", ["tubes"], least=3, most=4), "slot wants a tube: 1 of 3 are there"),
    ],
)
def test_what_an_empty_place_wants(tmp_path: Path, place: ToFill, says: str) -> None:
    assert check(tmp_path, place).says == says


@pytest.mark.parametrize(("gravity", "grade"), [("hold", Grade.HOLD), ("plan", Grade.NONCONFORMITY)])
@pytest.mark.parametrize("stage", ["draft", "released"])
@pytest.mark.parametrize(
    ("place", "says", "file"),
    [
        (TWICE, "slot c is filled twice (tube): one, two", "rack.toml"),
        (
            ToFill("slot c", "tube", ["one", "two", "three"]),
            "slot c is filled 3 times (tube): one, two, three",
            "rack.toml",
        ),
        (WRONG, "slot d: it stands on its head", "tube.toml"),
        (ToFill("slot d", "tube", wrong="it is a hole", least=0), "slot d: it is a hole", "rack.toml"),
        # what is wrong where it is stated is wrong however many parts are still to be drawn
        (ToFill("slot d", "tube", wrong="it is a hole"), "slot d: it is a hole", "rack.toml"),
        (ToFill("slot d", "tube", ["tubes"], 2, 2, "it is bent"), "slot d: it is bent", "tube.toml"),
    ],
)
def test_a_place_that_is_wrongly_filled_is_told_at_every_stage(
    tmp_path: Path, place: ToFill, says: str, file: str, stage: str, gravity: Gravity, grade: Grade
) -> None:
    found = check(tmp_path, FULL, place, gravity=gravity, stage=stage)
    assert (found.outcome, found.grade, found.says) == ("finding", grade, says)
    assert found.where.file == file


def test_a_place_filled_twice_by_parts_points_at_the_last_of_them(tmp_path: Path) -> None:
    shop = design(tmp_path, FULL)
    shop.write({"rack.toml": RACK, "another.toml": TUBE.replace('duty = "duty"\n', "")})
    found = shop.only("rack.filled")
    assert found.says == "slot a is filled twice (tube): another (another.toml), tube (tube.toml)"
    assert found.where.file == "tube.toml"


def test_an_empty_place_of_a_draft_is_listed_and_no_finding(tmp_path: Path) -> None:
    found = check(tmp_path, FULL, EMPTY, ToFill("slot e", "clamp"), stage="draft")
    assert found.outcome == "not applicable"
    assert found.says == "a draft: 2 still to be drawn, listed under rack"
    assert [one.filled for one in found.places] == [True, False, False]


def test_a_draft_without_empty_places_conforms(tmp_path: Path) -> None:
    assert check(tmp_path, FULL, stage="draft").outcome == "conforms"


def test_a_wrong_place_of_a_draft_is_told_beside_the_empty_ones(tmp_path: Path) -> None:
    found = check(tmp_path, EMPTY, TWICE, FULL, stage="draft")
    assert (found.outcome, found.says) == ("finding", "slot c is filled twice (tube): one, two")
    assert len(found.failing) == 1


def test_a_place_of_a_draft_that_is_wrong_and_not_filled_stays_on_its_list(tmp_path: Path) -> None:
    half = ToFill("slot d", "tube", ["tubes"], least=2, most=2, wrong="it is bent")
    found = check(tmp_path, half, EMPTY, stage="draft")
    assert (found.outcome, found.says) == ("finding", "slot d: it is bent")
    assert [(one.called, one.filled) for one in found.places] == [
        ("tube (slot d)", False),
        ("clamp (slot b)", False),
    ]
    (tmp_path / "sound").mkdir()
    half = ToFill("slot d", "tube", ["tubes"], least=2, most=2)
    assert check(tmp_path / "sound", half, EMPTY, stage="draft").outcome == "not applicable"


def test_a_file_that_cannot_be_read_makes_nothing_right(tmp_path: Path) -> None:
    shop = design(tmp_path, ToFill("slot d", "tube", ["tubes"], 2, 2, "it is bent"), EMPTY)
    tube = TUBE.replace('duty = "duty"\n', "")
    shop.write({"more.toml": tube + "x = 1\n"})
    found = shop.only("rack.filled", readable=False)
    assert (found.outcome, found.says) == ("finding", "slot d: it is bent")
    assert found.missing == ("not judged: more.toml could not be read",)


def test_a_file_that_cannot_be_read_may_fill_what_seems_empty(tmp_path: Path) -> None:
    """What is filled is judged; nothing is said of the rest but that it was not."""
    shop = design(tmp_path, EMPTY)
    tube = TUBE.replace('duty = "duty"\n', "")
    shop.write({"more.toml": tube + "x = 1\n"}, settings=SETTINGS.replace('"draft"', '"released"'))
    found = shop.only("rack.filled", readable=False)
    assert (found.outcome, found.says) == ("not assessed", "not judged: more.toml could not be read")
    assert found.where.file == "more.toml"
    shop.write({"other.toml": tube + "y = 1\n"})
    found = shop.only("rack.filled", readable=False)
    assert found.says == "not judged: more.toml and other.toml could not be read"
    (tmp_path / "b").mkdir()
    shop = design(tmp_path / "b", FULL, EMPTY)
    shop.write({"more.toml": tube + "x = 1\n"}, settings=SETTINGS.replace('"draft"', '"released"'))
    found = shop.only("rack.filled", readable=False)
    assert (found.outcome, found.missing) == ("not assessed", ("not judged: more.toml could not be read",))
    assert [(one.called, one.filled) for one in found.places] == [("tube (slot a)", True)]
    (tmp_path / "c").mkdir()
    shop = design(tmp_path / "c", WRONG, EMPTY)
    shop.write({"more.toml": tube + "x = 1\n"}, settings=SETTINGS.replace('"draft"', '"released"'))
    found = shop.only("rack.filled", readable=False)
    assert (found.outcome, found.says) == ("finding", "slot d: it stands on its head")
    assert found.missing == ("not judged: more.toml could not be read",)


@pytest.mark.parametrize(
    ("gravity", "grade", "gravest"),
    [
        ("hold", Grade.HOLD, Grade.HOLD),
        ("part", Grade.NONCONFORMITY, Grade.NONCONFORMITY),
        ("plan", Grade.NONCONFORMITY, Grade.NONCONFORMITY),
        ("plan to hold", Grade.NONCONFORMITY, Grade.HOLD),
    ],
)
def test_the_grades_that_the_rule_declares(
    tmp_path: Path, gravity: Gravity, grade: Grade, gravest: Grade
) -> None:
    (made,) = design(tmp_path, FULL, gravity=gravity).loaded.rules
    assert (made.grade, made.gravest, made.row) == (grade, gravest, 10)
    assert made.leaves_out.startswith("nothing; whether a place may be left empty")
