"""A design while its files are edited: each text is seen at once, and what it does not concern stays as it was read."""

from __future__ import annotations

from pathlib import Path
from typing import Any, ClassVar

import pytest

from speclint.errors import Complaint
from speclint.families import load_families
from speclint.quantities import Measure
from speclint.repository import EditedDesign, open_repository
from speclint.specs import NOT_STATED, Component, FitsIn, Length, LinkTo
from speclint.testing import SETTINGS, DesignFolder, made_family
from tests.tubes import FILES, RACK, TUBE, entry_point


class Hook(Component):
    """A hook that hangs on an eye, and may hold one."""

    kind: ClassVar[str] = "hook"
    called: ClassVar[str] = "hook"
    hosts: ClassVar[tuple[FitsIn, ...]] = (FitsIn("size", "hangs_on", "size"),)

    hangs_on: LinkTo[Eye] = NOT_STATED
    size: Length = NOT_STATED


class Eye(Component):
    """An eye that hangs on a hook."""

    kind: ClassVar[str] = "eye"
    called: ClassVar[str] = "eye"

    hangs_on: LinkTo[Hook] = NOT_STATED
    size: Length = NOT_STATED


EYE = 'kind = "eye"\nsize = "30 mm"\n'
HOOK = 'kind = "hook"\nhangs_on = "eye"\nsize = "20 mm"\n'
HUNG = {**FILES, "eye.toml": EYE, "hook.toml": HOOK}
LOADED = load_families([entry_point("tubes"), made_family("hooks", [Hook, Eye], [])])


def edited(folder: Path, files: dict[str, str], settings: str = SETTINGS) -> EditedDesign:
    shop = DesignFolder(folder, LOADED).write(files, settings=settings)
    opened = open_repository([shop.root], LOADED.kinds)
    return EditedDesign(opened.design, LOADED.kinds)


def size(one: EditedDesign, spec: str, key: str) -> float:
    found = dict(one.design.specs[spec].at_keys())[key]
    assert isinstance(found, Measure)
    return found.nominal


def said(complaints: tuple[Complaint, ...]) -> list[str]:
    return [str(one) for one in complaints]


def test_a_text_stands_in_the_place_of_a_file_until_it_is_taken_back(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    before = one.design
    rack = before.specs["rack"]
    assert one.edit("tube.toml", TUBE.replace("100 mm", "98 mm")) == ()
    assert size(one, "tube", "bore") == 0.098
    assert one.design.specs["rack"] is rack  # not read anew
    assert one.design.specs["tube"] is not before.specs["tube"]
    assert one.design.files == before.files
    assert one.design.selected == frozenset(before.files)
    assert (one.design.alike, one.design.cut, one.design.complaints) == ({}, frozenset(), ())
    assert one.design.unread == ()
    assert one.edit("tube.toml", None) == ()
    assert size(one, "tube", "bore") == 0.1


def test_a_file_that_is_not_saved_yet_is_there_while_its_text_is(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    assert one.names_in("new.toml") == ()
    assert one.edit("new.toml", RACK.replace("106 mm", "200 mm")) == ()
    assert size(one, "new", "hole") == 0.2
    assert one.names_in("new.toml") == ("new",)
    assert "new" in one.design.selected
    assert one.edit("new.toml", None) == ()
    assert one.names_in("new.toml") == ()
    assert "new" not in one.design.specs
    with pytest.raises(KeyError):
        one.design.specs["new"]


def test_the_ids_of_a_file_are_in_their_order(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    of_each = TUBE.replace('kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["right", "left"]')
    assert one.edit("tube.toml", of_each) == ()
    assert one.names_in("tube.toml") == ("tube-right", "tube-left")
    assert set(one.design.specs) == {"tube-right", "tube-left", "rack", "duty", "eye", "hook"}
    assert one.design.index.linking_to("rack") == ("tube-left", "tube-right")


def test_what_cannot_be_read_is_said_and_missing_until_it_can(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    (complaint,) = one.edit("tube.toml", TUBE.replace("100 mm", "100 furlongs"))
    assert (complaint.where.file, complaint.where.key) == ("tube.toml", "bore")
    assert "tube" not in one.design.specs
    assert one.design.files["tube"] == "tube.toml"
    assert [unread.file for unread in one.design.unread] == ["tube.toml"]
    (broken,) = one.edit("tube.toml", 'kind = "tube\n')
    assert broken.where.file == "tube.toml"
    assert one.edit("tube.toml", TUBE) == ()
    assert one.design.unread == ()
    assert size(one, "tube", "bore") == 0.1


def test_what_could_not_be_read_when_it_was_opened_is_missing_until_it_can(tmp_path: Path) -> None:
    one = edited(tmp_path, {**HUNG, "rack.toml": RACK + "x = 1\n"})
    assert one.edit("tube.toml", TUBE) == ()
    assert [unread.file for unread in one.design.unread] == ["rack.toml"]
    assert one.edit("rack.toml", RACK) == ()
    assert one.design.unread == ()
    assert size(one, "rack", "hole") == 0.106


def test_an_id_of_another_file_is_not_taken(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    same = TUBE.replace("100 mm", "98 mm") + 'id = "rack"\n'
    (complaint,) = one.edit("new.toml", same)
    assert (complaint.where.file, complaint.where.key, complaint.read) == ("new.toml", "id", '"rack"')
    assert complaint.message == "rack.toml has the same id"
    assert one.design.specs["rack"].kind == "rack"
    assert one.names_in("new.toml") == ()


def test_of_an_id_that_is_taken_and_cannot_be_read_the_first_line_is_named(tmp_path: Path) -> None:
    one = edited(tmp_path, {**HUNG, "sub/rack.txt": ""})
    complaints = one.edit("sub/rack.toml", 'kind = "rack\n')
    assert [(one.where.file, one.where.line, one.where.key) for one in complaints if one.where.key] == [
        ("sub/rack.toml", 1, "id")
    ]


LIKE = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'


def test_parts_alike_are_read_anew_with_the_one_that_they_are_like(tmp_path: Path) -> None:
    one = edited(tmp_path, {**HUNG, "second.toml": LIKE, "third.toml": LIKE})
    alike = {"second": "tube", "third": "tube"}
    assert one.design.alike == alike
    assert one.edit("tube.toml", TUBE.replace("100 mm", "98 mm")) == ()
    assert (size(one, "second", "bore"), size(one, "third", "bore")) == (0.098, 0.098)
    assert one.design.alike == alike
    assert one.edit("second.toml", LIKE + 'outside = "107 mm"\n') == ()
    assert (size(one, "second", "outside"), size(one, "second", "bore")) == (0.107, 0.098)
    assert size(one, "third", "outside") == 0.105
    assert one.design.alike == alike
    before = one.design.specs["third"]
    assert one.edit("rack.toml", RACK.replace("106 mm", "107 mm")) == ()
    assert one.design.specs["third"] is before  # which is in the rack, and not like it
    assert one.edit("second.toml", LIKE) == ()
    assert one.design.specs["third"] is before


def test_a_part_becomes_like_another_and_is_so_no_longer(tmp_path: Path) -> None:
    one = edited(tmp_path, {**HUNG, "second.toml": TUBE.replace("100 mm", "99 mm")})
    assert one.design.alike == {}
    assert one.edit("second.toml", LIKE) == ()
    assert (one.design.alike, size(one, "second", "bore")) == ({"second": "tube"}, 0.1)
    assert one.edit("second.toml", None) == ()
    assert (one.design.alike, size(one, "second", "bore")) == ({}, 0.099)


def test_what_a_part_alike_is_wrong_in_is_not_said_of_the_text_that_is_edited(tmp_path: Path) -> None:
    """The complaints are those of the specs of the file; the part alike is missing all the same."""
    one = edited(tmp_path, {**HUNG, "second.toml": LIKE})
    complaints = one.edit("tube.toml", TUBE.replace("100 mm", "100 furlongs"))
    assert {complaint.where.file for complaint in complaints} == {"tube.toml"}
    assert "second" not in one.design.specs


def test_links_are_followed_as_they_are_edited(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    assert one.design.index.linking_to("rack") == ("tube",)
    (complaint,) = one.edit("tube.toml", TUBE.replace('held_in = "rack"', 'held_in = "rak"'))
    assert said((complaint,)) == ['tube.toml:10 held_in: no spec has this id; read "rak"; write "rack"']
    assert one.design.index.linking_to("rack") == ()
    assert one.edit("tube.toml", TUBE) == ()
    assert one.design.index.linking_to("rack") == ("tube",)


def test_what_does_not_go_with_its_neighbours_is_said(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    (complaint,) = one.edit("hook.toml", HOOK.replace("20 mm", "31 mm"))
    assert complaint.message.startswith("size does not go into that of eye.toml")


def test_a_loop_is_cut_as_soon_as_it_is_closed_and_no_longer_than_it_is(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    assert one.design.cut == frozenset()
    one.edit("eye.toml", EYE + 'hangs_on = "hook"\n')
    assert len(one.design.cut) == 1
    looped = one.design.cut
    one.edit("tube.toml", TUBE.replace("100 mm", "98 mm"))  # which has no part in it
    assert one.design.cut == looped
    one.edit("eye.toml", EYE)
    assert one.design.cut == frozenset()


def test_each_key_that_is_struck_stands_on_the_design_as_it_was_opened(tmp_path: Path) -> None:
    """Not on that of the key before, which would make a chain as long as the text."""
    one = edited(tmp_path, HUNG)
    opened = one.design.specs
    for text in (TUBE.replace("100 mm", "98 mm"), TUBE.replace("100 mm", "97 mm")):
        one.edit("tube.toml", text)
        one.edit("rack.toml", RACK.replace("106 mm", "107 mm"))
    specs: Any = one.design.specs
    assert specs._specs is opened
    assert (size(one, "tube", "bore"), size(one, "rack", "hole")) == (0.097, 0.107)


def test_one_complaint_is_said_once_and_all_in_their_order(tmp_path: Path) -> None:
    one = edited(tmp_path, HUNG)
    of_each = TUBE.replace('kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["right", "left"]')
    wrong = of_each.replace("105 mm ±0.5", "105 kg").replace("100 mm ±0.5", "100 kg")
    assert [(complaint.where.line, complaint.where.key) for complaint in one.edit("tube.toml", wrong)] == [
        (6, "bore"),
        (7, "outside"),
    ]


NAMED = """
materials = ["metals.toml"]
[signers]
file = "signers.toml"
[made]
mappings = ["machine.toml"]
[tables]
mappings = ["shop.toml"]
"""


@pytest.mark.parametrize(
    ("file", "is_spec"),
    [
        ("tube.toml", True),
        ("new.toml", True),
        ("sub/new.toml", True),
        ("notes.txt", False),
        ("speclint.toml", False),
        ("sub/speclint.toml", False),
        (".hidden.toml", False),  # which was passed over
        ("metals.toml", False),
        ("machine.toml", False),
        ("shop.toml", False),
        ("register.toml", False),
        ("signers.toml", False),
    ],
)
def test_which_files_hold_specs(tmp_path: Path, file: str, is_spec: bool) -> None:
    settings = NAMED + SETTINGS
    one = edited(tmp_path, {**HUNG, ".hidden.toml": TUBE}, settings)
    assert one.is_spec(file) is is_spec
