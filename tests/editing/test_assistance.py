"""What an editor is shown of a spec, without the protocol: marks, completions, meanings, ids."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from speclint.editing.completions import Completion, _tables, completions
from speclint.editing.cursor import cursor_at
from speclint.editing.hovers import hover
from speclint.editing.ids import id_at, renamed, stated_at
from speclint.editing.workspace import OpenText, Workspace
from speclint.errors import DesignError
from speclint.repository import Schema, replace_file
from speclint.specs import stated_values
from speclint.testing import DesignFolder, installed_families
from tests.editing.repository import BLOCK, FILES, LINER, SETTINGS


@pytest.fixture(scope="module")
def opened_once(tmp_path_factory: pytest.TempPathFactory) -> Workspace:
    root = tmp_path_factory.mktemp("design")
    DesignFolder(root).write(FILES, settings=SETTINGS)
    return Workspace(root, installed_families())


@pytest.fixture
def space(opened_once: Workspace) -> Iterator[Workspace]:
    """A block with its liner, open in an editor; no text of a test stays open for the next."""
    yield opened_once
    for file in list(opened_once.texts):
        opened_once.close(file)
    opened_once.last_read.clear()


def written(space: Workspace, text: str) -> OpenText:
    return space.write("liner.toml", text)


def offered(space: Workspace, text: str) -> list[Completion]:
    """What may be written where | stands."""
    before = text[: text.index("|")]
    line = before.count("\n")
    found = written(space, text.replace("|", ""))
    return completions(space, found, line, len(before) - before.rfind("\n") - 1)


@pytest.mark.parametrize(
    ("text", "side", "path", "before", "whole"),
    [
        ('bore = "500 m|m H8"  # new', "value", ("bore",), "500 m", "500 mm H8"),
        ("bore = |", "value", ("bore",), "", ""),
        ("bo|", "key", ("bo",), "bo", "bo"),
        ("[bores.ma|in]", "header", ("bores", "main"), "bores.ma", "bores.main"),
        ('[bores."a b"]\nat = "1|"', "value", ("bores", "a b", "at"), "1", "1"),
        ('[[issued]]\n[[issued]]\nto = "x|"', "value", ("issued", "2", "to"), "x", "x"),
        ('bore = { value = "5|0 mm", from = "measured" }', "value", ("bore",), "5", "50 mm"),
        ('bore = { value = "50 mm", from = "mea|" }', "value", ("bore", "from"), "mea", "mea"),
        ('bore = "5 # mm" # bo|re', "remark", (), "", ""),
        ("count = 1|2 # twelve", "value", ("count",), "1", "12"),
        ('names = ["a", "b|c"]  # two', "value", ("names", "2"), "b", "bc"),
        ('names = ["a, b", |]', "value", ("names", "2"), "", ""),
        ('names = [  # "the" first\n  "a",\n  "b|c",\n]', "value", ("names", "2"), "b", "bc"),
        ('of = [{ to = "a" }, { to = "b|"', "value", ("of", "2", "to"), "b", "b"),
        ('of = [{ to = "a", si| }]', "key", ("of", "1", "si"), "si", "si"),
        ("of = { a.b = 1|0, c = 2 }", "value", ("of", "a", "b"), "1", "10"),
        ('names = [\nbore = "5|"', "value", ("bore",), "5", "5"),
        ('names = ["a"]\nbo|', "key", ("bo",), "bo", "bo"),
        ("name = 'it|s'", "value", ("name",), "it", "its"),
        ('names = ["a\\" , b", "c|"]', "value", ("names", "2"), "c", "c"),  # an escaped quote ends no text
        (
            'names = ["a\\\\", "c|"]',
            "value",
            ("names", "2"),
            "c",
            "c",
        ),  # an escaped backslash escapes nothing
        ("names = ['a\\', 'c|']", "value", ("names", "2"), "c", "c"),  # nothing is escaped here
    ],
)
def test_what_stands_at_a_place(text: str, side: str, path: tuple[str, ...], before: str, whole: str) -> None:
    upto = text[: text.index("|")]
    column = len(upto) - upto.rfind("\n") - 1
    found = cursor_at(text.replace("|", "").splitlines(), upto.count("\n"), column)
    assert (found.side, found.path, found.written, found.whole) == (side, path, before, whole)


@pytest.mark.parametrize(
    ("text", "sort", "among"),
    [
        ('kind = "|"', "kind", {"cylinder-liner", "steam-pipe"}),
        (LINER + "|", "key", {"material", "finish_bored_after", "prepared_by"}),
        (LINER + "[|", "table", {"inspection_points", "welding"}),
        (LINER.replace("500 mm H8", "500 |"), "unit", {"mm", "in", "thou"}),
        (LINER.replace("500 mm H8", "500 mm |"), "class", {"H8", "js7", "P7", "s6"}),
        (LINER + 'material = "|"', "material", {"phosphoric-cylinder-iron", "bolting-8.8"}),
        (LINER.replace('"block-left"', '"|"'), "part", {"block-left"}),
        (LINER.replace('"main"', '"|"'), "name", {"main", "steam-chest"}),
        (LINER + 'hand = "|"', "word", {"left", "right"}),
        (LINER + "finish_bored_after = |", "word", {"true", "false"}),
        (LINER + 'design_pressure = "17 |"', "unit", {"bar gauge", "psi gauge", "bar absolute"}),
    ],
)
def test_what_may_be_written(space: Workspace, text: str, sort: str, among: set[str]) -> None:
    written(space, LINER)
    found = {one.text for one in offered(space, text) if one.sort == sort}
    assert among <= found, found


@pytest.mark.parametrize(
    ("kind", "text", "sort", "among"),
    [
        (
            "cylinder-block",
            '[pads.front]\ntakes = ["weight", "|"]',
            "word",
            {"lengthwise", "crosswise", "nothing"},
        ),
        (
            "cylinder-block",
            '[pads.front]\ntakes = [\n  "weight",\n  "|"\n]',
            "word",
            {"lengthwise", "nothing"},
        ),
        ("known-fault", 'on = ["block-left", "|"]', "part", {"block-left"}),
        ("cylinder-block", 'bores.main = { diameter = "580 mm", | }', "key", {"length", "last_bore"}),
    ],
)
def test_what_may_be_written_in_a_list_and_in_braces(
    space: Workspace, kind: str, text: str, sort: str, among: set[str]
) -> None:
    found = {one.text for one in offered(space, f'kind = "{kind}"\nid = "other"\n{text}') if one.sort == sort}
    assert among <= found, found
    assert "diameter" not in found


def test_tables_within_tables_are_offered_to_the_third() -> None:
    """Tables a to e, one within the other: none is lost, and whoever opens them gets no endless list."""
    node: dict[str, object] = {"type": "object", "properties": {}}
    for name in "edcba":
        node = {"type": "object", "properties": {name: node}}
    schema = Schema({**node, "$defs": {}})
    at = cursor_at(["["], 0, 1)
    assert [one.text for one in _tables(at, schema)] == ["a", "a.b", "a.b.c"]


def of_settings(space: Workspace, text: str) -> dict[str, Completion]:
    before = text[: text.index("|")]
    found = space.write("speclint.toml", text.replace("|", ""))
    return {
        one.text: one
        for one in completions(space, found, before.count("\n"), len(before) - before.rfind("\n") - 1)
    }


@pytest.mark.parametrize(
    ("text", "sort", "among"),
    [
        ("|", "key", {"materials", "leave_out"}),
        ("[|", "table", {"works", "families", 'limits."weld.unequal-plates"', "reviewers"}),
        ('[works]\nstage = "|"', "word", {"draft", "for-review", "released"}),
        ("[works]\nstage = 'draft'\n|", "key", {"exit_at", "site_pressure", "units"}),
        ('[works]\nsite_pressure = "1 |"', "unit", {"bar absolute", "bar gauge"}),
        ('[families]\nrequired = ["liners", "|"]', "name", {"springs", "joints"}),
        ('[reviewers."A. Man"]\ncompetent_for = ["|"]', "name", {"springs", "joints"}),
        ('[concessions]\nsigned = ["|"]', "name", {"hold", "nonconformity"}),
    ],
)
def test_what_may_be_written_in_the_settings(space: Workspace, text: str, sort: str, among: set[str]) -> None:
    found = of_settings(space, text)
    assert among <= {name for name, one in found.items() if one.sort == sort}, found.keys()


def test_the_limits_of_a_rule_are_offered_with_what_they_are(space: Workspace) -> None:
    """As the rule declares them; a limit that is stated already is not offered again."""
    rule = next(one for one in space.installed.rules if len(one.limits) > 1)
    first, second = rule.limits[:2]
    keys = of_settings(space, f'[limits."{rule.name}"]\n{first.name} = "{first.default}"\n|')
    assert second.name in keys
    assert first.name not in keys
    values = of_settings(space, f'[limits."{rule.name}"]\n{first.name} = "|"')
    assert values[first.default].says == f"as {rule.name} has it"
    assert of_settings(space, '[limits."no.such"]\n|') == {}


def test_a_place_below_the_text_is_an_empty_line() -> None:
    """An editor may ask of a line that was taken away meanwhile."""
    found = cursor_at(["names = [", '  "a",'], 5, 3)
    assert (found.side, found.path, found.whole) == ("value", ("names", "2"), "")
    assert cursor_at(['name = "a"'], 5, 3).side == "key"
    assert cursor_at([], 5, 3).side == "key"


def test_keys_that_are_stated_and_parts_of_other_kinds_are_not_offered(space: Workspace) -> None:
    keys = {one.text for one in offered(space, LINER + "|")}
    assert "length" not in keys
    assert "bore" not in keys
    assert {one.text for one in offered(space, LINER.replace('"block-left"', '"|"'))} == {"block-left"}
    assert offered(space, "# |") == []


def test_a_tolerance_class_is_told_with_its_limits(space: Workspace) -> None:
    """ISO 286-1, 2010: H8 over 400 to 500 mm is +0.097/0 mm."""
    found = offered(space, LINER.replace("500 mm H8", "500 mm H|"))
    (h8,) = [one for one in found if one.text == "H8"]
    assert h8.says == "+0.097/+0 mm, ISO 286-1"
    assert LINER.splitlines()[4][h8.start : h8.start + 1] == "H"


@pytest.mark.parametrize(
    ("written_so_far", "unit", "then"),
    [
        ('bore = "500 |"', "mm", 'bore = "500 mm"'),
        ('bore = "500|"', "mm", 'bore = "500 mm"'),
        ('bore = "500 m|"', "mm", 'bore = "500 mm"'),
        ('bore = "500 mm H|"', "H8", 'bore = "500 mm H8"'),
    ],
)
def test_what_is_chosen_takes_the_place_of_what_is_begun(
    space: Workspace, written_so_far: str, unit: str, then: str
) -> None:
    found = offered(space, LINER.replace('bore = "500 mm H8"', written_so_far))
    (one,) = [one for one in found if one.text == unit]
    line = written_so_far.replace("|", "")
    assert line[: one.start] + one.written + line[one.end :] == then


def test_complaints_and_findings_stand_at_their_lines(space: Workspace) -> None:
    """A wall of half of 580 mm less 590 mm is none; and 509 mm is a whole number of steps only where one is stated."""
    text = written(space, LINER.replace('"500 mm H8"', '"banana"'))
    (mark,) = text.marks()
    assert (mark.line, mark.weight, mark.rule) == (4, "error", "")
    assert "banana" in mark.says
    text = written(space, LINER.replace('"main"', '"mian"'))
    assert [one.says for one in text.marks()] == [
        'in_bore: the bores of block-left (block.toml) do not have this name; read "mian"; write "main"'
    ]
    text = written(space, LINER.replace('"block-left"', '"block-lefft"'))
    assert text.marks()[0].line == 2
    text = written(space, LINER)
    assert text.marks() == []
    steps = sum(1 for _ in space.checking("liner.toml"))
    found = [one for one in text.marks() if one.weight == "error"]
    assert steps > 20
    assert [(one.line, one.rule) for one in found] == [(1, "release.identity")]
    assert found[0].says.startswith("nonconformity: not stated: drawing, revision")


def test_the_meaning_of_a_key_its_limits_and_what_rests_on_it(space: Workspace) -> None:
    text = written(space, LINER)
    for _ in space.checking("liner.toml"):
        pass
    said = hover(space, text, 4, 10)
    assert said.startswith("**bore**: the new bore")
    assert "\n\n500 mm to 500.097 mm" in said
    said = hover(space, text, 5, 22)
    assert "liner.entering on liner-left" in said or "liner.passes-its-bore on liner-left" in said
    assert "Source: " in said
    assert "cylinder-block in block.toml: Cylinder block, left" in hover(space, text, 2, 15)
    assert hover(space, text, 0, 0).startswith("**kind**")


def test_the_way_to_a_linked_part_and_a_new_id_everywhere(space: Workspace) -> None:
    text = written(space, LINER)
    named = id_at(space, text, 2, 15)
    assert named is not None
    assert named[0] == "block-left"
    place = stated_at(space, "block-left")
    assert place is not None
    assert BLOCK.splitlines()[place.line][place.start : place.end] == "block-left"
    places = renamed(space, "block-left", "block-port")
    assert [(one.file, one.line) for one in places] == [("block.toml", 1), ("liner.toml", 2)]
    assert LINER.splitlines()[2][places[1].start : places[1].end] == "block-left"
    assert id_at(space, text, 4, 10) is None
    with pytest.raises(DesignError, match=r"liner\.toml has the id liner-left already"):
        renamed(space, "block-left", "liner-left")
    with pytest.raises(DesignError, match="is no id"):
        renamed(space, "block-left", 'a"b')


def test_a_part_like_another_follows_its_new_id(tmp_path: Path) -> None:
    other = 'kind = "cylinder-liner"\nid = "liner-two"\nlike = "liner-left"\n'
    DesignFolder(tmp_path).write({**FILES, "liner-two.toml": other}, settings=SETTINGS)
    space = Workspace(tmp_path, installed_families())
    places = renamed(space, "liner-left", "liner-port")
    assert [(one.file, one.line) for one in places] == [("liner-two.toml", 2), ("liner.toml", 1)]


def test_an_id_that_is_not_written_out_is_not_changed(tmp_path: Path) -> None:
    block = BLOCK.replace('id = "block-left"\n', "")
    several = LINER.replace("liner-left", "liner-{each}").replace("block-left", "block-{each}")
    several += 'each = ["left"]\n'
    DesignFolder(tmp_path).write({"block-left.toml": block, "liner.toml": several}, settings=SETTINGS)
    space = Workspace(tmp_path, installed_families())
    with pytest.raises(DesignError, match=r"block-left\.toml is called by its file"):
        renamed(space, "block-left", "block-port")
    with pytest.raises(DesignError, match=r"liner\.toml states its id for several parts"):
        renamed(space, "liner-left", "liner-port")
    replace_file(tmp_path / "block-left.toml", BLOCK.encode())
    space.reopen()
    with pytest.raises(DesignError, match="without writing it out"):
        renamed(space, "block-left", "block-port")


def test_only_the_edited_text_is_read_anew_and_the_others_follow_what_it_says(space: Workspace) -> None:
    design = space.edited.design
    block = design.specs["block-left"]
    written(space, LINER.replace("500 mm", "499 mm"))
    assert space.edited.design.specs["block-left"] is block
    assert stated_values(space.edited.design.specs["liner-left"])["bore"].startswith("499 mm")
    written(space, LINER.replace('"liner-left"', '"liner-right"'))
    assert "liner-left" not in space.edited.design.specs
    assert space.edited.design.index.linking_to("block-left") == ("liner-right",)
    space.close("liner.toml")
    assert space.edited.design.index.linking_to("block-left") == ("liner-left",)


def test_an_id_that_another_file_has_is_told(space: Workspace) -> None:
    text = written(space, LINER.replace('"liner-left"', '"block-left"'))
    assert any("block.toml has the same id" in one.says for one in text.marks())
    space.close("liner.toml")


def test_what_rests_on_a_changed_part_is_looked_at_again(space: Workspace) -> None:
    written(space, LINER)
    assert space.resting_on("block.toml") == ["liner.toml"]
    space.write("block.toml", BLOCK.replace("bores.main", "bores.front"))
    space.again("liner.toml")
    (mark,) = space.texts["liner.toml"].marks()
    assert "do not have this name" in mark.says
    space.close("block.toml")
    space.again("liner.toml")
    assert space.texts["liner.toml"].complaints == ()
    space.close("liner.toml")


def test_a_part_like_another_is_read_again_when_that_changes(tmp_path: Path) -> None:
    other = 'kind = "cylinder-liner"\nlike = "liner-left"\nhoused_in = "block-left"\nin_bore = "main"\n'
    DesignFolder(tmp_path).write({**FILES, "liner-two.toml": other}, settings=SETTINGS)
    space = Workspace(tmp_path, installed_families())
    written(space, LINER.replace("900 mm", "901 mm"))
    assert stated_values(space.edited.design.specs["liner-two"])["length"].startswith("901 mm")
    text = space.write("liner-two.toml", other + 'length = "800 mm"\n')
    assert text.complaints == ()
    assert stated_values(space.edited.design.specs["liner-two"])["length"].startswith("800 mm")
