"""The reader of shops' tables: CSV and spreadsheets give the same rows; what is no table is refused in one line."""

from __future__ import annotations

import datetime as dt
import zipfile
from pathlib import Path

import pytest

from speclint.errors import TableError
from speclint.repository import Layout, read_shop_table

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
