"""How the tables of one shop are read: a file of the design repository that ``mappings`` under [made] names."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, ClassVar, Literal

from pydantic import BeforeValidator, ValidationError

from speclint.errors import Complaint, SettingsError
from speclint.repository.shop_tables import Layout
from speclint.repository.toml_tables import read_named
from speclint.repository.validation import complaint_of
from speclint.specs import NOT_STATED, SpecTable, Stated, Word, bare

#: What a column of a shop's table may hold.
Column = Literal[
    "dimension",
    "value",
    "unit",
    "uncertainty",
    "unit_of_uncertainty",
    "along",
    "round",
    "instrument",
    "date",
    "inspector",
    "serial",
]


class TableMapping(SpecTable):
    """Which column of a shop's table is which, and in which units its bare numbers are.

    Fields:
        heading: number of the row that holds the names of the columns; 1 where it is left out
        separator: mark between the cells of a CSV file; a comma where it is left out
        decimal: decimal mark of the numbers in the table; a point where it is left out
        sheet: name of the sheet of a spreadsheet; the first where it is left out
        date_format: of days written as text, such as "%d.%m.%Y"; 2027-05-31 where it is left out
        columns: the name of each column in the table, by what it holds
        units: of the numbers in a column that stand without a unit, by what the column holds
        dimensions: keys of specs, by what the shop calls each dimension; a key itself needs no entry
    """

    kind: ClassVar[str] = "mapping of a table"

    heading: Word[int] = NOT_STATED
    separator: Word[Literal[",", ";", "\t", "|"]] = NOT_STATED
    decimal: Word[Literal[".", ","]] = NOT_STATED
    sheet: Word[str] = NOT_STATED
    date_format: Word[str] = NOT_STATED
    columns: dict[Column, Word[str]] = {}
    units: dict[Column, Word[str]] = {}
    dimensions: Annotated[dict[str, str], BeforeValidator(bare)] = {}

    @property
    def layout(self) -> Layout:
        """How the table is laid out."""
        usual = Layout()
        return Layout(
            self.heading.value if isinstance(self.heading, Stated) else usual.heading,
            self.separator.value if isinstance(self.separator, Stated) else usual.separator,
            self.sheet.value if isinstance(self.sheet, Stated) else usual.sheet,
        )

    @property
    def decimal_mark(self) -> str:
        """The decimal mark of numbers."""
        return self.decimal.value if isinstance(self.decimal, Stated) else "."

    def column(self, what: Column) -> str:
        """The name of the column that holds something; "" where none does."""
        stated = self.columns.get(what)
        return stated.value if isinstance(stated, Stated) else ""

    def unit_of(self, what: Column) -> str:
        """The unit of the bare numbers of a column; "" where none is said."""
        stated = self.units.get(what)
        return stated.value if isinstance(stated, Stated) else ""


def read_mapping(root: Path, file: str) -> TableMapping:
    """Read a mapping of a repository.

    :raises SettingsError: for one that cannot be read, with everything that is wrong with it.
    """
    table = read_named(root, file)
    if isinstance(table, Complaint):
        raise SettingsError(str(table))
    try:
        found = TableMapping.model_validate(table)
    except ValidationError as problem:
        errors = problem.errors(include_url=False)
        raise SettingsError(
            "\n".join(str(complaint_of(one, TableMapping, table, file)) for one in errors)
        ) from problem
    for needed in ("dimension", "value"):
        if not found.column(needed):
            raise SettingsError(
                f"{file} columns: no column holds the {needed}; write {needed} = its name in the table"
            )
    return found
