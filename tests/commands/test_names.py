"""What may be written: every list and every key, from what is loaded; and a wrong name answered by the nearest."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, ClassVar

import pytest

from speclint.commands import main
from speclint.errors import NotKnown, SettingsError
from speclint.families import NameList, NameLists, load_families
from speclint.families.names import units_of
from speclint.handbook.materials import material, names as materials
from speclint.handbook.tables import rows
from speclint.handbook.threads import thread
from speclint.quantities import read
from speclint.repository import open_repository
from speclint.specs import (
    CASE_NAMES,
    NOT_STATED,
    Component,
    ListedIn,
    SpecTable,
    Word,
    inner_table,
    looked_up_in,
)
from speclint.testing import DesignFolder, installed_families, made_family

BLOCK = """
kind = "cylinder-block"
id = "block"
[bores.main]
[bores.outer]
"""
LINER = """
kind = "cylinder-liner"
id = "liner"
title = "The only liner"
housed_in = "block"
"""
OWN = """
[works-iron]
title = "the works' own iron"
family = "grey-iron"
standard = "works specification 7"
like = "grey-iron-250"
"""


@pytest.fixture(scope="module")
def lists() -> NameLists:
    """The lists of the installed families, without a design."""
    loaded = installed_families()
    return NameLists(loaded.kinds, loaded.materials)


@pytest.fixture
def of_design(tmp_path: Path) -> NameLists:
    """The lists of a small design."""
    design = DesignFolder(tmp_path).write({"block.toml": BLOCK, "liner.toml": LINER})
    opened = open_repository([design.root], design.loaded.kinds)
    assert opened.complaints == ()
    return NameLists(design.loaded.kinds, opened.materials, opened.design)


def only(found: tuple[NameList, ...]) -> dict[str, str]:
    """The names of the one list, each with what is said beside it."""
    (one,) = found
    return {name.name: name.says for name in one.names}


def test_every_material_stands_with_its_standard_and_its_strength(lists: NameLists) -> None:
    """P355GH to EN 10028-2:2009, table 4, from memory: proof 280 MPa, tensile 470 MPa in the thickest band."""
    found = only(lists.of("materials"))
    assert set(materials()) <= set(found)
    assert found["plate-P355GH"].endswith("EN 10028-2:2009, tensile 470 MPa, proof 280 MPa")
    assert "proof" not in found["grey-iron-250"]  # grey iron has no yield


def test_every_gasket_and_way_of_tightening_of_the_handbook_is_listed(lists: NameLists) -> None:
    gaskets = rows("gaskets-asme-viii-1-2019-table-2-5-1.csv")
    assert list(only(lists.of("gaskets"))) == [row["gasket"] for row in gaskets]
    assert "m = 2.75" in only(lists.of("gaskets"))["fibre sheet 1.5 mm"]
    ways = rows("tightening-methods-vdi-2230-2003.csv")
    assert list(only(lists.of("tightening"))) == [row["method"] for row in ways]


def test_every_thread_listed_is_one_that_the_handbook_reads(lists: NameLists) -> None:
    """ISO 261: M24 has a coarse pitch of 3 mm; Whitworth 7/8 in has 9 threads an inch, 2.822 mm."""
    found = only(lists.of("threads"))
    assert found["M24"] == "pitch 3 mm, major diameter 24 mm"
    assert found["7/8 BSW"] == "pitch 2.822 mm, major diameter 22.225 mm"
    assert all(thread(name) for name in found)


def test_every_load_case_says_what_it_is(lists: NameLists) -> None:
    found = only(lists.of("cases"))
    assert tuple(found) == CASE_NAMES
    assert all(found.values())


@pytest.mark.parametrize(
    ("word", "holds"),
    [
        ("poppet-valve.retained", {"none", "cage", "collar larger than the port", "perforated plate"}),
        ("stuffing-box.packing", {"braided graphite", "grooved bush"}),
        ("retained", {"none", "cage", "collar larger than the port", "perforated plate"}),
        ("finishes", {"case hardened", "nitrided"}),
        ("bolted-joint.tightening.method", {"torque wrench"}),
        ("cylinder-liner.safety_part", {"true", "false"}),
        ("cylinder-liner.bore", {"mm", "in"}),
        ("duty.cases", set(CASE_NAMES)),
        ("kinds", {"duty", "piston"}),
        ("units", {"length", "pressure"}),
        ("cylinder-block.design_pressure", {"bar gauge", "psi absolute"}),
        ("units", {"fluid pressure", "temperature", "temperature difference"}),
        ("cylinder-block.design_temperature", {"°C", "°F", "K"}),
    ],
)
def test_what_a_list_or_a_key_accepts(word: str, holds: set[str], lists: NameLists) -> None:
    found = lists.of(word)
    assert holds <= {name.name for one in found for name in one.names}


def test_a_unit_says_how_much_it_is(lists: NameLists) -> None:
    """The inch is 25.4 mm exactly, since 1959."""
    said = only(lists.of("cylinder-liner.bore"))
    assert (said["in"], said["km"], said["mile"]) == ("25.4 mm", "1000000 mm", "1609344 mm")


@pytest.mark.parametrize("dimension", ["temperature", "temperature difference", "fluid pressure", "length"])
def test_every_unit_that_is_listed_is_read(dimension: str) -> None:
    names = [one.name for one in units_of(dimension)]
    assert len(names) > 2
    for name in names:
        assert read(f"300 {name}", dimension).nominal > 0


def test_the_list_of_units_says_those_of_each_dimension(lists: NameLists) -> None:
    said = only(lists.of("units"))
    assert {"mm", "in"} <= set(said["length"].split(", "))
    assert {"bar", "psi"} <= set(said["pressure"].split(", "))


@pytest.mark.parametrize("key", ["cylinder-block.bores.diameter", "cylinder-block.bores.main.diameter"])
def test_the_name_of_an_entry_may_be_any_or_be_left_out(key: str, lists: NameLists) -> None:
    assert "mm" in only(lists.of(key))


def test_a_key_that_takes_any_text_has_no_names(lists: NameLists) -> None:
    assert only(lists.of("cylinder-liner.title")) == {}


def test_a_part_without_a_title_is_listed_by_its_name(tmp_path: Path) -> None:
    untitled = LINER.replace('title = "The only liner"\n', "")
    design = DesignFolder(tmp_path).write({"block.toml": BLOCK, "liner.toml": untitled})
    opened = open_repository([design.root], design.loaded.kinds)
    named = NameLists(design.loaded.kinds, opened.materials, opened.design)
    assert only(named.of("piston.runs_in")) == {"liner": ""}


def test_names_of_the_design_are_those_of_the_table_that_a_key_names(of_design: NameLists) -> None:
    assert only(of_design.of("liner.in_bore")) == {"main": "for liner", "outer": "for liner"}
    assert only(of_design.of("cylinder-liner.in_bore")) == {"main": "for liner", "outer": "for liner"}
    assert only(of_design.of("piston.runs_in")) == {"liner": "The only liner"}


def test_materials_of_the_repository_are_among_them(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    design = DesignFolder(tmp_path).write({}, settings='materials = ["own.toml"]\n')
    (design.root / "own.toml").write_text(OWN, encoding="utf-8")
    assert main(["names", "materials", "works-iron", "--in", str(tmp_path), "--as", "json"]) == 0
    (found,) = json.loads(capsys.readouterr().out)
    assert found["names"] == [
        {"name": "works-iron", "says": "the works' own iron, works specification 7, tensile 155 MPa"}
    ]


def test_every_list_has_names(lists: NameLists) -> None:
    wanted = {"materials", "gaskets", "tightening", "finishes", "cases", "threads", "packings", "wires"}
    assert wanted <= set(lists.called())
    assert all(lists.of(word)[0].names for word in lists.called())


def test_every_key_of_a_material_and_of_a_thread_says_where_its_names_stand(lists: NameLists) -> None:
    """So that no kind takes a name that cannot be listed."""
    without = [
        f"{kind.kind}.{name}"
        for kind in lists.kinds.values()
        for table in tables_of(kind)
        for name, field in table.model_fields.items()
        if (name.endswith("material") or name == "thread") and looked_up_in(field) is None
    ]
    assert without == []


def tables_of(table: type[SpecTable]) -> Iterator[type[SpecTable]]:
    """A table and those within it."""
    yield table
    for field in table.model_fields.values():
        inner, _ = inner_table(field.annotation)
        if inner is not None:
            yield from tables_of(inner)


class Pump(Component):
    """An oil pump, of a family of its own."""

    kind: ClassVar[str] = "pump"
    called: ClassVar[str] = "pump"

    oil: Annotated[
        Word[str],
        ListedIn(
            "pump-oils",
            "oils of a pump",
            table="cylinder-oils-iso-3448-1992.csv",
            column="class",
            package="speclint_pairings",
            shows=(("nu_40_mm2_s", "{} mm²/s at 40 °C"),),
        ),
    ] = NOT_STATED


def test_a_list_of_a_family_is_listed_from_its_own_table() -> None:
    """ISO VG 460 is named for its viscosity at 40 °C."""
    loaded = load_families([made_family("pumps", kinds=[Pump])])
    lists = NameLists(loaded.kinds, loaded.materials)
    assert "pump-oils" in lists.called()
    assert only(lists.of("pump-oils"))["ISO VG 460"] == "460 mm²/s at 40 °C"
    assert only(lists.of("pump.oil")) == only(lists.of("pump-oils"))


@pytest.mark.parametrize(
    ("word", "said"),
    [
        ("matrials", 'no list is called matrials; write "materials"'),
        ("bore", 'no list is called bore; it is a key: write it with its kind, one of "cam.bore", '),
        ("zzzz", 'no list is called zzzz; write one of "cases", '),
        ("poppet-valve.retaned", 'a poppet-valve has no key retaned; write "retained"'),
    ],
)
def test_a_wrong_word_is_answered_by_the_nearest(word: str, said: str, lists: NameLists) -> None:
    with pytest.raises(SettingsError) as problem:
        lists.of(word)
    assert str(problem.value).startswith(said)


def test_a_name_alone_is_looked_for_in_every_list(
    lists: NameLists, capsys: pytest.CaptureFixture[str]
) -> None:
    """EN 10028-2: P355GH is one plate."""
    (found,) = lists.of("P355GH")
    assert found.called == "materials"
    assert [one.name for one in found.names] == ["plate-P355GH"]
    assert main(["names", "P355GH"]) == 0
    assert "plate-P355GH" in capsys.readouterr().out


def test_without_a_word_every_list_is_told_and_no_name_is(
    lists: NameLists, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["names"]) == 0
    said = capsys.readouterr().out
    assert all(called in said for called in lists.called())
    assert "plate-P355GH" not in said


def test_where_no_name_is_near_none_is_offered(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["names", "materials", "qqqqqqqqqq"]) == 2
    assert capsys.readouterr().err == ('speclint: materials: no name has "qqqqqqqqqq" in it or beside it\n')


def test_a_text_is_looked_for_in_names_and_beside_them(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["names", "materials", "stainless", "1.4021"]) == 0
    assert "stainless-1.4021" in capsys.readouterr().out
    assert main(["names", "materials", "P35GH"]) == 2
    said = capsys.readouterr().err
    assert said == 'speclint: materials: no name has "P35GH" in it or beside it; write "tube-P235GH"\n'


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("P355GH", "plate-P355GH"),
        ("GJL-250", "grey-iron-250"),
        ("c45", "forging-C45, forging-C45-normalized"),
    ],
)
def test_a_wrong_material_of_a_spec_is_answered_by_the_nearest(written: str, meant: str) -> None:
    with pytest.raises(NotKnown) as problem:
        material(written)
    assert str(problem.value) == f"no material '{written}' in the library; nearest are {meant}"


@pytest.mark.parametrize(
    ("name", "meant"),
    [("liner-lefft", "liner-left"), ("cylinder-blok", "cylinder-block"), ("linre-left", "liner-left")],
)
def test_a_temperature_of_a_mistyped_part_is_refused(name: str, meant: str, workshop: DesignFolder) -> None:
    duty = f'kind = "duty"\n[cases.running.temperatures]\n{name} = "200 °C"\n'
    found = workshop.write({"duty.toml": duty, "left.toml": LINER_LEFT}).assess("duty.toml").complaints
    assert [one.write for one in found] == [f'"{meant}"']
    assert found[0].where.line == 3


@pytest.mark.parametrize(
    "name", ["liner-right", "pads", "cylinder-liners", "rod-end", "liner-left", "piston"]
)
def test_other_names_of_temperatures_stand(name: str, workshop: DesignFolder) -> None:
    """Those of parts drawn later, and of places that are no part."""
    duty = f'kind = "duty"\n[cases.running.temperatures]\n{name} = "200 °C"\n'
    assert workshop.write({"duty.toml": duty, "left.toml": LINER_LEFT}).assess("duty.toml").complaints == ()


LINER_LEFT = 'kind = "cylinder-liner"\nid = "liner-left"\n'


def test_names_that_could_not_be_read_are_told_to_be_wanting(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """One file is no TOML: the list is given, and the other stream says what it lacks."""
    root = DesignFolder(tmp_path).write({"block.toml": BLOCK, "liner.toml": "kind ="}).root
    monkeypatch.chdir(root)
    assert main(["names", "materials"]) == 0
    told = capsys.readouterr().err
    assert told.startswith("speclint: 1 line of the repository could not be read, and names ")
