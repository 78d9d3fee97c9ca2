"""Mappings of tables, places of new files, other specs in a design, and the names that may stand under a key."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from speclint.errors import DesignError, SettingsError, TableError
from speclint.repository import Change, DraftedDesign, Known, ids_named, names_for
from speclint.repository.change import changed_table, changed_tree, component_and_key
from speclint.repository.other_specs import with_specs
from speclint.repository.parts_from_table import written_folder
from speclint.repository.table_mappings import read_mapping, read_parts_mapping
from speclint.repository.toml_tables import read_toml
from speclint.repository.unknown_names import _AnyPart, _under
from speclint.specs import Table, bare
from speclint.testing import DesignFolder, installed_families
from tests import tubes
from tests.repository.test_unknown_names import FILES as NAMED

MAPPING = '[columns]\ndimension = "Mass"\nvalue = "Ist"\n[units]\nvalue = "mm"\n'


def mapping(folder: Path, text: str) -> Path:
    (folder / "shop.toml").write_text(text, encoding="utf-8")
    return folder


def test_a_mapping_tells_what_each_column_holds_and_its_unit(tmp_path: Path) -> None:
    found = read_mapping(mapping(tmp_path, MAPPING), "shop.toml")
    assert (found.column("dimension"), found.column("value"), found.column("date")) == ("Mass", "Ist", "")
    assert (found.unit_of("value"), found.unit_of("uncertainty")) == ("mm", "")
    assert (found.layout.heading, found.layout.separator, found.layout.sheet) == (1, ",", "")
    assert found.decimal_mark == "."


def test_a_mapping_may_lay_out_its_table_otherwise(tmp_path: Path) -> None:
    text = 'heading = 3\nseparator = ";"\ndecimal = ","\nsheet = "Blatt 2"\n' + MAPPING
    found = read_mapping(mapping(tmp_path, text), "shop.toml")
    assert (found.layout.heading, found.layout.separator, found.layout.sheet) == (3, ";", "Blatt 2")
    assert found.decimal_mark == ","


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (
            MAPPING.replace('dimension = "Mass"\n', ""),
            "shop.toml columns: no column holds the dimension; write dimension = ",
        ),
        (
            MAPPING.replace('value = "Ist"\n', ""),
            "shop.toml columns: no column holds the value; write value = ",
        ),
        (MAPPING + "x = 1\n", "shop.toml:6 units.x: "),
        ("[columns\n", "shop.toml:1"),
    ],
)
def test_a_mapping_that_cannot_be_read_is_told(tmp_path: Path, text: str, line: str) -> None:
    with pytest.raises(SettingsError) as refused:
        read_mapping(mapping(tmp_path, text), "shop.toml")
    assert str(refused.value).startswith(line)


def test_every_fault_of_a_mapping_has_a_line_of_its_own(tmp_path: Path) -> None:
    with pytest.raises(SettingsError) as refused:
        read_parts_mapping(mapping(tmp_path, 'heading = "one"\nseparator = "-"\n'), "shop.toml")
    assert [line.split(":")[1].split()[1] for line in str(refused.value).splitlines()] == [
        "heading",
        "separator",
    ]


@pytest.mark.parametrize(("folder", "name"), [("", ""), (".", ""), ("parts", "parts"), ("a/../b/c", "b/c")])
def test_a_folder_is_named_from_the_root(tmp_path: Path, folder: str, name: str) -> None:
    assert written_folder(tmp_path, folder) == name


def test_a_folder_outside_of_the_repository_is_refused(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"^\.\./other: the new specs go into a folder of the repository$"):
        written_folder(tmp_path, "../other")


def test_a_design_with_other_specs_in_the_place_of_some(tmp_path: Path) -> None:
    wider = tubes.TUBE.replace("100 mm", "101 mm")
    for name, text in (("a", tubes.TUBE), ("b", wider)):
        (tmp_path / name).mkdir()
        DesignFolder(tmp_path / name, tubes.tubes()).write({**tubes.FILES, "tube.toml": text})
    one, other = (DesignFolder(tmp_path / name, tubes.tubes()).assess().design for name in ("a", "b"))
    assert one is not None
    assert other is not None
    found = with_specs(one, {"tube": other.specs["tube"]})
    assert found.specs["tube"] is other.specs["tube"]
    assert found.specs["rack"] is one.specs["rack"]
    assert ("tube" in found.specs, "nobody" in found.specs) == (True, False)
    assert (set(found.specs), len(found.specs)) == (set(one.specs), 3)
    assert found.index.linking_to("rack") == ("tube",)
    assert one.specs["tube"] is not other.specs["tube"]


def known(folder: Path) -> tuple[Any, Known]:
    design = DesignFolder(folder).write(NAMED).assess().design
    assert design is not None
    return design, Known(design.specs, design.files, design.index)


@pytest.mark.parametrize(
    ("spec", "path", "names"),
    [
        ("liner", ("in_bore",), {"left", "right"}),
        ("block", ("ends", "front", "of_bore"), {"left", "right"}),
        ("block", ("ends", "*", "of_bore"), {"left", "right"}),
        ("block", ("ends", "rear", "of_bore"), set()),  # which is not stated
        ("block", ("bores", "left", "diameter"), set()),  # which is no name
        ("plan", ("welds", "seam", "seen_through"), {"chest", "outside"}),
    ],
)
def test_the_names_that_may_stand_under_a_key(
    tmp_path: Path, spec: str, path: tuple[str, ...], names: set[str]
) -> None:
    design, some = known(tmp_path)
    assert names_for(design.specs[spec], path, some) == names


def test_the_names_of_a_table_that_is_not_stated_yet_are_given_where_they_are_asked_for(
    tmp_path: Path,
) -> None:
    design, some = known(tmp_path)
    path = ("ends", "rear", "of_bore")
    assert names_for(design.specs["block"], path, some, of_unstated=True) == {"left", "right"}
    assert names_for(design.specs["block"], ("ends", "front", "of_bore"), some, of_unstated=True) == {
        "left",
        "right",
    }


@dataclass
class Holder:
    """A table with a key."""

    key: Any = 3
    entries: tuple[Any, ...] = field(default=())


@pytest.mark.parametrize(
    ("value", "key", "found"),
    [
        ({"a": 1, "b": 2}, "*", [1, 2]),
        ({"a": 1, "b": 2}, "b", [2]),
        ({"a": 1}, "c", [None]),
        ((7, 8), "1", [7]),
        ((7, 8), "2", [8]),
        ((7, 8), "0", []),
        ((7, 8), "3", []),
        ((7, 8), "x", []),
        ((7, 8), "*", []),
        (Holder(), "key", [3]),
        (Holder(), "none", [None]),
        (Holder(), "*", []),
    ],
)
def test_what_stands_under_a_key(value: object, key: str, found: list[object]) -> None:
    assert list(_under(value, key)) == found


@pytest.mark.parametrize(
    ("name", "beside", "said"),
    [
        ("lines", (), '"liner"'),
        ("zzzzzz", (), "the id of a component"),
        ("zzzzzz", ("-9", "9"), 'the id of a component, or "-9" to "9"'),
    ],
)
def test_of_all_components_the_nearest_is_offered(name: str, beside: tuple[str, ...], said: str) -> None:
    assert _AnyPart("no part has this id", frozenset({"liner", "block"}), beside).one_of(name) == said


def test_the_places_that_name_a_part_in_a_word(tmp_path: Path) -> None:
    """The seat of an access plan is the name of a table; links are told elsewhere."""
    design, _ = known(tmp_path)
    kinds = installed_families().kinds
    assert [str(one) for one in ids_named(design, kinds, "seat")] == ["plan.toml:6 seats.seat"]
    assert list(ids_named(design, kinds, "weldment")) == []
    assert list(ids_named(design, kinds, "nobody")) == []


LISTED = """
kind = "rack"
issued = [{ to = "a", n = [1, 2] }, { to = "b" }]
[slots.left]
width = "120 mm"
"""


def table() -> Any:
    found = read_toml(Path("rack.toml"), "rack.toml", content=LISTED.encode())
    assert isinstance(found, Table)
    return found


def test_an_entry_of_a_list_is_set_added_to_and_left_out() -> None:
    changed = changed_table(table(), Change("rack", "issued[1].to", "c"))
    assert bare(changed)["issued"] == [{"to": "a", "n": [1, 2]}, {"to": "c"}]
    assert bare(table())["issued"][1] == {"to": "b"}
    inner = changed_table(table(), Change("rack", "issued[0].n[1]", 5))
    assert bare(inner)["issued"][0]["n"] == [1, 5]
    less = changed_table(table(), Change("rack", "issued[0]", absent=True))
    assert bare(less)["issued"] == [{"to": "b"}]
    new: Any = changed_table(table(), Change("rack", "issued[1].more", {"x": [1, {"y": 2}]}))
    assert bare(new)["issued"][1] == {"to": "b", "more": {"x": [1, {"y": 2}]}}
    made = new["issued"][1]["more"]["x"][1]["y"]
    assert (made.where.file, made.where.key) == ("rack.toml", "issued[1].more.x[1].y")


def test_a_table_that_is_not_there_is_made_on_the_way() -> None:
    changed: Any = changed_table(table(), Change("rack", "slots.right.width", "90 mm"))
    assert bare(changed)["slots"] == {"left": {"width": "120 mm"}, "right": {"width": "90 mm"}}
    assert changed["slots"]["right"]["width"].where.key == "slots.right.width"
    assert changed["slots"]["left"]["width"].where == table()["slots"]["left"]["width"].where
    kept: Any = changed_table(table(), Change("rack", "slots.left.width", "91 mm"))
    assert kept["slots"]["left"]["width"].where == table()["slots"]["left"]["width"].where


@pytest.mark.parametrize(
    "change",
    [
        Change("rack", "issued[2].to", "c"),
        Change("rack", "issued[2]", absent=True),
        Change("rack", "issued[2]", {"to": "c"}),
        Change("rack", "issued.to", "c"),
        Change("rack", "[0]", "c"),
        Change("rack", "slots[0]", "c"),
        Change("rack", "issued.to.x", "c"),
        Change("rack", "slots.right", absent=True),
        Change("rack", "hole", absent=True),
        Change("rack", "kind.of.it", "x"),
        Change("rack", "kind.of", "x"),
    ],
)
def test_what_cannot_be_changed_is_refused(change: Change) -> None:
    with pytest.raises(DesignError, match=r"rack does not state|a table or a list is wanted"):
        changed_table(table(), change)


@pytest.mark.parametrize(
    ("said", "ids", "found"),
    [
        ("a.b.c", ["a.b"], ("a.b", "c")),
        ("a.b.c", ["a", "a.b", "c"], ("a.b", "c")),
        ("a.b.c", ["a"], ("a", "b.c")),
        ("a.b.c", ["b.c"], ("a", "b.c")),
        ("a.b", ["a.b"], ("a.b", "")),
        ("a", [], ("a", "")),
    ],
)
def test_the_longest_id_that_is_known_is_meant(said: str, ids: list[str], found: tuple[str, str]) -> None:
    assert component_and_key(said, ids) == found


def test_settings_are_changed_along_points_or_strokes() -> None:
    tree: dict[str, Any] = {"works": {"stage": "draft", "name": "x"}, "limits": {"a.b": {"most": "1 mm"}}}
    assert changed_tree(tree, Change("speclint.toml", "works.stage", "released")) == {
        **tree,
        "works": {"stage": "released", "name": "x"},
    }
    assert changed_tree(tree, Change("speclint.toml", 'limits/"a.b"/most', "2 mm"))["limits"] == {
        "a.b": {"most": "2 mm"}
    }
    assert changed_tree(tree, Change("speclint.toml", "works.stage", absent=True))["works"] == {"name": "x"}
    assert changed_tree(tree, Change("speclint.toml", "made.gauge_share", "5 %"))["made"] == {
        "gauge_share": "5 %"
    }
    assert tree["works"]["stage"] == "draft"


def test_a_list_of_values_is_read_back_whole(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path, tubes.tubes()).write(
        {**tubes.FILES, "tube.toml": tubes.TUBE + '[notes]\nlist = ["a", "b"]\n'}
    )
    drafted = DraftedDesign.opened(folder.root, folder.loaded.kinds)
    assert drafted.raw_at("tube", "notes.list[1]") == (["a", "b"], "notes.list")
    assert drafted.raw_at("tube", "notes.list") == (["a", "b"], "notes.list")
    with pytest.raises(DesignError, match="tube does not state"):
        drafted.raw_at("tube", "notes.list[2]")


def test_a_design_that_draws_a_complaint_is_not_drafted(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path, tubes.tubes()).write({**tubes.FILES, "more.toml": tubes.TUBE + "x = 1\n"})
    with pytest.raises(DesignError, match=r"more\.toml"):
        DraftedDesign.opened(folder.root, folder.loaded.kinds)
