"""The reader of shops' tables: CSV and spreadsheets give the same rows; what is no table is refused in one line."""

from __future__ import annotations

import datetime as dt
import zipfile
from pathlib import Path

import pytest

from speclint.errors import TableError
from speclint.repository import Layout, read_shop_table
from speclint.repository.shop_tables import RefusedRow, cell_text

TEXT = "Report 14,,\nFeature,Actual,Date\nOD,560.31,2026-05-31\n,,\nbore,500,\n"
HEADED = Layout(heading=2)


def csv_file(folder: Path, text: str | bytes) -> Path:
    path = folder / "report.csv"
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return path


def test_rows_keep_their_numbers_and_empty_cells_are_none(tmp_path: Path) -> None:
    table = read_shop_table(csv_file(tmp_path, TEXT), HEADED)
    assert table.columns == ("Feature", "Actual", "Date")
    assert [(row.number, dict(row.cells)) for row in table.rows] == [
        (3, {"Feature": "OD", "Actual": "560.31", "Date": "2026-05-31"}),
        (5, {"Feature": "bore", "Actual": "500"}),
    ]


def test_a_mark_of_the_order_of_bytes_and_another_separator(tmp_path: Path) -> None:
    content = b"\xef\xbb\xbf" + TEXT.replace(",", ";").encode()
    table = read_shop_table(csv_file(tmp_path, content), Layout(heading=2, separator=";"))
    assert table.columns == ("Feature", "Actual", "Date")


@pytest.mark.parametrize(
    ("content", "said"),
    [
        ("a,b\n", "there is no row 2"),
        ("x\n,,\n", "row 2 names no column"),
        ("x\na,b,a\n", 'row 2 names two columns "a"'),
        ("x\na,b\n1,2,3\n", "row 3 has a cell beyond the last column that is named"),
        (
            "x\nid;wall (mm)\np;3,5\n",
            'its columns are parted by ";": save it with commas between them, or say so in a mapping',
        ),
        ("x\nid\twall\n", r'or say so in a mapping with separator = "\\t", and with decimal = ","'),
        (b"x\na,b\n\xff,2\n", ":3: the file is not UTF-8 text"),
        ('x\na,b\n"1,2\n', "this is no CSV"),
    ],
)
def test_what_is_no_table_is_refused(tmp_path: Path, content: str | bytes, said: str) -> None:
    with pytest.raises(TableError, match=said) as caught:
        read_shop_table(csv_file(tmp_path, content), HEADED)
    assert "\n" not in str(caught.value)


def test_another_sort_of_file_and_none_at_all(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"ends in \.csv or \.xlsx"):
        read_shop_table(tmp_path / "report.pdf", HEADED)
    with pytest.raises(TableError, match="cannot be read"):
        read_shop_table(tmp_path / "absent.csv", HEADED)


def book(folder: Path) -> Path:
    openpyxl = pytest.importorskip("openpyxl")
    made = openpyxl.Workbook()
    made.active.title = "Cover"
    sheet = made.create_sheet("Sizes")
    for row in (
        ["Report 14"],
        ["Feature", "Actual", "Date"],
        ["OD", 560.31, dt.datetime(2026, 5, 31)],
        [],
        ["bore", 500, None],
    ):
        sheet.append(row)
    made.save(folder / "report.xlsx")
    return folder / "report.xlsx"


def test_a_spreadsheet_gives_the_rows_of_its_sheet(tmp_path: Path) -> None:
    path = book(tmp_path)
    found = read_shop_table(path, Layout(heading=2, sheet="Sizes"))
    assert found == read_shop_table(csv_file(tmp_path, TEXT), HEADED)
    with pytest.raises(TableError, match='no sheet "Szies"; it has Cover, Sizes'):
        read_shop_table(path, Layout(heading=2, sheet="Szies"))


def test_a_broken_spreadsheet_is_refused(tmp_path: Path) -> None:
    pytest.importorskip("openpyxl")
    path = tmp_path / "report.xlsx"
    path.write_bytes(b"no spreadsheet")
    with pytest.raises(TableError, match="no spreadsheet that can be read"):
        read_shop_table(path, HEADED)
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("other.txt", "text")
    with pytest.raises(TableError, match="no spreadsheet that can be read"):
        read_shop_table(path, HEADED)


@pytest.mark.parametrize(
    ("text", "columns", "rows"),
    [
        ("id\na\n", ("id",), [(2, {"id": "a"})]),
        ("id,\na,\n", ("id",), [(2, {"id": "a"})]),
        ("id,bends,,\n", ("id", "bends"), []),
        ("id,,,bends\na,,,2\n", ("id", "bends"), [(2, {"id": "a", "bends": "2"})]),
        ("id,,bends\na,x,2\n", ("id", "bends"), [(2, {"id": "a", "bends": "2"})]),
        ("a;b,c\n1,2\n", ("a;b", "c"), [(2, {"a;b": "1", "c": "2"})]),
        (" id , bends \n a , 2 ,,\n", ("id", "bends"), [(2, {"id": "a", "bends": "2"})]),
        ("id,bends\na\n\n,3\n", ("id", "bends"), [(2, {"id": "a"}), (4, {"bends": "3"})]),
    ],
)
def test_columns_without_a_name_are_passed_over_and_rows_keep_their_numbers(
    tmp_path: Path, text: str, columns: tuple[str, ...], rows: list[tuple[int, dict[str, str]]]
) -> None:
    table = read_shop_table(csv_file(tmp_path, text), Layout())
    assert table.columns == columns
    assert [(row.number, dict(row.cells)) for row in table.rows] == rows


@pytest.mark.parametrize(
    ("text", "mark"), [("id;x\n", ";"), ("id\tx\n", "\\t"), ("id|x\n", "|"), ("id;x|y\n", ";")]
)
def test_one_column_that_holds_another_mark_is_told(tmp_path: Path, text: str, mark: str) -> None:
    with pytest.raises(TableError) as refused:
        read_shop_table(csv_file(tmp_path, text), Layout())
    assert f'its columns are parted by "{mark}": save it with commas' in str(refused.value)
    assert f'with separator = "{mark}", and' in str(refused.value)


@pytest.mark.parametrize(("content", "line"), [(b"\xff\n", 1), (b"\n\xff\n", 2), (b"a\n\n\xff", 3)])
def test_what_is_no_text_is_told_with_its_line(tmp_path: Path, content: bytes, line: int) -> None:
    path = csv_file(tmp_path, content)
    with pytest.raises(TableError) as refused:
        read_shop_table(path, Layout())
    assert str(refused.value) == f"{path}:{line}: the file is not UTF-8 text; save it as CSV, UTF-8"


def test_a_quote_that_is_not_closed_is_told_with_the_line_it_is_met_on(tmp_path: Path) -> None:
    path = csv_file(tmp_path, 'a,b\n1,"2"x\n')
    with pytest.raises(TableError) as refused:
        read_shop_table(path, Layout())
    assert str(refused.value).startswith(f"{path}:2: this is no CSV: ")


def test_a_table_larger_than_any_of_a_works_is_refused_by_its_size(tmp_path: Path) -> None:
    path = csv_file(tmp_path, b"#" * 10_000_001)
    with pytest.raises(TableError) as refused:
        read_shop_table(path, Layout())
    assert str(refused.value) == (
        f"{path}: it cannot be read: it has 10000001 bytes, and at most 10000000 are read"
    )


def test_a_file_whose_name_ends_in_large_letters_is_one(tmp_path: Path) -> None:
    path = tmp_path / "REPORT.CSV"
    path.write_text("id\na\n", encoding="utf-8")
    assert read_shop_table(path, Layout()).columns == ("id",)
    with pytest.raises(TableError) as refused:
        read_shop_table(tmp_path / "absent.csv", Layout())
    assert str(refused.value).endswith("absent.csv: it cannot be read: No such file or directory")


@pytest.mark.parametrize(
    ("cell", "text"),
    [
        (None, ""),
        (5, "5"),
        (5.0, "5"),
        (5.25, "5.25"),
        (float("inf"), "inf"),
        (True, "True"),
        (dt.datetime(2026, 5, 31, 14, 5), "2026-05-31"),
        (dt.date(2026, 5, 31), "2026-05-31"),
        ("x", "x"),
    ],
)
def test_a_cell_of_a_spreadsheet_as_text(cell: object, text: str) -> None:
    assert cell_text(cell) == text


def test_of_a_formula_its_last_value_counts_and_never_its_text(tmp_path: Path) -> None:
    """Nobody has worked it out yet: it has none."""
    openpyxl = pytest.importorskip("openpyxl")
    made = openpyxl.Workbook()
    for row in (["id", "bends"], ["a", "=1+1"]):
        made.active.append(row)
    made.create_sheet("Second")
    made.save(tmp_path / "report.xlsx")
    table = read_shop_table(tmp_path / "report.xlsx", Layout())
    assert [dict(row.cells) for row in table.rows] == [{"id": "a"}]


def test_a_refused_row_is_told_by_its_number() -> None:
    assert str(RefusedRow(7, "it has no id")) == "row 7: it has no id"
