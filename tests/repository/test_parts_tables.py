"""Specs from a table and back: nothing is lost, nothing guessed, and nothing that is there written over unasked."""

from __future__ import annotations

import csv
import datetime as dt
import tomllib
from pathlib import Path

import pytest

from speclint.errors import TableError
from speclint.repository import (
    Layout,
    PartsOfTable,
    Place,
    TableOfParts,
    csv_text,
    parts_of_table,
    read_parts_mapping,
    read_shop_table,
    spec_files,
    spreadsheet,
    table_of_parts,
)
from speclint.repository.cells import Head, Schema, cells_of, tree_of
from speclint.repository.settings import Settings
from speclint.repository.toml_writing import inline, toml_text
from speclint.specs import Spec, SteamPipe, schema_of
from speclint.testing import installed_families

KINDS = installed_families().kinds
EXAMPLE = Path(__file__).parents[2] / "example_specs"


def made_of(
    folder: Path, table: Path, *, mapping: str = "", replace: bool = False, kind: type[Spec] = SteamPipe
) -> PartsOfTable:
    """The specs of a table, written into a folder of a repository."""
    there = {path.stem: path.relative_to(folder).as_posix() for path in folder.rglob("*.toml")}
    place = Place(folder, "pipes", there, KINDS, replace)
    if not mapping:
        found = parts_of_table(read_shop_table(table, Layout()), kind, place)
    else:
        (folder / "office.map").write_text(mapping, encoding="utf-8")
        by = read_parts_mapping(folder, "office.map")
        found = parts_of_table(read_shop_table(table, by.layout), kind, place, by)
    for one in found.new:
        (folder / one.file).parent.mkdir(parents=True, exist_ok=True)
        (folder / one.file).write_text(one.text, encoding="utf-8", newline="\n")
    return found


def table_in(folder: Path, *rows: str) -> Path:
    path = folder / "pipes.csv"
    path.write_text("\n".join(rows) + "\n", encoding="utf-8")
    return path


def test_three_hundred_pipes_made_from_a_table_and_back(tmp_path: Path) -> None:
    """ISO 4200 has the outside diameters; every third wall has limits of its own, and every fifth a length in feet."""
    heads = [
        "id",
        "outside_diameter (mm)",
        "wall (mm)",
        "length (m)",
        "design_pressure (bar gauge)",
        "bends",
        "title",
    ]
    rows = [
        [
            f"pipe-{number:03}",
            ("48.3", "60.3", "88.9", "114.3")[number % 4],
            "5.6 +0.4/-0.2" if number % 3 == 0 else f"{4 + number / 100:.2f}",
            "9.5 ft" if number % 5 == 0 else f"{1 + number / 50:.2f}",
            "17",
            str(number % 6),
            f'Pipe "{number}", of the {"left" if number % 2 else "right"} side',
        ]
        for number in range(300)
    ]
    with (tmp_path / "pipes.csv").open("w", newline="", encoding="utf-8") as file:
        csv.writer(file).writerows([heads, *rows])
    found = made_of(tmp_path, tmp_path / "pipes.csv")
    assert (len(found.new), found.refused) == (300, ())
    text = (tmp_path / "pipes" / "pipe-003.toml").read_text(encoding="utf-8")
    assert 'wall = "5.6 mm +0.4/-0.2"\n' in text
    assert 'length = "1.06 m"\ndesign_pressure = "17 bar gauge"\nbends = 3\n' in text
    back = table_of_parts(tmp_path, spec_files(tmp_path, Settings()), KINDS, SteamPipe)
    assert back.refused == ()
    assert set(back.heads) == {*heads} - {"wall (mm)", "length (m)"} | {"wall", "length"}
    again = tmp_path / "again"
    for name, content in (("back.csv", csv_text(back).encode()), ("back.xlsx", spreadsheet(back))):
        folder = again / name.partition(".")[2]
        folder.mkdir(parents=True)
        (folder / name).write_bytes(content)
        assert len(made_of(folder, folder / name).new) == 300
        for spec in found.new:
            text = (folder / spec.file).read_text(encoding="utf-8")
            assert tomllib.loads(text) == tomllib.loads(spec.text)


def test_every_part_of_the_example_goes_into_a_table_and_comes_back() -> None:
    files = [path.relative_to(EXAMPLE).as_posix() for path in sorted((EXAMPLE / "pipes").glob("*.toml"))]
    files += [path.relative_to(EXAMPLE).as_posix() for path in sorted((EXAMPLE / "blocks").glob("*.toml"))]
    files += [path.relative_to(EXAMPLE).as_posix() for path in sorted((EXAMPLE / "duties").glob("*.toml"))]
    for word in ("steam-pipe", "cylinder-block", "duty"):
        table = table_of_parts(EXAMPLE, files, KINDS, KINDS[word])
        assert table.refused == ()
        assert len(table.rows) >= 2
        schema = Schema(schema_of(KINDS[word]))
        heads = [schema.head(head) for head in table.heads]
        for row in table.rows:
            stated = tree_of({head: cell for head, cell in zip(heads, row, strict=True) if cell}, schema)
            assert tomllib.loads(toml_text({"kind": word, **stated})) == {"kind": word, **stated}


SCHEMA = Schema(schema_of(SteamPipe))


@pytest.mark.parametrize(
    "tree",
    [
        {"wall": {"value": "5 mm", "from": "measured", "note": "by gauge"}},
        {"notes": {"a": 5, "b": "5", "c": 1.5, "d": True, "e": "true", "f": [1, {"x": "y"}], "g": {"h": {}}}},
        {"notes": {"day": dt.date(2027, 5, 31), "written": "2027-05-31", "a.b c": "x", "odd": "5 # five"}},
        {"title": ' "Pipe", left\n'},
        {"title": "=1+2"},
        {"title": "[]"},
        {"issued": [{"revision": "A", "on": dt.date(2026, 1, 2)}, {"revision": "B"}]},
        {"welding": {"welded": False, "carbon_equivalent": "0.38 %"}},
    ],
)
def test_a_spec_is_the_same_after_its_cells_and_after_its_text(
    tree: dict[str, object],
) -> None:
    cells = cells_of(tree, SCHEMA)
    assert all(cell == cell.strip() and cell for cell in cells.values())
    assert tree_of({Head(path): cell for path, cell in cells.items()}, SCHEMA) == tree
    assert tomllib.loads(toml_text(tree)) == tree


def test_rows_that_cannot_be_read_are_told_by_their_number_and_the_others_written(tmp_path: Path) -> None:
    table = table_in(
        tmp_path,
        "id,wall (mm),outside_diameter (mm),design_pressure,bends,supplied_as",
        "a,5.6,168.3,17 bar gauge,2,made",
        'b,"5,6",168.3,17 bar gauge,2,made',
        "c,5.6,168.3,17 bar,2,made",
        "d,5.6,168.3,17 bar gauge,two,made",
        "a,5.6,168.3,17 bar gauge,2,made",
        ",5.6,168.3,17 bar gauge,2,made",
        "e,50,60.3,17 bar gauge,2,made",
        "../f,5,168.3,17 bar gauge,2,made",
        "Con.left,5,168.3,17 bar gauge,2,made",
        '"g\nh",5,168.3,17 bar gauge,2,made',
    )
    found = made_of(tmp_path, table)
    assert [one.id for one in found.new] == ["a"]
    assert [(one.number, one.why.partition(";")[0]) for one in found.refused] == [
        (3, "wall: a comma is not a decimal point"),
        (4, "design_pressure: a fluid pressure must say whether it is gauge or absolute"),
        (5, "bends: read two"),
        (6, "row 2 has the id a already"),
        (7, "it has no id"),
        (8, "wall: wall must be less than half of outside_diameter, which is 60.3 mm"),
        (9, "id ../f: a file is called by it"),
        (10, "id Con.left: a file is called by it"),
        (11, "id g h: a file is called by it"),
    ]


def test_nothing_that_is_there_is_written_over_unasked(tmp_path: Path) -> None:
    made_of(tmp_path, table_in(tmp_path, "id,bends", "a,2", "b,3"))
    table = table_in(tmp_path, "id,bends", "a,2", "b,4")
    found = made_of(tmp_path, table)
    assert [one.id for one in found.same] == ["a"]
    assert [str(one) for one in found.refused] == [
        "row 3: pipes/b.toml is there already and says otherwise; --replace writes over it, its remarks "
        "and what the table does not hold included"
    ]
    assert "bends = 3" in (tmp_path / "pipes" / "b.toml").read_text(encoding="utf-8")
    made_of(tmp_path, table, replace=True)
    assert "bends = 4" in (tmp_path / "pipes" / "b.toml").read_text(encoding="utf-8")
    (tmp_path / "b.toml").write_text('kind = "steam-pipe"\n', encoding="utf-8")
    (tmp_path / "pipes" / "b.toml").unlink()
    assert "b.toml states it already" in str(made_of(tmp_path, table, replace=True).refused[0])
    several = 'kind = "steam-pipe"\nid = "a-{each}"\neach = ["x", "y"]\n'
    (tmp_path / "pipes" / "a.toml").write_text(several, encoding="utf-8")
    assert "with other parts in it" in str(made_of(tmp_path, table, replace=True).refused[0])


def test_a_file_that_states_the_same_in_another_order_is_left_as_it_is(tmp_path: Path) -> None:
    """What export wrote is read again beside the files it came from: they keep their order and their remarks."""
    made_of(tmp_path, table_in(tmp_path, "id,wall (mm),title", "a,5,Pipe", "b,5,Pipe"))
    text = '# as gauged\nid = "a"\ntitle = "Pipe"\nkind = "steam-pipe"\nwall = "5 mm"\n'
    (tmp_path / "pipes" / "a.toml").write_text(text, encoding="utf-8")
    for replace in (False, True):
        again = made_of(
            tmp_path, table_in(tmp_path, "id,title,wall (mm)", "a,Pipe,5", "b,Pipe,5"), replace=replace
        )
        assert ([one.id for one in again.same], again.new, again.refused) == (["a", "b"], (), ())
    assert (tmp_path / "pipes" / "a.toml").read_text(encoding="utf-8") == text


@pytest.mark.parametrize(
    ("head", "said"),
    [
        ("wal (mm)", 'the column "wal (mm)": "wal" is no key of a steam-pipe; write "wall"'),
        ("wall (bar)", "bar is no unit of wall, which is a length; a value is written one of: m, cm, mm"),
        ("design_pressure (bar)", "bar is no unit of design_pressure"),
        ("bends (mm)", "bends is no quantity, and has no unit"),
        ("Pipe no.", '"Pipe no." is no key'),
        ("like", "a row states one part in full, and no like"),
        ("kind", "a row states one part in full, and no kind"),
    ],
)
def test_a_head_that_is_no_key_or_has_no_unit_of_it_is_refused(tmp_path: Path, head: str, said: str) -> None:
    with pytest.raises(TableError) as caught:
        made_of(tmp_path, table_in(tmp_path, f"id,{head}", "a,1"))
    assert said in str(caught.value)
    assert "\n" not in str(caught.value)


def test_a_mapping_of_the_office_says_what_each_column_holds(tmp_path: Path) -> None:
    mapping = """
        separator = ";"
        decimal = ","
        columns = { "Pipe no." = "id", "t" = "wall (mm)", "D" = "outside_diameter (mm)" }
        pass_over = ["Remarks"]
        every = { carries = "live steam", roughness = "0.05 mm" }
    """
    table = table_in(tmp_path, "Pipe no.;t;D;Remarks", "7;5,6;168,3;old stock")
    found = made_of(tmp_path, table, mapping=mapping)
    assert found.refused == ()
    assert found.new[0].text == (
        'kind = "steam-pipe"\nid = "7"\nwall = "5.6 mm"\noutside_diameter = "168.3 mm"\n'
        'carries = "live steam"\nroughness = "0.05 mm"\n'
    )
    with pytest.raises(TableError, match=r'the table has no column "t"; it has Pipe no\., s, D, Remarks'):
        made_of(tmp_path, table_in(tmp_path, "Pipe no.;s;D;Remarks", "7;5,6;168,3;"), mapping=mapping)
    twice = mapping.replace('"Remarks"', "").replace("every = {", 'every = { wall = "5 mm",')
    with pytest.raises(TableError, match="both state wall"):
        made_of(tmp_path, table_in(tmp_path, "Pipe no.;t;D", "7;5,6;168,3"), mapping=twice)


def test_lists_are_told_by_their_numbers_and_a_gap_is_refused(tmp_path: Path) -> None:
    found = made_of(tmp_path, table_in(tmp_path, "id,issued.2.revision,issued.1.revision", "a,B,A", "b,B,"))
    assert '[[issued]]\nrevision = "A"\n\n[[issued]]\nrevision = "B"\n' in found.new[0].text
    assert [str(one) for one in found.refused] == ["row 3: issued: there is a 2 and no 1"]


def test_numbers_of_a_spreadsheet_are_numbers_where_they_read_back_the_same(tmp_path: Path) -> None:
    from openpyxl import load_workbook

    made_of(tmp_path, table_in(tmp_path, "id,wall (mm),title", "a,5.60,007", "b,5.5,=1+2"))
    table = table_of_parts(tmp_path, ["pipes/a.toml", "pipes/b.toml"], KINDS, SteamPipe)
    (tmp_path / "pipes.xlsx").write_bytes(spreadsheet(table))
    sheet = load_workbook(tmp_path / "pipes.xlsx").active
    values = {
        (row[0].value, head.value): cell.value
        for row in sheet.iter_rows(min_row=2)
        for head, cell in zip(sheet[1], row, strict=True)
    }
    assert values["a", "wall (mm)"] == "5.60"
    assert values["b", "wall (mm)"] == 5.5
    assert values["a", "title"] == "007"
    assert values["b", "title"] == '"=1+2"'  # no formula


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ("Ø 30 °C µ", '"Ø 30 °C µ"'),
        ("a \x7f sign", '"a \\u007f sign"'),  # which TOML bars from its texts
        ('"5"\n', '"\\"5\\"\\n"'),
        (True, "true"),
        (False, "false"),
        (0.1, "0.1"),
        (float("inf"), "inf"),
        (3, "3"),
        ({}, "{}"),
        ({"two words": [1, {"a": "b"}]}, '{ "two words" = [1, { a = "b" }] }'),
        (dt.date(2026, 3, 1), "2026-03-01"),
    ],
)
def test_a_value_on_one_line(value: object, text: str) -> None:
    assert inline(value) == text
    assert tomllib.loads(f"x = {text}\n") == {"x": value}


@pytest.mark.parametrize(
    "name", [".f", "a/b", "a\\b", "a:b", "a*", "COM1", "lpt9.left", "nul", "a\u200bb", "aux ", "<a>"]
)
def test_an_id_that_is_no_name_of_a_file_everywhere_is_refused(tmp_path: Path, name: str) -> None:
    (refused,) = made_of(tmp_path, table_in(tmp_path, "id,bends", f'"{name}",2')).refused
    assert "a file is called by it; write letters, digits and hyphens" in refused.why


@pytest.mark.parametrize("name", ["COM10", "LPT0", "comb", "a.b", "rohr-ä", "a b"])
def test_an_id_that_only_resembles_one_names_its_file(tmp_path: Path, name: str) -> None:
    (made,) = made_of(tmp_path, table_in(tmp_path, "id,bends", f"{name},2")).new
    assert (made.id, made.file, made.row) == (name, f"pipes/{name}.toml", 2)


def test_specs_may_go_into_the_folder_of_the_repository_itself(tmp_path: Path) -> None:
    table = read_shop_table(table_in(tmp_path, "id,bends", "a,2"), Layout())
    (made,) = parts_of_table(table, SteamPipe, Place(tmp_path, "", {}, KINDS)).new
    assert (made.file, made.text) == ("a.toml", 'kind = "steam-pipe"\nid = "a"\nbends = 2\n')


@pytest.mark.parametrize(
    ("columns", "mapping", "said"),
    [
        ("wall,bends", "", "no column holds the id of the part; name one id, or map one to it (wall, bends)"),
        (
            "id,wall,t",
            'columns = { t = "wall (mm)" }',
            'the column "t" and the column "wall" both state wall',
        ),
        (
            "id,wall",
            'every = { "wall" = "5 mm" }',
            'the column "wall" and the mapping, for every part, both state wall',
        ),
        ("id,wall", 'pass_over = ["t"]', 'the table has no column "t"; it has id, wall'),
        ("id,each.a", "", 'the column "each.a": a row states one part in full, and no each'),
        ("id,wal", "", "; or name it under pass_over in a mapping"),
        ("id", 'every = { wal = "5 mm" }', 'the column "wal": "wal" is no key of a steam-pipe'),
    ],
)
def test_columns_that_do_not_go_together_are_refused(
    tmp_path: Path, columns: str, mapping: str, said: str
) -> None:
    with pytest.raises(TableError) as refused:
        made_of(tmp_path, table_in(tmp_path, columns, "a"), mapping=mapping or "heading = 1")
    assert said in str(refused.value)


def test_of_several_for_every_part_one_may_clash(tmp_path: Path) -> None:
    mapping = 'every = { carries = "live steam", wall = "5 mm" }'
    with pytest.raises(TableError, match="for every part, both state wall"):
        made_of(tmp_path, table_in(tmp_path, "id,wall", "a,6 mm"), mapping=mapping)


def test_a_row_that_is_refused_says_what_was_read_and_what_to_write(tmp_path: Path) -> None:
    found = made_of(
        tmp_path,
        table_in(
            tmp_path,
            "id,wall,carries,bends,title",
            'a,"5,6 mm",live steam,1,x',
            "b,5 mm,live stem,1_000,x",
            'c,"5,6 mm",live stem,1,x',
        ),
    )
    first, second, third = (one.why for one in found.refused)
    assert first == 'wall: a comma is not a decimal point; read "5,6 mm"; write "5.6 mm"'
    assert second == "bends: read 1_000; write a whole number"
    assert third.startswith('wall: a comma is not a decimal point; read "5,6 mm"; write "5.6 mm"; carries: ')
    assert found.new == ()


def parts(folder: Path, **files: str) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...], tuple[str, ...]]:
    for name, text in files.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")
    found = table_of_parts(folder, [f"{name}.toml" for name in files], KINDS, SteamPipe)
    return found.heads, found.rows, found.refused


PIPE = 'kind = "steam-pipe"\n'


def test_a_unit_that_all_cells_have_stands_in_the_head_and_keys_in_the_order_of_the_kind(
    tmp_path: Path,
) -> None:
    heads, rows, refused = parts(
        tmp_path,
        b=PIPE + 'outside_diameter = "2 in"\nbends = 2\nwall = "5 mm"\nlength = "1 m"\n[notes]\nx = 1\n',
        a=PIPE + 'title = "5 mm"\nwall = "6.5 mm"\nlength = "100 mm"\noutside_diameter = "60 mm"\n',
        other='kind = "cylinder-block"\n',
    )
    assert refused == ()
    assert heads[0] == "id"
    assert set(heads) == {"id", "title", "outside_diameter", "wall (mm)", "length", "bends", "notes.x"}
    columns = dict(zip(heads, zip(*rows, strict=True), strict=True))
    assert columns["id"] == ("a", "b")
    assert columns["wall (mm)"] == ("6.5", "5")
    assert columns["length"] == ("100 mm", "1 m")
    assert columns["outside_diameter"] == ("60 mm", "2 in")
    assert columns["title"] == ("5 mm", "")
    assert columns["bends"] == ("", "2")
    properties = list(Schema(schema_of(SteamPipe)).whole["properties"])
    keys = [head.partition(" ")[0].partition(".")[0] for head in heads[1:]]
    assert keys == sorted(keys, key=properties.index)


def test_parts_that_cannot_stand_in_a_table_are_named_with_the_reason(tmp_path: Path) -> None:
    heads, rows, refused = parts(
        tmp_path,
        sound=PIPE,
        lost=PIPE + 'like = "nobody"\n',
        broken="kind = \n",
        twin=PIPE + 'like = "sound"\nbends = 2\n',
        odd=PIPE + '[notes]\n"a" = {}\nnine = 1979-05-27T07:32:00\nlist = [{ value = { x = 1 } }]\n',
    )
    assert heads[0] == "id"
    assert [row[0] for row in rows] == ["odd", "sound", "twin"]
    lost, broken = refused
    assert lost.startswith("lost: lost.toml:2 like: no spec has this id")
    assert broken == "broken.toml: it cannot be read: speclint check"


def test_each_file_that_cannot_be_read_is_named_once_and_after_the_parts(tmp_path: Path) -> None:
    *_, refused = parts(tmp_path, a="=", b="=", c=PIPE + 'like = "nobody"\n')
    assert [line.partition(":")[0] for line in refused] == ["c", "a.toml", "b.toml"]


def test_a_spreadsheet_keeps_texts_that_look_like_numbers_and_refuses_signs_it_has_no_room_for(
    tmp_path: Path,
) -> None:
    from openpyxl import load_workbook

    parts(tmp_path, a=PIPE + 'bends = 2\ntitle = "inf"\n', b=PIPE + 'title = "1e5"\n')
    table = table_of_parts(tmp_path, ["a.toml", "b.toml"], KINDS, SteamPipe)
    (tmp_path / "p.xlsx").write_bytes(spreadsheet(table))
    sheet = load_workbook(tmp_path / "p.xlsx").active
    assert sheet.freeze_panes == "B2"
    got = [[cell.value for cell in row] for row in sheet.iter_rows()]
    assert got[0] == list(table.heads)
    titles = {row[0]: row[table.heads.index("title")] for row in got[1:]}
    assert titles == {"a": "inf", "b": "1e5"}
    assert {row[0]: row[table.heads.index("bends")] for row in got[1:]} == {"a": 2, "b": None}
    bell = TableOfParts(("id", "title"), (("a", "x"), ("b", "\x07")))
    with pytest.raises(TableError) as refused:
        spreadsheet(bell)
    assert str(refused.value) == "row 3: a spreadsheet has no room for '\\x07'"


def test_a_head_of_a_spreadsheet_is_a_text_whatever_it_looks_like() -> None:
    from io import BytesIO

    from openpyxl import load_workbook

    sheet = load_workbook(BytesIO(spreadsheet(TableOfParts(("7", "=x"), (("7", "=x"),))))).active
    assert [[cell.value for cell in row] for row in sheet.iter_rows()] == [["7", "=x"], [7, "=x"]]
    assert [[cell.data_type for cell in row] for row in sheet.iter_rows()] == [["s", "s"], ["n", "s"]]


def test_comma_separated_values_end_their_lines_as_rfc_4180_has_it() -> None:
    assert csv_text(TableOfParts(("id", "title"), (("a", 'x, "y"'),))) == 'id,title\r\na,"x, ""y"""\r\n'
