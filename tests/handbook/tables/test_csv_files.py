"""The handbook reads its tables whole and says what it lacks."""

from __future__ import annotations

from importlib.resources import files

import pytest

from speclint.errors import NotKnown
from speclint.handbook.tables.csv_files import entries, number, row, rows

TABLES = sorted(
    f.name for f in files("speclint.handbook").joinpath("data").iterdir() if f.name.endswith(".csv")
)


def test_there_are_tables() -> None:
    assert len(TABLES) >= 3


@pytest.mark.parametrize("file", TABLES)
def test_every_line_has_the_fields_of_the_heading(file: str) -> None:
    assert rows(file)


def test_a_row_is_found_by_what_one_column_reads() -> None:
    found = row("tightening-methods-vdi-2230-2003.csv", "method", "impact wrench")
    assert found["factor_high"] == "4.0"


def test_an_unknown_entry_is_refused_with_its_nearest() -> None:
    with pytest.raises(NotKnown, match="no method 'torque wrensh' in the handbook; nearest: torque wrench"):
        row("tightening-methods-vdi-2230-2003.csv", "method", "torque wrensh")


def test_an_entry_like_nothing_known_is_refused_with_all_that_is() -> None:
    with pytest.raises(NotKnown, match="nearest: steel, austenitic steel, spheroidal iron, grey iron"):
        row("shear-strength-ratios.csv", "material", "xyzzy")


def test_a_number_is_read_and_an_empty_field_is_not_known() -> None:
    file = "gaskets-asme-viii-1-2019-table-2-5-1.csv"
    assert number(file, "gasket", "solid aluminium", "m", "gasket factor") == 4.0
    with pytest.raises(NotKnown, match="the handbook gives no thickness of solid aluminium"):
        number(file, "gasket", "solid aluminium", "thickness_mm", "thickness of solid aluminium")


def test_entries_keep_the_order_of_the_table() -> None:
    assert entries("shear-strength-ratios.csv", "material")[0] == "steel"


def test_rows_cannot_be_changed() -> None:
    first = rows("shear-strength-ratios.csv")[0]
    with pytest.raises(TypeError):
        first["low"] = "2"  # type: ignore[index]


def test_a_family_s_table_is_read_alike() -> None:
    """From its own package; the handbook has no file of that name."""
    file = "iso-13920-1996-linear-tolerances.csv"
    assert rows(file, "speclint_fabrication")[0]["over"] == "2"
    with pytest.raises(FileNotFoundError):
        rows(file)
